"""Airflow by both roads.

Heat rise and static should tell the same airflow. Where they do, the two together are better
than either; where they do not, one of the readings is wrong, and the list says which to look at
first.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import share
from downflow.physics import air, airflow_reading
from downflow.sources import LABEL, ROADS, STANDARD_AIR, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="airflow-two-roads",
    title="Airflow by both roads",
    phase="commission",
    question="Do heat rise and static agree, and what is the airflow?",
    reads=("heat_rise_cfm", "static_road_cfm", "rise_return_f", "rise_supply_f", "elevation_ft",
           "kit_sizes"),
    may_read=("kit_chosen_kw", "air_target_cfm"),
    gives=("airflow_read_cfm", "airflow_read_scfm", "airflow_roads_apart_pct"),
)

APART_PCT = 15.0
OFF_TARGET_PCT = 15.0


def solve(job: Readings, paper: Paper) -> None:
    doubt = paper.step(
        "u = sqrt((1 / (ts - tr)) ** 2 + 0.02 ** 2)", ROADS, "",
        airflow_reading.heat_rise_doubt(job.rise_supply_f - job.rise_return_f),
        ts=job.rise_supply_f, tr=job.rise_return_f,
        what="Share by which the heat rise may be off: thermometers and power")
    both = airflow_reading.together(job.heat_rise_cfm, doubt, job.static_road_cfm,
                                    airflow_reading.FAN_TABLE_SHARE)
    weight = paper.step(
        "w = 1 / (u * a) ** 2 / (1 / (u * a) ** 2 + 1 / (0.10 * b) ** 2)", ROADS, "",
        both.weight_of_first, u=doubt, a=job.heat_rise_cfm, b=job.static_road_cfm,
        what="Weight of the heat rise; the fan table is taken as within a tenth")
    value = paper.step("Q = w * a + (1 - w) * b", ROADS, "cfm", both.airflow_cfm, w=weight,
                       a=job.heat_rise_cfm, b=job.static_road_cfm, what="Both together")
    apart = paper.step("d = 100 * (a - b) / Q", ROADS, "%", 100 * both.apart,
                       a=job.heat_rise_cfm, b=job.static_road_cfm, Q=value,
                       what="How far the heat rise reads above the static")
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.rise_return_f),
        z=job.elevation_ft, t=job.rise_return_f, what="Density of the air in the cabinet")
    standard = paper.step("Qs = Q * rho / 0.075", STANDARD_AIR, "scfm",
                          air.standard_cfm(value, density), Q=value, rho=density,
                          what="The same as standard air")
    left = (1 - weight) * airflow_reading.FAN_TABLE_SHARE
    paper.give("airflow_read_cfm", value, model=share(left, ROADS))
    paper.give("airflow_read_scfm", standard, model=share(left, ROADS))
    paper.give("airflow_roads_apart_pct", apart)
    paper.draw(a=job.heat_rise_cfm, b=job.static_road_cfm)
    paper.limit(
        "roads-agree", abs(apart), at_most=APART_PCT, of="airflow_roads_apart_pct", source=ROADS,
        beyond="look",
        fine="Both roads tell the same airflow: {a} and {b}.",
        look="Heat rise says {a}, static says {b}: {value} apart, {limit} is the most.",
        do="First the probes: shielded from the elements, mixed air, ten minutes steady. Then the "
           "clamp: does it hold the blower? Then the static taps and the speed that is set. Trust "
           "neither until they agree.",
        a=Quantity(job.heat_rise_cfm, "cfm", 0), b=Quantity(job.static_road_cfm, "cfm", 0))
    if job.air_target_cfm is not None:
        paper.limit(
            "on-target", 100 * abs(value / job.air_target_cfm - 1), at_most=OFF_TARGET_PCT,
            unit="%", decimals=0, source=ROADS, beyond="look",
            fine="The airflow is the target's, {target}.",
            look="The airflow is {value} off the target of {target}.",
            do="Set the board again, or find what holds the air back.",
            target=Quantity(job.air_target_cfm, "cfm", 0))
    row = next((r for r in job.kit_sizes if r["kit_kw"] == job.kit_chosen_kw), job.kit_sizes[-1])
    least = row.get("least_scfm")
    if least is not None:
        paper.limit(
            "elements-have-air", standard, at_least=least, of="airflow_read_scfm", source=LABEL,
            safety=True,
            fine="Enough air for the elements.",
            hold="Too little air for the elements: {value}, and the label asks for {limit}.",
            do="Turn the elements off and find the restriction.")


def figure(sheet: Sheet) -> str:
    """The two roads beside each other."""
    a, b = sheet.drawn["a"], sheet.drawn["b"]
    rows = [("by heat rise", float(str(a))), ("by static", float(str(b)))]
    return drawing.bars(
        "airflow-two-roads", "One airflow by two roads", rows, "cfm", head="actual air",
        keep_order=True, system=sheet.system,
    ).figure(f"Together {sheet.text(sheet.values['airflow_read_cfm'], 'cfm', 0)}.")
