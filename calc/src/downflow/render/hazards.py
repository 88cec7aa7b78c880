"""The hazards of the work, each with its standard caution, in one list.

A step names hazards by tag. The page shows the standard caution before the step: in
full where the hazard first comes up, in one sentence where it comes again. Where a
step has several they stand in the order danger, warning, caution, notice.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

LEVELS = ("danger", "warning", "caution", "notice")
"""Falling order, as on safety signs: will kill, may kill, may hurt, may cost."""


class Hazard(NamedTuple):
    """One hazard: how bad, the standard words, and the sentence that stands when it returns."""

    tag: str
    level: str
    text: str
    again: str


HAZARDS: tuple[Hazard, ...] = (
    # ---- danger ----
    Hazard("live-reading", "danger",
           "Live parts. They kill. Licensed electrician only: meter and gloves rated for it, one "
           "hand, dry footing, nobody within reach.",
           "Live parts. Licensed electrician only."),
    Hazard("fuel-gas", "danger",
           "Fuel gas burns and explodes. Propane is heavier than air and lies in the belly and the "
           "crawl space. If you smell it: everyone out, touch no switch, call from outside. Only "
           "the fuel supplier or a licensed gas fitter opens a line.",
           "Fuel gas. If you smell it: everyone out, touch no switch, call from outside."),
    Hazard("carbon-monoxide", "danger",
           "Carbon monoxide kills without a smell. No unvented burner, grill, oven or engine for "
           "heat, ever. If an alarm sounds: everyone out, call from outside.",
           "Carbon monoxide. If an alarm sounds: everyone out, call from outside."),
    Hazard("unblocked-home", "danger",
           "A home on a jack can drop. No part of you under it unless it stands on its piers or on "
           "blocking made for it.",
           "A home on a jack can drop. Blocking first."),
    # ---- warning ----
    Hazard("electricity", "warning",
           "Electricity. Find every supply: the plate says how many. Lock out each one, the "
           "outdoor unit too. Prove the meter, test, prove it again.",
           "Electricity. Still locked out? Prove the meter, test, prove it again."),
    Hazard("stored-charge", "warning",
           "Capacitors and inverter parts stay charged after the power is off. Wait the time on "
           "the plate, then test them dead.",
           "Stored charge. Wait, then test."),
    Hazard("crawl-space", "warning",
           "Crawl space. Look in, sniff, and measure the air before you go in: oxygen, fuel gas, "
           "carbon monoxide. Test skirting and frame for voltage. Someone stays outside within "
           "call. Lamp, knee pads, eye protection, dust mask.",
           "Crawl space. Air measured, someone outside within call."),
    Hazard("asbestos", "warning",
           "Asbestos is likely in homes from before about 1980: closet board, tape, vent pipe, "
           "flooring. Do not cut, sand or break it. Have a sample tested, then an accredited firm "
           "takes it out.",
           "Asbestos. Do not cut, sand or break what has not been tested."),
    Hazard("fall", "warning",
           "Falls. Ladder at four to one, tied, three feet above the edge. Fall protection from "
           "six feet up. A light roof carries you only on its framing or on boards; never when "
           "wet, iced or windy.",
           "Falls. Ladder tied, on framing or boards only."),
    Hazard("hot-work", "warning",
           "Flame under a home sets fire to wood, insulation and belly board. Shield, wet cloth, "
           "extinguisher in reach, and a fire watch of at least 30 minutes after the last flame.",
           "Flame. Shield, extinguisher, fire watch."),
    Hazard("flammable-refrigerant", "warning",
           "Refrigerant may burn, is heavier than air and takes the place of air. A flame turns it "
           "into poison. Detector on, ventilate, no flame within ten feet until the line is "
           "purged. Trained and certified people only.",
           "Refrigerant. Detector on, ventilate, no flame."),
    Hazard("nitrogen", "warning",
           "Nitrogen bursts what is weak and pushes out the air that you breathe. Cylinder "
           "chained, regulator with relief, never oxygen or shop air, room open.",
           "Nitrogen. Regulator with relief, room open."),
    Hazard("pressure", "warning",
           "Lines under pressure whip and spray. Eye protection and gloves. Let the pressure off "
           "before you loosen anything.",
           "Pressure. Let it off before you loosen anything."),
    Hazard("generator", "warning",
           "Generator: outdoors, at least 20 feet from every opening, exhaust pointed away. Into "
           "the home only through a transfer switch: back-feeding kills line workers.",
           "Generator. Outdoors, never into an outlet."),
    Hazard("droppings", "warning",
           "Rodent droppings carry disease. Wet them down, do not sweep, wear a fitted P100 mask "
           "and gloves.",
           "Droppings. Wet them, mask on, do not sweep."),
    Hazard("lead-paint", "warning",
           "Paint from before 1978 may hold lead. Lead-safe work, no dry sanding, people and "
           "children out.",
           "Lead paint. No dry sanding."),
    # ---- caution ----
    Hazard("lifting", "caution",
           "Heavy. Two people or a lift; say who leads before you lift; clear the way first.",
           "Heavy. Two people or a lift."),
    Hazard("sharp", "caution",
           "Cut edges of sheet metal and fin. Cut-resistant gloves, sleeves down.",
           "Cut edges. Gloves on."),
    Hazard("hot-surface", "caution",
           "Elements and pipes burn skin. Let them cool before you reach in.",
           "Hot parts. Let them cool."),
    Hazard("moving-parts", "caution",
           "Fans start without warning. Fingers, sleeves and probes out of the wheel.",
           "Fans start without warning."),
    Hazard("refrigerant-burn", "caution",
           "Liquid refrigerant freezes skin and eyes. Gloves and goggles on.",
           "Liquid refrigerant. Gloves and goggles on."),
    Hazard("mercury", "caution",
           "An old thermostat with a glass bulb holds mercury. Do not break it; box it upright for "
           "recycling.",
           "Mercury. Do not break the bulb."),
    Hazard("dust", "caution",
           "Glass fiber and dust. Mask, eye protection, sleeves.",
           "Fiber and dust. Mask and eye protection."),
    Hazard("water-near-power", "caution",
           "Water. Cover the floor opening and the electric parts before you pour.",
           "Water. Electric parts still covered?"),
    Hazard("ice", "caution",
           "Ice underfoot at the outdoor unit and the steps. Sand it first.",
           "Ice underfoot. Sand it."),
    # ---- notice ----
    Hazard("hidden-structure", "notice",
           "Joists, outriggers, pipes and wires run where you cannot see them. Look from both "
           "sides before the first cut. None of them is cut without the official's permit.",
           "Look from both sides before you cut."),
    Hazard("freezing-pipes", "notice",
           "Pipes in the belly freeze within hours once the heat is off. Watch the coldest one.",
           "Pipes can freeze. Watch the coldest one."),
    Hazard("no-venting", "notice",
           "Letting refrigerant go on purpose is against federal law. Recover it; certified people "
           "and machines only.",
           "Recover it, never vent it."),
    Hazard("warranty", "notice",
           "Work outside the maker’s instructions can end the listing and the warranty. Read them "
           "before this step.",
           "Maker’s instructions first."),
)

_BY_TAG = {h.tag: h for h in HAZARDS}


def hazard(tag: str) -> Hazard:
    """The hazard with this tag; `ValueError` with all tags if there is none."""
    found = _BY_TAG.get(tag)
    if found is None:
        raise ValueError(f"no hazard is tagged {tag!r}; there are {', '.join(_BY_TAG)}")
    return found


def in_order(tags: Iterable[str]) -> list[Hazard]:
    """The hazards of these tags, the worst first, as listed within a level."""
    order = list(_BY_TAG)
    return sorted((hazard(t) for t in tags),
                  key=lambda h: (LEVELS.index(h.level), order.index(h.tag)))
