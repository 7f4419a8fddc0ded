import { createReadStream } from 'node:fs';
import { copyFile, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { sealingKeyFile } from '../platform/accounts/sealing.ts';
import type { Platform } from '../platform/platform.ts';
import { type Manifest, writeMeasured } from './backup/folder.ts';

/** Where a backup keeps the key that the server had made for itself. */
export const keyPath = (folder: string): string => join(folder, 'sealing-key');

/** The key goes along where the server made it: without it nobody's authenticator app would be known any more. One that is configured is kept by whoever configured it. */
export async function takeKey({ config }: Platform, folder: string): Promise<Manifest['sealingKey']> {
  if (config.sealingKey !== undefined) return undefined;
  return writeMeasured(createReadStream(sealingKeyFile(config.dataDir)), keyPath(folder));
}

export const tellKey = ({ sealingKey }: Manifest): string =>
  sealingKey
    ? 'The backup holds the key that seals the secrets of authenticator apps (sealing-key): whoever has the backup can read them. Keep it as you keep passwords, or configure SEALING_KEY, which is never in a backup.'
    : 'SEALING_KEY is configured, so it is not in the backup; keep it elsewhere. Without it people sign in with recovery codes.';

/**
 * Puts the key where the server looks for it. Another one that lies there is put aside and not thrown away: it may belong to
 * another database of the same data folder. Answers what has to be known of it.
 */
export async function bringKey({ config }: Platform, folder: string, { sealingKey }: Manifest): Promise<string[]> {
  if (!sealingKey)
    return [
      'The backup holds no sealing key: set SEALING_KEY to the one it was taken with, or authenticator apps are unknown.',
    ];
  if (config.sealingKey !== undefined) {
    return [
      'SEALING_KEY is set here, and the backup was taken with a key of its own (sealing-key): authenticator apps are unknown here. Start without SEALING_KEY and restore again to bring it along.',
    ];
  }
  const file = sealingKeyFile(config.dataDir);
  if ((await readFile(file, 'utf8')) === (await readFile(keyPath(folder), 'utf8'))) return [];
  const aside = `${file}.before-restore-${Date.now()}`;
  await rename(file, aside);
  await copyFile(keyPath(folder), file);
  return [`The sealing key is the backup’s now; the one that was here is ${aside}. Start servers that run here anew.`];
}
