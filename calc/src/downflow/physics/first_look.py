"""What a usual cold-climate heat pump makes, before a unit is chosen."""

from __future__ import annotations

RATED_F = 47.0
COLD_F = 5.0


def kept_share(outdoor_f: float, at_cold: float) -> float:
    """Share of its capacity at 47 °F that a heat pump keeps at an outdoor temperature.

    Args:
        outdoor_f: Outdoor temperature. [°F]
        at_cold: Share kept at 5 °F, above 0 and not above 1.

    Returns:
        On the straight line through 1 at 47 °F and `at_cold` at 5 °F, never below 0. Above
        47 °F it goes on rising.

    Holds for: a first estimate; between points a variable-speed unit is nearly straight, and
    the frost range is left out.
    Source: linear interpolation between the two points at which units are compared.
    """
    if not 0 < at_cold <= 1:
        raise ValueError(f"share {at_cold:g} must be above 0 and not above 1")
    return max(0.0, at_cold + (1 - at_cold) * (outdoor_f - COLD_F) / (RATED_F - COLD_F))
