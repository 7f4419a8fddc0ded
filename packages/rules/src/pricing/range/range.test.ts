import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateEstimate } from '../estimate/estimate.ts';
import { type EstimateInput, type EstimateLine, estimateSchema, type RangeInput } from '../estimate/estimate-input.ts';
import { fillUniform, openStream } from './random.ts';
import { evaluateRange } from './range.ts';
import { CELLS, spreadOf } from './spread.ts';

/** One unit of work at $100 an hour. */
const line = (name: string, hours: [number, number, number], more: Partial<EstimateLine> = {}): EstimateLine => ({
  name,
  quantity: 1,
  unit: 'each',
  hoursPerUnit: { low: hours[0], likely: hours[1], high: hours[2] },
  rateCents: 10_000,
  materialCentsPerUnit: 0,
  wastePct: 0,
  materialTaxPct: 0,
  equipmentCents: 0,
  subcontractCents: 0,
  otherCents: 0,
  ...more,
});
const RANGE: RangeInput = { trials: 20_000, seed: 7, correlation: 0.3, shape: 'pert-beta' };
const rangeOf = (lines: EstimateLine[], range: Partial<RangeInput> = {}, more: Partial<EstimateInput> = {}) => {
  const asked = { ...RANGE, ...range };
  const input = estimateSchema.parse({
    lines,
    overheadPct: 0,
    profitPct: 0,
    stacking: 'stacked',
    range: asked,
    ...more,
  });
  const estimate = evaluateEstimate(input);
  return { ...evaluateRange(input, asked, estimate), totalCents: estimate.totalCents };
};
/** The same where no minimum is open, so that the formulas answer. */
const closedRangeOf = (...given: Parameters<typeof rangeOf>) => {
  const { analyticMeanCents, analyticSdCents, ...range } = rangeOf(...given);
  if (analyticMeanCents === null || analyticSdCents === null) throw new Error('a minimum is open');
  return { ...range, analyticMeanCents, analyticSdCents };
};
/** So many standard errors of a mean of the trials; 6 is passed once in 500 million draws. */
const sixErrors = (sdCents: number, trials: number) => (6 * sdCents) / Math.sqrt(trials);
const anyHours = fc
  .tuple(fc.nat(40), fc.nat(40), fc.nat(60))
  .map(([low, more, most]) => [low, low + more, low + more + most] as [number, number, number]);
const anyLine = fc
  .tuple(
    anyHours,
    fc.constantFrom('a', 'b', 'c'),
    fc.constantFrom(undefined, 'east', 'west'),
    fc.integer({ min: 1, max: 9 }),
  )
  .map(([hours, name, location, quantity]) => line(name, hours, { quantity, ...(location && { location }) }));
const anyRange = fc
  .record({
    trials: fc.constant(20_000),
    seed: fc.integer(),
    correlation: fc.constantFrom(0, 0.2, 0.5, 0.9, 1),
    shape: fc.constantFrom('pert-beta' as const, 'triangular' as const),
  })
  .chain((range) =>
    fc
      .constantFrom(undefined, 0, 0.3, 1)
      .map((share) => (share === undefined ? range : { ...range, acrossPlaces: share * range.correlation })),
  );
const SAME_WALL = { location: 'East wall' };

