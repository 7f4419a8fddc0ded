// npm run pictures                 a PNG of every screen: phone and desk; full, empty and failing; into .pictures/
// npm run pictures -- --walk       the README's pictures, into seed/walk/
// npm run pictures -- --only desk-house,client    only screens whose name contains one of these
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page, type Route } from 'playwright-core';
import sharp from 'sharp';
import { chromiumArgs, ensureChromium } from './chromium.ts';
import { type DemoServer, startDemoServer } from './demo-server.ts';

type Role = 'owner' | 'estimator' | 'crew';
interface Screen {
  name: string;
  role: Role | 'client' | 'nobody';
  path: (ids: Ids) => string;
  /** Something to do before the picture is taken. */
  before?: (page: Page) => Promise<void>;
}
interface Ids {
  projectId: string;
  wallId: string;
  /** A wall that is read as a chain. */
  chainWallId: string;
  findingId: string;
  priceId: string;
  draftOrderId: string;
  sentOrderId: string;
}

const sizes = { phone: { width: 390, height: 844 }, desk: { width: 1440, height: 900 } };
const press = (name: RegExp) => (page: Page) => page.getByRole('button', { name }).first().click();
const inProject = (rest: string) => (ids: Ids) => `/projects/${ids.projectId}${rest}`;

const screens: Screen[] = [
  { name: 'sign-in', role: 'nobody', path: () => '/sign-in' },
  { name: 'start', role: 'nobody', path: () => '/start' },
  { name: 'crew-projects', role: 'crew', path: () => '/crew' },
  { name: 'crew-places', role: 'crew', path: (ids) => `/crew/${ids.projectId}` },
  { name: 'crew-place', role: 'crew', path: (ids) => `/crew/${ids.projectId}/places/${ids.wallId}` },
  {
    name: 'crew-steps',
    role: 'crew',
    path: (ids) => `/crew/${ids.projectId}/places/${ids.wallId}/steps`,
    before: press(/panel|finish/i),
  },
  { name: 'crew-finding', role: 'crew', path: (ids) => `/crew/findings/${ids.findingId}` },
  { name: 'crew-measure', role: 'crew', path: (ids) => `/crew/findings/${ids.findingId}/measure` },
  {
    name: 'crew-new',
    role: 'crew',
    path: (ids) => `/crew/${ids.projectId}/places/${ids.wallId}`,
    before: press(/new finding/i),
  },
  { name: 'crew-unsent', role: 'crew', path: () => '/crew/unsent' },
  { name: 'desk-projects', role: 'estimator', path: () => '/projects' },
  { name: 'desk-new-project', role: 'estimator', path: () => '/new-project' },
  { name: 'desk-to-do', role: 'estimator', path: inProject('') },
  { name: 'desk-details', role: 'estimator', path: inProject('/details') },
  { name: 'desk-house', role: 'estimator', path: (ids) => `/projects/${ids.projectId}/house?place=${ids.wallId}` },
  {
    name: 'desk-scope',
    role: 'estimator',
    path: (ids) => `/projects/${ids.projectId}/places/${ids.wallId}/scope`,
    before: press(/panel|finish/i),
  },
  {
    name: 'desk-load-path',
    role: 'estimator',
    path: (ids) => `/projects/${ids.projectId}/places/${ids.chainWallId}/load-paths`,
  },
  {
    name: 'desk-gravity-line',
    role: 'estimator',
    path: (ids) => `/projects/${ids.projectId}/house`,
    before: async (page) => {
      await page.getByRole('link', { name: 'Sun room, river wall' }).first().click();
      await page.getByRole('link', { name: /Load path/ }).click();
      await page.getByText('Joist to footing').first().waitFor();
    },
  },
  {
    name: 'desk-load-path-form',
    role: 'estimator',
    path: (ids) => `/projects/${ids.projectId}/places/${ids.chainWallId}/load-paths`,
    before: press(/change the links/i),
  },
  { name: 'desk-findings', role: 'estimator', path: inProject('/findings') },
  { name: 'desk-new-finding', role: 'estimator', path: inProject('/findings/new') },
  { name: 'desk-price', role: 'estimator', path: (ids) => `/projects/${ids.projectId}/findings/${ids.priceId}/price` },
  { name: 'desk-photos', role: 'estimator', path: inProject('/photos') },
  { name: 'desk-change-orders', role: 'estimator', path: inProject('/change-orders') },
  { name: 'desk-new-change-order', role: 'estimator', path: inProject('/change-orders/new') },
  {
    name: 'desk-change-order-draft',
    role: 'estimator',
    path: (ids) => `/projects/${ids.projectId}/change-orders/${ids.draftOrderId}`,
  },
  {
    name: 'desk-change-order-sent',
    role: 'estimator',
    path: (ids) => `/projects/${ids.projectId}/change-orders/${ids.sentOrderId}`,
  },
  { name: 'desk-contract', role: 'estimator', path: inProject('/contract') },
  { name: 'desk-record', role: 'estimator', path: inProject('/record') },
  { name: 'desk-cost-book', role: 'owner', path: () => '/cost-book' },
  { name: 'desk-people', role: 'owner', path: () => '/people' },
  { name: 'checks', role: 'nobody', path: () => '/checks' },
  {
    name: 'check',
    role: 'nobody',
    path: () => '/checks/anchor.thread-engagement?diameterIn=0.625&nut=hex&projectionIn=-0.125',
  },
  { name: 'client-letter', role: 'client', path: () => '' },
  { name: 'client-review', role: 'client', path: () => '', before: press(/review/i) },
  {
    name: 'client-part',
    role: 'client',
    path: () => '',
    before: async (page) => {
      await page
        .getByRole('group', { name: /findings that are done/i })
        .getByRole('checkbox')
        .last()
        .uncheck();
      await page
        .getByRole('button', { name: /review/i })
        .first()
        .click();
    },
  },
  { name: 'client-ask', role: 'client', path: () => '', before: press(/^ask/i) },
  { name: 'client-decline', role: 'client', path: () => '', before: press(/^decline/i) },
];

