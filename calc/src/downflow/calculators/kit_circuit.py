"""Circuit for the air handler and its heat kit.

The label counts first. Then the current at the rated voltage, the continuous-load rule,
the breaker, and the limit for a single appliance in a manufactured home. The conductor is
copper, by the terminals' column, after heat and company along the route. A licensed
electrician does the work and signs.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts.kit_circuit import (
    BANKS,
    BREAKER_SIZES,
    DROP_NOTE,
    GROUND_TABLE,
    KIT_LABEL,
    ONE_APPLIANCE,
    SPACE_HEATING,
    WIRE_TABLE,
)
from downflow.physics import circuit
from downflow.sources import OHMS_LAW, UNITS

CALCULATOR = Calculator(
    id="kit-circuit",
    title="Circuit for air handler and kit",
    phase="power",
    question="Which breaker and which wire does this kit need?",
    reads=("kit_chosen_kw", "kit_rated_v", "supply_v", "indoor_blower_a", "kit_circuits",
           "kit_cable", "kit_terminals", "kit_route_f", "kit_wires_together"),
    may_read=("kit_label_mca_a", "kit_label_breaker_a", "kit_breaker_planned_a",
              "kit_wire_planned", "kit_wire_ft"),
    gives=("kit_breaker_a", "kit_wire_awg", "kit_circuit_a", "kit_least_ampacity_a",
           "kit_wire_ampacity_a", "kit_ground_awg", "kit_amps_here_a", "kit_drop_pct"),
)

SIGNS = "licensed electrician"
DROP_LIMIT_PCT = 3.0
NM_TERMINAL_C = 60
INSULATION_C = 90


def awg(size: str) -> float:
    """A conductor size as a number: 0 for 1/0, -1 for 2/0."""
    return float(1 - int(size[0])) if size.endswith("/0") else float(size)


def solve(job: Readings, paper: Paper) -> None:
    wires = tables.typed("wire_ampacity", tables.Wire)
    breakers = tables.typed("standard_breakers", tables.StandardBreaker)
    heater = paper.step("I = 1000 * k / V / n", OHMS_LAW, "A",
                        circuit.amps(job.kit_chosen_kw, job.kit_rated_v) / job.kit_circuits,
                        k=job.kit_chosen_kw, V=job.kit_rated_v, n=job.kit_circuits,
                        what="Current of the elements at the label's voltage, one circuit")
    both = paper.step("It = I + b", OHMS_LAW, "A", heater + job.indoor_blower_a, I=heater,
                      b=job.indoor_blower_a, what="With the blower on the same circuit")
    worked = paper.step("In = 1.25 * It", SPACE_HEATING, "A",
                        circuit.least_ampacity_a(heater, job.indoor_blower_a), It=both,
                        what="Least ampacity: electric heat counts as a continuous load")
    need = worked
    if job.kit_label_mca_a is not None:
        need = paper.step("In = max(L, Iw)", KIT_LABEL, "A", max(job.kit_label_mca_a, worked),
                          L=job.kit_label_mca_a, Iw=worked,
                          what="The label's circuit ampacity or this sum, the larger")
    least = circuit.next_standard_a(need, breakers)
    below = max((b.rating_a for b in breakers if b.rating_a < need), default=0.0)
    chosen = paper.decide("breaker", job.kit_breaker_planned_a or least)
    paper.lookup("Next standard size at or above", BREAKER_SIZES, "A", least,
                 row=(("the size below", below), ("this size", least)))
    wire, conductor = _wire(job, paper, wires, breakers, need, chosen)
    ground_size = _ground(job, paper, wires, wire, conductor, chosen)
    here = paper.step("Ih = I * U / V", OHMS_LAW, "A",
                      circuit.amps_at_voltage(job.kit_chosen_kw, job.kit_rated_v, job.supply_v)
                      / job.kit_circuits, I=heater, U=job.supply_v, V=job.kit_rated_v,
                      what="Current at this home's voltage: what a clamp meter should read")
    paper.give("kit_breaker_a", chosen)
    paper.give("kit_wire_awg", awg(wire.size))
    paper.give("kit_circuit_a", both)
    paper.give("kit_least_ampacity_a", need)
    paper.give("kit_wire_ampacity_a", conductor)
    paper.give("kit_ground_awg", awg(ground_size))
    paper.give("kit_amps_here_a", here)
    _drop(job, paper, wire, here + job.indoor_blower_a)
    _verdicts(job, paper, heater=heater, both=both, need=need, chosen=chosen, wire=wire,
              ampacity=conductor)
    paper.draw(rows=[("kit and blower", both), ("must carry", need), ("breaker", chosen),
                     ("wire carries", conductor)])


def _factors(job: Readings, paper: Paper) -> tuple[float | None, float]:
    celsius = paper.step("c = (f - 32) / 1.8", UNITS, "°C", (job.kit_route_f - 32) / 1.8,
                         f=job.kit_route_f, what="Hottest air along the cable")
    ambient = circuit.ambient_factor(celsius, INSULATION_C,
                                     tables.typed("ambient_correction",
                                                  tables.AmbientCorrection))
    count = circuit.count_factor(int(job.kit_wires_together),
                                 tables.typed("conductor_count", tables.ConductorCount))
    if ambient is not None:
        paper.lookup("Ampacity factor for that heat, 90 °C wire", WIRE_TABLE, "", ambient,
                     row=(("this step of the table", ambient),))
    paper.lookup("Ampacity factor for wires that lie together", WIRE_TABLE, "", count,
                 row=((f"{int(job.kit_wires_together)} wires", count),))
    return ambient, count


def _wire(job: Readings, paper: Paper, wires: tuple[tables.Wire, ...],
          breakers: tuple[tables.StandardBreaker, ...], need: float,
          chosen: float) -> tuple[tables.Wire, float]:
    ambient, count = _factors(job, paper)
    if ambient is None:
        job.refuse("kit_route_f", "no wire of the table may lie in air this hot. Choose another "
                                  "way for the cable.")
        job.stop_if_refused()
    marked = job.kit_terminals == "75"
    terminal = NM_TERMINAL_C if job.kit_cable == "nm" else circuit.terminal_column_c(need, marked)
    if job.kit_wire_planned is not None:
        wire = circuit.wire_of(job.kit_wire_planned, wires)
    else:
        found = circuit.smallest_conductor(need, chosen, wires, breakers, terminal, INSULATION_C,
                                           ambient, count)
        if found is None:
            job.refuse("kit_route_f", "no copper conductor of the table will do. Divide the kit "
                                      "into circuits, or choose a cooler way.")
            job.stop_if_refused()
        assert found is not None
        wire = circuit.wire_of(paper.decide("wire", found.size), wires)
    assert ambient is not None
    ampacity = paper.step(
        "A = min(t, d * fa * fc)", WIRE_TABLE, "A",
        circuit.usable_ampacity_a(wire, terminal, INSULATION_C, ambient, count),
        t=circuit.column_a(wire, terminal), d=circuit.column_a(wire, INSULATION_C), fa=ambient,
        fc=count, what=f"{wire.size} AWG copper: the terminals' column ({terminal} °C), or the "
                       "90 °C column derated, the smaller")
    return wire, ampacity


def _ground(job: Readings, paper: Paper, wires: tuple[tables.Wire, ...], wire: tables.Wire,
            ampacity: float, breaker: float) -> str:
    rows = tables.typed("equipment_ground", tables.EquipmentGround)
    size = circuit.ground_size(breaker, rows)
    own = circuit.wire_of(size, wires).circular_mils
    paper.lookup("Equipment ground by the breaker", GROUND_TABLE, "AWG", awg(size),
                 row=((f"up to {next(r.ocpd_max_a for r in rows if breaker <= r.ocpd_max_a):.0f} A",
                       awg(size)),))
    breakers = tables.typed("standard_breakers", tables.StandardBreaker)
    terminal = NM_TERMINAL_C if job.kit_cable == "nm" else (75 if job.kit_terminals == "75" else 60)
    enough = circuit.smallest_conductor(min(ampacity, breaker), min(breaker, ampacity), wires,
                                        breakers, terminal, INSULATION_C, 1.0, 1.0)
    if enough is None or wire.circular_mils <= enough.circular_mils:
        return size
    grown = paper.step("G = g * w / w0", GROUND_TABLE, "cmil",
                       circuit.upsized_ground_mils(own, wire.circular_mils, enough.circular_mils),
                       g=own, w=wire.circular_mils, w0=enough.circular_mils,
                       what="Hot wires made larger: the ground grows with them")
    return circuit.ground_of_mils(grown, wires)


def _drop(job: Readings, paper: Paper, wire: tables.Wire, running: float) -> None:
    if job.kit_wire_ft is None:
        return
    by_area = paper.step("v = 2 * 12.9 * I * L / CM", DROP_NOTE, "V",
                         circuit.drop_by_area_v(running, job.kit_wire_ft, wire.circular_mils,
                                                circuit.K_COPPER),
                         I=running, L=job.kit_wire_ft, CM=wire.circular_mils,
                         what="Volts lost on the way, by the wire's area")
    by_table = paper.step("v = 2 * I * L * R / 1000", DROP_NOTE, "V",
                          circuit.drop_by_resistance_v(running, job.kit_wire_ft,
                                                       wire.dc_ohm_per_kft_75c),
                          I=running, L=job.kit_wire_ft, R=wire.dc_ohm_per_kft_75c,
                          what="The same by the table's resistance: a second road")
    drop = paper.step("p = 100 * max(x, y) / U", DROP_NOTE, "%",
                      100 * max(by_area, by_table) / job.supply_v, x=by_area, y=by_table,
                      U=job.supply_v, what="Share of the voltage, the larger of the two roads")
    paper.give("kit_drop_pct", drop)
    paper.limit(
        "drop", drop, at_most=DROP_LIMIT_PCT, of="kit_drop_pct", source=DROP_NOTE, beyond="look",
        best="look", signs=SIGNS,
        fine="Voltage drop {value}: below the advised {limit}.",
        look="Voltage drop {value}: above the advised {limit}.",
        do="Take a larger wire. More than this on a running kit means a hot splice: find it.",
        do_fine="More than this measured on a running kit means a hot splice: find it.")


def _verdicts(job: Readings, paper: Paper, *, heater: float, both: float, need: float,
              chosen: float, wire: tables.Wire, ampacity: float) -> None:
    size = f"{wire.size} AWG copper"
    if job.kit_label_mca_a is None or job.kit_label_breaker_a is None:
        paper.verdict("label-first", "look",
                      "The kit's own label has not been read: it outranks every number here.",
                      source=KIT_LABEL, do="Read circuit ampacity and largest breaker on the label "
                                           "for this kit, and enter them.", best="look",
                      signs=SIGNS)
    else:
        paper.limit(
            "label-first", chosen, at_most=job.kit_label_breaker_a, of="kit_breaker_a",
            source=KIT_LABEL, best="look", signs=SIGNS,
            fine="The breaker is within the largest that the label allows, {limit}.",
            hold="The breaker, {value}, is above the largest that the label allows, {limit}.",
            do="Take a breaker that the label allows; if it cannot carry the kit, the kit is "
               "wrong for this cabinet.",
            do_fine="The electrician checks label, breaker and wire together.")
    paper.limit(
        "breaker-carries", chosen, at_least=need, of="kit_breaker_a", source=SPACE_HEATING,
        best="look", signs=SIGNS,
        fine="The breaker carries the continuous load of {limit}.",
        hold="The breaker, {value}, is smaller than the continuous load of {limit}: it will trip.",
        do="Take the next standard size, if the label allows it.",
        do_fine="The electrician sets it.")
    limit = circuit.single_appliance_limit_a(both)
    printed = job.kit_label_breaker_a is not None and chosen <= job.kit_label_breaker_a
    if limit is not None and not printed:
        paper.limit(
            "single-appliance", chosen, at_most=limit, of="kit_breaker_a", source=ONE_APPLIANCE,
            beyond="look", best="look", signs=SIGNS,
            fine="Within 150 % of this single appliance, {limit}.",
            look="Is this breaker size on the label? {value} is above 150 % of a single appliance "
                 "in a manufactured home, {limit}.",
            do="Find the size on the label. If it is not there, ask the code official.",
            do_fine="The label still counts first.")
    paper.limit(
        "wire-carries", ampacity, at_least=need, of="kit_wire_ampacity_a", source=WIRE_TABLE,
        best="look", signs=SIGNS, size=size,
        fine="{size} carries {value} in its place; {limit} is asked for.",
        hold="{size} carries only {value} in its place, and {limit} is asked for.",
        do="Take a larger wire, or a cooler way for it.",
        do_fine="Copper only inside a manufactured home; old aluminum in the panel is shown to the "
                "electrician first.")
    breakers = tables.typed("standard_breakers", tables.StandardBreaker)
    paper.limit(
        "wire-protected", chosen, at_most=circuit.largest_breaker_a(wire, ampacity, breakers),
        of="kit_breaker_a", source=BREAKER_SIZES, best="look", signs=SIGNS, size=size,
        fine="The breaker protects {size}.",
        hold="The breaker, {value}, is too large for {size}: {limit} is the most.",
        do="Take a larger wire or a smaller breaker.")
    paper.limit(
        "one-bank", heater, at_most=circuit.BANK_A, unit="A", decimals=1, source=BANKS,
        best="look", beyond="hold", signs=SIGNS,
        fine="One bank of elements on one circuit.",
        hold="{value} on one circuit: elements above {limit} are divided into parts, each on its "
             "own protection.",
        do="Enter the number of circuits that the label asks for.",
        do_fine="The kit's own diagram shows it.")


def figure(sheet: Sheet) -> str:
    """Load, need, breaker and wire as bars."""
    rows = sheet.drawn["rows"]
    assert isinstance(rows, list)
    breaker = Quantity(sheet.values["kit_breaker_a"], "A", 0).text(sheet.system)
    return drawing.bars("kit-circuit", "What the circuit carries and what it must", rows, "A",
                        head="amperes", decimals=1, system=sheet.system, keep_order=True,
                        ).figure(f"The wire carries what it must, the breaker is {breaker}.")
