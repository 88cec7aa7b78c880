"""The commissioning record.

Every reading that must be taken before the crew leaves: what it was, what it may be in
this home at this outdoor temperature, and whether the meter is good enough to tell. A
reading is taken, or due, or does not apply. What is due needs other weather and a date;
until then the charge rests on what was weighed in.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.engine.paper import Level
from downflow.facts import fact
from downflow.facts.commissioning import (
    AIRFLOW_BAND,
    ALARMS,
    CHARGE_LABEL,
    CHARGE_WEATHER,
    COIL_COLD,
    CONDENSING,
    COOLING_SPLIT,
    DOOR_PRESSURE,
    ELEMENT_AMPS,
    FUNCTION_TEST,
    HEATING_SPLIT,
    LOCKOUT,
    OWN_LIMIT,
    RELEASED_GAS,
    RETURN_VISIT,
    RISE_BAND,
    RUNNING_AMPS,
    RUNNING_DROP,
    STATIC_LABEL,
    TORQUE,
    TRAP_SEAL,
    VOLT_RANGE,
)
from downflow.facts.pressure_test import NITROGEN, VACUUM_PASS
from downflow.physics import air, commissioning, heat_pump
from downflow.sources import ARITHMETIC, LOCAL_CODE, SENSIBLE_HEAT, STANDARD_ATMOSPHERE, Source

CALCULATOR = Calculator(
    id="commissioning-record",
    title="Commissioning record",
    phase="commission",
    question="Is every reading taken, and is each what it should be?",
    reads=("commission_outdoor_f", "elevation_ft"),
    may_read=(
        "kit_volts", "kit_volts_drop", "panel_volts_kit_on", "kit_amps", "clamp_holds_blower",
        "blower_amps", "static_supply_inwc", "static_return_inwc", "rise_return_f",
        "rise_supply_f", "blower_watts", "cool_split_return_f", "cool_split_supply_f",
        "heat_split_return_f", "heat_split_supply_f", "heat_split_outdoor_f",
        "charge_outdoor_f", "charge_weighed_oz", "outdoor_amps", "torque_set_lbfin",
        "torque_label_lbfin", "pan_suction_read_inwc", "door_pressure_pa", "aux_lockout_set_f",
        "compressor_lockout_set_f", "mode_test", "defrost_test", "float_test", "drain_test",
        "limit_test", "detector_test", "fuel_line_capped", "co_alarm", "smoke_alarms",
        "commissioned_by", "return_on",
        "kit_rated_v", "kit_chosen_kw", "static_rated_inwc", "airflow_read_cfm",
        "air_target_cfm", "hp_points", "hp_altitude_factor_pct", "hp_cutout_f", "hp_balance_f",
        "subcooling_f", "target_subcooling_f", "subcooling_band_f", "superheat_f",
        "target_superheat_f", "superheat_band_f", "suction_dew_f", "liquid_bubble_f",
        "charge_change_oz", "nitrogen_missing_psi", "nitrogen_allowed_psi", "vacuum_end_micron",
        "vacuum_limit_micron", "outdoor_unit_a", "indoor_blower_a", "trap_holds_inwc",
        "leak_detector", "heating_fuel", "water_heater_fuel", "range_fuel", "dryer_fuel",
        "stove_fuel"),
    gives=("record_due", "record_taken", "record_off", "expect_kit_a", "expect_rise_f",
           "expect_split_f", "record_table"),
)

COOLING_F = (55.0, 115.0)
HEATING_HIGH_F = 50.0
LOWEST_F = -40.0
VOLT_SHARE = 0.10
DROP_PCT = 3.0
AMP_SHARE = 0.05
AIRFLOW_SHARE = 0.15
SPLIT_F = (16.0, 22.0)
HEAT_SPLIT_SHARE = 0.20
USUAL_SUBCOOLING_F = (8.0, 12.0)
USUAL_SUPERHEAT_F = (5.0, 15.0)
COIL_F = (32.0, 55.0)
CONDENSING_F = (8.0, 35.0)
WEIGHED_OZ = 1.0
TORQUE_SHARE = 0.10
DOOR_PA = 3.0
AUX_HIGH_F = 40.0
ELECTRICIAN = "licensed electrician"
GAS_FITTER = "licensed gas fitter"
FUELS = ("propane", "gas", "oil", "wood", "natural gas")

Band = tuple[float | None, float | None]


@dataclass(frozen=True)
class Reading:
    """One line of the record.

    Attributes:
        id: Its name among the verdicts.
        words: Its name for a reader.
        source: Whose range it is.
        value: What was read; `None` while it is due.
        unit, decimals: Of the value and its range.
        band: Least and most that it may be; `None` where that cannot be said yet.
        weather: `any`, `cooling` or `heating`: the weather in which it can be taken.
        outdoor: The outdoor temperature at which it was taken, where that counts. [°F]
        must: Whether the system may not be left running without it.
        beyond: The level outside its range.
        signs: Who signs, where the best is a `look`.
        do: What to do when it lies outside.
        doubt: Half-width of the reading, by the meter.
        applies: Whether it belongs to this job.
        passed: For a test: whether it passed.
    """

    id: str
    words: str
    source: Source
    value: float | None = None
    unit: str = ""
    decimals: int = 0
    band: Band | None = None
    weather: str = "any"
    outdoor: float | None = None
    must: bool = False
    beyond: Level = "hold"
    signs: str = ""
    do: str = ""
    doubt: float | None = None
    applies: bool = True
    passed: bool | None = None
    test: bool = False

    @property
    def taken(self) -> bool:
        """Whether there is anything to judge."""
        return self.passed is not None if self.test else self.value is not None


def solve(job: Readings, paper: Paper) -> None:
    _refusals(job)
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (70 + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, 70.0),
        z=job.elevation_ft, what="Density of room air at this elevation")
    readings = [*_power(job, paper), *_air(job, paper, density), *_charge(job, paper),
                *_settings(job), *_tests(job)]
    heating = (job.hp_cutout_f if job.hp_cutout_f is not None else LOWEST_F, HEATING_HIGH_F)
    windows = {"cooling": COOLING_F, "heating": heating, "any": (LOWEST_F, 125.0)}
    due = [r for r in readings if r.applies and not r.taken]
    taken = [r for r in readings if r.applies and r.taken]
    off = [r for r in readings if not r.applies]
    paper.give("record_due", paper.total("Readings still due", ARITHMETIC, "", len(due),
                                         [(r.words, 1.0) for r in due] or [("none", 0.0)]))
    paper.give("record_taken", len(taken))
    paper.give("record_off", len(off))
    ordered = sorted(due, key=lambda r: not r.must) + taken + off
    paper.give_table("record_table", [_row(r, windows[r.weather]) for r in ordered])
    paper.draw(taken=[(r.words, r.value, r.band) for r in taken
                      if r.value is not None and r.band is not None])
    waits = [r for r in due if not r.must and not _now(job, windows[r.weather])]
    for reading in readings:
        if reading.applies and reading not in waits:
            _judge(job, paper, reading, windows[reading.weather])
    _close(job, paper, due, waits, windows)


def _refusals(job: Readings) -> None:
    def pair(high: str, low: str, message: str) -> None:
        above, below = getattr(job, high), getattr(job, low)
        if above is not None and below is not None:
            job.refuse_unless(above > below, high, message)

    pair("rise_supply_f", "rise_return_f",
         "must be warmer than the air into the cabinet. Were the two probes swapped?")
    pair("cool_split_return_f", "cool_split_supply_f",
         "must be warmer than the air out of the cabinet in cooling. Were the two swapped?")
    pair("heat_split_supply_f", "heat_split_return_f",
         "must be warmer than the air into the cabinet. Is it in cooling or defrost?")
    if job.panel_volts_kit_on is not None and job.kit_volts_drop is not None:
        job.refuse_unless(job.kit_volts_drop <= job.panel_volts_kit_on + 1.0, "kit_volts_drop",
                          "is above the voltage at the panel. Were the two swapped?")
    target, read = job.torque_label_lbfin, job.torque_set_lbfin
    if target is not None and read is not None:
        job.refuse_unless(0.2 < read / target < 5, "torque_set_lbfin",
                          "is not near the label's torque. Is one of them in N m?")


# ---- the lines ------------------------------------------------------------------------------

def _spread(job: Readings, name: str) -> float | None:
    """How far off a reading may be by its meter."""
    value = getattr(job, name)
    if value is None:
        return None
    low, high = fact(name).spread_of(job.origin(name)).ends(value)
    return (high - low) / 2 or None


def _together(*parts: float | None) -> float | None:
    known = [p for p in parts if p]
    return math.sqrt(sum(p * p for p in known)) if known else None


def _share(job: Readings, volts: float | None) -> float | None:
    """A doubt in volts as a share of the panel's voltage. [%]"""
    panel = job.panel_volts_kit_on
    return None if volts is None or panel is None else 100 * volts / panel


