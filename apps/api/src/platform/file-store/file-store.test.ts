import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { createFileStore, type FileStore } from './file-store.ts';
import {
  explainStoreError,
  FileMissingError,
  FileTooLargeError,
  StorageFullError,
  StoreAwayError,
} from './store-errors.ts';

let dataDir: string;
let store: FileStore;
const bytes = Buffer.from('a beam resting on a sliver of steel');
const stream = () => Readable.from([bytes.subarray(0, 7), bytes.subarray(7)]);
const incoming = () => readdirSync(join(dataDir, 'files/incoming'));

beforeAll(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'underlath-store-'));
  store = await createFileStore({ dataDir, storage: { kind: 'file', folder: join(dataDir, 'files') } });
});
afterAll(() => rmSync(dataDir, { recursive: true, force: true }));

describe('the file store in a folder', () => {
  test('hashes and counts what it receives, and shows it under its key only when it is kept', async () => {
    const file = await store.receive(stream());
    expect(file).toMatchObject({ sha256: createHash('sha256').update(bytes).digest('hex'), byteCount: bytes.length });
    expect(await store.exists('one/original')).toBe(false);
    await store.keep(file, 'one/original');
    const opened = await store.open('one/original');
    expect([opened.byteCount, await buffer(opened.stream)]).toEqual([bytes.length, bytes]);
    expect(incoming()).toEqual([]);
  });

  test('a kept file has its name on the disk before it counts as kept, and so has every folder made for it', async () => {
    const handle = await open(dataDir, 'r');
    const handles = Object.getPrototypeOf(handle) as FileHandle;
    await handle.close();
    const flushed: number[] = [];
    const { sync } = handles;
    vi.spyOn(handles, 'sync').mockImplementation(async function (this: FileHandle) {
      flushed.push((await this.stat()).ino);
      await sync.call(this);
    });
    const file = await store.receive(stream());
    flushed.length = 0;
    await store.keep(file, 'deep/er/original');
    vi.restoreAllMocks();
    const folder = (name: string) => statSync(join(dataDir, 'files', name)).ino;
    expect(flushed).toEqual([folder('deep/er'), folder('deep'), folder('.')]);
    await store.remove('deep/er/original');
  });

  test('a file over the limit is refused and leaves nothing', async () => {
    await expect(store.receive(stream(), { maxBytes: bytes.length - 1 })).rejects.toBeInstanceOf(FileTooLargeError);
    expect(incoming()).toEqual([]);
    expect((await store.receive(stream(), { maxBytes: bytes.length })).byteCount).toBe(bytes.length);
    for (const name of incoming()) rmSync(join(dataDir, 'files/incoming', name));
  });

  test('a stream that breaks off leaves nothing', async () => {
    async function* cut() {
      yield bytes;
      throw new Error('the line dropped');
    }
    await expect(store.receive(Readable.from(cut()))).rejects.toThrow('the line dropped');
    expect(incoming()).toEqual([]);
  });

  test('lists keys, and removing one twice is no error', async () => {
    await store.put('two/view', bytes);
    const keys = [];
    for await (const key of store.keys()) keys.push(key);
    expect(keys.sort()).toEqual(['one/original', 'two/view']);
    await store.remove('two/view');
    await store.remove('two/view');
    expect(await store.exists('two/view')).toBe(false);
  });

  test('a file that is not there is said to be missing', async () => {
    await expect(store.open('three/original')).rejects.toBeInstanceOf(FileMissingError);
    await expect(store.bytes('three/original')).rejects.toBeInstanceOf(FileMissingError);
  });

  test('a full disk, a missing object and an unreachable store are told apart', () => {
    const of = (code: string) =>
      explainStoreError(new Error('outer', { cause: Object.assign(new Error('inner'), { code }) }), 'k');
    expect(of('ENOSPC')).toBeInstanceOf(StorageFullError);
    expect(of('ENOENT')).toBeInstanceOf(FileMissingError);
    expect(of('ECONNREFUSED')).toBeInstanceOf(StoreAwayError);
  });
});
