import type { BodyOut, memberRoutes, Role } from '@underlath/contract';
import { text } from '@underlath/rules';
import type { Accounts } from '../../platform/accounts/accounts.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { hashSecret } from '../../platform/secrets.ts';
import type { Session } from '../accounts/sign-in.service.ts';
import type { PeopleLogService } from '../people-log/people-log.service.ts';
import type { RefusedSignIns } from '../people-log/refused-sign-ins.service.ts';
import * as members from './members.repository.ts';
import type { From, MembersService } from './members.service.ts';

type Acceptance = BodyOut<typeof memberRoutes.acceptInvitation>;

interface Offer {
  companyName: string;
  email: string;
  role: Role;
  expiresAt: string;
}

/** What the link of an invitation opens. */
export class JoiningService {
  constructor(
    private readonly database: Database,
    private readonly accounts: Accounts,
    private readonly clock: Clock,
    private readonly members: MembersService,
    private readonly peopleLog: PeopleLogService,
    private readonly refused: RefusedSignIns,
  ) {}

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
  async accept({ token, name, password }: Acceptance, from: From): Promise<Session> {
    const { device, log } = from;
    const found = await this.find(token);
    const { email } = found;
    await this.refused.watch(email, device, log, () => this.take(found, { name, password }, from));
    return this.members.signIn({ email, password }, device, 'invitation');
  }

  private async take(
    { companyId, id, email }: members.InvitationRow,
    { name, password }: Omit<Acceptance, 'token'>,
    from: From,
  ): Promise<void> {
    let made: string | undefined;
    try {
      await this.database.inCompany(companyId, async (tx) => {
        await members.lockCompany(tx, companyId);
        const invitation = await members.findInvitation(tx, companyId, id);
        if (invitation.acceptedAt) return this.assertTaker(tx, invitation, password, from);
        await this.assertOpen(tx, invitation);
        const { userId, isNew } = await this.accounts.proven({ email, name, password });
        if (isNew) made = userId;
        await this.join(tx, invitation, userId, name);
      });
    } catch (error) {
      if (made) await this.accounts.deleteUser(made);
      throw error;
    }
  }

  /** A session leads to one company, so a person works for one at a time. */
  private async join(tx: Tx, { companyId, id, email, role }: members.InvitationRow, userId: string, name: string) {
    await members.widenFence(tx, { companyId, userId });
    const memberships = await members.listMemberships(tx, userId);
    if (memberships.length > 0) {
      throw new ProblemError(
        'wrong-state',
        memberships.some((one) => one.companyId === companyId)
          ? text(
              'You are a member of this company already; sign in instead.',
              'Usted ya es de esta empresa; mejor entre a su cuenta.',
            )
          : text(
              'This e-mail address works for another company; ask to be invited with another address.',
              'Este correo trabaja para otra empresa; pida que lo inviten con otro correo.',
            ),
      );
    }
    const earlier = await members.findMemberOfUser(tx, companyId, userId);
    const memberId = earlier?.id ?? newId();
    if (earlier) await members.updateMember(tx, companyId, earlier.id, { name, email, role, removedAt: null });
    else await members.insertMember(tx, { companyId, id: memberId, userId, name, email, role });
    await members.acceptInvitation(tx, companyId, id, this.clock.now());
    const actor = { kind: 'member', id: memberId, name } as const;
    await this.peopleLog.note(tx, companyId, {
      type: 'invitation.accepted',
      actor,
      subjectId: id,
      data: { to: email },
    });
    await this.peopleLog.note(tx, companyId, { type: 'member.joined', actor, subjectId: memberId, data: { role } });
  }

  /** @throws ProblemError `link-gone` for anybody but the member it made */
  private async assertTaker(
    tx: Tx,
    { companyId, email }: members.InvitationRow,
    password: string,
    { device, log }: From,
  ): Promise<void> {
    const userId = await this.accounts.knows(email, password);
    if (!userId) this.refused.note(email, device, log);
    const member = userId && (await members.findMemberOfUser(tx, companyId, userId));
    if (member && !member.removedAt) return;
    throw new ProblemError(
      'link-gone',
      text(
        'This invitation was used already. If that was you, sign in with your e-mail address and password.',
        'Esta invitación ya se usó. Si fue usted, entre con su correo y su contraseña.',
      ),
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
  new ProblemError(
    'link-gone',
    text(
      'This invitation was used or revoked, or it has expired; ask for a new one.',
      'Esta invitación ya se usó, se retiró o venció; pida otra.',
    ),
  );
