import { readWitnesses } from './handed-witnesses.ts';
import { runCommand } from './run-command.ts';
import { reportVerification } from './verification.ts';
import { withPlatform } from './with-platform.ts';

await runCommand(async () => {
  const handed = readWitnesses(process.argv.slice(2));
  await withPlatform(async (platform) => {
    if (!(await reportVerification(platform, handed))) process.exitCode = 1;
  });
});
