// @ts-check
/**
 * Keeps a release on the device, so that the site works with no server.
 *
 * The build writes the release in front of this text: its id and every file with its hash. A
 * release comes in two parts: the pages, all or nothing, while this worker installs; then the
 * runtime, which has its own retry. Files are kept by their content: one that a new release
 * shares with the old is not asked for again, and one whose content is not what the release
 * names is not taken. A new release waits until the reader says so or every tab is closed.
 *
 * In:  {df: "status"} over a MessageChannel   what is kept, after looking
 *      {df: "complete"}                       get what is missing of the runtime
 *      {df: "activate"}                       the reader wants the new release now
 * Out: {df: "progress", release, part, have, need} to every page
 *
 * The homeowner's page is no business of this worker: nothing under h/ is answered or kept.
 */

/** @typedef {{path: string, sha256: string, part: "pages" | "runtime"}} Item */
/** @typedef {"pages" | "runtime"} Part */

const me = /** @type {ServiceWorkerGlobalScope & {DF_RELEASE: {release: string, files: Item[]}}} */ (
  /** @type {unknown} */ (self)
);
const { release, files } = me.DF_RELEASE;
const scope = new URL(me.registration.scope);
const CACHE = "downflow-files";
const TRIES = 4;
const AT_ONCE = 4;
const byPath = new Map(files.map((item) => [item.path, item]));

/** Where a file's content lies in the cache: its hash, and its name for its type.
 *  @param {Item} item */
function place({ path, sha256 }) {
  return new URL(`df-file/${sha256}/${path.slice(path.lastIndexOf("/") + 1)}`, scope).href;
}

/** The address to ask for; a folder's page by its folder, as some hosts redirect the other.
 *  @param {string} path */
function address(path) {
  return new URL(path.replace(/(^|\/)index\.html$/, "$1"), scope).href;
}

/** @param {ArrayBuffer} bytes */
async function hash(bytes) {
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...sum].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Get one file from the site, check that it is the one named, and keep it.
 *  @param {Item} item */
async function get(item) {
  const answer = await fetch(address(item.path), { cache: "no-cache", credentials: "same-origin" });
  if (!answer.ok) throw new Error(`${item.path}: status ${answer.status}`);
  const bytes = await answer.arrayBuffer();
  if ((await hash(bytes)) !== item.sha256) throw new Error(`${item.path}: not of this release`);
  const headers = { "Content-Type": answer.headers.get("Content-Type") ?? "application/octet-stream" };
  const policy = answer.headers.get("Content-Security-Policy");
  const kept = new Response(bytes, { headers: policy ? { ...headers, "Content-Security-Policy": policy } : headers });
  await (await caches.open(CACHE)).put(place(item), kept.clone());
  return kept;
}

/** @param {Item} item */
async function getPatiently(item) {
  for (let tried = 1; ; tried++) {
    try {
      return await get(item);
    } catch (error) {
      if (tried >= TRIES) throw error;
      await new Promise((resolve) => setTimeout(resolve, 500 * 2 ** tried));
    }
  }
}

/** @param {Part} part */
async function lookAt(part) {
  const kept = new Set((await (await caches.open(CACHE)).keys()).map((request) => request.url));
  const wanted = files.filter((item) => item.part === part);
  return { wanted, missing: wanted.filter((item) => !kept.has(place(item))) };
}

/** @param {object} message */
async function tellAll(message) {
  for (const client of await me.clients.matchAll({ includeUncontrolled: true })) client.postMessage(message);
}

/** @param {Part} part */
async function bring(part) {
  for (let round = 1; ; round++) {
    const { wanted, missing } = await lookAt(part);
    const need = wanted.length;
    let have = need - missing.length;
    await tellAll({ df: "progress", release, part, have, need });
    if (!missing.length) return;
    if (round > TRIES) throw new Error(`${part}: ${missing.length} files would not stay`);
    const left = [...missing];
    const oneAfterAnother = async () => {
      for (let item = left.shift(); item; item = left.shift()) {
        await getPatiently(item);
        have += 1;
        await tellAll({ df: "progress", release, part, have, need });
      }
    };
    const outcomes = await Promise.allSettled(Array.from({ length: AT_ONCE }, oneAfterAnother));
    const failed = outcomes.find((outcome) => outcome.status === "rejected");
    if (failed) throw failed.reason;
  }
}

/** @type {Promise<void> | undefined} */
let bringing;

function bringRuntime() {
  bringing ??= bring("runtime").finally(() => {
    bringing = undefined;
  });
  return bringing;
}

async function status() {
  const [pages, runtime] = await Promise.all([lookAt("pages"), lookAt("runtime")]);
  /** @param {{wanted: Item[], missing: Item[]}} part */
  const counts = ({ wanted, missing }) => ({ have: wanted.length - missing.length, need: wanted.length });
  return {
    release,
    pages: counts(pages),
    runtime: counts(runtime),
    ready: !pages.missing.length && !runtime.missing.length,
  };
}

async function prune() {
  const cache = await caches.open(CACHE);
  const wanted = new Set(files.map(place));
  for (const request of await cache.keys()) if (!wanted.has(request.url)) await cache.delete(request);
}

/** @param {Request} request @param {string} path */
async function answer(request, path) {
  const item = byPath.get(path === "" || path.endsWith("/") ? `${path}index.html` : path);
  if (item) {
    const kept = await (await caches.open(CACHE)).match(place(item));
    return kept ?? get(item).catch(() => fetch(request));
  }
  if (byPath.has(`${path}/index.html`)) return Response.redirect(new URL(`${path}/`, scope).href, 301);
  try {
    return await fetch(request);
  } catch (error) {
    const missing = byPath.get("404.html");
    const page = missing && request.mode === "navigate" && (await (await caches.open(CACHE)).match(place(missing)));
    if (!page) throw error;
    return new Response(page.body, { status: 404, headers: page.headers });
  }
}

me.addEventListener("install", (event) => event.waitUntil(bring("pages")));

me.addEventListener("activate", (event) => event.waitUntil(prune().then(() => me.clients.claim())));

me.addEventListener("message", (event) => {
  const { df } = event.data ?? {};
  if (df === "status") event.waitUntil(status().then((found) => event.ports[0].postMessage(found)));
  else if (df === "complete") event.waitUntil(bringRuntime().catch(() => {}).then(() => tellAll({ df: "looked", release })));
  else if (df === "activate") event.waitUntil(me.skipWaiting());
});

me.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== scope.origin) return;
  if (!url.pathname.startsWith(scope.pathname)) return;
  const path = decodeURIComponent(url.pathname.slice(scope.pathname.length));
  if (/^(h|h\/.*|sw\.js|release\.json)$/.test(path)) return;
  event.respondWith(answer(event.request, path));
});
