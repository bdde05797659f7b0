// The service worker: keeps the site's own files, and nothing else, so that the page opens without a network. Each is kept by the
// SHA-256 of its content and checked against it, so that no two versions are mixed. A newer version is
// fetched beside the one in use and waits until somebody asks for it.
const files = {{files}};
const scope = new URL("./", self.location).href;
const store = "cohoist files of " + scope;
const keyOf = (name) => scope + name + "?sha256=" + files[name];

async function fetched(name) {
  const address = name === "index.html" ? scope : scope + name + "?v=" + files[name].slice(0, 12);
  for (const cache of ["default", "reload"]) { // what the page has just loaded need not be loaded again
    const answer = await fetch(address, { cache, credentials: "same-origin" });
    if (!answer.ok) continue;
    const body = await answer.arrayBuffer();
    const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
    if (Array.from(sum, (b) => b.toString(16).padStart(2, "0")).join("") !== files[name]) continue;
    const headers = new Headers(answer.headers);
    for (const gone of ["Content-Encoding", "Content-Length"]) headers.delete(gone); // the body is plain now
    return new Response(body, { headers });
  }
  throw new Error(name + " is not of this version");
}

async function fill() {
  const cache = await caches.open(store);
  for (const name of Object.keys(files)) {
    if (!(await cache.match(keyOf(name)))) await cache.put(keyOf(name), await fetched(name));
  }
}

async function tidy() {
  const cache = await caches.open(store), wanted = new Set(Object.keys(files).map(keyOf));
  for (const request of await cache.keys()) {
    if (!wanted.has(request.url)) await cache.delete(request);
  }
  await self.clients.claim();
}

self.addEventListener("install", (e) => e.waitUntil(fill()));
self.addEventListener("activate", (e) => e.waitUntil(tidy()));
self.addEventListener("message", (e) => { if (e.data === "take over") self.skipWaiting(); });
self.addEventListener("fetch", (e) => {
  const url = new URL(e.request.url);
  if (e.request.method !== "GET" || !url.href.startsWith(scope)) return;
  const name = url.pathname.slice(new URL(scope).pathname.length) || "index.html", v = url.searchParams.get("v");
  if (!Object.hasOwn(files, name) || v && !files[name].startsWith(v)) return; // not ours, or of another version
  e.respondWith(caches.open(store).then((cache) => cache.match(keyOf(name))).then((kept) => kept || fetch(e.request)));
});