describe('how hours are spread', () => {
  test.each<[[number, number, number], number, number]>([
    [[4, 6, 12], 667, 133],
    [[5, 8, 14], 850, 150],
  ])('PERT of %j hours has the mean and deviation in print (published: PERT calculators)', (hours, mean, sd) => {
    const range = closedRangeOf([line('a', hours)]);
    // Printed with two decimals of an hour.
    expect(Math.round(range.analyticMeanCents / 100)).toBe(mean);
    expect(Math.round(range.analyticSdCents / 100)).toBe(sd);
  });

  test('with likely in the middle PERT is the beta distribution 4, 4, whose integral is a known polynomial', () => {
    const { quantiles } = spreadOf('pert-beta', 0.5);
    for (const share of [0.01, 0.1, 0.25, 0.5, 0.8, 0.9, 0.99]) {
      const at = Math.round(share * CELLS);
      const x = quantiles[at] ?? 0;
      const integral = 35 * x ** 4 - 84 * x ** 5 + 70 * x ** 6 - 20 * x ** 7;
      // The curve is integrated in 1,024 steps.
      expect(integral).toBeCloseTo(at / CELLS, 5);
    }
  });

  test.each([0, 0.02, 0.2, 0.5, 0.7, 1])(
    'the curves drawn from have the moments of the formulas, likely at %d',
    (likely) => {
      for (const shape of ['pert-beta', 'triangular'] as const) {
        const { quantiles, mean, sd } = spreadOf(shape, likely);
        let [first, second] = [0, 0];
        for (let at = 0; at < CELLS; at++) {
          const [a, b] = [quantiles[at] ?? 0, quantiles[at + 1] ?? 0];
          expect(b).toBeGreaterThan(a);
          first += (a + b) / 2 / CELLS;
          second += (a * a + a * b + b * b) / 3 / CELLS;
        }
        // What straight pieces cut off is far below the errors of 100,000 trials, sd / 316 and sd / 447.
        expect(Math.abs(first - mean)).toBeLessThan(sd * 1e-4);
        expect(Math.abs(Math.sqrt(second - first ** 2) - sd)).toBeLessThan(sd * 2e-4);
      }
    },
  );

  test('the seven elements of GAO-20-195G have likely values of 77,092 and triangular means of 82,244 (published; means hand-worked)', () => {
    const elements: [number, number, number][] = [
      [17_955, 19_645, 21_785],
      [8500, 10_553, 13_000],
      [4000, 4306, 5100],
      [4100, 4305, 4650],
      [550, 600, 650],
      [32_300, 35_547, 52_500],
      [1950, 2136, 2600],
    ];
    const range = closedRangeOf(
      elements.map((hours, at) => line(`element ${at}`, hours, { rateCents: 100 })),
      { shape: 'triangular' },
    );
    expect(range.totalCents).toBe(7_709_200);
    expect(Math.round(range.analyticMeanCents / 100)).toBe(82_244);
  });
});

describe('lines of one location', () => {
  const three = (more: Partial<EstimateLine>) => [
    line('a', [0, 9, 18], more),
    line('b', [0, 12, 24], more),
    line('c', [0, 15, 30], more),
  ];

  test.each([
    [0, 70_711],
    [0.3, 88_431],
    [1, 120_000],
  ])(
    'deviations of 300, 400, 500 with correlation %d come to %d cents (formula published: R. Walker)',
    (correlation, sd) => {
      const range = closedRangeOf(three(SAME_WALL), { correlation, trials: 100_000 });
      expect(range.analyticSdCents).toBe(sd);
      // The error of a deviation is about sd / sqrt(2 n) and, with shared percentiles, up to 1.5 times that.
      expect(Math.abs(range.sdCents - sd)).toBeLessThan(sixErrors(sd, 100_000));
    },
  );

  const apart = three({}).map((one, at) => ({ ...one, location: `wall ${at}` }));

  test.each([
    [0.5, 0, 70_711],
    [0.5, 0.3, 88_431],
    [1, undefined, 98_489],
    [1, 1, 120_000],
  ])(
    'in places of their own, with %d within and %d across them, come to %d x %d cents (the same formula)',
    (correlation, acrossPlaces, sd) => {
      const range = closedRangeOf(apart, {
        correlation,
        trials: 100_000,
        ...(acrossPlaces !== undefined && { acrossPlaces }),
      });
      expect(range.analyticSdCents).toBe(sd);
      expect(range.acrossPlaces).toBe(acrossPlaces ?? correlation / 2);
      expect(Math.abs(range.sdCents - sd)).toBeLessThan(sixErrors(sd, 100_000));
    },
  );

  test('those without a location are one place', () => {
    const placed = rangeOf(three(SAME_WALL), { correlation: 0.5, trials: 100 });
    expect(rangeOf(three({}), { correlation: 0.5, trials: 100 }).analyticSdCents).toBe(placed.analyticSdCents);
    expect(rangeOf(three({}), { correlation: 1, trials: 100_000 }).analyticSdCents).toBe(120_000);
  });

  test('six places reach further together when one crew works them all', () => {
    const six = Array.from({ length: 6 }, (_, at) => line('a', [4, 6, 12], { location: `wall ${at}` }));
    const p80 = (acrossPlaces?: number) =>
      rangeOf(six, { correlation: 0.5, trials: 100_000, ...(acrossPlaces !== undefined && { acrossPlaces }) }).p80Cents;
    expect(p80()).toBeGreaterThan(p80(0) + 10_000);
    expect(p80(0.5)).toBeGreaterThan(p80());
  });

  test('more across places than within one is refused, naming both', () => {
    expect(() => rangeOf(apart, { correlation: 0.2, acrossPlaces: 0.4 })).toThrow(
      'acrossPlaces came as 0.4; allowed is up to the correlation within one place, 0.2',
    );
  });

  test('at correlation 1 deviations add when shapes are alike, and stay a little below when they are not', () => {
    const unlike = [line('a', [0, 1, 18], SAME_WALL), line('b', [0, 17, 18], SAME_WALL)];
    const { analyticSdCents, sdCents } = closedRangeOf(unlike, { correlation: 1, trials: 100_000 });
    expect(analyticSdCents).toBeLessThan(60_000);
    expect(analyticSdCents).toBeGreaterThan(57_000);
    expect(Math.abs(sdCents - analyticSdCents)).toBeLessThan(sixErrors(60_000, 100_000));
  });

  test('at correlation 1 the 80th percentile of the sum is the sum of those; at 0 it is less', () => {
    const p80 = (lines: EstimateLine[], correlation: number) =>
      rangeOf(lines, { correlation, trials: 100_000 }).p80Cents;
    const lines = three(SAME_WALL);
    const added = lines.reduce((sum, one) => sum + p80([one], 0), 0);
    expect(Math.abs(p80(lines, 1) - added)).toBeLessThan(sixErrors(120_000, 100_000));
    expect(p80(lines, 0)).toBeLessThan(added - 20_000);
  });
});

