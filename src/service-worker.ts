import { base, build, files, prerendered, version } from '$service-worker';

/*
 * Keeps the whole page, so that it works without a network from the second visit on, and hands it out from what it
 * keeps: one version is never mixed with another. A new version is fetched beside the present one and waits until the
 * page says that its user wants it. The reasons: docs/decisions/0012-kept-for-use-without-a-network.md
 */
const worker = globalThis as unknown as ServiceWorkerGlobalScope;

/** Several copies of the page may stand in folders of one host: each knows its own caches by this beginning. */
const OURS = `backwave at ${base}/, version `;
const CACHE = OURS + version;

const pages = new Set(prerendered);
const kept = new Set([...build, ...files, ...prerendered]);
/** The scripts a page of this version begins with: their names come from their contents. */
const entries = build.filter((address) => address.includes('/entry/'));

worker.addEventListener('install', (event) => event.waitUntil(keepEverything()));

// The first visit too goes on without a network once everything is kept.
worker.addEventListener('activate', (event) => event.waitUntil(worker.clients.claim()));

worker.addEventListener('message', (event) => {
  if (event.data === 'use now') event.waitUntil(worker.skipWaiting());
  if (event.data === 'which version') event.ports[0].postMessage(version);
  if (event.data === 'page loaded') event.waitUntil(forgetOldVersions());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== worker.location.origin) return;
  const address = pathname.replace(/\/index\.html$/, '/');
  if (kept.has(address)) event.respondWith(fromKept(request, address));
  else if (address.startsWith(`${base}/`) && address.includes('/immutable/'))
    event.respondWith(fromOlderOrNetwork(request));
});

async function keepEverything(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all([...kept].map(async (address) => cache.put(address, await freshCopy(address))));
}

/**
 * One file of this version. A host that answers with something else (an error page sent as a success, a page of
 * another version during an upload, a log-in page of a network) makes the installation fail; the browser tries it
 * again at the next visit.
 */
async function freshCopy(address: string): Promise<Response> {
  if (build.includes(address)) {
    // The name comes from the contents: what an older version has kept is the same file.
    const older = await caches.match(address, { ignoreVary: true });
    if (older) return older;
  }
  const response = await fetch(address, { cache: 'no-cache' });
  const isPage = response.headers.get('content-type')?.startsWith('text/html') ?? false;
  if (!response.ok || isPage !== pages.has(address))
    throw new Error(
      `${address} cannot be kept: the host answered ${response.status} with another kind of file`
    );
  if (!isPage) return response;
  const text = await response.text();
  if (!entries.every((entry) => text.includes(entry.slice(base.length))))
    throw new Error(`${address} cannot be kept: the host sent a page of another version`);
  // A new answer, because a browser refuses one that came by a redirect as the page of an address.
  return new Response(text, { headers: { 'content-type': 'text/html; charset=utf-8' } });
}

/** From this version; from the network only if the browser has thrown the kept copy away. */
async function fromKept(request: Request, address: string): Promise<Response> {
  return (await caches.match(address, { cacheName: CACHE, ignoreVary: true })) ?? fetch(request);
}

/** A page of an older version, open in another window, may still need a file of its own. */
async function fromOlderOrNetwork(request: Request): Promise<Response> {
  return (await caches.match(request, { ignoreVary: true })) ?? fetch(request);
}

/**
 * Deletes what older versions kept. Called by a page that has been loaded: as long as another window is open it may
 * show an older version and need its files, and while a newer version is being fetched or waits, its cache stays.
 */
async function forgetOldVersions(): Promise<void> {
  const { registration } = worker;
  const names = await caches.keys();
  const windows = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const open = windows.filter(({ url }) => url.startsWith(registration.scope));
  if (open.length > 1 || registration.installing || registration.waiting) return;
  const old = names.filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}
