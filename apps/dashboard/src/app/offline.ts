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