describe('a range', () => {
  const markup = { overheadPct: 18, profitPct: 10 };

  test('agrees with the formulas, whatever the lines, shapes and correlation', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { minLength: 1, maxLength: 8 }), anyRange, (lines, asked) => {
        const range = closedRangeOf(lines, asked, markup);
        const sd = range.analyticSdCents;
        // Half a cent of rounding on either side; the curves' own error is in the tests above.
        expect(Math.abs(range.meanCents - range.analyticMeanCents)).toBeLessThanOrEqual(sixErrors(sd, 20_000) + 1);
        expect(Math.abs(range.sdCents - sd)).toBeLessThanOrEqual(1.5 * sixErrors(sd, 20_000) + 1);
        expect(range.p50Cents).toBeLessThanOrEqual(range.p80Cents);
        expect(range.p80Cents).toBeLessThanOrEqual(range.p90Cents);
      }),
      { numRuns: 60 },
    );
  });

  test('is the same again with the same seed, whatever the order of the lines', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 8 }), anyRange, (lines, asked) => {
        const once = rangeOf(lines, { ...asked, trials: 200 });
        expect(rangeOf([...lines].reverse(), { ...asked, trials: 200 })).toEqual(once);
      }),
      { numRuns: 60 },
    );
    const lines = [line('a', [1, 2, 6])];
    expect(rangeOf(lines, { seed: 8 }).meanCents).not.toBe(rangeOf(lines, { seed: 7 }).meanCents);
  });

  test('shares of the spread add up to one, largest first', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { minLength: 1, maxLength: 8 }), anyRange, (lines, asked) => {
        const { drivers, sdCents } = rangeOf(lines, { ...asked, trials: 100 });
        const shares = drivers.map(({ share }) => share);
        if (sdCents > 0) expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        expect(shares).toEqual([...shares].sort((a, b) => b - a));
      }),
      { numRuns: 60 },
    );
  });

  test('low, likely and high alike leave the printed total and no spread', () => {
    const fixed = closedRangeOf([line('a', [3.333, 3.333, 3.333], { otherCents: 77 })], {}, markup);
    expect(fixed).toMatchObject({
      meanCents: fixed.totalCents,
      sdCents: 0,
      p50Cents: fixed.totalCents,
      p90Cents: fixed.totalCents,
      analyticMeanCents: fixed.totalCents,
      analyticSdCents: 0,
      drivers: [],
    });
  });

  test('runs through overhead and profit, but only where they are taken on labor', () => {
    const lines = [line('a', [4, 6, 12])];
    expect(rangeOf(lines, {}, markup).analyticSdCents).toBe(Math.round(13_333.333 * 1.298));
    expect(rangeOf(lines, {}, { ...markup, stacking: 'added' }).analyticSdCents).toBe(Math.round(13_333.333 * 1.28));
    expect(rangeOf(lines, {}, { ...markup, percentOf: ['material'] }).analyticSdCents).toBe(13_333);
  });

  test('a credit is known and does not vary', () => {
    expect(rangeOf([line('a', [4, 6, 12], { credit: true })])).toMatchObject({ sdCents: 0, meanCents: -60_000 });
  });

  test('more trials than are taken for so many lines are refused, naming both', () => {
    const lines = Array.from({ length: 2000 }, () => line('a', [1, 2, 3]));
    expect(() => rangeOf(lines, { trials: 1001 })).toThrow('1001 trials of 2000 lines are more than one range takes');
  });
});

