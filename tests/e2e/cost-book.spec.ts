import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { demo } from './demo.ts';
import { test } from './test.ts';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const phone = { width: 390, height: 844 };
const desk = { width: 1440, height: 900 };

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).withTags(tags).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
}

/** A company of its own, so that the rates of the demo stay as the other tests know them. */
async function openCompany(page: Page): Promise<void> {
  const answer = await page.request.post(`${demo().url}/api/v1/companies`, {
    headers: { origin: demo().url },
    data: {
      companyName: 'Plumb & Tenon',
      name: 'Odile Marsh',
      email: `odile-${Date.now()}@plumb.example`,
      password: 'a long enough phrase for one',
    },
  });
  expect(answer.status()).toBe(201);
  await page.goto(`${demo().url}/cost-book`);
  await expect(page.getByRole('heading', { level: 1, name: 'Cost book' })).toBeVisible();
}

const grid = (page: Page, name: string) => page.getByRole('grid', { name, exact: true });
const rowOf = (page: Page, name: string, row: string) =>
  grid(page, name)
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: row, exact: true }) });
const cell = (page: Page, name: string, row: string, at: number) =>
  rowOf(page, name, row).getByRole('gridcell').nth(at);

/** As a spreadsheet puts it on the clipboard. */
const paste = (page: Page, text: string) =>
  page.evaluate((block) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', block);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
  }, text);

test('the grid of the cost book by keyboard, kept over a reload, saved as a version', async ({ page }) => {
  await page.setViewportSize(desk);
  await openCompany(page);
  const wage = cell(page, 'Trades', 'Carpenter', 0);
  await wage.click();
  await expect(wage).toBeFocused();
  await page.keyboard.type('41.5');
  await page.keyboard.press('Tab');
  await expect(wage).toHaveText('41.5');
  await expect(cell(page, 'Trades', 'Carpenter', 1)).toBeFocused();
  await expect(cell(page, 'Trades', 'Carpenter', 2)).toHaveText('$57.27');
  await page.keyboard.press('Control+z');
  await expect(wage).toHaveText('38');
  await page.keyboard.press('Control+y');
  await expect(wage).toHaveText('41.5');

  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('F2');
  await page.keyboard.type('99');
  await page.keyboard.press('Escape');
  await expect(cell(page, 'Trades', 'Laborer', 0)).toHaveText('26');
  await expect(cell(page, 'Trades', 'Laborer', 0)).toBeFocused();
  await page.keyboard.type('lots');
  await page.keyboard.press('Enter');
  await expect(cell(page, 'Trades', 'Laborer', 0)).toContainText('“lots” cannot be read; type dollars, like 38');
  await expect(cell(page, 'Trades', 'Lead-certified renovator', 0)).toBeFocused();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Save as version 2' }).click();
  await expect(page.getByRole('alert')).toContainText('Nothing was sent yet');
  await page.getByRole('button', { name: 'Go to the first marked answer' }).click();
  await expect(cell(page, 'Trades', 'Laborer', 0)).toBeFocused();
  await paste(page, '29\r\n47.25\r\n');
  await expect(cell(page, 'Trades', 'Laborer', 0)).toHaveText('29');
  await expect(cell(page, 'Trades', 'Lead-certified renovator', 0)).toHaveText('47.25');

  const low = cell(page, 'Work, per unit', 'New structural panel', 2);
  await low.click();
  await paste(page, '0.03\t0.02\t0.08');
  await expect(low).toContainText('has to be low up to likely up to high');
  await paste(page, '0.03\t0.04\t0.08');
  await expect(low).toHaveText('0.03');

  await page.reload();
  await expect(page.getByText('Not saved yet.')).toBeVisible();
  await expect(wage).toHaveText('41.5');
  await expect(low).toHaveText('0.03');
  await page.getByLabel(/These are our own rates/).check();
  await page.getByRole('button', { name: 'Save as version 2' }).click();
  await expect(page.getByText('Version 2, ').first()).toBeVisible();
  await expect(page.getByText('Not saved yet.')).toHaveCount(0);
  await expect(page.getByText('Invented starter values.')).toHaveCount(0);
  await page.reload();
  await expect(wage).toHaveText('41.50');
});

