import { type Text, text } from './text.ts';

/** How well a number is known: read in print, remembered, or trade habit with no source. */
export type Basis = 'published' | 'memory' | 'common-practice';

/** Where a number comes from. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly section: string;
  readonly basis: Basis;
}

export const BASIS_WORDS: Record<Basis, Text> = {
  published: text('Published', 'Publicado'),
  memory: text('From memory, confirm', 'De memoria, confirmar'),
  'common-practice': text('Common practice, no published source', 'Práctica común, sin fuente publicada'),
};
