"""A year of outdoor temperature, from twelve monthly means or from 8,760 hours.

The monthly road spreads each month's temperature over a logistic curve around its
mean and lays the mean day's swing on top (Erbs, Klein and Beckman). The hourly road
counts. Both end in the same thing: for each month, hours at a temperature.

Temperatures in °F, degree days in °F·day.
"""

import math
from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

HOURS_A_DAY = 24
DAYS_OF_MONTH = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)

# Spread of the daily means about the month's mean, s = a - b T + c s_year. [°F]
# 1.8 x 1.45 + 0.0290 x 32 = 3.54 turns the published °C form into °F.
SPREAD_AT_0F = 3.54
SPREAD_PER_MEAN = 0.0290
SPREAD_PER_YEARLY_SPREAD = 0.0664
# The logistic curve: share below h is 1 / (1 + exp(-STEEPNESS h)).
STEEPNESS = 3.396

# The mean day about its mean, per degree of swing: amplitude and phase of four harmonics.
DAY_HARMONICS = ((0.4632, 3.805), (0.0984, 0.360), (0.0168, 0.822), (0.0138, 3.513))
# Swing of the mean day as a share of the mean daily range (maximum less minimum).
SWING_SHARE_OF_RANGE = 0.79

BIN_WIDTH_F = 5.0
COLDEST_BIN_F = -60.0
WARMEST_BIN_F = 125.0

# One standard deviation of a year's electricity by the monthly road against 8,760 hours.
MONTHLY_ROAD_SPREAD = 0.032


class Bin(NamedTuple):
    """Hours spent at about one outdoor temperature."""

    outdoor_f: float
    hours: float


def _twelve(monthly: Sequence[float], what: str) -> None:
    if len(monthly) != 12:
        raise ValueError(f"{what}: 12 months needed, {len(monthly)} given")


def yearly_spread_f(monthly_mean_f: Sequence[float]) -> float:
    """Standard deviation of the twelve monthly means, dividing by 12.

    Args:
        monthly_mean_f: Mean outdoor temperature, January to December. [°F]

    Returns:
        Spread of the year. [°F]

    Holds for: the population form; dividing by 11 moves degree days by about 0.2 %.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    _twelve(monthly_mean_f, "monthly means")
    mean = math.fsum(monthly_mean_f) / 12
    return math.sqrt(math.fsum((t - mean) ** 2 for t in monthly_mean_f) / 12)


def monthly_spread_f(mean_f: float, yearly_spread_f: float) -> float:
    """Standard deviation of a month's daily means, from its mean and the year's spread.

    Args:
        mean_f: The month's mean temperature. [°F]
        yearly_spread_f: Standard deviation of the twelve means. [°F]

    Returns:
        Spread of the daily means within the month. [°F]

    Raises:
        ValueError: The month is too warm for the correlation (no spread left).

    Holds for: monthly means up to about 120 °F.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    spread = SPREAD_AT_0F - SPREAD_PER_MEAN * mean_f + SPREAD_PER_YEARLY_SPREAD * yearly_spread_f
    if spread <= 0:
        raise ValueError(f"no spread left at a monthly mean of {mean_f} °F: must be above 0")
    return spread


def _reach_f(spread_f: float, days: float) -> float:
    if spread_f <= 0:
        raise ValueError(f"spread {spread_f} °F: must be above 0")
    if days <= 0:
        raise ValueError(f"{days} days: must be above 0")
    return spread_f * math.sqrt(days)


