"""Where the pressure goes.

Every part between the rooms and the registers takes its share of what the fan can make. The
shares are brought to the air of the plate and the fan table, so that they may be laid beside
its rating. What the filter will take once it is loaded must be left over from the start.
"""

from __future__ import annotations

from typing import Any

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import air, airflow_reading, ducts
from downflow.sources import (
    ARITHMETIC,
    DATA_SHEET,
    FAN_LAWS,
    FILTER_TESTS,
    GEOMETRY,
    STANDARD_ATMOSPHERE,
    VELOCITY_LIMITS,
)

CALCULATOR = Calculator(
    id="where-the-pressure-goes",
    title="Where the pressure goes",
    phase="air",
    question="What takes the fan's pressure, and is enough left for a dirty filter?",
    reads=("supply_airflow_cfm", "drop_closet_inwc", "drop_filter_inwc", "drop_coil_inwc",
           "drop_kit_inwc", "drop_box_inwc", "drop_supply_inwc", "elevation_ft", "return_air_f",
           "static_rated_inwc", "fan_kind", "fan_table", "fan_table_density_lb_ft3", "filters",
           "filter_planned", "coil_face_in2", "coil_face_limit_fpm"),
    may_read=("fan_static_limit_inwc",),
    gives=("pressure_external_inwc", "pressure_loaded_inwc", "pressure_reserve_inwc",
           "pressure_other_filter_inwc", "coil_face_fpm", "filter_face_fpm", "fan_power_w"),
)

PARTS = (("closet", "closet louvers"), ("filter", "filter, clean"), ("coil", "coil"),
         ("kit", "kit"), ("box", "floor box"), ("supply", "trunks and registers"))
DEEP_FILTER_FPM = 500.0


def solve(job: Readings, paper: Paper) -> None:
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.return_air_f),
        z=job.elevation_ft, t=job.return_air_f, what="Density of the air in the path")
    scale = paper.step("k = rt / rho", FAN_LAWS, "", job.fan_table_density_lb_ft3 / density,
                       rt=job.fan_table_density_lb_ft3, rho=density,
                       what="Brings each loss to the air of the fan table")
    drops = {name: getattr(job, f"drop_{name}_inwc") for name, _ in PARTS}
    external = paper.total(
        "External static, filter clean, in the table's air", FAN_LAWS, "in w.c.",
        sum(drops[name] * scale for name, _ in PARTS),
        [(label, drops[name] * scale) for name, label in PARTS])
    planned = next((f for f in job.filters if f["kind"] == job.filter_planned), job.filters[0])
    exponent = ducts.FILTER_MEDIA_EXPONENT
    loaded_filter = paper.step(
        "pl = l * (Q / a) ** (1 / 0.85)", FILTER_TESTS, "in w.c.",
        ducts.scaled_drop_inwc(planned["loaded_inwc"], planned["at_cfm"], job.supply_airflow_cfm,
                               exponent),
        l=planned["loaded_inwc"], Q=job.supply_airflow_cfm, a=planned["at_cfm"],
        what="The same filter loaded, at this airflow")
    clean = drops["filter"] * scale
    loaded = paper.step("pe = p - c + pl", ARITHMETIC, "in w.c.", external - clean + loaded_filter,
                        p=external, c=clean, pl=loaded_filter,
                        what="External static with the filter loaded")
    limit = _limit(job)
    reserve = paper.step("r = m - p", ARITHMETIC, "in w.c.", limit - external, m=limit, p=external,
                         what="Left of what the fan can stand, filter clean")
    paper.give("pressure_external_inwc", external)
    paper.give("pressure_loaded_inwc", loaded)
    paper.give("pressure_reserve_inwc", reserve)
    other = _other(job, paper, external, clean)
    coil = paper.step("vc = 144 * Q / A", GEOMETRY, "ft/min",
                      ducts.velocity_fpm(job.supply_airflow_cfm, job.coil_face_in2),
                      Q=job.supply_airflow_cfm, A=job.coil_face_in2,
                      what="Air at the face of the coil")
    face = planned["width_in"] * planned["height_in"]
    filter_fpm = paper.step("vf = 144 * Q / (w * h)", GEOMETRY, "ft/min",
                            ducts.velocity_fpm(job.supply_airflow_cfm, face),
                            Q=job.supply_airflow_cfm, w=planned["width_in"],
                            h=planned["height_in"], what="Air at the face of the filter")
    paper.give("coil_face_fpm", coil)
    paper.give("filter_face_fpm", filter_fpm)
    _power(job, paper, external, density)
    paper.draw(parts=[(label, drops[name] * scale) for name, label in PARTS],
               rated=job.static_rated_inwc)
    _verdicts(job, paper, external, loaded, limit, coil, filter_fpm, planned["kind"], other)


def _limit(job: Readings) -> float:
    """Static up to which the fan does its work, in its table's air. [in. w.c.]"""
    if job.fan_kind == "constant":
        if job.fan_static_limit_inwc is not None:
            return float(job.fan_static_limit_inwc)
        return float(job.fan_table[-1]["static_inwc"])
    return float(job.static_rated_inwc)


