import { INCHES_PER_FOOT, type Outcome } from '../kernel/index.ts';
import { overlaps, type Rect } from '../places/extents.ts';
import type { Link, LoadPath, Segment, ShareLeft } from './load-path.ts';

/** A link as it is kept: what says how much of it may be counted are findings, which change after it was described. */
export interface DescribedLink extends Omit<Link, 'remaining' | 'unmeasured'> {
  readonly findingIds: readonly string[];
  /** Who says that it is sound. */
  readonly photoId: string | null;
  /** Where it is on the elevation. */
  readonly at: Rect | null;
  /** Of a link that stands for many like parts: how many there are, were opened, and were bad. */
  readonly parts: { readonly total: number; readonly opened: number; readonly bad: number } | null;
}

export interface DescribedSegment extends Omit<Segment, 'links'> {
  /** Left end on the elevation, inches. */
  readonly fromIn: number | null;
  readonly links: readonly DescribedLink[];
}

/** A part of what was given that cannot be kept, by its JSON Pointer (RFC 6901), and why. */
interface Fault {
  readonly pointer: string;
  readonly detail: string;
}

/** What of a finding says how much of its link may be counted. */
export interface LinkFinding {
  readonly state: string;
  /** The way of failing that its check tells of; undefined where it tells none. */
  readonly lossMode: string | undefined;
  /** The newest outcome, or undefined while nothing was measured. */
  readonly outcome: Pick<Outcome, 'verdict' | 'remaining'> | undefined;
}

export interface KeptPath extends Omit<LoadPath, 'segments'> {
  readonly segments: readonly DescribedSegment[];
}

/** What has come to stand around a kept path since it was described. */
export interface Now {
  readonly findings: ReadonlyMap<string, LinkFinding>;
  /** Findings taken as repaired. */
  readonly repaired: readonly string[];
  /** For each segment what the line above brings to its foot, ft-lb; null or left out while that is not known. */
  readonly momentsFtLb: readonly (number | null)[];
}

/**
 * The load path as it stands now. A withdrawn finding says nothing, so a link with none left is unseen again; a proven one,
 * or one that is taken as repaired, no longer weakens its link. A repair that is not proven yet still does. A hold-down of
 * which nobody typed the moment from above takes that of the line above.
 */
export function pathNow({ segments, ...path }: KeptPath, now: Now): LoadPath {
  return {
    ...path,
    segments: segments.map(({ fromIn: _fromIn, links, ...segment }, at) => ({
      ...segment,
      links: links.map((link) => ({ ...fromAbove(link, now.momentsFtLb[at] ?? null), ...linkNow(link, now) })),
    })),
  };
}

const fromAbove = (
  { role, momentAboveFtLb }: DescribedLink,
  momentFtLb: number | null,
): Pick<Link, 'momentAboveFtLb'> =>
  role === 'hold-down' && momentAboveFtLb === undefined && momentFtLb !== null ? { momentAboveFtLb: momentFtLb } : {};

function linkNow(kept: DescribedLink, { findings, repaired }: Now): Link {
  const { findingIds, photoId: _photoId, at: _at, parts: _parts, ...link } = kept;
  if (link.state !== 'findings') return link;
  const standing = findingIds.filter((id) => findings.get(id) && findings.get(id)?.state !== 'withdrawn');
  if (standing.length === 0) return { ...link, state: 'unseen' };
  const open = standing.filter((id) => findings.get(id)?.state !== 'proven' && !repaired.includes(id));
  if (open.length === 0) return { ...link, state: 'sound' };
  const shares = open.map((id) => shareOf(findings.get(id)));
  const remaining = shares.filter((share) => share !== null);
  const unmeasured = shares.length - remaining.length;
  return { ...link, ...(remaining.length > 0 && { remaining }), ...(unmeasured > 0 && { unmeasured }) };
}

/** What was judged to meet its rule has lost nothing, even where the check counts in no share. */
function shareOf(finding: LinkFinding | undefined): ShareLeft | null {
  if (!finding?.outcome) return null;
  const { verdict, remaining } = finding.outcome;
  const share = remaining ?? (verdict === 'meets' || verdict === 'not-applicable' ? 1 : null);
  const mode = finding.lossMode;
  return share === null || mode === undefined ? share : { share, mode };
}

/** Every finding that hangs on a link. */
export const findingIdsOf = (segments: readonly DescribedSegment[]): string[] => [
  ...new Set(segments.flatMap(({ links }) => links.flatMap(({ findingIds }) => findingIds))),
];
export const photoIdsOf = (segments: readonly DescribedSegment[]): string[] => [
  ...new Set(segments.flatMap(({ links }) => links.flatMap(({ photoId }) => photoId ?? []))),
];

