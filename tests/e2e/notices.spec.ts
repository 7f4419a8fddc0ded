import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { asWords, demo, signIn, told } from './demo.ts';
import { test } from './test.ts';

const wcag = ['wcag2a', 'wcag2aa', 'wcag22aa'];

const json = async (page: Page, path: string) => (await page.request.get(`${demo().url}/api/v1${path}`)).json();
const letters = () => {
  const folder = join(demo().dataDir, 'mail');
  return readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
};

/** The demo's only finding whose notice is overdue. */
async function overdue(page: Page) {
  const [project] = (await json(page, '/projects')).items;
  const { todo } = await json(page, `/projects/${project.id}/overview`);
  const item = todo.find(({ kind }: { kind: string }) => kind === 'notice-overdue');
  return { project, findingId: item?.findingId as string, title: item?.title as string };
}

test('the crew is told in both languages that a notice is overdue, and has nothing to send it with', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, 'crew');
  const { findingId } = await overdue(page);
  await page.goto(`${demo().url}/crew/findings/${findingId}`);
  const notice = page.getByRole('region', { name: 'Tell the client' });
  await expect(notice).toContainText('has not gone out. Tell the office now.');
  await expect(notice).toContainText('leave the place as it is');
  await expect(notice.getByRole('button')).toHaveCount(0);
  await page.evaluate(() => localStorage.setItem('underlath.locale', 'es'));
  await page.reload();
  await expect(page.getByRole('region', { name: 'Avisar al cliente' })).toContainText('Avise a la oficina ahora');
  const { violations } = await new AxeBuilder({ page }).withTags(wcag).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});

test('an overdue notice heads what is to do, and is sent from beside its finding with one press and a look', async ({
  page,
}) => {
  await signIn(page, 'estimator');
  const { project, findingId, title } = await overdue(page);
  await page.goto(`${demo().url}/projects/${project.id}`);
  const row = page.locator('.todo-row').filter({ hasText: 'Overdue: send the heads-up notice' });
  await expect(row).toContainText(title);
  await expect(row).toContainText('was due');
  await row.getByRole('link', { name: title }).click();
  const panel = page.getByRole('region', { name: 'Heads-up notice' });
  await expect(panel).toContainText(/Overdue by \d+ day/);
  await expect(panel.getByRole('listitem').filter({ hasText: 'Last day' })).toBeVisible();
  await panel.getByRole('button', { name: 'Send the heads-up notice' }).click();
  const dialog = page.getByRole('dialog');
  const words = dialog.getByLabel('The notice');
  await expect(words).toHaveValue(asWords(told.openWall));
  await expect(words).not.toHaveValue(/\$/);
  const { violations } = await new AxeBuilder({ page }).withTags(wcag).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await dialog.getByLabel('Language').selectOption('es');
  await expect(words).toHaveValue(/aviso previo/);
  await dialog.getByLabel('Language').selectOption('en');
  await words.fill(`${await words.inputValue()}\nCall me when you want to see it. 0417`);
  await dialog.getByRole('button', { name: 'Send it' }).click();
  await expect(dialog).toBeHidden();
  await expect(panel).toContainText(/Sent .+ after the last day\./);
  await expect(panel).toContainText(told.clientEmail);
  await expect.poll(() => letters().filter((letter) => letter.includes('want to see it. 0417')).length).toBe(1);
  await page.goto(`${demo().url}/projects/${project.id}`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.locator('.todo-row').first()).toBeVisible();
  await expect(row).toHaveCount(0);
  const after = await json(page, `/findings/${findingId}/notice`);
  expect(after.sent).toHaveLength(1);
});

test('a notice by a way the contract does not name leaves the clock running; the next way is noted', async ({
  page,
}) => {
  await signIn(page, 'estimator');
  const [project] = (await json(page, '/projects')).items;
  const { items } = await json(page, `/projects/${project.id}/findings?q=${encodeURIComponent(told.unsafe)}`);
  await page.goto(`${demo().url}/projects/${project.id}/house?place=${items[0].locationId}&finding=${items[0].id}`);
  const panel = page.getByRole('region', { name: 'Heads-up notice' });
  await expect(panel).toContainText('a method the contract does not name');
  await panel.getByRole('button', { name: 'Note one sent another way' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Note it' }).click();
  await expect(dialog.locator('[aria-invalid="true"]')).toHaveCount(2);
  await dialog.getByLabel('To whom').fill(told.clientName);
  await dialog.getByLabel('What proves it').fill('Posted at noon, receipt 12 in the folder');
  await dialog.getByRole('button', { name: 'Note it' }).click();
  await expect(dialog).toBeHidden();
  await expect(panel).toContainText(/^Heads-up noticeSent /);
  await expect(panel).not.toContainText('a method the contract does not name');
});

test('a change order for a state whose list asks for more says so, and goes out only with a reason', async ({
  page,
}) => {
  await signIn(page, 'estimator');
  const { url } = demo();
  const [project] = (await json(page, '/projects')).items;
  await page.goto(`${url}/projects/${project.id}/details`);
  await expect(page.getByLabel('State')).toHaveValue('NY');
  await page.getByLabel('Name', { exact: true }).fill(`Anselm and ${told.clientName}`);
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved').first()).toBeVisible();
  const orders = (await json(page, `/projects/${project.id}/change-orders`)).items;
  const draft = orders.find(({ state }: { state: string }) => state === 'draft');
  await page.goto(`${url}/projects/${project.id}/change-orders/${draft.id}`);
  await page.getByRole('button', { name: 'Send to the client' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('Missing: Everyone the contract names signs it.');
  await expect(dialog).toContainText('771');
  await expect(dialog).toContainText('Check with counsel');
  const { violations } = await new AxeBuilder({ page }).withTags(wcag).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await dialog.getByRole('button', { name: 'Send it' }).click();
  await expect(dialog.getByLabel('Why it goes out without it')).toHaveAttribute('aria-invalid', 'true');
  expect((await json(page, `/change-orders/${draft.id}`)).state).toBe('draft');
  // What was typed is put back, so that other tests find the demo's client and draft as they were.
  await dialog.getByRole('button', { name: 'Not yet' }).click();
  await page.goto(`${url}/projects/${project.id}/details`);
  await page.getByLabel('Name', { exact: true }).fill(project.clientName);
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved').first()).toBeVisible();
});
