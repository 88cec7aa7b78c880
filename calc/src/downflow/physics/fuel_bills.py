"""Heat loss from what was burnt: fuel bills against degree days, and one night's run time.

Fuel per day is a straight line on degree days per day: the height where it starts is
base use (water heating, cooking), the slope is the home's loss. The base temperature is
found, not assumed: too warm a base bends the line and reads a loss too low.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from downflow.physics import climate_year

DERATE_ABOVE_FT = 2_000.0
DERATE_PER_1000_FT = 0.04
LEAST_PERIODS = 6
LEAST_R2 = 0.80
DERATE_STEP_FT = 1_000.0


def balance_point_f(indoor_f: float, gain_btuh: float, ua_btuh_f: float) -> float:
    """Outdoor temperature at which gains alone hold the home. [°F]

    Args:
        indoor_f: Indoor temperature. [°F]
        gain_btuh: Heat from sun, people and appliances, mean of the day. [Btu/h]
        ua_btuh_f: Heat loss per degree. [Btu/(h °F)]

    Source: 2021 Fundamentals handbook, chapter 19, balance point temperature.
    """
    if ua_btuh_f <= 0:
        raise ValueError(f"UA {ua_btuh_f} Btu/(h °F) is not above 0")
    return indoor_f - gain_btuh / ua_btuh_f


def gain_of_balance_btuh(indoor_f: float, balance_f: float, ua_btuh_f: float) -> float:
    """Gains that explain a balance point. [Btu/h] Source: as `balance_point_f`."""
    return ua_btuh_f * (indoor_f - balance_f)


def degree_days(daily_mean_f: Sequence[float], base_f: float) -> float:
    """Heating degree days from daily mean temperatures. [°F day]"""
    return math.fsum(max(0.0, base_f - mean) for mean in daily_mean_f)


def _degree_days(mean_f: float, base_f: float, days: float, year_spread_f: float) -> float:
    spread = climate_year.monthly_spread_f(mean_f, year_spread_f)
    return climate_year.heating_degree_days(base_f, mean_f, spread, days)


def mean_of_degree_days_f(
    degree_days: float, base_f: float, days: float, year_spread_f: float
) -> float:
    """Mean temperature of a period that has so many degree days. [°F]

    The inverse of `climate_year.heating_degree_days`, found by halving: it lets degree days
    typed in for one base be read for another.

    Args:
        degree_days: Heating degree days of the period. [°F day]
        base_f: Their base. [°F]
        days: Length of the period. [days]
        year_spread_f: Standard deviation of the year's monthly means. [°F]

    Holds for: about a month; the spread within it by Erbs, Klein and Beckman 1983.
    """
    if degree_days <= 0:
        raise ValueError(f"{degree_days} degree days do not tell a mean temperature")
    low, high = base_f - degree_days / days - 1.0, base_f + 45.0
    if _degree_days(low, base_f, days, year_spread_f) < degree_days:
        raise ValueError(f"{degree_days} degree days in {days} days are too many")
    for _ in range(200):
        middle = (low + high) / 2
        if not low < middle < high:
            break
        if _degree_days(middle, base_f, days, year_spread_f) > degree_days:
            low = middle
        else:
            high = middle
    return (low + high) / 2


class Line(NamedTuple):
    """A straight line by least squares: y = intercept + slope x."""

    intercept: float
    slope: float
    r2: float
    slope_error: float
    intercept_error: float
    squares: float
    points: int


def fit_line(x: Sequence[float], y: Sequence[float]) -> Line:
    """Least-squares line with standard errors.

    Args:
        x: Places.
        y: Values, as many.

    Returns:
        Line, R², standard errors of slope and intercept, sum of squared deviations.

    Source: ordinary least squares; s² = SSE/(n-2), slope error s/sqrt(Sxx).
    """
    n = len(x)
    if n != len(y):
        raise ValueError(f"{n} places but {len(y)} values")
    if n < 3:
        raise ValueError(f"{n} points are too few for a line with an error: 3 at least")
    mx, my = math.fsum(x) / n, math.fsum(y) / n
    sxx = math.fsum((a - mx) ** 2 for a in x)
    syy = math.fsum((b - my) ** 2 for b in y)
    sxy = math.fsum((a - mx) * (b - my) for a, b in zip(x, y, strict=True))
    if sxx <= 0:
        raise ValueError("all points lie at one place")
    slope = sxy / sxx
    intercept = my - slope * mx
    squares = math.fsum((b - intercept - slope * a) ** 2 for a, b in zip(x, y, strict=True))
    s = math.sqrt(squares / (n - 2))
    return Line(
        intercept,
        slope,
        1 - squares / syy if syy > 0 else 0.0,
        s / math.sqrt(sxx),
        s * math.sqrt(1 / n + mx**2 / sxx),
        squares,
        n,
    )


def student_share(t: float, freedom: int) -> float:
    """Share of Student's t distribution within -t to t.

    Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
    """
    if freedom < 1:
        raise ValueError(f"{freedom} degrees of freedom is below 1")
    angle = math.atan(t / math.sqrt(freedom))
    cos2 = math.cos(angle) ** 2
    if freedom == 1:
        return 2 * angle / math.pi
    term, total = 1.0, 1.0
    if freedom % 2:  # odd
        term = total = math.cos(angle)
        for k in range(3, freedom - 1, 2):
            term *= cos2 * (k - 1) / k
            total += term
        return 2 / math.pi * (angle + math.sin(angle) * total)
    for k in range(2, freedom - 1, 2):
        term *= cos2 * (k - 1) / k
        total += term
    return math.sin(angle) * total


def student_t(share: float, freedom: int) -> float:
    """t within which `share` of Student's distribution lies, by halving."""
    if not 0 < share < 1:
        raise ValueError(f"share {share} is outside 0 to 1")
    low, high = 0.0, 1.0
    while student_share(high, freedom) < share:
        high *= 2
    for _ in range(200):
        middle = (low + high) / 2
        if not low < middle < high:
            break
        if student_share(middle, freedom) < share:
            low = middle
        else:
            high = middle
    return (low + high) / 2


