"""A calculator as it stands in a page: readings left, answer right.

`calculator_html` paints the whole, at build time; `regions` paints its parts, in the
browser. Both come to the same bytes for the same job.
"""

from __future__ import annotations

import dataclasses
from typing import Any

from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.engine.answer import Answer
from downflow.engine.chain import Outcome, Study
from downflow.facts import Fact, fact
from downflow.facts.job import Job
from downflow.markup import Markup, tag, together
from downflow.plan import the_chain
from downflow.render import pages
from downflow.render.answers import (
    answer_html,
    next_html,
    pin_html,
    spoken,
    worst_level,
)
from downflow.render.fields import Known, form_html
from downflow.render.marks import FROM_KEY
from downflow.render.values import entered_text, field_label, quantity
from downflow.render.verdicts import verdicts_html
from downflow.render.working import working_html

REGIONS = ("form", "messages", "answer", "verdicts", "figure", "working")
"""What is replaced on the page; the form only when the units or the job change."""

EXAMPLE = "Juniper Flat, worked example, not your job"


@dataclasses.dataclass(frozen=True)
class Painted:
    """A calculator painted for one job."""

    regions: dict[str, str]
    pin: str
    answer: Answer
    level: str
    say: str


def form_facts(id_: str) -> tuple[list[Fact], list[Fact]]:
    """The facts that a calculator's form asks for, and those that it may use besides."""
    calculator = all_calculators()[id_].calculator

    def fields(names: tuple[str, ...]) -> list[Fact]:
        found = [fact(n) for n in names]
        return [f for f in found if (not f.given or f.enterable) and f.by_hand]

    return fields(calculator.reads), fields(calculator.may_read)


def paint(id_: str, job: Job | None, system: str = "ip", *, ranged: bool = True,
          example: frozenset[str] = frozenset(), depth: int = pages.CALCULATOR_DEPTH,
          form: bool = True) -> Painted:
    """Everything of a calculator that depends on the job.

    Args:
        id_: The calculator.
        job: The reader's job. None: the worked example.
        system: `ip` or `si`.
        ranged: Whether to work out the range; without it nothing reads fine yet.
        example: Facts whose value in `job` is the worked example's.
        depth: How many folders down the page lies.
        form: Whether to paint the form too; a recomputation leaves it alone.
    """
    module = all_calculators()[id_]
    rest = job is None
    shown_job = demo_job() if job is None else job
    study = Study(the_chain(), shown_job)
    answer = study.answer(id_, ranged=ranged)
    prefix = id_
    whose = EXAMPLE if rest else ("Partly Juniper Flat’s numbers" if _borrowed(id_, example)
                                  else "")
    regions = {
        "form": _form(id_, shown_job, study, system, rest, example) if form else Markup(""),
        "messages": _messages(id_, answer, study, shown_job, system, rest, example, depth),
        "answer": Markup(""), "verdicts": Markup(""), "figure": Markup(""),
        "working": Markup(""),
    }
    if answer.ok:
        regions["answer"] = answer_html(answer, system, whose=whose)
        regions["verdicts"] = together(
            verdicts_html(id_, answer.verdicts, system, ranged=ranged,
                          example=rest or bool(example)),
            next_html(answer, system, _link(answer, id_, prefix, depth)))
        if module.figure is not None and answer.sheet is not None:
            regions["figure"] = Markup(module.figure(
                dataclasses.replace(answer.sheet, system=system)))
        regions["working"] = working_html(answer, system)
    else:
        regions["answer"] = _no_answer(answer, id_, rest or bool(example), depth)
    level = worst_level(answer) if answer.ok else ""
    return Painted({k: str(v) for k, v in regions.items()}, str(pin_html(answer, system)), answer,
                   level, spoken(answer, system) if answer.ok else "")


def regions(id_: str, job: Job | None, system: str = "ip", ranged: bool = True, *,
            example: frozenset[str] = frozenset(),
            depth: int = pages.CALCULATOR_DEPTH) -> dict[str, str]:
    """The regions of a calculator by name."""
    return paint(id_, job, system, ranged=ranged, example=example, depth=depth).regions


