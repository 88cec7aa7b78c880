// @ts-check
/**
 * <df-record>: the commissioning record, to print and sign, with its photos.
 * <df-papers>: the sheet for permits and rebates, to print or to save as CSV.
 * On procedures, each hold point gets a camera.
 */

import { ask, startWhenIdle, state } from "./runtime.js";
import { Covered, swap, unitsInUse } from "./calculator.js";
import { photos } from "./photos.js";
import { jobs } from "./store.js";

/** Prints one part of a page alone. @param {Element} part */
function printPart(part) {
  document.documentElement.dataset.printPart = part.localName;
  addEventListener("afterprint", () => { delete document.documentElement.dataset.printPart; }, { once: true });
  print();
}

/** @param {Blob} blob @param {string} name */
function save(blob, name) {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

class Part extends Covered {
  alive = false;
  count = 0;
  csv = "";

  /** What the worker is asked for, and the region that holds it. */
  get op() {
    return this.localName === "df-papers" ? "papers" : "record";
  }

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    this.page = this.op;
    this.addEventListener("click", (event) => void this.clicked(event));
    state.addEventListener("change", () => this.paintCover());
    for (const name of ["change", "saved"]) jobs.addEventListener(name, () => void this.paintAll());
    document.addEventListener("downflow:units", () => void this.paintAll());
    photos.addEventListener("change", () => void this.paintAll());
    startWhenIdle();
    void jobs.ready.then(() => {
      this.paintCover();
      if (jobs.current || unitsInUse() !== (this.dataset.units ?? "ip")) void this.paintAll();
    });
  }

  painted = "";

  /** @param {boolean} [anew] */
  async paintAll(anew = false) {
    const wanted = `${unitsInUse()} ${jobs.current?.text ?? ""}`;
    if (!anew && wanted === this.painted) {
      await this.hang();
      return;
    }
    this.painted = wanted;
    const mine = ++this.count;
    for (const ranged of [false, true]) {
      const request = { job: jobs.current?.text ?? null, units: unitsInUse(), ranged };
      const reply = await ask(this.op, request, { key: this.op, later: ranged }).catch(() => null);
      if (mine !== this.count) return;
      if (!reply?.ok) {
        this.painted = "";
        return;
      }
      this.csv = reply.csv ?? "";
      this.name = reply.name ?? "";
      const fresh = document.createElement("template");
      fresh.innerHTML = reply.html;
      const from = fresh.content.querySelector(`[data-region=${this.op}]`);
      const place = this.querySelector(`[data-region=${this.op}]`);
      if (!from || !(place instanceof HTMLElement)) return;
      swap(place, from.innerHTML);
      this.dataset.units = unitsInUse();
      this.dataset.whose = jobs.current ? "job" : "example";
      if (jobs.current) this.uncover();
      else this.cover();
      await this.hang();
    }
  }

  name = "";
  /** @type {string[]} */
  hung = [];

  /** Puts the pictures into their frames. */
  async hang() {
    for (const frame of this.querySelectorAll("figure[data-photo]")) {
      if (!(frame instanceof HTMLElement) || frame.querySelector("img, .df-small")) continue;
      const photo = await photos.get(frame.dataset.photo ?? "");
      if (frame.querySelector("img, .df-small")) continue;
      const words = frame.querySelector("figcaption")?.firstChild?.textContent ?? "";
      if (photo) {
        const picture = document.createElement("img");
        picture.src = URL.createObjectURL(photo.blob);
        this.hung.push(picture.src);
        picture.alt = words;
        frame.prepend(picture);
      } else {
        const note = document.createElement("p");
        note.className = "df-small";
        note.textContent = "This photo lies on another device.";
        frame.prepend(note);
      }
    }
    while (this.hung.length > 400) URL.revokeObjectURL(this.hung.shift() ?? "");
  }

  /** @param {Event} event */
  async clicked(event) {
    this.coverClicked(event);
    const button = event.target instanceof Element ? event.target.closest("button") : null;
    if (!button) return;
    if (button.dataset.photoAdd) await photos.take(button.dataset.photoAdd);
    else if (button.dataset.photoGone) await photos.drop(button.dataset.photoGone);
    else if (button.dataset.printPart !== undefined) printPart(this);
    else if (button.dataset.csv !== undefined) await this.saveCsv();
  }

  async saveCsv() {
    if (!this.csv) {
      const request = { job: jobs.current?.text ?? null, units: unitsInUse(), ranged: false };
      const reply = await ask("papers", request).catch(() => null);
      if (!reply?.ok) return;
      this.csv = reply.csv;
      this.name = reply.name;
    }
    const name = this.name.replace(/[^\p{L}\p{N} _-]+/gu, "").trim() || "job";
    // The mark at the front tells a spreadsheet that this is UTF-8.
    save(new Blob(["\ufeff", this.csv], { type: "text/csv" }), `${name}, permits and rebates.csv`);
  }
}

/** A camera on each hold point of a procedure. */
async function holdPoints() {
  const article = document.querySelector("article[data-procedure]");
  if (!(article instanceof HTMLElement)) return;
  for (const hold of article.querySelectorAll("section.df-hold[id]")) {
    const of = `${article.dataset.procedure}#${hold.id}`;
    let line = hold.querySelector(":scope > .df-hold__photos");
    if (!line) {
      line = document.createElement("p");
      line.className = "df-hold__photos df-live";
      hold.append(line);
    }
    const kept = jobs.current ? await photos.of(jobs.current.id, of) : [];
    const button = document.createElement("button");
    button.type = "button";
    button.className = "df-link";
    button.textContent = kept.length ? `Photo of this hold point (${kept.length} kept)` : "Photo of this hold point";
    button.addEventListener("click", () => void photos.take(of));
    line.replaceChildren(button);
  }
}

customElements.define("df-record", class extends Part {});
customElements.define("df-papers", class extends Part {});
void jobs.ready.then(holdPoints);
jobs.addEventListener("change", () => void holdPoints());
photos.addEventListener("change", () => void holdPoints());
setTimeout(() => void photos.sweep().catch(() => {}), 20_000);
