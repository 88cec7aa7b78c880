"""Whether a value may stand for a fact. Nothing is guessed, clamped or dropped."""

from __future__ import annotations

import datetime
import math
from typing import Any

from downflow import units
from downflow.facts.definition import Fact


class BadInput(Exception):
    """Input that cannot be used, with every reason at once.

    Attributes:
        errors: `{"field": name, "message": sentence}` for each bad field.
    """

    def __init__(self, errors: list[dict[str, str]]) -> None:
        super().__init__("; ".join(f"{e['field']}: {e['message']}" for e in errors))
        self.errors = errors


def problem(field: str, message: str) -> dict[str, str]:
    """One entry of the list of errors."""
    return {"field": field, "message": message}


def range_text(fact: Fact, system: str = "ip") -> str:
    """The allowed range in words, such as `40 to 200 °F`."""
    to = units.shown_unit(fact.unit, system)
    label = units.unit(to).label

    def end(value: float) -> str:
        shown = units.convert(value, fact.unit, to)
        decimals = units.shown_decimals(fact.decimals, fact.unit, to)
        return units.typed_text(round(shown, decimals + 1), decimals)

    low, high = fact.low, fact.high
    tail = f"\u00a0{label}" if label else ""
    if low is not None and high is not None:
        return f"{end(low)} to {end(high)}{tail}"
    if low is not None:
        return f"{end(low)}{tail} or more"
    if high is not None:
        return f"{end(high)}{tail} or less"
    return "any number"


def check(fact: Fact, value: Any, field: str, unit: str | None = None,
          system: str = "ip") -> tuple[Any, list[dict[str, str]]]:
    """Checks `value` for `fact`.

    Args:
        fact: The definition.
        value: What was given. JSON types; a table is a list of rows.
        field: Name for the messages, such as `fan_table[2].airflow_cfm`.
        unit: The unit it was given in, where it is not the fact's own.
        system: Units for the messages: `ip` or `si`.

    Returns:
        The value in the fact's own unit, and the problems. Where there are problems
        the value means nothing.
    """
    if fact.kind == "number":
        return _number(fact, value, field, unit, system)
    if unit not in (None, "", fact.unit):
        return None, [problem(field, f"{fact.label}: it has no unit, so {unit!r} is not "
                                     "understood.")]
    if fact.kind == "choice":
        allowed = [c.value for c in fact.choices]
        if isinstance(value, str) and value in allowed:
            return value, []
        return None, [problem(field, f"{fact.label}: one of {', '.join(allowed)}. "
                                     f"You gave {_shown(value)}.")]
    if fact.kind == "yesno":
        if isinstance(value, bool):
            return value, []
        return None, [problem(field, f"{fact.label}: yes or no (true or false). "
                                     f"You gave {_shown(value)}.")]
    if fact.kind == "date":
        return _date(fact, value, field)
    if fact.kind == "text":
        if isinstance(value, str) and value.strip() and len(value) <= 400:
            return value, []
        return None, [problem(field, f"{fact.label}: text of 1 to 400 characters.")]
    return _table(fact, value, field, system)


def _shown(value: Any) -> str:
    text = str(value) if isinstance(value, (int, float, str, bool)) else "something else"
    return text if len(text) <= 60 else text[:57] + "..."


def _number(fact: Fact, value: Any, field: str, unit: str | None,
            system: str) -> tuple[Any, list[dict[str, str]]]:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return None, [problem(field, f"{fact.label}: a number, {range_text(fact, system)}. "
                                     f"You gave {_shown(value)}.")]
    try:
        number = float(value)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        return None, [problem(field, f"{fact.label}: a number, {range_text(fact, system)}. "
                                     f"You gave {_shown(value)}.")]
    if unit not in (None, fact.unit):
        if unit not in units.UNITS or units.unit(unit).kind != units.unit(fact.unit).kind:
            fits = ", ".join(u for u in units.units_of_kind(fact.unit) if u) or "no unit"
            return None, [problem(field, f"{fact.label}: a {units.unit(fact.unit).kind}, "
                                         f"in {fits}. You gave {_shown(unit)}.")]
        number = units.convert(number, unit, fact.unit)
    # A limit typed in the other system may come back a rounding error beyond itself.
    slack = 1e-9 * max(1.0, abs(number))
    if (fact.low is not None and number < fact.low - slack) or (
            fact.high is not None and number > fact.high + slack):
        typed = units.typed_text(float(value), fact.decimals)
        return None, [problem(field, f"{fact.label}: {range_text(fact, system)}. "
                                     f"You gave {typed}"
                                     f"{' ' + unit if unit not in (None, fact.unit) else ''}.")]
    return number, []


def _date(fact: Fact, value: Any, field: str) -> tuple[Any, list[dict[str, str]]]:
    if isinstance(value, str) and len(value) == 10:
        try:
            datetime.date.fromisoformat(value)
        except ValueError:
            pass
        else:
            return value, []
    return None, [problem(field, f"{fact.label}: a date such as 2026-03-31. "
                                 f"You gave {_shown(value)}.")]


def _table(fact: Fact, value: Any, field: str, system: str) -> tuple[Any, list[dict[str, str]]]:
    if not isinstance(value, list):
        return None, [problem(field, f"{fact.label}: rows, as a list.")]
    problems: list[dict[str, str]] = []
    if not fact.rows.least <= len(value) <= fact.rows.most:
        problems.append(problem(field, f"{fact.label}: {fact.rows.least} to {fact.rows.most} rows. "
                                       f"You gave {len(value)}."))
    rows: list[dict[str, Any]] = []
    names = [c.name for c in fact.columns]
    for index, row in enumerate(value[: fact.rows.most]):
        at = f"{field}[{index}]"
        if not isinstance(row, dict):
            problems.append(problem(at, f"{fact.label}: a row with {', '.join(names)}."))
            continue
        checked: dict[str, Any] = {}
        for name in row:
            if name not in names:
                problems.append(problem(f"{at}.{name}",
                                        f"{fact.label} has no column {_shown(name)}: "
                                        f"{', '.join(names)}."))
        for column in fact.columns:
            cell = row.get(column.name)
            if cell is None:
                if not column.optional:
                    problems.append(problem(f"{at}.{column.name}",
                                            f"{column.label} is missing in row {index + 1}."))
                continue
            unit = None
            if isinstance(cell, dict):
                unit, cell = cell.get("unit"), cell.get("value")
            good, bad = check(column, cell, f"{at}.{column.name}", unit, system)
            problems += bad
            if not bad:
                checked[column.name] = good
        rows.append(checked)
    if not problems:
        problems += _between_rows(fact, rows, field)
    return rows, problems


def _between_rows(fact: Fact, rows: list[dict[str, Any]], field: str) -> list[dict[str, str]]:
    problems: list[dict[str, str]] = []
    rising, unique = fact.rows.rising, fact.rows.unique
    for index in range(1, len(rows)):
        if rising and not rows[index][rising] > rows[index - 1][rising]:
            column = fact.column(rising)
            label = column.label if column else rising
            problems.append(problem(f"{field}[{index}].{rising}",
                                    f"{label} must rise from row to row."))
        if unique and rows[index].get(unique) in [r.get(unique) for r in rows[:index]]:
            problems.append(problem(f"{field}[{index}].{unique}",
                                    f"{rows[index].get(unique)} stands in two rows."))
    return problems