def _around(middle: float | None, part: float) -> Band | None:
    return None if middle is None else (middle * (1 - part), middle * (1 + part))


def _near(middle: float | None, width: float) -> Band | None:
    return None if middle is None else (middle - width, middle + width)


def _most(limit: float | None) -> Band | None:
    return None if limit is None else (None, limit)


def _minus(a: float | None, b: float | None) -> float | None:
    return None if a is None or b is None else a - b


def _power(job: Readings, paper: Paper) -> list[Reading]:
    kit = job.kit_chosen_kw is None or job.kit_chosen_kw > 0
    drop = None
    if job.kit_volts_drop is not None and job.panel_volts_kit_on is not None:
        drop = paper.step("d = 100 * (Vp - Vk) / Vp", RUNNING_DROP, "%",
                          commissioning.drop_pct(job.kit_volts_drop, job.panel_volts_kit_on),
                          Vp=job.panel_volts_kit_on, Vk=job.kit_volts_drop,
                          what="Voltage lost between panel and kit, all elements on")
    amps = None
    if None not in (job.kit_chosen_kw, job.kit_rated_v, job.kit_volts) and kit:
        amps = paper.step("i = 1000 * K * V / Vr ** 2", ELEMENT_AMPS, "A",
                          commissioning.element_amps(job.kit_chosen_kw, job.kit_rated_v,
                                                     job.kit_volts),
                          K=job.kit_chosen_kw, V=job.kit_volts, Vr=job.kit_rated_v,
                          what="Current that the kit should draw at this voltage")
        if job.clamp_holds_blower and job.blower_amps is not None:
            amps = paper.step("ib = i + b", ARITHMETIC, "A", amps + job.blower_amps, i=amps,
                              b=job.blower_amps, what="With the blower, which the clamp holds too")
        paper.give("expect_kit_a", amps)
    return [
        Reading("kit-volts", "Voltage at the kit, all elements on", VOLT_RANGE, job.kit_volts, "V",
                0, _around(job.kit_rated_v, VOLT_SHARE), must=True, signs=ELECTRICIAN,
                doubt=_spread(job, "kit_volts"), applies=kit,
                do="Switch the kit off. Ask the electrician, then the utility."),
        Reading("kit-drop", "Voltage lost from panel to kit", RUNNING_DROP, drop, "%", 1,
                _most(DROP_PCT), must=True, signs=ELECTRICIAN, applies=kit,
                doubt=_share(job, _together(_spread(job, "kit_volts_drop"),
                                            _spread(job, "panel_volts_kit_on"))),
                do="Switch the kit off and find the hot joint before it runs again."),
        Reading("kit-amps", "Current of the kit", ELEMENT_AMPS, job.kit_amps, "A", 1,
                _around(amps, AMP_SHARE), must=True, signs=ELECTRICIAN, applies=kit,
                doubt=_spread(job, "kit_amps"),
                do="Too little: an element or a stage is off. Too much: another kit than planned, "
                   "or another load on the clamp."),
        Reading("outdoor-amps", "Current of the outdoor unit", RUNNING_AMPS, job.outdoor_amps, "A",
                1, _most(job.outdoor_unit_a), must=True, signs=ELECTRICIAN,
                doubt=_spread(job, "outdoor_amps"),
                do="Stop it. Check airflow over both coils, voltage and charge."),
        Reading("blower-amps", "Current of the blower", RUNNING_AMPS, job.blower_amps, "A", 1,
                _most(job.indoor_blower_a), must=True, signs=ELECTRICIAN,
                doubt=_spread(job, "blower_amps"),
                do="Check static, wheel and voltage; a clean wheel at rated static draws less."),
        Reading("torque", "Torque of the kit's lugs", TORQUE, job.torque_set_lbfin, "lbf in", 0,
                _around(job.torque_label_lbfin, TORQUE_SHARE), must=True, signs=ELECTRICIAN,
                doubt=_spread(job, "torque_set_lbfin"),
                do="Lock off, and set every lug to its label with a torque driver."),
    ]


