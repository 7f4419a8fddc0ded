import * as z from 'zod';
import { id, text } from '../../schemas/values.ts';

/** What of a draft can be typed by hand; what was not follows the findings until it is sent. */
export const draftField = z.enum(['headline', 'found', 'why', 'ifNot', 'note', 'days']);

/** A typed field to look at before it is sent, and why. */
export const draftMark = z.object({ field: draftField, words: z.string() });

const spanishWords = z.record(id, z.string().trim().max(400));
/** Spanish of what is typed in English on site, by the id of the finding, place or photo; an empty one takes it away. */
export const spanishNames = z.strictObject({
  titles: spanishWords.default({}),
  places: spanishWords.default({}),
  captions: spanishWords.default({}),
});

/**
 * English that a Spanish letter would show, and the check's own words for it where there are some. Titles, places and captions
 * get their Spanish here, payments in the terms of the contract, lines typed by hand in the estimate of their finding.
 */
export const missingSpanish = z.object({
  kind: z.enum(['titles', 'places', 'captions', 'payments', 'lines']),
  /** Of the finding, place, photo, or the finding of the line; of a payment its name. */
  id: z.string(),
  english: z.string(),
  suggested: z.string().nullable(),
});

const wordingEdit = z.strictObject({
  headline: text.nullable().optional(),
  found: text.nullable().optional(),
  why: text.nullable().optional(),
  ifNot: text.nullable().optional(),
  note: text.nullable().optional(),
});

/** What was edited of a draft. */
export const draftEdit = z.strictObject({
  /** Only what was edited; null gives a field back to the findings. */
  wording: wordingEdit.optional(),
  /** Null: counted from the work again. */
  days: z.int().min(0).max(1000).nullable().optional(),
  findingIds: z.array(id).min(1).max(100).optional(),
  spanish: spanishNames.optional(),
  /** Marked fields that were looked at and stand as they are. */
  lookedAt: z.array(draftField).max(draftField.options.length).optional(),
});

export type DraftField = z.infer<typeof draftField>;
export type DraftMark = z.infer<typeof draftMark>;
export type SpanishNames = z.infer<typeof spanishNames>;
export type MissingSpanish = z.infer<typeof missingSpanish>;
export type DraftEdit = z.infer<typeof draftEdit>;
