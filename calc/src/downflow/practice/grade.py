"""Grading: the plan's own numbers, the faults that are there, the order of work, the holds.

A learner's answer is laid beside what the engine finds on the true home. Each mistake says what
was expected, why, and which procedure teaches it. A safety hold that was missed ends the home as
*not yet*, whatever else was right.
"""

from __future__ import annotations

import functools
import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from downflow.engine.answer import Answer
from downflow.engine.chain import Study
from downflow.plan import the_chain
from downflow.practice import diagnose, measures
from downflow.practice.faults import CALL, RANKS, SURVEY, fault, of_visit
from downflow.practice.homes import PracticeHome, home
from downflow.units import Quantity

Level = Literal["shown", "not all", "not yet"]


class Number(NamedTuple):
    """A number that is asked for.

    Attributes:
        name: The fact that the plan gives.
        calculator: The calculator that gives it.
        question: What is asked.
        unit, decimals: How it is typed and shown.
        relative, absolute: Tolerance, the wider of the two.
        visits: At which visits.
        needs: Measurements without which it would be a guess.
        skill: The skill that it shows.
        procedure: The procedure that teaches it.
    """

    name: str
    calculator: str
    question: str
    unit: str
    decimals: int
    relative: float
    absolute: float
    visits: tuple[str, ...]
    needs: tuple[str, ...]
    skill: str
    procedure: str

    def tolerance(self, truth: float) -> float:
        """How far off an answer may be."""
        return max(self.relative * abs(truth), self.absolute)


NUMBERS: tuple[Number, ...] = (
    Number("design_load_btuh", "two-roads", "Heat loss on the design night, to design on",
           "Btu/h", 0, 0.12, 0.0, (SURVEY,), ("bills", "shell"), "heat", "load-and-equipment"),
    Number("kit_chosen_kw", "backup-kit", "Smallest kit on the plate that covers what the heat "
           "pump leaves short", "kW", 0, 0.0, 0.01, (SURVEY,), ("bills",), "cold",
           "install-the-kit"),
    Number("air_target_cfm", "airflow-target", "Airflow to aim for, in this home's own air",
           "cfm", 0, 0.05, 0.0, (SURVEY,), (), "air", "load-and-equipment"),
    Number("service_load_a", "service-load", "Load of the service with the new system, by the sum "
           "for an existing dwelling", "A", 0, 0.04, 0.0, (SURVEY,), ("panel",), "electricity",
           "electrical"),
    Number("airflow_read_cfm", "airflow-two-roads", "Airflow, by both roads together", "cfm", 0,
           0.08, 0.0, (CALL,), ("static", "heat-rise"), "air", "start-up"),
    Number("static_read_inwc", "airflow-by-static", "External static, in the air of the fan table",
           "in w.c.", 2, 0.05, 0.02, (CALL,), ("static",), "air", "yearly-visit"),
    Number("subcooling_f", "superheat-subcooling", "Subcooling", "°F diff", 1, 0.0, 1.5, (CALL,),
           ("gauges",), "refrigerant", "pressure-and-vacuum"),
)
"""Every number that a practice home asks for."""

SHOWS_HOLD = ("close-old-furnace", "condensate-trap", "outdoor-site", "service-load",
              "crossover-choice")
"""Calculators whose holds stand in the way of going on."""


def numbers_of(visit: str) -> tuple[Number, ...]:
    """The numbers asked for at a visit."""
    return tuple(n for n in NUMBERS if visit in n.visits)


@dataclass(frozen=True)
class Solution:
    """What the engine comes to on a home.

    Attributes:
        answers: The plan's answers that are asked for, by calculator, on the home as found.
        numbers: The numbers asked for.
        findings: What the diagnoser finds with every measurement taken.
        go_on: Whether the crew may go on as things stand.
    """

    answers: dict[str, Answer]
    numbers: dict[str, float]
    findings: tuple[diagnose.Finding, ...]
    go_on: bool


def all_measures(one: PracticeHome) -> list[str]:
    """Every measurement of a visit, each after its safety steps."""
    out: list[str] = []
    for step in measures.steps_of(one.visit):
        out.append(step.id)
    return out + [m.id for m in measures.of_visit(one.visit)]


@functools.lru_cache(maxsize=8)
def solution(seed: int) -> Solution:
    """The engine's own solution of a practice home."""
    one = home(seed)
    study = Study(the_chain(), one.job())
    wanted = numbers_of(one.visit)
    answers = {n.calculator: study.answer(n.calculator, ranged=False) for n in wanted}
    numbers = {n.name: answers[n.calculator].values[n.name].value for n in wanted}
    findings = diagnose.diagnose(measures.readings(one, all_measures(one)))
    go_on = not any(fault(f.fault).holds for f in findings)
    return Solution(answers, numbers, tuple(findings), go_on)


