import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, expect, type Page } from '@playwright/test';
import sharp from 'sharp';
import { readPdf } from '../support/pdf-text.ts';
import { demo, signIn, told } from './demo.ts';
import { test } from './test.ts';

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true };
const desk = { viewport: { width: 1440, height: 900 } };
const photo = join(import.meta.dirname, '../fixtures/photos/sideways-with-gps.jpg');

test.describe.configure({ mode: 'serial' });

let office: Page;
let projectId = '';
let findingId = '';
let orderId = '';
let link = '';
let printedTotal = 0;
let sumBefore = 0;

test.beforeAll(async ({ browser }) => {
  office = await browser.newPage({ ...desk, baseURL: demo().url });
  await signIn(office, 'estimator');
  projectId = (await list(office, '/projects'))[0]?.id ?? '';
});
test.afterAll(() => office.close());

test('the crew photographs, measures and saves a rod that is short of its nut', async ({ browser }) => {
  const page = await browser.newPage({ ...phone, baseURL: demo().url });
  await signIn(page, 'crew');
  const wall = (await list(page, `/projects/${projectId}/locations`)).find(({ name }) => name === told.chainWall);
  await page.goto(`/crew/${projectId}/places/${wall?.id}`);
  await page.getByRole('button', { name: 'New finding' }).click();
  await page.locator('input[type=file]').first().setInputFiles(photo);
  await expect(page.getByText('Photo 1 · sent')).toBeVisible();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.locator('.d-touch').tap({ position: { x: 250, y: 150 } });
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: /^Bolts and hold-downs/ }).click();
  await page.getByRole('button', { name: /^Rod in its nut/ }).click();
  await page.getByText('5/8').or(page.locator('.choice').nth(1)).first().click();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByText('Regular hex nut').click();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: 'Type it' }).click();
  await page.getByRole('textbox').fill('-3/8');
  await expect(page.getByText('Does not meet').first()).toBeVisible();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: 'Next' }).click();
  await expect(page.getByText('Engineer decides').first()).toBeVisible();
  await page.getByLabel('Anything else to know').fill('Told the office.');
  await page.getByRole('button', { name: 'Save the finding' }).click();
  await expect(page.getByText('all sent')).toBeVisible();
  const found = (await list(page, `/projects/${projectId}/findings`))[0];
  expect([found?.note, found?.verdict, found?.severity]).toEqual(['Told the office.', 'fails', 'engineer']);
  findingId = found?.id ?? '';
  await page.close();
});

test('the photo is shown upright and carries nothing of the camera', async () => {
  const [row] = await list(office, `/projects/${projectId}/photos?findingId=${findingId}`);
  await expect
    .poll(async () => (await office.request.get(`/api/v1/photos/${row?.id}/view`)).status(), { timeout: 60_000 })
    .toBe(200);
  const view = await (await office.request.get(`/api/v1/photos/${row?.id}/view`)).body();
  const { exif, orientation, width, height } = await sharp(view).metadata();
  expect([exif, orientation]).toEqual([undefined, undefined]);
  const original = await sharp(readFileSync(photo)).metadata();
  // Orientation 6 in the file: what was stored lying is shown standing.
  expect([original.orientation, Math.sign((width ?? 0) - (height ?? 0))]).toEqual([
    6,
    -Math.sign((original.width ?? 0) - (original.height ?? 0)),
  ]);
});

test('the estimator prices it, words a change order and sends it', async () => {
  sumBefore = (await contract()).currentSumCents;
  await office.goto(`/projects/${projectId}/findings/${findingId}/price`);
  await office.getByRole('button', { name: 'Save price' }).click();
  await expect
    .poll(async () => (await json(office, `/findings/${findingId}`)).state, { timeout: 30_000 })
    .toBe('priced');
  await makeOrder(findingId);
  await office.getByRole('tab', { name: /Wording/ }).click();
  await office.getByLabel('English').first().fill('The rod in the wall needs a longer reach');
  await office.getByRole('button', { name: 'Save the changes' }).click();
  await expect(office.getByText('Saved').first()).toBeVisible();
  link = await send();
  const sent = await json(office, `/change-orders/${orderId}`);
  expect([sent.state, sent.headline]).toEqual(['sent', 'The rod in the wall needs a longer reach']);
  printedTotal = sent.totalCents;
  expect(printedTotal).toBeGreaterThan(0);
  expect((await contract()).currentSumCents).toBe(sumBefore);
  expect((await contract()).pendingCents).toBeGreaterThanOrEqual(printedTotal);
});

