import type { PhotoStage } from '@underlath/contract';
import type pg from 'pg';
import { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import type { NewestFirst } from '../../shared/paging.ts';

export interface PhotoRow {
  id: string;
  version: number;
  projectId: string;
  locationId: string | null;
  findingIds: string[];
  stage: PhotoStage;
  caption: string;
  sha256: string;
  byteCount: number;
  mediaType: string;
  widthPx: number;
  heightPx: number;
  fileKey: string;
  deviceTime: string | null;
  deviceOffset: string | null;
  receivedAt: Date;
  uploadedById: string;
  uploadedByName: string;
  derivativeState: 'waiting' | 'ready' | 'failed';
  derivativeReason: string | null;
  viewSha256: string | null;
}

const selectPhotos = Prisma.sql`
  select p.id, p.version, p.project_id as "projectId", p.location_id as "locationId", p.stage::text as stage, p.caption,
    p.sha256, p.byte_count as "byteCount", p.media_type as "mediaType", p.width_px as "widthPx", p.height_px as "heightPx",
    p.file_key as "fileKey", p.device_time as "deviceTime", p.device_offset as "deviceOffset", p.received_at as "receivedAt",
    p.uploaded_by_id as "uploadedById", coalesce(m.name, '') as "uploadedByName",
    p.derivative_state::text as "derivativeState", p.derivative_reason as "derivativeReason", p.view_sha256 as "viewSha256",
    array(select fp.finding_id::text from finding_photo fp where fp.company_id = p.company_id and fp.photo_id = p.id
      order by fp.added_at, fp.finding_id) as "findingIds"
  from photo p left join member m on m.company_id = p.company_id and m.id = p.uploaded_by_id`;

export async function findPhoto(tx: Tx, companyId: string, id: string): Promise<PhotoRow | undefined> {
  const rows = await tx.$queryRaw<PhotoRow[]>`
    ${selectPhotos} where p.company_id = ${companyId}::uuid and p.id = ${id}::uuid`;
  return rows[0];
}

export const findPhotos = (tx: Tx, companyId: string, ids: readonly string[]) =>
  tx.$queryRaw<PhotoRow[]>`
    ${selectPhotos} where p.company_id = ${companyId}::uuid and p.id = any(${[...ids]}::uuid[])`;

export async function findPhotoByHash(tx: Tx, companyId: string, projectId: string, sha256: string) {
  const rows = await tx.$queryRaw<PhotoRow[]>`
    ${selectPhotos} where p.company_id = ${companyId}::uuid and p.project_id = ${projectId}::uuid and p.sha256 = ${sha256}`;
  return rows[0];
}

/** In the order in which they were added to the finding. */
export const listPhotosOfFinding = (tx: Tx, companyId: string, findingId: string) =>
  tx.$queryRaw<PhotoRow[]>`
    ${selectPhotos} join finding_photo link on link.company_id = p.company_id and link.photo_id = p.id
    where p.company_id = ${companyId}::uuid and link.finding_id = ${findingId}::uuid order by link.added_at, p.id`;

export interface PhotoFilter {
  locationId?: string | undefined;
  findingId?: string | undefined;
  stage?: PhotoStage | undefined;
  after: NewestFirst | undefined;
  take: number;
}

export function listPhotos(tx: Tx, companyId: string, projectId: string, filter: PhotoFilter): Promise<PhotoRow[]> {
  const { locationId, findingId, stage, after, take } = filter;
  const conditions = [
    Prisma.sql`p.company_id = ${companyId}::uuid and p.project_id = ${projectId}::uuid`,
    ...(locationId ? [Prisma.sql`p.location_id = ${locationId}::uuid`] : []),
    ...(stage ? [Prisma.sql`p.stage = ${stage}::photo_stage`] : []),
    ...(findingId
      ? [
          Prisma.sql`exists (select 1 from finding_photo link where link.company_id = p.company_id
            and link.photo_id = p.id and link.finding_id = ${findingId}::uuid)`,
        ]
      : []),
    ...(after
      ? [
          Prisma.sql`p.received_at <= ${after.at}::timestamptz
            and (p.received_at < ${after.at}::timestamptz or p.id > ${after.id}::uuid)`,
        ]
      : []),
  ];
  return tx.$queryRaw<PhotoRow[]>`
    ${selectPhotos} where ${Prisma.join(conditions, ' and ')} order by p.received_at desc, p.id limit ${take}`;
}

/** Undefined when the id, or these bytes in this project, are there already. */
export async function insertPhoto(tx: Tx, data: Prisma.PhotoUncheckedCreateInput) {
  const made = await tx.photo.createManyAndReturn({
    data: [data],
    skipDuplicates: true,
    omit: { companyId: true },
  });
  return made[0];
}

/** Empty for a member who is not there. */
export async function findMemberName(tx: Tx, companyId: string, id: string): Promise<string> {
  const member = await tx.member.findUnique({ where: { companyId_id: { companyId, id } }, select: { name: true } });
  return member?.name ?? '';
}

/** Links a photo to a finding; false when it was linked already. */
export async function linkPhoto(tx: Tx, companyId: string, findingId: string, photoId: string): Promise<boolean> {
  const made = await tx.findingPhoto.createMany({ data: [{ companyId, findingId, photoId }], skipDuplicates: true });
  return made.count === 1;
}

export const updatePhoto = (tx: Tx, companyId: string, id: string, data: Prisma.PhotoUncheckedUpdateInput) =>
  tx.photo.update({ where: { companyId_id: { companyId, id } }, data, select: { id: true } });

export async function hasLocation(tx: Tx, companyId: string, projectId: string, id: string): Promise<boolean> {
  return (await tx.location.count({ where: { companyId, projectId, id } })) === 1;
}

export async function hasFinding(tx: Tx, companyId: string, projectId: string, id: string): Promise<boolean> {
  return (await tx.finding.count({ where: { companyId, projectId, id } })) === 1;
}

/** Asked for every upload before its bytes are taken. */
export async function hasProject(client: pg.PoolClient, companyId: string, id: string): Promise<boolean> {
  const text = 'select 1 from project where company_id = $1 and id = $2';
  const { rowCount } = await client.query({ name: 'has-project', text, values: [companyId, id] });
  return rowCount === 1;
}
