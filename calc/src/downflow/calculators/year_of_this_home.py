"""A year of this home, before and after.

The load line says how much heat the home asks for at each outdoor temperature, the data
sheet what the heat pump makes there and what it takes. The year's temperatures come from
twelve monthly means, spread into steps of 5 °F by the published method, or from an
hourly weather file. What the old furnace burned for the same rooms stands beside it,
with the ducts as they were.
"""

from __future__ import annotations

import functools
from collections.abc import Callable, Sequence
from typing import NamedTuple

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.markup import together
from downflow.physics import air, climate_year, cost, energy_year, fuel_bills, moist_air
from downflow.sources import ARITHMETIC, DATA_SHEET, LOAD_LINE, PRACTICE, Source

CALCULATOR = Calculator(
    id="year-of-this-home",
    title="A year of this home",
    phase="prove",
    question="What does a year of heating take in this home, before and after?",
    reads=("home_ua_btuh_f", "delivery_efficiency_pct", "indoor_design_f", "season_gains_btuh",
           "monthly_means", "day_swing_f", "hp_points", "hp_points_with_frost", "hp_cutout_f",
           "hp_altitude_factor_pct", "hp_cycling_loss", "fan_extra_w"),
    may_read=("kit_real_kw", "heating_fuel", "furnace_input_btuh", "furnace_efficiency_pct",
              "old_blower_w", "delivery_before_pct", "electricity_usd_kwh", "propane_usd_gal",
              "gas_usd_therm", "oil_usd_gal", "grid_co2_lb_mwh", "price_year", "weather_bins",
              "weather_place", "elevation_ft", "winter_humidity_pct", "cooling_design_btuh",
              "cooling_seer2", "design_cooling_f"),
    gives=("year_kwh", "season_cop", "season_backup_pct", "season_backup_kwh",
           "year_cost_after_usd", "year_cost_before_usd", "year_fuel_units", "year_heat_mmbtu",
           "season_balance_f", "year_cooling_kwh", "year_co2_before_lb", "year_co2_after_lb",
           "year_short_mmbtu", "year_file_kwh", "year_frost_kwh", "year_months"),
    shows=("year_kwh", "season_cop", "season_backup_pct", "year_cost_after_usd",
           "year_cost_before_usd", "year_fuel_units", "year_heat_mmbtu", "year_cooling_kwh",
           "year_co2_before_lb", "year_co2_after_lb", "year_file_kwh", "year_frost_kwh"),
)

MONTHS_METHOD = Source("Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983",
                       "temperature bins from monthly means", "study")
MONTHS_ERROR = Source("Monthly means against 8,760 hours", "671 stations: 3.2 % rms on the "
                      "electricity of a year", "data")
FROST_MODEL = Source("EnergyPlus Engineering Reference", "defrost of air-to-air DX heating coils",
                     "library")
FUEL_CO2 = Source("40 CFR 98 subpart C", "table C-1", "regulation")
EGRID = Source("eGRID, US EPA", "subregion total output emission rates", "data")
COMFORT_COOLING_F = 72.0
"""Outdoor temperature above which a shaded home with its windows shut asks for cooling."""
ROADS_APART_PCT = 12.0
FROST_APART_PCT = 10.0
BACKUP_SHARE_PCT = 15.0
SHORT_SHARE = 0.0025
"""Heat that may be missing: a hundredth of the hours is colder than the design night, by a few
degrees, which is about this part of a winter's degree days."""
NINE_IN_TEN = 1.645
MONTH_NAMES = ("January", "February", "March", "April", "May", "June", "July", "August",
               "September", "October", "November", "December")


class Fuel(NamedTuple):
    """A fuel as it is sold: its row in the table of fuels, its price fact, what it emits."""

    row: str
    price: str
    unit: str
    kg_mmbtu: float


FUELS = {
    "propane": Fuel("propane", "propane_usd_gal", "gal", cost.kg_per_mmbtu("propane")),
    "gas": Fuel("natural gas", "gas_usd_therm", "therms", cost.kg_per_mmbtu("gas")),
    "oil": Fuel("heating oil no. 2", "oil_usd_gal", "gal", cost.kg_per_mmbtu("oil")),
    "electric": Fuel("electricity", "electricity_usd_kwh", "kWh", 0.0),
}


