"""Practice homes, drills, the bench of faults, the record, and what a lesson shows of them."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from typing import Any

from downflow.drawing import Drawing, Limit, rule_of_two
from downflow.facts import all_facts, fact
from downflow.markup import Markup, tag, together
from downflow.practice import bench as benches
from downflow.practice import drills, lessons, measures, progress
from downflow.practice.bench import Bench, Row
from downflow.practice.desk import Desk
from downflow.practice.drills import Given, Question
from downflow.practice.faults import CALL, RANKS, fault, of_visit
from downflow.practice.grade import KINDS, Grade, Mistake, numbers_of
from downflow.practice.homes import PracticeHome
from downflow.practice.measures import Reading
from downflow.practice.skills import SKILLS
from downflow.render.hazards import in_order
from downflow.render.marks import verdict_mark
from downflow.render.values import entered_text, quantity, table_html, unit_label
from downflow.render.working import working_html
from downflow.units import Quantity, fill

DEPTH = 2
"""A page of practice lies two folders down."""
LESSON_DEPTH = 3
EXAMPLE_SEED = 17
"""The home that is painted before anybody chose one."""
MARK = {"shown": "fine", "not all": "look", "not yet": "hold"}
WORDS = {
    "shown": "Shown. Everything that counts was found, read and decided.",
    "not all": "Not all. No hold was missed; what is still to learn stands below.",
    "not yet": "Not yet. A safety hold was missed: whatever else was right, this home ends here.",
}
NOT_A_LICENCE = ("Answered on screen is not done by hand, and neither is a licence or a "
                 "certificate.")
REGIONS = ("head", "notes", "known", "measure", "decide", "result")


# ---- addresses --------------------------------------------------------------------------

def _procedure(id_: str, depth: int = DEPTH) -> Markup:
    return tag("a", id_.replace("-", " "), href=f"{'../' * depth}procedures/{id_}/")


# ---- a practice home --------------------------------------------------------------------

def home_regions(one: Desk, system: str = "ip") -> dict[str, str]:
    """The regions of a practice home: what is told, known, to be measured, decided, graded."""
    return {
        "head": str(_head(one, system)),
        "notes": str(_notes(one.home, system)),
        "known": str(_known(one, system)),
        "measure": str(_measures(one)),
        "decide": str(_decide(one, system)),
        "result": str(result_html(one, system)) if one.decided else "",
    }


def practice_home_html() -> Markup:
    """The page of practice homes, painted with one of them."""
    parts = home_regions(Desk(EXAMPLE_SEED))
    return tag(
        "df-practice-home",
        tag("form",
            tag("p", tag("label", "Number of the home", for_="practice-seed"),
                class_="df-fact__label"),
            tag("div", tag("input", type="text", id="practice-seed", name="seed",
                           inputmode="numeric", autocomplete="off", maxlength="9",
                           value=str(EXAMPLE_SEED)), class_="df-fact__line"),
            tag("p", "A link to this page with a number behind it, such as #seed=17, gives a whole "
                     "crew the same home.", class_="df-help"),
            tag("p", class_="df-error", data_error=True, hidden=True),
            tag("div", tag("button", "Take this home", class_="df-button", type="submit"),
                tag("button", "Take another", class_="df-button", type="button",
                    data_other=True),
                tag("button", "Copy its link", class_="df-button", type="button",
                    data_share=True), class_="df-row"),
            class_="df-fact df-live", data_pick=True, novalidate=True),
        tag("p", class_="df-state", data_state=True, role="status"),
        tag("div", [tag("div", Markup(parts[name]), data_region=name) for name in REGIONS]),
        data_seed=str(EXAMPLE_SEED), data_units="ip")


def _head(one: Desk, system: str) -> Markup:
    home = one.home
    taken, most = measures.minutes(list(one.done)), home.minutes
    kind = "first visit" if home.visit != CALL else "a call, a year after the job"
    return together(
        tag("h2", f"Practice home {one.seed}: {kind}", id="home"),
        tag("p", tag("b", quantity(float(taken), "min", 0, system)), " of ",
            quantity(float(most), "min", 0, system), " used.",
            " Over time: what you still read costs you." if taken > most else "",
            class_="df-practice__time", data_taken=str(taken)))


def _notes(home: PracticeHome, system: str) -> Markup:
    return together(tag("h3", "What you are told"),
                    [tag("p", fill(n.text, n.values, system)) for n in home.notes])


def _known(one: Desk, system: str) -> Markup:
    home = one.home
    done = [d for d in one.done if not measures.is_step(d)]
    body: list[Markup] = []
    told: set[str] = set()
    for id_ in done:
        rows = [r for r in measures.observe(home, id_)
                if not (isinstance(r.value, list) and r.name in told)]
        told |= {r.name for r in rows}
        body.append(tag("section", tag("h4", measures.measure(id_).label, tabindex="-1"),
                        readings_html(rows, system), data_read=id_))
    if any(d in ("belly", "registers", "inside") for d in done):
        body.append(plan_figure(one, system))
    return together(
        tag("h3", "What you have read", id="read"),
        body or tag("p", "Nothing yet. Choose below what to read; each reading costs time."),
        tag("p", tag("a", "What to read next", href="#next")) if body else None,
        tag("details", tag("summary", "What is on the papers"), _papers(home, system)),
        tag("div", tag("button", "Open what is known as a job", class_="df-button", type="button",
                       data_job=True), class_="df-row df-live"),
        tag("p", "The handbook's own calculators then work with the readings of this home.",
            class_="df-help df-live"))


PAPERS = ("indoor_design_f", "hp_points", "hp_altitude_factor_pct", "kit_sizes",
          "kit_planned_kw", "kit_rated_v", "supply_v", "airflow_per_12000_scfm",
          "rating_cooling_95f_btuh", "fan_table", "fan_set_cfm", "static_rated_inwc", "filters",
          "outdoor_unit_a", "indoor_blower_a", "refrigerant", "target_subcooling_f",
          "blower_watts", "monthly_means")
"""Facts that the papers tell and that one looks up at such a visit."""


def _papers(home: PracticeHome, system: str) -> Markup:
    facts = all_facts()
    rows = [Reading(n, facts[n].label, home.facts[n], facts[n].unit, facts[n].decimals, True)
            for n in PAPERS if n in home.facts]
    return readings_html(rows, system)


def readings_html(rows: list[Reading], system: str) -> Markup:
    """Readings as a ruled list; a table in its own frame."""
    plain = [r for r in rows if not isinstance(r.value, list)]
    tables = [r for r in rows if isinstance(r.value, list)]
    return together(
        tag("dl", [tag("div", tag("dt", r.label), tag("dd", tag("b", reading_text(r, system))))
                   for r in plain], class_="df-beside") if plain else None,
        [tag("details", tag("summary", f"{r.label}: {len(r.value)} rows"),
             rows_html(r.name, r.value, system)) for r in tables])


def rows_html(name: str, rows: list[dict[str, Any]], system: str) -> Markup:
    """A table of the job sheet with the names of its rows."""
    one = fact(name)
    columns = tuple(dataclasses.replace(c, name="row") if c.name == "id" else c
                    for c in one.columns)
    named = [{"row" if key == "id" else key: value for key, value in row.items()} for row in rows]
    return table_html(dataclasses.replace(one, columns=columns), named, system, caption=False)


def reading_text(one: Reading, system: str) -> str:
    """A reading in words and the reader's units."""
    if one.fact:
        return entered_text(fact(one.name), one.value, system)
    if isinstance(one.value, (int, float)) and not isinstance(one.value, bool):
        return quantity(float(one.value), one.unit, one.decimals, system)
    return str(one.value)


