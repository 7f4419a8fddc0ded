import { type Browser, chromium, type Page } from 'playwright-core';
import { chromiumArgs, ensureChromium } from '../support/chromium.ts';
import { startDemoServer } from '../support/demo-server.ts';
import { median, type Row } from './table.ts';

/** A slow phone: its processor four times slower than this one, 1.6 Mbit/s down, 150 ms to the server. */
const slowdown = 4;
const network = { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const visits = 5;
/** Core Web Vitals, "good": Largest Contentful Paint up to 2.5 s. */
const goalSeconds = 2.5;

interface Vitals {
  lcpMs: number;
  shift: number;
  slowestTapMs: number;
  scriptBytes: number;
}

/** The client's letter opened from its link on a slow phone: how often a second it could be painted, against once in 2.5 s. */
export async function clientPage(): Promise<Row> {
  const server = await startDemoServer();
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: chromiumArgs });
  try {
    const seen: Vitals[] = [];
    for (let visit = 0; visit < visits; visit += 1) seen.push(await visitLetter(browser, server.clientLink));
    const of = (read: (vitals: Vitals) => number) => median(seen.map(read));
    const note =
      `LCP ${(of(({ lcpMs }) => lcpMs) / 1000).toFixed(2)} s (goal 2.5), layout shift ${of(({ shift }) => shift).toFixed(3)} (0.1), ` +
      `slowest tap ${of(({ slowestTapMs }) => slowestTapMs).toFixed(0)} ms (200), scripts ${(of(({ scriptBytes }) => scriptBytes) / 1000).toFixed(0)} kB (150)`;
    const ours = 1000 / of(({ lcpMs }) => lcpMs);
    return { work: 'client page, slow phone', ours, floor: 1 / goalSeconds, unit: 'paints/s', goal: 1, note };
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function visitLetter(browser: Browser, link: string): Promise<Vitals> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 2 });
  try {
    const page = await context.newPage();
    const devtools = await context.newCDPSession(page);
    await devtools.send('Network.enable');
    await devtools.send('Network.emulateNetworkConditions', network);
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
    // The loader of TypeScript names functions by a helper that the page does not have.
    await page.addInitScript({ content: 'globalThis.__name = (one) => one;' });
    await page.addInitScript(watch);
    await page.goto(link);
    await page.getByRole('button', { name: /Review and approve/ }).waitFor();
    await page.waitForLoadState('networkidle');
    const { lcpMs, shift, scriptBytes } = await read(page);
    for (const name of [/Review and approve/, /Back to the letter/, /^Ask/, /Back to the letter/]) {
      await page.getByRole('button', { name }).last().click();
      await page.waitForTimeout(300);
    }
    return { lcpMs, shift, scriptBytes, slowestTapMs: (await read(page)).slowestTapMs };
  } finally {
    await context.close();
  }
}

type Watched = { vitals: Omit<Vitals, 'scriptBytes'> };

/** Runs in the page before anything else of it. */
function watch(): void {
  const vitals = { lcpMs: 0, shift: 0, slowestTapMs: 0 };
  (globalThis as unknown as Watched).vitals = vitals;
  const each = (type: string, note: (entry: PerformanceEntry) => void, options = {}) =>
    new PerformanceObserver((list) => list.getEntries().forEach(note)).observe({ type, buffered: true, ...options });
  each('largest-contentful-paint', ({ startTime }) => {
    vitals.lcpMs = startTime;
  });
  each('layout-shift', (entry) => {
    const { value, hadRecentInput } = entry as unknown as { value: number; hadRecentInput: boolean };
    if (!hadRecentInput) vitals.shift += value;
  });
  each(
    'event',
    ({ duration }) => {
      vitals.slowestTapMs = Math.max(vitals.slowestTapMs, duration);
    },
    { durationThreshold: 16 },
  );
}

const read = (page: Page): Promise<Vitals> =>
  page.evaluate(() => {
    const scripts = performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('.js'));
    const scriptBytes = scripts.reduce((sum, one) => sum + (one as PerformanceResourceTiming).encodedBodySize, 0);
    return { ...(globalThis as unknown as Watched).vitals, scriptBytes };
  });
