"""The plan: every verdict worst first, every answer, what is missing, what was assumed."""

from __future__ import annotations

import dataclasses
from typing import Any

from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.engine.answer import verdict_data
from downflow.engine.paper import Verdict
from downflow.facts import all_facts, fact
from downflow.facts.job import Job
from downflow.markup import Markup, tag, together
from downflow.phases import PHASES
from downflow.plan import Plan, plan
from downflow.render import pages
from downflow.render.answers import has_range, range_text
from downflow.render.calculator import EXAMPLE, cover_html
from downflow.render.marks import verdict_mark
from downflow.render.sheet import measure_first_html
from downflow.render.values import entered_text, quantity
from downflow.render.verdicts import released_text, shown_level

FIGURES: tuple[tuple[str, str], ...] = (
    ("heat-loss", "Where the heat goes"),
    ("heat-pump-match", "Load and capacity"),
    ("duct-network", "Air, as planned"),
)
"""Calculators whose figure stands on the plan, with its heading."""

HEADINGS = {"hold": "Hold: do not go on", "look": "Look: settle this first",
            "sign": "To be signed", "fine": "Fine",
            "pending": "Fine so far: the range is not in yet"}
WORDS = {"hold": "hold", "look": "look", "pending": "fine so far", "sign": "to be signed",
         "fine": "fine"}
"""Every state of a verdict on the plan, worst first, in words."""


def plan_html(made: Plan, system: str = "ip", *, example: bool = False,
              depth: int = pages.TOP_DEPTH) -> Markup:
    """The whole plan.

    Args:
        made: The plan.
        system: `ip` or `si`.
        example: Whether it is the worked example's.
        depth: How many folders down the page lies.
    """
    answered = [a for a in made.answers.values() if a.ok]
    parts: list[Markup | None] = [
        tag("p", tag("b", EXAMPLE), class_="df-example") if example else None,
        tag("p", tag("b", made.job.name), f". {len(answered)} of {len(made.answers)} answers. ",
            tag("b", tally_text(made)), " Worst first.", class_="df-lead"),
        *_groups(made, system, depth),
        _refused(made, depth),
        _waiting(made, depth),
        *_figures(made, system),
        _answers(made, system, depth),
        _assumed(made, system),
        tag("div", tag("button", "Print the packet", type="button",
                       class_="df-button df-button--main", data_print=True),
            tag("a", "Job sheet", class_="df-button", href=pages.job_sheet_page(depth)),
            class_="df-row df-live"),
        tag("p", "Local code, licences and makers’ instructions come first. Prepared from the job "
                 "sheet; the range of each number holds about nine times in ten.",
            class_="df-small")]
    return tag("df-plan", cover_html(), tag("div", parts, data_region="plan"),
               data_units=system, data_depth=str(depth), data_job=made.job.id,
               data_whose="example" if example else "job")


def painted_plan_html() -> Markup:
    """The plan as it is built: the worked example's."""
    return plan_html(plan(demo_job()), example=True)


def _level(made: Plan, id_: str, verdict: Verdict) -> str:
    """Where a verdict stands on the plan: sound and to be signed, or by its level."""
    ranged = made.answers[id_].ranged
    if verdict.to_sign:
        return "sign" if ranged or verdict.value is None else "pending"
    return shown_level(verdict, ranged)


def counts(made: Plan) -> dict[str, int]:
    """How many verdicts of each kind; what waits for its range counts as `pending`."""
    out = dict.fromkeys(WORDS, 0)
    for id_, verdict in made.verdicts():
        out[_level(made, id_, verdict)] += 1
    return out


def tally_text(made: Plan) -> str:
    """`3 hold, 18 look, 20 to be signed, 150 fine.`"""
    number = counts(made)
    said = [f"{number[level]} {word}" for level, word in WORDS.items()
            if number[level] or level == "hold"]
    return ", ".join(said) + "."


