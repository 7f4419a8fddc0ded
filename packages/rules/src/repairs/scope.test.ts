import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Rect } from '../places/extents.ts';
import { evaluateScope, ScopeError, type ScopeFinding, type ScopeRequest } from './evaluate-scope.ts';
import { repairs } from './registry.ts';

const rect = (xIn: number, yIn: number, widthIn: number, heightIn: number): Rect => ({ xIn, yIn, widthIn, heightIn });
const wall = { kind: 'wall', widthIn: 144, heightIn: 96, framingSpacingIn: 16 } as const;
const hour = { low: 0.5, likely: 1, high: 2 };
const plan = (findings: ScopeFinding[], more: Partial<ScopeRequest> = {}, hoursOf = (_id: string) => hour) =>
  evaluateScope({ location: wall, findings, crewSize: 2, hoursPerDay: 8, ...more }, hoursOf);
const panel = (id: string, extent: Rect, quantities = {}): ScopeFinding => ({
  id,
  repair: 'panel-replace',
  extents: [extent],
  quantities,
});
const operation = (scope: ReturnType<typeof plan>, id: string) =>
  scope.operations.filter((one) => one.operation === id);

test('worked by hand: three findings that share access come to 2,065 together and 2,585 one by one', () => {
  const rates: Record<string, number> = {
    'replace-member': 480,
    'hold-down-new': 310,
    'panel-new': 390,
    'open-finish': 260,
    'shore-load': 540,
    'inspection-hold': 85,
  };
  const only = (...ids: string[]) => ({
    ...Object.fromEntries(
      ['protect-place', 'close-finish', 'haul-debris', 'inspection-hold'].map((id) => [id, 0] as const),
    ),
    ...Object.fromEntries(ids.map((id) => [id, 1] as const)),
  });
  const rot = { ...only('replace-member', 'open-finish', 'shore-load'), 'remove-member': 0, 'positive-connection': 0 };
  const sheathing = { ...only('panel-new', 'open-finish', 'inspection-hold'), 'remove-panel': 0, 'panel-blocking': 0 };
  const scope = plan(
    [
      { id: 'rot', repair: 'member-replace', extents: [], quantities: { ...rot, 'release-shoring': 0 } },
      { id: 'hold-down', repair: 'hold-down-new', extents: [], quantities: only('hold-down-new', 'open-finish') },
      { id: 'sheathing', repair: 'panel-replace', extents: [], quantities: { ...sheathing, 'panel-nails': 0 } },
    ],
    {},
    (id) => ({ low: 0, likely: rates[id] ?? 0, high: 0 }),
  );
  expect(scope.shares.map((one) => one.aloneHours)).toEqual([1280, 570, 735]);
  expect(scope.totalHours.likely).toBe(2065);
  expect(scope.shares.reduce((sum, one) => sum + one.shareHours, 0)).toBeCloseTo(2065, 6);
});

test('a wall stripped for two findings is stripped once, from stud to stud', () => {
  const scope = plan([panel('a', rect(0, 0, 48, 96)), panel('b', rect(34, 0, 46, 96))]);
  expect(scope.unions).toMatchObject({ panelSheets: 2 });
  expect(scope.unions.stripSf).toBeCloseTo(160 / 3, 12);
  expect(scope.naive).toEqual({ stripSf: 64, panelSf: 64 });
  expect(operation(scope, 'open-finish')).toMatchObject([{ for: ['a', 'b'], area: [rect(0, 0, 80, 96)] }]);
});

test('studs at 19.2 in are exactly where the tape has them: 57.6 in of panel open 57.6 in, and no stud is counted twice', () => {
  const studs = { ...wall, widthIn: 288, framingSpacingIn: 19.2 };
  const scope = plan([panel('a', rect(0, 0, 57.6, 96))], { location: studs });
  expect(operation(scope, 'open-finish')[0]?.area).toEqual([rect(0, 0, 57.6, 96)]);
  expect(scope.unions).toMatchObject({ stripSf: 38.4, panelSf: 38.4 });
  // Pieces of 38.4 and 19.2 in: edges 2 (w + 96) / 6 are 45 and 39 nails, and 7 in the one stud inside.
  expect(scope.unions.panelNails).toBe(45 + 7 + 39);
});

