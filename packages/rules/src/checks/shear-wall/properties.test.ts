import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateCheck } from '../../all-checks.ts';
import { InputError } from '../../judging/run-check.ts';
import { EDGE_SPACINGS_IN, GRADES, PANEL_NAILS, THICKNESSES } from '../../standards/sdpws-common/shear-walls.data.ts';

/** Sums of the same lengths in another order agree to the last digits of binary arithmetic. */
const BINARY = 1e-9;

const numberOf = (id: string, inputs: unknown, name: string): number => {
  const value = evaluateCheck(id, { inputs }).values[name]?.value;
  if (typeof value !== 'number') throw new TypeError(`${id} gave no number ${name}`);
  return value;
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ordered = (min: number, max: number) =>
  fc.tuple(between(min, max), between(min, max)).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
const shuffled = <T>(items: readonly T[]) =>
  fc.shuffledSubarray([...items], { minLength: items.length, maxLength: items.length });

const wall = fc
  .record({
    standard: fc.constantFrom('sdpws-2008', 'sdpws-2015', 'sdpws-2021'),
    method: fc.constantFrom('asd', 'lrfd'),
    load: fc.constantFrom('seismic', 'wind'),
    grade: fc.constantFrom(...GRADES),
    thickness: fc.constantFrom(...THICKNESSES),
    nail: fc.constantFrom(...PANEL_NAILS),
    edgeSpacingIn: fc.constantFrom(...EDGE_SPACINGS_IN),
    framingG: between(0.35, 0.55),
    blocked: fc.boolean(),
    studSpacingIn: between(10, 26),
    fieldSpacingIn: between(4, 13),
    heightFt: between(7, 18),
    lengthFt: between(1, 24),
    shareByCapacity: fc.boolean(),
    holdDownInsideFace: fc.boolean(),
  })
  // Panels and nails the table does not pair have no strength to compare.
  .filter((inputs) => 'designPlf' in evaluateCheck('shear-wall.panel-capacity', { inputs }).values);

const designPlf = (inputs: unknown) => numberOf('shear-wall.panel-capacity', inputs, 'designPlf');

describe('strength of a panel wall', () => {
  test('closer nails never lower it', () => {
    fc.assert(
      fc.property(wall, (inputs) => {
        const bySpacing = EDGE_SPACINGS_IN.map((edgeSpacingIn) => designPlf({ ...inputs, edgeSpacingIn }));
        expect([...bySpacing].sort((a, b) => a - b)).toEqual(bySpacing);
      }),
    );
  });
  test('a longer wall, denser studs, closer studs and closer field nails never lower it', () => {
    const pairs = [
      ['lengthFt', ordered(1, 24), 'up'],
      ['framingG', ordered(0.3, 0.8), 'up'],
      ['studSpacingIn', ordered(8, 30), 'down'],
      ['fieldSpacingIn', ordered(4, 16), 'down'],
      ['heightFt', ordered(7, 20), 'down'],
    ] as const;
    for (const [name, values, direction] of pairs)
      fc.assert(
        fc.property(wall, values, (inputs, [less, more]) => {
          const [low, high] = direction === 'up' ? [less, more] : [more, less];
          expect(designPlf({ ...inputs, [name]: high })).toBeGreaterThanOrEqual(
            designPlf({ ...inputs, [name]: low }) - BINARY,
          );
        }),
      );
  });
  test('blocking never lowers it, sharing by capacity and a hold-down on the inside never raise it', () => {
    fc.assert(
      fc.property(wall, (inputs) => {
        const at = (more: object) => designPlf({ ...inputs, ...more });
        expect(at({ blocked: true })).toBeGreaterThanOrEqual(at({ blocked: false }));
        expect(at({ shareByCapacity: true })).toBeLessThanOrEqual(at({ shareByCapacity: false }));
        expect(at({ holdDownInsideFace: true })).toBeLessThanOrEqual(at({ holdDownInsideFace: false }));
      }),
    );
  });
  test('more demand never turns failing into meeting', () => {
    fc.assert(
      fc.property(wall, ordered(0, 2000), (inputs, [less, more]) => {
        const verdictAt = (demandPlf: number) =>
          evaluateCheck('shear-wall.panel-capacity', { inputs: { ...inputs, demandPlf } }).verdict;
        if (verdictAt(less) === 'fails') expect(verdictAt(more)).toBe('fails');
      }),
    );
  });
  test('an edition asked for beside another in the inputs is refused', () => {
    const [inputs] = fc.sample(wall, 1);
    const ask = () =>
      evaluateCheck('shear-wall.panel-capacity', {
        edition: 'sdpws-2015',
        inputs: { ...inputs, standard: 'sdpws-2021' },
      });
    expect(ask).toThrow(/no edition/);
  });
  test('an edition asked for alone is the one used, and 2021 when none is', () => {
    const [inputs] = fc.sample(wall, 1);
    const editionOf = (edition?: string) =>
      evaluateCheck('shear-wall.panel-capacity', { edition, inputs: { ...inputs, standard: undefined } }).edition;
    expect(editionOf('sdpws-2008')).toBe('sdpws-2008');
    expect(editionOf()).toBe('sdpws-2021');
  });
});

const openWall = fc.record({
  heightFt: between(8, 12),
  segmentsFt: fc.array(between(2, 10), { minLength: 2, maxLength: 5 }),
  openings: fc.array(fc.record({ widthFt: between(1, 6), heightFt: between(1, 8) }), { minLength: 1, maxLength: 4 }),
  designPlf: between(100, 900),
  fullHeightEnds: fc.constant(true),
});
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const whole = (given: { segmentsFt: readonly number[]; openings: readonly { widthFt: number }[] }) =>
  sum(given.segmentsFt) + sum(given.openings.map((opening) => opening.widthFt));
const perforatedLb = (inputs: unknown) => numberOf('shear-wall.perforated', inputs, 'capacityLb');

describe('strength of a wall with openings', () => {
  test('a wider opening cut into the part beside it never raises it', () => {
    fc.assert(
      fc.property(openWall, between(0, 1), (given, share) => {
        const lengthFt = whole(given);
        const [segment = 0, ...segments] = given.segmentsFt;
        const [opening, ...openings] = given.openings;
        if (!opening) throw new Error('every wall here has an opening');
        const cutFt = share * (segment - 0.25);
        const wider = {
          ...given,
          segmentsFt: [segment - cutFt, ...segments],
          openings: [{ ...opening, widthFt: opening.widthFt + cutFt }, ...openings],
        };
        expect(perforatedLb({ ...wider, lengthFt })).toBeLessThanOrEqual(perforatedLb({ ...given, lengthFt }) + BINARY);
      }),
    );
  });
  test('a higher opening never raises it', () => {
    fc.assert(
      fc.property(openWall, ordered(0.5, 8), (given, [low, high]) => {
        const at = (heightFt: number) =>
          perforatedLb({
            ...given,
            lengthFt: whole(given),
            openings: given.openings.map((opening) => ({ ...opening, heightFt })),
          });
        expect(at(high)).toBeLessThanOrEqual(at(low) + BINARY);
      }),
    );
  });
  test('the order of parts and openings changes nothing', () => {
    fc.assert(
      fc.property(
        openWall.chain((given) => fc.tuple(fc.constant(given), shuffled(given.segmentsFt), shuffled(given.openings))),
        ([given, segmentsFt, openings]) => {
          const lengthFt = whole(given) + 1;
          const other = { ...given, lengthFt, segmentsFt, openings };
          expect(perforatedLb(other)).toBeCloseTo(perforatedLb({ ...given, lengthFt }), 6);
          const verdictOf = (inputs: unknown) =>
            evaluateCheck('shear-wall.perforated', { inputs: { ...(inputs as object), shearLb: 3000 } }).verdict;
          expect(verdictOf(other)).toBe(verdictOf({ ...given, lengthFt }));
        },
      ),
    );
  });
  test('parts longer than the wall, and openings larger than what is left, are refused', () => {
    const wallOf = (more: object) => ({
      lengthFt: 16,
      heightFt: 8,
      segmentsFt: [6, 6],
      openings: [{ widthFt: 4, heightFt: 6 }],
      designPlf: 380,
      ...more,
    });
    const pathsOf = (inputs: unknown) => {
      try {
        evaluateCheck('shear-wall.perforated', { inputs });
        return [];
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        return error.issues.map((issue) => issue.path.join('.'));
      }
    };
    expect(pathsOf(wallOf({}))).toEqual([]);
    expect(pathsOf(wallOf({ segmentsFt: [6, 11] }))).toContain('segmentsFt');
    expect(pathsOf(wallOf({ openings: [{ widthFt: 4.1, heightFt: 6 }] }))).toEqual(['openings.0.widthFt']);
    expect(pathsOf(wallOf({ openings: [{ widthFt: 4, heightFt: 8.5 }] }))).toEqual(['openings.0.heightFt']);
  });
});

describe('uplift of a wall end', () => {
  const lifted = fc.record({
    shearLb: between(0, 10_000),
    heightFt: between(7, 12),
    lengthFt: between(2, 24),
    deadLoadPlf: between(0, 500),
    deadFactor: between(0, 0.6),
    stories: fc.array(
      fc.record({ shearLb: between(0, 5000), heightFt: between(7, 12), deadLoadPlf: between(0, 300) }),
      {
        maxLength: 3,
      },
    ),
  });
  const upliftLb = (inputs: unknown) => numberOf('shear-wall.overturning', inputs, 'upliftLb');

  test('more shear never lowers it, more dead load never raises it', () => {
    fc.assert(
      fc.property(lifted, between(0, 5000), between(0, 500), (inputs, shearLb, deadLoadPlf) => {
        const before = upliftLb(inputs);
        expect(upliftLb({ ...inputs, shearLb: inputs.shearLb + shearLb })).toBeGreaterThanOrEqual(before - BINARY);
        expect(upliftLb({ ...inputs, deadLoadPlf: inputs.deadLoadPlf + deadLoadPlf })).toBeLessThanOrEqual(
          before + BINARY,
        );
      }),
    );
  });
  test('the order of the stories changes nothing', () => {
    fc.assert(
      fc.property(lifted, (inputs) => {
        const turned = { ...inputs, stories: [...inputs.stories].reverse() };
        expect(upliftLb(turned)).toBeCloseTo(upliftLb(inputs), 6);
      }),
    );
  });
  test('a lever longer than the wall is refused', () => {
    const inputs = { shearLb: 100, heightFt: 8, lengthFt: 8, leverFt: 8.5, deadLoadPlf: 0, deadFactor: 0.6 };
    expect(() => evaluateCheck('shear-wall.overturning', { inputs })).toThrow(/leverFt: got 8.5 ft; allowed/);
  });
});

describe('panel pieces', () => {
  /** A wall of columns of pieces, each column cut at its own height. */
  const pieces = fc.array(fc.tuple(fc.integer({ min: 12, max: 60 }), fc.integer({ min: 6, max: 90 })), {
    minLength: 1,
    maxLength: 5,
  });
  const laid = (columns: readonly (readonly [number, number])[]) => {
    let xIn = 0;
    return columns.flatMap(([widthIn, cutIn]) => {
      const column = [
        { xIn, yIn: 0, widthIn, heightIn: cutIn },
        { xIn, yIn: cutIn, widthIn, heightIn: 96 - cutIn },
      ];
      xIn += widthIn;
      return column;
    });
  };
  const judge = (list: unknown, more: object = {}) =>
    evaluateCheck('shear-wall.panel-layout', {
      inputs: { pieces: list, studSpacingIn: 16, blockedEdges: false, cuts: [], ...more },
    });

  test('the order of the pieces changes nothing', () => {
    fc.assert(
      fc.property(
        pieces.chain((columns) => fc.tuple(fc.constant(laid(columns)), shuffled(laid(columns)))),
        ([given, other]) => {
          expect(judge(other).toJSON()).toEqual(judge(given).toJSON());
        },
      ),
    );
  });
  test('every level joint counts its whole width once, and blocking all of it takes all away', () => {
    fc.assert(
      fc.property(pieces, (columns) => {
        const onStuds = columns.map(([, cutIn]) => [48, cutIn] as const);
        const found = judge(laid(onStuds));
        expect(found.values.unsupportedEdgeIn?.value).toBe(48 * columns.length);
        expect(judge(laid(columns), { blockedEdges: true }).values.unsupportedEdgeIn?.value).toBe(0);
      }),
    );
  });
  test('what is bare between two columns of panel is counted where it is wider than a joint', () => {
    const columns = fc.array(fc.tuple(fc.integer({ min: 8, max: 400 }), fc.nat(60)), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(columns, (given) => {
        let xIn = 0;
        let bareIn = 0;
        const sheets = given.map(([eighthsWide, eighthsApart], at) => {
          const [widthIn, gapIn] = [eighthsWide / 8, eighthsApart / 8];
          const sheet = { xIn, yIn: 0, widthIn, heightIn: 96 };
          xIn += widthIn + gapIn;
          if (at < given.length - 1 && gapIn > 0.25) bareIn += gapIn;
          return sheet;
        });
        const { values, verdict } = judge(sheets, { blockedEdges: true });
        expect(values.uncoveredSf?.value).toBeCloseTo((bareIn * 96) / 144, 9);
        if (bareIn > 0) expect(verdict).toBe('fails');
      }),
    );
  });
  test('a piece taken away, or a larger wall part, never leaves less bare', () => {
    const bare = (list: unknown, more: object) => Number(judge(list, more).values.uncoveredSf?.value);
    fc.assert(
      fc.property(pieces, fc.nat(60), fc.double({ min: 0, max: 30, noNaN: true }), (columns, which, moreIn) => {
        const all = laid(columns);
        const gone = which % all.length;
        const partWidthIn = columns.reduce((sum, [widthIn]) => sum + widthIn, 0);
        const part = { partWidthIn, partHeightIn: 96 };
        const base = bare(all, part);
        const fewer = all.filter((_piece, at) => at !== gone);
        if (fewer.length > 0) expect(bare(fewer, part)).toBeGreaterThanOrEqual(base);
        expect(bare(all, { ...part, partHeightIn: 96 + moreIn })).toBeGreaterThanOrEqual(base);
      }),
    );
  });
  test('a piece outside its wall part is refused, one that runs past its end is not', () => {
    const sheet = { xIn: 48, yIn: 0, widthIn: 48, heightIn: 96 };
    expect(() => judge([sheet], { partWidthIn: 48 })).toThrow(/pieces.0: got a piece that begins beyond the wall part/);
    expect(() => judge([sheet], { partHeightIn: 95, partWidthIn: 72 })).not.toThrow();
  });
  test('a piece that covers another is refused', () => {
    const sheet = { xIn: 0, yIn: 0, widthIn: 48, heightIn: 96 };
    expect(() => judge([sheet, { ...sheet, xIn: 40 }])).toThrow(/pieces.1: got a piece that covers pieces.0; allowed/);
    expect(() => judge([sheet, { ...sheet, xIn: 47.8 }])).not.toThrow();
  });
});
