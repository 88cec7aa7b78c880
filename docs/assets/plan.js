// @ts-check
/**
 * <df-plan>: every answer of the open job, the numbers first, the ranges when they are in.
 * <df-first>: a first answer from a dozen facts. The start page's few lines about the open job.
 */

import { ask, start, startWhenIdle, state } from "./runtime.js";
import { Covered, swap, unitsInUse } from "./calculator.js";
import { keepTyped, watchForm } from "./form.js";
import { jobs, now } from "./store.js";

class PlanPage extends Covered {
  alive = false;
  page = "plan";
  count = 0;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    this.addEventListener("click", (event) => {
      this.coverClicked(event);
      if (event.target instanceof Element && event.target.closest("[data-print]")) print();
    });
    state.addEventListener("change", () => this.paintCover());
    jobs.addEventListener("change", () => void this.paintAll());
    document.addEventListener("downflow:units", () => void this.paintAll());
    startWhenIdle();
    void jobs.ready.then(() => {
      this.paintCover();
      if (jobs.current || unitsInUse() !== (this.dataset.units ?? "ip")) void this.paintAll();
    });
  }

  async paintAll() {
    const mine = ++this.count;
    for (const ranged of [false, true]) {
      const request = { job: jobs.current?.text ?? null, units: unitsInUse(), ranged };
      const reply = await ask("plan", request, { key: "plan", later: ranged }).catch(() => null);
      if (!reply?.ok || mine !== this.count) return;
      const fresh = document.createElement("template");
      fresh.innerHTML = reply.html;
      const from = fresh.content.querySelector("[data-region=plan]");
      const place = this.querySelector("[data-region=plan]");
      if (!from || !(place instanceof HTMLElement)) return;
      swap(place, from.innerHTML);
      this.dataset.units = unitsInUse();
      this.dataset.whose = jobs.current ? "job" : "example";
      if (jobs.current) this.uncover();
      else this.cover();
      if (ranged) this.dispatchEvent(new CustomEvent("downflow:range", { bubbles: true, detail: { id: "plan" } }));
    }
  }
}

class FirstAnswer extends Covered {
  alive = false;
  page = "first";
  count = 0;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    const form = this.form;
    if (form) watchForm(form, (entered) => this.enter(entered));
    this.addEventListener("focusin", () => start(), { once: true });
    this.addEventListener("click", (event) => this.coverClicked(event));
    state.addEventListener("change", () => {
      this.paintCover();
      const place = this.querySelector("[data-state]");
      if (place) place.textContent = state.words;
    });
    jobs.addEventListener("change", () => void this.paintAll(true));
    document.addEventListener("downflow:units", () => void this.paintAll(true));
    startWhenIdle();
    void jobs.ready.then(() => {
      this.paintCover();
      if (jobs.current || unitsInUse() !== (this.dataset.units ?? "ip")) void this.paintAll(true);
    });
  }

  /** @returns {HTMLFormElement | null} */
  get form() {
    return this.querySelector("form[data-region=form]");
  }

  /** @param {boolean} whole */
  async paintAll(whole) {
    const mine = ++this.count;
    for (const ranged of [false, true]) {
      const request = { job: jobs.current?.text ?? null, units: unitsInUse(), ranged };
      const reply = await ask("first", request, { key: "first", later: ranged }).catch(() => null);
      if (!reply?.ok || mine !== this.count) return;
      const form = this.form;
      if (whole && !ranged && form) {
        const back = keepTyped(form, this.dataset.units === unitsInUse());
        form.innerHTML = reply.regions.form;
        back();
      }
      for (const name of ["messages", "answer"]) {
        const place = this.querySelector(`[data-region="${name}"]`);
        if (place instanceof HTMLElement) swap(place, reply.regions[name]);
      }
      this.dataset.units = unitsInUse();
      if (jobs.current) this.uncover();
      else this.cover();
    }
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
    void this.paintAll(false);
    return [];
  }
}

/** The start page: which job is open, how it stands, what to measure first. */
async function summarise() {
  const place = document.querySelector("[data-df=job-summary]");
  if (!(place instanceof HTMLElement) || !jobs.current) return;
  const request = { job: jobs.current.text, units: unitsInUse(), ranged: false };
  const reply = await ask("summary", request, { key: "summary", later: true }).catch(() => null);
  if (!reply?.ok || !jobs.current) return;
  const links = [...place.querySelectorAll(":scope > .df-row")];
  const head = document.createElement("h2");
  head.id = "job";
  head.textContent = jobs.current.name;
  const body = document.createElement("div");
  body.innerHTML = reply.html;
  for (const link of body.querySelectorAll("a[data-open]")) {
    if (link instanceof HTMLAnchorElement) link.href = `job-sheet/#fact-${link.dataset.open}`;
  }
  place.replaceChildren(head, body, ...links);
}

void jobs.ready.then(summarise);
jobs.addEventListener("change", () => void summarise());
document.addEventListener("downflow:units", () => void summarise());

customElements.define("df-plan", PlanPage);
customElements.define("df-first", FirstAnswer);
