import { type Role, type Route, routes } from '@underlath/contract';
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
let keys: Record<Role, string>;

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
  keys = Object.fromEntries(await Promise.all(roles.map(async (role) => [role, await makeKey(role)])));
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

async function makeKey(role: Role): Promise<string> {
  return (await api.http(site.owner).post(`${v1}/api-keys`).send({ name: role, role })).body.secret;
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
  test.each(byRole)('gets past %s exactly when the contract says so, signed in or by key', async (name, route) => {
    const person = { owner: site.owner, estimator: site.estimator, crew: site.crew }[role];
    const ways: Record<string, string>[] = [asPerson(person), { authorization: `Bearer ${keys[role]}` }];
    for (const headers of ways) {
      // With ids that stand for nothing, so that an allowed call changes nothing here.
      const { status, problem } = await call(name, route, nowhere(), headers);
      if (allows(route, role)) expect([401, 403, 500]).not.toContain(status);
      else expect([status, problem?.type]).toEqual([403, 'urn:underlath:problem:not-allowed']);
    }
  });
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
