import { runCommand } from './run-command.ts';
import { readWitnesses } from './verification/handed-witnesses.ts';
import { reportVerification } from './verification/verification.ts';
import { withPlatform } from './with-platform.ts';

await runCommand(async () => {
  const handed = readWitnesses(process.argv.slice(2));
  await withPlatform(async (platform) => {
    if (!(await reportVerification(platform, handed))) process.exitCode = 1;
  });
});
