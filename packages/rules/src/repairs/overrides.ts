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
