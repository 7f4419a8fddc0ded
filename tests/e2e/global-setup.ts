import { rmSync } from 'node:fs';
import { startDemoServer } from '../support/demo-server.ts';

/** Tells the invented demo once, into a folder that each worker's server starts on a copy of. */
export default async function globalSetup(): Promise<() => void> {
  const server = await startDemoServer({ keepsFolder: true });
  await server.stop();
  process.env.SEEDED_DEMO = server.dataDir;
  return () => rmSync(server.dataDir, { recursive: true, force: true });
}
