import type { BodyOut, Invitation, memberRoutes, Role } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import type { MailOutbox } from '../../platform/mail/outbox.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertEmailConfirmed } from '../../shared/confirmed-email.ts';
import { namesOf } from '../../shared/members.ts';
import { asPerson, type PeopleLogService } from '../people-log/people-log.service.ts';
import { takeOwnersTurn } from './in-turn.ts';
import { toInvitation } from './members.mapper.ts';
import * as members from './members.repository.ts';

const validDays = 7;
const dayMs = 86_400_000;

/** Invitations by link. The secret is in the link alone; the database keeps its hash. */
export class InvitationsService {
  constructor(
    private readonly database: Database,
    private readonly outbox: MailOutbox,
    private readonly clock: Clock,
    private readonly peopleLog: PeopleLogService,
    private readonly publicUrl: string,
  ) {}

  async list(companyId: string): Promise<{ items: Invitation[] }> {
    return this.database.inCompany(companyId, async (tx) => {
      const rows = await members.listInvitations(tx, companyId);
      const names = await namesOf(
        tx,
        companyId,
        rows.map(({ invitedById }) => invitedById),
      );
      return { items: rows.map((row) => toInvitation(row, names)) };
    });
  }

  /** The link is told here and mailed, and never again. @throws ProblemError `already-exists` for a member, `not-allowed` */
  async invite(caller: Caller, body: BodyOut<typeof memberRoutes.invite>): Promise<Invitation & { link: string }> {
    const { companyId, memberId, actor } = caller;
    const email = body.email.toLowerCase();
    const secret = newSecret();
    const link = `${this.publicUrl}/invitation#${secret}`;
    const now = this.clock.now();
    const expiresAt = new Date(now.getTime() + validDays * dayMs);
    return this.database.inCompany(companyId, async (tx) => {
      await takeOwnersTurn(tx, caller);
      await assertEmailConfirmed(tx, companyId, memberId);
      const people = await members.listMembers(tx, companyId);
      if (people.some((member) => member.email === email && !member.removedAt)) {
        throw new ProblemError('already-exists', `${email} is a member of the company already.`);
      }
      const { name: companyName } = await members.findCompany(tx, companyId);
      const row = await members.insertInvitation(tx, {
        companyId,
        id: newId(),
        email,
        role: body.role,
        tokenHash: hashSecret(secret),
        invitedById: memberId,
        createdAt: now,
        expiresAt,
      });
      const data = { to: email, role: body.role };
      const note = { type: 'invitation.sent', actor: asPerson(actor), subjectId: row.id, data } as const;
      await this.peopleLog.note(tx, companyId, note);
      const words = letter(actor.name, companyName, body.role, link);
      await this.outbox.post(tx, companyId, { to: email, ...words, locale: 'en' }, { kind: 'invitation' });
      return { ...toInvitation(row, new Map([[memberId, actor.name]])), link };
    });
  }

  /** @throws ProblemError `not-found`, `not-allowed` */
  async revoke(caller: Caller, id: string): Promise<void> {
    const { companyId, actor } = caller;
    const now = this.clock.now();
    await this.database.inCompany(companyId, async (tx) => {
      await takeOwnersTurn(tx, caller);
      if (!(await members.revokeInvitation(tx, companyId, id, now))) throw notFound('open invitation');
      const note = { type: 'invitation.revoked', actor: asPerson(actor), subjectId: id } as const;
      await this.peopleLog.note(tx, companyId, note);
    });
  }
}

function letter(inviter: string, companyName: string, role: Role, link: string): { subject: string; text: string } {
  return {
    subject: `${inviter} invites you to ${companyName}`,
    text: [
      `${inviter} invites you to work with ${companyName} (as ${role}).`,
      '',
      'Open this link to choose a password and begin:',
      link,
      '',
      `The link works once and for ${validDays} days. If you do not know ${inviter}, throw this letter away.`,
    ].join('\n'),
  };
}
