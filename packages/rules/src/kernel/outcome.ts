import type { SeverityRow } from './severity.ts';
import type { Source, UnreadBasis } from './source.ts';
import { type Locale, say, type Text } from './text.ts';

export const VERDICTS = ['meets', 'fails', 'undetermined', 'not-applicable'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** Gravest first. */
export const SEVERITIES = ['make-safe', 'engineer', 'repair', 'record'] as const;
export type Severity = (typeof SEVERITIES)[number];

export const REFERRALS = ['engineer', 'official', 'specialist'] as const;
export type Referral = (typeof REFERRALS)[number];

/** A result with its unit: `in`, `ft`, `lb`, `plf`, `ft-lb`, `psi`, `pct`, `F`, `sf`, `in2`, `share`, `count`, `slope`, `yes-no`, `text`. */
export interface Quantity {
  readonly value: number | boolean | string;
  readonly unit: string;
}

/** Something an answer takes for granted because the input was left out; the source says where that comes from. */
export interface Assumed {
  readonly input: string;
  readonly text: Text;
  readonly source: Source;
}

/** What a check found, with every wording in both languages. Stored as it is and re-run, never edited. */
export interface Outcome {
  readonly checkId: string;
  readonly rulesVersion: string;
  readonly edition: string;
  readonly verdict: Verdict;
  /** Demand over capacity or measured over limit; above 1 does not meet; null when it has no finite value. */
  readonly ratio: number | null;
  /** Share 0..1 of the element's intended strength that may still be counted; null when unknown. */
  readonly remaining: number | null;
  readonly values: Readonly<Record<string, Quantity>>;
  readonly severity: Severity;
  /** The row of the severity table that decided, also the last of `reasons`. */
  readonly severityRow: SeverityRow;
  readonly reasons: readonly Text[];
  /** Input names still to be measured. */
  readonly missing: readonly string[];
  /** What was taken for inputs left out. Absent from outcomes stored before it was said. */
  readonly assumed?: readonly Assumed[];
  /**
   * How the deciding sources are known when their documents were not read; empty when they were, or nothing was
   * decided. Absent from outcomes stored before it was said.
   */
  readonly restsOn?: readonly UnreadBasis[];
  readonly sources: readonly Source[];
  readonly cautions: readonly Text[];
  readonly referrals: readonly Referral[];
  /** Repair template ids that answer this outcome, preferred first. */
  readonly repairs: readonly string[];
}

/** The JSON answer of the API in one language. */
export interface Answer extends Omit<Outcome, 'reasons' | 'restsOn' | 'cautions' | 'severityRow' | 'assumed'> {
  readonly reasons: readonly string[];
  /** `source` is the id of one of `sources`. */
  readonly assumed: readonly { readonly input: string; readonly text: string; readonly source: string }[];
  readonly cautions: readonly string[];
}

export function toAnswer(outcome: Outcome, locale: Locale): Answer {
  const { checkId, rulesVersion, edition, verdict, ratio, remaining, values, severity, reasons, missing } = outcome;
  const { assumed = [], sources, cautions, referrals, repairs } = outcome;
  return {
    checkId,
    rulesVersion,
    edition,
    verdict,
    ratio,
    remaining,
    values,
    severity,
    reasons: reasons.map((reason) => say(reason, locale)),
    missing,
    assumed: assumed.map((one) => ({ input: one.input, text: say(one.text, locale), source: one.source.id })),
    sources,
    cautions: cautions.map((caution) => say(caution, locale)),
    referrals,
    repairs,
  };
}
