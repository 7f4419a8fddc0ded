import { formatExact, INCHES_PER, parseLength, refusalWords, say, text } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { useLocale } from '../i18n/locale.tsx';

export type MeasureInputProps = {
  label: string;
  hint?: ReactNode;
  /** From outside, an API problem for instance; what this part finds itself comes first. */
  error?: string | undefined;
  /** In `unit`; null is not measured. */
  value: number | null;
  /** Null when it was emptied, can't be read or is out of range; what was typed stays in the box. */
  onChange: (value: number | null) => void;
  unit?: 'in' | 'ft';
  /** In `unit`. A negative one brings the sign switch. */
  min: number;
  max: number;
  /** Finest fraction of an inch on the keys. */
  denominator?: 8 | 16 | 32;
  /** Words of the sign switch, `past nut` and `below nut`. */
  signWords?: { positive: string; negative: string };
  optional?: boolean;
  labelHidden?: boolean;
  /** Large keys for a gloved hand; without it a box to type in. */
  pad?: boolean;
};

type Checked = Pick<MeasureInputProps, 'label' | 'unit' | 'min' | 'max'>;

/** What is wrong with a length, in the reader's words, or undefined. */
export function useLengthCheck({ label, unit = 'in', min, max }: Checked) {
  const { locale } = useLocale();
  const show = (value: number) => formatExact(value * INCHES_PER[unit]);
  const rangeError = (value: number): string | undefined =>
    value < min || value > max
      ? say(refusalWords({ kind: 'length', label: text(label, label), unit, min, max }), locale)
      : undefined;
  const read = (typed: string): { value: number | null; error: string | undefined } => {
    if (typed.trim() === '') return { value: null, error: undefined };
    const parsed = parseLength(typed, { defaultUnit: unit });
    if (!parsed.ok) return { value: null, error: say(parsed.failure.message, locale) };
    const value = parsed.inches / INCHES_PER[unit];
    const error = rangeError(value);
    return { value: error ? null : value, error };
  };
  return { read, rangeError, show };
}
