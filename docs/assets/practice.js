// @ts-check
/**
 * Practice: <df-practice-home>, <df-practice-drills>, <df-practice-bench>,
 * <df-practice-progress>, <df-practice-lesson>. Python makes each home, question and reading, and
 * grades; here they are shown, and the record of the learner is kept.
 *
 * Kept on the device (localStorage):
 *   downflow.practice.home    the home under way, as Python wrote it
 *   downflow.practice.record  the learner's record, as Python wrote it
 */

import { ask, start, startWhenIdle, state } from "./runtime.js";
import { swap, unitsInUse } from "./calculator.js";
import { jobs, now } from "./store.js";

const HOME = "downflow.practice.home";
const RECORD = "downflow.practice.record";
/** Homes and questions have numbers below this. */
const NUMBERS = 1_000_000;

/** @param {string} key */
const kept = (key) => {
  try { return localStorage.getItem(key) ?? ""; } catch { return ""; }
};
/** @param {string} key @param {string} text @returns {boolean} */
const keep = (key, text) => {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch { return false; }
};
/** The number of another home or question; which one it is, is left to chance. */
const anyNumber = () => String(crypto.getRandomValues(new Uint32Array(1))[0] % NUMBERS);
/** @returns {string | null} */
const numberInAddress = () => /(?:^#|&)seed=([0-9]{1,9})(?:&|$)/.exec(location.hash)?.[1] ?? null;

/** @typedef {{field: string, message: string}} Problem */

class Part extends HTMLElement {
  alive = false;
  count = 0;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    this.addEventListener("focusin", () => start(), { once: true });
    state.addEventListener("change", () => this.say(state.value === "ready" ? "" : state.words));
    document.addEventListener("downflow:units", () => void this.unitsChanged());
    startWhenIdle();
    this.begin();
  }

  begin() {}

  async unitsChanged() {}

  /** @param {string} words */
  say(words) {
    const place = this.querySelector("[data-state]");
    if (place) place.textContent = words;
  }

  /** @param {string} name @param {string} html */
  put(name, html) {
    const place = this.querySelector(`[data-region="${name}"]`);
    if (place instanceof HTMLElement) swap(place, html);
  }

  /**
   * Asks and shows every problem beside its field. Null: no answer, or not the newest.
   * @param {string} op @param {object} payload
   * @returns {Promise<any>}
   */
  async request(op, payload) {
    const mine = ++this.count;
    this.clear();
    const reply = await ask(op, { ...payload, units: unitsInUse() }).catch(() => null);
    if (mine !== this.count) return null;
    if (!reply) {
      this.say(state.words);
      return null;
    }
    if (!reply.ok) {
      this.show(reply.errors ?? []);
      return null;
    }
    this.dataset.units = unitsInUse();
    return reply;
  }

  clear() {
    for (const place of this.querySelectorAll(".df-error")) {
      if (place instanceof HTMLElement) place.hidden = true;
    }
    for (const field of this.querySelectorAll("[aria-invalid]")) field.removeAttribute("aria-invalid");
  }

  /** @param {Problem[]} problems */
  show(problems) {
    /** @type {HTMLElement | null} */
    let first = null;
    for (const { field, message } of problems) {
      const place = this.querySelector(`[data-field="${CSS.escape(field)}"]`) ?? this.querySelector("[data-error]");
      if (place instanceof HTMLElement) {
        place.textContent = message;
        place.hidden = false;
      }
      const input = this.querySelector(`[name="${CSS.escape(field)}"]`);
      if (input instanceof HTMLElement) {
        input.setAttribute("aria-invalid", "true");
        first ??= input;
      }
    }
    first?.focus();
  }

  /** @param {string} selector */
  focusOn(selector) {
    const place = this.querySelector(selector);
    if (place instanceof HTMLElement) {
      place.focus();
      place.scrollIntoView({ block: "start" });
    }
  }
}

/**
 * Puts what was answered into the record. @param {string} what @param {string} which
 * @param {Record<string, string>} skills
 */