def _air(job: Readings, paper: Paper, density: float) -> list[Reading]:
    static = None
    if job.static_supply_inwc is not None and job.static_return_inwc is not None:
        static = paper.step("p = ps + pr", ARITHMETIC, "in w.c.",
                            job.static_supply_inwc + job.static_return_inwc,
                            ps=job.static_supply_inwc, pr=job.static_return_inwc,
                            what="External static, both sides of the cabinet")
    return [
        Reading("static", "External static", STATIC_LABEL, static, "in w.c.", 2,
                _most(job.static_rated_inwc), must=True,
                doubt=_together(_spread(job, "static_supply_inwc"),
                                _spread(job, "static_return_inwc")),
                do="Find where the pressure goes: filter, louvers, crossover, closed registers."),
        Reading("airflow", "Airflow", AIRFLOW_BAND, job.airflow_read_cfm, "cfm", 0,
                _around(job.air_target_cfm, AIRFLOW_SHARE), must=True,
                do="Set the blower, open registers, and read both roads again."),
        _rise(job, paper, density),
        Reading("cooling-split", "Cooling split", COOLING_SPLIT,
                _minus(job.cool_split_return_f, job.cool_split_supply_f), "°F diff", 1, SPLIT_F,
                "cooling", job.commission_outdoor_f, beyond="look",
                doubt=_together(_spread(job, "cool_split_return_f"),
                                _spread(job, "cool_split_supply_f")),
                do="Look at airflow first, then at the charge. In dry air a larger split is "
                   "right."),
        _split(job, paper, density),
        Reading("pan-suction", "Suction at the drain pan", TRAP_SEAL, job.pan_suction_read_inwc,
                "in w.c.", 2, _most(job.trap_holds_inwc), must=True,
                doubt=_spread(job, "pan_suction_read_inwc"),
                do="Rebuild the trap deeper before it cools."),
        Reading("door-pressure", "Highest pressure of a closed room", DOOR_PRESSURE,
                job.door_pressure_pa, "Pa", 1, (-DOOR_PA, DOOR_PA), beyond="look",
                doubt=_spread(job, "door_pressure_pa"),
                do="Cut the door or put in a transfer opening."),
    ]