def _groups(made: Plan, system: str, depth: int) -> list[Markup]:
    """For each level, one line for each calculator, with all its verdicts of that level."""
    out: list[Markup] = []
    for level in WORDS:
        mine: dict[tuple[str, str, bool], list[Verdict]] = {}
        for id_, verdict in made.verdicts():
            if _level(made, id_, verdict) == level:
                who = verdict.signs if level == "sign" else ""
                mine.setdefault((who, id_, verdict.released is not None), []).append(verdict)
        if not mine:
            continue
        if level == "sign":
            out += _to_sign(made, mine, system, depth)
            continue
        rows = tag("ul", [_row(made, id_, level, verdicts, system, depth)
                          for (_, id_, _), verdicts in mine.items()], class_="df-list")
        if level == "fine":
            number = sum(len(verdicts) for verdicts in mine.values())
            out.append(tag("details", tag("summary", tag("b", f"{HEADINGS[level]} ({number})")),
                           rows, id=level, class_="df-sect"))
        else:
            out += [tag("h2", HEADINGS[level], id=level), rows]
    return out


def _to_sign(made: Plan, mine: dict[tuple[str, str, bool], list[Verdict]], system: str,
             depth: int) -> list[Markup]:
    """What only waits for a licensed person: for each of them the list, and one line to sign."""
    out = [tag("h2", HEADINGS["sign"], id="sign"),
           tag("p", "The arithmetic holds. Local code, its official, the labels and the makers’ "
                    "manuals come first; the person who signs has seen the work.")]
    for who in dict.fromkeys(key[0] for key in mine):
        open_ = sum(v.signs == who and _level(made, id_, v) in ("hold", "look")
                    for id_, v in made.verdicts())
        out += [
            tag("h3", who[:1].upper() + who[1:]),
            tag("ul", [_row(made, id_, "sign", verdicts, system, depth)
                       for (one, id_, _), verdicts in mine.items() if one == who],
                class_="df-list"),
            tag("p", f"{open_} more above {'is' if open_ == 1 else 'are'} not settled yet. "
                if open_ else None, "Name, licence, date: ", tag("i", class_="df-blank"),
                class_="df-sign")]
    return out


def _row(made: Plan, id_: str, level: str, verdicts: list[Verdict], system: str,
         depth: int) -> Markup:
    answer = made.answers[id_]
    names = answer.shown()
    value = ""
    if names:
        first = answer.values[names[0]]
        value = quantity(first.value, first.unit, first.decimals, system)
    return tag(
        "li", verdict_mark(level),
        tag("a", tag("b", tag("span", f"{WORDS[level]}: ", class_="df-sr"),
                     answer.calculator.title),
            tag("span", value, class_="df-value") if value else None,
            [_said(v, system) for v in verdicts],
            class_="df-item", href=pages.calculator_page(id_, depth)),
        data_calculator=id_, data_level=level)


def _said(verdict: Verdict, system: str) -> Markup:
    said = verdict_data(verdict, system)
    text = " ".join(t for t in (said["text"], said["doubt"]) if t)
    doing = said["do"] if verdict.level != "fine" and verdict.released is None else ""
    settles = f" ({verdict.signs})" if verdict.signs and not verdict.to_sign else ""
    return tag("span", text, settles, tag("b", f" {doing}") if doing else None,
               tag("b", f" {released_text(verdict.released)}")
               if verdict.released is not None else None,
               class_="df-item__sub", data_verdict=verdict.id)


def _refused(made: Plan, depth: int) -> Markup | None:
    rows = []
    for id_, answer in made.answers.items():
        if answer.ok is False:
            rows.append(tag("li", tag("a", tag("b", answer.calculator.title),
                                      [tag("span", e["message"], class_="df-item__sub")
                                       for e in answer.errors],
                                      class_="df-item", href=pages.calculator_page(id_, depth))))
    if not rows:
        return None
    return together(tag("h2", "Readings that cannot be true together", id="check"),
                    tag("ul", rows, class_="df-list"))


