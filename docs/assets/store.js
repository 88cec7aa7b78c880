// @ts-check
/**
 * The jobs on this device: several are kept, one is open.
 *
 *   import { jobs } from "./store.js";
 *
 *   await jobs.ready            the open job is known (or that there is none)
 *   jobs.current                {id, name, text, …} or null; `text` is the job's file, never looked into
 *   jobs.apply(op, request)     puts one change to Python on the open job and keeps the result.
 *                               Resolves to Python's reply, with ok false when it refused.
 *   jobs.start(name) open(id) copy() rename(name) remove(id) add(text) undo()
 *   jobs.list()                 what is kept: {id, name, saved, exported, changed}
 *   jobs.kept                   "kept" | "may go" | "memory"; `jobs.words` says it to a reader
 *   jobs                        fires "change" when another job is open or this one changed
 *                               somewhere else, "saved" after each save, "trouble" when one failed
 *
 * A change is made on the text that this tab holds and kept afterwards, under a lock. If another
 * tab has kept something in between, the change is made once more on that newer text: two tabs
 * never overwrite each other. Each save is read back. Where the device keeps nothing, work goes
 * on in memory, and the page says so.
 */

import { ask } from "./runtime.js";

/**
 * @typedef {{id: string, name: string, text: string, saved: string, revision: number,
 *   exported: string, exportedRevision: number, begun: string[]}} Kept
 * @typedef {{what: string, name: string, before: Kept[], after: string[], open: string | null}} Undo
 * @typedef {{op: string, request: Record<string, any>}} Change
 */

const NAME = "downflow";
const OPEN = "downflow.open";

/** @template T @param {IDBRequest<T>} request @returns {Promise<T>} */
const done = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error ?? new Error("the device refused"));
});

/** @param {IDBTransaction} work @returns {Promise<void>} */
const ended = (work) => new Promise((resolve, reject) => {
  work.oncomplete = () => resolve();
  work.onabort = () => reject(work.error ?? new Error("the device refused"));
  work.onerror = () => reject(work.error ?? new Error("the device refused"));
});

/** What holds the jobs: the device, or only this page while it is open. */
class Shelf {
  /** @type {IDBDatabase | undefined} */
  base;
  /** @type {Map<string, any>} */
  memory = new Map();

  async reach() {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("jobs", { keyPath: "id" });
      request.result.createObjectStore("meta");
    };
    this.base = await done(request);
    this.base.onversionchange = () => this.base?.close();
  }

  /** @param {string} id @returns {Promise<Kept | undefined>} */
  async get(id) {
    return this.base ? done(this.base.transaction("jobs").objectStore("jobs").get(id)) : this.memory.get(id);
  }

  /** @returns {Promise<Kept[]>} */
  async all() {
    return this.base ? done(this.base.transaction("jobs").objectStore("jobs").getAll())
      : [...this.memory.values()];
  }

  /** Keeps a job and reads it back. @param {Kept} job */
  async put(job) {
    if (!this.base) {
      this.memory.set(job.id, job);
      return;
    }
    const work = this.base.transaction("jobs", "readwrite");
    work.objectStore("jobs").put(job);
    await ended(work);
    const back = await this.get(job.id);
    if (back?.text !== job.text || back.revision !== job.revision) {
      throw new Error("what was read back differs from what was kept");
    }
  }

  /** @param {string} id */
  async drop(id) {
    if (!this.base) {
      this.memory.delete(id);
      return;
    }
    const work = this.base.transaction("jobs", "readwrite");
    work.objectStore("jobs").delete(id);
    await ended(work);
  }

  /** @param {string} key @returns {Promise<any>} */
  async note(key) {
    return this.base ? done(this.base.transaction("meta").objectStore("meta").get(key)) : this.memory.get(`meta ${key}`);
  }

  /** @param {string} key @param {any} value */
  async keepNote(key, value) {
    if (!this.base) {
      this.memory.set(`meta ${key}`, value);
      return;
    }
    const work = this.base.transaction("meta", "readwrite");
    if (value === null) work.objectStore("meta").delete(key);
    else work.objectStore("meta").put(value, key);
    await ended(work);
  }
}

