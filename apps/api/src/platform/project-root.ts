import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { StartupError } from './startup-error.ts';

/**
 * The folder of the project, found by walking up from this file: the source tree and the built bundle lie at
 * different depths, and the current directory may be anywhere.
 */
export function findProjectRoot(from = dirname(fileURLToPath(import.meta.url))): string {
  for (let folder = from; ; folder = dirname(folder)) {
    const manifest = join(folder, 'package.json');
    if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).name === 'underlath') return folder;
    if (dirname(folder) === folder) {
      throw new StartupError(
        `The project folder was not found above ${from}: no package.json there is named "underlath".`,
      );
    }
  }
}
