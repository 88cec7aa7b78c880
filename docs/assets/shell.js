// @ts-check
/* The frame around every page: units, paper or night, find, contents, the name of the
   open job, ticks and hold points, recently used. No number is computed here.

   Kept on the device (localStorage):
     downflow.units    "ip" | "si"
     downflow.scheme   "paper" | "night"; absent: as the system says
     downflow.open     {"id", "name"} of the open job, written by the job store
     downflow.ticks.ID {"PROCEDURE#STEP": "time"} for the open job, or for none
     downflow.recent   [{"title", "path"}], newest first

   Events on document:
     downflow:units     out  {units}                       the reader changed the units
     downflow:job       in   {id, name, confirmed?}        another job is open; id null: none
     downflow:confirm   out  {procedure, step, at}         ticked, confirmed (at: time) or taken back (at: null);
                             whoever keeps it with the job calls preventDefault()
     downflow:find      in   {query?}                      open find */

const root = document.documentElement;
const base = new URL("..", import.meta.url);

/** @param {string} key @returns {any} */
function kept(key) {
  try { return JSON.parse(localStorage.getItem(key) ?? "null"); } catch { return null; }
}
/** @param {string} key @param {string | null} text */
function keep(key, text) {
  try {
    if (text === null) localStorage.removeItem(key);
    else localStorage.setItem(key, text);
  } catch { /* this device keeps nothing; the page works on */ }
}
/** @param {string} name @returns {HTMLElement[]} */
const all = (name) => [...document.querySelectorAll(`[data-df="${name}"]`)].filter((e) => e instanceof HTMLElement);

// ---- units: what is in use stands on the button -------------------------------------
const UNITS = {
  ip: { shown: "ft, °F", label: "Units: ft, °F. Tap for m, °C" },
  si: { shown: "m, °C", label: "Units: m, °C. Tap for ft, °F" },
};
/** @returns {"ip" | "si"} */
const units = () => (root.dataset.units === "si" ? "si" : "ip");

function paintUnits() {
  const use = UNITS[units()];
  for (const button of all("units")) {
    button.textContent = use.shown;
    button.setAttribute("aria-label", use.label);
  }
  for (const quantity of document.querySelectorAll(".df-q[data-ip][data-si]")) {
    const { ip, si } = /** @type {HTMLElement} */ (quantity).dataset;
    quantity.textContent = units() === "si" ? `${si} (${ip})` : `${ip} (${si})`;
  }
}
/** @param {"ip" | "si"} next */
function setUnits(next) {
  root.dataset.units = next;
  keep("downflow.units", next);
  paintUnits();
  document.dispatchEvent(new CustomEvent("downflow:units", { detail: { units: next } }));
}

// ---- paper or night: follows the system until the reader says otherwise -------------
const dark = matchMedia("(prefers-color-scheme: dark)");
/** @returns {"paper" | "night"} */
const scheme = () => /** @type {"paper" | "night"} */ (root.dataset.mdColorScheme) ?? (dark.matches ? "night" : "paper");

function paintScheme() {
  for (const button of all("scheme")) {
    button.setAttribute("aria-label", scheme() === "night" ? "Night. Tap for paper" : "Paper. Tap for night");
  }
}
function switchScheme() {
  const next = scheme() === "night" ? "paper" : "night";
  root.dataset.mdColorScheme = next;
  keep("downflow.scheme", next);
  paintScheme();
}

// ---- find: the theme's search, opened from the header, the bar and the start page ---
const searchToggle = () => /** @type {HTMLInputElement | null} */ (document.getElementById("__search"));
const searchBox = () => /** @type {HTMLInputElement | null} */ (document.getElementById("df-search"));

/** @param {string} [query] */
function find(query) {
  const toggle = searchToggle();
  const box = searchBox();
  if (!toggle || !box) return;
  if (!toggle.checked) toggle.click();
  if (query !== undefined) box.value = query;
  box.focus();
  box.dispatchEvent(new KeyboardEvent("keyup", { bubbles: true }));
  box.dispatchEvent(new Event("input", { bubbles: true }));
}
function closeFind() {
  const toggle = searchToggle();
  if (toggle?.checked) toggle.click();
  searchBox()?.blur();
  all("find")[0]?.focus();
}

// ---- contents: a panel where the list does not stand beside the page ----------------
/** @param {boolean} open */
function showContents(open) {
  if (open) root.dataset.contents = "open";
  else delete root.dataset.contents;
  for (const button of all("contents")) button.setAttribute("aria-expanded", String(open));
  if (open) all("contents-close")[0]?.focus();
  else all("contents")[0]?.focus();
}

// ---- the open job's name -------------------------------------------------------------
/** @type {{id: string, name: string} | null} */
let job = null;

function paintJob() {
  for (const link of all("job-name")) link.textContent = job?.name || (job ? "Job without a name" : "No job is open");
  if (job) root.dataset.job = "open";
  else delete root.dataset.job;
}
function readJob() {
  const open = kept("downflow.open");
  job = open && typeof open === "object" && open.id ? { id: String(open.id), name: String(open.name ?? "") } : null;
}

// ---- ticks and hold points: kept with the job, with time; undo stays beside them ----
const ticksKey = () => `downflow.ticks.${job?.id ?? "none"}`;
/** @type {Record<string, string>} */
let confirmed = {};