def plan_figure(one: Desk, system: str) -> Markup:
    """Plan of the home from above: trunks and registers, flows where they were read."""
    home = one.home
    trunks = home.facts["trunks"]
    longest = max(t["length_ft"] for t in trunks)
    top, scale = 46.0, 380.0 / longest
    flows = {r.name: r.value for r in measures.observe(home, "registers")} \
        if "registers" in one.done else {}
    words = []
    for row in home.facts["registers"]:
        flow = flows.get(f"register_{row['id']}_cfm")
        said = f": {quantity(flow, 'cfm', 0, system)}" if flow is not None else ""
        words.append(f"{row['id']} {row['room']}{said}")
    d = Drawing("practice-plan", "Plan of the home from above: trunks and registers",
                "; ".join(words), top + 380 + 60)
    gap = 340 / len(trunks)
    d.rect(4, top - 14, 332, 408, "o")
    middle = {t["id"]: gap * (k + 0.5) for k, t in enumerate(trunks)}
    for t in trunks:
        d.rect(middle[t["id"]] - 12, top, 24, t["length_ft"] * scale, "if")
        d.text(middle[t["id"]], top - 22, f"trunk {t['id']}", "b m")
        if t["under_box"]:
            d.hatch(middle[t["id"]] - 20, top + t["feed_ft"] * scale - 14, 40, 28)
    if "belly" in one.done and len(trunks) > 1 and home.facts["crossover_found"] != "none":
        y = top + trunks[0]["feed_ft"] * scale
        d.supply(middle["A"] + 20, y, middle["B"] - 14, y)
    for row in home.facts["registers"]:
        x, y = middle[row["trunk"]], top + row["at_ft"] * scale
        d.rect(x - 8, y - 6, 16, 12, "of")
        d.text(x + 18, y + 6, row["id"], "b halo")
    d.text(170, top + 434, "front of the home at the top", "m")
    return d.figure("Hatched: the closet with its floor box. Registers: " + "; ".join(words) + ".")


