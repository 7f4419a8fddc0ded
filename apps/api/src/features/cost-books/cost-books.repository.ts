import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

export const findNewest = (tx: Tx, companyId: string) =>
  tx.costBook.findFirst({ where: { companyId }, orderBy: { version: 'desc' } });
export type CostBookRow = NonNullable<Awaited<ReturnType<typeof findNewest>>>;

export const findVersion = (tx: Tx, companyId: string, version: number) =>
  tx.costBook.findUnique({ where: { companyId_version: { companyId, version } } });

export const listBooks = (tx: Tx, companyId: string) =>
  tx.costBook.findMany({ where: { companyId }, orderBy: { version: 'desc' } });

/** Adds a version, or answers undefined when another of the same number came first. */
export async function insertBook(tx: Tx, data: Prisma.CostBookUncheckedCreateInput): Promise<CostBookRow | undefined> {
  const rows = await tx.costBook.createManyAndReturn({ data: [data], skipDuplicates: true });
  return rows[0];
}

export const findCompanyCreated = (tx: Tx, companyId: string) =>
  tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { createdAt: true } });
