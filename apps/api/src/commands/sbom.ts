import { join } from 'node:path';
import { findProjectRoot } from '../platform/project-root.ts';
import { writeBill } from './build/bill-of-materials.ts';
import { runCommand } from './run-command.ts';

await runCommand(async () => {
  const root = findProjectRoot();
  const { components, undeclared } = await writeBill(root, join(root, 'sbom'));
  console.log(`Wrote sbom/underlath.cdx.json and sbom/licenses.md: ${components} packages.`);
  if (undeclared.length > 0) console.log(`Without a license in the lockfile: ${undeclared.join(', ')}.`);
});
