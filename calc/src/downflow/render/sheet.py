"""The job sheet: every fact where one stands to read it, and what to measure first."""

from __future__ import annotations

from collections.abc import Sequence

from downflow.demo import demo_job
from downflow.drawing import strip
from downflow.facts import WHERE, Fact, all_facts, fact
from downflow.facts.job import VISIT_KINDS, Entry, Job, Visit
from downflow.markup import Markup, tag, together
from downflow.plan import Plan, plan, the_chain
from downflow.render import pages
from downflow.render.calculator import EXAMPLE, cover_html
from downflow.render.fields import Known, form_html
from downflow.render.marks import FROM_KEY, from_class
from downflow.render.values import entered_text, field_label

MOST_FIRST = 5
"""How many readings the list of what to measure first holds."""


def survey_facts(where: str) -> list[Fact]:
    """The facts that are read at one place and can be entered, in their order."""
    return [f for f in all_facts().values()
            if f.where == where and (not f.given or f.enterable) and f.by_hand]


def sheet_html(job: Job | None, system: str = "ip", *, made: Plan | None = None,
               depth: int = pages.TOP_DEPTH) -> Markup:
    """The whole job sheet.

    Args:
        job: The reader's job. None: the worked example.
        system: `ip` or `si`.
        made: The plan of the job, where it is known: it says what to measure first.
        depth: How many folders down the page lies.
    """
    shown = demo_job() if job is None else job
    if job is None and made is None:
        made = plan(shown)
    sections = [_section(where, title, shown, system) for where, title in WHERE.items()
                if survey_facts(where)]
    return tag(
        "df-sheet", cover_html(),
        tag("div", _head(shown, job is None), data_region="head"),
        tag("div", measure_first_html(made, system) if made is not None else
            tag("p", "What to measure first: working it out.", class_="df-small"),
            data_region="first"),
        FROM_KEY,
        tag("p", "The line under a number says where it comes from. The strip shows a whole "
                 "section: one piece for each fact.", class_="df-small"),
        tag("div", sections, data_region="sections"),
        tag("div", visits_html(shown, system), data_region="visits"),
        data_units=system, data_depth=str(depth),
        data_whose="example" if job is None else "job", data_job=shown.id)


def jobs_html() -> Markup:
    """The jobs on this device: what the page's script fills and works. Nothing without it."""
    def button(words: str, do: str, *, needs: bool = True, main: bool = False) -> Markup:
        return tag("button", words, type="button", data_do=do, hidden=needs,
                   data_needs_job=needs or None,
                   class_="df-button df-button--main" if main else "df-button")

    def named(words: str, name: str, label: str, *, needs: bool) -> Markup:
        return tag("form", tag("label", label, for_=f"job-{name}", class_="df-fact__label"),
                   tag("input", type="text", id=f"job-{name}", name=name, maxlength="120",
                       autocomplete="off"),
                   tag("button", words, type="submit", class_="df-button"), class_="df-rename",
                   novalidate=True, hidden=needs, data_needs_job=needs or None)

    return tag(
        "df-jobs",
        tag("p", tag("span", data_piece="state"), " ", tag("span", data_piece="kept"),
            class_="df-small"),
        tag("p", tag("span"), tag("button", "undo", type="button", class_="df-link",
                                  data_do="undo"), class_="df-undo", data_piece="undo",
            hidden=True),
        tag("div", button("Export", "export"), button("Share", "share"),
            button("Import", "import", needs=False),
            tag("input", type="file", accept=".json,.zip,application/json,application/zip",
                hidden=True, aria_label="A job's file"), class_="df-row"),
        tag("p", role="status", data_piece="say"),
        tag("div", class_="df-differ", data_piece="differences", hidden=True),
        tag("details", tag("summary", "Jobs on this device"),
            tag("p", "None yet.", data_piece="none", class_="df-small"),
            tag("ul", class_="df-list df-jobs", data_piece="list"),
            named("Start a job", "start", "A new job’s name", needs=False),
            named("Rename", "rename", "The open job’s name", needs=True),
            tag("div", button("Copy it", "copy"), button("Close it", "close"),
                button("Delete it", "delete"), class_="df-row"),
            tag("p", "Start, copy, rename, delete and import can each be undone, until the next "
                     "of them.", class_="df-small"), class_="df-working"),
        class_="df-live")


