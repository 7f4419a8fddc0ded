import { lengthParts } from '@underlath/rules/kernel';

/** A length as the key pad holds it: which side of zero, feet, whole inches, and ticks of the finest fraction. */
export type PadValue = { negative: boolean; feet: number; whole: number; ticks: number };
export type PadPart = 'feet' | 'whole' | 'ticks';

export const emptyPad: PadValue = { negative: false, feet: 0, whole: 0, ticks: 0 };

/** Takes inches apart for the pad. Anything finer than the pad's fraction is rounded to it. */
export function toPad(inches: number | null, denominator: number, withFeet: boolean, negative: boolean): PadValue {
  if (inches === null) return { ...emptyPad, negative };
  const parts = lengthParts(inches, {
    denominator: denominator as 8 | 16 | 32,
    style: withFeet ? 'feet-inches' : 'inches',
  });
  return {
    // Zero has no side of its own: the switch stays where the person set it.
    negative: inches === 0 ? negative : parts.negative,
    feet: parts.feet,
    whole: parts.whole,
    ticks: parts.numerator === 0 ? 0 : parts.numerator * (denominator / parts.denominator),
  };
}

/** Puts the pad's parts together to inches. */
export function fromPad(pad: PadValue, denominator: number): number {
  const inches = pad.feet * 12 + pad.whole + pad.ticks / denominator;
  return inches === 0 ? 0 : pad.negative ? -inches : inches;
}

/** Adds a digit at the end of a part; inches beside feet stay under 12, and no part gets a third digit. */
export function pressDigit(pad: PadValue, part: 'feet' | 'whole', digit: number, withFeet: boolean): PadValue {
  const most = part === 'whole' && withFeet ? 11 : part === 'feet' ? 99 : 999;
  const longer = pad[part] * 10 + digit;
  return { ...pad, [part]: longer <= most ? longer : digit };
}

/** Which parts a length of this range needs, and which is pressed first: what may be short of its mark is mostly a fraction. */
export function padParts(minIn: number, maxIn: number): { parts: PadPart[]; first: PadPart } {
  if (maxIn < 1) return { parts: ['ticks'], first: 'ticks' };
  if (maxIn <= 48) return { parts: ['whole', 'ticks'], first: maxIn <= 2 || minIn < 0 ? 'ticks' : 'whole' };
  return { parts: ['feet', 'whole', 'ticks'], first: maxIn > 120 ? 'feet' : 'whole' };
}

/** After this key the part can take no further digit, so the pad goes on to the next one. */
export function isFull(pad: PadValue, part: 'feet' | 'whole', withFeet: boolean, maxIn: number): boolean {
  const most = part === 'feet' ? Math.floor(maxIn / 12) : withFeet ? 11 : Math.floor(maxIn);
  return pad[part] * 10 > most;
}
