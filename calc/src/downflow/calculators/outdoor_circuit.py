"""The outdoor unit's circuit.

The plate says how much the wire must carry and how large the breaker may be. This sets
what is planned beside it: breaker, conductor, disconnect, ground-fault protection,
voltage drop while running and in the moment of starting. Where the motors' amperes are
printed too, it shows where the plate's numbers come from.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.engine.paper import Level
from downflow.facts.panel import (
    AMPACITY,
    COMPRESSOR_BREAKER,
    COMPRESSOR_DISCONNECT,
    DISCONNECT_PLACE,
    MOTOR_CIRCUIT,
    OUTDOOR_GFCI,
    STANDARD_BREAKERS,
    START_DROP,
    UNIT_PLATE,
    VOLTAGE_DROP,
)
from downflow.physics import outdoor_circuit as circuit
from downflow.sources import ARITHMETIC

CALCULATOR = Calculator(
    id="outdoor-circuit",
    title="Outdoor unit circuit",
    phase="power",
    question="Do breaker, wire and disconnect fit the outdoor unit's plate?",
    reads=("outdoor_mca_a", "outdoor_mocp_a", "outdoor_breaker_a", "outdoor_wire",
           "outdoor_terminals", "outdoor_wire_ft", "outdoor_unit_a", "disconnect_a",
           "disconnect_ft", "disconnect_seen", "code_edition", "outdoor_gfci", "supply_v"),
    may_read=("compressor_rla_a", "outdoor_fan_a", "compressor_lra_a", "volts_load_off",
              "volts_load_on", "load_on_a"),
    gives=("outdoor_wire_a", "outdoor_disconnect_need_a", "outdoor_run_drop_pct",
           "outdoor_start_drop_pct", "outdoor_mca_worked_a", "outdoor_mocp_worked_a"),
)

SIGHT_FT = 50.0
RUN_DROP_PCT = 3.0
START_DROP_PCT = 10.0
SIGNS = "licensed electrician"


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.outdoor_mocp_a >= job.outdoor_mca_a, "outdoor_mocp_a",
                      "is below the minimum circuit ampacity on the same plate. Were the two "
                      "numbers swapped?")
    _supply_refusals(job)
    row = next(r for r in tables.rows("wire_ampacity")
               if r.material == "cu" and r.size == job.outdoor_wire)
    carries = row.ampacity_75c_a if job.outdoor_terminals == "75" else row.ampacity_60c_a
    paper.lookup("Copper conductor by the column of its terminals", AMPACITY, "A", carries,
                 row=[(f"{row.size} AWG, 60 °C", row.ampacity_60c_a),
                      (f"{row.size} AWG, 75 °C", row.ampacity_75c_a)])
    need = paper.step("d = 1.15 * i", COMPRESSOR_DISCONNECT, "A",
                      circuit.disconnect_amps(job.outdoor_unit_a), i=job.outdoor_unit_a,
                      what="Least rating of the disconnect")
    drop = circuit.drop_volts(job.outdoor_unit_a, job.outdoor_wire_ft, row.dc_ohm_per_kft_75c)
    run = paper.step("p = 100 * 2 * i * l * r / 1000 / V", VOLTAGE_DROP, "%",
                     100 * drop / job.supply_v, i=job.outdoor_unit_a, l=job.outdoor_wire_ft,
                     r=row.dc_ohm_per_kft_75c, V=job.supply_v,
                     what="Voltage drop from panel to unit while it runs")
    paper.give("outdoor_wire_a", carries)
    paper.give("outdoor_disconnect_need_a", need)
    paper.give("outdoor_run_drop_pct", run)
    _from_the_motors(job, paper)
    _start(job, paper, row.dc_ohm_per_kft_75c)
    paper.draw(carries=carries, need=need)
    _verdicts(job, paper, carries=carries, need=need, run=run)


def _supply_refusals(job: Readings) -> None:
    off, on = job.volts_load_off, job.volts_load_on
    if off is not None and on is not None:
        job.refuse_unless(on <= off, "volts_load_on",
                          "is above the voltage with large loads off. Were the two swapped?")


def _from_the_motors(job: Readings, paper: Paper) -> None:
    rla, fan = job.compressor_rla_a, job.outdoor_fan_a
    if rla is None or fan is None:
        paper.verdict("plate-agrees", "fine",
                      "The plate prints no rated-load amperes, as on variable-speed units: its own "
                      "two numbers stand.", source=UNIT_PLATE, best="look", signs=SIGNS)
        return
    mca = paper.step("a = 1.25 * c + f", MOTOR_CIRCUIT, "A",
                     circuit.least_ampacity_amps(rla, fan), c=rla, f=fan,
                     what="Circuit ampacity worked from the motors")
    ratings = [r.rating_a for r in tables.rows("standard_breakers")]
    ceiling = paper.step("b = 2.25 * c + f", COMPRESSOR_BREAKER, "A",
                         circuit.breaker_limit_amps(rla, fan, hard_start=True), c=rla, f=fan,
                         what="Ceiling for the breaker, worked from the motors")
    job.refuse_unless(ceiling >= min(ratings), "compressor_rla_a",
                      "so small that no standard breaker would guard it. Is it the compressor's?")
    job.stop_if_refused()
    mocp = circuit.standard_at_most(ceiling, ratings)
    above = min(r for r in ratings if r > mocp)
    paper.lookup("Standard rating that is not above it", STANDARD_BREAKERS, "A", mocp,
                 row=[("at most", mocp), ("next above", above)])
    paper.give("outdoor_mca_worked_a", mca)
    paper.give("outdoor_mocp_worked_a", mocp)
    paper.limit("plate-agrees", job.outdoor_mca_a, at_least=0.97 * mca,
                of="outdoor_mca_worked_a", source=MOTOR_CIRCUIT, beyond="look", best="look",
                signs=SIGNS,
                fine="The plate's ampacity agrees with its motors.",
                look="The plate's ampacity, {value}, is below what its motors make, {limit}: one "
                     "of the numbers is misread.",
                do="Read the plate again.")


def _start(job: Readings, paper: Paper, ohm: float) -> None:
    start = job.compressor_lra_a
    known = None not in (job.volts_load_off, job.volts_load_on, job.load_on_a)
    if start is None or not known:
        paper.verdict(
            "start-dip", "fine" if start is None else "look",
            "The plate prints no locked-rotor amperes: a variable-speed compressor starts softly."
            if start is None else
            "The dip at start is not known: the supply's own resistance has not been read.",
            source=START_DROP, best="look", signs=SIGNS,
            do="" if start is None else
            "Read the voltage with a large load off and on, and its current.")
        return
    supply = paper.step("z = (Vo - Vl) / c", ARITHMETIC, "",
                        circuit.source_ohm(job.volts_load_off, job.volts_load_on, job.load_on_a),
                        Vo=job.volts_load_off, Vl=job.volts_load_on, c=job.load_on_a,
                        what="Resistance of the supply, in ohms, from two voltages and a current")
    dip = circuit.start_drop_volts(start, job.outdoor_wire_ft, ohm, supply)
    percent = paper.step("s = 100 * (2 * j * l * r / 1000 + j * z) / V", VOLTAGE_DROP, "%",
                         100 * dip / job.volts_load_off, j=start, l=job.outdoor_wire_ft, r=ohm,
                         z=supply, V=job.volts_load_off,
                         what="Voltage dip in the moment of starting, at most")
    paper.give("outdoor_start_drop_pct", percent)
    paper.limit("start-dip", percent, at_most=START_DROP_PCT, of="outdoor_start_drop_pct",
                source=START_DROP, beyond="look", best="look", signs=SIGNS,
                fine="The dip at start, {value} at most, is one that lights and motors ride out.",
                look="The dip at start may reach {value}: lights will blink, and a hot compressor "
                     "may not start.",
                do="Ask the utility about the supply, or the maker about a start aid.")


def _verdicts(job: Readings, paper: Paper, *, carries: float, need: float, run: float) -> None:
    paper.limit("breaker", job.outdoor_breaker_a, at_most=job.outdoor_mocp_a, unit="A",
                decimals=0, source=UNIT_PLATE, safety=True, best="look", signs=SIGNS,
                fine="The breaker is not above the largest that the plate allows.",
                hold="The breaker, {value}, is above the largest that the plate allows, {limit}.",
                do="Take a breaker within the plate before power goes on.")
    paper.limit("breaker-carries", job.outdoor_breaker_a, at_least=job.outdoor_mca_a, unit="A",
                decimals=0, source=UNIT_PLATE, beyond="look", best="look", signs=SIGNS,
                fine="The breaker is not below the circuit ampacity.",
                look="The breaker, {value}, is below the circuit ampacity, {limit}: it will trip.",
                do="Take the next standard size within the plate.")
    paper.limit("wire", carries, at_least=job.outdoor_mca_a, of="outdoor_wire_a",
                source=AMPACITY, safety=True, best="look", signs=SIGNS,
                fine="The conductor carries what the plate asks for.",
                hold="The conductor carries {value}; the plate asks for {limit}.",
                do="Take a larger conductor, or terminals marked for 75 °C at both ends.")
    paper.limit("disconnect-rating", job.disconnect_a, at_least=need,
                of="outdoor_disconnect_need_a", source=COMPRESSOR_DISCONNECT, safety=True,
                best="look", signs=SIGNS,
                fine="The disconnect is rated for this unit.",
                hold="The disconnect is rated {value}; {limit} is the least.",
                do="Take a larger disconnect.")
    seen = job.disconnect_seen and job.disconnect_ft <= SIGHT_FT
    paper.verdict("disconnect-place", "fine" if seen else "hold",
                  "The disconnect is in sight of the unit." if seen else
                  "The disconnect is not in sight of the unit: in sight is visible and at most "
                  "{far} away.", source=DISCONNECT_PLACE, best="look", signs=SIGNS, safety=True,
                  do="" if seen else "Move it into sight before anyone works on the unit.",
                  far=Quantity(SIGHT_FT, "ft", 0))
    _ground_fault(job, paper)
    paper.limit("run-drop", run, at_most=RUN_DROP_PCT, of="outdoor_run_drop_pct",
                source=VOLTAGE_DROP, beyond="look", best="look", signs=SIGNS,
                fine="Voltage drop while running: {value}.",
                look="Voltage drop while running is {value}; {limit} is what the code recommends "
                     "at most.",
                do="Take the next larger conductor, and its ground in proportion.")


def _ground_fault(job: Readings, paper: Paper) -> None:
    level: Level
    if job.outdoor_gfci:
        level, text, do = "fine", "The circuit has ground-fault protection.", \
            "If it trips in defrost or at start, that is a fault to find, not a breaker to swap."
    elif job.code_edition == "2017":
        level, text, do = "fine", "This edition does not ask for ground-fault protection here.", ""
    elif job.code_edition == "2026":
        level, text, do = "hold", ("The 2026 edition asks for ground-fault protection here once "
                                   "its exception has ended, on 1 September 2026."), \
            "Have the electrician plan a ground-fault breaker that the unit's maker accepts."
    elif job.code_edition == "unknown":
        level, text, do = "look", ("Which edition of the code is in force is not known, and it "
                                   "decides about ground-fault protection."), \
            "Ask the building department."
    else:
        level, text, do = "look", ("This edition asks for ground-fault protection at dwellings "
                                   "outdoors; its exception for listed heat pumps ends 1 September "
                                   "2026."), \
            "Ask the official whether the exception is still in force on the day of the permit."
    paper.verdict("ground-fault", level, text, source=OUTDOOR_GFCI, do=do, best="look",
                  signs=SIGNS)


def figure(sheet: Sheet) -> str:
    """The circuit from panel to unit with its ratings."""
    job = sheet.job
    d = drawing.Drawing(
        "outdoor-circuit", "From the panel to the outdoor unit",
        f"Breaker {sheet.text(job.outdoor_breaker_a, 'A', 0)}, at most "
        f"{sheet.text(job.outdoor_mocp_a, 'A', 0)} by the plate. Conductor {job.outdoor_wire} AWG "
        f"copper, {sheet.text(job.outdoor_wire_ft, 'ft', 0)}, carries "
        f"{sheet.text(sheet.values['outdoor_wire_a'], 'A', 0)}; the plate asks for "
        f"{sheet.text(job.outdoor_mca_a, 'A', 1)}. Disconnect "
        f"{sheet.text(job.disconnect_a, 'A', 0)}, "
        f"{sheet.text(job.disconnect_ft, 'ft', 0)} from the unit.", 250)
    d.rect(14, 60, 70, 110, "of").text(49, 50, "panel", "b m")
    d.rect(34, 100, 30, 24, "if").balloon(1, 49, 196, to=(49, 124))
    d.line(84, 112, 196, 112, "o").balloon(2, 140, 78, to=(140, 112))
    d.rect(180, 84, 36, 52, "of").balloon(3, 198, 196, to=(198, 136))
    d.line(216, 112, 254, 112, "o")
    d.rect(254, 66, 72, 104, "of").circle(290, 106, 24, "if").text(290, 50, "unit", "b m")
    d.line(244, 170, 336, 170, "o").balloon(4, 290, 212, to=(290, 160))
    return d.figure(legend=[
        f"breaker {sheet.text(job.outdoor_breaker_a, 'A', 0)}",
        f"{job.outdoor_wire} AWG copper carries "
        f"{sheet.text(sheet.values['outdoor_wire_a'], 'A', 0)}",
        f"disconnect {sheet.text(job.disconnect_a, 'A', 0)}",
        f"plate: wire at least {sheet.text(job.outdoor_mca_a, 'A', 1)}, breaker at most "
        f"{sheet.text(job.outdoor_mocp_a, 'A', 0)}"])
