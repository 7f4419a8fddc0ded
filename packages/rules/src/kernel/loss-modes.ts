import { type Text, text } from './text.ts';

/**
 * Ways in which a part loses strength. Two losses of one way multiply, since the second takes its share of what the first
 * left and nobody measured them together; of different ways the smallest share counts. Common practice, no source.
 */
export const LOSS_MODE_WORDS = {
  /** Edge nails that are bad and edges with no wood behind them: the load leaves the panel through one line of nails. */
  'panel-nails': text('nails of the panel edges', 'clavos de los bordes del panel'),
  /** Rust thins the thread as well as the shank, and where on the rod it sits is not asked: so it counts in the nut too. */
  rod: text('the rod and its threads', 'la varilla y su rosca'),
  /** A cut, a hole and rot take wood from one cross section. */
  section: text('the cross section', 'la sección transversal'),
} as const satisfies Record<string, Text>;
export type LossMode = keyof typeof LOSS_MODE_WORDS;

/** A mode in words; one of the caller's own stays as it was named. */
export const lossModeWords = (mode: string): Text =>
  Object.hasOwn(LOSS_MODE_WORDS, mode) ? LOSS_MODE_WORDS[mode as LossMode] : text(mode, mode);