class Mistake(NamedTuple):
    """One mistake.

    Attributes:
        kind: What kind of mistake it is.
        about: What it is about: a fault, number, measurement or safety step.
        text: What was expected, and why; `{name}` stands for a value.
        values: Those values.
        procedure: The procedure that teaches it.
        skill: The skill that it belongs to.
        safety: Whether it is a missed hold.
    """

    kind: str
    about: str
    text: str
    values: dict[str, Quantity | str]
    procedure: str
    skill: str
    safety: bool = False


KINDS: dict[str, str] = {
    "hold-skipped": "A reading before its safety step",
    "hold-missed": "Going on where one must stop",
    "missed-fault": "A fault not found",
    "no-fault": "A fault named that is not there",
    "not-read": "A fault named without a reading that shows it",
    "number": "A number off",
    "no-number": "A number left out",
    "guess": "A number without its readings",
    "order": "The order of work",
    "stopped": "A stop without a reason",
    "time": "More time than there was",
}
"""Every kind of mistake, in words."""


@dataclass(frozen=True)
class Answers:
    """What a learner decided.

    Attributes:
        faults: Faults found, in the order in which they would be put right.
        numbers: Numbers asked for, in the unit asked for.
        go_on: Whether the crew may go on as things stand.
    """

    faults: tuple[str, ...] = ()
    numbers: Mapping[str, float] = field(default_factory=dict)
    go_on: bool = True


@dataclass(frozen=True)
class Grade:
    """How a practice home went.

    Attributes:
        level: `shown`, `not all`, or `not yet`: a hold was missed.
        mistakes: Missed holds first.
        right: What was right, in sentences.
        minutes: Time taken.
        solution: The engine's own.
        skills: Skills that the home asked for, and whether each was shown.
    """

    level: Level
    mistakes: tuple[Mistake, ...]
    right: tuple[tuple[str, dict[str, Quantity | str]], ...]
    minutes: int
    solution: Solution
    skills: dict[str, bool]


def grade(one: PracticeHome, done: Sequence[str], answers: Answers) -> Grade:
    """Grades a practice home.

    Args:
        one: The home.
        done: Safety steps and measurements, in the order taken.
        answers: What the learner decided.

    Raises:
        ValueError: A fault, number or measurement that does not belong to the visit.
    """
    possible = {f.id for f in of_visit(one.visit)}
    for id_ in answers.faults:
        if id_ not in possible:
            raise ValueError(f"{id_!r} cannot be met at this visit")
    asked = numbers_of(one.visit)
    for name in answers.numbers:
        if name not in {n.name for n in asked}:
            raise ValueError(f"{name!r} is not asked for at this visit")
    found = solution(one.seed)
    right: list[tuple[str, dict[str, Quantity | str]]] = []
    mistakes = [*_steps(done), *_holds(one, found, answers), *_faults(one, done, found, answers,
                                                                     right)]
    mistakes += _order(answers, found)
    mistakes += _numbers(done, asked, found, answers, right)
    taken = measures.minutes(list(done))
    if taken > one.minutes:
        mistakes.append(Mistake(
            "time", "time", "You took {taken} of {most}. Ask first what each reading can decide, "
            "and take the one that decides most.",
            {"taken": Quantity(float(taken), "min", 0),
             "most": Quantity(float(one.minutes), "min", 0)}, "first-visit", "homeowner"))
    level: Level = "shown"
    if any(m.safety for m in mistakes):
        level = "not yet"
    elif mistakes:
        level = "not all"
    skills = _skills(one, found, mistakes, level, asked)
    return Grade(level, tuple(sorted(mistakes, key=lambda m: not m.safety)), tuple(right), taken,
                 found, skills)


def _steps(done: Sequence[str]) -> list[Mistake]:
    out = []
    for taken, missing in measures.left_out(list(done)):
        one, step = measures.measure(taken), measures.step(missing)
        out.append(Mistake(
            "hold-skipped", missing,
            f"“{one.label}” was done before “{step.label}”. {step.why}", {}, step.procedure,
            "safety", True))
    return out


