import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { Engine } from 'json-rules-engine';
import { inTurns, median, type Row, rate } from './table.ts';

type Judge = typeof import('./judge.ts');

const evaluations = 20_000;
const peerRuns = 4_000;
/** A server that has judged for a while: by then the engine has compiled every check. */
const warmUp = 300_000;

/**
 * Mixed checks on their own published cases, in one thread: against a general JSON rules engine doing one threshold rule.
 * The rules are bundled as the product bundles them; run from source, the loader would mark every function it makes.
 */
export async function judging(): Promise<Row> {
  const folder = mkdtempSync(join(import.meta.dirname, '.judging-'));
  try {
    const outfile = join(folder, 'judge.mjs');
    await build({ entryPoints: [join(import.meta.dirname, 'judge.ts')], bundle: true, format: 'esm', outfile });
    return await measure(await import(pathToFileURL(outfile).href));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure({ judge, judgeInWords }: Judge): Promise<Row> {
  const engine = new Engine([
    {
      conditions: { all: [{ fact: 'bearingLengthIn', operator: 'lessThan', value: 1.5 }] },
      event: { type: 'too-short' },
    },
  ]);
  for (let index = 0; index < warmUp; index++) judge(index);
  for (let index = 0; index < peerRuns; index++) await engine.run({ bearingLengthIn: 1 });
  const result = await inTurns(
    5,
    () =>
      rate(evaluations, () => {
        for (let index = 0; index < evaluations; index++) judge(index);
      }),
    () =>
      rate(peerRuns, async () => {
        for (let index = 0; index < peerRuns; index++) await engine.run({ bearingLengthIn: 1 + (index % 10) / 10 });
      }),
  );
  return {
    work: 'judge findings',
    ...result,
    unit: 'a second',
    goal: 3,
    note: `verdict and severity ${slowest(judge)}; with every value and sentence ${slowest(judgeInWords)}`,
  };
}

/** The median and 99th percentile of single evaluations, the latter also times four for a phone. */
function slowest(judge: (index: number) => unknown): string {
  const times = Array.from({ length: 10_000 }, (_, index) => {
    const started = performance.now();
    judge(index);
    return performance.now() - started;
  }).sort((a, b) => a - b);
  const p99 = times[Math.floor(times.length * 0.99)] ?? Number.NaN;
  return `median ${median(times).toFixed(4)} ms, p99 ${p99.toFixed(3)} ms, on a CPU four times slower ${(p99 * 4).toFixed(3)} ms (goal <= 0.2 ms)`;
}
