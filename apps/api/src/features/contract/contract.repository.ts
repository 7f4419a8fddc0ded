import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

const withHistory = {
  // The newest photo that knows its zone.
  photos: {
    where: { deviceOffset: { not: null } },
    select: { deviceOffset: true },
    orderBy: [{ receivedAt: 'desc' }, { id: 'asc' }],
    take: 1,
  },
  terms: true,
  // Change orders that were ever with the client, in the order they were answered; those waiting last.
  changeOrders: {
    where: { state: { in: ['sent', 'approved', 'partApproved', 'declined'] } },
    select: {
      id: true,
      number: true,
      state: true,
      wording: true,
      totalCents: true,
      days: true,
      decidedAt: true,
      createdAt: true,
      versions: { select: { sentAt: true }, orderBy: { version: 'desc' }, take: 1 },
    },
    orderBy: [{ decidedAt: { sort: 'asc', nulls: 'last' } }, { number: 'asc' }],
  },
  entries: { orderBy: [{ happenedOn: 'asc' }, { enteredAt: 'asc' }, { id: 'asc' }] },
} satisfies Prisma.ProjectInclude;

/** A project with everything that made its contract what it is. */
export const findHistory = (tx: Tx, companyId: string, id: string) =>
  tx.project.findUnique({ where: { companyId_id: { companyId, id } }, include: withHistory });
export type ContractProject = NonNullable<Awaited<ReturnType<typeof findHistory>>>;
export type OrderRow = ContractProject['changeOrders'][number];

export const hasProject = async (tx: Tx, companyId: string, id: string): Promise<boolean> =>
  (await tx.project.count({ where: { companyId, id } })) > 0;

export const findTerms = (tx: Tx, companyId: string, projectId: string) =>
  tx.contractTerms.findUnique({ where: { companyId_projectId: { companyId, projectId } } });
export type TermsRow = NonNullable<Awaited<ReturnType<typeof findTerms>>>;

export const writeTerms = (
  tx: Tx,
  companyId: string,
  projectId: string,
  data: Omit<Prisma.ContractTermsUncheckedCreateInput, 'companyId' | 'projectId'>,
): Promise<TermsRow> =>
  tx.contractTerms.upsert({
    where: { companyId_projectId: { companyId, projectId } },
    create: { companyId, projectId, ...data },
    update: data,
  });

export const findEntry = (tx: Tx, companyId: string, id: string) =>
  tx.contractEntry.findUnique({ where: { companyId_id: { companyId, id } } });
export type EntryRow = NonNullable<Awaited<ReturnType<typeof findEntry>>>;

export const listEntries = (tx: Tx, companyId: string, projectId: string): Promise<EntryRow[]> =>
  tx.contractEntry.findMany({
    where: { companyId, projectId },
    orderBy: [{ happenedOn: 'asc' }, { enteredAt: 'asc' }, { id: 'asc' }],
  });

export const insertEntry = (tx: Tx, data: Prisma.ContractEntryUncheckedCreateInput): Promise<EntryRow> =>
  tx.contractEntry.create({ data });

export const takeBack = (tx: Tx, companyId: string, id: string, takenBackAt: Date, takenBackWhy: string) =>
  tx.contractEntry.update({ where: { companyId_id: { companyId, id } }, data: { takenBackAt, takenBackWhy } });
