import {
  type Check,
  type CheckEvidence,
  InputError,
  type Outcome,
  runCheck,
  UnknownEditionError,
} from '@underlath/rules';
import { type Edition, say } from '@underlath/rules/kernel';
import { useMemo } from 'react';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { askedInputs, type Inputs } from '../shared/measure/form.ts';
import { quantityText, valueLabel } from '../shared/measure/quantity.ts';
import type { Shared } from '../shared/measure/share-link.ts';
import { VerdictWord } from '../shared/ui/severity.tsx';
import { SheetPart } from './about.tsx';
import { inputsOf, type RunCase } from './cases.tsx';

type EditionsProps = { check: Check; evidence: CheckEvidence; shared: Shared; cases: readonly RunCase[] };
type Row = { edition: Edition; outcome: Outcome | null };

/** The same measurements under every edition the check knows: what was typed, or a worked case while that decides nothing. */
export function Editions({ check, evidence, shared, cases }: EditionsProps) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  const example = cases.find(({ outcome }) => outcome.verdict === 'fails') ?? cases[0];
  const { rows, typed } = useMemo(() => {
    const under = (inputs: Inputs): Row[] =>
      check.editions.map((edition) => ({ edition, outcome: judgedUnder(check, edition.id, inputs) }));
    const rows = under(askedInputs(check.inputs, shared.inputs));
    const typed = rows.some(({ outcome }) => outcome !== null && outcome.verdict !== 'undetermined');
    return { typed, rows: typed || !example ? rows : under(inputsOf(check, example.one)) };
  }, [check, shared.inputs, example]);
  if (check.editions.length === 1) {
    const [only] = check.editions;
    return (
      <SheetPart title={t('editions')}>
        <p>{t('editionOne', { edition: only ? say(only.title, locale) : '' })}</p>
      </SheetPart>
    );
  }
  const names = differing(rows);
  return (
    <SheetPart title={t('editions')}>
      <p className="soft">
        {t('editionMany')} {typed ? t('editionTyped') : t('editionCase', { name: example?.one.name ?? '' })}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by the keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label={t('editions')}>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">{t('edition')}</th>
              <th scope="col">{t('verdict')}</th>
              <th scope="col" className="number">
                {t('ratio')}
              </th>
              {names.map((name) => (
                <th key={name} scope="col" className="number">
                  {valueLabel(name, evidence.values, locale) ?? name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ edition, outcome }) => (
              <tr key={edition.id}>
                <th scope="row">{say(edition.title, locale)}</th>
                <td>{outcome ? <VerdictWord verdict={outcome.verdict} restsOn={outcome.restsOn} /> : t('notUnder')}</td>
                <td className="number">{outcome?.ratio == null ? '–' : outcome.ratio.toFixed(2)}</td>
                {names.map((name) => {
                  const value = outcome?.values[name];
                  return (
                    <td key={name} className="number">
                      {value ? quantityText(value, locale) : '–'}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </SheetPart>
  );
}

/** Inputs by which measurements can name their own edition; it is the table's turn to say which. */
const naming = ['edition', 'standard', 'code'];

/** The outcome under one edition, or null when these measurements can't be judged by it. */
function judgedUnder(check: Check, edition: string, inputs: Inputs): Outcome | null {
  const unnamed = Object.fromEntries(Object.entries(inputs).filter(([name]) => !naming.includes(name)));
  for (const tried of [inputs, unnamed]) {
    try {
      const outcome = runCheck(check, { edition, inputs: tried });
      if (outcome.edition === edition) return outcome;
    } catch (error) {
      // Impossible together, or an edition of another code: this row has nothing to show, the form says why.
      if (!(error instanceof InputError || error instanceof UnknownEditionError)) throw error;
    }
  }
  return null;
}

/** The values that are not the same under every edition. */
function differing(rows: readonly Row[]): string[] {
  const outcomes = rows.flatMap(({ outcome }) => (outcome ? [outcome] : []));
  const names = new Set(outcomes.flatMap(({ values }) => Object.keys(values)));
  return [...names].filter(
    (name) => new Set(outcomes.map(({ values }) => JSON.stringify(values[name]?.value ?? null))).size > 1,
  );
}
