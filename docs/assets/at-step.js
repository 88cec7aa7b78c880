// @ts-check
/* A step's calculator opens below the step, filled from the open job. It is taken from the
   calculator's own page, so nothing is painted twice; one is open at a time. Where that page
   cannot be had, and without scripts, the link leads to it as any other. */

/** @type {{link: HTMLAnchorElement, box: HTMLElement} | null} */
let open = null;

function shut() {
  if (!open) return;
  const { link, box } = open;
  open = null;
  box.remove();
  delete link.dataset.open;
  link.focus();
}

/** @param {HTMLAnchorElement} link */
async function unfold(link) {
  const answer = await fetch(link.href);
  if (!answer.ok) throw new Error(String(answer.status));
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const found = page.querySelector("df-calculator");
  if (!found) throw new Error("no calculator on its page");
  shut();
  const box = document.createElement("section");
  box.className = "df-here no-print";
  box.setAttribute("aria-label", link.textContent ?? "");
  box.dataset.searchExclude = "";
  const row = document.createElement("p");
  row.className = "df-ats";
  const close = document.createElement("button");
  close.type = "button";
  close.className = "df-link";
  close.textContent = "Close the calculator";
  close.addEventListener("click", shut);
  const whole = document.createElement("a");
  whole.className = "df-at";
  whole.href = link.href;
  whole.textContent = "Its own page";
  row.append(close, whole);
  box.append(row, document.importNode(found, true));
  (link.closest(".df-ats") ?? link).after(box);
  link.dataset.open = "";
  open = { link, box };
  close.focus({ preventScroll: true });
  link.scrollIntoView({ block: "start" });
}

document.addEventListener("click", (event) => {
  const target = event.target instanceof Element ? event.target.closest("a[data-calculator]") : null;
  if (!(target instanceof HTMLAnchorElement)) return;
  if (event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
  event.preventDefault();
  if (open?.link === target) return shut();
  void unfold(target).catch(() => { location.href = target.href; });
});
