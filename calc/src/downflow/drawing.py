"""The drawing kit: one pen, 340 units wide, lettering 18 units, classes only.

A chart takes numbers in their own unit and the reader's system, and converts at the
edge. Every chart gives a `Drawing` to which more may be added; `figure()` makes it
markup. The text alternative carries the same facts as the picture.

    from downflow.drawing import Line, Mark, bars, chart, rule

    def figure(sheet):
        return chart(
            "heat-pump-match", "Load and capacity against outdoor temperature",
            "At 5 °F the home loses 25,100 Btu/h and the heat pump gives 27,900.",
            x=("outside", "°F"), y=("heat", "Btu/h"),
            lines=[Line("home", [(-20, 33000), (60, 0)]),
                   Line("heat pump", [(-13, 19800), (5, 27900), (47, 36000)], "air"),
                   Line("kit", [(-20, 32800), (60, 32800)], "old")],
            mark=Mark(5, [(25100, "25,100"), (27900, "27,900")]),
            system=sheet.system).figure("The two lines cross at the balance point.")

    bars("heat-loss", "Heat loss by part", [("windows", 6500), ("walls", 3900)], "Btu/h",
         head="Btu/h at −2 °F, 10,400 in all", system=sheet.system).figure()

A drawing of a thing is put together from primitives:

    d = Drawing("closet-fit", "Section through the closet", "The cabinet is 29 inches …", 300)
    d.rect(40, 20, 120, 200, "of")                      # cut edge, filled with paper
    d.hatch(40, 220, 120, 12)                           # the floor, cut
    d.dimension(40, 250, 160, 250, "29 in")
    d.supply(100, 190, 100, 240)
    d.balloon(1, 300, 60, to=(160, 60))
    return d.figure(legend=["the cabinet"])

Classes: `o of` 2.5 cut edge and outline (f: filled with paper), `i if` 1.5 inner edge and
leaders, `h` hidden, `c` centre line, `g` guide, `d` dimension, `w` limit, `a` supply air,
`ret` return air, `x` solid ink; on text `b` bold, `m` middle, `e` end, `halo`.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from downflow.markup import Child, Markup, tag, together
from downflow.units import (
    Quantity,
    convert,
    digits_text,
    number_text,
    shown_decimals,
    shown_unit,
    unit,
)

WIDTH = 340
LETTER = 18
"""Height of the lettering, the same in every drawing."""

_PATTERNS = {
    "cut": ("hx", 8, 8, ("path", {"class_": "pl", "d": "M-2 2 2-2M0 8 8 0M6 10 10 6"})),
    "water": ("hw", 10, 6, ("path", {"class_": "pl", "d": "M0 3h6"})),
    "filter": ("hd", 7, 7, ("circle", {"class_": "x", "cx": "3.5", "cy": "3.5", "r": "1.1"})),
    "backup": ("ho", 9, 9, ("path", {"class_": "plo", "d": "M0 0 9 9M9 0 0 9"})),
}


def at(number: float) -> str:
    """A coordinate, rounded to a tenth.

    Rounded finely first, so that a number on the edge between two tenths falls to the same
    side on every machine, whatever its last bit.
    """
    text = f"{round(number, 6):.1f}"
    if text.endswith(".0"):
        text = text[:-2]
    return "0" if text in ("-0", "0") else text


def text_width(text: str) -> float:
    """About how wide a lettering is, in units. Wide letters count for more."""
    narrow = sum(text.count(c) for c in " .,:;'|!ijlIt()1\u00a0")
    wide = sum(text.count(c) for c in "mwMW%@")
    return 10.8 * (len(text) - narrow - wide) + 5.8 * narrow + 15.5 * wide


Point = tuple[float, float]
_Box = tuple[float, float, float, float]


class Drawing:
    """A drawing under way.

    Args:
        key: Unique on its page, such as the calculator's id: the ids are made from it.
        title: What it shows, in a few words.
        desc: Every fact of the picture in words.
        height: In units. The width is 340.
    """

    def __init__(self, key: str, title: str, desc: str, height: float,
                 width: float = WIDTH) -> None:
        self.key = "f-" + "".join(c if c.isascii() and c.isalnum() else "-" for c in key)
        self.title = title
        self.desc = desc
        self.height = height
        self.width = width
        self._parts: list[Markup] = []
        self._patterns: list[str] = []

    # ---- primitives ----

    def add(self, element: str, *children: Child, **attributes: str) -> Drawing:
        """Any element of the drawing language; numbers must be rounded by `at`."""
        self._parts.append(tag(element, *children, **attributes))
        return self

    def path(self, d: str, css: str = "i") -> Drawing:
        """A path written by hand, its numbers rounded already."""
        return self.add("path", class_=css, d=d)

    def line(self, x1: float, y1: float, x2: float, y2: float, css: str = "i") -> Drawing:
        """A straight line."""
        return self.path(f"M{at(x1)} {at(y1)}L{at(x2)} {at(y2)}", css)

    def polyline(self, points: Sequence[Point], css: str = "i", *,
                 closed: bool = False) -> Drawing:
        """A line through several points."""
        said = "L".join(f"{at(x)} {at(y)}" for x, y in points)
        return self.path(f"M{said}{'Z' if closed else ''}", css)

    def rect(self, x: float, y: float, w: float, h: float, css: str = "if") -> Drawing:
        """A rectangle."""
        return self.add("rect", class_=css, x=at(x), y=at(y), width=at(max(0.0, w)),
                        height=at(max(0.0, h)))

    def circle(self, x: float, y: float, r: float, css: str = "if") -> Drawing:
        """A circle."""
        return self.add("circle", class_=css, cx=at(x), cy=at(y), r=at(r))

    def dot(self, x: float, y: float) -> Drawing:
        """A solid point."""
        return self.circle(x, y, 4.5, "x")

    def text(self, x: float, y: float, text: str, css: str = "") -> Drawing:
        """Lettering; `y` is its base line. Add `b`, `m`, `e` or `halo`."""
        return self.add("text", text, x=at(x), y=at(y), class_=css or "t")

    def text_up(self, x: float, y: float, text: str, css: str = "b m halo") -> Drawing:
        """Lettering that reads upwards, its middle at the point."""
        return self.add("text", text, transform=f"translate({at(x)} {at(y)}) rotate(-90)",
                        class_=css)

    def fill_of(self, pattern: str) -> str:
        """The `fill` of a pattern: `cut`, `water`, `filter` or `backup`."""
        if pattern not in self._patterns:
            self._patterns.append(pattern)
        return f"url(#{self.key}-{_PATTERNS[pattern][0]})"

    def hatch(self, x: float, y: float, w: float, h: float, pattern: str = "cut") -> Drawing:
        """A rectangle filled with a pattern, with its edge."""
        fill = self.fill_of(pattern)
        self.add("rect", x=at(x), y=at(y), width=at(max(0.0, w)), height=at(max(0.0, h)),
                 fill=fill)
        return self.rect(x, y, w, h, "i")

    def hatch_area(self, points: Sequence[Point], pattern: str = "cut") -> Drawing:
        """A closed shape filled with a pattern, without an edge."""
        said = "L".join(f"{at(x)} {at(y)}" for x, y in points)
        return self.add("path", d=f"M{said}Z", fill=self.fill_of(pattern))

    def dimension(self, x1: float, y1: float, x2: float, y2: float, text: str, *,
                  extend: float = 0) -> Drawing:
        """A dimension with slash ticks, level or upright.

        Args:
            x1, y1, x2, y2: The dimension line.
            text: Its value. A level one has it below, an upright one to the right.
            extend: Length of the lines that lead to the measured edges: upwards or to the
                right where positive, downwards or to the left where negative.
        """
        level = abs(y2 - y1) <= abs(x2 - x1)
        self.line(x1, y1, x2, y2, "d")
        for x, y in ((x1, y1), (x2, y2)):
            self.line(x - 5, y + 5, x + 5, y - 5, "d")
            if extend and level:
                self.line(x, y - extend, x, y + math.copysign(5, extend), "d")
            elif extend:
                self.line(x + extend, y, x - math.copysign(5, extend), y, "d")
        if level:
            return self.text((x1 + x2) / 2, max(y1, y2) + 20, text, "b m halo")
        return self.text(max(x1, x2) + 8, (y1 + y2) / 2 + 6, text, "b halo")

    def leader(self, x1: float, y1: float, x2: float, y2: float) -> Drawing:
        """A thin line that ends in a point on what is meant."""
        return self.line(x1, y1, x2, y2, "i").circle(x2, y2, 3, "x")

    def balloon(self, number: int, x: float, y: float, to: Point | None = None) -> Drawing:
        """A number in a circle, with a leader to what the list below calls by it."""
        if to is not None:
            length = math.hypot(to[0] - x, to[1] - y) or 1.0
            self.leader(x + 12.5 * (to[0] - x) / length, y + 12.5 * (to[1] - y) / length, *to)
        self.circle(x, y, 12.5, "if")
        return self.text(x, y + 6, str(number), "n")

    def _arrow(self, x1: float, y1: float, x2: float, y2: float, line: str,
               head: str) -> Drawing:
        length = math.hypot(x2 - x1, y2 - y1) or 1.0
        ux, uy = (x2 - x1) / length, (y2 - y1) / length
        bx, by = x2 - 12 * ux, y2 - 12 * uy
        self.line(x1, y1, bx, by, line)
        corners = ((x2, y2), (bx - 7 * uy, by + 7 * ux), (bx + 7 * uy, by - 7 * ux))
        return self.add("polygon", class_=head,
                        points=" ".join(f"{at(x)},{at(y)}" for x, y in corners))

    def supply(self, x1: float, y1: float, x2: float, y2: float) -> Drawing:
        """Supply air: solid, filled head."""
        return self._arrow(x1, y1, x2, y2, "a", "af")

    def return_air(self, x1: float, y1: float, x2: float, y2: float) -> Drawing:
        """Return air: dashed, open head."""
        return self._arrow(x1, y1, x2, y2, "ret", "ao")

    # ---- done ----

    def svg(self) -> Markup:
        """The drawing alone."""
        key = self.key
        patterns = [
            tag("pattern", tag(shape, **shape_attributes), id=f"{key}-{suffix}",
                width=str(w), height=str(h), patternUnits="userSpaceOnUse")
            for suffix, w, h, (shape, shape_attributes) in
            (_PATTERNS[name] for name in self._patterns)]
        return tag("svg", tag("title", self.title, id=f"{key}-t"),
                   tag("desc", self.desc, id=f"{key}-d"),
                   tag("defs", patterns) if patterns else None, self._parts,
                   viewBox=f"0 0 {at(self.width)} {at(self.height)}", role="img",
                   aria_labelledby=f"{key}-t {key}-d")

    def figure(self, caption: str = "", legend: Sequence[str] = ()) -> Markup:
        """The drawing with its caption and the list its balloons point to."""
        below: list[Markup] = []
        if legend:
            below.append(tag("ol", [tag("li", tag("b", str(i)), tag("span", words))
                                    for i, words in enumerate(legend, 1)], class_="df-legend"))
        if caption:
            below.append(tag("p", caption) if legend else together(caption))
        return tag("figure", self.svg(), tag("figcaption", below) if below else None,
                   class_="df-fig")


# ---- scales -----------------------------------------------------------------------------

def nice_step(span: float, most: int) -> float:
    """The smallest step of 1, 2 or 5 times a power of ten that cuts `span` in at most `most`."""
    if not span > 0 or not math.isfinite(span):
        return 1.0
    power = 10.0 ** math.floor(math.log10(span / most))
    for mantissa in (1, 2, 5, 10, 20):
        if span / (mantissa * power) <= most + 1e-9:
            return mantissa * power
    return 50 * power


def _decimals(step: float) -> int:
    return max(0, -math.floor(math.log10(step) + 1e-9))


@dataclass(frozen=True)
class _Scale:
    """Numbers laid along a length: from `low` at `start` to `high` at `end`."""

    low: float
    high: float
    step: float
    start: float
    end: float

    def to(self, value: float) -> float:
        """Where a number lies."""
        return self.start + (value - self.low) * (self.end - self.start) / (self.high - self.low)

    def ticks(self) -> list[float]:
        """The labelled numbers."""
        first = math.ceil(self.low / self.step - 1e-9)
        last = math.floor(self.high / self.step + 1e-9)
        return [n * self.step for n in range(first, last + 1)]

    def label(self, value: float) -> str:
        """A labelled number as it is written."""
        return number_text(value, _decimals(self.step))


def _scale(values: Sequence[float], start: float, end: float, *, most: int = 4,
           zero: bool = False, pad: float = 0.0, whole: bool = True) -> _Scale:
    low, high = min(values), max(values)
    if zero:
        low, high = min(0.0, low), max(0.0, high)
    if high - low <= 1e-9 * max(abs(low), abs(high), 1e-6):
        room = max(abs(high) * 0.1, 10.0 ** -6)
        low, high = low - room, high + room
    span = high - low
    low, high = low - (pad * span if not (zero and low == 0) else 0.0), high + pad * span
    step = nice_step(high - low, most)
    if whole:
        low, high = math.floor(low / step + 1e-9) * step, math.ceil(high / step - 1e-9) * step
    return _Scale(low, high, step, start, end)


def _fitting(values: Sequence[float], start: float, end: float, *, most: int,
             zero: bool = False, pad: float = 0.0) -> _Scale:
    """A scale whose labels do not touch."""
    while True:
        scale = _scale(values, start, end, most=most, zero=zero, pad=pad)
        labels = [text_width(scale.label(t)) for t in scale.ticks()]
        room = abs(end - start) * scale.step / (scale.high - scale.low)
        if most <= 1 or max(labels) + 8 <= room:
            return scale
        most -= 1


def _shown(value: float, of: str, system: str) -> float:
    return convert(value, of, shown_unit(of, system))


def _unit_label(of: str, system: str) -> str:
    return unit(shown_unit(of, system)).label


# ---- the rule ---------------------------------------------------------------------------

@dataclass(frozen=True)
class Limit:
    """A limit on a rule: its value and its side, `least` or `most`."""

    value: float
    side: str
    word: str = ""


def _ruler(d: Drawing, scale: _Scale, y: float) -> None:
    d.line(scale.start, y, scale.end, y, "o")
    fine = scale.step / 5
    first = math.ceil(scale.low / fine - 1e-6)
    for n in range(first, math.floor(scale.high / fine + 1e-6) + 1):
        long = n % 5 == 0
        d.line(scale.to(n * fine), y, scale.to(n * fine), y + (12 if long else 7), "i")
    for tick in scale.ticks():
        x, label = scale.to(tick), scale.label(tick)
        half = text_width(label) / 2
        if x - half < 2:
            d.text(2, y + 32, label)
        elif x + half > d.width - 2:
            d.text(d.width - 2, y + 32, label, "e")
        else:
            d.text(x, y + 32, label, "m")


def rule(key: str, title: str, value: float, of: str, *, low: float | None = None,
         high: float | None = None, limits: Sequence[Limit] = (), decimals: int | None = None,
         system: str = "ip") -> Drawing:
    """The answer on a steel rule: range as an open bar, answer as a stroke, limits in oxide.

    Args:
        key: Unique on the page.
        title: What is measured.
        value: The answer. [of]
        of: Name of the unit.
        low, high: Ends of the range, if it is known. [of]
        limits: At most two. What lies beyond them is hatched. [of]
        decimals: Decimals for the text alternative. None: four digits.
        system: `ip` or `si`.
    """
    def say(number: float) -> str:
        return Quantity(number, of, decimals).text(system)

    ranged = low is not None and high is not None and high > low
    numbers = [value, *(e.value for e in limits)]
    if low is not None and high is not None and ranged:
        numbers += [low, high]
    desc = f"{title}: {say(value)}."
    if ranged and low is not None and high is not None:
        desc += f" From {say(low)} to {say(high)}."
    desc += "".join(f" {e.word.capitalize() + ', at' if e.word else 'At'} {e.side} {say(e.value)}."
                    for e in limits)
    placed = [Limit(_shown(e.value, of, system), e.side, e.word) for e in limits]
    extra = 22.0 * max(0, len(placed) - 1)
    d = Drawing(key, f"{title} on a rule: {say(value)}", desc, 104 + extra)
    scale = _fitting([_shown(n, of, system) for n in numbers], 12, 328, most=5, pad=0.04)
    base = 66 + extra
    v = scale.to(_shown(value, of, system))
    if ranged and low is not None and high is not None:
        a, b = scale.to(_shown(low, of, system)), scale.to(_shown(high, of, system))
        d.rect(a, base - 18, b - a, 18, "if")
        for one in placed:
            edge = scale.to(one.value)
            if one.side == "least" and edge > a:
                d.hatch(a, base - 18, min(edge, b) - a, 18)
            elif one.side == "most" and edge < b:
                d.hatch(max(edge, a), base - 18, b - max(edge, a), 18)
    _ruler(d, scale, base)
    d.rect(v - 2, base - 30, 4, 30, "x")
    for row, one in enumerate(placed):
        x = scale.to(one.value)
        words = f"{one.word or 'at ' + one.side} {_limit_text(one.value, of, decimals, system)}"
        half = text_width(words) / 2 + 3
        d.line(x, base - 40 - 22 * (len(placed) - 1 - row), x, base + 7, "w")
        d.text(min(max(x, half), d.width - half), 18 + 22 * row, words, "b m halo")
    return d


def rule_of_two(key: str, title: str, before: float, after: float, of: str, *,
                limits: Sequence[Limit] = (), decimals: int | None = None,
                system: str = "ip") -> Drawing:
    """Two readings of one thing on one rule: before as an open box, after as a stroke.

    Args:
        key: Unique on the page.
        title: What is measured.
        before, after: The readings. [of]
        of: Name of the unit.
        limits: At most two. [of]
        decimals: Decimals for the text alternative. None: four digits.
        system: `ip` or `si`.
    """
    def say(number: float) -> str:
        return Quantity(number, of, decimals).text(system)

    desc = f"{title}: before {say(before)}, after {say(after)}." + "".join(
        f" At {e.side} {say(e.value)}." for e in limits)
    placed = [Limit(_shown(e.value, of, system), e.side, e.word) for e in limits]
    d = Drawing(key, f"{title} on a rule, before and after", desc, 128 + 22 * len(placed))
    scale = _fitting([_shown(n, of, system) for n in (before, after, *(e.value for e in limits))],
                     12, 328, most=5, pad=0.04)
    base = 90.0 + 22 * len(placed)
    _ruler(d, scale, base)
    a, b = scale.to(_shown(before, of, system)), scale.to(_shown(after, of, system))
    d.rect(a - 5, base - 18, 10, 18, "if")
    d.rect(b - 2, base - 30, 4, 30, "x")
    for row, (x, words) in enumerate(((a, f"before {say(before)}"), (b, f"after {say(after)}"))):
        half = text_width(words) / 2 + 3
        d.text(min(max(x, half), d.width - half), base - 58 + 22 * row, words, "b m halo")
    for row, one in enumerate(placed):
        x = scale.to(one.value)
        words = f"{one.word or 'at ' + one.side} {_limit_text(one.value, of, decimals, system)}"
        half = text_width(words) / 2 + 3
        d.line(x, base - 80, x, base + 7, "w")
        d.text(min(max(x, half), d.width - half), 18 + 22 * row, words, "b m halo")
    return d


def _limit_text(shown: float, of: str, decimals: int | None, system: str) -> str:
    if decimals is None:
        return digits_text(shown)
    return number_text(shown, shown_decimals(decimals, of, shown_unit(of, system)))


def now_then(key: str, title: str, desc: str, of: str, *, now: Point, then: Point,
             now_text: str, then_text: str, limits: Sequence[Limit] = (),
             system: str = "ip") -> Drawing:
    """Two ranges on one scale: as it is now, and after the next measurement.

    Args:
        key, title, desc: As for a drawing.
        of: Name of the unit.
        now, then: Low and high. [of]
        now_text, then_text: What stands over each bar.
        limits: Oxide strokes through both. [of]
        system: `ip` or `si`.
    """
    d = Drawing(key, title, desc, 134, 306)
    placed = [Limit(_shown(e.value, of, system), e.side) for e in limits]
    ends = [_shown(n, of, system) for n in (*now, *then)]
    scale = _scale([*ends, *(e.value for e in placed)], 6, 300, whole=False, pad=0.06)
    for y, (low, high), words in ((40, ends[:2], now_text), (104, ends[2:], then_text)):
        a, b = scale.to(low), scale.to(high)
        d.text(6, y - 10, words, "b")
        d.rect(a, y, max(b - a, 1.5), 16, "if")
        for one in placed:
            edge = scale.to(one.value)
            if one.side == "least" and edge > a:
                d.hatch(a, y, min(edge, b) - a, 16)
            elif one.side == "most" and edge < b:
                d.hatch(max(edge, a), y, b - max(edge, a), 16)
        d.line(6, y + 20, 300, y + 20, "i")
        for one in placed:
            d.line(scale.to(one.value), y - 4, scale.to(one.value), y + 26, "w")
    return d


# ---- shares -----------------------------------------------------------------------------

def bars(key: str, title: str, rows: Sequence[tuple[str, float]], of: str, *, head: str = "",
         decimals: int = 0, system: str = "ip", outside: Sequence[str] = (),
         desc: str = "", keep_order: bool = False) -> Drawing:
    """Shares as ruled bars on one rule, largest first, number at the right edge.

    Args:
        key, title: As for a drawing.
        rows: Label and number of each part, none below zero. [of]
        of: Name of the unit.
        head: What the numbers are, over the first bar.
        decimals: Decimals of the numbers in `of`.
        system: `ip` or `si`.
        outside: Labels of the parts that are outside their limit: hatched.
        desc: Text alternative. Empty: the rows in words.
        keep_order: For a sequence such as months, whose own order says something.

    Raises:
        ValueError: A number below zero, or no row.
    """
    if not rows or any(not v >= 0 for _, v in rows):
        raise ValueError(f"bars need numbers of zero or more, got {list(rows)}")
    to = shown_unit(of, system)
    digits = shown_decimals(decimals, of, to)
    ordered = list(rows) if keep_order else sorted(rows, key=lambda r: -r[1])
    shown = [(label, _shown(v, of, system)) for label, v in ordered]
    label = unit(to).label
    said = ", ".join(f"{name} {number_text(v, digits)}" for name, v in shown)
    head = head or label
    desc = desc or f"{title}{', ' + label if label else ''}: {said}."
    d = Drawing(key, title, desc, 48 + 52 * len(shown) + 40)
    scale = _fitting([0.0, *(v for _, v in shown)], 20, 320, most=4, zero=True)
    d.text(20, 18, head, "b")
    y = 44.0
    for name, value in shown:
        d.text(28, y, name).text(332, y, number_text(value, digits), "b e")
        width = scale.to(value) - 20
        d.rect(20, y + 8, width, 16, "if")
        if name in outside:
            d.hatch(20, y + 8, width, 16)
        y += 52
    base = y - 12
    d.path(f"M20 30V{at(base)}H328", "o")
    _bar_ticks(d, scale, base)
    return d


def _bar_ticks(d: Drawing, scale: _Scale, base: float) -> None:
    fine = scale.step / 4
    for n in range(round(scale.high / fine) + 1):
        x = scale.to(n * fine)
        long = n % 4 == 0
        d.line(x, base, x, base + (12 if long else 7), "i")
        if long:
            label = scale.label(n * fine)
            if x + text_width(label) / 2 > d.width - 4:
                d.text(d.width - 4, base + 31, label, "e")
            else:
                d.text(x, base + 31, label, "m")


# ---- charts -----------------------------------------------------------------------------

@dataclass(frozen=True)
class Line:
    """A line of a chart.

    Attributes:
        label: Written on the line. Empty: none.
        points: In the units of the axes, from left to right.
        style: `new` solid ink, `old` dashed, `air` spruce, `limit` oxide, `thin`, `guide`, or
            `dots` for single points without a line.
        backup: Fills what is under it with the pattern of backup heat.
    """

    label: str
    points: Sequence[Point]
    style: str = "new"
    backup: bool = False


@dataclass(frozen=True)
class Mark:
    """One marked place on the x axis: its points, and what is written beside each."""

    x: float
    points: Sequence[tuple[float, str]]


_STYLES = {"new": "o", "old": "h fur", "air": "a", "limit": "w", "thin": "i", "guide": "g"}


def chart(key: str, title: str, desc: str, *, x: tuple[str, str], y: tuple[str, str],
          lines: Sequence[Line], mark: Mark | None = None, system: str = "ip",
          zero: bool = True, height: float = 304) -> Drawing:
    """A line chart: axis words at the ends of the axes, lines labelled on the line.

    Args:
        key, title, desc: As for a drawing; `desc` says what the lines say.
        x, y: Word and unit of each axis. Points are in these units.
        lines: What is drawn, the most important last.
        mark: One marked point with its numbers.
        system: `ip` or `si`.
        zero: Whether the upright axis starts at zero.
        height: In units.
    """
    d = Drawing(key, title, desc, height)
    drawn = [(one, [(_shown(a, x[1], system), _shown(b, y[1], system)) for a, b in one.points])
             for one in lines if one.points]
    if not drawn:
        raise ValueError(f"{key}: a chart without a line")
    marked = [] if mark is None else [(_shown(v, y[1], system), words) for v, words in mark.points]
    spot = None if mark is None else _shown(mark.x, x[1], system)
    xs = [p[0] for _, points in drawn for p in points] + ([] if spot is None else [spot])
    ys = [p[1] for _, points in drawn for p in points] + [v for v, _ in marked]
    top, base = 50.0, height - 54
    up = _scale(ys, base, top, most=5, zero=zero)
    left = 14 + max(text_width(up.label(t)) for t in up.ticks())
    across = _fitting(xs, left, 328, most=6)
    for tick in up.ticks():
        d.line(left, up.to(tick), 328, up.to(tick), "g")
        d.text(left - 8, up.to(tick) + 6, up.label(tick), "e")
    for tick in across.ticks():
        d.line(across.to(tick), base, across.to(tick), base + 7, "i")
        label = across.label(tick)
        place = min(across.to(tick), 338 - text_width(label) / 2)
        d.text(place, base + 26, label, "m")
    d.path(f"M{at(left)} {at(top)}V{at(base)}H328", "o")
    placed = [(one, [(across.to(a), up.to(b)) for a, b in points]) for one, points in drawn]
    for one, points in placed:
        if one.backup:
            d.hatch_area([(points[0][0], up.to(max(0.0, up.low))), *points,
                          (points[-1][0], up.to(max(0.0, up.low)))], "backup")
        if one.style == "dots":
            for a, b in points:
                d.dot(a, b)
        else:
            d.polyline(points, _STYLES[one.style])
    ink = _Ink([points for one, points in placed if one.style != "guide"], height)
    taken: list[_Box] = []
    if spot is not None:
        mx = across.to(spot)
        d.line(mx, top, mx, base, "d")
        for v, words in sorted(marked, key=lambda m: -m[0]):
            my = up.to(v)
            d.circle(mx, my, 5, "if")
            right, ty, box = _mark_spot(mx, my, text_width(words), ink, taken, left,
                                        [up.to(o) for o, _ in marked])
            d.text(mx + 9 if right else mx - 9, ty, words, "b halo" if right else "b e halo")
            taken.append(box)
        taken.append((mx - 4, top, mx + 4, base))
    for one, points in placed:
        if one.label:
            tx, ty, box = _label_spot(one.label, points, ink, _Ink([points], height), taken,
                                      left, top, base)
            d.text(tx, ty, one.label, "b halo")
            taken.append(box)
    word, of = y
    d.text(min(left, 40), 18, _axis(word, of, system), "b")
    word, of = x
    d.text(336, height - 6, _axis(word, of, system), "b e")
    return d


def _axis(word: str, of: str, system: str) -> str:
    label = _unit_label(of, system)
    return f"{word}, {label}" if label else word


def _along(points: Sequence[Point], every: float = 6.0) -> list[Point]:
    """Points close together along a line."""
    out: list[Point] = [points[0]]
    for (x1, y1), (x2, y2) in itertools.pairwise(points):
        pieces = max(1, min(200, int(math.hypot(x2 - x1, y2 - y1) / every)))
        out += [(x1 + (x2 - x1) * n / pieces, y1 + (y2 - y1) * n / pieces)
                for n in range(1, pieces + 1)]
    return out


class _Ink:
    """How much line lies in a box, counted once in small squares."""

    SIDE = 5.0

    def __init__(self, lines: Sequence[Sequence[Point]], height: float) -> None:
        self.columns = int(WIDTH / self.SIDE) + 2
        self.lines = int(height / self.SIDE) + 2
        count = [[0] * (self.columns + 1) for _ in range(self.lines + 1)]
        for line in lines:
            for x, y in _along(line, self.SIDE):
                column, row = int(x / self.SIDE), int(y / self.SIDE)
                if 0 <= column < self.columns and 0 <= row < self.lines:
                    count[row + 1][column + 1] += 1
        for row in range(1, self.lines + 1):
            above, own, so_far = count[row - 1], count[row], 0
            for column in range(1, self.columns + 1):
                so_far += own[column]
                own[column] = above[column] + so_far
        self.count = count

    def under(self, box: _Box) -> int:
        """Points of line in a box."""
        a = max(0, min(self.columns, int(box[0] / self.SIDE)))
        b = max(0, min(self.columns, int(box[2] / self.SIDE) + 1))
        c = max(0, min(self.lines, int(box[1] / self.SIDE)))
        d = max(0, min(self.lines, int(box[3] / self.SIDE) + 1))
        return self.count[d][b] - self.count[c][b] - self.count[d][a] + self.count[c][a]


def _mark_spot(mx: float, my: float, wide: float, ink: _Ink, taken: Sequence[_Box], left: float,
               marks: Sequence[float]) -> tuple[bool, float, _Box]:
    """On which side of a marked point, and how high, its number crosses the least."""
    best: tuple[bool, float, _Box] | None = None
    best_cost = math.inf
    for right in (True, False):
        for rise in (-9, 6, 21, -20):
            start = mx + 9 if right else mx - 9 - wide
            box = (start, my + rise - 15, start + wide, my + rise + 4)
            cost = abs(rise - 6) * 0.02 + (0.0 if right else 0.1)
            cost += 50 * max(0.0, left + 3 - box[0], box[2] - 337)
            cost += 2 * ink.under(box)
            middle = my + rise - 5
            cost += 300 * sum([abs(middle - m) < abs(middle - my) - 0.1 for m in marks])
            cost += 400 * sum([_overlap(box, other) for other in taken])
            if cost < best_cost:
                best, best_cost = (right, my + rise, box), cost
    assert best is not None
    return best


def _label_spot(label: str, points: Sequence[Point], ink: _Ink, own: _Ink,
                taken: Sequence[_Box], left: float, top: float,
                base: float) -> tuple[float, float, _Box]:
    """Where a label touches its own line, and no other line or label if that can be had."""
    along = _along(points)
    wide = text_width(label)
    best: tuple[float, float, _Box] | None = None
    best_cost = math.inf
    for n, (px, py) in enumerate(along[:: max(1, len(along) // 16)]):
        for above in (True, False):
            y1 = py - 7 if above else py + 22
            for shift in (0.0, 0.5, 1.0):
                x0 = px - wide * shift
                box = (x0, y1 - 15, x0 + wide, y1 + 4)
                cost = 0.01 * n + (0.0 if above else 0.2)
                cost += 50 * max(0.0, left + 3 - box[0], box[2] - 337)
                cost += 50 * max(0.0, top - 24 - box[1], box[3] - base + 2)
                if cost >= best_cost:
                    continue
                cost += 4 * ink.under(box) - 2 * own.under(box)
                cost += 400 * sum([_overlap(box, other) for other in taken])
                if cost < best_cost:
                    best, best_cost = (x0, y1, box), cost
    assert best is not None
    return best


def _overlap(a: _Box, b: _Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


# ---- strips -----------------------------------------------------------------------------

def strip(origins: Sequence[str]) -> Markup:
    """One piece per fact, drawn as the line under its value; an open box where it is missing.

    Args:
        origins: Where each value comes from; empty where it is missing.
    """
    counts = [(word, origins.count(word)) for word in
              ("measured", "data sheet", "estimated", "assumed")]
    counts.append(("missing", origins.count("")))
    label = ", ".join(f"{n} {word}" for word, n in counts if n)
    wide = 340 / max(1, len(origins))
    parts: list[Markup] = []
    for n, origin in enumerate(origins):
        a, b = at(n * wide + 1.5), at((n + 1) * wide - 1.5)
        if origin == "measured":
            parts.append(tag("path", class_="o", d=f"M{a} 9H{b}"))
        elif origin == "data sheet":
            parts.append(tag("path", class_="i", d=f"M{a} 5.5H{b}M{a} 11H{b}"))
        elif origin == "estimated":
            parts.append(tag("path", class_="strip-e", d=f"M{a} 9H{b}"))
        elif origin == "assumed":
            parts.append(tag("path", class_="strip-a", d=f"M{a} 9H{b}"))
        else:
            parts.append(tag("rect", class_="strip-n", x=a, y="3", height="11",
                             width=at(max(1.0, wide - 3))))
    return tag("svg", parts, class_="df-strip", viewBox="0 0 340 16", preserveAspectRatio="none",
               role="img", aria_label=label or "nothing yet")
