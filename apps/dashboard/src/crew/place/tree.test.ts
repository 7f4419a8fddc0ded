import type { Location } from '@underlath/contract';
import { expect, test } from 'vitest';
import { placePath, placesToMakeSafe, placeTree } from './tree.ts';

const place = (id: string, parentId: string | null, over: Partial<Location> = {}): Location => ({
  id,
  version: 1,
  projectId: 'p',
  parentId,
  kind: 'wall',
  name: id,
  position: 0,
  widthIn: null,
  heightIn: null,
  framingSpacingIn: null,
  memberDepthIn: null,
  storiesAbove: 0,
  openings: [],
  existing: [],
  edgeNailSpacingIn: null,
  fieldNailSpacingIn: null,
  worst: null,
  openCount: 0,
  ...over,
});

const places = [
  place('east', 'first', { position: 2, worst: 'engineer' }),
  place('girder', 'first', { position: 1, worst: 'make-safe' }),
  place('first', null, { kind: 'story', worst: 'make-safe' }),
  place('lost', 'nowhere'),
];

test('places stand in their own order under their story', () => {
  expect(placeTree(places).map((node) => [node.place.id, node.inside.map((inner) => inner.place.id)])).toEqual([
    ['first', ['girder', 'east']],
    ['lost', []],
  ]);
});

test('what is to be made safe is the girder, not the story around it', () => {
  expect(placesToMakeSafe(placeTree(places)).map((each) => each.id)).toEqual(['girder']);
});

test('a finding on the story itself names the story', () => {
  expect(placesToMakeSafe(placeTree([place('first', null, { worst: 'make-safe' })])).map((each) => each.id)).toEqual([
    'first',
  ]);
});

test('a place is named from the outside in, and a loop in the tree ends', () => {
  expect(placePath(places, 'east').map((each) => each.id)).toEqual(['first', 'east']);
  const loop = [place('a', 'b'), place('b', 'a')];
  expect(placePath(loop, 'a').map((each) => each.id)).toEqual(['b', 'a']);
});
