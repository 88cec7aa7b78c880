"""Control wiring.

The conductors that are there against the conductors that this equipment needs, as a
wiring table; what the transformer carries, its fuse, and the voltage at the far end of a
thin wire. Where no new cable can be pulled, what to do instead.
"""

from __future__ import annotations

from typing import NamedTuple

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.facts.controls import (
    CLASS_2,
    CONTROL_DROP,
    CONTROL_VOLTS,
    DIAGRAM,
    FLOAT_FAIL_SAFE,
    TRANSFORMER,
)
from downflow.physics import control_wiring
from downflow.sources import ARITHMETIC

CALCULATOR = Calculator(
    id="control-wiring",
    title="Control wiring",
    phase="power",
    question="Are there enough conductors, and can the transformer carry its loads?",
    reads=("control_kind", "compressor_stages", "kit_stages_wired", "thermostat_common",
           "sensor_outdoor_wired", "sensor_leak_wired", "float_wired", "cable_conductors",
           "cable_awg", "cable_ft", "cable_new", "outdoor_cable_conductors", "transformer_va",
           "control_loads", "control_fuse_a", "control_volts"),
    may_read=("data_link_conductors",),
    gives=("control_needed", "control_spare", "control_outdoor_needed", "control_load_va",
           "control_load_pct", "control_end_v", "control_fuse_most_a", "control_table"),
)

LOAD_SHARE = 0.80
LEAST_VOLTS = 20.0
CLASS_2_VA = 100.0
FUSE_STEP = 1.25
NOMINAL_VOLTS = 24.0
SIGNS = "licensed electrician or qualified person"


class Wire(NamedTuple):
    """One conductor of the wiring table; `True` where it is landed."""

    terminal: str
    function: str
    thermostat: bool
    air_handler: bool
    outdoor_unit: bool


def wires(job: Readings) -> list[Wire]:
    """Every conductor that this equipment needs, terminal by terminal."""
    if job.control_kind == "link":
        count = int(job.data_link_conductors or 0)
        return [Wire(f"link {n}", "the maker's data link", True, True, True)
                for n in range(1, count + 1)]
    out = [Wire("R", "24 V", True, True, True)]
    if job.thermostat_common:
        out.append(Wire("C", "common", True, True, True))
    else:
        out.append(Wire("C", "common", False, True, True))
    out.append(Wire("G", "blower", True, True, False))
    for n in range(1, int(job.compressor_stages) + 1):
        out.append(Wire(f"Y{n if job.compressor_stages > 1 else ''}", "compressor", True, True,
                        True))
    out.append(Wire("O/B", "reversing valve", True, True, True))
    for n in range(1, int(job.kit_stages_wired) + 1):
        out.append(Wire(f"W{n if job.kit_stages_wired > 1 else ''}", "backup kit", True, True,
                        False))
    out.append(Wire("D", "kit on in defrost", False, True, True))
    if job.sensor_outdoor_wired:
        out += [Wire("S1", "outdoor sensor", True, True, True),
                Wire("S2", "outdoor sensor", True, True, True)]
    if job.sensor_leak_wired:
        out.append(Wire("L", "leak detector", True, True, False))
    return out


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.control_kind == "wires" or job.data_link_conductors is not None,
                      "data_link_conductors", "is needed with a data link. Read it in the manual.")
    job.stop_if_refused()
    table = wires(job)
    inside = [w for w in table if w.thermostat]
    outside = [w for w in table if w.outdoor_unit]
    needed = paper.total("Conductors needed at the thermostat", DIAGRAM, "", float(len(inside)),
                         [(f"{w.terminal}: {w.function}", 1.0) for w in inside])
    paper.total("Conductors needed to the outdoor unit", DIAGRAM, "", float(len(outside)),
                [(f"{w.terminal}: {w.function}", 1.0) for w in outside])
    spare = paper.step("s = c - n", ARITHMETIC, "", job.cable_conductors - needed,
                       c=job.cable_conductors, n=needed,
                       what="Conductors to spare at the thermostat")
    load = paper.total("Load of the transformer, everything on", TRANSFORMER, "VA",
                       control_wiring.load_va([row["va"] for row in job.control_loads]),
                       [(row["id"], row["va"]) for row in job.control_loads])
    percent = paper.step("p = 100 * l / t", ARITHMETIC, "%", 100 * load / job.transformer_va,
                         l=load, t=job.transformer_va, what="Share of its rating")
    rated = control_wiring.secondary_amps(job.transformer_va, NOMINAL_VOLTS)
    fuse = paper.step("f = 1.25 * t / 24", TRANSFORMER, "A", FUSE_STEP * rated,
                      t=job.transformer_va, what="Largest fuse: a quarter above its full load")
    far = sum(row["va"] for row in job.control_loads if row["outdoors"])
    ohm = next(r.ohm_per_kft for r in tables.rows("control_wire")
               if r.gauge_awg == int(job.cable_awg))
    end = paper.step("v = u - 2 * a / u * d * r / 1000", CONTROL_DROP, "V",
                     control_wiring.end_volts(job.control_volts, far / job.control_volts,
                                              job.cable_ft, ohm),
                     u=job.control_volts, a=far, d=job.cable_ft, r=ohm,
                     what="Voltage at the far end of the cable")
    paper.give("control_needed", needed)
    paper.give("control_spare", spare)
    paper.give("control_outdoor_needed", float(len(outside)))
    paper.give("control_load_va", load)
    paper.give("control_load_pct", percent)
    paper.give("control_end_v", end)
    paper.give("control_fuse_most_a", fuse)
    paper.give_table("control_table", [
        {"terminal": w.terminal, "function": w.function,
         "thermostat": w.terminal if w.thermostat else "–",
         "air_handler": w.terminal if w.air_handler else "–",
         "outdoor_unit": w.terminal if w.outdoor_unit else "–"} for w in table])
    _cables(job, paper, needed, float(len(outside)))
    _power(job, paper, load, percent, fuse, end)
    _float(job, paper)


