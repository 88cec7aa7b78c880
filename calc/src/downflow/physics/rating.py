"""The seasonal heating rating, HSPF2, worked again from the data sheet's test points.

A rating is a standard house in a standard climate. Its load line hangs on the unit's
own cooling capacity and knows nothing of the home in front of you. Region IV only: for
the other regions the sources disagree about the load line.

Capacities in Btu/h, powers in W, temperatures in °F, results in Btu/Wh.
"""

from collections.abc import Sequence
from typing import NamedTuple

# Region IV. App. M1 Table 20 and section 4.2.
ZERO_LOAD_F = 55.0
LOAD_LINE_DESIGN_F = 5.0
SLOPE_VARIABLE_SPEED = 1.07
SLOPE_OTHER = 1.15
# Watts of resistance heat, as the procedure divides. [Btu/Wh]
BTU_PER_WH = 3.413
CYCLING_LOSS = 0.25

# Defrost credit: minutes between defrosts count between these. [h]
CREDIT = 0.03
SHORTEST_BETWEEN_DEFROSTS_H = 1.5
LONGEST_BETWEEN_DEFROSTS_H = 12.0

# Where the frosted line is in force, and the default for an untested 35 °F point.
FROST_FROM_F = 17.0
FROST_TO_F = 45.0
LOW_STAGE_FROST_TO_F = 40.0
DEFAULT_35F_CAPACITY = 0.90
DEFAULT_35F_POWER = 0.985

Point = tuple[float, float]


class BinRow(NamedTuple):
    """One temperature bin of the season, all weighted by its share of the hours."""

    outdoor_f: float
    share: float
    load_btuh: float
    running: str
    heat_pump_w: float
    resistance_w: float


class Rating(NamedTuple):
    """The rating and the sums that make it."""

    hspf2: float
    load_btuh: float
    heat_pump_w: float
    resistance_w: float
    rows: tuple[BinRow, ...]


def load_btuh(outdoor_f: float, cooling_95f_btuh: float, slope: float) -> float:
    """Load of the rating's standard house.

    Args:
        outdoor_f: Outdoor temperature of the bin. [°F]
        cooling_95f_btuh: Rated cooling capacity at 95 °F. [Btu/h]
        slope: 1.07 for variable speed, 1.15 for others in region IV.

    Returns:
        Load, 0 at and above 55 °F. [Btu/h]

    Raises:
        ValueError: The capacity is not above 0.

    Holds for: region IV.
    Source: 10 CFR 430 subpart B App. M1 section 4.2, Table 20; AHRI 210/240-2023 section 11.2.2.
    """
    if cooling_95f_btuh <= 0:
        raise ValueError(f"cooling capacity {cooling_95f_btuh} Btu/h: must be above 0")
    lean = (ZERO_LOAD_F - outdoor_f) / (ZERO_LOAD_F - LOAD_LINE_DESIGN_F)
    return max(0.0, lean * slope * cooling_95f_btuh)


def part_load_factor(load_share: float, cycling_loss: float) -> float:
    """Efficiency kept while cycling.

    Args:
        load_share: Load over capacity, 0 to 1.
        cycling_loss: Degradation coefficient, 0.25 where not tested.

    Returns:
        Share of the steady efficiency.

    Source: 10 CFR 430 subpart B App. M1 section 4.2.1.
    """
    return 1 - cycling_loss * (1 - load_share)


def defrost_credit(average_h: float, longest_h: float) -> float:
    """Credit for a demand defrost control.

    Args:
        average_h: Time between defrosts in the 35 °F test; 1.5 h at least counts. [h]
        longest_h: Longest time between defrosts the control allows; 12 h at most counts. [h]

    Returns:
        Factor on the rating, 1 to 1.03.

    Raises:
        ValueError: The longest time does not pass the shortest that counts.

    Holds for: demand defrost; a timed defrost has the factor 1.
    Source: 10 CFR 430 subpart B App. M1 section 3.9.1, 4.2.
    """
    average = max(average_h, SHORTEST_BETWEEN_DEFROSTS_H)
    longest = min(longest_h, LONGEST_BETWEEN_DEFROSTS_H)
    if longest <= SHORTEST_BETWEEN_DEFROSTS_H or average > longest:
        raise ValueError(
            f"{average_h} h between defrosts, {longest_h} h at most: the longest must be above "
            f"{SHORTEST_BETWEEN_DEFROSTS_H} h and not below the average"
        )
    return 1 + CREDIT * (
        1 - (average - SHORTEST_BETWEEN_DEFROSTS_H) / (longest - SHORTEST_BETWEEN_DEFROSTS_H)
    )