async function remember(what, which, skills) {
  const reply = await ask("progress_add", { record: kept(RECORD), what, which, skills, at: now() }).catch(() => null);
  return Boolean(reply?.ok && keep(RECORD, reply.record));
}

// ---- practice homes -------------------------------------------------------------------

class PracticeHome extends Part {
  /** The home under way, as Python wrote it. */
  text = "";
  /** What is asked for comes one after the other; what is tapped meanwhile waits.
   * @type {Promise<any>} */
  coming = Promise.resolve();

  /** @param {() => Promise<any>} work @returns {Promise<any>} */
  inTurn(work) {
    this.coming = this.coming.then(work, work);
    return this.coming;
  }

  get seed() {
    return this.dataset.seed ?? "";
  }

  begin() {
    this.addEventListener("submit", (event) => {
      event.preventDefault();
      void this.inTurn(() => this.submitted(event));
    });
    this.addEventListener("click", (event) => {
      const button = event.target instanceof Element ? event.target.closest("button") : null;
      if (button && button.type !== "submit") void this.inTurn(() => this.clicked(button));
    });
    addEventListener("hashchange", () => {
      const number = numberInAddress();
      if (number !== null && number !== this.seed) void this.inTurn(() => this.take(number));
    });
    const number = numberInAddress();
    const text = kept(HOME);
    if (text && (number === null || text.includes(`"seed": ${number},`) || text.includes(`"seed": ${number}}`))) {
      void this.inTurn(async () => (await this.ask("practice_home", { state: text })) || this.take(number ?? this.seed));
    } else if (number !== null) void this.inTurn(() => this.take(number));
    else if (unitsInUse() !== this.dataset.units) void this.inTurn(() => this.take(this.seed));
  }

  unitsChanged() {
    return this.inTurn(() => this.inOtherUnits());
  }

  async inOtherUnits() {
    const form = this.decide;
    const before = form ? new FormData(form) : null;
    await this.ask("practice_home", this.text ? { state: this.text } : { seed: this.seed });
    for (const [name, value] of before ?? []) {
      // A number belongs to the units in which it was typed.
      if (name.startsWith("number.") || typeof value !== "string") continue;
      for (const input of this.querySelectorAll(`[name="${CSS.escape(name)}"]`)) {
        if (input instanceof HTMLSelectElement) input.value = value;
        else if (input instanceof HTMLInputElement) input.checked = input.value === value;
      }
    }
  }

  /** @returns {HTMLFormElement | null} */
  get decide() {
    return this.querySelector("form[data-decide]");
  }

  /** @param {string} number */
  async take(number) {
    if (await this.ask("practice_home", { seed: number })) {
      const address = new URL(location.href);
      address.hash = `seed=${this.seed}`;
      if (address.href !== location.href) history.replaceState(null, "", address);
    }
  }

  /**
   * @param {string} op @param {object} payload @param {string[]} [regions]
   * @returns {Promise<any>}
   */
  async ask(op, payload, regions) {
    const reply = await this.request(op, payload);
    if (!reply) return null;
    this.text = reply.state;
    keep(HOME, reply.state);
    this.dataset.seed = String(reply.seed);
    const field = this.querySelector("#practice-seed");
    if (field instanceof HTMLInputElement) field.value = String(reply.seed);
    for (const name of regions ?? Object.keys(reply.regions)) this.put(name, reply.regions[name]);
    this.dispatchEvent(new CustomEvent("downflow:practice", { bubbles: true, detail: { op, seed: this.seed } }));
    return reply;
  }