test('a hole of 12 x 12 in in a floor opens two joist bays by two feet, whatever the length of the floor', () => {
  const floor = { kind: 'floor', widthIn: 240, heightIn: 180, framingSpacingIn: 16 } as const;
  const scope = plan([panel('a', rect(100, 60, 12, 12))], { location: floor });
  const area = [rect(96, 54, 32, 24)];
  expect(operation(scope, 'remove-panel')).toMatchObject([{ area, quantity: { value: (32 * 24) / 144 } }]);
  expect(operation(scope, 'remove-panel')[0]?.how.en).toContain('joist to joist');
  expect(operation(scope, 'open-finish')).toMatchObject([{ area, quantity: { value: (32 * 24) / 144 } }]);
  expect(scope.unions).toMatchObject({ panelSheets: 1 });
});

test('nails follow the approved schedule; without one the least nailing is counted and marked as assumed', () => {
  const nails = (quantities: object) => {
    const [one] = operation(plan([panel('a', rect(0, 0, 48, 96), quantities)]), 'panel-nails');
    return [one?.quantity.value, one?.assumed];
  };
  expect(nails({ edgeSpacingIn: 3, fieldSpacingIn: 12 })).toEqual([110, false]);
  expect(nails({})).toEqual([62, true]);
});

test('a stud in two findings is replaced once, and replacing it makes sistering and treating it needless', () => {
  const at = rect(30, 20, 4, 60);
  const scope = plan([
    { id: 'rot', repair: 'member-replace', extents: [at] },
    { id: 'cut', repair: 'stud-sister', extents: [at] },
    { id: 'bugs', repair: 'wood-treat', extents: [at] },
    { id: 'notch', repair: 'member-replace', extents: [at] },
  ]);
  const alone = plan([{ id: 'rot', repair: 'member-replace', extents: [at] }]);
  const [replaced] = operation(scope, 'replace-member');
  expect(replaced).toMatchObject({ members: [{ en: 'Stud 3' }], for: ['rot', 'cut', 'bugs', 'notch'] });
  expect(replaced?.quantity).toEqual(operation(alone, 'replace-member')[0]?.quantity);
  expect(operation(scope, 'positive-connection')[0]?.quantity.value).toBe(2);
  expect([...operation(scope, 'sister-member'), ...operation(scope, 'treat-wood')]).toEqual([]);
});

test('mending the nails of a panel that is replaced falls away, and elsewhere it stays', () => {
  const mend = (extent: Rect): ScopeFinding => ({ id: 'nails', repair: 'add-nails', extents: [extent] });
  const nails = (extent: Rect) => operation(plan([panel('a', rect(0, 0, 48, 96)), mend(extent)]), 'panel-nails');
  expect(nails(rect(0, 0, 40, 96))).toMatchObject([{ quantity: { value: 62 }, for: ['a', 'nails'] }]);
  expect(nails(rect(60, 0, 40, 96))).toHaveLength(2);
});

test('a rod behind a new panel is mended before the panel closes it in, and pays for none of its nails', () => {
  const rod = (extent: Rect): ScopeFinding => ({ id: 'rod', repair: 'coupler-and-rod', extents: [extent] });
  const scope = plan([panel('a', rect(0, 0, 48, 96)), rod(rect(20, 0, 10, 12))]);
  expect(operation(scope, 'panel-new')[0]?.after).toContain('coupler-rod');
  expect(operation(scope, 'panel-nails')[0]).toMatchObject({ for: ['a'], after: ['panel-new'] });
  const elsewhere = plan([panel('a', rect(0, 0, 48, 96)), rod(rect(60, 0, 10, 12))]);
  expect(operation(elsewhere, 'panel-new')[0]?.after).not.toContain('coupler-rod');
});

test('nothing is covered before the hold point, and every step waits only for steps that are there', () => {
  const scope = plan([
    { id: 'rot', repair: 'member-replace', extents: [rect(30, 20, 4, 60)] },
    panel('a', rect(0, 0, 48, 96)),
    { id: 'e', repair: 'engineer-letter', extents: [] },
  ]);
  const order = scope.operations.map((one) => one.id);
  for (const one of scope.operations)
    for (const id of one.after) expect(order.indexOf(id)).toBeLessThan(order.indexOf(one.id));
  expect(operation(scope, 'open-finish')[0]?.after).toEqual(['shore-load', 'engineer-letter']);
  expect(operation(scope, 'close-finish')[0]?.after).toEqual(['release-shoring']);
  expect(operation(scope, 'inspection-hold')[0]).toMatchObject({ holdPoint: true, after: ['panel-nails'] });
});

