import type { Estimate, Problem } from '@underlath/contract';
import { repairs } from '@underlath/rules';
import { useState } from 'react';
import { v7 } from 'uuid';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { Part } from '../desk/page.tsx';
import { type AlternateDraft, type EstimateDraft, withRepair, withTakenUp } from './draft.ts';
import { LineEditor } from './line-editor.tsx';

type Change = (make: (draft: EstimateDraft) => EstimateDraft) => void;
type AlternatesEditorProps = { draft: EstimateDraft; change: Change; problem: Problem | null; estimate: Estimate };

const kinds = [
  { value: 'repair', label: 'repair what is there' },
  { value: 'replace', label: 'replace it' },
  { value: 'better', label: 'make it better than asked' },
];

const most = 6;

/** Other ways to do it: each with its own work, shown in the letter as a difference to the price and in no sum. */
export function AlternatesEditor({ draft, change, problem, estimate }: AlternatesEditorProps) {
  const announce = useAnnounce();
  const add = () =>
    change((old) => ({
      ...old,
      alternates: [
        ...old.alternates,
        { key: v7(), kind: 'replace', en: '', es: '', choices: [], lines: [], manual: [] },
      ],
    }));
  return (
    <Part
      title="Other ways to do it"
      lead="The letter shows each with what it would change in the price. None of them is in the price."
    >
      {draft.alternates.map((alternate, at) => (
        <AlternateForm
          key={alternate.key}
          alternate={alternate}
          at={at}
          problem={problem}
          options={estimate.options}
          price={estimate.alternatePrices[at]}
          onChange={(make) =>
            change((old) => ({
              ...old,
              alternates: old.alternates.map((one) => (one.key === alternate.key ? make(one) : one)),
            }))
          }
          onTakeUp={() => {
            change((old) => withTakenUp(old, alternate.key));
            announce(
              `“${alternate.en || `Way ${at + 1}`}” is the repair now. What was the repair waits here as another way.`,
            );
          }}
          onRemove={() =>
            change((old) => ({ ...old, alternates: old.alternates.filter(({ key }) => key !== alternate.key) }))
          }
        />
      ))}
      {draft.alternates.length < most && <Button onClick={add}>Add another way</Button>}
    </Part>
  );
}

type AlternateFormProps = {
  alternate: AlternateDraft;
  at: number;
  problem: Problem | null;
  options: Estimate['options'];
  price: Estimate['alternatePrices'][number] | undefined;
  onChange: (make: (alternate: AlternateDraft) => AlternateDraft) => void;
  onTakeUp: () => void;
  onRemove: () => void;
};

function AlternateForm({ alternate, at, problem, options, price, onChange, onTakeUp, onRemove }: AlternateFormProps) {
  const pointer = `/alternates/${at}`;
  const name = alternate.en.trim() || `Way ${at + 1}`;
  return (
    <fieldset className="alternate">
      <legend>{name}</legend>
      <div className="alternate-names">
        <TextInput
          label="Name in the letter"
          value={alternate.en}
          maxLength={160}
          error={errorAt(problem, `${pointer}/name/en`)}
          onChange={(en) => onChange((old) => ({ ...old, en }))}
        />
        <TextInput
          label="Name in Spanish"
          lang="es"
          value={alternate.es}
          maxLength={160}
          error={errorAt(problem, `${pointer}/name/es`)}
          onChange={(es) => onChange((old) => ({ ...old, es }))}
        />
        <Select
          label="What it does"
          options={kinds}
          value={alternate.kind}
          onChange={(kind) => onChange((old) => ({ ...old, kind: kind as AlternateDraft['kind'] }))}
        />
      </div>
      <AlternateRepairs alternate={alternate} options={options} onChange={onChange} />
      <LineEditor draft={alternate} change={onChange} scope={price?.scope} problem={problem} of={{ name, pointer }} />
      {errorAt(problem, pointer) && <p className="field-error">{errorAt(problem, pointer)}</p>}
      <p className="alternate-price">
        <Difference price={price} />
      </p>
      <div className="row">
        <Button onClick={onTakeUp}>
          Make this the repair<span className="hidden-text">: {name}</span>
        </Button>
        <Button look="quiet" onClick={onRemove}>
          Remove “{name}”
        </Button>
      </div>
    </fieldset>
  );
}

function Difference({ price }: Pick<AlternateFormProps, 'price'>) {
  if (!price) return 'It is priced once it is complete.';
  if (price.differenceCents === null) return 'The cost book lacks a rate for it, so that its price is not known.';
  return (
    <>
      Instead of the price above: <Money cents={price.differenceCents} sign /> (<Money cents={price.scope.totalCents} />{' '}
      alone).
    </>
  );
}

function AlternateRepairs({
  alternate,
  options,
  onChange,
}: Pick<AlternateFormProps, 'alternate' | 'options' | 'onChange'>) {
  const [more, setMore] = useState('');
  const isChosen = (id: string) => alternate.choices.some(({ repairId }) => repairId === id);
  const listed = repairs.filter(({ id }) => isChosen(id) || options.some(({ repairId }) => repairId === id));
  const others = repairs.filter((repair) => !listed.includes(repair));
  const set = (id: string, on: boolean) => onChange((old) => withRepair(old, id, on));
  return (
    <>
      <div className="repair-options">
        {listed.map(({ id, title }) => (
          <Checkbox key={id} label={title.en} checked={isChosen(id)} onChange={(on) => set(id, on)} />
        ))}
      </div>
      <div className="inline-form">
        <Select
          label="Another repair"
          options={others.map(({ id, title }) => ({ value: id, label: title.en }))}
          value={more}
          onChange={setMore}
        />
        <Button
          disabled={more === ''}
          onClick={() => {
            set(more, true);
            setMore('');
          }}
        >
          Take it into this way
        </Button>
      </div>
    </>
  );
}
