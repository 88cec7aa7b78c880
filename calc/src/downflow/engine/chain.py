"""The chain of calculators: which feeds which, one job through all of them, the ranges.

A run works out values on demand: a fact that was entered, else what a calculator
gives, else its assumption. A range moves each uncertain entered fact to both its ends
alone and runs the chain again, never starting from an intermediate range, so that an
input shared by two calculators moves both.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from downflow.engine.answer import Answer, MeasureNext, Value
from downflow.engine.calculator import Module, Sheet
from downflow.engine.paper import LEVELS, Level, Missing, Paper, Readings, Refused, Verdict, worse
from downflow.facts import Fact, Spread, all_facts
from downflow.facts.checks import problem
from downflow.facts.job import Job
from downflow.units import Quantity


@dataclass
class Outcome:
    """What one calculator came to in one run."""

    paper: Paper | None = None
    readings: Readings | None = None
    missing: list[str] = field(default_factory=list)
    errors: list[dict[str, str]] = field(default_factory=list)
    used: dict[str, str] = field(default_factory=dict)
    through: set[str] = field(default_factory=set)
    fault: str = ""


class Chain:
    """The calculators as a graph without cycles.

    Raises:
        ValueError: Two calculators give one fact, a fact is unknown, or they go in a circle.
    """

    def __init__(self, modules: Mapping[str, Module]) -> None:
        self.modules = dict(modules)
        self.facts = all_facts()
        self.giver: dict[str, str] = {}
        for id_, module in self.modules.items():
            calculator = module.calculator
            for name in (*calculator.reads, *calculator.may_read, *calculator.gives):
                if name not in self.facts:
                    raise ValueError(f"{id_} speaks of {name}, which is no fact")
            for name in calculator.gives:
                if name in self.giver:
                    raise ValueError(f"{name} is given by {self.giver[name]} and by {id_}")
                if not self.facts[name].given:
                    raise ValueError(f"{id_} gives {name}, which is not defined as given")
                self.giver[name] = id_
        self.order = self._sorted()

    def asks(self, id_: str) -> tuple[str, ...]:
        """Every fact that a calculator reads or may read."""
        calculator = self.modules[id_].calculator
        return (*calculator.reads, *calculator.may_read)

    def before(self, id_: str) -> list[str]:
        """The calculators that feed this one directly."""
        return sorted({self.giver[n] for n in self.asks(id_) if n in self.giver})

    def _sorted(self) -> list[str]:
        order: list[str] = []
        state: dict[str, int] = {}

        def visit(id_: str, path: tuple[str, ...]) -> None:
            if state.get(id_) == 2:
                return
            if state.get(id_) == 1:
                raise ValueError("the calculators go in a circle: " + " → ".join((*path, id_)))
            state[id_] = 1
            for earlier in self.before(id_):
                visit(earlier, (*path, id_))
            state[id_] = 2
            order.append(id_)

        for id_ in sorted(self.modules):
            visit(id_, ())
        return order

    def inputs(self, id_: str) -> list[str]:
        """Every fact that may be entered for a calculator or for those that feed it."""
        names: list[str] = []
        seen: set[str] = set()

        def walk(one: str) -> None:
            if one in seen:
                return
            seen.add(one)
            for name in self.asks(one):
                found = self.facts[name]
                if (not found.given or found.enterable) and name not in names:
                    names.append(name)
            for earlier in self.before(one):
                walk(earlier)

        walk(id_)
        return names

    def solve(self, id_: str, job: Job, *, ranged: bool = True) -> Answer:
        """The answer of one calculator for a job."""
        return Study(self, job).answer(id_, ranged=ranged)


class Run:
    """One pass through the chain, as far as it is asked for."""

    def __init__(self, chain: Chain, job: Job, *, base: Run | None = None,
                 moved: Mapping[str, Any] | None = None,
                 shift: Mapping[str, float] | None = None) -> None:
        self.chain = chain
        self.job = job
        self.base = base
        self.moved = dict(moved or {})
        self.shift = dict(shift or {})
        self.outcomes: dict[str, Outcome] = {}
        self._busy: set[str] = set()

    def outcome(self, id_: str) -> Outcome:
        """What a calculator comes to in this run."""
        found = self.outcomes.get(id_)
        if found is None:
            found = self._unmoved(id_) or self._work(id_)
            self.outcomes[id_] = found
        return found

    def _unmoved(self, id_: str) -> Outcome | None:
        if self.base is None:
            return None
        before = self.base.outcome(id_)
        if any(name in before.used for name in self.moved):
            return None
        if any(self.chain.giver[name] in before.through for name in self.shift):
            return None
        return before

    def value(self, name: str, out: Outcome) -> Any:
        """The value of a fact in this run, or `None`; notes in `out` where it came from."""
        fact = self.chain.facts[name]
        entry = self.job.entry(name)
        if name in self.moved:
            out.used[name] = "assumed" if entry is None else entry.origin
            return self.moved[name]
        if entry is not None:
            out.used[name] = entry.origin
            return entry.value
        giver = self.chain.giver.get(name)
        if giver is not None:
            earlier = self.outcome(giver)
            if earlier.paper is not None:
                if name in earlier.paper.values or name in earlier.paper.tables:
                    out.used.update(earlier.used)
                    out.through |= earlier.through
                if name in earlier.paper.values:
                    return earlier.paper.values[name]
                if name in earlier.paper.tables:
                    return earlier.paper.tables[name]
        if fact.assumption is not None:
            out.used[name] = "assumed"
            return fact.assumption.value
        return None

    def _why_missing(self, name: str) -> tuple[list[str], list[dict[str, str]]]:
        giver = self.chain.giver.get(name)
        if giver is None:
            return [name], []
        earlier = self.outcome(giver)
        if earlier.errors:
            return [], earlier.errors
        return earlier.missing or [name], []

    def _work(self, id_: str) -> Outcome:
        module = self.chain.modules[id_]
        calculator = module.calculator
        out = Outcome(through={id_})
        values: dict[str, Any] = {}
        origins: dict[str, str] = {}
        for name in calculator.reads:
            value = self.value(name, out)
            if value is None:
                names, errors = self._why_missing(name)
                out.missing += [n for n in names if n not in out.missing]
                out.errors += [e for e in errors if e not in out.errors]
            values[name] = value
            origins[name] = out.used.get(name, "worked out")
        if out.missing or out.errors:
            if out.errors:
                out.missing = []
            return out
        for name in calculator.may_read:
            values[name] = self.value(name, out)
            origins[name] = out.used.get(name, "" if values[name] is None else "worked out")
        for name in calculator.gives:  # entered ones win; the calculator may say so
            entry = self.job.entry(name)
            if entry is not None:
                values[name], origins[name] = entry.value, entry.origin
        before = None if self.base is None else self.base.outcome(id_)
        if before is not None and before.readings is not None \
                and not any(n in self.shift for n in calculator.gives) \
                and before.readings.same(values):
            # What was moved changed nothing that this calculator reads.
            return before
        visits = [n for n in self.chain.asks(id_) if self.chain.facts[n].visit]
        earlier = {n: (e[0].value, e[1]) for n in visits if (e := self.job.before(n)) is not None}
        readings = Readings(values, origins, self._label,
                            frozenset(n for n in calculator.gives if self.job.entry(n)),
                            earlier, frozenset(n for n in visits if self.job.read_now(n)),
                            self.job.visit_kind())
        decided = None
        if before is not None and before.paper is not None:
            decided = before.paper.decisions
        paper = Paper(readings, calculator.gives, quiet=self.base is not None,
                      shift={n: d for n, d in self.shift.items() if n in calculator.gives},
                      decided=decided)
        try:
            module.solve(readings, paper)
            readings.stop_if_refused()
        except Refused as refused:
            out.errors = refused.errors
            return out
        except Missing as gap:
            out.missing = gap.names
            return out
        except (ValueError, ArithmeticError) as error:
            # Physics would not have it, and the calculator did not foresee it. A reader gets
            # words, never a traceback; `tests/contracts/test_extremes.py` hunts for these.
            out.fault = f"{type(error).__name__}: {error}"
            out.errors = [problem(calculator.reads[0],
                                  f"{calculator.title}: these values cannot all be true together "
                                  f"({error}). Look at the ones you are least sure of.")]
            return out
        out.paper, out.readings = paper, readings
        return out

    def _label(self, name: str) -> str:
        head = name.partition("[")[0].partition(".")[0]
        fact = self.chain.facts.get(head)
        return fact.label if fact is not None else name


@dataclass
class Term:
    """One uncertain thing: what it moves, and what the target came to at both ends."""

    name: str
    label: str
    ends: list[Outcome]
    narrows_to: float
    how: str
    enterable: bool
    key: str = ""


class Study:
    """One job, with what was already worked out for it."""

    def __init__(self, chain: Chain, job: Job) -> None:
        self.chain = chain
        self.job = job
        self.base = Run(chain, job)
        self._ends: dict[str, list[Run]] = {}

    def answer(self, id_: str, *, ranged: bool = True) -> Answer:
        """The answer of one calculator.

        With `ranged` false the number alone, quickly: low and high are the value, and
        what reads fine may still turn stricter.
        """
        calculator = self.chain.modules[id_].calculator
        out = self.base.outcome(id_)
        if out.errors:
            return Answer(calculator, False, errors=out.errors)
        if out.paper is None or out.readings is None:
            return Answer(calculator, None, missing=out.missing)
        paper = out.paper
        terms = self._terms(id_, out) if ranged else []
        values: dict[str, Value] = {}
        for name, value in paper.values.items():
            fact = self.chain.facts[name]
            down, up = _spread_of(terms, value, lambda o, n=name: _value_in(o, n))
            values[name] = Value(value, value - down, value + up, fact.unit, fact.decimals)
        verdicts = [self._judged(v, terms) for v in paper.verdicts]
        for verdict in verdicts:
            for release in self.job.released:
                if (release.calculator, release.verdict) == (id_, verdict.id) \
                        and verdict.level == "hold":
                    verdict.released = {"by": release.by, "trade": release.trade,
                                        "reason": release.reason, "date": release.date}
        answer = Answer(
            calculator, True, values=values, tables=paper.tables, working=paper.working,
            verdicts=verdicts, ranged=ranged,
            assumed=[n for n, origin in out.used.items()
                     if origin == "assumed" and self.job.entry(n) is None],
            entered={n: e.value for n in paper.values
                     if (e := self.job.entry(n)) is not None and not isinstance(e.value, list)},
            sheet=Sheet(out.readings, paper.values, paper.tables, paper.drawn,
                        {n: v.low for n, v in values.items()},
                        {n: v.high for n, v in values.items()}))
        shown = answer.shown()
        if ranged and shown:
            answer.measure_next = self._next(shown[0], paper.values[shown[0]], values[shown[0]],
                                             terms)
            answer.terms = {t.key or t.name: _moves(t, paper.values[shown[0]],
                                                    lambda o: _value_in(o, shown[0]))
                            for t in terms}
        return answer

    # ---- the uncertain things ----

    def _terms(self, id_: str, out: Outcome) -> list[Term]:
        terms: list[Term] = []
        for name, origin in out.used.items():
            fact = self.chain.facts[name]
            entry = self.job.entry(name)
            if entry is not None:
                value: Any = entry.value
            elif fact.assumption is not None:
                value = fact.assumption.value
            else:
                continue
            for key, label, low, high, narrow in _movable(fact, value, origin):
                runs = self._ends.get(key)
                if runs is None:
                    runs = [Run(self.chain, self.job, base=self.base, moved={name: end})
                            for end in (low, high)]
                    self._ends[key] = runs
                ends = [run.outcome(id_) for run in runs]
                terms.append(Term(name, label, ends, narrow, fact.how, True, key))
        for giver in sorted(out.through):
            paper = self.base.outcome(giver).paper
            if paper is None:
                continue
            for name, spread in paper.models.items():
                if giver != id_ and self.job.entry(name) is not None:
                    continue
                value = paper.values[name]
                low, high = spread.ends(value)
                key = f"~{name}"
                runs = self._ends.get(key)
                if runs is None:
                    runs = [Run(self.chain, self.job, base=self.base, shift={name: end - value})
                            for end in (low, high)]
                    self._ends[key] = runs
                terms.append(Term(key, f"the method behind {self.chain.facts[name].label}",
                                  [run.outcome(id_) for run in runs], 1.0, "", False))
        return terms

    def _next(self, name: str, value: float, shown: Value,
              terms: list[Term]) -> MeasureNext | None:
        now = shown.high - shown.low
        best: MeasureNext | None = None
        best_width = 0.95 * now
        for term in terms:
            if not term.enterable or term.narrows_to >= 1:
                continue
            down, up = _moves(term, value, lambda o: _value_in(o, name))
            k = 1 - term.narrows_to**2
            low = math.sqrt(max(0.0, (value - shown.low) ** 2 - down**2 * k))
            high = math.sqrt(max(0.0, (shown.high - value) ** 2 - up**2 * k))
            if low + high < best_width:
                best_width = low + high
                best = MeasureNext(term.name, term.how, name, (shown.low, shown.high),
                                   (value - low, value + high))
        return best

    # ---- doubt ----

    def _judged(self, found: Verdict, terms: list[Term]) -> Verdict:
        """The verdict with doubt taken into account: only ever stricter."""
        out = Verdict(**{**found.__dict__})
        if not terms:
            return out
        if found.value is not None:
            return self._limit_judged(out, terms)
        worst, why = found.level, ""
        for term in terms:
            for end in term.ends:
                other = _verdict_in(end, found.id)
                if other is None:
                    continue
                if LEVELS.index(other.level) > LEVELS.index(worst):
                    worst, why = other.level, term.label
                elif worst == found.level and found.sound and not other.sound and not out.doubt:
                    out.doubt = f"Within the range of {term.label} it would not hold."
        if worst != found.level:
            level: Level = "hold" if worst == "hold" and found.safety else worse("look",
                                                                                 found.level)
            if level != found.level:
                out.level = level
                out.doubt = f"Within the range of {why} it would read {worst}."
        return out

    def _limit_judged(self, out: Verdict, terms: list[Term]) -> Verdict:
        margin = out.margin()
        assert margin is not None
        assert out.value is not None
        down, _ = _spread_of(terms, margin, lambda o: _margin_in(o, out.id))
        below, above = _spread_of(terms, out.value, lambda o: _verdict_value_in(o, out.id))
        out.low, out.high = out.value - below, out.value + above
        unclear = any(end.paper is None for term in terms for end in term.ends)
        if margin >= 0 and (margin - down < 0 or unclear):
            ends = {"low": Quantity(out.low, out.unit, out.decimals),
                    "high": Quantity(out.high, out.unit, out.decimals)}
            out.values = {**out.values, **ends}
            if margin - down >= 0:
                out.doubt = "At an end of the range the readings cannot be true together."
            elif out.safety:
                out.doubt = "Part of the range, {low} to {high}, is beyond a safety limit."
            else:
                out.doubt = "The limit lies inside the range, {low} to {high}."
            level: Level = "hold" if out.safety and margin - down < 0 else "look"
            out.level = worse(worse(out.level, level), out.best)
            out.text, out.do = out.texts[out.level]
        return out


def _movable(fact: Fact, value: Any, origin: str) -> list[tuple[str, str, Any, Any, float]]:
    """What can be moved in one fact: key, label, low end, high end, how far it could narrow."""
    if fact.kind == "number":
        spread = fact.spread_of(origin)
        low, high = _clamped(fact, *spread.ends(value))
        if low == high:
            return []
        return [(fact.name, fact.label, low, high, _narrows(fact, value, origin))]
    if fact.kind != "table" or not isinstance(value, list):
        return []
    out: list[tuple[str, str, Any, Any, float]] = []
    for column in fact.columns:
        if column.kind != "number" or origin not in column.spread:
            continue
        spread = column.spread_of(origin)
        ends: list[list[dict[str, Any]]] = [[], []]
        for row in value:
            cell = row.get(column.name)
            if cell is None:
                for end in ends:
                    end.append(row)
                continue
            for end, moved in zip(ends, _clamped(column, *spread.ends(cell)), strict=True):
                end.append({**row, column.name: moved})
        if ends[0] == ends[1]:
            continue
        rates = [_narrows(column, row[column.name], origin) for row in value
                 if row.get(column.name) is not None]
        out.append((f"{fact.name}.{column.name}", f"{fact.label}: {column.label}", ends[0],
                    ends[1], max(rates)))
    return out


def _clamped(fact: Fact, low: float, high: float) -> tuple[float, float]:
    """The ends, no further than the fact allows: beyond that nothing is true."""
    if fact.low is not None:
        low, high = max(low, fact.low), max(high, fact.low)
    if fact.high is not None:
        low, high = min(low, fact.high), min(high, fact.high)
    return low, high


def _narrows(fact: Fact, value: float, origin: str) -> float:
    """Width after the best reading there is, as a share of the width now."""
    def width(spread: Spread) -> float:
        low, high = spread.ends(value)
        return high - low

    now = width(fact.spread_of(origin))
    better = [width(s) for name, s in fact.spread.items() if name in ("measured", "data sheet")]
    if now <= 0 or not better:
        return 1.0
    return min(1.0, min(better) / now)


def _value_in(out: Outcome, name: str) -> float | None:
    return None if out.paper is None else out.paper.values.get(name)


def _verdict_in(out: Outcome, id_: str) -> Verdict | None:
    if out.paper is None:
        return None
    return next((v for v in out.paper.verdicts if v.id == id_), None)


def _margin_in(out: Outcome, id_: str) -> float | None:
    found = _verdict_in(out, id_)
    return None if found is None else found.margin()


def _verdict_value_in(out: Outcome, id_: str) -> float | None:
    found = _verdict_in(out, id_)
    return None if found is None else found.value


def _moves(term: Term, value: float, read: Any) -> tuple[float, float]:
    """How far down and up one uncertain thing moves a number."""
    down = up = 0.0
    for end in term.ends:
        moved = read(end)
        if moved is not None:
            down, up = max(down, value - moved), max(up, moved - value)
    return down, up


def _spread_of(terms: list[Term], value: float, read: Any) -> tuple[float, float]:
    """Root of the sum of the squares, each side by itself."""
    down = up = 0.0
    for term in terms:
        d, u = _moves(term, value, read)
        down, up = down + d * d, up + u * u
    return math.sqrt(down), math.sqrt(up)
