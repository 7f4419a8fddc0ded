import { stopOnSignal } from '../platform/signals.ts';
import { startWorker } from '../worker.ts';
import { runCommand } from './run-command.ts';

await runCommand(async () => {
  const starting = startWorker();
  stopOnSignal(async () => (await starting).close());
  await starting;
  console.log('The worker is running.');
});
