import { AsyncLocalStorage } from 'node:async_hooks';
import { subscribe, unsubscribe } from 'node:diagnostics_channel';
import pg from 'pg';

const started = 'http.server.request.start';

/** Counts what the server asks of the database for each request, whoever is signed in; jobs that run meanwhile are left out. */
export interface StatementCounter {
  /** The statements of the requests that are sent meanwhile. */
  during(work: () => PromiseLike<unknown>): Promise<string[]>;
  stop(): void;
}

/** Follows each request of a server in this process by its own asynchronous context, down to the driver. */
export function countStatements(): StatementCounter {
  const requests = new AsyncLocalStorage<true>();
  let heard: string[] = [];
  const begin = () => requests.enterWith(true);
  subscribe(started, begin);
  const { query } = pg.Client.prototype;
  // The driver's method has many forms; each is passed on as it came.
  const counted = function (this: pg.Client, ...given: unknown[]): unknown {
    const [first] = given;
    if (requests.getStore()) heard.push(typeof first === 'string' ? first : (first as { text: string }).text);
    return Reflect.apply(query, this, given);
  };
  Reflect.set(pg.Client.prototype, 'query', counted);
  return {
    during: async (work) => {
      heard = [];
      await work();
      const told = heard;
      heard = [];
      return told;
    },
    stop: () => {
      Reflect.set(pg.Client.prototype, 'query', query);
      unsubscribe(started, begin);
    },
  };
}