def _rise(job: Readings, paper: Paper, density: float) -> Reading:
    band = None
    known = None not in (job.kit_chosen_kw, job.kit_rated_v, job.kit_volts, job.air_target_cfm)
    if known and job.kit_chosen_kw > 0:
        power = commissioning.element_kw(job.kit_chosen_kw, job.kit_rated_v, job.kit_volts) \
            + (job.blower_watts or 0.0) / 1000
        wanted = paper.step("dT = 1000 * P * 3.412142 / (60 * 0.240 * rho * Q)", SENSIBLE_HEAT,
                            "°F diff", commissioning.rise_f(power, job.air_target_cfm, density),
                            P=power, rho=density, Q=job.air_target_cfm,
                            what="Rise over elements and blower at the airflow wanted")
        paper.give("expect_rise_f", wanted)
        band = (wanted / (1 + AIRFLOW_SHARE), wanted / (1 - AIRFLOW_SHARE))
    return Reading("rise", "Rise over the elements", RISE_BAND,
                   _minus(job.rise_supply_f, job.rise_return_f), "°F diff", 1, band, must=True,
                   applies=job.kit_chosen_kw is None or job.kit_chosen_kw > 0,
                   doubt=_together(_spread(job, "rise_return_f"), _spread(job, "rise_supply_f")),
                   do="Too much: too little air; switch the elements off. Too little: a stage is "
                      "off, or the probe sits in a cold spot.")


