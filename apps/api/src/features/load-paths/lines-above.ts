import type { FieldProblem, LineAboveChoice } from '@underlath/contract';
import type { LineAbove } from '@underlath/rules';
import type { Tx } from '../../platform/database/database.ts';
import type { LoadPathRow, PlaceRow } from './load-paths.repository.ts';
import * as paths from './load-paths.repository.ts';
import { type KeptLoadPath, keptOf, loadPathOf } from './stored-load-path.ts';

/** As many lines one on the other as a load path may have stories above. */
const MOST_LINES = 4;
/** How much two walls may differ in width and still be measured from the same corner, inches: a habit of the trade. */
const SAME_WIDTH_IN = 6;

const equallyWide = (one: PlaceRow, other: PlaceRow): boolean =>
  one.widthIn !== null && other.widthIn !== null && Math.abs(one.widthIn - other.widthIn) <= SAME_WIDTH_IN;

/** The line that stands on a kept one, with those that stand on it in turn. */
export async function lineAboveOf(
  tx: Tx,
  companyId: string,
  { lineAbove }: KeptLoadPath,
  place: PlaceRow,
  lines = MOST_LINES,
): Promise<LineAbove | undefined> {
  if (!lineAbove || lines === 0) return undefined;
  const row = await paths.findLoadPath(tx, companyId, lineAbove.loadPathId);
  const upper = row && (await paths.findPlace(tx, companyId, row.locationId));
  if (row?.kind !== 'wallLine' || !upper) return undefined;
  const kept = keptOf(row);
  return {
    name: row.name,
    path: loadPathOf(kept, upper),
    floorDepthIn: lineAbove.floorDepthIn,
    aligned: equallyWide(place, upper),
    above: await lineAboveOf(tx, companyId, kept, upper, lines - 1),
  };
}

/** What is wrong with the line that is said to stand on the one with this id; nothing where none is. */
export async function lineAboveFaults(
  tx: Tx,
  { companyId, projectId }: Pick<LoadPathRow, 'companyId' | 'projectId'>,
  { kind, lineAbove }: KeptLoadPath,
  id: string,
): Promise<FieldProblem[]> {
  if (!lineAbove) return [];
  const fault = (detail: string) => [{ pointer: '/lineAbove/loadPathId', detail: `lineAbove: ${detail}` }];
  if (kind !== 'wall-line') return fault('only a wall line has another standing on it.');
  let [next, count]: [string | null, number] = [lineAbove.loadPathId, 0];
  while (next !== null) {
    if (next === id) return fault('a line cannot stand on itself, nor on one that stands on it.');
    const row: LoadPathRow | null = await paths.findLoadPath(tx, companyId, next);
    if (!row || row.projectId !== projectId || row.kind !== 'wallLine')
      return fault(`there is no wall line ${next} in this project.`);
    count += 1;
    if (count > MOST_LINES) return fault(`got more than ${MOST_LINES} lines one on the other.`);
    next = row.lineAboveId;
  }
  return [];
}

/** The wall lines at other places of the project, those first whose wall is as wide and one story higher. */
export async function linesAbove(tx: Tx, companyId: string, place: PlaceRow): Promise<LineAboveChoice[]> {
  const rows = await paths.listWallLines(tx, companyId, place.projectId);
  const choices = rows
    .filter(({ locationId }) => locationId !== place.id)
    .map(({ id, name, demandLb, location }) => ({
      loadPathId: id,
      name,
      place: location.name,
      demandLb,
      fits: equallyWide(place, location) && location.storiesAbove + 1 === place.storiesAbove,
    }));
  return [...choices.filter(({ fits }) => fits), ...choices.filter(({ fits }) => !fits)];
}
