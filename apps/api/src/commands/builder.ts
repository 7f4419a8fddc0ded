import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Plugin } from 'esbuild';
import { findProjectRoot } from '../platform/project-root.ts';
import { generateClient } from './client-generator.ts';

/** Everything the built program is made from. */
const sources = [
  'apps/api/src',
  'apps/api/package.json',
  'apps/dashboard/src',
  'apps/dashboard/public',
  'apps/dashboard/index.html',
  'apps/dashboard/client.html',
  'apps/dashboard/vite.config.ts',
  'apps/dashboard/check-files-plugin.ts',
  'apps/dashboard/offline-plugin.ts',
  'apps/dashboard/slim-contract-plugin.ts',
  'apps/dashboard/package.json',
  'packages/contract/src',
  'packages/rules/src',
  'prisma/schema.prisma',
  'seed',
  'package-lock.json',
];

/** Programs of the built server; each is an entry (see `runCommand`). */
export const entries = ['serve', 'work', 'seed', 'backup', 'restore', 'verify-record'] as const;

/**
 * Builds dashboard and server into their `dist` folders, unless they are already made from exactly these sources.
 * Returns whether anything was built.
 */
export async function buildIfNeeded(
  root = findProjectRoot(),
  log: (line: string) => void = console.log,
): Promise<boolean> {
  const stampFile = join(root, 'apps/api/dist/sources.sha256');
  const stamp = hashSources(root);
  const pages = join(root, 'apps/dashboard/dist/index.html');
  if (existsSync(stampFile) && existsSync(pages) && readFileSync(stampFile, 'utf8') === stamp) return false;
  rmSync(stampFile, { force: true });
  log('Building (this happens once after each change):');
  await timed('  database client', log, async () => generateClient(root));
  await timed('  dashboard', log, () => buildDashboard(root));
  await timed('  server', log, () => buildServer(root));
  writeFileSync(stampFile, stamp);
  return true;
}

async function timed(name: string, log: (line: string) => void, work: () => Promise<void>): Promise<void> {
  const started = Date.now();
  await work();
  log(`${name} … ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

async function buildDashboard(root: string): Promise<void> {
  const folder = join(root, 'apps/dashboard');
  // Vite is the dashboard's own dependency, so it is found from there.
  const require = createRequire(join(folder, 'package.json'));
  const { build } = (await import(pathToFileURL(require.resolve('vite')).href)) as typeof import('vite');
  await build({ root: folder, configFile: join(folder, 'vite.config.ts'), logLevel: 'warn', mode: 'production' });
  compressFiles(join(folder, 'dist'));
}

const packable = /\.(js|css|html|svg|json)$/;

/** Beside each text its Brotli and gzip forms, which the server hands out to who takes them. Fonts and pictures are packed already. */
function compressFiles(folder: string): void {
  for (const path of listFiles(folder).filter((file) => packable.test(file))) {
    const bytes = readFileSync(path);
    writeFileSync(`${path}.br`, brotliCompressSync(bytes));
    writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }));
  }
}

/** Bundles the server's programs into `outdir`, from where they run without the sources. */
export async function buildServer(root: string, outdir = join(root, 'apps/api/dist')): Promise<void> {
  const { build } = await import('esbuild');
  const source = join(root, 'apps/api/src');
  rmSync(outdir, { recursive: true, force: true });
  mkdirSync(outdir, { recursive: true });
  await build({
    entryPoints: {
      ...Object.fromEntries(entries.map((name) => [name, join(source, 'commands', `${name}.ts`)])),
      // Worker threads start from files of their own.
      'range-worker': join(source, 'platform/range-worker.ts'),
    },
    outdir,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node24',
    sourcemap: true,
    chunkNames: '[name]-[hash]',
    logLevel: 'warning',
    plugins: [packagesStayOutside],
  });
  copyFileSync(join(source, 'platform/heic-decoder.mjs'), join(outdir, 'heic-decoder.mjs'));
}

/** The workspace's own packages are TypeScript and go into the bundle; installed ones are imported when it runs. */
const packagesStayOutside: Plugin = {
  name: 'packages-stay-outside',
  setup: (build) => {
    build.onResolve({ filter: /^[^./]/ }, ({ path, kind }) => {
      if (kind === 'entry-point' || path.startsWith('@underlath/')) return undefined;
      return { path, external: true };
    });
  },
};

function hashSources(root: string): string {
  const hash = createHash('sha256').update(process.version);
  for (const source of sources) {
    for (const file of listFiles(join(root, source)))
      hash.update(`${relative(root, file)}\0`).update(readFileSync(file));
  }
  return hash.digest('hex');
}

function listFiles(path: string): string[] {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [path];
  return readdirSync(path, { withFileTypes: true })
    .filter(({ name }) => name !== 'generated' && name !== 'node_modules')
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .flatMap(({ name }) => listFiles(join(path, name)));
}
