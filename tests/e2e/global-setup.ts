import { startDemoServer } from '../support/demo-server.ts';

/** One server with the invented demo for all browser tests; each test makes what it changes itself. */
export default async function globalSetup(): Promise<() => Promise<void>> {
  const server = await startDemoServer();
  process.env.DEMO = JSON.stringify({ ...server, stop: undefined });
  return () => server.stop();
}
