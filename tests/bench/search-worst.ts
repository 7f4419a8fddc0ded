// npx tsx tests/bench/search-worst.ts [seconds]     looks for costlier bodies than are known
import { parseArgs } from 'node:util';
import { withBundle } from './bundled.ts';

const { positionals } = parseArgs({ allowPositionals: true });
const seconds = Number(positionals[0] ?? 60);

/** Of every check and of load paths, the body that takes longest for each 100 kB of it or part of them. */
await withBundle<typeof import('./costly-bodies.ts'), void>('costly-bodies.ts', async ({ searches }) => {
  const found = (await searches()).map(({ name, search }, _at, all) => ({ name, ...search(seconds / all.length) }));
  found.sort((one, other) => other.ms - one.ms);
  for (const { name, ms, bytes, tried } of found)
    console.log(
      `${ms.toFixed(2).padStart(8)} ms  ${`${bytes}`.padStart(8)} bytes  ${`${tried}`.padStart(6)} tried  ${name}`,
    );
});
