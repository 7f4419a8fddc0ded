import { checks, evaluateCheck } from '@underlath/rules/all-checks';
import type pg from 'pg';

/** A judgment as it is stored: what was measured, and what came of it. */
interface Stored {
  checkId: string;
  edition: string;
  inputs: Record<string, unknown>;
  verdict: string;
  severity: string;
}

const pageSize = 500;

/** Fills a table of this bench with so many judgments of the checks' own cases. */
export async function store(pool: pg.Pool, count: number): Promise<void> {
  await pool.query(
    'create table bench_judgment (id int primary key, check_id text, edition text, inputs jsonb, outcome jsonb)',
  );
  const evidence = await Promise.all(checks.map(async (check) => ({ id: check.id, ...(await check.cases()) })));
  const work = evidence.flatMap(({ id, cases }) => cases.map(({ edition, inputs }) => ({ id, edition, inputs })));
  const rows = Array.from({ length: count }, (_, at) => {
    const { id, edition, inputs } = work[at % work.length] as (typeof work)[number];
    const outcome = evaluateCheck(id, { edition, inputs }).toJSON();
    return { id: at, check_id: id, edition: outcome.edition, inputs, outcome };
  });
  for (let from = 0; from < count; from += pageSize)
    await pool.query('insert into bench_judgment select * from jsonb_populate_recordset(null::bench_judgment, $1)', [
      JSON.stringify(rows.slice(from, from + pageSize)),
    ]);
}

/** Reads every stored judgment, page by page, and hands it on. Answers how many there were. */
async function read(pool: pg.Pool, each: (one: Stored) => void): Promise<number> {
  let count = 0;
  for (let last = -1; ; ) {
    const { rows } = await pool.query<Stored & { id: number }>(
      `select id, check_id as "checkId", edition, inputs, outcome->>'verdict' as verdict, outcome->>'severity' as severity
       from bench_judgment where id > $1 order by id limit $2`,
      [last, pageSize],
    );
    for (const row of rows) each(row);
    count += rows.length;
    const end = rows.at(-1);
    if (!end) return count;
    last = end.id;
  }
}

export const readAlone = (pool: pg.Pool): Promise<number> => read(pool, () => {});

/** Judges each again by the rules of today and counts those that come out otherwise. */
export async function judgeAgain(pool: pg.Pool): Promise<{ count: number; changed: number }> {
  let changed = 0;
  const count = await read(pool, ({ checkId, edition, inputs, verdict, severity }) => {
    const today = evaluateCheck(checkId, { edition, inputs });
    if (today.verdict !== verdict || today.severity !== severity) changed += 1;
  });
  return { count, changed };
}
