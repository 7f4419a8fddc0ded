import { type BrowserContext, expect, type Page } from '@playwright/test';
import { readPdf } from '../support/pdf-text.ts';
import { openCompany } from './company.ts';
import { demo } from './demo.ts';
import { test } from './test.ts';

test.describe.configure({ mode: 'serial' });

const phone = { viewport: { width: 390, height: 844 } };
const headlines = ['The plate over the door', 'The plate over the window'] as const;
let owner: Page;
let context: BrowserContext;
let door: Page;
let window: Page;
const links: string[] = [];
const orderIds: string[] = [];

// biome-ignore lint/suspicious/noExplicitAny: the answers are checked where they are used
const json = async (path: string): Promise<any> => (await owner.request.get(`${demo().url}/api/v1${path}`)).json();

/** Two letters of one house, waiting at once. */
test.beforeAll(async ({ browser }) => {
  owner = await browser.newPage({ baseURL: demo().url });
  const { api, projectId, make, cutPlate } = await openCompany(owner);
  const headers = { origin: demo().url };
  for (const headline of headlines) {
    const id = await cutPlate(headline);
    const { choices, findingVersion } = await json(`/findings/${id}/estimate`);
    const priced = { headers: { ...headers, 'if-match': `"${findingVersion}"` }, data: { choices } };
    await owner.request.put(`${api}/findings/${id}/estimate`, priced);
    const { id: orderId, version, wording } = await make(`/projects/${projectId}/change-orders`, { findingIds: [id] });
    const edited = await owner.request.patch(`${api}/change-orders/${orderId}`, {
      headers: { ...headers, 'if-match': `"${version}"` },
      data: { wording: { ...wording, headline: { en: headline, es: headline } } },
    });
    const sent = await owner.request.post(`${api}/change-orders/${orderId}/send`, {
      headers: { ...headers, 'if-match': `"${(await edited.json()).version}"` },
      data: { clientEmail: null },
    });
    const { pathname, hash } = new URL((await sent.json()).link);
    links.push(`${demo().url}${pathname}${hash}`);
    orderIds.push(orderId);
  }
  context = await browser.newContext(phone);
  [door, window] = [await context.newPage(), await context.newPage()];
});
test.afterAll(async () => {
  await owner.close();
  await context.close();
});

const title = (page: Page) => page.getByRole('heading', { name: /^The plate over/ });

test('two letters open side by side in one browser, each at its own address, and no secret stays in it', async () => {
  for (const [at, page] of [door, window].entries()) {
    await page.goto(links[at] ?? '');
    await expect(title(page)).toHaveText(headlines[at] ?? '');
    expect(page.url()).toBe((links[at] ?? '').split('#')[0]);
  }
  expect(door.url()).not.toBe(window.url());
});

test('the first tab saves the PDF of its own letter, after the second was opened', async () => {
  const download = door.waitForEvent('download');
  await door.getByRole('link', { name: 'Save this letter as a PDF' }).first().click();
  const { text } = await readPdf(await streamed(await (await download).createReadStream()));
  expect(text).toContain(headlines[0]);
  expect(text).not.toContain(headlines[1]);
});

test('a question typed in the first tab is asked about its own letter, and a draft of the second stays there', async () => {
  await window.getByRole('button', { name: 'Ask', exact: true }).click();
  await window.getByLabel('Your question').fill('About the window');
  await door.getByRole('button', { name: 'Ask', exact: true }).click();
  await expect(door.getByLabel('Your question')).toHaveValue('');
  await door.getByLabel('Your question').fill('About the door');
  await door.getByLabel('Your name').fill('Ines Wren');
  await door.getByRole('button', { name: 'Send the question' }).click();
  await expect(door.getByText('Your question was sent.').first()).toBeVisible();
  await expect(door.locator('.questions')).toContainText('About the door');
  expect((await json(`/change-orders/${orderIds[0]}`)).questions).toMatchObject([{ text: 'About the door' }]);
  expect((await json(`/change-orders/${orderIds[1]}`)).questions).toEqual([]);
  await expect(window.getByLabel('Your question')).toHaveValue('About the window');
  await window.reload();
  await expect(title(window)).toHaveCount(0);
  await expect(window.getByLabel('Your question')).toHaveValue('About the window');
  await window.getByRole('button', { name: 'Back to the letter' }).first().click();
});

