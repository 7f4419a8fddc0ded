import { StartupError } from '../startup-error.ts';

/** Turns what the disk, the system or PostgreSQL said into one sentence with a way out. */
export function explainPostgres(error: unknown, folder: string): Error {
  if (error instanceof StartupError) return error;
  const { code = '', message = String(error), stderr = '' } = error as NodeJS.ErrnoException & { stderr?: string };
  const text = `${message}\n${stderr}`;
  const said = (reason: string) => new StartupError(reason, { cause: error });
  if (code === 'ENOSPC' || /No space left on device/.test(text)) {
    return said(`The disk that holds ${folder} is full; free some space, or set DATA_DIR to a folder on another disk.`);
  }
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM' || /Permission denied/.test(text)) {
    return said(`${folder} cannot be written or used by the built-in PostgreSQL; set DATA_DIR to a folder you own.`);
  }
  if (/could not look up effective user ID/.test(text)) {
    return said(
      'The built-in PostgreSQL runs only under a user that has a name on this machine; use one, or set DATABASE_URL to a PostgreSQL of your own.',
    );
  }
  if (/database files are incompatible|was initialized by PostgreSQL version/.test(text)) {
    return said(`${folder} was made by another version of PostgreSQL; restore a backup into a new DATA_DIR.`);
  }
  return said(
    `The built-in PostgreSQL in ${folder} did not start (see postgres.log beside it): ${lastLine(text)}; DATABASE_URL can name a PostgreSQL of your own.`,
  );
}

function lastLine(text: string): string {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  return (lines.findLast((line) => /FATAL|PANIC|ERROR|error/.test(line)) ?? lines.at(-1) ?? '').trim();
}
