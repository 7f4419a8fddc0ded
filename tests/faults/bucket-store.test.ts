import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { readConfig } from '../../apps/api/src/config.ts';
import { createFileStore, type FileStore } from '../../apps/api/src/platform/file-store/file-store.ts';
import { FileMissingError, StoreAwayError } from '../../apps/api/src/platform/file-store/store-errors.ts';
import { startObjectStore } from '../support/object-store.ts';

let dataDir: string;
let remote: Awaited<ReturnType<typeof startObjectStore>>;
let store: FileStore;
const bytes = Buffer.from('joists that move differently from their neighbors');

beforeAll(async () => {
  vi.stubEnv('AWS_ACCESS_KEY_ID', 'test');
  vi.stubEnv('AWS_SECRET_ACCESS_KEY', 'test');
  dataDir = mkdtempSync(join(tmpdir(), 'underlath-bucket-'));
  remote = await startObjectStore();
  const STORAGE_URL = `s3://photos/house?endpoint=${remote.endpoint}`;
  store = await createFileStore(readConfig({ DATA_DIR: dataDir, STORAGE_URL }));
});
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(dataDir, { recursive: true, force: true });
});

describe('the file store in a bucket', () => {
  test('stores exactly the bytes received, below its prefix, and forgets the local copy', async () => {
    await store.keep(await store.receive(Readable.from([bytes])), 'one/original');
    await store.put('one/view', bytes);
    expect([...remote.objects.keys()].sort()).toEqual(['photos/house/one/original', 'photos/house/one/view']);
    expect(remote.objects.get('photos/house/one/original')).toEqual(bytes);
    expect(readdirSync(join(dataDir, 'incoming'))).toEqual([]);
  });

  test('reads, lists and removes them', async () => {
    const { stream, byteCount } = await store.open('one/original');
    expect([byteCount, await buffer(stream)]).toEqual([bytes.length, bytes]);
    expect(await store.bytes('one/view')).toEqual(bytes);
    const keys = [];
    for await (const key of store.keys()) keys.push(key);
    expect(keys).toEqual(['one/original', 'one/view']);
    await store.remove('one/view');
    expect(await store.exists('one/view')).toBe(false);
  });

  test('says when an object is missing', async () => {
    await expect(store.open('two/original')).rejects.toBeInstanceOf(FileMissingError);
  });

  test('says when the store is away, and keeps what was received', async () => {
    const received = await store.receive(Readable.from([bytes]));
    await remote.close();
    await expect(store.keep(received, 'three/original')).rejects.toBeInstanceOf(StoreAwayError);
    await expect(store.ping()).rejects.toBeInstanceOf(StoreAwayError);
    expect(readdirSync(join(dataDir, 'incoming'))).toHaveLength(1);
  }, 60_000);
});
