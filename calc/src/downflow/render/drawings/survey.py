"""Drawings of survey, proof and papers: what is seen and settled before the work."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import boxed, calculator_figure, down, ground, q, register, valve


def survey_walk() -> Markup:
    """The round of the first visit, in a plan of the home."""
    d = Drawing(
        "survey-walk", "The round of the first visit, in a plan of the home",
        "A double-section home stands upright, marriage line in the middle, hitch at the top. "
        "Outside, in this order: fuel tank, serial number in the front cross member at the "
        "hitch, meter and outdoor disconnect, place for the outdoor unit, way into the crawl "
        "space. Inside: panel, data plate, closet of the furnace, registers and doors.", 500)
    d.rect(84, 56, 176, 400, "o")
    d.line(172, 46, 172, 466, "c")
    d.polyline([(150, 56), (172, 22), (194, 56)], "o")
    for y in (150, 258, 360):
        d.line(84, y, 172, y)
    for y in (196, 330):
        d.line(172, y, 260, y)
    d.rect(118, 262, 40, 44, "of")
    d.rect(126, 270, 24, 28, "i")
    d.rect(92, 62, 14, 26, "of")
    d.rect(110, 62, 26, 14, "i")
    for x, y in ((118, 110), (118, 200), (118, 410), (210, 110), (210, 260), (210, 410)):
        register(d, x, y)
    d.rect(60, 96, 14, 24, "of")
    d.rect(24, 320, 38, 38, "of")
    d.circle(43, 339, 13, "i")
    d.path("M288 96Q288 76 308 76Q328 76 328 96V140Q328 160 308 160Q288 160 288 140Z", "of")
    d.line(260, 118, 288, 118, "h")
    d.rect(150, 452, 40, 10, "of")
    d.balloon(1, 308, 118)
    d.balloon(2, 218, 30, to=(184, 50))
    d.balloon(3, 30, 108, to=(60, 108))
    d.balloon(4, 43, 296, to=(43, 326))
    d.balloon(5, 218, 482, to=(180, 460))
    d.balloon(6, 50, 66, to=(92, 72))
    d.balloon(7, 152, 100, to=(126, 72))
    d.balloon(8, 140, 332, to=(140, 300))
    d.balloon(9, 290, 268, to=(226, 270))
    return d.figure("Walk it in this order, outside first: what you smell or see there may end "
                    "the visit.", legend=[
        "fuel: tank, regulator, which appliances it feeds",
        "serial number, stamped into the front cross member at the hitch",
        "meter, outdoor disconnect, feeder tag",
        "place for the outdoor unit: snow, water, windows, noise",
        "way into the crawl space",
        "panel: breakers, free spaces, main",
        "data plate and heating certificate: near the panel, in a kitchen cabinet or in a "
        "bedroom closet",
        "furnace closet: plate, filter, vent, floor opening",
        "registers, doors and their undercuts"])


def load_and_capacity() -> Markup:
    """Load and capacity of the worked example: the calculator's own figure."""
    return Markup(calculator_figure("heat-pump-match"))


def papers_in_order() -> Markup:
    """Who is asked for what, in which order."""
    d = Drawing(
        "papers-in-order", "The papers in their order",
        "Load proof and data sheets go first. From them follow three requests side by side: "
        "permits, utility and rebate. The fuel supplier is told next. Only then is equipment "
        "ordered. After the work come the inspections and the final papers.", 362)
    boxed(d, 70, 8, 200, 54, "load proof,", "data sheets")
    d.line(170, 62, 170, 78)
    d.line(56, 78, 284, 78)
    for x in (56, 170, 284):
        down(d, x, 78, 96)
    boxed(d, 6, 96, 100, 34, "permits")
    boxed(d, 120, 96, 100, 34, "utility")
    boxed(d, 234, 96, 100, 34, "rebate")
    for x in (56, 170, 284):
        d.line(x, 130, x, 148)
    d.line(56, 148, 284, 148)
    d.path("M20 162H320", "w")
    down(d, 170, 148, 182)
    d.text(328, 184, "three yes", "b e halo")
    boxed(d, 70, 190, 200, 34, "order equipment")
    down(d, 170, 224, 242)
    boxed(d, 70, 242, 200, 34, "rough, gas, final")
    down(d, 170, 276, 294)
    boxed(d, 70, 294, 200, 54, "close permits,", "claim the rebate")
    d.balloon(1, 300, 35)
    d.balloon(2, 300, 259, to=(270, 259))
    d.balloon(3, 300, 321, to=(270, 321))
    return d.figure(legend=[
        "heat loss, duct and service figures of this home, with the plates’ photographs",
        "inspections, each before what it looks at is covered",
        "signed cards, invoices and readings in one envelope"])