def _split(job: Readings, paper: Paper, density: float) -> Reading:
    band, outdoor = None, job.heat_split_outdoor_f
    at = outdoor if outdoor is not None else job.commission_outdoor_f
    known = None not in (job.hp_points, job.hp_altitude_factor_pct, job.air_target_cfm)
    if known and at <= HEATING_HIGH_F:
        points = job.hp_points
        sheet = heat_pump.interpolate([p["outdoor_f"] for p in points],
                                      [p["capacity_max_btuh"] for p in points], at).value
        wanted = paper.step(
            "dT = C * f / 100 / (60 * 0.240 * rho * Q)", SENSIBLE_HEAT, "°F diff",
            commissioning.split_f(sheet * job.hp_altitude_factor_pct / 100, job.air_target_cfm,
                                  density),
            C=sheet, f=job.hp_altitude_factor_pct, rho=density, Q=job.air_target_cfm,
            what="Heating split at top speed by the data sheet, at this outdoor temperature")
        paper.give("expect_split_f", wanted)
        band = _around(wanted, HEAT_SPLIT_SHARE)
    return Reading("heating-split", "Heating split, heat pump alone", HEATING_SPLIT,
                   _minus(job.heat_split_supply_f, job.heat_split_return_f), "°F diff", 1, band,
                   "heating", outdoor, beyond="look",
                   doubt=_together(_spread(job, "heat_split_return_f"),
                                   _spread(job, "heat_split_supply_f")),
                   do="Was it at top speed, in the maker's test mode, and not in defrost? Then "
                      "look at airflow and charge.")


def _charge(job: Readings, paper: Paper) -> list[Reading]:
    cool = job.charge_outdoor_f
    above = None
    if job.liquid_bubble_f is not None and cool is not None:
        above = paper.step("dT = tc - to", ARITHMETIC, "°F diff", job.liquid_bubble_f - cool,
                           tc=job.liquid_bubble_f, to=cool,
                           what="Condensing temperature above outdoors")
    subcooling = _near(job.target_subcooling_f, job.subcooling_band_f or 0.0) \
        or USUAL_SUBCOOLING_F
    superheat = _near(job.target_superheat_f, job.superheat_band_f or 0.0) or USUAL_SUPERHEAT_F
    again = "Set airflow first. Then weigh, and charge by the plate's chart."
    return [
        Reading("charge-weighed", "Charge weighed in", CHARGE_LABEL, job.charge_weighed_oz, "oz", 1,
                _near(job.charge_change_oz, WEIGHED_OZ), must=True,
                doubt=_spread(job, "charge_weighed_oz"),
                do="Weigh it again; write the whole charge on the unit."),
        Reading("nitrogen", "Nitrogen missing after the test", NITROGEN, job.nitrogen_missing_psi,
                "psi", 1, _most(job.nitrogen_allowed_psi), must=True,
                do="Find the leak and test again."),
        Reading("vacuum", "Vacuum at the end of the decay", VACUUM_PASS, job.vacuum_end_micron,
                "micron", 0, _most(job.vacuum_limit_micron), must=True,
                do="Find out whether it is wet or leaks before it is charged."),
        Reading("subcooling", "Subcooling", CHARGE_LABEL, job.subcooling_f, "°F diff", 1,
                subcooling, "cooling", cool, beyond="look", do=again),
        Reading("superheat", "Superheat", CHARGE_LABEL, job.superheat_f, "°F diff", 1, superheat,
                "cooling", cool, beyond="look", do=again),
        Reading("coil-cold", "Coil temperature in cooling, by the gauge", COIL_COLD,
                job.suction_dew_f, "°F", 1, COIL_F, "cooling", cool, beyond="look",
                do="Too cold: little air or little charge. Too warm: it does not pump, or it is "
                   "hot indoors."),
        Reading("condensing", "Condensing above outdoors, by the gauge", CONDENSING, above,
                "°F diff", 1, CONDENSING_F, "cooling", cool, beyond="look",
                do="Too much: dirty coil, air that returns to it, too much charge. Too little: "
                   "low speed or little charge."),
    ]