@functools.lru_cache(maxsize=16)
def _months(means: tuple[float, ...], swing_f: float) -> tuple[tuple[climate_year.Bin, ...], ...]:
    return climate_year.months_of_bins(means, (swing_f,) * 12)


def _months_of_file(rows: list[dict[str, float]]) -> list[list[tuple[float, float]]]:
    months: list[list[tuple[float, float]]] = [[] for _ in range(12)]
    for row in rows:
        months[int(row["month"]) - 1].append((row["outdoor_f"], row["hours"]))
    return months


def _system(job: Readings, frost_at: Callable[[float], energy_year.Frost] | None = None
            ) -> tuple[energy_year.System, bool]:
    """The heat pump with its backup, and whether its lowest speed is known."""
    points = job.hp_points
    known = all(row.get("capacity_min_btuh") is not None and row.get("power_min_w") is not None
                for row in points)
    full = [row["capacity_max_btuh"] for row in points]
    power = [row["power_max_w"] for row in points]
    speeds = energy_year.data_sheet_speeds(
        [row["outdoor_f"] for row in points], full, power,
        [row["capacity_min_btuh"] for row in points] if known else full,
        [row["power_min_w"] for row in points] if known else power,
        capacity_factor=job.hp_altitude_factor_pct / 100,
        rating_frost=not job.hp_points_with_frost and frost_at is None, frost_at=frost_at)
    eer = ((95.0, job.cooling_seer2),) if job.cooling_seer2 is not None else ()
    return energy_year.System(speeds, job.hp_cycling_loss, job.hp_cutout_f, job.kit_real_kw,
                              job.fan_extra_w, eer), known


def _house(job: Readings, balance_f: float) -> energy_year.House:
    slope = 0.0
    if job.cooling_design_btuh is not None and job.design_cooling_f is not None:
        span = job.design_cooling_f - COMFORT_COOLING_F
        slope = job.cooling_design_btuh / span if span > 0 else 0.0
    return energy_year.House(job.home_ua_btuh_f, balance_f, job.delivery_efficiency_pct / 100,
                             slope, COMFORT_COOLING_F)


