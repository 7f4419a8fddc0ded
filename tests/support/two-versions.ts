import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface TwoVersions {
  site: string;
  /** From now on the site has a second version: the file of the list of checks is gone from it, as after a new build. */
  release(): void;
  stop(): Promise<void>;
}

const onlyInFirst = /^\/assets\/checks-[\w-]+\.js$/;

/** The pages of a running server, with a service worker that tells its version when asked; it changes once. */
export async function twoVersions(behind: string): Promise<TwoVersions> {
  let version = '1';
  const worker = (code: string): string => {
    const own = version === '1' ? code : code.replace(/\{url:`\/assets\/checks-[\w-]+\.js`,revision:null\},/, '');
    return `${own};self.addEventListener('message', ({ ports }) => ports[0]?.postMessage('${version}'));`;
  };
  const server = createServer(async (request, response) => {
    const path = request.url ?? '/';
    if (version === '2' && onlyInFirst.test(path)) {
      response.writeHead(404).end();
      return;
    }
    const answer = await fetch(behind + path);
    response.writeHead(answer.status, {
      'content-type': answer.headers.get('content-type') ?? 'text/plain',
      'cache-control': 'no-store',
    });
    if (path === '/service-worker.js') response.end(worker(await answer.text()));
    else response.end(new Uint8Array(await answer.arrayBuffer()));
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
