"""The job sheet to print and fill in by hand, in the order in which one walks."""

from __future__ import annotations

from downflow.facts import WHERE, Fact
from downflow.markup import Markup, tag
from downflow.render.marks import caution
from downflow.render.sheet import survey_facts
from downflow.render.values import unit_label

BLANK_ROWS = 6
"""Empty rows printed for a table, unless fewer are legal."""


def blank_sheet_html(system: str = "ip") -> Markup:
    """Every fact of a survey with a ruled blank, place by place."""
    sections = [_section(where, title, system) for where, title in WHERE.items()
                if where != "results" and survey_facts(where)]
    return tag("div", sections, class_="df-blanks")


def _section(where: str, title: str, system: str) -> Markup:
    parts: list[Markup] = []
    rows: list[Markup] = []
    last = None

    def close() -> None:
        if rows:
            parts.append(tag("table", tag("tbody", list(rows)), class_="df-table df-blank-table"))
            rows.clear()

    for one in survey_facts(where):
        if one.given:
            continue
        if one.hazard is not None and one.hazard != last:
            close()
            parts.append(caution(one.hazard.level, one.hazard.text, one.hazard.who))
        last = one.hazard
        if one.kind == "table":
            close()
            parts.append(_grid(one, system))
        else:
            rows.append(tag("tr", tag("th", tag("b", one.label), tag("br"),
                                      tag("span", one.how, class_="df-small"), scope="row"),
                            tag("td", _blank(one, system)),
                            tag("td", "how: ", tag("i", class_="df-blank df-blank--short"))))
    close()
    return tag("section", tag("h2", title, id=f"blank-{where}"), parts)


def _blank(one: Fact, system: str) -> list[Markup | str]:
    if one.kind == "yesno":
        return ["□ yes  □ no"]
    if one.kind == "choice" and len(one.choices) <= 8:
        return ["  ".join(f"□ {c.label}" for c in one.choices)]
    label = unit_label(one.unit, system) if one.kind == "number" else ""
    return [tag("i", class_="df-blank"), f" {label}"]


def _grid(one: Fact, system: str) -> Markup:
    columns = [c for c in one.columns if c.name != "id"]

    def head(c: Fact) -> str:
        label = unit_label(c.unit, system) if c.kind == "number" else ""
        return f"{c.label}, {label}" if label else c.label

    return tag(
        "table", tag("caption", one.label),
        tag("thead", tag("tr", [tag("th", head(c), scope="col") for c in columns])),
        tag("tbody", [tag("tr", [tag("td", "\u00a0") for _ in columns])
                      for _ in range(min(BLANK_ROWS, one.rows.most))]),
        class_="df-table df-blank-grid")
