// The service worker: keeps one whole version of the app on the phone and serves it without asking the network. A new
// version is fetched completely, then waits until a person asks for it. Data never passes through here.

declare const self: ServiceWorkerGlobalScope;

const prefix = "rimside-";
const own = `${prefix}${__VERSION__}`;
const scope = new URL(self.registration.scope);
const shell = new URL("./", scope).href;

self.addEventListener("install", (event) => event.waitUntil(precache()));

self.addEventListener("message", (event) => {
  if (event.data === "take over") void self.skipWaiting();
});

self.addEventListener("activate", (event) => event.waitUntil(takeOver()));

self.addEventListener("fetch", (event) => {
  const wanted = cacheable(event.request);
  if (wanted !== undefined) event.respondWith(serve(event.request, wanted));
});

// precache is all or nothing: half a version is worse than the old one.
async function precache(): Promise<void> {
  try {
    const fetched = await Promise.all(__FILES__.map(fresh));
    const cache = await caches.open(own);
    await Promise.all(fetched.map(([url, response]) => cache.put(url, response)));
  } catch (error) {
    await caches.delete(own);
    throw error; // the browser tries again at its next check
  }
}

async function fresh(path: string): Promise<[string, Response]> {
  const url = new URL(path, scope).href;
  const response = await fetch(url, { cache: "reload" });
  // A redirect would be some login page or portal, not the app.
  if (!response.ok || response.redirected) throw new Error(`${url} answered ${response.status}`);
  return [url, response];
}

async function takeOver(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(prefix) && name !== own).map((name) => caches.delete(name)));
  await self.clients.claim();
}

// cacheable gives the address to look up, or undefined for what is left to the network.
function cacheable(request: Request): string | undefined {
  if (request.method !== "GET") return undefined;
  const url = new URL(request.url);
  if (url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname)) return undefined;
  const path = url.pathname.slice(scope.pathname.length);
  if (/^(api|recover)(\/|$)/.test(path) || path === "version.json" || path === "sw.js") return undefined;
  url.hash = "";
  if (request.mode !== "navigate") return url.href;
  return path === "" || path === "index.html" ? shell : undefined;
}

async function serve(request: Request, wanted: string): Promise<Response> {
  const cache = await caches.open(own);
  // The stored answers may say that they vary by encoding; here they are decoded, so that does not matter.
  return (await cache.match(wanted, { ignoreVary: true })) ?? fetch(request);
}

export {};
