import type { BodyIn, KeptLink, KeptSegment, Location, Rectangle, routes, StoredLoadPath } from '@underlath/contract';
import { LINK_ROLES, type LinkRole, type LoadPathKind } from '@underlath/rules';
import { v7 } from 'uuid';
import { Reader, readNumber, writeNumber } from '../desk/numbers.ts';

export type PathBody = Omit<BodyIn<typeof routes.createLoadPath>, 'id'>;

/** A link while it is edited; numbers as they are typed. */
export interface DraftLink {
  key: string;
  name: string;
  role: LinkRole;
  state: KeptLink['state'];
  findingIds: readonly string[];
  photoId: string;
  intendedLb: string;
  tensionLb: string;
  leverFt: string;
  momentAboveFtLb: string;
  resistingFtLb: string;
  at: Rectangle | null;
  parts: { total: string; opened: string; bad: string };
}
export interface DraftSegment {
  key: string;
  name: string;
  fromIn: number | null;
  lengthFt: string;
  heightFt: string;
  /** Usual links it is said to have none of. */
  without: readonly LinkRole[];
  links: readonly DraftLink[];
}
export interface PathDraft {
  name: string;
  kind: LoadPathKind;
  demandLb: string;
  capacitiesFrom: string;
  /** The line that stands on this one; empty while nobody said which. */
  lineAboveId: string;
  floorDepthIn: string;
  segments: readonly DraftSegment[];
  /** Kept as they are: this form does not ask for them. */
  storiesAbove: number | null;
  storyShare: number | null;
  shored: boolean;
}

const INCHES_PER_FOOT = 12;
const none = { total: '', opened: '', bad: '' };

export const newLink = (role: LinkRole, name: string, at: Rectangle | null = null): DraftLink => ({
  key: v7(),
  name,
  role,
  state: 'unseen',
  findingIds: [],
  photoId: '',
  intendedLb: '',
  tensionLb: '',
  leverFt: '',
  momentAboveFtLb: '',
  resistingFtLb: '',
  at,
  parts: none,
});

/** Where the usual links of a wall stand on its elevation, inches; nothing while its size is not known. */
function wallSpots({ widthIn, heightIn }: Pick<Location, 'widthIn' | 'heightIn'>): Partial<Record<string, Rectangle>> {
  if (!widthIn || !heightIn || widthIn < 24 || heightIn < 24) return {};
  const box = (xIn: number, yIn: number, w: number, h: number) => ({ xIn, yIn, widthIn: w, heightIn: h });
  return {
    plate: box(0, heightIn - 3, widthIn, 3),
    panels: box(0, 3, widthIn, heightIn - 6),
    left: box(0, 1.5, 6, 18),
    right: box(widthIn - 6, 1.5, 6, 18),
    bolts: box(6, 0, widthIn - 12, 1.5),
  };
}

/** The links such a line usually has, all of them unseen. */
function usualLinks(kind: LoadPathKind, place: Location): DraftLink[] {
  if (kind === 'gravity-line')
    return [
      newLink('member', 'Joists'),
      newLink('seat', 'Seat or hanger'),
      newLink('beam', 'Beam'),
      newLink('post', 'Post'),
      newLink('footing', 'Footing'),
    ];
  if (kind === 'floor-line') return [newLink('member', 'Member 1'), newLink('member', 'Member 2')];
  const spots = wallSpots(place);
  return [
    newLink('top-plate', 'Top plate', spots.plate),
    newLink('panels', 'Panels and nails', spots.panels),
    newLink('posts', 'End posts'),
    newLink('hold-down', 'Hold-down, left', spots.left),
    newLink('hold-down', 'Hold-down, right', spots.right),
    newLink('sill-bolts', 'Sill bolts', spots.bolts),
    newLink('footing', 'Footing'),
  ];
}

const feet = (inches: number | null): string =>
  inches === null ? '' : writeNumber(Math.round((inches / INCHES_PER_FOOT) * 1000) / 1000);

/** A new line of a kind: one segment as long as the place, with its usual links. */
export function emptyPath(kind: LoadPathKind, place: Location): PathDraft {
  const wall = kind === 'wall-line';
  return {
    name: place.name,
    kind,
    demandLb: '',
    capacitiesFrom: '',
    lineAboveId: '',
    floorDepthIn: '',
    storiesAbove: null,
    storyShare: null,
    shored: false,
    segments: [
      {
        key: v7(),
        name: place.name,
        fromIn: wall && place.widthIn !== null ? 0 : null,
        lengthFt: wall ? feet(place.widthIn) : '',
        heightFt: wall ? feet(place.heightIn) : '',
        without: [],
        links: usualLinks(kind, place),
      },
    ],
  };
}

