import { useEffect, useState } from 'react';
import { useT } from '../i18n/locale.tsx';
import { measureWords } from '../i18n/messages/measure.ts';
import { Button } from '../ui/button.tsx';
import { TextInput } from '../ui/field.tsx';
import { LengthPad } from './length-pad.tsx';
import { useReportRefusal } from './refusals.tsx';
import { type MeasureInputProps, useLengthCheck } from './use-length-check.ts';
import { useRested } from './use-rested.ts';
import './measure.css';

/** A length, typed as the trade types it or pressed on keys. */
export function MeasureInput({ pad, ...props }: MeasureInputProps) {
  const [typing, setTyping] = useState(!pad);
  const t = useT(measureWords);
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

function TypedLength(props: Omit<MeasureInputProps, 'pad'>) {
  const { label, hint, error, value, onChange, optional, labelHidden } = props;
  const t = useT(measureWords);
  const { read, show } = useLengthCheck(props);
  const [typed, setTyped] = useState(value === null ? '' : show(value));
  const result = read(typed);
  const [rested, settle] = useRested(typed);
  useReportRefusal(result.error !== undefined);
  const shownFromElsewhere = value !== null && value !== result.value ? show(value) : undefined;
  // A value set from elsewhere replaces what stands in the box; one's own typing is never rewritten under the hand.
  useEffect(() => {
    if (shownFromElsewhere !== undefined) setTyped(shownFromElsewhere);
  }, [shownFromElsewhere]);
  return (
    <TextInput
      label={label}
      hint={hint ?? t('lengthExample')}
      error={(rested === typed ? result.error : undefined) ?? error}
      optional={optional ?? false}
      labelHidden={labelHidden ?? false}
      value={typed}
      inputMode="text"
      autoComplete="off"
      className="input-length"
      onBlur={settle}
      onChange={(next) => {
        setTyped(next);
        onChange(read(next).value);
      }}
    />
  );
}
