import { connect, createServer, type Server, type Socket } from 'node:net';

/** A TCP line to a server that tests can cut, hang and mend. */
export interface CuttableLine {
  port: number;
  /** New connections are refused and open ones are closed. */
  cut(): Promise<void>;
  /** Connections stay open and nothing passes any more, as when a machine is frozen. */
  hang(): void;
  mend(): Promise<void>;
  close(): Promise<void>;
}

export async function openLine(to: { host: string; port: number }): Promise<CuttableLine> {
  const pairs = new Set<[Socket, Socket]>();
  let hung = false;
  const makeServer = () =>
    createServer((near) => {
      const far = connect(to.port, to.host);
      const pair: [Socket, Socket] = [near, far];
      pairs.add(pair);
      for (const [from, other] of [pair, [far, near] as const]) {
        from.on('data', (bytes) => void (hung || other.write(bytes)));
        from.on('close', () => {
          other.destroy();
          pairs.delete(pair);
        });
        // A line that breaks is what it is for.
        from.on('error', () => {});
      }
    });
  let server: Server = makeServer();
  const listen = (port: number) => new Promise<void>((done) => server.listen(port, '127.0.0.1', done));
  await listen(0);
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  const drop = () => {
    for (const [near, far] of pairs) {
      near.destroy();
      far.destroy();
    }
  };
  const stop = async () => {
    const closed = new Promise<void>((done) => server.close(() => done()));
    drop();
    await closed;
  };
  return {
    port,
    cut: stop,
    hang: () => {
      hung = true;
    },
    mend: async () => {
      if (hung) drop();
      hung = false;
      if (server.listening) return;
      server = makeServer();
      await listen(port);
    },
    close: async () => {
      if (server.listening) await stop();
    },
  };
}
