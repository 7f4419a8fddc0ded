import { type Child, cpuMsOf } from './children.ts';
import { median, type Row } from './table.ts';
import type { Visitor } from './visitor.ts';
import { worstBodies } from './worst-bodies.ts';

/** What 100 kB of any body may take, milliseconds of one core. */
const allowedMs = 50;
const pieceBytes = 100_000;

interface Measured {
  name: string;
  ms: number;
  slowestLivezMs: number;
}

/** Each open route with the costliest bodies found for it: how many pieces of 100 kB it does in a second, against 20. */
export async function worstRequest(visitor: Visitor, server: Child<string>): Promise<Row> {
  const measured: Measured[] = [];
  for (const [name, { path, body }] of Object.entries(worstBodies))
    measured.push(await measure(visitor.url, server, name, path, body));
  const worst = Math.max(...measured.map(({ ms }) => ms));
  const told = measured.map(
    ({ name, ms, slowestLivezMs }) => `${name} ${ms.toFixed(0)} ms (/livez ${slowestLivezMs.toFixed(0)} ms)`,
  );
  return {
    work: 'worst valid request',
    ours: 1000 / worst,
    floor: 1000 / allowedMs,
    unit: 'x 100 kB a second',
    goal: 1,
    note: `for each 100 kB or part of it, goal <= ${allowedMs} ms: ${told.join('; ')}`,
  };
}

async function measure(
  url: string,
  server: Child<string>,
  name: string,
  path: string,
  body: object,
): Promise<Measured> {
  const sent = JSON.stringify(body);
  const ask = async () => {
    const answer = await fetch(`${url}/api/v1${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: sent,
    });
    if (answer.status !== 200) throw new Error(`${name}: ${answer.status} ${await answer.text()}`);
    await answer.arrayBuffer();
  };
  const times: number[] = [];
  for (let turn = 0; turn < 7; turn++) {
    const before = await cpuMsOf(server);
    await ask();
    times.push((await cpuMsOf(server)) - before);
  }
  // The first turns are those of a server that has not compiled this work yet.
  const ms = median(times.slice(2)) / Math.max(1, sent.length / pieceBytes);
  return { name, ms, slowestLivezMs: await slowestLivez(url, ask) };
}

/** The longest that /livez takes to answer while the body is worked on. */
async function slowestLivez(url: string, ask: () => Promise<void>): Promise<number> {
  let slowestMs = 0;
  for (let turn = 0; turn < 3; turn++) {
    let answered = false;
    const asking = ask().finally(() => {
      answered = true;
    });
    while (!answered) {
      const asked = performance.now();
      await (await fetch(`${url}/livez`)).arrayBuffer();
      slowestMs = Math.max(slowestMs, performance.now() - asked);
    }
    await asking;
  }
  return slowestMs;
}
