"""Jobs that differ from the demo in many facts at once, the same ones on every run."""

from __future__ import annotations

import random

from downflow.demo import demo_job
from downflow.facts import all_facts
from downflow.facts.job import Entry, Job, write_job

ORIGINS = ("measured", "data sheet", "estimated")
DROPPED = 0.05
STRETCH = (0.93, 1.07)


def _changed(entry: Entry, name: str, chance: random.Random) -> Entry:
    fact = all_facts()[name]
    value = entry.value
    if fact.kind == "number" and isinstance(value, (int, float)):
        value = round(value * chance.uniform(*STRETCH), max(fact.decimals, 1) + 2)
        low = fact.low if fact.low is not None else value
        high = fact.high if fact.high is not None else value
        value = min(max(value, low), high)
    elif fact.kind == "yesno":
        value = chance.random() < 0.5
    elif fact.kind == "choice" and fact.choices:
        value = chance.choice([choice.value for choice in fact.choices])
    return Entry(value, chance.choice(ORIGINS), entry.at, entry.note)


def seeded_job(seed: int) -> Job:
    """A job from a seed: numbers stretched, choices drawn, a few facts missing."""
    chance = random.Random(seed)
    job = demo_job()
    for name in sorted(job.facts):
        if chance.random() < DROPPED:
            job = job.with_entry(name, None)
        else:
            job = job.with_entry(name, _changed(job.facts[name], name, chance))
    return job


def seeded_text(seed: int) -> str:
    """The same as the text of a job file."""
    return write_job(seeded_job(seed))
