import { type Text, text } from './text.ts';

/** How well a number is known, the best known first. */
export const BASES = ['published', 'second-hand', 'memory', 'common-practice'] as const;

/**
 * What was read: `published` the document itself or an official reprint of it, `second-hand` a quotation, summary or
 * abstract of it, `memory` nothing yet, `common-practice` a habit of the trade with no document that is known.
 */
export type Basis = (typeof BASES)[number];
/** A basis with no document read behind it. */
export type UnreadBasis = Exclude<Basis, 'published'>;

/** Where a number comes from. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly section: string;
  readonly basis: Basis;
}

/** Said of a source where it is listed. */
export const BASIS_WORDS: Record<Basis, Text> = {
  published: text('Published', 'Publicado'),
  'second-hand': text('Second-hand, the document itself was not read', 'De segunda mano, no se leyó el documento'),
  memory: text('From memory, confirm', 'De memoria, confirmar'),
  'common-practice': text('Common practice, no published source', 'Práctica común, sin fuente publicada'),
};

/** The bases of these sources with no document read behind them, each once, the best known first. */
export const unreadBases = (sources: readonly Source[]): UnreadBasis[] =>
  UNREAD_BASES.filter((basis) => sources.some((source) => source.basis === basis));
const UNREAD_BASES = BASES.filter((basis) => basis !== 'published');

/** Said beside a verdict that hangs on a source of this basis; nothing when the document was read. */
export const RESTS_ON_WORDS: Record<UnreadBasis, Text> = {
  'second-hand': text('by a second-hand rule', 'por una regla de segunda mano'),
  memory: text('by a rule from memory', 'por una regla de memoria'),
  'common-practice': text('by common practice', 'por práctica común'),
};
