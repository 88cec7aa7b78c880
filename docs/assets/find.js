// @ts-check
/* Find: the box in the header, over the pages that the build has listed in find.json. Works
   with no network once the site is kept. Which page a query means is decided in find-rank.js.

     /            opens it
     up, down     from the box into the list and back
     Enter        in the box: the first page found
     Escape       closes it
   With an empty box it shows the pages last used on this device. */

import { finder } from "./find-rank.js";

/** @typedef {import("./find-rank.js").Entry} Entry @typedef {import("./find-rank.js").Found} Found */

const base = new URL("..", import.meta.url);
const toggle = /** @type {HTMLInputElement | null} */ (document.getElementById("__search"));
const box = /** @type {HTMLInputElement | null} */ (document.getElementById("df-search"));
const panel = document.querySelector("[data-df=find-panel]");
const said = document.querySelector("[data-df=find-said]");
const list = document.querySelector("[data-df=find-list]");
const SIGN = { procedure: "procedure", calculator: "= calculator", symptom: "symptom", table: "table", page: "page" };

/** @type {Promise<(query: string) => Found[]> | undefined} */
let bringing;
/** @type {((query: string) => Found[]) | undefined} */
let find;
let failed = false;

async function bring() {
  const [library, answer] = await Promise.all([
    import(new URL("./vendor/minisearch.js", import.meta.url).href),
    fetch(new URL("./find.json", import.meta.url).href),
  ]);
  if (!answer.ok) throw new Error(`find.json: status ${answer.status}`);
  return finder(library.default, await answer.json());
}
function wake() {
  bringing ??= bring();
  bringing.then((made) => { find = made; failed = false; paint(); }, () => { bringing = undefined; failed = true; paint(); });
}

/** @param {string} name @param {string} text @param {string} [className] */
function piece(name, text, className) {
  const made = document.createElement(name);
  made.textContent = text;
  if (className) made.className = className;
  return made;
}
/** @param {string} url @param {(Node | string)[]} inside @param {string} [more] */
function row(url, inside, more = "") {
  const link = document.createElement("a");
  link.className = `md-search-result__link${more}`;
  link.href = new URL(url, base).href;
  link.append(...inside);
  const made = document.createElement("li");
  made.className = "md-search-result__item";
  made.append(link);
  return made;
}
/** @param {Found} found */
function rows({ page, parts }) {
  const kind = page.url === "tables/" ? "table" : page.kind;
  const sign = SIGN[/** @type {keyof typeof SIGN} */ (kind)] ?? kind;
  return [
    row(page.url, [
      piece("span", page.phase ? `${sign} · ${page.phase}` : sign, "df-found__kind"),
      piece("b", page.title, "df-found__title"),
      ...(page.summary ? [piece("span", page.summary, "df-found__summary")] : []),
    ]),
    ...parts.map((part) => row(part.url, [piece("span", `${part.kind}: ${part.title}`)], " df-found__part")),
  ];
}
/** The pages last used, as the frame keeps them. @returns {{title: string, path: string}[]} */
function recent() {
  try {
    const kept = JSON.parse(localStorage.getItem("downflow.recent") ?? "[]");
    const here = location.pathname.slice(base.pathname.length);
    return Array.isArray(kept)
      ? kept.filter((e) => typeof e?.title === "string" && typeof e?.path === "string" && e.path !== here) : [];
  } catch { return []; }
}

/** @param {string} text @param {Node[]} shown */
function show(text, shown) {
  if (said && said.textContent !== text) said.textContent = text;
  list?.replaceChildren(...shown);
}
const elsewhere = () => [
  row("by-phase/", [piece("b", "By phase", "df-found__title")]),
  row("symptoms/", [piece("b", "By symptom", "df-found__title")]),
];
function paint() {
  const query = box?.value.trim() ?? "";
  if (!query) {
    const pages = recent();
    show(pages.length ? "Last used on this device" : "A task, a part, a number or what is wrong, in any words",
      pages.map(({ title, path }) => row(path, [piece("b", title, "df-found__title")])));
  } else if (failed) {
    show("The list of pages did not come. Try again, or look here:", elsewhere());
  } else if (!find) {
    show("getting the list of pages", []);
  } else {
    const found = find(query);
    if (!found.length) show("Nothing found. Other words, or look here:", elsewhere());
    else show(found.length === 1 ? "1 page" : `${found.length} pages, the likeliest first`, found.flatMap(rows));
  }
}

const isOpen = () => Boolean(toggle?.checked);
function open() {
  if (toggle && !toggle.checked) toggle.click();
  wake();
  paint();
}
function close() {
  if (toggle?.checked) toggle.click();
}
/** @returns {HTMLAnchorElement[]} */
const links = () => [...(list?.querySelectorAll("a") ?? [])];

/** @param {KeyboardEvent} event */
function keys(event) {
  if (event.key === "Escape" && isOpen()) {
    event.preventDefault();
    close();
    box?.blur();
    return;
  }
  if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
  const stops = [box, ...links()];
  const here = stops.indexOf(/** @type {any} */ (document.activeElement));
  if (here < 0) return;
  event.preventDefault();
  stops[(here + (event.key === "ArrowDown" ? 1 : stops.length - 1)) % stops.length]?.focus();
}

if (toggle && box && panel) {
  box.addEventListener("focus", open);
  box.addEventListener("input", () => (isOpen() ? paint() : open()));
  panel.addEventListener("keydown", (event) => keys(/** @type {KeyboardEvent} */ (event)));
  panel.addEventListener("reset", () => setTimeout(() => { paint(); box.focus(); }));
  panel.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (!box.value.trim()) return;
    wake();
    await bringing?.catch(() => undefined);
    paint();
    links()[0]?.click();
  });
  // A link to a place on this very page leads there without a new page: close.
  panel.addEventListener("click", (event) => {
    if (event.target instanceof Element && event.target.closest("a")) close();
  });
  panel.addEventListener("focusout", (event) => {
    const next = /** @type {FocusEvent} */ (event).relatedTarget;
    if (next instanceof Element && !panel.contains(next)) close();
  });
  document.addEventListener("click", (event) => {
    const at = event.target instanceof Element ? event.target : null;
    if (isOpen() && at && at !== toggle && !panel.contains(at) && !at.closest("[data-df=find], [data-df=find-form]")) close();
  });
  document.addEventListener("keydown", (event) => {
    const at = event.target instanceof HTMLElement ? event.target : null;
    if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey) return;
    if (at?.isContentEditable || at?.matches("input, select, textarea")) return;
    event.preventDefault();
    open();
    box.focus();
    box.select();
  });
}
