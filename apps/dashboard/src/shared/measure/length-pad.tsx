import { useId, useState } from 'react';
import { useT } from '../i18n/locale.tsx';
import { measureWords } from '../i18n/messages/measure.ts';
import { FieldError } from '../ui/field.tsx';
import { Fraction, Length } from './length.tsx';
import { fromPad, isFull, type PadPart, type PadValue, padParts, pressDigit, toPad } from './pad.ts';
import { useReportRefusal } from './refusals.tsx';
import { type MeasureInputProps, useLengthCheck } from './use-length-check.ts';
import { useRested } from './use-rested.ts';

const partNames = { feet: 'feet', whole: 'inches', ticks: 'fraction' } as const;

/** The value large, the side of zero, and one set of keys: sixteenths, or digits for whole inches and feet. */
export function LengthPad({ onType, ...props }: Omit<MeasureInputProps, 'pad'> & { onType: () => void }) {
  const {
    label,
    labelHidden,
    hint,
    error,
    value,
    onChange,
    unit = 'in',
    min,
    max,
    denominator = 16,
    signWords,
  } = props;
  const t = useT(measureWords);
  const id = useId();
  const { rangeError } = useLengthCheck(props);
  const factor = unit === 'ft' ? 12 : 1;
  const { parts, first } = padParts(min * factor, max * factor);
  const withFeet = parts.includes('feet');
  const [negative, setNegative] = useState(value === null ? false : value < 0);
  const [part, setPart] = useState<PadPart>(first);
  const [held, setHeld] = useState<number | null>(value);
  const shown = value ?? held;
  const pad = toPad(shown === null ? null : shown * factor, denominator, withFeet, negative);
  const problem = held !== null && value === null ? rangeError(held) : undefined;
  const [rested] = useRested(held);
  useReportRefusal(problem !== undefined);

  function put(next: PadValue) {
    const result = fromPad(next, denominator) / factor;
    setHeld(result);
    onChange(rangeError(result) ? null : result);
  }
  function digit(of: 'feet' | 'whole', key: number) {
    const next = pressDigit(pad, of, key, withFeet);
    put(next);
    if (isFull(next, of, withFeet, max * factor)) setPart(parts[parts.indexOf(of) + 1] ?? of);
  }
  function clear() {
    setHeld(null);
    onChange(null);
    setPart(first);
  }

  return (
    <fieldset className="pad" aria-describedby={`${id}-error`}>
      <legend className={labelHidden ? 'hidden-text' : 'field-label'}>{label}</legend>
      {hint && <p className="field-hint soft">{hint}</p>}
      <div className="pad-top">
        <output className="pad-value">
          {shown === null ? (
            <span className="pad-none">{t('nothingYet')}</span>
          ) : (
            <Length
              inches={Math.abs(shown) * factor}
              style={withFeet ? 'feet-inches' : 'inches'}
              denominator={denominator}
            />
          )}
        </output>
        {min < 0 && (
          <SignSwitch
            negative={pad.negative}
            words={signWords ?? { positive: t('plus'), negative: t('minus') }}
            onChange={(next) => {
              setNegative(next);
              if (shown !== null) put({ ...pad, negative: next });
            }}
          />
        )}
      </div>
      {parts.length > 1 && (
        <div className="pad-parts">
          {parts.map((name) => (
            <button key={name} type="button" aria-pressed={part === name} onClick={() => setPart(name)}>
              {t(partNames[name])}
            </button>
          ))}
        </div>
      )}
      <div className="pad-keys">
        {part === 'ticks' ? (
          <FractionKeys
            denominator={denominator}
            on={shown === null ? null : pad.ticks}
            onPress={(ticks) => put({ ...pad, ticks })}
          />
        ) : (
          <DigitKeys onPress={(key) => digit(part, key)} />
        )}
        <button type="button" className="pad-word pad-word-wide" onClick={clear}>
          {t('clear')}
        </button>
        <button type="button" className="pad-word pad-word-wide" onClick={onType}>
          {t('typeIt')}
        </button>
      </div>
      <FieldError id={`${id}-error`}>{(rested === held ? problem : undefined) ?? error}</FieldError>
    </fieldset>
  );
}

type SignSwitchProps = {
  negative: boolean;
  words: { positive: string; negative: string };
  onChange: (negative: boolean) => void;
};

function SignSwitch({ negative, words, onChange }: SignSwitchProps) {
  return (
    <div className="pad-sign">
      <button type="button" aria-pressed={!negative} onClick={() => onChange(false)}>
        {words.positive}
      </button>
      <button type="button" aria-pressed={negative} onClick={() => onChange(true)}>
        {words.negative}
      </button>
    </div>
  );
}

type FractionKeysProps = { denominator: number; on: number | null; onPress: (ticks: number) => void };

function FractionKeys({ denominator, on, onPress }: FractionKeysProps) {
  return Array.from({ length: denominator }, (_, ticks) => {
    const { over, under } = reduced(ticks, denominator);
    return (
      <button
        key={`${over}/${under}`}
        type="button"
        aria-pressed={on === ticks}
        aria-label={ticks === 0 ? '0' : `${over}/${under}`}
        onClick={() => onPress(ticks)}
      >
        {ticks === 0 ? '0' : <Fraction over={over} under={under} />}
      </button>
    );
  });
}

function reduced(ticks: number, denominator: number): { over: number; under: number } {
  let [over, under] = [ticks, denominator];
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return { over, under };
}

function DigitKeys({ onPress }: { onPress: (digit: number) => void }) {
  return [1, 2, 3, 4, 5, 6, 7, 8, 9, 0].map((digit) => (
    <button key={digit} type="button" onClick={() => onPress(digit)}>
      {digit}
    </button>
  ));
}
