"""An old vent left open: the air that rises through it, and the heat and water it takes along."""

from __future__ import annotations

import math

ABSOLUTE_ZERO_F = -459.67
GRAVITY_FT_S2 = 32.174
POUND_FT2_INWC = 0.19222
"""One pound on a square foot. [in w.c.]"""


def series_area_ft2(first_ft2: float, second_ft2: float) -> float:
    """One opening that passes as much as two in a row.

    Args:
        first_ft2: First opening. [ft²]
        second_ft2: Second opening. [ft²]

    Returns:
        Area. [ft²]

    Holds for: openings with one discharge coefficient.
    Source: STACK.
    """
    return first_ft2 * second_ft2 / math.hypot(first_ft2, second_ft2)


def stack_inwc(height_ft: float, indoor_lb_ft3: float, outdoor_lb_ft3: float) -> float:
    """Pressure of a column of warm air in cold surroundings.

    Args:
        height_ft: Height between inlet and outlet. [ft]
        indoor_lb_ft3: Density inside. [lb/ft³]
        outdoor_lb_ft3: Density outside. [lb/ft³]

    Returns:
        Pressure; below zero when it is warmer outside. [in w.c.]

    Holds for: still air.
    Source: STACK.
    """
    return POUND_FT2_INWC * height_ft * (outdoor_lb_ft3 - indoor_lb_ft3)


def stack_cfm(area_ft2: float, height_ft: float, indoor_f: float, outdoor_f: float,
              discharge: float) -> float:
    """Air that rises through an opening because it is warmer inside.

    Args:
        area_ft2: Opening, or the one that stands for several in a row. [ft²]
        height_ft: Height between inlet and outlet. [ft]
        indoor_f: Indoor temperature. [°F]
        outdoor_f: Outdoor temperature. [°F]
        discharge: Discharge coefficient, 0.60 to 0.70 for an opening. [0..1]

    Returns:
        Airflow, counted at indoor density; zero when it is warmer outside. [cfm]

    Holds for: still air; wind over a roof jack adds to it.
    Source: STACK.
    """
    if outdoor_f >= indoor_f:
        return 0.0
    share = (indoor_f - outdoor_f) / (indoor_f - ABSOLUTE_ZERO_F)
    return 60 * discharge * area_ft2 * math.sqrt(2 * GRAVITY_FT_S2 * height_ft * share)


def water_lb_day(dry_air_lb_h: float, indoor_ratio: float, outdoor_ratio: float) -> float:
    """Water that an air stream takes out of the home.

    Args:
        dry_air_lb_h: Dry air out. [lb/h]
        indoor_ratio: Water per dry air inside. [lb/lb]
        outdoor_ratio: Water per dry air outside. [lb/lb]

    Returns:
        Water; what would condense in a cold vent is part of it. [lb/day]

    Holds for: the humidities given.
    Source: MOIST_AIR.
    """
    return 24 * dry_air_lb_h * (indoor_ratio - outdoor_ratio)
