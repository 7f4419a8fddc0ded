import { type Source, type Text, text } from '../../kernel/index.ts';

/** A named limit of slope: rise over run. None of them is a code or a structural limit. */
export interface SlopeRule {
  readonly id: string;
  readonly title: Text;
  readonly riseIn: number;
  readonly runIn: number;
  readonly source: Source;
}

const source = (id: string, title: string, edition: string, section: string, basis: Source['basis']): Source => ({
  id,
  title,
  edition,
  section,
  basis,
});
const AS_QUOTED = 'as quoted in trade answers';
const REMODEL = source(
  'remodel-guideline-level',
  'Home builders performance guideline, floors out of level',
  AS_QUOTED,
  '1/2 in in 20 ft',
  'second-hand',
);
const UNEVEN = source(
  'floor-unevenness',
  'Remodeler performance standard, uneven floors',
  AS_QUOTED,
  '1/4 in in 32 in',
  'second-hand',
);
const WARRANTY = source(
  'warranty-subfloor',
  'State-style warranty standards, subfloor',
  'as reprinted in a builder binder',
  '3/8 in in 32 in',
  'second-hand',
);
const FORUM = source(
  'forum-floor-claims',
  'Claims of state floor standards seen only in forums',
  'none',
  'floor slope',
  'common-practice',
);
const BRE = source(
  'bre-digest-475',
  'BRE Digest 475, tilt of low-rise buildings',
  'from abstracts',
  'notice and remedy',
  'second-hand',
);
const TRIGGER = source('slope-trigger-240', 'Slope at which many look closer', 'none', '1/240', 'common-practice');
const PLUMB = source('wall-plumb', 'Wall framing out of plumb', 'none', '1/4 in in 8 to 10 ft', 'common-practice');

/** From the strictest to the laxest for floors, then walls. */
export const SLOPE_RULES = [
  {
    id: 'half-in-20-ft',
    title: text('1/2 in in 20 ft (1/480)', '1/2 in en 20 ft (1/480)'),
    riseIn: 0.5,
    runIn: 240,
    source: REMODEL,
  },
  {
    id: 'half-in-12-ft',
    title: text('1/2 in in 12 ft (1/288)', '1/2 in en 12 ft (1/288)'),
    riseIn: 0.5,
    runIn: 144,
    source: FORUM,
  },
  {
    id: 'three-sixteenths-in-4-ft',
    title: text('3/16 in in 4 ft (1/256)', '3/16 in en 4 ft (1/256)'),
    riseIn: 0.1875,
    runIn: 48,
    source: FORUM,
  },
  {
    id: 'noticeable',
    title: text('Begins to be noticed (1/250)', 'Empieza a notarse (1/250)'),
    riseIn: 1,
    runIn: 250,
    source: BRE,
  },
  {
    id: 'trigger-1-240',
    title: text('Look closer (1/240)', 'Mirar mejor (1/240)'),
    riseIn: 1,
    runIn: 240,
    source: TRIGGER,
  },
  {
    id: 'quarter-in-32-in',
    title: text('1/4 in in 32 in (1/128)', '1/4 in en 32 in (1/128)'),
    riseIn: 0.25,
    runIn: 32,
    source: UNEVEN,
  },
  {
    id: 'remedial',
    title: text('Needs remedy (1/100)', 'Requiere corrección (1/100)'),
    riseIn: 1,
    runIn: 100,
    source: BRE,
  },
  {
    id: 'three-eighths-in-32-in',
    title: text('3/8 in in 32 in (1/85)', '3/8 in en 32 in (1/85)'),
    riseIn: 0.375,
    runIn: 32,
    source: WARRANTY,
  },
  {
    id: 'wall-plumb',
    title: text('Wall: 1/4 in in 10 ft (1/480)', 'Pared: 1/4 in en 10 ft (1/480)'),
    riseIn: 0.25,
    runIn: 120,
    source: PLUMB,
  },
  {
    id: 'wall-plumb-8-ft',
    title: text('Wall: 1/4 in in 8 ft (1/384)', 'Pared: 1/4 in en 8 ft (1/384)'),
    riseIn: 0.25,
    runIn: 96,
    source: PLUMB,
  },
] as const satisfies readonly SlopeRule[];

export type SlopeRuleId = (typeof SLOPE_RULES)[number]['id'];

/** Slope from which the tilt calls for remedy, and with it for an engineer. */
export const REMEDIAL_SLOPE = 1 / 100;
export const TILT_SOURCE = BRE;