def share_below(temperature_f: float, mean_f: float, spread_f: float, days: float) -> float:
    """Share of a month spent below a temperature.

    Args:
        temperature_f: The temperature asked about. [°F]
        mean_f: Mean of the month (or of that hour of the day). [°F]
        spread_f: Spread of the daily means in the month. [°F]
        days: Days in the month. [days]

    Returns:
        Share of the time, 0 to 1.

    Holds for: whole months.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    x = STEEPNESS * (temperature_f - mean_f) / _reach_f(spread_f, days)
    if x < -700:
        return 0.0
    return 1 / (1 + math.exp(-x))


def heating_degree_days(base_f: float, mean_f: float, spread_f: float, days: float) -> float:
    """Heating degree days of one month.

    Args:
        base_f: Base temperature. [°F]
        mean_f: Mean of the month. [°F]
        spread_f: Spread of the daily means in the month. [°F]
        days: Days in the month. [days]

    Returns:
        Degree days below the base. [°F·day]

    Holds for: daily-mean degree days; hourly ones are 2 to 5 % more where nights are cool.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    x = STEEPNESS * (base_f - mean_f) / _reach_f(spread_f, days)
    # ln(1 + exp(x)) without overflow
    softplus = max(x, 0.0) + math.log1p(math.exp(-abs(x)))
    return days * _reach_f(spread_f, days) * softplus / STEEPNESS


def cooling_degree_days(base_f: float, mean_f: float, spread_f: float, days: float) -> float:
    """Cooling degree days of one month: heating degree days less the mean's deficit.

    Args:
        base_f: Base temperature. [°F]
        mean_f: Mean of the month. [°F]
        spread_f: Spread of the daily means in the month. [°F]
        days: Days in the month. [days]

    Returns:
        Degree days above the base. [°F·day]

    Holds for: daily-mean degree days.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    return heating_degree_days(base_f, mean_f, spread_f, days) - days * (base_f - mean_f)


def year_heating_degree_days(monthly_mean_f: Sequence[float], base_f: float) -> float:
    """Heating degree days of a year from twelve monthly means.

    Args:
        monthly_mean_f: Mean outdoor temperature, January to December. [°F]
        base_f: Base temperature. [°F]

    Returns:
        Degree days of the year. [°F·day]

    Holds for: against daily means at 960 stations, 1.4 % high on average, 2.9 % rms (65 °F).
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    year = yearly_spread_f(monthly_mean_f)
    return math.fsum(
        heating_degree_days(base_f, mean, monthly_spread_f(mean, year), days)
        for mean, days in zip(monthly_mean_f, DAYS_OF_MONTH, strict=True)
    )


def day_shape(hour: float) -> float:
    """Where one hour of the mean day lies about the day's mean, per degree of swing.

    Args:
        hour: Hour of the day, ending, 1 to 24. [h]

    Returns:
        Degrees above the mean for a swing of one degree, -0.451 to +0.525.

    Holds for: local solar time, a clear or cloudy month alike.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    angle = 2 * math.pi * (hour - 1) / HOURS_A_DAY
    return math.fsum(
        amplitude * math.cos(order * angle - phase)
        for order, (amplitude, phase) in enumerate(DAY_HARMONICS, 1)
    )


def swing_from_range_f(daily_range_f: float) -> float:
    """Swing of the mean day from the mean daily range.

    The mean of the days is flatter than a day, since the peak does not always come at
    the same hour.

    Args:
        daily_range_f: Mean of each day's maximum less its minimum. [°F]

    Returns:
        Warmest less coldest hour of the mean day. [°F]

    Holds for: mean of 1,020 typical years; single stations differ by about a tenth.
    Source: TMY3 data set, mean of all stations.
    """
    if daily_range_f < 0:
        raise ValueError(f"daily range {daily_range_f} °F: must be at least 0")
    return SWING_SHARE_OF_RANGE * daily_range_f


def bin_hours(
    low_f: float, high_f: float, mean_f: float, spread_f: float, days: float, swing_f: float
) -> float:
    """Hours of a month between two temperatures, with the mean day's swing.

    Args:
        low_f: Lower edge. [°F]
        high_f: Upper edge. [°F]
        mean_f: Mean of the month. [°F]
        spread_f: Spread of the daily means in the month. [°F]
        days: Days in the month. [days]
        swing_f: Warmest less coldest hour of the mean day; 0 leaves the day flat. [°F]

    Returns:
        Hours at or above the lower and below the upper edge. [h]

    Holds for: whole months.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    if swing_f == 0:
        share = share_below(high_f, mean_f, spread_f, days) - share_below(
            low_f, mean_f, spread_f, days
        )
        return HOURS_A_DAY * days * share
    return days * math.fsum(
        share_below(high_f, mean_f + swing_f * day_shape(hour), spread_f, days)
        - share_below(low_f, mean_f + swing_f * day_shape(hour), spread_f, days)
        for hour in range(1, HOURS_A_DAY + 1)
    )


