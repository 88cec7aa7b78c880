"""The skills of the learning path, in the order of understanding."""

from __future__ import annotations

from typing import NamedTuple


class Skill(NamedTuple):
    """One skill: its lesson has its id, `by_hand` is what a supervisor wants to see done."""

    id: str
    title: str
    screen: str
    by_hand: tuple[str, ...]


SKILLS: tuple[Skill, ...] = (
    Skill("air", "Air and static", "finds what holds the air back, in practice homes and drills",
          ("reads static before and after a cabinet", "reads airflow by heat rise and by the fan "
           "table", "finds a crossover from inside a trunk")),
    Skill("heat", "Heat and load", "sizes by the load that two roads agree on",
          ("surveys a shell and a belly", "reads a furnace's plate and clocks a meter")),
    Skill("cold", "How a heat pump heats in the cold", "knows balance point, backup and lockout",
          ("sets lockouts on a thermostat", "shows that the kit stays off above its lockout")),
    Skill("electricity", "Electricity for the kit", "sums a service; reads a label's circuit",
          ("locks out every supply and proves it dead", "reads circuit ampacity and largest "
           "breaker on a label")),
    Skill("water", "Water", "finds a trap that cannot hold, and where meltwater goes",
          ("builds, fills and proves a trap", "trips a float switch and sees everything stop")),
    Skill("refrigerant", "Refrigerant and safety", "tells air faults from charge faults",
          ("shows certificate and detector before hoses go on", "zeroes a gauge and reads "
           "superheat and subcooling")),
    Skill("safety", "Safety holds", "takes no reading before its safety step; stops where one must",
          ("says when to leave a home", "keeps a hold against pressure")),
    Skill("homeowner", "Talking to the homeowner", "answers what owners ask, with their numbers",
          ("explains long running and mild air", "hands over filter, breakers and shut-offs")),
)
"""Every skill. The seven lessons teach all of them; safety runs through each."""

_BY_ID = {s.id: s for s in SKILLS}


def skill(id_: str) -> Skill:
    """The skill called `id_`; `ValueError` where there is none."""
    found = _BY_ID.get(id_)
    if found is None:
        raise ValueError(f"no skill is called {id_!r}; there are {', '.join(_BY_ID)}")
    return found
