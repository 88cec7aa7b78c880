// @ts-check
/**
 * The one door to Python in the browser. Import it from any module; there is one worker a page.
 *
 *   import { ask, start, startWhenIdle, state } from "./runtime.js";
 *
 *   ask(op, payload, {key})   puts {op, ...payload} to downflow.bridge and resolves to its parsed
 *                             answer. Starts the runtime if need be. With a `key`, at most one
 *                             question runs and only the newest waits: an older one that was
 *                             still waiting resolves to null (drop it). Use one key for each
 *                             thing shown, as "render heat-loss", and another for its range.
 *                             Questions of one kind without a key all run, in order.
 *                             `{later: true}` lets every question without it go first.
 *                             Rejects with a RuntimeFailed when the runtime fails or will not
 *                             start, and when Python itself broke down on this question.
 *   start()                   begins to get the runtime; more than once is harmless. Call it when
 *                             a field gets focus.
 *   startWhenIdle()           the same, once the page has loaded and has nothing to do.
 *   tryAgain()                after "failed": starts afresh.
 *   state                     an EventTarget with `value`, one of "idle", "getting", "starting",
 *                             "ready", "failed", `words` for a reader, `why` for a report. It
 *                             fires "change".
 *   release                   {release, runtime, root}: what this page was built with.
 *
 * Marks: performance.mark("downflow:runtime-ready") and ("downflow:first-answer").
 * No number is made, changed or rounded here: what comes from Python is passed on as it is.
 */

/** @typedef {"idle" | "getting" | "starting" | "ready" | "failed"} StateName */
/** @typedef {{n: number, text: string, key: string | undefined, later: boolean,
 *   resolve: (answer: any) => void, reject: (error: Error) => void}} Question */

const WORDS = {
  idle: "",
  getting: "getting the calculator",
  starting: "starting it",
  ready: "ready",
  failed: "the calculator did not start",
};

/** Why a question got no answer: the runtime is not there. */
export class RuntimeFailed extends Error {}

class State extends EventTarget {
  /** @type {StateName} */
  value = "idle";
  why = "";

  get words() {
    return WORDS[this.value];
  }

  /** @param {StateName} value @param {string} [why] */
  set(value, why = "") {
    if (this.value === value) return;
    this.value = value;
    this.why = why;
    this.dispatchEvent(new Event("change"));
  }
}

export const state = new State();

const root = new URL("..", import.meta.url);
const built = JSON.parse(document.getElementById("df-release")?.textContent || "{}");
export const release = { release: built.release, runtime: built.runtime, root: root.href };

/** Longest waits, in seconds: a hang becomes a failure that can be tried again. */
const LIMITS = { getting: 300, starting: 60, answer: 60, ...built.limits };

/** @type {Worker | undefined} */
let worker;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let limit;
/** @type {Question | undefined} */
let running;
/** @type {Question[]} */
let waiting = [];
let count = 0;
let snapshot = "DecompressionStream" in globalThis;

export function start() {
  if (worker || state.value === "failed") return;
  launch();
}

export function startWhenIdle() {
  const idle = () =>
    "requestIdleCallback" in globalThis ? requestIdleCallback(start, { timeout: 4000 }) : setTimeout(start, 300);
  if (document.readyState === "complete") idle();
  else addEventListener("load", idle, { once: true });
}

export function tryAgain() {
  if (state.value !== "failed") return;
  state.set("idle");
  launch();
}

/**
 * @param {string} op
 * @param {object} [payload]
 * @param {{key?: string, later?: boolean}} [how]
 * @returns {Promise<any>}
 */
export function ask(op, payload = {}, { key, later = false } = {}) {
  return new Promise((resolve, reject) => {
    if (state.value === "failed") {
      reject(new RuntimeFailed(state.why));
      return;
    }
    if (key !== undefined) {
      for (const older of waiting.filter((each) => each.key === key)) older.resolve(null);
      waiting = waiting.filter((each) => each.key !== key);
    }
    waiting.push({ n: ++count, text: JSON.stringify({ op, ...payload }), key, later, resolve, reject });
    start();
    next();
  });
}

function next() {
  if (running || state.value !== "ready" || !worker) return;
  running = waiting.find((each) => !each.later) ?? waiting[0];
  if (!running) return;
  waiting = waiting.filter((each) => each !== running);
  worker.postMessage({ n: running.n, text: running.text });
  watch(LIMITS.answer, "no answer");
}

/** @param {number} seconds @param {string} what */
function watch(seconds, what) {
  clearTimeout(limit);
  limit = setTimeout(() => brokeDown(`${what} in ${seconds} s`), seconds * 1000);
}

function launch() {
  if (!built.runtime) {
    fail("this page names no runtime");
    return;
  }
  const mine = new Worker(new URL("worker.js", import.meta.url), { type: "module", name: "downflow" });
  worker = mine;
  mine.addEventListener("message", ({ data }) => {
    if (worker === mine) heard(data);
  });
  mine.addEventListener("error", (event) => {
    event.preventDefault();
    if (worker === mine) brokeDown(event.message || "the worker did not load");
  });
  enter("getting");
  mine.postMessage({ boot: { base: new URL(built.runtime, root).href, snapshot } });
}

/** @param {"getting" | "starting"} value */
function enter(value) {
  state.set(value);
  watch(LIMITS[value], `${WORDS[value]}: not done`);
}

/** @param {{state?: StateName, why?: string, n?: number, text?: string}} data */
function heard(data) {
  if (data.state === "getting" || data.state === "starting") enter(data.state);
  else if (data.state === "ready") {
    clearTimeout(limit);
    performance.mark("downflow:runtime-ready");
    state.set("ready");
    next();
  } else if (data.state === "failed") brokeDown(data.why ?? "");
  else if (running && data.n === running.n) answered(running, data);
}

/** @param {Question} question @param {{why?: string, text?: string}} data */
function answered(question, data) {
  if (data.text === undefined) {
    brokeDown(data.why ?? "");
    return;
  }
  clearTimeout(limit);
  running = undefined;
  if (!performance.getEntriesByName("downflow:first-answer").length) {
    performance.mark("downflow:first-answer");
  }
  question.resolve(JSON.parse(data.text));
  next();
}

/**
 * A start from kept memory that fails is made once more from the files themselves.
 * @param {string} why
 */
function brokeDown(why) {
  worker?.terminate();
  worker = undefined;
  clearTimeout(limit);
  if (snapshot && state.value !== "ready") {
    snapshot = false;
    launch();
    return;
  }
  fail(why);
}

/** @param {string} why */
function fail(why) {
  const left = running ? [running, ...waiting] : waiting;
  running = undefined;
  waiting = [];
  state.set("failed", why);
  for (const question of left) question.reject(new RuntimeFailed(why));
}
