"""Practice homes: a plausible home from a number, with nothing to three things wrong.

A home is a whole job sheet of true facts, put together in the order in which a home comes to be:
place, size, vintage, shell, load, furnace and bills, equipment, trunks, crossover, closet, panel.
Each step takes what it needs from the calculators of the plan, so that the facts agree. Then
faults are planted, and the readings of the visit follow.
"""

from __future__ import annotations

import functools
from dataclasses import dataclass, field, replace
from typing import Any

from downflow.demo import demo_job
from downflow.engine.chain import Study
from downflow.facts.job import Entry, Job
from downflow.physics import (
    air,
    air_path,
    backup,
    climate_year,
    commissioning,
    condensate,
    heat_pump,
    return_path,
    service_load,
)
from downflow.plan import the_chain
from downflow.practice import plant
from downflow.practice.chance import Chance, a_seed
from downflow.practice.climates import DAYS, PLACES, Place, facts_of
from downflow.practice.faults import (
    CALL,
    FAULTS,
    NOTHING_WRONG,
    NOTHING_WRONG_SURVEY,
    SURVEY,
    Fault,
    of_visit,
)
from downflow.units import Quantity

MOST_FAULTS = 3
MINUTES = {SURVEY: 210, CALL: 240}
"""Time at the home. [min]"""


@dataclass(frozen=True)
class Note:
    """A sentence of the survey notes; `{name}` stands for a value in the reader's units."""

    text: str
    values: dict[str, Quantity | str] = field(default_factory=dict)


@dataclass(frozen=True)
class PracticeHome:
    """A practice home, truth and all.

    Attributes:
        seed: Its number.
        visit: `survey`, before anything is ordered, or `call`, a year after the job.
        facts: True facts, as found, readings of the visit among them.
        origins: Where each would come from: `data sheet` or `measured`.
        conditions: What stands on no sheet.
        faults: Ids of the faults planted, in the order of work.
        notes: What the crew is told.
        minutes: Time that it has.
    """

    seed: int
    visit: str
    facts: dict[str, Any]
    origins: dict[str, str]
    conditions: plant.Conditions
    faults: tuple[str, ...]
    notes: tuple[Note, ...]
    minutes: int

    def job(self) -> Job:
        """The home as a job sheet, as found, everything known."""
        return job_of(self.facts, self.origins, self.seed)

    def mended(self) -> PracticeHome:
        """The home with every fault put right."""
        facts, conditions = dict(self.facts), self.conditions
        for id_ in self.faults:
            facts, conditions = mend(id_, facts, conditions)
        facts.update(readings_of(self.visit, facts, conditions))
        return replace(self, facts=facts, conditions=conditions, faults=())


def job_of(facts: dict[str, Any], origins: dict[str, str], seed: int) -> Job:
    """A job sheet of plain values."""
    entries = {name: Entry(value, origins.get(name, "measured"))
               for name, value in facts.items()}
    return Job(f"practice-{seed}", f"Practice home {seed}", entries)


# ---- what homes are made of -------------------------------------------------------------

@dataclass(frozen=True)
class Vintage:
    """What homes of some years were built with."""

    first: int
    last: int
    wall_r: tuple[float, ...]
    stud_in: float
    ceiling_r: tuple[float, ...]
    floor_r: tuple[float, ...]
    windows: tuple[str, ...]
    changes_50: tuple[int, int]


VINTAGES: tuple[Vintage, ...] = (
    Vintage(1976, 1983, (11.0,), 3.5, (14.0, 19.0), (7.0, 11.0),
            ("double clear, metal", "single clear, metal"), (100, 130)),
    Vintage(1984, 1993, (11.0,), 3.5, (19.0, 22.0), (11.0,), ("double clear, metal",), (80, 110)),
    Vintage(1994, 1999, (11.0, 13.0), 3.5, (22.0, 28.0), (11.0, 19.0),
            ("double clear, vinyl or wood",), (60, 85)),
    Vintage(2000, 2008, (19.0,), 5.5, (28.0, 33.0), (19.0, 22.0),
            ("double clear, vinyl or wood",), (45, 70)),
)


@dataclass(frozen=True)
class Room:
    """A room of a layout: shares in thousandths, places of registers in hundredths of a trunk."""

    id: str
    trunk: str
    floor: int
    wall: int
    closes: bool
    toilet: bool
    registers: tuple[int, ...]


