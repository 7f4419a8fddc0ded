import { isMomentOpen, isUsedUp, tiedLb } from './hold-down.ts';
import { LINK_ROLES, type Link, type LinkRole, type LoadPath, type Segment } from './load-path.ts';
import { shareLeft } from './shares.ts';
import { notListedIn } from './usual-links.ts';
import { sum, type Weights, weighSegments } from './weights.ts';

/** A link with what it is worth; loads in lb of the path's own load, null when not known. */
export interface LinkWorth {
  readonly name: string;
  readonly role: LinkRole;
  readonly state: Link['state'];
  /** Share 0..1 left, its findings put together; 1 when seen sound, null when unseen or not measured. */
  readonly remaining: number | null;
  /** Seen, with findings that do not all tell what is left: it may be worth less. */
  readonly unmeasured: boolean;
  /** A hold-down not charged yet with the stories above: it may be worth less. */
  readonly momentOpen: boolean;
  /** A hold-down of which the stories above leave nothing. */
  readonly usedUp: boolean;
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
  /** Usual roles that are not listed; they count as unseen. */
  readonly notListed: readonly LinkRole[];
  /** Seen with findings of which some give no share left. */
  readonly unmeasured: readonly string[];
  /** Hold-downs that are not charged with the stories above. */
  readonly momentOpen: readonly string[];
}

/** Load in lb the link takes with a share 0..1 of its strength; null when nothing of its own tells. */
function strengthLb(link: Link, segment: Segment, share: number): number | null {
  const own = link.intendedLb === undefined ? null : link.intendedLb * share;
  return smallest([own, tiedLb(link, segment, share)]);
}

const smallest = (values: readonly (number | null)[]): number | null => {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.min(...known);
};

/** What a chain is worth. A link of no known capacity is taken as meant for what the chain was meant to carry. */
export function segmentWorth(path: LoadPath, segment: Segment): SegmentWorth {
  const intendedLb = smallest(segment.links.map((link) => strengthLb(link, segment, 1)));
  const links = segment.links.map((link) => linkWorth(path, segment, link, intendedLb));
  const seenLb = smallest(links.map((link) => link.atMostLb));
  // Where nothing was left to begin with, seeing more cannot change it.
  const atMostLb = intendedLb === 0 ? 0 : seenLb === null || intendedLb === null ? null : Math.min(intendedLb, seenLb);
  const names = (which: (link: LinkWorth) => boolean) => links.filter(which).map(({ name }) => name);
  return {
    name: segment.name,
    links,
    intendedLb,
    atMostLb,
    remaining: shareOfSegment(intendedLb, atMostLb) ?? smallest(links.map((link) => link.remaining)),
    governing: governingLink(path, links, intendedLb !== null),
    unseen: names(({ state }) => state === 'unseen'),
    notListed: notListedIn(path.kind, segment),
    unmeasured: names(({ unmeasured }) => unmeasured),
    momentOpen: names(({ momentOpen }) => momentOpen),
  };
}

function linkWorth(path: LoadPath, segment: Segment, link: Link, segmentLb: number | null): LinkWorth {
  const { name, role, state } = link;
  const remaining = shareLeft(link);
  const own = remaining === null ? null : strengthLb(link, segment, remaining);
  const shared = remaining === null || segmentLb === null ? null : segmentLb * remaining;
  return {
    name,
    role,
    state,
    remaining,
    unmeasured: state === 'findings' && (remaining === null || (link.unmeasured ?? 0) > 0),
    momentOpen: isMomentOpen(path, segment, link),
    usedUp: isUsedUp(link, segment, remaining),
    intendedLb: strengthLb(link, segment, 1),
    atMostLb: own ?? shared,
  };
}

/** Nothing left of nothing is nothing, not all of it. */
const shareOfSegment = (intendedLb: number | null, atMostLb: number | null): number | null =>
  intendedLb === null || atMostLb === null ? null : intendedLb === 0 ? 0 : atMostLb / intendedLb;

/**
 * The link worth least. It must have a strength or a loss of its own: a sound link of no known capacity only repeats what
 * the chain is worth. One that was not seen governs by what it was meant to carry, once something of the chain has been
 * seen. In shares alone none governs while nothing is lost. Of equals the seen one, then the first the load meets.
 */
function governingLink({ kind }: LoadPath, links: readonly LinkWorth[], inPounds: boolean): string | null {
  const roles: readonly LinkRole[] = LINK_ROLES[kind];
  if (links.every(({ remaining, usedUp }) => remaining === null && !usedUp)) return null;
  const lostSome = ({ remaining }: LinkWorth) => remaining !== null && remaining < 1;
  const own = links.filter((link) => lostSome(link) || (inPounds && link.intendedLb !== null));
  const figure = ({ atMostLb, intendedLb }: LinkWorth) => atMostLb ?? intendedLb ?? 0;
  const [first] = own.sort(
    (a, b) =>
      figure(a) - figure(b) ||
      (a.remaining ?? 2) - (b.remaining ?? 2) ||
      roles.indexOf(a.role) - roles.indexOf(b.role) ||
      (a.name < b.name ? -1 : 1),
  );
  return first?.name ?? null;
}

/** A line with what it is worth. */
export interface LineWorth extends Weights {
  readonly intendedLb: number | null;
  readonly atMostLb: number | null;
  readonly remaining: number | null;
}

/** What side-by-side chains are worth together. A segment nobody has looked into counts as meant: the sum is "at most". */
export function lineWorth({ kind, segments }: LoadPath, worths: readonly SegmentWorth[]): LineWorth {
  const amounts = worths.map(({ intendedLb }) => intendedLb);
  const meant = amounts.every((amount) => amount !== null) ? amounts : null;
  const intendedLb = meant && sum(meant);
  const anySeen = worths.some(({ remaining }) => remaining !== null);
  const weighed = weighSegments(kind, segments, meant);
  const atMostLb = meant && anySeen ? sum(worths.map(contributionLb)) : null;
  const shares = worths.map(({ remaining }, at) => (remaining ?? 1) * (weighed.weights[at] ?? 0));
  const byShare = anySeen ? Math.min(1, sum(shares)) : null;
  const byPounds = atMostLb !== null && intendedLb ? atMostLb / intendedLb : null;
  return { intendedLb, atMostLb, remaining: byPounds ?? byShare, ...weighed };
}

/** What a segment gives to the line's "at most", lb; 0 when nothing of it is known. */
export const contributionLb = ({ atMostLb, intendedLb }: SegmentWorth): number => atMostLb ?? intendedLb ?? 0;
