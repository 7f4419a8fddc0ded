import type { BodyOut, Company, Me, Member, memberRoutes } from '@underlath/contract';
import type { CostBook } from '@underlath/rules/pricing';
import type { Prisma } from '../../generated/prisma/client.ts';
import type { Accounts, SeenDevice, SignedIn } from '../../platform/accounts.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { assertVersion } from '../../plugins/etag.ts';
import type { Caller } from '../caller.ts';
import { asPerson, type PeopleLogService } from '../people-log/people-log.service.ts';
import { toCompany, toMember } from './members.mapper.ts';
import * as members from './members.repository.ts';

export interface Session {
  me: Me;
  signedIn: SignedIn;
}

/** The company and its people. */
export class MembersService {
  constructor(
    private readonly database: Database,
    private readonly accounts: Accounts,
    private readonly clock: Clock,
    /** Version 1 of every new company's cost book. */
    private readonly starterBook: CostBook,
    private readonly peopleLog: PeopleLogService,
  ) {}

  /** A new company with its first owner and the starter cost book, and nothing else. @throws ProblemError `invalid-input`, `already-exists` */
  async createCompany(body: BodyOut<typeof memberRoutes.createCompany>, device?: SeenDevice): Promise<Session> {
    const { companyName, name, password } = body;
    const email = body.email.toLowerCase();
    const { userId } = await this.accounts.createUser({ email, name, password, companyName });
    const companyId = newId();
    try {
      await this.database.inCompany(companyId, async (tx) => {
        await members.insertCompany(tx, companyId, companyName);
        await members.insertMember(tx, { companyId, id: newId(), userId, name, email, role: 'owner' });
        await members.insertCostBook(tx, companyId, this.starterBook as unknown as Prisma.InputJsonObject);
      });
    } catch (error) {
      await this.accounts.deleteUser(userId);
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
  async changeCompany(
    { companyId, actor }: Caller,
    seen: number,
    change: BodyOut<typeof memberRoutes.changeCompany>,
  ): Promise<Company> {
    return this.database.inCompany(companyId, async (tx) => {
      await members.lockCompany(tx, companyId);
      assertVersion(seen, (await members.findCompany(tx, companyId)).version);
      const data = { changed: Object.keys(change) };
      await this.peopleLog.note(tx, companyId, { type: 'company.changed', actor: asPerson(actor), data });
      return toCompany(await members.updateCompany(tx, companyId, change));
    });
  }

  async list(companyId: string): Promise<{ items: Member[] }> {
    const rows = await this.database.inCompany(companyId, (tx) => members.listMembers(tx, companyId));
    return { items: rows.map(toMember) };
  }

  /** @throws ProblemError `not-found`, `wrong-state` for the last owner */
  async change(companyId: string, id: string, change: BodyOut<typeof memberRoutes.changeMember>): Promise<Member> {
    return this.database.inCompany(companyId, async (tx) => {
      const member = await takeMember(tx, companyId, id);
      if (change.role && change.role !== 'owner') await assertNotLastOwner(tx, member);
      return toMember(await members.updateMember(tx, companyId, id, change));
    });
  }

  /** Their sessions and the API keys they made end at once. @throws ProblemError `not-found`, `wrong-state` for the last owner */
  async remove(companyId: string, id: string): Promise<void> {
    const now = this.clock.now();
    const { userId } = await this.database.inCompany(companyId, async (tx) => {
      const member = await takeMember(tx, companyId, id);
      await assertNotLastOwner(tx, member);
      await members.revokeApiKeys(tx, companyId, { createdById: id }, now);
      return members.updateMember(tx, companyId, id, { removedAt: now });
    });
    // No request gets past a removed membership; this also clears the sessions themselves.
    await this.accounts.revokeSessionsOf(userId);
  }
}

async function requireMember(tx: Tx, companyId: string, id: string): Promise<members.MemberRow> {
  const member = await members.findMember(tx, companyId, id);
  if (!member) throw notFound('member');
  return member;
}

async function takeMember(tx: Tx, companyId: string, id: string): Promise<members.MemberRow> {
  await members.lockCompany(tx, companyId);
  const member = await requireMember(tx, companyId, id);
  if (member.removedAt) throw notFound('member');
  return member;
}

async function assertNotLastOwner(tx: Tx, { companyId, role }: members.MemberRow): Promise<void> {
  if (role !== 'owner' || (await members.countOwners(tx, companyId)) > 1) return;
  throw new ProblemError('wrong-state', 'This is the last owner; make another member an owner first.');
}