LAYOUTS: dict[str, tuple[tuple[Room, ...], ...]] = {
    "double": (
        (Room("living", "A", 230, 190, False, False, (7, 18, 30)),
         Room("dining", "A", 90, 70, False, False, (42,)),
         Room("kitchen", "A", 110, 80, False, False, (64,)),
         Room("utility", "A", 50, 60, False, False, (80,)),
         Room("bed 3", "A", 90, 140, True, False, (95,)),
         Room("master", "B", 160, 180, True, False, (8, 22)),
         Room("master bath", "B", 60, 60, True, True, (38,)),
         Room("den", "B", 90, 80, False, False, (60,)),
         Room("hall bath", "B", 40, 30, True, True, (76,)),
         Room("bed 2", "B", 80, 110, True, False, (93,))),
        (Room("living", "A", 220, 170, False, False, (6, 16, 28)),
         Room("kitchen", "A", 120, 90, False, False, (40, 60)),
         Room("dining", "A", 90, 80, False, False, (74,)),
         Room("bed 2", "A", 100, 130, True, False, (86, 95)),
         Room("bed 3", "B", 90, 140, True, False, (8,)),
         Room("hall bath", "B", 40, 30, True, True, (24,)),
         Room("utility", "B", 60, 60, False, False, (40,)),
         Room("master bath", "B", 80, 90, True, True, (66,)),
         Room("master", "B", 200, 210, True, False, (80, 94))),
    ),
    "single": (
        (Room("bed 2", "A", 130, 150, True, False, (6, 14)),
         Room("hall bath", "A", 60, 50, True, True, (26,)),
         Room("living", "A", 260, 250, False, False, (38, 50)),
         Room("kitchen", "A", 200, 190, False, False, (60, 68)),
         Room("utility", "A", 60, 50, False, False, (76,)),
         Room("master bath", "A", 70, 60, True, True, (84,)),
         Room("master", "A", 220, 250, True, False, (91, 97))),
        (Room("living", "A", 290, 290, False, False, (6, 16, 26)),
         Room("kitchen", "A", 190, 180, False, False, (38, 48)),
         Room("utility", "A", 60, 60, False, False, (58,)),
         Room("hall bath", "A", 60, 50, True, True, (66,)),
         Room("bed 2", "A", 120, 120, True, False, (74, 81)),
         Room("bed 3", "A", 280, 300, True, False, (90, 97))),
    ),
}


@dataclass(frozen=True)
class Unit:
    """An invented size of Model A, in steps of 6,000 Btu/h."""

    tons: float
    unit_a: float
    mca_a: float
    mocp_a: float
    breaker_a: float
    wire: str
    blower_a: float
    kits_kw: tuple[int, ...]


UNITS: tuple[Unit, ...] = (
    Unit(2.0, 13.0, 16.0, 25.0, 20.0, "12", 3.2, (5, 8)),
    Unit(2.5, 16.0, 20.0, 30.0, 25.0, "10", 3.6, (5, 8, 10)),
    Unit(3.0, 20.0, 24.0, 35.0, 30.0, "10", 4.5, (5, 8, 10)),
    Unit(4.0, 26.0, 32.0, 50.0, 40.0, "8", 5.5, (8, 10)),
)
KIT_LABELS: dict[int, tuple[float, float, float, str]] = {
    5: (32.0, 35.0, 35.0, "8"), 8: (49.0, 60.0, 50.0, "6"), 10: (59.0, 70.0, 60.0, "4")}
"""For each kit: circuit ampacity, largest breaker, breaker and wire planned."""
KIT_STAGES = {5: 1.0, 8: 2.0, 10: 2.0}
KIT_AIR_SCFM = {5: 420.0, 8: 480.0, 10: 560.0}
FURNACES_BTUH = (20_000, 25_000, 30_000, 35_000, 40_000, 45_000, 50_000, 56_000, 62_000, 70_000,
                 77_000, 85_000, 94_000, 105_000, 115_000, 125_000, 140_000)
"""Inputs that burners of manufactured homes are sold with, clocked at the meter. [Btu/h]"""
MAINS_A = (100, 125, 150, 200)
SMALL_MAINS_A = (100, 60)
CROSSOVERS_IN = (10.0, 12.0, 14.0, 16.0, 18.0)
FUEL_BTU = {"propane": 91_452.0, "gas": 100_000.0}
FURNACE_ROOM = 1.08
"""A sound furnace's heat at the registers over the design load, at least. [-]"""
CLEAR_A = 15.0
"""A service that is too small is short by so much, whichever kit is taken. [A]"""
KIT_ROOM = 1.15
"""A kit covers so many times what the heat pump leaves short. [-]"""
LEAST_SHARE = 0.5
"""Share of the design night that the heat pump alone covers, at least. [-]"""
MOST_DRAWS = 20
"""Homes that no size of the unit could heat are drawn again, so many times."""
MAIN_ROOM = 1.25
"""A sound home's main over the service load at least: the sum leg by leg comes out higher. [-]"""
CROSSOVER_CLEAR = 0.11
"""A crossover of a sound home leaves the halves no farther off than this. [-]"""
ROOM_CLEAR = 0.8
"""Closed rooms of a sound home stand at this share of their limit. [-]"""


@functools.cache
def _template() -> tuple[dict[str, Any], dict[str, str]]:
    """The worked example's facts, from which a home departs."""
    job = demo_job()
    facts: dict[str, Any] = {}
    origins: dict[str, str] = {}
    for name in sorted(job.names()):
        entry = job.entry(name)
        assert entry is not None
        facts[name] = entry.value
        origins[name] = "data sheet" if entry.origin == "data sheet" else "measured"
    for name in ("kit_planned_kw", "slot_width_in", "slot_height_in", "slot_length_ft",
                 "crossover_second_ft", "certificate_f", "room_loads"):
        facts.pop(name, None)
    return facts, origins


