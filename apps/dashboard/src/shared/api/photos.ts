import { type Photo, type PhotoStage, photoCaps, routes } from '@underlath/contract';
import { addressOf } from './call.ts';
import { CancelledError, OfflineError, toProblemAnswer } from './errors.ts';
import { sessionEnded, shownMemberHeader } from './session.ts';

export interface PhotoUpload {
  readonly projectId: string;
  readonly file: Blob;
  readonly fileName: string;
  /** Made by the caller (UUIDv7): sending the same id again does no harm. */
  readonly id: string;
  readonly stage: PhotoStage;
  readonly sha256?: string | undefined;
  readonly findingId?: string | undefined;
  readonly locationId?: string | undefined;
  readonly caption?: string | undefined;
  /** 0..1 of the bytes sent. */
  readonly onProgress?: (share: number) => void;
  readonly signal?: AbortSignal;
}

export type SentPhoto = Photo & { duplicate: boolean };

/**
 * Sends one photo, fields before the file as the contract asks. XMLHttpRequest, because fetch tells no progress of what is sent.
 * Throws ProblemAnswer, OfflineError, or CancelledError when `signal` aborts.
 */
export function uploadPhoto(upload: PhotoUpload): Promise<SentPhoto> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    const cancel = () => request.abort();
    const settle = (finish: () => void) => () => {
      upload.signal?.removeEventListener('abort', cancel);
      finish();
    };
    request.open('POST', addressOf(routes.uploadPhoto, { params: { projectId: upload.projectId } }));
    request.setRequestHeader('accept', 'application/json, application/problem+json');
    for (const [name, value] of Object.entries(shownMemberHeader())) request.setRequestHeader(name, value);
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) upload.onProgress?.(event.loaded / event.total);
    };
    request.onload = settle(() => {
      if (request.status === 200 || request.status === 201) return resolve(JSON.parse(request.responseText));
      const headers = { get: (name: string) => request.getResponseHeader(name) };
      const error = toProblemAnswer(request.status, request.responseText, headers);
      if (error.type === 'not-signed-in') sessionEnded();
      reject(error);
    });
    request.onerror = settle(() => reject(new OfflineError()));
    request.onabort = settle(() => reject(new CancelledError()));
    if (upload.signal?.aborted) return reject(new CancelledError());
    upload.signal?.addEventListener('abort', cancel);
    request.send(formOf(upload));
  });
}

function formOf(upload: PhotoUpload): FormData {
  const form = new FormData();
  const { id, sha256, findingId, locationId, stage, caption } = upload;
  for (const [name, value] of Object.entries({ id, sha256, findingId, locationId, stage, caption })) {
    if (value) form.append(name, value);
  }
  form.append('file', upload.file, upload.fileName);
  return form;
}

/** SHA-256 of the bytes as 64 hex digits; undefined where the browser gives no cryptography (plain http away from localhost). */
export async function hashBytes(blob: Blob): Promise<string | undefined> {
  if (!globalThis.crypto?.subtle) return undefined;
  const digest = await crypto.subtle.digest('SHA-256', await blob.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** True when the file is larger than the server takes, so that it can be said before sending. */
export const isTooLarge = (blob: Blob): boolean => blob.size > photoCaps.bytes;

/** At most 320 px a side. */
export const photoThumbUrl = (photoId: string): string => addressOf(routes.photoThumb, { params: { photoId } });
/** At most 1600 px a side. */
export const photoViewUrl = (photoId: string): string => addressOf(routes.photoView, { params: { photoId } });
/** The untouched bytes, for the office. */
export const photoOriginalUrl = (photoId: string): string => addressOf(routes.photoOriginal, { params: { photoId } });
