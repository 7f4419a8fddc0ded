import type { BodyOut, ContractEntry, contractRoutes } from '@underlath/contract';
import { changeInSum } from '@underlath/rules';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { dayOf } from '../../shared/days.ts';
import { namesOf } from '../../shared/members.ts';
import { latestDay } from '../../shared/site-clock.ts';
import type { RecordsService } from '../records/records.service.ts';
import type { EntryRow } from './contract.repository.ts';
import * as contracts from './contract.repository.ts';
import type { ContractService } from './contract.service.ts';
import { eventOf } from './contract-history.ts';

type NewEntry = BodyOut<typeof contractRoutes.addContractEntry>;

/** Payments, completed work and settled allowances. They are added and taken back, never changed. */
export class ContractEntriesService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly contract: ContractService,
  ) {}

  /** By day, those of one day as they were entered. @throws ProblemError `not-found` */
  async list(companyId: string, projectId: string): Promise<ContractEntry[]> {
    return this.database.inCompany(companyId, async (tx) =>
      this.toEntries(tx, companyId, projectId, await contracts.listEntries(tx, companyId, projectId)),
    );
  }

  /** A repeat with the same id and content answers what exists. @throws ProblemError `not-found`, `invalid-input`, `wrong-state`, `already-exists` */
  async add(caller: Caller, projectId: string, { id = newId(), ...content }: NewEntry): Promise<ContractEntry> {
    const { companyId } = caller;
    return makeOnce(() =>
      this.database.inCompany(companyId, async (tx) => {
        await this.records.lock(tx, companyId, projectId);
        const known = await contracts.findEntry(tx, companyId, id);
        if (known) {
          const first = await this.records.lastData(tx, companyId, id, 'contract-entry.added');
          assertSameContent('entry', first?.contentSha256, { projectId, ...content });
        }
        return this.toEntry(tx, known ?? (await this.insert(tx, caller, projectId, id, content)));
      }),
    );
  }

  private async insert(
    tx: Tx,
    { companyId, memberId, actor }: Caller,
    projectId: string,
    id: string,
    content: NewEntry,
  ): Promise<EntryRow> {
    const now = this.clock.now();
    const { clock } = await this.contract.history(tx, companyId, projectId);
    assertHappened(content.happenedOn, latestDay(now, clock));
    if (content.kind === 'payment' && content.milestoneId)
      await this.assertUnsettled(tx, companyId, projectId, content.milestoneId);
    const { happenedOn, ...rest } = content;
    const row = await contracts.insertEntry(tx, {
      ...rest,
      companyId,
      id,
      projectId,
      happenedOn: new Date(happenedOn),
      enteredAt: now,
      enteredById: memberId,
    });
    const data = { ...content, contentSha256: contentHash({ projectId, ...content }) };
    await this.records.append(tx, { companyId, projectId, actor, type: 'contract-entry.added', subjectId: id, data });
    return row;
  }

  /** @throws ProblemError `not-found`, `wrong-state` when it was taken back already */
  async takeBack({ companyId, actor }: Caller, id: string, why: string): Promise<ContractEntry> {
    return this.database.inCompany(companyId, async (tx) => {
      const seen = await contracts.findEntry(tx, companyId, id);
      if (!seen) throw notFound('entry');
      const { projectId } = seen;
      await this.records.lock(tx, companyId, projectId);
      const row = await contracts.findEntry(tx, companyId, id);
      if (row?.takenBackAt) throw new ProblemError('wrong-state', 'This entry has been taken back already.');
      const after = await contracts.takeBack(tx, companyId, id, this.clock.now(), why);
      const type = 'contract-entry.taken-back';
      await this.records.append(tx, { companyId, projectId, actor, type, subjectId: id, data: { reason: why } });
      return this.toEntry(tx, after);
    });
  }

  private async assertUnsettled(tx: Tx, companyId: string, projectId: string, milestoneId: string): Promise<void> {
    const { terms, happenings } = await this.contract.history(tx, companyId, projectId);
    const milestone = terms.milestones.find(({ id }) => id === milestoneId);
    if (!milestone) throw invalidInput('/milestoneId', 'milestoneId: the terms have no payment with this id.');
    const earlier = happenings.find(({ entry }) => entry?.milestoneId === milestoneId);
    if (!earlier) return;
    throw new ProblemError(
      'wrong-state',
      `"${milestone.name}" was settled on ${earlier.event.on} by "${earlier.what}". Enter this payment without it, or take the other back first.`,
    );
  }

  private async toEntry(tx: Tx, row: EntryRow): Promise<ContractEntry> {
    const [entry] = await this.toEntries(tx, row.companyId, row.projectId, [row]);
    return entry as ContractEntry;
  }

  private async toEntries(tx: Tx, companyId: string, projectId: string, rows: EntryRow[]): Promise<ContractEntry[]> {
    const { input } = await this.contract.history(tx, companyId, projectId);
    const ids = rows.map(({ enteredById }) => enteredById);
    const names = await namesOf(tx, companyId, ids);
    return rows.map((row): ContractEntry => {
      const { on: _on, ...event } = eventOf(row);
      const foot = {
        id: row.id,
        name: row.name,
        happenedOn: dayOf(row.happenedOn),
        changeCents: row.takenBackAt ? 0 : changeInSum(eventOf(row), input),
        enteredAt: row.enteredAt.toISOString(),
        enteredBy: { id: row.enteredById, name: names.get(row.enteredById) ?? '' },
        takenBack: row.takenBackAt && { at: row.takenBackAt.toISOString(), why: row.takenBackWhy ?? '' },
      };
      if (event.kind === 'payment') return { ...event, ...foot, milestoneId: row.milestoneId };
      return { ...(event as Exclude<typeof event, { kind: 'payment' | 'change' }>), ...foot };
    });
  }
}

/** @throws ProblemError `invalid-input` for a day that has not begun at the site */
function assertHappened(day: string, latest: string): void {
  if (day <= latest) return;
  throw invalidInput('/happenedOn', `happenedOn: ${day} has not come yet; allowed is a day that has.`);
}
