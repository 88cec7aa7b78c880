"""The printed commissioning record, and the sheet for permits and rebates."""

from __future__ import annotations

from typing import Any

from downflow.demo import demo_job
from downflow.engine.answer import Answer, verdict_data
from downflow.engine.paper import Verdict
from downflow.facts.job import Entry, Job
from downflow.markup import Markup, tag, together
from downflow.papers import RECORD, Line, lines
from downflow.plan import Plan, plan, the_chain
from downflow.render import pages
from downflow.render.calculator import EXAMPLE, cover_html
from downflow.render.marks import verdict_mark
from downflow.render.verdicts import released_text
from downflow.units import Quantity

OTHER_PHOTOS: tuple[tuple[str, str], ...] = (
    ("photo#outdoor-plate", "Plate of the outdoor unit"),
    ("photo#indoor-plate", "Plate of the air handler, with its kits"),
    ("photo#room-label", "Room-area label"),
    ("photo#crossover", "Crossover under the home"),
    ("photo#trap", "Trap and drain"),
    ("photo#gauge", "Gauges while it runs"),
    ("photo#panel", "Panel and breakers, cover closed"),
    ("photo#fuel-cap", "Fuel line capped, with its tag"),
    ("photo#roof", "Roof patch"),
)
"""Photos that belong to no single reading."""

SIGNERS = (("Readings", "commissioned_by"), ("Electrical", ""), ("Fuel gas", ""),
           ("Refrigerant", ""), ("Homeowner", ""))


def record_html(job: Job | None, system: str = "ip", *, ranged: bool = True,
                depth: int = pages.CALCULATOR_DEPTH) -> Markup:
    """The whole record of a job, ready to print and sign.

    Args:
        job: The reader's job. None: the worked example.
        system: `ip` or `si`.
        ranged: Whether to work out the ranges that make a verdict stricter.
        depth: How many folders down the page lies.
    """
    shown = demo_job() if job is None else job
    answer = the_chain().solve(RECORD, shown, ranged=ranged)
    return tag("df-record", cover_html(),
               tag("div", _body(shown, answer, system, job is None), data_region="record"),
               data_units=system, data_depth=str(depth), data_job=shown.id,
               data_whose="example" if job is None else "job")


def painted_record_html() -> Markup:
    """The record as it is built: the worked example's."""
    return record_html(None)


def papers_html(made: Plan, system: str = "ip", *, example: bool = False) -> Markup:
    """The sheet for permits and rebates."""
    rows = lines(made, system)
    groups: dict[str, list[Line]] = {}
    for row in rows:
        groups.setdefault(row.section, []).append(row)
    missing = sum(not r.known for r in rows)
    parts: list[Markup | None] = [
        tag("p", tag("b", EXAMPLE), class_="df-example") if example else None,
        tag("p", tag("b", made.job.name), f". {len(rows) - missing} of {len(rows)} lines are "
                                          "known.", class_="df-lead")]
    for title, group in groups.items():
        parts += [tag("h2", title, id="papers-" + title.lower().replace(" ", "-")),
                  tag("table", tag("tbody", [_paper_row(r) for r in group]),
                      class_="df-table df-papers")]
    parts += [tag("h2", "Signed", id="papers-signed"), _signatures(made.job),
              tag("div", tag("button", "Print this sheet", type="button",
                             class_="df-button df-button--main", data_print_part=True),
                  tag("button", "Save as CSV", type="button", class_="df-button", data_csv=True),
                  class_="df-row df-live")]
    return tag("df-papers", cover_html(), tag("div", parts, data_region="papers"),
               data_units=system, data_depth=str(pages.TOP_DEPTH), data_job=made.job.id,
               data_whose="example" if example else "job")


def painted_papers_html() -> Markup:
    """The sheet as it is built: the worked example's."""
    return papers_html(plan(demo_job()), example=True)


def _paper_row(row: Line) -> Markup:
    value = f"{row.value}\u00a0{row.unit}" if row.unit and row.known else row.value
    return tag("tr", tag("th", row.item, scope="row"),
               tag("td", tag("b", value) if row.known else tag("i", value)),
               tag("td", row.origin))


