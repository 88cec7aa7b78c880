"""Airflow by heat rise.

With only the electric elements on, all their power leaves in the air stream. Measure the power
and the temperature rise, and the mass of air follows. Elements are cooled by mass, so the
label's least airflow is compared in standard air.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.drawing import Limit
from downflow.physics import air, airflow_reading
from downflow.sources import (
    LABEL,
    OHMS_LAW,
    SENSIBLE_HEAT,
    STANDARD_AIR,
    STANDARD_ATMOSPHERE,
)

CALCULATOR = Calculator(
    id="airflow-by-heat-rise",
    title="Airflow by heat rise",
    phase="commission",
    question="How much air does the running system move, by power and temperature rise?",
    reads=("kit_volts", "kit_amps", "clamp_holds_blower", "blower_watts", "rise_return_f",
           "rise_supply_f", "elevation_ft", "kit_sizes"),
    may_read=("kit_chosen_kw",),
    gives=("heat_rise_scfm", "heat_rise_cfm"),
)


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.rise_supply_f > job.rise_return_f, "rise_supply_f",
                      "must be warmer than the air into the cabinet: are the elements on? Are the "
                      "two probes swapped?")
    job.stop_if_refused()
    blower = 0.0 if job.clamp_holds_blower else job.blower_watts
    heat = paper.step(
        "q = 3.412142 * (V * I + P)", OHMS_LAW, "Btu/h",
        airflow_reading.element_heat_btuh(job.kit_volts, job.kit_amps, job.blower_watts,
                                          job.clamp_holds_blower),
        V=job.kit_volts, I=job.kit_amps, P=blower,
        what="Heat put into the air, the blower's included",
        note="The clamp holds the blower too: its watts are not added again."
        if job.clamp_holds_blower else "Clamped at the kit's own leads, so the blower is added.")
    rise = job.rise_supply_f - job.rise_return_f
    standard = paper.step(
        "Qs = q / (60 * 0.240 * 0.075 * (ts - tr))", SENSIBLE_HEAT, "scfm",
        air.airflow_cfm(heat, rise, air.STANDARD_DENSITY_LB_FT3),
        q=heat, ts=job.rise_supply_f, tr=job.rise_return_f, what="Airflow as standard air")
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.rise_return_f),
        z=job.elevation_ft, t=job.rise_return_f, what="Density of the air into the cabinet")
    actual = paper.step("Q = Qs * 0.075 / rho", STANDARD_AIR, "cfm",
                        air.actual_cfm(standard, density), Qs=standard, rho=density,
                        what="The same as actual air")
    paper.give("heat_rise_scfm", standard)
    paper.give("heat_rise_cfm", actual)
    chosen = job.kit_chosen_kw
    row = next((r for r in job.kit_sizes if r["kit_kw"] == chosen), job.kit_sizes[-1])
    least = row.get("least_scfm")
    paper.draw(least=least)
    if least is None:
        paper.verdict("enough-for-the-kit", "look", "The label's least airflow is not known.",
                      source=LABEL, do="Read it on the kit's label before the elements stay on.")
        return
    paper.limit(
        "enough-for-the-kit", standard, at_least=least, of="heat_rise_scfm", source=LABEL,
        safety=True,
        fine="Enough air for the elements.",
        hold="Too little air for the elements: {value}, and the label asks for {limit}.",
        do="Turn the elements off and find the restriction before the next step.")


def figure(sheet: Sheet) -> str:
    """The reading on a rule, the label's least as its limit."""
    least = sheet.drawn["least"]
    limits = [Limit(float(str(least)), "least")] if least is not None else []
    return drawing.rule(
        "airflow-by-heat-rise", "Airflow over the elements, standard air",
        sheet.values["heat_rise_scfm"], "scfm", low=sheet.low.get("heat_rise_scfm"),
        high=sheet.high.get("heat_rise_scfm"), limits=limits, decimals=0, system=sheet.system,
    ).figure("Standard air, as the label counts it.")
