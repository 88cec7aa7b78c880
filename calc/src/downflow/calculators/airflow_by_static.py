"""Airflow by static pressure and the fan table.

Two static readings beside the cabinet, before and after it, add up to what the fan works
against. The fan's table gives the airflow. The table holds for its own air, so the reading is
brought to that density first.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import air, air_path, airflow_reading
from downflow.sources import (
    ARITHMETIC,
    DATA_SHEET,
    FAN_LAWS,
    STANDARD_ATMOSPHERE,
)

CALCULATOR = Calculator(
    id="airflow-by-static",
    title="Airflow by static",
    phase="commission",
    question="How much air does the running system move, by static pressure and fan table?",
    reads=("static_supply_inwc", "static_return_inwc", "elevation_ft", "rise_return_f",
           "fan_kind", "fan_table", "fan_table_density_lb_ft3", "static_rated_inwc"),
    gives=("static_road_cfm", "static_read_inwc"),
)


def solve(job: Readings, paper: Paper) -> None:
    for field, reason in air_path.fan_problems(job.fan_kind, job.fan_table):
        job.refuse(field, reason)
    job.stop_if_refused()
    total = paper.step("p = ps + pr", ARITHMETIC, "in w.c.",
                       job.static_supply_inwc + job.static_return_inwc,
                       ps=job.static_supply_inwc, pr=job.static_return_inwc,
                       what="External static: sizes of both readings together")
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.rise_return_f),
        z=job.elevation_ft, t=job.rise_return_f, what="Density of the air in the fan")
    read = paper.step("pt = p * rt / rho", FAN_LAWS, "in w.c.",
                      airflow_reading.to_table_air_inwc(total, density,
                                                        job.fan_table_density_lb_ft3),
                      p=total, rt=job.fan_table_density_lb_ft3, rho=density,
                      what="The same in the air of the fan table")
    statics = [r["static_inwc"] for r in job.fan_table]
    flows = [r["airflow_cfm"] for r in job.fan_table]
    found = airflow_reading.table_airflow(statics, flows, read)
    k = min(max(sum(s <= read for s in statics) - 1, 0), len(statics) - 2)
    paper.lookup("Airflow from the fan table", DATA_SHEET, "cfm", found.airflow_cfm,
                 row=[(f"at {statics[k]:g} in w.c.", flows[k]),
                      (f"at {statics[k + 1]:g} in w.c.", flows[k + 1])])
    paper.give("static_read_inwc", read)
    paper.give("static_road_cfm", found.airflow_cfm)
    paper.draw(points=list(zip(statics, flows, strict=True)), read=read, flow=found.airflow_cfm)
    paper.limit(
        "static-within-rating", read, at_most=job.static_rated_inwc, of="static_read_inwc",
        source=DATA_SHEET,
        fine="The fan works within its rated static.",
        look="The fan works against {value}; rated are {limit}.",
        hold="The fan works against {value}; rated are {limit}.",
        do="Find the restriction: filter, louvers, dampers, a crushed crossover.")
    if read > statics[-1]:
        paper.verdict("within-the-table", "hold",
                      "The static is beyond the last row of the table: the airflow is not known.",
                      source=DATA_SHEET, do="Lower the static first; then read again.")
    elif found.outside:
        paper.verdict("within-the-table", "look",
                      "The static, {read}, is below the first row of the table. Its airflow was "
                      "taken.", source=DATA_SHEET,
                      do="Is the filter in? Is a panel open? Then ask the maker for a longer "
                         "table.", read=Quantity(read, "in w.c.", 2))
    else:
        paper.verdict("within-the-table", "fine", "The static lies within the table.",
                      source=DATA_SHEET)
    if job.fan_kind == "constant":
        paper.verdict("weak-road", "fine",
                      "A constant-airflow fan hides a restriction: its table says the set airflow "
                      "at almost any static. Trust the heat rise more, and watch the watts.",
                      source=DATA_SHEET)
    else:
        paper.verdict("weak-road", "fine", "At a fixed speed the table answers to static.",
                      source=DATA_SHEET)


def figure(sheet: Sheet) -> str:
    """The fan table, and where the reading lies on it."""
    points, read, flow = sheet.drawn["points"], sheet.drawn["read"], sheet.drawn["flow"]
    assert isinstance(points, list)
    assert isinstance(read, float)
    assert isinstance(flow, float)
    return drawing.chart(
        "airflow-by-static", "The fan table with the reading",
        f"At {sheet.text(read, 'in w.c.', 2)} the table gives {sheet.text(flow, 'cfm', 0)}.",
        x=("static", "in w.c."), y=("airflow", "cfm"),
        lines=[drawing.Line("the fan", points, "air")],
        mark=drawing.Mark(read, [(flow, sheet.text(flow, "cfm", 0))]), system=sheet.system,
    ).figure("Static in the air of the table.")
