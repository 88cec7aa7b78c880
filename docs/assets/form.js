// @ts-check
/**
 * A painted form of facts: what the fields do. It knows nothing of jobs or calculators; each
 * change is handed to `send`.
 *
 *   watchForm(form, send)    send({name, typed, from, rows, note}, field) resolves to a list of
 *                            errors [{field, message}], or null when a newer change took its place
 *   badFields(form)          the fields whose last change was refused
 *   keepTyped(form)          call before the form is painted anew; what it returns puts back
 *                            what was refused, rows that are not yet full, and the focus
 *
 * Text is passed on as it was typed. Nothing here reads a number.
 */

/** @typedef {{name: string, typed?: string, rows?: Record<string, string>[], from: string, note?: string}} Entered */
/** @typedef {{field: string, message: string}} Problem */
/** @typedef {(entered: Entered, field: HTMLElement) => Promise<Problem[] | null>} Send */

const LINES = { measured: "df-from-measured", "data sheet": "df-from-sheet", estimated: "df-from-estimated", assumed: "df-from-assumed" };
let lastFrom = "measured";

/** @param {Element} element @returns {HTMLElement | null} */
const fieldOf = (element) => element.closest("[data-fact]");

/** @param {HTMLElement} field @returns {HTMLSelectElement | null} */
const fromOf = (field) => field.querySelector(`select[name="${field.dataset.fact}.from"]`);

/** Draws the line under a value by the word that stands beside it. @param {HTMLElement} field */
function drawLine(field) {
  const select = fromOf(field);
  const line = select?.closest(".df-fact__line");
  if (!line || !select) return;
  for (const [word, css] of Object.entries(LINES)) line.classList.toggle(css, select.value === word);
}

