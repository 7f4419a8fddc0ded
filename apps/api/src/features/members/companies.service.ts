import type { BodyOut, Company, memberRoutes } from '@underlath/contract';
import type { CostBook } from '@underlath/rules/pricing';
import type { Accounts } from '../../platform/accounts/accounts.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { toJson } from '../../platform/database/json.ts';
import { newId } from '../../platform/ids.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { Session } from '../accounts/sign-in.service.ts';
import { asPerson, type PeopleLogService } from '../people-log/people-log.service.ts';
import type { RefusedSignIns } from '../people-log/refused-sign-ins.service.ts';
import { takeOwnersTurn } from './in-turn.ts';
import { toCompany } from './members.mapper.ts';
import * as members from './members.repository.ts';
import type { From, MembersService } from './members.service.ts';

type CompanyChange = BodyOut<typeof memberRoutes.changeCompany>;
type NewCompany = BodyOut<typeof memberRoutes.createCompany>;

interface Tools {
  members: MembersService;
  peopleLog: PeopleLogService;
  refused: RefusedSignIns;
  /** Version 1 of every new company's cost book. */
  starterBook: CostBook;
}

/** Companies: opening one, and what it says of itself. */
export class CompaniesService {
  constructor(
    private readonly database: Database,
    private readonly accounts: Accounts,
    private readonly signUp: 'open' | 'invited' | 'closed',
    private readonly tools: Tools,
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
  async create(body: NewCompany, { device, log }: From): Promise<Session> {
    await this.assertOpen();
    const email = body.email.toLowerCase();
    const { companyName, name, password } = body;
    const { userId, isNew } = await this.tools.refused.watch(email, device, log, () =>
      this.accounts.createOrKnow({ email, name, password, companyName }),
    );
    try {
      await this.open({ companyName, name, email }, userId);
    } catch (error) {
      if (isNew) await this.accounts.deleteUser(userId);
      throw error;
    }
    return this.tools.members.signIn({ email, password }, device, 'new company');
  }

  private async open({ companyName, name, email }: Omit<NewCompany, 'password'>, userId: string): Promise<void> {
    const companyId = newId();
    const book = toJson(this.tools.starterBook);
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
        await members.insertCostBook(tx, companyId, book);
        const actor = { kind: 'member', id, name } as const;
        await this.tools.peopleLog.note(tx, companyId, { type: 'company.opened', actor, subjectId: id });
      },
      { userId },
    );
  }

  async company(companyId: string): Promise<Company> {
    return this.database.inCompany(companyId, async (tx) => toCompany(await members.findCompany(tx, companyId)));
  }

  /** @throws ProblemError `stale-version`, `not-allowed` */
  async change(caller: Caller, seen: number, change: CompanyChange): Promise<Company> {
    const { companyId } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      await takeOwnersTurn(tx, caller);
      assertVersion(seen, (await members.findCompany(tx, companyId)).version);
      await this.noteChange(tx, caller, change);
      return toCompany(await members.updateCompany(tx, companyId, change));
    });
  }

  /** What its people may see and do is told with its value, the details by name. */
  private async noteChange(tx: Tx, { companyId, actor }: Caller, change: CompanyChange): Promise<void> {
    const { crewSeesMoney, estimatorsEditCostBook, ...details } = change;
    const rights = {
      ...(crewSeesMoney !== undefined && { crewSeesMoney }),
      ...(estimatorsEditCostBook !== undefined && { estimatorsEditCostBook }),
    };
    const by = { actor: asPerson(actor) };
    const changed = Object.keys(details);
    const log = this.tools.peopleLog;
    if (changed.length > 0) await log.note(tx, companyId, { ...by, type: 'company.changed', data: { changed } });
    if (Object.keys(rights).length > 0) await log.note(tx, companyId, { ...by, type: 'rights.changed', data: rights });
  }

  private async assertOpen(): Promise<void> {
    if (await this.isOpen()) return;
    throw new ProblemError(
      'not-allowed',
      'No company can be opened here. To work with one that is here, ask its owner for an invitation.',
    );
  }
}
