import * as z from 'zod';
import { defineJob, handleJob, type JobHandler } from '../../platform/queue.ts';
import type { PhotoDerivativesService } from './photo-derivatives.service.ts';

/** Makes the two smaller pictures of a photo. */
export const derivePhotoJob = defineJob({
  name: 'photo.derive',
  data: z.object({ companyId: z.uuid(), photoId: z.uuid() }),
  // The decoder uses about one core for each photo; two keep both cores of a small server busy.
  concurrency: 2,
});

export const handleDerivePhoto = (service: PhotoDerivativesService): JobHandler =>
  handleJob(derivePhotoJob, ({ data, isLastTry }) => service.derive(data.companyId, data.photoId, isLastTry));
