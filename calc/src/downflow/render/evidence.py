"""The list of check values: each published number beside the document that prints it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from downflow.calculators import all_calculators
from downflow.markup import Markup, tag, together

COUNTED = ("read", "computed")
"""How a value must have been obtained to count."""

HOW = {"read": "printed in the document", "computed": "by an independent program",
       "derived": "worked out from a document by hand", "common practice": "common practice",
       "from memory": "from memory, not looked up"}


def evidence_html(rows: Sequence[Mapping[str, Any]]) -> Markup:
    """Every check value, grouped by the calculator that it speaks for."""
    groups: dict[str, list[Mapping[str, Any]]] = {}
    for row in rows:
        groups.setdefault(str(row["calculator"]), []).append(row)
    titles = {i: m.calculator.title for i, m in all_calculators().items()}
    order = [i for i in titles if i in groups] + sorted(i for i in groups if i not in titles)
    counted = sum(row["how"] in COUNTED for row in rows)
    documents = len({row["document"] for row in rows if row["how"] in COUNTED})
    return together(
        tag("p", tag("b", f"{counted} values"), f" from {documents} documents and independent "
            f"programs count; {len(rows) - counted} more are common practice, worked out by hand "
            "or from memory, and do not.", class_="df-lead"),
        [_group(titles.get(i, "Formulas behind several calculators"), i, groups[i])
         for i in order])


def _group(title: str, id_: str, rows: Sequence[Mapping[str, Any]]) -> Markup:
    head = tag("tr", [tag("th", words, scope="col") for words in
                      ("Value as printed", "Within", "Document and section", "How obtained")])
    body = [tag("tr", tag("td", tag("b", f"{row['printed']}\u00a0{row.get('unit', '')}".strip())),
                tag("td", _within(row)),
                tag("td", f"{row['document']}, {row['section']}" if row.get("section")
                    else str(row["document"]),
                    tag("span", f" {row['note']}", class_="df-small") if row.get("note") else None),
                tag("td", HOW.get(str(row["how"]), str(row["how"])),
                    " · at an edge of its range" if row.get("edge") else None)) for row in rows]
    return together(tag("h2", title, id=f"evidence-{id_}"),
                    tag("div", tag("table", tag("thead", head), tag("tbody", body),
                                   class_="df-table"), class_="df-scroll", tabindex="0",
                        role="group", aria_label=title))


def _within(row: Mapping[str, Any]) -> str:
    if row.get("relative") is not None:
        return f"{100 * float(row['relative']):.3g} %"
    if row.get("absolute") is not None:
        return f"± {row['absolute']}"
    return "the same"
