import type { Device } from '@underlath/contract';
import type { Database } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import { endSessions, listSessions } from '../../platform/sessions.ts';
import * as accounts from './accounts.repository.ts';
import { deviceWords } from './device-words.ts';
import type { Own } from './passwords.service.ts';

/** Where a person is signed in. */
export class DevicesService {
  constructor(private readonly database: Database) {}

  async list({ userId, sessionId }: Own): Promise<{ items: Device[] }> {
    const rows = await accounts.inAccounts(this.database, (tx) => listSessions(tx, userId));
    return {
      items: rows.map(({ id, userAgent, ipAddress, createdAt, lastUsedAt }) => ({
        id,
        words: deviceWords(userAgent),
        network: ipAddress,
        firstSeenAt: createdAt.toISOString(),
        lastUsedAt: lastUsedAt.toISOString(),
        isThisOne: id === sessionId,
      })),
    };
  }

  /** @throws ProblemError `not-found` */
  async end({ userId }: Own, id: string): Promise<void> {
    const count = await accounts.inAccounts(this.database, (tx) => endSessions(tx, userId, { id }));
    if (count === 0) throw notFound('device');
  }

  async endOthers({ userId, sessionId }: Own): Promise<void> {
    await accounts.inAccounts(this.database, (tx) => endSessions(tx, userId, { not: sessionId }));
  }
}
