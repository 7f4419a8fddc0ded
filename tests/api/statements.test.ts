import type { ChangeOrder, ChangeOrderRow, Finding } from '@underlath/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { seedDemo } from '../../seed/index.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type OpenLetter, openLink } from '../support/offers.ts';
import { v1 } from '../support/site.ts';
import { countStatements, type StatementCounter } from '../support/statements.ts';

/**
 * The most statements that one request sends to the database, the session, the transaction around its work and the counting
 * of tries included. A service reads once and works out the rest: what needs more than these reads something twice.
 */
const most = {
  'list findings': 4,
  'get a finding': 8,
  'create a finding': 18,
  'measure again': 16,
  'get an estimate': 6,
  'preview an estimate': 7,
  'save an estimate': 10,
  'scope of a place': 7,
  'list change orders': 9,
  'project overview': 12,
  'contract page': 9,
  'contract ledger': 5,
  'get a draft': 11,
  'get what was sent': 9,
  'create a change order': 20,
  'change its days': 17,
  'send it': 28,
  'PDF for the office': 6,
  'client reads': 11,
  'client asks': 26,
  'client decides': 32,
  'PDF for the client': 12,
} as const;

let api: TestApi;
let counter: StatementCounter;
let cookie = '';
let project = '';
const counted = new Map<string, string[]>();

interface Answer<Body> {
  readonly status: number;
  readonly text: string;
  readonly body: Body;
}

const http = () => api.http({ cookie });

/** Sends one request, and keeps what it asked of the database under its name. */
async function count<Body>(name: keyof typeof most, send: () => PromiseLike<Answer<Body>>): Promise<Body> {
  const answers: Answer<Body>[] = [];
  counted.set(
    name,
    await counter.during(async () => {
      answers.push(await send());
    }),
  );
  const [answer] = answers;
  if (!answer || answer.status >= 300) throw new Error(`${name}: ${answer?.status} ${answer?.text}`);
  return answer.body;
}

beforeAll(async () => {
  api = await startTestApi();
  const { signIns, clientPath } = await seedDemo(api.platform);
  const [owner] = signIns;
  const { token } = await api.platform.accounts.signIn(owner?.email ?? '', owner?.password ?? '');
  cookie = `underlath_session=${token}`;
  const { body } = await http().get(`${v1}/projects`);
  const [house] = body.items.filter(({ name }: { name: string }) => name.includes('Brandmeer'));
  project = `${v1}/projects/${house.id}`;
  const letter = await openLink(api, clientPath);
  counter = countStatements();
  await reads();
  const finding = await findAndPrice();
  await offer(finding);
  await answer(letter);
}, 240_000);
afterAll(async () => {
  counter.stop();
  await api.close();
});

/** What the office looks at. */
async function reads(): Promise<void> {
  const { items: findings } = await count<{ items: Finding[] }>('list findings', () =>
    http().get(`${project}/findings`),
  );
  const [finding] = findings.filter(({ state }) => state !== 'withdrawn');
  await count('get a finding', () => http().get(`${v1}/findings/${finding?.id}`));
  await count('scope of a place', () => http().get(`${v1}/locations/${finding?.locationId}/scope`));
  const { items: orders } = await count<{ items: ChangeOrderRow[] }>('list change orders', () =>
    http().get(`${project}/change-orders`),
  );
  await count('project overview', () => http().get(`${project}/overview`));
  await count('contract page', () => http().get(`${project}/contract`));
  await count('contract ledger', () => http().get(`${project}/contract/ledger`));
  const draft = orders.find(({ state }) => state === 'draft');
  const sent = orders.find(({ state }) => state === 'sent');
  await count('get a draft', () => http().get(`${v1}/change-orders/${draft?.id}`));
  await count('get what was sent', () => http().get(`${v1}/change-orders/${sent?.id}`));
  await count('PDF for the office', () =>
    http().get(`${v1}/change-orders/${sent?.id}/versions/${sent?.sentVersion}/pdf`),
  );
}

async function findAndPrice(): Promise<string> {
  const { body: places } = await http().get(`${project}/locations`);
  const [wall] = places.items.filter(({ kind }: { kind: string }) => kind === 'wall');
  const inputs = { widthIn: 3.5, cutIn: 2, bearingOrBraced: true, inShearWall: false };
  const noted = { locationId: wall.id, checkId: 'cut.top-plate', seenAt: '2026-03-03T14:05:09Z', inputs };
  const { id } = await count<Finding>('create a finding', () => http().post(`${project}/findings`).send(noted));
  await count('measure again', () =>
    http()
      .post(`${v1}/findings/${id}/judgments`)
      .send({ inputs: { ...inputs, cutIn: 2.5 } }),
  );
  const estimate = `${v1}/findings/${id}/estimate`;
  const { choices, findingVersion } = await count<{ choices: object[]; findingVersion: number }>(
    'get an estimate',
    () => http().get(estimate),
  );
  await count('preview an estimate', () => http().post(`${estimate}/preview`).send({ choices }));
  await count('save an estimate', () => http().put(estimate).set('if-match', `"${findingVersion}"`).send({ choices }));
  return id;
}

async function offer(finding: string): Promise<void> {
  const made = await count<ChangeOrder>('create a change order', () =>
    http()
      .post(`${project}/change-orders`)
      .send({ findingIds: [finding] }),
  );
  const order = `${v1}/change-orders/${made.id}`;
  const changed = await count<ChangeOrder>('change its days', () =>
    http().patch(order).set('if-match', `"${made.version}"`).send({ days: 3 }),
  );
  await count('send it', () =>
    http().post(`${order}/send`).set('if-match', `"${changed.version}"`).send({ withEnglish: true }),
  );
}

/** As the client's page does it, with a key for repeats. */
async function answer({ path, cookie: session }: OpenLetter): Promise<void> {
  const client = () => api.http();
  const post = (to: string, body: object) =>
    client().post(`${path}/${to}`).set('cookie', session).set('idempotency-key', newId()).send(body);
  const { document, sha256, contract } = await count<{
    document: ChangeOrder['draft'];
    sha256: string;
    contract: { ledger: string };
  }>('client reads', () => client().get(path).set('cookie', session));
  const { version, consent } = document;
  const { clientName } = document.project;
  await count('client asks', () => post('questions', { version, name: clientName, text: 'How long will it take?' }));
  await count('client decides', () =>
    post('decision', {
      ...{ kind: 'approved', version, sha256, ledger: contract.ledger, signerName: clientName },
      ...{ consent: true, consentId: consent.id, locale: 'en' },
    }),
  );
  await count('PDF for the client', () => client().get(`${path}/pdf`).set('cookie', session));
}

test.each(Object.entries(most))('%s: no more than %i statements', (name, limit) => {
  const statements = counted.get(name) ?? [];
  expect(statements.length).toBeGreaterThan(0);
  expect(statements.length, statements.join('\n')).toBeLessThanOrEqual(limit);
});
