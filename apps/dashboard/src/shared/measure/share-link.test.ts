import { checks, findCheck } from '@underlath/rules/all-checks';
import { describe, expect, test } from 'vitest';
import { askedInputs, type Inputs } from './form.ts';
import { fromSearch, toSearch } from './share-link.ts';

const rod = findCheck('anchor.thread-engagement');
const plate = findCheck('cut.top-plate');
if (!rod || !plate) throw new Error('The checks these tests use are gone');

/** As a browser hands the address on. */
const throughAddress = (words: Record<string, string>) =>
  Object.fromEntries(new URLSearchParams(new URLSearchParams(words).toString()));

test('a link says what was measured in words a person can read', () => {
  const shared = { inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.125, rule: 'flush' }, context: {} };
  expect(new URLSearchParams(toSearch(rod, shared)).toString()).toBe(
    'diameterIn=0.625&nut=hex&projectionIn=-0.125&rule=flush',
  );
});

describe('every worked case comes back from its own link', async () => {
  for (const check of checks) {
    const { cases } = await check.cases();
    test(check.id, () => {
      for (const { inputs, edition, situation } of cases) {
        const asked = askedInputs(check.inputs, check.read(inputs).inputs as Inputs);
        const words = toSearch(check, { inputs: asked, edition, context: situation ?? {} });
        const { shared, troubles } = fromSearch(check, throughAddress(words), 'en');
        expect(troubles).toEqual([]);
        expect(check.read(shared.inputs).inputs).toEqual(check.read(asked).inputs);
        expect([shared.edition, shared.context]).toEqual([edition, situation ?? {}]);
      }
    });
    test(`${check.id} asks for nothing under a name that means something else in a link`, () => {
      expect(Object.keys(check.inputs).filter((name) => ['by', 'at', 'q'].includes(name))).toEqual([]);
    });
  }
});

test('what a link names wrongly is said, and the rest is used', () => {
  const { shared, troubles } = fromSearch(
    rod,
    { diameterIn: '0.625', nut: 'hexx', projectionIn: 'short', colour: 'red', by: 'asme-1890', 'at.shored': 'perhaps' },
    'en',
  );
  expect(shared).toEqual({ inputs: { diameterIn: 0.625 }, edition: undefined, context: {} });
  expect(troubles).toHaveLength(5);
  for (const words of ['hexx', 'short', 'colour', 'asme-1890', 'perhaps'])
    expect(troubles.some((trouble) => trouble.includes(words))).toBe(true);
});

test('the rest of a link is read in Spanish to who reads Spanish', () => {
  expect(fromSearch(rod, { by: 'asme-1890' }, 'es').troubles[0]).toMatch(/^Edición/);
});

test('a link cannot reach past the fields of the check', () => {
  for (const name of ['__proto__.x', 'constructor', 'tie.__proto__', 'tie', 'cutIn.more', 'tie.thicknessIn.0'])
    expect(fromSearch(plate, { [name]: '1' }, 'en').shared.inputs, name).not.toHaveProperty('cutIn');
  const list = findCheck('movement.shrinkage');
  if (!list) throw new Error('movement.shrinkage is gone');
  const { troubles } = fromSearch(list, { 'members.999999999.name': 'joist' }, 'en');
  expect(troubles).toHaveLength(1);
});

test('the place around it comes along', () => {
  const context = { storiesAbove: 2, shored: false, occupiedBelow: true } as const;
  const words = toSearch(rod, { inputs: {}, context });
  expect(words).toMatchObject({ 'at.storiesAbove': '2', 'at.shored': 'no', 'at.occupiedBelow': 'yes' });
  expect(fromSearch(rod, words, 'en').shared.context).toEqual(context);
});
