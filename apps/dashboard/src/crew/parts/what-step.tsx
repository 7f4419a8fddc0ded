import { checks } from '@underlath/rules';
import { say } from '@underlath/rules/kernel';
import { CheckPicture } from '../../shared/drawing/check-picture.tsx';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { crew } from '../../shared/i18n/messages/crew.ts';
import { CrewFrame } from './crew-frame.tsx';
import type { StepProps } from './step.ts';

/** The conditions as pictures; a tap on one goes on. */
export function WhatStep({ draft, change, go, back }: StepProps) {
  const t = useT(crew);
  const { locale } = useLocale();
  function pick(checkId: string) {
    // Measurements belong to their check: another kind starts empty.
    if (checkId !== draft.checkId) change({ checkId, inputs: {} });
    go('measure');
  }
  return (
    <CrewFrame back={back}>
      <div className="question">
        <h1>{t('whatTitle')}</h1>
        <p className="soft">{t('whatLead')}</p>
      </div>
      <ul className="what-grid">
        {checks.map((check) => (
          <li key={check.id}>
            <button
              type="button"
              className="what"
              aria-pressed={draft.checkId === check.id}
              onClick={() => pick(check.id)}
            >
              <CheckPicture checkId={check.id} />
              <b>{say(check.title, locale)}</b>
              <span>{say(check.question, locale)}</span>
            </button>
          </li>
        ))}
      </ul>
    </CrewFrame>
  );
}
