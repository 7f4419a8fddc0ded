import AxeBuilder from '@axe-core/playwright';
import { type Browser, expect, type Page } from '@playwright/test';
import { openCompany } from './company.ts';
import { demo } from './demo.ts';
import { test } from './test.ts';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).withTags(tags).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
}

async function openLetter(browser: Browser, path: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, baseURL: demo().url });
  const page = await context.newPage();
  await page.goto(path);
  await expect(page.getByRole('button', { name: /Review and approve/ })).toBeVisible();
  return page;
}

test('the client leaves a finding out, sees the new price at once, and signs exactly that part', async ({
  page,
  browser,
}) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  const { api, projectId, make, cutPlate } = await openCompany(page);
  const headers = { origin: demo().url };
  const extent = { xIn: 40, yIn: 93, widthIn: 6, heightIn: 4 };
  const ids = [await cutPlate('Plate cut for a vent', extent), await cutPlate('Plate cut for a drain', extent)];
  for (const id of ids) {
    const { choices, findingVersion } = await (await page.request.get(`${api}/findings/${id}/estimate`)).json();
    const saved = await page.request.put(`${api}/findings/${id}/estimate`, {
      headers: { ...headers, 'if-match': `"${findingVersion}"` },
      data: { choices },
    });
    expect(saved.status()).toBe(200);
  }
  const order = await make(`/projects/${projectId}/change-orders`, { findingIds: ids });
  await page.goto(`${demo().url}/projects/${projectId}/change-orders/${order.id}`);
  await page.getByRole('button', { name: 'Send to the client' }).click();
  await page.getByLabel('The client may leave out single findings').check();
  await page.getByRole('button', { name: 'Send it' }).click();
  const link = await page.getByLabel('The link', { exact: true }).inputValue();
  await page.getByRole('button', { name: 'Done' }).click();
  await expect(page.getByText('The client may leave out single findings.')).toBeVisible();
  await page.getByRole('tab', { name: 'Price' }).click();
  await expect(page.getByText('Only finding 2', { exact: true })).toBeVisible();
  expect(await violations(page)).toEqual([]);

  const client = await openLetter(browser, link.match(/\/c\/\w{10}#[\w-]{43}/)?.[0] ?? '');
  const total = client.getByRole('region', { name: 'Price and your answer' }).locator('.total-main dd');
  const whole = await total.textContent();
  const done = client.getByRole('group', { name: 'What will be done' });
  await done.getByRole('checkbox', { name: /Plate cut for a drain/ }).uncheck();
  await expect(total).not.toHaveText(whole ?? '');
  const part = (await total.textContent()) ?? '';
  await expect(done).toContainText('Left out. Doing it too adds');
  await expect(client.getByText('Finding 2 is left out.')).toBeVisible();
  await expect(client.getByText(/closes the wall over finding 2/)).toBeVisible();
  await done.getByRole('checkbox', { name: /Plate cut for a vent/ }).click();
  await expect(client.getByRole('alert')).toContainText('press Decline');
  await expect(total).toHaveText(part);
  expect(await violations(client)).toEqual([]);

  await client.reload();
  await expect(total).toHaveText(part);
  await client.getByRole('button', { name: /Review and approve/ }).click();
  await expect(client.locator('.agreed')).toContainText('Left out2. Plate cut for a drain');
  await expect(client.locator('.agreed')).toContainText('for finding 1 only');
  expect(await violations(client)).toEqual([]);
  await client.getByLabel('Your full name').fill('Ines Wren');
  await client.getByRole('checkbox').check();
  await client.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(client.getByRole('heading', { name: 'You approved a part of this change' })).toBeVisible();
  await expect(client.locator('.decided')).toContainText('2. Plate cut for a drain');
  await client.context().close();

  const { approvedChangesCents } = await (await page.request.get(`${api}/projects/${projectId}/contract`)).json();
  expect(part.replace(/[^0-9]/g, '')).toBe(String(approvedChangesCents));
  await page.reload();
  await expect(page.getByText('Approved without the findings left out')).toBeVisible();
  await expect(page.getByText('To be done: 1. Plate cut for a vent.')).toBeVisible();
  await expect(page.getByText('Part approved.', { exact: true })).toBeVisible();
});
