"""How much water: from the coil in summer, from defrost in winter.

In cooling the coil takes water out of the air; what the air held before and after says
how much. In heating the outdoor coil grows frost in wet cold, and every defrost lets go
of it as water under the unit, where it freezes again.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.water import FROST, MOIST_AIR, WATER
from downflow.physics import condensate, heat_pump, moist_air
from downflow.sources import ARITHMETIC, DATA_SHEET, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="water-amount",
    title="How much water",
    phase="water",
    question="How much water comes from the coil, and how much from defrost?",
    reads=("elevation_ft", "cooling_airflow_cfm", "cool_return_f", "cool_return_wb_f",
           "cool_supply_f", "cool_supply_rh_pct", "cooling_hours_day", "hp_points",
           "hp_altitude_factor_pct", "frost_day_f", "frost_day_rh_pct", "coil_below_air_f",
           "defrost_every_min", "frost_run_pct"),
    gives=("coil_water_gal_h", "coil_water_gal_day", "melt_gal_day", "melt_lb", "frost_lb_h"),
)

FREEZING_F = 32.0
FROST_MODEL = Spread(0.25, 0.25, True, FROST)
"""Coils are not at one temperature, and part of the frost leaves as vapor."""


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.cool_return_wb_f <= job.cool_return_f, "cool_return_wb_f",
                      "is above its dry bulb. Were dry bulb and wet bulb swapped?")
    job.refuse_unless(job.cool_supply_f < job.cool_return_f, "cool_supply_f",
                      "must be colder than the air entering the coil: is it cooling?")
    job.stop_if_refused()
    driest = moist_air.driest_wet_bulb_f(job.cool_return_f,
                                         moist_air.atmosphere_psia(job.elevation_ft))
    job.refuse_unless(job.cool_return_wb_f >= driest, "cool_return_wb_f",
                      "is lower than even bone-dry air would show. Is the wick wet, and is it the "
                      "wet bulb that you read?")
    pressure = paper.step("p = 14.696 * (1 - 6.8754e-6 * z) ** 5.2559", STANDARD_ATMOSPHERE,
                          "psia", moist_air.atmosphere_psia(job.elevation_ft),
                          z=job.elevation_ft, what="Pressure of the air up here")
    hour = _coil(job, paper, pressure)
    paper.give("coil_water_gal_day", paper.step(
        "D = g * h", ARITHMETIC, "gal/day", hour * job.cooling_hours_day, g=hour,
        h=job.cooling_hours_day, what="On a hot day"))
    frost = _frost(job, paper, pressure)
    each = paper.step("e = m * n / 60", ARITHMETIC, "lb", frost * job.defrost_every_min / 60,
                      m=frost, n=job.defrost_every_min, what="Water of one defrost")
    day = paper.step("M = 24 * m * s / 100 / 8.337", WATER, "gal/day",
                     condensate.gallons(24 * frost * job.frost_run_pct / 100), m=frost,
                     s=job.frost_run_pct, what="Defrost water on a wet cold day")
    paper.give("melt_lb", each)
    paper.give("melt_gal_day", day)
    paper.draw(hour=hour)
    paper.verdict(
        "coil", "fine",
        "The coil makes {hour} while it cools." if hour > 0 else
        "The coil stays dry in this air; the drain must still be ready for a humid week.",
        source=MOIST_AIR, hour=Quantity(hour, "gal/h", 2))
    if day > 0:
        paper.verdict("melt", "fine", "On a wet cold day {day} run out under the outdoor unit and "
                      "freeze where they run; the site says whether a walk is in their way.",
                      source=FROST, day=Quantity(day, "gal/day", 0))
    else:
        paper.verdict("melt", "fine", "No frost on a day like this.", source=FROST)


def _coil(job: Readings, paper: Paper, pressure: float) -> float:
    before = paper.solved(
        "Water in the air before the coil", "wet bulb of the mixture = wet bulb read", MOIST_AIR,
        "lb/lb", moist_air.ratio_from_wet_bulb(job.cool_return_f, job.cool_return_wb_f, pressure),
        left=_wet_bulb(job.cool_return_f, job.cool_return_wb_f, pressure),
        right=job.cool_return_wb_f, side_unit="°F", tolerance=0.002,
        method="psychrometric equations, checked the way back")
    vapor = paper.solved(
        "Pressure of water vapor at the supply temperature", "saturation at that temperature",
        MOIST_AIR, "psia", moist_air.vapor_pressure_psia(job.cool_supply_f),
        left=moist_air.dew_point_f(job.cool_supply_f,
                                   moist_air.saturated_ratio(job.cool_supply_f, pressure),
                                   pressure),
        right=job.cool_supply_f, side_unit="°F", tolerance=0.002,
        method="psychrometric equations, checked the way back through the dew point")
    after = paper.step(
        "w2 = 0.621945 * h / 100 * e / (p - h / 100 * e)", MOIST_AIR, "lb/lb",
        moist_air.ratio_from_humidity(job.cool_supply_f, job.cool_supply_rh_pct, pressure),
        h=job.cool_supply_rh_pct, e=vapor, p=pressure, what="Water in the air after the coil")
    volume = moist_air.volume_ft3_lb(job.cool_return_f, before, pressure)
    paper.step("v = 53.350 * (t + 459.67) * (1 + 1.607858 * w) / (144 * p)", MOIST_AIR, "",
               volume, t=job.cool_return_f, w=before, p=pressure,
               what="Volume of a pound of dry air with its water, in cubic feet")
    flow = moist_air.dry_air_lb_h(job.cooling_airflow_cfm, job.cool_return_f, before, pressure)
    water = paper.step("W = max(60 * Q / v * (w1 - w2), 0)", MOIST_AIR, "lb/h",
                       condensate.coil_water_lb_h(flow, before, after),
                       Q=job.cooling_airflow_cfm, v=volume, w1=before, w2=after,
                       what="Water that the coil takes out")
    hour = paper.step("g = W / 8.337", WATER, "gal/h", condensate.gallons(water), W=water,
                      what="The same by volume")
    paper.give("coil_water_gal_h", hour)
    return hour


def _wet_bulb(dry_f: float, wet_f: float, pressure: float) -> float:
    ratio = moist_air.ratio_from_wet_bulb(dry_f, wet_f, pressure)
    return moist_air.wet_bulb_f(dry_f, ratio, pressure)


def _frost(job: Readings, paper: Paper, pressure: float) -> float:
    rows = job.hp_points
    points = [r["outdoor_f"] for r in rows]
    capacity = heat_pump.interpolate(points, [r["capacity_max_btuh"] for r in rows],
                                     job.frost_day_f).value
    power = heat_pump.interpolate(points, [r["power_max_w"] for r in rows],
                                  job.frost_day_f).value
    taken = paper.step("q = f / 100 * c - 3.412142 * w", DATA_SHEET, "Btu/h",
                       job.hp_altitude_factor_pct / 100 * capacity - 3.412142 * power,
                       f=job.hp_altitude_factor_pct, c=capacity, w=power,
                       what="Heat that the outdoor coil takes from the air at top speed")
    coil_f = min(job.frost_day_f - job.coil_below_air_f, job.frost_day_f)
    outdoor = moist_air.ratio_from_humidity(job.frost_day_f, job.frost_day_rh_pct, pressure)
    coil = moist_air.saturated_ratio(coil_f, pressure)
    if coil_f > FREEZING_F:
        share = 0.0
        frost = paper.step("m = 0 * q", FROST, "lb/h", 0.0, q=taken,
                           what="Frost: the coil is above freezing")
    else:
        share = paper.step(
            "s = 1219 * max(wo - wc, 0) / (1219 * max(wo - wc, 0) + (0.240 + 0.444 * wo) * a)",
            FROST, "", condensate.frost_share(job.frost_day_f, outdoor, coil_f, coil), wo=outdoor,
            wc=coil, a=job.coil_below_air_f,
            what="Share of that heat that comes from frost forming")
        frost = paper.step("m = q * s / 1219", FROST, "lb/h",
                           condensate.frost_lb_h(taken, share), q=taken, s=share,
                           what="Frost on the outdoor coil")
    paper.give("frost_lb_h", frost, model=FROST_MODEL)
    return frost


def figure(sheet: Sheet) -> str:
    """Water on a hot day beside water on a wet cold day."""
    rows = [("from the coil, hot day", sheet.values["coil_water_gal_day"]),
            ("from defrost, wet cold day", sheet.values["melt_gal_day"])]
    words = ", ".join(f"{name} {sheet.text(v, 'gal/day', 1)}" for name, v in rows)
    return drawing.bars("water-amount", "Water in a day", rows, "gal/day", decimals=1,
                        desc=words + ".", system=sheet.system, keep_order=True,
                        ).figure("Summer water goes through the drain; winter water falls under "
                                 "the outdoor unit.")