def _settings(job: Readings) -> list[Reading]:
    balance = job.hp_balance_f
    aux = None if balance is None else (balance, max(AUX_HIGH_F, balance))
    return [
        Reading("aux-lockout", "Backup locked out above, as set", LOCKOUT, job.aux_lockout_set_f,
                "°F", 0, aux, beyond="look",
                do="Set it at or a little above the balance point; never lock backup out of "
                   "defrost.",
                applies=job.kit_chosen_kw is None or job.kit_chosen_kw > 0),
        Reading("compressor-lockout", "Compressor locked out below, as set", OWN_LIMIT,
                job.compressor_lockout_set_f, "°F", 0, _most(job.hp_cutout_f), beyond="look",
                do="Let it run down to its own lowest temperature: elements never give more heat "
                   "for the power."),
    ]


def _passed(value: str | None) -> bool | None:
    return {"passed": True, "failed": False}.get(value or "")


def _tests(job: Readings) -> list[Reading]:
    def test(id_: str, words: str, value: str | None, do: str, **more: Any) -> Reading:
        return Reading(id_, words, more.pop("source", FUNCTION_TEST), test=True,
                       passed=_passed(value), do=do, **more)

    burns = any(getattr(job, n) in FUELS for n in ("water_heater_fuel", "range_fuel",
                                                   "dryer_fuel", "stove_fuel"))
    return [
        test("modes", "Thermostat modes", job.mode_test,
             "Find the wrong wire or setting; the reversing valve may be the other way round.",
             must=True),
        test("defrost", "Forced defrost", job.defrost_test,
             "By the manual: sensor, board, reversing valve, then the kit's wire.",
             weather="heating"),
        test("float", "Float switch", job.float_test,
             "Leave cooling locked off until it trips and resets.", must=True),
        test("drain", "Drain and trap", job.drain_test, "Clear it, and prime the trap.", must=True),
        test("limits", "Limits and interlocks", job.limit_test,
             "Leave the kit locked off until the limit opens.", must=True, signs=ELECTRICIAN),
        test("detector", "Refrigerant detector", job.detector_test,
             "Leave the system off; the maker must put it right.", must=True,
             signs="technician certified for flammable refrigerant",
             applies=job.leak_detector == "factory"),
        test("fuel-capped", "Fuel line capped and leak-tested", _yes(job.fuel_line_capped),
             "Shut the fuel at its source; a licensed person caps and tests it today.", must=True,
             source=RELEASED_GAS, signs=GAS_FITTER,
             applies=job.heating_fuel is None or job.heating_fuel in FUELS),
        test("co-alarm", "Carbon monoxide alarm", _yes(job.co_alarm),
             "Put one in before you leave.", must=True, source=ALARMS, applies=burns),
        test("smoke-alarms", "Smoke alarms", _yes(job.smoke_alarms),
             "Tell the owner, and write it down.", source=ALARMS),
    ]


def _yes(value: bool | None) -> str | None:
    return None if value is None else "passed" if value else "failed"


# ---- judging --------------------------------------------------------------------------------

