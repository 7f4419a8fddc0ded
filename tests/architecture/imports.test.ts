import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { cruise, type ICruiseResult, type IModule } from 'dependency-cruiser';
import { beforeAll, describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const folders = (path: string) =>
  readdirSync(join(root, path), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);

/** Who may import whom: a folder (as the start of a path) and where its imports inside the project may lead. Built from the folder listing, so that a new folder is guarded from its first day. */
const rules = 'packages/rules/src';
const features = 'apps/api/src/features';
const dashboard = 'apps/dashboard/src';
const people = folders(dashboard).filter((name) => name !== 'shared' && name !== 'app');

const allowed: { from: RegExp; to: RegExp[] }[] = [
  { from: at(`${rules}/kernel`), to: [at(`${rules}/kernel`)] },
  { from: at(`${rules}/standards`), to: [at(`${rules}/standards`), at(`${rules}/kernel`)] },
  ...folders(`${rules}/checks`).map((element) => ({
    from: at(`${rules}/checks/${element}`),
    to: [at(`${rules}/checks/${element}`), at(`${rules}/standards`), at(`${rules}/kernel`)],
  })),
  { from: at(`${rules}/places`), to: [at(`${rules}/places`), at(`${rules}/kernel`)] },
  ...['load-paths', 'repairs', 'pricing'].map((room) => ({
    from: at(`${rules}/${room}`),
    to: [at(`${rules}/${room}`), at(`${rules}/kernel`), at(`${rules}/places`), at(`${rules}/repairs`)],
  })),
  { from: at(rules), to: [at(rules)] },
  { from: at('packages/contract'), to: [at('packages/contract'), at(`${rules}/kernel`)] },
  {
    // What the office looks at before it sends is the client's own page.
    from: at(`${dashboard}/estimator/parts/letter-preview.tsx`),
    to: [at(`${dashboard}/client`), at(`${dashboard}/shared`), at('packages'), at(`${dashboard}/estimator/order.css`)],
  },
  ...people.map((person) => ({
    from: at(`${dashboard}/${person}`),
    to: [at(`${dashboard}/${person}`), at(`${dashboard}/shared`), at('packages')],
  })),
  { from: at(`${dashboard}/shared`), to: [at(`${dashboard}/shared`), at('packages')] },
  { from: at(dashboard), to: [at(dashboard), at('packages')] },
  {
    from: new RegExp(`^${features}/[^/]+/[^/]+\\.repository\\.ts$`),
    to: [at('apps/api/src/platform/database'), at('apps/api/src/generated'), at(features), at('packages')],
  },
  {
    from: at('apps/api/src/platform'),
    to: [at('apps/api/src/platform'), at('apps/api/src/generated'), at('apps/api/src/config.ts'), at('packages')],
  },
  { from: at('apps/api/src'), to: [at('apps/api/src'), at('packages'), at('seed')] },
];

let modules: IModule[] = [];

beforeAll(async () => {
  const { output } = await cruise(
    ['packages', 'apps'],
    {
      baseDir: root,
      exclude: { path: ['generated', 'dist/', '\\.(test|setup)\\.tsx?$'] },
      doNotFollow: { path: ['node_modules'] },
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
    expect(strays.map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
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