/** @param {string} name @param {() => Promise<void>} work @returns {Promise<void>} */
async function alone(name, work) {
  if ("locks" in navigator && navigator.locks) await navigator.locks.request(`downflow ${name}`, work);
  else await work();
}

/** @param {string} key */
const fromLocal = (key) => {
  try { return JSON.parse(localStorage.getItem(key) ?? "null"); } catch { return null; }
};
/** @param {string} key @param {any} value */
const toLocal = (key, value) => {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
  } catch { /* nothing is kept here; the page works on */ }
};

export const now = () => new Date().toISOString();
/** A day as the job sheet writes it, by this device's clock. @param {Date} [day] */
export const today = (day = new Date()) => day.toLocaleDateString("sv-SE");
const newName = () => `Job of ${new Intl.DateTimeFormat(undefined, { dateStyle: "medium" }).format(new Date())}`;

class Jobs extends EventTarget {
  shelf = new Shelf();
  /** @type {Kept | null} */
  current = null;
  /** @type {"kept" | "may go" | "memory"} */
  kept = "may go";
  trouble = "";
  /** @type {Undo | null} */
  undoable = null;
  /** Changes made here on top of what is kept, in order. @type {Change[]} */
  pending = [];
  /** The revision that this tab's text stands on. */
  base = 0;
  /** @type {{op: string, request: Record<string, any>, key: string | undefined,
   *   resolve: (reply: any) => void, reject: (error: unknown) => void}[]} */
  queue = [];
  /** @type {Promise<void> | undefined} */
  running;
  /** @type {Promise<void>} */
  writer = Promise.resolve();
  /** @type {Promise<void> | undefined} */
  saving;
  channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("downflow jobs") : undefined;

  constructor() {
    super();
    this.ready = this.#begin();
    this.channel?.addEventListener("message", ({ data }) => void this.#heard(data));
    addEventListener("downflow:reload", (event) => {
      if (!this.saving) return;
      event.preventDefault();
      void this.saving.finally(() => location.reload());
    });
  }

  async #begin() {
    try {
      await this.shelf.reach();
      this.kept = (await navigator.storage?.persisted?.()) ? "kept" : "may go";
    } catch (error) {
      this.#onlyMemory(error);
    }
    const open = fromLocal(OPEN);
    const found = typeof open?.id === "string" ? await this.shelf.get(open.id) : undefined;
    this.undoable = (await this.shelf.note("undo")) ?? null;
    this.#hold(found ?? null);
  }

