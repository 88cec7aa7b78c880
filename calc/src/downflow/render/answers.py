"""The answer: name, number, unit, range, the rule, and what else comes with it."""

from __future__ import annotations

from downflow.drawing import Limit, now_then, rule
from downflow.engine.answer import Answer, Value
from downflow.facts import fact
from downflow.markup import Markup, tag, together
from downflow.render.marks import verdict_mark
from downflow.render.values import field_label, quantity, table_html
from downflow.render.verdicts import shown_level
from downflow.units import convert, number_text, shown_decimals, shown_unit, unit


def _parts(value: float, of: str, decimals: int, system: str) -> tuple[str, str]:
    """Number and unit apart, for setting in two sizes."""
    to = shown_unit(of, system)
    shown = number_text(convert(value, of, to), shown_decimals(decimals, of, to))
    label = unit(to).label
    if of.startswith("$"):
        return f"${shown}", label[1:].strip()
    return shown, label


def has_range(value: Value) -> bool:
    """Whether the range is wider than what the decimals can show."""
    return value.high - value.low > 0.5 * 10.0 ** -value.decimals


def range_text(value: Value, system: str) -> str:
    """`between 774 and 879 standard cfm`."""
    low, _ = _parts(value.low, value.unit, value.decimals, system)
    high, label = _parts(value.high, value.unit, value.decimals, system)
    return f"between {low} and {high}" + (f"\u00a0{label}" if label else "")


def answer_html(answer: Answer, system: str, *, whose: str) -> Markup:
    """The answer of a calculator that has one."""
    names = answer.shown()
    parts: list[Markup] = []
    if whose:
        parts.append(tag("p", tag("b", whose), class_="df-whose"))
    if names:
        first = answer.values[names[0]]
        number, label = _parts(first.value, first.unit, first.decimals, system)
        parts.append(tag(
            "div", tag("p", fact(names[0]).label, class_="df-answer__name"),
            tag("p", number, tag("small", f"\u00a0{label}") if label else None,
                class_="df-answer__value"),
            tag("p", _range_line(first, answer.ranged, system), class_="df-answer__range"),
            class_="df-answer", data_name=names[0]))
        parts.append(_rule(answer, names[0], first, system))
    if names[1:]:
        parts.append(tag("dl", [_beside(answer, n, system) for n in names[1:]],
                         class_="df-beside"))
    for name, rows in answer.tables.items():
        parts.append(table_html(fact(name), rows, system))
    if answer.entered:
        parts.append(tag("p", [_both(answer, n, v, system) for n, v in answer.entered.items()],
                         class_="df-small"))
    return together(parts)


def _range_line(value: Value, ranged: bool, system: str) -> str:
    if not ranged:
        return "range: working it out"
    return range_text(value, system) if has_range(value) else "no range: every input is exact"


def _beside(answer: Answer, name: str, system: str) -> Markup:
    value = answer.values[name]
    said = quantity(value.value, value.unit, value.decimals, system)
    wide = range_text(value, system) if answer.ranged and has_range(value) else None
    aside = tag("span", " ", wide, class_="df-small") if wide else None
    return tag("div", tag("dt", fact(name).label), tag("dd", tag("b", said), aside))


def _both(answer: Answer, name: str, entered: float, system: str) -> str:
    value = answer.values[name]
    return (f"{fact(name).label}: the job sheet says "
            f"{quantity(entered, value.unit, value.decimals, system)}, and that is used; worked "
            f"out here: {quantity(value.value, value.unit, value.decimals, system)}. ")


def _rule(answer: Answer, name: str, value: Value, system: str) -> Markup:
    limits = [Limit(v.limit, v.side) for v in answer.verdicts
              if v.limit is not None and v.value is not None and v.unit == value.unit
              and abs(v.value - value.value) <= 1e-9 * max(1.0, abs(value.value))]
    seen: list[Limit] = []
    for one in limits:
        if one not in seen:
            seen.append(one)
    low, high = (value.low, value.high) if answer.ranged and has_range(value) else (None, None)
    return rule(f"{answer.calculator.id}-rule", fact(name).label, value.value, value.unit, low=low,
                high=high, limits=seen[:2], decimals=value.decimals, system=system).figure()


def worst_level(answer: Answer) -> str:
    """The worst level as it may be shown, `pending` where a fine waits for its range."""
    levels = [shown_level(v, answer.ranged) for v in answer.verdicts if v.released is None]
    return next((one for one in ("hold", "look", "pending") if one in levels), "fine")


def pin_html(answer: Answer, system: str) -> Markup:
    """The answer in one line, pinned on a phone while readings are typed."""
    if not answer.ok:
        said = "no answer yet" if answer.ok is None else "to check"
        return together(tag("b", "–"), tag("span", said))
    names = answer.shown()
    if not names:
        return together(verdict_mark(worst_level(answer)),
                        tag("span", worst_level(answer)))
    value = answer.values[names[0]]
    level = worst_level(answer)
    said = quantity(value.value, value.unit, value.decimals, system)
    return together(verdict_mark(level) if answer.verdicts else None, tag("b", said),
                    tag("span", {"pending": "range follows"}.get(level, level))
                    if answer.verdicts else None)


def spoken(answer: Answer, system: str) -> str:
    """The one sentence that is announced after typing stops."""
    names = answer.shown()
    if not names:
        return worst_level(answer)
    value = answer.values[names[0]]
    said = f"{fact(names[0]).label}: {quantity(value.value, value.unit, value.decimals, system)}"
    if answer.ranged and has_range(value):
        said += ", " + range_text(value, system)
    level = worst_level(answer)
    return f"{said}. {level}." if answer.verdicts and level != "pending" else f"{said}."


def next_html(answer: Answer, system: str, link: str) -> Markup | None:
    """The one reading that would narrow the answer most."""
    following = answer.measure_next
    if following is None:
        return None
    value = answer.values[following.answer]
    now = Value(value.value, *following.now, value.unit, value.decimals)
    then = Value(value.value, *following.then, value.unit, value.decimals)
    name = field_label(following.field)
    limits = [Limit(v.limit, v.side) for v in answer.verdicts
              if v.limit is not None and v.value is not None and v.unit == value.unit
              and abs(v.value - value.value) <= 1e-9 * max(1.0, abs(value.value))][:1]
    held = any(v.level == "hold" and v.released is None for v in answer.verdicts)
    figure = now_then(
        f"{answer.calculator.id}-next", "Range now and after the next measurement",
        f"Now {range_text(now, system)}. After it, if the number stays, about "
        f"{range_text(then, system)}.", value.unit, now=following.now, then=following.then,
        now_text="now: " + _ends(now, system), then_text="then: about " + _ends(then, system),
        limits=limits, system=system).figure()
    return tag(
        "section", tag("h3", "Measure this next: ", tag("a", name, href=link)),
        tag("p", following.how, " It narrows the answer the most.",
            " It does not lift a hold by itself." if held else None), figure, class_="df-next")


def _ends(value: Value, system: str) -> str:
    low, _ = _parts(value.low, value.unit, value.decimals, system)
    high, _ = _parts(value.high, value.unit, value.decimals, system)
    return f"{low} to {high}"
