import { readConfig } from '../config.ts';
import { stopOnSignal } from '../platform/signals.ts';
import { startServer } from '../server.ts';
import { watchStarter } from './ancestors.ts';
import { forgetUnfinishedDemo, readDemoAccess, seedDemoOnce } from './demo.ts';
import { runCommand } from './run-command.ts';

/** Serves everything until a signal stops it, and says where and how to sign in. */
async function serve(): Promise<void> {
  const config = readConfig();
  const starting = startServer({
    config,
    beforeListening: async (platform) => {
      if (config.seed !== 'demo') return;
      await forgetUnfinishedDemo(platform);
      await seedDemoOnce(platform);
    },
  });
  // Known before the start is finished, so that a signal during a first start is obeyed too.
  const stop = stopOnSignal(async () => (await starting).close());
  watchStarter(() => stop('npm is gone'));
  const { url } = await starting;
  console.log(`\nUnderlath is at ${url}`);
  const demo = readDemoAccess(config);
  if (demo) {
    for (const { role, email, password } of demo.signIns) console.log(`  ${role.padEnd(10)} ${email}   ${password}`);
    console.log(`  client     ${new URL(demo.clientPath, url).href}`);
  }
  console.log('');
}

await runCommand(serve);
