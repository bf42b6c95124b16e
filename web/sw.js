"use strict";

// Keeps one whole version of the program on the device and answers from it.
// The build fills in the version, which is made from the content of the files.
const version = "{{version}}";
const files = ["{{files}}"];
const page = "./";

// Other copies of the program on the same host have their own stores.
const prefix = `riserwork ${self.registration.scope} `;
const storeName = prefix + version;

self.addEventListener("install", (event) => event.waitUntil(fetchAll()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(self.registration.scope)) {
    event.respondWith(answer(request));
  }
});

async function fetchAll() {
  const store = await caches.open(storeName);
  // The server is asked whether the browser's own copy is still good.
  await store.addAll(files.map((name) => new Request(name, { cache: "no-cache" })));
  await self.skipWaiting();
}

async function takeOver() {
  for (const name of await caches.keys()) {
    if (name.startsWith(prefix) && name !== storeName) await caches.delete(name);
  }
  await self.clients.claim();
}

async function answer(request) {
  const store = await caches.open(storeName);
  const options = { ignoreSearch: true, ignoreVary: true };
  if (request.mode !== "navigate") return (await store.match(request, options)) ?? fetch(request);
  // The page names its files relative to itself, so it is shown at the top
  // only. A host that keeps it in a folder puts a slash behind its name.
  const scope = self.registration.scope;
  const { pathname, search } = new URL(request.url);
  const [name, ...below] = pathname.slice(new URL(scope).pathname.length).split("/");
  if (below.length > 0) return Response.redirect(below.join("") === "" ? scope + name + search : scope);
  return (await store.match(page, options)) ?? fetch(request);
}
