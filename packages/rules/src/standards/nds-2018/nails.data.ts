import type { Source } from '../../kernel/index.ts';

/** Common nails up to 10d, and the 8d and 10d box nails. */
export const CODE_NAIL_SOURCE: Source = {
  id: 'nail-sizes-780-cmr',
  title: 'Nail sizes, Massachusetts 780 CMR',
  edition: 'before the 40% wind increase',
  section: '2306.3',
  basis: 'published',
};
export const NAIL_SOURCE: Source = {
  id: 'nail-sizes',
  title: 'Nail sizes, NDS tables',
  edition: '2018, as transcribed',
  section: 'Tables 12N, 12R',
  basis: 'second-hand',
};
/** Box and sinker sizes the code texts read so far don't print. */
export const NAIL_MEMORY_SOURCE: Source = {
  id: 'nail-sizes-memory',
  title: 'Box and sinker nail sizes, NDS',
  edition: '2018, not read for this nail',
  section: 'Table L4',
  basis: 'memory',
};

/** Shank diameters, inches. A bare penny size is read as the code prints it, a common nail. */
export const NAIL_DIAMETER_IN = {
  '6d-common': 0.113,
  '8d-common': 0.131,
  '10d-common': 0.148,
  '16d-common': 0.162,
  '6d-box': 0.099,
  '8d-box': 0.113,
  '10d-box': 0.128,
  '16d-box': 0.135,
  '6d-sinker': 0.092,
  '8d-sinker': 0.113,
  '10d-sinker': 0.12,
  '16d-sinker': 0.148,
  '8d': 0.131,
  '10d': 0.148,
  '16d': 0.162,
} as const;
export type NailId = keyof typeof NAIL_DIAMETER_IN;
/** A nail named with its kind. */
export type NamedNail = Exclude<NailId, '8d' | '10d' | '16d'>;

/** Lengths, inches. */
export const NAIL_LENGTH_IN: Readonly<Record<NamedNail, number>> = {
  '6d-common': 2,
  '8d-common': 2.5,
  '10d-common': 3,
  '16d-common': 3.5,
  '6d-box': 2,
  '8d-box': 2.5,
  '10d-box': 3,
  '16d-box': 3.5,
  '6d-sinker': 1.875,
  '8d-sinker': 2.375,
  '10d-sinker': 2.875,
  '16d-sinker': 3.25,
};

/** Where the size of each nail was read. */
const SOURCES: Readonly<Record<NamedNail, Source>> = {
  '6d-common': CODE_NAIL_SOURCE,
  '8d-common': CODE_NAIL_SOURCE,
  '10d-common': CODE_NAIL_SOURCE,
  '16d-common': NAIL_SOURCE,
  '6d-box': NAIL_MEMORY_SOURCE,
  '8d-box': CODE_NAIL_SOURCE,
  '10d-box': CODE_NAIL_SOURCE,
  '16d-box': NAIL_SOURCE,
  '6d-sinker': NAIL_MEMORY_SOURCE,
  '8d-sinker': NAIL_MEMORY_SOURCE,
  '10d-sinker': NAIL_MEMORY_SOURCE,
  '16d-sinker': NAIL_SOURCE,
};
export const NAIL_SOURCES: readonly Source[] = [CODE_NAIL_SOURCE, NAIL_SOURCE, NAIL_MEMORY_SOURCE];

export const nailSource = (nail: NamedNail): Source => SOURCES[nail];
