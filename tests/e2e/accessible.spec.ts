import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { asWords, demo, signIn, told } from './demo.ts';
import { test } from './test.ts';

/** WCAG 2.2 AA; the target-size rule is off unless its tag is named. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const phone = { width: 390, height: 844 };
const desk = { width: 1440, height: 900 };

// biome-ignore lint/suspicious/noExplicitAny: the answers are only used for their ids
type Row = Record<string, any>;
const list = async (page: Page, path: string): Promise<Row[]> =>
  (await (await page.request.get(`${demo().url}/api/v1${path}`)).json()).items;

async function violations(page: Page): Promise<string[]> {
  await page.waitForLoadState('networkidle');
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();
  const { violations: found } = await new AxeBuilder({ page }).withTags(tags).analyze();
  return found.map(
    ({ id, nodes }) => `${page.url()} ${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
  );
}

/** Nothing sticks out sideways at 320 px, where 400% zoom lands (WCAG 1.4.10). */
async function sidewaysPx(page: Page): Promise<number> {
  await page.setViewportSize({ width: 320, height: 640 });
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

test('sign-in, opening a company, and getting back in', async ({ page }) => {
  const token = 'a'.repeat(43);
  for (const path of ['/sign-in', '/start', '/forgot', `/new-password#${token}`, `/confirm-email#${token}`]) {
    await page.goto('about:blank');
    await page.goto(demo().url + path);
    expect(await violations(page)).toEqual([]);
    expect(await sidewaysPx(page), path).toBe(0);
  }
});

test('the screens of the crew, in both languages, with actions for a gloved hand', { tag: '@long' }, async ({
  page,
}) => {
  await page.setViewportSize(phone);
  await signIn(page, 'crew');
  const projectId = (await list(page, '/projects'))[0]?.id;
  const wall = (await list(page, `/projects/${projectId}/locations`)).find(({ name }) => name === told.openWall);
  const [finding] = await list(page, `/projects/${projectId}/findings?severity=make-safe`);
  const paths = [
    '/crew',
    `/crew/${projectId}`,
    `/crew/${projectId}/places/${wall?.id}`,
    `/crew/${projectId}/places/${wall?.id}/steps`,
    `/crew/findings/${finding?.id}`,
    `/crew/findings/${finding?.id}/measure`,
    '/crew/unsent',
    '/crew/account',
  ];
  for (const language of ['en', 'es']) {
    await page.evaluate((locale) => localStorage.setItem('underlath.locale', locale), language);
    for (const path of paths) {
      await page.setViewportSize(phone);
      await page.goto(demo().url + path);
      expect(await violations(page)).toEqual([]);
      await expect(page.locator('html')).toHaveAttribute('lang', new RegExp(`^${language}`));
      expect(await sidewaysPx(page), path).toBe(0);
    }
  }
  await page.evaluate(() => localStorage.setItem('underlath.locale', 'en'));
  await page.setViewportSize(phone);
  await page.goto(`${demo().url}/crew/${projectId}/places/${wall?.id}`);
  const action = page.getByRole('button', { name: 'New finding' });
  expect((await action.boundingBox())?.height).toBeGreaterThanOrEqual(56);
  await action.click();
  await page.getByRole('button', { name: 'Go on without a photo' }).click();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'All of it' }).click();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: /^Cuts, notches and holes/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back' }).click();
  await page.getByRole('button', { name: /Beam or joist seat/ }).click();
  expect(await violations(page)).toEqual([]);
});

test('the screens of the office, at the desk and on a phone', { tag: '@long' }, async ({ page }) => {
  test.setTimeout(480_000);
  await signIn(page, 'owner');
  const projectId = (await list(page, '/projects'))[0]?.id;
  const project = `/projects/${projectId}`;
  const [finding] = await list(page, `${project}/findings?severity=engineer`);
  const [order] = await list(page, `${project}/change-orders`);
  const paths = [
    '/projects',
    '/new-project',
    '/cost-book',
    '/people',
    '/people-log',
    '/account',
    '/checks',
    '/checks/anchor.thread-engagement',
    project,
    `${project}/details`,
    `${project}/house?place=${finding?.locationId}&finding=${finding?.id}`,
    `${project}/places/${finding?.locationId}/load-paths`,
    `${project}/places/${finding?.locationId}/scope`,
    `${project}/findings`,
    `${project}/findings/new`,
    `${project}/findings/${finding?.id}/price`,
    `${project}/photos`,
    `${project}/change-orders`,
    `${project}/change-orders/new`,
    `${project}/change-orders/${order?.id}`,
    `${project}/contract`,
    `${project}/record`,
  ];
  for (const path of paths) {
    await page.setViewportSize(desk);
    await page.goto(demo().url + path);
    expect(await violations(page)).toEqual([]);
    await page.setViewportSize(phone);
    expect(await violations(page)).toEqual([]);
    expect(await sidewaysPx(page), path).toBe(0);
  }
});

test("the client's letter, its steps, and the focus above the total that is always in sight", async ({ page }) => {
  await page.setViewportSize(phone);
  await page.goto(demo().clientLink);
  expect(await violations(page)).toEqual([]);
  expect(await sidewaysPx(page)).toBe(0);
  await page.setViewportSize(phone);
  const hidden = await page.evaluate(async () => {
    const bar = document.querySelector('.total-bar, .total')?.getBoundingClientRect();
    const under: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>('a, button, summary, input')) {
      if (element.closest('.total-bar, .total') || element.offsetParent === null) continue;
      element.focus();
      await new Promise(requestAnimationFrame);
      // What stands in a closed part takes no focus.
      if (document.activeElement !== element) continue;
      const box = element.getBoundingClientRect();
      if (bar && box.top >= bar.top) under.push(element.textContent ?? element.tagName);
    }
    return under;
  });
  expect(hidden).toEqual([]);
  for (const name of [/^Ask/, /^Decline/, /Review and approve/]) {
    await page.getByRole('button', { name }).first().click();
    expect(await violations(page)).toEqual([]);
    await page.goBack();
  }
  await page.getByRole('button', { name: 'Español' }).first().click();
  await expect(page.locator('html')).toHaveAttribute('lang', /^es/);
  expect(await violations(page)).toEqual([]);
});

test('the keyboard alone leads from the sign-in to a finding', async ({ page }) => {
  const { url, signIns } = demo();
  await page.goto(`${url}/sign-in`);
  await page.getByLabel('E-mail').focus();
  await page.keyboard.type(signIns.estimator.email);
  await page.keyboard.press('Tab');
  await page.keyboard.type(signIns.estimator.password);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/projects/);
  const reach = async (name: RegExp) => {
    const there = page.getByRole('link', { name }).or(page.getByRole('button', { name })).first();
    await expect(there).toBeVisible();
    for (let presses = 0; presses < 80; presses++) {
      if (await there.evaluate((element) => element === document.activeElement)) return page.keyboard.press('Enter');
      await page.keyboard.press('Tab');
    }
    throw new Error(`${name} is not reached with the Tab key`);
  };
  await reach(asWords(told.name));
  await reach(/^House$/);
  await reach(asWords(told.openWall));
  await reach(asWords(told.unsafe));
  await expect(page.getByRole('heading', { name: told.unsafe })).toBeVisible();
});