class BillFit(NamedTuple):
    """Fuel per day against degree days per day at the base that fits best."""

    base_f: float
    base_error_f: float
    base_use_per_day: float
    slope_per_degree_day: float
    slope_error: float
    r2: float
    periods: int


def fit_bills(
    use: Sequence[float],
    days: Sequence[float],
    degree_days_by_base: Sequence[Sequence[float]],
    bases_f: Sequence[float],
) -> BillFit:
    """Variable-base degree-day regression.

    Args:
        use: Fuel of each period, in its unit.
        days: Length of each period. [days]
        degree_days_by_base: For each base, the degree days of each period. [°F day]
        bases_f: The bases that are tried. [°F]

    Returns:
        The line at the base with least squared deviation; standard errors of the base and
        of the slope, the base's own doubt in it.

    Holds for: periods that are meter readings or fills to the same mark.
    Source: variable-base degree-day method (PRISM form), as in 2021 Fundamentals handbook,
    chapter 19, and open measurement-and-verification code; error of the base from the bend
    of the squared deviation (profile likelihood).
    """
    if len(use) < 4:
        raise ValueError(f"{len(use)} periods are too few to find a base: 4 at least")
    if any(d <= 0 for d in days):
        raise ValueError("a period has no days")
    rates = [u / d for u, d in zip(use, days, strict=True)]
    lines: list[tuple[float, Line]] = []
    for base, dd in zip(bases_f, degree_days_by_base, strict=True):
        per_day = [h / d for h, d in zip(dd, days, strict=True)]
        if max(per_day) > min(per_day):
            lines.append((base, fit_line(per_day, rates)))
    if not lines:
        raise ValueError("no base gives degree days that differ between periods")
    k = min(range(len(lines)), key=lambda i: lines[i][1].squares)
    base, best = lines[k]
    n = best.points
    # Around its least the squared deviation is a parabola c (base - best)²; where it has
    # grown by s² = least/(n - 3) lies one standard deviation of the base.
    sides = [lines[i] for i in (k - 1, k + 1) if 0 <= i < len(lines)]
    bends = [(line.squares - best.squares) / (b - base) ** 2 for b, line in sides]
    tilts = [(line.slope - best.slope) / (b - base) for b, line in sides]
    bend = math.fsum(bends) / len(bends) if bends else 0.0
    tilt = math.fsum(tilts) / len(tilts) if tilts else 0.0
    error = math.sqrt(best.squares / (n - 3) / bend) if bend > 0 else 0.0
    return BillFit(
        base,
        error,
        best.intercept,
        best.slope,
        math.hypot(best.slope_error, tilt * error),
        best.r2,
        n,
    )