def default_35f(at_17f: Point, at_47f: Point) -> Point:
    """Capacity and power at 35 °F where that test was not run.

    Args:
        at_17f: Capacity and power at 17 °F. [Btu/h, W]
        at_47f: Capacity and power at 47 °F. [Btu/h, W]

    Returns:
        Capacity and power at 35 °F with frost. [Btu/h, W]

    Source: 10 CFR 430 subpart B App. M1 section 3.6.2; AHRI 210/240-2023 section 6.1.
    """
    share = (35 - 17) / (47 - 17)
    return (
        DEFAULT_35F_CAPACITY * (at_17f[0] + share * (at_47f[0] - at_17f[0])),
        DEFAULT_35F_POWER * (at_17f[1] + share * (at_47f[1] - at_17f[1])),
    )


def _line(outdoor_f: float, cold: Point, cold_f: float, warm: Point, warm_f: float) -> Point:
    share = (outdoor_f - cold_f) / (warm_f - cold_f)
    return (
        cold[0] + share * (warm[0] - cold[0]),
        cold[1] + share * (warm[1] - cold[1]),
    )


def full_speed(
    outdoor_f: float, at_47f: Point, at_35f: Point, at_17f: Point, at_5f: Point | None = None
) -> Point:
    """Capacity and power at full speed in one bin.

    Args:
        outdoor_f: Outdoor temperature of the bin. [°F]
        at_47f: Test at 47 °F. [Btu/h, W]
        at_35f: Frost test at 35 °F. [Btu/h, W]
        at_17f: Test at 17 °F. [Btu/h, W]
        at_5f: Test at 5 °F, or None where it was not run. [Btu/h, W]

    Returns:
        Capacity and power. [Btu/h, W]

    Holds for: the rating. It steps at 45 °F, where the frosted line ends: that is the rule.
    Source: 10 CFR 430 subpart B App. M1 section 4.2; AHRI 210/240-2023 section 11.2.2.
    """
    if FROST_FROM_F < outdoor_f < FROST_TO_F:
        return _line(outdoor_f, at_17f, 17, at_35f, 35)
    if at_5f is None or outdoor_f >= FROST_TO_F:
        return _line(outdoor_f, at_17f, 17, at_47f, 47)
    if outdoor_f >= 5:
        return _line(outdoor_f, at_5f, 5, at_17f, 17)
    share = (outdoor_f - 5) / (47 - 17)
    return (
        at_5f[0] + share * (at_47f[0] - at_17f[0]),
        at_5f[1] + share * (at_47f[1] - at_17f[1]),
    )


def low_speed(outdoor_f: float, at_47f: Point, at_62f: Point) -> Point:
    """Capacity and power of a variable-speed unit at its lowest speed in one bin.

    Args:
        outdoor_f: Outdoor temperature of the bin. [°F]
        at_47f: Lowest speed at 47 °F. [Btu/h, W]
        at_62f: Lowest speed at 62 °F. [Btu/h, W]

    Returns:
        Capacity and power, without frost. [Btu/h, W]

    Source: 10 CFR 430 subpart B App. M1 section 4.2.4.
    """
    return _line(outdoor_f, at_47f, 47, at_62f, 62)


def running_share(
    outdoor_f: float, capacity_btuh: float, power_w: float, off_f: float | None, on_f: float | None
) -> float:
    """Share of a bin in which the compressor may run.

    Args:
        outdoor_f: Outdoor temperature of the bin. [°F]
        capacity_btuh: Capacity in the bin. [Btu/h]
        power_w: Power in the bin. [W]
        off_f: Temperature at which the control turns the compressor off, or None. [°F]
        on_f: Temperature at which it lets it on again, or None for the same. [°F]

    Returns:
        1, a half between the two temperatures, or 0.

    Source: 10 CFR 430 subpart B App. M1 section 4.2.1.
    """
    if power_w <= 0 or capacity_btuh / (BTU_PER_WH * power_w) < 1:
        return 0.0
    if off_f is None:
        return 1.0
    if outdoor_f <= off_f:
        return 0.0
    return 0.5 if on_f is not None and outdoor_f <= on_f else 1.0


