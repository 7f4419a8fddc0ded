import { randomBytes } from 'node:crypto';
import { existsSync, linkSync, mkdirSync, readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Config } from '../../config.ts';
import { openText, sealingKeyOf, sealText } from '../sealed-text.ts';

/** Seals short secrets that the server itself must read again, so that a copy of the database alone shows none of them. */
export interface Sealing {
  /** @param owner whom the secret belongs to; it opens for nobody else */
  seal(owner: string, secret: string): string;
  /** @throws Error when it was sealed with another key, for another owner, or changed since */
  unseal(owner: string, sealed: string): string;
}

/** The key is `SEALING_KEY`, or a file in the data folder that is made at the first start and that every process shares. */
export function createSealing({ sealingKey, dataDir }: Pick<Config, 'sealingKey' | 'dataDir'>): Sealing {
  const key = sealingKeyOf(sealingKey ?? keyOfFolder(dataDir), '', 'underlath sealed account secret');
  return {
    seal: (owner, secret) => sealText(key, secret, owner),
    unseal: (owner, sealed) => openText(key, sealed, owner),
  };
}

/** Where the key lies that a server made for itself. */
export const sealingKeyFile = (dataDir: string): string => join(dataDir, 'sealing-key');

function keyOfFolder(dataDir: string): string {
  const file = sealingKeyFile(dataDir);
  if (existsSync(file)) return readFileSync(file, 'utf8');
  mkdirSync(dataDir, { recursive: true });
  const mine = join(dataDir, `sealing-key-${process.pid}`);
  writeFileSync(mine, randomBytes(32).toString('base64url'), { mode: 0o600 });
  try {
    // Whole or not at all, and only where there is none: two processes that start at once end up with the same key.
    linkSync(mine, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    unlinkSync(mine);
  }
  return readFileSync(file, 'utf8');
}
