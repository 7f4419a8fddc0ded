import type { Photo } from '@underlath/contract';
import type { PhotoRow } from './photos.repository.ts';

export function toPhoto(row: PhotoRow): Photo {
  const { fileKey: _key, viewSha256: _view, receivedAt, mediaType, ...rest } = row;
  const { uploadedById, uploadedByName, derivativeState, derivativeReason, ...facts } = rest;
  return {
    ...facts,
    mediaType: mediaType as Photo['mediaType'],
    receivedAt: receivedAt.toISOString(),
    uploadedBy: { id: uploadedById, name: uploadedByName },
    derivative: { state: derivativeState, reason: derivativeReason },
  };
}
