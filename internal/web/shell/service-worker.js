// Keeps the page working without the network. A version of the page is one set of files,
// kept whole or not at all. What it runs is named by its content, and each file is checked
// before it is kept and before it is handed out, so that no page runs with the files of two
// versions, and a file that was damaged is fetched anew. A new version is used from when
// the reader agrees to it (see boot.js); the one before stays while a tab runs it.
"use strict";

const prefix = `toewright ${new URL(self.registration.scope).pathname} `;
const setName = prefix + "{{.Set}}";
// The beginnings of the files' SHA-256, by the names that the document gives them.
const files = {{.Files}};
const asKept = { ignoreVary: true };

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(tidy().then(() => self.clients.claim())));
self.addEventListener("message", (event) => {
  if (event.data === "activate") {
    event.waitUntil(self.skipWaiting());
  }
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) {
    return;
  }
  if (request.mode === "navigate") {
    event.respondWith(openPage(request));
    event.waitUntil(tidy());
    return;
  }
  const name = request.url.replace(self.registration.scope, "");
  const digest = files[name] ?? /\?([0-9a-f]{16})$/.exec(name)?.[1];
  if (digest) {
    event.respondWith(hand(name, digest, request.cache === "reload").catch(() => Response.error()));
  }
});

// One file that cannot be had makes the whole install fail, and the version before stays.
// If there is none before, or what is left of it opens no page, none needs to agree.
async function install() {
  const alone = !(await caches.match("./"));
  const set = await caches.open(setName);
  try {
    for (const [name, digest] of Object.entries(files)) {
      await set.put(name, await good(await caches.match(name, asKept), digest) ?? await fetched(name, digest));
    }
  } catch (err) {
    await caches.delete(setName);
    throw err;
  }
  if (alone) {
    await self.skipWaiting();
  }
}

// Returns an answer if its content is what the digest stands for.
async function good(answer, digest) {
  if (!answer?.ok) {
    return undefined;
  }
  const sum = await crypto.subtle.digest("SHA-256", await answer.clone().arrayBuffer());
  const hex = Array.from(new Uint8Array(sum, 0, 8), (b) => b.toString(16).padStart(2, "0")).join("");
  return hex === digest ? answer : undefined;
}

// A server that has another file under that name.
class Other extends Error {}

// Asks the server for a file, even if the browser's own cache holds it: that may be of the
// version before.
async function fetched(name, digest) {
  const answer = await good(await fetch(name, { cache: "no-cache" }), digest);
  if (!answer) {
    throw new Other(`${name} at the server is not of this version`);
  }
  return answer;
}

// Hands out a file of this version, or of another that a tab still runs. The program is
// handed out as it is kept, since the page checks it while it compiles it; where it is
// found wanting the page asks for it anew.
async function hand(name, digest, anew) {
  const set = await caches.open(setName);
  const kept = await set.match(name, asKept) ?? await caches.match(name, asKept);
  if (kept && !anew && name.startsWith("web/app.wasm?")) {
    return kept;
  }
  return await good(kept, digest) ?? await heal(name, digest);
}

// Replaces a file that is missing or damaged. If the server has another version by now,
// the kept document is let go, so that the next load takes the server's.
async function heal(name, digest) {
  const set = await caches.open(setName);
  try {
    const answer = await fetched(name, digest);
    if (name in files) {
      await set.put(name, answer.clone());
    }
    return answer;
  } catch (err) {
    if (err instanceof Other && name in files) {
      await set.delete("./");
    }
    throw err;
  }
}

// Answers with the document of this version, whatever else its address says.
async function openPage(request) {
  if (request.url.replace(/(index\.html)?([?#].*)?$/, "") !== self.registration.scope) {
    return fetch(request);
  }
  const set = await caches.open(setName);
  return await good(await set.match("./", asKept), files["./"])
    ?? heal("./", files["./"]).catch(() => fetch(request)).catch(() => new Response(damaged, html));
}

const html = { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } };
const damaged = `<!doctype html><meta name="viewport" content="width=device-width"><title>Toewright</title>
<p>The copy of this page on this device is damaged, and the server cannot be reached.
Load the page again with a network. Your studies are kept.</p>`;

// Removes the sets of this page that no tab runs, once none is on its way; and none else of
// this origin. A page says by a lock which set it runs.
async function tidy() {
  if (self.registration.installing || self.registration.waiting) {
    return;
  }
  const locks = await navigator.locks?.query();
  const inUse = new Set(locks?.held.map((lock) => lock.name));
  const sets = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== setName);
  await Promise.all(sets.filter((name) => !inUse.has(name)).map((name) => caches.delete(name)));
}
