import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checks, evaluateCheck } from '../all-checks.ts';
import { runCheck } from '../judging/run-check.ts';
import { OPERATIONS, PHASES } from './operations.data.ts';
import { repairs } from './registry.ts';
import { takeOff, UnknownRepairError } from './take-off.ts';
import { uniteTakeOffs } from './unite.ts';

const quantityOf = (lines: readonly { operation: string; quantity: number }[], operation: string) =>
  lines.find((line) => line.operation === operation)?.quantity;

const NONE = { inputs: {}, outcome: { values: {} } };

test('every template names operations that exist and every operation is used', () => {
  const used = new Set(repairs.flatMap((repair) => repair.steps.map((step) => step.operation)));
  expect([...used].sort()).toEqual(OPERATIONS.map((operation) => operation.id).sort());
  expect(new Set(repairs.map((repair) => repair.id)).size).toBe(repairs.length);
});

test('every repair a case proposes has a take-off in working order with words for each amount', async () => {
  for (const check of checks)
    for (const one of (await check.cases()).cases) {
      const outcome = runCheck(check, { inputs: one.inputs, edition: one.edition });
      for (const id of outcome.repairs) {
        const lines = takeOff(id, { inputs: one.inputs as Record<string, unknown>, outcome });
        const phases = lines.map((line) => PHASES.indexOf(line.phase));
        expect(phases).toEqual([...phases].sort((a, b) => a - b));
        expect(lines.length).toBeGreaterThan(0);
        for (const line of lines) {
          expect(line.quantity).toBeGreaterThan(0);
          expect(line.how.en).not.toBe('');
          expect(line.how.es).not.toBe('');
        }
      }
    }
});

describe('amounts come from the measurements', () => {
  test('a cut plate under the 2024 IRC takes one tie and 16 nails', () => {
    const inputs = { widthIn: 3.5, cutIn: 2, bearingOrBraced: true, inShearWall: false };
    const lines = takeOff('plate-tie', { inputs, outcome: evaluateCheck('cut.top-plate', { inputs }) });
    expect(quantityOf(lines, 'plate-tie')).toBe(1);
    expect(quantityOf(lines, 'tie-nails')).toBe(16);
  });

  test('a hanger short of four nails takes four, one with screws takes all sixteen', () => {
    const inputs = {
      memberWidthIn: 1.5,
      hangerWidthIn: 1.5,
      seatGapIn: 0,
      endGapIn: 0,
      header: { specified: 10, installed: 6 },
      joist: { specified: 6, installed: 6 },
      rightFastener: true,
    };
    const nails = (given: typeof inputs) =>
      quantityOf(
        takeOff('hanger-refasten', { inputs: given, outcome: evaluateCheck('connection.hanger', { inputs: given }) }),
        'hanger-nails',
      );
    expect(nails(inputs)).toBe(4);
    expect(nails({ ...inputs, rightFastener: false })).toBe(16);
  });

  test('14 overdriven nails of 48 take seven more, and staples where nails would split the framing', () => {
    const counts = { flush: 34, overdrivenSlight: 0, overdriven: 14, overdrivenDeep: 0, nearEdge: 0, missed: 0 };
    const nailed = (specifiedSpacingIn: number) => {
      const inputs = { panelThicknessIn: 0.5, specifiedSpacingIn, surveyedLengthIn: specifiedSpacingIn * 48, counts };
      return takeOff('add-nails', { inputs, outcome: evaluateCheck('shear-wall.nail-survey', { inputs }) });
    };
    expect(quantityOf(nailed(6), 'panel-nails')).toBe(7);
    expect(quantityOf(nailed(4), 'panel-nails')).toBeUndefined();
    expect(quantityOf(nailed(4), 'panel-staples')).toBe(21);
  });

  test('an amount nobody measured is marked as assumed until the estimator sets it', () => {
    const line = (quantities: Record<string, number>) =>
      takeOff('member-sister', NONE, quantities).find((one) => one.operation === 'sister-member');
    expect(line({})).toMatchObject({ quantity: 8, assumed: true });
    expect(line({ 'sister-member': 14 })).toMatchObject({ quantity: 14, assumed: false });
    expect(line({ 'sister-member': 0 })).toBeUndefined();
  });

  test('shoring stands before bad wood is cut and comes down after the inspection', () => {
    const order = takeOff('member-replace', NONE).map((line) => line.operation);
    expect(order.indexOf('shore-load')).toBeLessThan(order.indexOf('remove-member'));
    expect(order.indexOf('inspection-hold')).toBeLessThan(order.indexOf('release-shoring'));
    expect(order.indexOf('inspection-hold')).toBeLessThan(order.indexOf('close-finish'));
  });
});

test('an unknown repair is refused by name', () => {
  expect(() => takeOff('magic', NONE)).toThrow(UnknownRepairError);
});

test('two findings of one wall open it once, with the larger opening, and another wall opens on its own', () => {
  const scope = uniteTakeOffs([
    { finding: 'rod', place: 'wall A', lines: takeOff('coupler-and-rod', NONE) },
    { finding: 'plate', place: 'wall A', lines: takeOff('plate-tie', NONE) },
    { finding: 'seat', place: 'wall B', lines: takeOff('seat-restore', NONE) },
  ]);
  const opened = scope.filter((line) => line.operation === 'open-finish');
  expect(opened.map((line) => [line.place, line.quantity, line.for])).toEqual([
    ['wall A', 8, ['rod', 'plate']],
    ['wall B', 12, ['seat']],
  ]);
  expect(scope.filter((line) => line.operation === 'inspection-hold')).toHaveLength(1);
  expect(scope.filter((line) => line.operation === 'coupler-rod')).toHaveLength(1);
});

test('the order of findings changes no amount of the united scope', () => {
  const ids = repairs.map((repair) => repair.id);
  const finding = fc.record({ repair: fc.constantFrom(...ids), place: fc.constantFrom('A', 'B') });
  fc.assert(
    fc.property(fc.array(finding, { maxLength: 6 }), (given) => {
      const takeOffs = given.map(({ repair, place }, at) => ({
        finding: `f${at}`,
        place,
        lines: takeOff(repair, NONE),
      }));
      const amounts = (list: typeof takeOffs) =>
        uniteTakeOffs(list)
          .map((line) => `${line.operation} ${line.place} ${line.quantity} ${[...line.for].sort()}`)
          .sort();
      expect(amounts([...takeOffs].reverse())).toEqual(amounts(takeOffs));
    }),
  );
});
