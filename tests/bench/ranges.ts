import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { inTurns, type Row, rate } from './table.ts';

type Draws = typeof import('./draw-ranges.ts');

const repeats = 20;

/** 10,000 trials of 100 correlated lines, bundled as the product is: the whole range against plain loops doing the same draws. */
export async function ranges(): Promise<Row> {
  const folder = mkdtempSync(join(import.meta.dirname, '.ranges-'));
  try {
    const outfile = join(folder, 'draw-ranges.mjs');
    await build({ entryPoints: [join(import.meta.dirname, 'draw-ranges.ts')], bundle: true, format: 'esm', outfile });
    return await measure(await import(pathToFileURL(outfile).href));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure({ drawRange, drawPlainly, drawCount }: Draws): Promise<Row> {
  const many = (draw: (seed: number) => number) => () =>
    rate(repeats * drawCount, () => {
      for (let seed = 1; seed <= repeats; seed++) draw(seed);
    });
  await many(drawRange)();
  await many(drawPlainly)();
  const result = await inTurns(5, many(drawRange), many(drawPlainly));
  return {
    work: 'price range',
    ours: result.ours / 1e6,
    floor: result.floor / 1e6,
    unit: 'M draws/s',
    goal: 0.7,
    note: `${((1000 * drawCount) / result.ours).toFixed(1)} ms for a range of 10,000 trials x 100 lines, curves, formulas and percentiles included`,
  };
}