def _measures(one: Desk) -> Markup:
    home = one.home
    return together(
        tag("h3", "What to read next", id="next"),
        tag("p", "Safety steps read nothing. Some readings may only be taken after one: nobody "
                 "tells you which. Go by the handbook.", class_="df-small"),
        tag("h4", "Safety steps"),
        tag("ul", [_action(s.id, s.label, s.minutes, one) for s in measures.steps_of(home.visit)],
            class_="df-list df-practice__list"),
        tag("h4", "Readings"),
        tag("ul", [_action(m.id, m.label, m.minutes, one,
                           " ".join(h.again for h in in_order(m.hazards)))
                   for m in measures.of_visit(home.visit)], class_="df-list df-practice__list"))


def _action(id_: str, label: str, minutes: int, one: Desk, caution: str = "") -> Markup:
    done = id_ in one.done
    return tag("li", tag(
        "button", tag("b", label),
        tag("span", "done" if done else quantity(float(minutes), "min", 0, "ip")),
        tag("span", caution, class_="df-item__sub") if caution else None,
        type="button", class_="df-item", data_measure=id_, disabled=done or one.decided))


def _decide(one: Desk, system: str) -> Markup:
    if one.decided:
        return Markup("")
    home = one.home
    return together(
        tag("h3", "What you decide", id="decide"),
        tag("form",
            tag("fieldset", tag("legend", "What is wrong, and in which order it is put right"),
                tag("p", "Leave what is sound. 1 is put right first.", class_="df-help"),
                [_fault_line(f.id, f.label) for f in of_visit(home.visit)],
                class_="df-fact df-practice__faults"),
            [_number_line(n.name, n.question, n.unit, system) for n in numbers_of(home.visit)],
            tag("fieldset",
                tag("legend", "May the crew go on as things stand, before anything is put right?"),
                tag("div", [tag("label", tag("input", type="radio", name="go_on", value=value),
                                tag("span", words))
                            for value, words in (("yes", "Go on"), ("no", "Stop here"))],
                    class_="df-choice"),
                tag("p", class_="df-error", data_field="go_on", hidden=True), class_="df-fact"),
            tag("p", class_="df-error", data_error=True, hidden=True),
            tag("button", "Hand it in", type="submit",
                class_="df-button df-button--main df-button--big"),
            class_="df-form", data_decide=True, novalidate=True, autocomplete="off"))


