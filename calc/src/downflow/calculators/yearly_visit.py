"""The yearly visit.

Readings of the visit before beside those of today, what has drifted and what that means,
the checklist for this home, and how long it takes. It starts from the job file, not from
what a phone remembers: bring the file, and the comparison is there.
"""

from __future__ import annotations

from collections.abc import Callable

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts.refrigerant import PROPERTY_LIBRARY
from downflow.facts.yearly import (
    AIRFLOW_DRIFT,
    CHARGE_DRIFT,
    CONTROL_DRIFT,
    KIT_DRIFT,
    STATIC_DRIFT,
    YEARLY_TASKS,
)
from downflow.physics import moist_air, refrigerant
from downflow.sources import ARITHMETIC, Source

CALCULATOR = Calculator(
    id="yearly-visit",
    title="Yearly visit",
    phase="come-back",
    question="What has drifted since the visit before, and what is to be done?",
    reads=("refrigerant", "elevation_ft", "trap_place", "leak_detector"),
    may_read=("static_supply_inwc", "static_return_inwc", "kit_volts", "kit_amps",
              "rise_return_f", "rise_supply_f", "pan_suction_read_inwc", "suction_psig",
              "suction_line_f", "liquid_psig", "liquid_line_f", "control_volts",
              "water_heater_fuel", "range_fuel", "dryer_fuel", "stove_fuel"),
    gives=("yearly_minutes", "yearly_static_pct", "yearly_airflow_pct", "yearly_kit_pct",
           "yearly_suction_pct", "yearly_subcooling_f", "yearly_superheat_f",
           "yearly_control_v", "yearly_tasks"),
)

STATIC_PCT = 20.0
AIRFLOW_PCT = -10.0
KIT_PCT = 5.0
SUBCOOLING_F = 3.0
SUPERHEAT_F = 5.0
CONTROL_V = 1.5
FLAMMABLE = ("R-32", "R-454B")
BURNING = ("gas", "propane", "oil", "wood")
STATIC = ("static_supply_inwc", "static_return_inwc")
KIT = ("kit_volts", "kit_amps")
RISE = (*KIT, "rise_return_f", "rise_supply_f")
YEARLY = (("static pressure", STATIC), ("voltage and current of the kit", KIT),
          ("heat rise", ("rise_return_f", "rise_supply_f")),
          ("suction at the drain pan", ("pan_suction_read_inwc",)),
          ("control voltage", ("control_volts",)))
"""What is read every year. Gauges are hooked up only where numbers or owner give a reason."""


def solve(job: Readings, paper: Paper) -> None:
    for a, b in (("rise_return_f", "rise_supply_f"), ("suction_psig", "liquid_psig")):
        low, high = getattr(job, a), getattr(job, b)
        if low is not None and high is not None:
            job.refuse_unless(low < high, b, "is not above its partner of the same visit. Were the "
                                             "two swapped?")
    job.stop_if_refused()
    shown: list[tuple[str, Quantity, Quantity, bool]] = []
    _static(job, paper, shown)
    _kit(job, paper, shown)
    _airflow(job, paper, shown)
    _suction(job, paper, shown)
    _charge(job, paper, shown)
    _control(job, paper, shown)
    _left_out(job, paper)
    _tasks(job, paper)
    paper.draw(shown=shown)


def _left_out(job: Readings, paper: Paper) -> None:
    """Which readings of a yearly visit are still to be taken."""
    if job.visit_kind() != "yearly":
        paper.verdict("not-read", "fine", "No yearly visit yet: the first readings are taken at "
                      "start-up.", source=YEARLY_TASKS)
        return
    left = [what for what, names in YEARLY if not all(job.read_now(n) for n in names)]
    paper.verdict("not-read", "look" if left else "fine",
                  "Not read at this visit: {what}." if left else
                  "Every reading of a yearly visit is taken.", source=YEARLY_TASKS,
                  do="Read it at the same places as before; it is what next year is compared with."
                  if left else "", what=", ".join(left))


def _pair(job: Readings, names: tuple[str, ...]) -> tuple[list[float], list[float], str] | None:
    """The readings of the visit before and of today, and the date of the former."""
    earlier = [e for n in names if (e := job.before(n)) is not None]
    if len(earlier) < len(names) or not all(job.read_now(n) for n in names):
        return None
    return [e[0] for e in earlier], [getattr(job, n) for n in names], earlier[0][1]


