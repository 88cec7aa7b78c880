"""The bench of faults: choose a cause in words; what a technician would read, before and after.

One system, Juniper Flat after its job, with a round crossover. The readings come from the same
models as those of practice homes: the air network, the simple cycle, the data sheet's amps.
"""

from __future__ import annotations

import functools
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from downflow.demo import demo_job
from downflow.physics import airflow_reading, ducts
from downflow.practice import plant
from downflow.practice.plant import Conditions

Facts = dict[str, Any]
Change = Callable[[Facts, Conditions], tuple[Facts, Conditions]]

USUAL_F = 75.0
"""Outdoors at the bench, unless the cause is another temperature. [°F]"""
CROSSOVER_IN = 14.0
COOLING_COIL_LEAST_F = 32.0
CONDENSING_F = (8.0, 35.0)
SUBCOOLING_BAND_F = 3.0
SUPERHEAT_F = (5.0, 15.0)
AIRFLOW_SHARE = 0.15
MOVED_SHARE = 0.04
"""A reading has moved when it has moved by so much of its own rule. [-]"""


class Severity(NamedTuple):
    """How bad, in words."""

    id: str
    label: str


@dataclass(frozen=True)
class Cause:
    """A cause that can be chosen.

    Attributes:
        id, label: Its name.
        severities: In words, mild first.
        because: Why the readings move as they do.
        procedure: The procedure that teaches it.
    """

    id: str
    label: str
    severities: tuple[Severity, ...]
    because: str
    procedure: str


CAUSES: tuple[Cause, ...] = (
    Cause("filter", "The filter loads", (
        Severity("half", "half way"), Severity("loaded", "loaded, as the sheet counts it"),
        Severity("beyond", "far beyond that")),
        "The same air must pass a denser filter. A constant-airflow fan pushes harder: pressure, "
        "watts and noise go up, and the airflow hides it until the fan cannot hold it.",
        "filter-cabinet"),
    Cause("crossover", "The crossover is crushed", (
        Severity("half", "to half its opening"), Severity("quarter", "to a quarter"),
        Severity("tenth", "nearly flat")),
        "The far half starves and the near half gets its air: the total hardly moves, so one "
        "reading at the cabinet does not show it. The flow hood does.",
        "crossover-and-trunk"),
    Cause("registers", "Registers are closed", (
        Severity("two", "two"), Severity("four", "four"), Severity("six", "six of twelve")),
        "Fewer ways out: the box stands higher, the open rooms get louder and too much, leaks lose "
        "more.", "crossover-and-trunk"),
    Cause("return", "The return is choked", (
        Severity("half", "half of the louvers shut"), Severity("quarter", "three quarters shut"),
        Severity("tenth", "boxes piled against the door")),
        "The closet is pulled below the home: every crack and, where fuel burns, every vent is "
        "pulled on too.", "return-path"),
    Cause("charge", "The charge is off", (
        Severity("under", "a tenth too little"), Severity("far-under", "a quarter too little"),
        Severity("over", "a tenth too much"), Severity("far-over", "a fifth too much")),
        "Too little: subcooling falls first; when no liquid stands before the valve the coil "
        "starves, superheat climbs, suction falls. Too much: liquid backs up in the outdoor coil, "
        "subcooling and head pressure climb.", "pressure-and-vacuum"),
    Cause("airflow", "The airflow is set too low", (
        Severity("some", "a seventh below the target"), Severity("much", "a third below"),
        Severity("very", "half of it")),
        "Less air gives the coil less heat: it boils colder, at last below freezing, and superheat "
        "falls until liquid comes back. Judged as charge, this fault gets refrigerant taken out of "
        "a system that has the right amount.", "start-up"),
    Cause("coil", "The outdoor coil is dirty", (
        Severity("some", "a fifth of its air is gone"),
        Severity("much", "half of its air is gone")),
        "The same heat must leave over less air: it condenses hotter, head pressure and amps "
        "climb, and subcooling alone does not tell.", "yearly-visit"),
    Cause("leaks", "The ducts leak", (
        Severity("tenth", "a tenth of the floor's number at 25 Pa"),
        Severity("fifth", "a fifth of it")),
        "Air that is paid for leaves under the home: static falls a little, the registers give "
        "less than the cabinet moves.", "seal-the-ducts"),
    Cause("backup", "The backup heat comes on with the compressor", (
        Severity("always", "always"),),
        "The thermostat, or one wire, calls for both. In cooling nothing shows; in heating the kit "
        "draws its full current on a mild day, and the air is hotter than a heat pump makes it.",
        "thermostat-set-up"),
    Cause("outdoors", "It is another day outdoors", (
        Severity("95", "a hot afternoon"), Severity("47", "a mild winter day"),
        Severity("17", "a cold morning"), Severity("5", "a very cold night")),
        "Nothing is wrong: readings belong to a temperature. Hot outside, head pressure and amps "
        "climb. In winter the same machine makes less heat, and its charge cannot be judged by "
        "gauges in cooling.", "first-month-call"),
)
"""Every cause."""