def _fault_line(id_: str, label: str) -> Markup:
    field = f"fault-{id_}"
    return tag(
        "div", tag("label", label, for_=field),
        tag("select", tag("option", "sound", value="", selected=True),
            [tag("option", str(n), value=str(n)) for n in range(1, 6)],
            id=field, name=f"fault.{id_}", class_="df-choose"),
        tag("p", class_="df-error", data_field=f"fault.{id_}", hidden=True),
        class_="df-practice__fault")


def _number_line(name: str, question: str, unit: str, system: str) -> Markup:
    field = f"number-{name}"
    return tag(
        "div", tag("label", question, for_=field),
        tag("div", tag("input", type="text", id=field, name=f"number.{name}",
                       inputmode="decimal", autocomplete="off"),
            tag("span", unit_label(unit, system), class_="df-unit"), class_="df-fact__line"),
        tag("p", class_="df-error", data_field=f"number.{name}", hidden=True), class_="df-fact")


# ---- the result -------------------------------------------------------------------------

def result_html(one: Desk, system: str) -> Markup:
    """How a practice home went, with the whole working open."""
    graded = one.grade()
    return together(
        tag("h3", "How it went", id="result", tabindex="-1"),
        tag("section", verdict_mark(MARK[graded.level]),
            tag("p", graded.level, class_="df-verdict__word"), tag("p", WORDS[graded.level]),
            class_=f"df-verdict df-verdict--{MARK[graded.level]}", data_level=graded.level),
        tag("ul", [_mistake(m, system) for m in graded.mistakes], class_="df-list")
        if graded.mistakes else None,
        tag("h4", "What was right") if graded.right else None,
        tag("ul", [tag("li", tag("span", fill(text, values, system), class_="df-item"))
                   for text, values in graded.right], class_="df-list") if graded.right else None,
        _truth(graded, system), _order_rule(graded), _working(one, graded, system),
        tag("p", NOT_A_LICENCE, class_="df-small"))


def _mistake(one: Mistake, system: str) -> Markup:
    return tag("li", verdict_mark("hold" if one.safety else "look"),
               tag("span", tag("b", KINDS[one.kind]),
                   tag("span", fill(one.text, one.values, system)),
                   tag("span", "Learn it at: ", _procedure(one.procedure)), class_="df-item"),
               data_kind=one.kind, data_about=one.about)


def _truth(graded: Grade, system: str) -> Markup:
    found = graded.solution.findings
    if not found:
        return together(tag("h4", "What was there"), tag("p", "Nothing was wrong with this home."))
    return together(
        tag("h4", "What was there"),
        tag("ul", [tag("li", tag("span", tag("b", fault(f.fault).label),
                                 tag("span", fill(f.text, f.values, system), " ",
                                     fault(f.fault).do),
                                 tag("span", _procedure(fault(f.fault).procedure)),
                                 class_="df-item")) for f in found], class_="df-list"))


def _order_rule(graded: Grade) -> Markup | None:
    ranks = sorted({fault(f.fault).rank for f in graded.solution.findings})
    if len(ranks) < 2:
        return None
    return together(tag("h4", "Why in that order"), [tag("p", RANKS[r]) for r in ranks])


def _working(one: Desk, graded: Grade, system: str) -> Markup:
    parts = []
    for asked in numbers_of(one.home.visit):
        answer = graded.solution.answers[asked.calculator]
        truth = quantity(graded.solution.numbers[asked.name], asked.unit, asked.decimals, system)
        parts.append(tag("details", tag("summary", f"{asked.question}: {truth}"),
                         tag("div", working_html(answer, system), class_="df-working"),
                         tag("p", tag("a", answer.calculator.title, href=(
                             f"{'../' * DEPTH}calculators/{asked.calculator}/")),
                             class_="df-small"), data_working=asked.name))
    return together(tag("h4", "The whole working"), parts)


# ---- drills -----------------------------------------------------------------------------

