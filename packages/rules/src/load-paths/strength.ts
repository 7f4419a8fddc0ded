import { LINK_ROLES, type Link, type LinkRole, type LoadPathKind, type Segment } from './load-path.ts';

/** A link with what it is worth; loads in lb of the path's own load, null when not known. */
export interface LinkWorth {
  readonly name: string;
  readonly role: LinkRole;
  readonly state: Link['state'];
  /** Share 0..1 left: the smallest of its findings', 1 when seen sound, null when unseen or not measured. */
  readonly remaining: number | null;
  /** Seen, with findings that do not all tell what is left: it may be worth less. */
  readonly unmeasured: boolean;
  readonly intendedLb: number | null;
  readonly atMostLb: number | null;
}

/** A chain with what it is worth. */
export interface SegmentWorth {
  readonly name: string;
  readonly links: readonly LinkWorth[];
  /** Its weakest link as it was meant to be. */
  readonly intendedLb: number | null;
  /** Its weakest link as far as it has been seen; null while nothing of it has. */
  readonly atMostLb: number | null;
  readonly remaining: number | null;
  readonly governing: string | null;
  readonly unseen: readonly string[];
  /** Seen with findings of which some give no share left. */
  readonly unmeasured: readonly string[];
}

/** The share of its strength that may be counted; null when it was not seen or its findings do not tell. */
export function shareLeft({ state, remaining = [] }: Link): number | null {
  if (state === 'sound') return 1;
  return state === 'findings' && remaining.length > 0 ? Math.min(...remaining) : null;
}

/**
 * Load in lb the link takes with a share 0..1 of its strength; null when nothing tells. A hold-down of a segment `heightFt`
 * high takes the load whose moment, with that of the stories above, its tension and the dead load balance.
 */
function strengthLb(link: Link, { heightFt }: Segment, share: number): number | null {
  const { intendedLb, tensionLb, leverFt, momentAboveFtLb = 0, resistingFtLb = 0 } = link;
  const own = intendedLb === undefined ? [] : [intendedLb * share];
  const tied =
    tensionLb === undefined || leverFt === undefined || heightFt === undefined
      ? []
      : [Math.max(0, (tensionLb * share * leverFt + resistingFtLb - momentAboveFtLb) / heightFt)];
  const known = [...own, ...tied];
  return known.length === 0 ? null : Math.min(...known);
}

const smallest = (values: readonly (number | null)[]): number | null => {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.min(...known);
};

/** What a chain is worth. A link of no known capacity is taken as meant for what the chain was meant to carry. */
export function segmentWorth(kind: LoadPathKind, segment: Segment): SegmentWorth {
  const meant = segment.links.map((link) => strengthLb(link, segment, 1));
  const intendedLb = smallest(meant);
  const links = segment.links.map((link, at): LinkWorth => {
    const { name, role, state } = link;
    const remaining = shareLeft(link);
    const own = remaining === null ? null : strengthLb(link, segment, remaining);
    const shared = remaining === null || intendedLb === null ? null : intendedLb * remaining;
    const unmeasured = state === 'findings' && (remaining === null || (link.unmeasured ?? 0) > 0);
    return { name, role, state, remaining, unmeasured, intendedLb: meant[at] ?? null, atMostLb: own ?? shared };
  });
  const seenLb = smallest(links.map((link) => link.atMostLb));
  const atMostLb = seenLb === null || intendedLb === null ? null : Math.min(intendedLb, seenLb);
  const share = smallest(links.map((link) => link.remaining));
  return {
    name: segment.name,
    links,
    intendedLb,
    atMostLb,
    remaining: atMostLb !== null && intendedLb !== null && intendedLb > 0 ? atMostLb / intendedLb : share,
    governing: governingLink(kind, links, intendedLb !== null),
    unseen: links.filter(({ state }) => state === 'unseen').map(({ name }) => name),
    unmeasured: links.filter(({ unmeasured }) => unmeasured).map(namesOf),
  };
}

const namesOf = ({ name }: LinkWorth): string => name;

/** The seen link worth least; in shares alone, none governs while nothing is lost. Of equals the first the load meets. */
function governingLink(kind: LoadPathKind, links: readonly LinkWorth[], inPounds: boolean): string | null {
  const roles: readonly LinkRole[] = LINK_ROLES[kind];
  const seen = links.filter(({ remaining }) => remaining !== null && (inPounds || remaining < 1));
  const [first] = seen.sort(
    (a, b) =>
      (a.atMostLb ?? 0) - (b.atMostLb ?? 0) ||
      (a.remaining ?? 0) - (b.remaining ?? 0) ||
      roles.indexOf(a.role) - roles.indexOf(b.role) ||
      (a.name < b.name ? -1 : 1),
  );
  return first?.name ?? null;
}

/** A line with what it is worth. */
export interface LineWorth {
  readonly intendedLb: number | null;
  readonly atMostLb: number | null;
  readonly remaining: number | null;
  /** For each segment, the part of the line's share that hangs on it. */
  readonly weights: readonly number[];
  readonly weighedBy: 'strength' | 'length' | 'count';
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const allKnown = (values: readonly (number | null | undefined)[]): number[] | null =>
  values.every((value) => value !== null && value !== undefined) ? (values as number[]) : null;

/** What side-by-side chains are worth together. A segment nobody has looked into counts as meant: the sum is "at most". */
export function lineWorth(segments: readonly Segment[], worths: readonly SegmentWorth[]): LineWorth {
  const meant = allKnown(worths.map(({ intendedLb }) => intendedLb));
  const intendedLb = meant && sum(meant);
  const anySeen = worths.some(({ remaining }) => remaining !== null);
  const { weights, weighedBy } = weighSegments(segments, meant);
  const atMostLb = meant && anySeen ? sum(worths.map(contributionLb)) : null;
  const shares = worths.map(({ remaining }, at) => (remaining ?? 1) * (weights[at] ?? 0));
  const byShare = anySeen ? Math.min(1, sum(shares)) : null;
  const byPounds = atMostLb !== null && intendedLb ? atMostLb / intendedLb : null;
  return { intendedLb, atMostLb, remaining: byPounds ?? byShare, weights, weighedBy };
}

/** What a segment gives to the line's "at most", lb; 0 when nothing of it is known. */
export const contributionLb = ({ atMostLb, intendedLb }: SegmentWorth): number => atMostLb ?? intendedLb ?? 0;

function weighSegments(
  segments: readonly Segment[],
  meant: readonly number[] | null,
): Pick<LineWorth, 'weights' | 'weighedBy'> {
  const lengths = allKnown(segments.map(({ lengthFt }) => lengthFt));
  const [values, weighedBy] =
    meant && sum(meant) > 0
      ? ([meant, 'strength'] as const)
      : lengths
        ? ([lengths, 'length'] as const)
        : ([segments.map(() => 1), 'count'] as const);
  const total = sum(values);
  return { weights: values.map((value) => value / total), weighedBy };
}
