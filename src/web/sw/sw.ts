// The app's files are kept whole, version by version: a page never mixes files of two builds.

interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Extendable {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}
interface Scope {
  addEventListener(kind: "install" | "activate", listener: (event: Extendable) => void): void;
  addEventListener(kind: "fetch", listener: (event: Fetching) => void): void;
  addEventListener(kind: "message", listener: (event: MessageEvent) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  readonly registration: { readonly scope: string };
}

const scope = globalThis as unknown as Scope;

/** Filled in when the app is built. */
const FILES = "__FILES__" as unknown as readonly string[];
const VERSION = "__VERSION__";
const CACHE = `soakline-${VERSION}`;

scope.addEventListener("install", (event) => {
  event.waitUntil(keepAll());
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(dropOthers().then(() => scope.clients.claim()));
});

// The page asks when its user wants the new version; until then the old one goes on working.
scope.addEventListener("message", (event) => {
  if (event.data === "take-over") void scope.skipWaiting();
});

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || !url.href.startsWith(scope.registration.scope)) return;
  const path = url.href.slice(scope.registration.scope.length).split(/[?#]/)[0];
  if (path.startsWith("api/") || path === "server.json") return;
  event.respondWith(kept(request, path));
});

async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: "reload" })));
}

async function dropOthers(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith("soakline-") && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function kept(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(CACHE);
  const wanted = request.mode === "navigate" ? "./" : `./${path}`;
  return (await cache.match(wanted)) ?? fetch(request);
}

export {};
