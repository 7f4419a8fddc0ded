import fc from 'fast-check';
import { expect, test } from 'vitest';
import { atLeast, SEVERITIES } from '../kernel/index.ts';
import { anyPath, pathAndLink, share, wallAndHoldDown, whole, wholeAndLink, withLink } from './any-load-path.setup.ts';
import { evaluateLoadPath, type LoadPathOutcome, withRepaired } from './evaluate-load-path.ts';
import type { Link, LinkRole, LoadPath } from './load-path.ts';

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

test('repairing every link of a whole line leaves nothing to open and gives back all that was meant', () => {
  fc.assert(
    fc.property(anyPath, (any) => {
      const path = whole(any);
      const all = path.segments.flatMap(({ name, links }) => links.map((link) => ({ segment: name, link: link.name })));
      const answer = evaluateLoadPath(withRepaired(path, all));
      const links = answer.segments.flatMap((segment) => segment.links);
      expect(answer.known).toBe(links.every(({ momentOpen }) => !momentOpen));
      expect(answer.openNext).toEqual([]);
      expect(answer.atMostLb).toBe(answer.intendedLb);
      if (answer.segments.every(({ intendedLb }) => intendedLb !== 0)) expect(answer.remaining).toBeCloseTo(1, 9);
    }),
  );
});

/** From hard to kind. */
const KINDNESS = ['fails', 'undetermined', 'meets'];
const kindness = ({ verdict }: LoadPathOutcome) => KINDNESS.indexOf(verdict);
const gravity = ({ severity }: LoadPathOutcome) => SEVERITIES.indexOf(severity);

/**
 * `without` lacks one thing that a person could know, `known` holds for it what is kindest, `worst` the worst. Only what
 * was seen makes a line unsafe now; what was not, an engineer answers for until somebody has.
 */
function expectNeverKinder(without: LoadPath, known: LoadPath, worst: LoadPath): void {
  const [missing, best, bad] = [without, known, worst].map(evaluateLoadPath) as [
    LoadPathOutcome,
    LoadPathOutcome,
    LoadPathOutcome,
  ];
  expect(missing.known).toBe(false);
  expect(missing.verdict).not.toBe('meets');
  expect(kindness(missing)).toBeLessThanOrEqual(kindness(best));
  expect(gravity(missing)).toBeLessThanOrEqual(Math.max(gravity(bad), SEVERITIES.indexOf('engineer')));
  expect(gravity(missing)).toBeLessThanOrEqual(gravity(best));
  notMore(missing.atMostLb, best.atMostLb);
  // An upper bound is one: nothing it could turn out to be is worth more.
  notMore(bad.atMostLb, missing.atMostLb);
}

test('a link that nobody saw never makes a line kinder than the link seen, sound or gone', () => {
  fc.assert(
    fc.property(wholeAndLink, ({ path, at }) => {
      const state = (link: Partial<Link>) => withLink(path, at, { remaining: undefined, ...link });
      expectNeverKinder(
        state({ state: 'unseen' }),
        state({ state: 'sound' }),
        state({ state: 'findings', remaining: [0] }),
      );
    }),
  );
});

test('a usual link that nobody listed never makes a line kinder than the link listed, sound or gone', () => {
  const strengths = {
    intendedLb: undefined,
    tensionLb: undefined,
    leverFt: undefined,
    momentAboveFtLb: 0,
    resistingFtLb: undefined,
  };
  fc.assert(
    fc.property(wholeAndLink, ({ path, at: [segmentAt, linkAt] }) => {
      const role = path.segments[segmentAt]?.links[linkAt]?.role ?? 'member';
      const alike: readonly LinkRole[] = role === 'hanger' || role === 'seat' ? ['hanger', 'seat'] : [role];
      const others = (links: readonly Link[]) => links.filter((link) => !alike.includes(link.role));
      const withOnly = (links: readonly Link[]): LoadPath => ({
        ...path,
        segments: path.segments.map((segment, order) =>
          order === segmentAt ? { ...segment, links: [...others(segment.links), ...links] } : segment,
        ),
      });
      const bare: Link = { name: 'the link', role, state: 'sound', ...(role === 'hold-down' ? strengths : {}) };
      // A chain of one role that is taken off has no link left to stand for it.
      fc.pre(others(path.segments[segmentAt]?.links ?? []).length > 0);
      const unlisted = withOnly([]);
      expect(evaluateLoadPath(unlisted).notListed).toEqual(expect.arrayContaining([role]));
      expectNeverKinder(unlisted, withOnly([bare]), withOnly([{ ...bare, state: 'findings', remaining: [0] }]));
    }),
  );
});

test('a moment from above that nobody gave never makes a line kinder than any moment given', () => {
  fc.assert(
    fc.property(wallAndHoldDown, fc.double({ min: 0, max: 1e6, noNaN: true }), ({ path, at }, momentAboveFtLb) => {
      const moment = (ftLb: number | undefined) => withLink(path, at, { momentAboveFtLb: ftLb });
      expectNeverKinder(moment(undefined), moment(0), moment(momentAboveFtLb));
    }),
  );
});

test('a line that is not whole, seen and charged never meets, and its first words say at most', () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const answer = evaluateLoadPath(path);
      const open = answer.segments.some(
        ({ unseen, notListed, unmeasured, momentOpen }) =>
          unseen.length + notListed.length + unmeasured.length + momentOpen.length > 0,
      );
      expect(answer.known).toBe(!open);
      if (!open) return;
      expect(answer.verdict).not.toBe('meets');
      expect(answer.reasons[0]?.en).toMatch(/^At most |^None of its |^Nothing of this line is known yet/);
    }),
  );
});

test('seeing a link sound never turns what fails into what meets', () => {
  fc.assert(
    fc.property(pathAndLink, ({ path, at }) => {
      const before = evaluateLoadPath(withLink(path, at, { state: 'unseen', remaining: undefined }));
      const after = evaluateLoadPath(withLink(path, at, { state: 'sound', remaining: undefined }));
      if (before.verdict === 'fails') expect(after.verdict).toBe('fails');
    }),
  );
});

test('what is not known and would be enough is not told; what is not enough even so fails', () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const { known, verdict, atMostLb, segments } = evaluateLoadPath(path);
      const usedUp = segments.some(({ links }) => links.some((link) => link.usedUp));
      if (known || usedUp || atMostLb === null || atMostLb === 0 || path.demandLb === undefined) return;
      expect(verdict).toBe(atLeast(atMostLb, path.demandLb) ? 'undetermined' : 'fails');
    }),
  );
});

test('the link that governs has a strength or a loss of its own', () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      for (const { governing, links } of evaluateLoadPath(path).segments) {
        const link = links.find(({ name }) => name === governing);
        if (link) expect(link.intendedLb !== null || (link.remaining ?? 1) < 1).toBe(true);
      }
    }),
  );
});