def places_html() -> Markup:
    """The search for a place, which puts its climate on the sheet. Nothing without a script."""
    return tag(
        "df-places",
        tag("details", tag("summary", "Find the place: climate, elevation, prices"),
            tag("form", tag("label", "Town or postal code", for_="place-query",
                            class_="df-fact__label"),
                tag("input", type="text", id="place-query", name="query", maxlength="80",
                    autocomplete="off", enterkeyhint="search"),
                tag("button", "Look", type="submit", class_="df-button"), class_="df-rename",
                novalidate=True),
            tag("p", role="status", data_piece="say", class_="df-small"),
            tag("ul", class_="df-list", data_piece="list"), class_="df-working"),
        class_="df-live")


def painted_sheet_html() -> Markup:
    """The job sheet page as it is built: the jobs, then the worked example's sheet."""
    return together(jobs_html(), places_html(), sheet_html(None))


def _countable() -> list[Fact]:
    return [f for f in all_facts().values() if not f.given]


def _head(job: Job, example: bool) -> Markup:
    every = _countable()
    have = sum(job.entry(f.name) is not None for f in every)
    home = [entered_text(fact(n), e.value, "ip") for n in ("sections", "year_built", "place_name")
            if n in all_facts() and (e := job.entry(n)) is not None]
    said = f", {', '.join(home)}" if home else ""
    return together(
        tag("p", tag("b", EXAMPLE), tag("br"),
            "No job is open. Change a number and it starts, for a job of your own.",
            class_="df-example") if example else None,
        tag("p", tag("b", job.name), f"{said}. {have} of {len(every)} facts. Kept on this device "
                                     "only.", class_="df-lead"))


def measure_first_html(made: Plan, system: str, heading: str = "h2") -> Markup:
    """The readings that settle most: missing ones and doubtful ones, the most useful first."""
    counts: dict[str, list[int]] = {}
    for name, waiting in made.missing().items():
        counts.setdefault(name, [0, 0])[0] = len(waiting)
    for name, open_ones in made.unsettled().items():
        counts.setdefault(name.partition(".")[0].lstrip("~"), [0, 0])[1] += len(open_ones)
    names = [n for n in counts if n in all_facts() and fact(n).by_hand
             and (not fact(n).given or fact(n).enterable)]
    names.sort(key=lambda n: (-sum(counts[n]), n))
    if not names:
        return tag("div", tag(heading, "Measure first"),
                   tag("p", "Nothing is open: every answer is there, and no better reading would "
                            "change a verdict."), class_="df-next")
    rows = [_first_row(n, counts[n], made.job, system) for n in names[:MOST_FIRST]]
    more = len(names) - MOST_FIRST
    return tag("div", tag(heading, "Measure first"), tag("ul", rows, class_="df-list"),
               tag("p", f"{more} more after these.", class_="df-small") if more > 0 else None,
               class_="df-next")


def _first_row(name: str, count: Sequence[int], job: Job, system: str) -> Markup:
    missing, doubtful = count
    one, entry = fact(name), job.entry(name)
    parts = []
    if missing:
        parts.append("1 answer waits for it" if missing == 1 else
                     f"{missing} answers wait for it")
    if doubtful:
        parts.append("may settle 1 answer" if doubtful == 1 else
                     f"may settle {doubtful} answers")
    origin = "missing" if entry is None else entry.origin
    return tag("li", tag("a", tag("b", one.label), _row_value(one, entry, system),
                         tag("span", f"{origin} · {'; '.join(parts)}", class_="df-item__sub"),
                         class_="df-item", href=f"#fact-{name}", data_open=name))


def _row_value(one: Fact, entry: Entry | None, system: str) -> Markup:
    if entry is not None:
        return tag("span", entered_text(one, entry.value, system),
                   class_=f"df-value {from_class(entry.origin)}")
    if one.assumption is not None:
        return tag("span", entered_text(one, one.assumption.value, system),
                   class_="df-value df-from-assumed")
    return tag("span", "add", class_="df-item__go")


def origins(facts: Sequence[Fact], job: Job) -> list[str]:
    """Where each fact's value comes from; empty where it is missing."""
    out = []
    for one in facts:
        entry = job.entry(one.name)
        out.append(entry.origin if entry is not None else
                   "assumed" if one.assumption is not None else "")
    return out


def _section(where: str, title: str, job: Job, system: str) -> Markup:
    facts = survey_facts(where)
    have = sum(job.entry(f.name) is not None for f in facts)
    return tag(
        "details",
        tag("summary", tag("b", title), tag("span", f"{have} of {len(facts)}", class_="df-num"),
            strip(origins(facts, job))),
        tag("ul", [row_html(f, job, system) for f in facts], class_="df-list"),
        class_="df-sect", data_where=where)


