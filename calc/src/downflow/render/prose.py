"""Numbers with units inside prose, in both systems at once."""

from __future__ import annotations

from downflow.facts import fact
from downflow.facts.job import Entry
from downflow.markup import Markup, tag
from downflow.render.values import entered_text
from downflow.units import (
    UNITS,
    convert,
    number_text,
    parse_number,
    shown_decimals,
    shown_unit,
    unit,
)


def quantity_html(value_text: str, of: str) -> Markup:
    """A written number with its unit, and the same in SI behind it.

    Args:
        value_text: As written, such as `6200`, `0.5`, or `25..35` for a span.
        of: Name of a unit.

    Raises:
        ValueError: No number, or no such unit.
    """
    if of not in UNITS:
        raise ValueError(f"no unit is called {of!r}")
    written = value_text.split("..")
    if len(written) > 2:
        raise ValueError(f"{value_text!r} is neither a number nor a span such as 25..35")
    numbers = [parse_number(text) for text in written]
    decimals = max(len(text.partition(".")[2].strip()) for text in written)
    shown = {system: _text(numbers, of, shown_unit(of, system), decimals)
             for system in ("ip", "si")}
    if shown["ip"] == shown["si"]:
        return tag("span", shown["ip"], class_="df-num")
    return tag("span", f"{shown['ip']} ({shown['si']})", class_="df-q", data_ip=shown["ip"],
               data_si=shown["si"])


def _text(numbers: list[float], of: str, to: str, decimals: int) -> str:
    places = shown_decimals(decimals, of, to)
    said = " to ".join(number_text(convert(n, of, to), places) for n in numbers)
    label = unit(to).label
    if of.startswith("$"):
        rest = label[1:].strip()
        return "$" + said.replace(" to ", " to $") + (f"\u00a0{rest}" if rest else "")
    return f"{said}\u00a0{label}" if label else said


def entry_text(name: str, entry: Entry, system: str) -> str:
    """An entered value in words, with where it comes from."""
    return f"{entered_text(fact(name), entry.value, system)}, {entry.origin}"
