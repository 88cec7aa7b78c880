"""What the ducts lose, and what sealing is worth.

A duct test gives the flow that holds 25 pascals. At the pressure the ducts really run at, less
is lost; some of it comes back through the floor. Before and after sealing the same reckoning
shows what sealing is worth in heat, capacity and money.
"""

from __future__ import annotations

import math

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.physics import air, duct_leakage, ducts
from downflow.sources import (
    ARITHMETIC,
    DUCT_LEAKS,
    DUCT_STANDARD,
    FLOOR_LEAKAGE,
    GEOMETRY,
    STANDARD_ATMOSPHERE,
)

CALCULATOR = Calculator(
    id="duct-leakage",
    title="Duct leakage",
    phase="air",
    question="What do the ducts lose, and what is sealing them worth?",
    reads=("leakage_before_cfm25", "leakage_cfm25", "leakage_outside_pct", "floor_area_ft2",
           "supply_static_inwc", "supply_airflow_cfm", "trunks", "trunk_r", "crossover_plan",
           "elevation_ft", "return_air_f", "indoor_design_f", "design_heating_f",
           "design_load_btuh"),
    may_read=("static_found_inwc", "year_heat_mmbtu", "season_cop", "electricity_usd_kwh"),
    gives=("delivery_sealed_pct", "delivery_found_pct", "leakage_floor_pct", "leakage_lost_cfm",
           "sealing_btuh", "sealing_kwh", "sealing_dollars"),
)

TARGET_FLOOR_PCT = 6.0


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.leakage_cfm25 <= job.leakage_before_cfm25, "leakage_cfm25",
                      "is more than before sealing. Are the two swapped?")
    job.refuse_unless(job.design_heating_f < job.indoor_design_f, "design_heating_f",
                      "must be colder than the indoor temperature to hold.")
    job.stop_if_refused()
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.return_air_f),
        z=job.elevation_ft, t=job.return_air_f, what="Density of the air in the ducts")
    per_floor = paper.step(
        "n = 100 * q / a", FLOOR_LEAKAGE, "%",
        100 * duct_leakage.leakage_per_floor(job.leakage_cfm25, job.floor_area_ft2),
        q=job.leakage_cfm25, a=job.floor_area_ft2, what="Leakage for each 100 ft² of floor")
    # Leaks at the box see its whole static, those along the trunks less.
    static = paper.step("p = ps / 2 * 249.08891", DUCT_LEAKS, "Pa",
                        duct_leakage.mean_static_inwc(job.supply_static_inwc, 0.0)
                        * ducts.PA_PER_INWC, ps=job.supply_static_inwc,
                        what="Pressure that leaks see on average, box to trunk ends")
    old = static
    if job.static_found_inwc is not None:
        old = paper.step("p = po / 2 * 249.08891", DUCT_LEAKS, "Pa",
                         duct_leakage.mean_static_inwc(job.static_found_inwc, 0.0)
                         * ducts.PA_PER_INWC, po=job.static_found_inwc,
                         what="The same before the work")
    before = _lost(job, paper, job.leakage_before_cfm25, old, "as found")
    after = _lost(job, paper, job.leakage_cfm25, static, "after sealing")
    for field, lost in (("leakage_before_cfm25", before), ("leakage_cfm25", after)):
        job.refuse_unless(lost < job.supply_airflow_cfm, field,
                          "would lose more than the fan moves at this static. Is the flow that of "
                          "a test at another pressure?")
    surface = paper.total(
        "Surface of trunks and crossovers", GEOMETRY, "ft²",
        math.fsum(v for _, v in _surfaces(job)), _surfaces(job))
    crawl = paper.step("tc = (8 * to + 68) / 9", DUCT_STANDARD, "°F",
                       duct_leakage.crawl_space_f(job.design_heating_f), to=job.design_heating_f,
                       what="Air under the floor on the design night")
    insulation = paper.step("Re = 2.2438 + 0.5619 * R", DUCT_STANDARD, "h ft² °F/Btu",
                            duct_leakage.effective_r(job.trunk_r), R=job.trunk_r,
                            what="R-value at which the ducts act") \
        if job.trunk_r > 0 else duct_leakage.BARE_R
    found = _delivery(job, paper, before, surface, insulation, crawl, density, "as found")
    sealed = _delivery(job, paper, after, surface, insulation, crawl, density, "after sealing")
    paper.give("leakage_floor_pct", per_floor)
    paper.give("leakage_lost_cfm", after)
    paper.give("delivery_found_pct", found[0], model=Spread(found[1], found[1], False,
                                                            DUCT_STANDARD))
    paper.give("delivery_sealed_pct", sealed[0], model=Spread(sealed[1], sealed[1], False,
                                                              DUCT_STANDARD))
    _worth(job, paper, found[0] / 100, sealed[0] / 100)
    paper.draw(found=found[0], sealed=sealed[0])
    paper.limit(
        "tight-for-the-floor", per_floor, at_most=TARGET_FLOOR_PCT, of="leakage_floor_pct",
        source=FLOOR_LEAKAGE, beyond="look",
        fine="As tight as mastic-sealed ducts of new homes.",
        look="{value} of the floor; mastic-sealed ducts of new homes reach {limit}.",
        do="Mastic on every joint of box, crossover collars and trunk ends; tape alone lets go.")
    gain = sealed[0] - found[0]
    paper.verdict("worth-sealing", "fine",
                  "Sealing brings delivery from {found} to {sealed}.", source=DUCT_STANDARD,
                  found=Quantity(found[0], "%", 0), sealed=Quantity(sealed[0], "%", 0),
                  gain=Quantity(gain, "%", 0))


