import { type KeyUse, keyUse, type Role, type Route, routes } from '@underlath/contract';
import { starterCostBook } from '@underlath/rules/pricing';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Prisma } from '../../apps/api/src/generated/prisma/client.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { cutPlate, fixture, newProject, newWall, type Site, someId, startSite, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;
let stranger: Person;
/** Ids that stand for something in the site's company. */
let real: Record<string, string>;
let keys: Record<Role, Record<KeyUse, string>>;

const roles: Role[] = ['owner', 'estimator', 'crew'];
const all: [string, Route][] = Object.entries(routes);
const text = { en: 'words', es: 'palabras' };
const newLoadPath = {
  name: 'East line',
  kind: 'wall-line',
  segments: [{ name: 'A', links: [{ name: 'Panels', role: 'panels', state: 'unseen' }] }],
};
const wording = { headline: text, found: text, why: text, ifNot: text, note: text };

/** A body that fits, for every route that takes one; so that what is refused is the caller. */
const madeUpPasskey = {
  id: 'AA',
  rawId: 'AA',
  type: 'public-key',
  clientExtensionResults: {},
  response: { clientDataJSON: 'AA', authenticatorData: 'AA', signature: 'AA' },
};

const bodies: Record<string, () => object> = {
  createCompany: () => ({
    companyName: 'Marsh',
    name: 'Olive',
    email: `${someId()}@example.test`,
    password: 'rim joist over sill',
  }),
  signIn: () => ({ email: 'nobody@example.test', password: 'rim joist over sill' }),
  finishSignIn: () => ({ code: '000000' }),
  signInWithPasskey: () => ({ passkey: madeUpPasskey }),
  forgotPassword: () => ({ email: 'nobody@example.test' }),
  resetPassword: () => ({ token: 'made-up', password: 'rim joist over sill' }),
  confirmEmail: () => ({ token: 'made-up' }),
  changeAccount: () => ({ name: 'Ana' }),
  changeEmail: () => ({ email: 'nobody@example.test', password: 'rim joist over sill' }),
  changePassword: () => ({ password: 'rim joist over sill', newPassword: 'sill over rim joist' }),
  beginCodes: () => ({ password: 'rim joist over sill' }),
  confirmCodes: () => ({ code: '000000' }),
  endCodes: () => ({ password: 'rim joist over sill' }),
  newRecoveryCodes: () => ({ password: 'rim joist over sill' }),
  beginPasskey: () => ({ password: 'rim joist over sill' }),
  addPasskey: () => ({
    name: 'Phone',
    passkey: { ...madeUpPasskey, response: { clientDataJSON: 'AA', attestationObject: 'AA' } },
  }),
  removePasskey: () => ({ password: 'rim joist over sill' }),
  changeCompany: () => ({ phone: '555-0100' }),
  changeMember: () => ({ name: 'Ana' }),
  invite: () => ({ email: `${someId()}@example.test`, role: 'crew' }),
  lookUpInvitation: () => ({ token: 'made-up' }),
  acceptInvitation: () => ({ token: 'made-up', name: 'Ana', password: 'rim joist over sill' }),
  createApiKey: () => ({ name: 'Sync', role: 'crew' }),
  createProject: () => newProject,
  changeProject: () => ({ name: 'Alder' }),
  createLocation: () => newWall,
  changeLocation: () => ({ name: 'North' }),
  changePhoto: () => ({ caption: 'Plate' }),
  evaluateCheck: () => ({ inputs: {} }),
  evaluateScope: () => ({ location: { kind: 'wall', widthIn: 96, heightIn: 96 }, findings: [] }),
  evaluateLoadPath: () => ({
    kind: 'wall-line',
    segments: [{ name: 'North', links: [{ name: 'Panels', role: 'panels', state: 'sound' }] }],
  }),
  evaluateEstimate: () => ({ lines: [], overheadPct: 0, profitPct: 0, stacking: 'added' }),
  evaluateContract: () => ({
    originalCents: 0,
    originalDays: 0,
    retainagePct: 0,
    netDecreaseReturnsOverheadAndProfit: false,
    events: [],
  }),
  createLoadPath: () => newLoadPath,
  changeLoadPath: () => ({ name: 'North line' }),
  createFinding: () => ({
    locationId: real.locationId,
    checkId: 'cut.top-plate',
    seenAt: '2026-03-03T14:05:09Z',
    inputs: cutPlate,
  }),
  changeFinding: () => ({ note: 'Two cuts' }),
  judgeFinding: () => ({ inputs: cutPlate }),
  attachPhotos: () => ({ photoIds: [real.photoId] }),
  moveFinding: () => ({ state: 'withdrawn', reason: 'Wrong wall' }),
  saveCostBook: () => ({ book: starterCostBook }),
  previewCostBookCsv: () => ({ csv: 'row,id' }),
  saveEstimate: () => ({ choices: [] }),
  previewEstimate: () => ({ choices: [] }),
  enterActual: () => ({ operation: 'plate-tie', quantity: 1, hours: 2, doneOn: '2026-03-20' }),
  takeBackActual: () => ({ why: 'Wrong wall' }),
  sendNotice: () => ({ how: 'noted', method: 'letter', sentOn: '2026-03-04', to: 'Dana Okafor', text: 'By hand' }),
  saveContractTerms: () => ({
    retainagePct: 10,
    netDecreaseReturnsOverheadAndProfit: false,
    dayKind: 'working',
    daysOff: [],
    noticeDays: 7,
    noticeDayKind: 'calendar',
    noticeMethods: ['letter'],
    milestones: [],
  }),
  addContractEntry: () => ({ kind: 'payment', name: 'Deposit', happenedOn: '2026-03-20', cents: 1 }),
  takeBackContractEntry: () => ({ why: 'Wrong house' }),
  createChangeOrder: () => ({ findingIds: [real.findingId] }),
  changeChangeOrder: () => ({ wording }),
  sendChangeOrder: () => ({ clientEmail: null }),
  renewClientLink: () => ({}),
  answerQuestion: () => ({ answer: 'Yes' }),
  sendMailAgain: () => ({ to: 'dana@okafor.example' }),
  openClientLink: () => ({ token: 'made-up' }),
  openUnnamedLink: () => ({ token: 'made-up' }),
  decide: () => ({
    kind: 'approved',
    version: 1,
    sha256: '0'.repeat(64),
    signerName: 'Dana',
    consent: true,
    consentId: 'consent-1',
    ledger: 'none',
  }),
  ask: () => ({ version: 1, name: 'Dana', text: 'Why?' }),
};

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
  stranger = await api.signIn({ role: 'owner' });
  real = await makeOneOfEach();
  keys = {
    owner: await makeKeys('owner'),
    estimator: await makeKeys('estimator'),
    crew: await makeKeys('crew'),
  };
});
afterAll(() => api.close());

