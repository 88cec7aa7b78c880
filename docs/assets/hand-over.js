// @ts-check
/**
 * <df-hand-over>: the homeowner's link of the open job, its code, a label and a letter. Python
 * makes the link and the code; here they are copied, shared and printed.
 */
import { ask, start, startWhenIdle, state } from "./runtime.js";
import { Covered, swap, unitsInUse } from "./calculator.js";
import { jobs } from "./store.js";

const KEY = "downflow.site";

/** @returns {string} */
const kept = () => {
  try { return localStorage.getItem(KEY) ?? ""; } catch { return ""; }
};

class HandOver extends Covered {
  alive = false;
  page = "hand-over";
  count = 0;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  later;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    const field = this.querySelector("[data-site]");
    if (field instanceof HTMLInputElement) {
      field.value = kept() || (this.dataset.site ?? "");
      field.addEventListener("input", () => {
        clearTimeout(this.later);
        this.later = setTimeout(() => this.keep(field.value.trim()), 300);
      });
      field.addEventListener("focus", () => start(), { once: true });
    }
    this.addEventListener("click", (event) => {
      this.coverClicked(event);
      void this.clicked(event);
    });
    state.addEventListener("change", () => this.paintCover());
    jobs.addEventListener("change", () => void this.paintAll());
    document.addEventListener("downflow:units", () => void this.paintAll());
    addEventListener("afterprint", () => delete document.documentElement.dataset.printing);
    startWhenIdle();
    void jobs.ready.then(() => {
      this.paintCover();
      if (jobs.current || this.site || unitsInUse() !== (this.dataset.units ?? "ip")) void this.paintAll();
    });
  }

  get site() {
    const field = this.querySelector("[data-site]");
    return field instanceof HTMLInputElement ? field.value.trim() : "";
  }

  /** @param {string} site */
  keep(site) {
    try { localStorage.setItem(KEY, site); } catch { /* nothing is kept here; the page works on */ }
    void this.paintAll();
  }

  async paintAll() {
    const mine = ++this.count;
    const request = { job: jobs.current?.text ?? null, units: unitsInUse(), site: this.site };
    const reply = await ask("hand_over", request, { key: "hand-over" }).catch(() => null);
    const place = this.querySelector("[data-region=hand-over]");
    if (!reply?.ok || mine !== this.count || !(place instanceof HTMLElement)) return;
    swap(place, reply.html);
    this.dataset.units = unitsInUse();
    this.dataset.whose = jobs.current ? "job" : "example";
    if (jobs.current) this.uncover();
    else this.cover();
    this.dispatchEvent(new CustomEvent("downflow:answer", { bubbles: true, detail: { id: "hand-over" } }));
  }

  /** @param {string} words */
  say(words) {
    const place = this.querySelector("[data-said]");
    if (place) place.textContent = words;
  }

  /** @param {Event} event */
  async clicked(event) {
    const button = event.target instanceof Element ? event.target.closest("button") : null;
    if (!button) return;
    const link = this.querySelector("[data-link]")?.getAttribute("data-link") ?? "";
    const paper = button.dataset.print;
    if (paper) {
      document.documentElement.dataset.printing = paper;
      print();
    } else if (button.hasAttribute("data-copy") && link) {
      try {
        await navigator.clipboard.writeText(link);
        this.say("Copied.");
      } catch {
        this.say("This browser does not copy by itself: hold a finger on the link above.");
      }
    } else if (button.hasAttribute("data-share") && link) {
      try {
        if (!navigator.share) throw new TypeError("no share sheet");
        await navigator.share({ url: link });
      } catch (error) {
        if (error instanceof Error && error.name === "AbortError") return;
        this.say("This browser has no share sheet. Copy the link instead.");
      }
    }
  }
}

customElements.define("df-hand-over", HandOver);