def solve(job: Readings, paper: Paper) -> None:
    for index, row in enumerate(job.hp_points):
        least = row.get("capacity_min_btuh")
        if least is not None and least > row["capacity_max_btuh"]:
            job.refuse(f"hp_points[{index}].capacity_min_btuh",
                       "heat at lowest speed is more than at top speed. Are the two swapped?")
    if job.weather_bins is not None:
        hours = sum(row["hours"] for row in job.weather_bins)
        job.refuse_unless(8700 <= hours <= 8800, "weather_bins",
                          "the hours must add up to a year. Was the whole file taken?")
    balance = paper.step(
        "tb = ti - g / UA", LOAD_LINE, "°F",
        fuel_bills.balance_point_f(job.indoor_design_f, job.season_gains_btuh,
                                   job.home_ua_btuh_f),
        ti=job.indoor_design_f, g=job.season_gains_btuh, UA=job.home_ua_btuh_f,
        what="Outdoor temperature below which the home asks for heat",
        note="Over a season sun, people and appliances count; on the design night they do not.")
    paper.give("season_balance_f", balance)

    house = _house(job, balance)
    system, lowest_known = _system(job)
    means = tuple(row["mean_f"] for row in job.monthly_means)
    months = energy_year.year(_months(means, job.day_swing_f), house, system)
    year = energy_year.total(months)

    heat = paper.total(
        "Heat that the rooms take", MONTHS_METHOD, "MMBtu", year.house_btu / 1e6,
        tuple((name, m.house_btu / 1e6) for name, m in zip(MONTH_NAMES, months, strict=True)),
        note="Each month's mean is spread into steps of 5 °F with the mean day's swing; each "
             "step takes UA times its degrees below the balance temperature.")
    pump = paper.total(
        "Electricity of the heat pump", DATA_SHEET, "kWh", year.heat_pump_kwh,
        tuple((name, m.heat_pump_kwh) for name, m in zip(MONTH_NAMES, months, strict=True)),
        note="Between the data sheet's speeds the heat per electricity runs straight in the "
             "load; below the lowest speed it cycles.")
    electricity = paper.step(
        "E = Eh + Eb + Ef", ARITHMETIC, "kWh",
        year.heat_pump_kwh + year.backup_kwh + year.fan_kwh,
        Eh=pump, Eb=year.backup_kwh, Ef=year.fan_kwh,
        what="Electricity for heating: heat pump, backup, blower beyond the sheet")
    method = Spread(NINE_IN_TEN * climate_year.MONTHLY_ROAD_SPREAD,
                    NINE_IN_TEN * climate_year.MONTHLY_ROAD_SPREAD, True, MONTHS_ERROR)
    paper.give("year_kwh", electricity, model=method)
    paper.give("year_heat_mmbtu", heat)
    seasonal = energy_year.seasonal_cop(year)
    if seasonal is not None:
        paper.step("k = (Qh + 3412.142 * Eb) / (3412.142 * E)", ARITHMETIC, "", seasonal,
                   Qh=year.heat_pump_btu, Eb=year.backup_kwh, E=electricity,
                   what="Heat handed to the ducts per electricity, the whole season")
        paper.give("season_cop", seasonal)
    share = paper.step("s = 100 * 3412.142 * Eb / max(1, Qh + 3412.142 * Eb)", ARITHMETIC, "%",
                       100 * energy_year.backup_share(year), Eb=year.backup_kwh,
                       Qh=year.heat_pump_btu, what="Share of the heat that backup gives")
    paper.give("season_backup_pct", share)
    paper.give("season_backup_kwh", year.backup_kwh)
    paper.give("year_short_mmbtu", year.short_btu / 1e6)
    if system.cooling_eer and house.cooling_btuh_f > 0:
        paper.give("year_cooling_kwh", paper.step(
            "Ec = Qc / (S * 1000)", DATA_SHEET, "kWh", year.cooling_kwh, Qc=year.cooling_btu,
            S=job.cooling_seer2, what="Electricity for cooling, by the seasonal rating"))
    before = _before(job, paper, house, months)
    _after_cost(job, paper, electricity)
    _months_table(job, paper, months, before)
    file_kwh = _file_road(job, paper, house, system)
    frost_kwh = _frost_road(job, paper, house, means)
    paper.draw(months=months, before=before, fuel=job.heating_fuel)
    _verdicts(job, paper, year, share, electricity, file_kwh, frost_kwh, lowest_known)


def _price(job: Readings) -> float | None:
    if job.heating_fuel is None:
        return None
    value = getattr(job, FUELS[job.heating_fuel].price)
    return None if value is None else float(value)


def _content(fuel: Fuel) -> float:
    return next(float(row.heat_content_btu) for row in tables.rows("fuels")
                if row.fuel == fuel.row)