def question_html(one: Question, system: str = "ip") -> Markup:
    """A question with its field or its choices."""
    form: list[Markup] = []
    if one.options:
        form.append(tag("div", [
            tag("label", tag("input", type="radio", name="answer", value=o.id),
                tag("span", fill(o.text, o.values, system))) for o in one.options],
            class_="df-choice df-choice--tall"))
    else:
        form.append(tag("div", tag("input", type="text", name="answer", inputmode="decimal",
                                   autocomplete="off", aria_label="Your answer"),
                        tag("span", unit_label(one.unit, system), class_="df-unit"),
                        class_="df-fact__line"))
    key = "lesson" if one.kind == "lesson" else f"{one.seed}"
    return together(
        tag("h2", f"{drills.KINDS[one.kind]} · question {one.seed}", id="question",
            tabindex="-1") if one.kind in drills.KINDS else None,
        _given(one.given, system),
        tag("form",
            tag("fieldset", tag("legend", fill(one.text, one.values, system)), form,
                tag("p", class_="df-error", data_error=True, hidden=True), class_="df-fact"),
            tag("button", "Answer", class_="df-button df-button--main", type="submit"),
            class_="df-form", data_answer=key, novalidate=True, autocomplete="off"))


def _given(rows: tuple[Given, ...], system: str) -> Markup | None:
    plain = [g for g in rows if not isinstance(g.value, list)]
    tables = [g for g in rows if isinstance(g.value, list)]
    if not rows:
        return None
    return together(
        tag("dl", [tag("div", tag("dt", g.label), tag("dd", tag("b", _given_text(g, system))))
                   for g in plain], class_="df-beside"),
        [together(tag("h3", g.label), rows_html(g.fact, g.value, system))
         for g in tables])


def _given_text(one: Given, system: str) -> str:
    if one.fact:
        known = fact(one.fact)
        if known.kind != "number" or not known.given:
            return entered_text(known, one.value, system)
    if isinstance(one.value, (int, float)) and not isinstance(one.value, bool):
        return quantity(float(one.value), one.unit, one.decimals, system)
    return str(one.value)


def explanation_html(one: Question, said: float | str, system: str = "ip",
                     depth: int = DEPTH) -> Markup:
    """Whether an answer counts, and why; the calculator's own working where there is one."""
    right = one.is_right(said)
    values = dict(one.values)
    chosen = next((o for o in one.options if o.id == one.right), None)
    truth = fill(chosen.text, chosen.values, system) if chosen else ""
    answered = "" if isinstance(said, str) else \
        f"You said {quantity(said, one.unit, one.decimals, system)}. "
    return together(
        tag("section", verdict_mark("fine" if right else "look"),
            tag("p", "right" if right else "not so", class_="df-verdict__word", tabindex="-1"),
            tag("p", f"It is: {truth}") if truth and not right else None,
            tag("p", answered, fill(one.why, values, system)),
            class_=f"df-verdict df-verdict--{'fine' if right else 'look'}",
            data_right="yes" if right else "no"),
        tag("details", tag("summary", "The working, line by line"),
            tag("div", working_html(one.answer, system), class_="df-working"), open=not right)
        if one.answer is not None else None,
        tag("p", "Learn it at: ", _procedure(one.procedure, depth)))


def drills_html() -> Markup:
    """The page of question drills, painted with the first question."""
    kinds = (("", "Any kind"), *drills.KINDS.items())
    skills = (("", "Any skill"), *((s.id, s.title) for s in SKILLS))
    return tag(
        "df-practice-drills",
        tag("form",
            _select("drill-kind", "kind", "Kind", kinds),
            _select("drill-skill", "skill", "About", skills),
            tag("div", tag("button", "Next question", class_="df-button", type="submit"),
                class_="df-row"), class_="df-live", data_next=True),
        tag("p", class_="df-state", data_state=True, role="status"),
        tag("div", question_html(drills.question(1)), data_region="question"),
        tag("div", data_region="explanation", aria_live="polite"),
        data_seed="1", data_units="ip")


def _select(id_: str, name: str, label: str, options: Any) -> Markup:
    return tag("div", tag("label", label, for_=id_),
               tag("div", tag("select", [tag("option", words, value=value)
                                         for value, words in options],
                              id=id_, name=name, class_="df-choose"), class_="df-fact__line"),
               class_="df-fact")


# ---- the bench --------------------------------------------------------------------------

