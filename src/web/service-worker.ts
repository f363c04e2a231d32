/** Keeps the page's files on the device, so that it opens without network. What is asked of /api is never kept here. */
/// <reference lib="webworker" />
const worker = self as unknown as ServiceWorkerGlobalScope;

/** The built files; the build writes them in. */
const FILES: readonly string[] = ['__FILES__'];
const CACHE = `polewise-${FILES.join().length}-${FILES.reduce((sum, name) => (Math.imul(sum, 31) + [...name].reduce((hash, letter) => Math.imul(hash, 33) + letter.charCodeAt(0), 7)) | 0, 0)}`;

worker.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' }))))
      .then(() => worker.skipWaiting()),
  );
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      // The one before stays: pages that are still open fetch parts of theirs. They are told in the order of their making.
      .then((names) => names.filter((name) => name !== CACHE).slice(0, -1))
      .then((old) => Promise.all(old.map((name) => caches.delete(name))))
      .then(() => worker.clients.claim()),
  );
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin || pathname.startsWith('/api/')) return;
  event.respondWith(
    caches.open(CACHE).then(async (cache) => {
      const wanted = request.mode === 'navigate' ? '/' : request;
      const kept =
        (await cache.match(wanted, { ignoreSearch: true })) ??
        (await caches.match(wanted, { ignoreSearch: true }));
      return kept ?? fetch(request);
    }),
  );
});
