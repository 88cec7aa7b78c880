"""Site of the outdoor unit: snow, sound and ice."""

from __future__ import annotations

import math
from collections.abc import Sequence

DRAIN_RISE_IN = 3.0
"""Least height of a heat pump above grade, for defrost water to leave."""
ICE_LB_FT3 = 57.2


def base_height_in(snow_in: float) -> float:
    """Height of the unit's bottom above the ground.

    Args:
        snow_in: Usual depth of snow on the ground there. [in]

    Returns:
        The snow and 3 in. [in]

    Holds for: open ground; drifts and roof slides need more.
    Source: OUTDOOR_SUPPORT.
    """
    return snow_in + DRAIN_RISE_IN


def pressure_from_power_db(power_db: float, distance_m: float, directivity: float) -> float:
    """Sound pressure level at a distance from a source of known sound power.

    Args:
        power_db: Sound power level. [dBA]
        distance_m: Distance. [m]
        directivity: 2 on open ground, 4 at a wall, 8 in a corner.

    Returns:
        Sound pressure level. [dBA]

    Raises:
        ValueError: The distance is not above zero.

    Holds for: 1 m and more, open air, nothing in between, no other reflections.
    Source: SOUND_DISTANCE.
    """
    if distance_m <= 0:
        raise ValueError(f"a distance of {distance_m} m is not above 0")
    return power_db + 10 * math.log10(directivity / (4 * math.pi * distance_m**2))


def pressure_at_db(level_db: float, known_m: float, distance_m: float) -> float:
    """Sound pressure level at a distance from the level at another.

    Args:
        level_db: Level at the known distance. [dBA]
        known_m: The known distance. [m]
        distance_m: The distance asked for. [m]

    Returns:
        Sound pressure level. [dBA]

    Raises:
        ValueError: A distance is not above zero.

    Holds for: both distances well beyond the size of the unit.
    Source: SOUND_DISTANCE.
    """
    if known_m <= 0 or distance_m <= 0:
        raise ValueError(f"distances of {known_m} m and {distance_m} m must be above 0")
    return level_db - 20 * math.log10(distance_m / known_m)


def sum_db(levels_db: Sequence[float]) -> float:
    """Level of several sources together.

    Args:
        levels_db: Levels at one place. [dBA]

    Returns:
        Level of all. [dBA]

    Holds for: sources that are not in step.
    Source: SOUND_SUM.
    """
    return 10 * math.log10(sum(10 ** (level / 10) for level in levels_db))


def quiet_distance_m(power_db: float, level_db: float, directivity: float) -> float:
    """Distance at which a level is reached.

    Args:
        power_db: Sound power level. [dBA]
        level_db: Level asked for. [dBA]
        directivity: 2 on open ground, 4 at a wall, 8 in a corner.

    Returns:
        Distance. [m]

    Holds for: as `pressure_from_power_db`, of which it is the inverse.
    Source: SOUND_DISTANCE.
    """
    return math.sqrt(directivity / (4 * math.pi) * 10 ** ((power_db - level_db) / 10))


def ice_depth_in(water_lb: float, area_ft2: float) -> float:
    """Ice from an amount of water that freezes on an area.

    Args:
        water_lb: Water. [lb]
        area_ft2: Area that it spreads over. [ft²]

    Returns:
        Depth of ice. [in]

    Raises:
        ValueError: The area is not above zero.

    Holds for: all of it freezing there, evenly spread.
    Source: WATER.
    """
    if area_ft2 <= 0:
        raise ValueError(f"an area of {area_ft2} ft² is not above 0")
    return 12 * water_lb / (ICE_LB_FT3 * area_ft2)
