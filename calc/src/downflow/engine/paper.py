"""What a calculator reads from and writes on.

A calculator's `solve` gets `Readings` and a `Paper`. The paper keeps the working, the
given values and the verdicts; it checks every step against physics, so that what is
shown cannot drift from what was computed. In a run that only feels out the range, the
same paper keeps quiet: no step is written, only values and limits.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal

from downflow.engine import formula as formulas
from downflow.facts import Spread, fact
from downflow.facts.checks import problem
from downflow.sources import Source
from downflow.units import Quantity

Level = Literal["fine", "look", "hold"]
LEVELS: tuple[Level, ...] = ("fine", "look", "hold")
"""From best to worst."""


def worse(a: Level, b: Level) -> Level:
    """The stricter of two verdicts."""
    return a if LEVELS.index(a) >= LEVELS.index(b) else b


class Refused(Exception):
    """The readings cannot be true together.

    Attributes:
        errors: One entry for each field to look at again.
    """

    def __init__(self, errors: list[dict[str, str]]) -> None:
        super().__init__("; ".join(e["message"] for e in errors))
        self.errors = errors


class Missing(Exception):
    """Facts without which there is no answer.

    Attributes:
        names: The facts, in the order in which they were asked for.
    """

    def __init__(self, names: list[str]) -> None:
        super().__init__(", ".join(names))
        self.names = names


@dataclass(frozen=True)
class Step:
    """One step of the working.

    `kind` is `formula`, `table`, `sum` or `solved`; `rows` holds the table row, the
    terms of the sum or the two sides of the solved equation.
    """

    kind: str
    what: str
    formula: str
    values: dict[str, float]
    result: float
    unit: str
    source: Source
    rows: tuple[tuple[str, float | str], ...] = ()
    note: str = ""


@dataclass
class Verdict:
    """A verdict, and what it was decided on.

    Attributes:
        id: Its name within the calculator.
        level: Decided on the numbers as they stand.
        text: What is the case, with `{name}` for quantities.
        do: What to do next.
        values: The quantities in the texts.
        source: Whose limit it is.
        value: The number judged, where there is one.
        limit: The limit, where there is one.
        side: `least` or `most`.
        unit: Unit of value and limit.
        safety: Whether any part of the range beyond the limit is a hold.
        best: The best that it may ever say.
        beyond: What it says past the limit.
        doubt: Why it is stricter than the numbers alone.
        released: Who released the hold.
        sound: Whether the numbers alone read fine, before anybody's signature.
    """

    id: str
    level: Level
    text: str
    do: str
    values: dict[str, Quantity | str]
    source: Source
    value: float | None = None
    limit: float | None = None
    side: str = ""
    unit: str = ""
    decimals: int | None = None
    safety: bool = False
    best: Level = "fine"
    beyond: Level = "hold"
    texts: dict[str, tuple[str, str]] = field(default_factory=dict)
    low: float | None = None
    high: float | None = None
    doubt: str = ""
    signs: str = ""
    released: dict[str, str] | None = None
    sound: bool = False

    @property
    def to_sign(self) -> bool:
        """Whether nothing is open but the signature of a licensed person."""
        return self.level == "look" and self.sound and bool(self.signs) and not self.doubt

    def margin(self) -> float | None:
        """How far inside the limit the number lies; negative beyond it."""
        if self.value is None or self.limit is None:
            return None
        return self.value - self.limit if self.side == "least" else self.limit - self.value


class Readings:
    """The facts that a calculator reads, as attributes in their own units.

    A fact that may be unknown reads as `None`.
    """

    def __init__(self, values: dict[str, Any], origins: dict[str, str],
                 labels: Callable[[str], str],
                 entered: frozenset[str] = frozenset(),
                 before: dict[str, tuple[Any, str]] | None = None,
                 now: frozenset[str] = frozenset(), visit: str = "") -> None:
        self._entered = entered
        self._before = before or {}
        self._now = now
        self._visit = visit
        self._values = values
        self._origins = origins
        self._labels = labels
        self._problems: list[dict[str, str]] = []

    def same(self, values: dict[str, Any]) -> bool:
        """Whether these are the values read."""
        return self._values == values

    def __getattr__(self, name: str) -> Any:
        if name.startswith("_") or name not in self._values:
            raise AttributeError(f"this calculator does not read {name}")
        return self._values[name]

    def origin(self, name: str) -> str:
        """Where the value of a fact comes from: one of `FROMS`, or `worked out`."""
        return self._origins.get(name, "")

    def entered(self, name: str) -> bool:
        """Whether a fact that this calculator gives was entered, so that the entry wins."""
        return name in self._entered

    def before(self, name: str) -> tuple[Any, str] | None:
        """A reading of an earlier visit and that visit's date; it carries no doubt."""
        return self._before.get(name)

    def read_now(self, name: str) -> bool:
        """Whether a reading was taken at the latest visit."""
        return name in self._now

    def visit_kind(self) -> str:
        """Kind of the latest visit; empty where there is none."""
        return self._visit

    def refuse(self, field_name: str, message: str) -> None:
        """Notes that a reading cannot be true beside the others."""
        self._problems.append(problem(field_name, f"{self._labels(field_name)}: {message}"))

    def refuse_unless(self, condition: bool, field_name: str, message: str) -> None:
        """Notes that `field_name` cannot be true beside the others, unless `condition`."""
        if not condition:
            self.refuse(field_name, message)

    def stop_if_refused(self) -> None:
        """Raises what was gathered; the first step does it by itself."""
        if self._problems:
            raise Refused(self._problems)