def _before(job: Readings, paper: Paper, house: energy_year.House,
            months: tuple[energy_year.Month, ...]) -> list[energy_year.Before] | None:
    """The old furnace, month by month, where enough is known of it."""
    if None in (job.heating_fuel, job.furnace_input_btuh, job.furnace_efficiency_pct,
                job.old_blower_w, job.delivery_before_pct):
        return None
    fuel = FUELS[job.heating_fuel]
    content = _content(fuel)
    efficiency = job.furnace_efficiency_pct / 100
    output = job.furnace_input_btuh * efficiency
    rows = [energy_year.furnace_month(m.house_btu, job.delivery_before_pct / 100, output,
                                      efficiency, content, job.old_blower_w) for m in months]
    units = sum(r.fuel_units for r in rows)
    fan = sum(r.fan_kwh for r in rows)
    paper.step("F = q / (d / 100 * e / 100 * H)", ARITHMETIC, fuel.unit, units,
               q=sum(m.house_btu for m in months), d=job.delivery_before_pct,
               e=job.furnace_efficiency_pct, H=content,
               what="Fuel for the same rooms, ducts as they were")
    paper.give("year_fuel_units", units)
    price = _price(job)
    if price is not None and job.electricity_usd_kwh is not None:
        paper.give("year_cost_before_usd", paper.step(
            "c = F * p + Ef * pe", ARITHMETIC, "$/year",
            units * price + fan * job.electricity_usd_kwh, F=units, p=price, Ef=fan,
            pe=job.electricity_usd_kwh, what="Fuel and the old blower's electricity"))
    if job.grid_co2_lb_mwh is not None:
        electric = fan + (units if job.heating_fuel == "electric" else 0.0)
        burned = cost.pounds(cost.fuel_co2_kg(
            0.0 if job.heating_fuel == "electric" else units, content, fuel.kg_mmbtu))
        grid = electric * job.grid_co2_lb_mwh / 1000
        paper.give("year_co2_before_lb", paper.step(
            "m = F * H / 1e6 * k * 2.204623 + Ee * g / 1000", FUEL_CO2, "lb CO2", burned + grid,
            F=0.0 if job.heating_fuel == "electric" else units, H=content, k=fuel.kg_mmbtu,
            Ee=electric, g=job.grid_co2_lb_mwh,
            what="Carbon dioxide of flame and grid, before"))
    return rows


def _after_cost(job: Readings, paper: Paper, electricity: float) -> None:
    if job.electricity_usd_kwh is not None:
        paper.give("year_cost_after_usd", paper.step(
            "c = E * pe", ARITHMETIC, "$/year", electricity * job.electricity_usd_kwh,
            E=electricity, pe=job.electricity_usd_kwh, what="Electricity for heating"))
    if job.grid_co2_lb_mwh is not None:
        paper.give("year_co2_after_lb", paper.step(
            "m = E * g / 1000", EGRID, "lb CO2", electricity * job.grid_co2_lb_mwh / 1000,
            E=electricity, g=job.grid_co2_lb_mwh, what="Carbon dioxide of the grid, after"))


def _months_table(job: Readings, paper: Paper, months: tuple[energy_year.Month, ...],
                  before: list[energy_year.Before] | None) -> None:
    price, electric = _price(job), job.electricity_usd_kwh
    grid = job.grid_co2_lb_mwh
    rows: list[dict[str, float | None]] = []
    for index, month in enumerate(months):
        kwh = month.heat_pump_kwh + month.backup_kwh + month.fan_kwh
        row: dict[str, float | None] = {
            "month": index + 1, "heat_mmbtu": month.house_btu / 1e6,
            "heat_pump_kwh": month.heat_pump_kwh, "backup_kwh": month.backup_kwh,
            "cooling_kwh": month.cooling_kwh,
            "before_usd": None, "after_usd": None if electric is None else kwh * electric,
            "before_co2_lb": None, "after_co2_lb": None if grid is None else kwh * grid / 1000,
        }
        if before is not None:
            was = before[index]
            fuel = FUELS[job.heating_fuel]
            if price is not None and electric is not None:
                row["before_usd"] = was.fuel_units * price + was.fan_kwh * electric
            if grid is not None:
                burned = cost.fuel_co2_kg(was.fuel_units, _content(fuel), fuel.kg_mmbtu)
                drawn = was.fan_kwh + (was.fuel_units if job.heating_fuel == "electric" else 0.0)
                row["before_co2_lb"] = cost.pounds(burned) + drawn * grid / 1000
        rows.append(row)
    paper.give_table("year_months", rows)


def _file_road(job: Readings, paper: Paper, house: energy_year.House,
               system: energy_year.System) -> float | None:
    if job.weather_bins is None:
        return None
    months = energy_year.year(_months_of_file(job.weather_bins), house, system)
    kwh = [m.heat_pump_kwh + m.backup_kwh + m.fan_kwh for m in months]
    value = paper.total(
        "Electricity for heating, from the weather file", LOAD_LINE, "kWh", sum(kwh),
        tuple(zip(MONTH_NAMES, kwh, strict=True)),
        note="The second road: the file's own hours, counted in steps of 5 °F.")
    paper.give("year_file_kwh", value, model=Spread(0.01, 0.01, True, MONTHS_ERROR))
    return value


