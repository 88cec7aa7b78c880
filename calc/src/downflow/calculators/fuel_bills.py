"""Heat loss from fuel bills.

Fuel per day against degree days per day is a straight line. Where it starts is what is
used whatever the weather; how steep it is tells the loss at the furnace, ducts in it.
The base temperature, at which heating starts, is found: the one whose line fits best.
"""

from __future__ import annotations

import math

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.envelope import DEGREE_DAY_FIT, FIT_ENOUGH, FUEL_HEAT, UNCERTAINTY
from downflow.physics import climate_year, fuel_bills
from downflow.sources import DUCT_DELIVERY, ENERGY_BALANCE, PRACTICE

CALCULATOR = Calculator(
    id="fuel-bills",
    title="Heat loss from fuel bills",
    phase="survey",
    question="What do the fuel bills say the home loses?",
    reads=("fuel_periods", "heating_fuel", "furnace_efficiency_pct", "monthly_means",
           "delivery_before_pct"),
    may_read=("other_heat",),
    gives=("bills_ua_btuh_f", "bills_ua_furnace_btuh_f", "bills_sigma_btuh_f", "bills_base_f",
           "bills_base_use", "bills_r2"),
    shows=("bills_ua_btuh_f", "bills_ua_furnace_btuh_f", "bills_base_f", "bills_r2"),
)

FUEL_ROWS = {"propane": "propane", "gas": "natural gas", "oil": "heating oil no. 2",
             "electric": "electricity"}
FUEL_UNITS = {"propane": "gal", "gas": "therms", "oil": "gal", "electric": "kWh"}
COLDEST_BASE_F, WARMEST_BASE_F, BASE_STEP_F = 50.0, 70.0, 0.5
NO_HEATING_F = 80.0
COLDEST_MEAN_F = -50.0
HEATING_DAY_F = 5.0
EFFICIENCY_OFF, DELIVERY_OFF, DEGREE_DAYS_OFF = 0.04, 0.08, 0.03
NINE_IN_TEN = 0.90
LOW_BASE_F, HIGH_BASE_F = 54.0, 67.0


def solve(job: Readings, paper: Paper) -> None:
    periods = job.fuel_periods
    means = [row["mean_f"] for row in job.monthly_means]
    year = climate_year.yearly_spread_f(means)
    for index, row in enumerate(periods):
        if row.get("month") is None and row.get("degree_days_65") is None:
            job.refuse(f"fuel_periods[{index}].month",
                       "give the month, or the period's degree days.")
    job.stop_if_refused()
    outdoor = [_mean(job, index, row, means, year) for index, row in enumerate(periods)]
    job.stop_if_refused()
    days = [row["days"] for row in periods]
    use = [row["units"] for row in periods]
    bases = [COLDEST_BASE_F + BASE_STEP_F * k
             for k in range(int((WARMEST_BASE_F - COLDEST_BASE_F) / BASE_STEP_F) + 1)]
    by_base = [[_degree_days(mean, base, length, year)
                for mean, length in zip(outdoor, days, strict=True)] for base in bases]
    per_day = [h / d for h, d in zip(by_base[-1], days, strict=True)]
    job.refuse_unless(max(per_day) - min(per_day) > 1, "fuel_periods",
                      "all periods are equally cold: no line can be drawn. A summer month helps.")
    job.stop_if_refused()
    fit = fuel_bills.fit_bills(use, days, by_base, bases)
    x = [h / d for h, d in zip(by_base[bases.index(fit.base_f)], days, strict=True)]
    y = [u / d for u, d in zip(use, days, strict=True)]
    _write_fit(paper, fit, x, y)
    job.refuse_unless(fit.slope_per_degree_day > 0, "fuel_periods",
                      "use falls when it gets colder. Are two periods swapped?")
    job.stop_if_refused()

    fuel = next(r for r in tables.typed("fuels", tables.Fuel)
                if r.fuel == FUEL_ROWS[job.heating_fuel])
    efficiency = job.furnace_efficiency_pct / 100
    furnace = paper.step(
        "UAf = b * H * e / 100 / 24", FUEL_HEAT, "Btu/(h °F)",
        fuel_bills.ua_of_slope_btuh_f(fit.slope_per_degree_day, fuel.heat_content_btu, efficiency),
        b=fit.slope_per_degree_day, H=fuel.heat_content_btu, e=job.furnace_efficiency_pct,
        what=f"Loss at the furnace; {fuel.fuel}, Btu in one {fuel.unit}")
    home = paper.step("UA = UAf * d / 100", DUCT_DELIVERY, "Btu/(h °F)",
                      furnace * job.delivery_before_pct / 100, UAf=furnace,
                      d=job.delivery_before_pct, what="Loss of the rooms: ducts taken off, as "
                                                      "they were in those months")
    off = fit.slope_error / fit.slope_per_degree_day
    shares = math.sqrt(EFFICIENCY_OFF**2 + DELIVERY_OFF**2 + DEGREE_DAYS_OFF**2)
    sigma = paper.step("s = UA * sqrt((sb / b) ** 2 + 0.04 ** 2 + 0.08 ** 2 + 0.03 ** 2)",
                       UNCERTAINTY, "Btu/(h °F)", home * math.hypot(off, shares), UA=home,
                       sb=fit.slope_error, b=fit.slope_per_degree_day,
                       what="Doubt: the line, the efficiency, the ducts, the degree days")
    half = fuel_bills.student_t(NINE_IN_TEN, fit.periods - 3) * off
    model = Spread(math.hypot(half, 1.645 * DEGREE_DAYS_OFF),
                   math.hypot(half, 1.645 * DEGREE_DAYS_OFF), True, DEGREE_DAY_FIT)
    paper.give("bills_ua_btuh_f", home, model)
    paper.give("bills_ua_furnace_btuh_f", furnace, model)
    paper.give("bills_sigma_btuh_f", sigma)
    paper.give("bills_base_f", fit.base_f, Spread(1.645 * fit.base_error_f,
                                                  1.645 * fit.base_error_f, False,
                                                  DEGREE_DAY_FIT))
    paper.give("bills_base_use", fit.base_use_per_day)
    paper.give("bills_r2", fit.r2)
    paper.draw(x=x, y=y, fit=fit, unit=FUEL_UNITS[job.heating_fuel])
    _verdicts(job, paper, fit, x)


