"""Lists of pages: by phase, by kind, by symptom.

Plain functions from page entries to HTML. The caller knows the pages and their
addresses as seen from the page that shows the list; nothing here reads a file.
"""

from collections.abc import Iterable, Sequence
from html import escape
from typing import NamedTuple

from downflow.phases import PHASES, Phase, phase_number


class Entry(NamedTuple):
    """One page in a list.

    `kind` is "procedure", "calculator", "symptom" or "page"; `phase` is empty
    where a page belongs to no phase; `sub` is one line under the title.
    """

    kind: str
    title: str
    url: str
    phase: str = ""
    sub: str = ""


def list_html(entries: Iterable[Entry]) -> str:
    """A ruled list, one whole row a link, calculators with their sign before them."""
    rows = "".join(_row(entry) for entry in entries)
    return f'<ul class="df-list">{rows}</ul>' if rows else ""


def board_html(entries: Sequence[Entry]) -> str:
    """The job on the start page: one `details` for each phase, stations on the margin line."""
    return '<div class="st-line">' + "".join(
        _board_phase(p, entries) for p in PHASES if _in_phase(p, entries)) + "</div>"


def phases_html(entries: Sequence[Entry]) -> str:
    """Every phase laid open: a heading, its procedures, then its calculators."""
    return "".join(
        _heading(p)
        + list_html(_of("procedure", p, entries)) + list_html(_of("calculator", p, entries))
        for p in PHASES if _in_phase(p, entries))


def grouped_html(kind: str, entries: Sequence[Entry]) -> str:
    """All pages of one kind under the phases they belong to."""
    return "".join(
        _heading(p) + list_html(_of(kind, p, entries))
        for p in PHASES if _of(kind, p, entries))


def _of(kind: str, phase: Phase, entries: Iterable[Entry]) -> list[Entry]:
    return [e for e in entries if e.kind == kind and e.phase == phase.id]


def _in_phase(phase: Phase, entries: Iterable[Entry]) -> bool:
    return any(e.phase == phase.id for e in entries)


def _heading(phase: Phase) -> str:
    return (
        f'<h2 id="{phase.id}" class="st-h">'
        f'<span class="st-n" aria-hidden="true">{phase_number(phase.id)}</span>'
        f"{escape(phase.title)}</h2>")


def _row(entry: Entry) -> str:
    sub = f'<span class="df-item__sub">{escape(entry.sub)}</span>' if entry.sub else ""
    sign = " df-item--calc" if entry.kind == "calculator" else ""
    return (f'<li><a class="df-item{sign}" href="{escape(entry.url)}">'
            f"<b>{escape(entry.title)}</b>{sub}</a></li>")


def _board_phase(phase: Phase, entries: Sequence[Entry]) -> str:
    procedures = _of("procedure", phase, entries)
    calculators = _of("calculator", phase, entries)
    count = len(procedures) + len(calculators)
    return (
        f'<details class="df-phase" id="phase-{phase.id}"><summary>'
        f'<span class="st-n" aria-hidden="true">{phase_number(phase.id)}</span>'
        f'<b>{escape(phase.title)}</b>'
        f'<span class="st-c" aria-label="{count} pages">{count}</span></summary>'
        f'{_links("st-links", "Procedures", procedures)}'
        f'{_links("st-links st-calc", "Calculators", calculators)}</details>')


def _links(css: str, label: str, entries: Sequence[Entry]) -> str:
    if not entries:
        return ""
    rows = "".join(
        f'<li><a href="{escape(e.url)}">{escape(e.title)}</a></li>' for e in entries)
    return f'<ul class="{css}" aria-label="{label}">{rows}</ul>'