def _frost_road(job: Readings, paper: Paper, house: energy_year.House,
                means: tuple[float, ...]) -> float | None:
    """The second road to frost: by the humidity that can settle on the coil."""
    if job.hp_points_with_frost or job.elevation_ft is None or job.winter_humidity_pct is None:
        return None
    pressure = air.pressure_psia(job.elevation_ft)

    def frost_at(outdoor_f: float) -> energy_year.Frost:
        if outdoor_f >= energy_year.FROST_BELOW_F:
            return energy_year.NO_FROST
        coil_f = energy_year.coil_surface_f(outdoor_f)
        drop = (moist_air.ratio_from_humidity(outdoor_f, job.winter_humidity_pct, pressure)
                - moist_air.saturated_ratio(coil_f, pressure))
        return energy_year.demand_frost(outdoor_f, drop)

    system, _ = _system(job, frost_at)
    months = energy_year.year(_months(means, job.day_swing_f), house, system)
    kwh = [m.heat_pump_kwh + m.backup_kwh + m.fan_kwh for m in months]
    value = paper.total(
        "Electricity for heating, frost by humidity", FROST_MODEL, "kWh", sum(kwh),
        tuple(zip(MONTH_NAMES, kwh, strict=True)),
        note="The second road to frost: below 41 °F as much as the air's water can settle on the "
             "coil, instead of the rating's tenth between 17 and 45 °F. It takes its share below "
             "17 °F too, where the rating takes none.")
    paper.give("year_frost_kwh", value)
    return value


def hour_by_hour(job: Readings, balance_f: float, months_f: Sequence[Sequence[float]]) -> float:
    """Electricity for heating with every hour of a weather file worked by itself. [kWh]

    Args:
        job: The readings of this calculator.
        balance_f: Outdoor temperature below which the home asks for heat. [°F]
        months_f: For each month the outdoor temperature of each of its hours. [°F]
    """
    system, _ = _system(job)
    year = energy_year.total(energy_year.hour_year(months_f, _house(job, balance_f), system))
    return year.heat_pump_kwh + year.backup_kwh + year.fan_kwh


def _verdicts(job: Readings, paper: Paper, year: energy_year.Month, share: float,
              electricity: float, file_kwh: float | None, frost_kwh: float | None,
              lowest_known: bool) -> None:
    paper.limit(
        "backup-share", share, at_most=BACKUP_SHARE_PCT, of="season_backup_pct", source=PRACTICE,
        beyond="look",
        fine="Backup gives {value} of the year's heat.",
        look="Backup gives {value} of the year's heat, more than {limit}: the heat pump is small "
             "for this home, or stops too early.",
        do="Look at the load first: ducts and leaks cost less than a larger unit.")
    paper.limit(
        "kept-warm", year.short_btu / 1e6, at_most=SHORT_SHARE * year.house_btu / 1e6,
        of="year_short_mmbtu", source=PRACTICE, beyond="look",
        fine="Heat pump and kit together keep up through the typical year; {value} is missing in "
             "its coldest hours.",
        look="In the coldest hours of a typical year {value} of heat is missing, more than the "
             "{limit} that nights colder than the design night explain.",
        do="Compare the kit with the shortfall on the design night.")
    if not lowest_known:
        paper.verdict("lowest-speed", "look",
                      "The data sheet's lowest speed is not known: it is counted as a "
                      "single-speed unit, which takes more.", source=DATA_SHEET,
                      do="Enter heat and power at the lowest speed.")
    origins = [job.origin("electricity_usd_kwh")]
    if job.heating_fuel is not None:
        origins.append(job.origin(FUELS[job.heating_fuel].price))
    if "estimated" in origins:
        paper.verdict("prices", "look",
                      "A price here is an estimate. No saving can be promised on it: look at "
                      "where the two ways of heating tie.", source=PRACTICE,
                      do="Ask for the last delivery ticket and the electric bill.")
    elif all(origins):
        paper.verdict("prices", "fine",
                      "Prices are from bills. They change: this is no promise.", source=PRACTICE)
    if file_kwh is not None:
        apart = 100 * abs(electricity - file_kwh) / max(file_kwh, 1.0)
        paper.limit(
            "roads-agree", apart, at_most=ROADS_APART_PCT, unit="%", decimals=1,
            source=MONTHS_ERROR, beyond="look",
            fine="Monthly means and the weather file agree: {value} apart.",
            look="Monthly means and the weather file are {value} apart. They may be of two "
                 "places.",
            do="Check the station's height and place against the file's.")
    if frost_kwh is not None:
        apart = 100 * abs(frost_kwh - electricity) / max(electricity, 1.0)
        paper.limit(
            "frost-roads", apart, at_most=FROST_APART_PCT, unit="%", decimals=1,
            source=FROST_MODEL, beyond="look",
            fine="Both roads to frost agree: {value} apart.",
            look="The two roads to frost are {value} apart: the rating's tenth gives {rating}, "
                 "frost by humidity {humid}.",
            do="Take the larger one for promises. Data-sheet points that count frost settle it.",
            rating=Quantity(electricity, "kWh", 0), humid=Quantity(frost_kwh, "kWh", 0))
    paper.verdict("typical-year", "fine",
                  "This is a typical year. A cold winter can take a fifth more; a mild one a "
                  "fifth less. The figure is {kwh}.", source=PRACTICE,
                  kwh=Quantity(electricity, "kWh", 0))


