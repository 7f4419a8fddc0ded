import { describe, expect, test } from 'vitest';
import { JOIST_CUTS_IBC, STUD_CUTS_IBC } from '../ibc-2018/cuts.data.ts';
import { IBC_DEFLECTION } from '../ibc-table-1604.3/deflection.data.ts';
import { JOIST_CUTS_2021, STUD_CUTS_2021 } from '../irc-2021/cuts.data.ts';
import { JOIST_CUTS_2024, STUD_CUTS_2024 } from '../irc-2024/cuts.data.ts';
import { IRC_DEFLECTION } from '../irc-r301.7/deflection.data.ts';
import { endNotchShare, FV_PSI, shearCapacityLb } from '../nds-2018/shear.ts';
import { JOIST_CUTS_2018, STUD_CUTS_2018 } from './cuts.data.ts';

/** Bearing notch, bearing hole, doubled hole, other notch, other hole of a stud, inches. */
function studTable(depthIn: number) {
  const { notchShare, holeShare } = STUD_CUTS_2018;
  return [notchShare.bearing, holeShare.bearing, holeShare.doubled, notchShare.nonBearing, holeShare.nonBearing].map(
    (share) => share * depthIn,
  );
}

describe('cutting and boring', () => {
  test.each([
    [3.5, [0.875, 1.4, 2.1, 1.4, 2.1]],
    [5.5, [1.375, 2.2, 3.3, 2.2, 3.3]],
  ])('a stud %s in deep: 25, 40, 60, 40 and 60%% (published: IRC 2018 R602.6)', (depthIn, row) => {
    expect(studTable(depthIn)).toEqual(row.map((inches) => expect.closeTo(inches, 9)));
  });

  test.each([
    [5.5, 0.917, 1.833, 1.375],
    [7.25, 1.208, 2.417, 1.8125],
    [9.25, 1.542, 3.083, 2.3125],
    [11.25, 1.875, 3.75, 2.8125],
  ])('a joist %s in deep: notch %s, its length and a hole %s, at the end %s (hand-worked)', (d, notch, third, end) => {
    expect(d * JOIST_CUTS_2018.notchShare).toBeCloseTo(notch, 3);
    expect(d * JOIST_CUTS_2018.notchLengthShare).toBeCloseTo(third, 3);
    expect(d * JOIST_CUTS_2018.holeShare).toBeCloseTo(third, 3);
    expect(d * JOIST_CUTS_2018.endNotchShare).toBe(end);
  });

  test('the editions agree on every number; only 2018 prints the stud edge the wrong way round', () => {
    const numbers = ({ id: _id, source: _source, ...rest }: typeof STUD_CUTS_2018) => rest;
    for (const rule of [STUD_CUTS_2021, STUD_CUTS_2024, STUD_CUTS_IBC])
      expect(numbers(rule)).toEqual({ ...numbers(STUD_CUTS_2018), edgeMisprinted: false });
    expect(STUD_CUTS_2018.edgeMisprinted).toBe(true);
    for (const rule of [JOIST_CUTS_2021, JOIST_CUTS_2024, JOIST_CUTS_IBC])
      expect({ ...rule, id: '', source: '' }).toEqual({ ...JOIST_CUTS_2018, id: '', source: '' });
  });

  test('what was read is published, what was quoted second-hand, what was neither is from memory', () => {
    expect(STUD_CUTS_2018.source.basis).toBe('published');
    expect(STUD_CUTS_2024.source.basis).toBe('second-hand');
    expect(JOIST_CUTS_2018.source.basis).toBe('second-hand');
    for (const rule of [STUD_CUTS_2021, STUD_CUTS_IBC, JOIST_CUTS_2021, JOIST_CUTS_2024, JOIST_CUTS_IBC])
      expect(rule.source.basis).toBe('memory');
  });

  test('every rule names a source of its own', () => {
    const rules = [STUD_CUTS_2018, STUD_CUTS_2021, STUD_CUTS_2024, STUD_CUTS_IBC];
    const joists = [JOIST_CUTS_2018, JOIST_CUTS_2021, JOIST_CUTS_2024, JOIST_CUTS_IBC];
    expect(new Set([...rules, ...joists].map((rule) => rule.source.id)).size).toBe(8);
  });
});

describe('shear at a notched end', () => {
  test('a 2x10 of Douglas fir-larch takes 1665 lb whole and 702 lb with a quarter cut away', () => {
    const whole = shearCapacityLb(FV_PSI['douglas-fir-larch'].psi, 1.5, 9.25);
    expect(whole).toBeCloseTo(1665, 9);
    expect(whole * endNotchShare(9.25, 6.9375)).toBeCloseTo(702.42, 2);
  });
  test.each([
    ['douglas-fir-larch', 180, 'second-hand'],
    ['southern-pine', 175, 'published'],
    ['hem-fir', 150, 'second-hand'],
    ['spruce-pine-fir', 135, 'second-hand'],
    ['spruce-pine-fir-south', 135, 'memory'],
    ['redwood', 160, 'memory'],
  ] as const)('%s takes %s psi along the grain (%s)', (species, psi, basis) => {
    expect(FV_PSI[species].psi).toBe(psi);
    expect(FV_PSI[species].source.basis).toBe(basis);
  });
});

test('deflection limits as printed: IBC Table 1604.3 and IRC R301.7', () => {
  expect(IBC_DEFLECTION).toEqual({
    floor: { live: 360, total: 240 },
    'roof-plaster-ceiling': { live: 360, total: 240 },
    'roof-other-ceiling': { live: 240, total: 180 },
    'roof-no-ceiling': { live: 180, total: 120 },
    'wall-plaster': { live: 360, total: undefined },
    'wall-brittle': { live: 240, total: undefined },
    'wall-flexible': { live: 120, total: undefined },
  });
  const one = Object.fromEntries(Object.entries(IRC_DEFLECTION).map(([member, limits]) => [member, limits.live]));
  expect(one).toEqual({
    floor: 360,
    'ceiling-plaster': 360,
    'ceiling-gypsum': 240,
    'rafter-steep-no-ceiling': 180,
    'wall-interior': 180,
    'wall-plaster': 360,
    'wall-brittle': 240,
    'wall-flexible': 120,
    'lintel-veneer': 600,
    other: 240,
  });
  for (const { live, total } of Object.values(IRC_DEFLECTION)) expect(total).toBe(live);
});
