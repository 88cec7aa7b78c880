"""Lists of pages: by phase, by kind, by symptom.

Plain functions from page entries to markup. The caller knows the pages and their
addresses as seen from the page that shows the list; nothing here reads a file.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from downflow.markup import Markup, tag, together
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


def list_html(entries: Iterable[Entry]) -> Markup:
    """A ruled list, one whole row a link, calculators with their sign before them."""
    rows = [_row(entry) for entry in entries]
    return tag("ul", rows, class_="df-list") if rows else Markup()


def board_html(entries: Sequence[Entry]) -> Markup:
    """The job on the start page: one `details` for each phase, stations on the margin line."""
    return tag("div", [_board_phase(p, entries) for p in PHASES if _in_phase(p, entries)],
               class_="st-line")


def phases_html(entries: Sequence[Entry]) -> Markup:
    """Every phase laid open: a heading, its procedures, then its calculators."""
    return together([
        (_heading(p), list_html(_of("procedure", p, entries)),
         list_html(_of("calculator", p, entries)))
        for p in PHASES if _in_phase(p, entries)])


def grouped_html(kind: str, entries: Sequence[Entry]) -> Markup:
    """All pages of one kind under the phases they belong to."""
    return together([
        (_heading(p), list_html(_of(kind, p, entries)))
        for p in PHASES if _of(kind, p, entries)])


def _of(kind: str, phase: Phase, entries: Iterable[Entry]) -> list[Entry]:
    return [e for e in entries if e.kind == kind and e.phase == phase.id]


def _in_phase(phase: Phase, entries: Iterable[Entry]) -> bool:
    return any(e.phase == phase.id for e in entries)


def _station(phase: Phase) -> Markup:
    return tag("span", str(phase_number(phase.id)), class_="st-n", aria_hidden="true")


def _heading(phase: Phase) -> Markup:
    return tag("h2", _station(phase), phase.title, id=phase.id, class_="st-h")


def _row(entry: Entry) -> Markup:
    return tag("li", tag(
        "a", tag("b", entry.title),
        tag("span", entry.sub, class_="df-item__sub") if entry.sub else None,
        class_="df-item df-item--calc" if entry.kind == "calculator" else "df-item",
        href=entry.url))


def _board_phase(phase: Phase, entries: Sequence[Entry]) -> Markup:
    procedures = _of("procedure", phase, entries)
    calculators = _of("calculator", phase, entries)
    return tag(
        "details",
        tag("summary", _station(phase), tag("b", phase.title),
            tag("span", str(len(procedures) + len(calculators)), class_="st-c")),
        _links("st-links", "Procedures", procedures),
        _links("st-links st-calc", "Calculators", calculators),
        class_="df-phase", id=f"phase-{phase.id}")


def _links(css: str, label: str, entries: Sequence[Entry]) -> Markup | None:
    if not entries:
        return None
    return tag("ul", [tag("li", tag("a", e.title, href=e.url)) for e in entries],
               class_=css, aria_label=label)
