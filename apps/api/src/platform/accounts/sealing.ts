import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';
import { existsSync, linkSync, mkdirSync, readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Config } from '../../config.ts';

/** Seals short secrets that the server itself must read again, so that a copy of the database alone shows none of them. */
export interface Sealing {
  /** @param owner whom the secret belongs to; it opens for nobody else */
  seal(owner: string, secret: string): string;
  /** @throws Error when it was sealed with another key, for another owner, or changed since */
  unseal(owner: string, sealed: string): string;
}

const cipher = 'aes-256-gcm';
const nonceBytes = 12;
const tagBytes = 16;

/** The key is `SEALING_KEY`, or a file in the data folder that is made at the first start and that every process shares. */
export function createSealing({ sealingKey, dataDir }: Pick<Config, 'sealingKey' | 'dataDir'>): Sealing {
  const key = Buffer.from(
    hkdfSync('sha256', sealingKey ?? keyOfFolder(dataDir), '', 'underlath sealed account secret', 32),
  );
  return {
    seal: (owner, secret) => {
      const nonce = randomBytes(nonceBytes);
      const sealing = createCipheriv(cipher, key, nonce).setAAD(Buffer.from(owner));
      const text = Buffer.concat([sealing.update(secret, 'utf8'), sealing.final()]);
      return Buffer.concat([nonce, sealing.getAuthTag(), text]).toString('base64');
    },
    unseal: (owner, sealed) => {
      const bytes = Buffer.from(sealed, 'base64');
      const opening = createDecipheriv(cipher, key, bytes.subarray(0, nonceBytes)).setAAD(Buffer.from(owner));
      opening.setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes));
      return Buffer.concat([opening.update(bytes.subarray(nonceBytes + tagBytes)), opening.final()]).toString('utf8');
    },
  };
}

function keyOfFolder(dataDir: string): string {
  const file = join(dataDir, 'sealing-key');
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
