"""Line set: charge for its length, what a rise costs, and what a recovery tank may hold."""

from __future__ import annotations

import math

OUNCES_PER_POUND = 16
TANK_FILL_SHARE = 0.80
"""A recovery tank is filled to this share of its volume at most."""


def charge_change_oz(length_ft: float, included_ft: float, rate_oz_ft: float) -> float:
    """Charge to add for a line set longer than the one counted at the factory.

    Args:
        length_ft: Length of the liquid line as run. [ft]
        included_ft: Length counted in the factory charge. [ft]
        rate_oz_ft: Charge for each foot, from the data plate or the manual. [oz/ft]

    Returns:
        To add; below zero, to recover. [oz]

    Holds for: the liquid-line size that the rate is for, within the maker's length limits.
    Source: DATA_SHEET.
    """
    return (length_ft - included_ft) * rate_oz_ft


def charge_change_other_size_oz(length_ft: float, rate_oz_ft: float,
                                counted_oz: float) -> float:
    """Charge to add for a liquid line of another size than the one counted at the factory.

    Args:
        length_ft: Length of the liquid line as run. [ft]
        rate_oz_ft: Charge for each foot of the size as run. [oz/ft]
        counted_oz: Charge counted at the factory for its own line. [oz]

    Returns:
        To add; below zero, to recover. [oz]

    Holds for: sizes and lengths that the maker allows.
    Source: DATA_SHEET.
    """
    return length_ft * rate_oz_ft - counted_oz


def total_charge_oz(factory_lb: float, change_oz: float) -> float:
    """Charge of the whole system.

    Args:
        factory_lb: Factory charge from the data plate. [lb]
        change_oz: Charge added for the line set; below zero, taken out. [oz]

    Returns:
        Total. [oz]

    Holds for: a system that holds exactly its factory charge before.
    Source: DATA_SHEET.
    """
    return factory_lb * OUNCES_PER_POUND + change_oz


def line_content_oz_ft(bore_in: float, density_lb_ft3: float) -> float:
    """Refrigerant that fills a foot of line.

    Args:
        bore_in: Inside diameter. [in]
        density_lb_ft3: Density of what fills it. [lb/ft³]

    Returns:
        Content. [oz/ft]

    Holds for: a line full of one phase.
    Source: GEOMETRY.
    """
    area_ft2 = math.pi / 4 * (bore_in / 12) ** 2
    return area_ft2 * density_lb_ft3 * OUNCES_PER_POUND


def rise_psi(rise_ft: float, density_lb_ft3: float) -> float:
    """Pressure that a column of liquid takes on its way up.

    Args:
        rise_ft: Height that the liquid climbs; below zero, falls. [ft]
        density_lb_ft3: Density of the liquid. [lb/ft³]

    Returns:
        Pressure drop; below zero, gain. [psi]

    Holds for: a line full of liquid.
    Source: GEOMETRY.
    """
    return rise_ft * density_lb_ft3 / 144


def tank_limit_lb(tank_ft3: float, density_lb_ft3: float) -> float:
    """Most refrigerant that a recovery tank may hold.

    Args:
        tank_ft3: Inside volume of the tank. [ft³]
        density_lb_ft3: Density of the liquid at the warmest the tank will be. [lb/ft³]

    Returns:
        Limit; the tank's own mark wins where it is lower. [lb]

    Holds for: liquid below its critical point.
    Source: RECOVERY_TANK.
    """
    return TANK_FILL_SHARE * tank_ft3 * density_lb_ft3
