import type { Problem } from '@underlath/contract';
import { v7 } from 'uuid';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { readDollars } from '../desk/numbers.ts';

export type DraftMilestone = { id: string; name: string; nameEs: string; dollars: string };

type MilestonesEditorProps = {
  milestones: readonly DraftMilestone[];
  originalSumCents: number;
  problem: Problem | null;
  onChange: (milestones: DraftMilestone[]) => void;
};

/** The payments agreed for the original sum, and what of it is left over. */
export function MilestonesEditor({ milestones, originalSumCents, problem, onChange }: MilestonesEditorProps) {
  const change = (id: string, part: Partial<DraftMilestone>) =>
    onChange(milestones.map((milestone) => (milestone.id === id ? { ...milestone, ...part } : milestone)));
  const cents = milestones.reduce((sum, { dollars }) => sum + (readDollars(dollars) ?? 0), 0);
  return (
    <fieldset className="form-group form-group-plain">
      <legend>Payments, in the order they come due</legend>
      {milestones.map(({ id, name, nameEs, dollars }, at) => (
        <div key={id} className="milestone-row">
          <TextInput
            label={`Payment ${at + 1}`}
            value={name}
            maxLength={80}
            onChange={(typed) => change(id, { name: typed })}
            error={errorAt(problem, `/milestones/${at}/name`)}
          />
          <TextInput
            label={<>In Spanish{<span className="hidden-text">, payment {at + 1}</span>}</>}
            lang="es"
            value={nameEs}
            maxLength={80}
            onChange={(typed) => change(id, { nameEs: typed })}
            error={errorAt(problem, `/milestones/${at}/nameEs`)}
          />
          <TextInput
            label={<>Amount{<span className="hidden-text"> of payment {at + 1}</span>}, $</>}
            inputMode="decimal"
            className="number"
            value={dollars}
            onChange={(typed) => change(id, { dollars: typed })}
            error={errorAt(problem, `/milestones/${at}/cents`)}
          />
          <Button look="quiet" onClick={() => onChange(milestones.filter((each) => each.id !== id))}>
            Remove<span className="hidden-text"> {name || `payment ${at + 1}`}</span>
          </Button>
        </div>
      ))}
      <p>
        <Button onClick={() => onChange([...milestones, { id: v7(), name: '', nameEs: '', dollars: '' }])}>
          Add a payment
        </Button>
      </p>
      <p role="status">
        In payments: <Money cents={cents} /> of <Money cents={originalSumCents} />.{' '}
        {cents !== originalSumCents && milestones.length > 0 && (
          <b>
            <Money cents={Math.abs(originalSumCents - cents)} />{' '}
            {cents < originalSumCents ? 'is left over.' : 'too much.'}
          </b>
        )}
      </p>
    </fieldset>
  );
}
