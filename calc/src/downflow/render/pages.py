"""Addresses of the handbook's own pages, as seen from a page some folders down.

A calculator's page lies two folders down, the job sheet and the plan one.
"""

from __future__ import annotations

CALCULATOR_DEPTH = 2
TOP_DEPTH = 1


def calculator_page(id_: str, depth: int) -> str:
    """The page of a calculator."""
    return f"{'../' * depth}calculators/{id_}/"


def job_sheet_page(depth: int, fact: str = "") -> str:
    """The job sheet, opened at a fact."""
    return f"{'../' * depth}job-sheet/" + (f"#fact-{fact}" if fact else "")


def plan_page(depth: int) -> str:
    """The plan."""
    return f"{'../' * depth}plan/"
