import { checks, evaluateCheck } from '@underlath/rules';
import { Engine } from 'json-rules-engine';
import { inTurns, median, type Row, rate } from './table.ts';

const evaluations = 20_000;
const peerRuns = 4_000;

/** Mixed checks on their own published cases, in one thread: against a general JSON rules engine doing one threshold rule. */
export async function judging(): Promise<Row> {
  const evidence = await Promise.all(checks.map(async (check) => ({ id: check.id, ...(await check.cases()) })));
  const work = evidence.flatMap(({ id, cases }) => cases.map(({ edition, inputs }) => ({ id, edition, inputs })));
  const judge = (index: number) => {
    const one = work[index % work.length];
    if (one) evaluateCheck(one.id, { inputs: one.inputs, ...(one.edition && { edition: one.edition }) });
  };
  const engine = new Engine([
    {
      conditions: { all: [{ fact: 'bearingLengthIn', operator: 'lessThan', value: 1.5 }] },
      event: { type: 'too-short' },
    },
  ]);
  for (let index = 0; index < 5_000; index++) judge(index);
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
  return { work: 'judge findings', ...result, unit: 'a second', goal: 20, note: slowest(judge) };
}

/** The 99th percentile of single evaluations, times four for a phone. */
function slowest(judge: (index: number) => void): string {
  const times = Array.from({ length: 10_000 }, (_, index) => {
    const started = performance.now();
    judge(index);
    return performance.now() - started;
  }).sort((a, b) => a - b);
  const p99 = times[Math.floor(times.length * 0.99)] ?? Number.NaN;
  return `one evaluation: median ${median(times).toFixed(3)} ms, p99 ${p99.toFixed(3)} ms, on a CPU four times slower ${(p99 * 4).toFixed(3)} ms (goal < 1 ms)`;
}
