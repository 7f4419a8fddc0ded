import type { CheckAnswer } from '@underlath/contract';
import type { ReactNode } from 'react';
import { ShareBar } from '../../shared/drawing/scales.tsx';
import { Length } from '../../shared/measure/length.tsx';
import { quantityText, valueLabel } from '../../shared/measure/quantity.ts';
import { useCheck } from '../../shared/measure/use-check.ts';
import { useEvidence } from '../../shared/measure/use-evidence.ts';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';

/** A value of an outcome as it is read at the desk: lengths as the tape shows them. */
export function quantityWords(value: number | string | boolean, unit: string): ReactNode {
  if (typeof value === 'number' && unit === 'in') return <Length inches={value} denominator={32} />;
  if (typeof value === 'number' && unit === 'ft') return <Length inches={value * 12} denominator={16} />;
  return quantityText({ value, unit }, 'en');
}

const unitEndings = /(In2|In|Ft|Lb|Psi|Plf|Pct|Sf|Share|Count|Cents|CentsPerUnit|CentsPerHour)$/;

/** A name of the contract as words: `originalSumCents` is read as "Original sum"; the unit stands with the value. */
export function nameWords(name: string): string {
  const bare = name.replace(unitEndings, '') || name;
  const words = bare
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll(/[._-]/g, ' ')
    .toLowerCase()
    .trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What may still be counted, and the check's own values under the names the check gives them. */
export function AnswerFacts({ answer }: { answer: CheckAnswer }) {
  const { evidence } = useEvidence(useCheck(answer.checkId).check);
  const facts: Fact[] = [];
  if (answer.remaining !== null) {
    const words = answer.remaining === 0 ? 'nothing' : `${Math.round(answer.remaining * 100)}%`;
    facts.push({
      name: 'May still be counted',
      value: (
        <>
          {words}
          <ShareBar share={answer.remaining} />
        </>
      ),
    });
  }
  for (const [name, { value, unit }] of Object.entries(answer.values)) {
    // An older judgment may carry a value that this version of the check no longer names.
    const label = valueLabel(name, evidence?.values, 'en') ?? nameWords(name);
    facts.push({ name: label, value: quantityWords(value, unit) });
  }
  return <Facts facts={facts} />;
}
