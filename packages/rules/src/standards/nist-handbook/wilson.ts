import type { Source } from '../../kernel/index.ts';

export const WILSON_SOURCE: Source = {
  id: 'nist-7.2.4.1',
  title: 'NIST/SEMATECH e-Handbook of Statistical Methods, interval of a proportion',
  edition: 'as read',
  section: '7.2.4.1',
  basis: 'published',
};

/** Standard normal quantile of a two-sided 95 % interval. */
const Z_95 = 1.959963984540054;

/** Wilson 95 % interval of a share: `part` of `whole`, whole at least 1. Answers two shares within 0..1. */
export function wilson95(part: number, whole: number): { readonly low: number; readonly high: number } {
  const share = part / whole;
  const z2 = Z_95 * Z_95;
  const under = 1 + z2 / whole;
  const center = (share + z2 / (2 * whole)) / under;
  const half = (Z_95 * Math.sqrt((share * (1 - share)) / whole + z2 / (4 * whole * whole))) / under;
  return { low: Math.max(0, center - half), high: Math.min(1, center + half) };
}
