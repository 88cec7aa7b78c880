"""The answer of one calculator, and how it stands in JSON."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from downflow.engine.calculator import Calculator, Sheet
from downflow.engine.formula import round_digits
from downflow.engine.paper import LEVELS, Level, Step, Verdict, worse
from downflow.facts import fact
from downflow.sources import Source
from downflow.units import Quantity, convert, fill, shown_unit


@dataclass(frozen=True)
class Value:
    """A given value and the range that holds it about nine times in ten."""

    value: float
    low: float
    high: float
    unit: str
    decimals: int


@dataclass(frozen=True)
class MeasureNext:
    """The one reading that would narrow the answer most."""

    field: str
    how: str
    answer: str
    now: tuple[float, float]
    then: tuple[float, float]


@dataclass
class Answer:
    """All that a calculator has to say about a job.

    Exactly one of three: `ok` true with values; `ok` false with `errors`; `ok` `None`
    with `missing`, the facts without which there is no answer.
    """

    calculator: Calculator
    ok: bool | None
    values: dict[str, Value] = field(default_factory=dict)
    tables: dict[str, list[dict[str, Any]]] = field(default_factory=dict)
    working: list[Step] = field(default_factory=list)
    verdicts: list[Verdict] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)
    measure_next: MeasureNext | None = None
    missing: list[str] = field(default_factory=list)
    errors: list[dict[str, str]] = field(default_factory=list)
    ranged: bool = False
    sheet: Sheet | None = None
    entered: dict[str, float] = field(default_factory=dict)
    terms: dict[str, tuple[float, float]] = field(default_factory=dict)

    def level(self) -> Level:
        """The worst of its verdicts."""
        found: Level = "fine"
        for verdict in self.verdicts:
            found = worse(found, verdict.level)
        return found

    def shown(self) -> list[str]:
        """Names of the given values, the answer in large type first."""
        order = self.calculator.shows or self.calculator.gives
        return [n for n in order if n in self.values]


def urgency(verdict: Verdict) -> tuple[int, bool, bool]:
    """What sorts verdicts, the worst first.

    A released hold comes after those that stand, and what only waits for a signature after
    what is to be settled.
    """
    return -LEVELS.index(verdict.level), verdict.released is not None, verdict.to_sign


def by_worst(verdicts: list[Verdict]) -> list[Verdict]:
    """Verdicts, the worst first."""
    return sorted(verdicts, key=urgency)


def source_data(source: Source) -> dict[str, str]:
    """A source as JSON data."""
    return {"document": source.document, "section": source.section, "kind": source.kind}


def verdict_data(verdict: Verdict, system: str = "ip") -> dict[str, Any]:
    """A verdict as JSON data, its texts in the reader's units."""
    limit = None
    values = dict(verdict.values)
    if verdict.value is not None and verdict.limit is not None:
        values["value"] = Quantity(verdict.value, verdict.unit, verdict.decimals)
        values["limit"] = Quantity(verdict.limit, verdict.unit, verdict.decimals)
        limit = {"value": verdict.limit, "unit": verdict.unit, "side": verdict.side}
    out: dict[str, Any] = {
        "id": verdict.id, "level": verdict.level, "answer": verdict.value, "limit": limit,
        "safety": verdict.safety, "text": fill(verdict.text, values, system),
        "do": fill(verdict.do, values, system), "doubt": fill(verdict.doubt, values, system),
        "signs": verdict.signs, "to_sign": verdict.to_sign, "source": source_data(verdict.source)}
    if verdict.released is not None:
        out["released"] = verdict.released
    return out


def step_data(step: Step) -> dict[str, Any]:
    """A step of the working as JSON data."""
    out: dict[str, Any] = {
        "kind": step.kind, "what": step.what, "formula": step.formula, "values": step.values,
        "result": {"value": step.result, "unit": step.unit}, "source": source_data(step.source)}
    if step.rows:
        out["rows"] = [list(r) for r in step.rows]
    if step.note:
        out["note"] = step.note
    return out


def answer_data(answer: Answer, system: str = "ip") -> dict[str, Any]:
    """An answer as JSON data, by the contract of the command line."""
    if answer.ok is False:
        return {"ok": False, "errors": answer.errors}
    if answer.ok is None:
        return {"ok": None, "missing": answer.missing}
    values = {n: {"value": v.value, "unit": v.unit, "low": v.low, "high": v.high}
              for n, v in answer.values.items()}
    tables = {n: {"columns": [{"name": c.name, "unit": c.unit} for c in fact(n).columns],
                  "rows": rows} for n, rows in answer.tables.items()}
    following = answer.measure_next
    return {
        "ok": True, "answer": values, "tables": tables,
        "working": [step_data(s) for s in answer.working],
        "verdicts": [verdict_data(v, system) for v in by_worst(answer.verdicts)],
        "assumed": [{"name": n, "value": a.value, "unit": fact(n).unit, "why": a.why}
                    for n in answer.assumed if (a := fact(n).assumption) is not None],
        "entered": answer.entered,
        "measure_next": None if following is None else {
            "field": following.field, "how": following.how, "answer": following.answer,
            "now": list(following.now), "then": list(following.then)},
    }


@dataclass(frozen=True)
class ShownStep:
    """A step with as many digits as make the shown inputs give the shown result."""

    values: dict[str, float]
    result: float
    digits: int


def shown_step(step: Step) -> ShownStep:
    """The fewest digits (at least four) with which the step can be re-worked by hand."""
    from downflow.engine.formula import work_out

    result = round_digits(step.result, 4)
    if step.kind != "formula":
        return ShownStep(step.values, result, 4)
    for digits in range(4, 16):
        values = {n: round_digits(v, digits) for n, v in step.values.items()}
        try:
            again = work_out(step.formula, values)
        except (ValueError, ArithmeticError):
            continue
        if round_digits(again, 4) == result:
            return ShownStep(values, result, digits)
    return ShownStep(dict(step.values), result, 17)


def in_system(value: Value, system: str) -> tuple[float, float, float]:
    """Value, low and high in the reader's units."""
    to = shown_unit(value.unit, system)
    return (convert(value.value, value.unit, to), convert(value.low, value.unit, to),
            convert(value.high, value.unit, to))
