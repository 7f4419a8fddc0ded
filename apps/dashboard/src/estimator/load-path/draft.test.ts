import type { Location } from '@underlath/contract';
import { expect, test } from 'vitest';
import { emptyPath, newLink, readPath } from './draft.ts';

const wall: Location = {
  id: 'w',
  version: 1,
  projectId: 'p',
  parentId: null,
  kind: 'wall',
  name: 'East wall',
  position: 0,
  widthIn: 96,
  heightIn: 97.125,
  framingSpacingIn: 16,
  memberDepthIn: 3.5,
  storiesAbove: 1,
  openings: [],
  existing: [],
  edgeNailSpacingIn: null,
  fieldNailSpacingIn: null,
  worst: null,
  openCount: 0,
};

test('a new wall line is as long as the wall, and every usual link is unseen', () => {
  const { body, reader } = readPath(emptyPath('wall-line', wall));
  expect(reader.errors).toEqual([]);
  const [segment] = body.segments;
  expect(segment).toMatchObject({ fromIn: 0, lengthFt: 8, heightFt: 8.094 });
  expect(segment?.links.map(({ role }) => role)).toEqual([
    'top-plate',
    'panels',
    'posts',
    'hold-down',
    'hold-down',
    'sill-bolts',
    'footing',
  ]);
  expect(segment?.links.every(({ state }) => state === 'unseen')).toBe(true);
  for (const { at } of segment?.links ?? [])
    if (at) expect([at.xIn + at.widthIn <= 96, at.yIn + at.heightIn <= 97.125]).toEqual([true, true]);
});

test('what is typed wrongly is named where it stands, and a photo or findings of another state are left out', () => {
  const draft = emptyPath('gravity-line', wall);
  const [segment] = draft.segments;
  const [joists, ...others] = segment?.links ?? [];
  if (!segment || !joists) throw new Error('a gravity line has links');
  const links = [{ ...joists, name: ' ', intendedLb: 'a lot', findingIds: ['f'], photoId: 'p' }, ...others];
  const { body, reader } = readPath({ ...draft, segments: [{ ...segment, links }] });
  expect(reader.errors.map(({ pointer }) => pointer)).toEqual([
    '/segments/0/links/0/name',
    '/segments/0/links/0/intendedLb',
  ]);
  expect(body.segments[0]?.links[0]).toMatchObject({ findingIds: [], photoId: null });
});

test('the line that stands on this one asks for the floor between them, and neither is kept without the other', () => {
  const draft = emptyPath('wall-line', wall);
  expect(readPath(draft).body.lineAbove).toBeNull();
  const named = { ...draft, lineAboveId: 'upstairs' };
  expect(readPath(named).reader.errors).toEqual([
    { pointer: '/lineAbove/floorDepthIn', detail: 'The depth of the floor between the two lines is missing.' },
  ]);
  expect(readPath({ ...named, floorDepthIn: '11.25' }).body.lineAbove).toEqual({
    loadPathId: 'upstairs',
    floorDepthIn: 11.25,
  });
  expect(readPath({ ...draft, floorDepthIn: '11.25' }).body.lineAbove).toBeNull();
});

test('a hold-down keeps the moments typed for it, and a role that is listed is not also missing', () => {
  const draft = emptyPath('gravity-line', wall);
  const [segment] = draft.segments;
  if (!segment) throw new Error('a line has a segment');
  const tie = { ...newLink('hold-down', 'Tie'), momentAboveFtLb: '16,000', resistingFtLb: '7500' };
  const { body } = readPath({
    ...draft,
    segments: [{ ...segment, without: ['beam', 'hanger'], links: [...segment.links, tie] }],
  });
  expect(body.segments[0]?.links.at(-1)).toMatchObject({ momentAboveFtLb: 16_000, resistingFtLb: 7500 });
  expect(body.segments[0]?.without).toEqual(['hanger']);
});
