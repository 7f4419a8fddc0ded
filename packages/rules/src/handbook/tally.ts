import { runCheck } from '../judging/run-check.ts';
import {
  BASES,
  type Basis,
  type CaseOrigin,
  type Check,
  type CheckEvidence,
  SEVERITIES,
  type Severity,
  type Source,
} from '../kernel/index.ts';

/** Where the expected numbers of a case may come from, the best known first. */
export const ORIGINS: readonly CaseOrigin[] = [...BASES, 'hand-worked'];

type Counts<K extends string> = Readonly<Record<K, number>>;

/** How often each basis, origin and severity comes up. */
export interface Tally {
  readonly bases: Counts<Basis>;
  readonly origins: Counts<CaseOrigin>;
  /** Over the own cases of the checks. */
  readonly severities: Counts<Severity>;
}

const countEach = <K extends string>(names: readonly K[], found: readonly K[]): Counts<K> =>
  Object.fromEntries(names.map((name) => [name, found.filter((one) => one === name).length])) as Record<K, number>;

export const sumOf = (counts: Counts<string>): number => Object.values(counts).reduce((sum, count) => sum + count, 0);

/** Each source once, however many checks lean on it. */
export const countBases = (sources: readonly Source[]): Counts<Basis> =>
  countEach(BASES, [...new Map(sources.map(({ id, basis }) => [id, basis])).values()]);

/** How well a check is known, and how often its own cases come out with each severity. */
export function tallyCheck(check: Check, { cases }: Pick<CheckEvidence, 'cases'>): Tally {
  const judged = cases.map(({ edition, inputs, situation }) =>
    runCheck(check, { edition, inputs, context: situation }),
  );
  return {
    bases: countBases(check.sources),
    origins: countEach(
      ORIGINS,
      cases.map(({ origin }) => origin),
    ),
    severities: countEach(
      SEVERITIES,
      judged.map(({ severity }) => severity),
    ),
  };
}

/** Several checks as one; their sources are counted apart, because checks share them. */
export function tallyOf(tallies: readonly Tally[], bases: Counts<Basis>): Tally {
  const add = <K extends string>(names: readonly K[], each: readonly Counts<K>[]): Counts<K> =>
    Object.fromEntries(names.map((name) => [name, each.reduce((sum, one) => sum + one[name], 0)])) as Record<K, number>;
  return {
    bases,
    origins: add(
      ORIGINS,
      tallies.map(({ origins }) => origins),
    ),
    severities: add(
      SEVERITIES,
      tallies.map(({ severities }) => severities),
    ),
  };
}