def _mean(job: Readings, index: int, row: dict[str, float], means: list[float],
          year: float) -> float:
    own = row.get("degree_days_65")
    if own is None:
        return means[int(row["month"]) - 1]
    if own <= 0:
        return NO_HEATING_F
    if own / row["days"] > 65.0 - COLDEST_MEAN_F:
        job.refuse(f"fuel_periods[{index}].degree_days_65",
                   "more degree days than so few days can hold.")
        return NO_HEATING_F
    return fuel_bills.mean_of_degree_days_f(own, 65.0, row["days"], year)


def _degree_days(mean: float, base: float, days: float, year: float) -> float:
    return climate_year.heating_degree_days(
        base, mean, climate_year.monthly_spread_f(mean, year), days)


def _write_fit(paper: Paper, fit: fuel_bills.BillFit, x: list[float], y: list[float]) -> None:
    n = len(x)
    mx, my = sum(x) / n, sum(y) / n
    sxx = sum((a - mx) ** 2 for a in x)
    sxy = sum((a - mx) * (b - my) for a, b in zip(x, y, strict=True))
    paper.lookup("Base temperature whose line fits best", DEGREE_DAY_FIT, "°F", fit.base_f,
                 row=(("coldest tried", COLDEST_BASE_F), ("warmest tried", WARMEST_BASE_F)),
                 note="Each base is tried; the one with the least squared deviation is kept.")
    slope = paper.step("b = Sxy / Sxx", DEGREE_DAY_FIT, "", fit.slope_per_degree_day, Sxy=sxy,
                       Sxx=sxx, what="Slope: fuel for each degree day, by least squares")
    paper.step("a = y - b * x", DEGREE_DAY_FIT, "", fit.base_use_per_day, y=my, b=slope, x=mx,
               what="Start: fuel used each day whatever the weather")


def _verdicts(job: Readings, paper: Paper, fit: fuel_bills.BillFit, x: list[float]) -> None:
    cold = sum(1 for v in x if v > HEATING_DAY_F)
    paper.limit(
        "straight-line", fit.r2, at_least=fuel_bills.LEAST_R2, of="bills_r2", source=FIT_ENOUGH,
        beyond="look",
        fine="The bills lie on a line.",
        look="The bills do not lie on a line: the weather explains {value} of them, and {limit} "
             "is the least to lean on.",
        do="Look for fills to different marks, estimated readings, other heat, or a time away.")
    paper.limit(
        "enough-winter", cold, at_least=fuel_bills.LEAST_PERIODS, unit="", decimals=0,
        source=FIT_ENOUGH, beyond="look",
        fine="Enough cold periods to tell.",
        look="Only {value} cold periods; {limit} are the least to lean on.",
        do="Ask for another winter's bills.")
    if LOW_BASE_F <= fit.base_f <= HIGH_BASE_F:
        paper.verdict("base-plausible", "fine", "Heating starts where it does in lived-in homes.",
                      source=ENERGY_BALANCE)
    else:
        paper.verdict("base-plausible", "look",
                      "The line starts at {base}: unusual for a lived-in home.",
                      source=ENERGY_BALANCE,
                      do="Ask about setbacks, closed rooms, other heat, and long absences.",
                      base=Quantity(fit.base_f, "°F", 0))
    if job.other_heat == "none":
        paper.verdict("other-heat", "fine", "No other heat in those periods.", source=PRACTICE)
    else:
        paper.verdict("other-heat", "look",
                      "Other heat would make the home look better than it is."
                      if job.other_heat is not None else
                      "Nobody has said whether wood or space heaters helped.", source=PRACTICE,
                      do="Ask what else heated the home in those months.")


def figure(sheet: Sheet) -> str:
    """Use against degree days, with the line."""
    x, y, fit = sheet.drawn["x"], sheet.drawn["y"], sheet.drawn["fit"]
    assert isinstance(x, list)
    assert isinstance(y, list)
    assert isinstance(fit, fuel_bills.BillFit)
    unit = sheet.drawn["unit"]
    top = max(x)
    ends = [(0.0, fit.base_use_per_day),
            (top, fit.base_use_per_day + fit.slope_per_degree_day * top)]
    base = sheet.text(fit.base_f, "°F", 0)
    return drawing.chart(
        "fuel-bills", "Fuel a day against degree days a day",
        f"{len(x)} periods. The line starts at {fit.base_use_per_day:.2f} {unit} a day without "
        f"heating, and rises by {fit.slope_per_degree_day:.3f} {unit} for each degree day below "
        f"{base}.",
        x=("degree days a day", "°F day"), y=(f"{unit} a day", ""),
        lines=[drawing.Line("bills", sorted(zip(x, y, strict=True)), "dots"),
               drawing.Line("", ends)],
        system=sheet.system).figure("Each point is one period. The steeper, the more it loses.")
