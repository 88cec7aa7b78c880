"""Tables that are worked out by the same code as the calculators.

They are made when a page is built, so that a table and a calculator cannot disagree.
Each takes its numbers from `physics` and its limits from the calculators' own facts.
"""

from __future__ import annotations

from downflow import tables
from downflow.calculators import condensate_trap, kit_circuit
from downflow.facts.controls import CONTROL_DROP
from downflow.facts.panel import COMPRESSOR_BREAKER
from downflow.physics import (
    circuit,
    condensate,
    control_wiring,
    ducts,
    fresh_air,
    moist_air,
    outdoor_circuit,
    outdoor_site,
    pressure_test,
    refrigerant,
    return_path,
)
from downflow.render.reference_tables import Cell, Reference, register

SEA_LEVEL_FT = 0.0
HIGH_FT = 5000.0
NAMES = (("R-454B", "refrigerant_r454b"), ("R-32", "refrigerant_r32"),
         ("R-410A", "refrigerant_r410a"), ("R-22", "refrigerant_r22"))
BLOWER_A = 5.0
KITS_KW = (5.0, 7.5, 8.0, 9.6, 10.0)
RATED_V = 240.0
FRICTION_CFM = (50.0, 75.0, 100.0, 150.0, 200.0, 300.0, 400.0, 600.0, 800.0, 1000.0, 1200.0)
FRICTION_IN = (4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0, 14.0)
MOST_FRICTION = 1.0


def _pressure(elevation_ft: float) -> Reference:
    air = moist_air.atmosphere_psia(elevation_ft)
    rows: list[list[Cell]] = []
    for temp_f in range(-40, 151, 5):
        row: list[Cell] = [temp_f]
        for name, table in NAMES:
            for dew in ((False, True) if name == "R-454B" else (True,)):
                psia = refrigerant.saturation_psia(temp_f, tables.rows(table), dew=dew)
                row.append(round(refrigerant.gauge_psig(psia, air)))
        rows.append(row)
    place = "at sea level" if elevation_ft == 0 else f"at {elevation_ft:,.0f} ft"
    return Reference(
        f"Saturation pressure on a gauge, {place}",
        ["°F", "R-454B bubble, psig", "R-454B dew, psig", "R-32, psig", "R-410A, psig",
         "R-22, psig"], rows, "CoolProp 8.0, saturation tables; US Standard Atmosphere, 1976",
        "Bubble for subcooling, dew for superheat. Charts of R-454B differ by about one percent "
        "of absolute pressure.")


def _traps() -> Reference:
    rows: list[list[Cell]] = []
    for tenth in (0, 2, 4, 5, 6, 8, 10, 12, 15, 20):
        suction = tenth / 10
        head = max(condensate.head_in(suction), condensate_trap.LEAST_HEAD_IN)
        seal = max(condensate.seal_in(head), condensate_trap.LEAST_SEAL_IN)
        row: list[Cell] = [f"{suction:.1f}", f"{head:.2f}", f"{seal:.2f}"]
        row += [f"{condensate.total_drop_in(head, seal, pipe.outside_in):.2f}"
                for pipe in tables.rows("drain_pipe")]
        rows.append(row)
    return Reference(
        "Condensate trap of a draw-through cabinet",
        ["suction at the pan, in w.c.", "drop, in", "seal, in",
         *(f"in all, {pipe.size} in pipe, in" for pipe in tables.rows("drain_pipe"))], rows,
        "Makers' manuals for draw-through air handlers",
        "Drop of the suction and 1 in, 2 in at least; seal of half of it, 1 in at least. Elbows "
        "and tees that one can buy often make the seal deeper: see the calculator.")


