import { type BodyIn, type Finding, routes } from '@underlath/contract';
import { type FormEvent, useId } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select, TextArea, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { useDraft } from '../desk/use-draft.ts';
import { noticeReads } from './dialog.tsx';
import type { NoticeAnswer } from './panel.tsx';
import { noticeMethodOptions } from './words.ts';

type Noted = Extract<BodyIn<typeof routes.sendNotice>, { how: 'noted' }>;
type NoticeNotedProps = { finding: Finding; notice: NoticeAnswer; onClose: () => void };

/** Notes a notice that went out by another way, with what proves it; the words to hand over can be copied from here. */
export function NoticeNoted({ finding, notice: { clock, draft: ready }, onClose }: NoticeNotedProps) {
  const formId = useId();
  const announce = useAnnounce();
  const { draft, set } = useDraft(() => ({
    method: (clock.terms.methods.find((method) => method !== 'e-mail') ?? 'in-person') as string,
    sentOn: clock.today,
    to: '',
    text: '',
  }));
  const note = useChange(routes.sendNotice, {
    invalidates: noticeReads,
    onDone: () => {
      announce('Noted.');
      onClose();
    },
  });
  const problem = note.error ? problemOf(note.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    const { method, ...rest } = draft;
    note.mutate({
      params: { findingId: finding.id },
      body: { how: 'noted', method: method as Noted['method'], ...rest },
    });
  }
  const field = (name: keyof typeof draft) => ({
    value: draft[name],
    onChange: set(name),
    error: errorAt(problem, `/${name}`),
  });
  return (
    <Dialog
      open
      title="Note a notice that went out another way"
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Not now</Button>
          <Button look="go" type="submit" form={formId} busy={note.isPending}>
            Note it
          </Button>
        </>
      }
    >
      <form id={formId} className="stack" onSubmit={submit} noValidate>
        <p>It cannot be changed afterwards. Only note what has gone out.</p>
        <div className="form-pair">
          <Select label="How" options={noticeMethodOptions} {...field('method')} />
          <TextInput label="Day it went out" type="date" {...field('sentOn')} />
        </div>
        <TextInput label="To whom" maxLength={200} {...field('to')} />
        <TextArea
          label="What proves it"
          hint="A tracking number, who was there, what was said or left."
          maxLength={8000}
          {...field('text')}
        />
        <details>
          <summary>Words for a letter, to copy</summary>
          <p className="notice-words" lang={ready.locale}>
            {ready.letters[ready.locale].text}
          </p>
        </details>
        <FormFail problem={problem} doing="Noting the notice" />
      </form>
    </Dialog>
  );
}