def van_in_order() -> Markup:
    """Loading plan: what is needed first stands at the door."""
    d = Drawing(
        "van-in-order", "The van from above, loaded in the order of use",
        "Doors at the bottom. Nearest to the doors: heat for the home, lock-out kit, meters and "
        "protective gear. Then fuel and vent tools, then sheet metal, mastic and duct, then "
        "refrigerant gear chained upright, and at the front the new air handler, upright as "
        "marked.", 424)
    d.path("M60 20Q60 8 76 8H264Q280 8 280 20V400H60Z", "o")
    for y in (120, 200, 280, 340):
        d.line(60, y, 280, y, "i")
    d.rect(120, 24, 100, 84, "of")
    d.polyline([(132, 66), (170, 36), (208, 66)], "i")
    for x in (80, 108):
        d.circle(x, 158, 12, "of")
    d.path("M66 170Q94 182 122 170", "h")
    d.hatch(150, 138, 60, 44, "filter")
    d.rect(80, 216, 70, 48, "of")
    d.circle(206, 240, 24, "of")
    d.circle(206, 240, 14, "i")
    d.rect(84, 296, 60, 28, "of")
    d.rect(170, 292, 24, 36, "of")
    d.rect(84, 352, 40, 36, "of")
    d.rect(140, 352, 40, 36, "of")
    d.rect(196, 352, 60, 36, "of")
    d.line(60, 400, 40, 418, "o")
    d.line(280, 400, 300, 418, "o")
    for number, y in ((1, 370), (2, 310), (3, 240), (4, 160), (5, 66)):
        d.balloon(number, 310, y, to=(282, y))
    return d.figure(legend=[
        "electric heaters, cords, lock-out kit, meters, protective gear, this job’s folder",
        "fuel caps, vent tools, roof patch, closing boards",
        "box, collars, mastic, brushes, duct, straps",
        "nitrogen and recovery cylinders, chained upright; drain pipe and fittings",
        "air handler as its carton says; kit and filter with it"])


def fuel_line() -> Markup:
    """Tank, regulators, valves and caps of a propane home."""
    d = Drawing(
        "fuel-line", "The fuel line from tank to appliances",
        "A tank with its valve and first regulator stands outside. The line runs under the home "
        "to a second regulator at the wall, then to branches. The branch to the furnace has a "
        "shut-off valve and ends in a gastight cap. The branch to the appliance that stays "
        "goes on through its own valve.", 330)
    d.path("M20 92Q20 64 48 64H132Q160 64 160 92Q160 120 132 120H48Q20 120 20 92Z", "of")
    d.line(46, 120, 40, 140, "o")
    d.line(134, 120, 140, 140, "o")
    d.rect(82, 44, 16, 20, "of")
    ground(d, 140, 8, 196)
    d.line(98, 52, 182, 52, "i")
    valve(d, 120, 52)
    d.circle(152, 52, 10, "of")
    d.polyline([(182, 52), (182, 190), (214, 190)], "i")
    d.rect(214, 20, 8, 262, "of")
    d.circle(200, 190, 10, "of")
    d.polyline([(222, 190), (250, 190), (250, 90), (286, 90)], "i")
    d.polyline([(250, 190), (250, 250), (300, 250)], "i")
    valve(d, 272, 90)
    d.rect(288, 80, 12, 20, "x")
    valve(d, 274, 250)
    d.rect(300, 228, 34, 44, "of")
    d.text(230, 40, "inside", "")
    d.text(104, 168, "outside", "m")
    d.balloon(1, 90, 92)
    d.balloon(2, 120, 24, to=(120, 44))
    d.balloon(3, 158, 22, to=(153, 42))
    d.balloon(4, 168, 222, to=(196, 199))
    d.balloon(5, 268, 122, to=(272, 98))
    d.balloon(6, 316, 58, to=(296, 80))
    d.balloon(7, 274, 288, to=(274, 258))
    d.text(6, 322, "Only the supplier opens 1 to 4.", "b")
    return d.figure(legend=[
        "tank: who owns it, how much is in it", "tank valve", "first regulator",
        "second regulator, at the home: it must still suit what is left",
        "branch valve of the furnace, shut: that alone is not a cap",
        "gastight cap, leak-tested, dated, signed",
        "appliance that stays, with its own valve"])


