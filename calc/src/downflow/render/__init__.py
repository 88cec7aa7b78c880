"""The one renderer: the site's builder and the browser's worker call the same functions.

Each is brought in when it is first asked for, so that a page that shows a calculator
does not wait for the job sheet or the plan.
"""

from __future__ import annotations

import importlib
from typing import Any

_WHERE: dict[str, str] = {
    "calculator_html": "calculator", "calculator_reply": "calculator", "regions": "calculator",
    "paint": "calculator",
    "sheet_html": "sheet", "fact_html": "sheet", "measure_first_html": "sheet",
    "painted_sheet_html": "sheet", "jobs_html": "sheet", "places_html": "sheet",
    "painted_plan_html": "plan",
    "blank_sheet_html": "blank",
    "plan_html": "plan", "summary_reply": "plan",
    "first_answer_html": "first", "first_answer_reply": "first",
    "evidence_html": "evidence",
    "quantity_html": "prose", "entry_text": "prose",
    "table_html": "reference_tables", "table_names": "reference_tables",
    "procedure_html": "procedure", "symptom_html": "procedure",
    "drawing_html": "drawings",
    "record_html": "record", "painted_record_html": "record", "papers_html": "record",
    "painted_papers_html": "record",
    "practice_html": "practice",
    "hand_over_html": "hand_over", "painted_hand_over_html": "hand_over",
    "hand_over_inner_html": "hand_over", "weather_html": "weather", "weather_said": "weather",
}
"""Module of each function; a module that adds one puts its line here."""


def __getattr__(name: str) -> Any:
    module = _WHERE.get(name)
    if module is None:
        raise AttributeError(f"downflow.render has no {name}")
    return getattr(importlib.import_module(f"{__name__}.{module}"), name)
