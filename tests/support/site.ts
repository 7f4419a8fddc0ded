import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Finding, Location, Photo, Project } from '@underlath/contract';
import { expect } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import type { Person, TestApi } from './api.ts';

export const v1 = '/api/v1';

/** Bytes of a drawn picture under tests/fixtures/photos. */
export const fixture = (name: string): Buffer => readFileSync(join(import.meta.dirname, '../fixtures/photos', name));

export const newProject = {
  name: 'Alder Street',
  siteAddress: '12 Alder Street, Fairmead',
  clientName: 'Dana Okafor',
  stories: 2,
  originalSumCents: 18_400_000,
  originalDays: 60,
  codeEdition: 'irc-2021',
  jurisdiction: 'Fairmead',
};

export const newWall = {
  kind: 'wall',
  name: 'North wall',
  widthIn: 144,
  heightIn: 97,
  framingSpacingIn: 16,
  storiesAbove: 1,
};

/** A top plate cut through most of its width, outside a shear wall. */
export const cutPlate = { widthIn: 3.5, cutIn: 2, bearingOrBraced: true, inShearWall: false };

export const uncutPlate = { ...cutPlate, cutIn: 0 };

/** One company with its three roles, one project and one wall. */
export interface Site {
  owner: Person;
  estimator: Person;
  crew: Person;
  project: Project;
  wall: Location;
  finding(more?: object): Promise<Finding>;
  upload(bytes: Uint8Array, fields?: Record<string, string>, person?: Person): Promise<Uploaded>;
  /** Waits until the worker has made the smaller pictures, or has given up. */
  derived(photoId: string): Promise<Photo>;
}

export interface Uploaded {
  status: number;
  body: Photo & { duplicate: boolean } & {
    type: string;
    detail: string;
    errors: { pointer: string; detail: string }[];
  };
}

export async function startSite(api: TestApi): Promise<Site> {
  const owner = await api.signIn({ role: 'owner', name: 'Olive Marsh' });
  const { companyId } = owner;
  const estimator = await api.signIn({ role: 'estimator', companyId, name: 'Ed Sorrel' });
  const crew = await api.signIn({ role: 'crew', companyId, name: 'Cleo Birch' });
  const project: Project = await made(api, owner, '/projects', newProject);
  const wall: Location = await made(api, owner, `/projects/${project.id}/locations`, newWall);
  return {
    owner,
    estimator,
    crew,
    project,
    wall,
    finding: (more = {}) =>
      made(api, crew, `/projects/${project.id}/findings`, {
        locationId: wall.id,
        checkId: 'cut.top-plate',
        seenAt: '2026-03-03T14:05:09Z',
        inputs: cutPlate,
        ...more,
      }),
    upload: (bytes, fields, person = crew) => upload(api, person, project.id, bytes, fields),
    derived: (photoId) => derived(api, crew, photoId),
  };
}

async function made<Body>(api: TestApi, person: Person, path: string, body: object): Promise<Body> {
  const answer = await api
    .http(person)
    .post(v1 + path)
    .send(body);
  expect(answer.status, answer.text).toBe(201);
  return answer.body;
}

/** Over the real socket, as a browser sends it: fields first, then the file. */
export async function upload(
  api: TestApi,
  person: Person,
  projectId: string,
  bytes: Uint8Array,
  fields: Record<string, string> = {},
): Promise<Uploaded> {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.append(name, value);
  form.append('file', new Blob([new Uint8Array(bytes)]), 'photo.jpg');
  const answer = await fetch(`${api.url}${v1}/projects/${projectId}/photos`, {
    method: 'POST',
    headers: { cookie: person.cookie },
    body: form,
  });
  return { status: answer.status, body: (await answer.json()) as Uploaded['body'] };
}

async function derived(api: TestApi, person: Person, photoId: string): Promise<Photo> {
  for (let tries = 0; tries < 200; tries++) {
    const { body } = await api.http(person).get(`${v1}/photos/${photoId}`);
    if (body.derivative.state !== 'waiting') return body;
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error(`photo ${photoId} is still waiting for its smaller pictures after 20 s`);
}

export const someId = newId;
