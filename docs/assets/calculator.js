// @ts-check
/**
 * <df-calculator data-id="…">: a painted calculator comes alive.
 *
 * With no job open the worked example stands; the first number changed begins a job. With a job
 * open the example is covered until this job's numbers are there. Each change recomputes at once;
 * the number is painted first, the range follows when nothing newer was typed.
 *
 * Fires, bubbling: `downflow:answer` {id, milliseconds} when the new number is painted,
 * `downflow:range` {id, milliseconds} when its range is.
 */

import { ask, start, startWhenIdle, state, tryAgain } from "./runtime.js";
import { badFields, keepTyped, nameOf, watchForm } from "./form.js";
import { jobs, now, today } from "./store.js";

const RANGE_AFTER_MS = 150;
const SAY_AFTER_MS = 900;
const clock = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });

export const unitsInUse = () => (document.documentElement.dataset.units === "si" ? "si" : "ip");

/** @type {WeakMap<HTMLElement, string>} */
const shown = new WeakMap();

/** Replaces the inside of a region, and keeps open what was open. @param {HTMLElement} place @param {string} html */
export function swap(place, html) {
  if (shown.get(place) === html) return;
  shown.set(place, html);
  const open = new Set([...place.querySelectorAll("details[open] > summary")].map((e) => e.textContent?.replace(/\d+/g, "")));
  const typed = new Map([...place.querySelectorAll("input[id]")].map((e) => [e.id, /** @type {HTMLInputElement} */ (e).value]));
  const active = document.activeElement && place.contains(document.activeElement) ? document.activeElement.id : "";
  place.innerHTML = html;
  for (const summary of place.querySelectorAll("details > summary")) {
    if (open.has(summary.textContent?.replace(/\d+/g, "")) && summary.parentElement instanceof HTMLDetailsElement) summary.parentElement.open = true;
  }
  for (const [id, value] of typed) {
    const input = document.getElementById(id);
    if (input instanceof HTMLInputElement && input.type === "text" && place.contains(input)) input.value = value;
  }
  if (active) document.getElementById(active)?.focus({ preventScroll: true });
}

/** What a page with a job open shows before this job's numbers are there. */
export class Covered extends HTMLElement {
  page = "";

  /** The job's own numbers stand here now. */
  uncover() {
    this.dataset.mine = "";
    delete this.dataset.shown;
  }

  cover() {
    delete this.dataset.mine;
    this.paintCover();
  }

  paintCover() {
    const box = this.querySelector(":scope > .df-cover");
    if (!(box instanceof HTMLElement)) return;
    const word = box.querySelector("[data-cover-word]");
    const failed = state.value === "failed";
    if (word) word.textContent = failed ? "Your numbers: it did not start." : `Your numbers: ${state.words || "getting the calculator"}`;
    const again = box.querySelector("[data-again]");
    if (again instanceof HTMLElement) again.hidden = !failed;
    const place = box.querySelector("[data-last]");
    const last = jobs.current ? jobs.last(this.page) : null;
    if (place instanceof HTMLElement) {
      place.hidden = !last;
      if (last) place.textContent = `Last answer on this device: ${last.said} · ${clock.format(new Date(last.at))}`;
    }
  }

  /** @param {Event} event */
  coverClicked(event) {
    const target = event.target instanceof Element ? event.target.closest("button") : null;
    if (target?.hasAttribute("data-again")) tryAgain();
    if (target?.hasAttribute("data-show-example")) this.dataset.shown = "";
  }
}

