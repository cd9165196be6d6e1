// Keeps what a roof without a connection needs: the sheet of styles, the calculator, forms of visits.
// The network always comes first, so that nothing stale is shown while there is one. What is kept under an older
// name was written for other scripts and goes.
'use strict';
const KEPT = 'coldround-2';
const PARTS = ['/assets/coldround.css', '/assets/mark.svg', '/assets/page.js', '/assets/outbox.js', '/assets/field.js', '/assets/roof.js'];
const ROOF = ['/refrigerants', '/refrigerants?measures=si', '/refrigerants/curves'];

const isForm = (path) => /^\/units\/[^/]+\/visits\/new$/.test(path);
const isKept = (path) => PARTS.includes(path) || path === '/refrigerants' || path === '/refrigerants/curves' || isForm(path);
// what was asked of the calculator is worked out from the address again
const keyOf = (url) => {
  const si = url.searchParams.get('measures') === 'si' ? '?measures=si' : '';
  return url.origin + url.pathname + (PARTS.includes(url.pathname) || url.pathname.endsWith('/curves') ? '' : si);
};

const keep = async (url, answer) => {
  if (answer.ok && !answer.redirected) {
    const cache = await caches.open(KEPT);
    await cache.put(keyOf(url), answer);
  }
};
const fetchAndKeep = async (address) => {
  const url = new URL(address, self.location.origin);
  await keep(url, await fetch(url, { credentials: 'same-origin' }));
};

self.addEventListener('install', (event) => {
  self.skipWaiting();
  event.waitUntil(Promise.all([...PARTS, ...ROOF].map((part) => fetchAndKeep(part).catch(() => {}))));
});

self.addEventListener('activate', (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name !== KEPT && name.startsWith('coldround-')) {
        await caches.delete(name);
      }
    }
    await self.clients.claim();
  })());
});

self.addEventListener('message', (event) => {
  const url = event.data?.keep && new URL(event.data.keep);
  if (url && url.origin === self.location.origin && isForm(url.pathname)) {
    event.waitUntil(fetchAndKeep(url.href).catch(() => {}));
  }
});

const nothing = () => new Response(
  '<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">'
  + '<meta name="color-scheme" content="light dark"><title>No connection · Coldround</title><link rel="stylesheet" href="/assets/coldround.css">'
  + '<main class="narrow plate"><h1>No connection</h1><p>This page is not kept on this phone. The <a href="/refrigerants">head pressure calculator</a> is, and so are'
  + ' the visit forms of units that were looked at before. Visits that wait are sent as soon as there is a connection.</p></main></html>',
  { status: 503, headers: { 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': "default-src 'none'; style-src 'self'" } });

const answer = async (request, url) => {
  try {
    const fresh = await fetch(request);
    // with its answer in it a page of the calculator would be wrong for the next question
    if (isKept(url.pathname) && url.origin + url.pathname + url.search === keyOf(url)) {
      await keep(url, fresh.clone());
    }
    return fresh;
  } catch (offline) {
    const cache = await caches.open(KEPT);
    const kept = isKept(url.pathname) ? await cache.match(keyOf(url)) : undefined;
    if (kept) {
      return kept;
    }
    if (request.mode === 'navigate') {
      return nothing();
    }
    throw offline;
  }
};

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (url.origin !== self.location.origin) {
    return;
  }
  if (event.request.method === 'POST' && url.pathname === '/leave') {
    event.waitUntil(caches.delete(KEPT));
  } else if (event.request.method === 'GET' && (isKept(url.pathname) || event.request.mode === 'navigate')) {
    event.respondWith(answer(event.request, url));
  }
});
