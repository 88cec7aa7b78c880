"""Drawings of tight air ways: the cut, seams, belly, way back, filter, fresh air."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import ground, q


def _joist(d: Drawing, x: float, y: float, h: float, w: float = 12) -> None:
    d.rect(x, y, w, h, "of")
    d.line(x, y, x + w, y + h, "pl")


def _beam(d: Drawing, x: float, y: float, h: float) -> None:
    """An I-beam of the chassis, cut."""
    d.path(f"M{x} {y}h40v6h-16v{h - 12}h16v6h-40v-6h16v-{h - 12}h-16Z", "of")


def cut_lines() -> Markup:
    """What runs under a floor, and where a cut may go."""
    d = Drawing(
        "cut-lines", "A cut between two joists, and what must stay whole",
        "A section through the floor of a manufactured home. The deck lies on joists, these on "
        "outriggers and the I-beam of the chassis. A wire runs along a joist, a water pipe and a "
        "drain hang in the insulation, the duct lies in the middle bay, the belly board closes it "
        "from below. The cut is marked between two joists, clear of both, with a pilot hole in its "
        "middle.", 372)
    for x1, x2 in ((8, 62), (128, 332)):
        d.hatch(x1, 70, x2 - x1, 12)
    d.path("M62 52V100M128 52V100", "w")
    d.path("M62 70V82M128 70V82", "o")
    d.path("M95 40V108", "c")
    d.hatch(8, 150, 324, 34, "filter")
    for x in (36, 142, 262):
        _joist(d, x, 82, 102)
    d.circle(160, 96, 5, "x")
    d.circle(156, 112, 5, "x")
    d.rect(178, 96, 66, 46, "of")
    d.circle(222, 166, 9, "of")
    d.circle(118, 166, 14, "of")
    d.path("M8 184H332", "h")
    d.polyline([(8, 192), (332, 192), (332, 204), (8, 204)], "o", closed=True)
    _beam(d, 76, 204, 84)
    d.path("M176 300L208 212M214 292l-8-3-2 8 6 4Z", "i")
    ground(d, 330, 8, 332, 12)
    d.dimension(62, 34, 128, 34, "", extend=-16)
    d.text(95, 22, "cut", "b m")
    d.balloon(1, 200, 34, to=(132, 60))
    d.balloon(2, 22, 40, to=(95, 66))
    d.balloon(3, 300, 118, to=(272, 122))
    d.balloon(4, 238, 50, to=(164, 94))
    d.balloon(5, 284, 226, to=(228, 172))
    d.balloon(6, 30, 240, to=(112, 178))
    d.balloon(7, 168, 254, to=(108, 244))
    d.balloon(8, 300, 292, to=(216, 293))
    d.text(8, 362, "Look from both sides first.", "")
    return d.figure(legend=[
        "outline of the cut, clear of both joists",
        together("pilot hole, at most ", q("0.25", "in"), ", drill stopped at the deck"),
        "joist: never notched, never cut without permit",
        "wires, stapled beside a joist or loose",
        "water pipe in the insulation",
        "drain, or the fuel line beside the frame",
        "I-beam and outrigger: never drilled through a flange, never cut",
        "lamp and mirror from the other side"])


def duct_seams() -> Markup:
    """Where a floor duct leaks, and how each place is closed."""
    d = Drawing(
        "duct-seams", "Boot, trunk, end and collar with their seams",
        "A section along a trunk under the floor. The boot comes through the deck under the "
        "register and stands on the trunk. Mastic lies where the boot meets the deck, where it "
        "meets the trunk, on the trunk’s own seam, around the cap at its end and around the "
        "collar of a crossover, which also has three screws.", 330)
    for x1, x2 in ((8, 74), (130, 332)):
        d.hatch(x1, 58, x2 - x1, 12)
    d.rect(66, 48, 72, 10, "of")
    d.path("M78 48v10M90 48v10M102 48v10M114 48v10M126 48v10", "i")
    d.path("M74 58V136M130 58V136", "o")
    d.path("M74 64h-12M130 64h12", "o")
    d.path("M8 136H74M130 136H284V196H248M206 196H8", "o")
    d.path("M206 196V236M248 196V236", "o")
    d.path("M278 130H296V202H278", "o")
    d.path("M202 236V262M252 236V262M198 262H256", "pl")
    for x in (206, 248):
        d.circle(x, 216, 3.5, "x")
    d.path("M60 58L74 72M144 58L130 72M62 132L80 144M142 132L124 144M160 132H196"
           "M274 124H302V142M302 190V208H274M194 190V210M260 190V210", "w")
    d.supply(24, 166, 70, 166)
    d.supply(102, 128, 102, 84)
    d.supply(227, 206, 227, 254)
    d.balloon(1, 34, 26, to=(62, 60))
    d.balloon(2, 34, 110, to=(66, 132))
    d.balloon(3, 178, 104, to=(178, 130))
    d.balloon(4, 316, 104, to=(300, 128))
    d.balloon(5, 296, 244, to=(260, 204))
    d.balloon(6, 164, 244, to=(202, 217))
    d.balloon(7, 128, 22, to=(116, 46))
    d.text(8, 296, "Mastic is what is drawn thick.", "b")
    d.text(8, 320, "Tape alone lets go.", "")
    return d.figure(legend=[
        "boot to deck: bent edge nailed, then mastic all round from inside",
        "boot to trunk: tabs bent, gap over a quarter inch bridged with mesh",
        "trunk seam and every slip joint",
        together("end cap of sheet metal, lapped ", q("1", "in"),
                 ", screwed, mastic over the edge"),
        "crossover collar: mastic between metal and metal",
        "three screws at least, equally spaced",
        "register out while you work, in again at the end"])


def belly_layers() -> Markup:
    """The belly from the deck to the patch."""
    d = Drawing(
        "belly-layers", "The belly put together again, from the deck down",
        "A section between two joists. Under the deck the water pipe and the trunk lie on the warm "
        "side. The insulation is against and below them, full depth. Straps across the frame carry "
        "it. The patch of belly fabric laps over sound fabric all round, is stitched and sealed. "
        "Where a drain goes through, a collar of tape closes the gap. The plug of the heat cable "
        "is behind a flap.", 360)
    d.hatch(8, 40, 324, 12)
    for x in (14, 314):
        _joist(d, x, 52, 134)
    d.rect(120, 58, 100, 48, "of")
    d.text(170, 88, "trunk", "m")
    d.circle(64, 84, 9, "of")
    d.path("M55 94q9 8 18 0", "o")
    d.path("M26 112H314V180H26Z", "i")
    d.hatch(26, 112, 288, 68, "filter")
    d.hatch(26, 62, 26, 50, "filter")
    d.hatch(230, 62, 84, 50, "filter")
    d.path("M8 188H332", "i")
    d.path("M8 198H96M232 198H332", "o")
    d.path("M60 208H272", "w")
    for x in (70, 82, 94, 236, 248, 260):
        d.line(x, 192, x, 214, "i")
    d.dimension(60, 232, 96, 232, "", extend=20)
    d.text(78, 262, "lap", "b m")
    d.rect(284, 112, 14, 132, "of")
    d.path("M274 198H308M276 204H306", "o")
    d.path("M64 94V112M64 180V196", "h")
    d.rect(30, 192, 22, 10, "of")
    ground(d, 300, 8, 332, 10)
    d.path("M8 296H332", "h")
    d.balloon(1, 40, 18, to=(64, 78))
    d.balloon(2, 170, 146)
    d.balloon(3, 142, 240, to=(142, 190))
    d.balloon(4, 196, 240, to=(196, 210))
    d.balloon(5, 256, 262, to=(250, 212))
    d.balloon(6, 326, 258, to=(302, 204))
    d.balloon(7, 20, 262, to=(40, 202))
    d.balloon(8, 170, 328, to=(170, 298))
    return d.figure(legend=[
        "water pipe above the insulation, on the warm side, with its heat cable",
        "insulation at full depth, touching deck or duct, nowhere squeezed",
        together("straps across the frame, at most ", q("24", "in"), " apart"),
        "patch of belly fabric",
        together("lap of ", q("3", "in"), " on sound fabric, stitched every ", q("2", "in"),
                 ", sealant between"),
        "collar of tape around what goes through",
        "flap at the plug of the heat cable, so that it can be reached",
        "ground cover"])


def way_back_paths() -> Markup:
    """The ways by which air leaves a closed room, and how its pressure is read."""
    d = Drawing(
        "way-back-paths", "Four ways back from a closed room, and the reading",
        "A section through a bedroom on the left, the wall with its door, and the hall on the "
        "right. Air comes up from the floor register and can go back under the door, through a "
        "pair of grilles high on one side and low on the other with a sheet-metal sleeve in the "
        "wall, through a grille over the door, or through a short duct above the ceiling. A tube "
        "under the door leads to a manometer in the hall.", 372)
    d.path("M8 70H120M150 70H200M230 70H332", "o")
    d.path("M8 318H332", "o")
    d.hatch(8, 318, 324, 12)
    d.path("M120 70Q120 24 175 24Q230 24 230 70M150 70Q150 50 175 50Q200 50 200 70", "of")
    d.rect(160, 70, 24, 30, "of")
    d.rect(160, 124, 24, 14, "of")
    d.rect(167, 138, 10, 160, "of")
    d.path("M160 100H184M160 124H184", "i")
    d.path("M160 106H184M160 112H184M160 118H184", "pl")
    d.supply(56, 314, 56, 276)
    d.rect(42, 312, 28, 8, "of")
    d.return_air(90, 130, 130, 84)
    d.return_air(216, 84, 256, 130)
    d.return_air(120, 112, 154, 112)
    d.return_air(190, 112, 226, 112)
    d.return_air(110, 308, 156, 308)
    d.return_air(190, 308, 236, 308)
    d.path("M100 290Q130 314 172 314T250 262", "i")
    d.rect(236, 214, 60, 48, "of")
    d.text(266, 244, "3 Pa", "b m")
    d.text(40, 220, "room", "b m")
    d.text(302, 180, "hall", "b m")
    d.balloon(1, 130, 350, to=(172, 310))
    d.balloon(2, 206, 146, to=(178, 114))
    d.balloon(3, 270, 40, to=(222, 48))
    d.balloon(4, 312, 290, to=(290, 258))
    d.balloon(5, 20, 290, to=(46, 316))
    return d.figure(
        "The fourth way is a pair of grilles in a stud bay, high on one side and low on the other, "
        "with a sleeve of sheet metal between them.", legend=[
            "undercut, counted from the deck: only half of it counts",
            "grille over the door or in the wall, never to be closed",
            "short duct above the ceiling, bent, so that voices stay in the room",
            "manometer in the hall, its tube under the shut door",
            "supply register, open"])


def filter_on_top() -> Markup:
    """The filter cabinet between closet and coil."""
    d = Drawing(
        "filter-on-top", "The filter cabinet on a downflow air handler",
        "From the top: return air comes down into the filter cabinet. The filter lies on a ledge "
        "with a gasket on all four sides, its arrow down. A door with a gasket opens to the front "
        "with room to draw the filter out. Below is the coil, then the blower. A tap for the "
        "static probe sits above the filter and another below it.", 372)
    d.rect(92, 56, 150, 70, "of")
    d.rect(92, 126, 150, 200, "of")
    d.hatch(100, 84, 134, 26, "filter")
    d.path("M96 110H108M226 110H238M96 80H106M228 80H238", "w")
    d.path("M92 78L52 92V122L92 112", "o")
    d.path("M150 90v14M145 99l5 6 5-6", "o")
    d.polyline([(110, 214), (167, 144), (224, 214)], "o")
    d.path("M104 214H230V228H104Z", "of")
    d.circle(167, 274, 32, "o")
    d.return_air(130, 12, 130, 50)
    d.return_air(204, 12, 204, 50)
    d.supply(167, 330, 167, 362)
    d.path("M242 68H266M242 138H266", "i")
    d.circle(270, 68, 4, "if")
    d.circle(270, 138, 4, "if")
    d.dimension(40, 148, 92, 148, "", extend=-22)
    d.text(36, 178, "draw", "b")
    d.balloon(1, 300, 98, to=(228, 98))
    d.balloon(2, 300, 40, to=(272, 66))
    d.balloon(3, 300, 160, to=(273, 140))
    d.balloon(4, 24, 100, to=(56, 104))
    d.balloon(5, 290, 210, to=(216, 204))
    d.balloon(6, 290, 274, to=(199, 274))
    return d.figure(legend=[
        "the only filter: full face, gasket on four sides, arrow with the air",
        "tap above the filter", "tap below it: the difference is the filter’s loss",
        "door with a gasket; as much free room before it as the filter is deep",
        "coil", "blower"])


def fresh_air_path() -> Markup:
    """The way of fresh air from the hood to the return side."""
    d = Drawing(
        "fresh-air-path", "Fresh air from the hood to the return side",
        "On the left the outside wall with a screened hood, above the usual snow and away from "
        "vents and engines. An insulated duct falls a little toward the hood. In it sit a motor "
        "damper and, at the closet, a balancing damper with a measuring port. It ends in the "
        "return side above the filter of the air handler.", 360)
    d.rect(58, 30, 12, 50, "of")
    d.rect(58, 116, 12, 190, "of")
    d.path("M58 78L30 96V122H58M34 96h-8M30 122H58", "of")
    d.path("M34 116h20M34 110h20", "pl")
    d.path("M70 84L224 68V96L70 116", "of")
    d.path("M62 78L224 60M62 122L224 104", "h")
    d.circle(120, 96, 4, "x")
    d.path("M110 84L130 108", "o")
    d.rect(112, 52, 18, 16, "of")
    d.line(120, 68, 120, 92, "i")
    d.path("M180 76L192 102", "o")
    d.circle(160, 92, 3.5, "x")
    d.rect(224, 30, 92, 276, "of")
    d.hatch(232, 128, 76, 20, "filter")
    d.path("M236 212L270 164 304 212", "o")
    d.circle(270, 258, 24, "o")
    d.return_air(270, 8, 270, 40)
    d.return_air(8, 110, 28, 110)
    d.return_air(200, 86, 246, 82)
    d.supply(270, 290, 270, 330)
    ground(d, 306, 8, 58, 12)
    d.hatch_area([(8, 262), (58, 262), (58, 306), (8, 306)], "filter")
    d.path("M24 112V262M19 117L29 107M19 267L29 257", "d")
    d.text(8, 348, "Never from crawl space or roof.", "b")
    d.balloon(1, 22, 72, to=(36, 100))
    d.balloon(2, 40, 196, to=(26, 196))
    d.balloon(3, 94, 140, to=(100, 114))
    d.balloon(4, 150, 40, to=(130, 58))
    d.balloon(5, 188, 146, to=(186, 98))
    d.balloon(6, 144, 150, to=(159, 96))
    d.balloon(7, 206, 240, to=(238, 142))
    return d.figure(legend=[
        together("hood with a screen of ", q("0.25", "in"), " mesh, opening down"),
        "height above the usual snow",
        "insulated duct with its vapor barrier whole, falling toward the hood",
        "motor damper, shut without power",
        "balancing damper, marked and locked when the flow is right",
        "port for the flow reading",
        "filter: the fresh air joins above it"])


DRAWINGS = {
    "cut-lines": cut_lines, "duct-seams": duct_seams, "belly-layers": belly_layers,
    "way-back-paths": way_back_paths, "filter-on-top": filter_on_top,
    "fresh-air-path": fresh_air_path,
}
