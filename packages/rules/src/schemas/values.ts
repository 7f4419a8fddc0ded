import * as z from 'zod';
import { SEVERITIES, VERDICTS } from '../kernel/outcome.ts';
import { BASES } from '../kernel/source.ts';
import { LOCALES } from '../kernel/text.ts';
import { CHANGE_ORDER_STATES, FINDING_STATES, PHOTO_STAGES } from './states.ts';
import { hasNoMarks, hasOnlyBreaks, isPersonName, showsLetter, showsLetterOrDigit } from './written-words.ts';

/*
 * Values that are read from outside: what a request, a stored document and a frozen letter are made of. Whoever reads a
 * browser's bundle wants little of it, so that the kernel does not carry it.
 */

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
export const locale = z.enum(LOCALES);
/** Integer US cents. Column width allows a little over 21 million dollars. */
export const cents = z.int().min(-2_000_000_000).max(2_000_000_000);
export const positiveCents = z.int().min(0).max(2_000_000_000);
export const currency = z.literal('USD');
export const severity = z.enum(SEVERITIES);
export const verdict = z.enum(VERDICTS);
/** What was read of the document a number comes from. */
export const basis = z.enum(BASES);
export const findingState = z.enum(FINDING_STATES);
export const changeOrderState = z.enum(CHANGE_ORDER_STATES);
export const photoStage = z.enum(PHOTO_STAGES);
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/, { error: 'must be a SHA-256 of 64 small hexadecimal digits' });

export const source = z.object({
  id: z.string(),
  title: z.string(),
  edition: z.string(),
  section: z.string(),
  basis,
});

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

const sizeIn = z.number().positive().max(2400);
const spotIn = z.number().min(0).max(2400);

/** A rectangle on an elevation or plan, inches from the lower left corner. */
export const rectangle = z.strictObject({ xIn: spotIn, yIn: spotIn, widthIn: sizeIn, heightIn: sizeIn });
export const opening = z.strictObject({ name: words(60), xIn: spotIn, yIn: spotIn, widthIn: sizeIn, heightIn: sizeIn });
