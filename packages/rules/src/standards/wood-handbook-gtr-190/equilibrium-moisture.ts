import type { Source } from '../../kernel/index.ts';

export const EMC_SOURCE: Source = {
  id: 'wood-handbook-4-5',
  title: 'Wood Handbook, equilibrium moisture of wood in air',
  edition: 'FPL-GTR-282, as transcribed; a copy of Table 4-2 agrees',
  section: 'Equation 4-5',
  basis: 'second-hand',
};

/** Air temperatures the equation is used for here, degrees Fahrenheit. */
export const EMC_RANGE_F = { min: 20, max: 150 } as const;

/**
 * Moisture, percent of dry weight, that wood settles at in steady air.
 * @param temperatureF 20..150 degrees Fahrenheit
 * @param humidityPct relative humidity 0..100
 */
export function equilibriumMoisturePct(temperatureF: number, humidityPct: number): number {
  const t = temperatureF;
  const h = humidityPct / 100;
  const w = 330 + 0.452 * t + 0.00415 * t ** 2;
  const k = 0.791 + 4.63e-4 * t - 8.44e-7 * t ** 2;
  const k1 = 6.34 + 7.75e-4 * t - 9.35e-5 * t ** 2;
  const k2 = 1.09 + 0.0284 * t - 9.04e-5 * t ** 2;
  const kh = k * h;
  const dissolved = (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2);
  return (1800 / w) * (kh / (1 - kh) + dissolved);
}