/** Every step that must be done before this one begins. */
function before(scope: ReturnType<typeof plan>, operationId: string): Set<string> {
  const byId = new Map(scope.operations.map((one) => [one.id, one]));
  const all = new Set<string>();
  const follow = (id: string) => {
    for (const one of byId.get(id)?.after ?? []) {
      if (!all.has(one)) follow(one);
      all.add(one);
    }
  };
  for (const { id } of operation(scope, operationId)) follow(id);
  return all;
}

test.each([
  ['lead', 'lead-safe-work', 'lead-safe-setup'],
  ['mold', 'mold-cleanup', 'dust-control'],
  ['silica', 'dust-control', 'dust-control'],
])('%s is contained before anything else at the place is opened, shored or cut', (id, repair, containment) => {
  const scope = plan([
    { id: 'sheet', repair: 'panel-replace', extents: [rect(0, 0, 48, 96)] },
    { id: 'rot', repair: 'member-replace', extents: [rect(30, 20, 4, 60)] },
    { id, repair, extents: [] },
  ]);
  expect(operation(scope, containment)[0]?.after).toEqual([]);
  const protecting = ['lead-safe-setup', 'protect-place', 'dust-control'];
  for (const one of scope.operations.filter((step) => !protecting.includes(step.operation)))
    expect(before(scope, one.operation)).toContain(containment);
  expect(scope.criticalPath.filter((step) => protecting.includes(step))).toHaveLength(1);
});

test('containment that takes longest heads the critical path', () => {
  const findings = [panel('a', rect(0, 0, 48, 96)), { id: 'lead', repair: 'lead-safe-work', extents: [] }];
  const slow = (id: string) => (id === 'lead-safe-setup' ? { low: 30, likely: 40, high: 50 } : hour);
  expect(plan(findings, {}, slow).criticalPath.slice(0, 2)).toEqual(['lead-safe-setup', 'open-finish']);
});

test.each(['engineer-letter', 'permit-revision', 'specialist-visit'])(
  'shoring does not wait for %s, all that is opened does',
  (paper) => {
    const scope = plan([
      { id: 'rot', repair: 'member-replace', extents: [rect(30, 20, 4, 60)] },
      { id: 'paper', repair: paper, extents: [] },
    ]);
    expect(before(scope, 'shore-load')).not.toContain(paper);
    for (const opened of ['open-finish', 'remove-member', 'replace-member', 'release-shoring'])
      expect([opened, ...before(scope, opened)]).toContain(paper);
  },
);

test('a hold point that the base contract pays for costs nothing here and still stops what comes after', () => {
  const findings: ScopeFinding[] = [{ id: 'seat', repair: 'seat-restore', extents: [rect(30, 20, 4, 60)] }];
  const usual = plan(findings);
  const scope = plan(findings, { location: { ...wall, existing: ['inspected', 'shored'] } });
  expect(operation(scope, 'inspection-hold')).toMatchObject([
    { holdPoint: true, after: ['positive-connection'], hours: { low: 0, likely: 0, high: 0 } },
  ]);
  expect(operation(scope, 'close-finish')[0]?.after).toEqual(['inspection-hold']);
  expect(operation(scope, 'shore-load')).toMatchObject([{ holdPoint: true, hours: { likely: 0 } }]);
  expect(scope.credits.map((one) => one.operation)).toEqual(['shore-load', 'inspection-hold', 'release-shoring']);
  expect(scope.credits.map((one) => one.hours)).toEqual([1, 1, 1]);
  // Three steps of one hour; the sums are of decimal parts in binary.
  expect(usual.totalHours.likely - scope.totalHours.likely).toBeCloseTo(3, 9);
});

test('declining a finding takes its work out and says when an approved panel would cover it', () => {
  const findings = [panel('a', rect(0, 0, 48, 96)), panel('b', rect(32, 0, 48, 96)), panel('c', rect(100, 0, 20, 96))];
  const scope = plan(findings, { declined: ['b', 'c'] });
  expect(scope.unions).toEqual(plan([panel('a', rect(0, 0, 48, 96))]).unions);
  expect(scope.conflicts.map((one) => one.finding)).toEqual(['b']);
  expect(scope.shares.map((one) => one.finding)).toEqual(['a']);
});