def months_of_bins(
    monthly_mean_f: Sequence[float], monthly_swing_f: Sequence[float]
) -> tuple[tuple[Bin, ...], ...]:
    """Hours at each temperature, month by month, from monthly means.

    Args:
        monthly_mean_f: Mean outdoor temperature, January to December. [°F]
        monthly_swing_f: Swing of the mean day, January to December. [°F]

    Returns:
        For each month the bins that hold any time, coldest first. Centres are multiples
        of 5 °F; a centre c holds c - 2.5 °F up to, not including, c + 2.5 °F.

    Holds for: hours outside -62.5 and 127.5 °F are counted in the end bins.
    Source: Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983.
    """
    _twelve(monthly_mean_f, "monthly means")
    _twelve(monthly_swing_f, "monthly swings")
    year = yearly_spread_f(monthly_mean_f)
    count = round((WARMEST_BIN_F - COLDEST_BIN_F) / BIN_WIDTH_F) + 1
    centres = [COLDEST_BIN_F + BIN_WIDTH_F * i for i in range(count)]
    months = []
    for mean, swing, days in zip(monthly_mean_f, monthly_swing_f, DAYS_OF_MONTH, strict=True):
        scale = STEEPNESS / _reach_f(monthly_spread_f(mean, year), days)
        below = [0.0] * (count + 1)
        for hour in range(1, HOURS_A_DAY + 1):
            hour_mean = mean + swing * day_shape(hour)
            for i in range(1, count):
                x = scale * (centres[i] - BIN_WIDTH_F / 2 - hour_mean)
                below[i] += 1 / (1 + math.exp(-x)) if x > -700 else 0.0
        below[count] = HOURS_A_DAY
        months.append(
            tuple(
                Bin(centre, days * (below[i + 1] - below[i]))
                for i, centre in enumerate(centres)
                if below[i + 1] - below[i] > 1e-9
            )
        )
    return tuple(months)


