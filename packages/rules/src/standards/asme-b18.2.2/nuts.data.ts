import type { Source } from '../../kernel/index.ts';

export const NUT_SIZES_SOURCE: Source = {
  id: 'asme-b18.2.2',
  title: 'Finished hex and heavy hex nuts, ASME B18.2.2',
  edition: 'table copy, edition not printed',
  section: 'nut thickness, minimum',
  basis: 'second-hand',
};
export interface RodSize {
  readonly diameterIn: number;
  readonly label: string;
  readonly threadsPerInch: number;
  /** Least nut thickness each standard allows. */
  readonly nutMinIn: { readonly hex: number; readonly 'heavy-hex': number };
}

/** Coarse-thread rods from 1/2 to 1 in: pitch and least nut thickness. Inches. */
export const ROD_SIZES: readonly RodSize[] = [
  {
    diameterIn: 0.5,
    label: '1/2-13',
    threadsPerInch: 13,
    nutMinIn: { hex: 0.427, 'heavy-hex': 0.464 },
  },
  {
    diameterIn: 0.625,
    label: '5/8-11',
    threadsPerInch: 11,
    nutMinIn: { hex: 0.535, 'heavy-hex': 0.587 },
  },
  {
    diameterIn: 0.75,
    label: '3/4-10',
    threadsPerInch: 10,
    nutMinIn: { hex: 0.617, 'heavy-hex': 0.71 },
  },
  {
    diameterIn: 0.875,
    label: '7/8-9',
    threadsPerInch: 9,
    nutMinIn: { hex: 0.724, 'heavy-hex': 0.833 },
  },
  {
    diameterIn: 1,
    label: '1-8',
    threadsPerInch: 8,
    nutMinIn: { hex: 0.831, 'heavy-hex': 0.956 },
  },
];