def _check(
    bins: Sequence[Point],
    points: Sequence[Point],
    cycling_loss: float,
    off_f: float | None,
    on_f: float | None,
) -> None:
    if not bins or sum(share for _, share in bins) <= 0:
        raise ValueError("no bins: the season has no hours")
    for capacity, power in points:
        if capacity <= 0 or power <= 0:
            raise ValueError(f"test point {capacity} Btu/h, {power} W: both must be above 0")
    if not 0 <= cycling_loss < 1:
        raise ValueError(f"cycling loss {cycling_loss}: must be at least 0 and below 1")
    if on_f is not None and (off_f is None or on_f < off_f):
        raise ValueError(f"turn-on temperature {on_f} °F: must not be below turn-off {off_f} °F")


def _sum(rows: Sequence[BinRow], credit: float) -> Rating:
    load = sum(row.load_btuh for row in rows)
    heat_pump = sum(row.heat_pump_w for row in rows)
    resistance = sum(row.resistance_w for row in rows)
    return Rating(load / (heat_pump + resistance) * credit, load, heat_pump, resistance,
                  tuple(rows))


def single_speed(
    bins: Sequence[Point],
    cooling_95f_btuh: float,
    at_47f: Point,
    at_35f: Point,
    at_17f: Point,
    cycling_loss: float = CYCLING_LOSS,
    off_f: float | None = None,
    on_f: float | None = None,
    credit: float = 1.0,
) -> Rating:
    """HSPF2 of a single-speed heat pump, region IV.

    Args:
        bins: Outdoor temperature and share of the heating season's hours. [°F, -]
        cooling_95f_btuh: Rated cooling capacity at 95 °F. [Btu/h]
        at_47f: Capacity and power at 47 °F. [Btu/h, W]
        at_35f: Capacity and power at 35 °F with frost. [Btu/h, W]
        at_17f: Capacity and power at 17 °F. [Btu/h, W]
        cycling_loss: Degradation coefficient.
        off_f: Temperature at which the control turns the compressor off, or None. [°F]
        on_f: Temperature at which it lets it on again, or None. [°F]
        credit: Demand defrost credit.

    Returns:
        The rating in Btu/Wh and its sums per hour of the season.

    Raises:
        ValueError: A point, a bin or a temperature that makes no sense.

    Holds for: region IV; never the home's own seasonal figure.
    Source: 10 CFR 430 subpart B App. M1 section 4.2.1.
    """
    _check(bins, (at_47f, at_35f, at_17f), cycling_loss, off_f, on_f)
    rows = []
    for outdoor_f, share in bins:
        load = load_btuh(outdoor_f, cooling_95f_btuh, SLOPE_OTHER)
        if load == 0 or share == 0:
            continue
        capacity, power = full_speed(outdoor_f, at_47f, at_35f, at_17f)
        part = min(1.0, load / capacity) if capacity > 0 else 1.0
        allowed = running_share(outdoor_f, capacity, power, off_f, on_f)
        used = part * power * allowed / part_load_factor(part, cycling_loss)
        rest = (load - part * capacity * allowed) / BTU_PER_WH
        running = "off" if not allowed else "cycles" if part < 1 else "all out"
        rows.append(BinRow(outdoor_f, share, share * load, running, share * used, share * rest))
    return _sum(rows, credit)


def low_stage(
    outdoor_f: float, at_62f: Point, at_47f: Point, at_35f: Point, at_17f: Point
) -> Point:
    """Capacity and power of the low stage of a two-stage unit in one bin.

    Args:
        outdoor_f: Outdoor temperature of the bin. [°F]
        at_62f: Test at 62 °F. [Btu/h, W]
        at_47f: Test at 47 °F. [Btu/h, W]
        at_35f: Frost test at 35 °F. [Btu/h, W]
        at_17f: Test at 17 °F. [Btu/h, W]

    Returns:
        Capacity and power. [Btu/h, W]

    Holds for: the rating. It steps at 40 °F, where the frosted line ends: that is the rule.
    Source: 10 CFR 430 subpart B App. M1 section 4.2.3.
    """
    if outdoor_f >= LOW_STAGE_FROST_TO_F:
        return _line(outdoor_f, at_47f, 47, at_62f, 62)
    if outdoor_f >= FROST_FROM_F:
        return _line(outdoor_f, at_17f, 17, at_35f, 35)
    return _line(outdoor_f, at_17f, 17, at_47f, 47)


