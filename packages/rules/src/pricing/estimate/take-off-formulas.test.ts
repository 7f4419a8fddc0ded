import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  burdenPctOf,
  marginPctOfMarkup,
  markupPctOfMargin,
  priceAtMargin,
  priceAtMarkup,
  requiredMarkupPct,
} from './markup.ts';
import {
  boardFeet,
  crewDays,
  fieldStuds,
  framingNailsLb,
  manDays,
  panelNailCount,
  plateFt,
  sheathingNailsLb,
  sheathingSheets,
} from './take-off-formulas.ts';

describe('markup and margin', () => {
  test.each([
    [10, 11.11],
    [20, 25],
    [25, 33.33],
    [30, 42.86],
    [35, 53.85],
    [40, 66.67],
    [50, 100],
  ])('a margin of %d percent is a markup of %d percent (hand-worked)', (marginPct, markupPct) => {
    // The table has two decimals.
    expect(markupPctOfMargin(marginPct)).toBeCloseTo(markupPct, 2);
    expect(marginPctOfMarkup(markupPctOfMargin(marginPct))).toBeCloseTo(marginPct, 12);
  });

  test('300,000 of overhead and profit on 600,000 of direct cost asks for 50%, and 600,000 is priced 900,000 (published: JLC)', () => {
    expect(requiredMarkupPct(60_000_000, 30_000_000)).toBe(50);
    expect(priceAtMarkup(60_000_000, 50)).toBe(90_000_000);
  });

  test('30% taken for markup where margin was meant underprices by 9%', () => {
    expect(priceAtMarkup(100_000, 30)).toBe(130_000);
    expect(priceAtMargin(100_000, 30)).toBe(142_857);
  });

  test('a price at a margin keeps that margin, to the cent it was rounded to', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.double({ min: 0, max: 95, noNaN: true }), (cents, marginPct) => {
        const price = priceAtMargin(cents, marginPct);
        // Half a cent of rounding, and what a double can tell apart.
        expect(Math.abs(price * (1 - marginPct / 100) - cents)).toBeLessThanOrEqual(0.5 + 1e-6);
      }),
    );
  });

  test('no markup is no margin, and no indirect cost asks for no markup', () => {
    expect([marginPctOfMarkup(0), markupPctOfMargin(0), requiredMarkupPct(100, 0)]).toEqual([0, 0, 0]);
  });

  test('12,000 of indirect cost on 30,000 of pay is a burden of 40%', () => {
    expect(burdenPctOf(3_000_000, 1_200_000)).toBe(40);
  });

  test.each([
    ['a margin of 100%', () => markupPctOfMargin(100), 'Margin came as 100%'],
    ['a negative markup', () => marginPctOfMarkup(-1), 'Markup came as -1%'],
    ['a margin that is no number', () => priceAtMargin(1, Number.NaN), 'Margin came as NaN%'],
    ['no direct cost', () => requiredMarkupPct(0, 1), 'Direct cost came as 0 cents'],
    ['a negative indirect cost', () => requiredMarkupPct(1, -1), 'Indirect cost came as -1 cents'],
  ])('%s is refused by name', (_name, work, message) => {
    expect(work).toThrow(message);
  });
});

describe('take-off', () => {
  test('6x8 of 16 ft is 64 board feet (published: Griffith, Carpentry 1916)', () => {
    expect(boardFeet(1, 6, 8, 16)).toBe(64);
  });

  test('eight pieces of 1x4 of 14 ft are 37 1/3 board feet (published: Army EN5155 p1-28)', () => {
    expect(boardFeet(8, 1, 4, 14)).toBeCloseTo(37 + 1 / 3, 12);
  });

  test('stock under an inch counts as an inch (published: Griffith)', () => {
    expect(boardFeet(1, 0.5, 12, 1)).toBe(1);
  });

  test('1,060 SF is 34 sheets and 1,256 SF is 40 (published: Modern Carpentry 2022, 11.15.3)', () => {
    expect([sheathingSheets(1060), sheathingSheets(1256)]).toEqual([34, 40]);
  });

  test('10% of waste on 1,024 SF makes 36 sheets of 32, rounded up once', () => {
    expect([sheathingSheets(1024), sheathingSheets(1024, 10)]).toEqual([32, 36]);
  });

  test('a wall of 12 ft with studs at 16 in has ten, one of 12 ft 1 in eleven (memory)', () => {
    expect([fieldStuds(12, 16), fieldStuds(12 + 1 / 12, 16)]).toEqual([10, 11]);
    expect(plateFt(12)).toBe(36);
  });

  test.each([
    [6, 12, 16, 62],
    [4, 12, 16, 86],
    [3, 12, 16, 110],
    [2, 12, 16, 158],
    [6, 6, 16, 78],
    [6, 12, 24, 55],
  ])(
    'a 4x8 panel at %d in edges, %d in field, studs at %d in takes %d nails (hand-worked)',
    (edge, field, stud, nails) => {
      const panel = { widthIn: 48, heightIn: 96, edgeSpacingIn: edge, fieldSpacingIn: field, studSpacingIn: stud };
      expect(panelNailCount(panel)).toBe(nails);
    },
  );

  test('10d nails for 6,300 board feet weigh 105 lb, 8d for 1,500 SF of sheathing 30 lb (published: Army EN0069A)', () => {
    // The document prints whole pounds; 1.67 x 10 x 6.3 is 105.2.
    expect(Math.round(framingNailsLb(6300, 10))).toBe(105);
    expect(sheathingNailsLb(1500)).toBe(30);
  });

  test('16,000 SF of wallboard is 66 man-days, 70 with delay, and 9 workdays of twelve people (published: NAVEDTRA 14045)', () => {
    expect(manDays(16_000, 1000, 33)).toBe(66);
    // The document multiplies by about 1.06 and prints 70.
    expect(Math.round(manDays(16_000, 1000, 33, 1.06))).toBe(70);
    expect(crewDays(70, 12, 0.75, 0.9375)).toBe(9);
  });

  test.each([
    ['a negative number of pieces', () => boardFeet(-1, 2, 4, 8), 'pieces came as -1; allowed is 0 or more'],
    ['a thickness of nothing', () => boardFeet(1, 0, 4, 8), 'thicknessIn came as 0; allowed is above 0'],
    ['an area that is no number', () => sheathingSheets(Number.NaN), 'areaSf came as NaN'],
    ['a spacing of nothing', () => fieldStuds(8, 0), 'spacingIn came as 0'],
    ['a crew of nobody', () => crewDays(1, 0), 'crew came as 0'],
    ['work below nothing', () => crewDays(-1, 2), 'totalManDays came as -1'],
    ['an amount below nothing', () => manDays(-1, 1000, 33), 'amount came as -1'],
    ['a unit of nothing', () => manDays(1, 0, 33), 'unit came as 0'],
    ['a wall shorter than nothing', () => plateFt(-1), 'lengthFt came as -1'],
    ['lumber below nothing', () => framingNailsLb(-1, 10), 'lumberBf came as -1'],
    ['sheathing below nothing', () => sheathingNailsLb(-1), 'areaSf came as -1'],
    [
      'a panel without width',
      () => panelNailCount({ widthIn: 0, heightIn: 96, edgeSpacingIn: 6, fieldSpacingIn: 12, studSpacingIn: 16 }),
      'widthIn came as 0',
    ],
  ])('%s is refused by name', (_name, work, message) => {
    expect(work).toThrow(message);
  });
});
