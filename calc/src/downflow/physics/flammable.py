"""Mildly flammable refrigerant: how much charge a room or a whole home may hold.

A formula can fail a room; it can never pass one. The listing of the unit, its room-area table
and the adopted code decide.
"""

from __future__ import annotations

import math

LEAST_CHARGE_FACTOR = 6.0
"""Charge without a room limit, in cubic metres of lower flammability limit."""
LARGE_CHARGE_FACTOR = 52.0
"""Largest charge of the room rules, in cubic metres of lower flammability limit."""
ROOT_FACTOR = 2.5
ROOT_POWER = 1.25
FLAT_FACTOR = 0.75
LEAST_HEIGHT_M = 0.6
MOST_HEIGHT_M = 2.2


def least_charge_kg(flammability_kg_m3: float) -> float:
    """Charge below which the room rules ask for no room size.

    Args:
        flammability_kg_m3: Lower flammability limit. [kg/m³]

    Returns:
        Charge. [kg]

    Holds for: mildly flammable refrigerants (class 2L).
    Source: ROOM_CHARGE.
    """
    return LEAST_CHARGE_FACTOR * flammability_kg_m3


def large_charge_kg(flammability_kg_m3: float) -> float:
    """Charge above which the room rules no longer reach.

    Args:
        flammability_kg_m3: Lower flammability limit. [kg/m³]

    Returns:
        Charge. [kg]

    Holds for: mildly flammable refrigerants (class 2L).
    Source: ROOM_CHARGE.
    """
    return LARGE_CHARGE_FACTOR * flammability_kg_m3


def room_charge_kg(flammability_kg_m3: float, height_m: float, area_m2: float) -> float:
    """Most charge for a room without detection and without circulation: the smaller of two legs.

    Args:
        flammability_kg_m3: Lower flammability limit. [kg/m³]
        height_m: Height of the lowest opening into the room, 0.6 m or more. [m]
        area_m2: Floor area of the room. [m²]

    Returns:
        Charge. [kg]

    Raises:
        ValueError: The height is below 0.6 m or above 2.2 m, or the area is not above zero.

    Holds for: class 2L; 0.6 m stands for floor outlets, 1.8 m for a wall, 2.2 m for a ceiling.
    Source: ROOM_CHARGE.
    """
    _check(height_m, area_m2)
    root = ROOT_FACTOR * math.pow(flammability_kg_m3, ROOT_POWER) * height_m * math.sqrt(area_m2)
    flat = FLAT_FACTOR * flammability_kg_m3 * height_m * area_m2
    return min(root, flat)


def room_area_m2(charge_kg: float, flammability_kg_m3: float, height_m: float) -> float:
    """Least room for a charge, the larger of two legs: the inverse of `room_charge_kg`.

    Args:
        charge_kg: Charge of the system. [kg]
        flammability_kg_m3: Lower flammability limit. [kg/m³]
        height_m: Height of the lowest opening into the room, 0.6 m or more. [m]

    Returns:
        Floor area. [m²]

    Raises:
        ValueError: The height is below 0.6 m or above 2.2 m, or the charge is not above zero.

    Holds for: as `room_charge_kg`.
    Source: ROOM_CHARGE.
    """
    _check(height_m, charge_kg)
    root = math.pow(charge_kg / (ROOT_FACTOR * math.pow(flammability_kg_m3, ROOT_POWER) * height_m),
                    2)
    flat = charge_kg / (FLAT_FACTOR * flammability_kg_m3 * height_m)
    return max(root, flat)


def mixed_charge_kg(flammability_kg_m3: float, height_m: float, area_m2: float,
                    mixing_share: float) -> float:
    """Most charge for a home whose blower spreads a leak over every room that it serves.

    Args:
        flammability_kg_m3: Lower flammability limit. [kg/m³]
        height_m: Ceiling height; counted to 2.2 m at most. [m]
        area_m2: Floor area of the rooms that the ducts serve. [m²]
        mixing_share: Share of the limit that the mixed air may reach. [0..1]

    Returns:
        Charge. [kg]

    Raises:
        ValueError: The area is not above zero.

    Holds for: a factory leak detector that starts the blower, registers open.
    Source: MIXED_CHARGE.
    """
    if area_m2 <= 0:
        raise ValueError(f"an area of {area_m2} m² is not above 0")
    return mixing_share * flammability_kg_m3 * min(height_m, MOST_HEIGHT_M) * area_m2


def mixed_area_m2(charge_kg: float, flammability_kg_m3: float, height_m: float,
                  mixing_share: float) -> float:
    """Least served floor area for a charge: the inverse of `mixed_charge_kg`.

    Args:
        charge_kg: Charge of the system. [kg]
        flammability_kg_m3: Lower flammability limit. [kg/m³]
        height_m: Ceiling height; counted to 2.2 m at most. [m]
        mixing_share: Share of the limit that the mixed air may reach. [0..1]

    Returns:
        Floor area. [m²]

    Holds for: as `mixed_charge_kg`.
    Source: MIXED_CHARGE.
    """
    return charge_kg / (mixing_share * flammability_kg_m3 * min(height_m, MOST_HEIGHT_M))


def mixed_concentration_kg_m3(charge_kg: float, height_m: float, area_m2: float) -> float:
    """Refrigerant in the air if the whole charge leaked and mixed evenly.

    Args:
        charge_kg: Charge of the system. [kg]
        height_m: Ceiling height; counted to 2.2 m at most. [m]
        area_m2: Floor area. [m²]

    Returns:
        Concentration. [kg/m³]

    Holds for: even mixing, no air change.
    Source: GEOMETRY.
    """
    return charge_kg / (min(height_m, MOST_HEIGHT_M) * area_m2)


def label_need(charge_lb: float, per_lb: float) -> float:
    """Area or airflow that the unit's own label asks for.

    Args:
        charge_lb: Charge of the system. [lb]
        per_lb: The label's multiplier, ft² or cfm for each pound. [1/lb]

    Returns:
        Area [ft²] or airflow [cfm], as the multiplier.

    Holds for: the unit whose label it is.
    Source: LABEL.
    """
    return charge_lb * per_lb


def _check(height_m: float, size: float) -> None:
    if not LEAST_HEIGHT_M <= height_m <= MOST_HEIGHT_M:
        raise ValueError(f"a height of {height_m} m is outside {LEAST_HEIGHT_M} to "
                         f"{MOST_HEIGHT_M} m")
    if size <= 0:
        raise ValueError(f"{size} is not above 0")
