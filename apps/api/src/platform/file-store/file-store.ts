import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { access, constants, mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Disk } from 'flydrive';
import { FSDriver } from 'flydrive/drivers/fs';
import type { BucketStorage, Config } from '../../config.ts';
import { newId } from '../ids.ts';
import { explainStoreError, FileTooLargeError } from './store-errors.ts';

/** Bytes that have arrived whole on this machine but are not in the store yet. Keep or discard each one. */
export interface ReceivedFile {
  /** Where the bytes lie now; readable until kept or discarded. */
  path: string;
  /** SHA-256, hex. */
  sha256: string;
  byteCount: number;
}

export interface FileStore {
  /**
   * Takes a stream to its end, hashing and counting as it passes.
   * @throws FileTooLargeError, StorageFullError, or the stream's own error; the partial file is gone then
   */
  receive(stream: Readable, options?: { maxBytes?: number }): Promise<ReceivedFile>;
  /** Puts a received file under its key, whole or not at all. An existing one is replaced. */
  keep(file: ReceivedFile, key: string): Promise<void>;
  discard(file: ReceivedFile): Promise<void>;
  /** Stores bytes made here (derivatives, documents). */
  put(key: string, bytes: Uint8Array): Promise<void>;
  /** @throws FileMissingError, StoreAwayError */
  open(key: string): Promise<{ stream: Readable; byteCount: number }>;
  /** The whole file in memory. @throws FileMissingError, StoreAwayError */
  bytes(key: string): Promise<Buffer>;
  exists(key: string): Promise<boolean>;
  /** Removing what is not there is no error. */
  remove(key: string): Promise<void>;
  /** Every key in the store, or those below a folder such as `heads/`. */
  keys(folder?: string): AsyncIterable<string>;
  /** Answers when the store can be written. @throws StoreAwayError */
  ping(): Promise<void>;
}

/** Opens the store that the configuration names, and clears what a killed process left half received. */
export async function createFileStore({ storage, dataDir }: Pick<Config, 'storage' | 'dataDir'>): Promise<FileStore> {
  const incoming = storage.kind === 'file' ? join(storage.folder, 'incoming') : join(dataDir, 'incoming');
  try {
    await mkdir(incoming, { recursive: true, mode: 0o700 });
    await clearAbandoned(incoming);
  } catch (error) {
    throw explainStoreError(error, incoming);
  }
  return storage.kind === 'file' ? folderStore(storage.folder, incoming) : bucketStore(storage, incoming);
}

function folderStore(folder: string, incoming: string): FileStore {
  const disk = new Disk(new FSDriver({ location: folder, visibility: 'private' }));
  const store: FileStore = {
    ...commonParts(disk, incoming),
    // The disk library copies and then deletes; a rename on the same file system is whole or nothing.
    keep: (file, key) =>
      explained(key, async () => {
        const place = join(folder, key);
        const made = await mkdir(dirname(place), { recursive: true });
        await rename(file.path, place);
        await flushFolders(dirname(place), made);
      }),
    put: async (key, bytes) => {
      const path = join(incoming, newId());
      await explained(key, () => writeWhole(path, bytes));
      await store.keep({ path, sha256: '', byteCount: bytes.byteLength }, key);
    },
    keys: (below = '') => (existsSync(join(folder, below)) ? listKeys(disk, '', below) : listNothing()),
    ping: () => explained(folder, () => access(folder, constants.W_OK)),
  };
  return store;
}

async function bucketStore(storage: BucketStorage, incoming: string): Promise<FileStore> {
  const { createBucketDisk } = await import('./bucket-disk.ts');
  const disk = createBucketDisk(storage);
  const inBucket = (key: string) => (storage.prefix ? `${storage.prefix}/${key}` : key);
  const parts = commonParts(disk, incoming);
  return {
    receive: parts.receive,
    discard: parts.discard,
    open: (key) => parts.open(inBucket(key)),
    bytes: (key) => parts.bytes(inBucket(key)),
    exists: (key) => parts.exists(inBucket(key)),
    remove: (key) => parts.remove(inBucket(key)),
    keys: (below = '') => listKeys(disk, storage.prefix, below),
    keep: async (file, key) => {
      // An object store shows an upload only when it is complete; a known length keeps it to one request.
      const options = { contentLength: file.byteCount };
      await explained(key, () => disk.putStream(inBucket(key), createReadStream(file.path), options));
      await rm(file.path, { force: true });
    },
    put: (key, bytes) => explained(key, () => disk.put(inBucket(key), bytes)),
    ping: async () => {
      await parts.exists(inBucket('ping'));
    },
  };
}

