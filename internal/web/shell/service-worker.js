// Keeps the page working without the network. A version of the page is one cache,
// filled whole or not at all. It is used from when the reader agrees to it (see
// boot.js), so that a page never runs with the files of two versions.
"use strict";

const prefix = `toewright ${new URL(self.registration.scope).pathname} `;
const cacheName = prefix + "{{.Version}}";
const resources = {{.ResourcesToCache}};

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "activate") {
    event.waitUntil(self.skipWaiting());
  }
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && new URL(request.url).origin === location.origin) {
    event.respondWith(answer(request));
  }
});

// Asks the server even for what the browser's own cache holds: it may be of the
// version before. One answer that is not in order makes the whole install fail, and
// the version before stays.
async function install() {
  const before = await caches.has(cacheName);
  const cache = await caches.open(cacheName);
  try {
    await cache.addAll(resources.map((url) => new Request(url, { cache: "no-cache" })));
  } catch (err) {
    if (!before) {
      await caches.delete(cacheName);
    }
    throw err;
  }
}

// Removes the caches of this page's other versions, and none else of this origin.
async function activate() {
  const names = await caches.keys();
  await Promise.all(names
    .filter((name) => name.startsWith(prefix) && name !== cacheName)
    .map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request) {
  const cache = await caches.open(cacheName);
  const document = request.mode === "navigate";
  const kept = await cache.match(document ? folderOf(request.url) : request, { ignoreSearch: document, ignoreVary: true });
  return kept ?? fetch(request);
}

// The page is kept under the address of its folder.
function folderOf(url) {
  return url.replace(/\/index\.html(?=[?#]|$)/, "/");
}
