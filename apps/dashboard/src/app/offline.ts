/** How long a start waits for a newer version that is on the device already, and how often it asks it to take over. */
const takeOverMs = 1200;
const askEveryMs = 200;

/**
 * Before anything is shown: hands over to a version that was fetched during an earlier visit. Nothing is typed yet, so
 * loading the page again loses nothing. Resolves to true when the page is being loaded again.
 */
export async function changedToNewVersion(): Promise<boolean> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return false;
  const waiting = (await navigator.serviceWorker.getRegistration('/'))?.waiting;
  if (!waiting || !navigator.serviceWorker.controller) return false;
  // Asked more than once: right after a reload the page that was left may still count as a second window.
  const ask = () => waiting.postMessage('take-over');
  const asking = setInterval(ask, askEveryMs);
  ask();
  const tookOver = await new Promise<boolean>((done) => {
    navigator.serviceWorker.addEventListener('controllerchange', () => done(true), { once: true });
    setTimeout(() => done(false), takeOverMs);
  });
  clearInterval(asking);
  if (!tookOver) return false;
  location.reload();
  return true;
}

/** Once the page stands: fetches what the app needs to open without a connection, and looks for a newer version. */
export function keepForOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const register = () =>
    navigator.serviceWorker.register('/service-worker.js').catch((error: unknown) => {
      // The app works without it as long as there is a connection (private windows refuse it, and plain http).
      console.warn('The app is not kept for use without a connection:', error);
    });
  if (document.readyState === 'complete') register();
  else addEventListener('load', register, { once: true });
}
