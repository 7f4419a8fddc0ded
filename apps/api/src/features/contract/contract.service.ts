import type { ChangeOrderDocument, Contract, ContractLine, ContractSums, Wording } from '@underlath/contract';
import { evaluateContract } from '@underlath/rules';
import type { Database, Tx } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import { toWord } from '../enum-words.ts';
import type { ContractProject, OrderRow } from './contract.repository.ts';
import * as contracts from './contract.repository.ts';

/** Where the contract stands. Only approved changes are in the sum; what waits for an answer is told apart. */
export class ContractService {
  constructor(private readonly database: Database) {}

  /** @throws ProblemError `not-found` */
  async get(companyId: string, projectId: string): Promise<Contract> {
    return this.database.inCompany(companyId, async (tx) => {
      const { project, orders } = await read(tx, companyId, projectId);
      return { ...sumsOf(project, orders), ...linesOf(project, orders) };
    });
  }

  /** The same in short, in the caller's transaction. @throws ProblemError `not-found` */
  async sums(tx: Tx, companyId: string, projectId: string): Promise<ContractSums> {
    const { project, orders } = await read(tx, companyId, projectId);
    return sumsOf(project, orders);
  }

  /** Before and after one more change, as a letter shows it. @throws ProblemError `not-found` */
  async withChange(
    tx: Tx,
    companyId: string,
    projectId: string,
    change: { cents: number; days: number },
  ): Promise<ChangeOrderDocument['contract']> {
    const { project, orders } = await read(tx, companyId, projectId);
    const before = evaluate(project, orders);
    const after = evaluate(project, orders, change);
    return {
      currency: 'USD',
      originalSumCents: project.originalSumCents,
      previousChangesCents: before.previousChangesCents,
      beforeCents: before.beforeCents,
      thisChangeCents: change.cents,
      afterCents: after.afterCents,
      daysBefore: before.daysBefore,
      daysAfter: after.daysAfter,
      finishBefore: before.finish ?? null,
      finishAfter: after.finish ?? null,
    };
  }
}

async function read(tx: Tx, companyId: string, projectId: string) {
  const project = await contracts.findProject(tx, companyId, projectId);
  if (!project) throw notFound('project');
  return { project, orders: await contracts.listOrders(tx, companyId, projectId) };
}

const dayOf = (date: Date | null): string | null => date?.toISOString().slice(0, 10) ?? null;

const standings = { approved: 'approved', declined: 'declined', sent: 'pending' } as const;

/** Neither retainage nor savings are kept here yet, so both stand at what changes no figure that is shown. */
function evaluate(project: ContractProject, orders: readonly OrderRow[], thisChange?: { cents: number; days: number }) {
  const start = dayOf(project.startOn);
  return evaluateContract({
    originalCents: project.originalSumCents,
    originalDays: project.originalDays,
    ...(start && { start }),
    dayKind: 'working',
    retainagePct: 0,
    netDecreaseReturnsOverheadAndProfit: false,
    events: orders.map(({ state, totalCents, days, decidedAt, createdAt }) => ({
      kind: 'change' as const,
      state: standings[state as keyof typeof standings],
      cents: totalCents,
      days,
      on: (decidedAt ?? createdAt).toISOString().slice(0, 10),
    })),
    ...(thisChange && { thisChange }),
  });
}

function sumsOf(project: ContractProject, orders: readonly OrderRow[]): ContractSums {
  const now = evaluate(project, orders);
  const pending = orders.filter(({ state }) => state === 'sent');
  return {
    currency: 'USD',
    originalSumCents: project.originalSumCents,
    approvedChangesCents: now.previousChangesCents,
    currentSumCents: now.beforeCents,
    pendingCents: now.pendingCents,
    originalDays: project.originalDays,
    approvedDays: now.daysBefore - project.originalDays,
    currentDays: now.daysBefore,
    pendingDays: pending.reduce((sum, { days }) => sum + days, 0),
    startOn: dayOf(project.startOn),
    finishOn: now.finish ?? null,
    contingencyCents: project.contingencyCents,
  };
}

function linesOf(
  project: ContractProject,
  orders: readonly OrderRow[],
): Pick<Contract, 'approved' | 'pending' | 'declined'> {
  let sum = project.originalSumCents;
  let days = project.originalDays;
  const approved = orders
    .filter(({ state }) => state === 'approved')
    .map((order) => {
      sum += order.totalCents;
      days += order.days;
      return toLine(order, sum, days);
    });
  const inState = (state: OrderRow['state']) =>
    orders.filter((order) => order.state === state).map((order) => toLine(order, null, null));
  return { approved, pending: inState('sent'), declined: inState('declined') };
}

function toLine(order: OrderRow, sumAfterCents: number | null, daysAfter: number | null): ContractLine {
  const { id, number, state, wording, totalCents, days, decidedAt } = order;
  return {
    changeOrderId: id,
    number,
    headline: (wording as unknown as Wording).headline.en,
    state: toWord(state),
    cents: totalCents,
    days,
    decidedAt: decidedAt?.toISOString() ?? null,
    sumAfterCents,
    daysAfter,
  };
}
