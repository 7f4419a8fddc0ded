import AxeBuilder from '@axe-core/playwright';
import { type Browser, expect, type Page } from '@playwright/test';
import { openCompany, type Site } from './company.ts';
import { demo } from './demo.ts';
import { test } from './test.ts';

const phone = { width: 390, height: 844 };
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const password = 'a plumb bob over the sill plate';
let people = 0;

const accessible = async (page: Page) =>
  (await new AxeBuilder({ page }).withTags(tags).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html]);

/** The server listens on any free port, which the links it writes do not know. */
const here = (link: string) => demo().url + link.slice(new URL(link).origin.length);

/** Invites somebody as the owner, who joins by the screen of the link in a browser of their own. */
async function join(browser: Browser, site: Site, role: string, viewport = { width: 1440, height: 900 }) {
  const email = `joined-${Date.now()}-${++people}@plumb.example`;
  const { link } = await site.make('/invitations', { email, role });
  const page = await (await browser.newContext({ viewport })).newPage();
  await page.goto(here(link));
  await page.getByLabel('Your name').fill(`Bo Tenon ${people}`);
  await page.getByLabel(/^password/i).fill(password);
  await page.getByRole('button', { name: 'Join' }).click();
  await page.waitForURL((address) => !address.pathname.startsWith('/invitation'));
  return { page, name: `Bo Tenon ${people}` };
}

const askWithKey = (secret: string, method: string, path: string, data?: object) =>
  fetch(`${demo().url}/api/v1${path}`, {
    method,
    headers: { authorization: `Bearer ${secret}`, ...(data && { 'content-type': 'application/json' }) },
    ...(data && { body: JSON.stringify(data) }),
  });

test('a removed owner is out: by the session, the key and the invitation they made', async ({ page, browser }) => {
  const site = await openCompany(page);
  const second = await join(browser, site, 'owner');
  await second.page.goto(`${demo().url}/people`);
  await second.page.getByLabel('What it is for').fill('Nightly copy');
  await second.page.getByLabel('Role of the key').selectOption('owner');
  await second.page.getByRole('button', { name: 'Make a key' }).click();
  const secret = await second.page.getByLabel('Key “Nightly copy”').inputValue();
  const own = `way-back-${Date.now()}@plumb.example`;
  await second.page.getByLabel('E-mail').first().fill(own);
  await second.page.getByLabel('Role', { exact: true }).selectOption('owner');
  await second.page.getByRole('button', { name: 'Invite', exact: true }).click();
  const wayBack = await second.page.getByLabel(`Invitation for ${own}`).inputValue();
  expect((await askWithKey(secret, 'GET', '/members')).status).toBe(200);

  await page.goto(`${demo().url}/people`);
  await page.getByRole('button', { name: `Remove ${second.name}` }).click();
  await expect(page.getByText('1 API key and 1 invitation end with this.')).toBeVisible();
  expect(await accessible(page)).toEqual([]);
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(page.getByText(`Removed: ${second.name}.`)).toBeVisible();
  await expect(page.getByText('Nightly copy')).toHaveCount(0);

  expect((await askWithKey(secret, 'GET', '/members')).status).toBe(401);
  expect((await second.page.request.get(`${demo().url}/api/v1/session`)).status()).toBe(401);
  await second.page.goto(here(wayBack));
  await expect(second.page.getByText('This invitation was used or revoked, or it has expired')).toBeVisible();
});

test('a lower role is asked about first, and lowers the keys', async ({ page, browser }) => {
  const site = await openCompany(page);
  const second = await join(browser, site, 'owner');
  await second.page.goto(`${demo().url}/people`);
  await second.page.getByLabel('What it is for').fill('Prices');
  await second.page.getByRole('button', { name: 'Make a key' }).click();
  const secret = await second.page.getByLabel('Key “Prices”').inputValue();
  expect((await askWithKey(secret, 'GET', '/cost-book')).status).toBe(200);

  await page.goto(`${demo().url}/people`);
  await page.getByLabel(`Role of ${second.name}`).selectOption('crew');
  await expect(page.getByText('1 API key can do no more than crew from then on.')).toBeVisible();
  await page.getByRole('button', { name: 'Make crew' }).click();
  await expect(page.getByLabel(`Role of ${second.name}`)).toHaveValue('crew');
  expect((await askWithKey(secret, 'GET', '/cost-book')).status).toBe(403);
});

test('a key for reading only reads and changes nothing, and ends on its day or when it is revoked', async ({
  page,
}) => {
  const site = await openCompany(page);
  await page.goto(`${demo().url}/people`);
  await page.getByLabel('What it is for').fill('Wall display');
  await page.getByLabel('It may do').selectOption('read');
  await page.getByLabel('Last day').fill('2020-01-01');
  await page.getByRole('button', { name: 'Make a key' }).click();
  await expect(page.getByText(/must end after now and within two years/i).first()).toBeVisible();
  const inAMonth = new Date(Date.now() + 30 * 86_400_000).toISOString().slice(0, 10);
  await page.getByLabel('Last day').fill(inAMonth);
  await page.getByRole('button', { name: 'Make a key' }).click();
  const secret = await page.getByLabel('Key “Wall display”').inputValue();
  await expect(page.getByText(/Wall display, estimator, reading only, until/)).toBeVisible();
  await expect(page.getByText(/Never used/)).toBeVisible();
  expect((await askWithKey(secret, 'GET', `/projects/${site.projectId}`)).status).toBe(200);
  const refused = await askWithKey(secret, 'POST', `/projects/${site.projectId}/locations`, {
    ...{ kind: 'wall', name: 'South wall' },
  });
  expect(refused.status).toBe(403);
  await page.reload();
  await expect(page.getByText(/Last used/)).toBeVisible();
  for (const viewport of [{ width: 1440, height: 900 }, phone]) {
    await page.setViewportSize(viewport);
    expect(await accessible(page)).toEqual([]);
  }
  await page.getByRole('button', { name: 'Revoke Wall display' }).click();
  await expect(page.getByText('No key is in use.')).toBeVisible();
  expect((await askWithKey(secret, 'GET', `/projects/${site.projectId}`)).status).toBe(401);
});

test('the crew’s phone shows no money until the owner says so', async ({ page, browser }) => {
  const site = await openCompany(page);
  const crew = await join(browser, site, 'crew', phone);
  const onSite = `${demo().url}/crew/${site.projectId}`;
  await crew.page.goto(onSite);
  await expect(crew.page.getByRole('heading', { name: 'Wren cottage' })).toBeVisible();
  await expect(crew.page.getByText('2 Mortise Row')).toBeVisible();
  await expect(crew.page.getByText('$')).toHaveCount(0);

  await page.goto(`${demo().url}/people`);
  const crewSeesMoney = page.getByLabel(/^The crew sees money/);
  await expect(crewSeesMoney).not.toBeChecked();
  // The box shows what the server has: it is ticked once the answer is there.
  await crewSeesMoney.click();
  await expect(crewSeesMoney).toBeChecked();
  await expect(page.getByText('The crew sees prices, contract sums')).toBeVisible();
  await crew.page.reload();
  await expect(crew.page.getByText('Original contract sum: $84,000')).toBeVisible();
  expect(await accessible(crew.page)).toEqual([]);
  await crew.page.evaluate(() => localStorage.setItem('underlath.locale', 'es'));
  await crew.page.reload();
  await expect(crew.page.getByText('Suma original del contrato')).toBeVisible();
});
