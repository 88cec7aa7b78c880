"""Drawings of taking the old plant out: refrigerant, furnace, openings."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup
from downflow.render.drawings.kit import cylinder, gauge, ground, lock, valve


def recovery_set_up() -> Markup:
    """Old unit, recovery machine, cylinder on a scale."""
    d = Drawing(
        "recovery-set-up", "Recovering the old refrigerant, by weight",
        "From both service ports of the old outdoor unit hoses lead to the gauges, from there to "
        "the recovery machine and on to the liquid valve of the recovery cylinder. The cylinder "
        "stands upright on a scale in the shade.", 350)
    ground(d, 300)
    d.rect(10, 150, 100, 150, "of")
    for y in range(166, 290, 12):
        d.line(18, y, 84, y, "pl")
    d.rect(92, 262, 18, 12, "of")
    d.rect(92, 240, 18, 12, "of")
    gauge(d, 128, 100)
    gauge(d, 166, 100)
    d.rect(112, 116, 70, 16, "of")
    d.polyline([(110, 246), (128, 230), (128, 132)], "o")
    d.polyline([(110, 268), (150, 240), (150, 132)], "o")
    d.rect(172, 244, 70, 56, "of")
    d.circle(196, 270, 14, "i")
    d.polyline([(170, 132), (170, 200), (196, 200), (196, 244)], "o")
    cylinder(d, 262, 178, 56, 106)
    d.line(262, 210, 318, 210, "w")
    d.rect(250, 284, 80, 16, "of")
    d.path("M226 244V150H290V166", "o")
    d.text(290, 250, "80 %", "b m halo")
    d.balloon(1, 60, 124, to=(60, 150))
    d.balloon(2, 80, 70, to=(114, 92))
    d.balloon(3, 208, 330, to=(208, 300))
    d.balloon(4, 322, 136, to=(306, 186))
    d.balloon(5, 290, 330, to=(290, 300))
    d.balloon(6, 234, 118, to=(226, 150))
    return d.figure(legend=[
        "old outdoor unit, power locked out",
        "gauges: at the end they stand at zero, and stay there",
        "recovery machine, listed for this refrigerant, in moving air",
        "recovery cylinder: grey and yellow, tested, at most 80 % full",
        "scale: weight before and after",
        "filter drier in the line into the machine"])


def old_furnace() -> Markup:
    """What holds an old furnace in its closet."""
    d = Drawing(
        "old-furnace", "What holds the old furnace in its closet",
        "A section through closet, roof and floor. The vent goes up through the ceiling to the "
        "roof jack. Power comes from a switch at the wall. The fuel line comes up through the "
        "floor to a valve. The furnace stands on a base over the trunk; beside it an opening "
        "lets outside air in through the floor.", 420)
    d.path("M14 64L170 28 326 64", "o")
    d.path("M14 78L150 46M190 46L326 78", "o")
    d.line(14, 110, 150, 110, "o")
    d.line(190, 110, 326, 110, "o")
    d.hatch(14, 90, 136, 20, "filter")
    d.hatch(190, 90, 136, 20, "filter")
    d.path("M158 150V12H182V150", "of")
    d.path("M150 14L170 4 190 14Z", "of")
    d.path("M140 52L158 40M182 40L200 52", "o")
    d.rect(112, 150, 116, 170, "of")
    d.path("M124 170H216M124 180H216", "i")
    d.path("M130 300q8-26 16 0 8-26 16 0 8-26 16 0 8-26 16 0", "i")
    d.line(80, 110, 80, 340, "o")
    d.line(262, 110, 262, 340, "o")
    d.rect(266, 190, 14, 22, "of")
    d.path("M266 201H228", "h")
    d.rect(108, 320, 124, 20, "of")
    for x, w in ((14, 100), (226, 20), (276, 50)):
        d.hatch(x, 340, w, 12)
    d.rect(100, 352, 140, 30, "of")
    d.path("M246 352V396M276 352V396", "i")
    d.polyline([(92, 396), (92, 300), (112, 300)], "o")
    valve(d, 96, 318, 7)
    d.balloon(1, 42, 300, to=(90, 318))
    d.balloon(2, 308, 176, to=(278, 196))
    d.balloon(3, 222, 20, to=(190, 16))
    d.balloon(4, 230, 132, to=(184, 132))
    d.balloon(5, 300, 384, to=(262, 366))
    d.balloon(6, 170, 402, to=(170, 376))
    d.balloon(7, 50, 386, to=(110, 334))
    lock(d, 302, 226)
    d.supply(260, 396, 260, 360)
    return d.figure(legend=[
        "fuel: branch valve shut, then capped by the licensed person",
        "every electric supply, locked out",
        "roof jack: goes, and the roof is patched",
        "vent: may hold asbestos if it is grey and cement-like",
        "combustion air opening: closed only if nothing else needs it",
        "trunk: covered while the furnace is out",
        "base: screwed to the floor; measure its opening before it goes"])


def closed_openings() -> Markup:
    """Roof, ceiling and floor, closed in layers."""
    d = Drawing(
        "closed-openings", "Roof, ceiling and floor closed in layers",
        "Upper half: the old hole in the roof is framed between two rafters, decked, flashed and "
        "covered to match; below it insulation to the level around it and an air-tight board at "
        "the ceiling. Lower half: the hole in the floor has a board let in with sealant, "
        "insulation below, and the belly board patched and taped.", 432)
    d.text(8, 20, "roof and ceiling", "b")
    d.path("M8 56H112M228 56H332", "o")
    d.rect(112, 52, 116, 8, "of")
    d.path("M96 46H244", "w")
    for x in (100, 228):
        d.rect(x, 60, 12, 52, "of")
        d.hatch(x, 60, 12, 52)
    d.rect(24, 60, 12, 52, "of")
    d.rect(304, 60, 12, 52, "of")
    d.hatch(112, 112, 116, 40, "filter")
    d.hatch(8, 112, 104, 40, "filter")
    d.hatch(228, 112, 104, 40, "filter")
    d.path("M8 152H120M220 152H332M8 160H120M220 160H332", "o")
    d.rect(112, 160, 116, 9, "of")
    for x in (116, 224):
        d.circle(x, 157, 4, "x")
    d.text(8, 236, "floor and belly", "b")
    d.path("M8 262H120M220 262H332M8 276H120M220 276H332", "o")
    d.rect(120, 262, 100, 14, "of")
    d.hatch(120, 262, 100, 14)
    d.rect(104, 276, 132, 10, "of")
    for x in (112, 228):
        d.circle(x, 281, 3.5, "x")
    for x in (40, 280):
        d.rect(x, 276, 14, 68, "of")
    d.hatch(54, 286, 226, 58, "filter")
    d.path("M8 344H110M230 344H332", "o")
    d.path("M90 352H250", "w")
    d.balloon(1, 240, 22, to=(220, 46))
    d.balloon(2, 60, 96, to=(106, 86))
    d.balloon(3, 290, 180, to=(264, 132))
    d.balloon(4, 170, 192, to=(170, 165))
    d.balloon(5, 262, 236, to=(196, 269))
    d.balloon(6, 150, 318)
    d.balloon(7, 170, 386, to=(170, 352))
    d.text(8, 420, "Nothing is only stuffed or taped.", "")
    return d.figure(legend=[
        "deck patch, flashing and covering to match the roof, water-tested",
        "headers between the rafters carry the patch",
        "insulation as deep as around it",
        "air-tight board with sealant at the ceiling: warm moist air stays below",
        "floor piece, glued and screwed on cleats from below",
        "insulation against the floor, no gap",
        "belly patch, taped and stitched, rodent-proof"])


DRAWINGS = {
    "recovery-set-up": recovery_set_up, "old-furnace": old_furnace,
    "closed-openings": closed_openings,
}
