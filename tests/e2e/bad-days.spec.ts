import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { demo, keptOnDevice, signIn, told } from './demo.ts';
import { test } from './test.ts';

const photo = join(import.meta.dirname, '../fixtures/photos/no-zone.jpg');

// biome-ignore lint/suspicious/noExplicitAny: the answers are only used for their ids and notes
type Row = Record<string, any>;
const list = async (page: Page, path: string): Promise<Row[]> =>
  (await (await page.request.get(`${demo().url}/api/v1${path}`)).json()).items;

test('a question whose sending fails stays typed, and a second press sends it', async ({ browser }) => {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await page.goto(demo().clientLink);
  await page.getByRole('button', { name: /^Ask/ }).click();
  await page.locator('textarea').fill('Will the wall be open over night?');
  await page.getByLabel('Your name').fill(told.clientName);
  await page.route('**/api/v1/client/letters/*/questions', (route) => route.abort());
  await page.getByRole('button', { name: 'Send the question' }).click();
  await expect(page.getByRole('alert').first()).toBeVisible();
  await expect(page.locator('textarea')).toHaveValue('Will the wall be open over night?');
  await page.unroute('**/api/v1/client/letters/*/questions');
  await page.getByRole('button', { name: 'Send the question' }).click();
  await expect(page.getByText('Your question was sent.').first()).toBeVisible();
  await page.close();
});

test('a crew without signal goes on; back in signal, the draft is there and its photo is sent once', async ({
  browser,
}) => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, baseURL: demo().url });
  const page = await context.newPage();
  await signIn(page, 'crew');
  const projectId = (await list(page, '/projects'))[0]?.id;
  const place = (await list(page, `/projects/${projectId}/locations`)).find(({ name }) => name === told.openWall);
  await page.goto(`/crew/${projectId}/places/${place?.id}`);
  await expect(page.getByRole('button', { name: 'New finding' })).toBeVisible();
  await page.waitForLoadState('networkidle');
  await keptOnDevice(page);
  const photosBefore = (await list(page, `/projects/${projectId}/photos?limit=200`)).length;
  await context.setOffline(true);
  await page.getByRole('button', { name: 'New finding' }).click();
  await page.locator('input[type=file]').first().setInputFiles(photo);
  await expect(page.getByText('kept on this phone').first()).toBeVisible();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: /All of it|Next/ }).click();
  await page.getByRole('button', { name: /Beam or joist seat/ }).click();
  await page.getByRole('button', { name: "I can't tell" }).click();
  await context.setOffline(false);
  await page.goto(`/crew/unsent`);
  await page
    .getByRole('button', { name: 'Go on' })
    .or(page.getByRole('link', { name: 'Go on' }))
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect
    .poll(async () => (await list(page, `/projects/${projectId}/photos?limit=200`)).length)
    .toBe(photosBefore + 1);
  await context.close();
});

test('a session that ends in the middle of typing is taken up again, with everything still typed', async ({
  browser,
}) => {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, baseURL: demo().url });
  const page = await context.newPage();
  await signIn(page, 'estimator');
  const projectId = (await list(page, '/projects'))[0]?.id;
  await page.goto(`/projects/${projectId}/findings/new`);
  await page.getByLabel('Note').fill('typed before the session ended');
  await page.getByText('Rod in its nut').first().click();
  await page.getByLabel('Place', { exact: true }).selectOption({ index: 1 });
  await context.clearCookies();
  await page.getByRole('button', { name: 'Record the finding' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Password', { exact: true }).fill(demo().signIns.estimator.password);
  await dialog.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByLabel('Note')).toHaveValue('typed before the session ended');
  await context.close();
});

test('an address that leads nowhere, and a project of nobody, say so', async ({ page }) => {
  await signIn(page, 'estimator');
  await page.goto(`${demo().url}/nowhere-at-all`);
  await expect(page.getByRole('heading', { name: 'There is nothing at this address' })).toBeVisible();
  const stranger = await page.request.get(`${demo().url}/api/v1/projects/01900000-0000-7000-8000-000000000000`);
  expect(stranger.status()).toBe(404);
});
