import type { FindingState, PhotoThumb, Severity, Verdict } from '@underlath/contract';
import { MAX_CENTS } from '@underlath/rules/pricing';
import type pg from 'pg';
import { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import { namesOf } from '../../shared/members.ts';
import type { NewestFirst } from '../../shared/paging.ts';

export interface FindingRowData {
  id: string;
  version: number;
  projectId: string;
  locationId: string;
  locationName: string;
  number: number;
  checkId: string;
  title: string;
  note: string;
  state: FindingState;
  stateReason: string | null;
  extent: unknown;
  verdict: Verdict | null;
  severity: Severity | null;
  linesCents: number | null;
  changeOrderId: string | null;
  seenAt: Date;
  createdAt: Date;
  createdById: string;
  createdByName: string;
  context: unknown;
  photos: PhotoThumb[];
}

/** A finding with its photos and its newest change order: one row, whatever hangs on it. A sum that no price may be, kept before there was a limit, is no price. */
const columns = `
  f.id, f.version, f.project_id as "projectId", f.location_id as "locationId", l.name as "locationName", f.number,
  f.check_id as "checkId", f.title, f.note, f.state::text as state, f.state_reason as "stateReason", f.extent,
  f.verdict::text as verdict, f.severity::text as severity, 
  case when abs((f.estimate->>'linesCents')::numeric) <= ${MAX_CENTS} then (f.estimate->>'linesCents')::int end as "linesCents",
 
  f.seen_at as "seenAt", f.created_at as "createdAt", f.created_by_id as "createdById",
  coalesce(m.name, '') as "createdByName", f.context,
  (select cf.change_order_id from change_order_finding cf
    join change_order co on co.company_id = cf.company_id and co.id = cf.change_order_id
    where cf.company_id = f.company_id and cf.finding_id = f.id and co.state <> 'set-aside'
    order by co.number desc limit 1) as "changeOrderId",
  (select coalesce(json_agg(json_build_object('id', p.id, 'stage', p.stage, 'caption', p.caption,
      'derivative', p.derivative_state) order by fp.added_at, p.id), '[]')
    from finding_photo fp join photo p on p.company_id = fp.company_id and p.id = fp.photo_id
    where fp.company_id = f.company_id and fp.finding_id = f.id) as photos`;
const joined = `
  from finding f
  join location l on l.company_id = f.company_id and l.id = f.location_id
  left join member m on m.company_id = f.company_id and m.id = f.created_by_id`;

export interface FindingFilter {
  severity?: Severity | undefined;
  state?: FindingState | undefined;
  locationId?: string | undefined;
  q?: string | undefined;
  after: NewestFirst | undefined;
  take: number;
}

/** The hot list: newest first, photos included, in one statement. */
export async function listFindings(
  client: pg.PoolClient,
  companyId: string,
  projectId: string,
  { severity, state, locationId, q, after, take }: FindingFilter,
): Promise<FindingRowData[]> {
  const values: unknown[] = [companyId, projectId, take];
  const value = (one: unknown) => `$${values.push(one)}`;
  const conditions = ['f.company_id = $1', 'f.project_id = $2'];
  if (severity) conditions.push(`f.severity = ${value(severity)}::severity`);
  if (state) conditions.push(`f.state = ${value(state)}::finding_state`);
  if (locationId) conditions.push(`f.location_id = ${value(locationId)}`);
  if (q) {
    const pattern = value(`%${q.replace(/[\\%_]/g, '\\$&')}%`);
    conditions.push(`(f.title ilike ${pattern} or f.note ilike ${pattern} or l.name ilike ${pattern})`);
  }
  if (after) {
    const at = value(after.at);
    conditions.push(`f.created_at <= ${at} and (f.created_at < ${at} or f.id > ${value(after.id)})`);
  }
  const text = `select ${columns} ${joined} where ${conditions.join(' and ')} order by f.created_at desc, f.id limit $3`;
  // The name lets the server keep the plan; there are as many names as combinations of filters.
  const name = `findings-${[severity, state, locationId, q, after].map((one) => (one === undefined ? 0 : 1)).join('')}`;
  const { rows } = await client.query<FindingRowData>({ name, text, values });
  return rows;
}

export async function findFinding(tx: Tx, companyId: string, id: string): Promise<FindingRowData | undefined> {
  const rows = await tx.$queryRaw<FindingRowData[]>`
    select ${Prisma.raw(columns)} ${Prisma.raw(joined)} where f.company_id = ${companyId}::uuid and f.id = ${id}::uuid`;
  return rows[0];
}

export async function nextNumber(tx: Tx, companyId: string, projectId: string): Promise<number> {
  const { _max } = await tx.finding.aggregate({ where: { companyId, projectId }, _max: { number: true } });
  return (_max.number ?? 0) + 1;
}

export const insertFinding = (tx: Tx, data: Prisma.FindingUncheckedCreateInput) =>
  tx.finding.create({ data, select: { id: true } });

/** The caller holds the project's turn. Every change is a new version. */
export const updateFinding = (tx: Tx, companyId: string, id: string, data: Prisma.FindingUncheckedUpdateInput) =>
  tx.finding.update({
    where: { companyId_id: { companyId, id } },
    data: { ...data, version: { increment: 1 } },
    select: { id: true },
  });

export const insertJudgment = (tx: Tx, data: Prisma.JudgmentUncheckedCreateInput) =>
  tx.judgment.create({ data, select: { id: true } });

export interface JudgmentRow extends Prisma.JudgmentGetPayload<object> {
  judgedByName: string;
}

/** Oldest first. */
export async function listJudgments(tx: Tx, companyId: string, findingId: string): Promise<JudgmentRow[]> {
  const rows = await tx.judgment.findMany({ where: { companyId, findingId }, orderBy: { seq: 'asc' } });
  const names = await namesOf(
    tx,
    companyId,
    rows.map(({ judgedById }) => judgedById),
  );
  return rows.map((row) => ({ ...row, judgedByName: names.get(row.judgedById) ?? '' }));
}

/** A place of a project, and the editions that the project is judged by. */
export const findPlace = (tx: Tx, companyId: string, projectId: string, id: string) =>
  tx.location.findFirst({
    where: { companyId, projectId, id },
    select: {
      name: true,
      storiesAbove: true,
      widthIn: true,
      heightIn: true,
      project: { select: { codeEdition: true, standardEditions: true } },
    },
  });
export type JudgedPlace = NonNullable<Awaited<ReturnType<typeof findPlace>>>;

export const countJudgments = (tx: Tx, companyId: string, findingId: string): Promise<number> =>
  tx.judgment.count({ where: { companyId, findingId } });

/** Which of these photos the project has. */
export async function findPhotoIds(tx: Tx, companyId: string, projectId: string, ids: string[]): Promise<Set<string>> {
  if (ids.length === 0) return new Set();
  const rows = await tx.photo.findMany({ where: { companyId, projectId, id: { in: ids } }, select: { id: true } });
  return new Set(rows.map(({ id }) => id));
}

/** The ids that were not linked before. */
export async function linkPhotos(tx: Tx, companyId: string, findingId: string, photoIds: string[]): Promise<string[]> {
  if (photoIds.length === 0) return [];
  const made = await tx.findingPhoto.createManyAndReturn({
    data: photoIds.map((photoId) => ({ companyId, findingId, photoId })),
    skipDuplicates: true,
    select: { photoId: true },
  });
  return made.map(({ photoId }) => photoId);
}

/** A change order that a client may still answer, or that is being written, with this finding in it. */
export const findOpenOrder = (tx: Tx, companyId: string, findingId: string) =>
  tx.changeOrder.findFirst({
    where: { companyId, state: { in: ['draft', 'sent'] }, findings: { some: { findingId } } },
    select: { number: true },
  });
