"""How much air the system must move.

Capacity asks for a mass of air: so many cubic feet a minute of *standard* air for each
12,000 Btu/h. High up the same mass is more *actual* air, and it is actual air that goes
through the ducts. Elements are cooled by mass too, so the label's least airflow counts
as standard air unless the label says otherwise.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import air
from downflow.sources import (
    AIRFLOW_FOR_CAPACITY,
    ARITHMETIC,
    BALANCING,
    HUD_COOLING_AIR,
    LABEL,
    STANDARD_AIR,
    STANDARD_ATMOSPHERE,
)

CALCULATOR = Calculator(
    id="airflow-target",
    title="Airflow target",
    phase="air",
    question="How much air must the system move, and what is that up here?",
    reads=("rating_cooling_95f_btuh", "hp_points", "airflow_per_12000_scfm",
           "hp_altitude_factor_pct", "elevation_ft", "return_air_f", "kit_sizes", "kit_air_is"),
    may_read=("kit_chosen_kw", "heating_airflow_cfm"),
    gives=("air_target_cfm", "air_target_scfm", "air_cooling_scfm", "air_heating_scfm",
           "air_kit_scfm"),
)

RATED_F = 47.0
TON_BTUH = 12_000.0
HUD_CFM_PER_BTUH = 0.03
PLANNED_SHARE = 0.15


def solve(job: Readings, paper: Paper) -> None:
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.return_air_f),
        z=job.elevation_ft, t=job.return_air_f, what="Density of the air in the cabinet")
    per_ton = job.airflow_per_12000_scfm
    cooling = paper.step(
        "vc = a * Qc * f / 100 / 12000", AIRFLOW_FOR_CAPACITY, "scfm",
        per_ton * job.rating_cooling_95f_btuh * job.hp_altitude_factor_pct / 100 / TON_BTUH,
        a=per_ton, Qc=job.rating_cooling_95f_btuh, f=job.hp_altitude_factor_pct,
        what="For cooling, standard air")
    rated = _rated_heat(job.hp_points)
    heating = paper.step(
        "vh = a * Qh * f / 100 / 12000", AIRFLOW_FOR_CAPACITY, "scfm",
        per_ton * rated * job.hp_altitude_factor_pct / 100 / TON_BTUH,
        a=per_ton, Qh=rated, f=job.hp_altitude_factor_pct,
        what="For heating at 47 °F outdoors, standard air")
    kit = _kit(job, paper, density)
    target = paper.step(
        "v = max(vc, vh, vk)", ARITHMETIC, "scfm", max(cooling, heating, kit or 0.0),
        vc=cooling, vh=heating, vk=kit or 0.0, what="The largest of the three is the target")
    actual = paper.step(
        "V = v * 0.075 / rho", STANDARD_AIR, "cfm", air.actual_cfm(target, density),
        v=target, rho=density, what="The same mass as actual air: what the ducts must carry")
    paper.give("air_target_scfm", target)
    paper.give("air_target_cfm", actual)
    paper.give("air_cooling_scfm", cooling)
    paper.give("air_heating_scfm", heating)
    if kit is not None:
        paper.give("air_kit_scfm", kit)
    paper.draw(cooling=cooling, heating=heating, kit=kit)
    if kit is not None:
        paper.limit(
            "kit-has-air", max(cooling, heating), at_least=kit, of="air_target_scfm",
            source=LABEL, beyond="look",
            fine="What the heat pump asks for is enough for the elements too.",
            look="The kit needs {limit}; for the heat pump alone {value} would do.",
            do="Set the kit's airflow on the board, not the heat pump's, and check it at start-up.")
    else:
        paper.verdict("kit-has-air", "look",
                      "The least airflow of the kit is not known.", source=LABEL,
                      do="Read it on the kit's label and enter it in the list of kits.")
    _planned(job, paper, actual)
    hud = HUD_CFM_PER_BTUH * job.rating_cooling_95f_btuh
    paper.limit(
        "federal-cooling-air", actual, at_least=hud, of="air_target_cfm", source=HUD_COOLING_AIR,
        beyond="look",
        fine="At least what the home's own ducts had to carry for cooling when new.",
        look="{value}, where the federal rule for new homes asks cooling ducts of this size for "
             "{limit}.",
        do="Low airflow dries more and suits humid places. In a dry one raise the airflow for each "
           "12,000 Btu/h.")


def _rated_heat(rows: list[dict[str, float]]) -> float:
    """Heat at top speed at the point nearest 47 °F. [Btu/h]"""
    nearest = min(rows, key=lambda r: abs(r["outdoor_f"] - RATED_F))
    return nearest["capacity_max_btuh"]


def _kit(job: Readings, paper: Paper, density: float) -> float | None:
    chosen = job.kit_chosen_kw
    row = next((r for r in job.kit_sizes if r["kit_kw"] == chosen), None)
    if chosen is None:
        row = job.kit_sizes[-1]
    least = None if row is None else row.get("least_scfm")
    if least is None:
        return None
    if job.kit_air_is == "standard":
        return float(least)
    return paper.step("vk = V * rho / 0.075", STANDARD_AIR, "scfm",
                      air.standard_cfm(least, density), V=least, rho=density,
                      what="The label counts actual air: the same as standard air")


def _planned(job: Readings, paper: Paper, actual: float) -> None:
    planned = job.heating_airflow_cfm
    if planned is None:
        return
    paper.limit(
        "planned-air", abs(planned / actual - 1.0) * 100, at_most=100 * PLANNED_SHARE, unit="%",
        decimals=0, source=BALANCING, beyond="look",
        fine="The airflow planned for heating, {planned}, is the target's.",
        look="The airflow planned for heating, {planned}, and the target differ by {value}.",
        do="Set one airflow and use it in every calculation.",
        planned=Quantity(planned, "cfm", 0))


def figure(sheet: Sheet) -> str:
    """What each use asks for, in standard air."""
    rows = [("cooling", sheet.drawn["cooling"]), ("heating", sheet.drawn["heating"])]
    if sheet.drawn["kit"] is not None:
        rows.append(("kit, at least", sheet.drawn["kit"]))
    numbers = [(name, float(str(value))) for name, value in rows]
    words = ", ".join(f"{name} {sheet.text(v, 'scfm', 0)}" for name, v in numbers)
    actual = sheet.text(sheet.values["air_target_cfm"], "cfm", 0)
    return drawing.bars(
        "airflow-target", "What asks for air", numbers, "scfm", head="standard air",
        desc=f"{words}. The largest, as actual air up here: {actual}.", system=sheet.system,
    ).figure(f"The largest is the target. Up here it is {actual} of actual air.")