def bench_html() -> Markup:
    """The page of the bench, painted with its first cause."""
    first = benches.CAUSES[0]
    groups = [tag("optgroup", [tag("option", f"{c.label}: {s.label}", value=f"{c.id}/{s.id}",
                                   selected=(c is first and s is c.severities[0]) or None)
                               for s in c.severities], label=c.label) for c in benches.CAUSES]
    return tag(
        "df-practice-bench",
        tag("form",
            tag("div", tag("label", "What is wrong, and how far", for_="bench-cause"),
                tag("div", tag("select", groups, id="bench-cause", name="cause",
                               class_="df-choose"), class_="df-fact__line"), class_="df-fact"),
            tag("div", tag("button", "Show what one would read", class_="df-button",
                           type="submit"), class_="df-row"), class_="df-live", data_bench=True),
        tag("p", class_="df-state", data_state=True, role="status"),
        tag("div", bench_rows_html(benches.bench(first.id, first.severities[0].id)),
            data_region="bench"), data_units="ip")


def bench_rows_html(found: Bench, system: str = "ip") -> Markup:
    """The readings before and after, each on its rule; those that moved first."""
    moved = [r for r in found.rows if r.moved]
    still = [r for r in found.rows if not r.moved]
    return together(
        tag("h2", f"{found.cause.label}: {found.severity.label}", id="readings", tabindex="-1"),
        tag("p", found.because),
        tag("p", "Outdoors ", quantity(found.outdoor_f, "°F", 0, system), ". ",
            _procedure(found.cause.procedure)),
        tag("h3", "What moves"),
        tag("ul", [_bench_row(r, system, True) for r in moved], class_="df-list df-bench"),
        tag("h3", "What stays as it was") if still else None,
        tag("ul", [_bench_row(r, system, False) for r in still], class_="df-list df-bench")
        if still else None,
        tag("p", "From the handbook's air network, a simple refrigerant cycle and the data sheet. "
                 "The directions hold for any such system; the sizes are of the usual order.",
            class_="df-small"))


def _bench_row(one: Row, system: str, drawn: bool) -> Markup:
    def say(value: float | None) -> str:
        return "not read" if value is None else quantity(value, one.unit, one.decimals, system)

    figure = None
    if drawn and one.before is not None and one.after is not None:
        limits = [Limit(v, side) for v, side in ((one.low, "least"), (one.high, "most"))
                  if v is not None]
        figure = rule_of_two(f"bench-{one.id}", one.label, one.before, one.after, one.unit,
                             limits=limits, decimals=one.decimals, system=system).figure()
    outside = one.after is not None and (
        (one.low is not None and one.after < one.low)
        or (one.high is not None and one.after > one.high))
    return tag("li", verdict_mark("look") if outside else None,
               tag("span", tag("b", one.label),
                   tag("span", "before ", tag("b", say(one.before)), ", after ",
                       tag("b", say(one.after)), ": outside its limit" if outside else None),
                   class_="df-item"), figure, data_reading=one.id,
               data_moved="yes" if one.moved else "no")


# ---- the record -------------------------------------------------------------------------

def progress_html() -> Markup:
    """The page of the record, painted empty."""
    return tag(
        "df-practice-progress",
        tag("p", class_="df-state", data_state=True, role="status"),
        tag("form",
            tag("div", tag("label", "Name on the sheet", for_="learner"),
                tag("div", tag("input", type="text", id="learner", name="learner",
                               class_="df-text", autocomplete="off", maxlength="120"),
                    class_="df-fact__line"), class_="df-fact"),
            class_="df-live", data_name=True),
        tag("div", progress_rows_html(progress.Progress()), data_region="progress"),
        tag("h2", "Seen done by hand", id="by-hand", class_="df-live"),
        tag("form",
            _select("seen-skill", "skill", "Skill", tuple((s.id, s.title) for s in SKILLS)),
            [_text_line(f"seen-{name}", name, label) for name, label in (
                ("what", "What was done"), ("by", "Seen by"), ("trade", "Trade or licence"))],
            tag("p", class_="df-error", data_error=True, hidden=True),
            tag("button", "I saw it done", class_="df-button", type="submit"),
            class_="df-form df-live", data_seen=True, novalidate=True, autocomplete="off"),
        tag("div",
            tag("button", "Export", class_="df-button", type="button", data_export=True),
            tag("label", "Bring a record in", tag("input", type="file", accept=".json",
                                                  data_import=True, class_="df-sr"),
                class_="df-button"),
            tag("button", "Print the sheet", class_="df-button", type="button", data_print=True),
            class_="df-row df-live"))


