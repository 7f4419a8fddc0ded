import { describe, expect, test } from 'vitest';
import { evaluateCheck } from '../all-checks.ts';
import { InputError } from '../judging/run-check.ts';

/** Where the inputs are refused, as paths; none when they are taken. */
function refusedAt(check: string, inputs: object): string[] {
  try {
    evaluateCheck(check, { inputs });
    return [];
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.issues.map(({ path }) => path.join('.'));
  }
}
const said = (check: string, inputs: object): string => {
  try {
    evaluateCheck(check, { inputs });
    return '';
  } catch (error) {
    return error instanceof InputError ? error.message : String(error);
  }
};

const piece = (name: string | undefined, lengthIn: number, ...boltsIn: number[]) => ({
  ...(name && { name }),
  lengthIn,
  boltsIn: boltsIn.map((atIn) => ({ atIn })),
});

/** What no house can measure is refused at its input; what just can is taken. */
const refused: readonly (readonly [what: string, check: string, inputs: object, at: readonly string[]])[] = [
  ['a notch deeper than its joist', 'cut.joist', { depthIn: 7.25, notchIn: 7.5 }, ['notchIn']],
  ['a joist cut through', 'cut.joist', { depthIn: 7.25, notchIn: 7.25, endNotchIn: 7.25, holeIn: 7.25 }, []],
  ['an end notch deeper than its joist', 'cut.joist', { depthIn: 7.25, endNotchIn: 7.5 }, ['endNotchIn']],
  ['a hole wider than its joist', 'cut.joist', { depthIn: 7.25, holeIn: 7.5 }, ['holeIn']],
  ['a hole that leaves the joist', 'cut.joist', { depthIn: 7.25, holeIn: 2, edgeIn: 5.5 }, ['edgeIn']],
  ['a hole at the far edge of the joist', 'cut.joist', { depthIn: 7.25, holeIn: 2, edgeIn: 5.25 }, []],
  ['an edge of no hole farther than the joist is deep', 'cut.joist', { depthIn: 7.25, edgeIn: 7.5 }, ['edgeIn']],
  [
    'a cut beyond the span',
    'cut.joist',
    { depthIn: 7.25, distanceFromSupportFt: 11, spanFt: 10 },
    ['distanceFromSupportFt'],
  ],
  ['a cut at the far support', 'cut.joist', { depthIn: 7.25, distanceFromSupportFt: 10, spanFt: 10 }, []],
  ['a notch deeper than its stud', 'cut.stud', { depthIn: 3.5, notchIn: 3.625 }, ['notchIn']],
  ['a hole wider than its stud', 'cut.stud', { depthIn: 3.5, holeIn: 3.625 }, ['holeIn']],
  ['a hole that leaves the stud', 'cut.stud', { depthIn: 3.5, holeIn: 1, edgeIn: 2.75 }, ['edgeIn']],
  ['a hole at the far edge of the stud', 'cut.stud', { depthIn: 3.5, holeIn: 1, edgeIn: 2.5 }, []],
  ['an edge of no hole farther than the stud is deep', 'cut.stud', { depthIn: 3.5, edgeIn: 3.75 }, ['edgeIn']],
  ['a plate cut wider than itself', 'cut.top-plate', { widthIn: 3.5, cutIn: 3.75 }, ['cutIn']],
  ['a plate cut through', 'cut.top-plate', { widthIn: 3.5, cutIn: 3.5 }, []],
  ['a cut of a plate not measured', 'cut.top-plate', { cutIn: 3.5 }, []],
  [
    'a rod that ends below its nut and shows threads past it',
    'anchor.thread-engagement',
    { diameterIn: 0.625, projectionIn: -0.3, threadsShowing: 4 },
    ['projectionIn', 'threadsShowing'],
  ],
  [
    'a rod that ends below its nut and shows no thread',
    'anchor.thread-engagement',
    { diameterIn: 0.625, projectionIn: -0.3, threadsShowing: 0 },
    [],
  ],
  [
    'a rod that ends past its nut by more than the threads it shows',
    'anchor.thread-engagement',
    { diameterIn: 0.625, projectionIn: 0.5, threadsShowing: 2 },
    ['projectionIn', 'threadsShowing'],
  ],
  [
    'parts that outnumber the openings between them, and none at an end',
    'shear-wall.perforated',
    { heightFt: 8, segmentsFt: [6, 6], openings: [{ widthFt: 4, heightFt: 6 }], fullHeightEnds: false },
    ['fullHeightEnds'],
  ],
  [
    'a part too narrow to count at an end',
    'shear-wall.perforated',
    { heightFt: 8, segmentsFt: [6, 2], openings: [{ widthFt: 4, heightFt: 6 }], fullHeightEnds: false },
    [],
  ],
  [
    'studs of a species with another specific gravity',
    'shear-wall.panel-capacity',
    { species: 'hem-fir', framingG: 0.5 },
    ['species', 'framingG'],
  ],
  [
    'studs of a species with its specific gravity',
    'shear-wall.panel-capacity',
    { species: 'hem-fir', framingG: 0.43 },
    [],
  ],
  [
    'a share of dead load beside a site that asks for another',
    'shear-wall.overturning',
    { deadFactor: 0.6, sds: 1 },
    ['deadFactor', 'sds'],
  ],
  ['a year the code was not printed in', 'cut.top-plate', { code: 'ibc', edition: '2006' }, ['edition']],
  ['a washer its own bolt fills', 'anchor.washer-bearing', { sideIn: 0.625, boltDiameterIn: 0.625 }, ['sideIn']],
  ['a washer a little wider than its bolt', 'anchor.washer-bearing', { sideIn: 0.75, boltDiameterIn: 0.625 }, []],
  [
    'more nails than holes in the header',
    'connection.hanger',
    { header: { specified: 10, installed: 11 } },
    ['header.installed'],
  ],
  [
    'more nails than holes in the joist',
    'connection.hanger',
    { joist: { specified: 6, installed: 7 } },
    ['joist.installed'],
  ],
  ['a nail in every hole', 'connection.hanger', { joist: { specified: 6, installed: 6 } }, []],
  [
    'a nail deeper in than it is long',
    'connection.nail',
    { nail: '8d-common', penetrationIn: 2.75 },
    ['penetrationIn'],
  ],
  [
    'a measured nail deeper in than it is long',
    'connection.nail',
    { lengthIn: 2, diameterIn: 0.131, penetrationIn: 2.5 },
    ['penetrationIn'],
  ],
  ['a gravity that its species has not', 'connection.nail', { mainSpecies: 'hem-fir', G: 0.5 }, ['G']],
  ['the gravity its species has', 'connection.nail', { mainSpecies: 'hem-fir', G: 0.43 }, []],
  ['a design value that its species has not', 'bearing.seat', { species: 'hem-fir', fcPerpPsi: 625 }, ['fcPerpPsi']],
  ['the design value its species has', 'bearing.seat', { species: 'hem-fir', fcPerpPsi: 405 }, []],
  ['a nail all of it in', 'connection.nail', { nail: '8d-common', penetrationIn: 2.5 }, []],
  ['a bolt beyond its piece', 'anchor.sill-bolts', { plates: [piece('A', 48, 10, 49)] }, ['plates.0.boltsIn.1.atIn']],
  ['a bolt at the very end of its piece', 'anchor.sill-bolts', { plates: [piece('A', 48, 48)] }, []],
  ['a bolt in a piece not measured', 'anchor.sill-bolts', { plates: [{ name: 'A', boltsIn: [{ atIn: 90 }] }] }, []],
  ['two pieces of one name', 'anchor.sill-bolts', { plates: [piece('A', 48), piece('A', 60)] }, ['plates.1.name']],
  [
    'a piece that takes the name another has by its place',
    'anchor.sill-bolts',
    { plates: [piece(undefined, 48), piece('plate 1', 48)] },
    ['plates.1.name'],
  ],
  [
    'tubes built again where no sign was found',
    'decay.insects',
    { kind: 'none', tubesRebuilt: true },
    ['tubesRebuilt'],
  ],
  ['tubes built again', 'decay.insects', { kind: 'subterranean-termite', tubesRebuilt: true }, []],
  ['a rod rusted thicker than it was', 'decay.rod-loss', { diameterIn: 0.625, remainingIn: 0.75 }, ['remainingIn']],
  ['a rod that lost nothing', 'decay.rod-loss', { diameterIn: 0.625, remainingIn: 0.625 }, []],
  ['a rod not measured before', 'decay.rod-loss', { remainingIn: 0.75 }, []],
  ['more decay than depth', 'decay.section-loss', { depthIn: 9.25, lossTopIn: 5, lossBottomIn: 5 }, ['lossBottomIn']],
  ['more decay at the top than depth', 'decay.section-loss', { depthIn: 9.25, lossTopIn: 9.5 }, ['lossTopIn']],
  ['decay from both edges that meets', 'decay.section-loss', { depthIn: 9.25, lossTopIn: 5, lossBottomIn: 4.25 }, []],
  ['more decay than width', 'decay.section-loss', { widthIn: 1.5, lossSideIn: 1.75 }, ['lossSideIn']],
  ['decay through the width', 'decay.section-loss', { widthIn: 1.5, lossSideIn: 1.5 }, []],
  ['decay of a depth not measured', 'decay.section-loss', { lossTopIn: 9.5 }, []],
  [
    'two members of one name',
    'movement.shrinkage',
    { members: [{ name: 'A' }, { name: 'B' }, { name: 'A' }] },
    ['members.2.name'],
  ],
  ['members without names yet', 'movement.shrinkage', { members: [{}, {}] }, []],
  ['two groups of one name', 'sample.like-parts', { groups: [{ name: 'A' }, { name: 'A' }] }, ['groups.1.name']],
  ['groups without names yet', 'sample.like-parts', { groups: [{}, {}] }, []],
  [
    'more with the hardware than places',
    'sample.like-parts',
    { groups: [{ name: 'A', count: 4, withHardware: 5 }] },
    ['groups.0.withHardware'],
  ],
  ['every place with the hardware', 'sample.like-parts', { groups: [{ name: 'A', count: 4, withHardware: 4 }] }, []],
  ['hardware in places not counted', 'sample.like-parts', { groups: [{ name: 'A', withHardware: 4 }] }, []],
  ['more bad ones than were looked at', 'sample.proportion', { inspected: 10, bad: 11 }, ['bad']],
  ['all that were looked at bad', 'sample.proportion', { inspected: 10, bad: 10 }, []],
  ['two wall lines of one name', 'demand.base-shear', { lines: [{ name: 'A' }, { name: 'A' }] }, ['lines.1.name']],
  [
    'two wall lines in one place',
    'demand.base-shear',
    {
      lines: [
        { name: 'A', positionFt: 0 },
        { name: 'B', positionFt: 0 },
      ],
    },
    ['lines.1.positionFt'],
  ],
  ['wall lines not measured yet', 'demand.base-shear', { lines: [{}, {}] }, []],
  ['two pieces without a name', 'anchor.sill-bolts', { plates: [piece(undefined, 48), piece(undefined, 48)] }, []],
];

describe('what cannot be is refused where it stands, what just can be is taken', () => {
  for (const [what, check, inputs, at] of refused)
    test(what, () => {
      expect(refusedAt(check, inputs)).toEqual(at);
    });
});

test('a refusal says what came and what is allowed', () => {
  expect(said('cut.joist', { depthIn: 7.25, holeIn: 2, edgeIn: 5.5 })).toContain(
    'got 5.5 in; allowed is at most 5.25 in',
  );
  expect(said('cut.joist', { depthIn: 7.25, distanceFromSupportFt: 11, spanFt: 10 })).toMatch(/11.*10/);
  expect(said('cut.top-plate', { code: 'ibc', edition: '2006' })).toMatch(/2009.*2015/);
});
