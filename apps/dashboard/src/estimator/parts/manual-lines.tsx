import type { ManualLine } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { readDollars, readNumber } from './numbers.ts';
import { Part } from './page.tsx';
import { useDraft } from './use-draft.ts';

type ManualLinesProps = { lines: readonly ManualLine[]; onChange: (lines: ManualLine[]) => void };

/** Lines no template made: an engineer's visit, a permit fee. Each with the reason it is there. */
export function ManualLines({ lines, onChange }: ManualLinesProps) {
  const [adding, setAdding] = useState(false);
  return (
    <Part title="Lines of your own" lead="For what no repair knows: an engineer’s visit, a permit, a special part.">
      {lines.length > 0 && (
        <ul className="manual-lines">
          {lines.map((line, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no identity of their own and are only added at the end or taken away
            <li key={at}>
              <span>
                <b>{line.title}</b>, {line.quantity} {line.unit} at <Money cents={line.unitCents} />
                <span className="soft small manual-why">{line.why}</span>
              </span>
              <Money cents={Math.round(line.quantity * line.unitCents)} />
              <Button look="quiet" onClick={() => onChange(lines.filter((_, each) => each !== at))}>
                Remove {line.title}
              </Button>
            </li>
          ))}
        </ul>
      )}
      {adding ? (
        <AddLine
          onCancel={() => setAdding(false)}
          onAdd={(line) => {
            onChange([...lines, line]);
            setAdding(false);
          }}
        />
      ) : (
        <p>
          <Button onClick={() => setAdding(true)}>Add a line</Button>
        </p>
      )}
    </Part>
  );
}

function AddLine({ onAdd, onCancel }: { onAdd: (line: ManualLine) => void; onCancel: () => void }) {
  const { draft, set } = useDraft({ title: '', quantity: '1', unit: 'each', unitPrice: '', why: '' });
  const [tried, setTried] = useState(false);
  const quantity = readNumber(draft.quantity);
  const unitCents = readDollars(draft.unitPrice);
  const wrong = {
    title: draft.title.trim() === '' ? 'Say what it is.' : undefined,
    quantity: typeof quantity !== 'number' || quantity <= 0 ? 'Type a number above zero.' : undefined,
    unit: draft.unit.trim() === '' ? 'Say the unit: each, hour, sq ft.' : undefined,
    unitPrice: typeof unitCents !== 'number' ? 'Type dollars, like 250 or 250.50.' : undefined,
    why: draft.why.trim() === '' ? 'A reason is needed; it is kept with the price.' : undefined,
  };
  const shown = tried ? wrong : ({} as Partial<typeof wrong>);
  function submit(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (Object.values(wrong).some(Boolean)) return;
    onAdd({
      title: draft.title.trim(),
      quantity: quantity as number,
      unit: draft.unit.trim(),
      unitCents: unitCents as number,
      why: draft.why.trim(),
    });
  }
  return (
    <form className="add-line" onSubmit={submit} noValidate>
      <TextInput label="What it is" value={draft.title} onChange={set('title')} error={shown.title} maxLength={160} />
      <TextInput
        label="Quantity"
        inputMode="decimal"
        className="number"
        value={draft.quantity}
        onChange={set('quantity')}
        error={shown.quantity}
      />
      <TextInput label="Unit" value={draft.unit} onChange={set('unit')} error={shown.unit} maxLength={20} />
      <TextInput
        label="Dollars per unit"
        inputMode="decimal"
        className="number"
        value={draft.unitPrice}
        onChange={set('unitPrice')}
        error={shown.unitPrice}
      />
      <TextInput label="Why it is there" value={draft.why} onChange={set('why')} error={shown.why} maxLength={400} />
      <p className="row">
        <Button type="submit">Add it</Button>
        <Button look="quiet" onClick={onCancel}>
          Cancel
        </Button>
      </p>
    </form>
  );
}
