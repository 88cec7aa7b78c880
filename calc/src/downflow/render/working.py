"""The working: what each step finds, its formula, the values put in, the result, the source.

Shown in the formula's own units, with the result repeated in SI. Re-worked by hand with
the digits that are shown, each step gives the result that is shown.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from downflow.engine.answer import Answer, shown_step
from downflow.engine.formula import parsed, round_digits
from downflow.engine.paper import Step
from downflow.facts import fact
from downflow.markup import Markup, tag, together
from downflow.render.typeset import filled_in, formula, number, plain_number, symbol
from downflow.render.values import entered_text, field_label
from downflow.units import UNITS, convert, digits_text, number_text, shown_unit


def working_html(answer: Answer, system: str) -> Markup:
    """Every step, then the range, then what was assumed."""
    lines = [step_html(n, step) for n, step in enumerate(answer.working, 1)]
    spread = _range(len(lines) + 1, answer)
    return together(lines, spread, _assumed(answer, system))


def step_html(index: int, step: Step) -> Markup:
    """One step."""
    what = f"{index}. {step.what}" if step.what else f"{index}."
    body = {"formula": _formula, "table": _rows, "sum": _sum, "solved": _solved}[step.kind](step)
    said = f"{step.note} " if step.note else ""
    return tag("div", tag("p", what, class_="df-line__what"), body,
               tag("p", said, step.source.text(), ".", class_="df-small"), class_="df-line")


def unit_text(name: str) -> str:
    """The label of a unit, or the name where it is none of ours."""
    return UNITS[name].label if name in UNITS else name


def _with_unit(shown: str, of: str) -> Markup:
    label = unit_text(of)
    return together(number(shown), f"\u00a0{label}" if label else None)


def _result(value: float, of: str) -> Markup:
    """The result with its unit, and again in SI where that differs."""
    own = _with_unit(plain_number(value), of)
    if of not in UNITS or shown_unit(of, "si") == of:
        return own
    to = shown_unit(of, "si")
    return together(own, tag("span", " (", _with_unit(digits_text(convert(value, of, to)), to),
                             ")", class_="df-si"))


def _formula(step: Step) -> Markup:
    name, expression, _, _ = parsed(step.formula)
    shown = shown_step(step)
    left = together(symbol(name), " =")
    put_in = tag("span", filled_in(expression, shown.values)) if step.values else None
    return tag("div",
               tag("i", left), tag("span", formula(expression)),
               [tag("i", "="), put_in] if put_in is not None else None,
               tag("i", left, class_="r"),
               tag("span", _result(shown.result, step.unit), class_="r"),
               class_="df-line__eq")


def _rows(step: Step) -> Markup:
    body = [tag("tr", tag("th", words, scope="row"),
                tag("td", number(plain_number(v)) if not isinstance(v, str) else v, class_="n"))
            for words, v in step.rows]
    body.append(tag("tr", tag("th", tag("b", "read"), scope="row"),
                    tag("td", tag("b", _result(round_digits(step.result, 4), step.unit)),
                        class_="n")))
    return tag("table", tag("tbody", body), class_="df-table")


def sum_digits(rows: Sequence[tuple[str, float | str]], total: float) -> int:
    """The fewest decimals with which the shown terms add up to the shown total."""
    numbers = [float(v) for _, v in rows]
    least = 0 if total == 0 else max(0, 3 - math.floor(math.log10(abs(total))))
    for decimals in range(least, 13):
        if sum(_units(v, decimals) for v in numbers) == _units(total, decimals):
            return decimals
    return 12


def _units(value: float, decimals: int) -> int:
    """A number as it is shown, its last bits dropped, counted in its last decimal."""
    return int(f"{float(f'{value:.12g}'):.{decimals}f}".replace(".", ""))


def _sum(step: Step) -> Markup:
    decimals = sum_digits(step.rows, step.result)
    label = unit_text(step.unit)
    body = [tag("tr", tag("th", words, scope="row"),
                tag("td", number_text(float(v), decimals), class_="n")) for words, v in step.rows]
    total = number_text(step.result, decimals)
    body.append(tag("tr", tag("th", tag("b", "total" + (f", {label}" if label else "")),
                              scope="row"), tag("td", tag("b", total), class_="n")))
    si = ""
    if step.unit in UNITS and shown_unit(step.unit, "si") != step.unit:
        to = shown_unit(step.unit, "si")
        si = f"{digits_text(convert(step.result, step.unit, to))}\u00a0{unit_text(to)}"
    return together(tag("table", tag("tbody", body), class_="df-table"),
                    tag("p", f"In SI: {si}.", class_="df-small df-si") if si else None)


def _solved(step: Step) -> Markup:
    sides = {words: v for words, v in step.rows if not isinstance(v, str)}
    side_unit = next((str(v) for words, v in step.rows if isinstance(v, str)), "")
    body = [tag("i", "find"), tag("span", step.formula)]
    for words, v in sides.items():
        body += [tag("i", f"{words}:"),
                 tag("span", _with_unit(plain_number(round_digits(float(v), 4)), side_unit))]
    body += [tag("i", "=", class_="r"),
             tag("span", _result(round_digits(step.result, 4), step.unit), class_="r")]
    return tag("div", body, class_="df-line__eq")


# ---- the range --------------------------------------------------------------------------

def _range(index: int, answer: Answer) -> Markup | None:
    shown = answer.shown()
    if not shown or not answer.ranged or not answer.terms:
        return None
    value = answer.values[shown[0]]
    of = unit_text(value.unit)
    terms = sorted(answer.terms.items(), key=lambda t: -(t[1][0] ** 2 + t[1][1] ** 2))
    terms = [t for t in terms if max(t[1]) > 0]
    if not terms:
        return None
    body = [tag("tr", tag("th", field_label(name), scope="row"),
                tag("td", _moved("−", down), class_="n"), tag("td", _moved("+", up), class_="n"))
            for name, (down, up) in terms[:7]]
    rest = terms[7:]
    if rest:
        body.append(tag("tr", tag("th", f"{len(rest)} more together", scope="row"),
                        tag("td", _moved("−", math.hypot(*(d for _, (d, _) in rest))), class_="n"),
                        tag("td", _moved("+", math.hypot(*(u for _, (_, u) in rest))),
                            class_="n")))
    body.append(tag("tr", tag("th", tag("b", "root of the sum of the squares"), scope="row"),
                    tag("td", tag("b", _moved("−", value.value - value.low)), class_="n"),
                    tag("td", tag("b", _moved("+", value.high - value.value)), class_="n")))
    name = fact(shown[0]).label
    return tag("div", tag("p", f"{index}. Range of {name}" + (f", {of}" if of else ""),
                          class_="df-line__what"),
               tag("table", tag("tbody", body), class_="df-table"),
               tag("p", "How far each uncertain thing moves the answer, alone, nine times in ten; "
                        "the sides apart.", class_="df-small"), class_="df-line")


def _moved(sign: str, by: float) -> str:
    return sign + digits_text(by, 3) if by > 0 else "0"


def _assumed(answer: Answer, system: str) -> Markup | None:
    rows: list[Markup] = []
    for name in answer.assumed:
        one = fact(name)
        if one.assumption is None:
            continue
        rows.append(tag("li", tag("b", f"{one.label}: "),
                        tag("span", entered_text(one, one.assumption.value, system),
                            class_="df-value df-from-assumed"),
                        f", {one.assumption.why}. {one.assumption.source.text()}."))
    if not rows:
        return None
    return tag("div", tag("p", "Assumed, because nobody has said", class_="df-line__what"),
               tag("ul", rows, class_="df-assumed"), class_="df-line")
