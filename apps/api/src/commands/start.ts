import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { readConfig } from '../config.ts';
import { findProjectRoot } from '../platform/project-root.ts';
import { buildIfNeeded } from './build/builder.ts';
import { runCommand } from './run-command.ts';

await runCommand(async () => {
  // A wrong setting is told before a minute of building.
  readConfig();
  const root = findProjectRoot();
  await buildIfNeeded(root);
  // The built command runs as soon as it is loaded.
  await import(pathToFileURL(join(root, 'apps/api/dist/serve.js')).href);
});
