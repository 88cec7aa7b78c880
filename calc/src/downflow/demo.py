"""Juniper Flat: the invented job that every page shows until the reader opens one.

It is kept in parts, one for each area of the house, in `data/juniper_flat/`. A part has
`about` (why its numbers are plausible), `facts` of the home and the equipment, and
`visits`, the readings of a visit by its id.
"""

from __future__ import annotations

import dataclasses
import functools
import json
import pkgutil
from typing import Any

from downflow.facts.job import Job, job_from

PARTS: tuple[str, ...] = (
    "place", "load", "envelope", "equipment", "kit_circuit", "panel", "water", "energy",
    "outdoors", "air", "hand_over", "flammable", "pressure", "refrigerant", "fresh_air", "vent",
    "controls", "closet", "yearly", "commissioning",)
"""The parts, in the order in which they are put together."""


def part(name: str) -> Any:
    """One part of the demo job, decoded."""
    raw = pkgutil.get_data("downflow", f"data/juniper_flat/{name}.json")
    if raw is None:
        raise ValueError(f"the demo job has no part called {name}")
    return json.loads(raw)


def demo_data() -> dict[str, Any]:
    """The whole job sheet as JSON data.

    Raises:
        ValueError: Two parts give one fact, or a part names a visit that is not there.
    """
    sheet: dict[str, Any] = part("job")
    visits = {v["id"]: v for v in sheet["visits"]}
    for name in PARTS:
        one = part(name)
        _put(sheet["facts"], one.get("facts", {}), name, sheet["visits"][0]["date"])
        for visit, facts in one.get("visits", {}).items():
            if visit not in visits:
                raise ValueError(f"{name}: the demo job has no visit {visit}")
            _put(visits[visit].setdefault("facts", {}), facts, name, visits[visit]["date"])
    return sheet


def _put(target: dict[str, Any], facts: dict[str, Any], part_name: str, date: str) -> None:
    for name, entry in facts.items():
        if name in target:
            raise ValueError(f"{part_name}: {name} stands in two parts of the demo job")
        target[name] = {"at": date, **entry} if isinstance(entry, dict) else entry


@functools.cache
def demo_job() -> Job:
    """The demo job."""
    return job_from(demo_data())


def with_example(job: Job) -> tuple[Job, frozenset[str]]:
    """A job with the example's values where it has none, and the names of those.

    For a page on which a reader has just changed one number: the rest of the worked
    example stays in place, marked as not theirs, and never enters their job sheet.
    """
    demo = demo_job()
    borrowed = {n: e for n in demo.names() - job.names() if (e := demo.entry(n)) is not None}
    return (dataclasses.replace(job, facts={**borrowed, **job.facts}), frozenset(borrowed))
