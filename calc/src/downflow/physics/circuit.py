"""Circuit of an air handler with an electric heat kit: current, breaker, wire, ground, drop.

The label and the local code outrank every number here; a licensed electrician signs.
Sections are those of NFPA 70 (2023 numbering).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from downflow.tables import (
        AmbientCorrection,
        ConductorCount,
        EquipmentGround,
        StandardBreaker,
        Wire,
    )

CONTINUOUS = 1.25
SINGLE_APPLIANCE = 1.5
SINGLE_APPLIANCE_FROM_A = 13.3
BANK_A = 48.0
K_COPPER = 12.9
K_ALUMINUM = 21.2
AWG_SMALLEST_IN = 0.005
AWG_RATIO = 92.0
AWG_STEPS = 39.0
AWG_FIRST = 36.0
TERMINALS_60C_UP_TO_A = 100.0


def amps(kw: float, volts: float) -> float:
    """Current of a single-phase resistive load at its rated voltage. [A]"""
    if volts <= 0:
        raise ValueError(f"voltage {volts} V is not above 0")
    return kw * 1000 / volts


def amps_at_voltage(rated_kw: float, rated_volts: float, volts: float) -> float:
    """Current of a heating element at another voltage than its rating.

    Args:
        rated_kw: Power on the label. [kW]
        rated_volts: Voltage for which the label states it. [V]
        volts: Voltage at the kit. [V]

    Returns:
        Current. [A]

    Source: a resistance: current goes with voltage.
    """
    return amps(rated_kw, rated_volts) * volts / rated_volts


def least_ampacity_a(heater_a: float, blower_a: float) -> float:
    """Least ampacity and breaker rating of a fixed electric heating circuit. [A]

    Source: NFPA 70-2023, 424.4(B): 125 % of heater and blower (424.3(B) up to 2017).
    """
    if heater_a < 0 or blower_a < 0:
        raise ValueError(f"currents {heater_a} and {blower_a} A must not be below 0")
    return CONTINUOUS * (heater_a + blower_a)


def next_standard_a(need_a: float, breakers: Sequence[StandardBreaker]) -> float:
    """Smallest standard rating that is at least `need_a`. [A] Source: NFPA 70, 240.6(A)."""
    fits = [b.rating_a for b in breakers if b.rating_a >= need_a - 1e-9]
    if not fits:
        raise ValueError(f"{need_a} A is above the largest standard rating")
    return min(fits)


def single_appliance_limit_a(rating_a: float) -> float | None:
    """Largest breaker of a single appliance on its own circuit in a manufactured home.

    Args:
        rating_a: Rating of the appliance. [A]

    Returns:
        150 % of the rating from 13.3 A on, nothing below. [A] The maximum marked on a
        motor-driven appliance comes first.

    Source: 24 CFR 3280.804(g)(1); NFPA 70, 550.11(B).
    """
    return SINGLE_APPLIANCE * rating_a if rating_a >= SINGLE_APPLIANCE_FROM_A else None


def element_banks(heater_a: float) -> int:
    """Least number of parts, each on its own protection, that elements are divided into.

    Source: NFPA 70, 424.22(B): parts of 48 A at most on 60 A at most.
    """
    return max(1, math.ceil(heater_a / BANK_A - 1e-9))


def column_a(wire: Wire, terminal_c: int) -> float:
    """Ampacity of a conductor in the column of a temperature (60, 75 or 90 °C). [A]"""
    if terminal_c not in (60, 75, 90):
        raise ValueError(f"{terminal_c} °C is not a column: 60, 75 or 90")
    return float(getattr(wire, f"ampacity_{terminal_c}c_a"))


def terminal_column_c(circuit_a: float, marked_75c: bool) -> int:
    """Which temperature column the terminals allow. [°C]

    Source: NFPA 70, 110.14(C)(1): 60 °C up to 100 A unless marked for 75 °C.
    """
    return 75 if marked_75c or circuit_a > TERMINALS_60C_UP_TO_A else 60


def ambient_factor(
    ambient_c: float, insulation_c: int, rows: Sequence[AmbientCorrection]
) -> float | None:
    """Ampacity factor for the air along the route; nothing where the wire is not allowed.

    Source: NFPA 70, table 310.15(B)(1)(1).
    """
    for row in sorted(rows, key=lambda r: r.ambient_c_max):
        # the table steps by whole degrees: 30.4 °C counts as 31
        if math.ceil(ambient_c - 1e-9) <= row.ambient_c_max:
            factor = getattr(row, f"factor_{insulation_c}c")
            return None if factor is None else float(factor)
    return None


def count_factor(conductors: int, rows: Sequence[ConductorCount]) -> float:
    """Ampacity factor for current-carrying conductors that lie together.

    Source: NFPA 70, table 310.15(C)(1).
    """
    if conductors < 1:
        raise ValueError(f"{conductors} conductors is below 1")
    return next(r.factor for r in rows if conductors <= r.count_max)


def usable_ampacity_a(
    wire: Wire,
    terminal_c: int,
    insulation_c: int,
    ambient: float | None,
    count: float,
) -> float:
    """Ampacity of a conductor in its place: derated, and never above the terminals' column.

    Args:
        wire: Row of the ampacity table.
        terminal_c: Column of the terminals; 60 for NM-B cable (334.80). [°C]
        insulation_c: Column of the insulation, the start for derating. [°C]
        ambient: Factor for the air along the route, nothing if not allowed there.
        count: Factor for conductors together.

    Returns:
        Ampacity that a load may use. [A]

    Source: NFPA 70, 310.15(B) and (C), 110.14(C)(1), 334.80.
    """
    if ambient is None:
        return 0.0
    return min(column_a(wire, terminal_c), column_a(wire, insulation_c) * ambient * count)


def largest_breaker_a(wire: Wire, ampacity_a: float, breakers: Sequence[StandardBreaker]) -> float:
    """Largest breaker that protects a conductor. [A]

    Source: NFPA 70, 240.4(B) (next standard size up where the ampacity is not one) and
    240.4(D) (small conductors).
    """
    up = next_standard_a(ampacity_a, breakers)
    if wire.small_conductor_ocpd_max_a is not None:
        return min(up, wire.small_conductor_ocpd_max_a)
    return up


class Conductor(NamedTuple):
    """A conductor for a circuit: size, ampacity in its place, largest breaker on it."""

    size: str
    ampacity_a: float
    largest_breaker_a: float
    circular_mils: float
    dc_ohm_per_kft_75c: float


def smallest_conductor(
    need_a: float,
    breaker_a: float,
    wires: Sequence[Wire],
    breakers: Sequence[StandardBreaker],
    terminal_c: int,
    insulation_c: int,
    ambient: float | None,
    count: float,
) -> Conductor | None:
    """Smallest copper conductor that carries a load and is protected by a breaker.

    Args:
        need_a: Least ampacity of the circuit, 125 % in it. [A]
        breaker_a: Rating of the breaker. [A]
        wires: Ampacity table; only its copper rows are used.
        breakers: Standard ratings.
        terminal_c: Column of the terminals. [°C]
        insulation_c: Column of the insulation. [°C]
        ambient: Factor for the air along the route.
        count: Factor for conductors together.

    Returns:
        The conductor, or nothing when none in the table will do.

    Holds for: copper, as inside a manufactured home (24 CFR 3280.801(e)).
    Source: NFPA 70, table 310.16 and the sections named in `usable_ampacity_a` and
    `largest_breaker_a`.
    """
    for wire in sorted((w for w in wires if w.material == "cu"), key=lambda w: w.circular_mils):
        ampacity = usable_ampacity_a(wire, terminal_c, insulation_c, ambient, count)
        if ampacity <= 0 or ampacity + 1e-9 < need_a:
            continue
        largest = largest_breaker_a(wire, ampacity, breakers)
        if largest + 1e-9 >= breaker_a:
            return Conductor(
                wire.size, ampacity, largest, wire.circular_mils, wire.dc_ohm_per_kft_75c
            )
    return None


def wire_of(size: str, wires: Sequence[Wire], material: str = "cu") -> Wire:
    """The table row of a conductor size."""
    for wire in wires:
        if wire.size == size and wire.material == material:
            return wire
    raise ValueError(f"no {material} conductor of size {size} in the table")


def ground_size(breaker_a: float, rows: Sequence[EquipmentGround]) -> str:
    """Smallest copper equipment ground for a breaker. Source: NFPA 70, table 250.122."""
    for row in sorted(rows, key=lambda r: r.ocpd_max_a):
        if breaker_a <= row.ocpd_max_a:
            return row.copper_size
    raise ValueError(f"a breaker of {breaker_a} A is beyond the table")


def upsized_ground_mils(
    ground_circular_mils: float, installed_circular_mils: float, needed_circular_mils: float
) -> float:
    """Area that the equipment ground needs when the hot conductors were made larger.

    Args:
        ground_circular_mils: Area of the ground by table. [circular mils]
        installed_circular_mils: Area of the hot conductors chosen. [circular mils]
        needed_circular_mils: Area of the hot conductors that ampacity asks for.
            [circular mils]

    Returns:
        Least area of the ground; never less than the table's. [circular mils]

    Source: NFPA 70, 250.122(B).
    """
    if needed_circular_mils <= 0:
        raise ValueError(f"area {needed_circular_mils} circular mils is not above 0")
    return ground_circular_mils * max(1.0, installed_circular_mils / needed_circular_mils)


def ground_of_mils(circular_mils: float, wires: Sequence[Wire]) -> str:
    """Smallest copper size of at least this area."""
    fits = [w for w in wires if w.material == "cu" and w.circular_mils + 1e-9 >= circular_mils]
    if not fits:
        raise ValueError(f"{circular_mils} circular mils is beyond the table")
    return min(fits, key=lambda w: w.circular_mils).size


def drop_by_area_v(amps: float, length_ft: float, circular_mils: float, k: float) -> float:
    """Voltage drop of a single-phase run by area.

    Args:
        amps: Current of the load, without the 125 %. [A]
        length_ft: One way. [ft]
        circular_mils: Area of the conductor. [circular mils]
        k: Resistivity, 12.9 copper, 21.2 aluminum. [ohm circular mil/ft]

    Returns:
        Volts lost out and back. [V]

    Source: 2 K I L / CM, with K of NFPA 70 chapter 9 table 8 at 75 °C.
    """
    if circular_mils <= 0:
        raise ValueError(f"area {circular_mils} circular mils is not above 0")
    return 2 * k * amps * length_ft / circular_mils


def drop_by_resistance_v(amps: float, length_ft: float, ohm_per_kft: float) -> float:
    """Voltage drop of a single-phase run by the table's resistance. [V]

    Source: NFPA 70, chapter 9 table 8, resistive load.
    """
    return 2 * amps * length_ft * ohm_per_kft / 1000


def awg_circular_mils(gauge: float) -> float:
    """Area of a solid wire from its American gauge number (0 for 1/0, -1 for 2/0).

    Source: ASTM B258: diameter 0.005 in at 36, ratio 92 over 39 steps.
    """
    ratio: float = AWG_RATIO ** ((AWG_FIRST - gauge) / AWG_STEPS)
    return (1000 * AWG_SMALLEST_IN * ratio) ** 2
