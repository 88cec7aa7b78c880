"""Circuit of the outdoor unit: where its plate's numbers come from, and its voltage at start.

The plate wins. These sums explain it, and stand in only where a plate cannot be read.
"""

from __future__ import annotations

from collections.abc import Sequence

CONTINUOUS_FACTOR = 1.25
BREAKER_FACTOR = 1.75
HARD_START_BREAKER_FACTOR = 2.25
DISCONNECT_FACTOR = 1.15
COPPER_OHM_CMIL_FT = 12.9
ALUMINUM_OHM_CMIL_FT = 21.2


def least_ampacity_amps(largest_amps: float, other_amps: float) -> float:
    """Least ampacity of the conductors: 125 % of the largest motor and the rest.

    Args:
        largest_amps: Rated-load or selection current of the largest motor. [A]
        other_amps: Sum of the other loads on the circuit. [A]

    Returns:
        Minimum circuit ampacity. [A]

    Holds for: several motors on one circuit; a plate's own number wins.
    Source: MOTOR_CIRCUIT.
    """
    return CONTINUOUS_FACTOR * largest_amps + other_amps


def breaker_limit_amps(largest_amps: float, other_amps: float, *,
                       hard_start: bool = False) -> float:
    """Ceiling for the breaker before the step down to a standard size.

    Args:
        largest_amps: Rated-load or selection current of the largest motor. [A]
        other_amps: Sum of the other loads on the circuit. [A]
        hard_start: Whether the unit will not start on the lower ceiling.

    Returns:
        175 %, or 225 % for a hard start, of the largest motor and the rest. [A]

    Holds for: hermetic compressors; the largest breaker on a plate wins.
    Source: COMPRESSOR_BREAKER.
    """
    factor = HARD_START_BREAKER_FACTOR if hard_start else BREAKER_FACTOR
    return factor * largest_amps + other_amps


def standard_at_most(limit_amps: float, ratings_amps: Sequence[float]) -> float:
    """Largest standard rating that is not above a limit.

    Args:
        limit_amps: Ceiling. [A]
        ratings_amps: Standard ratings, rising. [A]

    Returns:
        Rating. [A]

    Raises:
        ValueError: The limit is below the smallest rating.

    Holds for: the ratings given.
    Source: STANDARD_BREAKERS.
    """
    under = [rating for rating in ratings_amps if rating <= limit_amps + 1e-9]
    if not under:
        raise ValueError(f"{limit_amps} A is below the smallest standard rating, "
                         f"{ratings_amps[0]} A")
    return under[-1]


def disconnect_amps(rated_amps: float) -> float:
    """Least rating of the disconnect.

    Args:
        rated_amps: Rated-load currents together. [A]

    Returns:
        115 % of them. [A]

    Holds for: disconnects of hermetic compressors and their fans.
    Source: COMPRESSOR_DISCONNECT.
    """
    return DISCONNECT_FACTOR * rated_amps


def drop_volts(current_amps: float, length_ft: float, ohm_per_kft: float) -> float:
    """Voltage lost on a two-wire run by the resistance of its conductors.

    Args:
        current_amps: Current. [A]
        length_ft: One-way length. [ft]
        ohm_per_kft: Resistance of one conductor. [ohm/1000 ft]

    Returns:
        Voltage drop, out and back. [V]

    Holds for: single phase; conductors small enough for reactance not to matter.
    Source: VOLTAGE_DROP.
    """
    return 2 * current_amps * length_ft * ohm_per_kft / 1000


def drop_by_area_volts(current_amps: float, length_ft: float, area_cmil: float, *,
                       aluminum: bool = False) -> float:
    """Voltage lost on a two-wire run by the area of its conductors.

    Args:
        current_amps: Current. [A]
        length_ft: One-way length. [ft]
        area_cmil: Area of one conductor. [circular mil]
        aluminum: Whether they are aluminum.

    Returns:
        Voltage drop, out and back. [V]

    Holds for: single phase, conductors at 75 °C.
    Source: VOLTAGE_DROP.
    """
    k = ALUMINUM_OHM_CMIL_FT if aluminum else COPPER_OHM_CMIL_FT
    return 2 * k * current_amps * length_ft / area_cmil


def start_drop_volts(start_amps: float, length_ft: float, ohm_per_kft: float,
                     source_ohm: float) -> float:
    """Voltage lost in the moment a compressor starts, at most.

    Args:
        start_amps: Locked-rotor current from the plate. [A]
        length_ft: One-way length of the branch. [ft]
        ohm_per_kft: Resistance of one conductor. [ohm/1000 ft]
        source_ohm: Resistance of transformer, service and feeder together. [ohm]

    Returns:
        Voltage drop at the unit. [V]

    Holds for: locked rotor, single phase; the whole current is taken as in phase, so the real drop
        over the resistance is smaller; the reactance of the short run is left out.
    Source: VOLTAGE_DROP.
    """
    return drop_volts(start_amps, length_ft, ohm_per_kft) + start_amps * source_ohm


def source_ohm(open_volts: float, loaded_volts: float, loaded_amps: float) -> float:
    """Resistance of the supply, from two readings of the voltage.

    Args:
        open_volts: With the load off. [V]
        loaded_volts: With the load on. [V]
        loaded_amps: Current of the load. [A]

    Returns:
        Resistance back to the transformer. [ohm]

    Raises:
        ValueError: The voltage rises under load, or there is no current.

    Holds for: a resistive load such as electric elements.
    Source: ARITHMETIC.
    """
    if loaded_amps <= 0:
        raise ValueError(f"a current of {loaded_amps} A is not above 0")
    if loaded_volts > open_volts:
        raise ValueError(f"{loaded_volts} V under load is above {open_volts} V without")
    return (open_volts - loaded_volts) / loaded_amps


def conductor_area_cmil(gauge_awg: int) -> float:
    """Area of a conductor from its gauge; 0 for 1/0, -1 for 2/0, and so on.

    Args:
        gauge_awg: American wire gauge.

    Returns:
        Area of solid wire. [circular mil]

    Holds for: 40 to 4/0 AWG.
    Source: WIRE_GAUGE.
    """
    return 25.0 * float(92 ** ((36 - gauge_awg) / 19.5))


def start_kva(start_amps: float, volts: float) -> float:
    """Apparent power that a generator must give in the moment a compressor starts.

    Args:
        start_amps: Locked-rotor current from the plate. [A]
        volts: Voltage. [V]

    Returns:
        Starting power. [kVA]

    Holds for: single phase.
    Source: ARITHMETIC.
    """
    return start_amps * volts / 1000
