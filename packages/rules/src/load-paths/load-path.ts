import { type Source, type Text, text } from '../kernel/index.ts';

export const LOAD_PATH_KINDS = ['wall-line', 'gravity-line', 'floor-line'] as const;
export type LoadPathKind = (typeof LOAD_PATH_KINDS)[number];

/** What each kind of line is made of, in the order the load runs down. */
export const LINK_ROLES = {
  'wall-line': ['top-plate', 'panels', 'posts', 'hold-down', 'sill-bolts', 'footing'],
  'gravity-line': ['member', 'hanger', 'seat', 'beam', 'post', 'footing'],
  'floor-line': ['member'],
} as const;
export type LinkRole = (typeof LINK_ROLES)[LoadPathKind][number];

export const LINK_STATES = ['unseen', 'sound', 'findings'] as const;
export type LinkState = (typeof LINK_STATES)[number];

/** Share 0..1 of its intended strength that a finding leaves; `mode` names the way of failing it belongs to. */
export type ShareLeft = number | { readonly share: number; readonly mode: string };

/** One part the load passes through. Loads in lb of the path's own load, lengths in ft, moments in ft-lb. */
export interface Link {
  readonly name: string;
  readonly role: LinkRole;
  readonly state: LinkState;
  /** What each of its findings leaves; several of one mode multiply, of different modes the smallest counts. */
  readonly remaining?: readonly ShareLeft[] | undefined;
  /** Findings beside these that give no share left. */
  readonly unmeasured?: number | undefined;
  readonly intendedLb?: number | undefined;
  /** Hold-downs: tension it was meant to take, and its distance from the far end of the segment. */
  readonly tensionLb?: number | undefined;
  readonly leverFt?: number | undefined;
  /** Hold-downs: moment of the stories above about the foot of the segment. */
  readonly momentAboveFtLb?: number | undefined;
  /** Hold-downs: moment of the dead load that keeps the end down, already reduced by its factor. */
  readonly resistingFtLb?: number | undefined;
}

/** A chain of links in series: worth its weakest link. */
export interface Segment {
  readonly name: string;
  readonly lengthFt?: number | undefined;
  readonly heightFt?: number | undefined;
  /** Usual links that somebody says this chain has none of, such as a beam where joists land on the foundation. */
  readonly without?: readonly LinkRole[] | undefined;
  readonly links: readonly Link[];
}

/** A line of segments side by side: worth their sum. */
export interface LoadPath {
  readonly kind: LoadPathKind;
  /** Full stories above; the roof is not one. Left out, some may stand there. */
  readonly storiesAbove?: number | undefined;
  /** Share 0..1 of the story's resistance this line was meant to give. */
  readonly storyShare?: number | undefined;
  readonly shored?: boolean | undefined;
  /** The engineer's load on the line, lb. */
  readonly demandLb?: number | undefined;
  readonly segments: readonly Segment[];
}

export const LOAD_PATH_KIND_WORDS: Record<LoadPathKind, Text> = {
  'wall-line': text('Wall line', 'Línea de pared'),
  'gravity-line': text('Gravity line', 'Línea de gravedad'),
  'floor-line': text('Floor line', 'Línea de piso'),
};

export const LINK_ROLE_WORDS: Record<LinkRole, Text> = {
  'top-plate': text('Top plate', 'Solera superior'),
  panels: text('Panels and nails', 'Paneles y clavos'),
  posts: text('End posts', 'Postes extremos'),
  'hold-down': text('Hold-down', 'Anclaje de extremo'),
  'sill-bolts': text('Sill bolts', 'Pernos de solera'),
  footing: text('Footing', 'Cimiento'),
  member: text('Member', 'Pieza'),
  hanger: text('Hanger', 'Colgador'),
  seat: text('Seat', 'Asiento'),
  beam: text('Beam', 'Viga'),
  post: text('Post', 'Poste'),
};

/** How a line is added up; nobody has printed it for a wall with failed links. */
export const CHAIN_SOURCE: Source = {
  id: 'load-path.chain',
  title: 'A chain is worth its weakest link, a line the sum of its segments',
  edition: 'practice',
  section: 'load paths',
  basis: 'common-practice',
};
