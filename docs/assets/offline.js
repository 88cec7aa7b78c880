// @ts-check
/**
 * Keeps the site on the device and says how far that is.
 *
 *   import { offline, useNewRelease } from "./offline.js";
 *
 *   offline            an EventTarget that fires "change", with
 *     .value           "off" (this browser cannot, or will not), "pages" (being kept), "runtime"
 *                      (pages kept, calculator being kept), "waiting" (pages kept, calculator
 *                      not yet and no signal), "ready" (all looked up in the cache)
 *     .words           the same for a reader, with counts while something is measured
 *     .update          true once a newer release is wholly kept and waits
 *   useNewRelease()    the reader wants it now: every open tab of the site goes over to it. Each
 *                      tab first fires a cancelable "downflow:reload" on window: cancel it while
 *                      something typed is not yet saved, and call location.reload() afterwards.
 *
 * Two elements can stand in any page and need no more than that:
 *   <df-offline></df-offline>   shows the words
 *   <df-update></df-update>     shows a button once a newer release waits; empty until then
 *
 * "ready offline" is said after looking in the cache, never before. Starting twice is harmless.
 */

import { release } from "./runtime.js";

/** @typedef {"off" | "pages" | "runtime" | "waiting" | "ready"} OfflineName */
/** @typedef {{have: number, need: number}} Counts */
/** @typedef {{release: string, pages: Counts, runtime: Counts, ready: boolean}} Found */

const AGAIN_MS = 60_000;
const ANSWER_MS = 10_000;

class Offline extends EventTarget {
  /** @type {OfflineName} */
  value = "off";
  /** @type {Counts | undefined} */
  counts;
  update = false;

  get words() {
    const part = this.counts ? `: ${this.counts.have} of ${this.counts.need} files` : "";
    return {
      off: "",
      pages: `keeping the pages${part}`,
      runtime: `pages kept; keeping the calculator${part}`,
      waiting: "pages kept; the calculator waits for a signal",
      ready: "ready offline",
    }[this.value];
  }

  /** @param {OfflineName} value @param {Counts} [counts] */
  set(value, counts) {
    this.value = value;
    this.counts = counts;
    this.dispatchEvent(new Event("change"));
  }

  offerUpdate() {
    this.update = true;
    this.dispatchEvent(new Event("change"));
  }
}

export const offline = new Offline();

/** @type {ServiceWorkerRegistration | undefined} */
let registration;

/** @param {ServiceWorker} worker @returns {Promise<Found>} */
function statusOf(worker) {
  return new Promise((resolve, reject) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    setTimeout(() => reject(new Error("no answer")), ANSWER_MS);
    worker.postMessage({ df: "status" }, [port2]);
  });
}

/** Look at what is kept, of the release in use and of one that waits; ask for what is missing. */
async function look() {
  const worker = registration?.active;
  if (!worker) return;
  const found = await statusOf(worker);
  if (found.ready) offline.set("ready");
  else if (found.pages.have < found.pages.need) offline.set("pages", found.pages);
  else offline.set(navigator.onLine ? "runtime" : "waiting", found.runtime);
  if (!found.ready) worker.postMessage({ df: "complete" });
  if (release.release && found.release !== release.release && !registration?.waiting) offline.offerUpdate();
  const next = registration?.waiting;
  if (!next) return;
  if ((await statusOf(next)).ready) offline.offerUpdate();
  else next.postMessage({ df: "complete" });
}

function lookQuietly() {
  look().catch(() => {});
}

/** @param {MessageEvent} event */
function heard({ data }) {
  if (data?.df === "looked") lookQuietly();
  if (data?.df !== "progress" || offline.value === "ready") return;
  if (data.part === "pages") offline.set("pages", data);
  else if (data.have < data.need) offline.set("runtime", data);
}

/** @param {ServiceWorker | null} worker */
function follow(worker) {
  worker?.addEventListener("statechange", () => {
    if (worker.state === "installed" || worker.state === "activated") lookQuietly();
  });
}

export function useNewRelease() {
  if (registration?.waiting) registration.waiting.postMessage({ df: "activate" });
  else reload();
}

function reload() {
  if (dispatchEvent(new CustomEvent("downflow:reload", { cancelable: true }))) location.reload();
}

async function keep() {
  const container = navigator.serviceWorker;
  let controlled = Boolean(container.controller);
  container.addEventListener("message", heard);
  container.addEventListener("controllerchange", () => {
    if (controlled) reload();
    controlled = true;
  });
  registration = await container.register(new URL("sw.js", release.root), { updateViaCache: "none" });
  follow(registration.installing);
  registration.addEventListener("updatefound", () => follow(registration?.installing ?? null));
  container.startMessages();
  addEventListener("online", lookQuietly);
  setInterval(() => {
    if (offline.value !== "ready" || registration?.waiting) lookQuietly();
  }, AGAIN_MS);
  lookQuietly();
}

class DfOffline extends HTMLElement {
  #show = () => {
    if (this.textContent !== offline.words) this.textContent = offline.words;
  };

  connectedCallback() {
    offline.addEventListener("change", this.#show);
    this.#show();
  }

  disconnectedCallback() {
    offline.removeEventListener("change", this.#show);
  }
}

class DfUpdate extends HTMLElement {
  #show = () => {
    if (!offline.update || this.firstChild) return;
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = "New version kept. Use it now";
    button.addEventListener("click", useNewRelease);
    this.append(button);
  };

  connectedCallback() {
    offline.addEventListener("change", this.#show);
    this.#show();
  }

  disconnectedCallback() {
    offline.removeEventListener("change", this.#show);
  }
}

if (!customElements.get("df-offline")) {
  customElements.define("df-offline", DfOffline);
  customElements.define("df-update", DfUpdate);
}

if (release.release && "serviceWorker" in navigator) keep().catch(() => offline.set("off"));
