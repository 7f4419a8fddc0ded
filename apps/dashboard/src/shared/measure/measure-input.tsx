import { formatLength, parseLength, say } from '@underlath/rules/kernel';
import { type ReactNode, useEffect, useState } from 'react';
import { useLocale, useT } from '../i18n/locale.tsx';
import { measure } from '../i18n/messages/measure.ts';
import { Button } from '../ui/button.tsx';
import { TextInput } from '../ui/field.tsx';
import { LengthPad } from './length-pad.tsx';
import './measure.css';

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

/** A length, typed as the trade types it or pressed on keys. */
export function MeasureInput({ pad, ...props }: MeasureInputProps) {
  const [typing, setTyping] = useState(!pad);
  const t = useT(measure);
  if (!pad) return <TypedLength {...props} />;
  if (!typing) return <LengthPad {...props} onType={() => setTyping(true)} />;
  return (
    <div className="measure">
      <TypedLength {...props} />
      <Button look="quiet" onClick={() => setTyping(false)}>
        {t('usePad')}
      </Button>
    </div>
  );
}

const perUnit = { in: 1, ft: 12 } as const;

/** What is wrong with a length, in the reader's words, or undefined. */
export function useLengthCheck({ unit = 'in', min, max }: Pick<MeasureInputProps, 'unit' | 'min' | 'max'>) {
  const t = useT(measure);
  const { locale } = useLocale();
  const show = (value: number) => formatLength(value * perUnit[unit]);
  const rangeError = (value: number, typed = show(value)): string | undefined =>
    value < min || value > max ? t('outOfRange', { typed, min: show(min), max: show(max) }) : undefined;
  const read = (typed: string): { value: number | null; error: string | undefined } => {
    if (typed.trim() === '') return { value: null, error: undefined };
    const parsed = parseLength(typed, { defaultUnit: unit });
    if (!parsed.ok) return { value: null, error: say(parsed.failure.message, locale) };
    const value = parsed.inches / perUnit[unit];
    const error = rangeError(value, `“${typed.trim()}”`);
    return { value: error ? null : value, error };
  };
  return { read, rangeError, show };
}

function TypedLength(props: Omit<MeasureInputProps, 'pad'>) {
  const { label, hint, error, value, onChange, unit = 'in', optional, labelHidden } = props;
  const t = useT(measure);
  const { read, show } = useLengthCheck(props);
  const [typed, setTyped] = useState(value === null ? '' : show(value));
  const result = read(typed);
  // A value set from elsewhere replaces what stands in the box; one's own typing is never rewritten under the hand.
  useEffect(() => {
    if (value !== null && value !== result.value) setTyped(formatLength(value * perUnit[unit]));
  }, [value, result.value, unit]);
  return (
    <TextInput
      label={label}
      hint={hint ?? t('lengthExample')}
      error={result.error ?? error}
      optional={optional ?? false}
      labelHidden={labelHidden ?? false}
      value={typed}
      inputMode="text"
      autoComplete="off"
      className="input-length"
      onChange={(next) => {
        setTyped(next);
        onChange(read(next).value);
      }}
    />
  );
}
