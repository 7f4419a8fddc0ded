import { atMost, type Complete, type Source } from '../../kernel/index.ts';
import { SPECIFIC_GRAVITY } from '../../standards/nds-2018/species.data.ts';
import { ASPECT_LIMIT, FULL_STRENGTH_ASPECT, type ShearWallEdition } from '../../standards/sdpws-common/edition.ts';
import {
  EDGE_SPACINGS_IN,
  PANEL_NAILING_SOURCE,
  type PanelRow,
  SPECIES_FACTOR_SOURCE,
  STUD_LIMIT_IN,
  speciesFactor,
  THIN_PANEL_SOURCE,
  THIN_PANEL_STUDS_IN,
  thinPanelRow,
} from '../../standards/sdpws-common/shear-walls.data.ts';
import {
  UNBLOCKED_ASPECT_LIMIT,
  UNBLOCKED_HEIGHT_LIMIT_FT,
  UNBLOCKED_SOURCE,
  unblockedFactor,
} from '../../standards/sdpws-common/unblocked.data.ts';
import type { inputs } from './panel-capacity.inputs.ts';

export type PanelInputs = Complete<typeof inputs>;

/** What keeps a wall out of the standard altogether, so that it counts for nothing. */
export type Bar = 'aspect' | 'height' | 'studs' | 'field-nails' | undefined;

/** The strength of a wall and what it is made of. Plf; the shares multiply. */
export interface Strength {
  readonly nominalPlf: number;
  readonly gravity: number;
  readonly speciesFactor: number;
  /** Height over length. */
  readonly aspect: number;
  readonly aspectFactor: number;
  readonly unblockedFactor: number;
  readonly insideFactor: number;
  readonly designShare: number;
  readonly designPlf: number;
  readonly bar: Bar;
  /** The row used stands for a thicker panel. */
  readonly asThicker: boolean;
}

/** Specific gravity of the framing: the one given, or that of its species. */
function framingOf({ framingG, species }: PanelInputs): { gravity: number; source?: Source } {
  if (framingG !== undefined) return { gravity: framingG };
  if (species === undefined) throw new RangeError('Neither species nor specific gravity; the schema asks for one');
  return SPECIFIC_GRAVITY[species];
}

function barOf(given: PanelInputs, unblocked: number | undefined): Bar {
  const { blocked, heightFt, lengthFt, studSpacingIn = 0 } = given;
  if (!atMost(heightFt / lengthFt, blocked ? ASPECT_LIMIT : UNBLOCKED_ASPECT_LIMIT)) return 'aspect';
  if (!blocked && !atMost(heightFt, UNBLOCKED_HEIGHT_LIMIT_FT)) return 'height';
  if (!atMost(studSpacingIn, STUD_LIMIT_IN)) return 'studs';
  return unblocked === undefined ? 'field-nails' : undefined;
}

/** The row of the thicker panel, when the footnote is asked for and holds. It is for blocked walls. */
function thickerRow(given: PanelInputs): PanelRow | undefined {
  if (given.useThinPanelFootnote !== true || !given.blocked) return undefined;
  const close = given.studSpacingIn !== undefined && atMost(given.studSpacingIn, THIN_PANEL_STUDS_IN);
  return close || given.panelAcrossStuds === true ? thinPanelRow(given.grade, given.thickness, given.nail) : undefined;
}

/** The strength of a wall whose panel and nails are `row` of the table. */
export function strengthOf(given: PanelInputs, edition: ShearWallEdition, row: PanelRow): Strength {
  const { load, blocked } = given;
  const thicker = thickerRow(given);
  // An unblocked wall keeps a share of the value at 6 in, the first column, whatever its nails.
  const column = blocked ? EDGE_SPACINGS_IN.indexOf(given.edgeSpacingIn) : 0;
  const nominalPlf = edition.nominals(thicker ?? row, load)[column] ?? 0;
  const { gravity } = framingOf(given);
  const species = speciesFactor(gravity);
  const aspect = given.heightFt / given.lengthFt;
  const unblocked = blocked ? 1 : unblockedFactor(given.studSpacingIn ?? 0, given.fieldSpacingIn ?? 0);
  const bar = barOf(given, unblocked);
  const aspectFactor = bar === 'aspect' ? 0 : edition.aspectFactor(aspect, load, given.shareByCapacity === true);
  const insideFactor = given.holdDownInsideFace === true ? insideFactorOf(given, edition) : 1;
  const designShare = edition.designShare[given.method][load];
  const shares = species * aspectFactor * (unblocked ?? 0) * insideFactor * designShare;
  return {
    nominalPlf,
    gravity,
    speciesFactor: species,
    aspect,
    aspectFactor,
    unblockedFactor: unblocked ?? 0,
    insideFactor,
    designShare,
    designPlf: bar === undefined ? nominalPlf * shares : 0,
    bar,
    asThicker: thicker !== undefined,
  };
}

/** Share a wall with these nails keeps when its hold-down is on the inside of the end post. */
export const insideFactorOf = ({ nail }: PanelInputs, edition: ShearWallEdition): number =>
  nail === '10d' ? (edition.insideHoldDown?.factor ?? 1) : 1;

/** Where the numbers of a strength came from. */
export function strengthSources(given: PanelInputs, edition: ShearWallEdition, strength: Strength): Source[] {
  const sources = [edition.tableSource, edition.methodSource[given.method], SPECIES_FACTOR_SOURCE];
  const { source } = framingOf(given);
  if (source) sources.push(source);
  if (strength.aspect > FULL_STRENGTH_ASPECT) sources.push(edition.aspectSource);
  if (!given.blocked) sources.push(UNBLOCKED_SOURCE);
  if (strength.asThicker) sources.push(THIN_PANEL_SOURCE);
  if (strength.insideFactor < 1 && edition.insideHoldDown) sources.push(edition.insideHoldDown.source);
  if (strength.bar === 'studs' && given.blocked) sources.push(PANEL_NAILING_SOURCE);
  return sources;
}
