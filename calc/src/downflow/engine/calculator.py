"""A calculator: one question, the facts it reads, the facts it gives."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from downflow.engine.paper import Paper, Readings
from downflow.units import Quantity


@dataclass(frozen=True)
class Calculator:
    """What a calculator asks and gives; its `solve` and `figure` stand beside it.

    Attributes:
        id: Its name in the shell and in addresses, with dashes.
        title: Its name for a reader.
        phase: Where in the job it is used: an id of `downflow.phases`.
        question: What it answers, in one sentence.
        reads: The facts it cannot do without.
        gives: The facts it gives; the first is the answer in large type.
        may_read: Facts that it uses where they are known; they read `None` otherwise.
        shows: Given facts shown beside the first, in order. Default: all.
    """

    id: str
    title: str
    phase: str
    reads: tuple[str, ...]
    gives: tuple[str, ...]
    question: str = ""
    may_read: tuple[str, ...] = ()
    shows: tuple[str, ...] = ()


@dataclass(frozen=True)
class Sheet:
    """What a figure is drawn from: the readings, the given values, and the units.

    Attributes:
        job: The readings.
        values: The given values by name.
        drawn: What `Paper.draw` kept.
        low, high: Ends of the range of each given value, where they are known.
        system: `ip` or `si`.
    """

    job: Readings
    values: dict[str, float]
    tables: dict[str, list[dict[str, object]]]
    drawn: dict[str, object]
    low: dict[str, float]
    high: dict[str, float]
    system: str = "ip"

    def text(self, value: float, unit: str, decimals: int | None = None) -> str:
        """A quantity in the reader's units."""
        return Quantity(value, unit, decimals).text(self.system)


Solve = Callable[[Readings, Paper], None]
Figure = Callable[[Sheet], str]


@dataclass(frozen=True)
class Module:
    """A calculator with its code."""

    calculator: Calculator
    solve: Solve
    figure: Figure | None
    doc: str
