"""Helpers for tests: the demo with some facts changed."""

from __future__ import annotations

from typing import Any

from downflow.demo import demo_job
from downflow.engine.answer import Answer
from downflow.engine.paper import Verdict
from downflow.facts import all_facts
from downflow.facts.job import Entry, Job
from downflow.plan import the_chain


def changed(**facts: Any) -> Job:
    """The demo job with some facts set.

    A bare value counts as `measured`; a pair is value and origin; `None` takes it away.
    """
    job = demo_job()
    for name, value in facts.items():
        if name not in all_facts():
            raise ValueError(f"no fact is called {name}")
        if value is None:
            job = job.with_entry(name, None)
        elif isinstance(value, tuple):
            job = job.with_entry(name, Entry(value[0], value[1]))
        else:
            job = job.with_entry(name, Entry(value, "measured"))
    return job


def solve_demo(id_: str, *, ranged: bool = True, **facts: Any) -> Answer:
    """The answer of a calculator for the demo job with some facts changed."""
    return the_chain().solve(id_, changed(**facts), ranged=ranged)


def verdict_of(answer: Answer, id_: str) -> Verdict:
    """The verdict called `id_`; `LookupError` with the known ones if there is none."""
    for verdict in answer.verdicts:
        if verdict.id == id_:
            return verdict
    raise LookupError(f"no verdict {id_} among {[v.id for v in answer.verdicts]}")