test('signing in the first tab asks once about another name, signs its own letter, and leaves the second open', async () => {
  await door.getByRole('button', { name: 'Review and approve' }).click();
  await door.getByLabel('Your full name').fill('Tom Wren');
  await door.getByRole('checkbox').check();
  await door.getByRole('button', { name: 'Sign', exact: true }).click();
  const question = door.getByRole('dialog', { name: 'Is this name right?' });
  await expect(question).toContainText('The letter is for Ines Wren. You typed Tom Wren. Is that right?');
  await question.getByRole('button', { name: 'Change the name' }).click();
  await expect(door.getByLabel('Your full name')).toHaveValue('Tom Wren');
  await door.getByRole('button', { name: 'Sign', exact: true }).click();
  await question.getByRole('button', { name: 'Yes, sign as Tom Wren' }).click();
  await expect(door.getByRole('heading', { name: 'You approved this change' })).toBeVisible();
  await expect(door.getByText('Signed. Your contractor can see your answer.')).toBeVisible();
  await door.getByRole('button', { name: 'Español' }).first().click();
  await expect(door.getByText('Firmado. Su contratista ya ve su respuesta.')).toBeVisible();
  await door.getByRole('button', { name: 'English' }).first().click();
  await expect(title(door)).toHaveText(headlines[0]);
  await window.reload();
  await expect(title(window)).toHaveText(headlines[1]);
  await expect(window.getByRole('button', { name: 'Review and approve' })).toBeVisible();
  const [signed, waiting] = [await json(`/change-orders/${orderIds[0]}`), await json(`/change-orders/${orderIds[1]}`)];
  expect([signed.state, waiting.state]).toEqual(['approved', 'sent']);
  expect(signed.versions[0].decision).toMatchObject({ signerName: 'Tom Wren', letterFor: 'Ines Wren' });
});

test('somebody else who opens the answered letter reads who answered, after its link was revoked too', async ({
  browser,
}) => {
  for (const id of orderIds) {
    await owner.request.delete(`${demo().url}/api/v1/change-orders/${id}/link`, { headers: { origin: demo().url } });
  }
  const other = await browser.newPage(phone);
  await other.goto(links[0] ?? '');
  await expect(other.getByRole('heading', { level: 1 })).toHaveText(/^Tom Wren approved this change on /);
  await expect(other.getByText('Ines Wren; the name above was confirmed')).toBeVisible();
  await expect(other.getByRole('button', { name: 'Review and approve' })).toHaveCount(0);
  await door.reload();
  await expect(door.getByRole('heading', { level: 1 })).toHaveText('You approved this change');
  await other.goto(links[1] ?? '');
  await expect(other.getByRole('heading', { level: 1 })).toHaveText('Your contractor switched this link off');
  await expect(other.getByText('No answer was given to this letter.')).toBeVisible();
  await other.close();
});

test('a link of the older form opens its letter and moves to its address; closed there, it asks for the link', async ({
  browser,
}) => {
  const page = await browser.newPage(phone);
  const { origin, pathname, hash } = new URL(links[0] ?? '');
  await page.goto(`${origin}/c${hash}`);
  await expect(title(page)).toHaveText(headlines[0]);
  expect(page.url()).toBe(origin + pathname);
  await page.getByRole('button', { name: 'Close this letter on this device' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('The letter is closed');
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Open the link in your message');
  await page.close();
});

async function streamed(stream: AsyncIterable<Buffer>): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk);
  return Buffer.concat(chunks);
}
