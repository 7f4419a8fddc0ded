import { describe, expect, test } from 'vitest';
import { IBC_PANEL_ROWS } from '../ibc-2306.3/panel-shear.data.ts';
import { SDPWS_2008 } from '../sdpws-2008/shear-walls.ts';
import { PERFORATED_TABLE, PERFORATED_TABLE_OPENINGS } from '../sdpws-2015/perforated-table.data.ts';
import { SDPWS_2015 } from '../sdpws-2015/shear-walls.ts';
import { SDPWS_2021 } from '../sdpws-2021/shear-walls.ts';
import { countedLengthFt, countedOpeningSf, perforatedFactor } from './perforated.ts';
import {
  EDGE_SPACINGS_IN,
  GRADES,
  PANEL_NAILS,
  PANEL_TABLE,
  type PanelRow,
  speciesFactor,
  THICKNESSES,
  thinPanelRow,
} from './shear-walls.data.ts';
import { unblockedFactor } from './unblocked.data.ts';

const rows = GRADES.flatMap((grade) =>
  THICKNESSES.flatMap((thickness) =>
    PANEL_NAILS.flatMap((nail) => {
      const row = PANEL_TABLE[grade][thickness]?.[nail];
      return row ? [{ name: `${grade} ${thickness} ${nail}`, row }] : [];
    }),
  ),
);
const nearest5 = (value: number) => Math.round(value / 5) * 5;

describe('SDPWS Table 4.3A, every cell', () => {
  test('has the twelve rows of the scan', () => expect(rows).toHaveLength(12));

  describe.each(IBC_PANEL_ROWS)('%s %s %s', (grade, thickness, nail, allowable) => {
    const row = PANEL_TABLE[grade][thickness]?.[nail];
    test('is twice the IBC allowable in the seismic column', () =>
      expect(row?.seismicPlf).toEqual(allowable.map((plf) => 2 * plf)));
    test('is 2.8 times the IBC allowable, to the nearest 5 plf, in the wind column', () =>
      expect(row?.windPlf).toEqual(allowable.map((plf) => nearest5(2.8 * plf))));
  });

  test('the row the IBC table leaves out keeps the same 1.4 between its columns', () => {
    const row = PANEL_TABLE['structural-1']['5/16']?.['6d'];
    expect(row?.windPlf).toEqual(row?.seismicPlf.map((plf) => nearest5(1.4 * plf)));
  });

  test.each(rows)('$name: 2021 has the old wind values for both loads', ({ row }) => {
    for (const load of ['seismic', 'wind'] as const)
      expect(SDPWS_2021.nominals(row, load)).toEqual(SDPWS_2015.nominals(row, 'wind'));
    expect(SDPWS_2008.nominals(row, 'seismic')).toEqual(SDPWS_2015.nominals(row, 'seismic'));
  });

  test.each(rows)('$name: ASD seismic of 2021 is that of 2015, but for the rounding to 5 plf', ({ row }) => {
    // Half of a 5 plf step, divided by 2.8.
    const rounding = 2.5 / 2.8 + 1e-9;
    for (let at = 0; at < EDGE_SPACINGS_IN.length; at++)
      expect(Math.abs(asdSeismic(SDPWS_2021, row, at) - asdSeismic(SDPWS_2015, row, at))).toBeLessThanOrEqual(rounding);
  });

  test('prints the 2021 rows read second-hand', () => {
    expect(PANEL_TABLE.sheathing['7/16']?.['8d']?.windPlf.slice(0, 3)).toEqual([670, 980, 1260]);
    expect(PANEL_TABLE.sheathing['15/32']?.['10d']?.windPlf.slice(0, 3)).toEqual([870, 1290, 1680]);
    expect(PANEL_TABLE.sheathing['15/32']?.['8d']?.windPlf[1]).toBe(1065);
  });

  test('grows with closer nails in every row', () => {
    for (const { row } of rows)
      for (const column of [row.seismicPlf, row.windPlf])
        expect([...column].sort((a, b) => a - b)).toEqual([...column]);
  });
});

function asdSeismic(edition: typeof SDPWS_2021, row: PanelRow, at: number): number {
  return (edition.nominals(row, 'seismic')[at] ?? Number.NaN) * edition.designShare.asd.seismic;
}

test.each([
  [0.5, 1],
  [0.55, 1],
  [0.43, 0.93],
  [0.42, 0.92],
  [0.36, 0.86],
])('framing of G %s counts %s (published: APA B360P note a)', (gravity, factor) =>
  expect(speciesFactor(gravity)).toBeCloseTo(factor, 12),
);

