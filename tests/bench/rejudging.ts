import pg from 'pg';
import { withBundle } from './bundled.ts';
import { inTurns, type Row, rate } from './table.ts';

const findings = 10_000;

/** 10,000 stored findings read, judged by the rules of today and compared, in one process: against reading them alone. */
export async function rejudging(databaseUrl: string): Promise<Row> {
  const pool = new pg.Pool({ connectionString: databaseUrl, max: 1 });
  try {
    return await withBundle<typeof import('./judge-stored.ts'), Row>('judge-stored.ts', async (stored) => {
      await stored.store(pool, findings);
      const { changed } = await stored.judgeAgain(pool);
      const result = await inTurns(
        5,
        () => rate(findings, () => stored.judgeAgain(pool)),
        () => rate(findings, () => stored.readAlone(pool)),
      );
      return {
        work: 're-judge a firm',
        ...result,
        unit: 'findings/s',
        goal: 1 / 3,
        note: `${findings} findings, ${changed} came out otherwise; reading alone ${(result.floor / result.ours).toFixed(2)} times as fast (goal <= 3)`,
      };
    });
  } finally {
    await pool.query('drop table if exists bench_judgment');
    await pool.end();
  }
}
