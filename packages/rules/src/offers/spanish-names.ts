import type { Text } from '../kernel/index.ts';
import type { ChangeOrderDocument, DocumentItem } from './document/change-order-document.ts';
import type { MissingSpanish, SpanishNames } from './document/draft.ts';

const kinds = ['titles', 'places', 'captions'] as const;

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

/** An item with the Spanish of its names. A title that is its check's own has the check's own Spanish. */
export function nameInSpanish<I extends Item>(
  item: I,
  own: Text | undefined,
  { titles, places, captions }: SpanishNames,
): I {
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

/** Names without Spanish, each once; `ownTitles` are those of the checks, by finding. */
export function missingSpanishOf(
  { items, price, contract }: Pick<ChangeOrderDocument, 'items' | 'price' | 'contract'>,
  ownTitles: ReadonlyMap<string, Text | undefined>,
): MissingSpanish[] {
  const missing = items.flatMap(({ findingId, title, titleEs, place, photos }): MissingSpanish[] => [
    ...(titleEs === undefined
      ? [{ kind: 'titles' as const, id: findingId, english: title, suggested: ownTitles.get(findingId)?.es ?? null }]
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
