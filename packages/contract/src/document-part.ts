import type { ChangeOrderDocument, DocumentItem, DocumentPart } from './change-order-document.ts';

const sameIds = (one: readonly string[], other: readonly string[]): boolean =>
  new Set(one).size === other.length && other.every((id) => one.includes(id));

/** The part of exactly these findings, in any order; undefined where it was not offered. */
export const partOf = (
  { parts = [] }: Pick<ChangeOrderDocument, 'parts'>,
  ids: readonly string[],
): DocumentPart | undefined => parts.find(({ findingIds }) => sameIds(findingIds, ids));

/** The document as if it were about this part alone, to show or to print; what was signed stays the whole. */
export function documentOfPart<D extends Omit<ChangeOrderDocument, 'sentAt' | 'sentBy' | 'expiresAt' | 'record'>>(
  document: D,
  part: DocumentPart | undefined,
): D {
  if (!part) return document;
  const { price, days, contract, shares } = part;
  const shareOf = new Map(shares.map(({ findingId, cents: share }) => [findingId, share]));
  const items = document.items.flatMap((item) => {
    const shareCents = shareOf.get(item.findingId);
    return shareCents === undefined ? [] : [{ ...item, shareCents }];
  });
  return { ...document, price, days, contract, items };
}

/** The findings that an approval of a part left out; none where it was of all. */
export const leftOutOf = (
  { items }: Pick<ChangeOrderDocument, 'items'>,
  approved: readonly string[],
): DocumentItem[] => (approved.length === 0 ? [] : items.filter(({ findingId }) => !approved.includes(findingId)));
