import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readConfig } from './config.ts';

describe('configuration', () => {
  test('an empty environment gives the embedded default with the demo', () => {
    const config = readConfig({});
    expect(config).toMatchObject({
      port: 4000,
      host: '127.0.0.1',
      seed: 'demo',
      worker: 'inline',
      signUp: 'invited',
      mailPerHour: 60,
      databaseUrl: undefined,
    });
    expect(config.dataDir).toBe(join(config.projectRoot, '.data'));
    expect(config.storage).toEqual({ kind: 'file', folder: join(config.dataDir, 'files') });
    expect(config.publicUrl).toBe('http://localhost:4000');
  });

  test('a given database is not filled with the demo unless asked', () => {
    const DATABASE_URL = 'postgresql://u:p@db:5432/underlath';
    expect(readConfig({ DATABASE_URL }).seed).toBe('none');
    expect(readConfig({ DATABASE_URL, SEED: 'demo' }).seed).toBe('demo');
  });

  test('a port that is not a number stops the start and says what came and what is allowed', () => {
    expect(() => readConfig({ PORT: 'eighty' })).toThrow(
      'PORT is "eighty", which is not allowed; it takes a whole number from 0 (any free port) to 65535.',
    );
  });

  test.each([
    ['HOST', 'not a host'],
    ['DATABASE_URL', 'mysql://db/x'],
    ['STORAGE_URL', 'ftp://store'],
    ['STORAGE_URL', 's3:'],
    ['SMTP_URL', 'mail.example'],
    ['PUBLIC_URL', 'underlath.example'],
    ['SEED', 'yes'],
    ['WORKER', 'maybe'],
    ['SIGN_UP', 'sometimes'],
    ['MAIL_PER_HOUR', '0'],
  ])('%s=%s stops the start by name', (name, value) => {
    expect(() => readConfig({ [name]: value })).toThrow(new RegExp(`^${name} is `));
  });

  test('a password in a wrong address is not shown', () => {
    expect(() => readConfig({ DATABASE_URL: 'mysql://u:secret@db/x' })).toThrow(/mysql:\/\/u:\*\*\*@db/);
  });

  test('an s3 address carries bucket, prefix, endpoint and region', () => {
    const config = readConfig({ STORAGE_URL: 's3://photos/house?endpoint=http://store:9000&region=us-west-2' });
    expect(config.storage).toEqual({
      kind: 's3',
      bucket: 'photos',
      prefix: 'house',
      endpoint: 'http://store:9000',
      region: 'us-west-2',
      pathStyle: true,
    });
  });

  test('a file address may be relative to the project or absolute', () => {
    const relative = readConfig({ STORAGE_URL: 'file:./photos' });
    expect(relative.storage).toEqual({ kind: 'file', folder: join(relative.projectRoot, 'photos') });
    expect(readConfig({ STORAGE_URL: 'file:///srv/photos' }).storage).toEqual({ kind: 'file', folder: '/srv/photos' });
  });
});
