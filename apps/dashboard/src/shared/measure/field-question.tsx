import { type Field, type Locale, MOST_COUNTED, refusalWords, say, type Text } from '@underlath/rules/kernel';
import { useEffect, useId, useState } from 'react';
import { signWordsOf } from '../drawing/tape-picture.tsx';
import { useLocale, useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { measureWords } from '../i18n/messages/measure.ts';
import { Button } from '../ui/button.tsx';
import { RadioGroup } from '../ui/choice.tsx';
import { FieldError, Select, TextInput } from '../ui/field.tsx';
import { givenOrDefault, type Inputs, isOptional, setAnswer, visibleFields, withDefaults } from './form.ts';
import { Length } from './length.tsx';
import { MeasureInput } from './measure-input.tsx';
import { useReportRefusal } from './refusals.tsx';
import { useRested } from './use-rested.ts';
import './measure.css';

export type QuestionProps<F extends Field = Field> = {
  name: string;
  field: F;
  value: unknown;
  onChange: (value: unknown) => void;
  optional: boolean;
  /** Key pads and large targets instead of boxes to type in. */
  pad?: boolean;
  /** The screen's own heading asks the question already. */
  labelHidden?: boolean;
  /** Errors by path: `counts.flush`, `members.0.sizeIn`. */
  errors: Readonly<Record<string, string>>;
  path: string;
};

/** The question a field of a check asks, in the form its kind needs. */
export function FieldQuestion(props: QuestionProps) {
  const { field } = props;
  switch (field.kind) {
    case 'length':
      return <LengthQuestion {...props} field={field} />;
    case 'number':
      return <NumberQuestion {...props} field={field} />;
    case 'count':
      return <CountQuestion {...props} field={field} />;
    case 'choice':
      return <ChoiceQuestion {...props} field={field} />;
    case 'flag':
      return <FlagQuestion {...props} field={field} />;
    case 'name':
      return <NameQuestion {...props} field={field} />;
    case 'group':
      return <GroupQuestion {...props} field={field} />;
    case 'list':
      return <ListQuestion {...props} field={field} />;
  }
}

type Of<K extends Field['kind']> = QuestionProps<Extract<Field, { kind: K }>>;

function useWords() {
  const { locale } = useLocale();
  return (words: Text | undefined) => (words ? say(words, locale as Locale) : undefined);
}

/** The frame every input part takes. */
function useFrame({ field, optional, labelHidden, errors, path }: QuestionProps) {
  const words = useWords();
  return {
    label: words(field.label) ?? path,
    hint: labelHidden ? undefined : words(field.howToMeasure),
    error: errors[path],
    optional,
    labelHidden: labelHidden ?? false,
  };
}

function LengthQuestion(props: Of<'length'>) {
  const { field, value, onChange, pad } = props;
  const frame = useFrame(props);
  const { locale } = useLocale();
  if (field.oneOf) return <SizeQuestion {...props} sizesIn={field.oneOf} />;
  const signWords = signWordsOf(field.picture, locale);
  return (
    <MeasureInput
      {...frame}
      unit={field.unit}
      min={field.min}
      max={field.max}
      denominator={field.denominator ?? 16}
      value={typeof value === 'number' ? value : null}
      onChange={onChange}
      pad={pad ?? false}
      {...(signWords ? { signWords } : {})}
    />
  );
}

/** Where only some sizes exist, they are the answers. */
function SizeQuestion({ sizesIn, ...props }: Of<'length'> & { sizesIn: readonly number[] }) {
  const { value, onChange, optional } = props;
  const t = useT(commonWords);
  const sizes = sizesIn.map((size) => ({ value: String(size), label: <Length inches={size} style="inches" /> }));
  return (
    <RadioGroup
      {...useFrame(props)}
      value={typeof value === 'number' ? String(value) : optional ? '' : null}
      options={optional ? [...sizes, { value: '', label: t('notKnown') }] : sizes}
      onChange={(next) => onChange(next === '' ? undefined : Number(next))}
      layout="row"
    />
  );
}

const unitKeys = ['pct', 'F', 'sf', 'lb', 'plf', 'psi'] as const;

function NumberQuestion(props: Of<'number'>) {
  const { field, value, onChange } = props;
  const { error, ...frame } = useFrame(props);
  const t = useT(measureWords);
  const words = useWords();
  const key = unitKeys.find((unit) => unit === field.unit);
  const unit = key ? t(`unit_${key}`) : field.unit;
  return (
    <DecimalInput
      {...frame}
      error={error}
      label={unit && unit !== 'year' ? `${frame.label} (${unit})` : frame.label}
      refusal={words(refusalWords(field))}
      min={field.min}
      max={field.max}
      value={typeof value === 'number' ? value : null}
      onChange={onChange}
    />
  );
}

type DecimalInputProps = {
  label: string;
  hint?: string | undefined;
  error?: string | undefined;
  optional?: boolean;
  labelHidden?: boolean;
  min: number;
  max: number;
  whole?: boolean;
  /** Said of a number that can't be. */
  refusal: string | undefined;
  value: number | null;
  onChange: (value: number | null) => void;
};

/** A number as typed; what can't be read stays in the box with the reason under it. */
function DecimalInput({ min, max, whole, refusal, value, onChange, error, ...frame }: DecimalInputProps) {
  const [typed, setTyped] = useState(value === null ? '' : String(value));
  const [rested, settle] = useRested(typed);
  const read = (text: string): number | null => {
    const tidy = text.trim().replace(/(\d),(?=\d{3}\b)/g, '$1');
    const number = Number(tidy);
    const readable = tidy !== '' && Number.isFinite(number) && number >= min && number <= max;
    return readable && (!whole || Number.isInteger(number)) ? number : null;
  };
  const now = read(typed);
  useEffect(() => {
    if (value !== null && value !== now) setTyped(String(value));
  }, [value, now]);
  const own = typed.trim() !== '' && now === null ? refusal : undefined;
  useReportRefusal(own !== undefined);
  return (
    <TextInput
      {...frame}
      error={(rested === typed ? own : undefined) ?? error}
      value={typed}
      inputMode={whole ? 'numeric' : 'decimal'}
      autoComplete="off"
      className="input-length"
      onBlur={settle}
      onChange={(next) => {
        setTyped(next);
        onChange(read(next));
      }}
    />
  );
}

function CountQuestion(props: Of<'count'>) {
  const { field, value, onChange, pad } = props;
  const frame = useFrame(props);
  const t = useT(measureWords);
  const words = useWords();
  const number = typeof value === 'number' ? value : null;
  const [min, max] = [field.min ?? 0, field.max ?? MOST_COUNTED];
  const box = (
    <DecimalInput
      {...frame}
      whole
      refusal={words(refusalWords(field))}
      min={min}
      max={max}
      value={number}
      onChange={onChange}
    />
  );
  if (!pad) return box;
  return (
    <div className="count">
      {box}
      <Button
        aria-label={`${t('fewer')}: ${frame.label}`}
        disabled={number === null || number <= min}
        onClick={() => onChange(Math.max(min, (number ?? 0) - 1))}
      >
        −
      </Button>
      <Button
        aria-label={`${t('more')}: ${frame.label}`}
        disabled={number !== null && number >= max}
        onClick={() => onChange(Math.min(max, (number ?? min - 1) + 1))}
      >
        +
      </Button>
    </div>
  );
}

const mostInSight = 8;

function ChoiceQuestion(props: Of<'choice'>) {
  const { field, value, onChange, optional } = props;
  const words = useWords();
  const t = useT(commonWords);
  const options = field.options.map((option) => ({ value: option.value, label: words(option.label) ?? option.value }));
  const unknown = optional ? [{ value: '', label: t('notKnown') }] : [];
  const frame = useFrame(props);
  const put = (next: string) => onChange(next === '' ? undefined : next);
  // More than can be taken in at a glance are chosen from a list.
  if (options.length > mostInSight) {
    return (
      <Select
        {...frame}
        value={typeof value === 'string' ? value : ''}
        options={options}
        emptyLabel={optional ? t('notKnown') : t('choose')}
        onChange={put}
      />
    );
  }
  return (
    <RadioGroup
      {...frame}
      value={typeof value === 'string' ? value : optional ? '' : null}
      options={[...options, ...unknown]}
      onChange={put}
      layout={options.length > 4 || options.some((option) => option.label.length > 18) ? 'column' : 'row'}
    />
  );
}

function FlagQuestion(props: Of<'flag'>) {
  const { value, onChange } = props;
  const t = useT(commonWords);
  return (
    <RadioGroup
      {...useFrame(props)}
      optional={false}
      value={value === true ? 'yes' : value === false ? 'no' : 'unknown'}
      options={[
        { value: 'yes', label: t('yes') },
        { value: 'no', label: t('no') },
        { value: 'unknown', label: t('notKnown') },
      ]}
      onChange={(next) => onChange(next === 'unknown' ? undefined : next === 'yes')}
      layout="row"
    />
  );
}

function NameQuestion(props: Of<'name'>) {
  const { field, value, onChange } = props;
  return (
    <TextInput
      {...useFrame(props)}
      value={typeof value === 'string' ? value : ''}
      maxLength={field.maxLength ?? 60}
      autoComplete="off"
      onChange={(next) => onChange(next === '' ? undefined : next)}
    />
  );
}

type SubFieldsProps = Pick<QuestionProps, 'pad' | 'errors' | 'path'> & {
  fields: Extract<Field, { kind: 'group' }>['fields'];
  inputs: Inputs;
  onChange: (inputs: Inputs) => void;
};

/** The questions of a group or of one item of a list, under each other. */
export function SubFields({ fields, inputs, onChange, pad, errors, path }: SubFieldsProps) {
  const answers = withDefaults(fields, inputs);
  return (
    <div className="sub-fields">
      {visibleFields(fields, inputs).map(({ name, field }) => (
        <FieldQuestion
          key={name}
          name={name}
          field={field}
          value={givenOrDefault(name, field, inputs)}
          onChange={(value) => onChange(setAnswer(inputs, name, value))}
          optional={isOptional(field, answers)}
          // A pad for each of several lengths would fill the screen; they are typed.
          pad={(pad ?? false) && field.kind === 'count'}
          errors={errors}
          path={path ? `${path}.${name}` : name}
        />
      ))}
    </div>
  );
}

function GroupQuestion(props: Of<'group'>) {
  const { field, value, onChange, pad, errors, path } = props;
  const { label, hint, error, labelHidden } = useFrame(props);
  const id = useId();
  return (
    <fieldset className="field" aria-describedby={`${id}-error`}>
      <legend className={labelHidden ? 'hidden-text' : 'field-label'}>{label}</legend>
      {hint && <p className="field-hint soft">{hint}</p>}
      <SubFields
        fields={field.fields}
        inputs={(value ?? {}) as Inputs}
        onChange={(next) => onChange(Object.keys(next).length > 0 ? next : undefined)}
        pad={pad ?? false}
        errors={errors}
        path={path}
      />
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </fieldset>
  );
}

function ListQuestion(props: Of<'list'>) {
  const { field, value, onChange, pad, errors, path } = props;
  const { label, hint, error, labelHidden } = useFrame(props);
  const t = useT(measureWords);
  const id = useId();
  const items = Array.isArray(value) ? (value as Inputs[]) : [];
  const least = Math.max(1, field.minItems ?? 0);
  const shown = items.length >= least ? items : [...items, ...Array.from({ length: least - items.length }, () => ({}))];
  const put = (next: Inputs[]) => onChange(next.length > 0 ? next : undefined);
  const nameOf = (item: Inputs, at: number) =>
    typeof item.name === 'string' && item.name ? item.name : t('itemName', { number: at + 1 });
  return (
    <fieldset className="field" aria-describedby={`${id}-error`}>
      <legend className={labelHidden ? 'hidden-text' : 'field-label'}>{label}</legend>
      {hint && <p className="field-hint soft">{hint}</p>}
      {shown.map((item, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: items are known by their place in the list, as the rules name them
        <div className="list-item" key={at}>
          <div className="list-item-head">
            <h3>{nameOf(item, at)}</h3>
            {shown.length > least && (
              <Button look="quiet" onClick={() => put(shown.toSpliced(at, 1))}>
                {t('removeItem', { name: nameOf(item, at) })}
              </Button>
            )}
          </div>
          <SubFields
            fields={field.item}
            inputs={item}
            onChange={(next) => put(shown.with(at, next))}
            pad={pad ?? false}
            errors={errors}
            path={`${path}.${at}`}
          />
        </div>
      ))}
      {shown.length < (field.maxItems ?? 200) && <Button onClick={() => put([...shown, {}])}>{t('addItem')}</Button>}
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </fieldset>
  );
}
