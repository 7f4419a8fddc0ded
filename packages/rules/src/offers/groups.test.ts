import { expect, test } from 'vitest';
import { sumCents } from '../kernel/index.ts';
import { starterCostBook } from '../pricing/book/starter-cost-book.data.ts';
import type { EstimateContent } from './document/estimate-content.ts';
import type { PriceableFinding } from './finding.ts';
import { type Group, priceGroup } from './groups.ts';
import { WorkAmountError } from './price-work.ts';
import { sharesOf } from './shares.ts';

const content = (more: Partial<EstimateContent> = {}): EstimateContent => ({
  choices: [{ repairId: 'plate-tie', quantities: {} }],
  manualLines: [],
  overrides: [],
  exclusions: [],
  alternates: [],
  ...more,
});
const finding = (number: number, place: string, saved: EstimateContent | null): PriceableFinding => ({
  id: `finding-${number}`,
  number,
  place: { id: place, name: place, ground: null, existing: [], nailing: { edgeSpacingIn: null, fieldSpacingIn: null } },
  extent: null,
  judged: null,
  repairs: ['plate-tie'],
  saved,
});
const group = (...findings: PriceableFinding[]): Group => ({
  findings,
  declined: [],
  book: { version: 3, book: starterCostBook },
  terms: { decreaseReturns: false, dayKind: 'working' },
});
const total = (...findings: PriceableFinding[]): number => priceGroup(group(...findings)).scope.totalCents;

test('work that two findings of one place share is paid once, and their shares add up to the total', () => {
  const [one, other] = [finding(1, 'North wall', content()), finding(2, 'North wall', content())];
  const { scope, alone } = priceGroup(group(one, other));
  expect(scope.totalCents).toBeLessThan(total(one) + total(other));
  expect(sumCents(sharesOf(scope, [one.id, other.id], alone))).toBe(scope.totalCents);
  expect(scope.costBookVersion).toBe(3);
});

test('the order of the findings changes no total', () => {
  const [one, other] = [finding(1, 'North wall', content()), finding(2, 'Porch', content())];
  expect(total(one, other)).toBe(total(other, one));
});

test('with work in two places each line says where, in Spanish by the finding where the place has no Spanish name', () => {
  const { scope } = priceGroup({
    ...group(finding(1, 'North wall', content()), finding(2, 'Porch', content())),
    placesEs: { Porch: 'Porche' },
  });
  const ties = scope.lines.filter(({ operation }) => operation === 'plate-tie').map(({ title }) => title);
  expect(ties.map(({ en }) => /\((.*)\)$/.exec(en)?.[1])).toEqual(['North wall', 'Porch']);
  expect(ties.map(({ es }) => /\((.*)\)$/.exec(es)?.[1])).toEqual(['hallazgo 1', 'Porche']);
});

test('a finding without a saved estimate brings nothing', () => {
  const saved = finding(1, 'North wall', content());
  expect(total(saved, finding(2, 'Porch', null))).toBe(total(saved));
});

test('another way tells what it would change in the price of the whole group, and is in no sum', () => {
  const name = { en: 'Leave the old plate', es: 'Dejar la solera vieja' };
  const line = { title: 'A word from the engineer', quantity: 1, unit: 'each', unitCents: 10_000, why: 'Asked' };
  const way = { kind: 'repair' as const, name, choices: [], manualLines: [line], overrides: [] };
  const own = finding(1, 'North wall', content({ alternates: [way] }));
  const { scope, alternates } = priceGroup(group(own));
  const other = total(finding(1, 'North wall', content({ choices: [], manualLines: [line] })));
  expect(scope.totalCents).toBe(total(finding(1, 'North wall', content())));
  expect(alternates.get(own.id)).toEqual([
    { kind: 'repair', name, what: [{ en: line.title, es: '' }], differenceCents: other - scope.totalCents },
  ]);
});

test('a net decrease keeps its overhead and profit unless the contract gives them back', () => {
  const credit = {
    title: 'Tile not laid',
    kind: 'credit' as const,
    quantity: 1,
    unit: 'each',
    unitCents: 10_000,
    why: 'No',
  };
  const one = group(finding(1, 'North wall', content({ choices: [], manualLines: [credit] })));
  expect(priceGroup(one).scope.totalCents).toBe(-10_000);
  const terms = { ...one.terms, decreaseReturns: true };
  expect(priceGroup({ ...one, terms }).scope.totalCents).toBeLessThan(-10_000);
});

test('a line typed by hand that comes to more than a price may be is named', () => {
  const line = { title: 'All of it', quantity: 100_000, unit: 'each', unitCents: 2_000_000, why: 'A slip' };
  const small = { ...line, quantity: 1, unitCents: 100 };
  const price = () => total(finding(1, 'North wall', content({ choices: [], manualLines: [small, line] })));
  expect(price).toThrow(WorkAmountError);
  expect(price).toThrow(expect.objectContaining({ manualLine: 1 }));
});
