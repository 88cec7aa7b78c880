"""Drawings of the closet: air handler, coil, floor box."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup


def _coil(d: Drawing, x: float, y: float, w: float, h: float, *, up: bool) -> None:
    """A coil of two slabs, its point up or down."""
    if up:
        d.polyline([(x, y + h), (x + w / 2, y), (x + w, y + h)], "o")
    else:
        d.polyline([(x, y), (x + w / 2, y + h), (x + w, y)], "o")


def closet_section() -> Markup:
    """The closet made ready, seen from the side."""
    d = Drawing(
        "closet-section", "The closet made ready, from the side",
        "The louvered door is on the left, the back wall on the right. The floor opening is "
        "clear and square, its edge metal sound. Free depth, width and height are measured at "
        "the tightest place. A drain path, a cable path and a line path are marked. No opening "
        "leads to the crawl space or the roof.", 408)
    d.path("M256 26V320M86 26H262", "o")
    d.hatch(256, 26, 10, 294)
    d.path("M92 26V52M92 290V320", "o")
    for y in range(58, 290, 24):
        d.line(87, y + 12, 97, y, "o")
    d.path("M20 320H128M226 320H326M20 332H128M226 332H326M128 320V332M226 320V332", "o")
    d.hatch(20, 320, 108, 12)
    d.hatch(226, 320, 100, 12)
    d.path("M128 332V346H20M226 332V346H326M20 388H326", "o")
    d.path("M112 318H128V346M242 318H226V346", "w")
    d.return_air(36, 100, 84, 88)
    d.return_air(36, 170, 84, 158)
    d.return_air(36, 240, 84, 228)
    d.dimension(92, 290, 256, 290, "depth")
    d.dimension(176, 30, 176, 312, "height")
    d.dimension(128, 370, 226, 370, "opening", extend=36)
    d.rect(230, 300, 12, 12, "of")
    d.circle(244, 200, 6, "of")
    d.circle(244, 120, 6, "of")
    d.balloon(1, 36, 44, to=(90, 66))
    d.balloon(2, 304, 120, to=(250, 120))
    d.balloon(3, 304, 200, to=(250, 200))
    d.balloon(4, 304, 284, to=(242, 304))
    d.balloon(5, 60, 300, to=(114, 318))
    return d.figure(legend=[
        "louvered door: the way of the return air, never blocked",
        "way of the lines, sleeved and sealed",
        "way of cable and wire, each in its own hole",
        "way of the drain, with height for the trap",
        "sound metal edge around the opening: everything seals to it"])


def turned_coil() -> Markup:
    """The coil as it comes, and turned for downflow."""
    d = Drawing(
        "turned-coil", "The coil as it comes, and turned for downflow",
        "Left, as it comes: air goes up, the coil’s point is up and the pan lies under both "
        "ends. Right, turned for downflow: the air goes down, the whole coil is turned as the "
        "maker shows and its pan again lies below every edge that drips. The blower is below "
        "the coil, the kit below the blower. The second pan outlet is on the other side.", 352)
    for x, word in ((20, "as it comes"), (196, "downflow")):
        d.rect(x, 40, 124, 250, "of")
        d.text(x + 62, 16, word, "b m")
    # as it comes: kit, blower, coil from the top
    _coil(d, 40, 190, 84, 62, up=True)
    d.path("M34 252H130V268H34Z", "of")
    d.circle(82, 130, 30, "o")
    d.path("M34 66l8-12 8 20 8-20 8 20 8-20 8 20 8-20 8 20 8-20 8 20 8-12", "i")
    d.return_air(82, 338, 82, 300)
    d.supply(82, 52, 82, 24)
    # downflow: coil, blower, kit from the top
    _coil(d, 216, 66, 84, 60, up=True)
    d.path("M208 126H308V142H208Z", "of")
    d.path("M232 126V134H284V126", "i")
    d.circle(258, 190, 30, "o")
    d.path("M210 258l8-12 8 20 8-20 8 20 8-20 8 20 8-20 8 20 8-20 8 20 8-12", "i")
    d.return_air(258, 24, 258, 58)
    d.supply(258, 292, 258, 326)
    d.rect(320, 128, 14, 10, "of")
    d.rect(182, 128, 14, 10, "of")
    d.balloon(1, 174, 66, to=(230, 106))
    d.balloon(2, 172, 104, to=(184, 130))
    d.balloon(3, 330, 104, to=(327, 128))
    d.balloon(4, 172, 190, to=(228, 190))
    d.balloon(5, 172, 256, to=(212, 258))
    return d.figure(legend=[
        "coil: turned, shimmed or fitted with the kit that the maker names",
        "pan outlet to the trap",
        "second outlet: float switch, else plugged",
        "blower: turned with the cabinet, or by its own rails",
        "backup kit, always after the blower in the air’s way"])


def floor_box() -> Markup:
    """The sheet-metal box between cabinet and trunk."""
    d = Drawing(
        "floor-box", "The box between cabinet and trunk",
        "The cabinet stands on a sheet-metal box. Its upper flange has a gasket. Its lower edge "
        "goes down through the floor opening to the trunk, is screwed to the trunk’s edge and "
        "sealed. A round collar for the crossover leaves at the side, a hand’s width above "
        "the trunk, with its edge flared. The sides are braced.", 388)
    d.rect(96, 8, 150, 58, "of")
    d.text(171, 44, "cabinet", "m")
    d.rect(88, 66, 166, 10, "of")
    d.hatch(88, 66, 166, 10, "filter")
    d.path("M100 76V250M242 76V250", "o")
    d.path("M84 76H106M258 76H236", "o")
    d.path("M106 90L236 160M236 90L106 160", "pl")
    for x1, x2 in ((14, 92), (250, 326)):
        d.hatch(x1, 196, x2 - x1, 14)
    d.path("M92 210V232M250 210V232", "o")
    d.path("M92 250H14M250 250H326M14 310H326", "o")
    d.path("M92 232V258M250 232V258", "w")
    for x in (100, 242):
        d.circle(x, 238, 4, "x")
        d.circle(x, 120, 3, "x")
    d.path("M242 128H300M242 180H300", "o")
    d.path("M242 122Q250 128 262 128M242 186Q250 180 262 180", "i")
    d.supply(171, 84, 171, 118)
    d.supply(262, 154, 306, 154)
    d.supply(150, 280, 104, 280)
    d.supply(192, 280, 238, 280)
    d.dimension(64, 76, 64, 196, "")
    d.text(52, 142, "box", "b e")
    d.balloon(1, 316, 66, to=(254, 71))
    d.balloon(2, 316, 214, to=(254, 242))
    d.balloon(3, 300, 112, to=(276, 128))
    d.balloon(4, 40, 92, to=(100, 120))
    d.balloon(5, 171, 210, to=(171, 147))
    d.balloon(6, 40, 282, to=(88, 244))
    return d.figure(legend=[
        "gasket under the cabinet, no gap of light",
        "screws into the trunk’s edge, then mastic over all of it",
        "crossover collar, flared or with a soft edge; three screws at least",
        "corner seams: screwed, then mastic, before the box goes in",
        "cross break or brace, so that the sides do not drum",
        "floor edge: box and floor never touch wood to element"])


DRAWINGS = {
    "closet-section": closet_section, "turned-coil": turned_coil, "floor-box": floor_box,
}
