import { INCHES_PER_FOOT } from '../kernel/index.ts';
import {
  between,
  disjoint,
  disjointSf,
  type Ground,
  type Rect,
  rightIn,
  snapToFraming,
  topIn,
} from '../places/extents.ts';
import { MEMBER_IN } from '../places/framing.ts';
import { addIn, timesIn, timesToCover, timesWithin } from '../places/ticks.ts';
import { groupBy } from './drawn.ts';
import { countSheets, SHEET_HEIGHT_IN, SHEET_WIDTH_IN } from './sheets.ts';

/** How panels are nailed, from the approved schedule. Inches on center. */
export interface NailSchedule {
  readonly edgeSpacingIn: number;
  readonly fieldSpacingIn: number;
}

export interface PanelLayout {
  /** The area that gets new panel, snapped to framing. */
  readonly area: readonly Rect[];
  /** The pieces of panel as they are nailed on, by size. */
  readonly pieces: readonly Pieces[];
  readonly panelSf: number;
  /** Whole sheets that the pieces are cut from. */
  readonly sheets: number;
  /** Edges off plates, rims and framing that need blocking behind them, feet. */
  readonly blockingFt: number;
}

/**
 * The least patch of a floor or roof panel: two bays across the framing and two feet along it. Span tables for panels hold
 * for sheets continuous over two or more spans, 24 in wide or wider, laid across the supports (from memory, confirm: IRC
 * Table R503.2.1.1(1) and its notes). Where along the bays the old panel is cut is common practice, no source.
 */
const PATCH_BAYS = 2;
const PATCH_ALONG_IN = 24;

/**
 * Where a panel over a defect must end so that every edge has framing behind it. On a wall studs at its sides, plates above
 * and below (from memory, confirm: SDPWS 4.3.7.1, all panel edges on framing or blocking); on a floor or roof joists or
 * rafters at its ends and blocking along its sides, never less than a patch.
 */
export const snapPanel = (rect: Rect, ground: Ground): Rect => {
  const wide = snapToFraming(rect, ground);
  if (ground.kind === 'wall') return between(wide.xIn, 0, rightIn(wide), ground.heightIn);
  const [leftIn, endIn] = overBays(rect, wide, ground);
  const fromIn = Math.max(
    0,
    Math.min(addIn(rect.yIn, Math.min(0, rect.heightIn - PATCH_ALONG_IN) / 2), addIn(ground.heightIn, -PATCH_ALONG_IN)),
  );
  const toIn = Math.min(ground.heightIn, Math.max(topIn(rect), addIn(fromIn, PATCH_ALONG_IN)));
  return between(leftIn, Math.min(fromIn, rect.yIn), endIn, toIn);
};

/** From framing to framing over two bays or more; a single bay takes in the one beside it that the defect lies nearer to. */
function overBays(rect: Rect, wide: Rect, ground: Ground): readonly [leftIn: number, endIn: number] {
  const [leftIn, endIn] = [wide.xIn, rightIn(wide)];
  const { framingSpacingIn, widthIn } = ground;
  if (!framingSpacingIn) return [leftIn, endIn];
  const bays = timesToCover(addIn(endIn, -leftIn), framingSpacingIn);
  if (bays >= PATCH_BAYS) return [leftIn, endIn];
  const nearerLeft = rect.xIn - leftIn < endIn - rightIn(rect);
  if (leftIn > 0 && (nearerLeft || endIn === widthIn)) return [addIn(leftIn, -framingSpacingIn), endIn];
  return [leftIn, Math.min(widthIn, addIn(endIn, framingSpacingIn))];
}

/** How a piece of panel lies: its side across the framing, and the other. A whole sheet stands upright on a wall. */
const sheetOn = ({ kind }: Ground) =>
  kind === 'wall'
    ? { acrossIn: SHEET_WIDTH_IN, alongIn: SHEET_HEIGHT_IN }
    : { acrossIn: SHEET_HEIGHT_IN, alongIn: SHEET_WIDTH_IN };

/** The widest piece that begins and ends on framing. */
function columnWidthIn(ground: Ground): number {
  const { acrossIn } = sheetOn(ground);
  const { framingSpacingIn } = ground;
  if (!framingSpacingIn || framingSpacingIn > acrossIn) return acrossIn;
  return timesIn(timesWithin(acrossIn, framingSpacingIn), framingSpacingIn);
}

