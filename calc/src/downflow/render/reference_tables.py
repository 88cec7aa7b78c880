"""Published tables as they stand in a page, each with its source.

Another module adds its own by name: `register("name", make)`, where `make` gives the
title, the column heads, the rows and the source line. A file of `downflow/data/` needs no
registering: its header says what it is.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from importlib.resources import files

from downflow import tables
from downflow.markup import Markup, tag

Cell = str | float | int | None


@dataclass(frozen=True)
class Reference:
    """A table for reading.

    Attributes:
        title: What it is.
        heads: Column heads, with their units.
        rows: The cells; numbers are set to the right.
        source: Document and section.
        note: How far it holds.
    """

    title: str
    heads: Sequence[str]
    rows: Sequence[Sequence[Cell]]
    source: str
    note: str = ""


_MAKERS: dict[str, Callable[[], Reference]] = {}


def _with_own() -> dict[str, Callable[[], Reference]]:
    """The tables by name, those worked out by the calculators' code among them."""
    importlib.import_module("downflow.render.code_tables")
    return _MAKERS


def register(name: str, make: Callable[[], Reference]) -> None:
    """Adds a table by name.

    Raises:
        ValueError: The name is taken.
    """
    if name in _MAKERS:
        raise ValueError(f"a table is already called {name}")
    _MAKERS[name] = make


def table_names() -> list[str]:
    """Every table there is."""
    here = files("downflow").joinpath("data").iterdir()
    return sorted({*_with_own(), *(f.name[:-4] for f in here if f.name.endswith(".csv"))})


UNIT_ENDINGS: tuple[tuple[str, str], ...] = (
    ("_btuh_ft2_f", "Btu/h per ft² °F"), ("_btuh_ft2", "Btu/h per ft²"),
    ("_btu_per_gal", "Btu/gal"), ("_cfm_ft2", "cfm per ft²"), ("_cfm", "cfm"), ("_btuh", "Btu/h"),
    ("_psia", "psia"), ("_psig", "psig"), ("_lb_ft3", "lb/ft³"), ("_in", "in"), ("_ft", "ft"),
    ("_ft2", "ft²"), ("_pct", "%"), ("_f", "°F"), ("_c", "°C"), ("_a", "A"), ("_v", "V"),
    ("_w", "W"), ("_kw", "kW"), ("_h", "h"))
"""Endings of column names that are units, the longest first."""


def column_head(name: str) -> str:
    """The head of a column, from its name: words, then the unit."""
    for ending, unit in UNIT_ENDINGS:
        if name.endswith(ending) and len(name) > len(ending):
            return f"{name[:-len(ending)].replace('_', ' ')}, {unit}"
    return name.replace("_", " ")


def _from_file(name: str) -> Reference:
    rows = tables.read(name)
    said = tables.source(name)
    title, _, source = said.partition("Source:")
    heads = list(rows[0]) if rows else []
    return Reference(title.strip().rstrip("."), [column_head(h) for h in heads],
                     [[_cell(row[h]) for h in heads] for row in rows],
                     (source.strip() or said).rstrip("."))


def _cell(text: str) -> Cell:
    if not text:
        return None
    try:
        number = float(text)
    except ValueError:
        return text
    return number if "." in text or "e" in text.lower() else int(number)


def table_html(name: str) -> Markup:
    """A table by name.

    Raises:
        ValueError: No table has this name.
    """
    make = _with_own().get(name)
    if make is not None:
        return reference_html(make())
    if name not in table_names():
        raise ValueError(f"no table is called {name}; there are {', '.join(table_names())}")
    return reference_html(_from_file(name))


def reference_html(found: Reference) -> Markup:
    """A table with its caption and its source."""
    numeric = [all(isinstance(row[i], (int, float)) or row[i] is None for row in found.rows)
               for i in range(len(found.heads))]
    heads = [tag("th", words, scope="col", class_="n" if numeric[i] else None)
             for i, words in enumerate(found.heads)]
    body = [tag("tr", [tag("td", _text(cell), class_="n" if numeric[i] else None)
                       for i, cell in enumerate(row)]) for row in found.rows]
    return Markup(
        tag("div", tag("table", tag("caption", found.title), tag("thead", tag("tr", heads)),
                       tag("tbody", body), class_="df-table"), class_="df-scroll", tabindex="0",
            role="group", aria_label=found.title)
        + tag("p", f"{found.source}." + (f" {found.note}" if found.note else ""),
              class_="df-small"))


def _text(cell: Cell) -> str:
    if cell is None:
        return "–"
    if isinstance(cell, float):
        shown = f"{cell:,.10g}"
        return shown.replace("-", "−")
    if isinstance(cell, int):
        return f"{cell:,}".replace("-", "−")
    return cell
