"""Air that leaks through the shell.

Wind and cold push air through every crack. A blower door measures the cracks; the
design night's wind and temperature then say how much comes in. Without a test the
federal rule for these homes stands in, by their perimeter. The heat in leaking air goes
with its mass, so thin air carries less.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.envelope import (
    BASIC_LEAKS,
    COMBINED_AIR,
    DESIGN_LEAKS,
    HUD_INFILTRATION,
    LEAK_MODEL,
    LEAKAGE_AREA,
)
from downflow.physics import air, heat_loss
from downflow.sources import GEOMETRY, SENSIBLE_HEAT, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="air-leakage",
    title="Air leaks",
    phase="survey",
    question="How much outdoor air comes in by itself, and what does it cost in heat?",
    reads=("home_perimeter_ft", "floor_area_ft2", "ceiling_height_ft", "elevation_ft",
           "indoor_design_f", "design_heating_f", "leak_exponent", "exhaust_fan_cfm",
           "wind_shelter"),
    may_read=("blower_door_cfm50", "natural_ach", "design_cooling_f"),
    gives=("infiltration_ua_btuh_f", "infiltration_cfm", "infiltration_cooling_cfm",
           "infiltration_second_cfm", "leakage_area_in2", "air_changes_50"),
    shows=("infiltration_ua_btuh_f", "infiltration_cfm", "infiltration_cooling_cfm",
           "leakage_area_in2", "air_changes_50"),
)

SUMMER_INDOOR_F = 75.0
SUMMER_DIFFERENCE_F = 15.0
FEDERAL_OFF = 0.40
MODEL_OFF = 0.25
LEAKY_50 = 10.0
DESIGN_WIND_MPH = 15.0
ROADS_RATIO = 1.8


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.design_heating_f < job.indoor_design_f, "design_heating_f",
                      "must be colder than the indoor temperature to hold.")
    volume = paper.step("V = A * H", GEOMETRY, "ft³",
                        job.floor_area_ft2 * job.ceiling_height_ft, A=job.floor_area_ft2,
                        H=job.ceiling_height_ft, what="Volume of the home")
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.35 * 529.67)",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft), z=job.elevation_ft,
        what="Density of dry air at 70 °F up here")
    if job.blower_door_cfm50 is not None:
        leaks, cfm = _from_blower_door(job, paper, volume)
    elif job.natural_ach is not None:
        cfm = paper.step("Q = n * V / 60", GEOMETRY, "cfm",
                         heat_loss.air_change_cfm(job.natural_ach, volume), n=job.natural_ach,
                         V=volume, what="Outdoor air from the air changes entered")
        leaks = _hole_of(job, paper, cfm)
    else:
        federal = paper.step("UA = 0.7 * P", HUD_INFILTRATION, "Btu/(h °F)",
                             heat_loss.federal_infiltration_ua_btuh_f(job.home_perimeter_ft),
                             P=job.home_perimeter_ft,
                             what="Air leaks by the federal rule, nothing measured",
                             note="A rule for new homes; an old one may leak twice as much, a "
                                  "tight one half.")
        cfm = paper.step("Q = UA / 1.08", SENSIBLE_HEAT, "cfm",
                         federal / air.sensible_factor_btuh_cfm_f(), UA=federal,
                         what="The same as an airflow, in standard air")
        leaks = _hole_of(job, paper, cfm)
    measured = job.blower_door_cfm50 is not None or job.natural_ach is not None
    model = Spread(MODEL_OFF, MODEL_OFF, True, LEAK_MODEL) if measured else Spread(
        FEDERAL_OFF, FEDERAL_OFF, True, HUD_INFILTRATION)
    _second_road(job, paper, leaks, cfm, model)
    if job.exhaust_fan_cfm > 0:
        cfm = paper.step("Qt = max(F, Q + 0.5 * F)", COMBINED_AIR, "cfm",
                         heat_loss.outdoor_air_cfm(cfm, 0, job.exhaust_fan_cfm), Q=cfm,
                         F=job.exhaust_fan_cfm, what="Leaks and the fan together")
    ua = paper.step("UA = 60 * 0.24 * rho * Q", SENSIBLE_HEAT, "Btu/(h °F)",
                    heat_loss.infiltration_ua_btuh_f(cfm, density), rho=density, Q=cfm,
                    what="Heat that this air takes, per degree")
    paper.give("infiltration_ua_btuh_f", ua, model)
    paper.give("infiltration_cfm", cfm, model)
    paper.give("leakage_area_in2", leaks, model)
    _summer(job, paper, leaks, model)
    if job.blower_door_cfm50 is not None:
        changes = paper.step("n = 60 * Q / V", GEOMETRY, "1/h",
                             heat_loss.air_changes_h(job.blower_door_cfm50, volume),
                             Q=job.blower_door_cfm50, V=volume, what="Air changes at 50 Pa")
        paper.give("air_changes_50", changes)
        paper.limit(
            "leaks", changes, at_most=LEAKY_50, of="air_changes_50", source=LEAK_MODEL,
            beyond="look",
            fine="Not a leaky home, as these go.",
            look="{value} at 50 Pa: a leaky home. Air sealing may be worth more than a larger "
                 "heat pump.",
            do="Look for the old furnace's openings, marriage line, belly, and ducts first.")
        paper.verdict("leaks-measured", "fine", "The leaks were measured.", source=LEAKAGE_AREA)
    elif job.natural_ach is not None:
        paper.verdict("leaks-measured", "fine", "The air changes were entered.",
                      source=LEAKAGE_AREA)
    else:
        paper.verdict("leaks-measured", "look",
                      "The leaks were not measured: a rule by perimeter stands in.",
                      source=HUD_INFILTRATION,
                      do="A blower door reading halves the doubt in this part.")
    paper.draw(rows=_rows(job, cfm))


def _second_road(job: Readings, paper: Paper, leaks: float, cfm: float, model: Spread) -> None:
    """The basic model on the same hole: stack and wind side by side."""
    stack = next(r.stack_si for r in tables.typed("infiltration_stack", tables.StackCoefficient)
                 if r.storeys == 1)
    wind = next(r.wind_si for r in tables.typed("infiltration_wind", tables.WindCoefficient)
                if r.storeys == 1 and str(r.shelter_class) == job.wind_shelter)
    difference = job.indoor_design_f - job.design_heating_f
    basic = paper.step(
        "Q = L * 6.4516 * sqrt(cs * dT / 1.8 + cw * (15 * 0.44704) ** 2) / 0.4719474432",
        BASIC_LEAKS, "cfm",
        heat_loss.basic_infiltration_cfm(leaks, difference, DESIGN_WIND_MPH, stack, wind),
        L=leaks, cs=stack, dT=difference, cw=wind,
        what="A second road: the basic model at 15 mph, by what stands around the home",
        note="It reads high in the cold; the design goes by the first.")
    paper.give("infiltration_second_cfm", basic, model)
    ratio = max(basic, cfm) / min(basic, cfm)
    paper.limit(
        "roads-near", ratio, at_most=ROADS_RATIO, unit="", decimals=1, source=BASIC_LEAKS,
        beyond="look", first=Quantity(cfm, "cfm", 0), second=Quantity(basic, "cfm", 0),
        fine="Two models of the same leaks: {first} and {second}, as near as they come.",
        look="Two models of the same leaks are far apart: {first} and {second}. The wind at this "
             "place decides.",
        do="See what stands around the home, and lean on bills or a cold night.")


def _driving(job: Readings) -> float:
    """Outdoor air for one square inch of leaks on the design night. [cfm/in²]"""
    return heat_loss.design_infiltration_cfm(1.0, job.ceiling_height_ft,
                                             job.indoor_design_f - job.design_heating_f)


def _from_blower_door(job: Readings, paper: Paper, volume: float) -> tuple[float, float]:
    at4 = paper.step("Q4 = Q50 * (4 / 50) ** n", LEAKAGE_AREA, "cfm",
                     heat_loss.leak_flow_cfm(job.blower_door_cfm50, heat_loss.TEST_PA,
                                             heat_loss.LEAKAGE_AREA_PA, job.leak_exponent),
                     Q50=job.blower_door_cfm50, n=job.leak_exponent,
                     what="Flow at 4 Pa, nearer to what weather does")
    leaks = paper.step(
        "L = Q4 * 0.3048 ** 3 / 60 * sqrt(1.2 / (2 * 4)) / 0.0254 ** 2", LEAKAGE_AREA, "in²",
        heat_loss.leakage_area_in2(at4), Q4=at4, what="All leaks as one hole")
    cfm = paper.step(
        "Q = L * 6.4516 * (51 + 0.35 * H * 0.3048 * (ti - to) / 1.8) / 1000 / 0.4719474432",
        DESIGN_LEAKS, "cfm", leaks * _driving(job), L=leaks, H=job.ceiling_height_ft,
        ti=job.indoor_design_f, to=job.design_heating_f,
        what="Outdoor air on the design night, 15 mph wind")
    return leaks, cfm


def _hole_of(job: Readings, paper: Paper, cfm: float) -> float:
    return paper.step(
        "L = Q * 0.4719474432 * 1000 / 6.4516 / (51 + 0.35 * H * 0.3048 * (ti - to) / 1.8)",
        DESIGN_LEAKS, "in²", cfm / _driving(job), Q=cfm, H=job.ceiling_height_ft,
        ti=job.indoor_design_f, to=job.design_heating_f,
        what="The hole that would let this air in on the design night")


def _summer(job: Readings, paper: Paper, leaks: float, model: Spread) -> None:
    difference = (SUMMER_DIFFERENCE_F if job.design_cooling_f is None
                  else abs(job.design_cooling_f - SUMMER_INDOOR_F))
    cfm = paper.step(
        "Q = L * 6.4516 * (25 + 0.38 * H * 0.3048 * dT / 1.8) / 1000 / 0.4719474432",
        DESIGN_LEAKS, "cfm",
        heat_loss.design_infiltration_cfm(leaks, job.ceiling_height_ft, difference, cooling=True),
        L=leaks, H=job.ceiling_height_ft, dT=difference,
        what="Outdoor air on the design afternoon, 7.5 mph wind")
    if job.exhaust_fan_cfm > 0:
        cfm = paper.step("Qt = max(F, Q + 0.5 * F)", COMBINED_AIR, "cfm",
                         heat_loss.outdoor_air_cfm(cfm, 0, job.exhaust_fan_cfm), Q=cfm,
                         F=job.exhaust_fan_cfm, what="Leaks and the fan together, summer")
    paper.give("infiltration_cooling_cfm", cfm, model)


def _rows(job: Readings, cfm: float) -> list[tuple[str, float]]:
    federal = (heat_loss.federal_infiltration_ua_btuh_f(job.home_perimeter_ft)
               / air.sensible_factor_btuh_cfm_f())
    return [("used here", cfm), ("federal rule", federal)]


def figure(sheet: Sheet) -> str:
    """The airflow used, beside what the federal rule would have said."""
    rows = sheet.drawn["rows"]
    assert isinstance(rows, list)
    return drawing.bars(
        "air-leakage", "Outdoor air on the design night", rows, "cfm",
        head="that leaks in", system=sheet.system, keep_order=True,
    ).figure("The rule goes by perimeter alone; a blower door knows this home.")
