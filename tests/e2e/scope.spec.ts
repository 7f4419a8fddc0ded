import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { asWords, demo, signIn, told } from './demo.ts';
import { test } from './test.ts';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function wallOf(page: Page): Promise<{ projectId: string; wallId: string }> {
  const list = async (path: string) => (await (await page.request.get(`${demo().url}/api/v1${path}`)).json()).items;
  const [project] = await list('/projects');
  const places: { id: string; name: string }[] = await list(`/projects/${project.id}/locations`);
  return { projectId: project.id, wallId: places.find(({ name }) => name === told.openWall)?.id ?? '' };
}

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
  ).toEqual([]);
}

test('the last step of the crew lights up on a drawing that is still in sight', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, 'crew');
  const { projectId, wallId } = await wallOf(page);
  await page.goto(`${demo().url}/crew/${projectId}/places/${wallId}/steps`);
  const close = page.getByRole('button', { name: /Close the finish/ });
  await close.click();
  await expect(close).toHaveAttribute('aria-pressed', 'true');
  await expect(page.locator('.scope-lit').first()).toBeInViewport();
  await expectAccessible(page);
});

test('no step reached with the Tab key is hidden under the drawing', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, 'estimator');
  const { projectId, wallId } = await wallOf(page);
  await page.goto(`${demo().url}/projects/${projectId}/places/${wallId}/scope`);
  const steps = page.locator('.scope-step');
  await steps.last().focus();
  for (let at = (await steps.count()) - 1; at > 0; at--) {
    await page.keyboard.press('Shift+Tab');
    const focused = await steps.nth(at - 1).boundingBox();
    const drawing = await page.locator('.scope-drawing').boundingBox();
    expect(focused?.y).toBeGreaterThanOrEqual((drawing?.y ?? 0) + (drawing?.height ?? 0));
  }
});

test('the scope of the office at the desk and on a phone, a step lit and a finding left out', async ({ page }) => {
  await signIn(page, 'estimator');
  const { projectId, wallId } = await wallOf(page);
  for (const viewport of [
    { width: 1440, height: 900 },
    { width: 320, height: 640 },
  ]) {
    await page.setViewportSize(viewport);
    await page.goto(`${demo().url}/projects/${projectId}/places/${wallId}/scope`);
    await page.getByRole('button', { name: /Open the finish/ }).click();
    await page.getByLabel(asWords(told.inOneSpot)).uncheck();
    await expect(page.getByRole('row', { name: asWords(told.inOneSpot) })).toHaveCount(0);
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(
      0,
    );
  }
});

test('a server that does not answer is said, and asked again', async ({ page }) => {
  await signIn(page, 'estimator');
  const { projectId, wallId } = await wallOf(page);
  const scopeAnswers = /\/api\/v1\/locations\/[^/]+\/scope/;
  await page.route(scopeAnswers, (route) => route.abort());
  await page.goto(`${demo().url}/projects/${projectId}/places/${wallId}/scope`);
  const alert = page.getByRole('alert').filter({ has: page.getByRole('button') });
  await expect(alert).toBeVisible({ timeout: 20_000 });
  await page.unroute(scopeAnswers);
  await alert.getByRole('button').click();
  await expect(page.locator('.scope-answer')).toBeVisible();
});
