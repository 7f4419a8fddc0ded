import { photoRoutes } from '@underlath/contract';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { PhotoDerivativesService } from './photo-derivatives.service.ts';
import type { PhotoIntakeService } from './photo-intake.service.ts';
import type { PhotoFile, PhotosService } from './photos.service.ts';
import { readUpload } from './upload-reader.ts';

interface Services {
  photos: PhotosService;
  intake: PhotoIntakeService;
  derivatives: PhotoDerivativesService;
}

export function registerPhotosRoutes(app: FastifyInstance, { photos, intake, derivatives }: Services): void {
  serve(app, photoRoutes.uploadPhoto, async ({ params, principal, request, reply }) => {
    const caller = callerOf(principal);
    await intake.assertProject(caller.companyId, params.projectId);
    const { fields, file } = await readUpload(request, intake);
    const photo = await intake.add(caller, params.projectId, fields, file);
    reply.code(photo.duplicate ? 200 : 201);
    return photo;
  });

  serve(app, photoRoutes.listPhotos, ({ params, query, principal }) =>
    photos.list(principal.companyId, params.projectId, query),
  );

  serve(app, photoRoutes.getPhoto, ({ params, principal }) => photos.get(principal.companyId, params.photoId));

  serve(app, photoRoutes.changePhoto, ({ params, body, principal, ifMatch }) =>
    photos.change(callerOf(principal), params.photoId, ifMatch, body),
  );

  serve(app, photoRoutes.photoView, async ({ params, principal, request, reply }) =>
    sendFile(request, reply, await photos.picture(principal.companyId, params.photoId, 'view')),
  );

  serve(app, photoRoutes.photoThumb, async ({ params, principal, request, reply }) =>
    sendFile(request, reply, await photos.picture(principal.companyId, params.photoId, 'thumb')),
  );

  serve(app, photoRoutes.photoOriginal, async ({ params, principal, request, reply }) => {
    const file = await photos.original(principal.companyId, params.photoId);
    const extension = file.mediaType.replace('image/', '').replace('jpeg', 'jpg');
    // A browser must never show it: it still carries where and by whom it was taken.
    reply.header('content-disposition', `attachment; filename="photo-${params.photoId}.${extension}"`);
    return sendFile(request, reply, { ...file, mediaType: 'application/octet-stream' });
  });

  serve(app, photoRoutes.derivePhotoAgain, ({ params, principal }) =>
    derivatives.retry(callerOf(principal), params.photoId),
  );
}

/** Bytes that never change under their tag. A browser keeps them for its own user only, and asks each time whether it still may show them. */
async function sendFile(request: FastifyRequest, reply: FastifyReply, { tag, mediaType, open }: PhotoFile) {
  const etag = `"${tag}"`;
  reply.header('etag', etag).header('cache-control', 'private, no-cache').header('x-content-type-options', 'nosniff');
  if (request.headers['if-none-match']?.split(/\s*,\s*/).includes(etag)) {
    reply.code(304);
    return undefined;
  }
  const { stream, byteCount } = await open();
  reply.type(mediaType).header('content-length', byteCount);
  return stream;
}
