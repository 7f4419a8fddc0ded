import AxeBuilder from '@axe-core/playwright';
import { expect, type Locator, type Page } from '@playwright/test';
import { openCompany } from './company.ts';
import { demo } from './demo.ts';
import { test } from './test.ts';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const phone = { width: 390, height: 844 };
const desk = { width: 1440, height: 900 };
const reason = 'Measured again on site';

async function violations(page: Page): Promise<string[]> {
  // Scrolled, the bar at the top covers half a box, and that is measured as a box too small.
  await page.evaluate(() => window.scrollTo(0, 0));
  const { violations: found } = await new AxeBuilder({ page }).withTags(tags).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
}

async function openEstimate(page: Page): Promise<{ api: string; projectId: string; findingId: string }> {
  const { api, projectId, cutPlate } = await openCompany(page);
  const findingId = await cutPlate('Plate cut for a vent');
  await page.goto(`${demo().url}/projects/${projectId}/findings/${findingId}/price`);
  await expect(page.getByRole('heading', { level: 1, name: 'Scope and price' })).toBeVisible();
  return { api, projectId, findingId };
}

const grid = (page: Page) => page.getByRole('grid', { name: 'Lines of the estimate' });
const rowOf = (page: Page, name: string) =>
  grid(page)
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name, exact: true }) });
/** Cells after the name: 0 kind, 1 quantity, 2 unit, 3 hours, 4 material, … 8 total, 9 why. */
const cell = (page: Page, name: string, at: number) => rowOf(page, name).getByRole('gridcell').nth(at);
const total = (page: Page) => page.locator('.estimate-bar dd').first();
const textOf = async (locator: Locator): Promise<string> => (await locator.textContent()) ?? '';
const nails = 'Nails in the tie';

test('a line is set by hand with a reason by keyboard, undone, done again, saved, and is in the price of the change order', async ({
  page,
}) => {
  await page.setViewportSize(desk);
  const { api, projectId, findingId } = await openEstimate(page);
  const before = await textOf(total(page));
  const quantity = cell(page, nails, 1);
  const measured = await textOf(quantity);
  await quantity.click();
  await page.keyboard.type('40');
  await page.keyboard.press('Tab');
  await expect(quantity).toHaveText('40');
  await expect(cell(page, nails, 9)).toContainText('A reason is missing');
  await page.keyboard.press('Control+z');
  await expect(quantity).toHaveText(measured);
  await expect(cell(page, nails, 0)).toHaveText('by the book');
  await page.keyboard.press('Control+y');
  await expect(quantity).toHaveText('40');

  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  await expect(cell(page, nails, 9)).toBeFocused();
  await page.keyboard.type(reason);
  await page.keyboard.press('Enter');
  await expect(cell(page, nails, 9)).toHaveText(`quantity was ${measured}, is 40: ${reason}`);
  await expect(total(page)).not.toHaveText(before);
  await expect(page.getByText('Worked out with what you typed; not saved yet.')).toBeVisible();
  const after = await textOf(total(page));
  expect(await violations(page)).toEqual([]);

  await page.reload();
  await expect(page.getByText('Not saved yet.', { exact: true })).toBeVisible();
  await expect(cell(page, nails, 1)).toHaveText('40');
  await page.getByRole('button', { name: 'Save price' }).click();
  await expect(page.getByText('Not saved yet.')).toHaveCount(0);
  await expect(total(page)).toHaveText(after);

  const order = await page.request.post(`${api}/projects/${projectId}/change-orders`, {
    headers: { origin: demo().url },
    data: { findingIds: [findingId] },
  });
  const { id } = await order.json();
  await page.goto(`${demo().url}/projects/${projectId}/change-orders/${id}`);
  await page.getByRole('tab', { name: 'Price' }).click();
  await expect(page.getByText(`By hand: quantity was ${measured}, is 40: ${reason}`).first()).toBeVisible();
  await expect(page.locator('.price-foot tr').last()).toContainText(after);
});

test('what a line is made of opens beside the grid, and the book comes back from there', async ({ page }) => {
  await page.setViewportSize(desk);
  await openEstimate(page);
  const before = await textOf(total(page));
  const hours = cell(page, 'Metal tie over the cut plate', 3);
  await hours.click();
  await page.keyboard.type('2.5');
  await page.keyboard.press('Enter');
  await cell(page, 'Metal tie over the cut plate', 3).click();
  const reasonPart = page.getByRole('region', { name: /Metal tie over the cut plate/ });
  await expect(reasonPart).toContainText('hours each was 0.75, is 2.5');
  await expect(reasonPart).toContainText('2.5 h');
  await expect(total(page)).not.toHaveText(before);
  await reasonPart.getByRole('button', { name: 'Back to what was measured and the book' }).click();
  await expect(hours).toHaveText('0.75');
  await expect(total(page)).toHaveText(before);
});

