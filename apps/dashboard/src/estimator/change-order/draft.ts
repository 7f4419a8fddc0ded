import type { BodyIn, ChangeOrder, Problem, routes, Wording } from '@underlath/contract';
import * as z from 'zod';
import { localProblem, readNumber } from '../desk/numbers.ts';

const words = z.object({ en: z.string(), es: z.string() });
/** Null gives the field back to the findings. */
const typedWords = words.nullable().optional();

/** What was typed and not saved; what is absent was not touched. Days stay as they were typed. */
export const orderDraftSchema = z.object({
  wording: z
    .object({ headline: typedWords, found: typedWords, why: typedWords, ifNot: typedWords, note: typedWords })
    .default({}),
  days: z.string().nullable().optional(),
  spanish: z
    .object({
      titles: z.record(z.string(), z.string()),
      places: z.record(z.string(), z.string()),
      captions: z.record(z.string(), z.string()),
    })
    .optional(),
  findingIds: z.array(z.string()).optional(),
});
export type OrderDraft = z.output<typeof orderDraftSchema>;
export type WordField = keyof Wording;
/** Names whose Spanish is typed with the letter; a payment's and a line's are typed where they are. */
export type SpanishKind = keyof ChangeOrder['spanish'];

export const noEdit: OrderDraft = { wording: {} };

type Edit = NonNullable<BodyIn<typeof routes.changeChangeOrder>>;

/** Only what was edited, or why it cannot be sent: an emptied number is told, never taken as none. */
export function readOrderDraft(draft: OrderDraft): { body: Edit; problem: Problem | null } {
  const { days, findingIds, spanish, wording } = draft;
  const read = typeof days === 'string' ? readNumber(days) : undefined;
  const isCount = typeof read === 'number' && Number.isInteger(read) && read >= 0 && read <= 1000;
  const errors = [
    ...(typeof days === 'string' && !isCount ? [{ pointer: '/days', detail: daysFault(days) }] : []),
    ...(findingIds?.length === 0
      ? [{ pointer: '/findingIds', detail: 'At least one finding has to stay in it.' }]
      : []),
  ];
  const body: Edit = {
    ...(Object.keys(wording).length > 0 && { wording }),
    ...(days === null ? { days } : isCount ? { days: read } : {}),
    ...(findingIds && { findingIds }),
    ...(spanish && { spanish }),
  };
  return { body, problem: errors.length > 0 ? localProblem(errors) : null };
}

const daysFault = (typed: string): string =>
  typed.trim() === ''
    ? 'The days were emptied, which is not the same as none. Type 0 if it adds no day, or count them from the work again.'
    : `“${typed}” is not a whole number of days from 0 to 1,000.`;

/** A field as it would be saved: typed now, else as it stands. */
export const wordsOf = ({ wording }: OrderDraft, order: ChangeOrder, field: WordField) =>
  wording[field] ?? order.wording[field];

export function withWords(draft: OrderDraft, field: WordField, next: OrderDraft['wording'][WordField]): OrderDraft {
  return { ...draft, wording: { ...draft.wording, [field]: next } };
}

const noSpanish: NonNullable<OrderDraft['spanish']> = { titles: {}, places: {}, captions: {} };

export function withSpanishName(draft: OrderDraft, kind: SpanishKind, id: string, words: string): OrderDraft {
  const spanish = draft.spanish ?? noSpanish;
  return { ...draft, spanish: { ...spanish, [kind]: { ...spanish[kind], [id]: words } } };
}
