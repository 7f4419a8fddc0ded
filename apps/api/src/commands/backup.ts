import { resolve } from 'node:path';
import { StartupError } from '../platform/startup-error.ts';
import { backUp } from './backup-writer.ts';
import { runCommand } from './run-command.ts';
import { withPlatform } from './with-platform.ts';

await runCommand(() =>
  withPlatform(async (platform) => {
    const folder = process.argv[2];
    if (!folder) throw new StartupError('Name the folder to make: npm run backup -- <folder>.');
    const { tables, files } = await backUp(platform, resolve(folder));
    const rowCount = tables.reduce((sum, table) => sum + table.rowCount, 0);
    console.log(
      `Backed up ${rowCount} rows of ${tables.length} tables and ${files.length} files into ${resolve(folder)}.`,
    );
  }),
);
