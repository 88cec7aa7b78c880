"""Two uncertain numbers for one quantity: do they agree, and what do they say together."""

import math
from typing import NamedTuple

AGREE_SIGMAS = 2.0
NINETY_PERCENT_SIGMAS = 1.644854  # half-width that holds nine in ten of a normal spread


class Agreement(NamedTuple):
    """How far two values are apart, and how far they may be."""

    difference: float
    allowed: float
    sigmas: float
    agree: bool


class Combined(NamedTuple):
    """One value from two, its standard deviation, and the first road's share of it."""

    value: float
    sigma: float
    first_weight: float


def _check(first_sigma: float, second_sigma: float) -> None:
    if first_sigma <= 0 or second_sigma <= 0:
        raise ValueError(f"spreads {first_sigma} and {second_sigma} must be above 0")


def sigma_of_range(low: float, high: float) -> float:
    """Standard deviation of a range that holds about nine times in ten.

    Source: normal distribution, 5th to 95th percentile.
    """
    if high < low:
        raise ValueError(f"range from {low} to {high} is upside down")
    return (high - low) / (2 * NINETY_PERCENT_SIGMAS)


def agreement(first: float, first_sigma: float, second: float, second_sigma: float) -> Agreement:
    """Whether two roads agree within their doubt.

    Args:
        first: Value of the first road.
        first_sigma: Its standard deviation.
        second: Value of the second road, same unit.
        second_sigma: Its standard deviation.

    Returns:
        Difference (first minus second), what is allowed, the difference in standard
        deviations of itself, and the verdict.

    Source: 2 sqrt(s1² + s2²), coverage factor 2 of the ISO Guide to the expression of
    uncertainty in measurement (JCGM 100), for independent values.
    """
    _check(first_sigma, second_sigma)
    spread = math.hypot(first_sigma, second_sigma)
    difference = first - second
    return Agreement(
        difference,
        AGREE_SIGMAS * spread,
        abs(difference) / spread,
        abs(difference) <= AGREE_SIGMAS * spread,
    )


def combine(first: float, first_sigma: float, second: float, second_sigma: float) -> Combined:
    """The two roads together, each weighted by how sure it is.

    Args:
        first: Value of the first road.
        first_sigma: Its standard deviation.
        second: Value of the second road, same unit.
        second_sigma: Its standard deviation.

    Returns:
        Weighted mean; its standard deviation, widened by the Birge ratio when the two
        are further apart than their spreads explain; weight of the first road.

    Holds for: independent values.
    Source: inverse-variance weighting; R. T. Birge, Physical Review 40 (1932), 207.
    """
    _check(first_sigma, second_sigma)
    w1, w2 = 1 / first_sigma**2, 1 / second_sigma**2
    birge = abs(first - second) / math.hypot(first_sigma, second_sigma)
    return Combined(
        (w1 * first + w2 * second) / (w1 + w2),
        max(1.0, birge) / math.sqrt(w1 + w2),
        w1 / (w1 + w2),
    )


def quadrature(*parts: float) -> float:
    """Independent deviations together: root of the sum of squares."""
    return math.hypot(*parts)
