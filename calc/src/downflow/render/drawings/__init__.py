"""The handbook's own drawings, each by its name: `drawing_html("condensate-trap")`.

One function a drawing, without arguments, that returns the finished figure. A module
lists its drawings in `DRAWINGS`; a new module gets its name in `MODULES`.
"""

from __future__ import annotations

import functools
import importlib
from collections.abc import Callable

from downflow.markup import Markup

MODULES = ("survey", "out", "fit", "air", "water", "tight", "outside", "lines", "power", "finish",
           "owner", "trouble")
"""Modules of this package that hold drawings."""


@functools.lru_cache(maxsize=1)
def drawings() -> dict[str, Callable[[], Markup]]:
    """Every drawing by its name."""
    found: dict[str, Callable[[], Markup]] = {}
    for module in MODULES:
        for name, make in importlib.import_module(f"{__name__}.{module}").DRAWINGS.items():
            if name in found:
                raise ValueError(f"two drawings are called {name}")
            found[name] = make
    return found


def drawing_html(name: str) -> Markup:
    """The figure called `name`; `ValueError` with all names if there is none."""
    make = drawings().get(name)
    if make is None:
        raise ValueError(f"no drawing is called {name!r}; there are "
                         + ", ".join(sorted(drawings())))
    return make()
