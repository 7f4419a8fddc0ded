import { decimal, formatCents, type Text, text } from '../kernel/index.ts';
import type { CostItem } from './cost-book.ts';

/** What of a line's rate can be set by hand; money in cents a unit, hours the likely ones a unit. */
export const RATE_FIELDS = [
  'hoursPerUnit',
  'materialCentsPerUnit',
  'equipmentCentsPerUnit',
  'subcontractCentsPerUnit',
  'otherCentsPerUnit',
] as const;
export type RateField = (typeof RATE_FIELDS)[number];
export type OverrideField = 'quantity' | RateField;

/** What was typed over one operation's line, with the reason that is kept. A field left out stays the book's. */
export interface LineOverride extends Partial<Readonly<Record<OverrideField, number | undefined>>> {
  readonly operation: string;
  readonly why: string;
}

/** One value set by hand, as it is shown beside the line. `was` is null where the book had none. */
export interface OverrideMark {
  readonly field: OverrideField;
  readonly was: number | null;
  readonly is: number;
  readonly why: string;
}

/** Rates typed over the book's, each with its reason. */
export type TypedRates = Partial<Readonly<Record<RateField, { readonly value: number; readonly why: string }>>>;

/** A line's rates as they are counted; null is not known. */
export type LineRates = Readonly<Record<RateField, number | null>>;

/**
 * The rates that several findings typed over one shared line. Where two typed the same rate the larger one counts, as
 * the larger amount of shared work does, so that the order of the findings changes nothing.
 */
export function mergeRates(overrides: readonly LineOverride[]): TypedRates {
  const typed: Partial<Record<RateField, { value: number; why: string }>> = {};
  for (const override of overrides)
    for (const field of RATE_FIELDS) {
      const value = override[field];
      const before = typed[field];
      if (value === undefined || (before && !isLarger({ value, why: override.why }, before))) continue;
      typed[field] = { value, why: override.why };
    }
  return typed;
}

type Typed = { readonly value: number; readonly why: string };
/** Equal values are told apart by their reasons, so that one of them is shown whatever the order. */
const isLarger = (one: Typed, other: Typed): boolean =>
  one.value > other.value || (one.value === other.value && one.why < other.why);

/** The rates of an item; `feeCents` is the fee that each unit costs beside the rest. */
export const ratesOf = (item: CostItem, feeCents: number): LineRates => ({
  hoursPerUnit: item.hoursPerUnit?.likely ?? null,
  materialCentsPerUnit: item.materialCentsPerUnit,
  equipmentCentsPerUnit: item.equipmentCentsPerUnit,
  subcontractCentsPerUnit: item.subcontractCentsPerUnit,
  otherCentsPerUnit: item.otherCentsPerUnit + feeCents,
});

/** Low and high hours keep their proportion to the likely ones; where the book has none, the hours do not vary. */
function hoursSet(hours: CostItem['hoursPerUnit'], likely: number): NonNullable<CostItem['hoursPerUnit']> {
  if (!hours || hours.likely === 0) return { low: likely, likely, high: likely };
  const factor = likely / hours.likely;
  return { low: Math.min(likely, hours.low * factor), likely, high: Math.max(likely, hours.high * factor) };
}

/** The item as it is priced with what was typed. Other cost that was typed holds the fee already. */
export function withTypedRates(item: CostItem, typed: TypedRates = {}): CostItem {
  const { fee, ...rest } = item;
  const other = typed.otherCentsPerUnit;
  return {
    ...rest,
    ...(fee !== undefined && !other && { fee }),
    ...(typed.hoursPerUnit && { hoursPerUnit: hoursSet(item.hoursPerUnit, typed.hoursPerUnit.value) }),
    ...(typed.materialCentsPerUnit && { materialCentsPerUnit: typed.materialCentsPerUnit.value }),
    ...(typed.equipmentCentsPerUnit && { equipmentCentsPerUnit: typed.equipmentCentsPerUnit.value }),
    ...(typed.subcontractCentsPerUnit && { subcontractCentsPerUnit: typed.subcontractCentsPerUnit.value }),
    ...(other && { otherCentsPerUnit: other.value }),
  };
}

/** What was typed beside what the book has, in the order of the fields. */
export const marksOf = (book: LineRates, typed: TypedRates = {}): OverrideMark[] =>
  RATE_FIELDS.flatMap((field) => {
    const set = typed[field];
    return set ? [{ field, was: book[field], is: set.value, why: set.why }] : [];
  });

const FIELD_WORDS: Readonly<Record<OverrideField, Text>> = {
  quantity: text('Quantity', 'Cantidad'),
  hoursPerUnit: text('Hours a unit', 'Horas por unidad'),
  materialCentsPerUnit: text('Material a unit', 'Material por unidad'),
  equipmentCentsPerUnit: text('Equipment a unit', 'Equipo por unidad'),
  subcontractCentsPerUnit: text('Subcontract a unit', 'Subcontrato por unidad'),
  otherCentsPerUnit: text('Other cost a unit', 'Otro costo por unidad'),
};

const shown = (field: OverrideField, value: number): string =>
  field.endsWith('CentsPerUnit') ? formatCents(value) : decimal(value, 4);

/** `Quantity set by the estimator: was 12.5, is 14.` The reason is typed in one language and stands after it. */
export function markWords({ field, was, is }: OverrideMark): Text {
  const { en, es } = FIELD_WORDS[field];
  const now = shown(field, is);
  const before =
    was === null
      ? text('not in the cost book', 'no está en el libro de costos')
      : text(`was ${shown(field, was)}`, `era ${shown(field, was)}`);
  return text(
    `${en} set by the estimator: ${before.en}, is ${now}.`,
    `${es}: lo fijó el estimador, ${before.es}, es ${now}.`,
  );
}
