import { generateClient } from './client-generator.ts';
import { runCommand } from './run-command.ts';

await runCommand(async () => generateClient());
