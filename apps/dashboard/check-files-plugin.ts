import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Plugin } from 'vite';

const prefix = 'virtual:check-';
const lazyImport = /import\('\.\/([a-z-]+)\.(drawing|cases)\.ts'\)/g;

/**
 * Each check loads its own drawing and its own cases; in the browser all drawings come as one file, and all cases as
 * another, so that a phone asks once and not once for each check.
 */
export function checkFiles({ folder }: { folder: string }): Plugin {
  const filesOf = (kind: string): string[] =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith(`.${kind}.ts`));
  return {
    name: 'check-files',
    enforce: 'pre',
    resolveId: (id) => (id.startsWith(prefix) ? `\0${id}` : undefined),
    load(id) {
      if (!id.startsWith(`\0${prefix}`)) return undefined;
      const files = filesOf(id.slice(prefix.length + 1)).toSorted();
      const imports = files.map((file, at) => `import * as m${at} from ${JSON.stringify(join(folder, file))};`);
      const entries = files.map((file, at) => `${JSON.stringify(withSlashes(file))}: m${at}`);
      return `${imports.join('\n')}\nexport default { ${entries.join(', ')} };`;
    },
    transform(code, id) {
      if (!id.startsWith(folder) || !/\.(card|check)\.ts$/.test(id)) return undefined;
      const element = withSlashes(relative(folder, join(id, '..')));
      return code.replace(
        lazyImport,
        (_all, aspect: string, kind: string) =>
          `import('${prefix}${kind}').then((all) => all.default['${element}/${aspect}.${kind}.ts'])`,
      );
    },
  };
}

const withSlashes = (path: string): string => path.split(sep).join('/');