async function makeOneOfEach(): Promise<Record<string, string>> {
  const { companyId, memberId } = site.owner;
  const finding = await site.finding();
  const photo = await site.upload(fixture('plain.png'), { findingId: finding.id });
  const invitation = await api.http(site.owner).post(`${v1}/invitations`).send(bodies.invite?.());
  const key = await api.http(site.owner).post(`${v1}/api-keys`).send({ name: 'One', role: 'crew' });
  const loadPath = await api.http(site.owner).post(`${v1}/locations/${site.wall.id}/load-paths`).send(newLoadPath);
  const changeOrderId = someId();
  const questionId = someId();
  const mailId = someId();
  const actualId = someId();
  const contractEntryId = someId();
  // Rows as change orders leave them; how they come about has tests of its own.
  await api.platform.database.inCompany(companyId, async (tx) => {
    const now = new Date();
    const order = {
      companyId,
      id: changeOrderId,
      projectId: site.project.id,
      number: 1,
      state: 'sent' as const,
      sentVersion: 1,
    };
    await tx.changeOrder.create({ data: { ...order, wording, createdById: memberId } });
    const sent = { companyId, changeOrderId, version: 1 };
    await tx.changeOrderVersion.create({
      data: { ...sent, document: '{}', sha256: '0'.repeat(64), sentAt: now, sentById: memberId },
    });
    await tx.actual.create({
      data: {
        companyId,
        id: actualId,
        projectId: site.project.id,
        findingId: finding.id,
        operation: 'plate-tie',
        unit: 'each',
        quantity: 1,
        hours: 2,
        costCents: 0,
        doneOn: now,
        enteredAt: now,
        enteredById: memberId,
      },
    });
    await tx.contractEntry.create({
      data: {
        companyId,
        id: contractEntryId,
        projectId: site.project.id,
        kind: 'payment',
        name: 'Deposit',
        happenedOn: now,
        cents: 1,
        enteredAt: now,
        enteredById: memberId,
      },
    });
    const book = { ...starterCostBook } as unknown as Prisma.InputJsonObject;
    await tx.costBook.upsert({
      where: { companyId_version: { companyId, version: 1 } },
      create: { companyId, version: 1, book },
      update: {},
    });
    await tx.question.create({ data: { ...sent, id: questionId, name: 'Dana', text: 'Why?', askedAt: now } });
    const letter = { to: 'dana@okafor.example', subject: 'An answer', text: 'It was approved.' };
    await tx.mail.create({
      data: { ...sent, ...letter, id: mailId, kind: 'decisionCopy', state: 'refused', projectId: site.project.id },
    });
  });
  return {
    projectId: site.project.id,
    locationId: site.wall.id,
    photoId: photo.body.id,
    findingId: finding.id,
    memberId: site.crew.memberId,
    invitationId: invitation.body.id,
    apiKeyId: key.body.id,
    changeOrderId,
    questionId,
    mailId,
    actualId,
    passkeyId: someId(),
    deviceId: someId(),
    contractEntryId,
    loadPathId: loadPath.body.id,
    sentVersion: '1',
    bookVersion: '1',
    checkId: 'cut.top-plate',
    letterId: '0123456789',
  };
}

