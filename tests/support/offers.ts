import type { ChangeOrder, Finding, Project } from '@underlath/contract';
import { expect } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import type { Person, TestApi } from './api.ts';

/** One company with one project, one wall, and ways to get a change order in front of a client over HTTP. */
export interface Job {
  owner: Person;
  project: Project;
  wallId: string;
  /** A judged finding: a top plate cut 2 in of 3-1/2 in, on the job's wall unless another place is given. */
  note(options?: { title?: string; locationId?: string }): Promise<Finding>;
  /** The same with its suggested repair saved. */
  priced(options?: { title?: string; locationId?: string }): Promise<Finding>;
  draft(findingIds: string[], more?: { days?: number }): Promise<ChangeOrder>;
  send(order: Pick<ChangeOrder, 'id' | 'version'>, body?: object): Promise<Sent>;
  /** Opens a link as the client's browser would. */
  open(link: string): Promise<OpenLetter>;
  decide(
    open: OpenLetter,
    letter: Letter,
    more?: Record<string, unknown>,
  ): Promise<{ status: number; body: Record<string, unknown> }>;
}

/** A letter opened on one device: where it is, and the cookie of its session. */
export interface OpenLetter {
  /** `/api/v1/client/letters/` and its id. */
  path: string;
  cookie: string;
}

export interface Sent {
  changeOrder: ChangeOrder;
  link: string;
  sha256: string;
}
export interface Letter {
  sha256: string;
  document: { version: number; consent: { id: string } };
  contract: { ledger: string };
}

const v1 = '/api/v1';

/** Opens a link as the client's browser would: the path names the letter, the fragment opens it. */
export async function openLink(api: Pick<TestApi, 'http'>, link: string): Promise<OpenLetter> {
  const { pathname, hash } = new URL(link, 'http://localhost');
  const path = `${v1}/client/letters/${pathname.split('/').at(-1)}`;
  const opened = await api
    .http()
    .post(`${path}/session`)
    .send({ token: hash.slice(1) })
    .expect(200);
  const [cookie = ''] = opened.get('set-cookie') ?? [];
  expect(cookie).toContain(`; Path=${path}; `);
  expect(cookie).toContain('; HttpOnly');
  return { path, cookie: cookie.split(';')[0] ?? '' };
}
const cut = { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: false };

export async function startJob(api: TestApi): Promise<Job> {
  const owner = await api.signIn();
  const http = () => api.http(owner);
  const project = (
    await http()
      .post(`${v1}/projects`)
      .send({
        name: 'Wren cottage',
        siteAddress: '2 Mortise Row, Fernmoor',
        clientName: 'Ines Wren',
        clientEmail: 'ines@wren.example',
        clientLocale: 'es',
        yearBuilt: 1962,
        stories: 2,
        originalSumCents: 8_400_000,
        originalDays: 60,
        startOn: '2026-03-02',
        codeEdition: 'irc-2021',
        jurisdiction: 'Fernmoor',
      })
      .expect(201)
  ).body as Project;
  const wall = await http()
    .post(`${v1}/projects/${project.id}/locations`)
    .send({ kind: 'wall', name: 'North wall', widthIn: 144, heightIn: 97.125, framingSpacingIn: 16 })
    .expect(201);
  const wallId = wall.body.id as string;

  const note: Job['note'] = async ({ title = 'Cut top plate', locationId = wallId } = {}) => {
    const extent = { xIn: 40, yIn: 93, widthIn: 6, heightIn: 4 };
    const body = { locationId, checkId: 'cut.top-plate', title, extent, seenAt: '2026-03-03T17:05:00Z', inputs: cut };
    return (await http().post(`${v1}/projects/${project.id}/findings`).send(body).expect(201)).body as Finding;
  };
  const priced: Job['priced'] = async (options) => {
    const finding = await note(options);
    const estimate = await http().get(`${v1}/findings/${finding.id}/estimate`).expect(200);
    await http()
      .put(`${v1}/findings/${finding.id}/estimate`)
      .set('if-match', `"${finding.version}"`)
      .send({ choices: estimate.body.choices })
      .expect(200);
    return (await http().get(`${v1}/findings/${finding.id}`).expect(200)).body as Finding;
  };
  return {
    owner,
    project,
    wallId,
    note,
    priced,
    draft: async (findingIds, more = {}) =>
      (
        await http()
          .post(`${v1}/projects/${project.id}/change-orders`)
          .send({ findingIds, ...more })
          .expect(201)
      ).body,
    send: async ({ id, version }, body = {}) =>
      (
        await http()
          .post(`${v1}/change-orders/${id}/send`)
          .set('if-match', `"${version}"`)
          .send({ withEnglish: true, ...body })
          .expect(200)
      ).body,
    open: (link) => openLink(api, link),
    decide: async ({ path, cookie }, letter, more = {}) => {
      const body = {
        kind: 'approved',
        version: letter.document.version,
        sha256: letter.sha256,
        ledger: letter.contract.ledger,
        signerName: 'Ines Wren',
        ...(more.kind === 'declined'
          ? { acknowledged: true }
          : { consent: true, consentId: letter.document.consent.id }),
        locale: 'es',
        ...more,
      };
      const answer = await api
        .http()
        .post(`${path}/decision`)
        .set('cookie', cookie)
        .set('idempotency-key', newId())
        .send(body);
      return { status: answer.status, body: answer.body };
    },
  };
}
