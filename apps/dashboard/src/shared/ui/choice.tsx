import { type ReactNode, useId } from 'react';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { FieldError, type FieldFrame } from './field.tsx';
import './ui.css';

export type Choice<V extends string = string> = {
  value: V;
  label: ReactNode;
  detail?: ReactNode;
  picture?: ReactNode;
};

type RadioGroupProps<V extends string> = FieldFrame & {
  value: V | null;
  options: readonly Choice<V>[];
  onChange: (value: V) => void;
  /** `row` sets short answers side by side, `grid` is for pictures. */
  layout?: 'column' | 'row' | 'grid';
};

/** Every answer is a full-width target with its word; the chosen one has a thick ink edge and a filled ring. */
export function RadioGroup<V extends string>(props: RadioGroupProps<V>) {
  const { label, hint, error, optional, labelHidden, value, options, onChange, layout = 'column' } = props;
  const id = useId();
  const t = useT(commonWords);
  return (
    <fieldset className="field" aria-describedby={`${hint ? `${id}-hint ` : ''}${id}-error`}>
      <legend className={labelHidden ? 'hidden-text' : 'field-label'}>
        {label}
        {optional && <span className="soft field-optional"> {t('optional')}</span>}
      </legend>
      {hint && (
        <p className="field-hint soft" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div className={`choices choices-${layout}`}>
        {options.map((option) => (
          <label className="choice" key={option.value}>
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={value === option.value}
              onChange={() => onChange(option.value)}
            />
            {option.picture}
            <span className="choice-words">
              <span>{option.label}</span>
              {option.detail && <span className="choice-detail soft">{option.detail}</span>}
            </span>
          </label>
        ))}
      </div>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </fieldset>
  );
}

type CheckboxProps = {
  label: ReactNode;
  detail?: ReactNode;
  error?: ReactNode;
  checked: boolean;
  disabled?: boolean;
  onChange: (checked: boolean) => void;
};

export function Checkbox({ label, detail, error, checked, disabled = false, onChange }: CheckboxProps) {
  const id = useId();
  return (
    <div className="field">
      <label className="choice choice-box">
        <input
          type="checkbox"
          checked={checked}
          disabled={disabled}
          aria-describedby={error ? `${id}-error` : undefined}
          aria-invalid={error ? true : undefined}
          onChange={(event) => onChange(event.target.checked)}
        />
        <span className="choice-words">
          <span>{label}</span>
          {detail && <span className="choice-detail soft">{detail}</span>}
        </span>
      </label>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}
