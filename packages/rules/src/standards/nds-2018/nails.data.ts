import type { Source } from '../../kernel/index.ts';

export const NAIL_SOURCE: Source = {
  id: 'nail-sizes',
  title: 'Nail sizes, Massachusetts 780 CMR 2306.3 and NDS 2018 tables',
  edition: 'NDS 2018 (second-hand)',
  section: 'Tables 12N, 12R',
  basis: 'published',
};

/** Shank diameters, inches. A bare penny size is read as the code prints it, a common nail. */
export const NAIL_DIAMETER_IN = {
  '6d-common': 0.113,
  '8d-common': 0.131,
  '10d-common': 0.148,
  '16d-common': 0.162,
  '8d-box': 0.113,
  '10d-box': 0.128,
  '16d-box': 0.135,
  '16d-sinker': 0.148,
  '8d': 0.131,
  '10d': 0.148,
  '16d': 0.162,
} as const;
export type NailId = keyof typeof NAIL_DIAMETER_IN;