def _other(job: Readings, paper: Paper, external: float, clean: float) -> float | None:
    rows = [f for f in job.filters if f["kind"] != job.filter_planned]
    if not rows:
        return None
    row = rows[0]
    drop = paper.step(
        "po = c2 * (Q / a) ** (1 / 0.85)", FILTER_TESTS, "in w.c.",
        ducts.scaled_drop_inwc(row["clean_inwc"], row["at_cfm"], job.supply_airflow_cfm,
                               ducts.FILTER_MEDIA_EXPONENT),
        c2=row["clean_inwc"], Q=job.supply_airflow_cfm, a=row["at_cfm"],
        what="The other filter, clean, at this airflow")
    other = paper.step("p2 = p - c + po", ARITHMETIC, "in w.c.", external - clean + drop,
                       p=external, c=clean, po=drop, what="External static with the other filter")
    paper.give("pressure_other_filter_inwc", other)
    return other


def _power(job: Readings, paper: Paper, external: float, density: float) -> None:
    rows = [r for r in job.fan_table if r.get("power_w") is not None]
    if len(rows) < 2:
        return
    statics = [r["static_inwc"] for r in rows]
    printed = airflow_reading.table_airflow(statics, [r["power_w"] for r in rows],
                                            external).airflow_cfm
    power = paper.step("W = w * rho / rt", FAN_LAWS, "W",
                       printed * density / job.fan_table_density_lb_ft3, w=printed, rho=density,
                       rt=job.fan_table_density_lb_ft3,
                       what="Power from the table at that static, in this air")
    paper.give("fan_power_w", power)


def _verdicts(job: Readings, paper: Paper, external: float, loaded: float, limit: float,
              coil: float, filter_fpm: float, kind: str, other: float | None) -> None:
    paper.limit(
        "clean-within-rating", external, at_most=job.static_rated_inwc,
        of="pressure_external_inwc", source=DATA_SHEET,
        fine="With a clean filter the path stays within the plate's external static.",
        look="External static is {value}; the plate allows {limit}.",
        hold="External static is {value}; the plate allows {limit}.",
        do="Open the largest share in the figure first.")
    paper.limit(
        "loaded-within-fan", loaded, at_most=limit, of="pressure_loaded_inwc", source=DATA_SHEET,
        beyond="look",
        fine="Even with the filter loaded the fan does its work.",
        look="With the filter loaded the static is {value}; the fan does its work up to {limit}.",
        do="Change the filter before that, or take the deeper one.")
    paper.limit(
        "coil-face", coil, at_most=job.coil_face_limit_fpm, of="coil_face_fpm", source=DATA_SHEET,
        safety=True,
        fine="Slow enough that the wet coil keeps its water.",
        hold="Air meets the wet coil at {value}, its limit is {limit}: water is carried over and "
             "falls on blower and elements.",
        do="Lower the cooling airflow or take the larger coil before the first cooling day.")
    place = next(r for r in tables.rows("velocity_limits") if r.place == "filter")
    most = place.maximum_fpm if kind == "thin" else DEEP_FILTER_FPM
    paper.limit(
        "filter-face", filter_fpm, at_most=most, of="filter_face_fpm", source=VELOCITY_LIMITS,
        beyond="look",
        fine="The filter is large enough for this airflow.",
        look="Air meets the filter at {value}; {limit} is the most for its kind.",
        do="Take a larger face or the deep cabinet.")
    if other is None:
        paper.verdict("filters-compared", "look", "Only one filter is entered.", source=DATA_SHEET,
                      do="Enter a thin rack and a deep cabinet to see what the deep one saves.")
    else:
        thin, deep = (external, other) if kind == "thin" else (other, external)
        paper.verdict(
            "filters-compared", "fine" if kind == "deep" or deep >= thin else "look",
            "Clean, the thin rack makes it {thin}, the deep cabinet {deep}.", source=DATA_SHEET,
            do="Take the deep cabinet if the closet has the height for it.",
            thin=Quantity(thin, "in w.c.", 2), deep=Quantity(deep, "in w.c.", 2))


def figure(sheet: Sheet) -> str:
    """Each part's share of the external static, against the rating."""
    parts: Any = sheet.drawn["parts"]
    rated = sheet.drawn["rated"]
    assert isinstance(rated, float | int)
    rows = [(label, value) for label, value in parts if value > 0]
    total = sum(value for _, value in rows)
    said = ", ".join(f"{label} {sheet.text(v, 'in w.c.', 3)}" for label, v in rows)
    return drawing.bars(
        "where-the-pressure-goes", "Where the pressure goes", rows, "in w.c.", decimals=3,
        head=f"of {sheet.text(float(rated), 'in w.c.', 2)} that the plate allows",
        desc=f"{said}. Together {sheet.text(total, 'in w.c.', 2)} of "
             f"{sheet.text(float(rated), 'in w.c.', 2)} that the plate allows.",
        system=sheet.system,
    ).figure(f"Together {sheet.text(total, 'in w.c.', 2)}, in the air of the fan table.")