  /** @param {unknown} error */
  #onlyMemory(error) {
    this.shelf.base = undefined;
    this.kept = "memory";
    this.trouble = error instanceof Error ? error.message : String(error);
    if (this.current) this.shelf.memory.set(this.current.id, this.current);
    this.dispatchEvent(new Event("trouble"));
  }

  /** For a reader: whether what is entered stays. */
  get words() {
    return {
      kept: "Kept on this device.",
      "may go": "Kept on this device; the browser may clear it when space runs short. Export now and then.",
      memory: "This device keeps nothing for this site. Work goes on. Export before you close.",
    }[this.kept];
  }

  /** Makes a job the open one of this tab. @param {Kept | null} job */
  #hold(job) {
    const other = job?.id !== this.current?.id;
    this.current = job;
    this.base = job?.revision ?? 0;
    if (other) this.pending = [];
    toLocal(OPEN, job ? { id: job.id, name: job.name } : null);
    document.dispatchEvent(new CustomEvent("downflow:job", { detail: { id: job?.id ?? null, name: job?.name ?? "" } }));
  }

  /** @param {{id?: string, open?: boolean}} data */
  async #heard(data) {
    if (data.open) {
      const open = fromLocal(OPEN);
      if (open?.id !== this.current?.id && !this.pending.length) {
        this.#hold((open && (await this.shelf.get(open.id))) ?? null);
        this.dispatchEvent(new Event("change"));
      }
    } else if (data.id && this.shelf.base) {
      const { id } = data;
      await this.#exclusive(async () => {
        // With changes of our own on the way, keeping them brings the two together.
        if (id !== this.current?.id || this.pending.length) return;
        const newer = await this.shelf.get(id);
        if (!newer || newer.revision === this.base) return;
        this.#hold(newer);
        this.dispatchEvent(new Event("change"));
      });
    }
    this.dispatchEvent(new Event("saved"));
  }

  // ---- one change after the other ----

  /**
   * Changes run one after the other, each on the text that the one before left. Of those with
   * one key that still wait, only the newest runs; the others resolve to null.
   * @param {string} op
   * @param {Record<string, any>} request
   * @param {string} [key]
   * @returns {Promise<any>}
   */
  apply(op, request, key) {
    return new Promise((resolve, reject) => {
      if (key !== undefined) {
        for (const older of this.queue.filter((each) => each.key === key)) older.resolve(null);
        this.queue = this.queue.filter((each) => each.key !== key);
      }
      this.queue.push({ op, request, key, resolve, reject });
      this.running ??= this.#run().finally(() => { this.running = undefined; });
    });
  }

  async #run() {
    await this.ready;
    for (let next = this.queue.shift(); next; next = this.queue.shift()) {
      const { op, request, resolve, reject } = next;
      await this.#exclusive(() => this.#one(op, request)).then(resolve, reject);
    }
  }

  /**
   * The text in this tab has one writer at a time.
   * @template T
   * @param {() => Promise<T>} work
   * @returns {Promise<T>}
   */
  #exclusive(work) {
    const mine = this.writer.then(work, work);
    this.writer = mine.then(() => {}, () => {});
    return mine;
  }

  /** @param {string} op @param {Record<string, any>} request */
  async #one(op, request) {
    const job = this.current;
    let text = job?.text ?? null;
    if (text === null && op !== "change") text = (await ask("new", { id: crypto.randomUUID(), name: newName() })).job;
    const reply = await ask(op, { ...request, job: text, new: { id: crypto.randomUUID(), name: newName() } });
    if (!reply?.ok || reply.job === undefined) return reply;
    if (!job) {
      await this.#begun(reply, request);
    } else if (reply.job !== job.text && job.id === this.current?.id) {
      this.current = { ...this.current, text: reply.job, name: reply.name ?? job.name };
      this.pending.push({ op, request });
      this.#keepSoon();
    }
    return reply;
  }

  /** A job that begins with the first number typed. @param {any} reply @param {Record<string, any>} request */
  async #begun(reply, request) {
    await this.#remember("start", reply.name, [], [reply.id]);
    await this.#addAndHold(this.#fresh(reply, typeof request.id === "string" && request.example ? [request.id] : []));
    void navigator.storage?.persist?.().then((kept) => {
      if (kept && this.kept === "may go") this.kept = "kept";
      this.dispatchEvent(new Event("saved"));
    });
  }

  /** @param {{id: string, name: string, job: string}} reply @param {string[]} begun @returns {Kept} */
  #fresh(reply, begun = []) {
    return { id: reply.id, name: reply.name, text: reply.job, saved: now(), revision: 1, exported: "", exportedRevision: 0, begun };
  }

  #keepSoon() {
    this.saving ??= this.#keep().finally(() => {
      this.saving = undefined;
      if (this.pending.length && this.kept !== "memory") this.#keepSoon();
    });
  }

  async #keep() {
    const job = this.current;
    if (!job) return;
    try {
      await alone(job.id, async () => {
        const stands = await this.shelf.get(job.id);
        if (stands && stands.revision !== this.base) await this.#exclusive(() => this.#again(stands));
        const mine = this.current;
        if (!mine || mine.id !== job.id) return;
        const changes = this.pending.length;
        const next = { ...mine, saved: now(), revision: (stands?.revision ?? this.base) + 1,
          exported: stands?.exported ?? mine.exported, exportedRevision: stands?.exportedRevision ?? mine.exportedRevision };
        await this.shelf.put(next);
        this.base = next.revision;
        this.pending.splice(0, changes);
        if (this.current?.id === next.id) {
          this.current = { ...this.current, saved: next.saved, revision: next.revision };
          toLocal(OPEN, { id: next.id, name: next.name });
        }
      });
      this.trouble = "";
      if (this.undoable?.what === "merge") await this.#forget();
      this.channel?.postMessage({ id: job.id });
      this.dispatchEvent(new Event("saved"));
    } catch (error) {
      this.#onlyMemory(error);
    }
  }

  /** Another tab kept something first: our changes are made once more, on its text. @param {Kept} stands */
  async #again(stands) {
    let text = stands.text;
    let name = stands.name;
    for (const change of this.pending) {
      const reply = await ask(change.op, { ...change.request, job: text });
      if (reply?.ok && reply.job !== undefined) {
        text = reply.job;
        name = reply.name ?? name;
      }
    }
    this.current = { ...stands, text, name };
    this.base = stands.revision;
    this.dispatchEvent(new Event("change"));
  }

  /** What is on its way is kept first. */
  async settled() {
    while (this.running || this.saving) await (this.running ?? this.saving);
  }

  // ---- several jobs ----

  /** @returns {Promise<{id: string, name: string, saved: string, exported: string, changed: boolean}[]>} */
  async list() {
    await this.ready;
    const all = await this.shelf.all();
    return all.filter((each) => each && typeof each.id === "string").map((each) => ({
      id: each.id, name: each.name, saved: each.saved, exported: each.exported,
      changed: each.exportedRevision !== each.revision,
    })).sort((a, b) => (a.saved < b.saved ? 1 : -1));
  }

  /** @param {Kept} job */
  async #addAndHold(job) {
    try {
      await this.shelf.put(job);
    } catch (error) {
      this.#onlyMemory(error);
      await this.shelf.put(job);
    }
    this.#show(job);
  }

  /** @param {Kept | null} job */
  #show(job) {
    this.#hold(job);
    this.channel?.postMessage({ open: true });
    this.dispatchEvent(new Event("change"));
  }

  /** @param {string} what @param {string} name @param {Kept[]} before @param {string[]} after */
  async #remember(what, name, before, after) {
    this.undoable = { what, name, before, after, open: this.current?.id ?? null };
    await this.shelf.keepNote("undo", this.undoable).catch(() => {});
  }

  async #forget() {
    this.undoable = null;
    await this.shelf.keepNote("undo", null).catch(() => {});
  }

  /** @param {string} name */
  async start(name) {
    const reply = await ask("new", { id: crypto.randomUUID(), name });
    if (!reply.ok) return reply;
    await this.settled();
    await this.#remember("start", reply.name, [], [reply.id]);
    await this.#addAndHold(this.#fresh(reply));
    void navigator.storage?.persist?.();
    return reply;
  }

  /** @param {string | null} id */
  async open(id) {
    await this.settled();
    const found = id === null ? null : ((await this.shelf.get(id)) ?? null);
    this.#show(found);
  }

  /** @param {string} name */
  async copy(name) {
    await this.settled();
    const job = this.current;
    if (!job) return null;
    const reply = await ask("copy", { job: job.text, id: crypto.randomUUID(), name });
    if (!reply.ok) return reply;
    await this.#remember("copy", reply.name, [], [reply.id]);
    await this.#addAndHold({ ...this.#fresh(reply), begun: job.begun });
    return reply;
  }

  /** @param {string} name */
  async rename(name) {
    await this.settled();
    const job = this.current;
    if (!job) return null;
    const reply = await this.apply("rename", { name });
    if (reply?.ok) {
      await this.settled();
      await this.#remember("rename", job.name, [], []);
      this.#show(this.current);
    }
    return reply;
  }

  /** @param {string} id */
  async remove(id) {
    await this.settled();
    const gone = await this.shelf.get(id);
    if (!gone) return;
    await this.#remember("delete", gone.name, [gone], []);
    await this.shelf.drop(id);
    if (this.current?.id === id) this.#show(null);
    else this.dispatchEvent(new Event("saved"));
  }

  /**
   * Takes a job's file in. A job that is here already is not touched: `same` says so, and the
   * two can be merged.
   * @param {string} text
   */
  async add(text) {
    const reply = await ask("open", { text });
    if (!reply.ok) return reply;
    await this.settled();
    if (await this.shelf.get(reply.id)) return { ...reply, same: true };
    await this.#remember("import", reply.name, [], [reply.id]);
    await this.#addAndHold({ ...this.#fresh(reply), exported: now(), exportedRevision: 1 });
    return reply;
  }

  /** Keeps a merged text as the open job's. @param {{id: string, name: string, job: string}} reply */
  async replace(reply) {
    await this.settled();
    const before = await this.shelf.get(reply.id);
    if (!before) return;
    await this.#remember("merge", before.name, [before], []);
    await this.#addAndHold({ ...before, name: reply.name, text: reply.job, saved: now(), revision: before.revision + 1 });
  }

  /** Takes the last start, copy, rename, delete, import or merge back. */
  async undo() {
    await this.settled();
    const last = this.undoable;
    if (!last) return;
    if (last.what === "rename") {
      await this.apply("rename", { name: last.name });
      await this.settled();
      await this.#forget();
      this.#show(this.current);
      return;
    }
    /** @type {Kept[]} */
    const gone = [];
    for (const id of last.after) {
      const job = await this.shelf.get(id);
      if (job) gone.push(job);
      await this.shelf.drop(id);
    }
    for (const job of last.before) {
      const stands = await this.shelf.get(job.id);
      await this.shelf.put({ ...job, revision: (stands?.revision ?? job.revision) + 1 });
    }
    // What this takes away can itself be brought back.
    const first = gone[0];
    if (first) await this.#remember("delete", first.name, gone, []);
    else await this.#forget();
    const open = last.before[0]?.id ?? last.open;
    this.#show((open && (await this.shelf.get(open))) || null);
  }

  /**
   * Changes what stands beside the open job's text, on the newest that is kept.
   * @param {(job: Kept) => Partial<Kept>} patch
   */
  async #amend(patch) {
    await this.settled();
    const job = this.current;
    if (!job) return;
    try {
      await alone(job.id, () => this.#exclusive(async () => {
        const stands = (await this.shelf.get(job.id)) ?? job;
        const next = { ...stands, ...patch(stands) };
        await this.shelf.put(next);
        if (this.current?.id === next.id && !this.pending.length) this.#hold(next);
      }));
    } catch (error) {
      this.current = { ...job, ...patch(job) };
      this.#onlyMemory(error);
    }
    this.channel?.postMessage({ id: job.id });
    this.dispatchEvent(new Event("saved"));
  }

  /** The open job went out as a file. */
  async exported() {
    const revision = this.current?.revision;
    await this.#amend((job) => ({ exported: now(), exportedRevision: revision ?? job.revision }));
  }

  // ---- the example beside one's own ----

  /** Whether a page fills gaps of this job with the example's numbers. @param {string} page */
  borrows(page) {
    return this.current?.begun?.includes(page) ?? false;
  }

  /** @param {string} page @param {boolean} borrow */
  async borrow(page, borrow) {
    await this.#amend((job) => {
      const begun = (job.begun ?? []).filter((each) => each !== page);
      return { begun: borrow ? [...begun, page] : begun };
    });
  }

  /** The last answer of a page for the open job, in words. @param {string} page @param {string} [said] */
  last(page, said) {
    const key = `downflow.last.${this.current?.id}.${page}`;
    if (said !== undefined) toLocal(key, { said, at: now() });
    return fromLocal(key);
  }
}

export const jobs = new Jobs();

/** Steps ticked on a procedure go into the open job too, with their time. */
document.addEventListener("downflow:confirm", (event) => {
  const { procedure, step, at } = /** @type {CustomEvent} */ (event).detail;
  if (!jobs.current) return;
  void (async () => {
    await jobs.apply("confirm", { visit: "", step: `${procedure}#${step}`, at: at ?? "", by: at ? "this device" : "", date: today() });
  })().catch(() => { /* it is kept with the page's own ticks as well */ });
});
