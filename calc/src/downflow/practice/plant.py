"""The running system: what can be read at it, from what is true of it.

One description serves practice homes and the bench of faults: the job sheet's facts, and the
conditions that no sheet holds (how dirty the filter is, how far the crossover is crushed, how
much charge is in). Air from the network, gauges from the simple cycle, amps from the data sheet.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

from downflow import tables
from downflow.facts import all_facts
from downflow.physics import (
    air,
    air_path,
    airflow_reading,
    commissioning,
    cycle,
    ducts,
    heat_pump,
    moist_air,
    refrigerant,
)

RATED_F = 47.0
TON_BTUH = 12_000.0
CRUSHED_FACTOR = 3.0
"""Loss of crushed flexible duct against the stretched one, on top of its smaller opening."""
CLOSED_DAMPER_C = 400.0
"""Loss of a closed register on the velocity pressure of its opening."""
COOLING_FROM_F = 55.0
"""Outdoors from here on the charge can be judged in cooling."""
POWER_FACTOR = 0.95
INDOOR_COOLING_F = 75.0
INDOOR_HEATING_F = 68.0


@dataclass(frozen=True)
class Conditions:
    """What is true of a system and stands on no sheet.

    Attributes:
        filter_loading: 0 clean, 1 loaded as far as the data sheet goes.
        crossover_open: Share of the crossover's opening that is left.
        charge_share: Charge over the right charge.
        outdoor_air_share: Air over the outdoor coil against that when clean.
        outdoor_f: Outdoors at the visit. [°F]
        backup_stuck: Whether the kit runs whenever the heat pump does.
        closed: Registers that are shut.
        air_share: Airflow set on the board over the right one.
    """

    filter_loading: float = 0.2
    crossover_open: float = 1.0
    charge_share: float = 1.0
    outdoor_air_share: float = 1.0
    outdoor_f: float = 68.0
    backup_stuck: bool = False
    closed: tuple[str, ...] = ()
    air_share: float = 1.0


@dataclass(frozen=True)
class Air:
    """The air side, in this home's air."""

    flows: air_path.Flows
    density_lb_ft3: float
    supply_inwc: float
    return_inwc: float
    filter_inwc: float
    external_inwc: float
    closet_pa: float
    far_share: float
    fan_w: float


@dataclass(frozen=True)
class Gauges:
    """The refrigerant side in cooling, as gauges and clamps would show it."""

    suction_psig: float
    suction_line_f: float
    liquid_psig: float
    liquid_line_f: float
    state: cycle.CoolingState


def known(facts: Mapping[str, Any]) -> SimpleNamespace:
    """Facts as attributes; an assumption, or nothing, where one is missing."""
    values: dict[str, Any] = {}
    for name, fact in all_facts().items():
        if name in facts:
            values[name] = facts[name]
        else:
            values[name] = fact.assumption.value if fact.assumption is not None else None
    return SimpleNamespace(**values)


def roughness() -> dict[str, float]:
    """Roughness of each duct material. [ft]"""
    return {row.material: row.roughness_ft for row in tables.rows("duct_roughness")}


def crossovers(job: SimpleNamespace, base: air_path.AirPath,
               open_share: float) -> tuple[air_path.Crossover, ...]:
    """The crossovers that are there, as they are."""
    if job.crossover_found not in ("slot", "round") or len(base.trunks) < 2:
        return ()
    rough = roughness()
    if job.crossover_found == "slot":
        return air_path.slots(base.trunks, width_in=job.slot_width_in,
                              height_in=job.slot_height_in * open_share,
                              length_ft=job.slot_length_ft, roughness_ft=rough["galvanized"])
    pleated = [(r.diameter_in, r.loss_c) for r in tables.rows("elbow_round")
               if r.kind == "pleated"]
    full = job.found_diameter_in
    factor = ducts.flex_factor(full, job.crossover_compression_pct).likely
    if open_share < 1.0:
        factor *= CRUSHED_FACTOR
    return air_path.flexible(
        base.trunks, 1, diameter_in=full * open_share**0.5,
        length_ft=job.crossover_length_ft * ducts.sag_length_factor(
            job.crossover_sag_in, job.crossover_support_ft),
        roughness_ft=rough["flex"], flex_factor=factor, bends=job.crossover_bends or 0.0,
        bend_c=air_path.pleated_bend_c(pleated, full), second_ft=job.crossover_second_ft)


def filter_row(job: SimpleNamespace, loading: float) -> dict[str, Any]:
    """The planned filter, loaded so far."""
    row = next((f for f in job.filters if f["kind"] == job.filter_planned), job.filters[0])
    drop = row["clean_inwc"] + loading * (row["loaded_inwc"] - row["clean_inwc"])
    return {**row, "clean_inwc": drop}


