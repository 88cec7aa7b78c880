"""Drawings of the refrigerant lines: their way, the flame, the pump."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import calculator_figure, cylinder, gauge, ground, q, valve


def line_run() -> Markup:
    """The way of the lines from outdoor unit to coil, and nitrogen through them."""
    d = Drawing(
        "line-run", "The lines from the outdoor unit to the coil, nitrogen flowing",
        "From the outdoor unit at the left two lines go through a sealed sleeve in the skirting, "
        "hang under the floor from cushioned clamps, and come up through a sleeve to the coil in "
        "the closet. The larger is insulated over its whole length. A bi-flow drier sits in the "
        "liquid line near the coil. A nitrogen cylinder with regulator and flow meter is connected "
        "at the outdoor service valve; the gas leaves at the open port of the other line.", 392)
    d.rect(10, 206, 66, 84, "of")
    d.circle(43, 248, 24, "if")
    ground(d, 300, 8, 332, 12)
    d.path("M108 120V300", "o")
    d.rect(102, 232, 14, 40, "of")
    d.hatch(108, 120, 140, 12)
    d.hatch(290, 120, 42, 12)
    d.path("M248 132V120M290 120V132", "o")
    valve(d, 90, 244, 6)
    valve(d, 90, 262, 6)
    d.path("M76 244H84M96 244H260V60", "o")
    d.path("M76 262H84M96 262H278V60", "o")
    d.path("M112 238H252V72M112 250H268V72", "h")
    d.rect(240, 8, 60, 52, "of")
    d.polyline([(248, 50), (270, 18), (292, 50)], "o")
    d.rect(271, 84, 14, 40, "of")
    d.path("M278 92V116M274 98L278 92 282 98M274 110L278 116 282 110", "i")
    for x in (150, 206):
        d.path(f"M{x} 132V272M{x - 8} 272H{x + 8}", "i")
    d.rect(242, 112, 46, 28, "if")
    cylinder(d, 26, 88, 30, 84)
    gauge(d, 62, 70, 10)
    d.path("M41 76H52M72 70H80V236H90V240", "i")
    d.rect(75, 150, 10, 30, "of")
    d.path("M90 268V284Q90 290 98 290", "i")
    d.balloon(1, 20, 66, to=(34, 100))
    d.balloon(2, 108, 166, to=(85, 166))
    d.balloon(3, 122, 334, to=(98, 291))
    d.balloon(4, 60, 334, to=(88, 270))
    d.balloon(5, 132, 208, to=(112, 236))
    d.balloon(6, 178, 208, to=(154, 238))
    d.balloon(7, 222, 222, to=(220, 240))
    d.balloon(8, 322, 98, to=(285, 104))
    d.balloon(9, 318, 160, to=(284, 136))
    d.text(8, 378, "No joint in floor or wall.", "b")
    return d.figure(legend=[
        "dry nitrogen, chained, regulator with relief",
        "flow meter: 2 to 5 cubic feet an hour, a breath on a wet finger",
        "open port: the gas can leave, no pressure builds up",
        "service valves: shut until pressure and vacuum have been proved",
        "sleeve through the skirting, sealed, falling outward",
        together("cushioned clamp, at most ", q("6", "ft"), " apart, nothing touches a duct"),
        "larger line insulated without a gap, joints of the foam glued",
        "bi-flow drier, arrows both ways, where the data sheet puts it",
        "sleeve through the floor, fire- and air-tight"])


def vacuum_rig() -> Markup:
    """Pump, hoses, core tools and gauge for evacuation, nitrogen for the test."""
    d = Drawing(
        "vacuum-rig", "Set up to test, to evacuate and to weigh in",
        "The two service ports of the outdoor unit carry valve core tools with their cores pulled. "
        "A large hose leads from each to the pump. The vacuum gauge sits on the side port of the "
        "core tool that is farthest from the pump. The nitrogen cylinder with its regulator and "
        "the refrigerant cylinder on a scale are connected in turn, each through its own hose.",
        400)
    d.rect(10, 140, 84, 150, "of")
    for y in range(156, 280, 12):
        d.line(18, y, 76, y, "pl")
    ground(d, 300, 8, 332, 12)
    for y in (180, 244):
        d.rect(94, y - 6, 14, 12, "of")
        d.rect(108, y - 9, 30, 18, "of")
        valve(d, 123, y, 6)
    d.path("M138 180H190Q214 180 214 204V226", "o")
    d.path("M138 244H176V252H194", "o")
    d.rect(194, 226, 66, 64, "of")
    d.circle(226, 258, 18, "i")
    d.path("M123 171V140H148", "i")
    gauge(d, 164, 132, 16)
    cylinder(d, 276, 96, 34, 100)
    gauge(d, 318, 84, 10)
    d.path("M293 84H308", "i")
    d.path("M293 84V54H60V120", "h")
    cylinder(d, 274, 222, 36, 60)
    d.rect(266, 284, 60, 14, "of")
    d.path("M292 210V204H252", "h")
    d.balloon(1, 60, 110, to=(108, 176))
    d.balloon(2, 190, 112, to=(178, 126))
    d.balloon(3, 176, 206, to=(200, 184))
    d.balloon(4, 226, 322, to=(226, 290))
    d.balloon(5, 244, 84, to=(278, 112))
    d.balloon(6, 316, 246, to=(306, 250))
    d.balloon(7, 120, 322, to=(92, 262))
    d.text(8, 360, "One after the other: nitrogen,", "")
    d.text(8, 384, "vacuum, weight.", "b")
    return d.figure(legend=[
        "core tools on both ports, cores pulled",
        "vacuum gauge at the port farthest from the pump, behind a valve",
        "two short hoses, three-eighths or larger, rated for vacuum",
        "pump with fresh oil",
        "nitrogen with regulator: off the system before the pump starts",
        "refrigerant on the scale, valve shut until the vacuum has held",
        "service valves of the unit: the factory charge is behind them"])


def vacuum_decay() -> Markup:
    """Decay of the vacuum in the worked example: the calculator's own figure."""
    return calculator_figure("evacuation-decay")


DRAWINGS = {"line-run": line_run, "vacuum-rig": vacuum_rig, "vacuum-decay": vacuum_decay}
