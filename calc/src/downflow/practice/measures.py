"""What can be read at a practice home: how long it takes, what must come before it, what it shows.

A measurement gives facts of the job sheet, readings that stand on no sheet, or both. Some need a
safety step first; a learner who leaves it out has missed a hold.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from downflow.facts import all_facts
from downflow.practice import homes, plant
from downflow.practice.faults import BOTH, CALL, SURVEY
from downflow.practice.homes import PracticeHome


class Reading(NamedTuple):
    """Something read: of the job sheet where `fact`, else one that stands on no sheet."""

    name: str
    label: str
    value: Any
    unit: str = ""
    decimals: int = 0
    fact: bool = False


class Step(NamedTuple):
    """A safety step: it reads nothing, and guards what comes after it."""

    id: str
    label: str
    minutes: int
    hazard: str
    why: str
    procedure: str


class Measure(NamedTuple):
    """One measurement.

    Attributes:
        id: Its name.
        label: What is done, one verb first.
        minutes: How long it takes.
        visits: At which visits it can be taken.
        needs: Safety steps that come first.
        hazards: Tags of its hazards, for the caution.
        facts: Facts of the job sheet that it gives.
        where: Where one stands.
    """

    id: str
    label: str
    minutes: int
    visits: tuple[str, ...]
    needs: tuple[str, ...]
    hazards: tuple[str, ...]
    facts: tuple[str, ...]
    where: str


STEPS: tuple[Step, ...] = (
    Step("sniff", "Stand at the door: smell for fuel, ask about the alarm", 2, "fuel-gas",
         "A smell of fuel ends the visit before anything is switched.", "first-visit"),
    Step("crawl-check", "Look into the crawl space first: air measured, skirting tested for "
         "voltage, someone outside", 8, "crawl-space",
         "Nobody goes under a home before its air is measured, its frame is tested for voltage, "
         "and someone stays outside within call.", "find-the-crossovers"),
    Step("lock-out", "Find every supply, lock each one out, prove it dead", 10, "electricity",
         "Nobody opens the cabinet before every supply is locked out and proved dead.",
         "electrical"),
    Step("electrician", "Call the licensed electrician to the panel", 12, "live-reading",
         "Readings on live parts are for the licensed electrician.", "electrical"),
    Step("certified", "Have the certified person connect and purge the hoses", 6,
         "flammable-refrigerant",
         "Only a certified person connects gauges, detector on, no flame near.",
         "pressure-and-vacuum"),
    Step("ladder", "Set and tie the ladder, look at the roof's state", 5, "fall",
         "Nobody climbs an untied ladder or steps on a wet or icy roof.", "close-the-openings"),
)
"""Every safety step."""

MEASURES: tuple[Measure, ...] = (
    Measure("alarms", "Press the button of each alarm; ask what burns fuel", 5, BOTH, (),
            ("carbon-monoxide",),
            ("co_alarm", "smoke_alarms", "water_heater_fuel", "range_fuel", "dryer_fuel",
             "stove_fuel"), "home"),
    Measure("plate", "Read the old furnace's plate, and clock its burner at the meter", 15,
            (SURVEY,), ("sniff",), ("fuel-gas", "hot-surface"),
            ("heating_fuel", "furnace_input_btuh", "furnace_efficiency_pct", "old_blower_w",
             "old_blower_a"), "closet"),
    Measure("inside", "Measure the rooms, doors and registers", 25, BOTH, (), (),
            ("ceiling_height_ft", "rooms", "registers", "bedrooms"), "rooms"),
    Measure("shell", "Look at walls, ceiling, floor and windows", 30, BOTH, (), ("dust",),
            ("wall_insulation_r", "wall_stud_in", "ceiling_insulation_r", "ceiling_insulation_in",
             "ceiling_eave_in", "ceiling_fill", "floor_insulation_r", "belly_open_pct",
             "window_area_ft2", "window_kind", "windows_by_side", "door_area_ft2"), "home"),
    Measure("bills", "Ask for twelve months of fuel bills", 10, BOTH, (), (),
            ("fuel_periods", "heating_fuel", "furnace_efficiency_pct", "delivery_before_pct",
             "other_heat"), "fuel"),
    Measure("night", "Read the logger that counted the burner one cold night", 5, (SURVEY,), (),
            (), ("burner_minutes", "night_minutes", "night_indoor_f", "night_outdoor_f"), "fuel"),
    Measure("blower-door", "Test the home's leaks with the blower door", 45, BOTH, ("sniff",),
            (), ("blower_door_cfm50",), "home"),
    Measure("closet", "Measure the closet and look behind the cabinet", 10, BOTH, (), (),
            ("closet_width_in", "closet_depth_in", "closet_height_in", "louver_face_in2",
             "louver_kind", "fuel_line_capped"), "closet"),
    Measure("closet-pressure", "Read the closet against the home, blower on, doors shut", 5, BOTH,
            (), (), (), "closet"),
    Measure("belly", "Go under the home: trunks, crossover, belly", 35, BOTH, ("crawl-check",),
            ("crawl-space",),
            ("trunks", "crossover_found", "crossover_sound", "found_diameter_in",
             "crossover_length_ft", "crossover_bends"), "crawl"),
    Measure("registers", "Hold the flow hood over every register", 30, BOTH, (), (),
            ("registers", "rooms"), "rooms"),
    Measure("duct-test", "Test the ducts for leaks at 25 Pa", 40, BOTH, (), (),
            ("leakage_cfm25", "duct_state"), "home"),
    Measure("filter", "Read the pressure across the filter", 5, (CALL,), (), ("moving-parts",),
            (), "closet"),
    Measure("static", "Read the static pressure before and after the cabinet", 10, (CALL,), (),
            ("moving-parts",), ("static_supply_inwc", "static_return_inwc"), "closet"),
    Measure("heat-rise", "Run the elements alone: volts, amps, and the rise of the air", 20,
            (CALL,), ("electrician",), ("live-reading", "hot-surface"),
            ("kit_volts", "kit_amps", "clamp_holds_blower", "rise_return_f", "rise_supply_f"),
            "closet"),
    Measure("heat-call", "Ask for heat by the heat pump alone; clamp the kit", 15, (CALL,),
            ("electrician",), ("live-reading",), (), "panel"),
    Measure("thermostat", "Read the thermostat's set-up", 5, (CALL,), (), (),
            ("aux_lockout_set_f", "compressor_lockout_set_f"), "home"),
    Measure("gauges", "Run cooling a quarter of an hour, then read gauges and clamps", 30,
            (CALL,), ("certified",), ("flammable-refrigerant", "pressure", "refrigerant-burn"),
            ("suction_psig", "suction_line_f", "liquid_psig", "liquid_line_f",
             "charge_outdoor_f", "charge_minutes", "outdoor_amps"), "outdoors"),
    Measure("trap", "Look at the trap and the drain, feel for air at its end", 10, (CALL,),
            ("lock-out",), ("water-near-power",),
            ("trap_place", "trap_state", "pan_suction_read_inwc", "float_test", "float_stops",
             "drain_end"), "closet"),
    Measure("outside", "Walk around the home: unit, its water, the old vent", 10, BOTH, (), (),
            ("melt_way", "unit_base_in", "site_clearances", "vent_state", "vent_in"), "outdoors"),
    Measure("vent", "Look at the roof patch from above", 20, (CALL,), ("ladder",), ("fall",),
            ("vent_state",), "outdoors"),
    Measure("panel", "Read main, spaces and appliances; take the cover off only if you may", 15,
            BOTH, ("electrician",), ("live-reading",),
            ("main_breaker_a", "supply_kind", "panel_line", "panel_spaces_free",
             "panel_spaces_freed", "appliances", "kitchen_circuits", "laundry_circuits"),
            "panel"),
)
"""Every measurement."""

_MEASURES = {m.id: m for m in MEASURES}
_STEPS = {s.id: s for s in STEPS}
SURVEY_HIDES = ("fuel_line_capped", "melt_way", "unit_base_in", "site_clearances")
"""Facts that a survey cannot show, because they come with the job."""


def measure(id_: str) -> Measure:
    """The measurement called `id_`; `ValueError` where there is none."""
    found = _MEASURES.get(id_)
    if found is None:
        raise ValueError(f"no measurement is called {id_!r}")
    return found


def step(id_: str) -> Step:
    """The safety step called `id_`; `ValueError` where there is none."""
    found = _STEPS.get(id_)
    if found is None:
        raise ValueError(f"no safety step is called {id_!r}")
    return found


def is_step(id_: str) -> bool:
    """Whether an id is that of a safety step."""
    return id_ in _STEPS


def of_visit(visit: str) -> tuple[Measure, ...]:
    """What can be measured at a visit."""
    return tuple(m for m in MEASURES if visit in m.visits)


def steps_of(visit: str) -> tuple[Step, ...]:
    """The safety steps that something at a visit needs."""
    needed = {n for m in of_visit(visit) for n in m.needs}
    return tuple(s for s in STEPS if s.id in needed)


def minutes(done: list[str]) -> int:
    """Time that steps and measurements have taken. [min]"""
    return sum(step(d).minutes if is_step(d) else measure(d).minutes for d in done)


def left_out(done: list[str]) -> list[tuple[str, str]]:
    """Measurements taken before a safety step that they need: measurement and step."""
    out: list[tuple[str, str]] = []
    before: set[str] = set()
    for one in done:
        if not is_step(one):
            out += [(one, need) for need in measure(one).needs if need not in before]
        before.add(one)
    return out


def shown_facts(one: Measure, home: PracticeHome) -> list[str]:
    """The facts of a home that a measurement shows."""
    hidden = set(SURVEY_HIDES) if home.visit == SURVEY else set()
    if home.facts["crossover_found"] == "none":
        hidden |= {"crossover_sound", "found_diameter_in", "crossover_length_ft",
                   "crossover_bends"}
    if home.visit == SURVEY:
        hidden |= {"vent_state"}
    return [name for name in one.facts if name in home.facts and name not in hidden]


def observe(home: PracticeHome, id_: str) -> list[Reading]:
    """What a measurement shows at a home.

    Raises:
        ValueError: It cannot be taken at this visit.
    """
    one = measure(id_)
    if home.visit not in one.visits:
        raise ValueError(f"{id_} cannot be taken at a {home.visit}")
    facts = all_facts()
    out = [Reading(name, facts[name].label, home.facts[name], facts[name].unit,
                   facts[name].decimals, True) for name in shown_facts(one, home)]
    return out + _besides(home, id_)


def _besides(home: PracticeHome, id_: str) -> list[Reading]:
    """Readings that stand on no job sheet, from the same physics."""
    if id_ == "closet-pressure":
        return [Reading("closet_pa", "Closet below the home", round(homes.closet_pa(home), 1),
                        "Pa", 1)]
    if id_ == "filter":
        air = homes.air_now(home)
        return [Reading("filter_inwc", "Across the filter", round(air.filter_inwc, 2), "in w.c.",
                        2),
                Reading("airflow_set_cfm", "Airflow set on the board", home.facts["fan_set_cfm"],
                        "cfm", 0)]
    if id_ == "registers":
        flows = homes.air_now(home).flows.register_cfm
        return [Reading(f"register_{row['id']}_cfm",
                        f"Register {row['id']}, {row['room']}, trunk {row['trunk']}",
                        float(round(flows[row["id"]])), "cfm", 0)
                for row in home.facts["registers"]]
    if id_ == "heat-call":
        amps = homes.heat_call_amps(home.facts, home.conditions)
        supply, outdoor = plant.heating_of(home.facts, home.conditions, homes.air_now(home))
        if amps:
            supply += plant.kit_rise_f(home.facts, homes.air_now(home))
        return [Reading("kit_heat_call_a", "Current of the kit, heat pump alone asked for",
                        round(amps, 1), "A", 1),
                Reading("outdoor_heat_call_a", "Current of the outdoor unit, heating",
                        round(outdoor, 1), "A", 1),
                Reading("heat_call_supply_f", "Air at the first register", float(round(supply)),
                        "°F", 0)]
    if id_ == "trap":
        return [Reading("drain_air_cfm", "Air drawn in at the drain's end",
                        float(round(homes.drain_air_cfm(home.facts))), "cfm", 0)]
    return []


def given_names(home: PracticeHome) -> list[str]:
    """Facts that the crew has from the start: place, papers, and what the notes tell."""
    measured = {name for m in MEASURES for name in m.facts}
    return sorted(name for name in home.facts
                  if name not in measured and name not in HIDDEN_AT_FIRST)


HIDDEN_AT_FIRST = frozenset((
    "static_found_inwc", "leakage_before_cfm25", "louver_free_pct", "crossover_planned_count",
    "found_diameter_in", "crossover_sound", "blower_amps", "panel_volts_kit_on",
    "kit_volts_drop", "cool_split_return_f", "cool_split_supply_f", "outdoor_gfci",
    "fuel_capped_by", "fuel_capped_on",
))
"""True facts that neither papers nor a measurement of a practice home hand over as such."""


def readings(home: PracticeHome, done: list[str]) -> dict[str, Any]:
    """Everything that is known after these measurements, by name."""
    out: dict[str, Any] = {name: home.facts[name] for name in given_names(home)}
    for id_ in done:
        if not is_step(id_):
            out.update({r.name: r.value for r in observe(home, id_)})
    return out
