import { resolve } from 'node:path';
import { tellUnsentMail } from '../features/mail/mail-of-backup.ts';
import { StartupError } from '../platform/startup-error.ts';
import { restore } from './backup/reader.ts';
import { bringKey } from './backup-key.ts';
import { runCommand } from './run-command.ts';
import { reportVerification } from './verification/verification.ts';
import { withPlatform } from './with-platform.ts';

await runCommand(() =>
  withPlatform(async (platform) => {
    const folder = process.argv[2];
    if (!folder) throw new StartupError('Name the folder of the backup: npm run restore -- <folder>.');
    const manifest = await restore(platform, resolve(folder));
    const { tables, files, takenAt } = manifest;
    const rowCount = tables.reduce((sum, table) => sum + table.rowCount, 0);
    console.log(`Restored ${rowCount} rows and ${files.length} files of ${takenAt}.`);
    for (const line of await bringKey(platform, resolve(folder), manifest)) console.log(line);
    for (const line of await tellUnsentMail(platform.database)) console.log(line);
    if (!(await reportVerification(platform))) process.exitCode = 1;
  }),
);
