"""The line set: charge for its length, limits, drier, caps, and what was in the old one.

The factory charge counts one length; a longer run holds more, by the maker's rate. Length
and height have limits in the manual. On a heat pump the liquid flows both ways. The old
refrigerant is recovered and weighed by a certified person before any line is cut.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.facts.refrigerant import (
    CHARGE_PLATE,
    LINE_CARE,
    LOCKING_CAPS,
    NEW_EQUIPMENT_ONLY,
    PROPERTY_LIBRARY,
    RECOVERY,
    RECOVERY_TANK,
)
from downflow.physics import line_set, refrigerant
from downflow.sources import GEOMETRY, Source

CALCULATOR = Calculator(
    id="line-set",
    title="Line set and charge",
    phase="refrigerant",
    question="How much charge does this run need, and may it be this long and this high?",
    reads=("refrigerant", "charge_factory_lb", "lineset_included_ft", "charge_rate_oz_ft",
           "lineset_ft", "lineset_most_ft", "lineset_rise_ft", "lineset_most_rise_ft",
           "lineset_used", "drier", "caps_locked", "old_refrigerant", "old_recovered"),
    may_read=("lineset_least_ft", "tank_water_lb"),
    gives=("charge_total_lb", "charge_change_oz", "line_rise_psi", "tank_limit_lb"),
)

LIQUID_F = 95.0
TANK_F = 120.0
WATER_LB_FT3 = 62.4
FLAMMABLE = ("R-32", "R-454B")


def solve(job: Readings, paper: Paper) -> None:
    change = paper.step("c = (L - Li) * r", CHARGE_PLATE, "oz",
                        line_set.charge_change_oz(job.lineset_ft, job.lineset_included_ft,
                                                  job.charge_rate_oz_ft),
                        L=job.lineset_ft, Li=job.lineset_included_ft, r=job.charge_rate_oz_ft,
                        what="Charge to add for the line set; below zero, to recover")
    total = paper.step("M = F + c / 16", CHARGE_PLATE, "lb",
                       line_set.total_charge_oz(job.charge_factory_lb, change)
                       / line_set.OUNCES_PER_POUND, F=job.charge_factory_lb, c=change,
                       what="Charge of the whole system",
                       note="Weighed in by scale, through the liquid valve, before the valves are "
                            "opened, and written on the unit. Plate and manual come first.")
    rows = tables.rows("refrigerant_" + job.refrigerant.replace("-", "").lower())
    low, high = refrigerant.rows_around_f(LIQUID_F, rows)
    density = paper.lookup("Density of the liquid on a warm day", PROPERTY_LIBRARY, "lb/ft³",
                           refrigerant.liquid_lb_ft3(LIQUID_F, rows),
                           row=[(f"{low.temp_f:g} °F", low.liquid_lb_ft3),
                                (f"{high.temp_f:g} °F", high.liquid_lb_ft3)])
    rise = paper.step("p = h * d / 144", GEOMETRY, "psi",
                      line_set.rise_psi(job.lineset_rise_ft, density), h=job.lineset_rise_ft,
                      d=density, what="Pressure that the liquid loses on its way up")
    paper.give("charge_change_oz", change)
    paper.give("charge_total_lb", total)
    paper.give("line_rise_psi", rise)
    _limits(job, paper)
    _parts(job, paper)
    _old(job, paper)


def _limits(job: Readings, paper: Paper) -> None:
    paper.limit("length", job.lineset_ft, at_most=job.lineset_most_ft, unit="ft", decimals=0,
                source=CHARGE_PLATE,
                fine="The run is within the manual's length.",
                hold="The run is {value}; the manual allows {limit}.",
                do="Shorten it, or ask the maker in writing.")
    if job.lineset_least_ft is not None:
        paper.limit("not-too-short", job.lineset_ft, at_least=job.lineset_least_ft, unit="ft",
                    decimals=0, source=CHARGE_PLATE, beyond="look",
                    fine="The run is not too short.",
                    look="The run is {value}; the manual asks for {limit} at least.",
                    do="Make a loop lying flat: a short line hums and floods.")
    paper.limit("height", abs(job.lineset_rise_ft), at_most=job.lineset_most_rise_ft, unit="ft",
                decimals=1, source=CHARGE_PLATE,
                fine="The height between the units is within the manual's.",
                hold="The units are {value} apart in height; the manual allows {limit}.",
                do="Move the outdoor unit, or ask the maker in writing.")


def _parts(job: Readings, paper: Paper) -> None:
    used = {
        "new": ("fine", "The lines are new.", "Keep them capped until they are brazed, nitrogen "
                "flowing, clamped off wood and ducts with rubber."),
        "allowed": ("look", "Old lines, allowed by the maker: old oil stays in low spots.",
                    "Flush, blow dry with nitrogen, and test them by themselves."),
        "old": ("hold", "Nothing is known about the old lines: wrong size, old oil, old leaks.",
                "Ask the maker whether this size and their state are allowed; else run new ones."),
    }[job.lineset_used]
    _say(paper, "lines", used, LINE_CARE)
    drier = {
        "both": ("fine", "The drier works in both directions.", ""),
        "none": ("look", "No drier in the field: the maker has one inside.",
                 "Read that in the manual, and put one in whenever the circuit is opened again."),
        "one": ("hold", "A drier for one direction lets its dirt go when the flow turns.",
                "Take one for both directions."),
        "missing": ("look", "No drier at all.",
                    "Put one for both directions into the liquid line, as the manual shows."),
    }[job.drier]
    _say(paper, "drier", drier, LINE_CARE)
    _say(paper, "caps", ("fine", "The ports have locking caps.", "") if job.caps_locked else
         ("look", "The outdoor ports have no locking caps.",
          "Put them on; the code asks for it, and children have died sniffing."), LOCKING_CAPS)
    if job.refrigerant in FLAMMABLE:
        paper.verdict("made-for-it", "fine",
                      "This refrigerant goes only into equipment made and marked for it, never "
                      "into an old coil or unit.", source=NEW_EQUIPMENT_ONLY, best="look",
                      signs="person certified under EPA section 608",
                      do="See the marking on both units.")


def _say(paper: Paper, id_: str, said: tuple[str, str, str], source: Source) -> None:
    level, text, do = said
    paper.verdict(id_, "hold" if level == "hold" else "look" if level == "look" else "fine", text,
                  source=source, do=do)


def _old(job: Readings, paper: Paper) -> None:
    if job.old_refrigerant != "none" and job.tank_water_lb is not None:
        rows = tables.rows("refrigerant_" + job.old_refrigerant.replace("-", "").lower())
        density = refrigerant.liquid_lb_ft3(TANK_F, rows)
        paper.give("tank_limit_lb", paper.step(
            "m = 0.80 * w / 62.4 * d", RECOVERY_TANK, "lb",
            line_set.tank_limit_lb(job.tank_water_lb / WATER_LB_FT3, density),
            w=job.tank_water_lb, d=density,
            what="Most that the recovery tank may hold, liquid at its warmest"))
    signs = "person certified under EPA section 608"
    if job.old_refrigerant == "none" or job.old_recovered == "none":
        agree = job.old_refrigerant == "none"
        paper.verdict("recovered", "fine" if agree else "hold",
                      "There is no old refrigerant." if agree else
                      "The old unit holds refrigerant, and the sheet says that there is none.",
                      source=RECOVERY, best="look", signs=signs,
                      do="" if agree else "Look at the old unit's plate and gauges.")
    elif job.old_recovered == "weighed":
        paper.verdict("recovered", "fine",
                      "The old refrigerant is recovered, weighed and recorded.", source=RECOVERY,
                      best="look", signs=signs)
    else:
        paper.verdict("recovered", "hold",
                      "The old refrigerant is still in the old unit." if job.old_recovered == "in"
                      else "The old refrigerant is gone and nobody knows how.",
                      source=RECOVERY, best="look", signs=signs,
                      do="A certified person recovers and weighs it before any line is cut."
                      if job.old_recovered == "in" else
                      "Write down what was found, pressure and weight, before any line is cut.")


def figure(sheet: Sheet) -> str:
    """The whole charge: factory and line set."""
    change = sheet.values["charge_change_oz"] / line_set.OUNCES_PER_POUND
    factory = sheet.job.charge_factory_lb
    total = sheet.values["charge_total_lb"]
    rows = [("factory", factory), ("added for the line set", max(change, 0.0)),
            ("whole system", total)]
    words = ", ".join(f"{name} {sheet.text(v, 'lb', 2)}" for name, v in rows)
    return drawing.bars("line-set", "Charge of the system", rows, "lb", decimals=2,
                        desc=words + ".", system=sheet.system, keep_order=True,
                        ).figure("Weighed in by scale, written beside the plate.")
