import { expect, type Page } from '@playwright/test';
import { asWords, demo, signIn, told } from './demo.ts';
import { test } from './test.ts';

/** To a wall of the demo. */
async function openWall(page: Page, wallName: string): Promise<void> {
  await signIn(page, 'estimator');
  const read = async (path: string) => (await (await page.request.get(`${demo().url}/api/v1${path}`)).json()).items;
  const [project] = await read('/projects');
  const places: { id: string; name: string }[] = await read(`/projects/${project.id}/locations`);
  const wall = places.find(({ name }) => name === wallName);
  await page.goto(`${demo().url}/projects/${project.id}/house?place=${wall?.id}`);
  await expect(page.getByRole('heading', { level: 1, name: wallName })).toBeVisible();
}

test('the wall is read as a chain, a repair is tried on it, and a link is marked seen sound by its photo', async ({
  page,
}) => {
  await openWall(page, told.chainWall);
  await page.getByRole('link', { name: /Load path/ }).click();
  const chain = page.getByRole('region', { name: told.chain });
  const panels = chain.getByRole('listitem').filter({ hasText: told.panelLink });
  await expect(panels).toContainText('0% left');
  await expect(panels).toContainText('weakest');
  await expect(chain.getByRole('listitem').filter({ hasText: told.lastLink })).toContainText('not seen');

  await page.getByText('What if some of it is repaired?').click();
  await page.getByLabel(asWords(`${told.cutPanels}” is repaired`)).check();
  await expect(page.getByText('What if, not what is.')).toBeVisible();
  await expect(panels).toContainText('seen sound');
  await expect(panels).not.toContainText('0% left');
  await page.getByLabel(asWords(`${told.cutPanels}” is repaired`)).uncheck();
  await expect(panels).toContainText('0% left');

  await page.getByRole('button', { name: 'Change the links' }).click();
  const footing = page.getByRole('group', { name: `What was seen of ${told.lastLink}` });
  await footing.getByLabel('Seen sound').check();
  await page.getByRole('button', { name: 'Save the load path' }).click();
  await expect(page.getByText(/choose the photo that shows it/).first()).toBeVisible();
  await page.getByLabel('The photo that shows it').last().selectOption({ index: 1 });
  await page.getByRole('button', { name: 'Save the load path' }).click();
  await expect(chain.getByRole('listitem').filter({ hasText: told.lastLink })).toContainText('seen sound');
});

test('the scope of the wall lights up each step, waits at its hold points, and works out again what is left out', async ({
  page,
}) => {
  await openWall(page, told.openWall);
  await page.getByRole('link', { name: /Repair scope/ }).click();
  const steps = page.getByRole('button', { pressed: false }).filter({ hasText: 'Open the finish' });
  await steps.focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.scope-lit').first()).toBeVisible();
  await expect(page.getByText('Where: Open the finish')).toBeVisible();
  await expect(page.getByText('Hold point').first()).toBeVisible();

  const hours = page.locator('.scope-answer');
  const before = await hours.textContent();
  await page.getByLabel(asWords(told.inOneSpot)).uncheck();
  await expect(hours).not.toHaveText(before ?? '');
  await page.getByLabel(asWords(told.inOneSpot)).check();
  await expect(hours).toHaveText(before ?? '');
});

test('the crew has the same steps, in Spanish too', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, 'crew');
  await page.evaluate(() => localStorage.setItem('underlath.locale', 'es'));
  await page.goto(`${demo().url}/crew`);
  await page.getByRole('link', { name: asWords(told.name) }).click();
  await page
    .getByRole('link', { name: asWords(told.openWall) })
    .first()
    .click();
  await page.getByRole('link', { name: /paso a paso/ }).click();
  await expect(page.getByText('Punto de espera').first()).toBeVisible();
  const first = page.locator('.scope-step').first();
  expect((await first.boundingBox())?.height).toBeGreaterThanOrEqual(56);
});