def calculator_reply(id_: str, job: Job | None, system: str = "ip", *, ranged: bool = True,
                     example: frozenset[str] = frozenset(),
                     depth: int = pages.CALCULATOR_DEPTH, form: bool = True) -> dict[str, Any]:
    """What the page needs to show a calculator: regions, pinned answer, level, problems."""
    done = paint(id_, job, system, ranged=ranged, example=example, depth=depth, form=form)
    shown = {k: v for k, v in done.regions.items() if form or k != "form"}
    return {"regions": shown, "pin": done.pin, "level": done.level, "say": done.say,
            "state": {True: "answer", False: "refused", None: "missing"}[done.answer.ok],
            "problems": done.answer.errors, "ranged": ranged}


def calculator_html(id_: str, job: Job | None = None, system: str = "ip", *,
                    example: frozenset[str] = frozenset(),
                    depth: int = pages.CALCULATOR_DEPTH) -> Markup:
    """The whole calculator, painted.

    Raises:
        ValueError: No calculator has this id.
    """
    if id_ not in all_calculators():
        raise ValueError(f"no calculator is called {id_}; there are "
                         + ", ".join(all_calculators()))
    done = paint(id_, job, system, example=example, depth=depth)
    inside = {name: Markup(text) for name, text in done.regions.items()}
    left = tag(
        "div", tag("div", tag("h2", "Readings", id="readings"), class_="df-calc__head"), FROM_KEY,
        tag("div", inside["messages"], data_region="messages"),
        tag("form", inside["form"], class_="df-form", novalidate=True, autocomplete="off",
            data_region="form", aria_labelledby="readings"),
        tag("a", Markup(done.pin), class_="df-pin", href="#answer", data_pin=True),
        class_="df-left")
    right = tag(
        "div",
        tag("div", tag("h2", "Answer"), tag("p", class_="df-state", data_state=True),
            class_="df-calc__head"),
        tag("div", inside["answer"], data_region="answer"),
        tag("div", inside["verdicts"], data_region="verdicts"),
        tag("div", inside["figure"], data_region="figure"),
        tag("details", tag("summary", "The working"),
            tag("div", inside["working"], data_region="working"), class_="df-working"),
        tag("p", class_="df-sr", role="status", data_say=True),
        class_="df-right", id="answer")
    return tag("df-calculator", cover_html(), tag("div", left, right, class_="df-spread"),
               data_id=id_,
               data_units=system, data_depth=str(depth), data_whose="example" if job is None
               else "job", class_="df-calc")


def cover_html() -> Markup:
    """What stands where the numbers would, while a job is open and its numbers are not there.

    The page's own script shows it; without a job, or without JavaScript, it is not seen.
    """
    return tag(
        "div", tag("p", "Your numbers: getting the calculator", class_="df-cover__word",
                   data_cover_word=True),
        tag("p", "The example’s numbers are covered, so that nobody takes them for yours. What "
                 "you typed is kept."),
        tag("p", class_="df-last", data_last=True, hidden=True),
        tag("p", tag("button", "Try again", type="button", class_="df-button", data_again=True,
                     hidden=True),
            tag("button", "Show the example", type="button", class_="df-button",
                data_show_example=True), class_="df-row"),
        class_="df-cover")


# ---- the form ---------------------------------------------------------------------------

def _form(id_: str, job: Job, study: Study, system: str, rest: bool,
          example: frozenset[str]) -> Markup:
    reads, may_read = form_facts(id_)
    known = {f.name: Known(
        job.entry(f.name),
        example=f.name in example or (rest and f.kind == "table" and job.entry(f.name) is not None),
        worked_out=f.name in study.chain.giver) for f in (*reads, *may_read)}
    parts = [form_html(id_, reads, known, system)]
    if may_read:
        parts.append(tag("h3", "If you know it"))
        parts.append(form_html(id_, may_read, known, system))
    return together(parts)


def _borrowed(id_: str, example: frozenset[str]) -> int:
    """How many of the facts behind an answer are the example's."""
    return sum(n in example for n in the_chain().inputs(id_)) if example else 0