def _not_both(job: Readings, paper: Paper, id_: str, what: str, names: tuple[str, ...],
              source: Source) -> None:
    """Says that these are the first readings, if they are."""
    if all(job.read_now(n) for n in names):
        paper.verdict(id_, "fine", f"{what}: the first readings. Next year's stand beside them.",
                      source=source)


def _static(job: Readings, paper: Paper, shown: list[tuple[str, Quantity, Quantity, bool]]) -> None:
    found = _pair(job, STATIC)
    if found is None:
        _not_both(job, paper, "static", "Static pressure", STATIC, STATIC_DRIFT)
        return
    (s1, r1), (s2, r2), date = found
    drift = paper.step("d = 100 * (s2 + r2) / (s1 + r1) - 100", STATIC_DRIFT, "%",
                       100 * (s2 + r2) / (s1 + r1) - 100, s2=s2, r2=r2, s1=s1, r1=r1,
                       what="Static over the cabinet against the visit before")
    paper.give("yearly_static_pct", drift)
    then, now = Quantity(s1 + r1, "in w.c.", 2), Quantity(s2 + r2, "in w.c.", 2)
    shown.append(("static", then, now, drift > STATIC_PCT))
    paper.limit("static", drift, at_most=STATIC_PCT, of="yearly_static_pct", source=STATIC_DRIFT,
                beyond="look",
                fine="Static {now}; on {date} it was {then}.",
                look="Static {now}; on {date} it was {then}. More on the return side is filter or "
                     "coil; more on the supply side is a register or a crushed duct.",
                do="New filter first, then read again; then coil, crossover and registers.",
                then=then, now=now, date=date)


def _kit(job: Readings, paper: Paper, shown: list[tuple[str, Quantity, Quantity, bool]]) -> None:
    found = _pair(job, KIT)
    if found is None:
        _not_both(job, paper, "kit", "Voltage and current of the kit", KIT, KIT_DRIFT)
        return
    (v1, i1), (v2, i2), date = found
    drift = paper.step("d = 100 * (v2 / i2) / (v1 / i1) - 100", KIT_DRIFT, "%",
                       100 * (v2 / i2) / (v1 / i1) - 100, v2=v2, i2=i2, v1=v1, i1=i1,
                       what="Resistance of the kit against the visit before")
    paper.give("yearly_kit_pct", drift)
    then, now = Quantity(i1, "A", 1), Quantity(i2, "A", 1)
    shown.append(("kit current", then, now, abs(drift) > KIT_PCT))
    paper.limit("kit", abs(drift), at_most=KIT_PCT, of="yearly_kit_pct", source=KIT_DRIFT,
                beyond="look", best="look", signs="licensed electrician or qualified person",
                fine="The kit draws {now}; on {date} it drew {then}, and the voltage explains the "
                     "rest.",
                look="The kit draws {now}; on {date} it drew {then}. Much less is an element or a "
                     "stage that is out; a hot terminal comes before it.",
                do="Clamp each element, look at terminals for heat, torque them, power off.",
                then=then, now=now, date=date)


def _airflow(job: Readings, paper: Paper,
             shown: list[tuple[str, Quantity, Quantity, bool]]) -> None:
    found = _pair(job, RISE)
    if found is None:
        _not_both(job, paper, "airflow", "Heat rise", RISE, AIRFLOW_DRIFT)
        return
    (v1, i1, r1, s1), (v2, i2, r2, s2), date = found
    drift = paper.step(
        "d = 100 * (v2 * i2 / (s2 - r2)) / (v1 * i1 / (s1 - r1)) - 100", AIRFLOW_DRIFT, "%",
        100 * (v2 * i2 / (s2 - r2)) / (v1 * i1 / (s1 - r1)) - 100, v2=v2, i2=i2, s2=s2, r2=r2,
        v1=v1, i1=i1, s1=s1, r1=r1, what="Airflow by heat rise against the visit before")
    paper.give("yearly_airflow_pct", drift)
    then, now = Quantity(s1 - r1, "°F diff", 1), Quantity(s2 - r2, "°F diff", 1)
    shown.append(("heat rise", then, now, drift < AIRFLOW_PCT))
    paper.limit("airflow", drift, at_least=AIRFLOW_PCT, of="yearly_airflow_pct",
                source=AIRFLOW_DRIFT, beyond="look",
                fine="Heat rise {now}; on {date} it was {then}: the air is there.",
                look="Heat rise {now}; on {date} it was {then}: less air than then.",
                do="Filter, coil, blower wheel, crossover, registers, in that order.",
                then=then, now=now, date=date)


