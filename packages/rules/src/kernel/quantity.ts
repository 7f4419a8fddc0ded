import type { Quantity } from './outcome.ts';

/** A number of the given unit, for the `values` of an outcome; adding 0 turns a negative zero into the zero JSON has. */
const of =
  (unit: string) =>
  (value: number): Quantity => ({ value: value + 0, unit });

export const inchesOf = of('in');
export const feetOf = of('ft');
export const poundsOf = of('lb');
export const plfOf = of('plf');
export const footPoundsOf = of('ft-lb');
export const psiOf = of('psi');
export const pctOf = of('pct');
export const squareFeetOf = of('sf');
export const squareInchesOf = of('in2');
export const countOf = of('count');
export const shareQuantity = of('share');
export const factorOf = of('factor');
export const slopeOf = of('slope');
export const yesNoOf = (value: boolean): Quantity => ({ value, unit: 'yes-no' });
export const wordOf = (value: string): Quantity => ({ value, unit: 'text' });

/** A number for a sentence: at most so many decimals, none that say nothing. */
export const decimal = (value: number, digits = 2): string => String(Number(value.toFixed(digits)));
/** A share for a sentence, `57%`. */
export const percent = (share: number, digits = 1): string => `${decimal(share * 100, digits)}%`;
const grouped = (value: number, digits: number): string =>
  decimal(value, digits).replace(/\B(?<!\.\d*)(?=(\d{3})+(?!\d))/g, ',');
/** Pounds for a sentence, whole unless more digits are asked for: `4,200 lb`. */
export const pounds = (valueLb: number, digits = 0): string => `${grouped(valueLb, digits)} lb`;
/** A moment in whole foot-pounds for a sentence, `16,000 ft-lb`. */
export const footPounds = (momentFtLb: number): string => `${grouped(momentFtLb, 0)} ft-lb`;
