"""Every limit of every calculator, just inside and just outside.

`thresholds.json` names for each limit a job, an input that moves it, and one value of that input
on either side. The test walks between the two until they are next to each other: inside the
verdict is sound and as good as it may be, outside it says what the limit's own words promise. A
limit that no input can move would stand there with `why`.
"""

from __future__ import annotations

import ast
import functools
import json
from pathlib import Path
from typing import Any

import pytest

from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.engine.chain import Outcome, Run
from downflow.engine.paper import Verdict, worse
from downflow.facts import all_facts
from downflow.facts.job import Entry, Job, job_from
from downflow.plan import the_chain

ROOT = Path(__file__).parents[2]
ROWS: list[dict[str, Any]] = json.loads(
    (Path(__file__).parent / "thresholds.json").read_text(encoding="utf-8"))
STEPS = 26
"""Halvings: the two sides end a part in sixty million of their first distance apart."""


@functools.cache
def job_called(name: str) -> Job:
    if name == "juniper-flat":
        return demo_job()
    return job_from(json.loads(
        (ROOT / "tests" / "jobs" / name / "job.json").read_text(encoding="utf-8")))


def job_of(row: dict[str, Any]) -> Job:
    job = job_called(row["job"])
    for name, value in row.get("set", {}).items():
        job = job.with_entry(name, None if value is None else Entry(value, "measured"))
    return job


def moved(job: Job, move: str, value: float) -> dict[str, Any]:
    """The input at a value; a column of a table is scaled by it."""
    name, _, column = move.partition(".")
    if not column:
        return {name: value}
    entry, fact = job.entry(name), all_facts()[name]
    rows = entry.value if entry is not None else fact.assumption.value
    return {name: [{**r, column: r[column] * value} if r.get(column) is not None else r
                   for r in rows]}


def judged(out: Outcome, id_: str) -> Verdict:
    assert out.paper is not None, (out.errors, out.missing)
    return next(v for v in out.paper.verdicts if v.id == id_ and v.value is not None)


def limits_in_source() -> set[tuple[str, str]]:
    found = set()
    for id_ in all_calculators():
        source = ROOT / "calc/src/downflow/calculators" / f"{id_.replace('-', '_')}.py"
        for node in ast.walk(ast.parse(source.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) \
                    and node.func.attr == "limit" and isinstance(node.func.value, ast.Name) \
                    and node.func.value.id == "paper" and isinstance(node.args[0], ast.Constant):
                found.add((id_, str(node.args[0].value)))
    return found


def test_every_limit_is_tried():
    tried = {(r["calculator"], r["verdict"]) for r in ROWS}
    run = Run(the_chain(), demo_job())
    seen = {(id_, v.id) for id_ in the_chain().order
            if (paper := run.outcome(id_).paper) is not None
            for v in paper.verdicts if v.value is not None}
    assert len(ROWS) == len(tried)
    assert limits_in_source() | seen <= tried
    for row in ROWS:
        assert "move" in row or len(row["why"]) > 20


@pytest.mark.parametrize("row", [r for r in ROWS if "move" in r],
                         ids=lambda r: f"{r['calculator']}-{r['verdict']}")
def test_it_turns_at_its_limit(row):
    job = job_of(row)
    base = Run(the_chain(), job)

    def at(value: float) -> Verdict:
        run = Run(the_chain(), job, base=base, moved=moved(job, row["move"], value))
        return judged(run.outcome(row["calculator"]), row["verdict"])

    inside, outside = row["inside"], row["outside"]
    assert at(inside).margin() >= 0 > at(outside).margin()
    for _ in range(STEPS):
        middle = (inside + outside) / 2
        if at(middle).margin() >= 0:
            inside = middle
        else:
            outside = middle
    good, bad = at(inside), at(outside)
    assert good.sound
    assert good.level == worse("fine", good.best)
    assert good.text == good.texts["fine"][0]
    assert not bad.sound
    assert bad.level == worse(bad.beyond, bad.best) != "fine"
    assert bad.text == bad.texts[bad.level][0]
    assert bad.text
    assert bad.do
