import type { Text } from '../kernel/index.ts';
import type { Wording } from './document/change-order-document.ts';
import type { DraftEdit, DraftField, DraftMark, SpanishNames } from './document/draft.ts';
import { withSpanish } from './spanish-names.ts';
import { countsFindings, type Spoken, stillSpokenOf } from './stale-words.ts';

type WordField = keyof Wording;

/** Words and days: worked out from the findings, typed, or some of each. */
export interface DraftWords {
  readonly wording: Wording;
  readonly days: number;
}

/** A typed field to be looked at, with the finding it may still speak of; null where it is about the number of findings. */
export interface Mark {
  readonly field: DraftField;
  readonly finding: { readonly id: string; readonly number: number; readonly title: string } | null;
}

/** What is kept of a draft: only the typed fields of its words count. */
export interface KeptDraft extends DraftWords {
  readonly typed: readonly DraftField[];
  readonly marks: readonly Mark[];
  readonly spanish: SpanishNames;
}

export type Member = Spoken & { readonly findingId: string };

/** What a new one keeps. */
export const newDraft = (typed: readonly DraftField[]): Pick<KeptDraft, 'typed' | 'spanish'> => ({
  typed,
  spanish: { titles: {}, places: {}, captions: {} },
});

/** What was typed, and for the rest what the findings say now. */
export function composeWords({ typed, ...kept }: KeptDraft, fromFindings: DraftWords): DraftWords {
  const words = (field: WordField): Text => (typed.includes(field) ? kept : fromFindings).wording[field];
  return {
    wording: {
      headline: words('headline'),
      found: words('found'),
      why: words('why'),
      ifNot: words('ifNot'),
      note: words('note'),
    },
    days: (typed.includes('days') ? kept : fromFindings).days,
  };
}

/** Takes up an edit: a field sent is typed, null gives it back to the findings, and what equals theirs stays theirs. */
export function editDraft(
  kept: KeptDraft,
  shown: DraftWords,
  { wording = {}, days, spanish, lookedAt = [] }: DraftEdit,
): KeptDraft {
  const sent: Partial<Record<DraftField, unknown>> = { ...wording, ...(days !== undefined && { days }) };
  const isSame = (field: DraftField) =>
    field === 'days' ? days === shown.days : sameWords(wording[field] ?? undefined, shown.wording[field]);
  const fields = Object.keys(sent) as DraftField[];
  const given = fields.filter((field) => sent[field] === null);
  const changed = fields.filter((field) => sent[field] !== null && !isSame(field));
  const settled = [...given, ...changed, ...lookedAt];
  return {
    wording: { ...shown.wording, ...Object.fromEntries(changed.map((field) => [field, sent[field]])) } as Wording,
    days: days ?? shown.days,
    typed: [...new Set([...kept.typed, ...changed])].filter((field) => !given.includes(field)),
    marks: kept.marks.filter(({ field }) => !settled.includes(field)),
    spanish: withSpanish(kept.spanish, spanish),
  };
}

const sameWords = (one: Text | undefined, other: Text): boolean => one?.en === other.en && one.es === other.es;

/** Marks what was typed for findings that are no longer the ones in it. */
export function markStale(kept: KeptDraft, before: readonly Member[], now: readonly Member[], edit: DraftEdit): Mark[] {
  const ids = new Set(now.map(({ findingId }) => findingId));
  const left = before.filter(({ findingId }) => !ids.has(findingId));
  const still = kept.marks.filter(({ finding }) => finding === null || !ids.has(finding.id));
  const words = kept.typed.filter((field): field is WordField => field !== 'days');
  const counted = before.length !== now.length;
  const found = words.flatMap((field): Mark[] => [
    ...stillSpokenOf(kept.wording[field], left, now).map(({ findingId: id, number, title }) => ({
      field,
      finding: { id, number, title },
    })),
    ...(counted && countsFindings(kept.wording[field], before.length) ? [{ field, finding: null }] : []),
  ]);
  const isTypedBefore = kept.typed.includes('days') && typeof edit.days !== 'number';
  return uniqueMarks([...still, ...found, ...(isTypedBefore ? [{ field: 'days' as const, finding: null }] : [])]);
}

const uniqueMarks = (marks: readonly Mark[]): Mark[] => [
  ...new Map(marks.map((mark) => [`${mark.field} ${mark.finding?.id}`, mark])).values(),
];

/** One sentence a field, for the estimator. */
export function toMarks(marks: readonly Mark[]): DraftMark[] {
  const fields = [...new Set(marks.map(({ field }) => field))];
  return fields.map((field) => {
    const ofField = marks.filter((mark) => mark.field === field);
    return { field, words: field === 'days' ? daysWords : markWords(ofField) };
  });
}

const daysWords = 'The days were typed before the findings changed.';

function markWords(marks: readonly Mark[]): string {
  const names = marks.flatMap(({ finding }) => (finding ? [`finding ${finding.number} (${finding.title})`] : []));
  return names.length > 0
    ? `This still speaks of ${names.join(', ')}, which is no longer in it.`
    : 'This counts the findings as they were before.';
}
