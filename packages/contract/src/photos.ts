import * as z from 'zod';
import { id, instant, line, page, pageQuery, photoStage, sha256 } from './common.ts';
import { office, photoWork, route } from './route.ts';

export const photo = z.object({
  id,
  version: z.int(),
  projectId: id,
  locationId: id.nullable(),
  findingIds: z.array(id),
  stage: photoStage,
  caption: z.string(),
  sha256,
  byteCount: z.int(),
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp', 'image/heic']),
  widthPx: z.int(),
  heightPx: z.int(),
  /** As the camera wrote it, `2026-03-03T14:05:09`, or null: unknown. */
  deviceTime: z.string().nullable(),
  /** `+HH:MM` as the camera wrote it, or null: zone unknown. Never inferred. */
  deviceOffset: z.string().nullable(),
  receivedAt: instant,
  uploadedBy: z.object({ id, name: z.string() }),
  derivative: z.object({ state: z.enum(['waiting', 'ready', 'failed']), reason: z.string().nullable() }),
});
/** The short form that stands in lists of findings. */
export const photoThumb = z.object({
  id,
  stage: photoStage,
  caption: z.string(),
  derivative: z.enum(['waiting', 'ready', 'failed']),
});

const byProject = z.object({ projectId: id });
const byId = z.object({ photoId: id });

/** Caps of an upload; also shown before a file is chosen. */
export const photoCaps = { bytes: 25 * 1024 * 1024, pixels: 50_000_000, sidePx: 12_000 } as const;

/** Forms send an empty text for what was left out. */
const leftEmpty = (value: unknown) => (value === '' ? undefined : value);
const mayBeEmpty = <S extends z.ZodType>(schema: S) => z.preprocess(leftEmpty, schema.optional());
/** What stands before the file in an upload. */
export const uploadFields = z.strictObject({
  id: mayBeEmpty(id),
  sha256: mayBeEmpty(sha256),
  findingId: mayBeEmpty(id),
  locationId: mayBeEmpty(id),
  stage: z.preprocess(leftEmpty, photoStage.default('found')),
  caption: z.string().trim().max(300).default(''),
});

export const photoRoutes = {
  uploadPhoto: route({
    name: 'uploadPhoto',
    method: 'POST',
    path: '/projects/:projectId/photos',
    permission: photoWork,
    summary:
      'Send one photo as multipart/form-data: fields id, sha256 (optional, checked), findingId, locationId, stage, caption first, then the part `file`. 201 when stored; 200 with the existing photo when the same bytes are here already.',
    params: byProject,
    upload: uploadFields,
    answers: { 200: photo.extend({ duplicate: z.boolean() }), 201: photo.extend({ duplicate: z.boolean() }) },
  }),
  listPhotos: route({
    name: 'listPhotos',
    method: 'GET',
    path: '/projects/:projectId/photos',
    permission: photoWork,
    summary: 'Photos of a project, newest first',
    params: byProject,
    query: pageQuery.extend({ locationId: id.optional(), findingId: id.optional(), stage: photoStage.optional() }),
    answers: { 200: page(photo) },
  }),
  getPhoto: route({
    name: 'getPhoto',
    method: 'GET',
    path: '/photos/:photoId',
    permission: photoWork,
    summary: 'A photo: facts about it',
    params: byId,
    answers: { 200: photo },
  }),
  changePhoto: route({
    name: 'changePhoto',
    method: 'PATCH',
    path: '/photos/:photoId',
    permission: photoWork,
    summary: 'Change stage, caption or place; the bytes never change',
    versioned: true,
    params: byId,
    body: z.strictObject({
      stage: photoStage.optional(),
      caption: line(300).optional(),
      locationId: id.nullable().optional(),
    }),
    answers: { 200: photo },
  }),
  photoView: route({
    name: 'photoView',
    method: 'GET',
    path: '/photos/:photoId/view',
    permission: photoWork,
    summary: 'The photo at 1600 px, upright, without metadata',
    params: byId,
    answers: { 200: 'image/jpeg' },
  }),
  photoThumb: route({
    name: 'photoThumb',
    method: 'GET',
    path: '/photos/:photoId/thumb',
    permission: photoWork,
    summary: 'The photo at 320 px, upright, without metadata',
    params: byId,
    answers: { 200: 'image/jpeg' },
  }),
  photoOriginal: route({
    name: 'photoOriginal',
    method: 'GET',
    path: '/photos/:photoId/original',
    permission: office,
    summary: 'The untouched bytes, as a download',
    params: byId,
    answers: { 200: 'application/octet-stream' },
  }),
  derivePhotoAgain: route({
    name: 'derivePhotoAgain',
    method: 'POST',
    path: '/photos/:photoId/derive',
    permission: photoWork,
    summary: 'Try again to make the smaller pictures',
    params: byId,
    answers: { 202: photo },
  }),
} as const;

export type Photo = z.infer<typeof photo>;
export type PhotoThumb = z.infer<typeof photoThumb>;