async function makeKeys(role: Role): Promise<Record<KeyUse, string>> {
  const make = async (use: KeyUse): Promise<string> =>
    (
      await api
        .http(site.owner)
        .post(`${v1}/api-keys`)
        .send({ name: `${role} ${use}`, role, use })
    ).body.secret;
  return { full: await make('full'), read: await make('read'), photos: await make('photos') };
}

async function call(name: string, route: Route, ids: Record<string, string>, headers: Record<string, string>) {
  const path = route.path.replace(/:(\w+)/g, (_all, param: string) => ids[param] ?? `no-${param}`);
  const body = route.body && bodies[name]?.();
  const answer = await fetch(`${api.url}${v1}${path}`, {
    method: route.method,
    headers: {
      ...headers,
      ...(route.versioned && { 'if-match': '"1"' }),
      ...(body && { 'content-type': 'application/json' }),
    },
    ...(body && { body: JSON.stringify(body) }),
  });
  const told = await answer.text();
  const type = answer.headers.get('content-type') ?? '';
  return { status: answer.status, problem: type.includes('problem+json') ? JSON.parse(told) : undefined };
}

const asPerson = (person: Person) => ({ cookie: person.cookie });
const nowhere = () =>
  Object.fromEntries(Object.keys(real).map((name) => [name, name.endsWith('Version') ? '99' : someId()]));
const allows = ({ permission }: Route, role: Role) => typeof permission === 'object' && permission.roles.includes(role);
/** Spelled out here and not asked of the program: photo routes, and what a person alone may do. */
const photoRoute = /^\/(projects\/:projectId\/photos|photos\/:photoId.*)$/;
const inPerson = new Set([
  'changeCompany',
  'changeMember',
  'removeMember',
  'invite',
  'revokeInvitation',
  'createApiKey',
  'revokeApiKey',
]);
function allowsKey(name: string, route: Route, role: Role, use: KeyUse): boolean {
  if (!allows(route, role) || inPerson.has(name)) return false;
  if (use === 'photos') return photoRoute.test(route.path) && name !== 'photoOriginal';
  return use === 'full' || route.method === 'GET';
}

describe('the table of this test', () => {
  test('has a fitting body for every route that takes one, and an id for every name in an address', () => {
    for (const [name, route] of all) {
      if (route.body) expect(route.body.safeParse(bodies[name]?.()).success, name).toBe(true);
      for (const [, param] of route.path.matchAll(/:(\w+)/g)) expect(real, name).toHaveProperty(param as string);
    }
  });
});

const guarded = all.filter(([, { permission }]) => permission !== 'public');
const byRole = all.filter(([, { permission }]) => typeof permission === 'object');

