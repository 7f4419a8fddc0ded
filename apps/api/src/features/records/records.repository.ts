import type { Tx } from '../../platform/database/database.ts';
import { toWord } from '../enum-words.ts';

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

export const insertHead = (tx: Tx, companyId: string, projectId: string, hash: string) =>
  tx.recordHead.create({ data: { companyId, projectId, seq: 0, hash } });

/** Waits for its turn: whoever appends to a project's record holds this row until the transaction ends. */
export async function lockHead(tx: Tx, companyId: string, projectId: string): Promise<HeadRow | undefined> {
  const rows = await tx.$queryRaw<HeadRow[]>`
    select seq, hash from record_head
    where company_id = ${companyId}::uuid and project_id = ${projectId}::uuid for update`;
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

export const listSentVersions = (tx: Tx, companyId: string, projectId: string) =>
  tx.changeOrderVersion.findMany({ where: { companyId, changeOrder: { projectId } }, include: { decision: true } });

export async function listJudgments(tx: Tx, companyId: string, projectId: string) {
  const rows = await tx.judgment.findMany({ where: { companyId, finding: { projectId } } });
  return rows.map((row) => ({ ...row, verdict: toWord(row.verdict), severity: toWord(row.severity) }));
}

export const listPhotoHashes = (tx: Tx, companyId: string, projectId: string) =>
  tx.photo.findMany({ where: { companyId, projectId }, select: { id: true, sha256: true } });
