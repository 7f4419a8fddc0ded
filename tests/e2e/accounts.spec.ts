import { expect, type Page } from '@playwright/test';
import { codeAt, fromBase32 } from '../support/one-time-code.ts';
import { openCompany } from './company.ts';
import { demo } from './demo.ts';
import { linkIn } from './mail-folder.ts';
import { test } from './test.ts';

const password = 'a long enough phrase for one';
const newPassword = 'another phrase, long enough too';

/** A company of its own; answers its owner's address. */
async function newOwner(page: Page, isConfirmed = true): Promise<string> {
  await openCompany(page, { isConfirmed });
  const me = await (await page.request.get(`${demo().url}/api/v1/session`)).json();
  return me.member.email;
}

async function typeSignIn(page: Page, email: string, secret: string): Promise<void> {
  await page.goto(`${demo().url}/sign-in`);
  await page.getByLabel('E-mail').fill(email);
  await page.getByLabel('Password', { exact: true }).fill(secret);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
}

const isIn = (page: Page) => expect(page.getByRole('heading', { level: 1, name: 'Projects' })).toBeVisible();

test('a forgotten password is chosen anew through the letter, by keyboard', async ({ page }) => {
  const email = await newOwner(page);
  await page.context().clearCookies();
  await page.goto(`${demo().url}/sign-in`);
  await page.getByLabel('E-mail').fill(email);
  await page.getByRole('link', { name: 'Forgot the password?' }).press('Enter');
  await expect(page.getByLabel('E-mail')).toHaveValue(email);
  await page.getByLabel('E-mail').press('Enter');
  await expect(page.getByText('lies in the mail folder of the server, and nobody was mailed')).toBeVisible();
  await page.goto(demo().url + (await linkIn(email, 'new-password')));
  await expect.poll(() => new URL(page.url()).hash).toBe('');
  await page.getByLabel('New password').fill('password1234567');
  await page.getByLabel('New password').press('Enter');
  await expect(page.getByText('one of the most common passwords').first()).toBeVisible();
  await page.getByLabel('New password').fill(newPassword);
  await page.getByLabel('New password').press('Enter');
  await expect(page.getByText('The new password is saved')).toBeVisible();
  await page.getByRole('link', { name: 'Sign in' }).press('Enter');
  await typeSignIn(page, email, newPassword);
  await isIn(page);
});

test('an address is confirmed before anybody is invited, and what was typed stays', async ({ page }) => {
  const email = await newOwner(page, false);
  await page.goto(`${demo().url}/people`);
  const invitation = page.getByRole('region').or(page.locator('section')).filter({ hasText: 'Invite someone' }).last();
  await invitation.getByLabel('E-mail').fill('crew@plumb.example');
  await invitation.getByRole('button', { name: 'Invite' }).click();
  await expect(page.getByText('Confirm your e-mail address first')).toBeVisible();
  await page.getByRole('button', { name: 'Send the letter again' }).click();
  await expect(page.getByText(`the letter for ${email} lies in the mail folder`)).toBeVisible();
  await expect(invitation.getByLabel('E-mail')).toHaveValue('crew@plumb.example');
  const reader = await page.context().newPage();
  await reader.goto(demo().url + (await linkIn(email, 'confirm-email', 2)));
  await reader.getByRole('button', { name: 'Confirm the address' }).click();
  await expect(reader.getByText(`${email} is confirmed.`)).toBeVisible();
  await invitation.getByRole('button', { name: 'Invite', exact: true }).click();
  await expect(page.getByText('Invitation for crew@plumb.example')).toBeVisible();
});