def figure(sheet: Sheet) -> str:
    """Three charts by month: electricity with its backup, cost and carbon dioxide."""
    rows = sheet.tables["year_months"]

    def column(name: str) -> list[tuple[float, float]]:
        found = []
        for row in rows:
            value, month = row[name], row["month"]
            if isinstance(value, int | float) and isinstance(month, int | float):
                found.append((float(month), float(value)))
        return found

    pump, backup = column("heat_pump_kwh"), column("backup_kwh")
    all_kwh = [(m, v + b) for (m, v), (_, b) in zip(pump, backup, strict=True)]
    peak = max(all_kwh, key=lambda p: p[1])
    cooling = [p for p in column("cooling_kwh") if p[1] > 0]
    lines = [drawing.Line("backup", backup, "limit", backup=True)] if max(
        b for _, b in backup) > 0.01 * peak[1] else []
    if cooling:
        lines.append(drawing.Line("cooling", cooling, "thin"))
    lines.append(drawing.Line("heating", all_kwh, "air"))
    peak_text = sheet.text(peak[1], "kWh", 0)
    energy = drawing.chart(
        "year-energy", "Electricity by month",
        f"Heating takes most in {MONTH_NAMES[int(peak[0]) - 1]}: {peak_text}. "
        f"The year takes {sheet.text(sheet.values['year_kwh'], 'kWh', 0)}.",
        x=("month", ""), y=("electricity", "kWh"), lines=lines, system=sheet.system,
    ).figure(f"Electricity by month. The largest is {peak_text}.")
    figures = [energy]
    for key, title, before, after, of, total in (
            ("year-cost", "Cost by month", "before_usd", "after_usd", "$", "$"),
            ("year-co2", "Carbon dioxide by month", "before_co2_lb", "after_co2_lb", "lb CO2",
             "lb CO2")):
        was, now = column(before), column(after)
        if not was or not now:
            continue
        sum_was = sheet.text(sum(v for _, v in was), total, 0)
        sum_now = sheet.text(sum(v for _, v in now), total, 0)
        figures.append(drawing.chart(
            key, title, f"Before {sum_was} in the year, after {sum_now}.",
            x=("month", ""), y=(title.split(" by ")[0].lower(), of),
            lines=[drawing.Line("before", was, "old"), drawing.Line("after", now, "air")],
            system=sheet.system).figure(f"{title}: before {sum_was}, after {sum_now}."))
    return together(figures)
