import fc from 'fast-check';
import {
  LINK_ROLES,
  type Link,
  LOAD_PATH_KINDS,
  type LoadPath,
  type LoadPathKind,
  type Segment,
  type ShareLeft,
} from './load-path.ts';
import { USUAL_LINKS } from './usual-links.ts';

/** What the properties of load paths are tried with. */
export const share = fc.oneof(fc.constantFrom(0, 0.5, 0.85, 1), fc.double({ min: 0, max: 1, noNaN: true }));
export const loadLb = fc.double({ min: 1, max: 20_000, noNaN: true });
const momentFtLb = fc.double({ min: 0, max: 100_000, noNaN: true });
const maybe = <Value>(some: fc.Arbitrary<Value>) => fc.option(some, { nil: undefined });

const shareLeft: fc.Arbitrary<ShareLeft> = fc.oneof(
  share,
  fc.record({ share, mode: fc.constantFrom('panel-nails', 'rod', 'a mode of the caller') }),
);

const linkOf = (kind: LoadPathKind): fc.Arbitrary<Omit<Link, 'name'>> =>
  fc
    .record({
      role: fc.constantFrom(...LINK_ROLES[kind]),
      state: fc.constantFrom('unseen' as const, 'sound' as const, 'findings' as const),
      shares: fc.array(shareLeft, { maxLength: 3 }),
      intendedLb: maybe(loadLb),
      tie: maybe(fc.record({ tensionLb: loadLb, leverFt: fc.double({ min: 1, max: 8, noNaN: true }) })),
      moments: fc.record({ momentAboveFtLb: maybe(momentFtLb), resistingFtLb: maybe(momentFtLb) }),
    })
    .map(({ role, state, shares, intendedLb, tie, moments }) => ({
      role,
      state,
      intendedLb,
      ...(state === 'findings' && { remaining: shares }),
      ...(role === 'hold-down' && { ...tie, ...moments }),
    }));

const segmentOf = (kind: LoadPathKind) =>
  fc.record({
    lengthFt: maybe(fc.double({ min: 8, max: 40, noNaN: true })),
    heightFt: maybe(fc.double({ min: 7, max: 40, noNaN: true })),
    links: fc
      .array(linkOf(kind), { minLength: 1, maxLength: 7 })
      .map((links) => links.map((link, at): Link => ({ ...link, name: `link ${at}` }))),
  });

const pathOf = (kinds: readonly LoadPathKind[]): fc.Arbitrary<LoadPath> =>
  fc.constantFrom(...kinds).chain((kind) =>
    fc.record({
      kind: fc.constant(kind),
      storiesAbove: maybe(fc.integer({ min: 0, max: 4 })),
      storyShare: maybe(share),
      shored: maybe(fc.boolean()),
      demandLb: maybe(loadLb),
      segments: fc
        .array(segmentOf(kind), { minLength: 1, maxLength: kind === 'gravity-line' ? 1 : 4 })
        .map((segments) => segments.map((segment, at) => ({ ...segment, name: `segment ${at}` }))),
    }),
  );

export const anyPath = pathOf(LOAD_PATH_KINDS);

/** Where a link is: its segment and its place in it. */
export type Place = readonly [segment: number, link: number];

const placeIn = (path: LoadPath): fc.Arbitrary<Place> =>
  fc
    .nat({ max: path.segments.length - 1 })
    .chain((segment) =>
      fc.tuple(fc.constant(segment), fc.nat({ max: (path.segments[segment]?.links.length ?? 1) - 1 })),
    );

/** A path and one of its links. */
export const pathAndLink = anyPath.chain((path) => fc.record({ path: fc.constant(path), at: placeIn(path) }));
/** The same, with every usual link listed. */
export const wholeAndLink = anyPath
  .map((path) => whole(path))
  .chain((path) => fc.record({ path: fc.constant(path), at: placeIn(path) }));

/** A whole wall under stories that may stand there, and one of its hold-downs. */
export const wallAndHoldDown = pathOf(['wall-line']).chain((any) => {
  const { storiesAbove, ...path } = whole(any);
  return fc.record({
    path: fc.constant<LoadPath>({ ...path, storiesAbove: storiesAbove === 0 ? 1 : storiesAbove }),
    at: fc.nat({ max: path.segments.length - 1 }).map((segment): Place => {
      const links = path.segments[segment]?.links ?? [];
      return [segment, links.findIndex(({ role }) => role === 'hold-down')];
    }),
  });
});

function withSegment(path: LoadPath, at: number, change: (segment: Segment) => Segment): LoadPath {
  return { ...path, segments: path.segments.map((segment, order) => (order === at ? change(segment) : segment)) };
}

/** The path with one of its links changed. */
export const withLink = (path: LoadPath, [segmentAt, linkAt]: Place, change: Partial<Link>): LoadPath =>
  withSegment(path, segmentAt, (segment) => ({
    ...segment,
    links: segment.links.map((link, order) => (order === linkAt ? { ...link, ...change } : link)),
  }));

/** The path with the usual links that it does not list added to every segment, seen sound and with no moment from above. */
export const whole = (path: LoadPath): LoadPath => ({
  ...path,
  segments: path.segments.map((segment) => {
    const missing = USUAL_LINKS[path.kind].filter(
      ({ roles }) => !segment.links.some(({ role }) => roles.includes(role)),
    );
    const added = missing.flatMap(({ roles }): Link[] => {
      const [role] = roles;
      if (!role) return [];
      return [{ name: role, role, state: 'sound', ...(role === 'hold-down' && { momentAboveFtLb: 0 }) }];
    });
    return { ...segment, links: [...segment.links, ...added] };
  }),
});