class _Builder:
    """Puts one home together."""

    def __init__(self, seed: int, attempt: int) -> None:
        self.chance = Chance(seed, "home", str(attempt))
        facts, origins = _template()
        self.facts = dict(facts)
        self.origins = dict(origins)
        self.visit = self.chance.pick((SURVEY, CALL))
        self.place: Place = self.chance.pick(PLACES)

    def answer(self, calculator: str) -> dict[str, float]:
        """What a calculator gives for the facts so far."""
        study = Study(the_chain(), job_of(self.facts, self.origins, 0))
        found = study.answer(calculator, ranged=False)
        if not found.ok:
            raise ValueError(f"{calculator}: {found.errors or found.missing}")
        return {name: value.value for name, value in found.values.items()}

    # ---- the home ----

    def shell(self) -> None:
        c, f = self.chance, self.facts
        f.update(facts_of(self.place, c.whole(0, 400, 50)))
        f["station_miles"] = float(c.whole(2, 24))
        double = c.yes(65)
        f["sections"] = "double" if double else "single"
        width = c.pick((24.0, 27.0, 28.0)) if double else c.pick((14.0, 16.0))
        length = float(c.whole(40, 62, 2) if double else c.whole(56, 76, 4))
        f["home_width_ft"], f["home_length_ft"] = width, length
        area = width * length
        f["floor_area_ft2"] = area
        f["ceiling_height_ft"] = c.pick((7.0, 7.5, 7.5, 8.0))
        vintage = c.pick(VINTAGES)
        f["year_built"] = float(c.whole(vintage.first, vintage.last))
        f["wall_insulation_r"] = c.pick(vintage.wall_r)
        f["wall_stud_in"] = vintage.stud_in
        f["ceiling_insulation_r"] = c.pick(vintage.ceiling_r)
        f["ceiling_insulation_in"] = float(round(f["ceiling_insulation_r"] / 2.6))
        f["ceiling_eave_in"] = c.tenths(25, 45)
        f["floor_insulation_r"] = c.pick(vintage.floor_r)
        f["belly_open_pct"] = float(c.whole(0, 3))
        f["window_kind"] = c.pick(vintage.windows)
        windows = float(round(area * c.whole(90, 120) / 1000))
        f["window_area_ft2"] = windows
        north, east, south = (float(round(windows * share / 100)) for share in (
            c.whole(18, 26), c.whole(18, 24), c.whole(26, 34)))
        f["windows_by_side"] = [
            {"side": "N", "area_ft2": north}, {"side": "E", "area_ft2": east},
            {"side": "S", "area_ft2": south, "overhang_ft": 1.0, "height_ft": 4.0},
            {"side": "W", "area_ft2": windows - north - east - south}]
        changes = c.whole(*vintage.changes_50) / 10
        volume = area * f["ceiling_height_ft"]
        f["blower_door_cfm50"] = float(10 * round(changes * volume / 600))
        f["wind_shelter"] = c.pick(("2", "3", "4"))
        f["skirt_height_ft"] = c.tenths(20, 32)
        f["skirting"] = "vented"
        f["bedrooms"] = 2.0 if not double and area < 1000 else 3.0
        f["range_fuel"] = c.pick(("electric", "electric", "propane"))
        f["dryer_fuel"] = "electric"
        f["water_heater_fuel"] = c.pick(("propane", "propane", "electric"))
        f["closet_burner"] = "none"
        f["co_alarm"] = f["smoke_alarms"] = True

    def loads(self) -> None:
        """Furnace, bills and one night: what the true loss leaves behind."""
        c, f = self.chance, self.facts
        f["duct_state"] = "sealed"
        f["delivery_before_pct"] = float(c.whole(78, 84))
        survey = self.answer("heat-loss")
        self.true_ua = survey["survey_ua_btuh_f"] * c.whole(96, 104) / 100
        f["heating_fuel"] = c.pick(("propane", "propane", "gas"))
        f["furnace_efficiency_pct"] = c.pick((78.0, 80.0, 80.0))
        f["gas_usd_therm"] = c.hundredths(95, 160)
        f["propane_usd_gal"] = c.hundredths(230, 340)
        f["electricity_usd_kwh"] = c.hundredths(11, 17)
        self.night = (float(c.whole(8, 14)), float(c.pick((420, 480, 540))))
        self.base = (c.tenths(600, 630), c.hundredths(25, 60))
        self.scatter = [c.whole(-18, 18) / 1000 for _ in DAYS]

    def leave_bills(self) -> None:
        """The fuel of twelve months and one night's burner time, from true loss and ducts."""
        f = self.facts
        delivered = f["delivery_before_pct"] / 100
        efficiency = f["furnace_efficiency_pct"] / 100
        means = [row["mean_f"] for row in f["monthly_means"]]
        spread = climate_year.yearly_spread_f(means)
        base_f, base_use = self.base
        per_degree_day = 24 * self.true_ua / delivered / efficiency / FUEL_BTU[f["heating_fuel"]]
        rows = []
        for n, (mean, days, off) in enumerate(zip(means, DAYS, self.scatter, strict=True), 1):
            cold = climate_year.heating_degree_days(
                base_f, mean, climate_year.monthly_spread_f(mean, spread), days)
            units = (per_degree_day * cold + base_use * days) * (1 + off)
            rows.append({"days": float(days), "units": round(units, 1), "month": float(n)})
        f["fuel_periods"] = rows
        colder, minutes = self.night
        indoor, outdoor = 69.0, f["design_heating_f"] + colder
        asked = self.true_ua * (indoor - outdoor) - 1500.0
        share = asked / delivered / (f["furnace_input_btuh"] * efficiency)
        f["night_indoor_f"], f["night_outdoor_f"] = indoor, outdoor
        f["night_minutes"] = minutes
        f["burner_minutes"] = float(max(1, round(minutes * share)))

    def furnace(self, least: float) -> None:
        """The smallest furnace whose output is at least so many times the load."""
        f = self.facts
        load = self.true_ua * (f["indoor_design_f"] - f["design_heating_f"])
        efficiency = f["furnace_efficiency_pct"] / 100
        need = least * load / (f["delivery_before_pct"] / 100)
        f["furnace_input_btuh"] = float(next(
            (b for b in FURNACES_BTUH if b * efficiency >= need), FURNACES_BTUH[-1]))

    # ---- the equipment ----

    def equipment(self) -> bool:
        """Chooses a unit and its kit; says whether the two hold the home."""
        c, f = self.chance, self.facts
        load = self.true_ua * (f["indoor_design_f"] - f["design_heating_f"]) / 0.83
        template = _template()[0]
        factor = float(round(100 - 1.13 * self.place.elevation_ft / 1000))
        unit, made = UNITS[-1], 0.0
        for one in UNITS:
            size = one.tons / 3
            design = f["design_heating_f"]
            points = template["hp_points"]
            cold = size * factor / 100 * heat_pump.interpolate(
                [p["outdoor_f"] for p in points], [p["capacity_max_btuh"] for p in points],
                design).value
            unit, made = one, cold
            if cold >= 0.62 * load and load - cold < 3412 * 0.9 * one.kits_kw[-1]:
                break
        size = unit.tons / 3
        self.unit = unit
        f["hp_points"] = [
            {"outdoor_f": p["outdoor_f"], **{
                name: float(round(p[name] * size)) for name in (
                    "capacity_max_btuh", "power_max_w", "capacity_min_btuh", "power_min_w")}}
            for p in template["hp_points"]]
        f["hp_altitude_factor_pct"] = factor
        f["rating_cooling_95f_btuh"] = float(round(34_000 * size))
        f["rating_points"] = [{"test": p["test"], "capacity_btuh": float(round(
            p["capacity_btuh"] * size)), "power_w": float(round(p["power_w"] * size))}
            for p in template["rating_points"]]
        f["kit_sizes"] = [{"kit_kw": float(k), "stages": KIT_STAGES[k],
                           "least_scfm": KIT_AIR_SCFM[k]} for k in unit.kits_kw]
        f["supply_v"] = float(c.whole(238, 243))
        f["volts_load_on"] = f["supply_v"]
        f["volts_load_off"] = f["supply_v"] + c.tenths(10, 25)
        f["outdoor_unit_a"], f["outdoor_mca_a"] = unit.unit_a, unit.mca_a
        f["outdoor_mocp_a"], f["outdoor_breaker_a"] = unit.mocp_a, unit.breaker_a
        f["outdoor_wire"], f["indoor_blower_a"] = unit.wire, unit.blower_a
        f["charge_factory_lb"] = round(7.5 * size, 2)
        f["lineset_ft"] = float(c.whole(28, 60))
        f["charge_rate_oz_ft"] = template["charge_rate_oz_ft"]
        f["charge_weighed_oz"] = round((f["lineset_ft"] - 25) * f["charge_rate_oz_ft"], 1)
        f["unit_base_in"] = f["snow_in"] + 4.0
        f["window_ft"], f["neighbor_ft"] = float(c.whole(28, 40)), float(c.whole(60, 140, 5))
        f["sound_power_dba"] = float(c.whole(61, 64))
        f["melt_way"] = "gravel"
        f["installed_usd"] = float(round(14_500 * (0.6 + 0.4 * size), -2))
        rated = max(f["rating_cooling_95f_btuh"],
                    *(p["capacity_max_btuh"] for p in f["hp_points"]))
        standard = f["airflow_per_12000_scfm"] * rated * factor / 100 / 12_000
        here = air.density_lb_ft3(f["elevation_ft"], plant.INDOOR_HEATING_F)
        target = float(round(air.actual_cfm(standard, here)))
        self.airflow = target
        f["heating_airflow_cfm"] = f["fan_set_cfm"] = target
        f["old_airflow_cfm"] = target
        f["cooling_airflow_cfm"] = float(round(0.95 * target))
        f["hp_low_airflow_cfm"] = float(round(0.62 * target))
        f["leak_airflow_cfm"] = float(round(0.8 * target))
        f["drops_at_cfm"] = float(round(1.15 * target))
        f["fan_table"] = [
            {"static_inwc": s, "airflow_cfm": target - fall, "power_w": float(round(w * size))}
            for s, w, fall in ((0.2, 175, 0.0), (0.4, 245, 0.0), (0.6, 320, 0.0), (0.8, 400, 5.0))]
        f["filters"] = [
            {"kind": "thin", "width_in": 20.0, "height_in": 20.0, "clean_inwc": 0.22,
             "at_cfm": float(round(0.95 * target)), "loaded_inwc": 0.5},
            {"kind": "deep", "width_in": 20.0, "height_in": 25.0, "clean_inwc": 0.12,
             "at_cfm": float(round(1.15 * target)), "loaded_inwc": 0.3}]
        f["coil_face_in2"] = float(round(452 * max(0.8, size)))
        f["blower_watts"] = float(round(0.22 * target))
        need = KIT_ROOM * backup.kw_of_btuh(backup.shortfall_btuh(load, made))
        volts = backup.kw_at_voltage(1.0, f["kit_rated_v"], f["supply_v"])
        kit = backup.smallest_kit_kw([volts * k for k in unit.kits_kw], need)
        self.kit = unit.kits_kw[-1] if kit is None else round(kit / volts)
        if self.visit == CALL:
            mca, largest, breaker, wire = KIT_LABELS[self.kit]
            f["kit_label_mca_a"], f["kit_label_breaker_a"] = mca, largest
            f["kit_breaker_planned_a"], f["kit_wire_planned"] = breaker, wire
            f["kit_planned_kw"] = float(self.kit)
        else:  # Which kit is one of the questions; its label comes with it.
            for name in ("kit_label_mca_a", "kit_label_breaker_a", "kit_breaker_planned_a",
                         "kit_wire_planned"):
                f.pop(name, None)
        return kit is not None and made >= LEAST_SHARE * load

    # ---- the air path ----

    def path(self) -> None:
        c, f = self.chance, self.facts
        double = f["sections"] == "double"
        rooms = c.pick(LAYOUTS[f["sections"]])
        mirrored = c.yes(50)
        long = f["home_length_ft"] - 6.0
        feed = float(c.whole(45, 55)) / 100
        wide, high = c.pick(((14.0, 5.0), (15.0, 5.0), (16.0, 5.0)))
        if not double:
            wide, high = c.pick(((14.0, 6.0), (16.0, 6.0), (14.0, 7.0)))

        def along(share: float) -> float:
            return float(round(long * (1 - share if mirrored else share), 1))

        f["trunks"] = [
            {"id": name, "width_in": wide, "height_in": high, "length_ft": long,
             "feed_ft": along(feed), "material": "galvanized", "under_box": name == "A"}
            for name in ("AB" if double else "A")]
        area = f["floor_area_ft2"]
        wall = 2 * (f["home_width_ft"] + f["home_length_ft"]) * f["ceiling_height_ft"]
        rows, registers = [], []
        big = c.pick((0, 2)) if area > 1400 else 0
        for room in rooms:
            row: dict[str, Any] = {
                "id": room.id, "floor_area_ft2": float(round(area * room.floor / 1000)),
                "outside_wall_ft2": float(round(wall * room.wall / 1000)),
                "closes": room.closes, "toilet": room.toilet}
            if room.closes:
                row.update(door_width_in=28.0, undercut_in=0.75, undercut_deck_in=1.25,
                           transfer_in2=0.0)
            rows.append(row)
            for share in room.registers:
                registers.append((room.trunk, along(share / 100), room.id))
        f["rooms"] = rows
        f["registers"] = [
            {"id": str(n), "trunk": trunk, "room": room, "at_ft": at, "width_in": 4.0,
             "length_in": 10.0 + big}
            for n, (trunk, at, room) in enumerate(
                sorted(registers, key=lambda r: (r[0], r[1])), 1)]
        tight = c.whole(32, 55) / 1000
        f["leakage_cfm25"] = float(round(area * tight))
        f["leakage_before_cfm25"] = f["leakage_cfm25"] + float(c.whole(40, 120, 10))
        f["crossover_found"] = "round" if double else "none"
        f["crossover_sound"] = "sound"
        f["crossover_length_ft"] = float(c.whole(10, 14))
        f["crossover_bends"] = 2.0
        f["crossover_compression_pct"] = 4.0
        f["crossover_sag_in"], f["crossover_support_ft"] = 1.5, 4.0
        f["louver_face_in2"] = float(c.whole(1200, 1500, 20))
        f["closet_width_in"] = c.tenths(245, 290)
        f["closet_depth_in"] = c.tenths(270, 310)
        if double:
            self._crossover()
        else:
            f["found_diameter_in"] = 12.0
        self.origins["found_diameter_in"] = "measured"
        self._ways_back()

    def _crossover(self) -> None:
        """The smallest round crossover that feeds both halves with something to spare."""
        f = self.facts
        loads = None
        shares = air_path.load_shares(f["rooms"], loads)
        for size in CROSSOVERS_IN:
            f["found_diameter_in"] = size
            found = plant.air_of(f, plant.Conditions(filter_loading=0.0), self.airflow)
            job = plant.known({**f, "air_target_cfm": self.airflow})
            base = air_path.base_path(job, found.density_lb_ft3, plant.roughness())
            load = air_path.far_load_share(base, shares)
            off = max(abs(found.far_share / load - 1),
                      abs((1 - found.far_share) / (1 - load) - 1))
            if off <= CROSSOVER_CLEAR:
                return

    def _ways_back(self) -> None:
        """Transfer openings that keep each closed room within its limit."""
        f = self.facts
        found = plant.air_of(f, plant.Conditions(filter_loading=0.0), self.airflow)
        shares = air_path.load_shares(f["rooms"], None)
        gets: dict[str, float] = {}
        for row in f["registers"]:
            gets[row["room"]] = gets.get(row["room"], 0.0) + found.flows.register_cfm[row["id"]]
        rows = []
        for row in f["rooms"]:
            if row["closes"]:
                # Open, or once the dampers give it its share of the load.
                flow = 1.3 * max(gets.get(row["id"], 0.0),
                                 shares[row["id"]] * self.airflow) + 15.0
                limit = ROOM_CLEAR * return_path.room_limit_pa(flow)
                need = return_path.transfer_area_in2(flow, limit, found.density_lb_ft3)
                under = return_path.undercut_area_in2(row["door_width_in"], row["undercut_in"])
                hud = row["floor_area_ft2"] / 5
                row = {**row, "transfer_in2": float(5 * round((max(need - under, hud) + 5) / 5))}
            rows.append(row)
        f["rooms"] = rows

    # ---- the panel ----

    def panel(self) -> None:
        c, f = self.chance, self.facts
        rows: list[dict[str, Any]] = []
        if f["range_fuel"] == "electric":
            rows.append({"id": "range", "appliance": "range", "va": float(c.whole(95, 120) * 100),
                         "leg": "both"})
        rows.append({"id": "dryer", "appliance": "dryer", "va": 5000.0, "leg": "both"})
        if f["water_heater_fuel"] == "electric":
            rows.append({"id": "water heater", "appliance": "water heater", "va": 4500.0,
                         "leg": "both"})
        rows.append({"id": "dishwasher", "appliance": "dishwasher", "va": 1200.0, "leg": "A"})
        f["appliances"] = rows
        f["panel_spaces_free"] = float(c.whole(4, 8))
        f["panel_spaces_freed"] = 1.0
        general = service_load.existing_general_va(service_load.general_va(
            f["floor_area_ft2"], f["kitchen_circuits"], f["laundry_circuits"],
            sum(row["va"] for row in rows)))
        heat = service_load.existing_heat_va(
            240 * self.unit.unit_a, 1000.0 * self.kit, 240 * self.unit.blower_a, together=True)
        self.service_a = service_load.amps(general + heat, 240.0)
        f["main_breaker_a"] = float(next(
            (a for a in MAINS_A if a >= MAIN_ROOM * self.service_a), MAINS_A[-1]))

    # ---- the visit ----

    def outdoors(self) -> plant.Conditions:
        c = self.chance
        return plant.Conditions(
            filter_loading=c.hundredths(5, 35) if self.visit == CALL else 0.0,
            outdoor_f=float(c.whole(62, 74)))



