import { buildIfNeeded } from './build/builder.ts';
import { runCommand } from './run-command.ts';

await runCommand(async () => {
  if (!(await buildIfNeeded())) console.log('Everything is built already.');
});