/** On a wall one plate may show beyond the end of a sheet: the sheet still lands on the other plates. */
const rowsOf = (heightIn: number, ground: Ground): number =>
  Math.max(1, timesToCover(addIn(heightIn, ground.kind === 'wall' ? -MEMBER_IN : 0), sheetOn(ground).alongIn));

/** Pieces of one size. */
export interface Pieces {
  readonly widthIn: number;
  readonly heightIn: number;
  readonly count: number;
}

/** A length in whole parts and what is left over; the last of so many parts takes what is left. */
function partsOf(
  lengthIn: number,
  partIn: number,
  count: number,
): { readonly lengthIn: number; readonly count: number }[] {
  const lastIn = addIn(lengthIn, -timesIn(count - 1, partIn));
  if (lastIn === partIn) return [{ lengthIn: partIn, count }];
  return [...(count > 1 ? [{ lengthIn: partIn, count: count - 1 }] : []), { lengthIn: lastIn, count: 1 }];
}

function cutIntoPieces(rect: Rect, ground: Ground): Pieces[] {
  const columnIn = columnWidthIn(ground);
  const columns = partsOf(rect.widthIn, columnIn, timesToCover(rect.widthIn, columnIn));
  const rows = partsOf(rect.heightIn, sheetOn(ground).alongIn, rowsOf(rect.heightIn, ground));
  return columns.flatMap((column) =>
    rows.map((row) => ({ widthIn: column.lengthIn, heightIn: row.lengthIn, count: column.count * row.count })),
  );
}

/** Pieces of one size together, whatever area they are of. */
function bySize(pieces: readonly Pieces[]): Pieces[] {
  return [...groupBy(pieces, ({ widthIn, heightIn }) => `${widthIn} ${heightIn}`).values()].map((same) => ({
    ...(same[0] as Pieces),
    count: same.reduce((sum, { count }) => sum + count, 0),
  }));
}

/** Inches of edge that no plate, rim or member carries: between rows of pieces, and where a panel ends in the field. */
function unbackedIn(area: readonly Rect[], ground: Ground): number {
  const atTopIn = addIn(ground.heightIn, (ground.kind === 'wall' ? -2 : -1) * MEMBER_IN);
  const isCarried = (edgeIn: number) => edgeIn <= MEMBER_IN || edgeIn >= atTopIn;
  const { alongIn } = sheetOn(ground);
  return area.reduce((sum, rect) => {
    const rows = rowsOf(rect.heightIn, ground);
    const joints = Array.from({ length: rows }, (_, row) => addIn(rect.yIn, timesIn(row, alongIn)));
    return sum + rect.widthIn * [...joints, topIn(rect)].filter((edgeIn) => !isCarried(edgeIn)).length;
  }, 0);
}

/** What gets new panel where these defects are: snapped to framing, joined where they meet, as rectangles that do not overlap. */
export const panelArea = (defects: readonly Rect[], ground: Ground): Rect[] =>
  disjoint(defects.map((rect) => snapPanel(rect, ground)));

/**
 * Lays new panels over defects: the area cut into sheets whose edges all have framing or blocking behind. Needs at least one
 * rectangle inside the place.
 */
export function layOutPanels(defects: readonly Rect[], ground: Ground): PanelLayout {
  const area = panelArea(defects, ground);
  const pieces = bySize(area.flatMap((rect) => cutIntoPieces(rect, ground)));
  return {
    area,
    pieces,
    panelSf: disjointSf(area),
    sheets: countSheets(ground.kind === 'wall' ? pieces : pieces.map(turned)),
    blockingFt: unbackedIn(area, ground) / INCHES_PER_FOOT,
  };
}

const turned = ({ widthIn, heightIn, count }: Pieces): Pieces => ({ widthIn: heightIn, heightIn: widthIn, count });

/**
 * Nails of one panel: its edges at the edge spacing, 2 (w + h) / e, and each stud, joist or rafter inside it at the field spacing,
 * n (h / f - 1); each part is rounded up to whole nails. Sizes and spacings in inches, above 0.
 */
export function countNails(
  piece: Pick<Rect, 'widthIn' | 'heightIn'>,
  { edgeSpacingIn, fieldSpacingIn }: NailSchedule,
  framingSpacingIn: number | null,
) {
  const edge = timesToCover(2 * addIn(piece.widthIn, piece.heightIn), edgeSpacingIn);
  const inside = framingSpacingIn ? Math.max(0, timesToCover(piece.widthIn, framingSpacingIn) - 1) : 0;
  return edge + inside * Math.max(0, timesToCover(piece.heightIn, fieldSpacingIn) - 1);
}
