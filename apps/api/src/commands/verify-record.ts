import { runCommand } from './run-command.ts';
import { reportVerification } from './verification.ts';
import { withPlatform } from './with-platform.ts';

await runCommand(() =>
  withPlatform(async (platform) => {
    if (!(await reportVerification(platform))) process.exitCode = 1;
  }),
);
