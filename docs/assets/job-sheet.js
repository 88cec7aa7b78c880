// @ts-check
/**
 * The job sheet page: <df-sheet> opens facts in their place; the jobs on this device, undo,
 * export, import, sharing, and two copies of one job brought together.
 */

import { ask, start, startWhenIdle, state } from "./runtime.js";
import { Covered, swap, unitsInUse } from "./calculator.js";
import { watchForm } from "./form.js";
import { photos } from "./photos.js";
import { jobs, now, today } from "./store.js";

const clock = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });
/** @param {string} at */
const time = (at) => (Number.isNaN(Date.parse(at)) ? "no time" : clock.format(new Date(at)));

class Sheet extends Covered {
  alive = false;
  page = "sheet";

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    this.addEventListener("focusin", () => start(), { once: true });
    this.addEventListener("click", (event) => void this.clicked(event));
    this.addEventListener("submit", (event) => void this.submitted(event));
    state.addEventListener("change", () => this.paintCover());
    jobs.addEventListener("change", () => void this.paintAll());
    document.addEventListener("downflow:units", () => void this.paintAll());
    addEventListener("hashchange", () => void this.toHash());
    startWhenIdle();
    void jobs.ready.then(async () => {
      this.paintCover();
      if (jobs.current || unitsInUse() !== (this.dataset.units ?? "ip")) await this.paintAll();
      await this.toHash();
    });
  }

  /** @param {string} name */
  region(name) {
    return /** @type {HTMLElement | null} */ (this.querySelector(`[data-region="${name}"]`));
  }

  get request() {
    return { job: jobs.current?.text ?? null, units: unitsInUse() };
  }

  async paintAll() {
    let reply;
    try {
      reply = await ask("sheet", this.request, { key: "sheet" });
    } catch {
      return;
    }
    if (!reply?.ok) return;
    const fresh = document.createElement("template");
    fresh.innerHTML = reply.html;
    const open = new Set([...this.querySelectorAll("details.df-sect[open]")].map((e) => /** @type {HTMLElement} */ (e).dataset.where));
    const first = this.region("first")?.innerHTML;
    for (const name of ["head", "sections", "visits"]) {
      const from = fresh.content.querySelector(`[data-region="${name}"]`);
      const place = this.region(name);
      if (!from || !place) continue;
      const kept = name === "sections" ? this.editing() : null;
      swap(place, from.innerHTML);
      if (kept) this.putBack(kept);
    }
    for (const section of this.querySelectorAll("details.df-sect")) {
      if (section instanceof HTMLDetailsElement && open.has(section.dataset.where)) section.open = true;
    }
    if (first === undefined) return;
    this.dataset.units = unitsInUse();
    this.dataset.whose = jobs.current ? "job" : "example";
    if (jobs.current) this.uncover();
    else this.cover();
    void this.measureFirst();
  }

  async measureFirst() {
    const reply = await ask("measure", this.request, { key: "measure", later: true }).catch(() => null);
    const place = this.region("first");
    if (reply?.ok && place) swap(place, reply.html);
  }

  /** The forms that stand open, to survive a new painting. */
  editing() {
    return [...this.querySelectorAll("[data-fact-form]")].map((form) => ({ name: /** @type {HTMLElement} */ (form).dataset.factForm ?? "", form }));
  }

  /** @param {{name: string, form: Element}[]} kept */
  putBack(kept) {
    for (const { name, form } of kept) {
      const button = this.button(name);
      if (!button) continue;
      button.setAttribute("aria-expanded", "true");
      button.parentElement?.append(form);
    }
  }

  /** @param {string} name @returns {HTMLElement | null} */
  button(name) {
    return this.querySelector(`button[data-edit="${CSS.escape(name)}"]`);
  }

  async toHash() {
    const name = /^#fact-(.+)$/.exec(decodeURIComponent(location.hash))?.[1];
    if (name) await this.edit(name, true);
  }

  /** Opens a fact in its place. @param {string} name @param {boolean} [stay] */
  async edit(name, stay = false) {
    const button = this.button(name);
    const line = button?.parentElement;
    if (!button || !line) return;
    const section = button.closest("details");
    if (section) section.open = true;
    if (line.querySelector("[data-fact-form]")) {
      if (!stay) await this.close(name);
      return;
    }
    button.setAttribute("aria-expanded", "true");
    const reply = await ask("fact", { ...this.request, name }).catch(() => null);
    if (!reply?.ok || line.querySelector("[data-fact-form]")) return;
    const holder = document.createElement("div");
    holder.innerHTML = reply.html;
    const form = holder.querySelector("form");
    if (!form) return;
    line.append(form);
    watchForm(form, (entered) => this.enter(entered));
    form.addEventListener("change", (event) => {
      const target = event.target;
      if (target instanceof HTMLInputElement && target.name.endsWith(".note")) void this.note(form, name, target.value);
    });
    button.scrollIntoView({ block: "nearest" });
    /** @type {HTMLElement | null} */ (form.querySelector("input:not([type=hidden]), select"))?.focus();
  }

  /** Closes it and comes back to the same spot. @param {string} name */
  async close(name) {
    const button = this.button(name);
    button?.parentElement?.querySelector("[data-fact-form]")?.remove();
    button?.setAttribute("aria-expanded", "false");
    const top = button?.getBoundingClientRect().top ?? 0;
    await this.paintAll();
    const again = this.button(name);
    if (!again) return;
    again.focus({ preventScroll: true });
    scrollBy(0, again.getBoundingClientRect().top - top);
  }

  /**
   * @param {import("./form.js").Entered} entered
   * @returns {Promise<import("./form.js").Problem[] | null>}
   */
  async enter(entered) {
    this.uncover();
    const request = { ...entered, units: unitsInUse(), at: now() };
    const reply = await jobs.apply(entered.rows ? "table" : "enter", request, `enter ${entered.name}`).catch(() => undefined);
    if (reply === undefined) return [];
    if (reply === null) return null;
    if (!reply.ok) return reply.errors;
    return [];
  }

  /** @param {HTMLFormElement} form @param {string} name @param {string} note */
  async note(form, name, note) {
    const input = /** @type {HTMLInputElement | null} */ (form.querySelector(`input[type=radio]:checked, [name="${CSS.escape(name)}"]`));
    const from = /** @type {HTMLSelectElement | null} */ (form.querySelector(`[name="${CSS.escape(name)}.from"]`))?.value;
    await jobs.apply("enter", { name, typed: input?.value ?? "", from: from || undefined, note, units: unitsInUse(), at: now() }).catch(() => null);
  }

  /** @param {Event} event */
  async clicked(event) {
    this.coverClicked(event);
    const target = event.target instanceof Element ? event.target.closest("[data-edit], [data-close], [data-open]") : null;
    if (!(target instanceof HTMLElement)) return;
    if (target.dataset.edit) await this.edit(target.dataset.edit);
    else if (target.dataset.close) await this.close(target.dataset.close);
    else if (target.dataset.open) {
      event.preventDefault();
      await this.edit(target.dataset.open, true);
    }
  }

  /** A visit begins. @param {Event} event */
  async submitted(event) {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.dataset.visitForm === undefined) return;
    event.preventDefault();
    const said = new FormData(form);
    const date = String(said.get("date") || today());
    const reply = await jobs.apply("visit", { id: crypto.randomUUID(), date, kind: String(said.get("kind")) }).catch(() => null);
    const place = form.querySelector(".df-error");
    if (place instanceof HTMLElement) {
      place.hidden = Boolean(reply?.ok);
      place.textContent = reply?.ok ? "" : (reply?.errors?.[0]?.message ?? "It could not be kept.");
    }
    if (reply?.ok) await this.paintAll();
  }
}