  /** @param {Event} event */
  async submitted(event) {
    const form = event.target;
    if (!(form instanceof HTMLFormElement)) return;
    const data = new FormData(form);
    if (form.dataset.pick !== undefined) {
      await this.take(String(data.get("seed") ?? ""));
      return;
    }
    /** @type {Record<string, string>} */
    const faults = {};
    /** @type {Record<string, string>} */
    const numbers = {};
    for (const [name, value] of data) {
      if (name.startsWith("fault.") && value) faults[name.slice(6)] = String(value);
      if (name.startsWith("number.") && value) numbers[name.slice(7)] = String(value);
    }
    const state = await this.begun();
    if (!state) return;
    const reply = await this.ask("practice_answer", { state, faults, numbers, go_on: String(data.get("go_on") ?? "") });
    if (!reply) return;
    const well = await remember("home", this.seed, reply.skills);
    this.say(well ? "Kept in your record." : "This device keeps nothing: export is not possible here.");
    this.focusOn("#result");
  }

  /** The state to go on from; the painted home begins here. */
  async begun() {
    if (!this.text) {
      const reply = await ask("practice_home", { seed: this.seed, units: unitsInUse() }).catch(() => null);
      if (reply?.ok) this.text = reply.state;
    }
    return this.text;
  }

  /** @param {HTMLButtonElement} button */
  async clicked(button) {
    const id = button.dataset.measure;
    if (id) {
      const state = await this.begun();
      if (!state) return;
      const reply = await this.ask("practice_measure", { state, id }, ["head", "known", "measure"]);
      if (!reply) return;
      const label = button.querySelector("b")?.textContent ?? "";
      this.say(`Done: ${label}.`);
      const read = this.querySelector(`[data-read="${CSS.escape(id)}"] h4`);
      if (read instanceof HTMLElement) read.focus();
      else {
        const next = this.querySelector("button[data-measure]:not([disabled])");
        if (next instanceof HTMLElement) next.focus();
      }
    } else if (button.dataset.other !== undefined) await this.take(anyNumber());
    else if (button.dataset.share !== undefined) await this.copy();
    else if (button.dataset.job !== undefined) await this.open();
  }

  async copy() {
    const address = new URL(location.href);
    address.hash = `seed=${this.seed}`;
    try {
      await navigator.clipboard.writeText(address.href);
      this.say("Copied.");
    } catch {
      this.say(`This browser does not copy by itself. The link: ${address.href}`);
    }
  }

  async open() {
    const state = await this.begun();
    const reply = state && (await ask("practice_job", { state, at: now() }).catch(() => null));
    if (!reply?.ok) return;
    const added = await jobs.add(reply.job).catch(() => null);
    if (added?.same) await jobs.replace(reply).catch(() => null);
    this.say(`${reply.name} is open as a job: the calculators work with its readings now.`);
  }
}

// ---- drills and lessons ---------------------------------------------------------------

class Questions extends Part {
  begin() {
    this.addEventListener("submit", (event) => void this.submitted(event));
    if (unitsInUse() !== this.dataset.units) void this.unitsChanged();
  }

  /** @returns {{op: string, request: object, what: string, which: string}} */
  get question() {
    return { op: "lesson_answer", request: { lesson: this.dataset.lesson }, what: "lesson", which: this.dataset.lesson ?? "" };
  }

  /** @param {Event} event */
  async submitted(event) {
    event.preventDefault();
    const form = event.target;
    if (!(form instanceof HTMLFormElement)) return;
    if (form.dataset.next !== undefined) {
      await this.next();
      return;
    }
    const { op, request, what, which } = this.question;
    const answer = String(new FormData(form).get("answer") ?? "");
    const reply = await this.request(op, { ...request, answer });
    if (!reply) return;
    this.put("explanation", reply.html);
    await remember(what, which, { [reply.skill]: reply.right ? "shown" : "not all" });
    this.focusOn("[data-region=explanation] .df-verdict__word");
    this.dispatchEvent(new CustomEvent("downflow:practice", { bubbles: true, detail: { op, right: reply.right } }));
  }

  async next() {}
}

class PracticeDrills extends Questions {
  kind = "";
  skill = "";

  get question() {
    const request = { seed: this.dataset.seed ?? "", kind: this.kind, skill: this.skill };
    return { op: "drill_answer", request, what: "drill", which: [request.seed, this.kind, this.skill].join(" ").trim() };
  }