def air_of(facts: Mapping[str, Any], conditions: Conditions, airflow_cfm: float) -> Air:
    """The air side of a running system.

    Args:
        facts: True facts of home and equipment.
        conditions: Its conditions.
        airflow_cfm: Airflow for which the board is set, this home's air. [ft³/min]
    """
    values = {**facts, "air_target_cfm": airflow_cfm,
              "fan_set_cfm": airflow_cfm * conditions.air_share}
    job = known(values)
    job.filters = [filter_row(job, conditions.filter_loading)]
    density = air.density_lb_ft3(job.elevation_ft, job.return_air_f)
    base = air_path.base_path(job, density, roughness())
    registers = tuple(
        r if r.id not in conditions.closed else air_path.Register(
            r.id, r.trunk, r.room, r.at_ft, r.area_in2, r.loss_c, CLOSED_DAMPER_C)
        for r in base.registers)
    path = air_path.AirPath(base.air, base.plant, base.trunks, registers,
                            crossovers(job, base, conditions.crossover_open))
    flows = air_path.solve(path)
    drops = flows.drop_inwc
    external = flows.fan_rise_inwc
    rows = [r for r in job.fan_table if r.get("power_w") is not None]
    as_table = airflow_reading.to_table_air_inwc(external, density, job.fan_table_density_lb_ft3)
    watts = airflow_reading.table_airflow(
        [r["static_inwc"] for r in rows], [r["power_w"] for r in rows], as_table).airflow_cfm
    behind = drops["closet"] + drops["filter"]
    return Air(
        flows, density, drops["box"] + drops["supply"], behind, drops["filter"], external,
        drops["closet"] * ducts.PA_PER_INWC,
        air_path.far_share(path, flows) if len(base.trunks) > 1 else 0.0,
        watts * density / job.fan_table_density_lb_ft3
        * flows.airflow_cfm / max(1.0, airflow_cfm))


def rated_btuh(job: SimpleNamespace) -> float:
    """Heat at top speed at the point nearest 47 °F, at this height. [Btu/h]"""
    row = min(job.hp_points, key=lambda r: abs(r["outdoor_f"] - RATED_F))
    return float(row["capacity_max_btuh"]) * (job.hp_altitude_factor_pct or 100.0) / 100


def gauges_of(facts: Mapping[str, Any], conditions: Conditions, found: Air) -> Gauges:
    """What gauges and clamps show in cooling, at top speed.

    Raises:
        ValueError: Too cold outside to judge the charge in cooling.
    """
    if conditions.outdoor_f < COOLING_FROM_F:
        raise ValueError(f"{conditions.outdoor_f:g} °F is too cold to judge a charge in cooling; "
                         f"{COOLING_FROM_F:g} °F is the least")
    job = known(facts)
    capacity = job.rating_cooling_95f_btuh * (job.hp_altitude_factor_pct or 100.0) / 100
    rated = air.STANDARD_DENSITY_LB_FT3 * 60 * job.airflow_per_12000_scfm * capacity / TON_BTUH
    state = cycle.cooling(
        capacity, 60 * found.density_lb_ft3 * found.flows.airflow_cfm, rated, INDOOR_COOLING_F,
        conditions.outdoor_f, job.target_subcooling_f, conditions.charge_share,
        conditions.outdoor_air_share)
    rows = tables.rows("refrigerant_" + job.refrigerant.replace("-", "").lower())
    around = moist_air.atmosphere_psia(job.elevation_ft)
    suction = refrigerant.saturation_psia(state.evaporating_f, rows, dew=True)
    liquid = refrigerant.saturation_psia(state.condensing_f, rows)
    return Gauges(
        refrigerant.gauge_psig(suction, around), state.evaporating_f + state.superheat_f,
        refrigerant.gauge_psig(liquid, around), state.condensing_f - state.subcooling_f, state)


def heating_of(facts: Mapping[str, Any], conditions: Conditions,
               found: Air) -> tuple[float, float]:
    """Supply air and outdoor amps with the heat pump heating at top speed, kit off."""
    job = known(facts)
    points = [r["outdoor_f"] for r in job.hp_points]
    capacity = heat_pump.interpolate(points, [r["capacity_max_btuh"] for r in job.hp_points],
                                     conditions.outdoor_f).value
    watts = heat_pump.interpolate(points, [r["power_max_w"] for r in job.hp_points],
                                  conditions.outdoor_f).value
    capacity *= (job.hp_altitude_factor_pct or 100.0) / 100
    split = commissioning.split_f(capacity, found.flows.airflow_cfm, found.density_lb_ft3)
    return INDOOR_HEATING_F + split, watts / (job.supply_v * POWER_FACTOR)


def kit_amps(facts: Mapping[str, Any]) -> float:
    """Current of the whole kit at this home's voltage. [A]"""
    job = known(facts)
    return commissioning.element_amps(job.kit_planned_kw, job.kit_rated_v, job.kit_volts)


def kit_rise_f(facts: Mapping[str, Any], found: Air) -> float:
    """How much the kit alone warms the air, blower counted. [°F diff]"""
    job = known(facts)
    watts = job.kit_volts * kit_amps(facts) + job.blower_watts
    return commissioning.rise_f(watts / 1000, found.flows.airflow_cfm, found.density_lb_ft3)


def closet_limit_pa() -> float:
    """Most that a closet may stand below the home: the way back's own limit. [Pa]"""
    from downflow.calculators.way_back import CLOSET_LIMIT_PA

    return float(CLOSET_LIMIT_PA)

