import type { Source } from '../../kernel/index.ts';

export const NUT_SIZES_SOURCE: Source = {
  id: 'asme-b18.2.2',
  title: 'Finished hex and heavy hex nuts, ASME B18.2.2',
  edition: 'table copy, edition not printed',
  section: 'nut thickness, minimum',
  basis: 'published',
};
export const THREAD_SOURCE: Source = {
  id: 'asme-b1.1',
  title: 'Unified coarse threads, ASME B1.1 with the FED-STD-H28 stripping formula',
  edition: 'B1.1 limits confirmed by formula',
  section: 'pitch; engagement length of equal strength',
  basis: 'memory',
};

export interface RodSize {
  readonly diameterIn: number;
  readonly label: string;
  readonly threadsPerInch: number;
  /** Least nut thickness each standard allows. */
  readonly nutMinIn: { readonly hex: number; readonly 'heavy-hex': number };
  /** Engagement at which rod tension and thread stripping are equally strong, computed. */
  readonly equalStrengthIn: number;
}

/** Coarse-thread rods from 1/2 to 1 in: pitch, least nut thickness, engagement of equal strength. Inches. */
export const ROD_SIZES: readonly RodSize[] = [
  {
    diameterIn: 0.5,
    label: '1/2-13',
    threadsPerInch: 13,
    nutMinIn: { hex: 0.427, 'heavy-hex': 0.464 },
    equalStrengthIn: 0.364,
  },
  {
    diameterIn: 0.625,
    label: '5/8-11',
    threadsPerInch: 11,
    nutMinIn: { hex: 0.535, 'heavy-hex': 0.587 },
    equalStrengthIn: 0.453,
  },
  {
    diameterIn: 0.75,
    label: '3/4-10',
    threadsPerInch: 10,
    nutMinIn: { hex: 0.617, 'heavy-hex': 0.71 },
    equalStrengthIn: 0.551,
  },
  {
    diameterIn: 0.875,
    label: '7/8-9',
    threadsPerInch: 9,
    nutMinIn: { hex: 0.724, 'heavy-hex': 0.833 },
    equalStrengthIn: 0.644,
  },
  {
    diameterIn: 1,
    label: '1-8',
    threadsPerInch: 8,
    nutMinIn: { hex: 0.831, 'heavy-hex': 0.956 },
    equalStrengthIn: 0.731,
  },
];
