import type { PeopleEventType } from '@underlath/contract';
import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import type { NewestFirst } from '../../shared/paging.ts';

export type PeopleEventRow = Prisma.PeopleEventGetPayload<object>;

export async function insertPeopleEvent(tx: Tx, data: Prisma.PeopleEventCreateManyInput): Promise<void> {
  await tx.peopleEvent.createMany({ data: [data] });
}

/** Newest first, from after `position`. */
export const listPeopleEvents = (
  tx: Tx,
  companyId: string,
  { type, position, take }: { type: PeopleEventType | undefined; position: NewestFirst | undefined; take: number },
): Promise<PeopleEventRow[]> =>
  tx.peopleEvent.findMany({
    where: {
      companyId,
      ...(type && { type }),
      ...(position && { OR: [{ at: { lt: position.at } }, { at: position.at, id: { lt: position.id } }] }),
    },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take,
  });

/** Where a person works now; behind the person's own fence. */
export const listPlacesOf = (tx: Tx, userId: string) =>
  tx.member.findMany({
    where: { userId, removedAt: null },
    select: { companyId: true, id: true },
    orderBy: { createdAt: 'asc' },
  });
