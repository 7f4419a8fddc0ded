/**
 * The costliest bodies known for each open route. They were looked for by hand and by trying every repair with as many, as large
 * and as overlapping things as the schema takes; `search-worst.ts` looks among checks and load paths. A costlier one that turns
 * up belongs here.
 */
const many = <T>(count: number, make: (at: number) => T): T[] => Array.from({ length: count }, (_, at) => make(at));

/** Bars across bars: the union of their areas falls into the most rectangles. As many as may run through each other; the rest lie apart. */
const bars = (at: number) => {
  if (at < 14) return { xIn: 80 * at + 40, yIn: 0, widthIn: 5, heightIn: 2400 };
  if (at < 28) return { xIn: 1, yIn: 80 * (at - 14) + 40, widthIn: 2398, heightIn: 5 };
  return { xIn: 1200 + 36 * (at - 28), yIn: 1200 + 36 * (at - 28), widthIn: 30, heightIn: 30 };
};

const scope = (repair: string, kind: string) => ({
  path: '/scopes/evaluate',
  body: {
    location: { kind, widthIn: 2400, heightIn: 2400, framingSpacingIn: 4 },
    findings: many(30, (at) => ({ id: `f${at}`, repair, extents: [bars(2 * at), bars(2 * at + 1)] })),
  },
});

const line = (at: number) => ({
  name: 'a',
  location: `${at}`,
  quantity: 1.5,
  unit: 'e',
  hoursPerUnit: { low: 1, likely: 2, high: 4 + (at % 7) },
  rateCents: 100,
  materialCentsPerUnit: 1,
  wastePct: 1,
  materialTaxPct: 1,
  equipmentCents: 0,
  subcontractCents: 0,
  otherCents: 0,
});

const estimate = (lines: object[], range?: object) => ({
  path: '/estimates/evaluate',
  body: { lines, overheadPct: 18, profitPct: 10, stacking: 'stacked', ...(range && { range }) },
});

const range = (trials: number) => ({ trials, seed: 1, correlation: 0.5, shape: 'pert-beta' });
const on = '2026-05-04';

export const worstBodies: Readonly<Record<string, { path: string; body: object }>> = {
  'scope of panels on a floor': scope('panel-replace', 'floor'),
  'scope of members': scope('member-sister', 'wall'),
  'estimate of lines': estimate(many(2000, line)),
  'range of lines': estimate(many(199, line), range(10)),
  'range of draws': estimate(many(100, line), range(10_000)),
  'range of one open minimum': estimate(
    many(50, (at) => ({ ...line(at), visit: 'v', minimumCents: 37_500 })),
    range(10_000),
  ),
  'range of many open minimums': estimate(
    many(66, (at) => ({ ...line(at), visit: `${at >> 1}`, minimumCents: 1350 })),
    range(10),
  ),
  contract: {
    path: '/contracts/evaluate',
    body: {
      originalCents: 1,
      originalDays: 1,
      start: on,
      dayKind: 'working',
      holidays: many(1000, (at) => new Date(Date.UTC(2026, 4, 5 + at)).toISOString().slice(0, 10)),
      retainagePct: 10,
      netDecreaseReturnsOverheadAndProfit: false,
      events: many(4999, () => ({ kind: 'change', state: 'approved', cents: 1, days: 20, on })),
    },
  },
  'load path': {
    path: '/load-paths/evaluate',
    body: {
      kind: 'wall-line',
      storiesAbove: 0,
      demandLb: 1000,
      segments: many(60, (segment) => ({
        name: `${segment}`,
        lengthFt: 8,
        heightFt: 8,
        links: many(60, (link) => ({
          name: `${link}`,
          role: 'panels',
          state: 'findings',
          remaining: [0.5],
          intendedLb: 900,
        })),
      })),
    },
  },
  'check of bolts': {
    path: '/checks/anchor.sill-bolts/evaluate',
    body: {
      inputs: {
        plates: many(40, (plate) => ({
          name: `${plate}`.padEnd(60, 'x'),
          lengthIn: 600,
          boltsIn: many(100, (bolt) => (bolt * 7) % 600),
        })),
        diameterIn: 0.5,
        storiesAbove: 1,
      },
    },
  },
  'check with pieces': {
    path: '/checks/shear-wall.panel-layout/evaluate',
    body: {
      inputs: {
        pieces: many(60, (at) => ({ xIn: 4 * at, yIn: 0, widthIn: 4, heightIn: 96 })),
        studSpacingIn: 16,
        blockedEdges: false,
        cuts: [],
      },
    },
  },
};
