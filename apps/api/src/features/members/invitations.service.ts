import type { BodyOut, Invitation, memberRoutes, Role } from '@underlath/contract';
import type { Accounts, SeenDevice, SignedIn } from '../../platform/accounts.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import type { Outbox } from '../../platform/outbox.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import { assertEmailConfirmed } from '../accounts/confirmed-email.ts';
import type { Caller } from '../caller.ts';
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
    const rows = await this.database.inCompany(companyId, (tx) => members.listInvitations(tx, companyId));
    return { items: rows.map(toInvitation) };
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
      return { ...toInvitation(row), link };
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
    const { companyId, email, role, expiresAt } = await this.find(token);
    const { name } = await this.database.inCompany(companyId, (tx) => members.findCompany(tx, companyId));
    return { companyName: name, email, role, expiresAt: expiresAt.toISOString() };
  }

  /**
   * Makes the person (or, for an e-mail address that signs in already, checks the password) and the membership.
   * @throws ProblemError `not-found`, `link-gone`, `invalid-input`, `wrong-credentials`, `wrong-state`
   */
  async accept(
    { token, name, password }: BodyOut<typeof memberRoutes.acceptInvitation>,
    device?: SeenDevice,
  ): Promise<Session> {
    const invitation = await this.find(token);
    const { email } = invitation;
    const known = await this.createOrSignIn(email, name, password);
    try {
      await this.assertFree(known.userId, invitation.companyId);
      await this.database.inCompany(invitation.companyId, (tx) => this.join(tx, invitation, known.userId, name));
    } catch (error) {
      if (known.signedIn) await this.accounts.signOut(known.signedIn.token);
      else await this.accounts.deleteUser(known.userId);
      throw error;
    }
    if (known.signedIn) await this.accounts.signOut(known.signedIn.token);
    return this.members.signIn({ email, password }, device);
  }

  private async createOrSignIn(
    email: string,
    name: string,
    password: string,
  ): Promise<{ userId: string; signedIn?: SignedIn }> {
    try {
      return await this.accounts.createUser({ email, name, password });
    } catch (error) {
      if (!(error instanceof ProblemError && error.type === 'already-exists')) throw error;
      const signedIn = await this.accounts.signIn(email, password);
      return { userId: signedIn.userId, signedIn };
    }
  }

  /** A session leads to one company, so a person works for one at a time. */
  private async assertFree(userId: string, companyId: string): Promise<void> {
    const memberships = await this.database.behindFence({ userId }, (tx) => members.listMemberships(tx, userId));
    if (memberships.length === 0) return;
    throw new ProblemError(
      'wrong-state',
      memberships.some((one) => one.companyId === companyId)
        ? 'You are a member of this company already; sign in instead.'
        : 'This e-mail address works for another company; ask to be invited with another address.',
    );
  }

  private async join(tx: Tx, { companyId, id, email, role }: members.InvitationRow, userId: string, name: string) {
    await members.lockCompany(tx, companyId);
    if (!(await members.takeInvitation(tx, companyId, id, this.clock.now()))) throw gone();
    const earlier = await members.findMemberOfUser(tx, companyId, userId);
    if (earlier) await members.updateMember(tx, companyId, earlier.id, { name, role, removedAt: null });
    else await members.insertMember(tx, { companyId, id: newId(), userId, name, email, role });
  }

  private async find(token: string): Promise<members.InvitationRow> {
    const tokenHash = hashSecret(token);
    const row = await this.database.behindFence({ tokenHash }, (tx) => members.findInvitationByHash(tx, tokenHash));
    if (!row) throw notFound('invitation');
    if (row.acceptedAt || row.revokedAt || row.expiresAt <= this.clock.now()) throw gone();
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
