import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SEVERITIES } from '../kernel/index.ts';
import { evaluateLoadPath, withRepaired } from './evaluate-load-path.ts';
import { LINK_ROLES, type Link, type LoadPath, type LoadPathKind } from './load-path.ts';

const share = fc.oneof(fc.constantFrom(0, 0.5, 0.85, 1), fc.double({ min: 0, max: 1, noNaN: true }));
const loadLb = fc.double({ min: 1, max: 20_000, noNaN: true });

const linkOf = (kind: LoadPathKind): fc.Arbitrary<Omit<Link, 'name'>> =>
  fc
    .record({
      role: fc.constantFrom(...LINK_ROLES[kind]),
      state: fc.constantFrom('unseen' as const, 'sound' as const, 'findings' as const),
      shares: fc.array(share, { maxLength: 3 }),
      intendedLb: fc.option(loadLb, { nil: undefined }),
      tie: fc.option(fc.record({ tensionLb: loadLb, leverFt: fc.double({ min: 1, max: 8, noNaN: true }) }), {
        nil: undefined,
      }),
    })
    .map(({ role, state, shares, intendedLb, tie }) => ({
      role,
      state,
      intendedLb,
      ...(state === 'findings' && { remaining: shares }),
      ...(role === 'hold-down' && tie),
    }));

const segmentOf = (kind: LoadPathKind) =>
  fc.record({
    lengthFt: fc.option(fc.double({ min: 8, max: 40, noNaN: true }), { nil: undefined }),
    heightFt: fc.option(fc.double({ min: 7, max: 20, noNaN: true }), { nil: undefined }),
    links: fc
      .array(linkOf(kind), { minLength: 1, maxLength: 7 })
      .map((links) => links.map((link, at): Link => ({ ...link, name: `link ${at}` }))),
  });

const anyPath: fc.Arbitrary<LoadPath> = fc
  .constantFrom<LoadPathKind>('wall-line', 'gravity-line', 'floor-line')
  .chain((kind) =>
    fc.record({
      kind: fc.constant(kind),
      storiesAbove: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined }),
      storyShare: fc.option(share, { nil: undefined }),
      shored: fc.option(fc.boolean(), { nil: undefined }),
      demandLb: fc.option(loadLb, { nil: undefined }),
      segments: fc
        .array(segmentOf(kind), { minLength: 1, maxLength: kind === 'gravity-line' ? 1 : 4 })
        .map((segments) => segments.map((segment, at) => ({ ...segment, name: `segment ${at}` }))),
    }),
  );

/** A path and one of its links. */
const pathAndLink = anyPath.chain((path) =>
  fc.record({
    path: fc.constant(path),
    at: fc
      .nat({ max: path.segments.length - 1 })
      .chain((segment) =>
        fc.tuple(fc.constant(segment), fc.nat({ max: (path.segments[segment]?.links.length ?? 1) - 1 })),
      ),
  }),
);

function withLink(path: LoadPath, [segmentAt, linkAt]: [number, number], change: Partial<Link>): LoadPath {
  const segments = path.segments.map((segment, at) =>
    at !== segmentAt
      ? segment
      : { ...segment, links: segment.links.map((link, order) => (order === linkAt ? { ...link, ...change } : link)) },
  );
  return { ...path, segments };
}

/** Sums taken in another order differ in the last bits. */
const SLACK = 1e-9;
const notMore = (lower: number | null, upper: number | null) => {
  if (lower === null || upper === null) return;
  expect(lower).toBeLessThanOrEqual(upper + SLACK * Math.max(1, upper));
};

test('every figure is finite, no share leaves 0..1, and nothing is worth more than it was meant to be', () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const { segments, ...line } = evaluateLoadPath(path);
      for (const part of [line, ...segments]) {
        for (const value of [part.intendedLb, part.atMostLb, part.remaining])
          if (value !== null) expect(Number.isFinite(value) && value >= 0).toBe(true);
        if (part.remaining !== null) expect(part.remaining).toBeLessThanOrEqual(1 + SLACK);
        notMore(part.atMostLb, part.intendedLb);
      }
    }),
  );
});

test('a link seen sound never lowers what the same link unseen left open', () => {
  fc.assert(
    fc.property(pathAndLink, ({ path, at }) => {
      const before = evaluateLoadPath(withLink(path, at, { state: 'unseen', remaining: undefined }));
      const after = evaluateLoadPath(withLink(path, at, { state: 'sound', remaining: undefined }));
      notMore(before.atMostLb, after.atMostLb);
      notMore(before.remaining, after.remaining);
    }),
  );
});

test('a failing link never raises the answer, and the more it lost the less is left', () => {
  fc.assert(
    fc.property(pathAndLink, share, share, ({ path, at }, one, other) => {
      const findings = (left: number) => evaluateLoadPath(withLink(path, at, { state: 'findings', remaining: [left] }));
      const worse = findings(Math.min(one, other));
      const better = findings(Math.max(one, other));
      const before = evaluateLoadPath(withLink(path, at, { state: 'unseen', remaining: undefined }));
      for (const part of ['atMostLb', 'remaining'] as const) {
        notMore(worse[part], better[part]);
        notMore(better[part], before[part]);
      }
      expect(SEVERITIES.indexOf(worse.severity)).toBeLessThanOrEqual(SEVERITIES.indexOf(better.severity));
    }),
  );
});

test('the order of segments and links does not matter', () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const turned = {
        ...path,
        segments: [...path.segments].reverse().map((segment) => ({ ...segment, links: [...segment.links].reverse() })),
      };
      const one = evaluateLoadPath(path);
      const other = evaluateLoadPath(turned);
      expect(other.known).toBe(one.known);
      expect(other.severity).toBe(one.severity);
      expect([...other.governing].sort()).toEqual([...one.governing].sort());
      expect(other.openNext.length).toBe(one.openNext.length);
      for (const part of ['intendedLb', 'atMostLb', 'remaining', 'ratio'] as const) {
        notMore(one[part], other[part]);
        notMore(other[part], one[part]);
      }
    }),
  );
});

test('one unseen link keeps the line unknown, and it is among those to open next', () => {
  fc.assert(
    fc.property(pathAndLink, ({ path, at }) => {
      const answer = evaluateLoadPath(withLink(path, at, { state: 'unseen', remaining: undefined }));
      expect(answer.known).toBe(false);
      const segment = path.segments[at[0]];
      const open = answer.openNext.filter((one) => one.segment === segment?.name);
      expect(open.map(({ link }) => link)).toContain(segment?.links[at[1]]?.name);
    }),
  );
});

test('what to open next is sorted by how far the line could fall', () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const falls = evaluateLoadPath(path).openNext.map(({ couldLowerToShare }) => couldLowerToShare ?? 0);
      for (const [at, fall] of falls.entries()) if (at > 0) notMore(falls[at - 1] ?? 0, fall);
    }),
  );
});

test('repairing every link leaves nothing to open and gives back all that was meant', () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const all = path.segments.flatMap(({ name, links }) => links.map((link) => ({ segment: name, link: link.name })));
      const answer = evaluateLoadPath(withRepaired(path, all));
      expect(answer.known).toBe(true);
      expect(answer.openNext).toEqual([]);
      expect(answer.remaining).toBeCloseTo(1, 9);
    }),
  );
});
