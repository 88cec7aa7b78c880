"""Drawings of the ducts: trunks, crossovers, supports."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import ground, pleats, q, register


def under_floor_plan() -> Markup:
    """Trunks and crossovers from below, with what is found there."""
    d = Drawing(
        "under-floor-plan", "Trunks and crossovers from below, and what is found there",
        "A double-section home from below, marriage line in the middle. Trunk A lies under the "
        "closet. A crossover leads from the box to trunk B. A second, older crossover lies near "
        "the far end: one of its ends is open. One piece is crushed by a strap, one lies in "
        "water, one is torn by an animal. Both trunk ends must be capped.", 468)
    d.rect(34, 20, 252, 420, "o")
    d.line(160, 10, 160, 450, "c")
    d.rect(84, 60, 26, 340, "h")
    d.rect(212, 60, 26, 340, "h")
    d.rect(78, 196, 38, 48, "of")
    pleats(d, 116, 208, 88, 24)
    d.rect(204, 202, 42, 36, "if")
    pleats(d, 124, 356, 80, 22)
    d.polyline([(110, 362), (124, 356)], "i")
    d.path("M160 208L166 214 160 220 166 226 160 232", "w")
    d.path("M176 378q6 10 0 20M186 378q6 10 0 20M168 378q6 10 0 20", "pl")
    for x, y in ((88, 90), (88, 150), (88, 300), (216, 100), (216, 160), (216, 310)):
        register(d, x, y, 16, 22)
    d.path("M78 60H116M78 400H116M206 60H244M206 400H244", "w")
    d.polyline([(40, 110), (84, 110)], "h")
    d.polyline([(238, 270), (280, 270)], "h")
    d.balloon(1, 54, 220, to=(78, 220))
    d.balloon(2, 140, 180, to=(140, 208))
    d.balloon(3, 178, 180, to=(164, 212))
    d.balloon(4, 264, 220, to=(246, 220))
    d.balloon(5, 58, 330, to=(116, 358))
    d.balloon(6, 180, 420, to=(178, 396))
    d.balloon(7, 136, 52, to=(112, 60))
    d.balloon(8, 264, 300, to=(262, 272))
    return d.figure(
        "A triple-section home has a third trunk and a second crossover: walk on until every "
        "trunk has been fed once and capped twice.", legend=[
            "closet, box and trunk A", "crossover to trunk B",
            "torn, crushed or kinked",
            "where it enters trunk B: collar, screws, seal",
            "second crossover with an open end: it blows into the crawl space",
            "lies in water or on the ground: the insulation is lost",
            "trunk end: capped, or open into the belly?",
            "branch in the belly to a register at the wall: is it still on?"])


def hung_crossover() -> Markup:
    """A crossover hung from straps between two collars."""
    d = Drawing(
        "hung-crossover", "A crossover hung from straps",
        "Two floors side by side, marriage line between them. From the collar of box or trunk A "
        "the insulated duct runs straight to the collar of trunk B. Straps hang it from the "
        "frame, at most four feet apart, wider than the gap between two wires. It is pulled "
        "straight, nowhere squeezed, and clear of the ground.", 324)
    d.path("M8 40H332M170 20V60", "o")
    d.hatch(8, 28, 156, 12)
    d.hatch(176, 28, 156, 12)
    d.rect(16, 56, 60, 40, "of")
    d.rect(264, 56, 60, 40, "of")
    d.path("M30 96V132M62 96V132M278 96V132M310 96V132", "o")
    d.path("M30 132Q30 190 84 190H256Q310 190 310 132M62 132Q62 150 84 150H256Q278 150 278 132",
           "of")
    for x in (96, 108, 120, 132, 144, 156, 168, 180, 192, 204, 216, 228, 240):
        d.line(x, 150, x, 190, "pl")
    for x in (110, 230):
        d.path(f"M{x - 8} 40V196H{x + 8}V40", "i")
        d.hatch(x - 8, 190, 16, 7)
    d.path("M26 120H66M274 120H314M26 126H66M274 126H314", "o")
    ground(d, 268, 8, 332, 12)
    d.dimension(110, 218, 230, 218, "at most 4 ft", extend=20)
    d.path("M60 188V268M55 193L65 183M55 273L65 263", "d")
    d.balloon(1, 118, 112, to=(66, 122))
    d.balloon(2, 170, 100, to=(170, 152))
    d.balloon(3, 300, 214, to=(238, 192))
    d.balloon(4, 86, 250, to=(62, 244))
    d.balloon(5, 26, 212, to=(36, 172))
    d.text(8, 312, "Straight, nowhere squeezed.", "b")
    return d.figure(legend=[
        "inner liner over the collar, clamped, mastic; then insulation, then jacket, each taped",
        "no kink, no sag: length cut to fit, not folded",
        together("strap at least ", q("0.5", "in"), " wider than the gap between two wires; at "
                 "most ", q("4", "ft"), " apart"),
        "never on the ground",
        "bend no tighter than one duct diameter, or a sheet-metal elbow"])


DRAWINGS = {"under-floor-plan": under_floor_plan, "hung-crossover": hung_crossover}