# ---- the record -----------------------------------------------------------------------------

def _body(job: Job, answer: Answer, system: str, example: bool) -> Markup:
    head = tag("p", tag("b", EXAMPLE), class_="df-example") if example else None
    if not answer.ok:
        return together(head, tag("p", "The record begins with the outdoor temperature of the "
                                       "visit and the elevation of the home."),
                        _photo_part(job, []))
    verdicts = {v.id: v for v in answer.verdicts}
    rows: list[dict[str, Any]] = answer.tables["record_table"]
    due = [r for r in rows if r["state"] == "due"]
    taken = [r for r in rows if r["state"] == "taken"]
    off = [r for r in rows if r["state"] == "does not apply"]
    return together(
        head,
        tag("p", tag("b", job.name), _when(job), f". {len(taken)} readings taken, {len(due)} due, "
                                                 f"{len(off)} do not apply.", class_="df-lead"),
        tag("h2", "Due", id="record-due") if due else None,
        _table(due, verdicts, system, ("Reading", "May be", "Why it waits", "Photo"), due=True)
        if due else None,
        _sentences([verdicts[i] for i in ("return", "charge-rests", "signed") if i in verdicts],
                   system),
        tag("h2", "Taken", id="record-taken"),
        _table(taken, verdicts, system, ("Reading", "Read", "May be", "Verdict", "Photo"),
               due=False) if taken else tag("p", "Nothing yet."),
        tag("p", "Do not apply: ", ", ".join(str(r["reading"]) for r in off), ".")
        if off else None,
        _photo_part(job, rows),
        tag("h2", "Signed", id="record-signed"), _signatures(job),
        tag("p", "The manuals, the plates and local code come first.", class_="df-small"),
        tag("div", tag("button", "Print the record", type="button",
                       class_="df-button df-button--main", data_print_part=True),
            class_="df-row df-live"))


def _when(job: Job) -> str:
    visits = [v for v in job.visits if "commission_outdoor_f" in v.facts] or [
        v for v in job.visits if v.kind == "commission"]
    return f", visit of {max(visits, key=lambda v: v.date).date}" if visits else ""


def _table(rows: list[dict[str, Any]], verdicts: dict[str, Verdict], system: str,
           head: tuple[str, ...], *, due: bool) -> Markup:
    body = []
    for row in rows:
        verdict = verdicts.get(str(row["id"]))
        said = verdict_data(verdict, system) if verdict is not None else None
        cells: list[Markup | None] = [tag("th", str(row["reading"]), scope="row")]
        if not due:
            cells.append(tag("td", tag("b", _read(row, system)), _doubt(row, system)))
        cells.append(tag("td", _band(row, system)))
        if due:
            cells.append(tag("td", _waits(row, system),
                             tag("b", f" {said['do']}") if said is not None and said["do"]
                             else None))
        elif verdict is not None and said is not None:
            cells.append(tag("td", verdict_mark(verdict.level), f" {verdict.level}",
                             tag("span", f" {said['doubt']} {said['do']}".rstrip())
                             if verdict.level != "fine" and (said["doubt"] or said["do"])
                             else None,
                             tag("span", f" {verdict.signs} signs") if verdict.signs else None,
                             tag("b", f" {released_text(verdict.released)}")
                             if verdict.released is not None else None,
                             class_="df-record__verdict"))
        else:
            cells.append(tag("td"))
        cells.append(tag("td", _camera(f"{RECORD}#{row['id']}", str(row["reading"])),
                         class_="df-live"))
        body.append(tag("tr", cells, data_reading=str(row["id"])))
    return tag("div", tag("table", tag("thead", tag("tr", [
        tag("th", h, scope="col", class_="df-live" if h == "Photo" else None) for h in head])),
        tag("tbody", body), class_="df-table df-record"), class_="df-scroll", tabindex="0",
        role="group", aria_label="Readings due" if due else "Readings taken")


