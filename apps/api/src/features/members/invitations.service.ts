import type { BodyOut, Invitation, memberRoutes, Role } from '@underlath/contract';
import type { Accounts, SeenDevice } from '../../platform/accounts.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import type { Outbox } from '../../platform/outbox.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import { assertEmailConfirmed } from '../accounts/confirmed-email.ts';
import type { Caller } from '../caller.ts';
import { namesOf } from '../member-names.ts';
import { toInvitation } from './members.mapper.ts';
import * as members from './members.repository.ts';
import type { MembersService, Session } from './members.service.ts';

const validDays = 7;
const dayMs = 86_400_000;

interface Offer {
  companyName: string;
  email: string;
  role: Role;
  expiresAt: string;
}

/** Invitations by link. The secret is in the link alone; the database keeps its hash. */
export class InvitationsService {
  constructor(
    private readonly database: Database,
    private readonly accounts: Accounts,
    private readonly outbox: Outbox,
    private readonly clock: Clock,
    private readonly members: MembersService,
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

  /** The link is told here and mailed, and never again. @throws ProblemError `already-exists` for a member */
  async invite(caller: Caller, body: BodyOut<typeof memberRoutes.invite>): Promise<Invitation & { link: string }> {
    const { companyId, memberId, actor } = caller;
    const email = body.email.toLowerCase();
    const secret = newSecret();
    const link = `${this.publicUrl}/invitation#${secret}`;
    const now = this.clock.now();
    const expiresAt = new Date(now.getTime() + validDays * dayMs);
    return this.database.inCompany(companyId, async (tx) => {
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
      const words = letter(actor.name, companyName, body.role, link);
      await this.outbox.post(tx, companyId, { to: email, ...words, locale: 'en' }, { kind: 'invitation' });
      return { ...toInvitation(row, new Map([[memberId, actor.name]])), link };
    });
  }

  /** @throws ProblemError `not-found` */
  async revoke(companyId: string, id: string): Promise<void> {
    const now = this.clock.now();
    const revoked = await this.database.inCompany(companyId, (tx) => members.revokeInvitation(tx, companyId, id, now));
    if (!revoked) throw notFound('open invitation');
  }

  /** Changes nothing: mail scanners follow links. @throws ProblemError `not-found`, `link-gone` */
  async lookUp(token: string): Promise<Offer> {
    const { companyId, id, email, role, expiresAt } = await this.find(token);
    const { name } = await this.database.inCompany(companyId, async (tx) => {
      await this.assertOpen(tx, await members.findInvitation(tx, companyId, id));
      return members.findCompany(tx, companyId);
    });
    return { companyName: name, email, role, expiresAt: expiresAt.toISOString() };
  }

  /**
   * One turn: the person and the membership are made while nobody else can take the invitation. Whoever holds the link
   * has read the mailbox. Sent a second time by the same person, as a double tap does, it signs them in.
   * @throws ProblemError `not-found`, `link-gone`, `invalid-input`, `wrong-credentials`, `wrong-state`
   */
  async accept(
    { token, name, password }: BodyOut<typeof memberRoutes.acceptInvitation>,
    device?: SeenDevice,
  ): Promise<Session> {
    const { companyId, id, email } = await this.find(token);
    let made: string | undefined;
    try {
      await this.database.inCompany(companyId, async (tx) => {
        await members.lockCompany(tx, companyId);
        const invitation = await members.findInvitation(tx, companyId, id);
        if (invitation.acceptedAt) return this.assertTaker(tx, invitation, password);
        await this.assertOpen(tx, invitation);
        const { userId, isNew } = await this.accounts.proven({ email, name, password });
        if (isNew) made = userId;
        await this.join(tx, invitation, userId, name);
      });
    } catch (error) {
      if (made) await this.accounts.deleteUser(made);
      throw error;
    }
    return this.members.signIn({ email, password }, device);
  }

  /** A session leads to one company, so a person works for one at a time. */
  private async join(tx: Tx, { companyId, id, email, role }: members.InvitationRow, userId: string, name: string) {
    await members.widenFence(tx, { companyId, userId });
    const memberships = await members.listMemberships(tx, userId);
    if (memberships.length > 0) {
      throw new ProblemError(
        'wrong-state',
        memberships.some((one) => one.companyId === companyId)
          ? 'You are a member of this company already; sign in instead.'
          : 'This e-mail address works for another company; ask to be invited with another address.',
      );
    }
    const earlier = await members.findMemberOfUser(tx, companyId, userId);
    if (earlier) await members.updateMember(tx, companyId, earlier.id, { name, role, removedAt: null });
    else await members.insertMember(tx, { companyId, id: newId(), userId, name, email, role });
    await members.acceptInvitation(tx, companyId, id, this.clock.now());
  }

  /** @throws ProblemError `link-gone` for anybody but the member it made */
  private async assertTaker(tx: Tx, { companyId, email }: members.InvitationRow, password: string): Promise<void> {
    const userId = await this.accounts.knows(email, password);
    const member = userId && (await members.findMemberOfUser(tx, companyId, userId));
    if (member && !member.removedAt) return;
    throw new ProblemError(
      'link-gone',
      'This invitation was used already. If that was you, sign in with your e-mail address and password.',
    );
  }

  /** It offers no more than who sent it may give now. @throws ProblemError `link-gone` */
  private async assertOpen(tx: Tx, { companyId, ...row }: members.InvitationRow): Promise<void> {
    const sender = await members.findMember(tx, companyId, row.invitedById);
    const isBacked = sender !== null && sender.removedAt === null && sender.role === 'owner';
    if (row.acceptedAt || row.revokedAt || row.expiresAt <= this.clock.now() || !isBacked) throw gone();
  }

  private async find(token: string): Promise<members.InvitationRow> {
    const tokenHash = hashSecret(token);
    const row = await this.database.behindFence({ tokenHash }, (tx) => members.findInvitationByHash(tx, tokenHash));
    if (!row) throw notFound('invitation');
    return row;
  }
}

const gone = (): ProblemError =>
  new ProblemError('link-gone', 'This invitation was used, revoked, or has run out; ask for a new one.');

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
