// @ts-check
/** Puts the link's figures into sentences that are there already; hides what does not apply. */
import { calendar, chart, decode, holds, shown } from "./link.js";

/** @type {{patterns: string[], slots: [string, string, number, number][],
 *   months: Record<string, string[]>, words: Record<string, {filter: string, visit: string}>}} */
const told = JSON.parse(document.getElementById("told")?.textContent ?? "{}");
const table = told.slots.map(([name, kind, pattern, longest]) =>
  /** @type {import("./link.js").Slot} */ ([name, kind, told.patterns[pattern], longest]));
const kinds = new Map(table.map(([name, kind]) => [name, kind]));

/** @param {string} css @returns {(HTMLElement | SVGElement)[]} */
const all = (css) => [...document.querySelectorAll(css)].map((e) => /** @type {HTMLElement} */ (e));

/** Parts of a drawing have no `hidden` of their own. @param {Element} part @param {boolean} away */
const shut = (part, away) => part.toggleAttribute("hidden", away);

/** @param {string} id @param {string} name @param {string} value */
function put(id, name, value) {
  document.getElementById(id)?.setAttribute(name, value);
}

function fill() {
  const { slots, fault } = decode(location.hash, table);
  for (const note of all("[data-fault]")) shut(note, note.dataset.fault !== fault);
  document.documentElement.dataset.linked = String(Object.keys(slots).length > 0);
  for (const spot of all("[data-slot]")) {
    const name = spot.dataset.slot ?? "";
    const tongue = spot.closest("body [lang]")?.getAttribute("lang") === "es" ? "es" : "en";
    const text = slots[name];
    spot.textContent = text === undefined ? ""
      : shown(kinds.get(name) ?? "text", text, slots, told.months[tongue], tongue === "es" ? " de " : " ");
  }
  for (const part of all("[data-if]")) shut(part, !holds(part.dataset.if ?? "", slots));
  for (const part of all("[data-else]")) shut(part, holds(part.dataset.else ?? "", slots));
  if (slots.chart) {
    const lines = chart(slots.chart);
    for (const name of /** @type {const} */ (["pump", "furnace", "backup", "mark"])) {
      put(`c-${name}`, "d", lines[name]);
    }
    for (const [id, y] of [["pump", lines.pumpDay], ["furnace", lines.furnaceDay]]) {
      put(`c-${id}-dot`, "cx", lines.day);
      put(`c-${id}-dot`, "cy", y);
      put(`c-${id}-day`, "x", lines.day);
      put(`c-${id}-day`, "y", y);
    }
    for (const part of all(".c-furnace")) shut(part, lines.furnace === "");
    for (const part of all(".c-backup")) shut(part, lines.backup === "");
  }
  const own = navigator.language.startsWith("es") ? "s" : "e";
  speak((slots.language ?? own) === "s" ? "es" : "en", false);
  return slots;
}

/** Which language is shown. @param {string} tongue @param {boolean} asked */
function speak(tongue, asked) {
  if (!asked && document.documentElement.dataset.asked) return;
  if (asked) document.documentElement.dataset.asked = "1";
  document.documentElement.lang = tongue;
  document.documentElement.classList.toggle("es-on", tongue === "es");
  const box = document.getElementById(tongue === "es" ? "les" : "len");
  if (box instanceof HTMLInputElement) box.checked = true;
}

let slots = fill();
document.documentElement.classList.add("js");
addEventListener("hashchange", () => {
  const id = location.hash.slice(1);
  // A jump within the page is not another link.
  if (!/^[a-z-]+$/.test(id)) slots = fill();
});
for (const [id, tongue] of [["len", "en"], ["les", "es"]]) {
  document.getElementById(id)?.addEventListener("change", () => speak(tongue, true));
}
for (const link of all("[data-go]")) {
  link.addEventListener("click", (event) => {
    // The address keeps its figures: reloading must bring them back.
    event.preventDefault();
    const target = document.getElementById(link.dataset.go ?? "");
    target?.scrollIntoView();
    target?.focus({ preventScroll: true });
  });
}
for (const button of all("[data-do=print]")) button.addEventListener("click", () => print());
for (const button of all("[data-do=calendar]")) {
  button.addEventListener("click", () => {
    const tongue = document.documentElement.lang === "es" ? "es" : "en";
    const file = new Blob([calendar(slots, told.words[tongue])], { type: "text/calendar" });
    const link = document.createElement("a");
    link.href = URL.createObjectURL(file);
    link.download = tongue === "es" ? "bomba-de-calor.ics" : "heat-pump.ics";
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  });
}
