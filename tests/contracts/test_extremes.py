"""Facts anywhere in their allowed ranges: an answer, or a refusal that was foreseen."""

import json
import random

import pytest

from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.engine.answer import answer_data
from downflow.engine.chain import Study
from downflow.facts import all_facts
from downflow.facts.job import Entry
from downflow.plan import the_chain

TRIES = 15


def anywhere(rng, fact, value):
    """A value at, near or between the ends that the fact allows."""
    if fact.kind == "number" and fact.low is not None and fact.high is not None:
        kind = rng.random()
        if kind < 0.2:
            return float(rng.choice([fact.low, fact.high]))
        if kind < 0.5 and isinstance(value, (int, float)):
            moved = value * rng.choice([0.3, 0.6, 1.5, 3.0])
            return float(min(max(moved, fact.low), fact.high))
        return rng.uniform(fact.low, fact.high)
    if fact.kind == "choice":
        return rng.choice(fact.choices).value
    if fact.kind == "yesno":
        return rng.random() < 0.5
    if fact.kind == "table" and isinstance(value, list):
        rows = [dict(r) for r in value]
        for row in rows:
            for column in fact.columns:
                if column.name in row and column.name != fact.rows.rising \
                        and column.name != fact.rows.unique and rng.random() < 0.3:
                    row[column.name] = anywhere(rng, column, row[column.name])
                elif column.optional and column.name in row and rng.random() < 0.2:
                    del row[column.name]
        return rows
    return value


@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_no_allowed_facts_break_a_calculator(id_):
    rng = random.Random(f"extremes {id_}")
    chain = the_chain()
    names = list(chain.asks(id_))
    demo = demo_job()
    for _ in range(TRIES):
        job = demo
        changed = {}
        for name in names:
            fact, entry = all_facts()[name], demo.entry(name)
            if fact.given and not fact.enterable:
                continue
            if rng.random() < 0.5 or (entry is None and fact.kind == "table"):
                continue
            value = anywhere(rng, fact, entry.value if entry else None)
            if value is None:
                continue
            changed[name] = value
            job = job.with_entry(name, Entry(value, "estimated"))
        study = Study(chain, job)
        out = study.base.outcome(id_)
        if id_ in out.through or out.errors:
            assert not out.fault, f"{out.fault}\nfrom {json.dumps(changed)[:1500]}"
        answer = study.answer(id_, ranged=rng.random() < 0.1)
        json.dumps(answer_data(answer), allow_nan=False)