class Paper:
    """What a calculator writes: steps, given values, verdicts."""

    def __init__(self, job: Readings, gives: Sequence[str], *, quiet: bool = False,
                 shift: dict[str, float] | None = None,
                 decided: dict[str, Any] | None = None) -> None:
        self._job = job
        self._gives = tuple(gives)
        self._shift = shift or {}
        self._decided = decided
        self.quiet = quiet
        self.decisions: dict[str, Any] = {}
        self.working: list[Step] = []
        self.values: dict[str, float] = {}
        self.tables: dict[str, list[dict[str, Any]]] = {}
        self.models: dict[str, Spread] = {}
        self.verdicts: list[Verdict] = []
        self.drawn: dict[str, Any] = {}

    # ---- working ----

    def step(self, formula: str, source: Source, unit: str, value: float, *, what: str = "",
             note: str = "", **symbols: float) -> float:
        """Writes a formula, the values put in, and the result.

        Args:
            formula: `name = expression` in the symbols given.
            source: Whose formula it is.
            unit: Unit of the result.
            value: The result, from physics. It is worked out again from the formula.
            what: What the step finds, in a few words.
            note: One more sentence, where the step holds only so far.
            symbols: The values put in.

        Returns:
            `value`.

        Raises:
            ValueError: The formula does not give the value: one of the two is wrong.
        """
        self._job.stop_if_refused()
        if self.quiet:
            return value
        again = formulas.work_out(formula, symbols)
        if not formulas.same(again, value):
            raise ValueError(f"{formula!r} gives {again!r} from {symbols}, physics {value!r}")
        self.working.append(Step("formula", what, formula, symbols, value, unit, source,
                                 note=note))
        return value

    def lookup(self, what: str, source: Source, unit: str, value: float, *,
               row: Sequence[tuple[str, float | str]], note: str = "") -> float:
        """Writes the row and column of a published table that give `value`.

        `row` names what was looked up and, where it lies between two rows, both
        neighbours; `value` must lie within the numbers among them.
        """
        self._job.stop_if_refused()
        if self.quiet:
            return value
        numbers = [v for _, v in row if not isinstance(v, str)]
        if not numbers or not min(numbers) - 1e-9 <= value <= max(numbers) + 1e-9:
            raise ValueError(f"{what}: {value!r} is not among {numbers}")
        self.working.append(Step("table", what, "", {}, value, unit, source, tuple(row), note))
        return value

    def total(self, what: str, source: Source, unit: str, value: float,
              rows: Sequence[tuple[str, float]], *, note: str = "") -> float:
        """Writes a sum: its terms, and the total, which must be theirs."""
        self._job.stop_if_refused()
        if self.quiet:
            return value
        again = sum(v for _, v in rows)
        if not formulas.same(again, value, 1e-9):
            raise ValueError(f"{what}: the terms add up to {again!r}, physics gives {value!r}")
        self.working.append(Step("sum", what, "", {}, value, unit, source, tuple(rows), note))
        return value

    def solved(self, what: str, equation: str, source: Source, unit: str, value: float, *,
               left: float, right: float, side_unit: str, method: str,
               tolerance: float = 1e-6) -> float:
        """Writes the answer to an equation, and both its sides at that answer."""
        self._job.stop_if_refused()
        if self.quiet:
            return value
        if abs(left - right) > tolerance * max(abs(left), abs(right), 1e-9):
            raise ValueError(f"{what}: at {value!r} the two sides are {left!r} and {right!r}")
        self.working.append(Step("solved", what, equation, {}, value, unit, source,
                                 (("left side", left), ("right side", right),
                                  ("unit of the sides", side_unit)), method))
        return value

    # ---- answers ----

    def give(self, name: str, value: float, model: Spread | None = None) -> float:
        """Gives a fact.

        Args:
            name: One of the calculator's `gives`.
            value: In the fact's unit.
            model: The method's own error, beyond that of what was put in.
        """
        self._job.stop_if_refused()
        if name not in self._gives:
            raise ValueError(f"this calculator does not give {name}")
        value = float(value) + self._shift.get(name, 0.0)
        self.values[name] = value
        if model is not None:
            self.models[name] = model
        return value

    def give_table(self, name: str, rows: list[dict[str, Any]]) -> None:
        """Gives a fact that is a table."""
        self._job.stop_if_refused()
        if name not in self._gives:
            raise ValueError(f"this calculator does not give {name}")
        self.tables[name] = rows

    def decide(self, name: str, choice: Any) -> Any:
        """A choice that the plan makes, such as a kit size.

        While the range is felt out the choice stays as it was made on the numbers
        themselves: the question is then how far what was chosen holds.
        """
        if self._decided is not None and name in self._decided:
            return self._decided[name]
        self.decisions[name] = choice
        return choice

    def draw(self, **data: Any) -> None:
        """Keeps what the figure needs beyond the given values."""
        if not self.quiet:
            self.drawn.update(data)

    # ---- verdicts ----

    def limit(self, id: str, value: float, *, source: Source, fine: str = "", hold: str = "",
              look: str = "", do: str = "", at_least: float | None = None,
              at_most: float | None = None, of: str = "", unit: str | None = None,
              decimals: int | None = None, safety: bool = False, best: Level = "fine",
              beyond: Level = "hold", signs: str = "", do_fine: str = "",
              **values: Quantity | str) -> None:
        """Judges `value` against a limit; doubt is added afterwards, and only tightens.

        Args:
            id: Name of the verdict.
            value: The number judged.
            source: Whose limit.
            fine, look, hold: What is the case, at each level. `{value}` and `{limit}`
                stand for the two numbers, other names for `values`.
            do: What to do when it is not fine.
            at_least, at_most: The limit: exactly one of the two.
            of: A given fact whose unit and decimals the two numbers have.
            unit, decimals: Or these, where they are no fact's.
            safety: Any part of the range beyond the limit is a hold.
            best: The best level there is: `look` where a licensed person must sign.
            beyond: The level past the limit.
            signs: Who signs, where `best` is `look`.
            do_fine: What to do when it is fine (for a `look` that only needs a signature).
        """
        self._job.stop_if_refused()
        if (at_least is None) == (at_most is None):
            raise ValueError(f"{id}: exactly one of at_least and at_most")
        if of:
            unit = fact(of).unit if unit is None else unit
            decimals = fact(of).decimals if decimals is None else decimals
        limit = at_least if at_least is not None else at_most
        assert limit is not None
        verdict = Verdict(
            id=id, level="fine", text="", do="", values=dict(values), source=source, value=value,
            limit=limit, side="least" if at_least is not None else "most", unit=unit or "",
            decimals=decimals, safety=safety, best=best, beyond=beyond, signs=signs,
            texts={"fine": (fine, do_fine), "look": (look or hold or fine, do),
                   "hold": (hold or look, do)})
        margin = verdict.margin()
        assert margin is not None
        verdict.level = worse("fine" if margin >= 0 else beyond, best)
        verdict.sound = margin >= 0
        # A verdict that is only a `look` because somebody must sign still says that it fits.
        verdict.text, verdict.do = verdict.texts["fine" if margin >= 0 else verdict.level]
        self.verdicts.append(verdict)

    def verdict(self, id: str, level: Level, text: str, *, source: Source, do: str = "",
                safety: bool = False, best: Level = "fine", signs: str = "",
                **values: Quantity | str) -> None:
        """States a verdict that no single number decides."""
        self._job.stop_if_refused()
        self.verdicts.append(Verdict(id, worse(level, best), text, do, dict(values), source,
                                     safety=safety, best=best, signs=signs,
                                     sound=level == "fine"))