/** @param {HTMLElement} field @param {Problem[]} problems @param {HTMLElement[]} [rows] */
export function showProblems(field, problems, rows = []) {
  const place = field.querySelector(":scope > .df-error");
  for (const cell of field.querySelectorAll("td[data-bad]")) delete (/** @type {HTMLElement} */ (cell).dataset.bad);
  for (const input of field.querySelectorAll("[aria-invalid]")) input.removeAttribute("aria-invalid");
  const mine = problems.filter((each) => each.field.split(/[[.]/)[0] === field.dataset.fact);
  for (const { field: path } of mine) {
    const found = /\[(\d+)\]\.(.+)$/.exec(path);
    const cell = found && rows[Number(found[1])]?.querySelector(`td[data-column="${CSS.escape(found[2] ?? "")}"]`);
    if (cell instanceof HTMLElement) {
      cell.dataset.bad = "";
      cell.querySelector("input, select")?.setAttribute("aria-invalid", "true");
    }
  }
  if (mine.length) field.dataset.bad = "";
  else delete field.dataset.bad;
  if (mine.length && field.dataset.kind !== "table") field.querySelector("input, select")?.setAttribute("aria-invalid", "true");
  if (place instanceof HTMLElement) {
    place.hidden = !mine.length;
    place.textContent = mine.map((each) => each.message).join(" ");
  }
}

/** @param {HTMLElement} form @returns {HTMLElement[]} */
export const badFields = (form) => [...form.querySelectorAll("[data-fact][data-bad]")].filter((e) => e instanceof HTMLElement);

/** The name of a field as it stands over it. @param {HTMLElement} field */
export const nameOf = (field) => (field.querySelector("label, legend")?.textContent ?? "").trim().toLowerCase();

/** The rows that a reader types in. @param {HTMLElement} field @returns {Element} */
const gridOf = (field) => field.querySelector("[data-own-rows]") ?? field;

/** Puts rows of the reader's own in the place of the worked example's. @param {HTMLElement} field */
function ownRows(field) {
  field.querySelector("[data-example-rows]")?.remove();
  const own = field.querySelector("[data-own-rows]");
  if (own instanceof HTMLElement) own.hidden = false;
  field.querySelector("button[data-own]")?.remove();
}

/** Whether rows were begun that the job does not have yet. @param {HTMLElement} field */
function unfinished(field) {
  if (field.dataset.kind !== "table") return false;
  const grid = gridOf(field);
  if (grid instanceof HTMLElement && grid.hidden) return false;
  return !rowsOf(field).full || (field.querySelector("[data-own-rows]") !== null && rowsOf(field).rows.length > 0);
}

/** @param {HTMLElement} field @returns {{rows: Record<string, string>[], lines: HTMLElement[], full: boolean}} */
function rowsOf(field) {
  const grid = gridOf(field);
  /** @type {Record<string, string>[]} */
  const rows = [];
  /** @type {HTMLElement[]} */
  const lines = [];
  let full = true;
  for (const line of grid.querySelectorAll("tbody > tr")) {
    /** @type {Record<string, string>} */
    const row = {};
    let empty = true;
    let gap = false;
    for (const cell of line.querySelectorAll("td[data-column]")) {
      const input = /** @type {HTMLInputElement | HTMLSelectElement | null} */ (cell.querySelector("input, select"));
      const typed = input?.value ?? "";
      const { column, optional } = /** @type {HTMLElement} */ (cell).dataset;
      row[column ?? ""] = typed;
      if (typed.trim()) empty = false;
      else if (optional === undefined) gap = true;
    }
    if (empty) continue;
    const id = /** @type {HTMLInputElement | null} */ (line.querySelector("input[type=hidden]"));
    if (id) {
      id.value ||= `r${crypto.randomUUID().slice(0, 8)}`;
      row.id = id.value;
    }
    if (gap) full = false;
    rows.push(row);
    lines.push(/** @type {HTMLElement} */ (line));
  }
  return { rows, lines, full };
}

/** Gives the rows of a grid their numbers anew. @param {HTMLElement} field */
function renumber(field) {
  const grid = gridOf(field);
  grid.querySelectorAll("tbody > tr").forEach((line, index) => {
    for (const input of line.querySelectorAll("[name]")) {
      input.setAttribute("name", (input.getAttribute("name") ?? "").replace(/\[[\d#]*\]/, `[${index}]`));
      if (input.id) input.id = input.id.replace(/-(\d+|#)-(?=[^-]*$)/, `-${index}-`);
    }
    for (const spoken of line.querySelectorAll("[aria-label]")) {
      const said = (spoken.getAttribute("aria-label") ?? "").replace(/,? row( \d+)?$/, "").replace(/^remove row.*/, "");
      spoken.setAttribute("aria-label", said ? `${said}, row ${index + 1}` : `remove row ${index + 1}`);
    }
  });
}

/**
 * @param {HTMLFormElement} form
 * @param {Send} send
 */
export function watchForm(form, send) {
  /** Whether what stands in a field is the worked example's. @param {HTMLElement} field */
  const isExample = (field) => field.classList.contains("df-fact--example") || form.closest("[data-whose]")?.getAttribute("data-whose") === "example";

  /** @param {HTMLElement} field @param {boolean} [complete] */
  const changed = async (field, complete = true) => {
    const name = field.dataset.fact ?? "";
    const select = fromOf(field);
    /** @type {HTMLElement[]} */
    let lines = [];
    /** @type {Entered} */
    let entered;
    if (field.dataset.kind === "table") {
      const { rows, lines: own, full } = rowsOf(field);
      if (!full && !complete) return;
      lines = own;
      entered = { name, rows, from: "" };
    } else {
      const radio = /** @type {HTMLInputElement | null} */ (field.querySelector("input[type=radio]:checked"));
      const input = /** @type {HTMLInputElement | null} */ (field.querySelector(`[name="${CSS.escape(name)}"]`));
      entered = { name, typed: (field.querySelector("input[type=radio]") ? radio?.value : input?.value) ?? "", from: "" };
    }
    const gone = entered.rows ? !entered.rows.length : !entered.typed?.trim();
    if (select && !gone && (select.value === "" || select.value === "assumed" || isExample(field))) {
      if (![...select.options].some((option) => option.value === lastFrom)) lastFrom = "measured";
      select.value = lastFrom;
    }
    if (select && gone) select.value = [...select.options].some((option) => option.value === "assumed") ? "assumed" : select.value;
    drawLine(field);
    entered.from = select?.value && select.value !== "assumed" ? select.value : "measured";
    field.classList.remove("df-fact--example");
    const problems = await send(entered, field);
    if (problems) showProblems(field, problems, lines);
  };

  form.addEventListener("input", (event) => {
    const target = event.target;
    if (!(target instanceof HTMLInputElement) || target.type === "radio") return;
    const field = fieldOf(target);
    if (!field) return;
    if (target.name.endsWith(".note")) return;
    void changed(field, field.dataset.kind !== "table");
  });
  form.addEventListener("change", (event) => {
    const target = /** @type {HTMLInputElement | HTMLSelectElement} */ (event.target);
    const field = fieldOf(target);
    if (!field) return;
    if (target === fromOf(field)) {
      if (isExample(field)) {
        // The example's number is not the reader's, wherever it may come from.
        if (target.value && target.value !== "assumed") lastFrom = target.value;
        return;
      }
      if (target.value === "assumed") {
        const input = /** @type {HTMLInputElement | null} */ (field.querySelector("input[type=text], input[type=date], select.df-choose"));
        const none = /** @type {HTMLInputElement | null} */ (field.querySelector("input[type=radio][value='']"));
        if (input) input.value = "";
        if (none) none.checked = true;
      } else if (target.value) lastFrom = target.value;
      void changed(field);
    } else if (target instanceof HTMLSelectElement || target.type === "radio") {
      void changed(field, field.dataset.kind !== "table");
    }
  });
  form.addEventListener("focusout", (event) => {
    const field = event.target instanceof Element ? fieldOf(event.target) : null;
    const next = event instanceof FocusEvent && event.relatedTarget instanceof Element ? fieldOf(event.relatedTarget) : null;
    if (field?.dataset.kind === "table" && field !== next && rowsOf(field).rows.length && !rowsOf(field).full) void changed(field);
  });
  form.addEventListener("click", (event) => {
    const target = event.target instanceof Element ? event.target.closest("button") : null;
    const field = target && fieldOf(target);
    if (!target || !field) return;
    if (target.dataset.sign !== undefined) {
      const input = target.parentElement?.querySelector("input");
      if (!input) return;
      input.value = /^\s*[-−]/.test(input.value) ? input.value.replace(/^\s*[-−]/, "") : `−${input.value}`;
      input.focus();
      input.dispatchEvent(new Event("input", { bubbles: true }));
    } else if (target.dataset.add !== undefined) {
      /** @type {HTMLElement | null} */ (addRow(field)?.querySelector("input:not([type=hidden]), select") ?? null)?.focus();
    } else if (target.dataset.remove !== undefined) {
      const line = target.closest("tr");
      const beside = /** @type {HTMLElement | null} */ ((line?.nextElementSibling ?? line?.previousElementSibling)?.querySelector("button[data-remove]") ?? field.querySelector("button[data-add]"));
      line?.remove();
      renumber(field);
      beside?.focus();
      void changed(field);
    } else if (target.dataset.own !== undefined) {
      ownRows(field);
      /** @type {HTMLElement | null} */ (gridOf(field).querySelector("input:not([type=hidden]), select"))?.focus();
    }
  });
  form.addEventListener("keydown", (event) => {
    const target = event.target;
    if (event.key !== "Enter" || !(target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const inputs = [...form.querySelectorAll("input:not([type=hidden]):not([type=radio]), select.df-choose, input[type=radio]:checked")]
      .filter((each) => each instanceof HTMLElement && each.offsetParent !== null);
    const next = inputs[inputs.indexOf(target) + 1];
    if (next instanceof HTMLElement) next.focus();
  });
  form.addEventListener("submit", (event) => event.preventDefault());
}

/** @param {HTMLElement} field @returns {HTMLTableRowElement | null} */
function addRow(field) {
  const grid = gridOf(field);
  const most = Number(field.querySelector("[data-most]")?.getAttribute("data-most"));
  const body = grid.querySelector("tbody");
  const blank = grid.querySelector("template");
  if (!body || !blank || body.children.length >= most) return null;
  body.append(blank.content.cloneNode(true));
  renumber(field);
  return body.querySelector("tr:last-child");
}

/**
 * @param {HTMLElement} form
 * @param {boolean} [sameUnits] Other units: what is focused is painted in the new ones.
 * @returns {() => void}
 */
export function keepTyped(form, sameUnits = true) {
  const kept = [...form.querySelectorAll("[data-fact]")].filter((e) => e instanceof HTMLElement)
    .filter((field) => field.dataset.bad !== undefined || unfinished(field)).map((field) => ({
    fact: field.dataset.fact ?? "",
    lines: field.dataset.kind === "table" ? gridOf(field).querySelectorAll("tbody > tr").length : 0,
    message: field.querySelector(":scope > .df-error")?.textContent ?? "",
    typed: [...field.querySelectorAll("input, select")].map((each) => ({
      name: each.getAttribute("name") ?? "", value: /** @type {HTMLInputElement} */ (each).value })),
  }));
  const active = document.activeElement;
  const focused = active && form.contains(active) ? {
    id: active.id,
    text: active instanceof HTMLInputElement && active.type === "text" ? active.value : null,
    place: active instanceof HTMLInputElement && active.type === "text" ? active.selectionStart : null,
  } : null;
  return () => {
    for (const { fact, lines, message, typed } of kept) {
      const field = form.querySelector(`[data-fact="${CSS.escape(fact)}"]`);
      if (!(field instanceof HTMLElement)) continue;
      if (lines) {
        ownRows(field);
        while (gridOf(field).querySelectorAll("tbody > tr").length < lines && addRow(field));
        [...gridOf(field).querySelectorAll("tbody > tr")].slice(lines).forEach((line) => line.remove());
      }
      for (const { name, value } of typed) {
        const input = field.querySelector(`[name="${CSS.escape(name)}"]:not([type=radio])`);
        if (input instanceof HTMLInputElement || input instanceof HTMLSelectElement) input.value = value;
      }
      if (message) showProblems(field, [{ field: fact, message }]);
    }
    const again = focused?.id ? document.getElementById(focused.id) : null;
    if (again && form.contains(again)) {
      again.focus({ preventScroll: true });
      if (again instanceof HTMLInputElement && focused?.text != null && sameUnits) {
        // What is being typed stays as it stands, `2.` and all.
        again.value = focused.text;
        again.setSelectionRange(focused.place, focused.place);
      }
    }
  };
}