const at = process.argv.indexOf('--only');
const only = at > 0 ? (process.argv[at + 1] ?? '').split(',') : null;
const chosen = screens.filter(({ name }) => !only || only.some((part) => name.includes(part)));
const folder = resolve(import.meta.dirname, '../../.pictures');

/** The pictures of the README, as they stand in the window. */
const walk: [screen: string, size: keyof typeof sizes][] = [
  ['crew-place', 'phone'],
  ['crew-finding', 'phone'],
  ['desk-to-do', 'desk'],
  ['desk-house', 'desk'],
  ['desk-change-order-sent', 'desk'],
  ['client-letter', 'phone'],
  ['desk-load-path', 'desk'],
  ['desk-scope', 'desk'],
  ['desk-contract', 'desk'],
];
const walkFolder = resolve(import.meta.dirname, '../../seed/walk');

const server = await startDemoServer();
const browser = await chromium.launch({ executablePath: ensureChromium(), args: chromiumArgs });
try {
  const full = await visit(browser, server, server.signIns);
  if (process.argv.includes('--walk')) {
    for (const [name, size] of walk) await takeForWalk(full, name, size);
  } else await takeAll(full);
} finally {
  await browser.close();
  await server.stop();
}
console.log(`The pictures are in ${process.argv.includes('--walk') ? walkFolder : folder}`);

async function takeAll(full: Visit): Promise<void> {
  const empty = await visit(browser, server, await openEmptyCompany(server));
  for (const screen of chosen) {
    await take(full, screen, 'full');
    if (!['client', 'nobody'].includes(screen.role)) await take(empty, screen, 'empty');
    if (screen.role !== 'nobody' && !screen.before) await take(full, screen, 'failing');
    console.log(screen.name);
  }
}

async function takeForWalk(visit: Visit, name: string, size: keyof typeof sizes): Promise<void> {
  const screen = screens.find((one) => one.name === name);
  if (!screen) throw new Error(`there is no screen ${name}`);
  const page = await open(visit, screen, sizes[size]);
  mkdirSync(walkFolder, { recursive: true });
  const shot = await page.screenshot();
  await sharp(shot)
    .png({ palette: true, effort: 10 })
    .toFile(join(walkFolder, `${name}.png`));
  await page.close();
}

async function open(visit: Visit, screen: Screen, viewport: { width: number; height: number }): Promise<Page> {
  const page = await visit.contexts[screen.role].newPage();
  await page.setViewportSize(viewport);
  await page.goto(screen.role === 'client' ? visit.server.clientLink : screen.path(visit.ids));
  await settled(page);
  return page;
}

/** Nothing is being read any more, neither a part of the program nor an answer of the server. */
async function settled(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle');
  await page.waitForFunction(
    () => document.querySelector('h1, [role=alert]') !== null && !document.querySelector('.loading'),
  );
  await page.waitForLoadState('networkidle');
}

