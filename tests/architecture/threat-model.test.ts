import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const [, section = ''] = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').split(
  '## What could go wrong, and what holds it',
);
const rows = (section.split('\n## ')[0] ?? '').split('\n').filter((line) => /^\| \d/.test(line));

test('every row of the threat model names tests, and each of them is there', () => {
  expect(rows.length).toBeGreaterThan(15);
  for (const row of rows) {
    const tests = [...row.matchAll(/`([\w./-]+\.test\.ts)`/g)].map(([, path = '']) => path);
    expect(tests, row).not.toEqual([]);
    for (const path of tests) expect({ path, isThere: existsSync(join(root, path)) }).toEqual({ path, isThere: true });
  }
});
