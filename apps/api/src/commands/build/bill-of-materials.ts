import { execFile } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';

interface Component {
  name: string;
  version: string;
  purl: string;
  licenses?: { license?: { id?: string; name?: string }; expression?: string }[];
}

interface Bill {
  bomFormat: string;
  specVersion: string;
  metadata: { component: Component };
  components: Component[];
}

/** npm's answer is a few megabytes. */
const largestAnswer = 64 * 1024 * 1024;
const notDeclared = 'not declared';

/**
 * Writes what the program is made of into a folder: `underlath.cdx.json` (CycloneDX, by npm from the lockfile) and
 * `licenses.md`. What only tests and building use is left out.
 */
export async function writeBill(root: string, folder: string): Promise<{ components: number; undeclared: string[] }> {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const asked = ['sbom', '--sbom-format=cyclonedx', '--omit=dev', '--package-lock-only'];
  const { stdout } = await promisify(execFile)(npm, asked, { cwd: root, maxBuffer: largestAnswer });
  const bill = JSON.parse(stdout) as Bill;
  // npm takes the name of the folder.
  const { name } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { name: string };
  bill.metadata.component.name = name;
  const rows = bill.components
    .map((component) => [nameOf(component), component.version, licenseOf(component)] as const)
    .sort(([one], [other]) => one.localeCompare(other, 'en'));
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'underlath.cdx.json'), `${JSON.stringify(bill, null, 2)}\n`);
  writeFileSync(
    join(folder, 'licenses.md'),
    tableOf([['package', 'version', 'license'], ['---', '---', '---'], ...rows]),
  );
  const undeclared = rows.filter(([, , license]) => license === notDeclared).map(([one]) => one);
  return { components: rows.length, undeclared };
}

const tableOf = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `| ${cells.join(' | ')} |\n`).join('');

/** With its scope, which npm's own `name` leaves out. */
const nameOf = ({ purl }: Component): string =>
  decodeURIComponent(purl.slice('pkg:npm/'.length).replace(/@[^@/]*$/, ''));

function licenseOf({ licenses = [] }: Component): string {
  const named = licenses.flatMap(({ license, expression }) => expression ?? license?.id ?? license?.name ?? []);
  return named.join(', ') || notDeclared;
}