describe('nobody', () => {
  test.each(all)('gets past %s only when anyone may', async (name, route) => {
    const { status, problem } = await call(name, route, real, {});
    if (route.permission === 'public') expect([403, 500]).not.toContain(status);
    else expect([status, problem?.type]).toEqual([401, 'urn:underlath:problem:not-signed-in']);
    expect(problem?.detail ?? '').not.toContain('nothing at this address');
  });

  test.each(guarded)('stays nobody at %s with a made-up cookie or key', async (name, route) => {
    const cookie = 'underlath_session=made-up; underlath_letter=made-up';
    const attempts: Record<string, string>[] = [{ cookie }, { authorization: 'Bearer ulk_made-up' }];
    for (const headers of attempts) {
      expect((await call(name, route, real, headers)).status).toBe(401);
    }
  });
});

describe.each(roles)('%s', (role) => {
  // With ids that stand for nothing, so that an allowed call changes nothing here.
  const expectPast = async (name: string, route: Route, headers: Record<string, string>, isAllowed: boolean) => {
    const { status, problem } = await call(name, route, nowhere(), headers);
    if (isAllowed) expect([401, 403, 500]).not.toContain(status);
    else expect([status, problem?.type]).toEqual([403, 'urn:underlath:problem:not-allowed']);
  };

  test.each(byRole)('gets past %s exactly when the contract says so, signed in', async (name, route) => {
    const person = { owner: site.owner, estimator: site.estimator, crew: site.crew }[role];
    await expectPast(name, route, asPerson(person), allows(route, role));
  });

  test.each(byRole)(
    'gets past %s by key no further, and less far by one for reading or photos',
    async (name, route) => {
      for (const use of keyUse.options) {
        const headers = { authorization: `Bearer ${keys[role][use]}` };
        await expectPast(name, route, headers, allowsKey(name, route, role, use));
      }
    },
  );
});

describe("another company's owner", () => {
  test.each(byRole.filter(([, { path }]) => path.includes(':')))(
    'is told at %s the same of what exists as of what does not',
    async (name, route) => {
      const foreign = await call(name, route, real, asPerson(stranger));
      const absent = await call(name, route, nowhere(), asPerson(stranger));
      expect([foreign.status, foreign.problem?.type]).toEqual([404, 'urn:underlath:problem:not-found']);
      expect({ ...foreign.problem, instance: '' }).toEqual({ ...absent.problem, instance: '' });
    },
  );
});

describe('a member', () => {
  test.each(all.filter(([, { permission }]) => permission === 'client-link'))(
    'is not the client of %s',
    async (name, route) => {
      expect((await call(name, route, real, asPerson(site.owner))).status).toBe(401);
    },
  );
});

describe('lists', () => {
  test.each(['listProjects', 'listMembers', 'listInvitations', 'listApiKeys'] as const)(
    '%s shows nothing of another company',
    async (name) => {
      const answer = await fetch(`${api.url}${v1}${routes[name].path}`, { headers: asPerson(stranger) });
      const told = await answer.text();
      expect(answer.status).toBe(200);
      for (const id of Object.values(real).filter((one) => one.length > 20)) expect(told).not.toContain(id);
    },
  );
});

