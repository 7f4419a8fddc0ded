import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { twoVersions } from '../support/two-versions.ts';
import { demo, keptOnDevice } from './demo.ts';
import { test } from './test.ts';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const sizes = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
];
const shortRod = '/checks/anchor.thread-engagement?diameterIn=0.625&nut=hex&projectionIn=-0.125&rule=flush';

const trying = (page: Page) => page.getByRole('region', { name: 'Try it' });

test('anyone finds a check by typing and reads its sheet, without an account and without asking the server', async ({
  page,
}) => {
  const asked: string[] = [];
  const files: string[] = [];
  page.on('request', (request) => {
    if (request.url().includes('/api/')) asked.push(request.url());
    const [file] = request.url().match(/_virtual_check-(drawing|cases)-[^/]*$|[a-z-]+\.(drawing|cases)-[^/]*$/) ?? [];
    if (file) files.push(file);
  });
  await page.goto(`${demo().url}/checks`);
  await expect(page.locator('.index-line svg path').first()).toBeAttached();
  expect(files.filter((file) => file.includes('cases'))).toEqual([]);
  await page.getByLabel('Find a check').fill('rod nut');
  await expect(page.getByRole('status').filter({ hasText: /of \d+ checks/ })).toBeVisible();
  await page.reload();
  await expect(page.getByLabel('Find a check')).toHaveValue('rod nut');
  await page.getByRole('link', { name: 'Rod in its nut' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Rod in its nut' })).toBeFocused();
  for (const part of ['What to measure', 'What the rule asks', 'Where it comes from', 'What it does not cover'])
    await expect(page.getByRole('region', { name: part })).toBeVisible();
  await expect(page.getByText(/Common practice: no published source is known/)).toBeVisible();
  const [, pass, all] = (await page.getByText(/\d+ of \d+ pass/).textContent())?.match(/(\d+) of (\d+)/) ?? [];
  expect(pass).toBe(all);
  // One file for the drawings of all checks, and one for the cases.
  expect([...new Set(files)].map((file) => file.match(/drawing|cases/)?.[0]).toSorted()).toEqual(['cases', 'drawing']);
  expect(asked).toEqual([]);
});

test('a word that finds nothing says what to do, and an address of no check leads to the list', async ({ page }) => {
  await page.goto(`${demo().url}/checks?q=zeppelin`);
  await expect(page.getByRole('heading', { name: 'No check has all of these words' })).toBeVisible();
  await page.goto(`${demo().url}/checks/cut.nothing`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is no check “cut.nothing”');
  await page.getByRole('link', { name: 'All checks' }).last().click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Every check');
});

test('index and sheets are accessible at both sizes, in both languages, and nothing sticks out at 320 px', {
  tag: '@long',
}, async ({ page }) => {
  test.setTimeout(240_000);
  for (const language of ['en', 'es']) {
    await page.goto(`${demo().url}/checks`);
    await page.getByRole('button', { name: language === 'en' ? 'English' : 'Español' }).click();
    for (const path of ['/checks', shortRod, '/checks/cut.top-plate', '/checks/movement.shrinkage?colour=red']) {
      for (const size of sizes) {
        await page.setViewportSize(size);
        await page.goto(demo().url + path);
        await page.waitForLoadState('networkidle');
        await expect(page.getByRole('heading', { level: 2 }).first()).toBeVisible();
        const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
        expect(violations.map(({ id, nodes }) => `${path} ${id}: ${nodes[0]?.html.slice(0, 160)}`)).toEqual([]);
      }
      await page.setViewportSize({ width: 320, height: 640 });
      const sideways = await page.evaluate(() => {
        const { scrollWidth, clientWidth } = document.documentElement;
        return scrollWidth - clientWidth;
      });
      expect(sideways, path).toBe(0);
    }
  }
});

test('trying shows verdict, working and sources; the copied link opens the same sheet for somebody else', async ({
  page,
  context,
  browser,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto(`${demo().url}/checks/anchor.thread-engagement`);
  const form = trying(page);
  await form.getByLabel('Start from a worked case').selectOption({ index: 1 });
  await expect(page.getByRole('status').filter({ hasText: 'The sheet now shows the case' })).toBeVisible();
  await expect(form.getByRole('heading', { name: 'Try it' })).toBeFocused();
  await form.getByLabel(/Rod end past the nut face/).fill('-1/4');
  await expect(form.getByText('Does not meet').first()).toBeVisible();
  const engaged = form.locator('.working-values > div', { hasText: 'Share of the nut engaged' });
  await expect(engaged).toContainText('Thread engaged, divided by the least nut thickness.');
  await expect(engaged.locator('dd')).toHaveText(/^\d+(\.\d)?%$/);
  await form.getByText('Around it').click();
  await form.getByLabel('Full stories above it').selectOption('2');
  await expect(page).toHaveURL(/projectionIn=-0\.25.*at\.storiesAbove=2/);
  await form.getByRole('button', { name: 'Copy the link to this sheet' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'The link is copied' })).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  const verdict = await form.locator('.live-verdict').textContent();

  const other = await (await browser.newContext()).newPage();
  await other.goto(link);
  await expect(trying(other).getByLabel(/Rod end past the nut face/)).toHaveValue('-1/4"');
  await expect(trying(other).getByLabel('Full stories above it')).toHaveValue('2');
  await expect(trying(other).locator('.live-verdict')).toHaveText(verdict ?? '');
  await other.context().close();
});

test('a link that is partly wrong says what it could not use and fills in the rest', async ({ page }) => {
  await page.goto(`${demo().url}/checks/anchor.thread-engagement?diameterIn=0.625&nut=hexx&colour=red&by=asme-1890`);
  const trouble = page.getByRole('alert');
  for (const words of ['hexx', 'colour', 'asme-1890']) await expect(trouble).toContainText(words);
  await expect(trying(page).getByRole('radio', { name: /5\/8/ })).toBeChecked();
});

test('the same measurements stand side by side under every edition', async ({ page }) => {
  await page.goto(
    `${demo().url}/checks/cut.top-plate?by=ibc-2015&widthIn=3.5&cutIn=1.75&bearingOrBraced=yes&inShearWall=no`,
  );
  await expect(trying(page).getByLabel('Edition', { exact: true })).toHaveValue('ibc-2015');
  const rows = page.getByRole('region', { name: 'Editions side by side' }).getByRole('row');
  await expect(rows.filter({ hasText: 'Residential Code 2018' })).toContainText('Meets');
  await expect(rows.filter({ hasText: 'Building Code 2015' })).toContainText('Does not meet');
});

/** Visits once, until the device has everything. */
async function visitOnce(page: Page, path: string): Promise<void> {
  await page.goto(demo().url + path);
  await keptOnDevice(page);
}

const keptAddresses = (page: Page) =>
  page.evaluate(async () => {
    const names = await caches.keys();
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return requests.flat().map(({ url }) => new URL(url).pathname);
  });

test('after one visit the checks open and judge without a connection, from a shared link too', async ({
  page,
  context,
}) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await visitOnce(page, '/checks');
  await context.setOffline(true);
  await page.reload();
  await page.getByRole('link', { name: 'Rod in its nut' }).click();
  const form = trying(page);
  await form.getByRole('radio', { name: /5\/8/ }).check();
  await form.getByRole('radio', { name: 'Regular hex nut' }).check();
  await form.getByLabel(/Rod end past the nut face/).fill('0');
  await expect(form.getByText('Meets', { exact: true }).first()).toBeVisible();
  await expect(page.locator('.sheet-figure svg path').first()).toBeAttached();
  await page.goto(demo().url + shortRod);
  await expect(trying(page).getByText('Does not meet').first()).toBeVisible();
  const font = await page.evaluate(async () => {
    await document.fonts.ready;
    return document.fonts.check('16px "Atkinson Hyperlegible Next Variable"');
  });
  expect(font).toBe(true);
  expect(errors).toEqual([]);
});

test('the crew’s app opens without a connection for who was signed in, and forgets them at sign-out', async ({
  page,
  context,
}) => {
  const { url, signIns } = demo();
  await context.request.post(`${url}/api/v1/session`, { data: signIns.crew });
  await visitOnce(page, '/crew');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await context.setOffline(true);
  await page.reload();
  await page.getByRole('link', { name: /sent/i }).click();
  await expect(page).toHaveURL(/\/crew\/unsent/);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await context.setOffline(false);
  await page.goto(`${url}/crew`);
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.waitForURL(/sign-in/);
  await context.setOffline(true);
  await page.goto(`${url}/crew`);
  await expect(page.getByRole('alert')).toBeVisible();
  expect(await page.evaluate(() => localStorage.getItem('underlath.me'))).toBeNull();
});

test('the device keeps the app’s files only: nothing the server answered, and no part of a client’s link', async ({
  page,
  context,
}) => {
  const { url, signIns, clientLink } = demo();
  await context.request.post(`${url}/api/v1/session`, { data: signIns.estimator });
  await visitOnce(page, '/projects');
  await expect(page.getByRole('heading', { level: 1, name: 'Projects' })).toBeVisible();
  await page.goto(`${url}/checks`);
  const answered = await page.goto(clientLink);
  expect(answered?.fromServiceWorker()).toBe(false);
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();
  const kept = await keptAddresses(page);
  expect(kept).toContain('/index.html');
  // The office shows the letter as the client sees it, so that the look of the client's page is a file of the app.
  expect(kept.filter((path) => /^\/(api|c)(\/|$)|client.*(?<!\.css)$/.test(path))).toEqual([]);
  await page.goto('about:blank');
  await context.setOffline(true);
  await expect(page.goto(clientLink, { timeout: 5000 })).rejects.toThrow(/ERR_INTERNET_DISCONNECTED/);
});

test('the service worker is asked for anew each time, and nothing runs from inside a page', async ({ page }) => {
  const worker = await page.request.get(`${demo().url}/service-worker.js`);
  expect(worker.headers()['cache-control']).toBe('no-cache');
  expect(worker.headers()['content-type']).toMatch(/javascript/);
  const shell = await page.request.get(`${demo().url}/checks`);
  expect(shell.headers()['cache-control']).toBe('no-cache');
  expect(shell.headers()['content-security-policy']).not.toContain('unsafe');
});

test('a newer version takes nothing from a page that is open, and serves the next one', async ({ browser }) => {
  const { site, release, stop } = await twoVersions(demo().url);
  const context = await browser.newContext();
  const page = await context.newPage();
  let loads = 0;
  page.on('load', () => {
    loads++;
  });
  await page.goto(`${site}/checks/cut.top-plate`);
  await expect.poll(() => page.evaluate(versionRunning), { timeout: 90_000 }).toBe('1');
  const width = trying(page).getByLabel('Plate width');
  await width.fill('3 1/2');
  release();
  await page.evaluate(async () => void (await (await navigator.serviceWorker.getRegistration('/'))?.update()));
  await expect.poll(() => page.evaluate(versionRunning), { timeout: 90_000 }).toBe('2');
  await expect(width).toHaveValue('3 1/2');
  expect(loads).toBe(1);
  // The newer version no longer has the file behind this link, nor has the server.
  await page.getByRole('link', { name: 'All checks' }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: 'Every check' })).toBeVisible();
  await page.goBack();
  await expect(trying(page).getByLabel('Plate width')).toHaveValue('3 1/2"');
  await context.close();
  await stop();
});

/** Asks the worker that controls the page which version it is. */
async function versionRunning(): Promise<string> {
  if (!navigator.serviceWorker.controller) return 'none';
  return new Promise((done) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = ({ data }) => done(String(data));
    navigator.serviceWorker.controller?.postMessage('which version', [channel.port2]);
  });
}
