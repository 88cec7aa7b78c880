"""The diagnoser: what is wrong with a home, from what a learner can read and from nothing else.

It knows neither what was planted nor how. It lays readings beside limits, and asks the plan's own
calculators where a limit is theirs.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from downflow.engine.chain import Study
from downflow.facts import all_facts
from downflow.facts.job import Entry, Job
from downflow.physics import air_path, duct_leakage, ducts
from downflow.plan import the_chain
from downflow.practice.plant import closet_limit_pa
from downflow.units import Quantity

BURNING = ("gas", "propane", "oil", "wood")
LEAKY_FLOOR_PCT = 10.0
"""Leakage at 25 Pa as a share of the floor from which ducts count as leaky. [%]"""
FAR_SHARE_LEAST = 0.70
"""What a half gets over its share of the load, below which something holds the air back. [-]"""
NO_AIR_SHARE = 0.03
"""Share of the air below which a half gets none. [-]"""
OVERSIZED = 1.65
"""Heat of the furnace at the registers over the design load from which it is far too large. [-]"""
LOADED_SHARE = 0.75
"""Of the way from a clean filter to a loaded one. [-]"""
STRAY_AMPS = 1.0
"""More than a clamp shows on a dead wire. [A]"""


class Finding(NamedTuple):
    """A fault found, and the sentence that shows it; `{name}` stands for a value."""

    fault: str
    measures: tuple[str, ...]
    text: str
    values: dict[str, Quantity | str]


def diagnose(readings: Mapping[str, Any]) -> list[Finding]:
    """Every fault that the readings show; none where a reading is missing."""
    out: list[Finding | None] = [
        _fuel_line(readings), _alarm(readings), _service(readings), _trap(readings),
        _melt(readings), _vent(readings), _crossover(readings), _return(readings),
        _filter(readings), _leaks(readings), _furnace(readings), _backup(readings),
        _charge(readings)]
    return [f for f in out if f is not None]


def job_of(readings: Mapping[str, Any]) -> Job:
    """A job sheet with what was read."""
    facts = all_facts()
    return Job("practice", "Practice", {
        name: Entry(value, "measured") for name, value in readings.items() if name in facts})


def _has(readings: Mapping[str, Any], *names: str) -> bool:
    return all(name in readings for name in names)


def _fuel_line(r: Mapping[str, Any]) -> Finding | None:
    if r.get("fuel_line_capped") is not False:
        return None
    return Finding("open-fuel-line", ("closet",),
                   "Behind the cabinet the old fuel line ends in a valve without a cap.", {})


def _alarm(r: Mapping[str, Any]) -> Finding | None:
    if r.get("co_alarm") is not False:
        return None
    burns = [label for label, name in (
        ("water heater", "water_heater_fuel"), ("range", "range_fuel"), ("dryer", "dryer_fuel"),
        ("stove", "stove_fuel")) if r.get(name) in BURNING]
    if not burns:
        return None
    return Finding("dead-alarm", ("alarms",),
                   "The carbon monoxide alarm is dead, and fuel still burns: {what}.",
                   {"what": ", ".join(burns)})


def _service(r: Mapping[str, Any]) -> Finding | None:
    if not _has(r, "main_breaker_a", "appliances"):
        return None
    answer = Study(the_chain(), job_of(r)).answer("service-load", ranged=False)
    if not answer.ok:
        return None
    load = answer.values["service_load_a"].value
    if load <= r["main_breaker_a"]:
        return None
    return Finding("panel-too-small", ("panel",),
                   "The sum for an existing dwelling comes to {load}; the main is {main}.",
                   {"load": Quantity(load, "A", 0), "main": Quantity(r["main_breaker_a"], "A", 0)})


def _trap(r: Mapping[str, Any]) -> Finding | None:
    if not _has(r, "trap_place", "trap_state"):
        return None
    if r["trap_place"] != "none" and r["trap_state"] != "dry":
        return None
    return Finding("dry-trap", ("trap",),
                   "No water stands between pan and outdoors: {air} are drawn in at the drain.",
                   {"air": Quantity(r.get("drain_air_cfm", 0.0), "cfm", 0)})


def _melt(r: Mapping[str, Any]) -> Finding | None:
    way = {"walk": "to a walk", "home": "under the home"}.get(r.get("melt_way", ""))
    if way is None:
        return None
    return Finding("melt-to-walk", ("outside",), "Defrost water runs {way}.", {"way": way})


def _vent(r: Mapping[str, Any]) -> Finding | None:
    state = {"open": "open", "stuffed": "stuffed with a rag"}.get(r.get("vent_state", ""))
    if state is None:
        return None
    return Finding("open-vent", ("outside",), "The old vent stands in the roof, {state}.",
                   {"state": state})


def _crossover(r: Mapping[str, Any]) -> Finding | None:
    if r.get("sections") != "double":
        return None
    if r.get("crossover_found") == "none":
        return Finding("no-crossover", ("belly",),
                       "Under the home nothing joins the two trunks.", {})
    if r.get("crossover_sound") == "bad":
        return Finding("crushed-crossover", ("belly",),
                       "The crossover under the home is squeezed flat.", {})
    if not _has(r, "registers", "rooms"):
        return None
    flows = {row["id"]: r.get(f"register_{row['id']}_cfm") for row in r["registers"]}
    if any(v is None for v in flows.values()):
        return None
    total = sum(float(v or 0.0) for v in flows.values())
    far = sum(float(flows[row["id"]] or 0.0) for row in r["registers"] if row["trunk"] != "A")
    shares = air_path.load_shares(r["rooms"], None)
    rooms = {row["room"] for row in r["registers"] if row["trunk"] != "A"}
    load = sum(shares[room] for room in rooms)
    share = far / total if total else 0.0
    values: dict[str, Quantity | str] = {"share": Quantity(100 * share, "%", 0),
                                         "load": Quantity(100 * load, "%", 0)}
    if share < NO_AIR_SHARE:
        return Finding("no-crossover", ("registers",),
                       "The registers of the far half give {share} of the air, for {load} of the "
                       "load: nothing reaches that trunk.", values)
    if share < FAR_SHARE_LEAST * load:
        return Finding("crushed-crossover", ("registers",),
                       "The far half gets {share} of the air for {load} of the load: something "
                       "between the trunks is nearly shut.", values)
    return None


def _return(r: Mapping[str, Any]) -> Finding | None:
    below = r.get("closet_pa")
    if below is None or below <= closet_limit_pa():
        return None
    return Finding("choked-return", ("closet-pressure",),
                   "The closet stands {below} below the home; {limit} is the most.",
                   {"below": Quantity(below, "Pa", 0),
                    "limit": Quantity(closet_limit_pa(), "Pa", 0)})


def _filter(r: Mapping[str, Any]) -> Finding | None:
    if not _has(r, "filter_inwc", "airflow_set_cfm", "filters", "filter_planned",
                "elevation_ft"):
        return None
    row = next(f for f in r["filters"] if f["kind"] == r["filter_planned"])
    from downflow.physics import air

    light = air.density_lb_ft3(r["elevation_ft"], 68.0) / air.STANDARD_DENSITY_LB_FT3

    def here(printed: float) -> float:
        return light * ducts.scaled_drop_inwc(printed, row["at_cfm"], r["airflow_set_cfm"],
                                              ducts.FILTER_MEDIA_EXPONENT)

    clean, loaded = here(row["clean_inwc"]), here(row["loaded_inwc"])
    if r["filter_inwc"] <= clean + LOADED_SHARE * (loaded - clean):
        return None
    return Finding("loaded-filter", ("filter",),
                   "The filter takes {now}; clean it takes {clean} at this airflow, loaded "
                   "{loaded}.",
                   {"now": Quantity(r["filter_inwc"], "in w.c.", 2),
                    "clean": Quantity(clean, "in w.c.", 2),
                    "loaded": Quantity(loaded, "in w.c.", 2)})


def _leaks(r: Mapping[str, Any]) -> Finding | None:
    if not _has(r, "leakage_cfm25", "floor_area_ft2"):
        return None
    share = 100 * duct_leakage.leakage_per_floor(r["leakage_cfm25"], r["floor_area_ft2"])
    if share <= LEAKY_FLOOR_PCT:
        return None
    return Finding("leaky-ducts", ("duct-test",),
                   "The ducts lose {lost} at 25 Pa, {share} of the floor's number.",
                   {"lost": Quantity(r["leakage_cfm25"], "cfm", 0),
                    "share": Quantity(share, "%", 0)})


def _furnace(r: Mapping[str, Any]) -> Finding | None:
    if not _has(r, "furnace_input_btuh", "furnace_efficiency_pct", "delivery_before_pct",
                "fuel_periods", "monthly_means", "indoor_design_f", "design_heating_f"):
        return None
    answer = Study(the_chain(), job_of(r)).answer("fuel-bills", ranged=False)
    if not answer.ok:
        return None
    load = answer.values["bills_ua_btuh_f"].value * (
        r["indoor_design_f"] - r["design_heating_f"])
    heat = (r["furnace_input_btuh"] * r["furnace_efficiency_pct"] / 100
            * r["delivery_before_pct"] / 100)
    if heat <= OVERSIZED * load:
        return None
    return Finding("oversized-furnace", ("plate", "bills"),
                   "The furnace brings {heat} to the rooms; by the bills the home loses {load} on "
                   "the design night.",
                   {"heat": Quantity(heat, "Btu/h", 0), "load": Quantity(load, "Btu/h", 0)})


def _backup(r: Mapping[str, Any]) -> Finding | None:
    amps = r.get("kit_heat_call_a")
    if amps is None or amps <= STRAY_AMPS:
        return None
    return Finding("backup-always-on", ("heat-call",),
                   "With the heat pump alone asked for, the kit draws {amps}.",
                   {"amps": Quantity(amps, "A", 0)})


def _charge(r: Mapping[str, Any]) -> Finding | None:
    if not _has(r, "suction_psig", "liquid_psig", "liquid_line_f", "suction_line_f"):
        return None
    answer = Study(the_chain(), job_of(r)).answer("superheat-subcooling", ranged=False)
    if not answer.ok:
        return None
    verdict = next(v for v in answer.verdicts if v.id == "subcooling")
    if verdict.level == "fine":
        return None
    return Finding("wrong-charge", ("gauges",),
                   "Subcooling is {read}; the plate asks for {target}.",
                   {"read": Quantity(answer.values["subcooling_f"].value, "°F diff", 1),
                    "target": Quantity(r["target_subcooling_f"], "°F diff", 0)})
