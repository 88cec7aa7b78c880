"""The backup heat kit.

What the heat pump leaves short on the design night, the smallest kit on the plate that
covers it, and what that kit does: how far it holds the house alone when the heat pump
is down, how warm the supply air gets, whether the elements get enough air, and how long
the home takes to come back from a setback.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import air, backup, heat_loss
from downflow.sources import (
    ARITHMETIC,
    DUCT_DELIVERY,
    EMERGENCY,
    ENERGY_BALANCE,
    LABEL,
    LUMPED_HOUSE,
    OHMS_LAW,
    SENSIBLE_HEAT,
    STANDARD_AIR,
    STANDARD_ATMOSPHERE,
    UNITS,
)

CALCULATOR = Calculator(
    id="backup-kit",
    title="Backup heat kit",
    phase="prove",
    question="Which kit covers what the heat pump leaves short, and what does it do?",
    reads=("hp_load_btuh", "hp_capacity_design_btuh", "home_ua_btuh_f", "delivery_efficiency_pct",
           "indoor_design_f", "design_heating_f", "kit_sizes", "kit_rated_v", "supply_v",
           "heating_airflow_cfm", "return_air_f", "elevation_ft", "setback_f",
           "heat_capacity_btu_f_ft2", "floor_area_ft2"),
    may_read=("kit_planned_kw",),
    gives=("kit_chosen_kw", "kit_shortfall_kw", "kit_shortfall_btuh", "kit_real_kw",
           "kit_alone_holds_to_f", "kit_supply_air_f", "kit_least_airflow_scfm",
           "kit_stages_at_design", "kit_recovery_h"),
)


def solve(job: Readings, paper: Paper) -> None:
    sizes = [row["kit_kw"] for row in job.kit_sizes]
    planned = job.kit_planned_kw
    if planned is not None:
        job.refuse_unless(planned in sizes, "kit_planned_kw",
                          "is not among the kits on the plate. Only a kit marked there may go in.")
    short = paper.step(
        "s = max(0, Q - C)", ARITHMETIC, "Btu/h",
        backup.shortfall_btuh(job.hp_load_btuh, job.hp_capacity_design_btuh),
        Q=job.hp_load_btuh, C=job.hp_capacity_design_btuh,
        what="What the heat pump leaves short on the design night")
    need = paper.step("n = s / 3412.142", UNITS, "kW", backup.kw_of_btuh(short), s=short,
                      what="The same as electric power")
    scale = paper.step("u = (V / Vr) ** 2", OHMS_LAW, "",
                       backup.kw_at_voltage(1.0, job.kit_rated_v, job.supply_v),
                       V=job.supply_v, Vr=job.kit_rated_v,
                       what="What this home's voltage leaves of a kit's printed power")
    chosen = paper.decide("kit", _choose(planned, sizes, need, scale))
    row = next(r for r in job.kit_sizes if r["kit_kw"] == chosen)
    real = paper.step("K = k * u", OHMS_LAW, "kW",
                      backup.kw_at_voltage(chosen, job.kit_rated_v, job.supply_v),
                      k=chosen, u=scale, what="Power of the kit at this voltage")
    heat = backup.kit_heat_btuh(real)

    ua = paper.step("UAe = UA / (e / 100)", DUCT_DELIVERY, "Btu/(h °F)",
                    heat_loss.equipment_load_btuh(job.home_ua_btuh_f,
                                                  job.delivery_efficiency_pct / 100),
                    UA=job.home_ua_btuh_f, e=job.delivery_efficiency_pct,
                    what="Heat asked of the equipment for each degree")
    alone = paper.step("ta = ti - 3412.142 * K / UAe", ENERGY_BALANCE, "°F",
                       backup.holds_down_to_f(heat, ua, job.indoor_design_f),
                       ti=job.indoor_design_f, K=real, UAe=ua,
                       what="Outdoor temperature down to which the kit alone holds the house")

    density = paper.step("rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / "
                         "(53.350 * (t + 459.67))",
                         STANDARD_ATMOSPHERE, "lb/ft³",
                         air.density_lb_ft3(job.elevation_ft, job.return_air_f),
                         z=job.elevation_ft, t=job.return_air_f,
                         what="Density of the return air")
    supply = paper.step(
        "ts = tr + (C + 3412.142 * K) / (60 * 0.240 * rho * v)", SENSIBLE_HEAT, "°F",
        backup.supply_air_f(job.return_air_f, job.hp_capacity_design_btuh + heat,
                            job.heating_airflow_cfm, density),
        tr=job.return_air_f, C=job.hp_capacity_design_btuh, K=real, rho=density,
        v=job.heating_airflow_cfm, what="Supply air on the design night, all stages on")
    standard = paper.step("vs = v * rho / 0.075", STANDARD_AIR, "scfm",
                          air.standard_cfm(job.heating_airflow_cfm, density),
                          v=job.heating_airflow_cfm, rho=density,
                          what="Airflow over the elements as standard air")
    stages = int(row["stages"])
    on = backup.stages_needed(short, [real / stages] * stages)
    paper.give("kit_chosen_kw", chosen)
    paper.give("kit_shortfall_btuh", short)
    paper.give("kit_shortfall_kw", need)
    paper.give("kit_real_kw", real)
    paper.give("kit_alone_holds_to_f", alone)
    paper.give("kit_supply_air_f", supply)
    paper.give("kit_least_airflow_scfm", standard)
    if on is not None:
        paper.give("kit_stages_at_design", on)
    hours = _recovery(job, paper, ua, job.hp_capacity_design_btuh + heat)
    if hours is not None:
        paper.give("kit_recovery_h", hours)
    paper.draw(short=need, sizes=sizes, scale=scale, chosen=chosen)
    _verdicts(job, paper, need=need, real=real, alone=alone, standard=standard,
              least=row.get("least_scfm"), hours=hours)


def _choose(planned: float | None, sizes: list[float], need_kw: float, scale: float) -> float:
    if planned is not None:
        return planned
    found = backup.smallest_kit_kw([kw * scale for kw in sizes], need_kw)
    if found is None:
        return sizes[-1]
    return next(kw for kw in sizes if kw * scale == found)


def _recovery(job: Readings, paper: Paper, ua: float, heat_btuh: float) -> float | None:
    stored = paper.step("H = a * h", LUMPED_HOUSE, "Btu/°F",
                        backup.heat_capacity_btu_f(job.floor_area_ft2, job.heat_capacity_btu_f_ft2),
                        a=job.floor_area_ft2, h=job.heat_capacity_btu_f_ft2,
                        what="Heat stored in the home for each degree")
    start = job.indoor_design_f - job.setback_f
    hours = backup.recovery_hours(stored, ua, job.design_heating_f, heat_btuh, start,
                                  job.indoor_design_f)
    if hours is None or job.setback_f == 0:
        return hours
    rest = job.design_heating_f + heat_btuh / ua
    return paper.step(
        "h = H / UAe * ln((tx - t1) / (tx - t2))", LUMPED_HOUSE, "h", hours, H=stored, UAe=ua,
        tx=rest, t1=start, t2=job.indoor_design_f,
        what="Hours back from the setback on the design night, everything on")


def _verdicts(job: Readings, paper: Paper, *, need: float, real: float, alone: float,
              standard: float, least: float | None, hours: float | None) -> None:
    paper.limit(
        "kit-covers", real, at_least=need, of="kit_real_kw", source=ENERGY_BALANCE,
        fine="Heat pump and kit together hold the house on the design night.",
        look="At this voltage the kit makes {value}; {limit} is short.",
        hold="The kit makes {value} here, and {limit} is short on the design night: the house "
             "falls behind.",
        do="Take the next larger kit on the plate, or lower the load, before you order.")
    paper.limit(
        "kit-alone", alone, at_most=job.design_heating_f, of="kit_alone_holds_to_f",
        source=EMERGENCY, beyond="look",
        fine="With the heat pump down the kit alone still holds the design night.",
        look="With the heat pump down the kit alone holds the house only to {value}; below that "
             "it falls behind.",
        do="Tell the owner that temperature. If the home must not fall behind, look at a larger "
           "kit, its breaker and the service.")
    if least is None:
        paper.verdict("elements-air", "look",
                      "The least airflow for this kit is not known. Planned are {air}.",
                      source=LABEL, do="Read it on the kit's label and enter it.",
                      air=Quantity(standard, "scfm", 0))
    else:
        paper.limit(
            "elements-air", standard, at_least=least, of="kit_least_airflow_scfm", source=LABEL,
            safety=True,
            fine="Enough air for the elements.",
            hold="Too little air for the elements: {value}, and the label asks for {limit}.",
            do="Raise the airflow or take a smaller kit before anything is switched on.")
    if hours is None:
        paper.verdict("recovers", "look",
                      "On the design night the home does not come back from this setback.",
                      source=LUMPED_HOUSE, do="Hold the temperature steady in deep cold.")


def figure(sheet: Sheet) -> str:
    """Each kit on the plate as a bar, with what is short as the limit."""
    sizes, scale, short = sheet.drawn["sizes"], sheet.drawn["scale"], sheet.drawn["short"]
    assert isinstance(sizes, list)
    assert isinstance(scale, float)
    assert isinstance(short, float)
    rows = [(f"{kw:g} kW kit", kw * scale) for kw in sizes]
    words = ", ".join(f"{name} {sheet.text(kw, 'kW', 1)}" for name, kw in rows)
    need = sheet.text(short, "kW", 1)
    return drawing.bars(
        "backup-kit", "The kits on the plate against what is short",
        [("short at design", short), *rows], "kW", head="kW at this voltage", decimals=1,
        desc=f"At this voltage: {words}. Short on the design night: {need}.",
        system=sheet.system,
    ).figure("Only a kit marked on the plate may go in.")