test('only 3/8 and 7/16 panels with 8d nails may use the 15/32 row, of their own grade', () => {
  const allowed = GRADES.flatMap((grade) =>
    THICKNESSES.flatMap((thickness) =>
      PANEL_NAILS.filter((nail) => thinPanelRow(grade, thickness, nail)).map((nail) => `${grade} ${thickness} ${nail}`),
    ),
  );
  expect(allowed).toEqual(GRADES.flatMap((grade) => [`${grade} 3/8 8d`, `${grade} 7/16 8d`]));
  expect(thinPanelRow('sheathing', '7/16', '8d')).toBe(PANEL_TABLE.sheathing['15/32']?.['8d']);
});

describe('narrow walls', () => {
  test.each([
    [2, 1],
    [3.2, 0.85],
    [3.5, 0.8125],
  ])('since 2015 a height of %s lengths keeps %s for both loads', (aspect, factor) => {
    for (const edition of [SDPWS_2015, SDPWS_2021])
      for (const load of ['seismic', 'wind'] as const)
        expect(edition.aspectFactor(aspect, load, false)).toBeCloseTo(factor, 12);
  });
  test('a line that shares by capacity takes 2b/h, and 2008 takes it for seismic only', () => {
    expect(SDPWS_2015.aspectFactor(3.2, 'wind', true)).toBe(0.625);
    expect(SDPWS_2021.aspectFactor(3.2, 'seismic', true)).toBe(0.625);
    expect(SDPWS_2008.aspectFactor(3.2, 'seismic', false)).toBe(0.625);
    expect(SDPWS_2008.aspectFactor(3.2, 'wind', true)).toBe(1);
  });
  test('a wall as long as half its height or longer keeps all of it', () => {
    for (const edition of [SDPWS_2008, SDPWS_2015, SDPWS_2021])
      for (const share of [true, false]) expect(edition.aspectFactor(1, 'seismic', share)).toBe(1);
  });
});

test('unblocked walls take the table at its columns and the wider column between them', () => {
  const rowAt = (fieldIn: number) => [12, 16, 20, 24].map((studIn) => unblockedFactor(studIn, fieldIn));
  expect(rowAt(6)).toEqual([1, 0.8, 0.6, 0.5]);
  expect(rowAt(12)).toEqual([0.8, 0.6, 0.5, 0.4]);
  expect(unblockedFactor(19.2, 6)).toBe(0.6);
  expect(unblockedFactor(16, 8)).toBe(0.6);
  expect(unblockedFactor(24.5, 6)).toBeUndefined();
  expect(unblockedFactor(16, 12.5)).toBeUndefined();
});

describe('SDPWS 2015 perforated table, every cell against the equation', () => {
  /** Half of the last of the two decimals the table prints; three cells of 0.625 are printed 0.63. */
  const PRINTED = 0.005 + 1e-12;
  describe.each(PERFORATED_TABLE)('%s of the wall full height', (share, cells) => {
    test.each(cells.map((cell, at) => [PERFORATED_TABLE_OPENINGS[at] as number, cell]))(
      'openings of %s of the height keep %s',
      (openingShare, cell) => {
        const [lengthFt, heightFt] = [40, 9];
        const openingsSf = countedOpeningSf(lengthFt * (1 - share), openingShare * heightFt, heightFt);
        const factor = perforatedFactor(lengthFt, heightFt, lengthFt * share, openingsSf);
        expect(Math.abs(factor - cell)).toBeLessThanOrEqual(PRINTED);
      },
    );
  });
  test('an opening lower than a third of the wall counts as a third', () => {
    expect(countedOpeningSf(4, 1, 9)).toBe(12);
    expect(countedOpeningSf(4, 3, 9)).toBe(12);
    expect(countedOpeningSf(4, 4, 9)).toBe(16);
  });
  test('a narrow segment counts 2b/h of itself, and one past 3.5 nothing', () => {
    expect(countedLengthFt(4, 8)).toBe(4);
    expect(countedLengthFt(4, 9)).toBeCloseTo(32 / 9, 12);
    expect(countedLengthFt(2, 7)).toBeCloseTo(8 / 7, 12);
    expect(countedLengthFt(2, 7.01)).toBe(0);
    expect(perforatedFactor(20, 8, 0, 40)).toBe(0);
  });
});
