import { addIn, timesIn, timesWithin } from '../places/ticks.ts';
import type { Pieces } from './panel-layout.ts';

/** A sheet as it is sold. */
export const SHEET_WIDTH_IN = 48;
export const SHEET_HEIGHT_IN = 96;
export const SHEET_SF = 32;

interface Shelf {
  readonly heightIn: number;
  readonly usedIn: number;
}

/** Sheets that are cut alike: shelves one above the other, each filled from the left. */
interface Sheets {
  readonly count: number;
  readonly usedIn: number;
  readonly shelves: readonly Shelf[];
}

type Size = Omit<Pieces, 'count'>;

const onShelf = ({ heightIn, usedIn }: Shelf, size: Size): number =>
  heightIn >= size.heightIn ? timesWithin(addIn(SHEET_WIDTH_IN, -usedIn), size.widthIn) : 0;
const onShelves = ({ shelves }: Sheets, size: Size): number =>
  shelves.reduce((sum, shelf) => sum + onShelf(shelf, size), 0);
const onNewShelves = ({ usedIn }: Sheets, size: Size): number =>
  timesWithin(addIn(SHEET_HEIGHT_IN, -usedIn), size.heightIn) * timesWithin(SHEET_WIDTH_IN, size.widthIn);

/** One sheet with so many pieces more, on the shelves it has or on new ones; there must be room. */
function fill(sheet: Sheets, size: Size, pieces: number): Sheets {
  let left = pieces;
  const put = (shelf: Shelf): Shelf => {
    const here = Math.min(left, onShelf(shelf, size));
    left -= here;
    return { heightIn: shelf.heightIn, usedIn: addIn(shelf.usedIn, timesIn(here, size.widthIn)) };
  };
  const shelves = sheet.shelves.map(put);
  let usedIn = sheet.usedIn;
  while (left > 0) {
    shelves.push(put({ heightIn: size.heightIn, usedIn: 0 }));
    usedIn = addIn(usedIn, size.heightIn);
  }
  return { ...sheet, usedIn, shelves };
}

/** Puts pieces on sheets as far as there is room, the first sheets first. */
function place(sheets: readonly Sheets[], size: Size, pieces: number, roomOn: (sheet: Sheets, size: Size) => number) {
  let left = pieces;
  const placed = sheets.flatMap((sheet): Sheets[] => {
    const room = left > 0 ? roomOn(sheet, size) : 0;
    if (room === 0) return [sheet];
    const full = Math.min(sheet.count, Math.floor(left / room));
    left -= full * room;
    const last = full < sheet.count ? left : 0;
    left -= last;
    const untouched = sheet.count - full - (last > 0 ? 1 : 0);
    return [
      { ...fill(sheet, size, room), count: full },
      { ...fill(sheet, size, last), count: last > 0 ? 1 : 0 },
      { ...sheet, count: untouched },
    ].filter(({ count }) => count > 0);
  });
  return { sheets: placed, left };
}

const NEW: Sheets = { count: 1, usedIn: 0, shelves: [] };

/**
 * Whole sheets that pieces (each no larger than a sheet) are cut from, standing, tallest first, offcuts used again. Saw
 * kerfs are left out. Never fewer than the area needs; the layout may take more than the very best one. Pieces of one size
 * are placed together, so that a large place takes no longer than a small one.
 */
export function countSheets(pieces: readonly Pieces[]): number {
  let sheets: readonly Sheets[] = [];
  for (const { count, ...given } of [...pieces].sort((a, b) => b.heightIn - a.heightIn || b.widthIn - a.widthIn)) {
    // A piece may stand over a plate beyond the end of its sheet.
    const size = { widthIn: given.widthIn, heightIn: Math.min(given.heightIn, SHEET_HEIGHT_IN) };
    const onOld = place(sheets, size, count, onShelves);
    const above = place(onOld.sheets, size, onOld.left, onNewShelves);
    const room = onNewShelves(NEW, size);
    const added = place([{ ...NEW, count: Math.ceil(above.left / room) }], size, above.left, onNewShelves);
    sheets = [...above.sheets, ...added.sheets.filter(({ count: some }) => some > 0)];
  }
  return sheets.reduce((sum, { count }) => sum + count, 0);
}
