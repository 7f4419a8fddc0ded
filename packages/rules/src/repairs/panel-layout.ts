import { INCHES_PER_FOOT } from '../kernel/index.ts';
import { between, disjoint, type Ground, type Rect, rightIn, snapToFraming, topIn, unionSf } from './extents.ts';
import { MEMBER_IN } from './members.ts';

/** A sheet as it is sold. */
export const SHEET_WIDTH_IN = 48;
export const SHEET_HEIGHT_IN = 96;
export const SHEET_SF = 32;

/** How panels are nailed, from the approved schedule. Inches on center. */
export interface NailSchedule {
  readonly edgeSpacingIn: number;
  readonly fieldSpacingIn: number;
}

export interface PanelLayout {
  /** The area that gets new panel, snapped to framing. */
  readonly area: readonly Rect[];
  /** Each piece of panel as it is nailed on. */
  readonly pieces: readonly Rect[];
  readonly panelSf: number;
  /** Whole sheets that the pieces are cut from. */
  readonly sheets: number;
  /** Joints off the plates that need blocking behind them, feet. */
  readonly blockingFt: number;
}

/**
 * Where a panel over a defect must end so that every edge has framing behind it: studs at its sides, plates above and
 * below (from memory, confirm: SDPWS 4.3.7.1, all panel edges on framing or blocking).
 */
export const snapPanel = (rect: Rect, ground: Ground): Rect => {
  const wide = snapToFraming(rect, ground);
  return between(wide.xIn, 0, rightIn(wide), ground.heightIn);
};

/** The widest piece that begins and ends on framing. */
function columnWidthIn({ framingSpacingIn }: Ground): number {
  if (!framingSpacingIn || framingSpacingIn > SHEET_WIDTH_IN) return SHEET_WIDTH_IN;
  return Math.floor(SHEET_WIDTH_IN / framingSpacingIn) * framingSpacingIn;
}

/** One plate may show beyond the end of a sheet: the sheet still lands on the other plates. */
const rowsOf = (heightIn: number): number => Math.max(1, Math.ceil((heightIn - MEMBER_IN) / SHEET_HEIGHT_IN));

function cutIntoPieces(rect: Rect, ground: Ground): Rect[] {
  const columnIn = columnWidthIn(ground);
  const pieces: Rect[] = [];
  for (let xIn = rect.xIn; xIn < rightIn(rect); xIn += columnIn) {
    const toIn = Math.min(xIn + columnIn, rightIn(rect));
    const rows = rowsOf(rect.heightIn);
    for (let row = 0; row < rows; row += 1) {
      const fromIn = rect.yIn + row * SHEET_HEIGHT_IN;
      pieces.push(between(xIn, fromIn, toIn, row === rows - 1 ? topIn(rect) : fromIn + SHEET_HEIGHT_IN));
    }
  }
  return pieces;
}

interface Sheet {
  usedIn: number;
  readonly shelves: { readonly heightIn: number; usedIn: number }[];
}

/**
 * Whole sheets that pieces (each no larger than a sheet) are cut from, upright, tallest first, offcuts used again. Saw
 * kerfs are left out. Never fewer than the area needs; the layout may take more than the very best one.
 */
export function countSheets(pieces: readonly Rect[]): number {
  const sheets: Sheet[] = [];
  for (const { widthIn, heightIn } of [...pieces].sort((a, b) => b.heightIn - a.heightIn || b.widthIn - a.widthIn)) {
    const cutIn = Math.min(heightIn, SHEET_HEIGHT_IN);
    const shelf = sheets
      .flatMap((sheet) => sheet.shelves)
      .find((one) => one.heightIn >= cutIn && one.usedIn + widthIn <= SHEET_WIDTH_IN);
    if (shelf) {
      shelf.usedIn += widthIn;
      continue;
    }
    let sheet = sheets.find((one) => one.usedIn + cutIn <= SHEET_HEIGHT_IN);
    if (!sheet) {
      sheet = { usedIn: 0, shelves: [] };
      sheets.push(sheet);
    }
    sheet.usedIn += cutIn;
    sheet.shelves.push({ heightIn: cutIn, usedIn: widthIn });
  }
  return sheets.length;
}

/**
 * Lays new panels over defects: snapped to framing, joined where they meet, cut into sheets whose edges all have
 * framing or blocking behind. Needs at least one rectangle inside the place.
 */
export function layOutPanels(defects: readonly Rect[], ground: Ground): PanelLayout {
  const area = disjoint(defects.map((rect) => snapPanel(rect, ground)));
  const pieces = area.flatMap((rect) => cutIntoPieces(rect, ground));
  const onPlate = (edgeIn: number) => edgeIn <= MEMBER_IN || edgeIn >= ground.heightIn - 2 * MEMBER_IN;
  const blockingIn = pieces.filter((piece) => !onPlate(topIn(piece))).reduce((sum, piece) => sum + piece.widthIn, 0);
  return {
    area,
    pieces,
    panelSf: unionSf(area),
    sheets: countSheets(pieces),
    blockingFt: blockingIn / INCHES_PER_FOOT,
  };
}

/**
 * Nails of one panel: its edges at the edge spacing, 2 (w + h) / e, and each stud inside it at the field spacing,
 * n (h / f - 1); each part is rounded up to whole nails. Sizes and spacings in inches, above 0.
 */
export function countNails(
  piece: Rect,
  { edgeSpacingIn, fieldSpacingIn }: NailSchedule,
  framingSpacingIn: number | null,
) {
  const edge = Math.ceil((2 * (piece.widthIn + piece.heightIn)) / edgeSpacingIn);
  const inside = framingSpacingIn ? Math.max(0, Math.ceil(piece.widthIn / framingSpacingIn) - 1) : 0;
  return edge + inside * Math.max(0, Math.ceil(piece.heightIn / fieldSpacingIn) - 1);
}
