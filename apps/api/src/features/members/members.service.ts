import {
  type BodyOut,
  type Company,
  lowerRole,
  type Me,
  type Member,
  type memberRoutes,
  type PeopleEventType,
  type PeopleFacts,
  type Role,
  role,
} from '@underlath/contract';
import type { CostBook } from '@underlath/rules/pricing';
import type { Accounts, SeenDevice } from '../../platform/accounts/accounts.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { toJson } from '../../platform/database/json.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { Session } from '../accounts/sign-in.service.ts';
import { asPerson, type PeopleLogService } from '../people-log/people-log.service.ts';
import { toCompany, toMember } from './members.mapper.ts';
import * as members from './members.repository.ts';

type CompanyChange = BodyOut<typeof memberRoutes.changeCompany>;

/** The company and its people. */
export class MembersService {
  constructor(
    private readonly database: Database,
    private readonly accounts: Accounts,
    private readonly clock: Clock,
    /** Version 1 of every new company's cost book. */
    private readonly starterBook: CostBook,
    private readonly signUp: 'open' | 'invited' | 'closed',
    private readonly peopleLog: PeopleLogService,
  ) {}

  /** Whether a company can be opened now. */
  async isOpen(): Promise<boolean> {
    if (this.signUp !== 'invited') return this.signUp === 'open';
    return (await this.database.people.company.findFirst({ select: { id: true } })) === null;
  }

  /**
   * A new company with its first owner and the starter cost book, and nothing else. Who is known here already gives the
   * password they have, and is told nothing else without it.
   * @throws ProblemError `not-allowed`, `invalid-input`, `wrong-credentials`, `wrong-state`
   */
  async createCompany(body: BodyOut<typeof memberRoutes.createCompany>, device?: SeenDevice): Promise<Session> {
    const { companyName, name, password } = body;
    const email = body.email.toLowerCase();
    await this.assertOpen();
    const { userId, isNew } = await this.accounts.createOrKnow({ email, name, password, companyName });
    const companyId = newId();
    try {
      await this.database.inCompany(
        companyId,
        async (tx) => {
          await members.lockSignUp(tx);
          await this.assertOpen();
          if ((await members.listMemberships(tx, userId)).length > 0) {
            throw new ProblemError('wrong-state', 'You work for a company here already; sign in instead.');
          }
          await members.insertCompany(tx, companyId, companyName);
          const { id } = await members.insertMember(tx, { companyId, id: newId(), userId, name, email, role: 'owner' });
          await members.insertCostBook(tx, companyId, toJson(this.starterBook));
          const actor = { kind: 'member', id, name } as const;
          await this.peopleLog.note(tx, companyId, { type: 'company.opened', actor, subjectId: id });
        },
        { userId },
      );
    } catch (error) {
      if (isNew) await this.accounts.deleteUser(userId);
      throw error;
    }
    return this.signIn({ email, password }, device);
  }

  /** Of somebody who just chose their password. @throws ProblemError `wrong-credentials`, `sign-in-again`, `not-allowed` for a person who works for no company */
  async signIn({ email, password }: { email: string; password: string }, device?: SeenDevice): Promise<Session> {
    const signedIn = await this.accounts.signIn(email, password, device);
    const { userId } = signedIn;
    const [membership] = await this.database.behindFence({ userId }, (tx) => members.listMemberships(tx, userId));
    if (membership) return { signedIn, me: await this.whoAmI(membership.companyId, membership.id) };
    await this.accounts.signOut(signedIn.token);
    throw new ProblemError('not-allowed', 'You are in no company any more; ask its owner for an invitation.');
  }

  async whoAmI(companyId: string, memberId: string): Promise<Me> {
    return this.database.inCompany(companyId, async (tx) => ({
      member: toMember(await requireMember(tx, companyId, memberId)),
      company: toCompany(await members.findCompany(tx, companyId)),
    }));
  }

  async company(companyId: string): Promise<Company> {
    return this.database.inCompany(companyId, async (tx) => toCompany(await members.findCompany(tx, companyId)));
  }

  /** @throws ProblemError `stale-version` */
  async changeCompany({ companyId, actor }: Caller, seen: number, change: CompanyChange): Promise<Company> {
    return this.database.inCompany(companyId, async (tx) => {
      await members.lockCompany(tx, companyId);
      assertVersion(seen, (await members.findCompany(tx, companyId)).version);
      await this.noteCompany(tx, { companyId, actor }, change);
      return toCompany(await members.updateCompany(tx, companyId, change));
    });
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

  /** What its people may see and do is told with its value, the details by name. */
  private async noteCompany(tx: Tx, caller: Pick<Caller, 'companyId' | 'actor'>, change: CompanyChange): Promise<void> {
    const { crewSeesMoney, estimatorsEditCostBook, ...details } = change;
    const rights = {
      ...(crewSeesMoney !== undefined && { crewSeesMoney }),
      ...(estimatorsEditCostBook !== undefined && { estimatorsEditCostBook }),
    };
    const changed = Object.keys(details);
    if (changed.length > 0) await this.note(tx, caller, 'company.changed', undefined, { changed });
    if (Object.keys(rights).length > 0) await this.note(tx, caller, 'rights.changed', undefined, rights);
  }

  private note(
    tx: Tx,
    { companyId, actor }: Pick<Caller, 'companyId' | 'actor'>,
    type: PeopleEventType,
    subjectId: string | undefined,
    data: PeopleFacts,
  ): Promise<void> {
    const subject = subjectId === undefined ? {} : { subjectId };
    return this.peopleLog.note(tx, companyId, { type, actor: asPerson(actor), ...subject, data });
  }

  private async assertOpen(): Promise<void> {
    if (await this.isOpen()) return;
    throw new ProblemError(
      'not-allowed',
      'No company can be opened here. To work with one that is here, ask its owner for an invitation.',
    );
  }
}

async function requireMember(tx: Tx, companyId: string, id: string): Promise<members.MemberRow> {
  const member = await members.findMember(tx, companyId, id);
  if (!member) throw notFound('member');
  return member;
}

/** In turn, as the owner that the caller still is, and as it was when they saw it. */
async function takeMember(tx: Tx, caller: Caller, id: string, seen: number): Promise<members.MemberRow> {
  const { companyId, memberId } = caller;
  await members.lockCompany(tx, companyId);
  const by = await members.findMember(tx, companyId, memberId);
  if (!by || by.removedAt || by.role !== 'owner') {
    throw new ProblemError('not-allowed', 'You are no owner of this company any more.');
  }
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
