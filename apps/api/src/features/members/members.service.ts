import {
  type BodyOut,
  lowerRole,
  type Me,
  type Member,
  type memberRoutes,
  type PeopleEventType,
  type PeopleFacts,
  type Role,
  role,
} from '@underlath/contract';
import { text } from '@underlath/rules';
import type { Accounts, SeenDevice } from '../../platform/accounts/accounts.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { Session } from '../accounts/sign-in.service.ts';
import { asPerson, type PeopleLogService } from '../people-log/people-log.service.ts';
import { fromOf, type ServerLog } from '../people-log/refused-sign-ins.service.ts';
import { takeOwnersTurn } from './in-turn.ts';
import { toCompany, toMember } from './members.mapper.ts';
import * as members from './members.repository.ts';

/** Where a request comes from, and the server's own log. */
export interface From {
  device: SeenDevice;
  log: ServerLog;
}

/** The people of a company. */
export class MembersService {
  constructor(
    private readonly database: Database,
    private readonly accounts: Accounts,
    private readonly clock: Clock,
    private readonly peopleLog: PeopleLogService,
  ) {}

  /** Of somebody who just chose their password. @param how for the log of people @throws ProblemError `wrong-credentials`, `sign-in-again`, `not-allowed` for a person who works for no company */
  async signIn(
    { email, password }: { email: string; password: string },
    device: SeenDevice,
    how: string,
  ): Promise<Session> {
    const signedIn = await this.accounts.signIn(email, password, device);
    const { userId } = signedIn;
    const [member] = await this.database.behindFence({ userId }, (tx) => members.listMemberships(tx, userId));
    if (member) {
      const { companyId, id, name } = member;
      const actor = { kind: 'member', id, name } as const;
      const note = { type: 'sign-in.good', actor, subjectId: id, data: { how, ...fromOf(device) } } as const;
      await this.database.inCompany(companyId, (tx) => this.peopleLog.note(tx, companyId, note));
      return { signedIn, me: await this.whoAmI(companyId, id) };
    }
    await this.accounts.signOut(signedIn.token);
    throw new ProblemError(
      'not-allowed',
      text(
        'You are in no company any more; ask its owner for an invitation.',
        'Usted ya no está en ninguna empresa; pida una invitación al dueño.',
      ),
    );
  }

  async whoAmI(companyId: string, memberId: string): Promise<Me> {
    return this.database.inCompany(companyId, async (tx) => ({
      member: toMember(await requireMember(tx, companyId, memberId)),
      company: toCompany(await members.findCompany(tx, companyId)),
    }));
  }

  async list(companyId: string): Promise<{ items: Member[] }> {
    const rows = await this.database.inCompany(companyId, (tx) => members.listMembers(tx, companyId));
    return { items: rows.map(toMember) };
  }

  /**
   * A lower role ends what their keys could do beyond it, and the invitations they sent.
   * @throws ProblemError `not-found`, `stale-version`, `not-allowed`, `wrong-state` for the last owner
   */
  async change(
    caller: Caller,
    id: string,
    seen: number,
    change: BodyOut<typeof memberRoutes.changeMember>,
  ): Promise<Member> {
    const { companyId } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const member = await takeMember(tx, caller, id, seen);
      const changed = await members.updateMember(tx, companyId, id, change);
      if (changed.role !== member.role) await this.changeRole(tx, caller, member, changed.role);
      if (changed.name !== member.name) {
        const data = { from: member.name, to: changed.name };
        await this.note(tx, caller, 'member.renamed', id, data);
      }
      return toMember(changed);
    });
  }

  /**
   * Their sessions, the API keys they made and the invitations they sent end at once.
   * @throws ProblemError `not-found`, `stale-version`, `not-allowed`, `wrong-state` for the last owner
   */
  async remove(caller: Caller, id: string, seen: number): Promise<void> {
    const { companyId } = caller;
    const now = this.clock.now();
    const { userId } = await this.database.inCompany(companyId, async (tx) => {
      const member = await takeMember(tx, caller, id, seen);
      const keys = await members.revokeApiKeys(tx, companyId, { createdById: id }, now);
      const invitations = await members.revokeInvitationsOf(tx, companyId, id, now);
      const data = { name: member.name, role: member.role, keysEnded: keys, invitationsEnded: invitations };
      await this.note(tx, caller, 'member.removed', id, data);
      const removed = await members.updateMember(tx, companyId, id, { removedAt: now });
      await assertOwnerStays(tx, companyId);
      return removed;
    });
    // No request gets past a removed membership; this also clears the sessions themselves.
    await this.accounts.revokeSessionsOf(userId);
  }

  private async changeRole(tx: Tx, caller: Caller, before: members.MemberRow, to: Role): Promise<void> {
    const { companyId, id, role: from } = before;
    await assertOwnerStays(tx, companyId);
    if (lowerRole(from, to) === from) return this.note(tx, caller, 'member.role-changed', id, { from, to });
    const above = role.options.filter((one) => one !== to && lowerRole(to, one) === to);
    const keys = await members.lowerApiKeys(tx, companyId, id, to, above);
    const invitations = await members.revokeInvitationsOf(tx, companyId, id, this.clock.now());
    const data = { from, to, keysLowered: keys, invitationsEnded: invitations };
    await this.note(tx, caller, 'member.role-changed', id, data);
  }

  private note(
    tx: Tx,
    { companyId, actor }: Pick<Caller, 'companyId' | 'actor'>,
    type: PeopleEventType,
    subjectId: string,
    data: PeopleFacts,
  ): Promise<void> {
    return this.peopleLog.note(tx, companyId, { type, actor: asPerson(actor), subjectId, data });
  }
}

async function requireMember(tx: Tx, companyId: string, id: string): Promise<members.MemberRow> {
  const member = await members.findMember(tx, companyId, id);
  if (!member) throw notFound('member');
  return member;
}

/** In an owner’s turn, as it was when they saw it. */
async function takeMember(tx: Tx, caller: Caller, id: string, seen: number): Promise<members.MemberRow> {
  const { companyId } = caller;
  await takeOwnersTurn(tx, caller);
  const member = await requireMember(tx, companyId, id);
  if (member.removedAt) throw notFound('member');
  assertVersion(seen, member.version);
  return member;
}

/** After a change, which is taken back by throwing. @throws ProblemError `wrong-state` */
async function assertOwnerStays(tx: Tx, companyId: string): Promise<void> {
  if ((await members.countOwners(tx, companyId)) > 0) return;
  throw new ProblemError('wrong-state', 'This is the last owner; make another member an owner first.');
}
