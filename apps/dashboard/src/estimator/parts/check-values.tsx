import type { CheckAnswer } from '@underlath/contract';
import type { ReactNode } from 'react';
import { ShareBar } from '../../shared/drawing/scales.tsx';
import { Length } from '../../shared/measure/length.tsx';
import type { Fact } from '../../shared/ui/facts.tsx';

const suffixes: Record<string, string> = {
  lb: ' lb',
  plf: ' lb/ft',
  psi: ' psi',
  pct: '%',
  F: ' °F',
  sf: ' sq ft',
  in2: ' sq in',
  count: '',
  factor: '',
};

/** A value of an outcome as it is read: lengths as fractions, shares as percent, slopes as 1 in N. */
export function quantityWords(value: number | string | boolean, unit: string): ReactNode {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (unit === 'in') return <Length inches={value} denominator={32} />;
  if (unit === 'ft') return <Length inches={value * 12} denominator={16} />;
  if (unit === 'share') return `${Math.round(value * 100)}%`;
  if (unit === 'slope') return value === 0 ? 'level' : `1 in ${Math.round(1 / Math.abs(value))}`;
  const digits = Math.abs(value) >= 100 ? 0 : 2;
  return `${value.toLocaleString('en-US', { maximumFractionDigits: digits })}${suffixes[unit] ?? ` ${unit}`}`;
}

const unitEndings = /(In2|In|Ft|Lb|Psi|Plf|Pct|Sf|Share|Count)$/;

/** `engagedShare` as `Engaged`: the unit stands with the value. */
export function nameWords(name: string): string {
  const bare = name.replace(unitEndings, '') || name;
  const words = bare
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll(/[._-]/g, ' ')
    .toLowerCase()
    .trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The ratio, what may still be counted, and the check's own values. */
export function valueFacts(answer: CheckAnswer): Fact[] {
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
    facts.push({ name: nameWords(name), value: quantityWords(value, unit) });
  }
  return facts;
}
