import type { Check, CheckCase, Outcome } from '@underlath/rules';
import { useT } from '../../shared/i18n/locale.tsx';
import { checksWords } from '../../shared/i18n/messages/checks.ts';
import type { Inputs } from '../../shared/measure/form.ts';
import { Button } from '../../shared/ui/button.tsx';
import { VerdictWord } from '../../shared/ui/severity.tsx';
import { SheetPart } from './about.tsx';

/** A worked case and what came of it on this page. */
export type RunCase = { one: CheckCase; outcome: Outcome; differences: string[] };

/** The inputs of a case as the form holds them: bare numbers of a list as items. */
export const inputsOf = (check: Check, one: CheckCase): Inputs => check.read(one.inputs).inputs;

/** Every worked case with its origin, and whether it passes here and now. Their names and sources are in English. */
export function Cases({ cases, onStart }: { cases: readonly RunCase[]; onStart: (run: RunCase) => void }) {
  const t = useT(checksWords);
  return (
    <SheetPart id="cases" title={t('cases')}>
      <p className="soft">{t('casesLead')}</p>
      <ul className="sheet-cases">
        {cases.map((run) => (
          <li key={run.one.name}>
            <div>
              <p lang="en">{run.one.name}</p>
              <p className="small">
                <VerdictWord verdict={run.outcome.verdict} />
                {', '}
                {run.differences.length === 0 ? (
                  t('passes')
                ) : (
                  <b>{t('differs', { how: run.differences.join('; ') })}</b>
                )}
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
    </SheetPart>
  );
}