test('what the base contract strips already is credited, not charged', () => {
  const findings = [panel('a', rect(0, 0, 48, 96))];
  const scope = plan(findings, { location: { ...wall, existing: ['stripped'] } });
  expect(operation(scope, 'open-finish')).toEqual([]);
  expect(scope.credits).toMatchObject([{ operation: 'open-finish', hours: 32 }]);
  expect(scope.totalHours.likely).toBe(plan(findings).totalHours.likely - 32);
});

test('an order that work shared by two findings turns into a circle is refused, not stumbled over', () => {
  const at = rect(30, 20, 4, 60);
  const rot: ScopeFinding = { id: 'rot', repair: 'member-replace', extents: [at] };
  // Its hanger comes off before the shared stud is set, and goes on after.
  const hanger: ScopeFinding = { id: 'hanger', repair: 'hanger-replace', extents: [at], after: ['rot'] };
  const tie: ScopeFinding = { id: 'tie', repair: 'plate-tie', extents: [at], after: ['hanger'] };
  const order = plan([rot, hanger, tie]).operations;
  const tied = order.find((one) => one.id === 'plate-tie');
  expect(tied?.after.length).toBeGreaterThan(0);
  const repairIds = repairs.map((one) => one.id);
  for (const a of repairIds)
    for (const b of repairIds) {
      const pair: ScopeFinding[] = [
        { id: 'a', repair: a, extents: [at] },
        { id: 'b', repair: b, extents: [at], after: ['a'] },
      ];
      try {
        plan(pair);
      } catch (error) {
        expect(error).toBeInstanceOf(ScopeError);
      }
    }
}, 30_000);

test.each([
  ['outside the wall', [panel('a', rect(100, 0, 48, 96))], ['findings', 0, 'extents', 0, 'widthIn']],
  ['negative', [panel('a', rect(-1, 0, 48, 96))], ['findings', 0, 'extents', 0, 'xIn']],
  ['no width', [panel('a', rect(0, 0, 0, 96))], ['findings', 0, 'extents', 0, 'widthIn']],
  ['an id twice', [panel('a', rect(0, 0, 9, 9)), panel('a', rect(0, 0, 9, 9))], ['findings', 1, 'id']],
  ['an unknown repair', [{ id: 'a', repair: 'magic', extents: [] }], ['findings', 0, 'repair']],
  ['an amount it has not', [panel('a', rect(0, 0, 9, 9), { gold: 1 })], ['findings', 0, 'quantities', 'gold']],
  [
    'a circle in the order',
    [
      { ...panel('a', rect(0, 0, 9, 9)), after: ['b'] },
      { ...panel('b', rect(0, 0, 9, 9)), after: ['a'] },
    ],
    ['findings', 0, 'after'],
  ],
])('%s is refused where it stands', (_name, findings, path) => {
  try {
    plan(findings as ScopeFinding[]);
    expect.unreachable();
  } catch (error) {
    expect(error).toBeInstanceOf(ScopeError);
    expect((error as ScopeError).issues[0]?.path).toEqual(path);
  }
});

test('a group strips no more than its findings one by one, its shares add up, and their order changes nothing', () => {
  const extent = fc
    .tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 40 }))
    .map(([x, y, size]) => rect(x, y, size, Math.min(size, 30)));
  const finding = fc.record({
    repair: fc.constantFrom(...repairs.map((one) => one.id)),
    extents: fc.array(extent, { maxLength: 3 }),
  });
  fc.assert(
    fc.property(fc.array(finding, { maxLength: 5 }), (list) => {
      const findings = list.map((one, at) => ({ ...one, id: `f${at}` }));
      const scope = plan(findings);
      const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
      expect(sum(scope.shares.map((one) => one.shareHours))).toBeCloseTo(scope.totalHours.likely, 6);
      expect(scope.unions.stripSf).toBeLessThanOrEqual(scope.naive.stripSf + 1e-9);
      const back = plan([...findings].reverse());
      expect(back.totalHours.likely).toBeCloseTo(scope.totalHours.likely, 1);
      expect(back.unions).toEqual(scope.unions);
    }),
  );
});
