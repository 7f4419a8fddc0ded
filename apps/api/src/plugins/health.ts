import type { FastifyInstance } from 'fastify';

/** Each part answers, or throws with the reason. */
export interface HealthChecks {
  database: () => Promise<unknown>;
  fileStore: () => Promise<unknown>;
  migrations: () => Promise<unknown>;
}

const patienceMs = 5_000;

/** `/livez`: the process runs. `/readyz`: it can do its work; 503 names the part that cannot. */
export async function health(app: FastifyInstance, { checks }: { checks: HealthChecks }): Promise<void> {
  app.get(
    '/livez',
    { config: { permission: 'public', rateLimit: false }, schema: { hide: true } },
    async (_request, reply) => {
      return reply.header('cache-control', 'no-store').type('application/json').send('{"status":"ok"}');
    },
  );
  app.get(
    '/readyz',
    { config: { permission: 'public', rateLimit: false }, schema: { hide: true } },
    async (request, reply) => {
      const parts = await Promise.all(
        Object.entries(checks).map(async ([name, check]) => {
          try {
            await within(check(), patienceMs);
            return [name, 'ok'];
          } catch (error) {
            request.log.warn({ err: error }, `${name} is not ready`);
            return [name, 'failing'];
          }
        }),
      );
      const ready = parts.every(([, state]) => state === 'ok');
      reply
        .code(ready ? 200 : 503)
        .header('cache-control', 'no-store')
        .type('application/json');
      return reply.send(JSON.stringify({ status: ready ? 'ok' : 'failing', ...Object.fromEntries(parts) }));
    },
  );
}

async function within<Result>(work: Promise<Result>, milliseconds: number): Promise<Result> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_done, fail) => {
    timer = setTimeout(() => fail(new Error(`no answer within ${milliseconds} ms`)), milliseconds);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
