import type { Check, CheckCase, Outcome } from '@underlath/rules';
import { useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import type { Inputs } from '../shared/measure/form.ts';
import { Button } from '../shared/ui/button.tsx';
import { VerdictWord } from '../shared/ui/severity.tsx';
import { SheetPart } from './about.tsx';

/** A worked case and what came of it on this page. */
export type RunCase = { one: CheckCase; outcome: Outcome; differences: string[] };

/** The inputs of a case as the form holds them: bare numbers of a list as items. */
export const inputsOf = (check: Check, one: CheckCase): Inputs => check.read(one.inputs).inputs;

/** So many are in sight at once. */
const inSight = 6;

type CasesProps = { cases: readonly RunCase[]; onStart: (run: RunCase) => void };

/** Every worked case with its origin, and whether it passes here and now. */
export function Cases({ cases, onStart }: CasesProps) {
  const t = useT(checksWords);
  const more = cases.slice(inSight);
  return (
    <SheetPart id="cases" title={t('cases')}>
      <p className="soft">{t('casesLead')}</p>
      <CaseLines cases={cases.slice(0, inSight)} onStart={onStart} />
      {more.length > 0 && (
        <details className="more-cases">
          <summary>{t('moreCases', { count: more.length })}</summary>
          <CaseLines cases={more} onStart={onStart} />
        </details>
      )}
    </SheetPart>
  );
}

/** Their names and sources are in English. */
function CaseLines({ cases, onStart }: CasesProps) {
  const t = useT(checksWords);
  return (
    <ul className="sheet-cases">
      {cases.map((run) => (
        <li key={run.one.name}>
          <div>
            <p lang="en">{run.one.name}</p>
            <p className="small">
              <VerdictWord verdict={run.outcome.verdict} />
              {', '}
              {run.differences.length === 0 ? t('passes') : <b>{t('differs', { how: run.differences.join('; ') })}</b>}
              <span className="soft">
                {' · '}
                {t(`origin_${run.one.origin}`)}: <span lang="en">{run.one.source}</span>
              </span>
            </p>
          </div>
          <Button look="quiet" onClick={() => onStart(run)} aria-label={t('tryCaseOf', { name: run.one.name })}>
            {t('tryCase')}
          </Button>
        </li>
      ))}
    </ul>
  );
}
