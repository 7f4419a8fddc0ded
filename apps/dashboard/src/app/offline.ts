/** How long a start waits for a newer version that is on the device already. */
const takeOverMs = 1500;

/**
 * Before anything is shown: hands over to a version that was fetched during an earlier visit. Nothing is typed yet, so
 * loading the page again loses nothing. Resolves to true when the page is being loaded again.
 */
export async function changedToNewVersion(): Promise<boolean> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return false;
  const waiting = (await navigator.serviceWorker.getRegistration('/'))?.waiting;
  if (!waiting || !navigator.serviceWorker.controller) return false;
  const tookOver = new Promise<boolean>((done) => {
    navigator.serviceWorker.addEventListener('controllerchange', () => done(true), { once: true });
    setTimeout(() => done(false), takeOverMs);
  });
  waiting.postMessage('take-over');
  if (!(await tookOver)) return false;
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
