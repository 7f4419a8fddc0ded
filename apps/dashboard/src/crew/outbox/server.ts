import { routes } from '@underlath/contract';
import { call } from '../../shared/api/call.ts';
import { CancelledError, OfflineError, ProblemAnswer, problemOf } from '../../shared/api/errors.ts';
import { uploadPhoto } from '../../shared/api/photos.ts';
import { type FindingDraft, isKeptByServer, type KeptPhoto } from './draft.ts';
import type { OutboxServer } from './outbox.ts';

/** Passing troubles of the server: the phone waits and tries again by itself, as with no connection. */
const passing = new Set([
  'busy',
  'database-away',
  'store-away',
  'too-many-requests',
  'still-running',
  'not-signed-in',
  'storage-full',
]);

export const outboxServer: OutboxServer = {
  async sendPhoto(photo: KeptPhoto, onProgress, signal) {
    if (!photo.bytes) throw new Error('The photo has no bytes left on this phone.');
    const answer = await uploadPhoto({
      id: photo.id,
      projectId: photo.projectId,
      file: new Blob([photo.bytes], { type: photo.mediaType }),
      fileName: photo.fileName,
      stage: photo.stage,
      sha256: photo.sha256 ?? undefined,
      findingId: photo.findingId ?? undefined,
      locationId: photo.locationId ?? undefined,
      onProgress,
      signal,
    });
    if (!isKeptByServer(photo, answer)) throw new Error('The server answered with another photo than the one sent.');
    return answer.id;
  },
  async sendFinding(draft: FindingDraft, photoIds) {
    if (!draft.locationId || !draft.checkId) throw new Error('A finding needs a place and a kind.');
    const { id, projectId, locationId, checkId, extent, seenAt, note, inputs, context } = draft;
    await call(routes.createFinding, {
      params: { projectId },
      body: { id, locationId, checkId, extent, seenAt, note, photoIds, inputs, context },
      idempotencyKey: draft.sendKey,
    });
  },
  read(error) {
    if (error instanceof CancelledError) return { kind: 'cancelled' };
    const away = error instanceof ProblemAnswer && (passing.has(error.type) || error.status >= 502);
    if (error instanceof OfflineError || away) return { kind: 'offline' };
    return { kind: 'refused', problem: problemOf(error) };
  },
};
