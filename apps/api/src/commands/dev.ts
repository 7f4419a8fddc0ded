import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { readConfig } from '../config.ts';
import { findProjectRoot } from '../platform/project-root.ts';
import { stopOnSignal } from '../platform/signals.ts';
import { watchStarter } from './ancestors.ts';
import { generateClient } from './build/client-generator.ts';
import { runCommand } from './run-command.ts';

/** For working on the project: the server starts again at each change, the dashboard changes while you look. */
await runCommand(async () => {
  const config = readConfig();
  const root = findProjectRoot();
  generateClient(root);
  const require = createRequire(join(root, 'apps/dashboard/package.json'));
  const { createServer } = (await import(pathToFileURL(require.resolve('vite')).href)) as typeof import('vite');
  const folder = join(root, 'apps/dashboard');
  const pages = await createServer({ root: folder, configFile: join(folder, 'vite.config.ts') });
  await pages.listen();
  const [address] = pages.resolvedUrls?.local ?? [];
  const tsx = join(root, 'node_modules/tsx/dist/cli.mjs');
  const api = spawn(
    process.execPath,
    [tsx, 'watch', '--clear-screen=false', join(root, 'apps/api/src/commands/serve.ts')],
    {
      stdio: 'inherit',
      env: {
        ...process.env,
        PORT: String(config.port),
        PUBLIC_URL: process.env.PUBLIC_URL ?? new URL(address ?? 'http://localhost:5173').origin,
      },
    },
  );
  console.log(`The dashboard is at ${address}`);
  const ended = new Promise<void>((done) => {
    api.once('exit', () => done());
  });
  const stop = stopOnSignal(async () => {
    api.kill('SIGTERM');
    await Promise.all([ended, pages.close()]);
  });
  watchStarter(() => stop('npm is gone'));
  await ended;
});
