import type { Location } from '@underlath/contract';
import { expect, test } from 'vitest';
import { placeTree } from '../../shared/places/place-tree.ts';
import { placesToMakeSafe } from './to-make-safe.ts';

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

test('what is to be made safe is the girder, not the story around it', () => {
  expect(placesToMakeSafe(placeTree(places)).map((each) => each.id)).toEqual(['girder']);
});

test('a finding on the story itself names the story', () => {
  expect(placesToMakeSafe(placeTree([place('first', null, { worst: 'make-safe' })])).map((each) => each.id)).toEqual([
    'first',
  ]);
});
