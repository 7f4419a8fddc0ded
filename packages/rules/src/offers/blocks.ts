import { lacksEngineer } from '../kernel/index.ts';
import type { ChangeOrderDocument, DocumentItem, Wording } from './document/change-order-document.ts';
import type { DraftField, DraftMark } from './document/draft.ts';
import type { LetterFinding } from './items.ts';

/** Why it cannot be sent yet, in words for the estimator; empty when it can. A missing photo is a caution, not a block. */
export function blocksOf(
  document: Pick<ChangeOrderDocument, 'price' | 'wording' | 'items'>,
  findings: readonly LetterFinding[],
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

function findingBlocks(finding: LetterFinding): string[] {
  const { number, title, state, judged, saved, waitingPhotos } = finding;
  const name = `Finding ${number} (${title})`;
  return [
    ...(state === 'withdrawn' ? [`${name} was withdrawn: take it out.`] : []),
    ...(judged === null ? [`${name} has not been judged: enter its measurements.`] : []),
    ...(saved === null && state !== 'withdrawn' ? [`${name} has no price: choose its repair.`] : []),
    ...engineerBlocks(name, finding),
    ...(waitingPhotos > 0 ? [`${name}: ${waitingPhotos} photos are still being prepared; wait a moment.`] : []),
  ];
}

/** Where an engineer decides, every way that is offered holds the engineer's look: none is kinder than what was seen. */
function engineerBlocks(name: string, { saved, severity }: LetterFinding): string[] {
  if (!saved || !severity) return [];
  const lacks = ({ choices }: Pick<typeof saved, 'choices'>) =>
    lacksEngineer(
      severity,
      choices.map(({ repairId }) => repairId),
    );
  return [
    ...(lacks(saved)
      ? [`${name}: an engineer decides, and its price has no engineer in it. Choose "Ask the engineer".`]
      : []),
    ...saved.alternates
      .filter(lacks)
      .map((way) => `${name}: an engineer decides, and the other way "${way.name.en}" has no engineer in it.`),
  ];
}

/** Where the estimator finds a field, in words. */
const fieldNames: Record<DraftField, string> = {
  headline: 'the headline',
  found: '"what was found"',
  why: '"why it matters"',
  ifNot: '"if it is not done"',
  note: 'the note',
  days: 'the days',
};

export const markBlocks = (marks: readonly DraftMark[]): string[] =>
  marks.map(({ field, words }) => `Look at ${fieldNames[field]}: ${words} Change it, or say that it stands.`);

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
