import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { hashSecret } from '../../platform/secrets.ts';
import type { ClientPrincipal } from '../../plugins/auth.ts';
import * as approvals from './approvals.repository.ts';

interface LiveLink {
  principal: ClientPrincipal;
  expiresAt: Date;
}

/** Looks links up. Nothing is written: mail scanners open links too. */
export class ClientLinks {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  /** What a token opens. @throws ProblemError `link-gone`, `link-replaced` */
  async open(token: string): Promise<LiveLink> {
    const live = await this.find(hashSecret(token));
    if (live) return live;
    throw new ProblemError(
      'link-gone',
      'This link is not known here. Check that it is complete, or ask your contractor for a new one.',
    );
  }

  /** For the server's own check of every request: null for an unknown token. @throws ProblemError `link-gone`, `link-replaced` */
  async principal(tokenHash: string): Promise<ClientPrincipal | null> {
    return (await this.find(tokenHash))?.principal ?? null;
  }

  private async find(tokenHash: string): Promise<LiveLink | null> {
    const link = await this.database.behindFence({ tokenHash }, (tx) => approvals.findLink(tx, tokenHash));
    if (!link) return null;
    const { companyId, id: linkId, changeOrderId, version, expiresAt } = link;
    await this.database.inCompany(companyId, async (tx) => {
      const order = await approvals.findOrder(tx, companyId, changeOrderId);
      await assertLive(tx, link, order?.sentVersion ?? null, this.clock.now());
    });
    return { principal: { kind: 'client', companyId, linkId, changeOrderId, version }, expiresAt };
  }
}

/** @throws ProblemError `link-replaced` when another version stands or comes, `link-gone` when it ended or was switched off */
export async function assertLive(
  tx: Tx,
  link: approvals.LinkRow,
  sentVersion: number | null,
  now: Date,
): Promise<void> {
  const { companyId, version, revokedAt, expiresAt } = link;
  if (sentVersion === version && !revokedAt && expiresAt > now) return;
  const ask = await contactWords(tx, companyId);
  if (sentVersion !== version) {
    throw new ProblemError(
      'link-replaced',
      `The contractor changed this offer, so this version can no longer be answered. ${ask} for the new link.`,
    );
  }
  const why = revokedAt ? 'This link was switched off.' : 'This link has run out.';
  throw new ProblemError('link-gone', `${why} ${ask} for a new one; nothing was decided by it.`);
}

async function contactWords(tx: Tx, companyId: string): Promise<string> {
  const company = await approvals.findCompany(tx, companyId);
  const ways = [company?.phone, company?.email].filter(Boolean).join(' or ');
  return `Ask ${company?.name ?? 'your contractor'}${ways ? ` (${ways})` : ''}`;
}
