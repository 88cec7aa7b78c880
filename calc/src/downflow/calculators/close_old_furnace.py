"""Closing what the old furnace leaves behind.

Vent and roof jack, combustion-air openings and fuel line: out, capped, insulated,
air-sealed. This shows what an open vent costs in heat and in moisture, and what the
appliances that still burn fuel demand before the job is done.
"""

from __future__ import annotations

import math

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.engine.paper import Level
from downflow.facts.vent import (
    ALARMS,
    ASBESTOS,
    CAPPED,
    COMBUSTION,
    ROOF_PATCH,
    SHARED_VENT,
    STACK,
    VENT_OUT,
)
from downflow.facts.water import MOIST_AIR, WATER
from downflow.physics import air, condensate, moist_air, open_vent
from downflow.sources import (
    GEOMETRY,
    SENSIBLE_HEAT,
    STANDARD_ATMOSPHERE,
    UNITS,
)

CALCULATOR = Calculator(
    id="close-old-furnace",
    title="Closing the old furnace",
    phase="out",
    question="What must be closed, and what does an open vent cost?",
    reads=("vent_in", "vent_rise_ft", "vent_state", "vent_shared", "furnace_air_openings",
           "vent_discharge", "leakage_area_in2", "indoor_design_f", "design_heating_f",
           "elevation_ft", "monthly_means", "indoor_winter_rh_pct", "outdoor_winter_rh_pct",
           "fuel_line_capped", "closet_burner", "year_built"),
    may_read=("fuel_capped_by", "co_alarm", "smoke_alarms", "water_heater_fuel", "range_fuel",
              "dryer_fuel", "stove_fuel", "season_cop", "electricity_usd_kwh"),
    gives=("open_vent_btuh", "open_vent_cfm", "open_vent_mmbtu", "open_vent_usd",
           "open_vent_gal_day"),
)

BURNING = ("gas", "propane", "oil", "wood")
DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
HEATING_BELOW_F = 60.0
ASBESTOS_BEFORE = 1980
GAS = "licensed gas fitter"


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.design_heating_f < job.indoor_design_f, "design_heating_f",
                      "must be colder than the indoor temperature.")
    job.stop_if_refused()
    area = _area(job, paper)
    flow = _flow(job, paper, area, job.design_heating_f)
    density = paper.step("rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / "
                         "(53.350 * (t + 459.67))", STANDARD_ATMOSPHERE, "lb/ft³",
                         air.density_lb_ft3(job.elevation_ft, job.indoor_design_f),
                         z=job.elevation_ft, t=job.indoor_design_f,
                         what="Density of the air that leaves")
    heat = paper.step("q = 60 * 0.240 * rho * Q * (ti - to)", SENSIBLE_HEAT, "Btu/h",
                      air.heat_btuh(flow, job.indoor_design_f - job.design_heating_f, density),
                      rho=density, Q=flow, ti=job.indoor_design_f, to=job.design_heating_f,
                      what="Heat that it takes on the design night")
    paper.give("open_vent_cfm", flow)
    paper.give("open_vent_btuh", heat)
    _season(job, paper, area, density)
    _moisture(job, paper, flow)
    _vent(job, paper, heat)
    _fuel(job, paper)


def _area(job: Readings, paper: Paper) -> float:
    pipe = paper.step("v = pi / 4 * (d / 12) ** 2", GEOMETRY, "ft²",
                      math.pi / 4 * (job.vent_in / 12) ** 2, d=job.vent_in,
                      what="Opening of the vent")
    leaks = paper.step("k = A / 144 / c", GEOMETRY, "ft²",
                       job.leakage_area_in2 / 144 / job.vent_discharge, A=job.leakage_area_in2,
                       c=job.vent_discharge, what="Leaks of the home, as an opening of that kind")
    return paper.step("a = v * k / sqrt(v ** 2 + k ** 2)", STACK, "ft²",
                      open_vent.series_area_ft2(pipe, leaks), v=pipe, k=leaks,
                      what="Leaks and vent in a row, as one opening")


def _flow(job: Readings, paper: Paper, area: float, outdoor_f: float) -> float:
    return paper.step(
        "Q = 60 * c * a * sqrt(2 * 32.174 * h * (ti - to) / (ti + 459.67))", STACK, "cfm",
        open_vent.stack_cfm(area, job.vent_rise_ft, job.indoor_design_f, outdoor_f,
                            job.vent_discharge), c=job.vent_discharge, a=area,
        h=job.vent_rise_ft, ti=job.indoor_design_f, to=outdoor_f,
        what="Air that rises through the open vent on the design night")