class Calculator extends Covered {
  /** Counts changes, so that what comes late is known to be old. */
  count = 0;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  later;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  speaking;
  alive = false;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    this.page = this.dataset.id ?? "";
    const form = this.form;
    if (form) watchForm(form, (entered) => this.change(entered));
    this.addEventListener("focusin", () => start(), { once: true });
    this.addEventListener("click", (event) => this.clicked(event));
    this.addEventListener("submit", (event) => this.released(event));
    state.addEventListener("change", () => this.runtimeChanged());
    jobs.addEventListener("change", () => void this.paintAll());
    document.addEventListener("downflow:units", () => void this.paintAll());
    startWhenIdle();
    this.runtimeChanged();
    void jobs.ready.then(() => {
      this.paintCover();
      if (jobs.current || unitsInUse() !== (this.dataset.units ?? "ip")) void this.paintAll();
    });
  }

  /** @returns {HTMLFormElement | null} */
  get form() {
    return this.querySelector("form[data-region=form]");
  }

  /** @param {string} name @returns {HTMLElement | null} */
  region(name) {
    return this.querySelector(`[data-region="${name}"]`);
  }

  get borrows() {
    return jobs.borrows(this.page);
  }

  runtimeChanged() {
    const place = this.querySelector("[data-state]");
    this.paintCover();
    if (!(place instanceof HTMLElement)) return;
    if (state.value !== "failed") {
      place.textContent = state.words;
      return;
    }
    place.textContent = jobs.current ? "It did not start. " : "It did not start. The example below still holds. ";
    const again = document.createElement("button");
    again.type = "button";
    again.className = "df-link";
    again.textContent = "Try again";
    again.addEventListener("click", () => {
      tryAgain();
      void this.paintAll();
    });
    place.append(again);
  }

  /** Everything anew, the form too: another job, other units, a gap filled. */
  async paintAll() {
    const mine = ++this.count;
    clearTimeout(this.later);
    const form = this.form;
    const began = performance.now();
    let reply;
    try {
      reply = await ask("calculator", { id: this.page, job: jobs.current?.text ?? null, units: unitsInUse(), ranged: false, example: this.borrows }, { key: `paint ${this.page}` });
    } catch {
      return;
    }
    if (!reply?.ok || mine !== this.count) return;
    if (form) {
      const back = keepTyped(form, this.dataset.units === unitsInUse());
      form.innerHTML = reply.regions.form;
      back();
    }
    this.dataset.units = unitsInUse();
    this.dataset.whose = jobs.current ? "job" : "example";
    if (jobs.current) this.uncover();
    else this.cover();
    this.show(reply);
    this.painted("downflow:answer", began);
    this.rangeSoon(mine);
    if (location.hash) this.toHash();
  }

  toHash() {
    const id = decodeURIComponent(location.hash.slice(1));
    const target = id && document.getElementById(id);
    if (target && this.contains(target) && target !== document.activeElement) {
      target.scrollIntoView({ block: "center" });
      target.focus({ preventScroll: true });
    }
  }

  /**
   * @param {import("./form.js").Entered} entered
   * @returns {Promise<import("./form.js").Problem[] | null>}
   */
  async change(entered) {
    const mine = ++this.count;
    clearTimeout(this.later);
    const began = performance.now();
    const first = !jobs.current;
    // Before a job begins: what stands here then is the reader's, and stays in sight and in focus.
    this.uncover();
    const from = first || this.borrows ? { example: true } : {};
    let reply;
    try {
      reply = await jobs.apply("change", { ...entered, ...from, id: this.page, units: unitsInUse(), at: now(), ranged: false }, `change ${entered.name}`);
    } catch {
      return [];
    }
    if (!reply) return null;
    if (!reply.ok) {
      setTimeout(() => this.stale());
      return reply.errors;
    }
    if (mine === this.count) {
      if (jobs.current) this.uncover();
      this.dataset.whose = "job";
      this.show(reply);
      this.painted("downflow:answer", began);
      this.rangeSoon(mine);
    }
    setTimeout(() => this.stale());
    if (entered.rows && !entered.rows.length) setTimeout(() => void this.paintAll());
    return [];
  }

  /** @param {number} mine */
  rangeSoon(mine) {
    clearTimeout(this.later);
    this.later = setTimeout(async () => {
      const began = performance.now();
      let reply;
      try {
        reply = await ask("calculator", { id: this.page, job: jobs.current?.text ?? null, units: unitsInUse(), ranged: true, form: false, example: this.borrows }, { key: `range ${this.page}`, later: true });
      } catch {
        return;
      }
      if (!reply?.ok || mine !== this.count) return;
      this.show(reply);
      this.painted("downflow:range", began);
      this.stale();
    }, RANGE_AFTER_MS);
  }

  /** @param {any} reply */
  show(reply) {
    for (const [name, html] of Object.entries(reply.regions)) {
      const place = this.region(name);
      if (!place || name === "form") continue;
      // What was good stays in sight while the readings cannot be true together.
      if (reply.state === "refused" && name !== "messages" && this.region("answer")?.querySelector(".df-answer__value")) continue;
      swap(place, String(html));
    }
    const pin = this.querySelector("[data-pin]");
    if (pin && reply.state !== "refused") pin.innerHTML = reply.pin;
    this.refused = reply.state === "refused" ? reply.problems : [];
    this.pointOut();
    if (reply.say && jobs.current) jobs.last(this.page, pin?.textContent ?? reply.say);
    if (reply.say && (reply.ranged || !reply.level)) this.say(reply.say);
  }

  /** Readings that cannot be true together stand beside their fields too. */
  pointOut() {
    const form = this.form;
    if (!form) return;
    for (const field of form.querySelectorAll("[data-fact][data-together]")) {
      delete (/** @type {HTMLElement} */ (field).dataset.together);
      const place = field.querySelector(":scope > .df-error");
      if (place instanceof HTMLElement && !field.hasAttribute("data-bad")) place.hidden = true;
    }
    for (const { field: path, message } of this.refused) {
      const field = form.querySelector(`[data-fact="${CSS.escape(path.split(/[[.]/)[0] ?? "")}"]`);
      const place = field?.querySelector(":scope > .df-error");
      if (!(field instanceof HTMLElement) || !(place instanceof HTMLElement)) continue;
      field.dataset.together = "";
      place.hidden = false;
      place.textContent = message;
    }
  }

  /** @type {import("./form.js").Problem[]} */
  refused = [];

  /** The last good answer is greyed while something typed cannot stand. */
  stale() {
    const form = this.form;
    const bad = form ? badFields(form) : [];
    const old = bad.length > 0 || this.refused.length > 0;
    for (const name of ["answer", "verdicts", "figure", "working"]) this.region(name)?.classList.toggle("is-stale", old);
    const pin = this.querySelector("[data-pin]");
    pin?.classList.toggle("is-stale", old);
    let word = pin?.querySelector("[data-stale]");
    if (old && pin) {
      // The number stays in sight; what was said of it does not.
      word ??= document.createElement("span");
      word.setAttribute("data-stale", "");
      word.textContent = `last good · ${bad.length || this.refused.length} to check`;
      pin.append(word);
    } else word?.remove();
    const answer = this.region("answer");
    let note = answer?.querySelector("[data-stale]");
    if (old && answer && answer.querySelector(".df-answer__value") && !note) {
      note = document.createElement("p");
      note.setAttribute("data-stale", "");
      note.className = "df-answer__name";
      note.textContent = "Last good answer";
      answer.prepend(note);
    }
    if (!old) note?.remove();
    const messages = this.region("messages");
    let check = messages?.querySelector("[data-check]");
    if (bad.length && messages) {
      check ??= document.createElement("p");
      check.setAttribute("data-check", "");
      check.className = "df-check";
      const names = bad.map(nameOf).join(", ");
      const strong = document.createElement("b");
      strong.textContent = `${bad.length === 1 ? "1 reading" : `${bad.length} readings`} to check: ${names}.`;
      check.replaceChildren(strong, " What you typed is kept.");
      if (!check.parentElement) messages.prepend(check);
    } else check?.remove();
  }

  /** One announcement, after typing stops. @param {string} words */
  say(words) {
    clearTimeout(this.speaking);
    this.speaking = setTimeout(() => {
      const place = this.querySelector("[data-say]");
      if (place && place.textContent !== words) place.textContent = words;
    }, SAY_AFTER_MS);
  }

  /** @param {string} name @param {number} began */
  painted(name, began) {
    requestAnimationFrame(() => this.dispatchEvent(new CustomEvent(name, {
      bubbles: true, detail: { id: this.page, milliseconds: performance.now() - began } })));
  }

  /** @param {Event} event */
  clicked(event) {
    this.coverClicked(event);
    const target = event.target instanceof Element ? event.target.closest("button[data-example]") : null;
    if (target instanceof HTMLElement) {
      void jobs.borrow(this.page, target.dataset.example === "yes").then(() => this.paintAll());
    }
    const pin = event.target instanceof Element ? event.target.closest("a[data-pin]") : null;
    if (pin) this.querySelector("#answer")?.scrollIntoView();
  }

  /** A named person takes a hold upon themselves. @param {Event} event */
  async released(event) {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.dataset.release === undefined) return;
    event.preventDefault();
    const [calculator = "", verdict = ""] = form.dataset.release.split("#");
    const said = Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)]));
    const reply = await jobs.apply("release", { calculator, verdict, ...said, date: today() }).catch(() => null);
    const place = form.querySelector(".df-error");
    if (place instanceof HTMLElement) {
      place.hidden = Boolean(reply?.ok);
      place.textContent = reply?.ok ? "" : (reply?.errors ?? []).map((/** @type {{message: string}} */ e) => e.message)[0] ?? "It could not be kept.";
    }
    if (reply?.ok) void this.paintAll();
  }
}

customElements.define("df-calculator", Calculator);
