"""Drawings of what is seen when something is wrong: ice and water by their places."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup
from downflow.render.drawings.kit import ground


def _unit(d: Drawing, x: float, y: float) -> None:
    d.rect(x, y, 84, 76, "of")
    d.circle(x + 42, y + 38, 26, "if")
    d.path(f"M{x + 12} {y + 76}V{y + 96}M{x + 72} {y + 76}V{y + 96}", "o")


def frost_or_ice() -> Markup:
    """Frost that is normal, and three kinds of ice that are not."""
    d = Drawing(
        "frost-or-ice", "Frost that is normal, and three kinds of ice that are not",
        "Four outdoor units. Upper left: a thin white coat over the whole coil, normal, gone after "
        "the next defrost. Upper right: the whole coil stays in thick ice. Lower left: ice grows "
        "from the ground into the bottom of the unit. Lower right: ice only where drip from the "
        "roof falls, or only around the lower tubes.", 316)
    for x, y in ((40, 20), (216, 20), (40, 166), (216, 166)):
        _unit(d, x, y)
        ground(d, y + 96, x - 32, x + 116, 8)
    d.hatch(40, 20, 12, 76, "filter")
    d.hatch(112, 20, 12, 76, "filter")
    d.hatch(206, 12, 20, 92)
    d.hatch(290, 12, 20, 92)
    d.hatch_area([(30, 262), (52, 214), (70, 236), (94, 236), (112, 214), (134, 262)])
    d.path("M30 262L52 214 70 236H94L112 214L134 262", "i")
    d.hatch_area([(272, 166), (300, 166), (306, 262), (288, 262)])
    d.path("M272 166H300L306 262H288Z", "i")
    d.path("M250 150L318 166M290 154v8M284 152v6", "h")
    d.balloon(1, 20, 50)
    d.balloon(2, 188, 50)
    d.balloon(3, 20, 196)
    d.balloon(4, 188, 196)
    d.text(8, 308, "1 is normal. 2, 3, 4 are not.", "b")
    return d.figure(legend=[
        "thin white coat, all over, gone after the next defrost",
        "thick ice all over that stays: defrost, charge or airflow",
        "ice that grows from the ground: water cannot leave",
        "ice in one place: drip from the roof, or a blocked or starved part of the coil"])


def water_by_place() -> Markup:
    """Where water at the air handler comes from, by the place where it is found."""
    d = Drawing(
        "water-by-place", "Where water at the air handler comes from",
        "A downflow air handler from the side. Water is found at four places: at the line set "
        "where it enters, at the edge of the pan under the coil, at trap and drain beside the "
        "cabinet, and below in the floor box. A fifth place is the floor around it, with the air "
        "handler dry.", 360)
    d.rect(96, 20, 130, 250, "of")
    d.hatch(104, 40, 114, 18, "filter")
    d.polyline([(110, 124), (161, 74), (212, 124)], "o")
    d.path("M104 124V140H218V124", "o")
    d.hatch(106, 128, 110, 10, "water")
    d.circle(161, 190, 28, "o")
    d.path("M118 248l8-10 8 20 8-20 8 20 8-20 8 20 8-20 8 20 8-20 8 10", "i")
    d.path("M226 136H262V168Q262 180 272 180Q282 180 282 168V152H322", "o")
    d.path("M262 136V116", "o")
    d.path("M96 92H40M96 104H40", "o")
    d.path("M52 104q-4 8 0 12M70 104q-4 8 0 12", "i")
    d.path("M106 270V322M216 270V322", "o")
    d.hatch(8, 286, 94, 12)
    d.hatch(220, 286, 112, 12)
    d.path("M126 140q-5 10 0 16t0 16M196 140q-5 10 0 16t0 16", "i")
    d.path("M140 300q-4 8 0 14M180 300q-4 8 0 14", "i")
    d.path("M22 282H80M262 282H320", "w")
    d.balloon(1, 40, 134, to=(54, 112))
    d.balloon(2, 60, 180, to=(122, 158))
    d.balloon(3, 300, 214, to=(274, 182))
    d.balloon(4, 160, 342, to=(160, 308))
    d.balloon(5, 44, 256, to=(44, 280))
    return d.figure(legend=[
        "at the lines: foam open, sweat",
        "over the pan’s edge: trap dry or too low, cabinet not level, dirty coil",
        "at trap or drain: joint, blockage, vent that spits",
        "in the box: pan missed, coil turned without its parts, air so fast that it carries drops",
        "on the floor, cabinet dry: plumbing, roof, or water heater beside it"])


DRAWINGS = {"frost-or-ice": frost_or_ice, "water-by-place": water_by_place}
