"""Things that several drawings show: stations, boxes with words, a broken wall, a flame."""

from __future__ import annotations

from downflow.drawing import Drawing, at, text_width
from downflow.markup import Markup
from downflow.render.prose import quantity_html


def q(value: str, unit: str) -> Markup:
    """A number in both unit systems, for a legend."""
    return quantity_html(value, unit)


def calculator_figure(id_: str) -> Markup:
    """The figure of a calculator for the worked example, so that both show the same numbers."""
    from downflow.render.calculator import regions

    return Markup(regions(id_, None, ranged=False)["figure"])


def boxed(d: Drawing, x: float, y: float, w: float, h: float, *lines: str, css: str = "of") -> None:
    """A rectangle with one to three lines of lettering in its middle."""
    for line in lines:
        if text_width(line) > w - 4:
            raise ValueError(f"{line!r} is wider than its box")
    d.rect(x, y, w, h, css)
    first = y + h / 2 + 6 - 11 * (len(lines) - 1)
    for i, line in enumerate(lines):
        d.text(x + w / 2, first + 22 * i, line, "m")


def down(d: Drawing, x: float, y1: float, y2: float) -> None:
    """A thin way down with an arrow head, for an order of work."""
    d.line(x, y1, x, y2 - 9, "i")
    d.add("polygon", class_="x", points=f"{at(x)},{at(y2)} {at(x - 5)},{at(y2 - 10)} "
                                        f"{at(x + 5)},{at(y2 - 10)}")


def across(d: Drawing, x1: float, x2: float, y: float) -> None:
    """The same, sideways."""
    tip = 10 if x2 > x1 else -10
    d.line(x1, y, x2 - tip + 1, y, "i")
    d.add("polygon", class_="x", points=f"{at(x2)},{at(y)} {at(x2 - tip)},{at(y - 5)} "
                                        f"{at(x2 - tip)},{at(y + 5)}")


def ground(d: Drawing, y: float, x1: float = 8, x2: float = 332, depth: float = 10) -> None:
    """The ground, cut."""
    d.line(x1, y, x2, y, "o")
    d.hatch_area([(x1, y), (x2, y), (x2, y + depth), (x1, y + depth)])


def pleats(d: Drawing, x: float, y: float, w: float, h: float, every: float = 9) -> None:
    """Flexible duct, seen from the side: the turns of its wire."""
    d.rect(x, y, w, h, "of")
    step = w / max(1, round(w / every))
    turns = "".join(f"M{at(x + step * i)} {at(y)}V{at(y + h)}"
                    for i in range(1, round(w / step)))
    d.path(turns, "pl")


def register(d: Drawing, x: float, y: float, w: float = 16, h: float = 22) -> None:
    """A floor register in plan."""
    d.rect(x, y, w, h, "if")
    d.path("".join(f"M{at(x + 4)} {at(y + k)}H{at(x + w - 4)}" for k in (6, 11, 16)), "pl")


def valve(d: Drawing, x: float, y: float, size: float = 8) -> None:
    """A shut-off valve: two triangles, point to point."""
    d.path(f"M{at(x - size)} {at(y - size)}L{at(x + size)} {at(y + size)}V{at(y - size)}"
           f"L{at(x - size)} {at(y + size)}Z", "of")


def gauge(d: Drawing, x: float, y: float, r: float = 14) -> None:
    """A dial with its hand."""
    d.circle(x, y, r, "of")
    d.line(x, y, x + r * 0.55, y - r * 0.55, "o")


def cylinder(d: Drawing, x: float, y: float, w: float, h: float) -> None:
    """A gas cylinder, its valve on top."""
    r = w / 2
    d.path(f"M{at(x)} {at(y + h)}V{at(y + r)}Q{at(x)} {at(y)} {at(x + r)} {at(y)}"
           f"Q{at(x + w)} {at(y)} {at(x + w)} {at(y + r)}V{at(y + h)}Z", "of")
    d.rect(x + r - 4, y - 12, 8, 12, "of")


def lock(d: Drawing, x: float, y: float) -> None:
    """A padlock, its body at the point."""
    d.path(f"M{at(x - 5)} {at(y)}V{at(y - 7)}Q{at(x)} {at(y - 15)} {at(x + 5)} {at(y - 7)}"
           f"V{at(y)}", "i")
    d.rect(x - 8, y, 16, 13, "x")
