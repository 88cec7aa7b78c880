// Runs the page's scripts in Node. Input: {slots, fragments, spots}; output: what came of each.
// `docs/h/link.js` is loaded as it is; `docs/h/page.js` runs against a page made of stubs that
// only know what the real page has: attributes, text, and being hidden.
import { readFileSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const folder = process.argv[2];
const place = mkdtempSync(join(tmpdir(), "homeowner-"));
writeFileSync(join(place, "package.json"), '{"type":"module"}');
for (const name of ["link.js", "page.js"]) writeFileSync(join(place, name), readFileSync(join(folder, name)));
const link = await import(pathToFileURL(join(place, "link.js")).href);
const asked = JSON.parse(readFileSync(0, "utf8"));

const out = { decoded: [], pages: [], said: [] };
for (const fragment of asked.fragments ?? []) {
  const { slots, fault } = link.decode(fragment, asked.slots);
  out.decoded.push(fault || { ...slots });
}
for (const [condition, slots] of asked.conditions ?? []) out.said.push(link.holds(condition, slots));
if (asked.shown) out.shown = asked.shown.map((one) => link.shown(...one));
if (asked.calendar) out.calendar = link.calendar(...asked.calendar);

if (asked.pages) {
  /** Whatever could make text into markup or code stops the test. */
  const never = (what) => () => { throw new Error(`${what} was used`); };
  class Stub {
    constructor(from) {
      Object.assign(this, from);
      this.attributes = {};
      this.text = "";
      for (const bad of ["innerHTML", "outerHTML", "srcdoc"]) Object.defineProperty(this, bad, { set: never(bad) });
    }
    set textContent(text) { if (typeof text !== "string") throw new Error("not text"); this.text = text; }
    get textContent() { return this.text; }
    setAttribute(name, value) {
      if (!["d", "x", "y", "cx", "cy"].includes(name)) throw new Error(`attribute ${name}`);
      this.attributes[name] = value;
    }
    toggleAttribute(name, on) { if (name !== "hidden") throw new Error(`attribute ${name}`); this.hidden = on; }
    closest() { return { getAttribute: () => this.lang ?? "en" }; }
    addEventListener() {}
    insertAdjacentHTML() { never("insertAdjacentHTML")(); }
  }
  const told = new Stub({});
  told.text = JSON.stringify(asked.told);
  const spots = asked.spots.map((s) => new Stub({ dataset: s.dataset, lang: s.lang, classes: s.classes, id: s.id }));
  const byId = new Map(spots.filter((s) => s.id).map((s) => [s.id, s]));
  const listeners = {};
  const root = new Stub({ dataset: {}, classList: { add() {}, toggle() {} } });
  globalThis.location = { hash: "" };
  globalThis.addEventListener = (name, what) => { listeners[name] = what; };
  Object.defineProperty(globalThis, "navigator", { value: { language: "en-US" }, configurable: true });
  globalThis.HTMLInputElement = class {};
  globalThis.eval = never("eval");
  globalThis.fetch = never("fetch");
  globalThis.document = {
    documentElement: root,
    getElementById: (id) => (id === "told" ? told : byId.get(id) ?? null),
    querySelectorAll: (css) => {
      const data = /^\[data-([a-z]+)(?:=([a-z]+))?\]$/.exec(css);
      if (data) return spots.filter((s) => s.dataset[data[1]] !== undefined && (!data[2] || s.dataset[data[1]] === data[2]));
      if (css.startsWith(".")) return spots.filter((s) => s.classes?.includes(css.slice(1)));
      throw new Error(`no such choice: ${css}`);
    },
    createElement: never("createElement"),
    write: never("document.write"),
  };
  await import(pathToFileURL(join(place, "page.js")).href);
  for (const fragment of asked.pages) {
    for (const s of spots) s.attributes = {};
    location.hash = fragment;
    listeners.hashchange();
    out.pages.push({
      texts: spots.filter((s) => s.dataset.slot && s.text).map((s) => [s.dataset.slot, s.text]),
      faults: spots.filter((s) => s.dataset.fault && s.hidden === false).map((s) => s.dataset.fault),
      attributes: spots.flatMap((s) => Object.values(s.attributes)),
      shown: spots.filter((s) => s.dataset.if && !s.hidden).map((s) => s.dataset.if),
    });
  }
}
process.stdout.write(JSON.stringify(out));