def _season(job: Readings, paper: Paper, area: float, density: float) -> None:
    rows = []
    for row, days in zip(job.monthly_means, DAYS, strict=True):
        mean = row["mean_f"]
        if mean >= HEATING_BELOW_F:
            continue
        flow = open_vent.stack_cfm(area, job.vent_rise_ft, job.indoor_design_f, mean,
                                   job.vent_discharge)
        heat = air.heat_btuh(flow, job.indoor_design_f - mean, density) * 24 * days / 1e6
        rows.append((f"month {row['month']:.0f}", heat))
    season = paper.total("Heat in a season, month by month", SENSIBLE_HEAT, "MMBtu",
                         sum(v for _, v in rows), rows or [("none", 0.0)])
    paper.give("open_vent_mmbtu", season)
    if job.electricity_usd_kwh is None or job.season_cop is None:
        return
    paper.give("open_vent_usd", paper.step(
        "C = 1000000 * S / 3412.142 / k * p", UNITS, "$/year",
        1e6 * season / 3412.142 / job.season_cop * job.electricity_usd_kwh, S=season,
        k=job.season_cop, p=job.electricity_usd_kwh, what="What that costs in a season"))


def _moisture(job: Readings, paper: Paper, flow: float) -> None:
    pressure = moist_air.atmosphere_psia(job.elevation_ft)
    inside = moist_air.ratio_from_humidity(job.indoor_design_f, job.indoor_winter_rh_pct, pressure)
    outside = moist_air.ratio_from_humidity(job.design_heating_f, job.outdoor_winter_rh_pct,
                                            pressure)
    vapor = moist_air.vapor_pressure_psia(job.indoor_design_f)
    paper.step("w = 0.621945 * h / 100 * e / (p - h / 100 * e)", MOIST_AIR, "lb/lb", inside,
               h=job.indoor_winter_rh_pct, e=vapor, p=pressure,
               what="Water in the air that leaves")
    dry = moist_air.dry_air_lb_h(flow, job.indoor_design_f, inside, pressure)
    gallons = paper.step(
        "g = 24 * m * (w - wo) / 8.337", WATER, "gal/day",
        condensate.gallons(open_vent.water_lb_day(dry, inside, outside)), m=dry, w=inside,
        wo=outside, what="Water that it takes on the design day")
    paper.give("open_vent_gal_day", gallons)


def _vent(job: Readings, paper: Paper, heat: float) -> None:
    words = {
        "open": ("hold", "The old vent is open: on the design night it takes {heat}, and its water "
                 "freezes in the pipe.",
                 "Take pipe and jack out; frame and patch the deck, seal the ceiling, insulate, "
                 "flash to the roof, and test with water."),
        "stuffed": ("hold", "Stuffing is no seal: warm moist air condenses in the pipe and drips.",
                    "Take pipe and jack out and patch the roof."),
        "capped": ("look", "Capped outside, the pipe still fills with warm moist air.",
                   "Seal it at the ceiling, insulate over it, and plan to take it out."),
        "gone": ("fine", "The vent is out; deck, air seal, insulation and flashing are done.",
                 "Look at the patch from inside after the first storm."),
    }
    level, text, do = words[job.vent_state]
    paper.verdict("vent", _level(level), text, source=ROOF_PATCH if level == "fine" else VENT_OUT,
                  do=do, heat=Quantity(heat, "Btu/h", 0))
    openings = {
        "closed": ("fine", "The old furnace's air openings are closed, sealed and insulated.", ""),
        "none": ("fine", "There were no air openings.", ""),
        "floor": ("hold", "The closet is open to the crawl space: the blower draws its air, damp "
                  "and rodents included.", "Rigid board, sealed all round, insulated, and the "
                  "belly patched."),
        "roof": ("hold", "The closet is open to the roof: the blower draws outdoor air.",
                 "Close, seal and insulate it."),
    }[job.furnace_air_openings]
    paper.verdict("air-openings", _level(openings[0]), openings[1], source=COMBUSTION,
                  do=openings[2])
    shared = {
        "no": ("fine", "Nothing else used this vent.", ""),
        "resized": ("fine", "The vent was resized for what stays.", "Keep the paper with the job."),
        "yes": ("hold", "Another appliance used this vent. Alone in it, it spills its fumes.",
                "A licensed person resizes the vent before it burns again."),
    }[job.vent_shared]
    paper.verdict("shared-vent", _level(shared[0]), shared[1], source=SHARED_VENT, do=shared[2],
                  best="look" if job.vent_shared != "no" else "fine",
                  signs=GAS if job.vent_shared != "no" else "")
    old = job.year_built < ASBESTOS_BEFORE
    paper.verdict("asbestos", "look" if old else "fine",
                  "A home of this age may have asbestos in vent pipe, closet board or duct tape."
                  if old else "Of an age without asbestos in vents, as a rule.", source=ASBESTOS,
                  do="Sample before anything is cut; removal is for an accredited firm." if old
                  else "")