def _kits() -> Reference:
    wires = tables.rows("wire_ampacity")
    breakers = tables.rows("standard_breakers")
    grounds = tables.rows("equipment_ground")
    rows: list[list[Cell]] = []
    for kw in KITS_KW:
        amps = circuit.amps(kw, RATED_V)
        need = circuit.least_ampacity_a(amps, BLOWER_A)
        breaker = circuit.next_standard_a(need, breakers)
        found = circuit.smallest_conductor(need, breaker, wires, breakers,
                                           kit_circuit.NM_TERMINAL_C, kit_circuit.INSULATION_C,
                                           1.0, 1.0)
        ground = circuit.ground_size(breaker, grounds)
        rows.append([f"{kw:g}", f"{amps:.1f}", f"{need:.1f}", f"{breaker:.0f}",
                     found.size if found else "–", ground])
    return Reference(
        f"Kit on one 240 V circuit, with a blower of {BLOWER_A:g} A",
        ["kit, kW", "kit, A", "125 % of kit and blower, A", "breaker, A", "copper, AWG",
         "ground, AWG"], rows,
        "National Electrical Code (NFPA 70-2023), 424.4(B), 240.6(A), tables 310.16 and 250.122",
        "Copper, 60 °C terminals, air of 86 °F, cable by itself. The label and local code come "
        "first; a licensed electrician signs.")


def _outdoor() -> Reference:
    ratings = [row.rating_a for row in tables.rows("standard_breakers")]
    rows: list[list[Cell]] = []
    for rated in (8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 24.0, 28.0):
        fan = 1.0
        need = outdoor_circuit.least_ampacity_amps(rated, fan)
        first = outdoor_circuit.standard_at_most(
            outdoor_circuit.breaker_limit_amps(rated, fan), ratings)
        most = outdoor_circuit.standard_at_most(
            outdoor_circuit.breaker_limit_amps(rated, fan, hard_start=True), ratings)
        rows.append([f"{rated:g}", f"{need:.1f}", f"{first:.0f}", f"{most:.0f}",
                     f"{outdoor_circuit.disconnect_amps(rated + fan):.1f}"])
    return Reference(
        "Outdoor unit, with a fan of 1 A",
        ["compressor, rated load, A", "circuit ampacity, A", "breaker, A",
         "breaker for a hard start, at most, A", "disconnect, at least, A"], rows,
        f"{COMPRESSOR_BREAKER.document}, 440.12, 440.22(A), 440.33",
        "Where the plate prints its own numbers, they rule; a variable-speed unit always does.")


def _friction() -> Reference:
    rough = next(r.roughness_ft for r in tables.rows("duct_roughness")
                 if r.material == "galvanized")
    rows: list[list[Cell]] = []
    for flow in FRICTION_CFM:
        row: list[Cell] = [f"{flow:.0f}"]
        for size in FRICTION_IN:
            loss = ducts.friction_inwc(flow, size, 100.0, rough)
            row.append(f"{loss:.3f}" if loss <= MOST_FRICTION else "–")
        rows.append(row)
    return Reference(
        "Friction in round metal duct, in w.c. for each 100 ft",
        ["cfm", *(f"{size:g} in" for size in FRICTION_IN)], rows,
        "Fundamentals handbook 2021, ch. 21, equations 18 and 19",
        "Standard air, galvanized metal. Flexible duct that is not pulled straight loses several "
        "times as much: see the calculator.")


def _transfer() -> Reference:
    rows: list[list[Cell]] = []
    for flow in (30.0, 50.0, 75.0, 100.0, 125.0, 150.0, 200.0):
        rows.append([f"{flow:.0f}",
                     *(f"{return_path.transfer_area_in2(flow, limit):.0f}"
                       for limit in (3.0, 5.0)),
                     f"{return_path.room_limit_pa(flow):.0f}"])
    return Reference(
        "Free area for the air's way back out of a closed room",
        ["air to the room, cfm", "for 3 Pa, in²", "for 5 Pa, in²", "limit for this room, Pa"],
        rows, "Flow through an opening; guide of the national laboratory PNNL on transfer grilles",
        "Standard air. Free area, not the face of a grille.")


