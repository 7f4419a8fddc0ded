import type { Readable } from 'node:stream';
import type { BodyOut, Photo, photoRoutes, QueryOut } from '@underlath/contract';
import type { Database, Tx } from '../../platform/database/database.ts';
import type { FileStore } from '../../platform/file-store/file-store.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { toEnum } from '../../shared/enum-words.ts';
import { cutPage, type ListPage, newestFirst, readCursor } from '../../shared/paging.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { RecordsService } from '../records/records.service.ts';
import { thumbKey, viewKey } from './photo-files.ts';
import { toPhoto } from './photos.mapper.ts';
import * as photos from './photos.repository.ts';

export interface PhotoFile {
  /** Names these exact bytes. */
  tag: string;
  mediaType: string;
  open(): Promise<{ stream: Readable; byteCount: number }>;
}

/** Photos as they are kept: finding them, putting them in order, handing out their bytes. */
export class PhotosService {
  constructor(
    private readonly database: Database,
    private readonly store: FileStore,
    private readonly records: RecordsService,
  ) {}

  async list(
    companyId: string,
    projectId: string,
    query: QueryOut<typeof photoRoutes.listPhotos>,
  ): Promise<ListPage<Photo>> {
    const { cursor, limit, ...filter } = query;
    const after = readCursor(newestFirst('photos'), cursor);
    return this.database.inCompany(companyId, async (tx) => {
      if (!(await this.records.exists(tx, companyId, projectId))) throw notFound('project');
      const rows = await photos.listPhotos(tx, companyId, projectId, { ...filter, after, take: limit + 1 });
      return cutPage(rows, limit, toPhoto, ({ receivedAt, id }) => ({
        list: 'photos',
        at: receivedAt.toISOString(),
        id,
      }));
    });
  }

  /** In the order in which they were added. */
  async ofFinding(tx: Tx, companyId: string, findingId: string): Promise<Photo[]> {
    return (await photos.listPhotosOfFinding(tx, companyId, findingId)).map(toPhoto);
  }

  async get(companyId: string, id: string): Promise<Photo> {
    return toPhoto(await this.find(companyId, id));
  }

  /** @throws ProblemError `not-found`, `stale-version`, `invalid-input` */
  async change(
    caller: Caller,
    id: string,
    seen: number,
    change: BodyOut<typeof photoRoutes.changePhoto>,
  ): Promise<Photo> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const { projectId } = await requirePhoto(tx, companyId, id);
      await this.records.lock(tx, companyId, projectId);
      assertVersion(seen, (await requirePhoto(tx, companyId, id)).version);
      const { stage, ...rest } = change;
      const { locationId } = rest;
      if (locationId && !(await photos.hasLocation(tx, companyId, projectId, locationId))) {
        throw invalidInput('/locationId', `locationId: there is no place ${locationId} in this project.`);
      }
      const data = { ...rest, ...(stage && { stage: toEnum(stage) }), version: { increment: 1 } };
      await photos.updatePhoto(tx, companyId, id, data);
      const entry = { companyId, projectId, actor, subjectId: id };
      await this.records.append(tx, { ...entry, type: 'photo.changed', data: { ...change } });
      return toPhoto(await requirePhoto(tx, companyId, id));
    });
  }

  /** One of the smaller pictures. @throws ProblemError `not-found`, `wrong-state` while there is none */
  async picture(companyId: string, id: string, size: 'view' | 'thumb'): Promise<PhotoFile> {
    return this.smaller(await this.find(companyId, id), size);
  }

  /** The larger of the smaller pictures of each of these photos, by id. @throws ProblemError `not-found`, `wrong-state` */
  async views(tx: Tx, companyId: string, ids: readonly string[]): Promise<ReadonlyMap<string, PhotoFile>> {
    const rows = ids.length > 0 ? await photos.findPhotos(tx, companyId, ids) : [];
    return new Map(rows.map((row) => [row.id, this.smaller(row, 'view')]));
  }

  private smaller(photo: photos.PhotoRow, size: 'view' | 'thumb'): PhotoFile {
    const { fileKey, viewSha256, derivativeState, derivativeReason } = photo;
    if (derivativeState !== 'ready' || viewSha256 === null) {
      const why = derivativeReason
        ? `could not be made: ${derivativeReason}`
        : 'is still being made; ask again shortly';
      throw new ProblemError('wrong-state', `The smaller picture of this photo ${why}.`);
    }
    const key = size === 'view' ? viewKey(fileKey) : thumbKey(fileKey);
    const tag = size === 'view' ? viewSha256 : `${viewSha256}-thumb`;
    return { tag, mediaType: 'image/jpeg', open: () => this.store.open(key) };
  }

  /** The untouched bytes. @throws ProblemError `not-found` */
  async original(companyId: string, id: string): Promise<PhotoFile> {
    const { fileKey, sha256, mediaType } = await this.find(companyId, id);
    return { tag: sha256, mediaType, open: () => this.store.open(fileKey) };
  }

  private find(companyId: string, id: string): Promise<photos.PhotoRow> {
    return this.database.inCompany(companyId, (tx) => requirePhoto(tx, companyId, id));
  }
}

async function requirePhoto(tx: Tx, companyId: string, id: string): Promise<photos.PhotoRow> {
  const photo = await photos.findPhoto(tx, companyId, id);
  if (!photo) throw notFound('photo');
  return photo;
}
