import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { cruise, type ICruiseResult, type IModule } from 'dependency-cruiser';
import { beforeAll, describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const folders = (path: string) =>
  readdirSync(join(root, path), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);

const rules = 'packages/rules/src';
const server = 'apps/api/src';
const features = `${server}/features`;
const dashboard = 'apps/dashboard/src';
const people = folders(dashboard).filter((name) => name !== 'shared' && name !== 'app');
const generated = at(`${server}/generated`);
const platform = at(`${server}/platform`);
const shared = at(`${server}/shared`);
const packages = at('packages');

interface Row {
  from: RegExp;
  to: RegExp[];
}

/**
 * Who may import whom, as the table in DEVELOPERS.md says it: a folder (as the start of a path) or a role (as the end of
 * one), and where its imports inside the project may lead. The first row that fits a file counts. Built from the folder
 * listing, so that a new folder is guarded from its first day.
 */
const allowed: Row[] = [
  { from: at(`${rules}/kernel`), to: [at(`${rules}/kernel`)] },
  { from: at(`${rules}/standards`), to: [at(`${rules}/standards`), at(`${rules}/kernel`)] },
  ...folders(`${rules}/checks`).map((element) => ({
    from: at(`${rules}/checks/${element}`),
    to: [at(`${rules}/checks/${element}`), at(`${rules}/standards`), at(`${rules}/kernel`)],
  })),
  ...['places', 'judging', 'drawing', 'notices', 'schemas'].map((room) => ({
    from: at(`${rules}/${room}`),
    to: [at(`${rules}/${room}`), at(`${rules}/kernel`)],
  })),
  ...['load-paths', 'repairs', 'pricing'].map((room) => ({
    from: at(`${rules}/${room}`),
    to: [at(`${rules}/${room}`), at(`${rules}/kernel`), at(`${rules}/places`), at(`${rules}/repairs`)],
  })),
  {
    from: at(`${rules}/offers`),
    to: ['offers', 'kernel', 'places', 'repairs', 'pricing', 'schemas'].map((room) => at(`${rules}/${room}`)),
  },
  { from: at(rules), to: [at(rules)] },
  { from: at('packages/contract'), to: [at('packages/contract'), at(rules)] },
  {
    // What the office looks at before it sends is the client's own page.
    from: at(`${dashboard}/estimator/change-order/letter-preview.tsx`),
    to: [at(`${dashboard}/client`), at(`${dashboard}/estimator`), at(`${dashboard}/shared`), packages],
  },
  ...people.map((person) => ({
    from: at(`${dashboard}/${person}`),
    to: [at(`${dashboard}/${person}`), at(`${dashboard}/shared`), packages],
  })),
  { from: at(`${dashboard}/shared`), to: [at(`${dashboard}/shared`), packages] },
  { from: at(dashboard), to: [at(dashboard), packages] },
  ...folders(features).flatMap(rowsOfFeature),
  { from: at(`${server}/plugins`), to: [at(`${server}/plugins`), shared, platform, packages] },
  { from: shared, to: [shared, platform, packages] },
  { from: platform, to: [platform, generated, at(`${server}/config.ts`), packages] },
  { from: at(server), to: [at(server), packages, at('seed')] },
];

/** Routes translate, services decide, repositories fetch; of another feature only its service and its mapper are met. */
function rowsOfFeature(name: string): Row[] {
  const own = at(`${features}/${name}`);
  const otherService = new RegExp(`^${features}/[^/]+/[^/]+\\.service\\.ts$`);
  const otherMapper = new RegExp(`^${features}/[^/]+/[^/]+\\.mapper\\.ts$`);
  return [
    {
      from: role(name, 'routes'),
      to: [own, otherService, at(`${server}/plugins`), at(`${server}/platform/problem-error.ts`), shared, packages],
    },
    {
      from: role(name, 'repository'),
      to: [
        role(name, 'repository'),
        role(name, 'data'),
        at(`${server}/platform/database`),
        at(`${server}/platform/hash.ts`),
        generated,
        shared,
        packages,
      ],
    },
    { from: own, to: [own, otherService, otherMapper, shared, platform, packages] },
  ];
}

/** Imports that stand outside of the table until the rooms they are in are built anew. The list only gets shorter. */
const notYet: string[] = [
  'apps/api/src/features/approvals/approvals.service.ts -> apps/api/src/features/contract/contract-change.ts',
  'apps/api/src/features/approvals/approvals.service.ts -> apps/api/src/features/contract/contract-today.ts',
  'apps/api/src/features/scopes/scopes.repository.ts -> apps/api/src/features/estimates/estimates.repository.ts',
];

let modules: IModule[] = [];

beforeAll(async () => {
  const { output } = await cruise(
    ['packages', 'apps'],
    {
      baseDir: root,
      exclude: { path: ['dist/', '\\.(test|setup)\\.tsx?$'] },
      doNotFollow: { path: ['node_modules', 'generated'] },
      tsPreCompilationDeps: true,
      combinedDependencies: true,
    },
    { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  );
  modules = (output as ICruiseResult).modules.filter(({ source }) => /^(packages|apps|seed)\//.test(source));
}, 120_000);

describe('who imports whom', () => {
  it('reads the whole project, not an empty one', () => {
    expect(modules.length).toBeGreaterThan(100);
    expect(edges().some(({ from, to }) => from.startsWith('apps/api') && to.startsWith('packages/contract'))).toBe(
      true,
    );
  });

  it('keeps every import inside the rooms its own room may see', () => {
    const strays = edges().filter(({ from, to }) => {
      const row = allowed.find((rule) => rule.from.test(from));
      return row && !row.to.some((room) => room.test(to));
    });
    expect([...new Set(strays.map(({ from, to }) => `${from} -> ${to}`))].sort()).toEqual(notYet);
  });

  it('lets no check import another check', () => {
    const strays = edges().filter(
      ({ from, to }) => from !== to && from.startsWith(`${rules}/checks`) && /\.check\.ts$/.test(to),
    );
    expect(strays.filter(({ from }) => /\.check\.ts$/.test(from))).toEqual([]);
  });

  it('lets routes reach the database only through their service', () => {
    const strays = edges().filter(
      ({ from, to }) => /\.routes\.ts$/.test(from) && /\.repository\.ts$|platform\/database|generated/.test(to),
    );
    expect(strays).toEqual([]);
  });

  it('imports no file that is a program of its own, whose body a bundler would then move elsewhere', () => {
    const isProgram = (path: string) => /^await runCommand\(/m.test(readFileSync(join(root, path), 'utf8'));
    const commands = modules.map(({ source }) => source).filter((path) => /^apps\/api\/src\/commands\//.test(path));
    expect(commands.filter(isProgram).length).toBeGreaterThan(5);
    expect(edges().filter(({ to }) => commands.includes(to) && isProgram(to))).toEqual([]);
  });

  it('has no circle of imports that is still one when types are gone', () => {
    const circles = modules.flatMap((module) =>
      module.dependencies
        .filter(({ circular, cycle }) => circular && !cycle?.some((step) => step.dependencyTypes.includes('type-only')))
        .map((dependency) => `${module.source} -> ${dependency.resolved}`),
    );
    expect(circles).toEqual([]);
  });

  it('takes nothing but zod and a quantile of the normal distribution into the rules', () => {
    const outside = modules
      .filter((module) => module.source.startsWith(rules))
      .flatMap((module) => module.dependencies)
      .filter((dependency) => !dependency.resolved.startsWith('packages/'))
      .map((dependency) => dependency.module);
    expect([...new Set(outside)].sort()).toEqual(['zod']);
  });
});

function edges(): { from: string; to: string }[] {
  return modules.flatMap((module) =>
    module.dependencies
      .filter((dependency) => /^(packages|apps|seed)\//.test(dependency.resolved))
      .map((dependency) => ({ from: module.source, to: dependency.resolved })),
  );
}

function at(path: string): RegExp {
  return new RegExp(`^${path.replaceAll('.', '\\.')}(/|$)`);
}

function role(feature: string, middle: string): RegExp {
  return new RegExp(`^${features}/${feature}/[^/]+\\.${middle}\\.ts$`);
}