describe('a minimum charge in a range', () => {
  const withMinimum = (minimumCents: number) =>
    rangeOf([line('a', [4, 6, 12], { minimumCents })], { shape: 'triangular', trials: 100_000 });

  test('that no hours reach leaves no spread', () => {
    expect(withMinimum(120_000)).toMatchObject({
      meanCents: 120_000,
      p90Cents: 120_000,
      sdCents: 0,
      analyticSdCents: 0,
    });
  });

  test('that all hours pass changes nothing', () => {
    expect(withMinimum(40_000)).toEqual(withMinimum(0));
  });

  test('that some hours reach cuts the low end off', () => {
    const range = withMinimum(70_000);
    expect(range.openMinimums).toEqual(['a']);
    expect(range.drivers).toEqual([{ name: 'a', share: 1 }]);
    expect(range).toMatchObject({ analyticMeanCents: null, analyticSdCents: null });
    // Mean of max(7 h, triangular 4, 6, 12): 7 + integral of (h - 7)(12 - h) / 24 from 7 to 12 = 7 + 125 / 144 h.
    const mean = 70_000 + (10_000 * 125) / 144;
    // The same of the square: 49 + integral of (h^2 - 49)(12 - h) / 24 = 49 + 1375 / 96.
    const sd = 10_000 * Math.sqrt(49 + 1375 / 96 - (mean / 10_000) ** 2);
    expect(Math.abs(range.meanCents - mean)).toBeLessThan(sixErrors(sd, 100_000));
    // Long upper tail: the error of the deviation is up to twice sd / sqrt(2 n).
    expect(Math.abs(range.sdCents - sd)).toBeLessThan(2 * sixErrors(sd, 100_000));
    const p80 = 120_000 - 10_000 * Math.sqrt(0.2 * 48);
    // The density at the 80th percentile is sqrt(0.8 / 12) an hour.
    const error = (10_000 * Math.sqrt(0.8 * 0.2)) / Math.sqrt(100_000) / (2 * Math.sqrt(0.2 / 48));
    expect(Math.abs(range.p80Cents - p80)).toBeLessThan(6 * error);
  });

  test('is met by the lines of a visit together', () => {
    const visit = { visit: 'carpentry', minimumCents: 100_000 };
    const range = rangeOf([line('a', [4, 6, 12], visit), line('b', [4, 6, 12], visit)]);
    expect(range.openMinimums).toEqual(['carpentry']);
    expect(range.drivers.map(({ share }) => share)).toEqual([0.5, 0.5]);
  });

  test('comes to what a plain simulation of the same words comes to, whatever lines, places and visits', () => {
    const visitLine = fc
      .tuple(anyHours, fc.constantFrom(undefined, 'east', 'west'), fc.constantFrom(undefined, 'v', 'w'), fc.nat(40))
      .map(([hours, location, visit, minimum]) =>
        line('a', hours, { minimumCents: minimum * 10_000, ...(location && { location }), ...(visit && { visit }) }),
      );
    const correlations = fc.constantFrom([0, 0], [0.2, 0.1], [0.5, 0], [0.9, 0.9], [1, 0.3]);
    let open = 0;
    fc.assert(
      fc.property(fc.array(visitLine, { minLength: 1, maxLength: 6 }), correlations, fc.nat(), (lines, pair, seed) => {
        const [correlation = 0, acrossPlaces = 0] = pair;
        const trials = 20_000;
        const range = rangeOf(lines, { correlation, acrossPlaces, shape: 'triangular', trials, seed });
        open += range.openMinimums.length;
        const plain = simulatePlainly(lines, correlation, acrossPlaces, trials);
        // Six errors of a difference of two means of as many trials, and a cent of rounding; the deviation's is up to twice that.
        expect(Math.abs(range.meanCents - plain.mean)).toBeLessThanOrEqual(1.5 * sixErrors(plain.sd, trials) + 1);
        expect(Math.abs(range.sdCents - plain.sd)).toBeLessThanOrEqual(3 * sixErrors(plain.sd, trials) + 1);
      }),
      { numRuns: 40 },
    );
    expect(open).toBeGreaterThan(20);
  }, 30_000);

  /** Hour by hour and trial by trial, with the platform's own random numbers; the total is that of the estimate at the drawn hours. */
  function simulatePlainly(lines: EstimateLine[], correlation: number, acrossPlaces: number, trials: number) {
    const follow = Math.sqrt(correlation);
    const lean = correlation > 0 ? Math.sqrt(acrossPlaces / correlation) : 0;
    const totals = Array.from({ length: trials }, () => {
      const work = Math.random();
      const places = new Map<string | undefined, number>();
      const visits = new Map<string, { labor: number; minimum: number }>();
      for (const [at, { location, visit, hoursPerUnit, minimumCents = 0 }] of lines.entries()) {
        const place = places.get(location) ?? (Math.random() < lean ? work : Math.random());
        places.set(location, place);
        const share = Math.random() < follow ? place : Math.random();
        const { low, likely, high } = hoursPerUnit;
        const [left, right] = [likely - low, high - likely];
        const hours =
          high === low
            ? low
            : share * (high - low) < left
              ? low + Math.sqrt(share * (high - low) * left)
              : high - Math.sqrt((1 - share) * (high - low) * right);
        const own = visits.get(visit ?? `alone ${at}`) ?? { labor: 0, minimum: 0 };
        visits.set(visit ?? `alone ${at}`, {
          labor: own.labor + hours * 10_000,
          minimum: Math.max(own.minimum, minimumCents),
        });
      }
      return [...visits.values()].reduce((sum, { labor, minimum }) => sum + Math.max(labor, minimum), 0);
    });
    const mean = totals.reduce((sum, one) => sum + one, 0) / trials;
    return { mean, sd: Math.sqrt(totals.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (trials - 1)) };
  }

  test('costs a range no more than other lines: as many are taken as fit the trials', () => {
    const lines = Array.from({ length: 100 }, () => line('a', [1, 2, 4], { visit: 'v', minimumCents: 23_000_00 }));
    expect(rangeOf(lines, { trials: 10_000 }).openMinimums).toEqual(['v']);
    expect(() => rangeOf([...lines, ...lines], { trials: 10_000 })).toThrow(
      '10000 trials of 200 lines are more than one range takes',
    );
  });
});

describe('random streams', () => {
  test('are even over 0 to 1 and unlike each other', () => {
    const numbers = new Float64Array(100_000);
    const other = new Float64Array(100_000);
    fillUniform(openStream('a'), numbers);
    fillUniform(openStream('b'), other);
    const bins = new Float64Array(20);
    let product = 0;
    for (const [at, one] of numbers.entries()) {
      expect(one > 0 && one < 1).toBe(true);
      const bin = Math.floor(one * 20);
      bins[bin] = (bins[bin] ?? 0) + 1;
      product += (one - 0.5) * ((other[at] ?? 0) - 0.5);
    }
    const chiSquare = bins.reduce((sum, count) => sum + (count - 5000) ** 2 / 5000, 0);
    // 19 degrees of freedom: 43.8 is passed once in a thousand seeds.
    expect(chiSquare).toBeLessThan(43.8);
    // Six errors of a correlation of independent numbers.
    expect(Math.abs(product / 100_000 / (1 / 12))).toBeLessThan(6 / Math.sqrt(100_000));
  });
});
