import type { Page } from '@playwright/test';
import { brandmeerHouse } from '../../seed/brandmeer-house.ts';
import type { DemoServer } from '../support/demo-server.ts';

/** The running demo, as the global setup left it. */
export const demo = (): Omit<DemoServer, 'stop'> => JSON.parse(process.env.DEMO ?? '{}');

const { project, terms, places, findings, entries, loadPaths } = brandmeerHouse;
const chain = loadPaths.find(({ kind }) => kind === 'wall-line')?.segments.at(-1);
const placeNamed = (key: string): string => places.find((place) => place.key === key)?.name ?? key;
const findingTitled = (key: string): string => findings.find((finding) => finding.key === key)?.title ?? key;

/** What the tests rely on in the demo's story, by what it is to them. */
export const told = {
  ...project,
  payments: terms.payments,
  retainagePct: terms.retainagePct,
  paidKeys: new Set(entries.flatMap((entry) => (entry.kind === 'payment' ? [entry.settles] : []))),
  allowance: entries.find(({ kind }) => kind === 'allowance')?.name ?? '',
  /** A wall line of two parts: one with its panels cut, one with a rusted rod. */
  chainWall: placeNamed('alley-wall'),
  cutPanels: findingTitled('milk-door'),
  /** The part of that wall with the cut panels: its name, their link, and its last link, which nobody has seen. */
  chain: chain?.name ?? '',
  panelLink: chain?.links.find(({ role }) => role === 'panels')?.name ?? '',
  lastLink: chain?.links.at(-1)?.name ?? '',
  /** A wall with several findings that are priced or waiting, two of them in one spot; what carries its beam is unsafe. */
  openWall: placeNamed('river-wall'),
  inOneSpot: findingTitled('mold'),
  unsafe: findingTitled('corner-post'),
} as const;

/** A name in the demo, to be looked for as it stands. */
export const asWords = (name: string): RegExp => new RegExp(name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));

export async function signIn(page: Page, role: 'owner' | 'estimator' | 'crew'): Promise<void> {
  const { url, signIns } = demo();
  await page.goto(`${url}/sign-in`);
  await page.getByLabel(/e-?mail/i).fill(signIns[role].email);
  await page.getByLabel(/^password/i).fill(signIns[role].password);
  await page.getByRole('button', { name: /^sign in$/i }).click();
  await page.waitForURL((address) => !address.pathname.startsWith('/sign-in'));
}

/** Waits until the device has all of the program, so that it works without signal from here on. */
export const keptOnDevice = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const worker = registration.active;
    while (worker?.state !== 'activated') await new Promise((done) => setTimeout(done, 50));
  });