def _suction(job: Readings, paper: Paper,
             shown: list[tuple[str, Quantity, Quantity, bool]]) -> None:
    names = ("pan_suction_read_inwc",)
    found = _pair(job, names)
    if found is None:
        _not_both(job, paper, "pan", "Suction at the drain pan", names, STATIC_DRIFT)
        return
    (p1,), (p2,), date = found
    drift = paper.step("d = 100 * p2 / p1 - 100", STATIC_DRIFT, "%", 100 * p2 / p1 - 100, p2=p2,
                       p1=p1, what="Suction at the pan against the visit before")
    paper.give("yearly_suction_pct", drift)
    then, now = Quantity(p1, "in w.c.", 2), Quantity(p2, "in w.c.", 2)
    shown.append(("suction at the pan", then, now, drift > STATIC_PCT))
    paper.limit("pan", drift, at_most=STATIC_PCT, of="yearly_suction_pct", source=STATIC_DRIFT,
                beyond="look",
                fine="Suction at the pan {now}; on {date} it was {then}.",
                look="Suction at the pan {now}; on {date} it was {then}: the trap must hold more.",
                do="New filter, clean coil, and check the trap against its drawing.",
                then=then, now=now, date=date)


def _charge(job: Readings, paper: Paper,
            shown: list[tuple[str, Quantity, Quantity, bool]]) -> None:
    rows = tables.rows("refrigerant_" + job.refrigerant.replace("-", "").lower())
    air = moist_air.atmosphere_psia(job.elevation_ft)

    def subcooling(values: list[float]) -> float:
        psig, line = values
        return refrigerant.subcooling_f(refrigerant.saturation_f(psig + air, rows), line)

    def superheat(values: list[float]) -> float:
        psig, line = values
        return refrigerant.superheat_f(line, refrigerant.saturation_f(psig + air, rows, dew=True))

    _one_charge(job, paper, shown, "subcooling", ("liquid_psig", "liquid_line_f"), subcooling,
                SUBCOOLING_F, "Less is a leak or a starved line; more is a blocked drier or too "
                              "much.")
    _one_charge(job, paper, shown, "superheat", ("suction_psig", "suction_line_f"), superheat,
                SUPERHEAT_F, "More is too little charge or air; less is a valve that hangs open.")


def _one_charge(job: Readings, paper: Paper,
                shown: list[tuple[str, Quantity, Quantity, bool]], id_: str,
                names: tuple[str, str], work: Callable[[list[float]], float], limit: float,
                means: str) -> None:
    found = _pair(job, names)
    if found is None:
        _not_both(job, paper, id_, id_.capitalize(), names, CHARGE_DRIFT)
        return
    earlier, today, date = found
    lines = tables.rows("refrigerant_" + job.refrigerant.replace("-", "").lower())
    air = moist_air.atmosphere_psia(job.elevation_ft)
    dew = id_ == "superheat"
    for values in (earlier, today):
        pressures = (lines[0].dew_psia, lines[-1].dew_psia) if dew else \
            (lines[0].bubble_psia, lines[-1].bubble_psia)
        job.refuse_unless(pressures[0] <= values[0] + air <= pressures[1], names[0],
                          "is beyond the refrigerant's table, today or at the visit before. Was a "
                          "gauge set to kPa?")
    job.stop_if_refused()
    first, second = work(earlier), work(today)
    for value, when, line in ((first, "the visit before", earlier[1]),
                              (second, "today", today[1])):
        point = line - value if dew else line + value
        low, high = refrigerant.rows_around_f(point, lines)
        paper.lookup(f"{'Dew' if dew else 'Bubble'} point, {when}", PROPERTY_LIBRARY, "°F", point,
                     row=[(f"{low.temp_f:g} °F", low.temp_f), (f"{high.temp_f:g} °F", high.temp_f)])
    drift = paper.step("d = b - a", ARITHMETIC, "°F diff", second - first, b=second, a=first,
                       what=f"{id_.capitalize()} against the visit before")
    paper.give(f"yearly_{id_}_f", drift)
    then, now = Quantity(first, "°F diff", 1), Quantity(second, "°F diff", 1)
    shown.append((id_, then, now, abs(drift) > limit))
    paper.limit(id_, abs(drift), at_most=limit, of=f"yearly_{id_}_f", source=CHARGE_DRIFT,
                beyond="look",
                fine=f"{id_.capitalize()} {{now}}; on {{date}} it was {{then}}.",
                look=f"{id_.capitalize()} {{now}}; on {{date}} it was {{then}}. {means}",
                do="Airflow and outdoor temperature as then? Then look for oil at the joints "
                   "before you touch the charge.",
                then=then, now=now, date=date)


