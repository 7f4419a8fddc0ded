import type { ChangeOrderDocument, DocumentItem, Wording } from '@underlath/contract';
import type { FindingRecord } from './change-orders.repository.ts';

/** Why it cannot be sent yet, in words for the estimator; empty when it can. A missing photo is a caution, not a block. */
export function blocksOf(
  document: Pick<ChangeOrderDocument, 'price' | 'wording' | 'items'>,
  findings: readonly FindingRecord[],
): string[] {
  const { price, wording, items } = document;
  const gaps = price.gaps.map(({ title, unit }) => `The cost book has no rate for "${title.en}" (per ${unit}).`);
  const empty = price.lines.length === 0 ? ['It has no priced work: choose repairs or add lines to its findings.'] : [];
  return [
    ...findings.flatMap(findingBlocks),
    ...gaps,
    ...(gaps.length > 0 ? [] : items.flatMap(alternateBlocks)),
    ...empty,
    ...wordingBlocks(wording),
  ];
}

/** A way that is offered has a price; with gaps in the price itself they are what is to be mended first. */
const alternateBlocks = ({ number, title, alternates = [] }: DocumentItem): string[] =>
  alternates
    .filter(({ differenceCents }) => differenceCents === null)
    .map(({ name }) => `Finding ${number} (${title}): the cost book lacks a rate for the other way "${name.en}".`);

function findingBlocks({ number, title, state, judgments, estimate, photos }: FindingRecord): string[] {
  const name = `Finding ${number} (${title})`;
  const waiting = photos.filter(({ photo }) => photo.derivativeState === 'waiting').length;
  return [
    ...(state === 'withdrawn' ? [`${name} was withdrawn: take it out.`] : []),
    ...(judgments.length === 0 ? [`${name} has not been judged: enter its measurements.`] : []),
    ...(estimate === null && state !== 'withdrawn' ? [`${name} has no price: choose its repair.`] : []),
    ...(waiting > 0 ? [`${name}: ${waiting} photos are still being prepared; wait a moment.`] : []),
  ];
}

const wordingNames = {
  headline: 'headline',
  found: 'what was found',
  why: 'why it matters',
  ifNot: 'what if it is not done',
};

function wordingBlocks(wording: Wording): string[] {
  return Object.entries(wordingNames).flatMap(([part, name]) => {
    const { en, es } = wording[part as keyof typeof wordingNames];
    if (!en.trim()) return [`The words for "${name}" are empty in English.`];
    return es.trim() ? [] : [`The words for "${name}" are empty in Spanish.`];
  });
}