def _waiting(made: Plan, depth: int) -> Markup | None:
    rows = []
    waiting = made.missing()
    for name in sorted(waiting, key=lambda n: (-len(waiting[n]), n)):
        ids = waiting[name]
        titles = ", ".join(made.answers[i].calculator.title for i in ids)
        one = fact(name)
        rows.append(tag("li", tag("a", tag("b", one.label), tag("span", "add",
                                                                class_="df-item__go"),
                                  tag("span", f"missing for: {titles}", class_="df-item__sub"),
                                  class_="df-item", href=pages.job_sheet_page(depth, name))))
    if not rows:
        return None
    return together(tag("h2", "Missing", id="missing"), tag("ul", rows, class_="df-list"))


def _figures(made: Plan, system: str) -> list[Markup]:
    out: list[Markup] = []
    for id_, heading in FIGURES:
        answer, module = made.answers.get(id_), all_calculators().get(id_)
        if answer is None or module is None or module.figure is None or answer.sheet is None:
            continue
        out += [tag("h2", heading, id=f"figure-{id_}"),
                Markup(module.figure(dataclasses.replace(answer.sheet, system=system)))]
    return out


def _answers(made: Plan, system: str, depth: int) -> Markup:
    bodies: list[Markup] = []
    for one in PHASES:
        rows: list[Markup] = []
        for id_, answer in made.answers.items():
            if answer.calculator.phase != one.id or not answer.ok:
                continue
            names = answer.shown()
            for index, name in enumerate(names):
                value = answer.values[name]
                wide = range_text(value, system) if answer.ranged and has_range(value) else ""
                said = quantity(value.value, value.unit, value.decimals, system)
                if name in answer.entered:
                    given = quantity(answer.entered[name], value.unit, value.decimals, system)
                    wide = f"job sheet says {given}, and that is used. {wide}"
                title = tag("th", tag("a", answer.calculator.title,
                                      href=pages.calculator_page(id_, depth)), scope="row",
                            rowspan=len(names)) if index == 0 else None
                rows.append(tag("tr", title, tag("td", fact(name).label),
                                tag("td", tag("b", said), class_="n"), tag("td", wide)))
        if rows:
            bodies.append(tag("tbody", tag("tr", tag("th", one.title, colspan="4", scope="rowgroup",
                                                     class_="df-phase-row")), rows))
    return together(
        tag("h2", "Every answer", id="answers"),
        tag("div", tag("table", tag("thead", tag("tr", [tag("th", h, scope="col") for h in
                                                        ("Calculator", "Answer", "Number",
                                                         "Range")])),
                       bodies, class_="df-table"), class_="df-scroll", tabindex="0", role="group",
            aria_label="Every answer"))


def _assumed(made: Plan, system: str) -> Markup | None:
    names = sorted({n for a in made.answers.values() for n in a.assumed if n in all_facts()})
    rows = []
    for name in names:
        one = fact(name)
        if one.assumption is not None:
            rows.append(tag("li", tag("b", f"{one.label}: "),
                            tag("span", entered_text(one, one.assumption.value, system),
                                class_="df-value df-from-assumed"), f", {one.assumption.why}."))
    if not rows:
        return None
    return together(tag("h2", "Assumed, because nobody has said", id="assumed"),
                    tag("ul", rows, class_="df-assumed"))


def summary_reply(job: Job | None, system: str = "ip", *, ranged: bool = True) -> dict[str, Any]:
    """What the start page says about the open job."""
    made = plan(demo_job() if job is None else job, ranged=ranged)
    number = counts(made)
    marks = [tag("span", verdict_mark(level), tag("b", str(number[level])), f" {word}")
             for level, word in WORDS.items() if number[level]]
    html = together(tag("p", marks, class_="st-tally"),
                    measure_first_html(made, system, heading="h3"))
    return {"html": str(html), "counts": number}
