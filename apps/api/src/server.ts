import type { AddressInfo } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import type { FastifyInstance, FastifyServerOptions } from 'fastify';
import { type AppOptions, buildApp } from './app.ts';
import { type Config, readConfig } from './config.ts';
import { createDeps, type Deps, jobs } from './deps.ts';
import { toLoggedError } from './platform/logged-error.ts';
import { openPlatform, type Platform } from './platform/platform.ts';
import { StartupError } from './platform/startup-error.ts';

export interface RunningServer {
  /** Where it listens, for people on this machine. */
  url: string;
  platform: Platform;
  deps: Deps;
  close(): Promise<void>;
}

interface Options extends AppOptions {
  config?: Config;
  log?: (line: string) => void;
  /** Work to do after the database is ready and before anyone is served, such as the demo. */
  beforeListening?: (platform: Platform, deps: Deps) => Promise<void>;
  maxConnections?: number;
}

/** Never the request's address: a client link's secret can be in it. */
export const serverLogger: FastifyServerOptions['logger'] = {
  level: 'info',
  serializers: {
    req: ({ id, method }) => ({ id, method }),
    err: toLoggedError,
  },
};

/** Starts everything on one port. What is closed last was opened first. */
export async function startServer(options: Options = {}): Promise<RunningServer> {
  const config = options.config ?? readConfig();
  let logError: (error: Error) => void = (error) => console.error(toLoggedError(error));
  const platform = await openPlatform(config, {
    jobs,
    mustOwn: true,
    onError: (error) => logError(error),
    ...(options.log && { log: options.log }),
    ...(options.maxConnections && { maxConnections: options.maxConnections }),
  });
  try {
    const deps = createDeps(platform);
    const app = await buildApp(platform, deps, { logger: serverLogger, ...options });
    logError = (error) => app.log.error(error);
    await options.beforeListening?.(platform, deps);
    await listen(app, config);
    if (!config.databaseUrl) await platform.queue.takeOver();
    if (config.worker === 'inline') await platform.queue.work(deps.handlers);
    const { port } = app.server.address() as AddressInfo;
    const close = async () => {
      // Requests first, then jobs, then the connections both of them use.
      await app.close();
      await platform.close();
    };
    return { url: `http://${shownHost(config.host)}:${port}`, platform, deps, close };
  } catch (error) {
    await platform.close();
    throw explainListen(error, config);
  }
}

/** A server that is being replaced may need a moment to let go of the port. */
async function listen(app: FastifyInstance, { port, host }: Config): Promise<void> {
  const deadline = Date.now() + 5_000;
  for (;;) {
    try {
      await app.listen({ port, host });
      return;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE' || Date.now() > deadline) throw error;
      await sleep(250);
    }
  }
}

const shownHost = (host: string): string => (['127.0.0.1', '0.0.0.0', '::', '::1'].includes(host) ? 'localhost' : host);

function explainListen(error: unknown, { port, host }: Config): unknown {
  const { code } = error as NodeJS.ErrnoException;
  if (code === 'EADDRINUSE')
    return new StartupError(
      `PORT ${port} on ${host} is in use by another program; stop it or set PORT to another number.`,
    );
  if (code === 'EACCES')
    return new StartupError(`PORT ${port} may not be opened by this user; set PORT to 1024 or more.`);
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return new StartupError(`HOST ${host} is no address of this machine; it takes one such as 127.0.0.1 or 0.0.0.0.`);
  return error;
}