def _text_line(id_: str, name: str, label: str) -> Markup:
    return tag("div", tag("label", label, for_=id_),
               tag("div", tag("input", type="text", id=id_, name=name, class_="df-text",
                              autocomplete="off", maxlength="300"), class_="df-fact__line"),
               class_="df-fact")


def progress_rows_html(one: progress.Progress) -> Markup:
    """The supervisor's sheet: each skill, on screen and by hand kept apart."""
    return together(
        tag("h2", f"Supervisor's sheet{': ' + one.learner if one.learner else ''}", id="sheet"),
        tag("p", NOT_A_LICENCE),
        tag("div", tag(
            "table",
            tag("thead", tag("tr", tag("th", "Skill", scope="col"),
                             tag("th", "Answered on screen", scope="col"),
                             tag("th", "Seen done by hand, by", scope="col"))),
            tag("tbody", [_skill_row(one, s.id) for s in SKILLS]), class_="df-table"),
            class_="df-scroll", tabindex="0", role="group", aria_label="Supervisor's sheet"))


def _skill_row(one: progress.Progress, skill_id: str) -> Markup:
    skill = next(s for s in SKILLS if s.id == skill_id)
    last = one.last(skill_id)
    screen: list[Markup] = [tag("p", skill.screen)]
    if last is None:
        screen.append(tag("p", "Not tried yet."))
    else:
        screen.append(tag("p", f"Shown {one.shown(skill_id)} of {one.tried(skill_id)}; last "
                               f"{last.at[:10]}: {last.result}."))
    hand = [tag("p", f"{h.what}: {h.by}, {h.trade}, {h.at[:10]}") for h in one.seen(skill_id)]
    blanks = [tag("p", f"{what}: ", tag("i", class_="df-blank")) for what in skill.by_hand]
    return tag("tr", tag("th", skill.title, scope="row"), tag("td", screen),
               tag("td", hand, blanks), data_skill=skill_id)


# ---- lessons ----------------------------------------------------------------------------

def lesson_html(id_: str) -> Markup:
    """The worked number of a lesson and its check.

    Raises:
        ValueError: No such lesson.
    """
    one = lessons.lesson(id_)
    answer = lessons.worked(id_)
    value = answer.values[one.output]
    up = "../" * LESSON_DEPTH
    number = Quantity(value.value, value.unit, value.decimals)
    both = number.text("ip") if number.text("ip") == number.text("si") else \
        f"{number.text('ip')} ({number.text('si')})"
    return tag(
        "df-practice-lesson",
        tag("h2", "One number, worked", id="worked"),
        tag("p", f"{one.lead}. For Juniper Flat: ", tag("b", both), "."),
        tag("details", tag("summary", "The working, line by line"),
            tag("div", working_html(answer, "ip"), class_="df-working")),
        tag("p", tag("a", answer.calculator.title,
                     href=f"{up}calculators/{one.calculator}/")),
        tag("h2", "Check", id="check"),
        tag("div", question_html(lessons.question_of(id_)), data_region="question"),
        tag("div", data_region="explanation", aria_live="polite"),
        data_lesson=id_, data_units="ip")


PAINTED: Mapping[str, Any] = {
    "home": practice_home_html, "drills": drills_html, "bench": bench_html,
    "progress": progress_html,
}


def practice_html(name: str, lesson_id: str = "") -> Markup:
    """A part of the practice pages, as it is built.

    Raises:
        ValueError: No such part or lesson.
    """
    if name == "lesson":
        return lesson_html(lesson_id)
    if name not in PAINTED or lesson_id:
        raise ValueError(f"practice has no part {name!r}; there are {', '.join(PAINTED)} and "
                         "lesson")
    painted: Markup = PAINTED[name]()
    return painted