def _cables(job: Readings, paper: Paper, needed: float, outside: float) -> None:
    instead = ("Pull a new cable along the old one, with two conductors more than needed today."
               if job.cable_new else
               "No new cable: see whether the maker offers a data link on two or four conductors, "
               "a thermostat that sends by radio to the air handler, or a listed device that "
               "carries two calls on one wire. Never borrow the bare ground, never go without the "
               "common.")
    paper.limit("thermostat-cable", job.cable_conductors, at_least=needed, unit="", decimals=0,
                source=DIAGRAM,
                fine="The thermostat cable has the conductors that are needed.",
                hold="The thermostat cable has {value} conductors; {limit} are needed.",
                do=instead)
    paper.limit("outdoor-cable", job.outdoor_cable_conductors, at_least=outside, unit="",
                decimals=0, source=DIAGRAM,
                fine="The cable to the outdoor unit has the conductors that are needed.",
                hold="The cable to the outdoor unit has {value} conductors; {limit} are needed.",
                do="Pull a new cable with the line set, apart from power wires.")


def _power(job: Readings, paper: Paper, load: float, percent: float, fuse: float,
           end: float) -> None:
    paper.limit("transformer", percent, at_most=100 * LOAD_SHARE, of="control_load_pct",
                source=TRANSFORMER, beyond="look" if load <= job.transformer_va else "hold",
                best="look", signs=SIGNS,
                fine="The transformer carries its loads.",
                look="The loads take {value} of the transformer; up to {limit} it stays cool and "
                     "pulls relays in.",
                hold="The loads take {value} of the transformer.",
                do="Take a larger one within class 2, or feed the outdoor board from its own.")
    paper.limit("class-2", job.transformer_va, at_most=CLASS_2_VA, unit="VA", decimals=0,
                source=CLASS_2, best="look", signs=SIGNS,
                fine="It is within class 2.",
                hold="A supply of {value} is more than class 2 allows, {limit}: thermostat cable "
                     "may not carry it.",
                do="Use two smaller ones, never in parallel.")
    paper.limit("fuse", job.control_fuse_a, at_most=fuse, of="control_fuse_most_a",
                source=TRANSFORMER, best="look", signs=SIGNS,
                fine="The fuse protects the transformer.",
                hold="The fuse is {value}; above {limit} the transformer burns first.",
                do="Put in the fuse that the board names.")
    paper.limit("far-end", end, at_least=LEAST_VOLTS, of="control_end_v", source=CONTROL_VOLTS,
                beyond="look",
                fine="Enough voltage arrives at the far end.",
                look="At the far end {value} arrive; relays need {limit}.",
                do="Use two conductors for R and two for C, a thicker cable, or a relay near the "
                   "load.")


def _float(job: Readings, paper: Paper) -> None:
    words = {
        "power": ("fine", "The float switch breaks R: water stops everything.",
                  "Tell the owner: no heat may mean a blocked drain."),
        "board": ("fine", "The float switch is on the board's own terminals.",
                  "Read in the manual what the board then stops, and try it."),
        "cooling": ("look", "The float switch stops cooling only.",
                    "Write that on the label; heating goes on with water in the pan."),
        "none": ("hold", "The float switch is not wired.",
                 "Wire it in series with what it must stop, and try it with the kit locked off."),
    }
    level, text, do = words[job.float_wired]
    paper.verdict("float-wire",
                  "hold" if level == "hold" else "look" if level == "look" else "fine", text,
                  source=FLOAT_FAIL_SAFE, do=do)


def figure(sheet: Sheet) -> str:
    """The wiring table as a drawing: three units and the wires between them."""
    table = wires(sheet.job)
    height = 96 + 26 * len(table)
    said = "; ".join(
        f"{w.terminal}, {w.function}: " + ", ".join(
            name for name, on in (("thermostat", w.thermostat), ("air handler", w.air_handler),
                                  ("outdoor unit", w.outdoor_unit)) if on) for w in table)
    d = drawing.Drawing("control-wiring", "Wires between the three units", said + ".", height)
    d.text(2, 22, "thermostat").text(172, 22, "air handler", "m")
    d.text(336, 22, "outdoor", "e")
    d.rect(10, 34, 72, height - 48, "of").rect(136, 34, 72, height - 48, "of")
    d.rect(262, 34, 68, height - 48, "of")
    for n, w in enumerate(table):
        y = 62 + 26 * n
        if w.thermostat:
            d.text(46, y, w.terminal, "m")
        d.text(172, y, w.terminal, "b m")
        if w.outdoor_unit:
            d.text(296, y, w.terminal, "m")
        if w.thermostat:
            d.line(82, y - 6, 136, y - 6, "i")
        if w.outdoor_unit:
            d.line(208, y - 6, 262, y - 6, "i")
    return d.figure("Land them by the two wiring diagrams; names differ from maker to maker.")
