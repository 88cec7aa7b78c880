"""Drawings of start-up, labels, hand-over and the visits after."""

from __future__ import annotations

import itertools

from downflow.drawing import Drawing
from downflow.markup import Markup
from downflow.render.drawings.kit import boxed, lock, register


def where_to_read() -> Markup:
    """Where each reading of the start-up is taken."""
    d = Drawing(
        "where-to-read", "Where each reading of the start-up is taken",
        "The air handler stands on its box. Return temperature and return static are read above "
        "the filter; static again in the box; supply temperature in the trunk out of sight of "
        "the elements. Volts and amps at the kit, the pan at its outlet. Outside: pressures and "
        "line temperatures at the unit, outdoor air in the shade.", 420)
    d.rect(110, 40, 110, 210, "of")
    d.hatch(110, 56, 110, 22, "filter")
    d.polyline([(126, 138), (165, 92), (204, 138)], "o")
    d.path("M118 146H212", "i")
    d.circle(165, 180, 26, "o")
    d.path("M124 232l8-12 8 20 8-20 8 20 8-20 8 20 8-20 8 20 8-20 8 12", "i")
    d.rect(106, 250, 118, 60, "of")
    d.path("M20 310H110M220 310H320M20 322H104M226 322H320M104 322V334H20M226 322V334H320"
           "M20 372H320", "o")
    d.supply(130, 352, 84, 352)
    d.supply(200, 352, 246, 352)
    d.return_air(140, 10, 140, 34)
    d.return_air(190, 10, 190, 34)
    d.rect(262, 130, 66, 86, "of")
    d.circle(295, 168, 24, "i")
    d.path("M220 120H262M220 128H262", "i")
    d.balloon(1, 40, 34, to=(118, 34))
    d.balloon(2, 40, 280, to=(112, 270))
    d.balloon(3, 46, 352, to=(64, 352))
    d.balloon(4, 40, 220, to=(120, 228))
    d.balloon(5, 40, 146, to=(112, 148))
    d.balloon(6, 250, 90, to=(256, 120))
    d.balloon(7, 310, 252, to=(300, 218))
    d.balloon(8, 302, 352, to=(282, 352))
    return d.figure(legend=[
        "return: temperature and static, between return and filter",
        "box: static, in its calm corner",
        "supply: temperature, round a bend from the elements",
        "kit: volts and amps of each element, by the electrician",
        "pan: static, water, float",
        "lines: pressure, temperature of both pipes",
        "outdoor air in the shade; amps of compressor and fan",
        "far register of each trunk: air and temperature"])


def label_places() -> Markup:
    """Where each label goes."""
    d = Drawing(
        "label-places", "Where each label goes",
        "On the closet door the large label: filter size, breakers, balance point, code for the "
        "owner’s page. Smaller ones: at the panel beside each breaker, at the outdoor "
        "disconnect, on the capped fuel outlet, at the drain’s cleanout, on the ventilation "
        "control, on the unit with the total charge.", 352)
    d.rect(20, 20, 120, 250, "of")
    d.path("M34 200H126M34 212H126M34 224H126M34 236H126M34 248H126", "pl")
    d.circle(128, 146, 5, "of")
    d.rect(44, 60, 72, 108, "of")
    d.path("M50 76H90M50 90H104M50 132H110M50 144H110M50 156H90", "i")
    d.rect(86, 98, 24, 24, "x")
    d.rect(176, 20, 64, 96, "of")
    for y in (36, 56, 76):
        d.rect(184, y, 22, 14, "i")
        d.rect(212, y, 20, 14, "x")
    d.rect(272, 20, 44, 60, "of")
    d.rect(280, 54, 28, 16, "x")
    d.rect(180, 160, 90, 76, "of")
    d.circle(212, 198, 24, "i")
    d.rect(242, 170, 22, 20, "x")
    d.path("M300 130V196", "o")
    d.rect(292, 118, 16, 12, "x")
    d.rect(284, 146, 32, 18, "of")
    d.path("M176 300H270V316H176Z", "of")
    d.rect(212, 284, 20, 16, "of")
    d.rect(238, 276, 30, 18, "x")
    d.balloon(1, 80, 304, to=(80, 168))
    d.balloon(2, 160, 134, to=(212, 84))
    d.balloon(3, 256, 112, to=(290, 80))
    d.balloon(4, 254, 256, to=(254, 192))
    d.balloon(5, 318, 218, to=(302, 164))
    d.balloon(6, 300, 312, to=(268, 292))
    return d.figure(legend=[
        "closet door, at eye height: filter size, breakers, kit, the owner’s code",
        "panel: each breaker named, both ends the same words",
        "outdoor disconnect: which breaker feeds it",
        "outdoor unit: total charge, line length, who and when",
        "capped fuel outlet: capped, tested, date, licence",
        "drain cleanout: pour here, once a year"])


