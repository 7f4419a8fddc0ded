import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { readConfig } from '../config.ts';
import { findProjectRoot } from '../platform/project-root.ts';
import { buildIfNeeded } from './build.ts';
import { runCommand } from './run-command.ts';

await runCommand(import.meta.url, async () => {
  // A wrong setting is told before a minute of building.
  readConfig();
  const root = findProjectRoot();
  await buildIfNeeded(root);
  const { serve } = (await import(
    pathToFileURL(join(root, 'apps/api/dist/serve.js')).href
  )) as typeof import('./serve.ts');
  await serve();
});
