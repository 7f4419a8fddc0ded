import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream, readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import * as z from 'zod';
import { hashOf } from '../../platform/hash.ts';
import { StartupError } from '../../platform/startup-error.ts';

const part = z.object({ sha256: z.string(), byteCount: z.number() });

/** `manifest.json` of a backup: written last, so a folder that has one is whole. */
export const manifestSchema = z.object({
  format: z.literal('underlath.backup/2'),
  takenAt: z.iso.datetime(),
  migrations: z.array(z.object({ name: z.string(), checksum: z.string() })),
  /** Rows as PostgreSQL's COPY text, in an order in which every row's parents come first. */
  tables: z.array(part.extend({ name: z.string(), columns: z.array(z.string()), rowCount: z.number() })),
  files: z.array(part.extend({ key: z.string() })),
  /** Where the record of each project, and of each company, stood; a witness for later. */
  heads: z.array(z.object({ companyId: z.string(), recordId: z.string(), seq: z.int(), hash: z.string() })),
  /** The server's own sealing key; absent where one is configured, and in backups from before it was taken along. */
  sealingKey: part.optional(),
  /** Background work that was not done yet. */
  jobs: z.array(z.object({ name: z.string(), data: z.unknown() })),
});
export type Manifest = z.infer<typeof manifestSchema>;

/** The manifest as it lies in the folder: with the hash of its own canonical form. */
export function sealManifest(manifest: Manifest): string {
  return JSON.stringify({ ...manifest, sha256: hashOf(manifest) }, null, 2);
}

export const tablePath = (folder: string, name: string): string => join(folder, 'tables', `${name}.copy`);
export const filePath = (folder: string, key: string): string => join(folder, 'files', key);

/** @throws StartupError when the folder is no whole backup, or its manifest is not the one that was written */
export function readManifest(folder: string): Manifest {
  const { sha256, ...manifest } = readSealed(folder);
  if (hashOf(manifest) === sha256) return manifest;
  throw new StartupError(
    `${join(folder, 'manifest.json')} is not as it was when the backup was taken; nothing was restored.`,
  );
}

function readSealed(folder: string) {
  try {
    const text = readFileSync(join(folder, 'manifest.json'), 'utf8');
    return manifestSchema.extend({ sha256: z.string() }).parse(JSON.parse(text));
  } catch (cause) {
    throw new StartupError(
      `${folder} is no backup that this program can read: its manifest.json is missing or damaged.`,
      { cause },
    );
  }
}

/** Writes a stream to a file and tells its hash and length. */
export async function writeMeasured(stream: Readable, path: string): Promise<{ sha256: string; byteCount: number }> {
  await mkdir(dirname(path), { recursive: true });
  const meter = measure();
  await pipeline(stream, meter.pass, createWriteStream(path, { flags: 'wx', mode: 0o600, flush: true }));
  return meter.result();
}

/** @throws StartupError when the file is missing or is not the one the manifest names */
export async function assertUnchanged(path: string, sha256: string): Promise<void> {
  const meter = measure();
  try {
    await pipeline(createReadStream(path), meter.pass.resume());
  } catch (cause) {
    throw new StartupError(`${path} cannot be read; the backup is not whole.`, { cause });
  }
  if (meter.result().sha256 !== sha256) throw new StartupError(`${path} is not as it was when the backup was taken.`);
}

function measure() {
  const hash = createHash('sha256');
  let byteCount = 0;
  const pass = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      hash.update(chunk);
      byteCount += chunk.byteLength;
      done(null, chunk);
    },
  });
  return { pass, result: () => ({ sha256: hash.digest('hex'), byteCount }) };
}