# ---- planting and mending ---------------------------------------------------------------

def _plant(one: Fault, made: _Builder, conditions: plant.Conditions) -> plant.Conditions:
    """Makes a fault true of a home; what it changes besides follows later."""
    c, f = made.chance, made.facts
    if one.id == "open-fuel-line":
        f["fuel_line_capped"] = False
    elif one.id == "dead-alarm":
        f["co_alarm"] = False
        f["water_heater_fuel"] = "propane"
    elif one.id == "panel-too-small":
        f["main_breaker_a"] = float(next(a for a in SMALL_MAINS_A if a < made.service_a - CLEAR_A))
    elif one.id == "dry-trap":
        if c.yes(60):
            f["trap_state"] = "dry"
        else:
            f["trap_place"] = "none"
    elif one.id == "melt-to-walk":
        f["melt_way"] = c.pick(("walk", "home"))
    elif one.id == "open-vent":
        f["vent_state"] = c.pick(("open", "stuffed"))
    elif one.id == "no-crossover":
        f["crossover_found"] = "none"
        f["crossover_planned_count"] = 0.0
        made.origins["crossover_planned_count"] = "measured"
    elif one.id == "crushed-crossover":
        f["crossover_sound"] = "bad"
        return replace(conditions, crossover_open=c.hundredths(8, 18))
    elif one.id == "choked-return":
        # As much as leaves the closet three to five times the limit below the home.
        wanted = plant.closet_limit_pa() * c.tenths(25, 45)
        open_now = plant.air_of(f, conditions, made.airflow).closet_pa
        share = (open_now / wanted) ** 0.5
        free = max(5.0, float(round(f["louver_free_pct"] * share)))
        f["louver_face_in2"] = float(round(
            f["louver_face_in2"] * f["louver_free_pct"] * share / free))
        f["louver_free_pct"] = free
    elif one.id == "loaded-filter":
        return replace(conditions, filter_loading=c.hundredths(95, 140))
    elif one.id == "leaky-ducts":
        f["leakage_cfm25"] = float(round(f["floor_area_ft2"] * c.whole(130, 190) / 1000))
        f["leakage_before_cfm25"] = f["leakage_cfm25"]
        f["duct_state"] = "as found"
        f["delivery_before_pct"] = float(c.whole(60, 66))
        made.furnace(FURNACE_ROOM)
    elif one.id == "oversized-furnace":
        made.furnace(c.hundredths(185, 240))
    elif one.id == "backup-always-on":
        f["aux_lockout_set_f"] = float(c.whole(60, 68, 2))
        return replace(conditions, backup_stuck=True)
    elif one.id == "wrong-charge":
        share = c.hundredths(78, 90) if c.yes(60) else c.hundredths(112, 124)
        return replace(conditions, charge_share=share)
    return conditions


