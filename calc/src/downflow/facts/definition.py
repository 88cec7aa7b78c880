"""What a fact is: one quantity about a job, defined once.

Forms, checks, help, the schema and the job sheet are all made from these definitions.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from downflow.sources import METER, PRACTICE, Source

Kind = Literal["number", "choice", "yesno", "date", "text", "table"]
From = Literal["measured", "data sheet", "estimated", "assumed"]

FROMS: tuple[From, ...] = ("measured", "data sheet", "estimated", "assumed")
"""Where a value may come from, most trusted first. `assumed` is never typed."""


@dataclass(frozen=True)
class Spread:
    """How far off a value may be, nine times in ten.

    Attributes:
        below: Distance to the low end. [the fact's unit, or a share of the value]
        above: Distance to the high end. [likewise]
        relative: Whether the two are shares of the value.
        source: Who says so.
    """

    below: float
    above: float
    relative: bool = False
    source: Source = PRACTICE

    def ends(self, value: float) -> tuple[float, float]:
        """Low and high end around `value`."""
        scale = abs(value) if self.relative else 1.0
        return value - self.below * scale, value + self.above * scale


def within(absolute: float, source: Source = PRACTICE) -> Spread:
    """A spread of plus or minus `absolute`, in the fact's unit."""
    return Spread(absolute, absolute, False, source)


def share(relative: float, source: Source = PRACTICE) -> Spread:
    """A spread of plus or minus a share of the value."""
    return Spread(relative, relative, True, source)


EXACT = Spread(0.0, 0.0, False, METER)


@dataclass(frozen=True)
class Assumption:
    """What may be taken where nothing is known, and why that is defensible."""

    value: float | str | bool
    why: str
    source: Source
    spread: Spread = EXACT


@dataclass(frozen=True)
class Hazard:
    """A danger in taking a reading, shown before its field.

    Attributes:
        level: `danger`, `warning`, `caution` or `notice`.
        text: The hazard first, then what to do.
        who: Who may take it. Empty: anyone trained.
    """

    level: Literal["danger", "warning", "caution", "notice"]
    text: str
    who: str = ""


@dataclass(frozen=True)
class Choice:
    """One value of a choice and the words for it."""

    value: str
    label: str


@dataclass(frozen=True)
class Rows:
    """Which rows of a table are legal.

    Attributes:
        least: Fewest rows.
        most: Most rows.
        rising: A column that must rise strictly from row to row.
        unique: A column (such as `id`) whose values may not repeat.
    """

    least: int = 1
    most: int = 60
    rising: str = ""
    unique: str = ""


@dataclass(frozen=True)
class Fact:
    """One quantity about a job.

    Attributes:
        name: Its name in code, JSON and job sheets, ending in its unit.
        label: Its name for a reader, without the unit.
        kind: What may be entered.
        unit: Unit in which it is stored.
        low, high: Allowed range, both allowed. [unit]
        decimals: Decimals that a reader is shown.
        how: How to measure it, in a sentence or two.
        where: Where one stands to read it: a key of `WHERE`.
        visit: Whether it is a reading of one visit, rather than of the home.
        hazard: The danger of reading it.
        choices: For a choice.
        columns: For a table: each column is a fact.
        rows: For a table: which rows are legal.
        optional: For a column: whether a cell may stay empty.
        spread: For each place it may come from, how far off it may be. A place that is
            missing counts as exact; a choice has none.
        assumption: What may be taken when it is unknown. Most facts have none.
        given: Whether a calculator works it out.
        enterable: For a given fact: whether a crew may know it and enter it.
        record: Whether it is kept to be read, and no calculator needs it.
        first: Whether it belongs to the short list that brings a first answer.
        by_hand: Whether a person can type it; a table of a file's hours has no form.
    """

    name: str
    label: str
    kind: Kind = "number"
    unit: str = ""
    low: float | None = None
    high: float | None = None
    decimals: int = 0
    how: str = ""
    where: str = "home"
    visit: bool = False
    hazard: Hazard | None = None
    choices: tuple[Choice, ...] = ()
    columns: tuple[Fact, ...] = ()
    rows: Rows = Rows()
    optional: bool = False
    spread: dict[str, Spread] = field(default_factory=dict)
    assumption: Assumption | None = None
    given: bool = False
    enterable: bool = True
    record: bool = False
    first: bool = False
    by_hand: bool = True

    def column(self, name: str) -> Fact | None:
        """The column called `name`, if there is one."""
        return next((c for c in self.columns if c.name == name), None)

    def spread_of(self, origin: str) -> Spread:
        """How far off a value from `origin` may be."""
        if origin == "assumed" and self.assumption is not None:
            return self.assumption.spread
        return self.spread.get(origin, EXACT)


WHERE: dict[str, str] = {
    "place": "Place and climate",
    "plate": "At the data plate",
    "home": "The home as a whole",
    "closet": "At the closet",
    "rooms": "Room by room",
    "panel": "At the panel",
    "crawl": "In the crawl space",
    "outdoors": "Outdoors",
    "fuel": "Fuel and bills",
    "equipment": "New equipment, from its data sheet",
    "comfort": "Comfort and hand-over",
    "readings": "Readings of a visit",
    "results": "Worked out",
}
"""Where one stands, in the order of a survey."""


def given(name: str, label: str, unit: str, decimals: int = 0, *, enterable: bool = False,
          low: float | None = None, high: float | None = None, how: str = "",
          spread: dict[str, Spread] | None = None) -> Fact:
    """A fact that a calculator gives."""
    return Fact(name, label, "number", unit, low, high, decimals, how, "results",
                spread=spread or {}, given=True, enterable=enterable)