def two_stage(
    bins: Sequence[Point],
    cooling_95f_btuh: float,
    low_62f: Point,
    low_47f: Point,
    low_35f: Point,
    low_17f: Point,
    full_47f: Point,
    full_35f: Point,
    full_17f: Point,
    full_5f: Point | None = None,
    low_cycling_loss: float = CYCLING_LOSS,
    off_f: float | None = None,
    on_f: float | None = None,
    credit: float = 1.0,
) -> Rating:
    """HSPF2 of a two-stage heat pump, region IV.

    Args:
        bins: Outdoor temperature and share of the heating season's hours. [°F, -]
        cooling_95f_btuh: Rated cooling capacity at 95 °F, high stage. [Btu/h]
        low_62f: Low stage at 62 °F. [Btu/h, W]
        low_47f: Low stage at 47 °F. [Btu/h, W]
        low_35f: Low stage at 35 °F with frost. [Btu/h, W]
        low_17f: Low stage at 17 °F. [Btu/h, W]
        full_47f: High stage at 47 °F. [Btu/h, W]
        full_35f: High stage at 35 °F with frost. [Btu/h, W]
        full_17f: High stage at 17 °F. [Btu/h, W]
        full_5f: High stage at 5 °F, or None where it was not run. [Btu/h, W]
        low_cycling_loss: Degradation coefficient of the low stage.
        off_f: Temperature at which the control turns the compressor off, or None. [°F]
        on_f: Temperature at which it lets it on again, or None. [°F]
        credit: Demand defrost credit.

    Returns:
        The rating in Btu/Wh and its sums per hour of the season.

    Raises:
        ValueError: A point, a bin or a temperature that makes no sense.

    Holds for: region IV, a low stage that is not locked out; never the home's own figure.
    Source: 10 CFR 430 subpart B App. M1 section 4.2.3.
    """
    tests = [low_62f, low_47f, low_35f, low_17f, full_47f, full_35f, full_17f]
    _check(bins, tests + ([full_5f] if full_5f else []), low_cycling_loss, off_f, on_f)
    rows = []
    for outdoor_f, share in bins:
        load = load_btuh(outdoor_f, cooling_95f_btuh, SLOPE_OTHER)
        if load == 0 or share == 0:
            continue
        low = low_stage(outdoor_f, low_62f, low_47f, low_35f, low_17f)
        full = full_speed(outdoor_f, full_47f, full_35f, full_17f, full_5f)
        if load <= low[0]:
            part = load / low[0]
            running, given = "cycles", load
            power = part * low[1] / part_load_factor(part, low_cycling_loss)
            allowed = running_share(outdoor_f, low[0], low[1], off_f, on_f)
        elif load < full[0]:
            part = (full[0] - load) / (full[0] - low[0])
            running, given = "between", load
            power = part * low[1] + (1 - part) * full[1]
            allowed = running_share(outdoor_f, full[0], full[1], off_f, on_f)
        else:
            running, given, power = "all out", full[0], full[1]
            allowed = running_share(outdoor_f, full[0], full[1], off_f, on_f)
        rest = (load - given * allowed) / BTU_PER_WH
        rows.append(
            BinRow(outdoor_f, share, share * load, running if allowed else "off",
                   share * power * allowed, share * rest)
        )
    return _sum(rows, credit)