def _level(word: str) -> Level:
    return "hold" if word == "hold" else "look" if word == "look" else "fine"


def _fuel(job: Readings, paper: Paper) -> None:
    fuels = {"water heater": job.water_heater_fuel, "range": job.range_fuel,
             "dryer": job.dryer_fuel, "stove": job.stove_fuel}
    burning = [name for name, fuel in fuels.items() if fuel in BURNING]
    named = ", ".join(burning)
    capped = job.fuel_line_capped
    paper.verdict(
        "fuel-line", "hold" if not capped else "fine" if job.fuel_capped_by else "look",
        "The furnace's fuel line is closed, capped and tested." if capped else
        "The furnace's fuel line is not closed, capped and tested.", source=CAPPED, best="look",
        signs=GAS,
        do="Name and licence stay on the tag." if capped and job.fuel_capped_by else
        "Write down who capped it, with licence and date, on the tag and here." if capped else
        "A licensed gas person closes both valves, caps the outlet gastight and tests what stays.")
    if job.closet_burner == "closet":
        paper.verdict("burner", "hold", "An appliance takes its combustion air from this closet, "
                      "and the blower would draw it away.", source=COMBUSTION, best="look",
                      signs=GAS, do="It gets its own air from outside, or it moves or goes.")
    elif job.closet_burner == "home":
        paper.verdict("burner", "look", "An appliance takes its air from the home. A tighter home "
                      "and a stronger blower may make it spill.", source=SHARED_VENT, best="look",
                      signs=GAS,
                      do="Test draft and spillage with fans and blower on, doors closed.")
    elif job.closet_burner == "none" and burning:
        paper.verdict("burner", "look", "The job sheet says that nothing burns fuel, and that this "
                      "does: {what}. Where it takes its air is not known.", source=SHARED_VENT,
                      best="look", signs=GAS, what=named,
                      do="Say where it takes its air: from outside, from the home, or from this "
                         "closet.")
    elif job.closet_burner == "sealed":
        paper.verdict("burner", "fine", "What still burns takes its air from outside.",
                      source=SHARED_VENT, best="look", signs=GAS,
                      do="Keep its air pipe and vent clear; service it as before.")
    else:
        paper.verdict("burner", "fine", "Nothing in the home burns fuel any more.",
                      source=SHARED_VENT)
    if burning or job.closet_burner != "none":
        works = bool(job.co_alarm)
        paper.verdict("alarm", "fine" if works else "hold",
                      "Fuel still burns ({what}), and the carbon monoxide alarm works." if works
                      else "Fuel still burns ({what}), and no carbon monoxide alarm was found to "
                      "work.", source=ALARMS, best="look", signs=GAS,
                      do="Outside each sleeping area; press the button at every visit." if works
                      else "Put alarms outside each sleeping area before you leave.",
                      what=named or "see the appliance")
    else:
        paper.verdict("alarm", "fine" if job.smoke_alarms else "look",
                      "No fuel burns; smoke alarms work." if job.smoke_alarms else
                      "Smoke alarms were not found to work.", source=ALARMS,
                      do="" if job.smoke_alarms else "Press the button of each, change batteries.")


def figure(sheet: Sheet) -> str:
    """What an open vent would take, outdoor temperature by outdoor temperature."""
    job = sheet.job
    points = []
    flow_at_design, warm = sheet.values["open_vent_btuh"], job.indoor_design_f
    span = warm - job.design_heating_f
    for n in range(21):
        outdoor = job.design_heating_f + span * n / 20
        points.append((outdoor, flow_at_design * ((warm - outdoor) / span) ** 1.5))
    night = sheet.text(flow_at_design, "Btu/h", 0)
    return drawing.chart(
        "close-old-furnace", "Heat through an open vent",
        f"At {sheet.text(job.design_heating_f, '°F', 0)} an open vent takes {night}, "
        f"{sheet.text(sheet.values['open_vent_cfm'], 'cfm', 0)} of warm air.",
        x=("outside", "°F"), y=("heat lost", "Btu/h"),
        lines=[drawing.Line("open vent", points, "limit")],
        mark=drawing.Mark(job.design_heating_f, [(flow_at_design, night)]), system=sheet.system,
    ).figure("Closed, sealed and insulated it takes nothing.")

