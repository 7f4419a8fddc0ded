import AxeBuilder from '@axe-core/playwright';
import { expect } from '@playwright/test';
import { demo, signIn } from './demo.ts';
import { test } from './test.ts';

test('what an approved repair took is entered beside what was planned, and the cost book shows it and stays', async ({
  page,
}) => {
  await signIn(page, 'estimator');
  const read = async (path: string) => (await (await page.request.get(`${demo().url}/api/v1${path}`)).json()).items;
  const [project] = await read('/projects');
  const [finding] = await read(`/projects/${project.id}/findings?state=approved`);
  await page.goto(`${demo().url}/projects/${project.id}/house?place=${finding.locationId}&finding=${finding.id}`);
  const panel = page.locator('.side-panel');
  await expect(panel.getByRole('heading', { name: 'Actuals' })).toBeVisible();
  await panel.getByText('Enter hours and cost').click();
  await panel.getByLabel('Work').selectOption({ label: 'Blocking behind the panel edge, per ft' });
  await panel.getByRole('button', { name: 'Enter it' }).click();
  await expect(panel.getByText('How much was done is missing.', { exact: true })).toBeVisible();
  await panel.getByLabel('How much was done').fill('2');
  await panel.getByLabel('Hours, all hands together').fill('3.5');
  await panel.getByLabel('Other costs, $').fill('42');
  await panel.getByRole('button', { name: 'Enter it' }).click();
  const row = panel.getByRole('row').filter({ hasText: 'Blocking behind the panel edge' });
  await expect(row).toContainText('3.5');
  await expect(row).toContainText('$42');

  await page.goto(`${demo().url}/cost-book`);
  const said = page.getByRole('row').filter({ hasText: 'Blocking behind the panel edge' }).filter({ hasText: '1 job' });
  await expect(said).toContainText('1.75');
  const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag22aa']).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});