  async unitsChanged() {
    await this.paint(this.dataset.seed ?? "1");
  }

  async next() {
    const form = this.querySelector("form[data-next]");
    if (form instanceof HTMLFormElement) {
      const data = new FormData(form);
      this.kind = String(data.get("kind") ?? "");
      this.skill = String(data.get("skill") ?? "");
    }
    if (await this.paint(anyNumber())) this.focusOn("#question");
  }

  /** @param {string} seed */
  async paint(seed) {
    const reply = await this.request("drill", { seed, kind: this.kind, skill: this.skill });
    if (!reply) return false;
    this.dataset.seed = String(reply.seed);
    this.put("question", reply.html);
    this.put("explanation", "");
    this.say("");
    return true;
  }

  /** @param {Problem[]} problems */
  show(problems) {
    super.show(problems);
    if (problems.some((p) => p.field === "kind")) this.say(problems.map((p) => p.message).join(" "));
  }
}

// ---- the bench ------------------------------------------------------------------------

class PracticeBench extends Part {
  begin() {
    this.addEventListener("submit", (event) => {
      event.preventDefault();
      void this.paint().then((done) => done && this.focusOn("#readings"));
    });
    if (unitsInUse() !== this.dataset.units) void this.unitsChanged();
  }

  async unitsChanged() {
    await this.paint();
  }

  async paint() {
    const choice = this.querySelector("select[name=cause]");
    const [cause, severity] = (choice instanceof HTMLSelectElement ? choice.value : "").split("/");
    const reply = await this.request("bench", { cause, severity });
    if (reply) this.put("bench", reply.html);
    return Boolean(reply);
  }
}

// ---- the record -----------------------------------------------------------------------

class PracticeProgress extends Part {
  begin() {
    this.addEventListener("submit", (event) => void this.submitted(event));
    this.addEventListener("change", (event) => void this.changed(event));
    this.addEventListener("click", (event) => this.clicked(event));
    if (kept(RECORD)) void this.paint("progress", {});
  }

  /** @param {string} op @param {object} payload */
  async paint(op, payload) {
    const reply = await this.request(op, { record: kept(RECORD), ...payload });
    if (!reply) return false;
    const well = keep(RECORD, reply.record);
    this.put("progress", reply.html);
    this.say(well ? "" : "This device keeps nothing for this site. Print the sheet before you close.");
    const name = this.querySelector("#learner");
    if (name instanceof HTMLInputElement && document.activeElement !== name) name.value = JSON.parse(reply.record).learner;
    return true;
  }

  /** @param {Event} event */
  async submitted(event) {
    event.preventDefault();
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.dataset.seen === undefined) return;
    const entry = Object.fromEntries(new FormData(form));
    if (await this.paint("progress_seen", { ...entry, at: now() })) form.reset();
  }

  /** @param {Event} event */
  async changed(event) {
    const input = event.target;
    if (!(input instanceof HTMLInputElement)) return;
    if (input.name === "learner") await this.paint("progress_name", { learner: input.value });
    const file = input.dataset.import === undefined ? undefined : input.files?.[0];
    if (!file) return;
    const theirs = await file.text();
    if (await this.paint("progress_merge", { theirs })) this.say("Brought in.");
    input.value = "";
  }

  /** @param {Event} event */
  clicked(event) {
    const button = event.target instanceof Element ? event.target.closest("button") : null;
    if (button?.dataset.print !== undefined) print();
    if (button?.dataset.export === undefined) return;
    const text = kept(RECORD);
    if (!text) {
      this.say("Nothing to export yet.");
      return;
    }
    const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    const link = document.createElement("a");
    link.href = address;
    link.download = "practice record.json";
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  }
}

customElements.define("df-practice-home", PracticeHome);
customElements.define("df-practice-drills", PracticeDrills);
customElements.define("df-practice-lesson", class extends Questions {});
customElements.define("df-practice-bench", PracticeBench);
customElements.define("df-practice-progress", PracticeProgress);
