import { seedDemoOrRefuse } from './demo.ts';
import { runCommand } from './run-command.ts';
import { withPlatform } from './with-platform.ts';

await runCommand(() =>
  withPlatform(async (platform) => {
    const { signIns, clientPath } = await seedDemoOrRefuse(platform);
    for (const { role, email, password } of signIns) console.log(`  ${role.padEnd(10)} ${email}   ${password}`);
    console.log(`  client     ${new URL(clientPath, platform.config.publicUrl).href}`);
  }),
);
