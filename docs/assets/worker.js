// @ts-check
/**
 * The calculators' own thread. It starts Python from our own files and answers messages.
 *
 * In:   {boot: {base, snapshot}}   start; `base` is the folder of one runtime, by its hash
 *       {n, text}                  one question, JSON text
 * Out:  {state: "getting" | "starting" | "ready"}, {state: "failed", why}
 *       {n, text}                  the answer to question n, JSON text
 *       {n, why}                   question n could not be put at all
 *
 * Nothing here may ask another origin for anything: `fetch` refuses that before Python loads,
 * and the other ways out are taken away.
 */

const home = self.location.origin;
const ownFetch = self.fetch.bind(self);

/** @type {((text: string) => string) | undefined} */
let handle;

/** @param {RequestInfo | URL} what @param {RequestInit} [how] */
self.fetch = (what, how) => {
  const address = new URL(what instanceof Request ? what.url : String(what), self.location.href);
  if (address.origin !== home) {
    return Promise.reject(new TypeError(`Refused: ${address.origin} is not this site.`));
  }
  return ownFetch(what, how).then((answer) => {
    if (!answer.ok) throw new Error(`status ${answer.status}`);
    arrived(address.pathname);
    return answer;
  }).catch((error) => {
    // Python's own start would wait for ever for some of its files.
    if (!handle) self.postMessage({ state: "failed", why: `${address.pathname}: ${reason(error)}` });
    throw error;
  });
};
for (const wayOut of ["XMLHttpRequest", "WebSocket", "EventSource", "WebTransport", "Worker"]) {
  Reflect.deleteProperty(self, wayOut);
}

/** Files that have begun to arrive; with the last of them, getting ends and starting begins. */
const awaited = new Set(["pyodide.asm.wasm", "python.zip"]);

/** @param {string} path */
function arrived(path) {
  const name = path.slice(path.lastIndexOf("/") + 1);
  if (awaited.delete(name) && !awaited.size) self.postMessage({ state: "starting" });
}

/**
 * The kept memory of a started runtime, unpacked. A host may already have unpacked it.
 * @param {string} address
 */
async function memory(address) {
  const bytes = await (await self.fetch(address)).arrayBuffer();
  const head = new Uint8Array(bytes, 0, 2);
  if (head[0] !== 0x1f || head[1] !== 0x8b) return bytes;
  const unpacked = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(unpacked).arrayBuffer();
}

/** @param {{base: string, snapshot: boolean}} from */
async function boot({ base, snapshot }) {
  self.postMessage({ state: "getting" });
  if (new URL(base).origin !== home) throw new TypeError("Refused: the runtime is not this site's.");
  const kept = snapshot ? memory(`${base}memory.pack`) : undefined;
  kept?.catch(() => {});
  const lock = self.fetch(`${base}lock.json`).then((answer) => answer.text());
  lock.catch(() => {});
  const { loadPyodide } = await import(`${base}pyodide.mjs`);
  const py = await loadPyodide({
    indexURL: base,
    stdLibURL: `${base}python.zip`,
    packageBaseUrl: base,
    lockFileContents: lock,
    ...(kept ? { _loadSnapshot: kept } : {}),
  });
  handle = py.pyimport("downflow.bridge").handle;
  self.postMessage({ state: "ready" });
}

/** @param {unknown} error */
function reason(error) {
  return error instanceof Error ? error.message : String(error);
}

self.addEventListener("message", (event) => {
  const { data } = /** @type {MessageEvent} */ (event);
  if (data.boot) {
    boot(data.boot).catch((error) => self.postMessage({ state: "failed", why: reason(error) }));
    return;
  }
  try {
    if (!handle) throw new Error("not started");
    self.postMessage({ n: data.n, text: handle(data.text) });
  } catch (error) {
    self.postMessage({ n: data.n, why: reason(error) });
  }
});
