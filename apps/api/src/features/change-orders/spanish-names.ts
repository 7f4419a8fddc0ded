import type { ChangeOrderDocument, DocumentItem, MissingSpanish, SpanishNames } from '@underlath/contract';
import { findCheck } from '@underlath/rules/all-checks';
import { ProblemError } from '../../platform/problem-error.ts';
import type { ChangeOrderRecord } from './change-orders.repository.ts';

const kinds = ['titles', 'places', 'captions'] as const;

export const spanishOf = ({ spanish }: Pick<ChangeOrderRecord, 'spanish'>): SpanishNames => ({
  ...{ titles: {}, places: {}, captions: {} },
  ...(spanish as Partial<SpanishNames>),
});

/** Takes up what was typed; an empty text takes one away. */
export function withSpanish(kept: SpanishNames, edit: SpanishNames | undefined): SpanishNames {
  if (!edit) return kept;
  const merged = kinds.map((kind) => [
    kind,
    Object.fromEntries(Object.entries({ ...kept[kind], ...edit[kind] }).filter(([, words]) => words !== '')),
  ]);
  return Object.fromEntries(merged) as SpanishNames;
}

type Item = Omit<DocumentItem, 'shareCents'>;

/** An item with the Spanish of its names. A title that is the check's own has the check's own Spanish. */
export function nameInSpanish<I extends Item>(item: I, checkId: string, { titles, places, captions }: SpanishNames): I {
  const own = findCheck(checkId)?.title;
  const titleEs = titles[item.findingId] ?? (own?.en === item.title ? own.es : undefined);
  const nameEs = places[item.place.locationId];
  return {
    ...item,
    ...(titleEs !== undefined && { titleEs }),
    place: { ...item.place, ...(nameEs !== undefined && { nameEs }) },
    photos: item.photos.map((photo) => {
      const captionEs = captions[photo.id];
      return captionEs === undefined ? photo : { ...photo, captionEs };
    }),
  };
}

/** Names without Spanish, each once; `checkIds` by finding. */
export function missingSpanishOf(
  { items, price, contract }: Pick<ChangeOrderDocument, 'items' | 'price' | 'contract'>,
  checkIds: ReadonlyMap<string, string>,
): MissingSpanish[] {
  const missing = items.flatMap(({ findingId, title, titleEs, place, photos }): MissingSpanish[] => [
    ...(titleEs === undefined
      ? [{ kind: 'titles' as const, id: findingId, english: title, suggested: suggestedFor(checkIds.get(findingId)) }]
      : []),
    ...(place.nameEs === undefined
      ? [{ kind: 'places' as const, id: place.locationId, english: place.name, suggested: null }]
      : []),
    ...photos.flatMap(({ id, caption, captionEs }) =>
      caption && captionEs === undefined ? [{ kind: 'captions' as const, id, english: caption, suggested: null }] : [],
    ),
  ]);
  const named = [...new Map(missing.map((one) => [`${one.kind} ${one.id}`, one])).values()];
  const payments = (contract.payments ?? []).flatMap(({ name: { en, es } }): MissingSpanish[] =>
    es === '' ? [{ kind: 'payments', id: en, english: en, suggested: null }] : [],
  );
  const lines = price.lines.flatMap(({ title: { en, es }, findingIds: [findingId = ''] }): MissingSpanish[] =>
    es === '' ? [{ kind: 'lines', id: findingId, english: en, suggested: null }] : [],
  );
  return [...named, ...payments, ...lines];
}

const suggestedFor = (checkId: string | undefined): string | null =>
  (checkId === undefined ? undefined : findCheck(checkId)?.title.es) ?? null;

/** @throws ProblemError `invalid-input` that points at each name which a reader of Spanish would get in English */
export function assertSpanish(missing: readonly MissingSpanish[]): void {
  if (missing.length === 0) return;
  const errors = missing.map(({ kind, id, english }) => ({
    pointer: `/spanish/${kind}/${id}`,
    detail: `"${english}" has no Spanish`,
  }));
  throw new ProblemError(
    'invalid-input',
    'The client reads Spanish, and some names in the letter are English only. Type their Spanish, or send it as it is and they are marked as English.',
    { errors },
  );
}
