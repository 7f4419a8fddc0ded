// npm run bench                     every row, each beside its floor in the same run
// npm run bench -- --row judging    one row: judging, rejudging, worst, scopes, ranges, derivatives, report, client, intake, list
// npm run bench -- --photos 1000    the long memory run of the derivatives
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startEmbeddedPostgres } from '../../apps/api/src/platform/embedded-postgres/embedded-postgres.ts';
import { type Child, startChild } from './children.ts';
import { clientPage } from './client-page.ts';
import { derivatives } from './derivatives.ts';
import { judging } from './judging.ts';
import { list } from './list.ts';
import { photoIntake } from './photo-intake.ts';
import { ranges } from './ranges.ts';
import { rejudging } from './rejudging.ts';
import { report } from './report.ts';
import { scopes } from './scopes.ts';
import { printTable, type Row } from './table.ts';
import { arrive, type Visitor } from './visitor.ts';
import { worstRequest } from './worst-request.ts';

type Floor = { uploads: string; lists: string };
const rows: Record<
  string,
  (visitor: Visitor, floor: Floor, databaseUrl: string, server: Child<string>) => Promise<Row>
> = {
  judging,
  rejudging: (_visitor, _floor, databaseUrl) => rejudging(databaseUrl),
  worst: (visitor, _floor, _databaseUrl, server) => worstRequest(visitor, server),
  scopes,
  ranges,
  derivatives,
  report,
  client: clientPage,
  intake: (visitor, floor) => photoIntake(visitor, floor.uploads),
  list: (visitor, floor) => list(visitor, floor.lists),
};
const asked = process.argv.indexOf('--row');
const names = asked > 0 ? [process.argv[asked + 1] ?? ''] : Object.keys(rows);
const unknown = names.find((name) => !rows[name]);
if (unknown !== undefined) {
  console.error(`--row knows ${Object.keys(rows).join(', ')}; not "${unknown}".`);
  process.exit(2);
}

const dataDir = mkdtempSync(join(tmpdir(), 'underlath-bench-'));
const postgres = await startEmbeddedPostgres({ dataDir, log: () => {} });
const env = { DATABASE_URL: postgres.databaseUrl, DATA_DIR: dataDir };
const children: Child<unknown>[] = [];
try {
  const server = await startChild<string>('server.ts', env);
  children.push(server);
  const floor = await startChild<Floor>('floor.ts', env);
  children.push(floor);
  const visitor = await arrive(server.hello);
  const results: Row[] = [];
  for (const name of names) {
    console.log(`Measuring ${name} …`);
    const row = await rows[name]?.(visitor, floor.hello, postgres.databaseUrl, server);
    if (row) results.push(row);
  }
  printTable(results);
} finally {
  for (const child of children) await child.stop();
  await postgres.stop();
  rmSync(dataDir, { recursive: true, force: true });
}
