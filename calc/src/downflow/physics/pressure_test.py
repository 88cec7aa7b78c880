"""Pressure test with nitrogen, and what the readings of a vacuum say.

A vacuum that is closed off rises in one of three ways: it stays, it levels off (water boiling
until its own pressure is reached), or it climbs on and on (a leak).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

ABSOLUTE_ZERO_F = -459.67
MICRONS_PER_ATMOSPHERE = 760_000.0
ATMOSPHERE_PSIA = 14.6959
VIRIAL = -0.008581
"""Second virial coefficient of nitrogen at 70 °F, in units of (psia/°R)⁻¹."""
VIRIAL_PER_100F = 0.016610
VIRIAL_PER_100F_SQUARED = -0.004233
THIRD_VIRIAL = 0.003412
FLAT_RISE_MICRONS = 50.0
"""A rise over the whole test below this is within what gauges and outgassing do."""
CLIMBING_SHARE = 0.60
"""Slope at the end over slope at the start, above which the curve is a straight climb."""
LEVEL_SHARE = 0.35
"""The same, below which the curve has levelled off."""


def packing(density: float, temp_f: float) -> float:
    """Compressibility of nitrogen; density as pressure over temperature of the ideal gas.

    Args:
        density: Density, as pressure over absolute temperature. [psia/°R]
        temp_f: Temperature of the gas. [°F]

    Returns:
        Real pressure over that of an ideal gas of this density.

    Holds for: up to 700 psig, -40 to 140 °F.
    Source: NITROGEN.
    """
    away = (temp_f - 70) / 100
    second = VIRIAL + VIRIAL_PER_100F * away + VIRIAL_PER_100F_SQUARED * away**2
    return 1 + second * density + THIRD_VIRIAL * density**2


def nitrogen_density(pressure_psig: float, temp_f: float, atmosphere_psia: float) -> float:
    """Density of nitrogen in a closed volume, which a change of temperature leaves as it is.

    Args:
        pressure_psig: Pressure. [psig]
        temp_f: Temperature of the gas. [°F]
        atmosphere_psia: Pressure of the air where the gauge is. [psia]

    Returns:
        Density, as pressure over absolute temperature of an ideal gas. [psia/°R]

    Holds for: as `expected_psig`.
    Source: NITROGEN.
    """
    absolute = (pressure_psig + atmosphere_psia) / (temp_f - ABSOLUTE_ZERO_F)
    density = absolute
    for _ in range(50):
        density = absolute / packing(density, temp_f)
    return density


def expected_psig(start_psig: float, start_f: float, end_f: float,
                  atmosphere_psia: float) -> float:
    """Pressure that a tight system should show after the temperature changed.

    The gas law of the trade, p over absolute temperature stays the same, is off by 3 psi when
    450 psig cool by 27 °F: cold nitrogen draws itself together. Three virial terms mend that.

    Args:
        start_psig: Pressure at the start. [psig]
        start_f: Temperature of the gas at the start. [°F]
        end_f: Temperature of the gas now. [°F]
        atmosphere_psia: Pressure of the air where the gauge is. [psia]

    Returns:
        Pressure to expect. [psig]

    Holds for: dry nitrogen in a closed volume, up to 700 psig, -40 to 140 °F, within 0.05 % of
        the absolute pressure.
    Source: NITROGEN.
    """
    end_r = end_f - ABSOLUTE_ZERO_F
    density = nitrogen_density(start_psig, start_f, atmosphere_psia)
    return density * end_r * packing(density, end_f) - atmosphere_psia


def gas_law_psig(start_psig: float, start_f: float, end_f: float,
                 atmosphere_psia: float) -> float:
    """The same by the plain gas law: absolute pressure goes with absolute temperature.

    Args:
        start_psig: Pressure at the start. [psig]
        start_f: Temperature of the gas at the start. [°F]
        end_f: Temperature of the gas now. [°F]
        atmosphere_psia: Pressure of the air where the gauge is. [psia]

    Returns:
        Pressure to expect. [psig]

    Holds for: an ideal gas in a closed volume.
    Source: GAS_LAW.
    """
    warm = (end_f - ABSOLUTE_ZERO_F) / (start_f - ABSOLUTE_ZERO_F)
    return (start_psig + atmosphere_psia) * warm - atmosphere_psia


def tolerance_psi(start_psig: float, start_f: float, atmosphere_psia: float,
                  gauge_step_psi: float, temp_doubt_f: float) -> float:
    """Difference that the gauge and the thermometer alone can make.

    Args:
        start_psig: Pressure at the start. [psig]
        start_f: Temperature of the gas at the start. [°F]
        atmosphere_psia: Pressure of the air where the gauge is. [psia]
        gauge_step_psi: Smallest step that can be read on the gauge. [psi]
        temp_doubt_f: How far the gas may be from the temperature read. [°F diff]

    Returns:
        Allowance, both doubts added. [psi]

    Holds for: small temperature doubts.
    Source: GAS_LAW.
    """
    per_degree = (start_psig + atmosphere_psia) / (start_f - ABSOLUTE_ZERO_F)
    return gauge_step_psi + per_degree * temp_doubt_f


def microns_from_psia(pressure_psia: float) -> float:
    """Absolute pressure in microns of mercury.

    Args:
        pressure_psia: Absolute pressure. [psia]

    Returns:
        Pressure. [micron]

    Holds for: any pressure.
    Source: UNITS.
    """
    return pressure_psia * MICRONS_PER_ATMOSPHERE / ATMOSPHERE_PSIA


def psia_from_microns(pressure_micron: float) -> float:
    """Absolute pressure from microns of mercury.

    Args:
        pressure_micron: Pressure. [micron]

    Returns:
        Absolute pressure. [psia]

    Holds for: any pressure.
    Source: UNITS.
    """
    return pressure_micron * ATMOSPHERE_PSIA / MICRONS_PER_ATMOSPHERE


class Rise(NamedTuple):
    """What the readings after closing off say."""

    kind: str
    """`flat`, `levelling`, `climbing` or `between`."""
    rise_micron: float
    """Last reading minus first. [micron]"""
    start_slope: float
    """Slope of the first half. [micron/min]"""
    end_slope: float
    """Slope of the second half. [micron/min]"""
    level_micron: float
    """Where the curve levels off; not-a-number unless it is levelling. [micron]"""
    time_min: float
    """Time constant of the levelling; not-a-number unless it is levelling. [min]"""


Points = Sequence[tuple[float, float]]


def halves(points: Points) -> tuple[Points, Points]:
    """First and second half of a run of readings by time, two readings at least in each.

    Args:
        points: Time and pressure of each reading, in order. [min, micron]

    Returns:
        The two halves; a reading in the middle belongs to both.

    Holds for: four readings or more.
    Source: VACUUM_RISE.
    """
    middle = (points[0][0] + points[-1][0]) / 2
    early = [p for p in points if p[0] <= middle]
    late = [p for p in points if p[0] >= middle]
    return (early if len(early) > 1 else points[:2], late if len(late) > 1 else points[-2:])


def slope_sums(points: Points) -> tuple[float, float]:
    """The two sums whose ratio is the slope of the straight line of least squares.

    Args:
        points: Time and pressure of each reading. [min, micron]

    Returns:
        Sum of the products of the deviations [min micron], and of the squares of those of the
        time [min²].

    Holds for: two readings or more at different times.
    Source: LEAST_SQUARES.
    """
    n = len(points)
    mean_t = sum(t for t, _ in points) / n
    mean_p = sum(p for _, p in points) / n
    return (sum((t - mean_t) * (p - mean_p) for t, p in points),
            sum((t - mean_t) ** 2 for t, _ in points))


def _slope(points: Points) -> float:
    products, squares = slope_sums(points)
    return products / squares


def _levelling(points: Points) -> tuple[float, float]:
    """Level and time constant of p = level - step * exp(-t / time), least squares."""
    span = points[-1][0] - points[0][0]

    def fit(time_min: float) -> tuple[float, float]:
        shape = [math.exp(-(t - points[0][0]) / time_min) for t, _ in points]
        n = len(points)
        mean_s = sum(shape) / n
        mean_p = sum(p for _, p in points) / n
        spread = sum((s - mean_s) ** 2 for s in shape)
        slope = sum((s - mean_s) * (p - mean_p)
                    for s, (_, p) in zip(shape, points, strict=True)) / spread
        level = mean_p - slope * mean_s
        miss = sum((level + slope * s - p) ** 2
                   for s, (_, p) in zip(shape, points, strict=True))
        return miss, level

    low, high = math.log(span / 20), math.log(span * 5)
    golden = (math.sqrt(5) - 1) / 2
    steps = [low + (high - low) * i / 40 for i in range(41)]
    best = min(range(41), key=lambda i: fit(math.exp(steps[i]))[0])
    low, high = steps[max(best - 1, 0)], steps[min(best + 1, 40)]
    for _ in range(60):
        a, b = high - golden * (high - low), low + golden * (high - low)
        if fit(math.exp(a))[0] < fit(math.exp(b))[0]:
            high = b
        else:
            low = a
    time_min = math.exp((low + high) / 2)
    return fit(time_min)[1], time_min


def read_rise(minutes: Sequence[float], microns: Sequence[float]) -> Rise:
    """What the readings of a closed-off vacuum say: flat, levelling, or climbing.

    Args:
        minutes: Times since closing off, rising, at least four. [min]
        microns: Readings at those times. [micron]

    Returns:
        The kind of rise, its slopes, and where it levels off.

    Raises:
        ValueError: Fewer than four readings, times not rising, or a reading not above zero.

    Holds for: readings taken far from the pump, evenly spread, temperature steady.
    Source: VACUUM_RISE.
    """
    if len(minutes) != len(microns) or len(minutes) < 4:
        raise ValueError(f"{len(minutes)} times and {len(microns)} readings: at least 4 of each")
    if any(b <= a for a, b in pairwise(minutes)):
        raise ValueError("the times must rise from one reading to the next")
    if min(microns) <= 0:
        raise ValueError(f"a reading of {min(microns)} micron is not above 0")
    points = list(zip(minutes, microns, strict=True))
    rise = microns[-1] - microns[0]
    early, late = halves(points)
    start, end = _slope(early), _slope(late)
    nothing = math.nan
    if rise < FLAT_RISE_MICRONS:
        return Rise("flat", rise, start, end, nothing, nothing)
    share = end / start if start > 0 else math.inf
    if share >= CLIMBING_SHARE:
        return Rise("climbing", rise, start, end, nothing, nothing)
    level, time_min = _levelling(points)
    kind = "levelling" if share <= LEVEL_SHARE else "between"
    return Rise(kind, rise, start, end, level, time_min)
