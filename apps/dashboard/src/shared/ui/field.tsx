import {
  type InputHTMLAttributes,
  type ReactNode,
  type SelectHTMLAttributes,
  type TextareaHTMLAttributes,
  useId,
} from 'react';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import './ui.css';

export type FieldFrame = {
  label: ReactNode;
  /** How to find or measure it. Always visible: there is no hover in the field. */
  hint?: ReactNode;
  /** What was typed, and what is allowed. */
  error?: ReactNode;
  /** Marks a question that may stay without an answer. */
  optional?: boolean;
  /** Keeps the label for screen readers only, where the screen's own heading asks the question. */
  labelHidden?: boolean;
};

export type FieldAria = { id: string; 'aria-describedby'?: string; 'aria-invalid'?: true };

/** Wires label, hint and error to whatever input stands in it. */
export function FormField({
  label,
  hint,
  error,
  optional,
  labelHidden,
  children,
}: FieldFrame & { children: (aria: FieldAria) => ReactNode }) {
  const id = useId();
  const t = useT(commonWords);
  const describedBy = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label className={labelHidden ? 'hidden-text' : 'field-label'} htmlFor={id}>
        {label}
        {optional && <span className="soft field-optional"> {t('optional')}</span>}
      </label>
      {hint && (
        <p className="field-hint soft" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {children({
        id,
        ...(describedBy ? { 'aria-describedby': describedBy } : {}),
        ...(error ? { 'aria-invalid': true } : {}),
      })}
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}

/** Always in the page, so that a screen reader hears the error when it arrives. */
export function FieldError({ id, children }: { id: string; children: ReactNode }) {
  return (
    <p className="field-error" id={id} aria-live="polite">
      {children}
    </p>
  );
}

type TextInputProps = FieldFrame &
  Omit<InputHTMLAttributes<HTMLInputElement>, 'onChange' | 'id'> & { value: string; onChange: (value: string) => void };

export function TextInput({ label, hint, error, optional, labelHidden, onChange, className, ...rest }: TextInputProps) {
  return (
    <FormField label={label} hint={hint} error={error} optional={optional} labelHidden={labelHidden}>
      {(aria) => (
        <input
          type="text"
          {...rest}
          {...aria}
          className={`input ${className ?? ''}`}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </FormField>
  );
}

type TextAreaProps = FieldFrame &
  Omit<TextareaHTMLAttributes<HTMLTextAreaElement>, 'onChange' | 'id'> & {
    value: string;
    onChange: (value: string) => void;
  };

export function TextArea({ label, hint, error, optional, labelHidden, onChange, ...rest }: TextAreaProps) {
  return (
    <FormField label={label} hint={hint} error={error} optional={optional} labelHidden={labelHidden}>
      {(aria) => (
        <textarea rows={3} {...rest} {...aria} className="input" onChange={(event) => onChange(event.target.value)} />
      )}
    </FormField>
  );
}

export type SelectOption = { value: string; label: string };

type SelectProps = FieldFrame &
  Omit<SelectHTMLAttributes<HTMLSelectElement>, 'onChange' | 'id'> & {
    value: string;
    options: readonly SelectOption[];
    /** Shown as the first line while nothing is chosen. */
    emptyLabel?: string;
    onChange: (value: string) => void;
  };

export function Select({
  label,
  hint,
  error,
  optional,
  labelHidden,
  options,
  emptyLabel,
  onChange,
  ...rest
}: SelectProps) {
  const t = useT(commonWords);
  return (
    <FormField label={label} hint={hint} error={error} optional={optional} labelHidden={labelHidden}>
      {(aria) => (
        <select {...rest} {...aria} className="input" onChange={(event) => onChange(event.target.value)}>
          {(emptyLabel !== undefined || rest.value === '') && <option value="">{emptyLabel ?? t('choose')}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}
