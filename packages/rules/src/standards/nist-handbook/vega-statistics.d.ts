/** The package carries no types; this is the one function used here. */
declare module 'vega-statistics' {
  /** Quantile of the normal distribution at a chance 0..1; standard when mean and deviation are left out. */
  export function quantileNormal(chance: number, mean?: number, deviation?: number): number;
}
