// @ts-check
/**
 * <df-places>: a town or postal code finds the climate stations near it; one tap puts a
 * station's climate, the zones and the prices of its state on the open job's sheet, as estimates.
 *
 * The place files lie with the pages, so that this works without a signal. Only the few that the
 * search asks for are read. What they say is Python's to judge.
 */

import { ask, release } from "./runtime.js";
import { unitsInUse } from "./calculator.js";
import { jobs, now } from "./store.js";

/** @type {Map<string, Promise<string>>} */
const files = new Map();

/** @param {string} name @returns {Promise<string>} */
function file(name) {
  let found = files.get(name);
  if (!found) {
    found = fetch(new URL(`places/${name}`, release.root)).then((answer) => {
      if (!answer.ok) throw new Error(`${name}: status ${answer.status}`);
      return answer.text();
    });
    found.catch(() => files.delete(name));
    files.set(name, found);
  }
  return found;
}

/** @param {string} tag @param {string} text @param {string} [css] */
function make(tag, text, css) {
  const element = document.createElement(tag);
  element.textContent = text;
  if (css) element.className = css;
  return element;
}

class Places extends HTMLElement {
  alive = false;
  query = "";
  /** @type {Record<string, string>} */
  texts = {};
  /** @type {number | undefined} */
  town;
  count = 0;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    this.addEventListener("submit", (event) => {
      event.preventDefault();
      const box = this.querySelector("input");
      this.town = undefined;
      void this.search(box?.value ?? "");
    });
    this.addEventListener("click", (event) => {
      const target = event.target instanceof Element ? event.target.closest("button") : null;
      if (target?.dataset.station) void this.take(target.dataset.station, target.querySelector("b")?.textContent ?? "");
      if (target?.dataset.town) {
        this.town = Number(target.dataset.town);
        void this.search(this.query);
      }
    });
    document.addEventListener("downflow:units", () => { if (this.query) void this.search(this.query); });
  }

  /** @param {string} name @returns {HTMLElement | null} */
  piece(name) {
    return this.querySelector(`[data-piece="${name}"]`);
  }

  /** @param {string} words */
  say(words) {
    const place = this.piece("say");
    if (place) place.textContent = words;
  }

  /**
   * Asks until no further file is wanted.
   * @param {string} op
   * @param {Record<string, unknown>} more
   */
  async asked(op, more) {
    for (;;) {
      const request = { query: this.query, index: await file("index.json"), texts: this.texts, units: unitsInUse(), town: this.town, ...more };
      const reply = op === "station" ? await jobs.apply(op, request) : await ask(op, { ...request, job: jobs.current?.text ?? null });
      if (!reply?.need) return reply;
      for (const name of reply.need) this.texts[name] = await file(name);
    }
  }

  /** @param {string} query */
  async search(query) {
    const mine = ++this.count;
    this.query = query;
    this.texts = {};
    this.say("Looking.");
    let reply;
    try {
      reply = await this.asked("places", {});
    } catch {
      this.say("The place files are not on this device yet, or the calculator did not start. Type the climate by hand, or try again with a signal.");
      return;
    }
    if (mine !== this.count || !reply) return;
    const list = this.piece("list");
    if (!reply.ok) {
      list?.replaceChildren();
      this.say(reply.errors?.[0]?.message ?? "Nothing found.");
      return;
    }
    const towns = reply.towns.length > 1 && this.town === undefined
      ? reply.towns.map((/** @type {{name: string, state: string}} */ town, /** @type {number} */ n) => this.line({ town: String(n) }, `${town.name}, ${town.state}`, "choose this town"))
      : [];
    const stations = reply.stations.map((/** @type {Record<string, string>} */ each) =>
      this.line({ station: each.id ?? "" }, `${each.name}, ${each.state}`, [each.distance, each.height || each.elevation, each.caution].filter(Boolean).join(" · ")));
    list?.replaceChildren(...towns, ...stations);
    this.say([...reply.notes, stations.length ? "Tap the station whose winters are most like the home's." : ""].filter(Boolean).join(" "));
  }

  /** @param {Record<string, string>} data @param {string} name @param {string} sub */
  line(data, name, sub) {
    const row = document.createElement("li");
    const button = /** @type {HTMLButtonElement} */ (make("button", "", "df-item"));
    button.type = "button";
    Object.assign(button.dataset, data);
    button.append(make("b", name), make("span", sub, "df-item__sub"));
    row.append(button);
    return row;
  }

  /** @param {string} station @param {string} name */
  async take(station, name) {
    const reply = await this.asked("station", { station, at: now() }).catch(() => null);
    if (!reply?.ok) {
      this.say(reply?.errors?.[0]?.message ?? "It could not be put on the sheet.");
      return;
    }
    const kept = reply.kept.length ? ` Kept, because better known: ${reply.kept.join(", ")}.` : "";
    this.piece("list")?.replaceChildren();
    this.say(`${name.trim()} is on the job sheet, as an estimate.${kept}`);
    jobs.dispatchEvent(new Event("change"));
  }
}

customElements.define("df-places", Places);