test('a second step by a code of an authenticator app, and by a recovery code when it is gone', async ({ page }) => {
  const email = await newOwner(page);
  await page.goto(`${demo().url}/account`);
  await page.getByRole('button', { name: 'Set up an authenticator app' }).click();
  await page.getByLabel('Present password').fill(password);
  await page.getByRole('button', { name: 'Set up an authenticator app' }).click();
  await expect(page.getByRole('img', { name: 'QR code' })).toBeVisible();
  const secret = fromBase32(((await page.locator('code.secret').textContent()) ?? '').replaceAll(' ', ''));
  // Of the step before, so that the code of now is still good for signing in.
  await page.getByLabel('Code the app shows now').fill(codeAt(secret, new Date(Date.now() - 30_000)));
  await page.getByRole('button', { name: 'Switch codes on' }).click();
  await expect(page.locator('.recovery-codes li')).toHaveCount(10);
  const recovery = (await page.locator('.recovery-codes code').first().textContent()) ?? '';
  await page.getByRole('button', { name: 'I kept them' }).click();
  await expect(page.getByText('10 recovery codes are left.')).toBeVisible();

  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.waitForURL('**/sign-in');
  await typeSignIn(page, email, password);
  await expect(page.getByRole('heading', { name: 'Second step' })).toBeFocused();
  await page.getByLabel('Code of your authenticator app').fill('000000');
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByText('4 tries are left')).toBeVisible();
  await page.getByLabel('Code of your authenticator app').fill(codeAt(secret, new Date()));
  await page.getByRole('button', { name: 'Go on' }).click();
  await isIn(page);

  await page.context().clearCookies();
  await typeSignIn(page, email, password);
  await page.getByRole('button', { name: 'Use a recovery code' }).click();
  await page.getByLabel('Recovery code').fill(recovery);
  await page.getByRole('button', { name: 'Go on' }).click();
  await isIn(page);
});

test('a passkey is added, asked for after the password, and signs in alone', async ({ page }) => {
  const email = await newOwner(page);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('WebAuthn.enable');
  await cdp.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
  await page.goto(`${demo().url}/account`);
  await page.getByRole('button', { name: 'Add a passkey' }).click();
  await page.getByLabel('Name of the passkey').fill('Site phone');
  await page.getByLabel('Present password').fill(password);
  await page.getByRole('button', { name: 'Add a passkey' }).click();
  await expect(page.locator('.recovery-codes li')).toHaveCount(10);
  await page.getByRole('button', { name: 'I kept them' }).click();
  await expect(page.getByText('Site phone', { exact: true }).first()).toBeVisible();

  await page.context().clearCookies();
  await typeSignIn(page, email, password);
  await page.getByRole('button', { name: 'Use a passkey' }).click();
  await isIn(page);

  await page.context().clearCookies();
  await page.goto(`${demo().url}/sign-in`);
  await page.getByRole('button', { name: 'Sign in with a passkey' }).click();
  await isIn(page);
});

test('devices are listed, and another one is signed out from here', async ({ page, browser }) => {
  const email = await newOwner(page);
  const elsewhere = await browser.newPage();
  await typeSignIn(elsewhere, email, password);
  await isIn(elsewhere);
  await page.goto(`${demo().url}/account`);
  await expect(page.getByText('(this device)')).toBeVisible();
  await page.getByRole('button', { name: 'Sign out all others' }).click();
  await expect(page.locator('.account-rows li').filter({ hasText: 'last used' })).toHaveCount(1);
  await elsewhere.goto(`${demo().url}/people`);
  await elsewhere.waitForURL('**/sign-in**');
  await elsewhere.close();
});

test('signing out tells of a draft that was not saved, and removes it', async ({ page }) => {
  await newOwner(page);
  await page.goto(`${demo().url}/projects`);
  await page.evaluate(() => {
    localStorage.setItem('underlath.estimate.one', '{}');
    localStorage.setItem('underlath.measure.one', '{}');
  });
  await page.getByRole('button', { name: 'Sign out' }).click();
  const dialog = page.getByRole('dialog', { name: 'Sign out of this device?' });
  await expect(dialog.getByText('1 draft that was not saved')).toBeVisible();
  await dialog.getByRole('button', { name: 'Stay signed in' }).click();
  await expect(dialog).toBeHidden();
  await page.getByRole('button', { name: 'Sign out' }).click();
  await dialog.getByRole('button', { name: 'Sign out' }).click();
  await page.waitForURL('**/sign-in');
  const kept = await page.evaluate(() => Object.keys(localStorage).filter((key) => key !== 'underlath.locale'));
  expect(kept).toEqual(['underlath.measure.one']);
});

test('a tab drawn for one person does nothing in the name of another who signs in beside it', async ({ page }) => {
  const first = await newOwner(page);
  await page.goto(`${demo().url}/projects`);
  await isIn(page);
  const beside = await page.context().newPage();
  const { email, password: theirs } = demo().signIns.crew;
  await typeSignIn(beside, email, theirs);
  await beside.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
  await page.bringToFront();
  await page.getByRole('link', { name: 'People' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByLabel('E-mail')).toHaveValue(first);
  await expect(page.getByText('Lázaro Mendibil')).toHaveCount(0);
  await dialog.getByLabel('Password', { exact: true }).fill(password);
  await dialog.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByText(`${first}, since`)).toBeVisible();
});
