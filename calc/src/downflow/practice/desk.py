"""A practice home under way: what was done, what was said, as JSON text that travels.

The text holds no answer: the home follows from its number again each time.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from typing import Any

from downflow.facts.checks import BadInput, problem
from downflow.facts.job import Entry, Job
from downflow.practice import measures
from downflow.practice.chance import LARGEST_SEED, a_seed
from downflow.practice.faults import of_visit
from downflow.practice.grade import Answers, Grade, grade, numbers_of
from downflow.practice.homes import PracticeHome, home
from downflow.units import convert, parse_number, shown_unit

VERSION = 1
MOST_STEPS = 60


@dataclass(frozen=True)
class Desk:
    """A practice home under way.

    Attributes:
        seed: The home's number.
        done: Safety steps and measurements, in the order taken.
        faults: Faults named, in the order of work.
        numbers: Numbers as typed, in the unit asked for.
        go_on: `yes`, `no`, or nothing yet.
        decided: Whether it was handed in.
    """

    seed: int
    done: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    numbers: dict[str, float] = field(default_factory=dict)
    go_on: str = ""
    decided: bool = False

    @property
    def home(self) -> PracticeHome:
        """The home."""
        return home(self.seed)

    def answers(self) -> Answers:
        """What was decided."""
        return Answers(self.faults, self.numbers, self.go_on == "yes")

    def grade(self) -> Grade:
        """How it went."""
        return grade(self.home, self.done, self.answers())


def seed_of(value: Any) -> int:
    """A seed from a request or a typed text.

    Raises:
        BadInput: It is none.
    """
    if isinstance(value, str):
        text = value.strip()
        value = int(text) if text.isdigit() and len(text) <= 9 else None
    try:
        return a_seed(value)
    except ValueError:
        raise BadInput([problem("seed", f"The number of a practice home: 0 to "
                                        f"{LARGEST_SEED:,}, without comma.")]) from None


def read_desk(text: str) -> Desk:
    """The state in a text.

    Raises:
        BadInput: It is no such state.
    """
    try:
        data = json.loads(text)
    except (ValueError, RecursionError):
        data = None
    if not isinstance(data, dict) or data.get("practice") != VERSION:
        raise BadInput([problem("state", "Not a practice home of this handbook. Begin it anew.")])
    seed = seed_of(data.get("seed"))
    done, faults = _texts(data, "done"), _texts(data, "faults")
    one = home(seed)
    may = {m.id for m in measures.of_visit(one.visit)} | {
        s.id for s in measures.steps_of(one.visit)}
    numbers = data.get("numbers", {})
    asked = {n.name for n in numbers_of(one.visit)}
    wrong = (not set(done) <= may or not set(faults) <= {f.id for f in of_visit(one.visit)}
             or not isinstance(numbers, dict) or not set(numbers) <= asked
             or not all(isinstance(v, (int, float)) and not isinstance(v, bool)
                        for v in numbers.values())
             or data.get("go_on", "") not in ("", "yes", "no"))
    if wrong:
        raise BadInput([problem("state", "This does not belong to that practice home. Begin it "
                                         "anew.")])
    return Desk(seed, done, faults, {k: float(v) for k, v in numbers.items()},
                str(data.get("go_on", "")), bool(data.get("decided", False)))


def _texts(data: dict[str, Any], key: str) -> tuple[str, ...]:
    value = data.get(key, [])
    if not isinstance(value, list) or len(value) > MOST_STEPS or not all(
            isinstance(v, str) for v in value) or len(set(value)) != len(value):
        raise BadInput([problem("state", "Not a practice home of this handbook. Begin it anew.")])
    return tuple(value)


def write_desk(one: Desk) -> str:
    """The state as text."""
    return json.dumps({"practice": VERSION, "seed": one.seed, "done": list(one.done),
                       "faults": list(one.faults), "numbers": one.numbers, "go_on": one.go_on,
                       "decided": one.decided}, sort_keys=True)


def taken(one: Desk, id_: str) -> Desk:
    """The state after a safety step or a measurement.

    Raises:
        BadInput: It cannot be taken here, or the home was handed in.
    """
    visit = one.home.visit
    may = {m.id for m in measures.of_visit(visit)} | {s.id for s in measures.steps_of(visit)}
    if id_ not in may:
        raise BadInput([problem("id", "That cannot be read at this visit.")])
    if one.decided:
        raise BadInput([problem("id", "This home is handed in. Take another.")])
    if id_ in one.done:
        return one
    return Desk(one.seed, (*one.done, id_), one.faults, one.numbers, one.go_on)


def decided(one: Desk, named: dict[str, str], typed: dict[str, str], go_on: str,
            system: str) -> Desk:
    """The state with what was decided.

    Args:
        one: The state.
        named: For each fault that is named: its place in the order of work, `1`, `2`, …
        typed: Numbers as typed, in the reader's units.
        go_on: `yes` or `no`.
        system: `ip` or `si`.

    Raises:
        BadInput: Every field that cannot be read, at once.
    """
    problems: list[dict[str, str]] = []
    visit = one.home.visit
    places: dict[str, int] = {}
    for id_, place in named.items():
        if id_ not in {f.id for f in of_visit(visit)}:
            problems.append(problem(f"fault.{id_}", "That cannot be met at this visit."))
        elif not place.isdigit() or not 1 <= int(place) <= 9:
            problems.append(problem(f"fault.{id_}", "Its place in the order of work: 1, 2, 3."))
        else:
            places[id_] = int(place)
    twice = [id_ for id_, n in places.items() if list(places.values()).count(n) > 1]
    problems += [problem(f"fault.{id_}", "Two faults have this place in the order of work.")
                 for id_ in twice]
    numbers: dict[str, float] = {}
    for asked in numbers_of(visit):
        text = typed.get(asked.name, "").strip()
        if not text:
            continue
        try:
            number = parse_number(text)
        except ValueError:
            problems.append(problem(f"number.{asked.name}",
                                    f"{asked.question}: a number. You typed {text[:40]}."))
            continue
        numbers[asked.name] = convert(number, shown_unit(asked.unit, system), asked.unit)
    if go_on not in ("yes", "no"):
        problems.append(problem("go_on", "May the crew go on as things stand? Yes or no."))
    if problems:
        raise BadInput(problems)
    ordered = tuple(sorted(places, key=lambda id_: places[id_]))
    return Desk(one.seed, one.done, ordered, numbers, go_on, True)


def as_job(one: Desk) -> Job:
    """What is known so far as a job sheet, for the handbook's own calculators."""
    known = measures.readings(one.home, list(one.done))
    sheet = one.home.job()
    facts: dict[str, Entry] = {}
    for name in known:
        entry = sheet.entry(name)
        if entry is not None:
            facts[name] = entry
    return Job(f"practice-{one.seed}", f"Practice home {one.seed}", facts)
