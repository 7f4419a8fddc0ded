import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
/** Made by a program, installed, or handed out as it is. */
const notWritten = new Set(['node_modules', 'dist', 'generated', 'drawings', 'public']);

/** More than that and files are told apart by the first half of their names, which is what folders are for. */
const MOST_FILES = 25;
/** Belongs to the file beside it: its tests, its worked cases, its answers kept to compare with. */
const isBeside = /\.(test\.tsx?|cases\.ts|answers\.txt)$/;

/** Folders that are being taken apart. The list only gets shorter. */
const tooFull = ['packages/contract/src'];

/**
 * Names that the contract repeats from the rules, and names of change orders and prices that go into the rules: both are
 * being rebuilt. The list only gets shorter.
 */
const namedTwice = [
  'ContentReview',
  'Contingency',
  'ContractStanding',
  'CostBook',
  'Estimate',
  'LedgerEntry',
  'LineOverride',
  'LoadPathAnswer',
  'Mark',
  'Member',
  'NoticeClock',
  'OrderRow',
  'OverrideMark',
  'PlannedPayment',
  'assertContent',
  'contentReview',
  'contractToday',
  'named',
  'text',
];

interface Folder {
  path: string;
  files: string[];
}

function foldersUnder(path: string): Folder[] {
  const entries = readdirSync(join(root, path), { withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map(({ name }) => name);
  const inside = entries.filter(
    (entry) => entry.isDirectory() && !notWritten.has(entry.name) && !entry.name.startsWith('dist-'),
  );
  return [{ path, files }, ...inside.flatMap(({ name }) => foldersUnder(`${path}/${name}`))];
}

const folders = ['packages', 'apps', 'seed'].flatMap(foldersUnder);
const product = folders
  .filter(({ path }) => /^(packages|apps)\/[^/]+\/src(\/|$)/.test(path))
  .flatMap(({ path, files }) => files.map((name) => `${path}/${name}`))
  .filter((path) => /\.tsx?$/.test(path) && !isBeside.test(path));

const declaration = /^export (?:declare |abstract |async )*(const|let|function\*?|class|interface|type|enum) (\w+)/gm;

/** Where each name is declared. A file that hands on another's export declares nothing. */
function declarations(): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  for (const path of product) {
    for (const [, kind = '', name = ''] of readFileSync(join(root, path), 'utf8').matchAll(declaration)) {
      if (hasFileInItsName(path, kind)) continue;
      found.set(name, (found.get(name) ?? new Set()).add(path));
    }
  }
  return found;
}

/**
 * What is never met without its file's name: a query of a repository (`findings.findProject`), and the drawing and the
 * inputs of a check, which its own file alone takes in.
 */
const hasFileInItsName = (path: string, kind: string): boolean =>
  (path.endsWith('.repository.ts') && /^(const|function)/.test(kind)) ||
  /^packages\/rules\/src\/checks\/.*\.(drawing|inputs)\.ts$/.test(path);

describe('rooms', () => {
  it('are all read', () => {
    expect(folders.length).toBeGreaterThan(100);
    expect(product.length).toBeGreaterThan(700);
  });

  it('have at most 25 files each, beside the tests, cases and answers of those files', () => {
    const full = folders.filter(({ files }) => files.filter((name) => !isBeside.test(name)).length > MOST_FILES);
    expect(full.map(({ path }) => path).sort()).toEqual(tooFull);
  });

  it('never give one name to two things', () => {
    const twice = [...declarations()].filter(([, paths]) => paths.size > 1).map(([name]) => name);
    expect(twice.sort()).toEqual(namedTwice);
  });
});
