import { joinTexts, type Source, type Text, text } from '../kernel/index.ts';
import type { Link, LoadPath, Segment } from './load-path.ts';

/** Stories stack as forces: the moment at a foot is the sum of each story's shear times its height. */
export const STACKED_SOURCE: Source = {
  id: 'sdpws-stacked-walls',
  title: 'SDPWS, chord force of a shear wall and forces from stories above',
  edition: '2021',
  section: 'Eq. 4.3-7, 4.3.6.4.4',
  basis: 'second-hand',
};

/**
 * Load in lb, at the top of a segment `heightFt` high, whose moment together with that of the stories above a hold-down
 * with a share 0..1 of its tension and the dead load balance: (T x lever + resisting - above) / height, never below 0.
 * Null when tension, lever or height is not known; a moment from above that is not given counts as none.
 */
export function tiedLb(link: Link, { heightFt }: Segment, share: number): number | null {
  const { tensionLb, leverFt, momentAboveFtLb = 0, resistingFtLb = 0 } = link;
  if (tensionLb === undefined || leverFt === undefined || heightFt === undefined) return null;
  return Math.max(0, (tensionLb * share * leverFt + resistingFtLb - momentAboveFtLb) / heightFt);
}

/** What stands above takes all that the hold-down and the dead load balance: it is overloaded before this story asks for anything. */
export const isUsedUp = (link: Link, segment: Segment, share: number | null): boolean =>
  (link.momentAboveFtLb ?? 0) > 0 && tiedLb(link, segment, share ?? 1) === 0;

/**
 * A hold-down whose figure is still to be charged with the stories above: their moment is not given, or it is and tension,
 * lever or height are not. A load it was meant to carry, typed in the path's own load, has that moment taken off already.
 */
export function isMomentOpen({ storiesAbove }: Pick<LoadPath, 'storiesAbove'>, segment: Segment, link: Link): boolean {
  if (link.role !== 'hold-down') return false;
  const { momentAboveFtLb, intendedLb } = link;
  if (momentAboveFtLb === undefined) return storiesAbove !== 0;
  return momentAboveFtLb > 0 && intendedLb === undefined && tiedLb(link, segment, 1) === null;
}

const NOT_CHARGED = text(
  'Not charged yet with the moment of the stories above, so at most',
  'Aún sin el momento de los pisos de arriba, así que cuando mucho',
);
const USED_UP = text(
  'What stands above takes all that it and the dead load hold',
  'Lo que está arriba toma todo lo que resisten él y la carga muerta',
);

const named = (words: Text, names: readonly string[]): Text[] =>
  names.length === 0 ? [] : [joinTexts([words, text(`${names.join(', ')}.`, `${names.join(', ')}.`)], ': ')];

/** Hold-downs that the stories above use up, or that are not charged with them yet. */
export const momentWords = (usedUp: readonly string[], open: readonly string[]): Text[] => [
  ...named(USED_UP, usedUp),
  ...named(NOT_CHARGED, open),
];
