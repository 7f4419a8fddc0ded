import type { FindingContext } from '@underlath/contract';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { Select } from '../../shared/ui/field.tsx';

type Flag = 'occupiedBelow' | 'shored' | 'positiveConnection';

const flags: { name: Flag; label: string; hint: string }[] = [
  { name: 'shored', label: 'Is it shored already?', hint: 'By someone qualified, carrying the load now.' },
  { name: 'occupiedBelow', label: 'Do people use the space below?', hint: '' },
  {
    name: 'positiveConnection',
    label: 'Is it fastened, not only resting?',
    hint: 'Bolts, straps, nails or a hanger that would hold it if it moved.',
  },
];
const answers = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
  { value: 'unknown', label: 'Not known' },
] as const;

type ContextFormProps = { context: FindingContext; onChange: (context: FindingContext) => void };

/** What the severity table asks beyond the measurements. Not known is taken cautiously. */
export function ContextForm({ context, onChange }: ContextFormProps) {
  const without = (name: keyof FindingContext): FindingContext => {
    const { [name]: _old, ...rest } = context;
    return rest;
  };
  return (
    <details className="context" open={Object.keys(context).length > 0}>
      <summary>Around it: stories above, shoring, who is below</summary>
      <div className="stack">
        <Select
          label="Full stories above it"
          emptyLabel="as the place says"
          options={['0', '1', '2', '3', '4'].map((value) => ({ value, label: value }))}
          value={context.storiesAbove === undefined ? '' : String(context.storiesAbove)}
          onChange={(value) =>
            onChange(value === '' ? without('storiesAbove') : { ...context, storiesAbove: Number(value) })
          }
        />
        {flags.map(({ name, label, hint }) => (
          <RadioGroup
            key={name}
            label={label}
            hint={hint}
            layout="row"
            options={answers}
            value={context[name] === undefined ? 'unknown' : context[name] ? 'yes' : 'no'}
            onChange={(value) =>
              onChange(value === 'unknown' ? without(name) : { ...context, [name]: value === 'yes' })
            }
          />
        ))}
      </div>
    </details>
  );
}