def mend(id_: str, facts: dict[str, Any],
         conditions: plant.Conditions) -> tuple[dict[str, Any], plant.Conditions]:
    """The home with one fault put right, as its procedure does it."""
    f = dict(facts)
    if id_ == "open-fuel-line":
        f["fuel_line_capped"] = True
    elif id_ == "dead-alarm":
        f["co_alarm"] = True
    elif id_ == "panel-too-small":
        f["main_breaker_a"] = 200.0
    elif id_ == "dry-trap":
        f["trap_state"], f["trap_place"] = "primed", "closet"
    elif id_ == "melt-to-walk":
        f["melt_way"] = "gravel"
    elif id_ == "open-vent":
        f["vent_state"] = "gone"
    elif id_ == "no-crossover":
        f["crossover_found"], f["crossover_sound"] = "round", "sound"
        f.pop("crossover_planned_count", None)
    elif id_ == "crushed-crossover":
        f["crossover_sound"] = "sound"
        conditions = replace(conditions, crossover_open=1.0)
    elif id_ == "choked-return":
        f["louver_face_in2"], f["louver_free_pct"] = 1380.0, 60.0
    elif id_ == "loaded-filter":
        conditions = replace(conditions, filter_loading=0.0)
    elif id_ == "leaky-ducts":
        f["leakage_cfm25"] = float(round(0.045 * f["floor_area_ft2"]))
        f["duct_state"] = "sealed"
    elif id_ == "oversized-furnace":
        pass  # The furnace goes; the heat pump is sized by the load, which the plan has found.
    elif id_ == "backup-always-on":
        f["aux_lockout_set_f"] = 35.0
        conditions = replace(conditions, backup_stuck=False)
    elif id_ == "wrong-charge":
        conditions = replace(conditions, charge_share=1.0)
    else:
        raise ValueError(f"nothing mends {id_!r}")
    return f, conditions


