import type { ContentReview } from '@underlath/contract';
import { type ContentItem, reviewContent } from '@underlath/rules';
import type { DraftDocument, LetterFinding } from '@underlath/rules/offers';
import { invalidInput } from '../../platform/problem-error.ts';

/** What is known beside the document itself. */
export interface ContentFacts {
  readonly findings: readonly LetterFinding[];
  /** Where it is mailed to, or null when the link is handed over. */
  readonly mailTo: string | null;
}

type Judge = (document: DraftDocument, facts: ContentFacts) => boolean;

/** "Ana and Luis Brandt", "Ana y Luis", "A. & L. Brandt". */
const twoNames = / and | y |&|\//;

/** Whether a change order carries an item. What cannot be known from here counts as not carried. */
const carries: Record<ContentItem, Judge> = {
  // It is frozen, kept and shown as text; a change that is only spoken of is no change order.
  'in-writing': () => true,
  // One person is asked for a typed name, and the sender's stands for the firm. Where the client's name holds two people,
  // one of them would not be asked.
  'signed-by-all': ({ consent, project }) => consent.text.en.trim() !== '' && !twoNames.test(project.clientName),
  'signed-before-work': (_document, { findings }) => findings.every(({ hasBegun }) => !hasBegun),
  // Every finding names its repair or has a line of work in the price.
  scope: ({ items, price }) =>
    items.length > 0 &&
    items.every(
      ({ findingId, repairs }) => repairs.length > 0 || price.lines.some((line) => line.findingIds.includes(findingId)),
    ),
  // The total is printed; with a gap it would not be the amount.
  amount: ({ price }) => price.lines.length > 0 && price.gaps.length === 0,
  // Only where the contract's payments are written down can the letter say what is added to which.
  'payment-effect': ({ contract }) => (contract.payments ?? []).length > 0,
  // Days alone are no date: the start has to be known.
  'finish-effect': ({ contract }) => contract.finishBefore !== null && contract.finishAfter !== null,
  // A link that is handed over may never be opened; a mail goes to the owner's own address.
  'copy-to-owner': (_document, { mailTo }) => mailTo !== null,
};

export const carriedBy = (document: DraftDocument, facts: ContentFacts): ContentItem[] =>
  (Object.keys(carries) as ContentItem[]).filter((item) => carries[item](document, facts));

/** What a change order lacks for the state of the site: a comparison with what was read of its rules, no judgment of law. */
export function contentReview(state: string | null, carried: readonly ContentItem[]): ContentReview {
  const { profile, missing, cautions } = reviewContent(state, carried);
  return {
    state,
    stateName: profile?.name ?? null,
    checkedOn: profile?.checkedOn ?? null,
    missing: missing.map((gap) => ({ ...gap, anyOf: [...gap.anyOf] })),
    cautions: [...cautions],
  };
}

/** @throws ProblemError `invalid-input` that names what is missing and where it is asked for */
export function assertContent(review: ContentReview, missingReason: string): void {
  const gaps = review.missing.filter(({ weight }) => weight === 'law');
  if (gaps.length === 0 || missingReason) return;
  const named = gaps.map(({ words, source }) => `${words.en} (${source.title}, ${source.section})`).join('; ');
  throw invalidInput(
    '/missingReason',
    `It lacks what the list for ${review.stateName ?? 'this state'} asks for: ${named}. Put it in, or say why it goes out without it.`,
  );
}

/** What the record keeps of a review. */
export const reviewEvent = ({ state, checkedOn, missing }: ContentReview) => ({
  state,
  checkedOn,
  missing: missing.map(({ anyOf, weight, source }) => ({ anyOf, weight, source: `${source.id} ${source.section}` })),
});