function commonParts(disk: Disk, incoming: string) {
  return {
    receive: (stream: Readable, { maxBytes = Number.POSITIVE_INFINITY } = {}) =>
      receive(stream, join(incoming, newId()), maxBytes),
    discard: async (file: ReceivedFile) => rm(file.path, { force: true }),
    open: (key: string) =>
      explained(key, async () => {
        const { contentLength } = await disk.getMetaData(key);
        return { stream: await disk.getStream(key), byteCount: contentLength };
      }),
    bytes: (key: string) => explained(key, async () => Buffer.from(await disk.getBytes(key))),
    exists: (key: string) => explained(key, () => disk.exists(key)),
    remove: (key: string) => explained(key, () => disk.delete(key)),
  };
}

async function* listNothing(): AsyncGenerator<string> {}

async function* listKeys(disk: Disk, prefix: string, below: string): AsyncGenerator<string> {
  const folder = [prefix, below.replace(/\/$/, '')].filter(Boolean).join('/');
  let paginationToken: string | undefined;
  do {
    const options = { recursive: true, ...(paginationToken && { paginationToken }) };
    const page = await explained(folder, () => disk.listAll(folder || '/', options));
    for (const entry of page.objects) {
      if (!entry.isFile) continue;
      const key = prefix ? entry.key.slice(prefix.length + 1) : entry.key;
      if (!key.startsWith('incoming/')) yield key;
    }
    paginationToken = page.paginationToken;
  } while (paginationToken);
}

/** Chunks from a socket are 64 KiB at most, and each write is a trip to another thread; so many bytes go at once. */
const writeBytes = 1024 * 1024;

async function receive(stream: Readable, path: string, maxBytes: number): Promise<ReceivedFile> {
  const hash = createHash('sha256');
  let byteCount = 0;
  let gathered: Buffer[] = [];
  let gatheredBytes = 0;
  const takeGathered = () => {
    const whole = Buffer.concat(gathered, gatheredBytes);
    gathered = [];
    gatheredBytes = 0;
    return whole;
  };
  const meter = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      byteCount += chunk.byteLength;
      if (byteCount > maxBytes) return done(new FileTooLargeError(maxBytes));
      hash.update(chunk);
      gathered.push(chunk);
      gatheredBytes += chunk.byteLength;
      if (gatheredBytes < writeBytes) return done();
      done(null, takeGathered());
    },
    flush: (done) => done(null, takeGathered()),
  });
  try {
    await pipeline(stream, meter, createWriteStream(path, { flags: 'wx', mode: 0o600, flush: true }));
  } catch (error) {
    await rm(path, { force: true });
    // The sender's own failures pass as they are; those of our disk are told as the store's.
    const isOurs = ['open', 'write', 'fsync', 'close'].includes((error as NodeJS.ErrnoException).syscall ?? '');
    throw isOurs ? explainStoreError(error, path) : error;
  }
  return { path, sha256: hash.digest('hex'), byteCount };
}

/**
 * A name outlives a power cut only once its folder is flushed, and a new folder's name only once the one above it is.
 * @param made the highest folder that had to be made
 */
async function flushFolders(folder: string, made: string | undefined): Promise<void> {
  // Windows opens no folder for flushing; its file system writes names through a journal.
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
  if (made !== undefined && folder.length >= made.length) await flushFolders(dirname(folder), made);
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  try {
    await pipeline([bytes], createWriteStream(path, { flags: 'wx', mode: 0o600, flush: true }));
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
}

/** An upload takes minutes at most, so what is older than a day belongs to a process that is gone. */
async function clearAbandoned(incoming: string): Promise<void> {
  const dayMs = 86_400_000;
  for (const name of await readdir(incoming)) {
    const path = join(incoming, name);
    const info = await stat(path).catch(() => undefined);
    if (info && Date.now() - info.mtimeMs > dayMs) await rm(path, { force: true });
  }
}

async function explained<Result>(key: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    throw explainStoreError(error, key);
  }
}