def temporary_heat() -> Markup:
    """How the home is kept warm while there is no heating."""
    d = Drawing(
        "temporary-heat", "Two heaters on two circuits, and a probe at the coldest pipe",
        "A section through the home. Two electric heaters stand on the floor, each plugged "
        "straight into an outlet of its own circuit, three feet clear all round. A tap drips. "
        "Under the floor the water pipe runs in the belly with its heat cable; a probe lies at "
        "its coldest place, its display inside.", 316)
    d.path("M20 26H320M20 26V176M320 26V176", "o")
    d.rect(20, 176, 300, 10, "if")
    d.hatch(20, 186, 300, 40, "filter")
    d.path("M20 226Q170 246 320 226", "o")
    d.line(30, 206, 310, 206, "o")
    d.path("M30 212q8-12 16 0t16 0 16 0 16 0 16 0 16 0 16 0 16 0 16 0 16 0 16 0 16 0 16 0 16 0",
           "i")
    ground(d, 284, 8, 332, 12)
    for x in (78, 226):
        d.rect(x, 132, 44, 44, "of")
        d.path(f"M{x + 8} 142v24M{x + 18} 142v24M{x + 28} 142v24M{x + 36} 142v24", "i")
    d.path("M78 160Q50 160 50 150V120", "i")
    d.rect(42, 100, 16, 22, "of")
    d.path("M270 160Q296 160 296 150V120", "i")
    d.rect(288, 100, 16, 22, "of")
    d.dimension(122, 112, 226, 112, "3 ft clear", extend=-20)
    d.path("M168 40h22v20", "o")
    d.path("M190 66v6M190 78v6", "i")
    d.circle(300, 206, 5, "x")
    d.path("M300 206V186M300 176V80", "h")
    d.rect(282, 52, 40, 28, "of")
    d.balloon(1, 34, 66, to=(48, 100))
    d.balloon(2, 100, 70, to=(100, 132))
    d.balloon(3, 150, 60, to=(186, 56))
    d.balloon(4, 256, 52, to=(282, 62))
    d.balloon(5, 296, 262, to=(300, 212))
    d.balloon(6, 120, 262, to=(120, 216))
    return d.figure(legend=[
        "an outlet of one circuit; no second heater on it, no extension cord",
        together("electric heater of at most ", q("1500", "W"), ", nothing within ", q("3", "ft")),
        "the tap farthest from the pump or meter, dripping",
        "display of the probe where someone sees it",
        "probe at the coldest place of the pipe",
        "heat cable: seen to work before anything is closed"])


DRAWINGS = {
    "load-and-capacity": load_and_capacity,
    "survey-walk": survey_walk, "papers-in-order": papers_in_order,
    "van-in-order": van_in_order, "fuel-line": fuel_line, "temporary-heat": temporary_heat,
}
