import { outdatedStores, partOf, storeOf, type Built } from './answers.ts';

/**
 * Keeps the page, so that it opens and flies alone without its server after the first load. The page itself is asked of the server first, so that a new build is
 * taken with the next load; its parts carry a hash in their names and come from the store. Nothing of a table is ever kept.
 */

/** As much of a service worker as is used here; the page's own types know nothing of it. */
interface Lasting extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Asking extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface KeepingWorker {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', act: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', act: (event: Asking) => void): void;
}
declare const self: KeepingWorker;
/** Put here by the build. */
declare const KILTER_BUILT: Built;
const built = KILTER_BUILT;

/** A server that does not answer within this time is not there [ms]. */
const PATIENCE_MS = 4000;

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(takeOver()));
self.addEventListener('fetch', (event) => {
  const part = partOf(event.request, self.registration.scope, built);
  if (part === 'page') event.respondWith(openPage(event.request));
  else if (part === 'part') event.respondWith(givePart(event.request));
});

async function keepAll(): Promise<void> {
  const store = await caches.open(storeOf(built));
  // what has no hash in its name may have changed under it
  await store.addAll(built.files.map((file) => new Request(file, { cache: 'no-cache' })));
  await self.skipWaiting();
}

async function takeOver(): Promise<void> {
  const gone = outdatedStores(await caches.keys(), storeOf(built));
  await Promise.all(gone.map((store) => caches.delete(store)));
  await self.clients.claim();
}

async function openPage(request: Request): Promise<Response> {
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(PATIENCE_MS) });
    return answer.status < 500 ? answer : ((await keptPage()) ?? answer);
  } catch {
    return (await keptPage()) ?? Response.error();
  }
}

async function keptPage(): Promise<Response | undefined> {
  return (await caches.open(storeOf(built))).match('./');
}

async function givePart(request: Request): Promise<Response> {
  const own = await (await caches.open(storeOf(built))).match(request);
  return own ?? (await caches.match(request)) ?? fetch(request);
}
