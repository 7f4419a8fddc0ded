import type { Clock } from '../../platform/clock.ts';
import type { Database } from '../../platform/database/database.ts';
import { setFence } from '../../platform/database/fence.ts';
import { newId } from '../../platform/ids.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import type { ClientPrincipal } from '../../shared/principals.ts';
import * as approvals from './approvals.repository.ts';
import { assertReadable } from './link-state.ts';

/** A letter opened on a device. */
interface OpenedLetter {
  principal: ClientPrincipal;
  /** For the cookie of this letter; only its hash is kept. */
  token: string;
  expiresAt: Date;
}

/** A session outlives its link for a while, to say what became of it, and lets a signer come back to read. */
const sessionDays = 30;
const dayMs = 86_400_000;

/** Opens letters by the secret of a link, and closes them. A session is all that is written, and by no GET: mail scanners open links too. */
export class ClientLinks {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  /**
   * A new session of the letter that a secret opens.
   * @param letterId of the address; none stood in addresses that were mailed before letters had ids
   * @throws ProblemError `link-unknown`, `other-letter`, and what `assertReadable` says
   */
  async open(secret: string, letterId?: string): Promise<OpenedLetter> {
    const tokenHash = hashSecret(secret);
    const found = await this.database.behindFence({ tokenHash }, (tx) => approvals.findLink(tx, tokenHash));
    if (!found) {
      throw new ProblemError(
        'link-unknown',
        'This link is not known here. Check that it is complete, or ask your contractor for a new one.',
      );
    }
    if (letterId !== undefined && letterId !== found.letterId) {
      throw new ProblemError(
        'other-letter',
        'The two halves of this link belong to different letters. Open the link in your message.',
      );
    }
    return this.begin(found.companyId, found.id);
  }

  private begin(companyId: string, linkId: string): Promise<OpenedLetter> {
    return this.database.inCompany(companyId, async (tx) => {
      const now = this.clock.now();
      const link = await approvals.findLinkById(tx, companyId, linkId);
      if (!link) throw new Error(`Link ${linkId} is gone; links are never removed.`);
      await assertReadable(tx, link, now);
      const token = newSecret();
      const expiresAt = new Date(Math.max(link.expiresAt.getTime(), now.getTime() + sessionDays * dayMs));
      const row = { companyId, id: newId(), linkId, tokenHash: hashSecret(token), createdAt: now, expiresAt };
      await approvals.sweepSessions(tx, companyId, now);
      const { id } = await approvals.insertSession(tx, row);
      return { principal: principalOf(link, id), token, expiresAt };
    });
  }

  /** Ends the session of a letter on one device. What is no session of this letter is left alone. */
  async close(token: string, letterId: string): Promise<void> {
    const session = await this.session(hashSecret(token));
    if (!session) return;
    const { companyId, id, linkId } = session;
    await this.database.inCompany(companyId, async (tx) => {
      const link = await approvals.findLinkById(tx, companyId, linkId);
      if (link?.letterId === letterId) await approvals.endSession(tx, companyId, id, this.clock.now());
    });
  }

  /** For the server's own check of every request: null where the session is none of this letter. @throws what `assertReadable` says */
  async principal(tokenHash: string, letterId: string): Promise<ClientPrincipal | null> {
    return this.database.behindFence({ tokenHash }, async (tx) => {
      const session = this.working(await approvals.findSession(tx, tokenHash));
      if (!session) return null;
      const { companyId, id, linkId } = session;
      await setFence(tx, { companyId });
      const link = await approvals.findLinkById(tx, companyId, linkId);
      if (link?.letterId !== letterId) return null;
      await assertReadable(tx, link, this.clock.now());
      return principalOf(link, id);
    });
  }

  private async session(tokenHash: string) {
    return this.working(await this.database.behindFence({ tokenHash }, (tx) => approvals.findSession(tx, tokenHash)));
  }

  /** Null for a session that has ended or run out. */
  private working<S extends { endedAt: Date | null; expiresAt: Date }>(session: S | null): S | null {
    return session && !session.endedAt && session.expiresAt > this.clock.now() ? session : null;
  }
}

const principalOf = (link: approvals.LinkRow, sessionId: string): ClientPrincipal => {
  const { companyId, id: linkId, letterId, changeOrderId, version } = link;
  return { kind: 'client', companyId, letterId, linkId, sessionId, changeOrderId, version };
};
