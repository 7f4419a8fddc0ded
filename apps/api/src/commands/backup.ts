import { resolve } from 'node:path';
import { StartupError } from '../platform/startup-error.ts';
import { backUp } from './backup/writer.ts';
import { tellKey } from './backup-key.ts';
import { runCommand } from './run-command.ts';
import { withPlatform } from './with-platform.ts';

await runCommand(() =>
  withPlatform(async (platform) => {
    const folder = process.argv[2];
    if (!folder) throw new StartupError('Name the folder to make: npm run backup -- <folder>.');
    const { manifest, faults, leftOver } = await backUp(platform, resolve(folder));
    const { tables, files } = manifest;
    const rowCount = tables.reduce((sum, table) => sum + table.rowCount, 0);
    for (const key of leftOver) console.log(`Left over, no row speaks of it: ${key}`);
    for (const fault of faults) console.error(`FAULT ${fault}`);
    if (faults.length > 0) process.exitCode = 1;
    console.log(tellKey(manifest));
    const wrong = faults.length === 1 ? '1 file is' : `${faults.length} files are`;
    const end = faults.length > 0 ? `, but it is not whole: ${wrong} not what the rows say.` : '.';
    console.log(
      `Backed up ${rowCount} rows of ${tables.length} tables and ${files.length} files into ${resolve(folder)}${end}`,
    );
  }),
);
