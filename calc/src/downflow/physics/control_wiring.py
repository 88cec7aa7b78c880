"""Control wiring: what the transformer carries, and the voltage at the end of a thin wire."""

from __future__ import annotations

from collections.abc import Sequence


def secondary_amps(transformer_va: float, volts: float) -> float:
    """Full-load current of the secondary.

    Args:
        transformer_va: Rating. [VA]
        volts: Secondary voltage. [V]

    Returns:
        Current; a fuse on the secondary is not above it by more than one size. [A]

    Holds for: single phase.
    Source: ARITHMETIC.
    """
    return transformer_va / volts


def load_va(loads_va: Sequence[float]) -> float:
    """Load of all coils and controls that can be on at once.

    Args:
        loads_va: Each load. [VA]

    Returns:
        Sum. [VA]

    Holds for: holding loads; coils take several times as much for an instant when pulling in.
    Source: ARITHMETIC.
    """
    return sum(loads_va)


def end_volts(volts: float, current_amps: float, length_ft: float, ohm_per_kft: float) -> float:
    """Voltage at the far end of a control cable.

    Args:
        volts: Voltage at the transformer. [V]
        current_amps: Current of the load at the far end. [A]
        length_ft: One-way length. [ft]
        ohm_per_kft: Resistance of one conductor. [ohm/1000 ft]

    Returns:
        Voltage. [V]

    Holds for: one pair carrying the load.
    Source: VOLTAGE_DROP.
    """
    return volts - 2 * current_amps * length_ft * ohm_per_kft / 1000


def longest_ft(volts: float, least_volts: float, current_amps: float,
               ohm_per_kft: float) -> float:
    """Longest control cable that keeps a voltage at its end.

    Args:
        volts: Voltage at the transformer. [V]
        least_volts: Least voltage at the far end. [V]
        current_amps: Current of the load at the far end. [A]
        ohm_per_kft: Resistance of one conductor. [ohm/1000 ft]

    Returns:
        One-way length. [ft]

    Holds for: one pair carrying the load.
    Source: VOLTAGE_DROP.
    """
    return (volts - least_volts) * 1000 / (2 * current_amps * ohm_per_kft)
