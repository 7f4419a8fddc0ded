import { type Finding, routes } from '@underlath/contract';
import { type FormEvent, useId, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select, TextArea, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import type { NoticeAnswer } from './panel.tsx';
import { noticeMethodWord } from './words.ts';

/** Everything that shows whether a notice has gone out. */
export const noticeReads = [routes.getNotice, routes.projectOverview, routes.listRecord];

const languages = [
  { value: 'en', label: 'English' },
  { value: 'es', label: 'Spanish' },
];

type NoticeDialogProps = { finding: Finding; notice: NoticeAnswer; onClose: () => void };

/** The notice as it would go out, ready to send; each language keeps what was typed into it. */
export function NoticeDialog({ finding, notice: { clock, draft }, onClose }: NoticeDialogProps) {
  const formId = useId();
  const announce = useAnnounce();
  const [to, setTo] = useState(draft.to ?? '');
  const [locale, setLocale] = useState(draft.locale);
  const [texts, setTexts] = useState({ en: draft.letters.en.text, es: draft.letters.es.text });
  const send = useChange(routes.sendNotice, {
    invalidates: noticeReads,
    onDone: ({ sentTo }) => {
      announce(`The notice is on its way to ${sentTo}.`);
      onClose();
    },
  });
  const problem = send.error ? problemOf(send.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    send.mutate({ params: { findingId: finding.id }, body: { how: 'mail', to, locale, text: texts[locale] } });
  }
  const { methods } = clock.terms;
  const otherWay = methods.length > 0 && !methods.includes('e-mail');
  return (
    <Dialog
      open
      title={`Heads-up: ${finding.title}`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Not now</Button>
          <Button look="go" type="submit" form={formId} busy={send.isPending} busyLabel="Sending…">
            Send it
          </Button>
        </>
      }
    >
      <form id={formId} className="stack notice-letter" onSubmit={submit} noValidate>
        {otherWay && (
          <p>
            The contract names {methods.map((method) => noticeMethodWord(method).toLowerCase()).join(' or ')}. An e-mail
            tells the client early but does not stop the clock: send the same words that way too, and note it.
          </p>
        )}
        <div className="form-pair">
          <TextInput label="Client’s e-mail" type="email" value={to} onChange={setTo} error={errorAt(problem, '/to')} />
          <Select
            label="Language"
            options={languages}
            value={locale}
            onChange={(value) => setLocale(value === 'es' ? 'es' : 'en')}
          />
        </div>
        <TextArea
          label="The notice"
          hint="No price: options and price follow with the change order. It is kept as it goes out."
          lang={locale}
          rows={14}
          maxLength={8000}
          value={texts[locale]}
          onChange={(text) => setTexts((before) => ({ ...before, [locale]: text }))}
          error={errorAt(problem, '/text')}
        />
        <p className="soft small">Subject: {draft.letters[locale].subject}</p>
        <FormFail problem={problem} doing="Sending the notice" />
      </form>
    </Dialog>
  );
}
