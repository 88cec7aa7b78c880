"""Every fact, gathered from the modules of this package.

A module here holds the facts of one area in a tuple called `FACTS`.
"""

from __future__ import annotations

import functools
import importlib
import pkgutil
from types import MappingProxyType

from downflow.facts.definition import (
    EXACT,
    FROMS,
    WHERE,
    Assumption,
    Choice,
    Fact,
    Hazard,
    Rows,
    Spread,
    given,
    share,
    within,
)

__all__ = ["EXACT", "FROMS", "WHERE", "Assumption", "Choice", "Fact", "Hazard", "Rows", "Spread",
           "all_facts", "fact", "given", "nearest_name", "share", "within"]


@functools.cache
def all_facts() -> MappingProxyType[str, Fact]:
    """Every fact by name.

    Raises:
        ValueError: Two modules define one name.
    """
    found: dict[str, Fact] = {}
    for module_name in sorted(m.name for m in pkgutil.iter_modules(__path__)):
        module = importlib.import_module(f"{__name__}.{module_name}")
        for one in getattr(module, "FACTS", ()):
            if one.name in found:
                raise ValueError(f"the fact {one.name} is defined twice")
            found[one.name] = one
    return MappingProxyType(found)


def fact(name: str) -> Fact:
    """The fact called `name`; `ValueError` where there is none."""
    found = all_facts().get(name)
    if found is None:
        raise ValueError(f"no fact is called {name!r}")
    return found


def nearest_name(name: str, names: list[str]) -> str | None:
    """The one of `names` that `name` was most likely meant to be, if any is near."""
    best, best_distance = None, 1 + max(2, len(name) // 3)
    for candidate in names:
        if abs(len(candidate) - len(name)) >= best_distance:
            continue
        distance = _edits(name, candidate)
        if distance < best_distance:
            best, best_distance = candidate, distance
    return best


def _edits(a: str, b: str) -> int:
    """Fewest single letters to add, drop or change that make `a` into `b`."""
    row = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        last, row[0] = row[0], i
        for j, y in enumerate(b, 1):
            last, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, last + (x != y))
    return row[-1]
