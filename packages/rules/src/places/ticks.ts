/**
 * Inches are added and multiplied as whole millionths: 16ths, 64ths and the 19.2 in of a joist layout (96/5) are whole
 * numbers of them, and in binary three times 19.2 is less than 57.6. Lengths up to a few thousand inches.
 */
const TICKS_PER_IN = 1_000_000;

const ticksOf = (lengthIn: number): number => Math.round(lengthIn * TICKS_PER_IN);

/** The sum of two lengths, inches; a length with a minus is taken off. */
export const addIn = (oneIn: number, otherIn: number): number => (ticksOf(oneIn) + ticksOf(otherIn)) / TICKS_PER_IN;

/** A whole number of times a length, inches. */
export const timesIn = (count: number, lengthIn: number): number => (count * ticksOf(lengthIn)) / TICKS_PER_IN;

/** How often a length goes into another whole, and with what is left over counted as one more. */
export const timesWithin = (lengthIn: number, partIn: number): number =>
  Math.floor(ticksOf(lengthIn) / ticksOf(partIn));
export const timesToCover = (lengthIn: number, partIn: number): number =>
  Math.ceil(ticksOf(lengthIn) / ticksOf(partIn));