def readings_of(visit: str, facts: dict[str, Any],
                conditions: plant.Conditions) -> dict[str, Any]:
    """The readings of the visit that stand on a job sheet, as instruments round them."""
    flow = float(facts["fan_set_cfm"] if visit == CALL else facts["old_airflow_cfm"])
    found = plant.air_of(facts, conditions, flow)
    out: dict[str, Any] = {"static_found_inwc": round(found.supply_inwc + found.return_inwc, 2)}
    if visit == SURVEY:
        return out
    out["static_supply_inwc"] = round(found.supply_inwc, 2)
    out["static_return_inwc"] = round(found.return_inwc, 2)
    volts = facts["supply_v"] - 2.0
    values = {**facts, "kit_volts": volts}
    out["kit_volts"] = volts
    out["kit_amps"] = round(plant.kit_amps(values), 1)
    out["clamp_holds_blower"] = False
    out["rise_return_f"] = 68.0
    out["rise_supply_f"] = round(68.0 + plant.kit_rise_f(values, found), 1)
    gauges = plant.gauges_of(facts, conditions, found)
    out["suction_psig"] = float(round(gauges.suction_psig))
    out["suction_line_f"] = round(gauges.suction_line_f, 1)
    out["liquid_psig"] = float(round(gauges.liquid_psig))
    out["liquid_line_f"] = round(gauges.liquid_line_f, 1)
    out["charge_outdoor_f"] = out["commission_outdoor_f"] = conditions.outdoor_f
    out["charge_minutes"] = 20.0
    out["outdoor_amps"] = round(gauges.state.power_w / (volts * plant.POWER_FACTOR), 1)
    out["blower_amps"] = round(found.fan_w / (volts * plant.POWER_FACTOR), 1)
    out["cool_split_return_f"] = plant.INDOOR_COOLING_F
    out["cool_split_supply_f"] = round(gauges.state.supply_f, 1)
    suction = found.return_inwc + 0.3
    out["pan_suction_read_inwc"] = round(suction, 2)
    out["panel_volts_kit_on"] = round(volts + 1.4, 1)
    out["kit_volts_drop"] = volts
    return out


