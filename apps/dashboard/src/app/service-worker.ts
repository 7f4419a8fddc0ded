/// <reference lib="webworker" />
import { createHandlerBoundToURL, type PrecacheEntry, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope;
/** The app's own files, put in by the build. */
declare const __KEPT_FILES__: PrecacheEntry[];

/** The files of the version before: a page that was open when a newer one came goes on with its own. */
const BEFORE = 'files-of-the-version-before';

/**
 * Keeps the app's files on the device, so that crew and checks open and judge with no connection. It keeps nothing the
 * server answers, and has no part in the pages of client links. A newer version serves the next page that is loaded; none
 * is loaded again by itself, so nothing that is typed is lost.
 */
self.addEventListener('install', (event) => event.waitUntil(Promise.all([keepFilesOfBefore(), self.skipWaiting()])));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

precacheAndRoute(__KEPT_FILES__);
registerRoute(
  ({ url, sameOrigin }) => sameOrigin && url.pathname.startsWith('/assets/'),
  async ({ request }) => (await caches.match(request, { cacheName: BEFORE })) ?? fetch(request),
);
registerRoute(
  new NavigationRoute(createHandlerBoundToURL('/index.html'), {
    denylist: [/^\/api(\/|$)/, /^\/c(\/|$)/, /^\/(livez|readyz)$/],
  }),
);

/** Copies the files of the running version before the precache drops those that the newer one does not have. */
async function keepFilesOfBefore(): Promise<void> {
  if (!self.registration.active) return;
  const names = (await caches.keys()).filter((name) => name.includes('-precache-'));
  await caches.delete(BEFORE);
  const before = await caches.open(BEFORE);
  for (const name of names) {
    const running = await caches.open(name);
    for (const request of await running.keys()) {
      const file = await running.match(request);
      if (file && new URL(request.url).pathname.startsWith('/assets/')) await before.put(request, file);
    }
  }
}
