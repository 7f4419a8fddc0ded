import type { Device } from '@underlath/contract';
import { endSessions, listSessions } from '../../platform/accounts/sessions.ts';
import type { Database } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import type { AccountMail } from './account-mail.ts';
import * as accounts from './accounts.repository.ts';
import { deviceWords } from './device-words.ts';
import type { Own } from './passwords.service.ts';

/** Where a person is signed in. */
export class DevicesService {
  constructor(
    private readonly database: Database,
    private readonly mail: AccountMail,
  ) {}

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
  async end({ userId, sessionId }: Own, id: string): Promise<void> {
    await accounts.inAccounts(this.database, async (tx) => {
      if ((await endSessions(tx, userId, { id })) === 0) throw notFound('device');
      await this.mail.note(tx, userId, id === sessionId ? 'sign-in.ended' : 'device.ended');
    });
  }

  async endOthers({ userId, sessionId }: Own): Promise<void> {
    await accounts.inAccounts(this.database, async (tx) => {
      const ended = await endSessions(tx, userId, { not: sessionId });
      if (ended > 0) await this.mail.note(tx, userId, 'device.ended', { devices: ended });
    });
  }
}
