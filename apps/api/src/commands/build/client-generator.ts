import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { findProjectRoot } from '../../platform/project-root.ts';
import { StartupError } from '../../platform/startup-error.ts';

/**
 * Writes the database client from prisma/schema.prisma into apps/api/src/generated, unless it is already the one.
 * Prisma looks for its native schema engine even where only the client is wanted; naming any program that exists
 * (the running node) keeps it from downloading one.
 */
export function generateClient(root = findProjectRoot()): void {
  const require = createRequire(join(root, 'apps/api/package.json'));
  const manifest = require.resolve('prisma/package.json');
  const { version, bin } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string; bin: { prisma: string } };
  const stamp = createHash('sha256')
    .update(version)
    .update(readFileSync(join(root, 'prisma/schema.prisma')))
    .digest('hex');
  const folder = join(root, 'apps/api/src/generated');
  const stampFile = join(folder, 'schema.sha256');
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return;
  rmSync(stampFile, { force: true });
  const run = spawnSync(process.execPath, [join(dirname(manifest), bin.prisma), 'generate'], {
    cwd: root,
    encoding: 'utf8',
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
      CHECKPOINT_DISABLE: '1',
    },
  });
  if (run.status !== 0) throw new StartupError(`prisma generate failed:\n${run.stdout}\n${run.stderr}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(stampFile, stamp);
}
