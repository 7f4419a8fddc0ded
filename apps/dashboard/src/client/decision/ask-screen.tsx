import { clientRoutes, isPersonName } from '@underlath/contract';
import { useRef, useState } from 'react';
import { ProblemAnswer } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextArea, TextInput } from '../../shared/ui/field.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { Said } from '../said.tsx';
import { focusFirstInvalid, StepFrame } from '../step-frame.tsx';
import { Trouble } from '../trouble.tsx';
import type { AnswerProps } from './review-screen.tsx';

/** A question and a name; the answer is shown in the letter when it comes. */
export function AskScreen({
  letter,
  draft,
  change,
  onBack,
}: Pick<AnswerProps, 'letter' | 'draft' | 'change' | 'onBack'>) {
  const t = useT(letterWords);
  const announce = useAnnounce();
  const [checked, setChecked] = useState(false);
  // A second tap can come before the first is drawn as busy.
  const underway = useRef(false);
  const ask = useChange(clientRoutes.ask, {
    invalidates: [clientRoutes.getClientLetter],
    onDone: () => {
      change({ question: '' });
      announce(<Said words="askSent" />);
      onBack();
    },
  });
  const text = draft.question.trim();
  const name = draft.name.trim();
  const refused = ask.error instanceof ProblemAnswer ? ask.error : null;

  function send() {
    setChecked(true);
    if (text === '' || !isPersonName(name)) return focusFirstInvalid();
    if (underway.current) return;
    underway.current = true;
    ask.mutate(
      { params: { letterId: letter.letterId }, body: { version: letter.document.version, text, name } },
      {
        onSettled: () => {
          underway.current = false;
        },
      },
    );
  }
  return (
    <StepFrame title={t('askTitle')} onBack={onBack} onSubmit={send}>
      <p>{t('askIntro')}</p>
      <TextArea
        label={t('askQuestion')}
        error={checked && text === '' ? t('errorQuestion') : refused?.at('/text')}
        value={draft.question}
        onChange={(question) => change({ question })}
        rows={5}
        maxLength={2000}
        aria-required
      />
      <TextInput
        label={t('askName')}
        error={checked && !isPersonName(name) ? t('errorName') : refused?.at('/name')}
        value={draft.name}
        onChange={(typed) => change({ name: typed })}
        autoComplete="name"
        autoCapitalize="words"
        maxLength={120}
        aria-required
      />
      {ask.error && <Trouble error={ask.error} />}
      <div className="step-actions">
        <Button look="go" type="submit" busy={ask.isPending} busyLabel={t('asking')}>
          {t('askSend')}
        </Button>
        <Button onClick={onBack}>{t('backToLetter')}</Button>
      </div>
    </StepFrame>
  );
}
