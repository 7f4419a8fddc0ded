import {
  type CaseOrigin,
  type Check,
  type CheckEvidence,
  type Condition,
  type Edition,
  type Field,
  type Fields,
  type Locale,
  leftOutWords,
  type Needed,
  type Source,
  say,
  type Text,
} from '../kernel/index.ts';

/** One input as the form and the API documentation show it, in one language. */
export interface FieldDescription {
  readonly name: string;
  readonly kind: Field['kind'];
  readonly label: string;
  readonly howToMeasure?: string;
  /** What is taken while it is left out. */
  readonly leftOut?: string;
  readonly picture?: string;
  readonly needed: Needed;
  readonly showWhen?: Condition;
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly denominator?: number;
  readonly oneOf?: readonly number[];
  readonly default?: string | number | boolean;
  readonly options?: readonly { readonly value: string; readonly label: string }[];
  readonly fields?: readonly FieldDescription[];
  readonly minItems?: number;
  readonly maxItems?: number;
}

/** A value of the answer; the name also stands for `name.item` when there is one for each item of a list. */
export interface ValueDescription {
  readonly name: string;
  readonly label: string;
  /** Its formula in words. */
  readonly how: string;
}

/** A check as `GET /api/v1/checks` shows it. */
export interface CheckDescription {
  readonly id: string;
  readonly title: string;
  readonly question: string;
  readonly element: string;
  readonly role: string;
  readonly editions: readonly { readonly id: string; readonly title: string }[];
  readonly defaultEdition: string;
  readonly fields: readonly FieldDescription[];
  readonly sources: readonly Source[];
  readonly repairs: readonly string[];
  readonly why: string;
  readonly ifNot: string;
  readonly doesNotCover: readonly string[];
  /** What the rule asks, in our words. */
  readonly rule: string;
  /** What the check answers, beside verdict and ratio. */
  readonly values: readonly ValueDescription[];
  readonly cases: readonly { readonly name: string; readonly origin: CaseOrigin; readonly source: string }[];
}

function describeField(name: string, field: Field, locale: Locale): FieldDescription {
  const { label, howToMeasure, needed, showWhen, picture, kind } = field;
  const leftOut = leftOutWords(field);
  return {
    name,
    kind,
    label: say(label, locale),
    ...(howToMeasure && { howToMeasure: say(howToMeasure, locale) }),
    ...(leftOut && { leftOut: say(leftOut, locale) }),
    ...(picture && { picture }),
    needed: needed ?? 'always',
    ...(showWhen && { showWhen }),
    ...limitsOf(field),
    ...('default' in field && field.default !== undefined && { default: field.default }),
    ...(field.kind === 'choice' && {
      options: field.options.map((option) => ({ value: option.value, label: say(option.label, locale) })),
    }),
    ...(field.kind === 'group' && { fields: describeFields(field.fields, locale) }),
    ...(field.kind === 'list' && { fields: describeFields(field.item, locale) }),
  };
}

function limitsOf(field: Field): Partial<FieldDescription> {
  if (field.kind === 'length')
    return {
      unit: field.unit,
      min: field.min,
      max: field.max,
      denominator: field.denominator ?? 16,
      ...(field.oneOf && { oneOf: field.oneOf }),
    };
  if (field.kind === 'number') return { unit: field.unit, min: field.min, max: field.max };
  if (field.kind === 'count') return { min: field.min ?? 0, ...(field.max !== undefined && { max: field.max }) };
  if (field.kind === 'list')
    return { minItems: field.minItems ?? 0, ...(field.maxItems !== undefined && { maxItems: field.maxItems }) };
  return {};
}

const describeFields = (fields: Fields, locale: Locale): FieldDescription[] =>
  Object.entries(fields).map(([name, field]) => describeField(name, field, locale));

const inOneLanguage = (texts: readonly Text[], locale: Locale): string[] => texts.map((words) => say(words, locale));

/** Everything a form, a report or a reader needs to know about a check, as JSON in one language. */
export async function describeCheck(check: Check, locale: Locale): Promise<CheckDescription> {
  const evidence = await check.cases();
  return {
    id: check.id,
    title: say(check.title, locale),
    question: say(check.question, locale),
    element: check.element,
    role: check.role,
    editions: check.editions.map((edition: Edition) => ({ id: edition.id, title: say(edition.title, locale) })),
    defaultEdition: check.defaultEdition,
    fields: describeFields(check.inputs, locale),
    sources: check.sources,
    repairs: check.repairs,
    why: say(check.client.why, locale),
    ifNot: say(check.client.ifNot, locale),
    doesNotCover: inOneLanguage(check.doesNotCover, locale),
    rule: say(evidence.rule, locale),
    values: describeValues(evidence, locale),
    cases: evidence.cases.map(({ name, origin, source }) => ({ name, origin, source })),
  };
}

const describeValues = ({ values }: CheckEvidence, locale: Locale): ValueDescription[] =>
  Object.entries(values).map(([name, { label, how }]) => ({ name, label: say(label, locale), how: say(how, locale) }));
