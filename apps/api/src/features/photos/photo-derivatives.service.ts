import { createHash } from 'node:crypto';
import type { Photo } from '@underlath/contract';
import type { Database, Tx } from '../../platform/database/database.ts';
import type { FileStore } from '../../platform/file-store/file-store.ts';
import {
  type Derivatives,
  derivePhoto,
  ImageDamagedError,
  type PhotoMediaType,
} from '../../platform/images/image-codec.ts';
import { notFound } from '../../platform/problem-error.ts';
import type { JobSender } from '../../platform/queue.ts';
import { type Actor, systemActor } from '../../shared/actor.ts';
import type { Caller } from '../../shared/caller.ts';
import type { RecordsService } from '../records/records.service.ts';
import { thumbKey, viewKey } from './photo-files.ts';
import { derivePhotoJob } from './photos.jobs.ts';
import { toPhoto } from './photos.mapper.ts';
import * as photos from './photos.repository.ts';

/** The smaller pictures that screens show. A failure is kept with its reason and can be tried again. */
export class PhotoDerivativesService {
  constructor(
    private readonly database: Database,
    private readonly store: FileStore,
    private readonly queue: JobSender,
    private readonly records: RecordsService,
  ) {}

  /** Makes both pictures. Throws what may pass with time, so that the queue tries again; the last try is kept as failed. */
  async derive(companyId: string, photoId: string, isLastTry: boolean): Promise<void> {
    const photo = await this.database.inCompany(companyId, (tx) => photos.findPhoto(tx, companyId, photoId));
    if (!photo || photo.derivativeState === 'ready') return;
    try {
      const original = await this.store.bytes(photo.fileKey);
      const made = await derivePhoto(original, photo.mediaType as PhotoMediaType);
      await this.keep(companyId, photo, made);
    } catch (error) {
      const isDamaged = error instanceof ImageDamagedError;
      if (isDamaged || isLastTry)
        await this.fail(companyId, photo, isDamaged ? error.message : 'the server could not read or store it');
      if (!isDamaged) throw error;
    }
  }

  /** Puts the work back into the queue. A photo whose pictures are ready stays as it is. @throws ProblemError `not-found` */
  async retry({ companyId, actor }: Caller, photoId: string): Promise<Photo> {
    return this.database.inCompany(companyId, async (tx) => {
      const photo = await photos.findPhoto(tx, companyId, photoId);
      if (!photo) throw notFound('photo');
      if (photo.derivativeState !== 'failed') return toPhoto(photo);
      await this.setState(tx, companyId, photo, actor, { derivativeState: 'waiting', derivativeReason: null });
      await this.queue.enqueue(tx, derivePhotoJob, { companyId, photoId });
      return toPhoto({ ...photo, derivativeState: 'waiting', derivativeReason: null });
    });
  }

  private async keep(companyId: string, photo: photos.PhotoRow, { view, thumb }: Derivatives): Promise<void> {
    await this.store.put(viewKey(photo.fileKey), view);
    await this.store.put(thumbKey(photo.fileKey), thumb);
    const viewSha256 = createHash('sha256').update(view).digest('hex');
    const state = { derivativeState: 'ready', derivativeReason: null, viewSha256 } as const;
    await this.database.inCompany(companyId, (tx) => this.setState(tx, companyId, photo, systemActor, state));
  }

  private async fail(companyId: string, photo: photos.PhotoRow, reason: string): Promise<void> {
    const state = { derivativeState: 'failed', derivativeReason: reason } as const;
    await this.database.inCompany(companyId, (tx) => this.setState(tx, companyId, photo, systemActor, state));
  }

  /** The version stays: nobody typed anything that this could overwrite. */
  private async setState(
    tx: Tx,
    companyId: string,
    { id, projectId }: photos.PhotoRow,
    actor: Actor,
    state: {
      derivativeState: photos.PhotoRow['derivativeState'];
      derivativeReason: string | null;
      viewSha256?: string;
    },
  ): Promise<void> {
    await this.records.lock(tx, companyId, projectId);
    await photos.updatePhoto(tx, companyId, id, state);
    const type = { waiting: 'photo.derive-again', ready: 'photo.derived', failed: 'photo.derive-failed' }[
      state.derivativeState
    ];
    const data = state.viewSha256 ? { viewSha256: state.viewSha256 } : { reason: state.derivativeReason };
    await this.records.append(tx, { companyId, projectId, actor, type, subjectId: id, data });
  }
}
