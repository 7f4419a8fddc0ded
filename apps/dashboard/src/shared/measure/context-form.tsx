import type { Situation } from '@underlath/rules/kernel';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { contextWords } from '../i18n/messages/context.ts';
import { RadioGroup } from '../ui/choice.tsx';
import { Select } from '../ui/field.tsx';

const flags = ['shored', 'occupiedBelow', 'positiveConnection'] as const;

type ContextFormProps = {
  context: Situation;
  onChange: (context: Situation) => void;
  /** What the stories are taken to be when nobody chooses; "not known" when left out. */
  storiesUnknown?: string;
};

/** What the severity table asks beyond the measurements. Not known is taken cautiously. */
export function ContextForm({ context, onChange, storiesUnknown }: ContextFormProps) {
  const t = useT(contextWords);
  const c = useT(commonWords);
  const without = (name: keyof Situation): Situation => {
    const { [name]: _old, ...rest } = context;
    return rest;
  };
  return (
    <details className="context" open={Object.keys(context).length > 0}>
      <summary>{t('around')}</summary>
      <div className="stack">
        <Select
          label={t('storiesAbove')}
          emptyLabel={storiesUnknown ?? c('notKnown')}
          options={['0', '1', '2', '3', '4'].map((value) => ({ value, label: value }))}
          value={context.storiesAbove === undefined ? '' : String(context.storiesAbove)}
          onChange={(value) =>
            onChange(value === '' ? without('storiesAbove') : { ...context, storiesAbove: Number(value) })
          }
        />
        {flags.map((name) => (
          <RadioGroup
            key={name}
            label={t(name)}
            hint={t(`${name}Hint`)}
            layout="row"
            options={[
              { value: 'yes', label: c('yes') },
              { value: 'no', label: c('no') },
              { value: 'unknown', label: c('notKnown') },
            ]}
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