test('lines pasted from a spreadsheet, a credit, an allowance, what is not covered, another way; all in the letter', async ({
  page,
}) => {
  await page.setViewportSize(desk);
  const { api, projectId, findingId } = await openEstimate(page);
  await page.getByRole('button', { name: 'Add a line', exact: true }).first().click();
  await expect(page.locator('[data-active]').first()).toBeFocused();
  await page.evaluate(() => {
    const clipboardData = new DataTransfer();
    const rows = [
      'Crane\tcharge\t0.5\tday\t1,234.56\tNo other access\tGrúa',
      'Old vent not moved\tcredit\t1\teach\t80\tLeft as it is\tVentilación',
      'Tile\tallowance\t1\teach\t500\tNot chosen yet\tAzulejo',
    ];
    clipboardData.setData('text/plain', `${rows.join('\r\n')}\r\n`);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
  });
  await expect(cell(page, 'Crane', 8)).toHaveText('$617.28');
  await expect(cell(page, 'Old vent not moved', 8)).toHaveText('-$80.00');
  await expect(cell(page, 'Tile', 0)).toHaveText('allowance');

  await page.getByRole('button', { name: 'Add what is not covered' }).click();
  await page.getByLabel('Not covered, 1').fill('Painting the wall.');
  await page.getByLabel('The same in Spanish, 1').fill('Pintar la pared.');
  await page.getByRole('button', { name: 'Add another way' }).click();
  await page.getByLabel('Name in the letter').fill('A strap of steel');
  await page.getByLabel('Name in Spanish', { exact: true }).fill('Una cinta de acero');
  await page.getByLabel('Another repair').selectOption({ label: 'Sister the stud' });
  await page.getByRole('button', { name: 'Take it into this way' }).click();
  await expect(page.locator('.alternate-price')).toContainText('Instead of the price above');
  await page.getByRole('button', { name: 'Save price' }).click();
  await expect(page.getByText('Not saved yet.')).toHaveCount(0);
  expect(await violations(page)).toEqual([]);

  const headers = { origin: demo().url };
  const made = await page.request.post(`${api}/projects/${projectId}/change-orders`, {
    headers,
    data: { findingIds: [findingId] },
  });
  const { id, version } = await made.json();
  const sent = await page.request.post(`${api}/change-orders/${id}/send`, {
    headers: { ...headers, 'if-match': `"${version}"` },
    data: {},
  });
  const { link } = await sent.json();
  await page.goto(demo().url + new URL(link).pathname + new URL(link).hash);
  await page.getByRole('button', { name: 'English' }).click();
  await expect(page.getByText('Painting the wall.')).toBeVisible();
  await expect(page.getByText('A strap of steel').first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Allowances in this price' })).toBeVisible();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.getByText('Pintar la pared.')).toBeVisible();
  await expect(page.getByText('Una cinta de acero').first()).toBeVisible();
  await page.getByText('Ver el precio línea por línea').click();
  await expect(page.getByText('Partida por definir: se ajusta al costo real')).toBeVisible();
  await page.getByRole('button', { name: /^Prefiero esta manera/ }).click();
  await expect(page.locator('textarea')).toHaveValue(/otra manera para el hallazgo 1: Una cinta de acero/);
});

test('another way is priced line by line, taken up as the repair, and undone', async ({ page }) => {
  await page.setViewportSize(desk);
  await openEstimate(page);
  const before = await textOf(total(page));
  await page.getByRole('button', { name: 'Add another way' }).click();
  await page.getByLabel('Name in the letter').fill('A strap of steel');
  await page.getByLabel('Name in Spanish', { exact: true }).fill('Una cinta de acero');
  await page.getByLabel('Another repair').selectOption({ label: 'Sister the stud' });
  await page.getByRole('button', { name: 'Take it into this way' }).click();
  const lines = page.getByRole('grid', { name: 'Lines of A strap of steel' });
  await expect(lines.getByRole('row')).not.toHaveCount(0);
  const first = lines.getByRole('row').nth(1).getByRole('gridcell').nth(1);
  await first.click();
  await page.keyboard.type('7');
  await page.keyboard.press('Enter');
  await expect(first).toHaveText('7');
  await expect(lines.getByText('A reason is missing')).toBeVisible();

  await page.getByRole('button', { name: /^Make this the repair.*A strap of steel$/ }).click();
  await expect(grid(page).getByRole('row').nth(1).getByRole('gridcell').nth(1)).toHaveText('7');
  await expect(page.getByLabel('Name in the letter')).toHaveValue('Tie the cut plate with metal');
  await expect(total(page)).not.toHaveText(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByLabel('Name in the letter')).toHaveValue('A strap of steel');
  await expect(total(page)).toHaveText(before);
});

test('without an answer of the server what was typed is kept, and it is saved once there is one', async ({ page }) => {
  await page.setViewportSize(desk);
  await openEstimate(page);
  const quantity = cell(page, nails, 1);
  await quantity.click();
  await page.route('**/api/v1/findings/**', (route) => route.abort());
  await page.keyboard.type('24');
  await page.keyboard.press('Enter');
  await cell(page, nails, 9).click();
  await page.keyboard.type(reason);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Not worked out anew/)).toBeVisible({ timeout: 20_000 });
  await page.getByRole('button', { name: 'Save price' }).click();
  await expect(page.getByRole('alert')).toBeVisible({ timeout: 20_000 });
  await expect(quantity).toHaveText('24');
  await page.unroute('**/api/v1/findings/**');
  await page.getByRole('button', { name: 'Save price' }).click();
  await expect(page.getByText('Not saved yet.')).toHaveCount(0);
  await expect(quantity).toHaveText('24');
});

test('on a phone the lines are a list with the same actions', async ({ page }) => {
  await page.setViewportSize(phone);
  await openEstimate(page);
  await expect(page.getByRole('grid')).toHaveCount(0);
  const line = page.getByRole('listitem').filter({ hasText: nails });
  await line.getByText('How it came about').click();
  await expect(line).toContainText('Nails asked on both sides');
  await line.getByRole('button', { name: 'Change' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Quantity').fill('30');
  await dialog.getByRole('button', { name: 'Take it' }).click();
  await expect(line).toContainText('A reason is missing');
  await line.getByRole('button', { name: 'Change' }).click();
  await dialog.getByLabel('Why').fill(reason);
  await dialog.getByRole('button', { name: 'Take it' }).click();
  await expect(line).toContainText(`is 30: ${reason}`);
  expect(await violations(page)).toEqual([]);
  const sidewaysPx = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(sidewaysPx).toBe(0);
});
