import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

export const findProject = (tx: Tx, companyId: string, id: string) =>
  tx.project.findUnique({
    where: { companyId_id: { companyId, id } },
    select: {
      originalSumCents: true,
      originalDays: true,
      startOn: true,
      contingencyCents: true,
      timeZone: true,
      // The newest photo that knows its zone.
      photos: {
        where: { deviceOffset: { not: null } },
        select: { deviceOffset: true },
        orderBy: [{ receivedAt: 'desc' }, { id: 'asc' }],
        take: 1,
      },
    },
  });
export type ContractProject = NonNullable<Awaited<ReturnType<typeof findProject>>>;

/** Change orders that were ever with the client, in the order they were answered; those waiting last. */
export const listOrders = (tx: Tx, companyId: string, projectId: string) =>
  tx.changeOrder.findMany({
    where: { companyId, projectId, state: { in: ['sent', 'approved', 'partApproved', 'declined'] } },
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
  });
export type OrderRow = Awaited<ReturnType<typeof listOrders>>[number];

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