describe('money and mail addresses', () => {
  const secret = { originalSumCents: 19_283_746, contingencyCents: 4_567_891, clientEmail: 'dana@sentinel.example' };
  const marks = [...Object.values(secret).map(String), 'undelivered@sentinel.example', 'Why does it cost that much?'];
  const reads = byRole.filter(([, { method, answers }]) => method === 'GET' && typeof answers[200] !== 'string');
  let job: Site;
  let jobIds: Record<string, string>;

  /** A priced finding, a notice and a letter that did not arrive, all with figures and addresses to look for. */
  beforeAll(async () => {
    job = await startSite(api);
    const { companyId, memberId } = job.owner;
    const finding = await job.finding();
    const ids = { companyId, projectId: job.project.id };
    const path = await api.http(job.owner).post(`${v1}/locations/${job.wall.id}/load-paths`).send(newLoadPath);
    await api.platform.database.inCompany(companyId, async (tx) => {
      const now = new Date();
      await tx.project.updateMany({ where: { id: ids.projectId }, data: secret });
      await tx.finding.updateMany({
        where: { id: finding.id },
        data: { estimate: { choices: [], linesCents: 3_141_592 } },
      });
      await tx.notice.create({
        data: {
          ...ids,
          id: someId(),
          findingId: finding.id,
          method: 'e-mail',
          sentOn: now,
          sentTo: secret.clientEmail,
          text: 'Heads up',
          enteredAt: now,
          enteredById: memberId,
        },
      });
      const order = { companyId, id: someId(), projectId: ids.projectId, number: 1, state: 'sent' as const };
      await tx.changeOrder.create({ data: { ...order, sentVersion: 1, wording, createdById: memberId } });
      const sent = { companyId, changeOrderId: order.id, version: 1 };
      await tx.changeOrderVersion.create({
        data: { ...sent, document: '{}', sha256: '0'.repeat(64), sentAt: now, sentById: memberId },
      });
      await tx.question.create({ data: { ...sent, id: someId(), name: 'Dana', text: marks[4] ?? '', askedAt: now } });
      const letter = { to: marks[3] ?? '', subject: 'Offer', text: 'Offer', kind: 'offer', state: 'refused' } as const;
      await tx.mail.create({ data: { ...sent, ...letter, id: someId(), projectId: ids.projectId } });
    });
    jobIds = {
      ...real,
      projectId: ids.projectId,
      locationId: job.wall.id,
      findingId: finding.id,
      loadPathId: path.body.id,
    };
  });

  const fetchOf = async (name: string, route: Route, person: Person) => {
    const path = route.path.replace(/:(\w+)/g, (_all, param: string) => jobIds[param] ?? `no-${param}`);
    const answer = await fetch(`${api.url}${v1}${path}`, { headers: asPerson(person) });
    return { status: answer.status, told: await answer.text(), name };
  };
  const found = (told: string) => [...marks, '3141592'].filter((mark) => told.includes(mark));
  /** Names of fields that hold money or an address and are not null, wherever they stand. */
  const filled = (value: unknown, at = ''): string[] => {
    if (Array.isArray(value)) return value.flatMap((one) => filled(one, at));
    if (typeof value !== 'object' || value === null) return [];
    return Object.entries(value).flatMap(([key, one]) =>
      /Cents$|^clientEmail$|^sentTo$/.test(key) && one !== null ? [`${at}/${key}`] : filled(one, `${at}/${key}`),
    );
  };
  const switchTo = async (crewSeesMoney: boolean) => {
    const { body } = await api.http(job.owner).get(`${v1}/company`);
    await api
      .http(job.owner)
      .patch(`${v1}/company`)
      .set('if-match', `"${body.version}"`)
      .send({ crewSeesMoney })
      .expect(200);
  };

  test.each(reads)('are in no field of %s for the crew', async (name, route) => {
    const { status, told } = await fetchOf(name, route, job.crew);
    if (!allows(route, 'crew')) return expect(status).toBe(403);
    // Rows of the other company stand for what this job has none of.
    expect([200, 404]).toContain(status);
    expect([found(told), filled(JSON.parse(told))]).toEqual([[], []]);
  });

  test('the marks are there for who may see them, so that the crew’s answers were searched for something', async () => {
    const seen = await Promise.all(reads.map(([name, route]) => fetchOf(name, route, job.owner)));
    const all = seen.map(({ told }) => told).join('\n');
    expect(found(all)).toEqual([...marks, '3141592']);
  });

  test('are not found by the crew’s search either', async () => {
    const search = (q: string) => api.http(job.crew).get(`${v1}/projects`).query({ q });
    expect((await search('sentinel')).body.items).toEqual([]);
    expect((await search('Alder')).body.items).toHaveLength(1);
  });

  test('a finding that the crew changes answers without its price', async () => {
    const answer = await api
      .http(job.crew)
      .post(`${v1}/findings/${jobIds.findingId}/judgments`)
      .send({ inputs: cutPlate });
    expect([answer.status, answer.body.linesCents]).toEqual([201, null]);
  });

  test('are shown to the crew while the owner says so, from the next request on, by key too', async () => {
    const crewKey = await api.http(job.owner).post(`${v1}/api-keys`).send({ name: 'Crew', role: 'crew' });
    const byKey = () =>
      api.http().get(`${v1}/projects/${jobIds.projectId}`).set('authorization', `Bearer ${crewKey.body.secret}`);
    const overview = () => api.http(job.crew).get(`${v1}/projects/${jobIds.projectId}/overview`);
    expect((await byKey()).body.originalSumCents).toBeNull();
    await switchTo(true);
    expect((await overview()).body).toMatchObject({
      contract: { originalSumCents: secret.originalSumCents },
      project: secret,
    });
    expect((await byKey()).body).toMatchObject(secret);
    await switchTo(false);
    expect((await overview()).body.contract).toBeNull();
  });
});