def _lost(job: Readings, paper: Paper, cfm25: float, static_pa: float, when: str) -> float:
    share = job.leakage_outside_pct / 100
    lost = ducts.leakage_cfm(cfm25, static_pa) * share
    return paper.step("L = q * (p / 25) ** 0.65 * s / 100", DUCT_LEAKS, "cfm", lost, q=cfm25,
                      p=static_pa, s=job.leakage_outside_pct,
                      what=f"Lost outside at running pressure, {when}")


def _surfaces(job: Readings) -> list[tuple[str, float]]:
    rows = [(f"trunk {t['id']}", 2 * (t["width_in"] + t["height_in"]) / 12 * t["length_ft"])
            for t in job.trunks]
    for row in job.crossover_plan:
        around = math.pi * row["diameter_in"] if row["kind"] == "flex" else \
            2 * (row["width_in"] + row["height_in"])
        rows.append((f"crossover {row['id']}", around / 12 * row["length_ft"]))
    return rows


def _delivery(job: Readings, paper: Paper, lost: float, surface: float, insulation: float,
              crawl: float, density: float, when: str) -> tuple[float, float]:
    """Heat delivered, half way between the ends of regain, and half of their distance. [%]"""
    out = duct_leakage.delivery(job.supply_airflow_cfm, lost, job.design_load_btuh, surface,
                                insulation, crawl, job.indoor_design_f, density)
    keep = paper.step("B = exp(-A / (60 * Q * rho * 0.240 * R))", DUCT_STANDARD, "",
                      ducts.conduction_share(surface, insulation, job.supply_airflow_cfm, density),
                      A=surface, Q=job.supply_airflow_cfm, rho=density, R=insulation,
                      what=f"Warmth that the air keeps along the ducts, {when}")
    plain = paper.step(
        "D = 100 * (1 - L / Q) * (B - (1 - B) * (ti - tc) * 60 * Q * rho * 0.240 / q)",
        DUCT_STANDARD, "%", 100 * out.plain, L=lost, Q=job.supply_airflow_cfm, B=keep,
        ti=job.indoor_design_f, tc=crawl, rho=density, q=job.design_load_btuh,
        what=f"Heat delivered, {when}, nothing coming back")
    middle = paper.step("De = D + (0.30 + 0.60) / 2 * (100 - D)", DUCT_STANDARD, "%",
                        50 * (out.low + out.high), D=plain,
                        what="With half way between the ends of what comes back through the floor")
    return middle, 50 * (out.high - out.low)


def _worth(job: Readings, paper: Paper, found: float, sealed: float) -> None:
    yearly = (job.year_heat_mmbtu or 0.0) * 1e6
    cop = job.season_cop or 1.0
    worth = duct_leakage.sealing_worth(job.design_load_btuh, yearly, found, sealed, cop)
    heat = paper.step("w = q * (1 / f - 1 / s)", ARITHMETIC, "Btu/h", worth.heat_at_design_btuh,
                      q=job.design_load_btuh, f=found, s=sealed,
                      what="Heat at design that need not be made")
    paper.give("sealing_btuh", heat)
    if job.year_heat_mmbtu is None or job.season_cop is None:
        return
    kwh = paper.step("k = y * 1000000 * (1 / f - 1 / s) / 3412.142 / c", ARITHMETIC, "kWh",
                     worth.yearly_kwh, y=job.year_heat_mmbtu, f=found, s=sealed,
                     c=job.season_cop, what="Electricity in a year that sealing saves")
    paper.give("sealing_kwh", kwh)
    if job.electricity_usd_kwh is not None:
        paper.give("sealing_dollars", paper.step(
            "m = k * p", ARITHMETIC, "$/year", kwh * job.electricity_usd_kwh, k=kwh,
            p=job.electricity_usd_kwh, what="What that is worth"))


def figure(sheet: Sheet) -> str:
    """Delivery before and after."""
    found, sealed = sheet.drawn["found"], sheet.drawn["sealed"]
    rows = [("as found", float(str(found))), ("after sealing", float(str(sealed)))]
    return drawing.bars("duct-leakage", "Heat that reaches the rooms", rows, "%",
                        head="of what the equipment makes", keep_order=True,
                        system=sheet.system).figure("On the design night.")
