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
export async function worstRequest(visitor: Visitor): Promise<Row> {
  const measured: Measured[] = [];
  for (const [name, { path, body }] of Object.entries(worstBodies))
    measured.push(await measure(visitor.url, name, path, body));
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

async function measure(url: string, name: string, path: string, body: object): Promise<Measured> {
  const sent = JSON.stringify(body);
  const pieces = Math.max(1, sent.length / pieceBytes);
  const times: number[] = [];
  let slowestLivezMs = 0;
  for (let turn = 0; turn < 7; turn++) {
    const started = performance.now();
    let answered = false;
    const asking = fetch(`${url}/api/v1${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: sent,
    }).then(async (answer) => {
      if (answer.status !== 200) throw new Error(`${name}: ${answer.status} ${await answer.text()}`);
      await answer.arrayBuffer();
      answered = true;
      times.push(performance.now() - started);
    });
    while (!answered) {
      const asked = performance.now();
      await (await fetch(`${url}/livez`)).arrayBuffer();
      slowestLivezMs = Math.max(slowestLivezMs, performance.now() - asked);
    }
    await asking;
  }
  // The first turns are those of a server that has not compiled this work yet.
  return { name, ms: median(times.slice(2)) / pieces, slowestLivezMs };
}
