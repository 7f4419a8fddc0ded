import * as z from 'zod';
import { hasNoMarks, hasOnlyBreaks, isPersonName, showsLetter, showsLetterOrDigit } from './written-words.ts';

/** A UUID; the maker of a thing chooses it (version 7), the phone included. */
export const id = z.uuid({ error: 'must be a UUID' });
/** RFC 3339 instant in UTC. */
export const instant = z.iso.datetime();
/** Calendar day, `2026-03-06`. */
export const day = z.iso.date();
const isInYears = (date: string): boolean => date >= '1900' && date < '2201';
/** A day or an instant that somebody gives; what is outside these years is a slip of the pen. */
export const givenDay = day.refine(isInYears, 'allowed is a day of the years 1900 to 2200');
export const givenInstant = instant.refine(isInYears, 'allowed is an instant of the years 1900 to 2200');
/** Words in both languages of the product. */
export const text = z.object({ en: z.string().max(4000), es: z.string().max(4000) });
export const locale = z.enum(['en', 'es']);
/** Integer US cents. Column width allows a little over 21 million dollars. */
export const cents = z.int().min(-2_000_000_000).max(2_000_000_000);
export const positiveCents = z.int().min(0).max(2_000_000_000);
export const currency = z.literal('USD');
export const role = z.enum(['owner', 'estimator', 'crew']);
export const severity = z.enum(['make-safe', 'engineer', 'repair', 'record']);
export const verdict = z.enum(['meets', 'fails', 'undetermined', 'not-applicable']);
/** What was read of the document a number comes from. */
export const basis = z.enum(['published', 'second-hand', 'memory', 'common-practice']);
export const findingState = z.enum([
  'noted',
  'judged',
  'priced',
  'offered',
  'approved',
  'declined',
  'repaired',
  'proven',
  'withdrawn',
]);
export const changeOrderState = z.enum([
  'draft',
  'sent',
  'approved',
  'part-approved',
  'declined',
  'replaced',
  'set-aside',
]);
export const photoStage = z.enum(['found', 'opened', 'during', 'repaired', 'before-cover']);
/** What the base contract does at a place already. */
export const existingWork = z.enum(['protected', 'stripped', 'shored', 'closed', 'hauled', 'inspected']);
/** How a contract wants to be told, in the order the rules list them. */
export const noticeMethod = z.enum(['in-person', 'letter', 'certified-mail', 'e-mail', 'app']);
/** In the address of a client's letter: ten of Crockford's 32 signs. It names the letter and opens nothing. */
export const letterId = z.string().regex(/^[0-9A-HJKMNP-TV-Z]{10}$/, { error: 'must be the id of a letter' });
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/, { error: 'must be a SHA-256 of 64 small hexadecimal digits' });

const oneLine = { error: 'must be one line, without control or direction marks', abort: true };
const onlyBreaks = { error: 'must have no control or direction marks but new lines and tabs', abort: true };
/** One complaint of a text is enough: an empty one is not told that it lacks a letter. */
const filled = { abort: true };

/** One line that may stay empty. */
export const line = (max: number) => z.string().trim().max(max).refine(hasNoMarks, oneLine);
/** One line with at least one letter or digit. */
export const words = (max: number) =>
  line(max).min(1, filled).refine(showsLetterOrDigit, 'must have a letter or a digit');
/** What a person is called. */
export const personName = line(120)
  .min(1, filled)
  .refine(showsLetter, 'must have a letter')
  .refine(isPersonName, {
    error: 'must not hold signs that are drawn as nothing',
    when: ({ value }) => showsLetter(String(value)),
  });
/** Lines that may stay empty; tabs and new lines are kept. */
export const lines = (max: number) => z.string().trim().max(max).refine(hasOnlyBreaks, onlyBreaks);
/** Lines with at least one letter or digit. */
export const manyWords = (max: number) =>
  lines(max).min(1, filled).refine(showsLetterOrDigit, 'must have a letter or a digit');

/** A page of a list: `next` is an opaque cursor, null on the last page. */
export const page = <T extends z.ZodType>(item: T) => z.object({ items: z.array(item), next: z.string().nullable() });
export const pageQuery = z.object({
  cursor: z.string().max(300).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});

export type Role = z.infer<typeof role>;
export type Severity = z.infer<typeof severity>;
export type Verdict = z.infer<typeof verdict>;
export type FindingState = z.infer<typeof findingState>;
export type ChangeOrderState = z.infer<typeof changeOrderState>;
export type PhotoStage = z.infer<typeof photoStage>;
export type Text = z.infer<typeof text>;
export type Locale = z.infer<typeof locale>;
