import type { Readable } from 'node:stream';
import type { Photo } from '@underlath/contract';
import type { Database, Tx } from '../../platform/database/database.ts';
import type { FileStore, ReceivedFile } from '../../platform/file-store/file-store.ts';
import { newId } from '../../platform/ids.ts';
import { inspectPhoto, type PhotoFacts } from '../../platform/image-codec.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { JobSender } from '../../platform/queue.ts';
import type { Caller } from '../caller.ts';
import { makeOnce } from '../client-ids.ts';
import { toEnum } from '../enum-words.ts';
import { eventTypes } from '../records/record-events.ts';
import type { RecordsService } from '../records/records.service.ts';
import { originalKey } from './photo-files.ts';
import { derivePhotoJob } from './photos.jobs.ts';
import { toPhoto } from './photos.mapper.ts';
import * as photos from './photos.repository.ts';
import type { UploadFields } from './upload-fields.ts';

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
    const exists = await this.database.inCompany(companyId, (tx) => this.records.exists(tx, companyId, projectId));
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
      const known = await this.findKnown(caller, projectId, fields, file.sha256);
      if (known) return known;
      const fileKey = originalKey(caller.companyId, projectId, newId());
      await this.store.keep(file, fileKey);
      return await this.addRow(caller, projectId, fields, { ...file, ...facts, fileKey });
    } finally {
      await this.store.discard(file);
    }
  }

  private findKnown(caller: Caller, projectId: string, fields: UploadFields, sha256: string) {
    return this.database.inCompany(caller.companyId, (tx) => this.linkKnown(tx, caller, projectId, fields, sha256));
  }

  private async addRow(
    caller: Caller,
    projectId: string,
    fields: UploadFields,
    kept: ReceivedFile & PhotoFacts & { fileKey: string },
  ): Promise<UploadedPhoto> {
    try {
      const added = await makeOnce(() =>
        this.database.inCompany(caller.companyId, async (tx) => {
          const known = await this.linkKnown(tx, caller, projectId, fields, kept.sha256);
          return known ?? (await this.insert(tx, caller, projectId, fields, kept));
        }),
      );
      if (added.duplicate) await this.store.remove(kept.fileKey);
      return added;
    } catch (error) {
      // After any other failure the row may have been committed all the same; bytes without a row do no harm.
      if (error instanceof ProblemError) await this.store.remove(kept.fileKey);
      throw error;
    }
  }

  /** The photo with these bytes, linked to the finding asked for; undefined when the project has none. Takes the project's turn. */
  private async linkKnown(
    tx: Tx,
    caller: Caller,
    projectId: string,
    fields: UploadFields,
    sha256: string,
  ): Promise<UploadedPhoto | undefined> {
    const { companyId, actor } = caller;
    await this.records.lock(tx, companyId, projectId);
    await assertPlaces(tx, companyId, projectId, fields);
    const known = await photos.findPhotoByHash(tx, companyId, projectId, sha256);
    if (!known) {
      await assertFreeId(tx, companyId, fields.id);
      return undefined;
    }
    const { findingId } = fields;
    if (findingId && (await photos.linkPhoto(tx, companyId, findingId, known.id))) {
      const entry = { companyId, projectId, actor, subjectId: known.id };
      await this.records.append(tx, { ...entry, type: 'photo.linked', data: { findingId } });
      known.findingIds.push(findingId);
    }
    return { ...toPhoto(known), duplicate: true };
  }

  private async insert(
    tx: Tx,
    { companyId, actor, memberId }: Caller,
    projectId: string,
    { id = newId(), findingId, locationId, stage, caption }: UploadFields,
    {
      fileKey,
      sha256,
      byteCount,
      mediaType,
      widthPx,
      heightPx,
      deviceTime,
      deviceOffset,
    }: ReceivedFile & PhotoFacts & { fileKey: string },
  ): Promise<UploadedPhoto> {
    const facts = { sha256, byteCount, mediaType, widthPx, heightPx, deviceTime, deviceOffset };
    const place = { projectId, locationId: locationId ?? null };
    await photos.insertPhoto(tx, {
      companyId,
      id,
      ...place,
      ...facts,
      fileKey,
      stage: toEnum(stage),
      caption,
      uploadedById: memberId,
    });
    if (findingId) await photos.linkPhoto(tx, companyId, findingId, id);
    await this.records.append(tx, {
      companyId,
      projectId,
      actor,
      type: eventTypes.photoReceived,
      subjectId: id,
      data: { ...facts, stage, caption, locationId: place.locationId, findingId: findingId ?? null },
    });
    await this.queue.enqueue(tx, derivePhotoJob, { companyId, photoId: id });
    const row = await photos.findPhoto(tx, companyId, id);
    if (!row) throw new Error(`photo ${id} is not there after it was inserted`);
    return { ...toPhoto(row), duplicate: false };
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

async function assertFreeId(tx: Tx, companyId: string, id: string | undefined): Promise<void> {
  if (!id || !(await photos.findPhoto(tx, companyId, id))) return;
  throw new ProblemError('already-exists', 'There is already a photo with this id and other bytes; choose a new id.');
}
