import { understoodAtDeclining } from '@underlath/contract';
import { useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { TextArea } from '../../shared/ui/field.tsx';
import { MakeSafe } from '../make-safe.tsx';
import { Lines } from '../section.tsx';
import { StepFrame } from '../step-frame.tsx';
import { Trouble } from '../trouble.tsx';
import { Inline } from '../words.tsx';
import { NameQuestion } from './name-question.tsx';
import type { AnswerProps } from './review-screen.tsx';
import { NameInput } from './signature.tsx';
import { useDecision } from './use-decision.tsx';

/** A reason if one wants to give it, and the name; a tick only where the place is left unsafe or undecided. Nothing is agreed to. */
export function DeclineScreen({ letter, draft, change, onBack, onDecided }: AnswerProps) {
  const t = useT(letterWords);
  const decision = useDecision(letter, { kind: 'declined' }, draft, onDecided);
  const understood = understoodAtDeclining(letter.document);
  const told = (letter.document.sections ?? []).flatMap(({ lines }) => lines.filter(({ atDeclining }) => atDeclining));
  return (
    <StepFrame title={t('declineTitle')} onBack={onBack} onSubmit={decision.send}>
      <MakeSafe document={letter.document} brief />
      <p>{t('declineIntro')}</p>
      {told.length > 0 && (
        <div className="notice">
          <Lines lines={told} />
        </div>
      )}
      <TextArea
        label={t('declineReason')}
        hint={t('declineReasonHint')}
        error={decision.errors.reason}
        value={draft.reason}
        onChange={(reason) => change({ reason })}
        maxLength={2000}
      />
      <NameInput
        hint={t('yourNameDeclineHint')}
        error={decision.errors.name}
        name={draft.name}
        onName={(name) => change({ name })}
      />
      {understood && (
        <Checkbox
          label={<Inline text={understood} />}
          error={decision.errors.consent}
          checked={decision.agreed}
          onChange={decision.setAgreed}
        />
      )}
      <NameQuestion
        {...decision.nameQuestion}
        declines
        letterFor={letter.document.project.clientName}
        typed={draft.name.trim()}
      />
      {decision.error && <Trouble error={decision.error} />}
      <div className="step-actions">
        <Button look="go" type="submit" busy={decision.sending} busyLabel={t('declining')}>
          {t('declineSend')}
        </Button>
        <Button onClick={onBack}>{t('backToLetter')}</Button>
      </div>
    </StepFrame>
  );
}
