import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Role } from '@underlath/contract';
import request from 'supertest';
import { inject } from 'vitest';
import { type Config, readConfig } from '../../apps/api/src/config.ts';
import type { Deps } from '../../apps/api/src/deps.ts';
import { newId } from '../../apps/api/src/platform/ids.ts';
import type { Platform } from '../../apps/api/src/platform/platform.ts';
import { noLimits, type RateLimits } from '../../apps/api/src/plugins/limits.ts';
import { startServer } from '../../apps/api/src/server.ts';
import { cloneDatabase } from './database.ts';

export interface Person {
  companyId: string;
  userId: string;
  memberId: string;
  name: string;
  email: string;
  password: string;
  role: Role;
  /** The `Cookie` header of their session. */
  cookie: string;
}

export interface TestApi {
  /** Where the real server listens, `http://127.0.0.1:NNNNN`. */
  url: string;
  /** Address of this file's own database, with the owner's rights. */
  databaseUrl: string;
  /** Folder of the files, the mail and the logs of this server. */
  dataDir: string;
  platform: Platform;
  deps: Deps;
  /** A new person, signed in; in a new company unless one is given. */
  signIn(options?: { role?: Role; companyId?: string; name?: string }): Promise<Person>;
  /** Requests to the server, as a person or as nobody. */
  http(person?: Pick<Person, 'cookie'>): ReturnType<typeof request.agent>;
  close(): Promise<void>;
}

interface Options {
  limits?: Partial<RateLimits>;
  config?: Partial<Config>;
  /** Leads the server to its database by another way, such as a line that can be cut. */
  databaseVia?: (databaseUrl: string) => Promise<string>;
}

const password = 'sill plate and rim joist';

/** A server of one's own: real socket, real PostgreSQL (a clone of the migrated template), real files, worker inline. */
export async function startTestApi({ limits, config: changes, databaseVia }: Options = {}): Promise<TestApi> {
  const clone = await cloneDatabase(inject('postgresUrl'));
  const dataDir = mkdtempSync(join(tmpdir(), 'underlath-api-'));
  const base = readConfig({
    DATABASE_URL: (await databaseVia?.(clone.databaseUrl)) ?? clone.databaseUrl,
    DATA_DIR: dataDir,
    PORT: '0',
    SIGN_UP: 'open',
    MAIL_PER_HOUR: '100000',
  });
  const server = await startServer({
    config: { ...base, ...changes },
    limits: { ...noLimits, ...limits },
    // The machine that runs the tests may be busy with other things; that is no fault of the server.
    busyAfterMs: 0,
    logger: { level: process.env.TEST_LOG ?? 'silent' },
    log: () => {},
    maxConnections: 6,
  });
  const url = server.url.replace('localhost', '127.0.0.1');
  return {
    url,
    databaseUrl: clone.databaseUrl,
    dataDir,
    platform: server.platform,
    deps: server.deps,
    signIn: (options) => signIn(server.platform, options),
    http: (person) => {
      const agent = request.agent(url);
      return person ? agent.set('cookie', person.cookie) : agent;
    },
    close: async () => {
      await server.close();
      await clone.drop();
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

async function signIn(
  { accounts, database }: Platform,
  { role = 'owner', companyId = newId(), name = 'Ana Brandt' }: { role?: Role; companyId?: string; name?: string } = {},
): Promise<Person> {
  const memberId = newId();
  const email = `${memberId}@example.test`;
  const { userId } = await accounts.createUser({ email, name, password });
  await accounts.confirmEmail(userId);
  await database.inCompany(companyId, async (tx) => {
    await tx.company.createMany({ data: [{ id: companyId, name: 'Brandt Remodel' }], skipDuplicates: true });
    await tx.member.create({ data: { companyId, id: memberId, userId, name, email, role } });
  });
  const { token } = await accounts.signIn(email, password);
  return { companyId, userId, memberId, name, email, password, role, cookie: `underlath_session=${token}` };
}
