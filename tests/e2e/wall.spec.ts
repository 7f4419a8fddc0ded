import { expect, type Page, test } from '@playwright/test';
import { demo, signIn } from './demo.ts';

/** To the garage wall of the demo. */
async function openWall(page: Page): Promise<void> {
  await signIn(page, 'estimator');
  const read = async (path: string) => (await (await page.request.get(`${demo().url}/api/v1${path}`)).json()).items;
  const [project] = await read('/projects');
  const places: { id: string; name: string }[] = await read(`/projects/${project.id}/locations`);
  const wall = places.find(({ name }) => name === 'Garage, north wall');
  await page.goto(`${demo().url}/projects/${project.id}/house?place=${wall?.id}`);
  await expect(page.getByRole('heading', { level: 1, name: 'Garage, north wall' })).toBeVisible();
}

test('the wall is read as a chain, a repair is tried on it, and a link is marked seen sound by its photo', async ({
  page,
}) => {
  await openWall(page);
  await page.getByRole('link', { name: /Load path/ }).click();
  const chain = page.getByRole('region', { name: 'The chain, link by link' });
  const right = chain.getByRole('listitem').filter({ hasText: 'Hold-down, right' });
  await expect(right).toContainText('0% left');
  await expect(right).toContainText('weakest');
  await expect(chain.getByRole('listitem').filter({ hasText: 'Footing' })).toContainText('not seen');

  await page.getByText('What if some of it is repaired?').click();
  await page.getByLabel(/If “3\..*” is repaired/).check();
  await expect(page.getByText('What if, not what is.')).toBeVisible();
  await expect(right).toContainText('seen sound');
  await expect(right).not.toContainText('weakest');
  await page.getByLabel(/If “3\..*” is repaired/).uncheck();
  await expect(right).toContainText('0% left');

  await page.getByRole('button', { name: 'Change the links' }).click();
  const footing = page.getByRole('group', { name: 'What was seen of Footing' });
  await footing.getByLabel('Seen sound').check();
  await page.getByRole('button', { name: 'Save the load path' }).click();
  await expect(page.getByText(/choose the photo that shows it/).first()).toBeVisible();
  await page.getByLabel('The photo that shows it').last().selectOption({ index: 1 });
  await page.getByRole('button', { name: 'Save the load path' }).click();
  await expect(chain.getByRole('listitem').filter({ hasText: 'Footing' })).toContainText('seen sound');
});

test('the scope of the wall lights up each step, waits at its hold points, and works out again what is left out', async ({
  page,
}) => {
  await openWall(page);
  await page.getByRole('link', { name: /Repair scope/ }).click();
  const steps = page.getByRole('button', { pressed: false }).filter({ hasText: 'Open the finish' });
  await steps.focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.scope-lit').first()).toBeVisible();
  await expect(page.getByText('Where: Open the finish')).toBeVisible();
  await expect(page.getByText('Hold point').first()).toBeVisible();

  const hours = page.locator('.scope-answer');
  const before = await hours.textContent();
  await page.getByLabel(/^2\. Left hold-down/).uncheck();
  await expect(hours).not.toHaveText(before ?? '');
  await page.getByLabel(/^2\. Left hold-down/).check();
  await expect(hours).toHaveText(before ?? '');
});

test('the crew has the same steps, in Spanish too', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, 'crew');
  await page.evaluate(() => localStorage.setItem('underlath.locale', 'es'));
  await page.goto(`${demo().url}/crew`);
  await page.getByRole('link', { name: /Arden-Rowe/ }).click();
  await page
    .getByRole('link', { name: /Garage, north wall/ })
    .first()
    .click();
  await page.getByRole('link', { name: /paso a paso/ }).click();
  await expect(page.getByText('Punto de espera').first()).toBeVisible();
  const first = page.locator('.scope-step').first();
  expect((await first.boundingBox())?.height).toBeGreaterThanOrEqual(56);
});