def drain_air_cfm(facts: dict[str, Any]) -> float:
    """Air that comes in through the drain: none through a trap full of water."""
    if facts["trap_state"] != "dry" and facts["trap_place"] != "none":
        return 0.0
    return condensate.open_drain_cfm(facts["pan_suction_read_inwc"], 0.824)


def heat_call_amps(facts: dict[str, Any], conditions: plant.Conditions) -> float:
    """Current of the kit while the heat pump alone is asked for. [A]"""
    if not conditions.backup_stuck:
        return 0.0
    return commissioning.element_amps(facts["kit_planned_kw"], facts["kit_rated_v"],
                                      facts["kit_volts"])


def closet_pa(home: PracticeHome) -> float:
    """How far the closet stands below the home, blower on. [Pa]"""
    return air_now(home).closet_pa


@functools.lru_cache(maxsize=16)
def _air_now(seed: int, mended: bool) -> plant.Air:
    one = home(seed).mended() if mended else home(seed)
    flow = one.facts["fan_set_cfm"] if one.visit == CALL else one.facts["old_airflow_cfm"]
    return plant.air_of(one.facts, one.conditions, float(flow))


def air_now(one: PracticeHome) -> plant.Air:
    """The air side of a home at the visit."""
    return _air_now(one.seed, not one.faults and bool(home(one.seed).faults))


