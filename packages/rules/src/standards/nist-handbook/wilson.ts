import type { Source } from '../../kernel/index.ts';
import { findNormalQuantile } from './normal-quantile.ts';

export const WILSON_SOURCE: Source = {
  id: 'nist-7.2.4.1',
  title: 'NIST/SEMATECH e-Handbook of Statistical Methods, interval of a proportion',
  edition: 'as read',
  section: '7.2.4.1',
  basis: 'published',
};

/** Wilson interval of a share: `part` of `whole` (1 or more), two-sided, confidence in percent (50 to 99.9). Two shares within 0..1. */
export function wilson(
  part: number,
  whole: number,
  confidencePct: number,
): { readonly low: number; readonly high: number } {
  const z = findNormalQuantile(0.5 + confidencePct / 200);
  const share = part / whole;
  const z2 = z * z;
  const under = 1 + z2 / whole;
  const center = (share + z2 / (2 * whole)) / under;
  const half = (z * Math.sqrt((share * (1 - share)) / whole + z2 / (4 * whole * whole))) / under;
  // At none and at all bad the two terms cancel to a rounding error.
  return {
    low: part === 0 ? 0 : Math.max(0, center - half),
    high: part === whole ? 1 : Math.min(1, center + half),
  };
}

/** The same at 95%. */
export const wilson95 = (part: number, whole: number) => wilson(part, whole, 95);
