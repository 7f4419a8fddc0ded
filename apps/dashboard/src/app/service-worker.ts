/// <reference lib="webworker" />
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  type PrecacheEntry,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope;
/** The app's own files, put in by the build. */
declare const __KEPT_FILES__: PrecacheEntry[];

/**
 * Keeps the app's files on the device, so that crew and checks open and judge with no connection. It keeps nothing the
 * server answers, and has no part in the pages of client links.
 */
precacheAndRoute(__KEPT_FILES__);
cleanupOutdatedCaches();
registerRoute(
  new NavigationRoute(createHandlerBoundToURL('/index.html'), {
    denylist: [/^\/api(\/|$)/, /^\/c(\/|$)/, /^\/(livez|readyz)$/],
  }),
);

self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('message', (event) => {
  if (event.data === 'take-over') event.waitUntil(takeOverIfAlone());
});

/** A second window may hold what somebody typed and still needs the files of its own version; then the newer one waits on. */
async function takeOverIfAlone(): Promise<void> {
  const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const ofApp = windows.filter(({ url }) => !/^\/c(\/|$)/.test(new URL(url).pathname));
  if (ofApp.length <= 1) await self.skipWaiting();
}
