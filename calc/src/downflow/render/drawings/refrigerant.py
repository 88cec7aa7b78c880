"""Drawings of refrigerant work: brazing, pressure and vacuum."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup, together
from downflow.render.drawings.kit import cylinder, gauge, q, valve


def brazing() -> Markup:
    """Brazing a joint while nitrogen flows."""
    d = Drawing(
        "brazing", "Brazing under flowing nitrogen",
        "A chained nitrogen cylinder with regulator and flow meter feeds the line at one end; "
        "at the other end the line is open, so that the nitrogen leaves. The joint is heated "
        "from both sides, filler runs in at the rim. A wet cloth protects the valve, a shield "
        "stands behind, an extinguisher in reach.", 322)
    cylinder(d, 18, 110, 48, 170)
    d.path("M12 180H72", "w")
    d.rect(50, 84, 30, 18, "of")
    gauge(d, 92, 84, 12)
    d.rect(112, 70, 12, 34, "of")
    d.circle(118, 92, 3, "x")
    d.polyline([(124, 92), (146, 92), (146, 200)], "i")
    d.path("M130 200H196M130 216H196", "o")
    d.path("M196 194H232V222H196Z", "of")
    d.path("M214 200H306M214 216H306", "o")
    d.supply(300, 208, 332, 208)
    d.add("rect", x="254", y="192", width="30", height="32", fill=d.fill_of("water"))
    d.rect(254, 192, 30, 32, "i")
    d.path("M186 132Q172 158 196 190Q218 160 200 132Q204 150 194 156Q192 142 186 132Z", "of")
    d.path("M170 252Q160 236 190 222", "o")
    d.path("M160 128H320", "o")
    d.hatch(160, 116, 160, 12, "cut")
    d.rect(96, 236, 26, 60, "of")
    d.path("M102 236V226H122", "o")
    d.balloon(1, 42, 232)
    d.balloon(2, 118, 42, to=(118, 70))
    d.balloon(3, 160, 282, to=(208, 222))
    d.balloon(4, 268, 262, to=(268, 224))
    d.balloon(5, 300, 84, to=(290, 118))
    d.balloon(6, 76, 306, to=(98, 290))
    d.balloon(7, 316, 244, to=(322, 214))
    return d.figure(legend=[
        "dry nitrogen, chained, regulator with relief",
        together("flow meter: 2 to 5 cubic feet an hour while it is hot, and till it is cool"),
        "joint: clean, heated evenly, filler drawn in all round",
        "wet cloth on the valve",
        "shield before wood, belly and insulation",
        "extinguisher; someone watches for half an hour after",
        "far end open: else the pressure blows the filler out"])


def evacuation_tree() -> Markup:
    """What stands between pump, gauge and system."""
    d = Drawing(
        "evacuation-tree", "Pump, tree and gauge for evacuation",
        "From both service ports, cores taken out by their tools, two wide hoses lead to a tree "
        "and one to the pump. The vacuum gauge sits at the far side of the system, on the core "
        "tool, not at the pump. Valves at the core tools shut the system off for the decay "
        "test. Nitrogen joins by its own valve to break the vacuum.", 334)
    d.rect(14, 40, 92, 150, "of")
    for y in range(54, 180, 12):
        d.line(22, y, 84, y, "pl")
    d.rect(106, 110, 16, 14, "of")
    d.rect(106, 150, 16, 14, "of")
    valve(d, 140, 117)
    valve(d, 140, 157)
    d.line(122, 117, 132, 117, "o")
    d.line(122, 157, 132, 157, "o")
    gauge(d, 140, 66, 16)
    d.line(140, 82, 140, 108, "o")
    d.path("M148 117Q200 112 214 150", "o")
    d.path("M148 157Q190 158 208 166", "o")
    d.rect(206, 150, 28, 28, "of")
    d.path("M220 178V224", "o")
    valve(d, 220, 206)
    d.rect(184, 232, 96, 58, "of")
    d.circle(216, 262, 18, "i")
    d.rect(252, 224, 16, 8, "of")
    d.path("M234 160Q276 150 284 132", "o")
    valve(d, 288, 120)
    cylinder(d, 270, 24, 36, 78)
    d.line(288, 102, 288, 112, "o")
    d.balloon(1, 60, 216, to=(60, 190))
    d.balloon(2, 140, 200, to=(140, 168))
    d.balloon(3, 176, 34, to=(152, 56))
    d.balloon(4, 176, 88, to=(186, 120))
    d.balloon(5, 160, 262, to=(184, 262))
    d.balloon(6, 322, 142, to=(298, 124))
    return d.figure(legend=[
        "outdoor unit, its valves still shut: only lines and coil are pumped",
        "core tools: shut here for the decay test",
        "vacuum gauge on the system, far from the pump",
        "wide, short hoses for vacuum only",
        together("pump with fresh oil: below ", q("300", "micron")),
        "dry nitrogen, to break the vacuum"])


DRAWINGS = {"brazing": brazing, "evacuation-tree": evacuation_tree}
