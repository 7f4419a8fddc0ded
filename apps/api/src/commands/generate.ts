import { generateClient } from './build/client-generator.ts';
import { runCommand } from './run-command.ts';

await runCommand(async () => generateClient());
