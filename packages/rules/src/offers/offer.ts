import type { Text } from '../kernel/index.ts';
import { blocksOf, markBlocks } from './blocks.ts';
import { suggestDays } from './days.ts';
import type { ChangeOrderDocument, ContractEffect, DocumentItem } from './document/change-order-document.ts';
import type { DraftMark, MissingSpanish } from './document/draft.ts';
import { type DraftDocument, toDraft } from './draft-document.ts';
import { composeWords, type DraftWords, type KeptDraft, toMarks } from './draft-words.ts';
import { type Group, type GroupPrice, priceGroup } from './groups.ts';
import { type LetterFinding, toItem } from './items.ts';
import { missingSpanishOf, nameInSpanish } from './spanish-names.ts';
import { wordsFromFindings } from './wording.ts';

/** Findings of one change order with all that a letter tells of them. */
export type LetterGroup = Group<LetterFinding>;

/** What follows from the findings of a change order by themselves. */
export interface ScopedOffer {
  readonly price: GroupPrice;
  readonly items: readonly DocumentItem[];
  /** What the office should know before it is sent. */
  readonly conflicts: readonly string[];
  /** Words and days while nobody types others. */
  readonly fromFindings: DraftWords;
}

/** What a draft is, beside its findings. */
export interface OfferHead extends Pick<ChangeOrderDocument, 'changeOrderId' | 'number' | 'version'> {
  readonly company: ChangeOrderDocument['company'];
  readonly project: ChangeOrderDocument['project'];
  readonly questions: NonNullable<ChangeOrderDocument['questions']>;
}

/** A change order as it would be sent now, and what stands in its way. */
export interface OfferDraft {
  readonly draft: DraftDocument;
  /** Why it cannot be sent yet, in words for the estimator; empty when it can. */
  readonly blocks: string[];
  /** Typed fields to look at first. */
  readonly marks: DraftMark[];
  readonly missingSpanish: MissingSpanish[];
  readonly conflicts: string[];
}

/** The items, their price, and the words and days that follow from them. Throws WorkAmountError. */
export function scopeOffer(group: LetterGroup, { typed, spanish }: Pick<KeptDraft, 'typed' | 'spanish'>): ScopedOffer {
  const price = priceGroup({ ...group, placesEs: spanish.places });
  const items = group.findings.map((finding): DocumentItem => {
    const item = toItem(finding, price.repairs.get(finding.id) ?? []);
    return { ...nameInSpanish(item, finding.ownTitle, spanish), ...besidePrice(finding.id, price), shareCents: 0 };
  });
  const suggested = suggestDays(price.scope.hours, price.time);
  return {
    price,
    items,
    conflicts: group.declined.filter(({ id }) => price.covered.includes(id)).map(coveredWords),
    fromFindings: wordsFromFindings(items, suggested, typed.includes('days')),
  };
}

/** `contractAfter` tells the contract before and after a change of so many cents and days. Throws WorkAmountError. */
export function draftOffer(
  group: LetterGroup,
  kept: KeptDraft,
  { questions, ...head }: OfferHead,
  contractAfter: (change: { cents: number; days: number }) => ContractEffect,
): OfferDraft {
  const { price, items, conflicts, fromFindings } = scopeOffer(group, kept);
  const { wording, days } = composeWords(kept, fromFindings);
  const draft = toDraft({
    ...head,
    wording,
    items,
    price: price.scope,
    alone: price.alone,
    days,
    contract: contractAfter({ cents: price.scope.totalCents, days }),
    questions,
  });
  const ownTitles = new Map(group.findings.map(({ id, ownTitle }) => [id, ownTitle]));
  const marks = toMarks(kept.marks);
  return {
    draft,
    blocks: [...blocksOf(draft, group.findings), ...markBlocks(marks)],
    marks,
    missingSpanish: missingSpanishOf(draft, ownTitles),
    conflicts: [...conflicts],
  };
}

/** What the letter says of a finding beside its price; nothing stays out of the document that is signed. */
function besidePrice(findingId: string, price: GroupPrice): Pick<DocumentItem, 'exclusions' | 'alternates'> {
  const alternates = price.alternates.get(findingId) ?? [];
  const exclusions: readonly Text[] = price.exclusions.get(findingId) ?? [];
  return {
    ...(exclusions.length > 0 && { exclusions: [...exclusions] }),
    ...(alternates.length > 0 && { alternates: alternates.map((one) => ({ ...one, what: [...one.what] })) }),
  };
}

const coveredWords = ({ number, title }: LetterFinding): string =>
  `Finding ${number} (${title}) was declined, and this work closes the wall over it. Tell the client before it is covered.`;
