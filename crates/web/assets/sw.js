// Keeps the page for use without a network. `files.json` is written by the build chore: a version and the list of files.
const LIST = './files.json';
const FALLBACK = ['./', './index.html', './app.css', './boot.js', './groundhold_web.js', './groundhold_web_bg.wasm', './worker.js', './paper-worker.js', './manifest.webmanifest', './icon.svg', './icon-mask.svg'];
const PREFIX = 'groundhold-';
// Fetched only when first asked for, and kept from then on.
const LATER = /web_paper/;

async function list() {
  try {
    const answer = await fetch(LIST, { cache: 'no-store' });
    if (answer.ok) return await answer.json();
  } catch { /* no list: the fallback below */ }
  return { version: 'unversioned', files: FALLBACK };
}

self.addEventListener('install', (event) => {
  event.waitUntil((async () => {
    const { version, files } = await list();
    const cache = await caches.open(PREFIX + version);
    // Each once: a list with the same file twice is refused as a whole.
    const wanted = [...new Set(['./', ...files.filter((f) => !/web_paper/.test(f) && !/\.(br|gz)$/.test(f) && !/sw\.js$/.test(f))])];
    await cache.addAll(wanted.map((f) => new Request(f, { cache: 'reload' })));
    await cache.put('./kept-version', new Response(version));
    await self.skipWaiting();
  })());
});

self.addEventListener('activate', (event) => {
  event.waitUntil((async () => {
    const names = (await caches.keys()).filter((n) => n.startsWith(PREFIX));
    const newest = names[names.length - 1];
    await Promise.all(names.filter((n) => n !== newest).map((n) => caches.delete(n)));
    await self.clients.claim();
  })());
});

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.includes('/api/')) return;
  event.respondWith((async () => {
    const key = event.request.mode === 'navigate' ? './' : event.request;
    const kept = await caches.match(key, { ignoreSearch: true });
    if (kept) return kept;
    const answer = await fetch(event.request);
    if (answer.ok && LATER.test(url.pathname)) {
      const names = (await caches.keys()).filter((n) => n.startsWith(PREFIX));
      if (names.length > 0) {
        const cache = await caches.open(names[names.length - 1]);
        await cache.put(event.request, answer.clone());
      }
    }
    return answer;
  })());
});
