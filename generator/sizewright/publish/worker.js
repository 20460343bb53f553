// The service worker of a site: what was seen once can be read again without a network.
// Above stand FILES, the digest of every file by its path from the top of the site, VERSION, that of them all, and
// LANGUAGES, by the folder of each what is said in it where there is no network.
"use strict";

const TOP = new URL("./", self.location);
const OURS = `sizewright ${TOP.pathname} `;
const CACHE = OURS + VERSION;
const PATIENCE = 3000; // milliseconds until a page that is kept is shown instead of one that does not come

// What never changes under its name without the digest changing, and is never wrong: no network is asked for it.
const STEADY = /\.(woff2|svg|png|jpe?g|webp|gif|avif)$/;

const pathOf = (address) => {
  const url = new URL(address);
  if (url.origin !== TOP.origin || !url.pathname.startsWith(TOP.pathname)) return null;
  const path = decodeURI(url.pathname.slice(TOP.pathname.length));
  return path === "" || path.endsWith("/") ? `${path}index.html` : path;
};
const keyOf = (path) => new URL(encodeURI(path), TOP).href;
const languageOf = (path) => Object.keys(LANGUAGES).find((below) => below && path.startsWith(below)) ?? "";
const isTop = (path, below) =>
  path.startsWith(below) && path.endsWith(".html") && !path.slice(below.length).includes("/");
const isCore = (path) => path.startsWith("theme/") || isTop(path, "");

const digestOf = async (response) => {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await response.clone().arrayBuffer()));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("").slice(0, 12);
};
const keeps = (response) => response.ok && !response.redirected && response.type === "basic" && response.status === 200;

const older = async () => (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== CACHE);

// Taken from what is kept of an older version where it is still the same, else from the network; a page that nobody has
// read is left alone.
const bring = async (cache, path, olds) => {
  const kept = (await Promise.all(olds.map((old) => old.match(keyOf(path))))).find(Boolean);
  if (kept && (await digestOf(kept)) === FILES[path]) return cache.put(keyOf(path), kept);
  if (!kept && !isCore(path)) return undefined;
  const fresh = await fetch(keyOf(path), { cache: "no-cache" });
  return keeps(fresh) ? cache.put(keyOf(path), fresh) : undefined;
};

const install = async () => {
  const cache = await caches.open(CACHE);
  const olds = await Promise.all((await older()).map((name) => caches.open(name)));
  await Promise.allSettled(Object.keys(FILES).map((path) => bring(cache, path, olds)));
  await self.skipWaiting();
};

// An open page that shows an older text than the new version has is told so; what it shows stays as it is.
const tellOpenPages = async (olds) => {
  for (const client of await self.clients.matchAll({ type: "window", includeUncontrolled: true })) {
    const path = pathOf(client.url);
    const shown = path && (await Promise.all(olds.map((old) => old.match(keyOf(path))))).find(Boolean);
    if (shown && path in FILES && (await digestOf(shown)) !== FILES[path]) client.postMessage({ changed: path });
  }
};

const activate = async () => {
  const names = await older();
  await tellOpenPages(await Promise.all(names.map((name) => caches.open(name))));
  await Promise.all(names.map((name) => caches.delete(name)));
  await self.clients.claim();
};

const fetched = async (request, path) => {
  const response = await fetch(request, { cache: "no-cache" });
  if (keeps(response)) await (await caches.open(CACHE)).put(keyOf(path), response.clone());
  return response;
};

const missing = (path) => {
  const below = languageOf(path);
  const { lang, title, heading, text, link } = LANGUAGES[below];
  return new Response(
    `<!doctype html><html lang="${lang}"><meta charset="utf-8"><meta name="viewport" content="width=device-width">` +
      `<title>${title}</title><h1>${heading}</h1><p>${text} <a href="${TOP.pathname}${below}index.html">${link}</a></p></html>`,
    { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } },
  );
};

const later = (time) => new Promise((wake) => {
  setTimeout(wake, time);
});

// The network first, so that a corrected pattern is never read as it was; what is kept where the network does not answer.
const freshest = async (event, path) => {
  const kept = await caches.match(keyOf(path), { cacheName: CACHE });
  const network = fetched(event.request, path);
  if (!kept) return event.request.mode === "navigate" ? network.catch(() => missing(path)) : network;
  const first = await Promise.race([network.catch(() => null), later(PATIENCE)]);
  if (first && first.status < 500) return first;
  const shown = await digestOf(kept);
  const tell = async () => {
    const fresh = await network.catch(() => null);
    if (!fresh || !keeps(fresh) || (await digestOf(fresh)) === shown) return;
    (await self.clients.get(event.resultingClientId))?.postMessage({ changed: path });
  };
  if (event.request.mode === "navigate") event.waitUntil(tell());
  return kept;
};

const steady = async (request, path) =>
  (await caches.match(keyOf(path), { cacheName: CACHE })) ?? fetched(request, path);

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const path = request.method === "GET" && !request.headers.has("range") ? pathOf(request.url) : null;
  if (path === null || !(path in FILES)) return;
  event.respondWith(STEADY.test(path) ? steady(request, path) : freshest(event, path));
});

// A page tells what it has loaded before this worker was there, or wants kept, and is told what is kept of it; whoever reads
// in a language has its lists at hand.
self.addEventListener("message", (event) => {
  const asked = event.data?.seen ?? [];
  const seen = asked.map(pathOf).filter((path) => path !== null && path in FILES);
  const spoken = new Set(seen.map(languageOf).filter(Boolean));
  const tops = Object.keys(FILES).filter((path) => [...spoken].some((below) => isTop(path, below)));
  const paths = [...new Set([...seen, ...tops])];
  const keep = async (path) => {
    const cache = await caches.open(CACHE);
    if (await cache.match(keyOf(path))) return;
    const response = await fetch(keyOf(path));
    if (keeps(response)) await cache.put(keyOf(path), response);
  };
  const done = async () => {
    await Promise.allSettled(paths.map(keep));
    if (!event.ports.length) return;
    const cache = await caches.open(CACHE);
    const found = await Promise.all(asked.map((address) => cache.match(keyOf(pathOf(address) ?? ""))));
    event.ports[0].postMessage({ kept: asked.filter((_, at) => found[at]) });
  };
  event.waitUntil(done());
});
