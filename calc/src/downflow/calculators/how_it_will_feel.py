"""How it will feel.

"It never stops running" is the first thing a family says. Here are the reasons, with this
home's numbers: an old furnace was larger than the home and ran in bursts; the heat pump
makes just what the home loses, and runs on. The air is less hot, a setback takes longer
to come back from, and the fan is quieter.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import air, backup, comfort, cost, energy_year, fuel_bills, heat_pump
from downflow.sources import (
    ARITHMETIC,
    DATA_SHEET,
    DUCT_DELIVERY,
    LOAD_LINE,
    LUMPED_HOUSE,
    SENSIBLE_HEAT,
    STANDARD_ATMOSPHERE,
    UNITS,
    Source,
)

CALCULATOR = Calculator(
    id="how-it-will-feel",
    title="How it will feel",
    phase="hand-over",
    question="How long does it run, how warm is the air, and what does a setback do?",
    reads=("home_ua_btuh_f", "delivery_efficiency_pct", "indoor_design_f", "season_gains_btuh",
           "monthly_means", "hp_points", "hp_points_with_frost", "hp_cutout_f",
           "hp_altitude_factor_pct", "heating_airflow_cfm", "return_air_f", "elevation_ft",
           "setback_f", "heat_capacity_btu_f_ft2", "floor_area_ft2"),
    may_read=("furnace_input_btuh", "furnace_efficiency_pct", "delivery_before_pct",
              "old_airflow_cfm", "hp_low_airflow_cfm", "kit_real_kw", "season_cop",
              "kit_supply_air_f"),
    gives=("run_after_h_day", "run_before_h_day", "typical_day_f", "register_after_f",
           "register_before_f", "register_backup_f", "setback_back_h", "setback_saved_kwh",
           "setback_backup_kwh", "quieter_db"),
)

SKIN = Source("Supply air of heat pumps", "state energy office guidance: 90 to 100 °F", "study")
FAN_SOUND = Source("Fan laws", "sound power goes with 50 log10 of the speed", "handbook")
SETBACK_ADVICE = Source("Operating a heat pump, US Department of Energy",
                        "no setback that brings on backup heat", "study")
NIGHT_H = 8.0
WARM_AIR_F = 85.0
LONG_RECOVERY_H = 3.0


def _look_up(job: Readings) -> Callable[[float], energy_year.Speeds]:
    """What the unit can do at an outdoor temperature; nothing below its cut-out."""
    points = job.hp_points
    known = all(r.get("capacity_min_btuh") is not None and r.get("power_min_w") is not None
                for r in points)
    full, power = [r["capacity_max_btuh"] for r in points], [r["power_max_w"] for r in points]
    look_up = energy_year.data_sheet_speeds(
        [r["outdoor_f"] for r in points], full, power,
        [r["capacity_min_btuh"] for r in points] if known else full,
        [r["power_min_w"] for r in points] if known else power,
        capacity_factor=job.hp_altitude_factor_pct / 100,
        rating_frost=not job.hp_points_with_frost)

    def at(outdoor_f: float) -> energy_year.Speeds:
        runs = heat_pump.runs(outdoor_f, job.hp_cutout_f)
        return look_up(outdoor_f) if runs else energy_year.LOCKED_OUT

    return at


def solve(job: Readings, paper: Paper) -> None:
    look_up = _look_up(job)
    day = min(row["mean_f"] for row in job.monthly_means)
    at = look_up(day)
    paper.lookup("A typical winter day: the coldest month's mean", DATA_SHEET, "°F", day,
                 row=[(f"month {row['month']:.0f}", row["mean_f"]) for row in job.monthly_means])
    paper.give("typical_day_f", day)
    balance = paper.step("tb = ti - g / UA", LOAD_LINE, "°F",
                         fuel_bills.balance_point_f(job.indoor_design_f, job.season_gains_btuh,
                                                    job.home_ua_btuh_f),
                         ti=job.indoor_design_f, g=job.season_gains_btuh, UA=job.home_ua_btuh_f,
                         what="Outdoor temperature below which the home asks for heat")
    rooms = paper.step("q = UA * max(0, tb - to)", LOAD_LINE, "Btu/h",
                       energy_year.load_btuh(day, job.home_ua_btuh_f, balance),
                       UA=job.home_ua_btuh_f, tb=balance, to=day,
                       what="Heat that the rooms need on that day")
    load = paper.step("Q = q / (e / 100)", DUCT_DELIVERY, "Btu/h",
                      energy_year.load_btuh(day, job.home_ua_btuh_f, balance,
                                            job.delivery_efficiency_pct / 100),
                      q=rooms, e=job.delivery_efficiency_pct, what="Heat the equipment must make")
    density = paper.step("rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / "
                         "(53.350 * (t + 459.67))", STANDARD_ATMOSPHERE, "lb/ft³",
                         air.density_lb_ft3(job.elevation_ft, job.return_air_f),
                         z=job.elevation_ft, t=job.return_air_f, what="Density of the return air")
    run, before = _run_time(job, paper, at, load, rooms)
    register = _registers(job, paper, at, load, density)
    _setback(job, paper, at, day)
    if job.hp_low_airflow_cfm is not None and job.old_airflow_cfm is not None:
        job.refuse_unless(job.hp_low_airflow_cfm <= job.heating_airflow_cfm, "hp_low_airflow_cfm",
                          "is more than the airflow in heating. Are the two swapped?")
        paper.give("quieter_db", paper.step(
            "dL = 50 * log10(vo / vn)", FAN_SOUND, "dB(A)",
            50 * math.log10(job.old_airflow_cfm / job.hp_low_airflow_cfm),
            vo=job.old_airflow_cfm, vn=job.hp_low_airflow_cfm,
            what="How much quieter the same fan is at the lower speed",
            note="For one fan and one duct system. Two fans differ by a few decibels more."))
    _lines(job, paper, balance, look_up)
    paper.draw(day=day, run=run, before=before)
    if before is not None:
        paper.verdict("runs-long", "fine",
                      "At {day} outside the old furnace ran {before}; the heat pump runs {after}. "
                      "Long runs are normal while the rooms hold their setting.", source=LOAD_LINE,
                      day=Quantity(day, "°F", 0), before=Quantity(before, "h/day", 1),
                      after=Quantity(run, "h/day", 1))
    paper.limit(
        "air-warm", register, at_least=WARM_AIR_F, of="register_after_f", source=SKIN,
        beyond="look",
        fine="Air at {value} leaves the outlet: less hot than a furnace's, and warmer than the "
             "room.",
        look="Air at {value} leaves the outlet. On the hand it will feel cool.",
        do="Look at a lower airflow, if the maker allows it, and at where the registers blow.")


def _run_time(job: Readings, paper: Paper, at: energy_year.Speeds, load: float,
              rooms: float) -> tuple[float, float | None]:
    if at.least_btuh > 0:
        run = paper.step("ha = 24 * min(1, Q / c)", ARITHMETIC, "h/day",
                         comfort.run_hours_a_day(load, at.least_btuh), Q=load, c=at.least_btuh,
                         what="Hours a day the heat pump runs",
                         note="All day while the load is above its lowest speed.")
    else:
        run = paper.step("ha = 24 * min(1, Q)", ARITHMETIC, "h/day",
                         24 * min(1.0, load), Q=load, what="Backup runs whenever heat is needed")
    paper.give("run_after_h_day", run)
    if None in (job.furnace_input_btuh, job.furnace_efficiency_pct, job.delivery_before_pct):
        return run, None
    output = paper.step("qf = i * e / 100", ARITHMETIC, "Btu/h",
                        job.furnace_input_btuh * job.furnace_efficiency_pct / 100,
                        i=job.furnace_input_btuh, e=job.furnace_efficiency_pct,
                        what="Heat of the old furnace while it fired")
    before = paper.step("hb = 24 * min(1, q / (d / 100) / qf)", ARITHMETIC, "h/day",
                        comfort.run_hours_a_day(rooms / (job.delivery_before_pct / 100), output),
                        q=rooms, d=job.delivery_before_pct, qf=output,
                        what="Hours a day the old furnace fired, ducts as they were")
    paper.give("run_before_h_day", before)
    return run, before


def _registers(job: Readings, paper: Paper, at: energy_year.Speeds, load: float,
               density: float) -> float:
    heat = min(load, at.full_btuh) if load > at.least_btuh else at.least_btuh
    share = 1.0
    if at.full_btuh > at.least_btuh > 0:
        share = max(0.0, (heat - at.least_btuh) / (at.full_btuh - at.least_btuh))
    low = job.hp_low_airflow_cfm if job.hp_low_airflow_cfm is not None else job.heating_airflow_cfm
    flow = paper.step("v = vl + s * (vh - vl)", DATA_SHEET, "cfm",
                      low + share * (job.heating_airflow_cfm - low), vl=low, s=share,
                      vh=job.heating_airflow_cfm,
                      what="Airflow on that day, between lowest and full speed")
    register = paper.step("ts = tr + q / (60 * 0.240 * rho * v)", SENSIBLE_HEAT, "°F",
                          backup.supply_air_f(job.return_air_f, heat, flow, density),
                          tr=job.return_air_f, q=heat, rho=density, v=flow,
                          what="Air that leaves the heat pump on that day")
    paper.give("register_after_f", register)
    if job.furnace_input_btuh is not None and job.furnace_efficiency_pct is not None \
            and job.old_airflow_cfm is not None:
        output = job.furnace_input_btuh * job.furnace_efficiency_pct / 100
        paper.give("register_before_f", paper.step(
            "tf = tr + qf / (60 * 0.240 * rho * vo)", SENSIBLE_HEAT, "°F",
            backup.supply_air_f(job.return_air_f, output, job.old_airflow_cfm, density),
            tr=job.return_air_f, qf=output, rho=density, vo=job.old_airflow_cfm,
            what="Air that left the old furnace"))
    if job.kit_real_kw is not None and at.full_btuh > 0:
        both = at.full_btuh + job.kit_real_kw * cost.BTU_PER_KWH
        paper.give("register_backup_f", paper.step(
            "tk = tr + (c + 3412.142 * K) / (60 * 0.240 * rho * vh)", SENSIBLE_HEAT, "°F",
            backup.supply_air_f(job.return_air_f, both, job.heating_airflow_cfm, density),
            tr=job.return_air_f, c=at.full_btuh, K=job.kit_real_kw, rho=density,
            vh=job.heating_airflow_cfm, what="Air with everything on"))
    return register


def _setback(job: Readings, paper: Paper, at: energy_year.Speeds, day: float) -> None:
    if job.setback_f <= 0:
        paper.verdict("setback", "fine", "The setting is held day and night.",
                      source=SETBACK_ADVICE)
        return
    stored = paper.step("H = a * h", LUMPED_HOUSE, "Btu/°F",
                        backup.heat_capacity_btu_f(job.floor_area_ft2,
                                                   job.heat_capacity_btu_f_ft2),
                        a=job.floor_area_ft2, h=job.heat_capacity_btu_f_ft2,
                        what="Heat stored in the home for each degree")
    delivery = job.delivery_efficiency_pct / 100
    kit = (job.kit_real_kw or 0.0) * cost.BTU_PER_KWH * delivery
    night = comfort.setback(stored, job.home_ua_btuh_f, day, job.indoor_design_f,
                            job.indoor_design_f - job.setback_f, NIGHT_H,
                            at.full_btuh * delivery, kit, job.season_gains_btuh)
    if night.alone_h is None or night.heat_saved_btu is None:
        paper.verdict("setback", "look",
                      "On a typical winter day the heat pump alone does not bring the rooms back "
                      "from this setback.", source=LUMPED_HOUSE, do="Hold the temperature steady.")
        return
    rest = job.season_gains_btuh + at.full_btuh * delivery
    settled = comfort.settled_f(day, rest, job.home_ua_btuh_f)
    if night.alone_h > 0:
        paper.step("h = H / UA * ln((tx - t1) / (tx - t2))", LUMPED_HOUSE, "h", night.alone_h,
                   H=stored, UA=job.home_ua_btuh_f, tx=settled, t1=night.lowest_f,
                   t2=job.indoor_design_f, what="Hours back, heat pump alone and all out")
    paper.give("setback_back_h", night.alone_h)
    full = heat_pump.cop(at.full_btuh, at.full_w) if at.full_w > 0 else 1.0
    season = job.season_cop if job.season_cop is not None else full
    saved = paper.step("es = qs / (e / 100) / (3412.142 * k)", UNITS, "kWh",
                       night.heat_saved_btu / delivery / (cost.BTU_PER_KWH * season),
                       qs=night.heat_saved_btu, e=job.delivery_efficiency_pct, k=season,
                       what="Electricity for the heat not lost in the night")
    paper.give("setback_saved_kwh", saved)
    used = 0.0
    if night.backup_btu is not None and kit > 0:
        used = paper.step("eb = qb / (e / 100) / 3412.142", UNITS, "kWh",
                          night.backup_btu / delivery / cost.BTU_PER_KWH, qb=night.backup_btu,
                          e=job.delivery_efficiency_pct,
                          what="Electricity of the backup, if it helps all the way back")
        paper.give("setback_backup_kwh", used)
    paper.limit(
        "setback", night.alone_h, at_most=LONG_RECOVERY_H, of="setback_back_h",
        source=SETBACK_ADVICE, beyond="look",
        fine="The heat pump alone brings the rooms back in {value}. The night saves {saved}; if "
             "backup joins, it uses {used}.",
        look="The heat pump alone takes {value} to bring the rooms back. The night saves {saved}; "
             "if backup joins, it uses {used}.",
        do="Set the thermostat to start early without backup, or hold the temperature.",
        saved=Quantity(saved, "kWh", 1), used=Quantity(used, "kWh", 1))


def _lines(job: Readings, paper: Paper, balance: float,
           look_up: Callable[[float], energy_year.Speeds]) -> None:
    """Hours of running against outdoor temperature, for the figure."""
    if paper.quiet:
        return
    after: list[tuple[float, float]] = []
    before: list[tuple[float, float]] = []
    kit: list[tuple[float, float]] = []
    steps = 60
    low = min(-10.0, min(row["outdoor_f"] for row in job.hp_points))
    output = None
    if None not in (job.furnace_input_btuh, job.furnace_efficiency_pct, job.delivery_before_pct):
        output = (job.furnace_input_btuh * job.furnace_efficiency_pct
                  * job.delivery_before_pct / 1e4)
    for n in range(steps + 1):
        outdoor = low + (balance - low) * n / steps
        rooms = energy_year.load_btuh(outdoor, job.home_ua_btuh_f, balance)
        load = rooms / (job.delivery_efficiency_pct / 100)
        at = look_up(outdoor)
        after.append((outdoor, comfort.run_hours_a_day(load, at.least_btuh)
                      if at.least_btuh > 0 else 0.0))
        if output is not None:
            before.append((outdoor, comfort.run_hours_a_day(rooms, output)))
        if job.kit_real_kw is not None and load > at.full_btuh:
            full_kit = job.kit_real_kw * cost.BTU_PER_KWH
            kit.append((outdoor, comfort.run_hours_a_day(load - at.full_btuh, full_kit)))
    paper.draw(after=after, old=before, kit=kit)


def figure(sheet: Sheet) -> str:
    """Hours of running a day against outdoor temperature, old and new."""
    after, old, kit = sheet.drawn["after"], sheet.drawn["old"], sheet.drawn["kit"]
    day, run, before = sheet.drawn["day"], sheet.drawn["run"], sheet.drawn["before"]
    assert isinstance(after, list)
    assert isinstance(old, list)
    assert isinstance(kit, list)
    assert isinstance(day, float)
    assert isinstance(run, float)
    lines = []
    if len(kit) > 1:
        lines.append(drawing.Line("backup", kit, "limit", backup=True))
    if old:
        lines.append(drawing.Line("old furnace", old, "old"))
    lines.append(drawing.Line("heat pump", after, "air"))
    marks = [(run, f"{run:.0f} h")]
    said = f"the heat pump runs {run:.0f} hours a day"
    if isinstance(before, float):
        marks.append((before, f"{before:.0f} h"))
        said += f", the old furnace ran {before:.0f}"
    words = f"At {sheet.text(day, '°F', 0)} outside {said}."
    return drawing.chart(
        "how-it-will-feel", "Run time", words, x=("outside", "°F"), y=("hours a day", ""),
        lines=lines, mark=drawing.Mark(day, marks), system=sheet.system).figure(words)
