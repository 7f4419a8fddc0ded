import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { appAddresses } from '@underlath/contract';
import { expect, test } from 'vitest';

test('the server knows where every address of the app begins, and no other', () => {
  const router = readFileSync(join(import.meta.dirname, 'router.tsx'), 'utf8');
  // A screen below another has its address from that one.
  const routes = router.split('createRoute({').slice(1);
  const tops = routes.filter((one) => /getParentRoute: \(\) => (root|signedIn|office),/.test(one));
  const first = tops.flatMap((one) => /path: '\/([^/']*)/.exec(one)?.[1] ?? []);
  expect(first).not.toEqual([]);
  expect([...new Set(first)].sort()).toEqual([...appAddresses].sort());
});
