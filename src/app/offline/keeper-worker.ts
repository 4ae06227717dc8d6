// The service worker: keeps every file of the app and answers for them, so that the window needs no network after its first visit.
import { PrecacheController } from 'workbox-precaching/PrecacheController.js';
import type { KeeperReply, KeeperRequest, KeptFile } from './keeper-talk.ts';

declare const self: ServiceWorkerGlobalScope;
/** Every file of this version, in the order they are wanted; put in by the build. */
declare const KEPT_FILES: readonly KeptFile[];

const START_PAGE = 'index.html';
const files = new PrecacheController();
files.addToCacheList([...KEPT_FILES]);

/** Files whose name changes with their bytes are kept under it alone. */
const lastingFolder = new URL('assets/', self.registration.scope).href;

// A new version waits until a window takes it up: files never change under a window that is open.
self.addEventListener('install', (event) => void files.install(event));

self.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      // The window of the first visit is answered from now on, and not only after it was opened anew.
      await self.clients.claim();
      await letGo(event);
    })(),
  );
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const url = addressOf(request);
  const cacheKey = files.getCacheKeyForURL(url);
  if (cacheKey !== undefined) {
    // The request for a page cannot be asked again as it is.
    const plain = request.mode === 'navigate' ? new Request(url) : request;
    event.respondWith(files.strategy.handle({ event, request: plain, params: { cacheKey } }));
  } else if (url.startsWith(lastingFolder)) {
    event.respondWith(ofAnotherVersion(request));
  }
});

self.addEventListener('message', (event) => {
  const request = event.data as KeeperRequest;
  if (request.kind === 'take-up') return event.waitUntil(self.skipWaiting());
  const isOfVersion = files.getCacheKeyForURL(request.entry) !== undefined;
  event.ports[0].postMessage({ isOfVersion } satisfies KeeperReply);
  if (isOfVersion) event.waitUntil(letGo(event));
});

/** The address a request is kept under: the folder itself is its start page, whatever is asked of it. */
function addressOf({ url, mode }: Request): string {
  const { origin, pathname, search } = new URL(url);
  const file = `${origin}${pathname}`;
  if (mode !== 'navigate') return `${file}${search}`;
  return file === self.registration.scope ? `${file}${START_PAGE}` : file;
}

/** A window of the version before may still ask for its own files: they stay until it is closed. */
async function ofAnotherVersion(request: Request): Promise<Response> {
  const cache = await self.caches.open(files.strategy.cacheName);
  return (await cache.match(request, { ignoreVary: true })) ?? fetch(request);
}

/** Lets go of files of earlier versions, unless a second window is open that may be of one. */
async function letGo(event: ExtendableEvent): Promise<void> {
  const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const own = windows.filter(({ url }) => url.startsWith(self.registration.scope));
  if (own.length <= 1) await files.activate(event);
}
