"""Drawings of what meets the weather: the outdoor unit, pipes and drain in the cold."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import calculator_figure, ground, lock, q


def outdoor_stand() -> Markup:
    """The outdoor unit on its stand, what is around it and where its water goes."""
    d = Drawing(
        "outdoor-stand", "The outdoor unit on its stand, and where its water goes",
        "A section. On the left the wall of the home with the roof edge. The unit stands on a "
        "frame bolted to two pads, its bottom above the snow line. Clear space is kept to the "
        "wall, above and in front on the service side, each as on the data sheet. Under it a bed "
        "of gravel slopes away from the home and from the walk on the right. The disconnect is on "
        "the wall, in sight, not behind the unit.", 400)
    d.path("M8 30L74 52", "o")
    d.rect(40, 46, 12, 250, "of")
    d.path("M68 52V62H78V52", "i")
    d.rect(120, 116, 110, 100, "of")
    d.circle(175, 166, 36, "if")
    d.path("M175 166L150 142M175 166L206 150M175 166L172 200", "i")
    d.path("M132 216V300M218 216V300M132 262L218 286", "o")
    for x in (120, 206):
        d.rect(x, 300, 24, 10, "of")
    d.hatch_area([(56, 250), (112, 250), (112, 296), (56, 296)], "filter")
    d.hatch_area([(240, 250), (290, 250), (290, 310), (240, 310)], "filter")
    d.path("M52 250H112M236 250H292", "g")
    d.path("M52 296L100 310H256L292 330H332", "o")
    d.hatch_area([(100, 310), (256, 310), (244, 344), (112, 344)], "water")
    d.path("M112 344H244", "i")
    d.path("M168 222V296M182 222V296M175 226V300", "h")
    d.path("M52 104H120", "d")
    d.path("M47 109L57 99M115 109L125 99", "d")
    d.path("M230 190H300M225 195L235 185M295 195L305 185", "d")
    d.path("M175 20V116M170 25L180 15M170 121L180 111", "d")
    d.path("M256 216V310M251 221L261 211M251 315L261 305", "d")
    d.rect(56, 150, 20, 30, "of")
    lock(d, 66, 186)
    d.rect(300, 318, 32, 12, "of")
    d.balloon(1, 86, 82, to=(86, 104))
    d.balloon(2, 200, 60, to=(175, 60))
    d.balloon(3, 280, 162, to=(266, 190))
    d.balloon(4, 284, 232, to=(256, 240))
    d.balloon(5, 90, 276, to=(134, 274))
    d.balloon(6, 178, 372, to=(178, 330))
    d.balloon(7, 316, 290, to=(316, 318))
    d.balloon(8, 92, 136, to=(72, 152))
    d.balloon(9, 108, 38, to=(74, 58))
    return d.figure(legend=[
        "to the wall: as on the data sheet, air must come in here",
        "above: as on the data sheet, nothing hangs there",
        "service side: room for a kneeling person and an open panel",
        together("bottom above the usual snow, at least ", q("3", "in"), " above the ground"),
        "stand, bolted to unit and pads, feet that do not carry the hum",
        "gravel: meltwater sinks in and runs away from home and walk",
        "walk, steps, ramp: never in the water’s way",
        "disconnect in sight, reached without leaning over the unit",
        "roof edge with gutter: no drip and no snow slide onto the unit"])


def outdoor_heights() -> Markup:
    """Height of the stand for the worked example: the calculator's own figure."""
    return calculator_figure("outdoor-site")


def cold_places() -> Markup:
    """Where trap, drain and pipes can freeze, and what keeps each."""
    d = Drawing(
        "cold-places", "Trap, drain and water pipe in the cold",
        "A section through closet floor and crawl space. Upper left: the trap hangs in the warm "
        "closet, the drain goes down through a sealed sleeve and falls all the way to the "
        "skirting. Where the trap must hang below the floor it sits in an insulated box open to "
        "the warm belly, with a plug at its lowest point. The water inlet carries a heat cable "
        "along its length, its sensor on the coldest side, insulation over it, its plug in an "
        "outlet on the warm side.", 392)
    d.hatch(8, 120, 84, 12)
    d.hatch(112, 120, 220, 12)
    d.text(14, 22, "closet", "b")
    d.path("M34 44H62V84M62 84Q62 100 74 100Q86 100 86 84V60H102V132", "o")
    d.rect(94, 112, 16, 30, "of")
    d.path("M102 132V176L316 206", "o")
    d.path("M94 150V182L316 216M110 142V168L316 198", "h")
    d.hatch(150, 136, 164, 30, "filter")
    d.path("M8 172H94M150 172H332", "i")
    d.rect(316, 150, 10, 130, "of")
    d.path("M316 206H334", "o")
    d.text(14, 236, "crawl space", "b")
    d.path("M222 354V250Q222 236 236 236H266V172", "o")
    d.path("M222 350q-10-6 0-12t0-12 0-12 0-12 0-12 0-12 0-12 0-12", "i")
    d.path("M208 354V248Q208 226 232 226H256V172M236 354V258Q236 250 246 250H276V172", "h")
    ground(d, 330, 8, 332, 12)
    d.circle(214, 300, 4, "x")
    d.path("M214 304Q180 312 180 280V150", "i")
    d.rect(172, 138, 16, 20, "of")
    d.rect(44, 258, 96, 56, "of")
    d.hatch(44, 258, 96, 56, "filter")
    d.rect(60, 258, 64, 40, "if")
    d.path("M70 246V282Q70 290 80 290Q90 290 90 282V268H112V300", "o")
    d.circle(80, 296, 4, "x")
    d.balloon(1, 124, 76, to=(88, 84))
    d.balloon(2, 146, 108, to=(108, 122))
    d.balloon(3, 296, 178, to=(286, 196))
    d.balloon(4, 24, 282, to=(46, 282))
    d.balloon(5, 98, 348, to=(82, 298))
    d.balloon(6, 282, 288, to=(224, 308))
    d.balloon(7, 160, 262, to=(211, 298))
    d.balloon(8, 232, 100, to=(184, 142))
    d.balloon(9, 300, 250, to=(276, 226))
    return d.figure(legend=[
        "trap in the warm closet: the best place",
        "sleeve through the floor, sealed",
        "insulated drain with fall all the way: no water stays in it",
        "trap below the floor: insulated box, open to the warm side only",
        "plug at its lowest point: out in autumn, in before cooling",
        "heat cable along the pipe, never crossed over itself unless its sheet allows it",
        "its sensor on the coldest side, touching the pipe",
        "its plug on the warm side, where its lamp is seen",
        "insulation over pipe and cable, as the cable’s sheet allows"])


DRAWINGS = {
    "outdoor-stand": outdoor_stand, "outdoor-heights": outdoor_heights,
    "cold-places": cold_places,
}