def _quantity(row: dict[str, Any], name: str, system: str) -> str:
    return Quantity(float(row[name]), str(row["unit"]), int(row["decimals"])).text(system)


def _read(row: dict[str, Any], system: str) -> str:
    return _quantity(row, "read", system) if "read" in row else str(row.get("note", ""))


def _doubt(row: dict[str, Any], system: str) -> Markup | None:
    if "doubt" not in row:
        return None
    of = {"°F": "°F diff"}.get(str(row["unit"]), str(row["unit"]))
    said = Quantity(float(row["doubt"]), of, int(row["decimals"]) + 1).text(system)
    return tag("span", f" ± {said}", class_="df-small")


def _waits(row: dict[str, Any], system: str) -> str:
    if "wait_low_f" not in row:
        return "Not read yet."
    low, high = (Quantity(float(row[n]), "°F", 0).text(system)
                 for n in ("wait_low_f", "wait_high_f"))
    return f"At {low} to {high} outdoors."


def _band(row: dict[str, Any], system: str) -> str:
    if "low" in row and "high" in row:
        return f"{_quantity(row, 'low', system)} to {_quantity(row, 'high', system)}"
    if "high" in row:
        return f"{_quantity(row, 'high', system)} at most"
    if "low" in row:
        return f"{_quantity(row, 'low', system)} at least"
    return "as the manual says"


def _sentences(verdicts: list[Verdict], system: str) -> Markup | None:
    rows = []
    for verdict in verdicts:
        said = verdict_data(verdict, system)
        rows.append(tag("li", verdict_mark(verdict.level), " ", said["text"],
                        tag("b", f" {said['do']}") if said["do"] else None))
    return tag("ul", rows, class_="df-record__rest") if rows else None


def _camera(of: str, words: str) -> Markup:
    return tag("button", "Photo", type="button", class_="df-link", data_photo_add=of,
               aria_label=f"Photo of {words}")


def _photo_part(job: Job, rows: list[dict[str, Any]]) -> Markup:
    return together(
        tag("h2", "Photos", id="record-photos"),
        tag("p", "Photos stay on this device, scaled down and without their place, and go with "
                 "the job when it is exported.", class_="df-small"),
        tag("ul", [tag("li", words, " ", _camera(of, words)) for of, words in OTHER_PHOTOS],
            class_="df-photo-list df-live"),
        _photos(job, rows))


def _photos(job: Job, rows: list[dict[str, Any]]) -> Markup:
    names = {f"{RECORD}#{r['id']}": str(r["reading"]) for r in rows} | dict(OTHER_PHOTOS)
    figures = []
    for photo in job.photos:
        of, at = str(photo.get("of", "")), str(photo.get("at", ""))
        words = names.get(of) or (of and f"{_kind(of)} {of.partition('#')[2]}") or "Photo"
        figures.append(tag(
            "figure", tag("figcaption", f"{words}, {at[:10]}", tag(
                "button", "Remove", type="button", class_="df-link df-live",
                data_photo_gone=str(photo.get("id", "")))),
            class_="df-photo", data_photo=str(photo.get("id", "")), data_of=of))
    return tag("div", figures, class_="df-photos", data_photos=True)


def _kind(of: str) -> str:
    head = of.partition("#")[0]
    return "Reading" if head == RECORD else f"{head.replace('-', ' ').capitalize()}, hold point"


def _signatures(job: Job) -> Markup:
    rows = []
    for role, name in SIGNERS:
        entry: Entry | None = job.entry(name) if name else None
        licence = job.entry("commissioned_licence") if name else None
        said = ", ".join(str(e.value) for e in (entry, licence) if e is not None)
        rows.append(tag("tr", tag("th", role, scope="row"),
                        tag("td", said or tag("i", class_="df-blank")),
                        tag("td", "signature ", tag("i", class_="df-blank")),
                        tag("td", "date ", tag("i", class_="df-blank df-blank--short"))))
    return tag("table", tag("tbody", rows), class_="df-table df-signed")