_BY_ID = {c.id: c for c in CAUSES}


class Row(NamedTuple):
    """One reading, before and after; `None` where it cannot be read then."""

    id: str
    label: str
    unit: str
    decimals: int
    before: float | None
    after: float | None
    low: float | None
    high: float | None
    moved: bool


@dataclass(frozen=True)
class Bench:
    """What a bench shows."""

    cause: Cause
    severity: Severity
    outdoor_f: float
    rows: tuple[Row, ...]
    because: str


def cause(id_: str) -> Cause:
    """The cause called `id_`; `ValueError` where there is none."""
    found = _BY_ID.get(id_)
    if found is None:
        raise ValueError(f"no cause is called {id_!r}; there are {', '.join(_BY_ID)}")
    return found


@functools.cache
def bench_facts() -> Facts:
    """The facts of the bench: the worked example after its job."""
    job = demo_job()
    facts: Facts = {}
    for name in sorted(job.names()):
        entry = job.entry(name)
        assert entry is not None
        facts[name] = entry.value
    facts["crossover_found"], facts["crossover_sound"] = "round", "sound"
    facts["found_diameter_in"] = CROSSOVER_IN
    return facts


def _changed(id_: str, severity: str, facts: Facts,
             now: Conditions) -> tuple[Facts, Conditions]:
    """The system with the cause in it."""
    if id_ == "filter":
        share = {"half": 0.5, "loaded": 1.0, "beyond": 2.5}[severity]
        return facts, replace(now, filter_loading=share)
    if id_ == "crossover":
        share = {"half": 0.5, "quarter": 0.25, "tenth": 0.08}[severity]
        return facts, replace(now, crossover_open=share)
    if id_ == "registers":
        count = {"two": 2, "four": 4, "six": 6}[severity]
        names = [row["id"] for row in facts["registers"]][::2][:count]
        return facts, replace(now, closed=tuple(names))
    if id_ == "return":
        share = {"half": 0.5, "quarter": 0.25, "tenth": 0.10}[severity]
        return {**facts, "louver_free_pct": facts["louver_free_pct"] * share}, now
    if id_ == "charge":
        share = {"under": 0.90, "far-under": 0.75, "over": 1.10, "far-over": 1.20}[severity]
        return facts, replace(now, charge_share=share)
    if id_ == "airflow":
        return facts, replace(now, air_share={"some": 0.86, "much": 0.67, "very": 0.5}[severity])
    if id_ == "coil":
        return facts, replace(now, outdoor_air_share={"some": 0.8, "much": 0.5}[severity])
    if id_ == "leaks":
        share = {"tenth": 0.10, "fifth": 0.20}[severity]
        return {**facts, "leakage_cfm25": facts["floor_area_ft2"] * share}, now
    if id_ == "backup":
        # Seen in heating alone: a mild winter day before and after.
        return facts, replace(now, backup_stuck=True)
    return facts, replace(now, outdoor_f=float(severity))