test('a profit typed as margin shows its markup, and the other way around', async ({ page }) => {
  await openCompany(page);
  const [markup, margin] = [page.getByLabel(/^Profit, markup/), page.getByLabel(/^The same profit as margin/)];
  await margin.fill('20');
  await expect(markup).toHaveValue('25');
  await markup.fill('50');
  await expect(margin).toHaveValue('33.33');
  await expect(page.getByText(/Together: a markup of/)).toContainText(
    '77% on cost, which is a margin of 43.5% of the price',
  );
});

test('the cost book as CSV: out, refused cell by cell, compared, saved, and back to the version before', async ({
  page,
}) => {
  await page.setViewportSize(desk);
  await openCompany(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Download the saved book' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('cost-book-1.csv');
  const csv = await readFile(await download.path(), 'utf8');
  const choose = (text: string) =>
    page
      .getByLabel('Compare a file with the saved book')
      .setInputFiles({ name: 'rates.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

  await choose(csv);
  await expect(page.getByText('Nothing differs.')).toBeVisible();
  await choose(csv.replace(',38.00,', ',forty,'));
  await expect(page.getByText(/Row 3, wage_usd_per_hour: has to be US dollars .*; it was “forty”$/)).toBeVisible();
  expect(await violations(page)).toEqual([]);

  await choose(csv.replace(',38.00,', ',40.00,'));
  const changed = page.getByRole('row', { name: /Changed\. Trade: Carpenter/ });
  await expect(changed).toContainText('wage, $ per hour: 38.00');
  await expect(changed).toContainText('wage, $ per hour: 40.00');
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Save the file as version 2' }).click();
  await expect(cell(page, 'Trades', 'Carpenter', 0)).toHaveText('40');

  await page.getByRole('button', { name: /What it changed.*version 1$/ }).click();
  await page.getByRole('button', { name: 'Go back to version 1, as version 3' }).click();
  await expect(cell(page, 'Trades', 'Carpenter', 0)).toHaveText('38');
  await page.getByRole('button', { name: /What it changed.*version 3$/ }).click();
  await expect(page.getByRole('row', { name: /Changed\. Trade: Carpenter/ })).toContainText('40.00');
  expect(await violations(page)).toEqual([]);
});

test('on a phone only the grid scrolls sideways, and a tap on the active cell edits it', async ({ page }) => {
  await page.setViewportSize(phone);
  await openCompany(page);
  expect(await violations(page)).toEqual([]);
  const sidewaysPx = () =>
    page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(await sidewaysPx()).toBe(0);
  const low = cell(page, 'Work, per unit', 'New structural panel', 2);
  await low.click();
  await low.click();
  await page.getByLabel('Hours, low, New structural panel').fill('7');
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(low).toContainText('has to be low up to likely up to high');
  expect(await sidewaysPx()).toBe(0);
});

test('work a book has no rate for is named and added with values that say they are invented', async ({ page }) => {
  await openCompany(page);
  const { version, book } = await (await page.request.get(`${demo().url}/api/v1/cost-book`)).json();
  const items = book.items.filter(({ operation }: { operation: string }) => operation !== 'panel-blocking');
  const saved = await page.request.put(`${demo().url}/api/v1/cost-book`, {
    headers: { origin: demo().url, 'if-match': `"${version}"` },
    data: { book: { ...book, items, placeholder: false } },
  });
  expect(saved.status()).toBe(200);
  await page.reload();
  await expect(page.getByText('1 kind of work has no rate in this book')).toBeVisible();
  await page.getByRole('button', { name: /Add them with invented starter values/ }).click();
  const row = grid(page, 'Work, per unit').getByRole('row').last();
  await expect(row.getByRole('gridcell').last()).toHaveText('yes');
  await page.getByRole('button', { name: `Save as version ${version + 2}` }).click();
  await expect(page.getByText('Some rows still hold invented starter values')).toBeVisible();
});
