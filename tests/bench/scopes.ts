import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { inTurns, type Row, rate } from './table.ts';

type Plans = typeof import('./plan-scopes.ts');

/** Findings a second that planning 2,000 of them in under a second asks for. */
const neededPerSecond = 2000;

/** 2,000 findings on 200 walls planned again in one process, bundled as the product is; against the goal of one second. */
export async function scopes(): Promise<Row> {
  const folder = mkdtempSync(join(import.meta.dirname, '.scopes-'));
  try {
    const outfile = join(folder, 'plan-scopes.mjs');
    await build({ entryPoints: [join(import.meta.dirname, 'plan-scopes.ts')], bundle: true, format: 'esm', outfile });
    return await measure(await import(pathToFileURL(outfile).href));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure({ planWalls, sumPairwise, findingCount }: Plans): Promise<Row> {
  planWalls();
  const result = await inTurns(
    5,
    () => rate(findingCount, planWalls),
    () => rate(findingCount, sumPairwise),
  );
  const seconds = findingCount / result.ours;
  return {
    work: 'plan 2,000 findings on 200 walls',
    ours: result.ours,
    floor: neededPerSecond,
    unit: 'a second',
    goal: 1,
    note: `${seconds.toFixed(3)} s for all (goal < 1 s); the naive pairwise sum of areas alone takes ${(findingCount / result.floor).toFixed(4)} s`,
  };
}
