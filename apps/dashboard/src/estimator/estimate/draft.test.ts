import type { Estimate } from '@underlath/contract';
import { describe, expect, test } from 'vitest';
import {
  draftOf,
  type EstimateDraft,
  emptyManual,
  withEdits,
  withoutOverride,
  withPasted,
  withRepair,
  withTakenUp,
} from './draft.ts';
import { byHandWords, lineError, lineRows } from './line-columns.ts';
import { previewBody, readEstimate } from './read-draft.ts';

const text = (words: string) => ({ en: words, es: words });
const rates = {
  hoursPerUnit: 0.015,
  materialCentsPerUnit: 12,
  equipmentCentsPerUnit: 0,
  subcontractCentsPerUnit: 0,
  otherCentsPerUnit: 0,
};
const line = {
  name: 'Nails in the tie',
  operation: 'tie-nails',
  title: text('Nails in the tie'),
  findingIds: [],
  quantity: 16,
  unit: 'each',
  hours: 0.24,
  laborCents: 1259,
  materialCents: 240,
  taxCents: 19,
  equipmentCents: 0,
  subcontractCents: 0,
  otherCents: 0,
  totalCents: 1518,
  steps: [],
  rates,
};
const scope: Estimate['scope'] = {
  currency: 'USD',
  costBookVersion: 1,
  placeholder: false,
  lines: [line],
  gaps: [],
  subtotalCents: 1518,
  overheadPct: 18,
  overheadCents: 273,
  profitPct: 10,
  profitCents: 179,
  stacking: 'stacked',
  totalCents: 1970,
  hours: 0.24,
};
const draft: EstimateDraft = {
  choices: [{ repairId: 'plate-tie', quantities: {} }],
  lines: [],
  manual: [],
  exclusions: [],
  alternates: [],
};
const typed = (from: EstimateDraft, column: string, value: string, shown = scope) =>
  withEdits(from, lineRows(from, shown), [{ key: 'line:tie-nails', column, value }]);
const pointers = (from: EstimateDraft) => readEstimate(from).problem?.errors?.map(({ pointer }) => pointer);

describe('a cell typed over a line', () => {
  test('sets it by hand, and is saved once it has a reason', () => {
    const set = typed(draft, 'quantity', '20');
    expect(pointers(set)).toEqual(['/overrides/0/why']);
    const reasoned = typed(set, 'why', 'Counted again');
    expect(readEstimate(reasoned)).toMatchObject({
      problem: null,
      body: { overrides: [{ operation: 'tie-nails', quantity: 20, why: 'Counted again' }] },
    });
    expect(byHandWords(lineRows(reasoned, scope)[0] ?? { key: '' })).toBe('quantity was 16, is 20: Counted again');
  });

  test('is the measured or the book’s again when it is emptied or typed as it was, and its reason goes too', () => {
    const set = typed(typed(draft, 'material', '$1.50'), 'why', 'From the receipt');
    expect(set.lines).toEqual([{ key: 'tie-nails', material: '1.50', why: 'From the receipt' }]);
    expect(typed(set, 'material', '').lines).toEqual([]);
    expect(typed(set, 'material', '0.12').lines).toEqual([]);
    expect(withoutOverride(set, 'tie-nails').lines).toEqual([]);
  });

  test('is known as set by hand while the price that is shown holds it already', () => {
    const set = typed(typed(draft, 'quantity', '20'), 'why', 'Counted again');
    const overrides = [{ field: 'quantity' as const, was: 16, is: 20, why: 'Counted again' }];
    const priced = { ...scope, lines: [{ ...line, quantity: 20, overrides }] };
    expect(lineRows(set, priced)[0]).toMatchObject({ quantity: '20', 'base.quantity': '16' });
    expect(typed(set, 'quantity', '16', priced).lines).toEqual([]);
  });

  test('that cannot be read says so in its cell, and the price is not asked for', () => {
    const set = typed(typed(draft, 'hours', 'many'), 'why', 'So');
    const read = readEstimate(set);
    expect(previewBody(read)).toBeNull();
    const [row] = lineRows(set, scope);
    expect(row && lineError(read.problem, set, { row, column: 'hours', at: '' })).toContain('“many” cannot be read');
    expect(pointers(typed(typed(draft, 'quantity', '-1'), 'why', 'So'))).toEqual(['/overrides/0/quantity']);
  });

  test('takes the place of a quantity that was kept with one repair', () => {
    const kept = {
      ...draft,
      choices: [{ repairId: 'plate-tie', quantities: { 'tie-nails': { value: 18, why: 'x' } } }],
    };
    expect(lineRows(kept, scope)[0]).toMatchObject({ quantity: '18', why: 'x' });
    const set = typed(kept, 'quantity', '20');
    expect(set.choices).toEqual(draft.choices);
    expect(set.lines).toEqual([{ key: 'tie-nails', quantity: '20' }]);
  });
});

test('a price is looked at while a reason is still to be given', () => {
  const body = previewBody(readEstimate(typed(draft, 'quantity', '20')));
  expect(body?.overrides).toEqual([{ operation: 'tie-nails', quantity: 20, why: 'No reason given yet' }]);
});

test('a reason without a figure is pointed at where it stands', () => {
  const set = typed(draft, 'why', 'Because');
  const [row] = lineRows(set, scope);
  expect(row && lineError(readEstimate(set).problem, set, { row, column: 'why', at: '' })).toContain(
    'A reason alone changes nothing',
  );
});

test('what was typed over the lines of a repair goes with the repair', () => {
  const set = typed(draft, 'quantity', '20');
  expect(withRepair(set, 'plate-tie', false).lines).toEqual([]);
  expect(withRepair(set, 'engineer-letter', true).lines).toHaveLength(1);
});