def _messages(id_: str, answer: Answer, study: Study, job: Job, system: str, rest: bool,
              example: frozenset[str], depth: int) -> Markup:
    parts: list[Markup] = []
    borrowed = _borrowed(id_, example)
    if rest:
        parts.append(tag("p", tag("b", EXAMPLE), tag("br"),
                         "No job is open. Change a number and it starts, for a job of your own.",
                         class_="df-example"))
    elif borrowed:
        many = "1 number is" if borrowed == 1 else f"{borrowed} numbers are"
        parts.append(tag("p", tag("b", f"{many} still Juniper Flat’s, not yours"), tag("br"),
                         "They have a dashed frame, and never enter your job sheet. ",
                         tag("button", "Show only mine", type="button", class_="df-link",
                             data_example="no"), class_="df-example"))
    if answer.errors:
        fields = [e["field"] for e in answer.errors]
        names = ", ".join(dict.fromkeys(field_label(f) for f in fields))
        count = "1 reading" if len(fields) == 1 else f"{len(fields)} readings"
        parts.append(tag("p", tag("b", f"{count} to check: {names}."), " What you typed is kept.",
                         class_="df-check"))
        own = {f.name for group in form_facts(id_) for f in group}
        parts += [tag("p", tag("a", e["message"], href=pages.job_sheet_page(depth, _head(e))),
                      class_="df-error") for e in answer.errors if _head(e) not in own]
    chained = _chained(id_, answer, study, job, system, depth)
    if chained is not None:
        parts.append(chained)
    return together(parts)


def _head(error: dict[str, str]) -> str:
    return error["field"].partition("[")[0].partition(".")[0]


def _chained(id_: str, answer: Answer, study: Study, job: Job, system: str,
             depth: int) -> Markup | None:
    """What this calculator reads from others, as it stands now."""
    rows: list[Markup] = []
    out = Outcome()
    for name in study.chain.asks(id_):
        giver = study.chain.giver.get(name)
        one = fact(name)
        if giver is None or job.entry(name) is not None:
            continue
        value = study.base.value(name, out)
        if value is None:
            continue
        calculator = study.chain.modules[giver].calculator
        if out.used.get(name) == "assumed":
            shown = entered_text(one, value, system)
            where: list[Markup | str] = ["assumed; ", tag("a", calculator.title,
                                         href=pages.calculator_page(giver, depth)),
                                         " would work it out"]
        else:
            shown = (quantity(value, one.unit, one.decimals, system) if one.kind == "number"
                     else entered_text(one, value, system))
            where = ["worked out by ", tag("a", calculator.title,
                                           href=pages.calculator_page(giver, depth))]
        rows.append(tag("li", tag("span", f"{one.label}: "), tag("b", shown),
                        tag("span", " ", where, class_="df-small")))
    if not rows:
        return None
    return tag("details", tag("summary", f"From the rest of the job: {len(rows)}"),
               tag("ul", rows, class_="df-chained"), class_="df-chain")


# ---- no answer --------------------------------------------------------------------------

def _no_answer(answer: Answer, id_: str, example: bool, depth: int) -> Markup:
    if answer.ok is False:
        return tag("div", tag("p", "No answer from these readings", class_="df-answer__name"),
                   tag("ul", [tag("li", e["message"]) for e in answer.errors]), class_="df-answer")
    own = {f.name for group in form_facts(id_) for f in group}
    rows = []
    for name in answer.missing:
        one = fact(name)
        link = f"#{id_}-{name}" if name in own else pages.job_sheet_page(depth, name)
        if one.given and not one.enterable:
            giver = the_chain().giver.get(name)
            link = pages.calculator_page(giver, depth) if giver else link
        rows.append(tag("li", tag("a", tag("b", one.label), tag("span", "add",
                                                                  class_="df-item__go"),
                                  tag("span", f"missing: {one.how}" if one.how else "missing",
                                      class_="df-item__sub"), class_="df-item", href=link)))
    return tag(
        "div", tag("p", "No answer yet", class_="df-answer__value df-answer__value--none"),
        tag("p", "1 fact is missing." if len(rows) == 1 else f"{len(rows)} facts are missing."),
        tag("ul", rows, class_="df-list"),
        None if example else tag(
            "p", tag("button", "Fill the gaps with the example’s numbers", type="button",
                     class_="df-button", data_example="yes")), class_="df-answer")


def _link(answer: Answer, id_: str, prefix: str, depth: int) -> str:
    if answer.measure_next is None:
        return ""
    name = answer.measure_next.field.partition(".")[0]
    own = {f.name for group in form_facts(id_) for f in group}
    return f"#{prefix}-{name}" if name in own else pages.job_sheet_page(depth, name)


__all__ = ["EXAMPLE", "REGIONS", "Painted", "calculator_html", "calculator_reply", "form_facts",
           "paint", "regions"]