def _row(r: Reading, window: tuple[float, float]) -> dict[str, Any]:
    if not r.applies:
        return {"id": r.id, "reading": r.words, "state": "does not apply"}
    row: dict[str, Any] = {"id": r.id, "reading": r.words,
                           "state": "taken" if r.taken else "due"}
    if r.test:
        if r.taken:
            row["note"] = "passed" if r.passed else "failed"
    else:
        row |= {"unit": r.unit, "decimals": float(r.decimals)}
        low, high = r.band or (None, None)
        for name, number in (("read", r.value), ("low", low), ("high", high), ("doubt", r.doubt)):
            if number is not None:
                row[name] = float(number)
    if not r.taken and r.weather != "any":
        row |= {"wait_low_f": window[0], "wait_high_f": window[1]}
    return row


def _now(job: Readings, window: tuple[float, float]) -> bool:
    """Whether today's weather is one in which it can be taken."""
    return bool(window[0] <= job.commission_outdoor_f <= window[1])


def _judge(job: Readings, paper: Paper, r: Reading, window: tuple[float, float]) -> None:
    best: Level = "look" if r.signs else "fine"
    if not r.taken:
        _due(job, paper, r, window)
        return
    if r.test:
        paper.verdict(r.id, "fine" if r.passed else r.beyond,
                      f"{r.words}: " + ("done, as it should." if r.passed else
                                        "it did not do what it should."),
                      source=r.source, do="" if r.passed else r.do, best=best, signs=r.signs,
                      safety=r.must)
        return
    assert r.value is not None
    if r.band is None:
        paper.verdict(r.id, "look", f"{r.words}: read, and what it should be cannot be said yet: "
                                    "another calculator still lacks a fact.",
                      source=r.source, do="Fill the job sheet; this line then finds its range.",
                      best=best, signs=r.signs)
        return
    if r.outdoor is not None and not window[0] <= r.outdoor <= window[1]:
        paper.verdict(r.id, "look", f"{r.words}: taken at {{out}} outdoors; it counts between "
                                    "{cold} and {warm}.", source=CHARGE_WEATHER,
                      do="Take it again in that weather.", best=best, signs=r.signs,
                      out=Quantity(r.outdoor, "°F", 0), cold=Quantity(window[0], "°F", 0),
                      warm=Quantity(window[1], "°F", 0))
        return
    _limit(paper, r, best)


def _limit(paper: Paper, r: Reading, best: Level) -> None:
    assert r.value is not None
    assert r.band is not None
    low, high = r.band
    upper = low is None or (high is not None and high - r.value <= r.value - low)
    allowed = "{least} to {most}" if low is not None and high is not None else \
        "{most} at most" if high is not None else "{least} at least"
    text = f"{r.words}: {{value}}; it may be {allowed}."
    paper.limit(
        r.id, r.value, source=r.source, unit=r.unit, decimals=r.decimals, beyond=r.beyond,
        best=best, signs=r.signs, do=r.do, fine=text, look=text, hold=text,
        at_most=high if upper else None, at_least=None if upper else low,
        least=Quantity(low if low is not None else 0.0, r.unit, r.decimals),
        most=Quantity(high if high is not None else 0.0, r.unit, r.decimals))


def _due(job: Readings, paper: Paper, r: Reading, window: tuple[float, float]) -> None:
    now = _now(job, window)
    weather = "" if r.weather == "any" else (
        " It can be taken at {cold} to {warm} outdoors; today it is {out}.")
    level: Level = "hold" if r.must else "look"
    do = "Take it before you leave." if now else \
        "Write down the return date, and take it then."
    paper.verdict(r.id, level, f"{r.words}: due.{weather}", source=r.source, do=do,
                  best="look" if r.signs else "fine", signs=r.signs,
                  cold=Quantity(window[0], "°F", 0), warm=Quantity(window[1], "°F", 0),
                  out=Quantity(job.commission_outdoor_f, "°F", 0))


