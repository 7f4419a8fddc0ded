import { formatLength } from './measure.ts';
import { decimal, percent, pounds } from './quantity.ts';
import { atLeast, atMost } from './ratio.ts';
import { type Text, text } from './text.ts';

/** What a limit asks of a measurement: no more than it, or no less. */
export type Sense = 'at-most' | 'at-least';

/** A measurement and its limit in words that never look alike when the measurement fails. */
export interface Compared {
  readonly measured: Text;
  readonly limit: string;
}

/** Fractions of an inch a tape carries, then decimals: the first that shows the difference is written. */
const FRACTIONS = [16, 32, 64] as const;
const DECIMALS = [3, 4] as const;
/** More digits than a number is usually written with, tried one by one. */
const EXTRA_DIGITS = [0, 1, 2, 3] as const;

const fails = (measured: number, limit: number, sense: Sense): boolean =>
  sense === 'at-most' ? !atMost(measured, limit) : !atLeast(measured, limit);

/** What is seen on paper says the same as the numbers behind it. */
const isTrue = (sense: Sense, [measured, limit]: readonly number[], [seen, seenLimit]: readonly number[]): boolean =>
  fails(Number(measured), Number(limit), sense) === fails(Number(seen), Number(seenLimit), sense);

const alike = (words: string): Text => text(words, words);

const justBeyond = (limit: string, sense: Sense): Text =>
  sense === 'at-most'
    ? text(`a little over ${limit}`, `un poco más de ${limit}`)
    : text(`a little under ${limit}`, `un poco menos de ${limit}`);

/**
 * Writes a length beside its limit, both in inches. The limit is rounded to the tape on the safe side (working to it
 * never passes it), with its decimals where it is not on the tape. From 1/16 in, or a finer fraction, to 0.0001 in.
 */
export function compareLengths(measuredIn: number, limitIn: number, sense: Sense, coarsest: 16 | 32 = 16): Compared {
  for (const denominator of FRACTIONS) {
    const seenIn = Math.round(measuredIn * denominator) / denominator;
    const seenLimitIn = safeSide(limitIn, denominator, sense);
    if (denominator < coarsest || !isTrue(sense, [measuredIn, limitIn], [seenIn, seenLimitIn])) continue;
    return { measured: alike(formatLength(seenIn, { denominator })), limit: limitOnTape(limitIn, denominator, sense) };
  }
  for (const digits of DECIMALS) {
    const [seen, seenLimit] = [measuredIn, limitIn].map((inches) => decimal(inches, digits)) as [string, string];
    if (!isTrue(sense, [measuredIn, limitIn], [Number(seen), Number(seenLimit)])) continue;
    return { measured: alike(`${seen} in`), limit: `${seenLimit} in` };
  }
  const limit = limitOnTape(limitIn, coarsest, sense);
  const plain = limit.includes('(') ? `${decimal(limitIn, 3)} in` : limit;
  return { measured: justBeyond(plain, sense), limit };
}

/** The nearest mark of the tape that does not pass the limit. */
function safeSide(limitIn: number, denominator: number, sense: Sense): number {
  const ticks = Number((limitIn * denominator).toFixed(6));
  return (sense === 'at-most' ? Math.floor(ticks) : Math.ceil(ticks)) / denominator;
}

/** Three decimals: a thousandth of an inch is finer than any tape. */
const isOnTape = (limitIn: number, onTapeIn: number): boolean => decimal(limitIn, 3) === decimal(onTapeIn, 3);

function limitOnTape(limitIn: number, denominator: 16 | 32 | 64, sense: Sense): string {
  const onTapeIn = safeSide(limitIn, denominator, sense);
  const words = formatLength(onTapeIn, { denominator });
  return isOnTape(limitIn, onTapeIn) ? words : `${words} (${decimal(limitIn, 3)} in)`;
}

/** Writes a number beside its limit, with up to three digits more than usual where they would look alike. */
export function compareNumbers(
  measured: number,
  limit: number,
  sense: Sense,
  write: (value: number, digits: number) => string = decimal,
  digits = 0,
): Compared {
  for (const extra of EXTRA_DIGITS) {
    const seen = [measured, limit].map((value) => Number(value.toFixed(digits + extra)));
    if (!isTrue(sense, [measured, limit], seen)) continue;
    return { measured: alike(write(measured, digits + extra)), limit: write(limit, digits + extra) };
  }
  const words = write(limit, digits);
  return { measured: justBeyond(words, sense), limit: words };
}

/** Writes a share 0..1 beside its limit, in percent. */
export const compareShares = (measured: number, limit: number, sense: Sense): Compared =>
  compareNumbers(measured * 100, limit * 100, sense, (value, digits) => percent(value / 100, digits), 1);

/** A sentence of a verdict; `fails` marks one that says what does not hold. */
export interface Reason extends Text {
  readonly fails?: boolean;
}

/** Marks a sentence that says what does not hold; one that holds stays as it is. */
export const reasonThat = (holds: boolean, words: Text): Reason => (holds ? words : { ...words, fails: true });

/** What does not hold comes first, whatever was measured first. */
export const failuresFirst = (reasons: readonly Reason[]): Reason[] => [
  ...reasons.filter((reason) => reason.fails),
  ...reasons.filter((reason) => !reason.fails),
];

/** What something takes and the load on it, both in pounds: `takes` and, once it is known, `; the load is 300.4 lb`. */
export function compareLoad(demandLb: number | undefined, capacityLb: number): { takes: string; load: Text } {
  if (demandLb === undefined) return { takes: pounds(capacityLb), load: text('', '') };
  const { measured, limit } = compareNumbers(demandLb, capacityLb, 'at-most', pounds);
  return { takes: limit, load: text(`; the load is ${measured.en}`, `; la carga es ${measured.es}`) };
}
