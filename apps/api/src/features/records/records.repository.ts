import { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import { hashOf } from '../../platform/hash.ts';

export interface HeadRow {
  seq: number;
  hash: string;
}

export interface EventRow {
  seq: number;
  at: Date;
  type: string;
  subjectId: string;
  body: string;
  prevHash: string;
  hash: string;
}

/** Answers whether there was none before. */
export async function insertHead(tx: Tx, companyId: string, projectId: string, hash: string): Promise<boolean> {
  const data = [{ companyId, projectId, seq: 0, hash }];
  return (await tx.recordHead.createMany({ data, skipDuplicates: true })).count === 1;
}

/** Waits for its turn: whoever appends to a project's record holds this row until the transaction ends. */
export async function lockHead(tx: Tx, companyId: string, projectId: string): Promise<HeadRow | undefined> {
  const rows = await tx.$queryRaw<HeadRow[]>`
    select seq, hash from record_head
    where company_id = ${companyId}::uuid and project_id = ${projectId}::uuid for update`;
  return rows[0];
}

const ofSubject = {
  finding: Prisma.sql`finding`,
  change_order: Prisma.sql`change_order`,
} as const;
export type LockedBy = keyof typeof ofSubject;

/** The same for the project that a row is of, which never changes. */
export async function lockHeadOf(tx: Tx, companyId: string, subject: LockedBy, id: string) {
  const rows = await tx.$queryRaw<(HeadRow & { projectId: string })[]>`
    select h.seq, h.hash, h.project_id::text as "projectId" from record_head h
    join ${ofSubject[subject]} s on s.company_id = h.company_id and s.project_id = h.project_id
    where s.company_id = ${companyId}::uuid and s.id = ${id}::uuid for update of h`;
  return rows[0];
}

export const findHead = (tx: Tx, companyId: string, projectId: string) =>
  tx.recordHead.findUnique({ where: { companyId_projectId: { companyId, projectId } } });

export async function hasProject(tx: Tx, companyId: string, id: string): Promise<boolean> {
  return (await tx.project.count({ where: { companyId, id } })) === 1;
}

/** The event and the moved head, in one statement. */
export async function insertEvent(tx: Tx, companyId: string, projectId: string, event: EventRow): Promise<void> {
  await tx.$executeRaw`
    with moved as (
      update record_head set seq = ${event.seq}, hash = ${event.hash}
      where company_id = ${companyId}::uuid and project_id = ${projectId}::uuid
    )
    insert into event (company_id, project_id, seq, at, type, subject_id, body, prev_hash, hash)
    values (${companyId}::uuid, ${projectId}::uuid, ${event.seq}, ${event.at}, ${event.type}, ${event.subjectId}::uuid,
      ${event.body}, ${event.prevHash}, ${event.hash})`;
}

/** The body of the newest event of one kind about one thing. */
export async function findEventBody(tx: Tx, companyId: string, subjectId: string, type: string) {
  const event = await tx.event.findFirst({
    where: { companyId, subjectId, type },
    orderBy: { seq: 'desc' },
    select: { body: true },
  });
  return event?.body;
}

/** Newest first, from below `beforeSeq`. */
export const listEvents = (tx: Tx, companyId: string, projectId: string, beforeSeq: number, take: number) =>
  tx.event.findMany({
    where: { companyId, projectId, seq: { lt: beforeSeq } },
    orderBy: { seq: 'desc' },
    take,
  });

/** Oldest first, from above `afterSeq`. */
export const walkEvents = (tx: Tx, companyId: string, projectId: string, afterSeq: number, take: number) =>
  tx.event.findMany({ where: { companyId, projectId, seq: { gt: afterSeq } }, orderBy: { seq: 'asc' }, take });

/** What the company has, to be held against its record. */
export async function readCompany(tx: Tx, companyId: string) {
  const projects = await tx.project.findMany({ where: { companyId }, select: { id: true } });
  const books = await tx.costBook.findMany({ where: { companyId }, orderBy: { version: 'asc' } });
  const records = await tx.$queryRaw<{ id: string }[]>`
    select project_id::text as id from record_head where company_id = ${companyId}::uuid and project_id <> company_id
    union select project_id::text from event where company_id = ${companyId}::uuid and project_id <> company_id`;
  return {
    projectIds: projects.map(({ id }) => id),
    costBooks: books.map(({ version, book }) => ({ version, sha256: hashOf(book) })),
    recordIds: records.map(({ id }) => id),
  };
}