# ---- a home -----------------------------------------------------------------------------

CANNOT_STAND_TOGETHER = (frozenset(("no-crossover", "crushed-crossover")),
                         frozenset(("oversized-furnace", "leaky-ducts")))
COUNTS = (0, 0, 1, 1, 1, 1, 2, 2, 2, 3)
"""How many faults a home has: a draw from these."""


@functools.lru_cache(maxsize=32)
def home(seed: int) -> PracticeHome:
    """The practice home of a number.

    Raises:
        ValueError: The number is none.
    """
    for attempt in range(MOST_DRAWS):
        made = _Builder(a_seed(seed), attempt)
        made.shell()
        made.loads()
        made.furnace(FURNACE_ROOM)
        if made.equipment():
            break
    made.path()
    made.panel()
    conditions = made.outdoors()
    chosen = _choose(made)
    for one in sorted(chosen, key=lambda f: f.id != "leaky-ducts"):
        conditions = _plant(one, made, conditions)
    made.leave_bills()
    facts = made.facts
    facts.update(_of_visit(made))
    if made.visit == CALL:
        facts.update(readings_of(CALL, facts, conditions))
    else:
        facts.update(readings_of(SURVEY, facts, conditions))
    ordered = tuple(f.id for f in sorted(chosen, key=lambda f: (f.rank, FAULTS.index(f))))
    return PracticeHome(seed, made.visit, facts, made.origins, conditions, ordered,
                        tuple(_notes(made, chosen, conditions)), MINUTES[made.visit])


def _choose(made: _Builder) -> list[Fault]:
    c, f = made.chance, made.facts
    possible = [one for one in of_visit(made.visit)
                if (f["sections"] == "double" or "crossover" not in one.id)
                and (one.id != "panel-too-small"
                     or any(a < made.service_a - CLEAR_A for a in SMALL_MAINS_A))]
    count = c.pick(COUNTS)
    chosen: list[Fault] = []
    while possible and len(chosen) < count:
        one = c.pick(possible)
        possible = [p for p in possible if p is not one and not any(
            {p.id, one.id} <= pair for pair in CANNOT_STAND_TOGETHER)]
        chosen.append(one)
    return chosen


VISIT_ONLY = ("static_supply_inwc", "static_return_inwc", "kit_volts", "kit_amps",
              "clamp_holds_blower", "rise_return_f", "rise_supply_f", "suction_psig",
              "suction_line_f", "liquid_psig", "liquid_line_f", "charge_outdoor_f",
              "charge_minutes", "outdoor_amps", "blower_amps", "cool_split_return_f",
              "cool_split_supply_f", "pan_suction_read_inwc", "panel_volts_kit_on",
              "kit_volts_drop", "commission_outdoor_f")


def _of_visit(made: _Builder) -> dict[str, Any]:
    """What is there at the visit and what is not yet."""
    f = made.facts
    if made.visit == SURVEY:
        for name in (*VISIT_ONLY, "fuel_line_capped", "fuel_capped_by", "fuel_capped_on"):
            f.pop(name, None)
        # Planned with the job, and read at no survey: the job as the crew would leave it.
        return {"fuel_line_capped": True, "fuel_capped_by": "gas fitter"}
    return {"aux_lockout_set_f": f.get("aux_lockout_set_f", 35.0)
            if f.get("aux_lockout_set_f", 0.0) >= 60 else 35.0}


def _notes(made: _Builder, chosen: list[Fault],
           conditions: plant.Conditions) -> list[Note]:
    c, f = made.chance, made.facts
    out = [Note(
        "{kind}-section home of {year}, {width} by {length}, at {place}, {height} up. Winter "
        "design {cold}.",
        {"kind": str(f["sections"]).capitalize(), "year": f"{f['year_built']:.0f}",
         "width": Quantity(f["home_width_ft"], "ft", 0),
         "length": Quantity(f["home_length_ft"], "ft", 0), "place": made.place.name,
         "height": Quantity(f["elevation_ft"], "ft", 0),
         "cold": Quantity(f["design_heating_f"], "°F", 0)})]
    if made.visit == SURVEY:
        out.append(Note("First visit. A {fuel} furnace blows down into the belly ducts. The offer "
                        "is for Model A, {size} at {warm}, with its kit: the data sheet is with "
                        "the papers.",
                        {"fuel": f["heating_fuel"],
                         "size": Quantity(max(p["capacity_max_btuh"] for p in f["hp_points"]),
                                          "Btu/h", 0), "warm": Quantity(47.0, "°F", 0)}))
    else:
        out.append(Note("Another crew took the {fuel} furnace out a year ago and put in Model A "
                        "with a kit of {kit}. It is {now} outside today.",
                        {"fuel": f["heating_fuel"], "kit": Quantity(f["kit_planned_kw"], "kW", 0),
                         "now": Quantity(conditions.outdoor_f, "°F", 0)}))
    calm = NOTHING_WRONG if made.visit == CALL else NOTHING_WRONG_SURVEY
    said = c.pick(chosen).owner if chosen and c.yes(70) else c.pick(calm)
    out.append(Note("The owner says: “{said}”", {"said": said}))
    return out