def variable_speed(
    bins: Sequence[Point],
    cooling_95f_btuh: float,
    low_62f: Point,
    low_47f: Point,
    middle_35f: Point,
    full_47f: Point,
    full_35f: Point,
    full_17f: Point,
    full_5f: Point | None = None,
    cycling_loss: float = CYCLING_LOSS,
    off_f: float | None = None,
    on_f: float | None = None,
    credit: float = 1.0,
) -> Rating:
    """HSPF2 of a variable-speed heat pump, region IV.

    Args:
        bins: Outdoor temperature and share of the heating season's hours. [°F, -]
        cooling_95f_btuh: Rated cooling capacity at 95 °F. [Btu/h]
        low_62f: Lowest speed at 62 °F. [Btu/h, W]
        low_47f: Lowest speed at 47 °F. [Btu/h, W]
        middle_35f: Intermediate speed at 35 °F. [Btu/h, W]
        full_47f: Full speed at 47 °F. [Btu/h, W]
        full_35f: Full speed at 35 °F with frost. [Btu/h, W]
        full_17f: Full speed at 17 °F. [Btu/h, W]
        full_5f: Full speed at 5 °F, or None where it was not run. [Btu/h, W]
        cycling_loss: Degradation coefficient.
        off_f: Temperature at which the control turns the compressor off, or None. [°F]
        on_f: Temperature at which it lets it on again, or None. [°F]
        credit: Demand defrost credit.

    Returns:
        The rating in Btu/Wh and its sums per hour of the season.

    Raises:
        ValueError: A point, a bin or a temperature that makes no sense; an intermediate
            speed that does not lie between the lowest and full speed at 35 °F.

    Holds for: region IV; never the home's own seasonal figure.
    Source: 10 CFR 430 subpart B App. M1 section 4.2.4; AHRI 210/240-2023 section 11.2.2.
    """
    tests = [low_62f, low_47f, middle_35f, full_47f, full_35f, full_17f]
    _check(bins, tests + ([full_5f] if full_5f else []), cycling_loss, off_f, on_f)
    low_35f = low_speed(35, low_47f, low_62f)
    if not low_35f[0] < middle_35f[0] < full_35f[0]:
        raise ValueError(
            f"intermediate capacity {middle_35f[0]} Btu/h at 35 °F: must lie between the lowest "
            f"speed's {low_35f[0]:.0f} and full speed's {full_35f[0]}"
        )

    def slope(which: int) -> float:
        near_full = (middle_35f[which] - low_35f[which]) / (full_35f[which] - low_35f[which])
        return (low_62f[which] - low_47f[which]) / (62 - 47) * (1 - near_full) + (
            full_35f[which] - full_17f[which]
        ) / (35 - 17) * near_full

    if full_35f[1] == low_35f[1]:
        raise ValueError("full and lowest speed take the same power at 35 °F: they must differ")
    capacity_slope, power_slope = slope(0), slope(1)
    rows = []
    for outdoor_f, share in bins:
        load = load_btuh(outdoor_f, cooling_95f_btuh, SLOPE_VARIABLE_SPEED)
        if load == 0 or share == 0:
            continue
        low = low_speed(outdoor_f, low_47f, low_62f)
        full = full_speed(outdoor_f, full_47f, full_35f, full_17f, full_5f)
        middle = (
            middle_35f[0] + capacity_slope * (outdoor_f - 35),
            middle_35f[1] + power_slope * (outdoor_f - 35),
        )
        if low[0] > 0 and load <= low[0]:
            part = load / low[0]
            running, given = "cycles", load
            power = part * low[1] / part_load_factor(part, cycling_loss)
            allowed = running_share(outdoor_f, low[0], low[1], off_f, on_f)
        elif load < full[0]:
            cold, warm = (low, middle) if load <= middle[0] else (middle, full)
            efficiency = _between(load, cold, warm)
            running, given, power = "between", load, load / (BTU_PER_WH * efficiency)
            allowed = running_share(outdoor_f, load, power, off_f, on_f)
        else:
            running, given, power = "all out", full[0], full[1]
            allowed = running_share(outdoor_f, full[0], full[1], off_f, on_f)
        rest = (load - given * allowed) / BTU_PER_WH
        rows.append(
            BinRow(outdoor_f, share, share * load, running if allowed else "off",
                   share * power * allowed, share * rest)
        )
    return _sum(rows, credit)


def _between(load: float, slower: Point, faster: Point) -> float:
    """Heat per electricity at a load between two speeds, straight in the load."""
    at_slower = slower[0] / (BTU_PER_WH * slower[1])
    at_faster = faster[0] / (BTU_PER_WH * faster[1])
    return at_slower + (at_faster - at_slower) * (load - slower[0]) / (faster[0] - slower[0])
