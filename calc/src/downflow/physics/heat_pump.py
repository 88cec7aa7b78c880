"""A heat pump against a home: data-sheet points, frost, altitude, balance, cycling.

Capacity and power run straight between the data sheet's points. Outside them the last
segment goes on, and whoever asks is told so. The load line is UA times what outdoors is
below the balance temperature: the room's own temperature where no gains are counted.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import NamedTuple

from downflow.physics import air

FROST_CAPACITY = 0.90
FROST_POWER = 0.985
FROST_F = 35.0
FROST_LOW_F = 17.0
FROST_HIGH_F = 45.0
RATED_F = 47.0


class Reading(NamedTuple):
    """A value between data-sheet points, and whether it lies beyond them."""

    value: float
    beyond: bool


def interpolate(points_f: Sequence[float], values: Sequence[float], at_f: float) -> Reading:
    """A data sheet's value at an outdoor temperature.

    Args:
        points_f: Outdoor temperatures of the points, rising. [°F]
        values: Capacity, power or another value at each.
        at_f: Outdoor temperature asked for. [°F]

    Returns:
        Straight between neighbours; beyond the ends the last segment goes on and
        `beyond` is true.

    Source: 10 CFR 430 subpart B appendix M1, linear in outdoor temperature.
    """
    if len(points_f) < 2 or len(points_f) != len(values):
        raise ValueError(f"{len(points_f)} points and {len(values)} values: 2 at least, as many")
    if any(b <= a for a, b in pairwise(points_f)):
        raise ValueError("the points' outdoor temperatures must rise")
    k = 0
    while k < len(points_f) - 2 and at_f > points_f[k + 1]:
        k += 1
    x0, x1, y0, y1 = points_f[k], points_f[k + 1], values[k], values[k + 1]
    value = y0 + (y1 - y0) * (at_f - x0) / (x1 - x0)
    return Reading(value, not points_f[0] <= at_f <= points_f[-1])


def cop(capacity_btuh: float, power_w: float) -> float:
    """Heat out over electricity in. Source: 3.412142 Btu/Wh."""
    if power_w <= 0:
        raise ValueError(f"power {power_w} W is not above 0")
    return capacity_btuh / (air.BTU_PER_WH * power_w)


def frost_capacity_btuh(capacity_17_btuh: float, capacity_47_btuh: float) -> float:
    """Capacity at 35 °F with frost and defrost in it, where no test was printed. [Btu/h]

    Source: 10 CFR 430 subpart B appendix M1: 0.90 of the straight line between 17 and 47 °F.
    """
    return FROST_CAPACITY * _straight_35(capacity_17_btuh, capacity_47_btuh)


def frost_power_w(power_17_w: float, power_47_w: float) -> float:
    """Power at 35 °F with frost and defrost in it, where no test was printed. [W]

    Source: 10 CFR 430 subpart B appendix M1: 0.985 of the straight line.
    """
    return FROST_POWER * _straight_35(power_17_w, power_47_w)


def _straight_35(at_17: float, at_47: float) -> float:
    return at_17 + (FROST_F - FROST_LOW_F) / (RATED_F - FROST_LOW_F) * (at_47 - at_17)


def with_frost(
    points_f: Sequence[float],
    values: Sequence[float],
    at_f: float,
    at_35: float,
) -> Reading:
    """A data sheet's value where its points carry no frost.

    Args:
        points_f: Outdoor temperatures of steady points, rising, 17 and 47 within. [°F]
        values: Value at each.
        at_f: Outdoor temperature asked for. [°F]
        at_35: Value at 35 °F with frost in it.

    Returns:
        Between 17 and 45 °F on the line through the values at 17 and 35 °F, else on the
        data sheet's own line: so it jumps at 45 °F, as the rating does.

    Source: 10 CFR 430 subpart B appendix M1, frost range.
    """
    steady = interpolate(points_f, values, at_f)
    if not FROST_LOW_F < at_f < FROST_HIGH_F:
        return steady
    at_17 = interpolate(points_f, values, FROST_LOW_F).value
    share = (at_f - FROST_LOW_F) / (FROST_F - FROST_LOW_F)
    return Reading(at_17 + share * (at_35 - at_17), steady.beyond)


def load_btuh(ua_btuh_f: float, balance_f: float, outdoor_f: float) -> float:
    """Heat asked for at an outdoor temperature. [Btu/h]"""
    return ua_btuh_f * max(0.0, balance_f - outdoor_f)


def runs(outdoor_f: float, cut_out_f: float | None) -> bool:
    """Whether the compressor may run at an outdoor temperature."""
    return cut_out_f is None or outdoor_f >= cut_out_f


class FactorBounds(NamedTuple):
    """Lowest and highest factor on capacity."""

    low: float
    high: float


def altitude_factor_bounds(elevation_ft: float) -> FactorBounds:
    """What is left of capacity at altitude while the maker has not said.

    Args:
        elevation_ft: Height above sea level. [ft]

    Returns:
        From the density ratio (capacity falls with the air's mass at equal fan speed) to
        1 (fans and compressor make up for it).

    Holds for: an estimate with honest ends; the maker's factor replaces it.
    Source: bounds from the density ratio of the standard atmosphere; common practice.
    """
    return FactorBounds(min(1.0, air.pressure_ratio(elevation_ft)), 1.0)


def crossing_f(
    gap: Callable[[float], float], cold_f: float, warm_f: float, step_f: float = 2.0
) -> float | None:
    """The warmest outdoor temperature at which `gap` goes from at least zero to below it.

    Args:
        gap: Capacity minus load at an outdoor temperature; jumps are allowed.
        cold_f: Where to stop looking. [°F]
        warm_f: Where to start looking. [°F]
        step_f: Stride of the search; the place is then halved to the last digit. [°F]

    Returns:
        The temperature below which `gap` is negative, or nothing when it is not.
    """
    steps = math.ceil((warm_f - cold_f) / step_f)
    warm = warm_f
    if gap(warm) < 0:
        return warm
    for k in range(1, steps + 1):
        cold = max(cold_f, warm_f - k * step_f)
        if gap(cold) < 0:
            while True:
                middle = (warm + cold) / 2
                if not cold < middle < warm:
                    return warm
                if gap(middle) < 0:
                    cold = middle
                else:
                    warm = middle
        warm = cold
    return None


def thermal_balance_f(
    points_f: Sequence[float],
    capacity_btuh: Sequence[float],
    ua_btuh_f: float,
    balance_f: float,
    capacity_factor: float = 1.0,
    cold_f: float = -60.0,
) -> float | None:
    """Outdoor temperature below which the heat pump alone no longer holds the home.

    Args:
        points_f: Outdoor temperatures of the data sheet, rising. [°F]
        capacity_btuh: Capacity at full speed at each. [Btu/h]
        ua_btuh_f: Heat asked of the equipment per degree, duct loss in it. [Btu/(h °F)]
        balance_f: Where the load line reaches zero. [°F]
        capacity_factor: Altitude and other factors on capacity.
        cold_f: Coldest temperature that is looked at. [°F]

    Returns:
        The thermal balance point, or nothing when capacity is enough down to `cold_f`. [°F]

    Source: load line meets capacity line; 2021 Fundamentals handbook, chapter 19.
    """
    return crossing_f(
        lambda t: (
            capacity_factor * interpolate(points_f, capacity_btuh, t).value
            - load_btuh(ua_btuh_f, balance_f, t)
        ),
        cold_f,
        balance_f,
    )


def cycling_starts_f(
    points_f: Sequence[float],
    least_capacity_btuh: Sequence[float],
    ua_btuh_f: float,
    balance_f: float,
    capacity_factor: float = 1.0,
    cold_f: float = -60.0,
) -> float | None:
    """Outdoor temperature above which even the lowest speed makes more than is asked for.

    The arguments are those of `thermal_balance_f`, with capacity at the lowest speed.
    Above the answer the unit goes on and off; nothing when it does even at `cold_f`. [°F]
    """
    return thermal_balance_f(
        points_f, least_capacity_btuh, ua_btuh_f, balance_f, capacity_factor, cold_f
    )


def share_covered(load_btuh: float, capacity_btuh: float) -> float:
    """Share of a load that a capacity covers, 0 to 1."""
    if load_btuh <= 0:
        return 1.0
    return min(1.0, max(0.0, capacity_btuh) / load_btuh)
