import {
  atLeast,
  atMost,
  compareLengths,
  type Edition,
  type Reason,
  ratioOf,
  reasonThat,
  refuseLonger,
  type Text,
  text,
  type Verdict,
} from '../../kernel/index.ts';

/** One limit of a cutting rule beside what was measured. */
export interface CutLimit {
  /** Measured over allowed, or required over measured; above 1 does not meet; null when it has no finite value. */
  readonly ratio: number | null;
  readonly ok: boolean;
  readonly says: () => Text;
}

/** What was cut, at most so large. Inches. */
export const cutAtMost = (what: Text, measuredIn: number, limitIn: number): CutLimit => ({
  ratio: ratioOf(measuredIn, limitIn),
  ok: atMost(measuredIn, limitIn),
  says: () => {
    const { measured, limit } = compareLengths(measuredIn, limitIn, 'at-most');
    return text(`${what.en}: ${measured.en}; at most ${limit}.`, `${what.es}: ${measured.es}; como máximo ${limit}.`);
  },
});

/** Wood that must stay, at least so much. Inches. */
export const woodAtLeast = (what: Text, measuredIn: number, limitIn: number): CutLimit => ({
  ratio: ratioOf(limitIn, measuredIn),
  ok: atLeast(measuredIn, limitIn),
  says: () => {
    const { measured, limit } = compareLengths(measuredIn, limitIn, 'at-least');
    return text(`${what.en}: ${measured.en}; at least ${limit}.`, `${what.es}: ${measured.es}; como mínimo ${limit}.`);
  },
});

/** A place where the rule forbids any cut. */
export const forbidden = (says: Text): CutLimit => ({ ratio: null, ok: false, says: () => says });

/**
 * Fails when a limit is passed whatever is still unmeasured; meets only when nothing is. The ratio is the largest among
 * the limits that decide.
 */
export function judgeLimits(limits: readonly CutLimit[], unmeasured: readonly string[]) {
  const fails = limits.some((limit) => !limit.ok);
  const verdict: Verdict = fails ? 'fails' : unmeasured.length > 0 ? 'undetermined' : 'meets';
  let ratio: number | null = null;
  for (const limit of limits)
    if (limit.ratio !== null && !(fails && limit.ok)) ratio = Math.max(ratio ?? 0, limit.ratio);
  return { verdict, ratio, missing: verdict === 'undetermined' ? unmeasured : NOTHING };
}
const NOTHING: readonly string[] = [];

/** What the limits say, those that are passed first. */
export const limitReasons = (limits: readonly CutLimit[]): Reason[] =>
  limits.map((limit) => reasonThat(limit.ok, limit.says()));

/** The edition of a code a rule is printed in: `irc-2018` is IRC 2018. */
export function editionOfCode({ id }: { readonly id: string }): Edition {
  const title = id.toUpperCase().replace('-', ' ');
  return { id, title: text(title, title) };
}

const WOOD_THERE = text('the wood that is there', 'la madera que hay');

/** Refuses a cut larger than the wood it is made in. Inches. */
export const largerThan = (input: string, what: Text, cutIn: number | undefined, woodIn: number | undefined) =>
  refuseLonger([input], { what, came: cutIn, most: woodIn, ofWhat: WOOD_THERE });