interface Place {
  readonly name: string;
  readonly widthIn: number | null;
  readonly heightIn: number | null;
}

/** Everything a load path says that cannot be kept, each with where it stands. */
export function keptFaults(
  segments: readonly DescribedSegment[],
  place: Place,
  known: { readonly findings: ReadonlyMap<string, unknown>; readonly photos: ReadonlySet<string> },
): Fault[] {
  return [
    ...overlappingSegments(segments, place),
    ...segments.flatMap(({ links }, at) =>
      links.flatMap((link, part) => {
        const pointer = `/segments/${at}/links/${part}`;
        return [
          ...stateFaults(link, pointer, known),
          ...partsFaults(link, pointer),
          ...(link.at ? outside(link.at, place, `${pointer}/at`) : []),
          ...sameSpot(links, part, pointer),
        ];
      }),
    ),
  ];
}

function stateFaults(
  { name, state, findingIds, photoId }: DescribedLink,
  pointer: string,
  known: Parameters<typeof keptFaults>[2],
): Fault[] {
  const faults: Fault[] = findingIds.flatMap((id, at) =>
    known.findings.has(id)
      ? []
      : [{ pointer: `${pointer}/findingIds/${at}`, detail: `findingIds: there is no finding ${id} in this project.` }],
  );
  if (photoId !== null && !known.photos.has(photoId))
    faults.push({ pointer: `${pointer}/photoId`, detail: `photoId: there is no photo ${photoId} in this project.` });
  if (state === 'sound' && photoId === null)
    faults.push({
      pointer: `${pointer}/photoId`,
      detail: `photoId: "${name}" was seen sound; choose the photo that shows it.`,
    });
  if (state === 'findings' && findingIds.length === 0)
    faults.push({ pointer: `${pointer}/findingIds`, detail: `findingIds: "${name}" has findings; name at least one.` });
  if (state !== 'findings' && findingIds.length > 0)
    faults.push({
      pointer: `${pointer}/state`,
      detail: `state: "${name}" names findings and is ${state}; say "findings", or take them off.`,
    });
  return faults;
}

function partsFaults({ parts }: DescribedLink, pointer: string): Fault[] {
  if (!parts) return [];
  if (parts.opened > parts.total)
    return [
      {
        pointer: `${pointer}/parts/opened`,
        detail: `opened: got ${parts.opened}; allowed is at most ${parts.total}, all there are.`,
      },
    ];
  if (parts.bad > parts.opened)
    return [
      {
        pointer: `${pointer}/parts/bad`,
        detail: `bad: got ${parts.bad}; allowed is at most ${parts.opened}, those opened.`,
      },
    ];
  return [];
}

function outside(rect: Rect, { name, widthIn, heightIn }: Place, pointer: string): Fault[] {
  if (widthIn === null || heightIn === null) return [];
  const [rightIn, topIn] = [rect.xIn + rect.widthIn, rect.yIn + rect.heightIn];
  if (rightIn <= widthIn && topIn <= heightIn) return [];
  return [
    {
      pointer,
      detail: `at: it reaches to ${rightIn} in across and ${topIn} in up; "${name}" is ${widthIn} in by ${heightIn} in.`,
    },
  ];
}

/** Two links of one kind cannot stand in the same spot; those of different kinds cross as a post crosses a panel. */
function sameSpot(links: readonly DescribedLink[], part: number, pointer: string): Fault[] {
  const { at, role, name } = links[part] as DescribedLink;
  const other = links.slice(0, part).find((one) => one.role === role && one.at && at && overlaps(one.at, at));
  return other
    ? [{ pointer: `${pointer}/at`, detail: `at: "${name}" lies over "${other.name}" of the same kind.` }]
    : [];
}

function overlappingSegments(segments: readonly DescribedSegment[], { name, widthIn }: Place): Fault[] {
  const spans = segments.flatMap(({ fromIn, lengthFt, name: segment }, at) =>
    fromIn === null || lengthFt === undefined
      ? []
      : [{ at, segment, fromIn, toIn: fromIn + lengthFt * INCHES_PER_FOOT }],
  );
  return spans.flatMap(({ at, segment, fromIn, toIn }, order): Fault[] => {
    const pointer = `/segments/${at}/fromIn`;
    if (widthIn !== null && toIn > widthIn)
      return [{ pointer, detail: `fromIn: "${segment}" reaches to ${toIn} in; "${name}" is ${widthIn} in wide.` }];
    const other = spans.slice(0, order).find((one) => one.fromIn < toIn && fromIn < one.toIn);
    return other ? [{ pointer, detail: `fromIn: "${segment}" lies over "${other.segment}".` }] : [];
  });
}
