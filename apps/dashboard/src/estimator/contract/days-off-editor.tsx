import type { Problem } from '@underlath/contract';
import { v7 } from 'uuid';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';

export type DraftDay = { key: string; day: string };

type DaysOffEditorProps = {
  days: readonly DraftDay[];
  problem: Problem | null;
  onChange: (days: DraftDay[]) => void;
};

/** Holidays and other days nobody works. They count only where days are working days. */
export function DaysOffEditor({ days, problem, onChange }: DaysOffEditorProps) {
  return (
    <fieldset className="field">
      <legend className="field-label">Days off, beside Saturdays and Sundays</legend>
      <ul className="days-off">
        {days.map(({ key, day }, at) => (
          <li key={key}>
            <TextInput
              label={`Day off ${at + 1}`}
              labelHidden
              type="date"
              value={day}
              onChange={(typed) => onChange(days.map((each) => (each.key === key ? { key, day: typed } : each)))}
              error={errorAt(problem, `/daysOff/${at}`)}
            />
            <Button look="quiet" onClick={() => onChange(days.filter((each) => each.key !== key))}>
              Remove<span className="hidden-text"> {day || `day off ${at + 1}`}</span>
            </Button>
          </li>
        ))}
      </ul>
      <p>
        <Button onClick={() => onChange([...days, { key: v7(), day: '' }])}>Add a day off</Button>
      </p>
    </fieldset>
  );
}
