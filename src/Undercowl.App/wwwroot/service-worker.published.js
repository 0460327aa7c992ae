// Keeps the whole program, so that it works without a network. All files of one edition, or none: a half kept edition never answers.
self.importScripts('./service-worker-assets.js');
const prefix = 'undercowl-';
const kept = prefix + self.assetsManifest.version;
const base = new URL('./', self.location);
const files = new Set(self.assetsManifest.assets.map(a => new URL(a.url, base).href));

self.addEventListener('install', event => event.waitUntil((async () => {
  const cache = await caches.open(kept);
  await cache.addAll(self.assetsManifest.assets
    .filter(a => a.url !== 'service-worker.js')
    .map(a => new Request(a.url, { integrity: a.hash, cache: 'no-cache' })));
})()));

self.addEventListener('activate', event => event.waitUntil((async () => {
  for (const key of await caches.keys()) {
    if (key.startsWith(prefix) && key !== kept) {
      await caches.delete(key);
    }
  }
})()));

self.addEventListener('fetch', event => {
  if (event.request.method !== 'GET' || new URL(event.request.url).origin !== self.location.origin) {
    return;
  }

  event.respondWith((async () => {
    const page = event.request.mode === 'navigate' && !files.has(event.request.url);
    const cache = await caches.open(kept);
    return await cache.match(page ? 'index.html' : event.request) ?? fetch(event.request);
  })());
});
