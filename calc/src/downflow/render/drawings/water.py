"""Drawings of the water side: trap, drain, float switch, freeze protection."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup


def condensate_trap() -> Markup:
    """The trap of pipe, tees and elbows, its two heights by letter."""
    d = Drawing(
        "condensate-trap", "Condensate trap of pipe, tees and elbows",
        "From the pan outlet in the cabinet: a union, then a tee with a capped cleanout on top, "
        "pipe down, two elbows, up into a second tee with an open vent on top and the drain to "
        "the side. H is measured from the bottom inside of the pan outlet down to the bottom "
        "inside of the drain outlet, J from there down to the top of the bottom bend. The trap "
        "hangs inside the closet.", 366)
    d.text(34, 18, "cabinet, below room pressure", "b")
    d.path("M34 32H84V117.6M84 142.8V284L78 290 90 298 84 304V352M34 32V284L28 290 40 298 34 304"
           "V352", "o")
    d.path("M34 78L59 52 84 78", "i")
    d.path("M40 124V140H84", "o")
    d.add("rect", x="41.5", y="128", width="42", height="10.5", fill=d.fill_of("water"))
    d.path("M84 140H260", "d")
    for x, y, w, h in ((84, 117.6, 30, 25.2), (130.4, 76, 25.2, 23.2), (130.4, 161.2, 25.2, 48.8)):
        d.rect(x, y, w, h, "of")
    d.path("M192.4 58V147.2H217.6V58", "of")
    d.path("M316 165.6H236V190.8H316", "of")
    d.path("M316 162.6C310 174.2 322 182.2 316 193.8", "i")
    for x, y, w, h in (
            (129, 116.2, 28, 28), (191, 164.2, 28, 28), (126.5, 99.2, 33, 17),
            (112, 113.7, 17, 33), (126.5, 144.2, 33, 17), (188.5, 147.2, 33, 17),
            (219, 161.7, 17, 33), (188.5, 192.2, 33, 17)):
        d.rect(x, y, w, h, "of")
    d.path("M129 227V241Q129 255 143 255H157V227Z", "of")
    d.path("M219 227V241Q219 255 205 255H191V227Z", "of")
    for x, y, w, h in ((126.5, 210, 33, 17), (157, 224.5, 17, 33), (188.5, 210, 33, 17),
                       (174, 224.5, 17, 33), (126.5, 66, 33, 14), (89, 113.7, 18, 33)):
        d.rect(x, y, w, h, "of")
    d.path("M98 113.7V146.7", "i")
    for x, y, w, h in ((133.2, 188, 19.6, 62.8), (152.8, 231.2, 42.4, 19.6),
                       (195.2, 188, 19.6, 62.8)):
        d.add("rect", x=str(x), y=str(y), width=str(w), height=str(h), fill=d.fill_of("water"))
    d.path("M133.2 188h19.6M195.2 188h19.6", "i")
    d.path("M248 140V188M243 145L253 135M243 193L253 183M238 188H258", "d")
    d.path("M248 188V231.2M224.5 231.2H258M243 236.2L253 226.2", "d")
    d.text(262, 158, "H", "b halo")
    d.text(258, 219, "J", "b halo")
    d.supply(272, 178.2, 304, 178.2)
    d.path("M8 352H336", "o")
    d.hatch_area([(8, 352), (336, 352), (336, 366), (8, 366)])
    d.text(98, 312, "below: blower, kit, box")
    d.text(98, 340, "closet floor")
    d.balloon(1, 143, 50)
    d.balloon(2, 205, 36)
    d.balloon(3, 104, 88)
    d.balloon(4, 174, 281.6, to=(174, 247))
    return d.figure(
        "H: the static at the pan plus 1 in, at least 2 in. J: half of H, at least 1 in.",
        legend=["cleanout with cap, before the trap: air-tight, or the trap does nothing",
                "open vent, after the trap, its end above the rim of the pan",
                "union: the trap comes off without a saw",
                "tees and elbows pushed together; deeper is fine"])


DRAWINGS = {"condensate-trap": condensate_trap}