def row_html(one: Fact, job: Job, system: str) -> Markup:
    """One fact as a line of the sheet; a tap opens it in place."""
    entry = job.entry(one.name)
    return tag(
        "li", tag("button", tag("b", one.label), _row_value(one, entry, system),
                  tag("span", _sub(one, entry, job), class_="df-item__sub"),
                  type="button", class_="df-item", data_edit=one.name, aria_expanded="false"),
        id=f"fact-{one.name}")


def _sub(one: Fact, entry: Entry | None, job: Job) -> str:
    if entry is not None:
        visit = _visit_of(one, job)
        parts = [entry.origin, f"visit of {visit.date}" if visit is not None else "", entry.note]
        return " · ".join(p for p in parts if p)
    if one.assumption is not None:
        return f"assumed: {one.assumption.why}"
    if one.name in the_chain().giver:
        return "worked out, unless you know it"
    return f"missing: {one.how}" if one.how else "missing"


def _visit_of(one: Fact, job: Job) -> Visit | None:
    if one.name in job.facts:
        return None
    ordered = sorted(job.visits, key=lambda v: v.date, reverse=True)
    return next((v for v in ordered if one.name in v.facts), None)


def fact_html(name: str, job: Job | None, system: str = "ip") -> Markup:
    """The form of one fact, opened in its place on the sheet.

    Raises:
        ValueError: No fact has this name.
    """
    one = fact(name)
    shown = demo_job() if job is None else job
    entry = shown.entry(name)
    now = _visit_of(one, shown)
    earlier = [(v.date, f"{entered_text(one, v.facts[name].value, system)}, "
                        f"{v.facts[name].origin}")
               for v in sorted(shown.visits, key=lambda v: v.date, reverse=True)
               if name in v.facts and v is not now]
    known = Known(entry, example=job is None and one.kind == "table" and entry is not None,
                  worked_out=name in the_chain().giver, earlier=earlier)
    used = [m.calculator for m in the_chain().modules.values()
            if name in (*m.calculator.reads, *m.calculator.may_read)]
    note = tag(
        "div", tag("label", "Note", for_=f"sheet-{name}-note"),
        tag("div", tag("input", type="text", id=f"sheet-{name}-note", name=f"{name}.note",
                       class_="df-text", maxlength="2000", autocomplete="off",
                       value=entry.note if entry is not None and job is not None else ""),
            class_="df-fact__line"), class_="df-fact") if entry is not None else None
    return tag(
        "form", form_html("sheet", [one], {name: known}, system), note,
        tag("p", "Used by ", _listed([tag("a", c.title,
                                          href=pages.calculator_page(c.id, pages.TOP_DEPTH))
                                      for c in used]), ".", class_="df-small")
        if used else None,
        tag("div", tag("button", "Close", type="button", class_="df-button", data_close=name),
            class_="df-row"),
        class_="df-form df-editing", novalidate=True, autocomplete="off", data_fact_form=name)


def _listed(items: Sequence[Markup]) -> list[Markup]:
    out: list[Markup] = []
    for index, one in enumerate(items):
        out += ([Markup(", ")] if index else []) + [one]
    return out


def visits_html(job: Job, system: str) -> Markup:
    """The visits, newest first, and how a new one begins."""
    rows = []
    for visit in sorted(job.visits, key=lambda v: v.date, reverse=True):
        readings = "1 reading" if len(visit.facts) == 1 else f"{len(visit.facts)} readings"
        values = [tag("li", f"{field_label(n)}: ",
                      tag("span", entered_text(fact(n), e.value, system),
                          class_=f"df-value {from_class(e.origin)}"), f", {e.origin}")
                  for n, e in sorted(visit.facts.items())]
        rows.append(tag("details", tag("summary", f"{visit.date}, {visit.kind}: {readings}"),
                        tag("ul", values) if values else None, data_visit=visit.id))
    kinds = [tag("option", kind) for kind in VISIT_KINDS]
    start = tag(
        "form", tag("div", tag("label", "Kind", for_="visit-kind"),
                    tag("div", tag("select", kinds, id="visit-kind", name="kind",
                                   class_="df-choose"), class_="df-fact__line"), class_="df-fact"),
        tag("div", tag("label", "Date", for_="visit-date"),
            tag("div", tag("input", type="date", id="visit-date", name="date"),
                class_="df-fact__line"), class_="df-fact"),
        tag("p", class_="df-error", hidden=True),
        tag("div", tag("button", "Start a visit", type="submit", class_="df-button"),
            class_="df-row"), class_="df-form df-live", data_visit_form=True, novalidate=True)
    return together(
        tag("h2", "Visits", id="visits"),
        tag("p", "Readings belong to a visit, so that years do not overwrite each other. A new "
                 "reading goes to the latest visit.", class_="df-small"), rows, start)
