import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface TwoVersions {
  site: string;
  /** From now on the site has a second version of its service worker. */
  release(): void;
  stop(): Promise<void>;
}

/** The pages of a running server, with a service worker that tells its version when asked; it changes once. */
export async function twoVersions(behind: string): Promise<TwoVersions> {
  let version = '1';
  const server = createServer(async (request, response) => {
    const answer = await fetch(behind + (request.url ?? '/'));
    response.writeHead(answer.status, {
      'content-type': answer.headers.get('content-type') ?? 'text/plain',
      'cache-control': answer.headers.get('cache-control') ?? 'no-cache',
    });
    response.write(new Uint8Array(await answer.arrayBuffer()));
    if (request.url === '/service-worker.js')
      response.write(`;self.addEventListener('message', ({ ports }) => ports[0]?.postMessage('${version}'));`);
    response.end();
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    site: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    release: () => {
      version = '2';
    },
    stop: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(() => done());
      }),
  };
}
