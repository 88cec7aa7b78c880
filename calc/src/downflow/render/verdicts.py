"""Verdicts: mark, word, what is the case, what to do, the limit and whose it is."""

from __future__ import annotations

from collections.abc import Sequence

from downflow.engine.answer import by_worst, verdict_data
from downflow.engine.paper import Verdict
from downflow.markup import Markup, tag, together
from downflow.render.marks import verdict_mark
from downflow.units import Quantity


def verdicts_html(calculator: str, verdicts: Sequence[Verdict], system: str, *, ranged: bool,
                  example: bool) -> Markup:
    """All verdicts of a calculator, worst first."""
    return together([verdict_html(calculator, v, system, ranged=ranged, example=example)
                     for v in by_worst(list(verdicts))])


def shown_level(verdict: Verdict, ranged: bool) -> str:
    """The level as it may be shown: a fine one whose range is not in yet is still pending."""
    if verdict.level == "fine" and not ranged and verdict.value is not None:
        return "pending"
    return verdict.level


def limit_text(verdict: Verdict, system: str) -> str:
    """The limit in words, such as `at least 790 standard cfm`; empty where there is none."""
    if verdict.limit is None:
        return ""
    said = Quantity(verdict.limit, verdict.unit, verdict.decimals).text(system)
    return f"at {verdict.side} {said}"


def released_text(released: dict[str, str]) -> str:
    """Who took a hold upon themselves."""
    return (f"Released by {released['by']} ({released['trade']}) on {released['date']}: "
            f"{released['reason']}")


def verdict_html(calculator: str, verdict: Verdict, system: str, *, ranged: bool,
                 example: bool) -> Markup:
    """One verdict in its frame."""
    said = verdict_data(verdict, system)
    level = shown_level(verdict, ranged)
    word = {"pending": "fine so far"}.get(level, level)
    released = verdict.released
    if released is not None:
        word = "hold, released"
    doing = said["do"]
    limit = limit_text(verdict, system)
    basis = f"Limit: {limit}. {verdict.source.text()}." if limit else f"{verdict.source.text()}."
    return tag(
        "section", verdict_mark(level),
        tag("p", word, class_="df-verdict__word"),
        tag("p", said["text"], " " if said["text"] and said["doubt"] else None, said["doubt"]),
        tag("p", "The range is not in yet.", class_="df-pending") if level == "pending" else None,
        tag("p", tag("b", "Do: "), doing) if doing and released is None else None,
        tag("p", f"{verdict.signs} signs: ", tag("i", class_="df-blank"))
        if verdict.signs else None,
        tag("p", tag("b", released_text(released))) if released is not None else None,
        tag("p", basis, class_="df-small"),
        _release_form(calculator, verdict.id)
        if level == "hold" and released is None and not example else None,
        class_=f"df-verdict df-verdict--{'fine' if level == 'pending' else level}",
        data_verdict=f"{calculator}#{verdict.id}", data_level=level,
        data_released=True if released is not None else None)


def _release_form(calculator: str, id_: str) -> Markup:
    """Where a named person takes a hold upon themselves."""
    prefix = f"release-{calculator}-{id_}"
    rows = [("by", "Your name"), ("trade", "Trade or licence"), ("reason", "Why it may go on")]
    return tag(
        "details", tag("summary", "Release this hold"),
        tag("form",
            tag("p", "It stays on the plan and in print as released by you."),
            [tag("p", tag("label", words, for_=f"{prefix}-{name}"),
                 tag("input", type="text", id=f"{prefix}-{name}", name=name, maxlength="300",
                     autocomplete="off")) for name, words in rows],
            tag("p", class_="df-error", hidden=True),
            tag("button", "I release it", class_="df-button", type="submit"),
            class_="df-release", data_release=f"{calculator}#{id_}", novalidate=True),
        class_="df-release-box no-print")
