"""A first answer: at most a dozen facts, and everything that follows from them, honestly wide."""

from __future__ import annotations

from typing import Any

from downflow.demo import demo_job
from downflow.engine.answer import by_worst, verdict_data
from downflow.engine.paper import Verdict
from downflow.facts import Fact, all_facts
from downflow.facts.job import Job
from downflow.markup import Markup, tag, together
from downflow.plan import Plan, plan, the_chain
from downflow.render import pages
from downflow.render.answers import has_range, range_text, worst_level
from downflow.render.calculator import EXAMPLE, cover_html
from downflow.render.fields import Known, form_html
from downflow.render.marks import FROM_KEY, verdict_mark
from downflow.render.values import quantity

MOST_FACTS = 12


def first_facts() -> list[Fact]:
    """The facts that bring a first answer, in the order of a survey.

    Raises:
        ValueError: More than a dozen: it would no longer be a first answer.
    """
    from downflow.facts import WHERE

    places = list(WHERE)
    found = sorted((f for f in all_facts().values() if f.first),
                   key=lambda f: places.index(f.where))
    if len(found) > MOST_FACTS:
        raise ValueError(f"{len(found)} facts are marked first; at most {MOST_FACTS}")
    return found


def first_job(job: Job) -> Job:
    """The job as it would be if only the first facts were known."""
    names = {f.name for f in first_facts()}
    facts = {n: e for n in names if (e := job.entry(n)) is not None}
    return Job(job.id, job.name, facts, released=job.released)


def first_regions(job: Job | None, system: str = "ip", *, ranged: bool = True,
                  depth: int = pages.TOP_DEPTH) -> dict[str, str]:
    """The form and the answers of a first answer."""
    shown = first_job(demo_job()) if job is None else job
    made = plan(shown, ranged=ranged)
    giver = the_chain().giver
    known = {f.name: Known(shown.entry(f.name), worked_out=f.name in giver)
             for f in first_facts()}
    return {
        "form": str(form_html("first", first_facts(), known, system)),
        "messages": str(tag("p", tag("b", EXAMPLE), tag("br"),
                            "No job is open. Change a number and it starts, for a job of your "
                            "own.", class_="df-example")) if job is None else "",
        "answer": str(_answers(made, system, depth)),
    }


def first_answer_reply(job: Job | None, system: str = "ip", *,
                       ranged: bool = True) -> dict[str, Any]:
    """What the page needs to show a first answer."""
    return {"regions": first_regions(job, system, ranged=ranged), "ranged": ranged}


def first_answer_html(job: Job | None = None, system: str = "ip", *,
                      depth: int = pages.TOP_DEPTH) -> Markup:
    """The whole page of a first answer, painted."""
    parts = {k: Markup(v) for k, v in first_regions(job, system, depth=depth).items()}
    left = tag("div", tag("h2", "What you see in five minutes", id="readings"), FROM_KEY,
               tag("div", parts["messages"], data_region="messages"),
               tag("form", parts["form"], class_="df-form", novalidate=True, autocomplete="off",
                   data_region="form", aria_labelledby="readings"), class_="df-left")
    right = tag("div", tag("div", tag("h2", "What follows from it"),
                           tag("p", class_="df-state", data_state=True), class_="df-calc__head"),
                tag("div", parts["answer"], data_region="answer"), class_="df-right", id="answer")
    return tag("df-first", cover_html(), tag("div", left, right, class_="df-spread"),
               data_units=system, data_depth=str(depth),
               data_whose="example" if job is None else "job", class_="df-calc")


def _said(verdict: Verdict, system: str) -> Markup:
    """What is not fine, and what to do about it."""
    said = verdict_data(verdict, system)
    return tag("span", said["text"], tag("b", f" {said['do']}") if said["do"] else None,
               class_="df-item__sub", data_verdict=verdict.id)


def _answers(made: Plan, system: str, depth: int) -> Markup:
    rows = []
    for id_, answer in made.answers.items():
        names = answer.shown()
        if not answer.ok or not names:
            continue
        value = answer.values[names[0]]
        wide = range_text(value, system) if answer.ranged and has_range(value) else (
            "" if answer.ranged else "range: working it out")
        level = worst_level(answer)
        rows.append(tag("li", verdict_mark(level) if answer.verdicts else None,
                        tag("a", tag("b", answer.calculator.title),
                            tag("span", quantity(value.value, value.unit, value.decimals, system),
                                class_="df-value"),
                            tag("span", wide, class_="df-item__sub"),
                            [_said(v, system) for v in by_worst(answer.verdicts)
                             if v.level != "fine" and not v.to_sign],
                            class_="df-item", href=pages.calculator_page(id_, depth))))
    waiting = sum(a.ok is None for a in made.answers.values())
    return together(
        tag("ul", rows, class_="df-list") if rows else tag("p", "Nothing yet: start at the top."),
        tag("p", f"{waiting} more answers wait for further readings. Each reading narrows what "
                 "stands here.", class_="df-small") if waiting else None)