/** The jobs on this device. */
class JobList extends HTMLElement {
  alive = false;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    this.addEventListener("click", (event) => void this.clicked(event));
    this.addEventListener("submit", (event) => void this.submitted(event));
    this.addEventListener("change", (event) => void this.picked(event));
    for (const name of ["change", "saved", "trouble"]) jobs.addEventListener(name, () => void this.paint());
    void jobs.ready.then(() => this.paint());
  }

  /** @param {string} name @returns {HTMLElement | null} */
  piece(name) {
    return this.querySelector(`[data-piece="${name}"]`);
  }

  async paint() {
    const all = await jobs.list();
    const list = this.piece("list");
    list?.replaceChildren(...all.map((job) => {
      const line = document.createElement("li");
      const button = document.createElement("button");
      button.type = "button";
      button.className = "df-item";
      button.dataset.job = job.id;
      if (job.id === jobs.current?.id) button.setAttribute("aria-current", "true");
      const name = document.createElement("b");
      name.textContent = job.name;
      const sub = document.createElement("span");
      sub.className = "df-item__sub";
      const out = !job.exported ? "not yet exported" : job.changed ? `exported ${time(job.exported)}, changed since` : `exported ${time(job.exported)}`;
      sub.textContent = `${out} · last change ${time(job.saved)}`;
      button.append(name, sub);
      line.append(button);
      return line;
    }));
    const none = this.piece("none");
    if (none) none.hidden = all.length > 0;
    const state = this.piece("state");
    const open = all.find((job) => job.id === jobs.current?.id);
    if (state) state.textContent = !open ? "" : !open.exported ? "Not yet exported." : `Last export ${time(open.exported)}${open.changed ? ", changed since" : ""}.`;
    const kept = this.piece("kept");
    if (kept) kept.textContent = jobs.words;
    for (const needs of this.querySelectorAll("[data-needs-job]")) {
      if (needs instanceof HTMLElement) needs.hidden = !jobs.current;
    }
    const name = this.querySelector("input[name=rename]");
    if (name instanceof HTMLInputElement && document.activeElement !== name) name.value = jobs.current?.name ?? "";
    const share = this.querySelector("[data-do=share]");
    if (share instanceof HTMLElement) share.hidden = !jobs.current || !canShare();
    const undo = this.piece("undo");
    const last = jobs.undoable;
    if (undo) {
      undo.hidden = !last;
      const said = undo.querySelector("span");
      const words = { start: "Started", copy: "Copied to", rename: "Renamed, before", delete: "Deleted", import: "Imported", merge: "Merged" };
      if (said && last) said.textContent = `${words[/** @type {keyof typeof words} */ (last.what)] ?? last.what}: ${last.name}.`;
    }
  }

  /** @param {string} words */
  say(words) {
    const place = this.piece("say");
    if (place) place.textContent = words;
  }

  /** @param {Event} event */
  async clicked(event) {
    const target = event.target instanceof Element ? event.target.closest("button") : null;
    if (!target) return;
    if (target.dataset.job) {
      await jobs.open(target.dataset.job);
      return;
    }
    switch (target.dataset.do) {
      case "close": await jobs.open(null); break;
      case "copy": await jobs.copy(`${jobs.current?.name ?? ""}, copy`.slice(0, 120)); break;
      case "delete": if (jobs.current) await jobs.remove(jobs.current.id); break;
      case "undo": await jobs.undo(); this.say("Taken back."); break;
      case "export": await exportJob(); break;
      case "share": await shareJob((words) => this.say(words)); break;
      case "import": /** @type {HTMLElement | null} */ (this.querySelector("input[type=file]"))?.click(); break;
      case "take": await this.take(target); break;
      default:
    }
    await this.paint();
  }

  /** @param {Event} event */
  async submitted(event) {
    const form = event.target;
    if (!(form instanceof HTMLFormElement)) return;
    event.preventDefault();
    const said = new FormData(form);
    const name = String(said.get("start") ?? said.get("rename") ?? "").trim();
    const reply = said.has("start") ? await jobs.start(name) : await jobs.rename(name);
    if (reply && !reply.ok) this.say(reply.errors[0]?.message ?? "That name cannot stand.");
    else if (said.has("start")) form.reset();
    await this.paint();
  }

  /** A file was picked. @param {Event} event */
  async picked(event) {
    const input = event.target;
    if (!(input instanceof HTMLInputElement) || input.type !== "file") return;
    const file = input.files?.[0];
    input.value = "";
    if (!file) return;
    this.say("Reading the file.");
    let text = "";
    let reply;
    try {
      const pack = await photos.unpack(file);
      text = pack.text;
      reply = await jobs.add(text);
      if (reply.ok) await pack.keep(reply.id);
    } catch {
      this.say("The file could not be read. Your job is untouched.");
      return;
    }
    if (!reply.ok) {
      const more = reply.errors.length > 1 ? ` And ${reply.errors.length - 1} more.` : "";
      const first = reply.errors[0];
      this.say(`${first?.message ?? "Not a job sheet of this handbook."}${more} Nothing was changed.`);
      return;
    }
    if (!reply.same) {
      this.say(`${reply.name} is here and open.`);
      return;
    }
    await this.merge(reply);
  }

  /** The job is here already: both copies are laid side by side. @param {any} theirs */
  async merge(theirs) {
    await jobs.open(theirs.id);
    const mine = jobs.current;
    if (!mine) return;
    const reply = await ask("merge", { mine: mine.text, theirs: theirs.job, units: unitsInUse() });
    if (!reply.ok) {
      this.say(reply.errors[0]?.message ?? "The two could not be brought together.");
      return;
    }
    await jobs.replace(reply);
    const place = this.piece("differences");
    if (!place) return;
    place.replaceChildren();
    place.hidden = false;
    const head = document.createElement("p");
    head.textContent = reply.differences.length
      ? `${theirs.name} is on this device already. What only one had is now in it. Where the two differ, this device's value stands until you take the other.`
      : `${theirs.name} is on this device already. The two are now one; no value differed.`;
    place.append(head);
    for (const each of reply.differences) {
      const row = document.createElement("div");
      row.className = "df-fact";
      const name = document.createElement("p");
      name.className = "df-fact__label";
      name.textContent = each.label;
      const two = document.createElement("p");
      two.textContent = `here: ${each.mine} (${time(each.mine_at)}) · in the file: ${each.theirs} (${time(each.theirs_at)})`;
      const button = document.createElement("button");
      button.type = "button";
      button.className = "df-button";
      button.dataset.do = "take";
      button.dataset.name = each.name;
      button.textContent = "Take the file's value";
      row.append(name, two, button);
      place.append(row);
    }
    this.theirs = theirs.job;
    this.say("");
    place.tabIndex = -1;
    place.focus();
  }

  theirs = "";

  /** @param {HTMLButtonElement} button */
  async take(button) {
    const reply = await jobs.apply("take", { theirs: this.theirs, names: [button.dataset.name] }).catch(() => null);
    if (!reply?.ok) {
      this.say(reply?.errors?.[0]?.message ?? "It could not be taken.");
      return;
    }
    const done = document.createElement("p");
    done.textContent = "Taken from the file.";
    button.replaceWith(done);
    document.querySelectorAll("df-sheet").forEach((sheet) => { if (sheet instanceof Sheet) void sheet.paintAll(); });
  }
}

/** The open job as a file. */
function jobFile() {
  const job = jobs.current;
  if (!job) return null;
  const name = job.name.replace(/[^\p{L}\p{N} _-]+/gu, "").trim() || "job";
  return new File([job.text], `${name}.json`, { type: "application/json" });
}

/** Whether the device hands files on. */
function canShare() {
  const file = jobFile();
  return Boolean(file && navigator.canShare?.({ files: [file] }));
}

async function exportJob() {
  await jobs.settled();
  const sheet = jobFile();
  if (!sheet) return;
  const file = await photos.pack(sheet);
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  await jobs.exported();
}

/** @param {(words: string) => void} say */
async function shareJob(say) {
  await jobs.settled();
  const sheet = jobFile();
  if (!sheet) return;
  try {
    const file = await photos.pack(sheet);
    await navigator.share({ files: [file], title: file.name });
    await jobs.exported();
  } catch (error) {
    if (!(error instanceof DOMException && error.name === "AbortError")) say("The device did not take it. Export the file instead.");
  }
}

customElements.define("df-jobs", JobList);
customElements.define("df-sheet", Sheet);
