import type { Readable } from 'node:stream';
import type { Photo } from '@underlath/contract';
import type { Database, Tx } from '../../platform/database/database.ts';
import type { FileStore, ReceivedFile } from '../../platform/file-store/file-store.ts';
import { newId } from '../../platform/ids.ts';
import { inspectPhoto, type PhotoFacts } from '../../platform/images/image-codec.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { JobSender } from '../../platform/queue.ts';
import type { Caller } from '../../shared/caller.ts';
import { toEnum } from '../../shared/enum-words.ts';
import { eventTypes } from '../../shared/record-events.ts';
import type { RecordsService } from '../records/records.service.ts';
import { originalKey } from './photo-files.ts';
import { derivePhotoJob } from './photos.jobs.ts';
import { toPhoto } from './photos.mapper.ts';
import * as photos from './photos.repository.ts';
import type { UploadFields } from './upload-fields.ts';

type KeptFile = ReceivedFile & PhotoFacts & { fileKey: string };

export type UploadedPhoto = Photo & { duplicate: boolean };

/** Takes photos in: bytes first, then the row, so that a row never speaks of bytes that are not there. */
export class PhotoIntakeService {
  constructor(
    private readonly database: Database,
    private readonly store: FileStore,
    private readonly queue: JobSender,
    private readonly records: RecordsService,
  ) {}

  /** Asked before the bytes are taken. @throws ProblemError `not-found` */
  async assertProject(companyId: string, projectId: string): Promise<void> {
    const exists = await this.database.inCompanySql(companyId, (client) =>
      photos.hasProject(client, companyId, projectId),
    );
    if (!exists) throw notFound('project');
  }

  /** Takes the bytes to their end, hashing them on the way. Hand the result to `add` or `discard`. */
  receive(stream: Readable): Promise<ReceivedFile> {
    return this.store.receive(stream);
  }

  discard(file: ReceivedFile): Promise<void> {
    return this.store.discard(file);
  }

  /**
   * Keeps a received photo, or answers the one with the same bytes that the project has already.
   * The received file is gone afterwards, whatever happens.
   * @throws ProblemError `invalid-input`, `unsupported-media`, `too-large`, `already-exists`, `not-found`
   */
  async add(caller: Caller, projectId: string, fields: UploadFields, file: ReceivedFile): Promise<UploadedPhoto> {
    try {
      assertSameBytes(fields.sha256, file.sha256);
      const facts = await inspectPhoto(file.path, file.byteCount);
      const fileKey = originalKey(caller.companyId, projectId, newId());
      await this.store.keep(file, fileKey);
      return await this.addRow(caller, projectId, fields, { ...file, ...facts, fileKey });
    } finally {
      await this.store.discard(file);
    }
  }

  private async addRow(
    caller: Caller,
    projectId: string,
    fields: UploadFields,
    kept: KeptFile,
  ): Promise<UploadedPhoto> {
    try {
      const added = await this.database.inCompany(caller.companyId, (tx) =>
        this.insertOrFind(tx, caller, projectId, fields, kept),
      );
      if (added.duplicate) await this.store.remove(kept.fileKey);
      return added;
    } catch (error) {
      // After any other failure the row may have been committed all the same; bytes without a row do no harm.
      if (error instanceof ProblemError) await this.store.remove(kept.fileKey);
      throw error;
    }
  }

  private async insertOrFind(
    tx: Tx,
    caller: Caller,
    projectId: string,
    fields: UploadFields,
    kept: KeptFile,
  ): Promise<UploadedPhoto> {
    await assertPlaces(tx, caller.companyId, projectId, fields);
    return (
      (await this.insert(tx, caller, projectId, fields, kept)) ??
      (await this.linkKnown(tx, caller, projectId, fields, kept.sha256))
    );
  }

  /** Undefined when these bytes, or this id, are there already. Two uploads of the same bytes wait for each other here. */
  private async insert(
    tx: Tx,
    { companyId, actor, memberId }: Caller,
    projectId: string,
    { id = newId(), findingId, locationId, stage, caption }: UploadFields,
    { fileKey, sha256, byteCount, mediaType, widthPx, heightPx, deviceTime, deviceOffset }: KeptFile,
  ): Promise<UploadedPhoto | undefined> {
    const facts = { sha256, byteCount, mediaType, widthPx, heightPx, deviceTime, deviceOffset };
    const told = { projectId, locationId: locationId ?? null, caption };
    const row = await photos.insertPhoto(tx, {
      companyId,
      id,
      ...told,
      ...facts,
      fileKey,
      stage: toEnum(stage),
      uploadedById: memberId,
    });
    if (!row) return undefined;
    if (findingId) await photos.linkPhoto(tx, companyId, findingId, id);
    const data = { ...facts, stage, caption, locationId: told.locationId, findingId: findingId ?? null };
    const entry = { companyId, projectId, actor, subjectId: id };
    await this.records.append(tx, { ...entry, type: eventTypes.photoReceived, data });
    await this.queue.enqueue(tx, derivePhotoJob, { companyId, photoId: id });
    const findingIds = findingId ? [findingId] : [];
    const uploadedByName = actor.kind === 'member' ? actor.name : await photos.findMemberName(tx, companyId, memberId);
    return { ...toPhoto({ ...row, stage, findingIds, uploadedByName }), duplicate: false };
  }

  /** The photo with these bytes, linked to the finding asked for. @throws ProblemError `already-exists` when only the id was taken */
  private async linkKnown(
    tx: Tx,
    { companyId, actor }: Caller,
    projectId: string,
    { findingId }: UploadFields,
    sha256: string,
  ): Promise<UploadedPhoto> {
    const known = await photos.findPhotoByHash(tx, companyId, projectId, sha256);
    if (!known) {
      throw new ProblemError(
        'already-exists',
        'There is already a photo with this id and other bytes; choose a new id.',
      );
    }
    if (findingId && (await photos.linkPhoto(tx, companyId, findingId, known.id))) {
      const entry = { companyId, projectId, actor, subjectId: known.id };
      await this.records.append(tx, { ...entry, type: 'photo.linked', data: { findingId } });
      known.findingIds.push(findingId);
    }
    return { ...toPhoto(known), duplicate: true };
  }
}

function assertSameBytes(told: string | undefined, came: string): void {
  if (told === undefined || told === came) return;
  throw invalidInput('/sha256', `sha256: you said ${told}, the bytes that came have ${came}; send the photo again.`);
}

async function assertPlaces(tx: Tx, companyId: string, projectId: string, { locationId, findingId }: UploadFields) {
  if (locationId && !(await photos.hasLocation(tx, companyId, projectId, locationId))) {
    throw invalidInput('/locationId', `locationId: there is no place ${locationId} in this project.`);
  }
  if (findingId && !(await photos.hasFinding(tx, companyId, projectId, findingId))) {
    throw invalidInput('/findingId', `findingId: there is no finding ${findingId} in this project.`);
  }
}