def _read(facts: Facts, now: Conditions) -> dict[str, float | None]:
    found = plant.air_of(facts, now, facts["fan_set_cfm"])
    volts = facts["kit_volts"] * plant.POWER_FACTOR
    as_plate = airflow_reading.to_table_air_inwc(found.external_inwc, found.density_lb_ft3,
                                                 ducts.STANDARD_DENSITY_LB_FT3)
    out: dict[str, float | None] = {
        "external": as_plate, "return": found.return_inwc, "filter": found.filter_inwc,
        "supply": found.supply_inwc, "airflow": found.flows.airflow_cfm,
        "delivered": found.flows.delivered_cfm, "closet": found.closet_pa,
        "far": 100 * found.far_share, "blower": found.fan_w / volts}
    names = ("suction", "boils", "superheat", "liquid", "condensing", "subcooling")
    if now.outdoor_f >= plant.COOLING_FROM_F:
        gauges = plant.gauges_of(facts, now, found)
        state = gauges.state
        out.update(zip(names, (
            gauges.suction_psig, state.evaporating_f, state.superheat_f, gauges.liquid_psig,
            state.condensing_f - now.outdoor_f, state.subcooling_f), strict=True))
        out["air"] = state.supply_f
        out["outdoor"] = state.power_w / volts
        out["kit"] = 0.0
        return out
    out.update(dict.fromkeys(names))
    supply, amps = plant.heating_of(facts, now, found)
    out["kit"] = 0.0
    if now.backup_stuck:
        out["kit"] = plant.kit_amps(facts)
        supply += plant.kit_rise_f(facts, found)
    out["air"], out["outdoor"] = supply, amps
    return out


def _rules(facts: Facts) -> tuple[tuple[str, str, str, int, float | None, float | None, float],
                                  ...]:
    """Of each reading: id, label, unit, decimals, limits, and the width that counts as large."""
    target = facts["fan_set_cfm"]
    cool = facts["target_subcooling_f"]
    return (
        ("external", "External static, in the plate's air", "in w.c.", 2, None,
         facts["static_rated_inwc"], 0.5),
        ("return", "Static before the cabinet", "in w.c.", 2, None, None, 0.4),
        ("filter", "Across the filter", "in w.c.", 2, None, None, 0.4),
        ("supply", "Static after the cabinet", "in w.c.", 2, None, None, 0.4),
        ("closet", "Closet below the home", "Pa", 1, None, plant.closet_limit_pa(), 12.0),
        ("airflow", "Airflow through the cabinet", "cfm", 0, (1 - AIRFLOW_SHARE) * target,
         (1 + AIRFLOW_SHARE) * target, target),
        ("delivered", "Air out of the registers", "cfm", 0, None, None, 0.6 * target),
        ("far", "Share of the air in the far half", "%", 0, None, None, 40.0),
        ("blower", "Current of the blower", "A", 1, None, facts["indoor_blower_a"],
         facts["indoor_blower_a"]),
        ("suction", "Suction pressure", "psig", 0, None, None, 120.0),
        ("boils", "Boils at", "°F", 0, COOLING_COIL_LEAST_F, None, 40.0),
        ("superheat", "Superheat", "°F diff", 1, *SUPERHEAT_F, 15.0),
        ("liquid", "Liquid pressure", "psig", 0, None, None, 300.0),
        ("condensing", "Condenses above outdoors", "°F diff", 0, *CONDENSING_F, 30.0),
        ("subcooling", "Subcooling", "°F diff", 1, cool - SUBCOOLING_BAND_F,
         cool + SUBCOOLING_BAND_F, 12.0),
        ("air", "Air at the outlet", "°F", 0, None, None, 40.0),
        ("outdoor", "Current of the outdoor unit", "A", 1, None, facts["outdoor_unit_a"],
         facts["outdoor_unit_a"]),
        ("kit", "Current of the kit, heat pump alone asked for", "A", 1, None, 1.0, 33.0),
    )


@functools.lru_cache(maxsize=64)
def bench(cause_id: str, severity_id: str) -> Bench:
    """The readings before and after a cause.

    Raises:
        ValueError: No such cause or severity.
    """
    one = cause(cause_id)
    severity = next((s for s in one.severities if s.id == severity_id), None)
    if severity is None:
        raise ValueError(f"{cause_id} has no severity {severity_id!r}")
    facts = bench_facts()
    start = Conditions(filter_loading=0.0, outdoor_f=47.0 if one.id == "backup" else USUAL_F)
    after_facts, after = _changed(one.id, severity.id, facts, start)
    first, then = _read(facts, start), _read(after_facts, after)
    rows = []
    for id_, label, unit, decimals, low, high, wide in _rules(facts):
        a, b = first[id_], then[id_]
        if a is None and b is None:
            continue
        moved = a is None or b is None or abs(b - a) > MOVED_SHARE * wide
        rows.append(Row(id_, label, unit, decimals, a, b, low, high, moved))
    return Bench(one, severity, after.outdoor_f, tuple(rows), one.because)