def bills_are_enough(r2: float, heating_periods: int) -> bool:
    """Whether a fit may be leaned on: R² of 0.80 and six heating periods at least.

    Source: common practice in measurement and verification.
    """
    return r2 >= LEAST_R2 and heating_periods >= LEAST_PERIODS


def ua_of_slope_btuh_f(
    slope_per_degree_day: float, heat_content_btu: float, efficiency: float
) -> float:
    """Heat loss per degree from fuel per degree day.

    Args:
        slope_per_degree_day: Fuel units per degree day.
        heat_content_btu: Heat in one unit, higher heating value. [Btu]
        efficiency: Seasonal efficiency of the furnace, same basis, 0 to 1.

    Returns:
        UA at the furnace: the home's loss with what its ducts lose. [Btu/(h °F)]

    Source: energy balance of a degree day, 24 h.
    """
    if not 0 < efficiency <= 1:
        raise ValueError(f"efficiency {efficiency} is outside 0 to 1")
    return slope_per_degree_day * heat_content_btu * efficiency / 24


def furnace_input_btuh(plate_input_btuh: float, elevation_ft: float) -> float:
    """Input of a fuel furnace whose orifices were fitted for its altitude.

    Args:
        plate_input_btuh: Input on the plate, at sea level. [Btu/h]
        elevation_ft: Height above sea level. [ft]

    Returns:
        Input after derating. [Btu/h]

    Holds for: the common rule; some makers print 2 % per 1,000 ft or count from 2,000 ft;
    nobody may have changed the orifice. A clocked input beats this.
    Source: national fuel gas code: above 2,000 ft, 4 % per 1,000 ft counted from sea level.
    """
    if elevation_ft <= DERATE_ABOVE_FT:
        return plate_input_btuh
    left = 1 - DERATE_PER_1000_FT * elevation_ft / DERATE_STEP_FT
    if left <= 0:
        raise ValueError(f"nothing is left of the input at {elevation_ft} ft")
    return plate_input_btuh * left


def mean_output_btuh(
    input_btuh: float, efficiency: float, burner_minutes: float, period_minutes: float
) -> float:
    """Mean heat of a furnace that burns part of the time. [Btu/h]"""
    if period_minutes <= 0 or not 0 <= burner_minutes <= period_minutes:
        raise ValueError(
            f"{burner_minutes} burner minutes do not fit into {period_minutes} minutes"
        )
    return input_btuh * efficiency * burner_minutes / period_minutes


def ua_of_run_time_btuh_f(
    output_btuh: float, gain_btuh: float, indoor_f: float, outdoor_f: float
) -> float:
    """Heat loss per degree from one steady night.

    Args:
        output_btuh: Mean heat from the furnace over the hours. [Btu/h]
        gain_btuh: Heat from people and appliances in those hours. [Btu/h]
        indoor_f: Indoor temperature, held. [°F]
        outdoor_f: Mean outdoor temperature of the same hours. [°F]

    Returns:
        UA at the furnace, with what the ducts lose. [Btu/(h °F)]

    Holds for: dark hours, steady setting, four hours at least.
    Source: steady-state energy balance.
    """
    if indoor_f <= outdoor_f:
        raise ValueError(f"indoors {indoor_f} °F is not warmer than outdoors {outdoor_f} °F")
    return (output_btuh + gain_btuh) / (indoor_f - outdoor_f)
