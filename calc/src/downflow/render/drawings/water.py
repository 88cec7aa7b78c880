"""Drawings of the water side: trap, drain, float switch, freeze protection."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import ground, q


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


def drain_in_the_cold() -> Markup:
    """A drain that leaves the closet and does not freeze."""
    d = Drawing(
        "drain-in-the-cold", "A drain that does not freeze",
        "The trap stands in the warm closet above the floor. From it the drain goes straight "
        "down through a sealed sleeve, then falls without a dip through the crawl space, "
        "insulated, on hangers, and out through the skirting, where it ends above gravel, clear "
        "of snow. At the lowest place of the trap is a plug to drain it for winter.", 322)
    d.path("M20 20V130M150 20V130M20 20H150", "o")
    d.hatch(8, 130, 52, 12)
    d.hatch(78, 130, 254, 12)
    d.hatch(8, 142, 52, 34, "filter")
    d.hatch(78, 142, 254, 34, "filter")
    d.path("M8 176H60M78 176H332", "o")
    d.path("M30 60H96V96H110V70H126V104H74V200", "o")
    d.path("M30 52H104V88", "g")
    d.rect(62, 124, 14, 58, "if")
    d.path("M58 128H80M58 178H80", "w")
    d.polyline([(69, 190), (69, 206), (292, 236), (292, 262)], "o")
    d.polyline([(60, 190), (60, 214), (284, 245), (284, 262)], "o")
    d.path("M56 190V216L280 248M74 190V203L292 231", "h")
    for x, y in ((130, 214), (210, 225)):
        d.line(x, 176, x, y, "i")
    d.rect(268, 176, 8, 108, "of")
    ground(d, 284)
    d.path("M280 278q6-6 12 0t12 0 12 0 12 0", "pl")
    d.balloon(1, 176, 60, to=(126, 84))
    d.balloon(2, 30, 100, to=(98, 96))
    d.balloon(3, 24, 206, to=(60, 178))
    d.balloon(4, 170, 268, to=(170, 230))
    d.balloon(5, 130, 248, to=(130, 216))
    d.balloon(6, 314, 246, to=(293, 252))
    return d.figure(legend=[
        "trap in the warm closet", "drain plug at its lowest place, reached by hand",
        "sleeve, sealed at floor and belly",
        "insulated pipe, falling all the way, no dip where water stays",
        together("hanger at most every ", q("4", "ft")),
        "open end, clear of snow, off every walk and step"])


def outdoor_stand() -> Markup:
    """The outdoor unit on its stand, and where its water goes."""
    d = Drawing(
        "outdoor-stand", "The outdoor unit on a stand, with the way of its water",
        "The unit stands on a frame above the usual snow, on a pad that does not touch the home. "
        "Defrost water falls through, onto gravel that slopes away from home, walk and steps. "
        "A hood keeps the snow of the roof off. Free space is left at the back, in front, at the "
        "service side and above.", 356)
    d.rect(8, 40, 14, 250, "of")
    d.hatch(8, 40, 14, 250)
    d.path("M8 40L70 62 70 70 22 54", "o")
    d.rect(104, 110, 120, 110, "of")
    d.circle(164, 165, 42, "i")
    d.circle(164, 165, 8, "i")
    d.path("M98 220H230M106 220V284M222 220V284M106 250H222", "o")
    d.rect(92, 284, 144, 12, "of")
    d.path("M8 290H92M236 290L332 308", "o")
    d.path("M60 262Q80 250 104 258M228 256Q270 246 332 262", "g")
    d.path("M92 296L84 326H262L332 330", "i")
    d.add("path", d="M92 296H236L332 312V330L262 326H84Z", fill=d.fill_of("water"))
    d.path("M150 224v10M164 224v14M178 224v10", "a")
    d.supply(258, 316, 316, 324)
    d.dimension(22, 144, 104, 144, "back")
    d.dimension(224, 190, 320, 190, "front")
    d.dimension(250, 220, 250, 284, "")
    d.dimension(164, 60, 164, 110, "above")
    d.rect(30, 170, 12, 26, "of")
    d.polyline([(42, 190), (70, 206), (104, 206)], "i")
    d.balloon(1, 298, 254, to=(252, 252))
    d.balloon(2, 298, 350 - 14, to=(280, 322))
    d.balloon(3, 40, 316, to=(96, 292))
    d.balloon(4, 96, 44, to=(68, 64))
    d.balloon(5, 52, 236, to=(38, 196))
    return d.figure(legend=[
        together("height of the stand: the usual snow plus ", q("3", "in"), " at least, often ",
                 q("12..18", "in")),
        "gravel that leads the water away; where it freezes nobody walks",
        "pad level, free of the home",
        "no roof edge drops water or snow on it, or a hood carries it off",
        "disconnect in sight, beside the unit and not behind it"])


DRAWINGS = {
    "condensate-trap": condensate_trap, "drain-in-the-cold": drain_in_the_cold,
    "outdoor-stand": outdoor_stand,
}
