import { decimal, formatCents, type Text, text } from '../../kernel/index.ts';
import {
  type OverrideField,
  type OverrideMark,
  RATE_FIELDS,
  type RateField,
  type TypedRates,
} from '../../repairs/overrides.ts';
import type { CostItem } from '../book/cost-book.ts';

/** A line's rates as they are counted; null is not known. */
export type LineRates = Readonly<Record<RateField, number | null>>;

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
