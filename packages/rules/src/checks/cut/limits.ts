import {
  atLeast,
  atMost,
  decimal,
  type Edition,
  formatLength,
  type InputIssue,
  ratioOf,
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

/** A length that is allowed, rounded down to the tape: working to it never passes the limit. Inches in. */
const formatAllowed = (inches: number): string => {
  const down = Math.floor(Number((inches * 16).toFixed(6))) / 16;
  return down === inches ? formatLength(down) : `${formatLength(down)} (${decimal(inches, 3)} in)`;
};

/** What was cut, at most so large. Inches. */
export const cutAtMost = (what: Text, measuredIn: number, limitIn: number): CutLimit => ({
  ratio: ratioOf(measuredIn, limitIn),
  ok: atMost(measuredIn, limitIn),
  says: () => {
    const [has, most] = [formatLength(measuredIn), formatAllowed(limitIn)];
    return text(`${what.en}: ${has}; at most ${most}.`, `${what.es}: ${has}; como máximo ${most}.`);
  },
});

/** Wood that must stay, at least so much. Inches. */
export const woodAtLeast = (what: Text, measuredIn: number, limitIn: number): CutLimit => ({
  ratio: ratioOf(limitIn, measuredIn),
  ok: atLeast(measuredIn, limitIn),
  says: () => {
    const [has, least] = [formatLength(measuredIn), formatLength(limitIn)];
    return text(`${what.en}: ${has}; at least ${least}.`, `${what.es}: ${has}; como mínimo ${least}.`);
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

/** The edition of a code a rule is printed in: `irc-2018` is IRC 2018. */
export function codeEdition({ id }: { readonly id: string }): Edition {
  const title = id.toUpperCase().replace('-', ' ');
  return { id, title: text(title, title) };
}

/** Refuses a cut larger than the wood it is made in. Inches. */
export function largerThan(input: string, cutIn: number | undefined, woodIn: number | undefined): InputIssue[] {
  if (cutIn === undefined || woodIn === undefined || atMost(cutIn, woodIn)) return [];
  const [came, most] = [decimal(cutIn, 4), decimal(woodIn, 4)];
  return [
    {
      path: [input],
      message: text(
        `${input}: got ${came} in; allowed is at most ${most} in, the wood that is there.`,
        `${input}: llegó ${came} in; se permite hasta ${most} in, la madera que hay.`,
      ),
    },
  ];
}
