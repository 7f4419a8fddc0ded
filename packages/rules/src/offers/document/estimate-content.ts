import * as z from 'zod';
import { MAX_CENTS } from '../../pricing/estimate/estimate-input.ts';
import { RATE_FIELDS } from '../../repairs/overrides.ts';
import { cents, words } from '../../schemas/values.ts';

/** What a line typed by hand does: it is charged, given back, or set aside until its cost is known. */
export const manualKind = z.enum(['charge', 'credit', 'allowance']);

/**
 * A line that no template made: typed by the estimator, with a reason that is kept. A credit lowers the price by what
 * the same charge would add, overhead and profit included; an allowance is in the price until it is spent.
 */
export const manualLine = z
  .strictObject({
    title: words(160),
    /** For the client's letter; the title stands in where there is none. */
    titleEs: words(160).optional(),
    /** Left out it is a charge. */
    kind: manualKind.optional(),
    quantity: z.number().positive().max(100_000),
    unit: words(20),
    unitCents: cents,
    why: words(400),
  })
  .refine(({ kind = 'charge', unitCents }) => kind === 'charge' || unitCents > 0, {
    path: ['unitCents'],
    error: ({ input }) => {
      const { kind, unitCents } = input as { kind: string; unitCents: number };
      return `of ${kind === 'credit' ? 'a credit' : 'an allowance'} came as ${unitCents}; allowed is more than 0`;
    },
  });

/** A repair chosen for a finding; `quantities` replaces a quantity by operation, with the reason kept. */
export const repairChoice = z.strictObject({
  repairId: z.string().max(80),
  quantities: z
    .record(z.string().max(80), z.strictObject({ value: z.number().min(0).max(100_000), why: words(400) }))
    .default({}),
});

export const overrideField = z.enum(['quantity', ...RATE_FIELDS]);

const unitCents = z.int().min(0).max(MAX_CENTS).optional();

/**
 * What is typed over one line of the estimate, by its operation; what is left out stays measured and the book's. A
 * quantity of 0 leaves the work out and keeps the line. Hours are the likely ones, low and high keep their proportion.
 */
export const lineOverride = z
  .strictObject({
    operation: z.string().max(80),
    quantity: z.number().min(0).max(100_000).optional(),
    hoursPerUnit: z.number().min(0).max(10_000).optional(),
    materialCentsPerUnit: unitCents,
    equipmentCentsPerUnit: unitCents,
    subcontractCentsPerUnit: unitCents,
    /** A fee of the item is in it. */
    otherCentsPerUnit: unitCents,
    why: words(400),
  })
  .refine((override) => overrideField.options.some((field) => override[field] !== undefined), {
    error: `overrides nothing; give at least one of ${overrideField.options.join(', ')}`,
  });

/** A value of a line that is not measured or the book's, shown beside it. `was` is null where the book had none. */
export const overrideMark = z.object({
  field: overrideField,
  was: z.number().nullable(),
  is: z.number(),
  why: z.string(),
});

const bothLanguages = (max: number) => z.strictObject({ en: words(max), es: words(max) });

/** What the price does not cover, in the client's words. */
export const exclusion = bothLanguages(400);

export const alternateKind = z.enum(['repair', 'replace', 'better']);

const ownLines = {
  manualLines: z.array(manualLine).max(60).default([]),
  overrides: z.array(lineOverride).max(200).default([]),
};

/** Another way for the same finding, priced with the same book and in no sum. */
export const alternate = z
  .strictObject({
    kind: alternateKind,
    name: bothLanguages(160),
    choices: z.array(repairChoice).max(20).default([]),
    ...ownLines,
  })
  .refine(({ choices, manualLines }) => choices.length + manualLines.length > 0, {
    error: 'has no work; choose a repair or add a line',
  });

/** All that is kept of an estimate; everything else is worked out. */
export const estimateContent = z.strictObject({
  choices: z.array(repairChoice).max(20),
  ...ownLines,
  exclusions: z.array(exclusion).max(20).default([]),
  alternates: z.array(alternate).max(6).default([]),
});

export type ManualKind = z.infer<typeof manualKind>;
export type ManualLine = z.infer<typeof manualLine>;
export type RepairChoice = z.infer<typeof repairChoice>;
export type LineOverride = z.infer<typeof lineOverride>;
export type OverrideMark = z.infer<typeof overrideMark>;
export type Exclusion = z.infer<typeof exclusion>;
export type Alternate = z.infer<typeof alternate>;
export type EstimateContent = z.infer<typeof estimateContent>;