const draftLink = (link: KeptLink): DraftLink => ({
  key: v7(),
  name: link.name,
  role: link.role,
  state: link.state,
  findingIds: link.findingIds,
  photoId: link.photoId ?? '',
  intendedLb: writeNumber(link.intendedLb),
  tensionLb: writeNumber(link.tensionLb),
  leverFt: writeNumber(link.leverFt),
  momentAboveFtLb: writeNumber(link.momentAboveFtLb),
  resistingFtLb: writeNumber(link.resistingFtLb),
  at: link.at,
  parts: link.parts
    ? { total: String(link.parts.total), opened: String(link.parts.opened), bad: String(link.parts.bad) }
    : none,
});

/** A kept line as it is edited. */
export function draftOfPath(path: StoredLoadPath): PathDraft {
  const { name, kind, capacitiesFrom, storiesAbove, storyShare, shored } = path;
  return {
    name,
    kind,
    capacitiesFrom,
    storiesAbove,
    storyShare,
    shored,
    demandLb: writeNumber(path.demandLb),
    lineAboveId: path.lineAbove?.loadPathId ?? '',
    floorDepthIn: writeNumber(path.lineAbove?.floorDepthIn),
    segments: path.segments.map((segment) => ({
      key: v7(),
      name: segment.name,
      fromIn: segment.fromIn,
      lengthFt: writeNumber(segment.lengthFt),
      heightFt: writeNumber(segment.heightFt),
      without: segment.without ?? [],
      links: segment.links.map(draftLink),
    })),
  };
}

const some = <Name extends string>(name: Name, value: number | null) =>
  value === null ? {} : ({ [name]: value } as Record<Name, number>);

/** The request, and everything that was typed and is no number or missing. */
export function readPath(draft: PathDraft): { body: PathBody; reader: Reader } {
  const reader = new Reader();
  const number = (pointer: string, typed: string, allowed = 'type a number of 0 or more') =>
    reader.number(pointer, readNumber(typed), typed, allowed);
  const segments = draft.segments.map((segment, at): KeptSegment => {
    const here = `/segments/${at}`;
    return {
      name: reader.need(`${here}/name`, segment.name, 'The name of the segment'),
      fromIn: segment.fromIn,
      ...some('lengthFt', number(`${here}/lengthFt`, segment.lengthFt)),
      ...some('heightFt', number(`${here}/heightFt`, segment.heightFt)),
      without: segment.without.filter((role) => !segment.links.some((link) => link.role === role)),
      links: segment.links.map((link, part) => readLink(link, `${here}/links/${part}`, reader, number)),
    };
  });
  const { kind, capacitiesFrom, storiesAbove, storyShare, shored } = draft;
  const body = {
    name: reader.need('/name', draft.name, 'The name of the line'),
    kind,
    capacitiesFrom,
    storiesAbove,
    storyShare,
    shored,
    demandLb: number('/demandLb', draft.demandLb),
    lineAbove: readLineAbove(draft, reader, number),
    segments,
  };
  return { body, reader };
}

type ReadNumber = (pointer: string, typed: string) => number | null;

/** Without the floor between them the story above would lift less than it does, so its depth is asked for. */
function readLineAbove({ lineAboveId, floorDepthIn }: PathDraft, reader: Reader, number: ReadNumber) {
  if (!lineAboveId) return null;
  const pointer = '/lineAbove/floorDepthIn';
  reader.need(pointer, floorDepthIn, 'The depth of the floor between the two lines');
  return { loadPathId: lineAboveId, floorDepthIn: number(pointer, floorDepthIn) ?? 0 };
}

function readLink(link: DraftLink, here: string, reader: Reader, number: ReadNumber): KeptLink {
  const { total, opened, bad } = link.parts;
  const tie = link.role === 'hold-down';
  return {
    name: reader.need(`${here}/name`, link.name, 'The name of the link'),
    role: link.role,
    state: link.state,
    findingIds: link.state === 'findings' ? [...link.findingIds] : [],
    photoId: link.state === 'sound' && link.photoId ? link.photoId : null,
    ...some('intendedLb', number(`${here}/intendedLb`, link.intendedLb)),
    ...(tie && some('tensionLb', number(`${here}/tensionLb`, link.tensionLb))),
    ...(tie && some('leverFt', number(`${here}/leverFt`, link.leverFt))),
    ...(tie && some('momentAboveFtLb', number(`${here}/momentAboveFtLb`, link.momentAboveFtLb))),
    ...(tie && some('resistingFtLb', number(`${here}/resistingFtLb`, link.resistingFtLb))),
    at: link.at,
    parts: total.trim()
      ? {
          total: number(`${here}/parts/total`, total) ?? 0,
          opened: number(`${here}/parts/opened`, opened) ?? 0,
          bad: number(`${here}/parts/bad`, bad) ?? 0,
        }
      : null,
  };
}

/** The roles a link of such a line may have, in the order the load runs. */
export const rolesOf = (kind: LoadPathKind): readonly LinkRole[] => LINK_ROLES[kind];
