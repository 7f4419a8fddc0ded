import type { Page } from '@playwright/test';
import type { DemoServer } from '../support/demo-server.ts';

/** The running demo, as the global setup left it. */
export const demo = (): Omit<DemoServer, 'stop'> => JSON.parse(process.env.DEMO ?? '{}');

export async function signIn(page: Page, role: 'owner' | 'estimator' | 'crew'): Promise<void> {
  const { url, signIns } = demo();
  await page.goto(`${url}/sign-in`);
  await page.getByLabel(/e-?mail/i).fill(signIns[role].email);
  await page.getByLabel(/^password/i).fill(signIns[role].password);
  await page.getByRole('button', { name: /sign in/i }).click();
  await page.waitForURL((address) => !address.pathname.startsWith('/sign-in'));
}

/** Waits until the device has all of the program, so that it works without signal from here on. */
export const keptOnDevice = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const worker = registration.active;
    while (worker?.state !== 'activated') await new Promise((done) => setTimeout(done, 50));
  });
