import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { findProjectRoot } from '../../apps/api/src/platform/project-root.ts';

/** What a page takes from the rules before a check is picked: the list of checks, the judging, the kernel. */
const first = ['registry', 'judging/run-check', 'elements', 'judging/editions', 'kernel/index'];

async function measure() {
  const { outputFiles, metafile } = await build({
    stdin: {
      contents: first.map((file) => `export * from './${file}.ts';`).join('\n'),
      resolveDir: `${findProjectRoot()}/packages/rules/src`,
      sourcefile: 'first.ts',
    },
    bundle: true,
    splitting: true,
    format: 'esm',
    minify: true,
    metafile: true,
    write: false,
    outdir: 'out',
  });
  const base = (path: string) => path.slice(path.lastIndexOf('/') + 1);
  const bytes = new Map(outputFiles.map(({ path, contents }) => [base(path), gzipSync(contents).byteLength]));
  const withImports = (path: string, seen = new Set<string>()): Set<string> => {
    if (seen.has(path)) return seen;
    seen.add(path);
    for (const { path: next, kind } of metafile.outputs[path]?.imports ?? [])
      if (kind === 'import-statement') withImports(next, seen);
    return seen;
  };
  const sizeOf = (paths: Iterable<string>) => [...paths].reduce((sum, path) => sum + (bytes.get(base(path)) ?? 0), 0);
  const entries = Object.entries(metafile.outputs).filter(([, { entryPoint }]) => entryPoint);
  const shared = withImports(entries.find(([, { entryPoint }]) => entryPoint?.includes('first.ts'))?.[0] ?? '');
  const checks = entries
    .filter(([, { entryPoint }]) => entryPoint?.endsWith('.check.ts'))
    .map(([path]) => sizeOf([...withImports(path)].filter((one) => !shared.has(one))));
  return { first: sizeOf(shared), checks };
}

test('judging takes a browser under 60 kB of rules gzipped: what every page has, and the check that was picked', async () => {
  const { first, checks } = await measure();
  expect(checks.length).toBeGreaterThanOrEqual(34);
  expect(first).toBeGreaterThan(10_000);
  expect(Math.min(...checks)).toBeGreaterThan(500);
  expect(first + Math.max(...checks)).toBeLessThan(60_000);
});
