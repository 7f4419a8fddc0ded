import type { FastifyInstance } from 'fastify';
import { handleMail, sendMailJob } from './platform/outbox.ts';
import type { Platform } from './platform/platform.ts';
import type { Job, JobHandler } from './platform/queue.ts';
import type { PrincipalLookups } from './plugins/auth.ts';
import { type Cookies, createCookies } from './plugins/cookies.ts';

/** What a feature brings to the house. */
export interface Feature {
  readonly name: string;
  register(app: FastifyInstance): void;
}

export interface Deps {
  readonly version: string;
  readonly features: readonly Feature[];
  readonly handlers: readonly JobHandler[];
  readonly lookups: PrincipalLookups;
  readonly cookies: Cookies;
}

/** Every job of every feature. The queue refuses to work while one of them has no handler, or two. */
export const jobs: readonly Job[] = [sendMailJob as Job];

/** Builds every service once, from at most six things each; the server and the worker share them. */
export function createDeps({ config, database, mailer }: Platform): Deps {
  return {
    version: '0.1.0',
    features: [],
    handlers: [handleMail(database, mailer)],
    lookups: { apiKey: async () => null, client: async () => null },
    cookies: createCookies(config.publicUrl),
  };
}