/** @param {Element} element */
function place(element) {
  const owner = element.closest("[data-procedure]");
  const step = element.closest("[id]");
  const procedure = owner instanceof HTMLElement ? owner.dataset.procedure : undefined;
  return procedure && step ? { procedure, step: step.id, key: `${procedure}#${step.id}` } : null;
}
/** @param {{procedure: string, step: string, key: string}} where @param {string | null} at */
function confirm({ procedure, step, key }, at) {
  if (at) confirmed[key] = at;
  else delete confirmed[key];
  const free = document.dispatchEvent(new CustomEvent("downflow:confirm", {
    cancelable: true, detail: { procedure, step, at },
  }));
  if (free) keep(ticksKey(), JSON.stringify(confirmed));
  paintConfirmed();
}
const clock = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });

function paintConfirmed() {
  for (const input of document.querySelectorAll(".df-tick input")) {
    const where = place(input);
    if (where && input instanceof HTMLInputElement) input.checked = where.key in confirmed;
  }
  for (const hold of document.querySelectorAll(".df-hold")) {
    const where = place(hold);
    if (!where) continue;
    const at = confirmed[where.key];
    hold.toggleAttribute("data-released", Boolean(at));
    const button = hold.querySelector("button.df-button");
    if (button instanceof HTMLButtonElement) button.hidden = Boolean(at);
    let done = hold.querySelector(".df-done");
    if (at && !done) {
      done = document.createElement("p");
      done.className = "df-done";
      done.setAttribute("role", "status");
      const said = document.createElement("span");
      const undo = document.createElement("button");
      undo.type = "button";
      undo.className = "df-link";
      undo.dataset.df = "undo";
      undo.textContent = "undo";
      done.append(said, undo);
      hold.append(done);
    }
    if (at && done?.firstElementChild) {
      done.firstElementChild.textContent = `${button?.textContent ?? "Confirmed"} · ${clock.format(new Date(at))}`;
    }
    if (!at) done?.remove();
  }
}

// ---- recently used ------------------------------------------------------------------
/** @returns {{title: string, path: string}[]} */
const recent = () => {
  const list = kept("downflow.recent");
  return Array.isArray(list) ? list.filter((e) => typeof e?.title === "string" && typeof e?.path === "string") : [];
};
function rememberPage() {
  const path = location.pathname.slice(base.pathname.length);
  const title = document.querySelector("h1")?.textContent?.trim();
  if (!path || !title || !location.pathname.startsWith(base.pathname)) return;
  const list = [{ title, path }, ...recent().filter((e) => e.path !== path)];
  keep("downflow.recent", JSON.stringify(list.slice(0, 6)));
}
function paintRecent() {
  for (const section of all("recent")) {
    const list = section.querySelector("ul");
    const pages = recent();
    section.hidden = !list || pages.length === 0;
    list?.replaceChildren(...pages.map(({ title, path }) => {
      const link = document.createElement("a");
      link.className = "df-item";
      link.href = new URL(path, base).href;
      const name = document.createElement("b");
      name.textContent = title;
      link.append(name);
      const row = document.createElement("li");
      row.append(link);
      return row;
    }));
  }
}

// ---- one listener for each kind of thing that happens --------------------------------
document.addEventListener("click", (event) => {
  const target = event.target instanceof Element ? event.target : null;
  const control = target?.closest("[data-df]");
  switch (control instanceof HTMLElement ? control.dataset.df : undefined) {
    case "units": return setUnits(units() === "si" ? "ip" : "si");
    case "scheme": return switchScheme();
    case "find": event.preventDefault(); showContents(false); return find();
    case "find-close": return closeFind();
    case "contents": event.preventDefault(); return showContents(root.dataset.contents !== "open");
    case "contents-close": event.preventDefault(); return showContents(false);
    case "undo": {
      const where = control && place(control);
      if (where) confirm(where, null);
      return undefined;
    }
    default:
  }
  const release = target?.closest(".df-hold button.df-button");
  const where = release && place(release);
  if (where) confirm(where, new Date().toISOString());
  return undefined;
});
document.addEventListener("change", (event) => {
  const input = event.target;
  if (!(input instanceof HTMLInputElement) || !input.closest(".df-tick")) return;
  const where = place(input);
  if (where) confirm(where, input.checked ? new Date().toISOString() : null);
});
document.addEventListener("submit", (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || form.dataset.df !== "find-form") return;
  event.preventDefault();
  const box = form.querySelector("input");
  find(box?.value ?? "");
});
document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && root.dataset.contents === "open") showContents(false);
});
document.addEventListener("downflow:find", (event) => find(/** @type {CustomEvent} */ (event).detail?.query));
document.addEventListener("downflow:job", (event) => {
  const detail = /** @type {CustomEvent} */ (event).detail;
  job = detail?.id ? { id: String(detail.id), name: String(detail.name ?? "") } : null;
  confirmed = detail?.confirmed ?? kept(ticksKey()) ?? {};
  paintJob();
  paintConfirmed();
});
addEventListener("storage", (event) => {
  if (event.key === "downflow.units" && (event.newValue === "si" ? "si" : "ip") !== units()) {
    setUnits(event.newValue === "si" ? "si" : "ip");
  }
  if (event.key === "downflow.open") { readJob(); confirmed = kept(ticksKey()) ?? {}; paintJob(); paintConfirmed(); }
  if (event.key === ticksKey()) { confirmed = kept(ticksKey()) ?? {}; paintConfirmed(); }
});
dark.addEventListener("change", paintScheme);

readJob();
confirmed = kept(ticksKey()) ?? {};
paintJob();
paintUnits();
paintScheme();
paintConfirmed();
paintRecent();
rememberPage();
