import AxeBuilder from '@axe-core/playwright';
import { expect, type Locator, type Page } from '@playwright/test';
import { asWords, demo, signIn, told } from './demo.ts';
import { test } from './test.ts';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const usd = (cents: number) =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(cents / 100);

/** The first payment that nothing has settled yet. */
const next = told.payments.find(({ key }) => !told.paidKeys.has(key))?.name ?? '';
let projectId: string;
const read = async (page: Page, path: string) => (await page.request.get(`${demo().url}/api/v1${path}`)).json();
const contract = (page: Page) => read(page, `/projects/${projectId}/contract`);
const part = (page: Page, title: string): Locator =>
  page.locator('section.part').filter({ has: page.getByRole('heading', { name: title, exact: true, level: 2 }) });

async function violations(page: Page): Promise<string[]> {
  // A box half under the strip that stays at the top counts as a small target.
  await page.evaluate(() => window.scrollTo(0, 0));
  const { violations: found } = await new AxeBuilder({ page }).withTags(tags).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`);
}

test.beforeEach(async ({ page }) => {
  await signIn(page, 'estimator');
  projectId = (await read(page, '/projects')).items[0].id;
  await page.goto(`${demo().url}/projects/${projectId}/contract`);
  await expect(part(page, 'Ledger')).toBeVisible();
});

test('the plot says in words what it draws, and the table under it ends with the sum the contract has', async ({
  page,
}) => {
  const { currentSumCents, originalSumCents } = await contract(page);
  const sum = part(page, 'The sum');
  const trimmed = (cents: number) => usd(cents).replace(/\.00$/, '');
  const plot = sum.getByRole('img', { name: /^Contract sum over time/ });
  await expect(plot).toHaveAccessibleName(new RegExp(`from ${trimmed(originalSumCents).replace('$', '\\$')} on `));
  await expect(plot).toHaveAccessibleName(asWords(`${told.allowance}: $`));
  await expect(sum.getByRole('row').filter({ hasText: 'Contract now' })).toContainText(usd(currentSumCents));
});

test('a payment is entered by keyboard, settles its place in the plan, and is taken back with a reason', async ({
  page,
}) => {
  const before = await contract(page);
  const work = part(page, 'Work and payments');
  await work.getByText('Enter a payment or completed work').focus();
  await page.keyboard.press('Enter');
  await work.getByRole('button', { name: 'Enter it' }).click();
  await expect(work.getByText('What it is for is missing.', { exact: true })).toBeVisible();
  await work.getByLabel('It settles').selectOption({ index: 1 });
  await expect(work.getByLabel('What it is for')).toHaveValue(next);
  await work.getByLabel('Amount, $').fill('9,286');
  await work.getByLabel('Amount, $').press('Enter');
  const row = work.getByRole('listitem').filter({ hasText: next });
  await expect(row).toContainText('$9,286.00');
  await expect(part(page, 'Payments and waiting changes').getByRole('row', { name: asWords(next) })).toContainText(
    'settled',
  );
  await expect.poll(async () => (await contract(page)).money.paidCents).toBe(before.money.paidCents + 928_600);
  const effect = (await contract(page)).effects.find(({ cents }: { cents: number }) => cents > 0);
  expect(effect.payments).toHaveLength(2);

  await row.getByRole('button', { name: `Take back ${next}` }).click();
  await row.getByLabel('Why it is taken back').fill('Bounced');
  await row.getByRole('button', { name: 'Take it back' }).click();
  await expect(row).toContainText('taken back: Bounced');
  await expect.poll(async () => (await contract(page)).money).toEqual(before.money);
});

test('an overspent allowance lifts the sum by what is over and its percent, and draws on the contingency', async ({
  page,
}) => {
  const before = await contract(page);
  const allowances = part(page, 'Allowances');
  await allowances.getByText('Settle an allowance').click();
  await allowances.getByLabel('Allowance', { exact: true }).fill('Porch lamps');
  await allowances.getByLabel('Allowed, $').fill('100');
  await allowances.getByLabel('Spent, $').fill('120');
  await allowances.getByLabel(/Overhead and profit/).fill('25');
  await allowances.getByRole('button', { name: 'Settle it' }).click();
  const row = allowances.getByRole('listitem').filter({ hasText: 'Porch lamps' });
  await expect(row).toContainText('+$25.00');
  await expect(part(page, 'Contingency').getByRole('row', { name: /Porch lamps/ })).toContainText('$25.00');
  const after = await contract(page);
  expect(after.currentSumCents).toBe(before.currentSumCents + 2500);
  expect(after.contingency.usedCents).toBe(before.contingency.usedCents + 2500);
  await row.getByRole('button', { name: /^Take back/ }).click();
  await row.getByLabel('Why it is taken back').fill('Only tried');
  await row.getByRole('button', { name: 'Take it back' }).click();
  await expect.poll(async () => (await contract(page)).currentSumCents).toBe(before.currentSumCents);
});

test('terms are changed in their form, what is left over of the sum is said, and nothing typed is lost', async ({
  page,
}) => {
  const terms = part(page, 'Terms');
  const before = await read(page, `/projects/${projectId}/contract/terms`);
  await terms.getByRole('button', { name: 'Change the terms' }).click();
  await expect(terms.getByRole('status').filter({ hasText: 'In payments' })).toContainText(
    `${usd(told.originalSumCents)} of ${usd(told.originalSumCents)}`,
  );
  const last = terms.getByLabel(`Amount of payment ${told.payments.length}, $`);
  await last.fill('12,000');
  const leftCents = (told.payments.at(-1)?.cents ?? 0) - 1_200_000;
  await expect(terms.getByText(`${usd(leftCents)} is left over.`)).toBeVisible();
  await terms.getByLabel('Retainage, %').fill('110');
  await terms.getByRole('button', { name: 'Save the terms' }).click();
  await expect(terms.getByRole('alert')).toBeVisible();
  await expect(last).toHaveValue('12,000');
  for (const size of [
    { width: 1440, height: 900 },
    { width: 390, height: 844 },
  ]) {
    await page.setViewportSize(size);
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(
      0,
    );
  }
  await terms.getByLabel('Retainage, %').fill(String(told.retainagePct + 2));
  await terms.getByRole('button', { name: 'Save the terms' }).click();
  await expect(terms.getByText(`${told.retainagePct + 2}%`, { exact: true })).toBeVisible();
  await expect(page.getByText('of the original sum is in no payment.')).toBeVisible();
  const { version, changedAt: _at, ...body } = before;
  const put = await page.request.put(`${demo().url}/api/v1/projects/${projectId}/contract/terms`, {
    data: body,
    headers: { 'if-match': `"${version + 1}"`, origin: demo().url },
  });
  expect(put.status()).toBe(200);
});

test('the ledger ends where the contract stands and is downloaded as a file with the same lines', async ({ page }) => {
  const ledger = part(page, 'Ledger');
  const { currentSumCents } = await contract(page);
  const rows = ledger.locator('tbody tr');
  await expect(rows.last()).toContainText(usd(currentSumCents));
  const waiting = page.waitForEvent('download');
  await ledger.getByRole('link', { name: 'Download as CSV' }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toBe('contract-ledger.csv');
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  const lines = Buffer.concat(chunks).toString('utf8').trim().split('\r\n');
  expect(lines).toHaveLength((await rows.count()) + 1);
  expect(lines.at(-1)).toContain(`,${(currentSumCents / 100).toFixed(2)},`);
});
