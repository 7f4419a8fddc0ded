export interface Row {
  /** The work, as the table of goals names it. */
  work: string;
  ours: number;
  floor: number;
  unit: string;
  /** Goal for ours / floor. */
  goal: number;
  note?: string;
}

/** Prints one table: ours, the floor or peer of the same run, the ratio and whether it reaches its goal. */
export function printTable(rows: Row[]): void {
  const lines = [
    ['work', 'ours', 'floor or peer', 'ratio', 'goal', ''],
    ...rows.map((row) => [
      row.work,
      `${show(row.ours)} ${row.unit}`,
      `${show(row.floor)} ${row.unit}`,
      show(row.ours / row.floor),
      `>= ${row.goal}`,
      row.ours / row.floor >= row.goal ? 'reached' : 'NOT reached',
    ]),
  ];
  const widths = lines[0]?.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0))) ?? [];
  for (const line of lines) console.log(line.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  '));
  for (const row of rows) if (row.note) console.log(`${row.work}: ${row.note}`);
}

const show = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

/** Runs both kinds of work in turns, so that whatever else the machine does falls on both, and gives the median rate of each. */
export async function inTurns(
  rounds: number,
  ours: () => Promise<number>,
  floor: () => Promise<number>,
): Promise<{ ours: number; floor: number }> {
  const rates = { ours: [] as number[], floor: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    rates.floor.push(await floor());
    rates.ours.push(await ours());
  }
  return { ours: median(rates.ours), floor: median(rates.floor) };
}

export function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Pieces of work a second. */
export async function rate(pieces: number, work: () => Promise<unknown> | unknown): Promise<number> {
  const started = performance.now();
  await work();
  return pieces / ((performance.now() - started) / 1000);
}