interface Visit {
  server: DemoServer;
  contexts: Record<Role | 'nobody' | 'client', BrowserContext>;
  ids: Ids;
}

async function visit(browser: Browser, server: DemoServer, people: DemoServer['signIns']): Promise<Visit> {
  const as = async (role: Role) => {
    const context = await browser.newContext({ baseURL: server.url });
    const answer = await context.request.post('/api/v1/session', { data: people[role] });
    if (!answer.ok()) throw new Error(`${role} could not sign in: ${await answer.text()}`);
    return context;
  };
  const contexts = {
    owner: await as('owner'),
    estimator: await as('estimator'),
    crew: await as('crew'),
    client: await browser.newContext({ baseURL: server.url }),
    nobody: await browser.newContext({ baseURL: server.url }),
  };
  return { server, contexts, ids: await findIds(contexts.estimator) };
}

/** What the demo holds, or an address that leads nowhere in an empty company. */
async function findIds(context: BrowserContext): Promise<Ids> {
  const nowhere = '01900000-0000-7000-8000-000000000000';
  const list = async (path: string) =>
    ((await (await context.request.get(`/api/v1${path}`)).json()) as { items?: Record<string, string>[] }).items ?? [];
  const projectId = (await list('/projects'))[0]?.id ?? nowhere;
  const places = await list(`/projects/${projectId}/locations`);
  const findings = await list(`/projects/${projectId}/findings`);
  const orders = await list(`/projects/${projectId}/change-orders`);
  const wallId = places.find(({ kind, worst }) => kind === 'wall' && worst)?.id ?? nowhere;
  const walls = places.filter(({ kind }) => kind === 'wall');
  const lines = await Promise.all(walls.map(({ id }) => list(`/locations/${id}/load-paths`)));
  return {
    projectId,
    wallId,
    chainWallId: walls.find((_, at) => lines[at]?.some(({ kind }) => kind === 'wall-line'))?.id ?? nowhere,
    findingId: findings.find(({ severity }) => severity === 'make-safe')?.id ?? nowhere,
    priceId: findings.find(({ linesCents }) => linesCents !== null)?.id ?? nowhere,
    draftOrderId: orders.find(({ state }) => state === 'draft')?.id ?? nowhere,
    sentOrderId: orders.find(({ state }) => state === 'sent')?.id ?? nowhere,
  };
}

async function openEmptyCompany(server: DemoServer): Promise<DemoServer['signIns']> {
  const owner = { email: 'nobody-yet@example.test', password: 'an empty house to begin with' };
  const answer = await fetch(`${server.url}/api/v1/companies`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ companyName: 'New Carpentry', name: 'Noor Yet', ...owner }),
  });
  if (!answer.ok) throw new Error(await answer.text());
  return { owner, estimator: owner, crew: owner };
}

async function take(visit: Visit, screen: Screen, state: 'full' | 'empty' | 'failing'): Promise<void> {
  for (const [size, viewport] of Object.entries(sizes)) {
    const page = await visit.contexts[screen.role].newPage();
    await page.setViewportSize(viewport);
    if (state === 'failing') await page.route(/\/api\/v1\/(?!session|client\/.*session)/, refuse);
    const address = screen.role === 'client' ? visit.server.clientLink : screen.path(visit.ids);
    await page.goto(address);
    await page.waitForLoadState('networkidle');
    const tell = (error: Error) => console.error(`${screen.name}, ${state}, ${size}: ${error.message.split('\n')[0]}`);
    await screen.before?.(page).catch(tell);
    if (state !== 'failing') await settled(page);
    // A screen tries a failed request a few times before it says so.
    if (state === 'failing') await page.locator('[role=alert]').first().waitFor({ timeout: 20_000 }).catch(tell);
    await page.waitForLoadState('networkidle');
    const path = join(folder, state, size, `${screen.name}.png`);
    mkdirSync(join(path, '..'), { recursive: true });
    await page.screenshot({ path, fullPage: true });
    await page.close();
  }
}

function refuse(route: Route): Promise<void> {
  return route.fulfill({
    status: 503,
    contentType: 'application/problem+json',
    body: JSON.stringify({
      type: 'urn:underlath:problem:database-away',
      title: 'The database does not answer',
      status: 503,
      detail: 'The database does not answer. Nothing was changed; try again in a minute.',
    }),
  });
}
