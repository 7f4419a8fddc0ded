import type { ContractTerms } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { dayOf } from '../../shared/days.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { RecordsService } from '../records/records.service.ts';
import type { TermsRow } from './contract.repository.ts';
import * as contracts from './contract.repository.ts';
import { type Terms, toTerms, unwrittenTerms } from './contract-history.ts';

/** What a contract says of retainage, days, notices and payments. The history is read with the terms of today. */
export class ContractTermsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
  ) {}

  /** @throws ProblemError `not-found` */
  async get(companyId: string, projectId: string): Promise<ContractTerms> {
    return this.database.inCompany(companyId, async (tx) => {
      if (!(await contracts.hasProject(tx, companyId, projectId))) throw notFound('project');
      return toAnswer(await contracts.findTerms(tx, companyId, projectId));
    });
  }

  /** @throws ProblemError `not-found`, `stale-version`, `invalid-input`, `wrong-state` for a settled payment left out */
  async save({ companyId, actor }: Caller, projectId: string, seen: number, given: Terms): Promise<ContractTerms> {
    return this.database.inCompany(companyId, async (tx) => {
      await this.records.lock(tx, companyId, projectId);
      const current = await contracts.findTerms(tx, companyId, projectId);
      assertVersion(seen, current?.version ?? 0);
      assertOwnIds(given.milestones);
      await assertSettledStay(tx, companyId, projectId, given.milestones);
      const terms = { ...given, daysOff: [...new Set(given.daysOff)].sort() };
      return toAnswer(await this.write(tx, { companyId, actor }, projectId, seen + 1, terms));
    });
  }

  /** The first terms of a new project, in the caller's transaction: nothing but how its days are counted. */
  async begin(tx: Tx, caller: Caller, projectId: string, dayKind: Terms['dayKind']): Promise<void> {
    await this.write(tx, caller, projectId, 1, { ...unwrittenTerms, dayKind });
  }

  private async write(
    tx: Tx,
    { companyId, actor }: Pick<Caller, 'companyId' | 'actor'>,
    projectId: string,
    version: number,
    terms: Terms,
  ): Promise<TermsRow> {
    const row = { ...toRow(terms), version, changedAt: this.clock.now() };
    const written = await contracts.writeTerms(tx, companyId, projectId, row);
    const data = { version, ...terms };
    const type = 'contract.terms-changed';
    await this.records.append(tx, { companyId, projectId, actor, type, subjectId: projectId, data });
    return written;
  }
}

const toAnswer = (row: TermsRow | null): ContractTerms => ({
  version: row?.version ?? 0,
  ...toTerms(row),
  changedAt: row?.changedAt.toISOString() ?? null,
});

const toRow = ({ netDecreaseReturnsOverheadAndProfit, daysOff, milestones, ...terms }: Terms) => ({
  ...terms,
  netDecreaseReturns: netDecreaseReturnsOverheadAndProfit,
  daysOff: daysOff.map((day) => new Date(`${day}T00:00:00Z`)),
  milestones: milestones.map((milestone) => ({ ...milestone })),
});

/** @throws ProblemError `invalid-input` */
function assertOwnIds(milestones: Terms['milestones']): void {
  for (const [at, { id, name }] of milestones.entries()) {
    if (milestones.findIndex((other) => other.id === id) === at) continue;
    throw invalidInput(`/milestones/${at}/id`, `milestones.${at}: "${name}" has the id of a payment before it.`);
  }
}

/** @throws ProblemError `wrong-state` */
async function assertSettledStay(tx: Tx, companyId: string, projectId: string, milestones: Terms['milestones']) {
  const kept = new Set(milestones.map(({ id }) => id));
  for (const { milestoneId, takenBackAt, name, happenedOn } of await contracts.listEntries(tx, companyId, projectId)) {
    if (!milestoneId || takenBackAt || kept.has(milestoneId)) continue;
    throw new ProblemError(
      'wrong-state',
      `The payment "${name}" of ${dayOf(happenedOn)} settles a payment that the terms would no longer have. Keep it in the terms, or take the payment back first.`,
    );
  }
}