def _holds(one: PracticeHome, found: Solution, answers: Answers) -> list[Mistake]:
    holding = [f for f in found.findings if fault(f.fault).holds]
    if holding and answers.go_on:
        return [Mistake(
            "hold-missed", f.fault,
            f"You would have gone on. {f.text} {fault(f.fault).do}", f.values,
            fault(f.fault).procedure, "safety", True) for f in holding]
    if not holding and not answers.go_on:
        return [Mistake("stopped", "go-on", "Nothing here stops the work. A stop needs its reason "
                        "by name: without one the next crew no longer believes a hold.", {},
                        "before-you-cut", "safety")]
    return []


def _faults(one: PracticeHome, done: Sequence[str], found: Solution, answers: Answers,
            right: list[tuple[str, dict[str, Quantity | str]]]) -> list[Mistake]:
    there = {f.fault: f for f in found.findings}
    out: list[Mistake] = []
    seen = {f.fault for f in diagnose.diagnose(measures.readings(one, list(done)))}
    for id_, finding in there.items():
        what = fault(id_)
        if id_ not in answers.faults:
            ways = " or ".join(f"“{measures.measure(m).label}”" for m in what.shown_by
                               if one.visit in measures.measure(m).visits)
            read = "You had the reading. " if id_ in seen else f"It shows at: {ways}. "
            out.append(Mistake("missed-fault", id_,
                               f"{what.label}. {finding.text} {read}{what.do}", finding.values,
                               what.procedure, what.skill))
        elif id_ in seen:
            right.append((f"{what.label}: found. {finding.text}", finding.values))
        else:
            out.append(Mistake(
                "not-read", id_, f"{what.label}: it is so, but none of your readings shows it. "
                f"{finding.text} Name a fault only with the reading that shows it.",
                finding.values, what.procedure, what.skill))
    for id_ in answers.faults:
        if id_ not in there:
            what = fault(id_)
            ways = " or ".join(f"“{measures.measure(m).label}”" for m in what.shown_by
                               if one.visit in measures.measure(m).visits)
            out.append(Mistake(
                "no-fault", id_, f"{what.label}: it is not so here. It would show at: {ways}. "
                "Work on what is sound costs the owner, and hides what is wrong.", {},
                what.procedure, what.skill))
    if not there and not answers.faults:
        right.append(("Nothing is wrong here, and you said so.", {}))
    return out


def _order(answers: Answers, found: Solution) -> list[Mistake]:
    there = {f.fault for f in found.findings}
    named = [fault(id_) for id_ in answers.faults if id_ in there]
    for first, then in itertools.pairwise(named):
        if first.rank > then.rank:
            return [Mistake(
                "order", then.id, f"“{then.label}” comes before “{first.label}”. "
                f"{RANKS[then.rank]}", {}, then.procedure, then.skill)]
    return []


def _numbers(done: Sequence[str], asked: Sequence[Number], found: Solution, answers: Answers,
             right: list[tuple[str, dict[str, Quantity | str]]]) -> list[Mistake]:
    out: list[Mistake] = []
    for one in asked:
        truth = found.numbers[one.name]
        values: dict[str, Quantity | str] = {
            "truth": Quantity(truth, one.unit, one.decimals),
            "off": Quantity(one.tolerance(truth), one.unit, one.decimals + 1)}
        said = answers.numbers.get(one.name)
        if said is None:
            out.append(Mistake("no-number", one.name, f"{one.question}: {{truth}}. It was left "
                               "empty.", values, one.procedure, one.skill))
            continue
        values["said"] = Quantity(said, one.unit, one.decimals)
        if abs(said - truth) > one.tolerance(truth):
            out.append(Mistake(
                "number", one.name, f"{one.question}: {{truth}}; you said {{said}}. Within {{off}} "
                "counts. The working is below, line by line.", values, one.procedure, one.skill))
            continue
        missing = [measures.measure(m).label for m in one.needs if m not in done]
        if missing:
            out.append(Mistake(
                "guess", one.name, f"{one.question}: {{truth}}, and you said {{said}}: right, but "
                f"not from readings of this home. It needs: {'; '.join(missing)}.", values,
                one.procedure, one.skill))
        else:
            right.append((f"{one.question}: {{said}}; the engine has {{truth}}.", values))
    return out


def _skills(one: PracticeHome, found: Solution, mistakes: Sequence[Mistake], level: Level,
            asked: Sequence[Number]) -> dict[str, bool]:
    """Skills that the home asked for, and whether each was shown without a mistake."""
    wanted = {"safety"} | {n.skill for n in asked} | {fault(f.fault).skill for f in found.findings}
    off = {m.skill for m in mistakes}
    return {name: level != "not yet" and name not in off for name in sorted(wanted)}

