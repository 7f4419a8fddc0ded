import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** Loads a file of this folder bundled as the product is: run from source, the loader would mark every function it makes. */
export async function withBundle<M, R>(file: string, use: (loaded: M) => Promise<R>): Promise<R> {
  const folder = mkdtempSync(join(import.meta.dirname, '.bundled-'));
  try {
    const outfile = join(folder, 'bundle.mjs');
    await build({
      entryPoints: [join(import.meta.dirname, file)],
      bundle: true,
      format: 'esm',
      outfile,
      platform: 'node',
    });
    return await use(await import(pathToFileURL(outfile).href));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