def _nitrogen() -> Reference:
    rows: list[list[Cell]] = []
    for change in (-40, -30, -20, -10, -5, 5, 10, 20, 30):
        row: list[Cell] = [f"{change:+d}".replace("-", "−")]
        for start in (150.0, 300.0, 450.0, 600.0):
            air = moist_air.atmosphere_psia(SEA_LEVEL_FT)
            row.append(f"{pressure_test.expected_psig(start, 70.0, 70.0 + change, air):.1f}")
        rows.append(row)
    return Reference(
        "Nitrogen that started at 70 °F, on a gauge at sea level",
        ["warmer by, °F", "from 150 psig", "from 300 psig", "from 450 psig", "from 600 psig"],
        rows, "CoolProp 8.0, nitrogen at constant density",
        "Real nitrogen: it loses a little more in the cold than the plain gas law says.")


def _vacuum() -> Reference:
    rows: list[list[Cell]] = []
    for temp_f in (-20, 0, 10, 20, 32, 40, 50, 60, 70, 80, 90, 100):
        micron = pressure_test.microns_from_psia(moist_air.vapor_pressure_psia(temp_f))
        rows.append([temp_f, int(round(micron, -1 if micron < 10_000 else -2))])
    return Reference(
        "Pressure that water, or ice, holds in a vacuum", ["°F", "microns"], rows,
        "Fundamentals handbook 2021, ch. 1 (psychrolib)",
        "Below freezing a low reading does not prove it dry.")


def _sound() -> Reference:
    rows: list[list[Cell]] = []
    for feet in (5, 10, 15, 20, 30, 50, 75, 100):
        rows.append([feet, *(f"{outdoor_site.pressure_from_power_db(0.0, 0.3048 * feet, k):.0f}"
                             .replace("-", "−") for k in (2.0, 4.0, 8.0))])
    return Reference(
        "Sound pressure less sound power, dB",
        ["ft", "open ground", "one wall", "corner"], rows, "Sound of a point source",
        "Add it to the sound power on the data sheet. Open air, nothing in between.")


def _ventilation() -> Reference:
    rows: list[list[Cell]] = []
    for area in (600, 800, 1000, 1200, 1400, 1600, 1800, 2000):
        rows.append([area, f"{fresh_air.home_cfm(area):.0f}",
                     *(f"{fresh_air.national_cfm(area, n):.0f}" for n in (2, 3, 4))])
    return Reference(
        "Whole-house ventilation, cfm",
        ["floor, ft²", "federal rule for new manufactured homes", "ASHRAE 62.2, 2 bedrooms",
         "3 bedrooms", "4 bedrooms"], rows, "24 CFR 3280.103(b); ASHRAE 62.2",
        "On the average over each hour, before any credit for leaks.")


def _control() -> Reference:
    rows: list[list[Cell]] = []
    for wire in tables.rows("control_wire"):
        rows.append([wire.gauge_awg, f"{wire.ohm_per_kft:g}",
                     *(f"{control_wiring.longest_ft(24.0, 22.0, amps, wire.ohm_per_kft):.0f}"
                       for amps in (0.5, 1.0, 1.5))])
    return Reference(
        "Control cable: longest run that loses 2 V of 24 V, ft",
        ["AWG", "ohm for 1,000 ft", "0.5 A", "1 A", "1.5 A"], rows,
        f"{CONTROL_DROP.document}, {CONTROL_DROP.section}", "One conductor out and one back.")


register("pressure-temperature", lambda: _pressure(SEA_LEVEL_FT))
register("pressure-temperature-5000-ft", lambda: _pressure(HIGH_FT))
register("trap-depths", _traps)
register("breaker-and-wire", _kits)
register("outdoor-breaker-and-wire", _outdoor)
register("friction-per-100-ft", _friction)
register("transfer-areas", _transfer)
register("nitrogen-by-temperature", _nitrogen)
register("water-in-vacuum", _vacuum)
register("sound-by-distance", _sound)
register("ventilation-rates", _ventilation)
register("control-cable", _control)
