"""Values as a reader sees them: numbers in the reader's units, choices in words."""

from __future__ import annotations

from typing import Any

from downflow.facts import Fact, all_facts
from downflow.markup import Markup, tag
from downflow.render.marks import from_class
from downflow.units import (
    Quantity,
    convert,
    digits_text,
    number_text,
    shown_decimals,
    shown_unit,
    typed_text,
    unit,
)


def unit_label(name: str, system: str) -> str:
    """The unit of a fact as it is written beside its field."""
    return unit(shown_unit(name, system)).label


def typed(fact: Fact, value: Any, system: str) -> str:
    """A value as it stands in a field: a number comes back as it was typed."""
    if value is None:
        return ""
    if fact.kind == "number":
        to = shown_unit(fact.unit, system)
        return typed_text(convert(float(value), fact.unit, to),
                          shown_decimals(fact.decimals, fact.unit, to))
    if fact.kind == "yesno":
        return "yes" if value else "no"
    return str(value)


def entered_text(fact: Fact, value: Any, system: str) -> str:
    """An entered value in words and numbers: as typed, with its unit."""
    if fact.kind == "number":
        label = unit_label(fact.unit, system)
        text = typed(fact, value, system)
        if fact.unit.startswith("$"):
            rest = label[1:].strip()
            return f"${text}" + (f"\u00a0{rest}" if rest else "")
        return f"{text}\u00a0{label}" if label else text
    if fact.kind == "choice":
        return next((c.label for c in fact.choices if c.value == value), str(value))
    if fact.kind == "yesno":
        return "yes" if value else "no"
    if fact.kind == "table":
        return "1 row" if len(value) == 1 else f"{len(value)} rows"
    return str(value)


def quantity(value: float, of: str, decimals: int | None, system: str) -> str:
    """A worked-out number with its unit."""
    return Quantity(value, of, decimals).text(system)


def value_html(fact: Fact, value: Any, origin: str, system: str) -> Markup:
    """An entered value with the line that says where it comes from."""
    return tag("span", entered_text(fact, value, system),
               class_=f"df-value {from_class(origin)}".strip())


def field_label(name: str) -> str:
    """The label of a fact, of a column (`table.column`) or of a method (`~fact`)."""
    if name.startswith("~"):
        return f"the method behind {field_label(name[1:])}"
    head, _, column = name.partition(".")
    head = head.partition("[")[0]
    fact = all_facts().get(head)
    if fact is None:
        return name
    inner = fact.column(column) if column else None
    return f"{fact.label}: {inner.label}" if inner is not None else fact.label


def table_html(fact: Fact, rows: list[dict[str, Any]], system: str, *,
               caption: bool = True) -> Markup:
    """A table of a fact, worked out or entered, for reading.

    A table whose rows have units of their own has a column `unit`, and may have a column
    `decimals`: its plain numbers are shown by them.
    """
    columns = [c for c in fact.columns if c.name not in ("id", "decimals")]
    own_units = fact.column("unit") is not None
    head = [tag("th", _column_head(c, system), scope="col",
                class_="n" if c.kind == "number" else None) for c in columns]
    body = [tag("tr", [_own_cell(c, row, system) if own_units else
                       _cell(c, row.get(c.name), system) for c in columns]) for row in rows]
    return tag("div", tag("table", tag("caption", fact.label) if caption else None,
                          tag("thead", tag("tr", head)), tag("tbody", body),
                          class_="df-table"), class_="df-scroll", tabindex="0", role="group",
               aria_label=fact.label)


def _column_head(column: Fact, system: str) -> str:
    label = unit_label(column.unit, system) if column.kind == "number" else ""
    return f"{column.label}, {label}" if label else column.label


def _own_cell(column: Fact, row: dict[str, Any], system: str) -> Markup:
    """A cell of a row that has its own unit."""
    value, of = row.get(column.name), str(row.get("unit", ""))
    if column.name == "unit":
        return tag("td", unit_label(of, system) if of else "–")
    if value is None or column.kind != "number" or column.unit:
        return _cell(column, value, system)
    to, decimals = shown_unit(of, system), row.get("decimals")
    if decimals is None:
        return tag("td", digits_text(convert(float(value), of, to)), class_="n")
    # A doubt is smaller than what it belongs to: it may need a digit more.
    more = 1 if column.name == "doubt" else 0
    of, to = (f"{of} diff", f"{to} diff") if more and of == "°F" else (of, to)
    return tag("td", number_text(convert(float(value), of, to),
                                 shown_decimals(int(decimals) + more, of, to)), class_="n")


def _cell(column: Fact, value: Any, system: str) -> Markup:
    if value is None:
        return tag("td", "–", class_="n" if column.kind == "number" else None)
    if column.kind == "number":
        to = shown_unit(column.unit, system)
        shown = number_text(convert(float(value), column.unit, to),
                            shown_decimals(column.decimals, column.unit, to))
        return tag("td", shown, class_="n")
    return tag("td", entered_text(column, value, system))
