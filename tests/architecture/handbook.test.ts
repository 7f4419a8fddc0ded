import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { rightsPage } from '@underlath/contract/rights-page';
import { checks } from '@underlath/rules/all-checks';
import { handbook } from '@underlath/rules/handbook';
import { expect, test } from 'vitest';

const folder = resolve(import.meta.dirname, '../../packages/rules');
const files = await handbook(checks);

test('the handbook of the checks says what the checks say; "npm run handbook" writes it anew', () => {
  for (const { path, content } of files) expect(readFileSync(join(folder, path), 'utf8'), path).toBe(content);
});

test('every check stands in the handbook with its drawing, and no drawing is left of one that is gone', () => {
  const [text] = files;
  for (const { id } of checks) expect(text?.content).toContain(`](drawings/${id}.svg)`);
  expect(readdirSync(join(folder, 'drawings')).toSorted()).toEqual(checks.map(({ id }) => `${id}.svg`).toSorted());
});

test('the table of rights says what the permissions say; "npm run handbook" writes it anew', () => {
  const path = resolve(import.meta.dirname, '../../packages/contract/RIGHTS.md');
  expect(readFileSync(path, 'utf8')).toBe(rightsPage());
});
