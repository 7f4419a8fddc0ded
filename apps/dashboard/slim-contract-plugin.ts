import { resolve, sep } from 'node:path';
import type { Route } from '@underlath/contract';
import type { Plugin } from 'vite';

const name = '@underlath/contract';
const virtual = '\0slim-contract';

/** What a browser reads with a schema, or does with a document, by the file that has it, seen from the contract. */
const kept = {
  'problems.ts': ['problem', 'problems'],
  'rights.ts': ['lowerRole'],
  'members.ts': ['me'],
  'findings.ts': ['findingContext'],
  '../../rules/src/schemas/values.ts': ['opening'],
  '../../rules/src/offers/document/document-words.ts': [
    'titleOf',
    'placeOf',
    'captionOf',
    'sectionOf',
    'lineWords',
    'linesAtSigning',
    'understoodAtDeclining',
  ],
  '../../rules/src/offers/document/document-part.ts': [
    'canBeParted',
    'partOf',
    'documentOfPart',
    'documentOfAnswer',
    'leftOutOf',
    'sameIds',
  ],
  'us-time-zones.ts': ['zonesOf', 'zoneOfSite'],
  '../../rules/src/schemas/written-words.ts': ['isPersonName', 'isSameName'],
};

/** What a browser needs to call a route. */
const slim = ({ name, method, path, permission, idempotent, versioned }: Route) => ({
  ...{ name, method, path, permission, idempotent, versioned },
});

/**
 * In what is built for the browser, a route of the contract is its name, method and address. Its schemas, and most of
 * the library they are made with, stay on the server, which is the one that reads with them.
 */
export function slimContract({ folder }: { folder: string }): Plugin {
  return {
    name: 'slim-contract',
    apply: 'build',
    enforce: 'pre',
    resolveId: (id, importer) => (id === name && !importer?.startsWith(folder + sep) ? virtual : undefined),
    async load(id) {
      if (id !== virtual) return undefined;
      const { routes, clientRoutes, photoCaps, US_STATES } = await import(name);
      const slimAll = (all: Record<string, Route>) =>
        Object.fromEntries(Object.entries(all).map(([key, route]) => [key, slim(route)]));
      const values = { routes: slimAll(routes), clientRoutes: slimAll(clientRoutes), photoCaps, US_STATES };
      return [
        ...Object.entries(values).map(([key, value]) => `export const ${key} = ${JSON.stringify(value)};`),
        ...Object.entries(kept).map(
          ([file, names]) => `export { ${names.join(', ')} } from ${JSON.stringify(resolve(folder, file))};`,
        ),
      ].join('\n');
    },
  };
}