test('a rate the book lacks is an empty cell that can be typed, and never zero', () => {
  const gap = {
    operation: 'tie-nails',
    title: text('Nails in the tie'),
    unit: 'each',
    findingIds: [],
    quantity: 16,
    lacks: ['material' as const],
  };
  const lacking = { ...scope, lines: [], gaps: [gap] };
  expect(lineRows(draft, lacking)[0]).toMatchObject({ type: 'gap', material: '', total: 'no rate', quantity: '16' });
  expect(typed(draft, 'material', '0.15', lacking).lines).toEqual([{ key: 'tie-nails', material: '0.15' }]);
  const noItem = { ...lacking, gaps: [{ ...gap, lacks: ['item' as const] }] };
  expect(lineRows(draft, noItem)[0]).toMatchObject({ type: 'no-item' });
});

test('rows pasted into a line of one’s own fill it and add the others below', () => {
  const first = emptyManual('charge');
  const pasted = withPasted([first], first.key, 'name', [
    ['Crane', 'charge', '0.5', 'day', '1,234.56', 'No other access'],
    ['Vent', 'Credit', '1', 'each', '80', 'Left as it is', 'Ventilación'],
  ]);
  expect(pasted[0]).toMatchObject({ key: first.key, name: 'Crane', other: '1,234.56', why: 'No other access' });
  expect(readEstimate({ ...draft, manual: pasted }).body.manualLines[1]).toEqual({
    title: 'Vent',
    titleEs: 'Ventilación',
    kind: 'credit',
    quantity: 1,
    unit: 'each',
    unitCents: 8000,
    why: 'Left as it is',
  });
});

test('a credit below nothing, a kind there is not, half an exclusion and a way without work are pointed at', () => {
  const row = { ...emptyManual('credit'), name: 'a', other: '-5', why: 'b' };
  expect(pointers({ ...draft, manual: [row] })).toEqual(['/manualLines/0/unitCents']);
  expect(pointers({ ...draft, manual: [{ ...row, kind: 'gift', other: '5' }] })).toEqual(['/manualLines/0/kind']);
  expect(pointers({ ...draft, exclusions: [{ key: 'a', en: 'Paint', es: ' ' }] })).toEqual(['/exclusions/0/es']);
  const way = { key: 'a', kind: 'better' as const, en: 'x', es: 'x', choices: [], lines: [], manual: [] };
  expect(pointers({ ...draft, alternates: [way] })).toEqual(['/alternates/0']);
});

describe('another way', () => {
  const lines = [{ key: 'stud-work', hours: '2', why: 'Tight' }];
  const way = {
    ...{ key: 'way', kind: 'better' as const, en: 'Sister it', es: 'Reforzarlo' },
    ...{ choices: [{ repairId: 'stud-sister', quantities: {} }], lines, manual: [] },
  };

  test('that becomes the repair takes its lines along and leaves the old repair in its place', () => {
    const set = typed(typed({ ...draft, alternates: [way] }, 'quantity', '20'), 'why', 'Counted again');
    const taken = withTakenUp(set, 'way');
    expect(taken).toMatchObject({ choices: way.choices, lines });
    expect(taken.alternates).toMatchObject([{ kind: 'repair', choices: set.choices, lines: set.lines }]);
    const [was] = taken.alternates;
    expect(was?.en).toBe('Tie the cut plate with metal');
    expect(withTakenUp(taken, was?.key ?? '')).toMatchObject({ choices: set.choices, lines: set.lines });
  });

  test('that becomes the repair where there was none leaves nothing behind', () => {
    const taken = withTakenUp({ ...draft, choices: [], alternates: [way] }, 'way');
    expect(taken).toMatchObject({ choices: way.choices, alternates: [] });
  });

  test('tells a figure without a reason where it stands', () => {
    const bare = { ...way, lines: [{ key: 'stud-work', hours: '2' }] };
    expect(pointers({ ...draft, alternates: [bare] })).toEqual(['/alternates/0/overrides/0/why']);
    const lone = { ...way, lines: [{ key: 'stud-work', why: 'So' }] };
    expect(pointers({ ...draft, alternates: [lone] })).toEqual(['/alternates/0/lines/stud-work/why']);
    expect(previewBody(readEstimate({ ...draft, alternates: [bare] }))?.alternates[0]?.overrides).toEqual([
      { operation: 'stud-work', hoursPerUnit: 2, why: 'No reason given yet' },
    ]);
  });
});

test('what was saved comes back as it was', () => {
  const content = {
    choices: draft.choices.map((choice) => ({ ...choice })),
    manualLines: [
      {
        title: 'Tile',
        titleEs: 'Azulejo',
        kind: 'allowance' as const,
        quantity: 1,
        unit: 'each',
        unitCents: 50_000,
        why: 'x',
      },
    ],
    overrides: [{ operation: 'tie-nails', hoursPerUnit: 0.5, otherCentsPerUnit: 1234, why: 'y' }],
    exclusions: [text('Painting')],
    alternates: [{ kind: 'better' as const, name: text('Strap'), choices: [], manualLines: [], overrides: [] }],
  };
  const estimate: Estimate = {
    ...{ findingId: 'f', findingVersion: 1, saved: true, options: [], scope, alternatePrices: [] },
    ...content,
    alternates: [{ ...content.alternates[0], manualLines: content.manualLines } as Estimate['alternates'][number]],
  };
  const { alternates: _ways, ...rest } = readEstimate(draftOf(estimate)).body;
  const { alternates: _others, ...saved } = content;
  expect(rest).toEqual(saved);
  expect(readEstimate(draftOf(estimate)).body.alternates).toEqual(estimate.alternates);
});
