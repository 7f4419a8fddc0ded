import type { Problem } from '@underlath/contract';
import { type InputHTMLAttributes, useId } from 'react';
import { FieldError } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';

type CellProps = Omit<InputHTMLAttributes<HTMLInputElement>, 'onChange' | 'value'> & {
  /** Said by a screen reader; a table's cell has no visible label of its own. */
  name: string;
  value: string;
  onChange: (value: string) => void;
  problem: Problem | null;
  /** Where the server's error for this cell points, most precise first. */
  pointers: readonly string[];
  figure?: boolean;
};

/** One editable cell with its own error line. */
export function Cell({ name, value, onChange, problem, pointers, figure, ...rest }: CellProps) {
  const id = useId();
  const error = pointers.map((pointer) => errorAt(problem, pointer)).find(Boolean);
  return (
    <>
      <input
        {...rest}
        className={figure ? 'input number' : 'input'}
        inputMode={figure ? 'decimal' : undefined}
        aria-label={name}
        aria-invalid={error ? true : undefined}
        aria-describedby={error ? id : undefined}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
      <FieldError id={id}>{error}</FieldError>
    </>
  );
}
