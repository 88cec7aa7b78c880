"""Every calculator, and what one is written with.

A module here asks one question. It holds `CALCULATOR`, `solve(job, paper)` and, where a
picture helps, `figure(sheet)`. It imports physics, sources, units and the drawing kit,
never another calculator: what it needs from one it reads as a fact.
"""

from __future__ import annotations

import functools
import importlib
import pkgutil
from types import MappingProxyType

from downflow.engine.calculator import Calculator, Module, Sheet
from downflow.engine.paper import Paper, Readings
from downflow.units import Quantity

__all__ = ["Calculator", "Module", "Paper", "Quantity", "Readings", "Sheet", "all_calculators"]


@functools.cache
def all_calculators() -> MappingProxyType[str, Module]:
    """Every calculator by id, in the order of the modules' names.

    Raises:
        ValueError: Two share an id, or an id does not match its module's name.
    """
    found: dict[str, Module] = {}
    for name in sorted(m.name for m in pkgutil.iter_modules(__path__)):
        module = importlib.import_module(f"{__name__}.{name}")
        calculator: Calculator = module.CALCULATOR
        if calculator.id != name.replace("_", "-"):
            raise ValueError(f"{name} holds the calculator {calculator.id}")
        found[calculator.id] = Module(calculator, module.solve, getattr(module, "figure", None),
                                      module.__doc__ or "")
    return MappingProxyType(found)
