import type {
  ChangeOrderDocument,
  ContractEffect,
  DocumentItem,
  DocumentPart,
  LetterLine,
} from './change-order-document.ts';

/** Of more findings there are more choices than anybody prices or reads: five have 30, four have 14. */
export const MOST_IN_PARTS = 4;

/** Whether of so many findings single ones may be left out. */
export const canBeParted = (count: number): boolean => count >= 2 && count <= MOST_IN_PARTS;

/** Whether two lists name the same findings, each once, in any order. */
export function sameIds(one: readonly string[], other: readonly string[]): boolean {
  const known = new Set(other);
  return known.size === other.length && one.length === other.length && one.every((id) => known.delete(id));
}

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
  const kept = (line: LetterLine) => line.findingId === undefined || shareOf.has(line.findingId);
  const sections = document.sections?.map((section) => ({ ...section, lines: section.lines.filter(kept) }));
  return { ...document, price, days, contract, items, ...(sections && { sections }) };
}

/** The document as it was answered: the part that was approved, and what that did to the contract by the ledger. */
export function documentOfAnswer<D extends Omit<ChangeOrderDocument, 'sentAt' | 'sentBy' | 'expiresAt' | 'record'>>(
  document: D,
  answer: { readonly findingIds: readonly string[]; readonly contract: ContractEffect | null } | null,
): D {
  if (!answer) return document;
  const ofPart = documentOfPart(document, partOf(document, answer.findingIds));
  return answer.contract ? { ...ofPart, contract: answer.contract } : ofPart;
}

/** The findings that an approval of a part left out; none where it was of all. */
export const leftOutOf = (
  { items }: Pick<ChangeOrderDocument, 'items'>,
  approved: readonly string[],
): DocumentItem[] => (approved.length === 0 ? [] : items.filter(({ findingId }) => !approved.includes(findingId)));
