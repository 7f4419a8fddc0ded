import type { Location } from '@underlath/contract';
import { expect, test } from 'vitest';
import { flatten, placePath, placesAround, placeTree, within } from './place-tree.ts';

function place(id: string, parentId: string | null, position = 0): Location {
  return {
    id,
    parentId,
    position,
    version: 1,
    projectId: 'p',
    kind: 'room',
    name: id,
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
  };
}

const house = [
  place('wall', 'room'),
  place('first', null, 1),
  place('second', null, 0),
  place('room', 'first'),
  place('lost', 'gone', 2),
];

test('places stand under their parents, in order of position', () => {
  expect(flatten(placeTree(house)).map(({ place, depth }) => `${depth} ${place.id}`)).toEqual([
    '0 second',
    '0 first',
    '1 room',
    '2 wall',
    '0 lost',
  ]);
});

test('a place knows the places around it, outermost first', () => {
  expect(placesAround(place('wall', 'room'), house).map((each) => each.id)).toEqual(['first', 'room']);
});

test('everything inside a place is found, and nothing beside it', () => {
  expect([...within('first', house)].sort()).toEqual(['first', 'room', 'wall']);
});

test('a place is named from the outside in, and a loop in the tree ends', () => {
  expect(placePath(house, 'wall').map((each) => each.id)).toEqual(['first', 'room', 'wall']);
  const loop = [place('a', 'b'), place('b', 'a')];
  expect(placePath(loop, 'a').map((each) => each.id)).toEqual(['b', 'a']);
});
