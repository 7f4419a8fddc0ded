import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build, type Plugin, type Rolldown } from 'vite';

type Bundle = Rolldown.OutputBundle;
/** A file the service worker keeps. A revision stands where the name does not carry the hash of the content. */
type Kept = { url: string; revision: string | null };

const hash = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex').slice(0, 16);

/**
 * Builds the service worker once the app is built, with the list of the app's files in it. The page a client's link opens
 * is left out: it is read once, from the server, and never kept.
 */
export function offline({ root, worker }: { root: string; worker: string }): Plugin {
  let kept: Kept[] = [];
  let outDir = 'dist';
  return {
    name: 'offline',
    apply: 'build',
    configResolved({ build: { outDir: chosen } }) {
      outDir = chosen;
    },
    // Only now the pages are among the files.
    writeBundle(_options, bundle) {
      kept = filesToKeep(bundle, join(root, 'public'));
    },
    async closeBundle() {
      await build({
        root,
        configFile: false,
        publicDir: false,
        logLevel: 'warn',
        define: { __KEPT_FILES__: JSON.stringify(kept) },
        build: {
          outDir,
          emptyOutDir: false,
          // A script of the old kind: not every browser takes modules for a service worker.
          rolldownOptions: {
            input: resolve(root, worker),
            output: { format: 'iife', entryFileNames: 'service-worker.js' },
          },
        },
      });
    },
  };
}

function filesToKeep(bundle: Bundle, publicFolder: string): Kept[] {
  const ofClient = onlyOfClient(bundle);
  const built = Object.values(bundle)
    .filter(({ fileName }) => !ofClient.has(fileName))
    .map((file): Kept => {
      const hashed = file.fileName.startsWith('assets/');
      return {
        url: `/${file.fileName}`,
        revision: hashed ? null : hash(file.type === 'chunk' ? file.code : file.source),
      };
    });
  const asTheyAre = readdirSync(publicFolder).map(
    (name): Kept => ({ url: `/${name}`, revision: hash(readFileSync(join(publicFolder, name))) }),
  );
  return [...built, ...asTheyAre].toSorted((a, b) => a.url.localeCompare(b.url));
}

/** The client's page and the files that no other page asks for. */
function onlyOfClient(bundle: Bundle): Set<string> {
  const reach = (entry: string): Set<string> => {
    const start = Object.values(bundle).find((file) => file.type === 'chunk' && file.isEntry && file.name === entry);
    if (!start) throw new Error(`The build has no entry "${entry}"`);
    const seen = new Set<string>();
    const visit = (fileName: string): void => {
      const file = bundle[fileName];
      if (!file || seen.has(fileName)) return;
      seen.add(fileName);
      if (file.type !== 'chunk') return;
      const styles = [...(file.viteMetadata?.importedCss ?? []), ...(file.viteMetadata?.importedAssets ?? [])];
      for (const next of [...file.imports, ...file.dynamicImports, ...styles]) visit(next);
    };
    visit(start.fileName);
    return seen;
  };
  const ofApp = reach('app');
  return new Set(['client.html', ...[...reach('client')].filter((name) => !ofApp.has(name))]);
}