def _control(job: Readings, paper: Paper,
             shown: list[tuple[str, Quantity, Quantity, bool]]) -> None:
    names = ("control_volts",)
    found = _pair(job, names)
    if found is None:
        _not_both(job, paper, "control", "Control voltage", names, CONTROL_DRIFT)
        return
    (u1,), (u2,), date = found
    drift = paper.step("d = u2 - u1", CONTROL_DRIFT, "V", u2 - u1, u2=u2, u1=u1,
                       what="Control voltage against the visit before")
    paper.give("yearly_control_v", drift)
    then, now = Quantity(u1, "V", 1), Quantity(u2, "V", 1)
    shown.append(("control voltage", then, now, drift < -CONTROL_V))
    paper.limit("control", drift, at_least=-CONTROL_V, of="yearly_control_v",
                source=CONTROL_DRIFT, beyond="look",
                fine="Control voltage {now}; on {date} it was {then}.",
                look="Control voltage {now}; on {date} it was {then}: a load that drags, or a "
                     "loose wire.",
                do="Look at the contactor's coil and at every splice.",
                then=then, now=now, date=date)


def tasks(job: Readings) -> list[tuple[str, float]]:
    """What is done at this home, and the minutes that it takes."""
    out = [
        ("Ask the owner: heat, noise, bills, water, trips", 8.0),
        ("Filter: change, note the date, read static before and after", 8.0),
        ("Coil, blower wheel and cabinet: look, clean", 20.0),
        ("Pan, trap and drain: flush, fill, look at the end", 12.0),
        ("Float switch: kit locked off, water at the cleanout, trip and reset", 8.0),
        ("Terminals: power off and proved dead, look for heat, torque, capacitor, contactor", 20.0),
        ("Kit: volts and amps of each element, heat rise", 12.0),
        ("Outdoor unit: coil, clearances, stand level, ice marks, locking caps", 15.0),
        ("Charge: only if numbers or owner say so; never hook gauges for habit", 20.0),
        ("Defrost: forced once, kit comes on, water runs where it should", 10.0),
        ("Thermostat: modes, lockouts, kit not on in mild weather", 6.0),
        ("Belly, crossover and boots: look, with a lamp", 15.0),
        ("Smoke and carbon monoxide alarms: press the button", 3.0),
        ("Roof patch and old gas cap: look", 6.0),
        ("Job sheet: enter, export, leave the label up to date", 8.0),
    ]
    if job.trap_place == "crawl":
        out.append(("Trap in the crawl space: insulation or heat cable", 8.0))
    if job.refrigerant in FLAMMABLE and job.leak_detector == "factory":
        out.append(("Leak detector: self-test, and its date of replacement", 6.0))
    if any(getattr(job, f"{name}_fuel") in BURNING
           for name in ("water_heater", "range", "dryer", "stove")):
        out.append(("What still burns fuel: draft and spillage, blower on, doors closed", 15.0))
    return out


def _tasks(job: Readings, paper: Paper) -> None:
    rows = tasks(job)
    minutes = paper.total("Minutes for one person", YEARLY_TASKS, "min",
                          sum(m for _, m in rows), rows)
    paper.give("yearly_minutes", minutes)
    paper.give_table("yearly_tasks", [{"task": task, "minutes": m} for task, m in rows])


def figure(sheet: Sheet) -> str:
    """Each reading, then and now."""
    found = sheet.drawn["shown"]
    assert isinstance(found, list)
    rows = [(name, then.text(sheet.system), now.text(sheet.system), off)
            for name, then, now, off in found]
    said = ". ".join(f"{name}: then {then}, now {now}{', drifted' if off else ''}"
                     for name, then, now, off in rows) or "No reading stands in two visits yet"
    d = drawing.Drawing("yearly-visit", "Readings, then and now", said + ".",
                        62 + 50 * max(1, len(rows)))
    d.text(196, 20, "then", "b e").text(330, 20, "now", "b e")
    d.line(10, 30, 330, 30, "o")
    if not rows:
        d.text(14, 62, "no reading in two visits yet")
    for n, (name, then, now, off) in enumerate(rows):
        y = 56 + 50 * n
        d.text(14, y, name)
        d.text(196, y + 22, then, "e").text(330, y + 22, now, "b e")
        if off:
            d.hatch(14, y + 10, 44, 12)
        d.line(10, y + 32, 330, y + 32, "g")
    return d.figure("Hatched: drifted beyond what readings do by themselves.")
