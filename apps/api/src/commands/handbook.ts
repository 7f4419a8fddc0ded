import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { rightsPage } from '@underlath/contract/rights-page';
import { checks } from '@underlath/rules/all-checks';
import { handbook } from '@underlath/rules/handbook';
import { findProjectRoot } from '../platform/project-root.ts';
import { runCommand } from './run-command.ts';

/**
 * Writes packages/rules/CHECKS.md and its drawings from the checks, a drawing whose check is gone goes too; and
 * packages/contract/RIGHTS.md from the permissions.
 */
async function writeHandbook(): Promise<void> {
  const folder = join(findProjectRoot(), 'packages/rules');
  rmSync(join(folder, 'drawings'), { recursive: true, force: true });
  mkdirSync(join(folder, 'drawings'));
  for (const { path, content } of await handbook(checks)) writeFileSync(join(folder, path), content);
  writeFileSync(join(findProjectRoot(), 'packages/contract/RIGHTS.md'), rightsPage());
}

await runCommand(writeHandbook);
