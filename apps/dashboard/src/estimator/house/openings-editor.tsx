import type { Problem } from '@underlath/contract';
import { v7 } from 'uuid';
import { MeasureInput } from '../../shared/measure/measure-input.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';

export type DraftOpening = {
  key: string;
  name: string;
  xIn: number | null;
  yIn: number | null;
  widthIn: number | null;
  heightIn: number | null;
};

type OpeningsEditorProps = {
  openings: readonly DraftOpening[];
  onChange: (openings: DraftOpening[]) => void;
  problem: Problem | null;
};

const measures = [
  { name: 'xIn', label: 'From the left end', min: 0 },
  { name: 'yIn', label: 'Above the floor', min: 0 },
  { name: 'widthIn', label: 'Width', min: 1 },
  { name: 'heightIn', label: 'Height', min: 1 },
] as const;

/** Doors and windows of a wall. */
export function OpeningsEditor({ openings, onChange, problem }: OpeningsEditorProps) {
  const change = (key: string, part: Partial<DraftOpening>) =>
    onChange(openings.map((opening) => (opening.key === key ? { ...opening, ...part } : opening)));
  return (
    <fieldset className="form-group form-group-plain">
      <legend>Doors and windows</legend>
      {openings.map((opening, at) => (
        <div key={opening.key} className="opening-row">
          <TextInput
            label={`Opening ${at + 1}`}
            value={opening.name}
            onChange={(name) => change(opening.key, { name })}
            error={errorAt(problem, `/openings/${at}`) ?? errorAt(problem, `/openings/${at}/name`)}
          />
          {measures.map((measure) => (
            <MeasureInput
              key={measure.name}
              label={measure.label}
              // The example stands with the wall's own measures above.
              hint=""
              value={opening[measure.name]}
              onChange={(value) => change(opening.key, { [measure.name]: value })}
              min={measure.min}
              max={2400}
              error={errorAt(problem, `/openings/${at}/${measure.name}`)}
            />
          ))}
          <Button look="quiet" onClick={() => onChange(openings.filter((each) => each.key !== opening.key))}>
            Remove {opening.name || `opening ${at + 1}`}
          </Button>
        </div>
      ))}
      <p>
        <Button
          onClick={() =>
            onChange([...openings, { key: v7(), name: '', xIn: null, yIn: null, widthIn: null, heightIn: null }])
          }
        >
          Add an opening
        </Button>
      </p>
    </fieldset>
  );
}
