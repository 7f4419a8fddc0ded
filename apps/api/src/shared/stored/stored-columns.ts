import type {
  ContractEffect,
  ContractTerms,
  EstimateContent,
  FindingContext,
  KeptSegment,
  Opening,
  Rectangle,
  Wording,
} from '@underlath/contract';
import { type CostBook, type Outcome, SEVERITIES, VERDICTS } from '@underlath/rules';
import type { Mark, SpanishNames } from '@underlath/rules/offers';
import * as z from 'zod';
import { readerOf, shaped } from './stored-value.ts';

const text = z.looseObject({ en: z.string(), es: z.string() });
const list = z.array(z.unknown());
const named = z.looseObject({ name: z.string() });

/** What a check found, in words of both languages. */
export const readOutcome = readerOf('judgment.outcome', {
  1: shaped<Outcome>(
    z.looseObject({
      verdict: z.enum(VERDICTS),
      severity: z.enum(SEVERITIES),
      ratio: z.number().nullable(),
      remaining: z.number().nullable(),
      values: z.record(z.string(), z.looseObject({})),
      reasons: z.array(text),
      missing: z.array(z.string()),
      sources: z.array(z.looseObject({ id: z.string() })),
      cautions: z.array(text),
      referrals: z.array(z.string()),
      repairs: z.array(z.string()),
    }),
  ),
});

/** By name, as the check took them. */
export const readInputs = readerOf('judgment.inputs', {
  1: shaped<Record<string, unknown>>(z.record(z.string(), z.unknown())),
});

export const readJudgedContext = readerOf('judgment.context', { 1: shaped<FindingContext>(z.looseObject({})) });
export const readContext = readerOf('finding.context', { 1: shaped<FindingContext>(z.looseObject({})) });

const rectangle = z.looseObject({ xIn: z.number(), yIn: z.number(), widthIn: z.number(), heightIn: z.number() });

const readRectangle = readerOf('finding.extent', { 1: shaped<Rectangle>(rectangle) });
export const readExtent = (row: string, value: unknown): Rectangle | null =>
  value === null ? null : readRectangle(row, value);

export const readOpenings = readerOf('location.openings', {
  1: shaped<Opening[]>(z.array(rectangle.extend({ name: z.string() }))),
});

/** What is kept of an estimate. */
export interface SavedEstimate extends EstimateContent {
  costBookVersion: number;
  /** Sum of its printed lines alone; null when the cost book lacked a rate. */
  linesCents: number | null;
}

const ownLines = {
  choices: z.array(z.looseObject({ repairId: z.string(), quantities: z.record(z.string(), z.looseObject({})) })),
  manualLines: z.array(z.looseObject({ title: z.string(), quantity: z.number(), unitCents: z.number() })).default([]),
  overrides: z.array(z.looseObject({ operation: z.string(), why: z.string() })).default([]),
};

const readSaved = readerOf('finding.estimate', {
  // Lists that were added to it later are empty in what was kept before.
  1: shaped<SavedEstimate>(
    z.looseObject({
      ...ownLines,
      exclusions: z.array(text).default([]),
      alternates: z.array(z.looseObject({ ...ownLines, name: text })).default([]),
    }),
  ),
});
export const readEstimate = (row: string, value: unknown): SavedEstimate | null =>
  value === null ? null : readSaved(row, value);

export const readCostBook = readerOf('cost_book.book', {
  1: shaped<CostBook>(
    z.looseObject({
      trades: z.array(z.looseObject({ id: z.string() })),
      items: z.array(z.looseObject({ operation: z.string(), unit: z.string() })),
      fees: z.array(z.looseObject({ id: z.string(), cents: z.number() })),
      overheadPct: z.number(),
      profitPct: z.number(),
      stacking: z.string(),
    }),
  ),
});

export const readMilestones = readerOf('contract_terms.milestones', {
  1: shaped<ContractTerms['milestones']>(z.array(named.extend({ id: z.string(), cents: z.number() }))),
});

export const readWording = readerOf('change_order.wording', {
  1: shaped<Wording>(z.looseObject({ headline: text, found: text, why: text, ifNot: text, note: text })),
});

export const readMarks = readerOf('change_order.marks', {
  1: shaped<Mark[]>(z.array(z.looseObject({ field: z.string(), finding: z.looseObject({}).nullable() }))),
});

const names = z.record(z.string(), z.string()).default({});
export const readSpanish = readerOf('change_order.spanish', {
  1: shaped<SpanishNames>(z.looseObject({ titles: names, places: names, captions: names })),
});

const readDecided = readerOf('decision.contract', {
  1: shaped<ContractEffect>(z.looseObject({ beforeCents: z.number(), afterCents: z.number() })),
});
export const readEffect = (row: string, value: unknown): ContractEffect | null =>
  value === null ? null : readDecided(row, value);

export const readSegments = readerOf('load_path.segments', {
  1: shaped<KeptSegment[]>(z.array(named.extend({ links: z.array(named.extend({ findingIds: list })) }))),
});