def _close(job: Readings, paper: Paper, due: list[Reading], waits: list[Reading],
           windows: dict[str, tuple[float, float]]) -> None:
    if waits:
        dated = job.return_on is not None
        listed: dict[str, str] = {}
        for r in waits:
            listed[r.weather] = ", ".join(filter(None, (listed.get(r.weather), r.words)))
        parts = "; ".join(f"{words} ({{{weather}_low}} to {{{weather}_high}} outdoors)"
                          for weather, words in listed.items())
        cold, warm = windows["heating"], windows["cooling"]
        paper.verdict("return", "look",
                      f"Due in other weather than today's {{out}}: {parts}. " +
                      ("The return visit is on {day}." if dated else
                       "There is no date for the return visit."),
                      source=RETURN_VISIT, day=str(job.return_on),
                      out=Quantity(job.commission_outdoor_f, "°F", 0),
                      do="Keep that date; the record is not whole before it." if dated else
                      "Agree on a date with the owner and write it down.",
                      heating_low=Quantity(cold[0], "°F", 0),
                      heating_high=Quantity(cold[1], "°F", 0),
                      cooling_low=Quantity(warm[0], "°F", 0),
                      cooling_high=Quantity(warm[1], "°F", 0))
    else:
        paper.verdict("return", "fine", "No reading waits for other weather.",
                      source=RETURN_VISIT)
    if any(r.id in ("subcooling", "superheat") for r in due):
        weighed = job.charge_weighed_oz is not None
        paper.verdict("charge-rests", "look" if weighed else "hold",
                      "Until the charge can be judged in warm weather it rests on what was weighed "
                      "in: {oz}." if weighed else
                      "The charge can be judged neither by weight nor by readings.",
                      source=CHARGE_LABEL, oz=Quantity(job.charge_weighed_oz or 0.0, "oz", 1),
                      do="Weigh it in to the ounce and write it on the unit; judge it when it is "
                         "warm.")
    else:
        paper.verdict("charge-rests", "fine", "The charge was judged by readings.",
                      source=CHARGE_LABEL)
    signed = job.commissioned_by is not None
    paper.verdict("signed", "fine" if signed else "look",
                  "The record names who took the readings." if signed else
                  "Nobody has signed the record.", source=LOCAL_CODE,
                  do="" if signed else "Enter name, trade and licence, and sign the print.")


def figure(sheet: Sheet) -> str:
    """Where each reading lies between what it may be at least and at most."""
    taken = sheet.drawn["taken"]
    assert isinstance(taken, list)
    rows = [(words, _place(value, band)) for words, value, band in taken]
    rows = rows or [("no reading yet", 0.5)]
    d = drawing.Drawing(
        "commissioning-record", "Each reading in its range",
        "From left to right, least to most: " + ", ".join(
            f"{words} {_said(place)}" for words, place in rows) + ".", 34 + 44 * len(rows) + 8)
    left, right = 60.0, 280.0
    d.text(left, 18, "least", "m").text(right, 18, "most", "m")
    for n, (words, place) in enumerate(rows):
        y = 44.0 + 44 * n
        d.text(8, y, words)
        d.line(8, y + 18, 332, y + 18, "g")
        d.rect(left, y + 10, right - left, 16, "i")
        d.dot(left + (right - left) * min(1.2, max(-0.2, place)), y + 18)
    d.line(left, 26, left, 34 + 44 * len(rows), "w")
    d.line(right, 26, right, 34 + 44 * len(rows), "w")
    return d.figure("Where a range has one side only, the other end is zero.")


def _place(value: float, band: Band) -> float:
    low, high = band
    if high is None:
        assert low is not None
        return value / low - 0.5 if low else 0.5
    start = low if low is not None else min(0.0, high)
    return (value - start) / (high - start) if high > start else 0.5


def _said(place: float) -> str:
    if place < 0:
        return "below"
    if place > 1:
        return "above"
    return "low" if place < 1 / 3 else "high" if place > 2 / 3 else "in the middle"


