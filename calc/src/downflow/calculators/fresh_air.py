"""Fresh air.

What the home needs by the rule for manufactured homes and by the national standard,
what the old duct into the blower cabinet brings when the blower draws on it, and what
it costs to warm that air. A furnace that goes out may take the home's only ventilation
with it; a duct without a damper brings cold air nobody asked for.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.engine.paper import Level, Missing
from downflow.facts.fresh_air import (
    DUCT_PRESSURE,
    HOME_VENTILATION,
    LOST_INTAKE,
    NATIONAL_VENTILATION,
    VENTILATION_CONTROL,
    VENTILATION_PATH,
    VENTILATION_PRESSURE,
)
from downflow.physics import air, fresh_air
from downflow.sources import ARITHMETIC, SENSIBLE_HEAT, STANDARD_ATMOSPHERE, UNITS

CALCULATOR = Calculator(
    id="fresh-air",
    title="Fresh air",
    phase="air",
    question="Does the home get enough fresh air, and what does it cost to warm?",
    reads=("floor_area_ft2", "bedrooms", "fresh_before", "fresh_path", "elevation_ft",
           "indoor_design_f", "design_heating_f", "exhaust_fan_cfm"),
    may_read=("intake_from", "intake_diameter_in", "intake_length_ft", "intake_wall",
              "intake_loss_c", "intake_suction_inwc", "intake_damper", "fresh_fan_cfm",
              "fresh_minutes_h", "fresh_alone", "fresh_label", "degree_days_65", "season_cop",
              "electricity_usd_kwh", "uo_zone"),
    gives=("fresh_average_cfm", "fresh_home_cfm", "fresh_national_cfm", "fresh_running_cfm",
           "fresh_minutes_need", "fresh_heat_btuh", "fresh_season_mmbtu", "fresh_season_kwh",
           "fresh_season_usd"),
)

TOO_MUCH = 1.5
"""More than this many times what is needed is heat thrown away."""
MMBTU = 1e6


def solve(job: Readings, paper: Paper) -> None:
    need = paper.step("f = max(50, 0.035 * a)", HOME_VENTILATION, "cfm",
                      fresh_air.home_cfm(job.floor_area_ft2), a=job.floor_area_ft2,
                      what="Whole-house ventilation of a manufactured home")
    national = paper.step("n = 0.03 * a + 7.5 * (max(b, 1) + 1)", NATIONAL_VENTILATION, "cfm",
                          fresh_air.national_cfm(job.floor_area_ft2, job.bedrooms),
                          a=job.floor_area_ft2, b=job.bedrooms,
                          what="By the national standard, without credit for leaks")
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³",
        air.density_lb_ft3(job.elevation_ft, job.design_heating_f), z=job.elevation_ft,
        t=job.design_heating_f, what="Density of the outdoor air on the design night")
    running = _running(job, paper, density)
    minutes = 0.0 if running == 0 else job.fresh_minutes_h
    average = paper.step("c = max(r * m / 60, x)", ARITHMETIC, "cfm",
                         max(running * minutes / 60, job.exhaust_fan_cfm), r=running, m=minutes,
                         x=job.exhaust_fan_cfm,
                         what="On the average: what comes in by its minutes, or what a fan that "
                              "always blows out draws in")
    paper.give("fresh_average_cfm", average)
    paper.give("fresh_home_cfm", need)
    paper.give("fresh_national_cfm", national)
    paper.give("fresh_running_cfm", running)
    if running > 0:
        paper.give("fresh_minutes_need", paper.step(
            "mn = 60 * f / r", HOME_VENTILATION, "min/h", 60 * need / running, f=need, r=running,
            what="Minutes each hour that would meet the rule; more than 60 cannot"))
    _heat(job, paper, average, density)
    _verdicts(job, paper, average, need, national)


def _running(job: Readings, paper: Paper, density: float) -> float:
    """Airflow of the duct or fan while it runs."""
    if job.fresh_path == "none":
        return 0.0
    asked = ["fresh_minutes_h", *(["fresh_fan_cfm"] if job.fresh_path == "fan" else [
        "intake_diameter_in", "intake_length_ft", "intake_wall", "intake_suction_inwc"])]
    missing = [n for n in asked if getattr(job, n) is None]
    if missing:
        raise Missing(missing)
    if job.fresh_path == "fan":
        return float(job.fresh_fan_cfm)
    rough = next(r.roughness_ft for r in tables.rows("duct_roughness")
                 if r.material == job.intake_wall)
    suction, diameter = job.intake_suction_inwc, job.intake_diameter_in
    flow = fresh_air.duct_cfm(suction, diameter, job.intake_length_ft, job.intake_loss_c, rough,
                              density)
    speed = flow / (0.7853981633974483 * (diameter / 12) ** 2)
    reynolds = density * speed / 60 * diameter / 12 / fresh_air.AIR_VISCOSITY_LB_FT_S
    factor = fresh_air.friction_factor(reynolds, 12 * rough / diameter)
    total = job.intake_loss_c + factor * job.intake_length_ft / (diameter / 12)
    paper.solved(
        "Air that the suction draws through the duct", "s = (C + f l / d) rho (V / 1096.7)²",
        DUCT_PRESSURE, "cfm", flow, left=suction,
        right=total * density * (speed / fresh_air.PRESSURE_FPM) ** 2, side_unit="in w.c.",
        method=f"by turns: V {speed:.0f} ft/min, friction factor f {factor:.4f}", tolerance=1e-6)
    return flow


def _heat(job: Readings, paper: Paper, average: float, density: float) -> None:
    heat = paper.step("q = 60 * 0.240 * rho * c * (ti - to)", SENSIBLE_HEAT, "Btu/h",
                      fresh_air.heating_btuh(average, job.indoor_design_f, job.design_heating_f,
                                             density),
                      rho=density, c=average, ti=job.indoor_design_f, to=job.design_heating_f,
                      what="Heat that warms it on the design night")
    paper.give("fresh_heat_btuh", heat)
    if job.degree_days_65 is None:
        return
    season = paper.step("Y = 24 * 60 * 0.240 * rho * c * D / 1000000", SENSIBLE_HEAT, "MMBtu",
                        fresh_air.season_btu(average, job.degree_days_65, density) / MMBTU,
                        rho=density, c=average, D=job.degree_days_65,
                        what="Heat that warms it in a year")
    paper.give("fresh_season_mmbtu", season)
    if job.season_cop is None:
        return
    kwh = paper.step("k = 1000000 * Y / (3412.142 * e)", UNITS, "kWh",
                     fresh_air.electricity_kwh(MMBTU * season, job.season_cop), Y=season,
                     e=job.season_cop, what="Electricity for that heat")
    paper.give("fresh_season_kwh", kwh)
    if job.electricity_usd_kwh is not None:
        paper.give("fresh_season_usd", paper.step(
            "u = k * p", ARITHMETIC, "$/year", kwh * job.electricity_usd_kwh, k=kwh,
            p=job.electricity_usd_kwh, what="What it costs in a year"))


def _verdicts(job: Readings, paper: Paper, average: float, need: float,
              national: float) -> None:
    paper.limit(
        "rule", average, at_least=need, of="fresh_average_cfm", source=HOME_VENTILATION,
        beyond="look",
        fine="It meets the rule for manufactured homes, {limit}.",
        look="{value} on the average; the rule that such homes are built to asks for {limit}.",
        do="Let it run longer, open the damper, or put in a fan. Ask the local official which rule "
           "holds for a home that stands.")
    paper.limit(
        "national", average, at_least=national, of="fresh_average_cfm",
        source=NATIONAL_VENTILATION, beyond="look",
        fine="It meets the national standard too, {limit}.",
        look="{value} on the average; the national standard asks for {limit} before credit for "
             "leaks.",
        do="Rebate programs often ask for it: see which one you must meet.")
    paper.limit(
        "not-too-much", average, at_most=TOO_MUCH * max(need, national),
        of="fresh_average_cfm", source=ARITHMETIC, beyond="look",
        fine="It is not more than the home needs by half.",
        look="{value} is more than half as much again as the home needs: heat thrown away.",
        do="Set fewer minutes, or throttle the damper.")
    lost = job.fresh_before == "duct" and job.fresh_path == "none" and job.exhaust_fan_cfm < need
    paper.verdict(
        "kept", "hold" if lost else "fine",
        "The old furnace brought the home's fresh air, and nothing takes its place." if lost else
        "The home does not lose its ventilation with the furnace.",
        source=LOST_INTAKE,
        do="Plan a duct with a motor damper, or a fan, before the furnace goes out." if lost
        else "")
    _source_of_air(job, paper)
    _control(job, paper)
    _pressure(job, paper)


def _source_of_air(job: Readings, paper: Paper) -> None:
    if job.fresh_path == "none":
        return
    if job.intake_from is None:
        paper.verdict("from", "look", "Where the air comes from has not been seen.",
                      source=VENTILATION_PATH, do="Follow the duct to its hood.")
        return
    bad = job.intake_from != "outdoors"
    where = {"crawl": "the crawl space", "cavity": "a cavity of roof or wall",
             "outdoors": "outdoors"}[job.intake_from]
    paper.verdict("from", "hold" if bad else "fine", "The air comes from {where}.",
                  source=VENTILATION_PATH, safety=True, where=where,
                  do="Lead it straight to outdoors; crawl and cavity air carries mould, gas and "
                     "dust." if bad else "")


def _control(job: Readings, paper: Paper) -> None:
    if job.fresh_path == "none":
        return
    if job.fresh_path == "duct":
        damper: dict[str | None, tuple[Level, str, str]] = {
            "motor": ("fine", "A motor damper opens only when air is wanted.", ""),
            "hand": ("look", "A hand damper stays as somebody left it, on the coldest night too.",
                     "Put in a motor damper on the ventilation control."),
            "none": ("look", "Without a damper cold air falls in whenever it can.",
                     "Put in a motor damper on the ventilation control."),
            None: ("look", "Whether there is a damper is not known.", "Look in the duct."),
        }
        level, text, do = damper[job.intake_damper]
        paper.verdict("damper", level, text, source=VENTILATION_CONTROL, do=do)
    good = bool(job.fresh_alone) and bool(job.fresh_label)
    paper.verdict("control", "fine" if good else "look",
                  "It runs without heating or cooling, and its switch is labelled." if good else
                  "It must run without heating or cooling, by a labelled switch.",
                  source=VENTILATION_CONTROL,
                  do="" if good else "Wire the fan call to a ventilation control, and label it.")


def _pressure(job: Readings, paper: Paper) -> None:
    pushes = job.fresh_path != "none"
    draws = job.exhaust_fan_cfm > 0
    zone = job.uo_zone
    wrong = zone is not None and pushes != draws and (
        (pushes and zone in ("2", "3")) or (draws and zone == "1"))
    level: Level = "look" if wrong or (zone is None and pushes != draws) else "fine"
    paper.verdict(
        "pressure", level,
        "In this zone air that is only {way} presses on the shell the wrong way: {harm}."
        if wrong else "What comes in is relieved the way this zone asks for." if zone is not None
        else "Which way the home may be pressed depends on its thermal zone, which is not known.",
        source=VENTILATION_PRESSURE, way="blown in" if pushes else "drawn out",
        harm="moist indoor air is pushed into cold walls" if pushes
        else "hot moist air is drawn into cool walls",
        do="Balance it: a bath fan that runs with it, or a relief opening." if level == "look"
        else "")


def figure(sheet: Sheet) -> str:
    """What is asked for, and what comes in."""
    values = sheet.values
    rows = [("rule for these homes", values["fresh_home_cfm"]),
            ("national standard", values["fresh_national_cfm"]),
            ("while it runs", values["fresh_running_cfm"]),
            ("on the average", values["fresh_average_cfm"])]
    words = ", ".join(f"{name} {sheet.text(v, 'cfm', 0)}" for name, v in rows)
    return drawing.bars("fresh-air", "Fresh air asked for and given", rows, "cfm",
                        desc=f"Fresh air: {words}.", system=sheet.system, keep_order=True,
                        ).figure("The average is what counts.")


