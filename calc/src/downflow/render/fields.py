"""The form of a fact: one ruled box with sign, number, unit and where it comes from.

Names of the inputs are the names of the facts; a cell of a table is
`table[row].column`. Where a value comes from is `name.from`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from downflow.facts import FROMS, Fact
from downflow.facts.job import Entry
from downflow.markup import Markup, tag, together
from downflow.render.marks import caution, from_class
from downflow.render.values import entered_text, table_html, typed, unit_label

BOXES = 5
"""A choice of at most so many stands as ruled boxes."""
MOST_ABREAST = 26
"""Letters that fit into boxes side by side; with more they stand one below the other."""


@dataclass(frozen=True)
class Known:
    """What stands for a fact on this page.

    Attributes:
        entry: The entered value, if any.
        example: Whether that value is the worked example's, not the reader's own.
        worked_out: Whether a calculator gives it when nothing is entered.
        earlier: Values of earlier visits: date and text.
    """

    entry: Entry | None
    example: bool = False
    worked_out: bool = False
    earlier: Sequence[tuple[str, str]] = ()


def form_html(prefix: str, facts: Sequence[Fact], known: Mapping[str, Known],
              system: str) -> Markup:
    """Fields in order, each hazard once before the fields that it guards."""
    parts: list[Markup] = []
    last = None
    for fact in facts:
        if fact.hazard is not None and fact.hazard != last:
            parts.append(caution(fact.hazard.level, fact.hazard.text, fact.hazard.who))
        last = fact.hazard
        parts.append(field_html(prefix, fact, known[fact.name], system))
    return together(parts)


def field_html(prefix: str, fact: Fact, known: Known, system: str) -> Markup:
    """The field of one fact."""
    id_ = f"{prefix}-{fact.name}"
    entry, assumed = known.entry, False
    if entry is None and fact.assumption is not None and not known.worked_out:
        entry, assumed = Entry(fact.assumption.value, "assumed"), True
    if fact.kind == "table" and known.example and entry is not None:
        body = _example_table(id_, fact, entry, system)
    elif fact.kind == "table":
        body = _table(id_, fact, entry, system)
    elif fact.kind == "yesno" or (fact.kind == "choice" and len(fact.choices) <= BOXES):
        body = _boxes(id_, fact, entry, assumed)
    else:
        body = _line(id_, fact, entry, assumed, system)
    grouped = fact.kind in ("table", "yesno") or (fact.kind == "choice"
                                                  and len(fact.choices) <= BOXES)
    name = (tag("legend", fact.label) if grouped else
            tag("label", fact.label, for_=id_))
    return tag("fieldset" if grouped else "div", name, body,
               tag("p", class_="df-error", id=f"{id_}-e", hidden=True),
               _help(id_, fact, known, assumed, system),
               class_="df-fact df-fact--example" if known.example else "df-fact",
               data_fact=fact.name, data_kind=fact.kind,
               data_example=known.example or None)


def _help(id_: str, fact: Fact, known: Known, assumed: bool, system: str) -> Markup:
    said: list[Markup] = []
    if known.example:
        said.append(tag("b", "Juniper Flat’s value, not yours. "))
    if assumed and fact.assumption is not None:
        said.append(tag("b", f"Assumed {entered_text(fact, fact.assumption.value, system)}: "
                             f"{fact.assumption.why}. "))
        said.append(together("Enter what you know. "))
    if known.worked_out and known.entry is None:
        said.append(together("Leave it empty and it is worked out from the rest. "))
    said.append(together(fact.how))
    if known.entry is not None and known.entry.note and not known.example:
        said.append(together(" ", tag("span", f"Note: {known.entry.note}", class_="df-note")))
    earlier = [tag("p", f"{date}: {text}", class_="df-help") for date, text in known.earlier]
    return together(tag("p", said, class_="df-help", id=f"{id_}-h"), earlier)


def _from_select(fact: Fact, entry: Entry | None, assumed: bool) -> Markup:
    origin = entry.origin if entry is not None else ""
    options: list[Markup] = []
    if entry is None:
        options.append(tag("option", "where from", value="", selected=True))
    for word in FROMS:
        if word != "assumed" or fact.assumption is not None or origin == "assumed":
            options.append(tag("option", word, selected=word == origin))
    return tag("select", options, name=f"{fact.name}.from", aria_label=f"{fact.label}: where from",
               data_assumed=assumed or None)


def _line_class(entry: Entry | None) -> str:
    return f"df-fact__line {from_class(entry.origin) if entry else ''}".strip()


def _input(id_: str, fact: Fact, name: str, text: str, system: str, *, css: str = "",
           label: str = "", described: str = "") -> Markup:
    common: dict[str, Any] = {
        "id": id_, "name": name, "class_": css or None, "autocomplete": "off",
        "aria_label": label or None, "aria_describedby": described or None}
    if fact.kind == "date":
        return tag("input", type="date", value=text, **common)
    if fact.kind == "number":
        return tag("input", type="text", inputmode="decimal", enterkeyhint="next", value=text,
                   **common)
    return tag("input", type="text", enterkeyhint="next", maxlength="400", value=text,
               **{**common, "class_": "df-text"})


def _signed(fact: Fact) -> bool:
    return fact.kind == "number" and (fact.low is None or fact.low < 0)


def _line(id_: str, fact: Fact, entry: Entry | None, assumed: bool, system: str) -> Markup:
    described = f"{id_}-h {id_}-e"
    value = entry.value if entry is not None else None
    parts: list[Markup] = []
    if fact.kind == "choice":
        options = [tag("option", "not known", value="", selected=value is None)]
        options += [tag("option", c.label, value=c.value, selected=c.value == value)
                    for c in fact.choices]
        parts.append(tag("select", options, id=id_, name=fact.name, class_="df-choose",
                         aria_describedby=described))
    else:
        if _signed(fact):
            parts.append(tag("button", "±", type="button", class_="df-minus", data_sign=True,
                             aria_label=f"{fact.label}: change the sign"))
        parts.append(_input(id_, fact, fact.name, typed(fact, value, system), system,
                            described=described))
    if fact.kind == "number":
        label = unit_label(fact.unit, system)
        parts.append(tag("span", label, class_="df-unit") if label else Markup(""))
    parts.append(_from_select(fact, entry, assumed))
    return tag("div", parts, class_=_line_class(entry))


def _boxes(id_: str, fact: Fact, entry: Entry | None, assumed: bool) -> Markup:
    value = entry.value if entry is not None else None
    if fact.kind == "yesno":
        pairs = [("yes", "yes", value is True), ("no", "no", value is False)]
    else:
        pairs = [(c.value, c.label, c.value == value) for c in fact.choices]
    boxes = [tag("label", tag("input", type="radio", name=fact.name, value=v, checked=on,
                              id=f"{id_}-{n}", aria_describedby=f"{id_}-h {id_}-e"),
                 tag("span", words)) for n, (v, words, on) in enumerate(pairs)]
    boxes.append(tag("label", tag("input", type="radio", name=fact.name, value="",
                                  checked=value is None, id=f"{id_}-none"),
                     tag("span", "not known")))
    tall = sum(len(words) for _, words, _ in pairs) > MOST_ABREAST
    return together(tag("div", boxes, class_="df-choice df-choice--tall" if tall else "df-choice"),
                    tag("div", _from_select(fact, entry, assumed), class_=_line_class(entry)))


def _example_table(id_: str, fact: Fact, entry: Entry, system: str) -> Markup:
    """The worked example's rows, to read; a table of one's own starts empty."""
    return together(
        tag("div", table_html(fact, entry.value, system, caption=False), data_example_rows=True),
        tag("button", "Enter rows of your own", type="button", class_="df-button df-live",
            data_own=fact.name),
        tag("div", _table(id_, fact, None, system), hidden=True, data_own_rows=True))


def _table(id_: str, fact: Fact, entry: Entry | None, system: str) -> Markup:
    rows: list[dict[str, Any]] = entry.value if entry is not None else []
    columns = [c for c in fact.columns if c.name != "id"]
    heads = [tag("th", c.label, tag("br"), tag("small", unit_label(c.unit, system))
                 if c.kind == "number" and unit_label(c.unit, system) else None, scope="col",
                 class_="n" if c.kind == "number" else None) for c in columns]
    heads.append(tag("th", tag("span", "row", class_="df-sr"), scope="col"))
    body = [_row(id_, fact, str(n), row, system) for n, row in enumerate(rows)]
    if not rows:
        body = [_row(id_, fact, str(n), {}, system) for n in range(max(1, fact.rows.least))]
    return together(
        tag("div", tag("table", tag("thead", tag("tr", heads)), tag("tbody", body),
                       class_="df-table df-facttable__t"),
            tag("template", _row(id_, fact, "#", {}, system)), class_="df-facttable",
            tabindex="0", role="group", aria_label=f"{fact.label}: rows"),
        tag("div", tag("button", "Add a row", type="button", class_="df-button",
                       data_add=fact.name),
            _from_select(fact, entry, False), class_=f"{_line_class(entry)} df-fact__line--table",
            data_most=str(fact.rows.most)))


def _row(id_: str, fact: Fact, index: str, row: Mapping[str, Any], system: str) -> Markup:
    cells: list[Markup] = []
    keep = None
    if fact.column("id") is not None:
        keep = tag("input", type="hidden", name=f"{fact.name}[{index}].id",
                   value=str(row.get("id", "")))
    for column in fact.columns:
        if column.name == "id":
            continue
        name = f"{fact.name}[{index}].{column.name}"
        cell_id = f"{id_}-{index}-{column.name}"
        value = row.get(column.name)
        where = f"{column.label}, row {int(index) + 1}" if index != "#" else column.label
        if column.kind in ("choice", "yesno"):
            pairs = ([("yes", "yes"), ("no", "no")] if column.kind == "yesno" else
                     [(c.value, c.label) for c in column.choices])
            now = typed(column, value, system)
            cell = tag("select", tag("option", "–", value="", selected=value is None),
                       [tag("option", words, value=v, selected=v == now and value is not None)
                        for v, words in pairs], id=cell_id, name=name, aria_label=where)
        else:
            cell = _input(cell_id, column, name, typed(column, value, system), system, label=where)
            if _signed(column):
                cell = tag("div", tag("button", "±", type="button", class_="df-minus",
                                      data_sign=True, aria_label=f"{where}: change the sign"),
                           cell, class_="df-cell")
        cells.append(tag("td", cell, data_column=column.name, data_optional=column.optional))
    cells.append(tag("td", keep, tag("button", "remove", type="button", class_="df-link",
                                     data_remove=True,
                                     aria_label=f"remove row {int(index) + 1}" if index != "#"
                                     else "remove row")))
    return tag("tr", cells)
