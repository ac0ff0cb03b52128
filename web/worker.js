"use strict";
// Keeps one complete version of the app on the device and answers from it. A
// new version is fetched as a whole, waits, and takes over only when the user
// agrees or every page of the old one is closed.
const VERSION = "{{version}}";
const FILES = {{files}};
const SCOPE = new URL(self.registration.scope).pathname;
const FAMILY = `coilbook ${SCOPE} `; // a space cannot be part of the scope
const CACHE = FAMILY + VERSION;

self.addEventListener("install", (event) => event.waitUntil(fill()));

async function fill() {
  const complete = await caches.has(CACHE); // the same version, deployed again
  try {
    const cache = await caches.open(CACHE);
    // Asking the server each time keeps an older file out of a newer version.
    await cache.addAll(FILES.map((file) => new Request(file, { cache: "no-cache" })));
    const entry = await cache.match(SCOPE);
    // A redirected page must not answer a navigation; browsers refuse it.
    if (!entry || entry.redirected) throw new Error("the entry page is redirected");
  } catch (error) {
    if (!complete) await caches.delete(CACHE);
    throw error;
  }
}

self.addEventListener("activate", (event) => event.waitUntil(dropOldVersions()));

async function dropOldVersions() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(FAMILY) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

self.addEventListener("message", (event) => {
  const type = event.data && event.data.type;
  if (type === "take-over") event.waitUntil(self.skipWaiting());
  if (type === "version" && event.ports[0]) event.ports[0].postMessage(VERSION);
});

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  const { origin, pathname } = new URL(url);
  const ours = origin === self.location.origin && pathname.startsWith(SCOPE);
  if (method === "GET" && ours) event.respondWith(answer(event.request));
});

async function answer(request) {
  const cache = await caches.open(CACHE); // never a mix of versions
  const how = { ignoreSearch: true, ignoreVary: true };
  const target = request.mode === "navigate" ? SCOPE : request;
  return (await cache.match(target, how)) || fetch(request);
}
