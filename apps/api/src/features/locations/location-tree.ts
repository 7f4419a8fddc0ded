import { type Location, severity as severitySchema } from '@underlath/contract';
import { toWord } from '../../shared/enum-words.ts';
import { readOpenings } from '../../shared/stored/stored-columns.ts';
import type { countOpen, LocationRow } from './locations.repository.ts';

type Count = Awaited<ReturnType<typeof countOpen>>[number];
type Tally = Pick<Location, 'worst' | 'openCount'>;

/** Gravest first. */
const severities = severitySchema.options;

/** Each place with the worst severity and the number of open findings in it and below it. */
export function rollUp(rows: LocationRow[], counts: Count[]): Location[] {
  const tallies = new Map<string, Tally>(rows.map(({ id }) => [id, { worst: null, openCount: 0 }]));
  const parents = new Map(rows.map(({ id, parentId }) => [id, parentId]));
  for (const { locationId, severity, _count } of counts) {
    for (let at: string | null | undefined = locationId; at; at = parents.get(at)) {
      const tally = tallies.get(at);
      if (!tally) break;
      tally.openCount += _count;
      if (severity) tally.worst = worse(tally.worst, toWord(severity));
    }
  }
  return rows.map((row) => toLocation(row, tallies.get(row.id) ?? { worst: null, openCount: 0 }));
}

function worse(a: Location['worst'], b: Location['worst']): Location['worst'] {
  if (a === null || b === null) return a ?? b;
  return severities.indexOf(a) <= severities.indexOf(b) ? a : b;
}

/** Whether `id` is `from` or lies above it. */
export function liesAbove(rows: Pick<LocationRow, 'id' | 'parentId'>[], id: string, from: string | null): boolean {
  const parents = new Map(rows.map((row) => [row.id, row.parentId]));
  for (let at: string | null | undefined = from; at; at = parents.get(at)) if (at === id) return true;
  return false;
}

function toLocation(
  { companyId: _company, createdAt: _created, kind, openings, existing, ...row }: LocationRow,
  tally: Tally,
): Location {
  return {
    ...row,
    kind: toWord(kind),
    openings: readOpenings(row.id, openings),
    existing: existing as Location['existing'],
    ...tally,
  };
}
