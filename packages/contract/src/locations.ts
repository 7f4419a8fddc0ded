import { opening, rectangle } from '@underlath/rules/schemas';
import * as z from 'zod';
import { existingWork, id, severity, words } from './common.ts';
import { everyone, office, route } from './route.ts';

export const locationKind = z.enum(['story', 'room', 'wall', 'floor', 'roof', 'beam-line']);
const sizeIn = z.number().positive().max(2400);

export { opening, rectangle };

const fields = {
  parentId: id.nullable(),
  kind: locationKind,
  name: words(80),
  position: z.int().min(0).max(10_000),
  widthIn: sizeIn.nullable(),
  heightIn: sizeIn.nullable(),
  framingSpacingIn: z.number().min(4).max(96).nullable(),
  memberDepthIn: z.number().positive().max(48).nullable(),
  storiesAbove: z.int().min(0).max(4),
  openings: z.array(opening).max(40),
  /** What the base contract does here already; it is not charged again. */
  existing: z.array(existingWork).max(6),
  /** The approved nailing schedule of its panels; the least nailing is counted while it is not known. */
  edgeNailSpacingIn: z.number().min(1).max(24).nullable(),
  fieldNailSpacingIn: z.number().min(1).max(24).nullable(),
};

/** `worst` is the worst severity of its open findings, its own and below it. */
export const location = z.object({
  id,
  version: z.int(),
  projectId: id,
  ...fields,
  // Names that were taken before are shown as they are.
  name: z.string(),
  openings: z.array(opening.extend({ name: z.string() })),
  worst: severity.nullable(),
  openCount: z.int(),
});

const byProject = z.object({ projectId: id });
const byId = z.object({ locationId: id });

export const locationRoutes = {
  listLocations: route({
    name: 'listLocations',
    method: 'GET',
    path: '/projects/:projectId/locations',
    permission: everyone,
    summary: 'All places of a project; a tree by parentId',
    params: byProject,
    answers: { 200: z.object({ items: z.array(location) }) },
  }),
  createLocation: route({
    name: 'createLocation',
    method: 'POST',
    path: '/projects/:projectId/locations',
    permission: everyone,
    summary: 'Add a place',
    idempotent: true,
    params: byProject,
    body: z.strictObject({
      id: id.optional(),
      ...fields,
      parentId: fields.parentId.default(null),
      position: fields.position.default(0),
      widthIn: fields.widthIn.default(null),
      heightIn: fields.heightIn.default(null),
      framingSpacingIn: fields.framingSpacingIn.default(null),
      memberDepthIn: fields.memberDepthIn.default(null),
      storiesAbove: fields.storiesAbove.default(0),
      openings: fields.openings.default([]),
      existing: fields.existing.default([]),
      edgeNailSpacingIn: fields.edgeNailSpacingIn.default(null),
      fieldNailSpacingIn: fields.fieldNailSpacingIn.default(null),
    }),
    answers: { 201: location },
  }),
  changeLocation: route({
    name: 'changeLocation',
    method: 'PATCH',
    path: '/locations/:locationId',
    permission: office,
    summary: 'Change a place',
    versioned: true,
    params: byId,
    body: z.strictObject(fields).partial(),
    answers: { 200: location },
  }),
  removeLocation: route({
    name: 'removeLocation',
    method: 'DELETE',
    path: '/locations/:locationId',
    permission: office,
    summary: 'Remove a place that has nothing in it',
    versioned: true,
    params: byId,
    answers: { 204: null },
  }),
} as const;

export type Location = z.infer<typeof location>;
export type Rectangle = z.infer<typeof rectangle>;
export type Opening = z.infer<typeof opening>;
export type LocationKind = z.infer<typeof locationKind>;