def bins_from_hours(outdoor_f: Sequence[float]) -> tuple[Bin, ...]:
    """Hours at each temperature, counted from an hourly series.

    Args:
        outdoor_f: Outdoor temperature of each hour. [°F]

    Returns:
        The bins that hold any hour, coldest first; a centre c holds c - 2.5 °F up to, not
        including, c + 2.5 °F.

    Holds for: readings to 0.1 °C or 0.1 °F; they are counted as whole hundredths of a
        degree so that a reading on an edge always falls on the same side.
    Source: bin method, 2021 Fundamentals handbook, chapter 19.
    """
    width = round(BIN_WIDTH_F * 100)
    counts: dict[int, int] = {}
    for reading, hours in Counter(outdoor_f).items():
        index = (round(reading * 100) + width // 2) // width
        counts[index] = counts.get(index, 0) + hours
    return tuple(Bin(index * BIN_WIDTH_F, float(counts[index])) for index in sorted(counts))


def add_months(months: Sequence[Sequence[Bin]]) -> tuple[Bin, ...]:
    """The bins of a year from the bins of its months.

    Args:
        months: Bins of each month.

    Returns:
        Bins of the year, coldest first. [°F, h]
    """
    parts: dict[float, list[float]] = {}
    for month in months:
        for outdoor_f, hours in month:
            parts.setdefault(outdoor_f, []).append(hours)
    return tuple(Bin(outdoor_f, math.fsum(parts[outdoor_f])) for outdoor_f in sorted(parts))


def daily_means_f(outdoor_f: Sequence[float]) -> list[float]:
    """Mean temperature of each day of an hourly series.

    Args:
        outdoor_f: Outdoor temperature of each hour, whole days. [°F]

    Returns:
        One mean for each 24 hours. [°F]
    """
    if len(outdoor_f) % HOURS_A_DAY:
        raise ValueError(f"{len(outdoor_f)} hours: must be whole days of 24")
    return [
        math.fsum(outdoor_f[start : start + HOURS_A_DAY]) / HOURS_A_DAY
        for start in range(0, len(outdoor_f), HOURS_A_DAY)
    ]


def daily_degree_days(outdoor_f: Sequence[float], base_f: float) -> float:
    """Heating degree days of an hourly series from the mean of each day's 24 hours.

    Args:
        outdoor_f: Outdoor temperature of each hour, whole days. [°F]
        base_f: Base temperature. [°F]

    Returns:
        Degree days below the base. [°F·day]

    Holds for: the mean of 24 readings; the mean of maximum and minimum gives other figures.
    Source: degree-day definition, 2021 Fundamentals handbook, chapter 19.
    """
    return math.fsum(max(0.0, base_f - mean) for mean in daily_means_f(outdoor_f))


def daily_cooling_degree_days(outdoor_f: Sequence[float], base_f: float) -> float:
    """Cooling degree days of an hourly series from the mean of each day's 24 hours.

    Args:
        outdoor_f: Outdoor temperature of each hour, whole days. [°F]
        base_f: Base temperature. [°F]

    Returns:
        Degree days above the base. [°F·day]

    Source: degree-day definition, 2021 Fundamentals handbook, chapter 19.
    """
    return math.fsum(max(0.0, mean - base_f) for mean in daily_means_f(outdoor_f))


def hourly_degree_days(outdoor_f: Sequence[float], base_f: float) -> float:
    """Heating degree days of an hourly series, hour by hour.

    Args:
        outdoor_f: Outdoor temperature of each hour. [°F]
        base_f: Base temperature. [°F]

    Returns:
        Degree hours below the base divided by 24. [°F·day]

    Source: degree-day definition, 2021 Fundamentals handbook, chapter 19.
    """
    return math.fsum(max(0.0, base_f - t) for t in outdoor_f) / HOURS_A_DAY


def percentile_f(outdoor_f: Sequence[float], percent: float) -> float:
    """Temperature that a share of the hours lies below, linear between readings.

    Args:
        outdoor_f: Outdoor temperature of each hour. [°F]
        percent: Share of the hours, 0 to 100. [%]

    Returns:
        Temperature at that share. [°F]

    Holds for: one year's own hours. It is not a design temperature: published ones come
        from decades and can be 9 °F colder.
    Source: order statistics, linear between neighbours.
    """
    if not outdoor_f:
        raise ValueError("no hours: at least one is needed")
    if not 0 <= percent <= 100:
        raise ValueError(f"{percent} %: must lie within 0 and 100")
    ordered = sorted(outdoor_f)
    place = percent / 100 * (len(ordered) - 1)
    below = math.floor(place)
    above = min(below + 1, len(ordered) - 1)
    return ordered[below] + (place - below) * (ordered[above] - ordered[below])


def mean_day_f(outdoor_f: Sequence[float]) -> tuple[float, ...]:
    """The mean day: mean temperature of each hour of the day over whole days.

    Args:
        outdoor_f: Outdoor temperature of each hour, whole days. [°F]

    Returns:
        24 means, hour ending 1 first. [°F]
    """
    days = len(daily_means_f(outdoor_f))
    if not days:
        raise ValueError("no hours: at least one day is needed")
    return tuple(math.fsum(outdoor_f[hour::HOURS_A_DAY]) / days for hour in range(HOURS_A_DAY))


def mean_day_swing_f(outdoor_f: Sequence[float]) -> float:
    """Swing of the mean day of an hourly series.

    Args:
        outdoor_f: Outdoor temperature of each hour, whole days. [°F]

    Returns:
        Warmest less coldest hour of the mean day. [°F]
    """
    day = mean_day_f(outdoor_f)
    return max(day) - min(day)
