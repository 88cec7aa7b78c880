"""Drawings of power and control: supplies and locks, the kit, the thermostat's place."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import calculator_figure, lock, q


def supplies_and_locks() -> Markup:
    """Every supply of the new equipment, where it is locked and where it is proved."""
    d = Drawing(
        "supplies-and-locks", "Every supply, where it is locked, where it is proved dead",
        "The home’s panel in the middle is fed from the meter pedestal by four wires. From it one "
        "or two circuits go to the air handler with its kit, one to the outdoor unit through a "
        "disconnect in sight of it. Each breaker and the disconnect carry a padlock and a tag. "
        "The meter is proved on a known live outlet, used at the lugs, proved again. The data "
        "link between the units is a supply too.", 412)
    d.rect(122, 8, 96, 40, "of")
    d.text(170, 34, "pedestal", "m")
    for x in (158, 166, 174, 182):
        d.line(x, 48, x, 84, "i")
    d.rect(104, 84, 132, 124, "of")
    d.text(170, 108, "panel", "b m")
    for y in (118, 146, 174):
        d.rect(118, y, 44, 22, "if")
        d.rect(178, y, 44, 22, "if")
    for y in (130, 158):
        lock(d, 112, y)
    lock(d, 228, 130)
    d.path("M118 129H60V262M118 157H76V262", "i")
    d.path("M222 129H290V176", "i")
    d.rect(268, 176, 44, 40, "of")
    lock(d, 290, 200)
    d.path("M290 216V262", "i")
    d.rect(14, 262, 112, 104, "of")
    d.text(70, 288, "air handler", "m")
    d.path("M36 340l8-12 8 20 8-20 8 20 8-20 8 20 8-20 8 12", "i")
    d.rect(240, 262, 92, 104, "of")
    d.text(286, 288, "outdoor", "m")
    d.circle(286, 330, 22, "i")
    d.path("M126 348H240", "h")
    d.rect(158, 264, 40, 56, "of")
    d.rect(164, 270, 28, 18, "i")
    d.path("M166 320Q150 350 108 316M190 320Q190 336 172 340", "i")
    d.balloon(1, 250, 28, to=(218, 28))
    d.balloon(2, 150, 66, to=(158, 66))
    d.balloon(3, 84, 100, to=(112, 132))
    d.balloon(4, 30, 200, to=(60, 200))
    d.balloon(5, 322, 152, to=(304, 178))
    d.balloon(6, 218, 244, to=(188, 270))
    d.balloon(7, 178, 372, to=(178, 348))
    d.balloon(8, 308, 386, to=(296, 350))
    d.balloon(9, 66, 390, to=(66, 348))
    return d.figure(legend=[
        "service equipment outdoors: its main is the last lock, if the panel itself is opened",
        "feeder of four wires: neutral and ground stay apart in the home’s panel",
        "each breaker with its own padlock and tag",
        "one or two circuits to the kit, copper inside the home",
        "disconnect of the outdoor unit, in sight, locked",
        "meter: live, dead, live",
        "wires between the units can bring voltage back",
        "inverter parts: wait, then test",
        "kit: test line to line, each line to ground"])


def kit_in_cabinet() -> Markup:
    """The kit in its place after the blower."""
    d = Drawing(
        "kit-in-cabinet", "The backup kit in its place, seen from the front",
        "The lower half of a downflow air handler with its panel off. The blower blows down "
        "through the elements of the kit. Each element hangs on its insulators, clear of metal. "
        "A limit sits in the air stream of each. At the side the kit’s breakers or terminal block, "
        "the ground lug, and the plate with the box of this kit marked. Below, sheet metal goes on "
        "for at least three feet along the air’s way.", 400)
    d.rect(66, 8, 188, 256, "of")
    d.circle(140, 74, 44, "o")
    d.path("M112 118V132H168V118", "i")
    d.supply(140, 124, 140, 152)
    for y in (168, 208):
        d.path(f"M84 {y}l10-12 10 24 10-24 10 24 10-24 10 24 10-24 10 24 10-24 10 12", "i")
        d.circle(84, y, 5, "of")
        d.circle(188, y, 5, "of")
    d.circle(136, 188, 6, "x")
    d.circle(136, 228, 6, "x")
    d.rect(200, 150, 46, 84, "of")
    for y in (158, 182, 206):
        d.rect(208, y, 30, 18, "if")
    d.rect(200, 20, 46, 54, "if")
    for y in (30, 42, 54):
        d.line(206, y, 230, y, "pl")
        d.rect(234, y - 5, 8, 8, "i")
    d.path("M235 38l3 4 5-8", "o")
    d.circle(222, 246, 5, "of")
    d.path("M222 251V258M214 258H230M217 262H227", "i")
    d.path("M78 264V352M242 264V352", "o")
    d.hatch(8, 286, 64, 12)
    d.hatch(248, 286, 84, 12)
    d.path("M30 352H290M30 386H290", "o")
    d.supply(160, 272, 160, 322)
    d.path("M270 210V380M265 215L275 205M265 385L275 375", "d")
    d.text(282, 336, "3 ft", "b halo")
    d.balloon(1, 36, 74, to=(96, 74))
    d.balloon(2, 36, 146, to=(84, 162))
    d.balloon(3, 36, 224, to=(130, 228))
    d.balloon(4, 300, 176, to=(238, 176))
    d.balloon(5, 300, 44, to=(246, 44))
    d.balloon(6, 300, 250, to=(228, 247))
    d.balloon(7, 36, 322, to=(78, 322))
    return d.figure(legend=[
        "blower above the elements: no air, no heat",
        "insulators whole, coil touches no metal",
        "one limit for each element, in its air",
        "breakers or terminal block, torque as on the label",
        "plate: the box of this kit marked with ink that stays",
        "ground on its own lug",
        together("metal for at least ", q("3", "ft"), " along the air’s way, no plastic, no wood")])


def thermostat_place() -> Markup:
    """Where the thermostat may hang."""
    d = Drawing(
        "thermostat-place", "Where the thermostat may hang, in plan",
        "A plan with the closet and its louvered door, a bedroom beside it and the living room. "
        "The thermostat hangs on an inside wall of the living room, at eye height, at least three "
        "feet from the edge of the closet door. Crossed out: the outside wall, the wall between "
        "closet and bedroom, the place over a register; marked too: where the sun reaches.", 372)
    d.rect(14, 14, 312, 316, "o")
    d.path("M14 120H50M104 120H326M130 14V120", "o")
    d.path("M50 120H104", "h")
    d.rect(40, 34, 62, 54, "of")
    d.text(71, 68, "unit", "m")
    d.text(24, 112, "closet")
    d.text(200, 72, "bedroom", "b")
    d.text(24, 290, "living room", "b")
    d.return_air(77, 152, 77, 126)
    d.rect(224, 122, 26, 7, "x")
    d.path("M104 148H224M99 153L109 143M219 153L229 143", "d")
    d.text(160, 174, "3 ft", "b m halo")
    d.rect(132, 30, 6, 22, "x")
    d.path("M124 28L146 54M146 28L124 54", "w")
    d.rect(316, 172, 6, 22, "x")
    d.path("M306 170L332 196M332 170L306 196", "w")
    d.rect(216, 292, 44, 16, "if")
    d.path("M224 296V304M234 296V304M244 296V304M252 296V304", "pl")
    d.rect(226, 320, 24, 7, "x")
    d.path("M225 312L251 336M251 312L225 336", "w")
    d.path("M18 180V232M22 180V232", "i")
    d.path("M26 186L80 206M26 206L80 226", "g")
    d.balloon(1, 268, 162, to=(240, 130))
    d.balloon(2, 286, 222, to=(314, 190))
    d.balloon(3, 172, 40, to=(140, 42))
    d.balloon(4, 290, 276, to=(256, 298))
    d.balloon(5, 106, 240, to=(74, 214))
    d.text(8, 364, "Eye height, a wall people pass.", "")
    return d.figure(legend=[
        together("right: inside wall, ", q("3", "ft"), " or more from the edge of the closet door"),
        "wrong: outside wall",
        "wrong: wall between closet and room",
        "wrong: over a register, a lamp or a television",
        "wrong: where the sun reaches"])


def control_wires() -> Markup:
    """Wires of the worked example: the calculator's own figure."""
    return calculator_figure("control-wiring")


DRAWINGS = {
    "supplies-and-locks": supplies_and_locks, "kit-in-cabinet": kit_in_cabinet,
    "thermostat-place": thermostat_place, "control-wires": control_wires,
}
