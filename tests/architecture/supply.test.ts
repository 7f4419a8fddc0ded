import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { writeBill } from '../../apps/api/src/commands/build/bill-of-materials.ts';

const root = resolve(import.meta.dirname, '../..');
interface Manifest {
  dependencies?: object;
  devDependencies?: object;
  optionalDependencies?: object;
}
const manifestOf = (folder: string) => JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')) as Manifest;
const workspaces = ['packages/rules', 'packages/contract', 'apps/api', 'apps/dashboard'];

const filesIn = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !/node_modules|\/generated\//.test(path));

/** Packages that a file imports by name, as the compiler reads it. */
const packagesOf = (path: string): string[] =>
  ts
    .preProcessFile(readFileSync(path, 'utf8'))
    .importedFiles.map(({ fileName }) => fileName)
    .filter((name) => !/^(?:[./]|node:|virtual:)/.test(name))
    .map((name) =>
      name
        .split('/')
        .slice(0, name.startsWith('@') ? 2 : 1)
        .join('/'),
    );

const isTest = (path: string): boolean => /\.(?:test|setup)\.tsx?$|(?:^|\/)tests\//.test(path);
const keys = (...parts: (object | undefined)[]): Set<string> =>
  new Set(parts.flatMap((part) => Object.keys(part ?? {})));

test('what the program imports, its own package declares as what it runs with', () => {
  const missing: string[] = [];
  for (const folder of workspaces) {
    const { dependencies, optionalDependencies, devDependencies } = manifestOf(folder);
    // A browser's packages are built in; what only the builder runs is declared beside them.
    const declared = keys(dependencies, optionalDependencies, folder === 'apps/dashboard' ? devDependencies : {});
    for (const path of filesIn(`${folder}/src`)) {
      if (isTest(relative(root, path))) continue;
      for (const name of packagesOf(path)) if (!declared.has(name)) missing.push(`${relative(root, path)}: ${name}`);
    }
  }
  expect(missing).toEqual([]);
});

test('what only tests import, the root or a package declares', () => {
  const all = ['', ...workspaces].map(manifestOf);
  const declared = keys(...all.flatMap((one) => [one.dependencies, one.devDependencies, one.optionalDependencies]));
  const own = new Set(['@underlath/rules', '@underlath/contract', '@underlath/api', '@underlath/dashboard']);
  const missing = [...filesIn('tests'), ...workspaces.flatMap((folder) => filesIn(`${folder}/src`)).filter(isTest)]
    .flatMap((path) => packagesOf(path).map((name) => ({ path: relative(root, path), name })))
    .filter(({ name }) => !declared.has(name) && !own.has(name));
  expect(missing).toEqual([]);
});

test('the bill of materials is CycloneDX, names what runs with its license, and nothing that only tests use', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'underlath-bill-'));
  const { components, undeclared } = await writeBill(root, folder);
  const bill = JSON.parse(readFileSync(join(folder, 'underlath.cdx.json'), 'utf8'));
  expect([bill.bomFormat, bill.metadata.component.name]).toEqual(['CycloneDX', 'underlath']);
  expect(bill.components).toHaveLength(components);
  const names = bill.components.map(({ purl }: { purl: string }) => decodeURIComponent(purl));
  expect(names.some((purl: string) => purl.startsWith('pkg:npm/fastify@'))).toBe(true);
  expect(names.some((purl: string) => /pkg:npm\/(?:vitest|@playwright)/.test(purl))).toBe(false);
  const licenses = readFileSync(join(folder, 'licenses.md'), 'utf8');
  expect(licenses).toMatch(/^\| @fastify\/swagger \| \d+\.\d+\.\d+ \| MIT \|$/m);
  // Our own four, and those whose authors wrote none into their manifest.
  expect(undeclared.filter((name) => !name.startsWith('@underlath/')).length).toBeLessThan(5);
  rmSync(folder, { recursive: true });
}, 60_000);