def owner_walk() -> Markup:
    """What the owner is shown, in this order."""
    d = Drawing(
        "owner-walk", "What the owner is shown, in this order",
        "Six stops: thermostat, filter, registers and doors, breakers and shut-offs, the outdoor "
        "unit with its free space, and the drain’s end. At each the owner does it once himself.",
        352)
    stops = ((60, 60), (170, 60), (280, 60), (280, 200), (170, 200), (60, 200))
    for (x1, y1), (x2, y2) in itertools.pairwise(stops):
        d.line(x1, y1, x2, y2, "g")
    for x, y in stops:
        d.rect(x - 46, y - 44, 92, 88, "of")
    d.rect(36, 34, 48, 40, "i")
    d.text(60, 62, "70", "b m")
    d.hatch(136, 40, 68, 28, "filter")
    d.supply(170, 30, 170, 88)
    register(d, 244, 46)
    d.path("M280 86V30H308V86", "o")
    d.path("M280 86Q300 74 310 86", "i")
    d.rect(252, 168, 24, 60, "i")
    lock(d, 302, 196)
    d.rect(140, 172, 60, 54, "i")
    d.circle(170, 199, 20, "i")
    d.polyline([(28, 176), (70, 186), (70, 208)], "o")
    d.path("M66 218v6M70 216v10M74 218v6", "a")
    for number, (x, y) in enumerate(stops, 1):
        d.balloon(number, x, y + 62)
    d.text(8, 320, "The owner does each once.", "b")
    return d.figure(legend=[
        "thermostat: heat, aux, emergency; leave it where you like it",
        "filter: size, arrow, how it slides out",
        "registers open, furniture off them, doors with their gap",
        "breakers and shut-offs by their labels",
        "outdoor unit: space, snow, frost that is normal",
        "drain: where water comes out in summer"])


def three_looks() -> Markup:
    """Three pictures that settle most first calls."""
    d = Drawing(
        "three-looks", "Three pictures that settle most first calls",
        "The owner sends three photographs: the thermostat’s screen with mode and set point, the "
        "filter held against a lamp, and the outdoor unit from the front with its foot and the "
        "ground.", 220)
    for x in (10, 122, 234):
        d.rect(x, 20, 96, 150, "of")
    d.rect(22, 50, 72, 60, "i")
    d.text(58, 78, "70", "b m")
    d.text(58, 100, "heat", "m")
    d.hatch(136, 44, 68, 90, "filter")
    d.path("M136 44L204 134M204 44L136 134", "g")
    d.rect(250, 54, 64, 60, "i")
    d.circle(282, 84, 22, "i")
    d.path("M256 114V138M308 114V138M244 138H320", "o")
    d.path("M250 146q8-6 16 0t16 0 16 0 16 0", "pl")
    for number, x in ((1, 58), (2, 170), (3, 282)):
        d.balloon(number, x, 196)
    return d.figure(legend=[
        "thermostat: mode, set point, room, any word like aux or em heat",
        "filter against a lamp: light comes through, or it is due",
        "outdoor unit with its foot: snow, ice, leaves, fan turning"])


def yearly_round() -> Markup:
    """The round of the yearly visit."""
    d = Drawing(
        "yearly-round", "The round of the yearly visit",
        "Start at the thermostat’s history, then the closet with filter, coil, pan and trap, "
        "then kit and wires, then the registers, the crawl space with crossover and belly, the "
        "outdoor unit with stand and coil, the roof patch and the alarms, and end where you "
        "began: readings beside those of the first day.", 360)
    boxed(d, 110, 10, 120, 34, "history")
    boxed(d, 220, 66, 112, 34, "closet")
    boxed(d, 220, 126, 112, 34, "kit")
    boxed(d, 220, 186, 112, 34, "registers")
    boxed(d, 110, 242, 120, 34, "crawl space")
    boxed(d, 8, 186, 112, 34, "outside")
    boxed(d, 8, 126, 112, 34, "roof")
    boxed(d, 8, 66, 112, 34, "readings")
    d.path("M230 27H276V66M276 100V126M276 160V186M276 220V259H230M110 259H64V220M64 186V160"
           "M64 126V100M64 66V27H110", "i")
    for number, x, y in ((1, 170, 60), (2, 206, 83), (3, 206, 143), (4, 206, 203), (5, 170, 298),
                         (6, 134, 203), (7, 134, 143), (8, 134, 83)):
        d.balloon(number, x, y)
    d.text(8, 346, "Beside the first day’s readings.", "b")
    return d.figure(legend=[
        "hours of kit, set points, faults", "filter, coil, pan, trap, float",
        "torque, heat marks, amps of each element", "air and temperature at the far ones",
        "crossover, belly, cap ends, drain", "coil, stand, ice marks, defrost, caps of the ports",
        "roof patch, fuel cap, smoke and monoxide alarms", "static, rise, split: beside the first"])


DRAWINGS = {
    "where-to-read": where_to_read, "label-places": label_places, "owner-walk": owner_walk,
    "three-looks": three_looks, "yearly-round": yearly_round,
}
