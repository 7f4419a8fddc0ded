import { severityReferrals, standingCautions } from '../kernel/cautions.ts';
import {
  type InputIssue,
  type Locale,
  type Referral,
  ratioOf,
  rulesVersion,
  type Severity,
  type SeverityRow,
  type Source,
  say,
  type Text,
  type Verdict,
} from '../kernel/index.ts';
import { faultsOf } from './faults.ts';
import { STACKED_SOURCE } from './hold-down.ts';
import { lineCautions } from './line-cautions.ts';
import { rateLine, ratingWords } from './line-severity.ts';
import { hangsOnPiers, isKnown, isOverloaded, mostLb, verdictOf } from './line-verdict.ts';
import { lineReasons } from './line-words.ts';
import { CHAIN_SOURCE, LINK_ROLES, type LinkRole, type LoadPath } from './load-path.ts';
import { type LikeParts, likePartsOf, type OpenNext, openNextOf } from './open-next.ts';
import { type LineWorth, lineWorth, type SegmentWorth, segmentWorth } from './strength.ts';
import { anySlender, SLENDER_SOURCE } from './weights.ts';

/** What a load path is worth, with every wording in both languages. Loads in lb of the path's own load. */
export interface LoadPathOutcome {
  readonly rulesVersion: string;
  readonly segments: readonly SegmentWorth[];
  readonly intendedLb: number | null;
  readonly atMostLb: number | null;
  /** Share 0..1 of what the line was meant to carry. */
  readonly remaining: number | null;
  /**
   * False while a link is unseen, not listed, not measured, or not charged with what stands above: then every figure is
   * "at most".
   */
  readonly known: boolean;
  /** Usual roles that a segment of the line does not list; they count as unseen. */
  readonly notListed: readonly LinkRole[];
  readonly verdict: Verdict;
  /** Demand over what can be counted; null without a demand or with nothing to count. */
  readonly ratio: number | null;
  /** The governing link of each segment that has one. */
  readonly governing: readonly string[];
  readonly openNext: readonly OpenNext[];
  readonly likeParts: readonly LikeParts[];
  readonly severity: Severity;
  /** The row of the severity table that decided, also the last of `reasons`. */
  readonly severityRow: SeverityRow;
  readonly reasons: readonly Text[];
  readonly sources: readonly Source[];
  readonly cautions: readonly Text[];
  readonly referrals: readonly Referral[];
}

/** The load path cannot be one: each issue names the field, what came and what is allowed. */
export class LoadPathError extends Error {
  override readonly name = 'LoadPathError';
  readonly issues: readonly InputIssue[];
  constructor(issues: readonly InputIssue[]) {
    super(issues.map((issue) => issue.message.en).join(' '));
    this.issues = issues;
  }
}

/**
 * What a line is worth as far as it has been seen, what governs it, what to open next and how grave it is. Screening:
 * weakest link of each segment, sum of the segments. Throws LoadPathError.
 */
export function evaluateLoadPath(path: LoadPath): LoadPathOutcome {
  const issues = faultsOf(path);
  if (issues.length > 0) throw new LoadPathError(issues);
  const segments = path.segments.map((segment) => segmentWorth(path, segment));
  const line = lineWorth(path, segments);
  const known = isKnown(segments);
  const ratio = line.atMostLb === null ? null : ratioOf(path.demandLb, line.atMostLb);
  const verdict = verdictOf(path, line, segments);
  const nothingLeft = verdict === 'fails' && ratio === null && line.atMostLb !== null && path.demandLb !== undefined;
  const atLeastRatio = ratioOf(path.demandLb, mostLb(line) ?? undefined);
  const onPiers = verdict === 'undetermined' && known && hangsOnPiers(path, segments);
  const found = { verdict, ratio: atLeastRatio, nothingLeft, overloaded: isOverloaded(path, line), onPiers };
  const rating = rateLine(path, line, segments, found);
  const { intendedLb, atMostLb, remaining } = line;
  const sources = sourcesOf(path, line);
  return {
    rulesVersion,
    segments,
    intendedLb,
    atMostLb,
    remaining,
    known,
    notListed: LINK_ROLES[path.kind].filter((role) => segments.some(({ notListed }) => notListed.includes(role))),
    verdict,
    ratio,
    governing: segments.flatMap(({ governing }) => (governing === null ? [] : [governing])),
    openNext: openNextOf(path.kind, line, segments),
    likeParts: likePartsOf(path.kind, segments),
    severity: rating.severity,
    severityRow: rating.row,
    reasons: [...lineReasons(path, line, segments, { ratio, known }), ratingWords(rating)],
    sources,
    cautions: [
      ...standingCautions(rating.role, rating.severity, sources),
      ...lineCautions(path, line, segments, known),
    ],
    referrals: severityReferrals(rating.role, rating.severity),
  };
}

function sourcesOf(path: LoadPath, { weighedBy }: LineWorth): Source[] {
  const tied = path.segments.some(({ links }) => links.some(({ tensionLb }) => tensionLb !== undefined));
  const slender = path.kind === 'wall-line' && weighedBy === 'length' && anySlender(path.segments);
  return [CHAIN_SOURCE, ...(tied ? [STACKED_SOURCE] : []), ...(slender ? [SLENDER_SOURCE] : [])];
}

/** The same path with the named links made good: what it would be worth after their repair. */
export function withRepaired(path: LoadPath, repaired: readonly { segment: string; link: string }[]): LoadPath {
  const isRepaired = (segment: string, link: string) =>
    repaired.some((one) => one.segment === segment && one.link === link);
  const segments = path.segments.map((segment) => ({
    ...segment,
    links: segment.links.map((link) => {
      if (!isRepaired(segment.name, link.name)) return link;
      const { remaining: _remaining, unmeasured: _unmeasured, ...rest } = link;
      return { ...rest, state: 'sound' as const };
    }),
  }));
  return { ...path, segments };
}

/** The JSON answer of the API in one language. */
export interface LoadPathAnswer extends Omit<LoadPathOutcome, 'reasons' | 'cautions' | 'openNext' | 'severityRow'> {
  readonly openNext: readonly (Omit<OpenNext, 'why'> & { readonly why: string })[];
  readonly reasons: readonly string[];
  readonly cautions: readonly string[];
}

export function toLoadPathAnswer({ severityRow: _row, ...outcome }: LoadPathOutcome, locale: Locale): LoadPathAnswer {
  return {
    ...outcome,
    openNext: outcome.openNext.map((one) => ({ ...one, why: say(one.why, locale) })),
    reasons: outcome.reasons.map((words) => say(words, locale)),
    cautions: outcome.cautions.map((words) => say(words, locale)),
  };
}