test('the client opens the link, asks, reviews, signs; the contract grows by exactly the printed total', async ({
  browser,
}) => {
  const page = await openLetter(browser, link);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('The rod in the wall needs a longer reach');
  expect(page.url()).not.toContain('#');
  await page.getByRole('button', { name: /^Ask/ }).click();
  await page.locator('textarea').fill('Can the wall stay open until then?');
  await page.getByLabel(/name/i).last().fill(told.clientName);
  await page.getByRole('button', { name: 'Send the question' }).click();
  await expect(page.getByText('Can the wall stay open until then?').first()).toBeVisible();
  await page.getByRole('button', { name: /Review and approve/ }).click();
  await expect(page.getByRole('heading', { name: 'Review before you sign' })).toBeVisible();
  await page.getByLabel(/name/i).last().fill(told.clientName);
  await page.getByRole('checkbox').check();
  await page.getByRole('button', { name: 'Sign', exact: true }).dblclick();
  await expect(page.getByText('You approved this change').first()).toBeVisible();
  const after = await contract();
  expect(after.currentSumCents - sumBefore).toBe(printedTotal);
  const sent = await json(office, `/change-orders/${orderId}`);
  expect(sent.state).toBe('approved');
  const { sha256 } = sent.versions[0];
  const dollars = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(printedTotal / 100);
  for (const answer of [
    await page.request.get(`/api/v1/client/letters/${new URL(page.url()).pathname.split('/').at(-1)}/pdf`),
    await office.request.get(`/api/v1/change-orders/${orderId}/versions/1/pdf`),
  ]) {
    const pdf = await readPdf(await answer.body());
    expect(pdf.text.replace(/\s/g, '')).toContain(sha256);
    expect(pdf.text).toContain(dollars);
    expect(pdf.text).toContain(told.clientName);
  }
  await page.context().close();
});

test('the screens of the office show the new sum, and the record verifies', async () => {
  const { currentSumCents } = await contract();
  const dollars = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(currentSumCents / 100);
  await office.goto(`/projects/${projectId}/contract`);
  await expect(office.getByText(dollars).first()).toBeVisible();
  await office.goto(`/projects/${projectId}/record`);
  await office.getByRole('button', { name: 'Verify the record' }).click();
  await expect(office.locator('main')).toContainText(/No fault in what was compared/);
  expect((await json(office, `/projects/${projectId}/record/verify`)).ok).toBe(true);
});

test('an edit after sending kills the old link; the new one can be declined', async ({ browser }) => {
  const other = (await list(office, `/projects/${projectId}/findings?state=priced`))[0];
  expect(other, 'the demo keeps a priced finding in a draft order').toBeDefined();
  const draft = (await list(office, `/projects/${projectId}/change-orders`)).find(({ state }) => state === 'draft');
  orderId = draft?.id ?? '';
  await office.goto(`/projects/${projectId}/change-orders/${orderId}`);
  const first = await send();
  const page = await openLetter(browser, first);
  await office.getByRole('tab', { name: /Wording/ }).click();
  await office.getByLabel('English').first().fill('The post and the beam, said better');
  await office.getByRole('button', { name: 'Save the changes' }).click();
  await office.getByRole('dialog').getByRole('button').last().click();
  await expect.poll(async () => (await json(office, `/change-orders/${orderId}`)).state).toBe('draft');
  await page.reload();
  await expect(page.getByRole('heading', { name: 'This letter was changed' })).toBeVisible();
  await page.context().close();
  const second = await openLetter(browser, await send());
  await second.getByRole('button', { name: /^Decline/ }).click();
  await second.getByLabel(/name/i).last().fill(told.clientName);
  const tick = second.getByRole('checkbox');
  if (await tick.count()) await tick.check();
  await second
    .getByRole('button', { name: /decline/i })
    .last()
    .click();
  await expect.poll(async () => (await json(office, `/change-orders/${orderId}`)).state).toBe('declined');
  expect((await contract()).currentSumCents).toBe(sumBefore + printedTotal);
  await second.context().close();
});

async function makeOrder(only: string): Promise<void> {
  await office.goto(`/projects/${projectId}/change-orders/new`);
  await expect(office.getByRole('checkbox').first()).toBeVisible();
  const { title } = await json(office, `/findings/${only}`);
  for (const box of await office.getByRole('checkbox').all()) await box.uncheck();
  await office.getByRole('checkbox', { name: title }).check();
  await office.getByRole('button', { name: 'Make the change order' }).click();
  await office.waitForURL(/change-orders\/[0-9a-f]{8}-/);
  orderId = office.url().split('/').at(-1) ?? '';
}

/** Sends the order on the screen and reads the link that is shown once. */
async function send(): Promise<string> {
  await office.getByRole('button', { name: 'Send to the client' }).click();
  await office.getByRole('button', { name: 'Send it' }).click();
  const text = await office.getByLabel('The link', { exact: true }).inputValue();
  await office.getByRole('button', { name: 'Done' }).click();
  return text.match(/\/c\/\w{10}#[\w-]{43}/)?.[0] ?? '';
}

async function openLetter(browser: Browser, path: string): Promise<Page> {
  const context = await browser.newContext({ ...phone, baseURL: demo().url });
  const page = await context.newPage();
  await page.goto(path);
  await expect(page.getByRole('button', { name: /Review and approve/ })).toBeVisible();
  return page;
}

// biome-ignore lint/suspicious/noExplicitAny: the answers are checked where they are used
type Row = Record<string, any>;
const json = async (page: Page, path: string): Promise<Row> => (await page.request.get(`/api/v1${path}`)).json();
const list = async (page: Page, path: string): Promise<Row[]> => (await json(page, path)).items;
const contract = () => json(office, `/projects/${projectId}/contract`);
