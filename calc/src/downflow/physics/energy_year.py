"""A year of heating and cooling, from hours at a temperature.

One hour is worked at a time: what the house needs, what the heat pump gives at that
outdoor temperature, what the backup must add. The hours come from monthly bins or from
8,760 readings; both go through the same lines, month by month.

The load line is steady: no sun, no stored heat. Over a year both even out; on one day
they do not.
"""

import math
from collections import Counter
from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import NamedTuple

from downflow.physics import air, cost, heat_pump

CYCLING_LOSS = 0.25
WH_PER_KWH = 1000.0


class Speeds(NamedTuple):
    """What a heat pump can do at one outdoor temperature, frost already taken off."""

    least_btuh: float
    least_w: float
    full_btuh: float
    full_w: float


LOCKED_OUT = Speeds(0.0, 0.0, 0.0, 0.0)


class Hour(NamedTuple):
    """One hour's outcome, means over the hour."""

    heat_pump_btuh: float
    heat_pump_w: float
    backup_btuh: float
    short_btuh: float
    run_share: float


class Month(NamedTuple):
    """One month, or the year as their sum."""

    house_btu: float
    load_btu: float
    heat_pump_btu: float
    heat_pump_kwh: float
    backup_kwh: float
    fan_kwh: float
    short_btu: float
    run_hours: float
    backup_hours: float
    cooling_btu: float
    cooling_kwh: float


class House(NamedTuple):
    """What the home asks for.

    Attributes:
        ua_btuh_f: Heat loss per degree, ducts not counted. [Btu/(h °F)]
        balance_f: Outdoor temperature at which people, sun and lights are enough. [°F]
        delivery: Share of the equipment's heat that reaches the rooms.
        cooling_btuh_f: Cooling needed per degree above its balance. [Btu/(h °F)]
        cooling_balance_f: Outdoor temperature above which cooling starts. [°F]
    """

    ua_btuh_f: float
    balance_f: float
    delivery: float = 1.0
    cooling_btuh_f: float = 0.0
    cooling_balance_f: float = 75.0


class System(NamedTuple):
    """The heat pump with its backup.

    Attributes:
        speeds: What it can do at an outdoor temperature.
        cycling_loss: Degradation coefficient while it cycles.
        cut_out_f: Below this the compressor stays off; None: never. [°F]
        kit_kw: Backup installed; None: as much as it takes. [kW]
        fan_w: Blower power that the data sheet's power leaves out, while it runs. [W]
        cooling_eer: Outdoor temperature and cooling per electricity, coldest first; flat
            beyond its ends. [°F, Btu/Wh]
    """

    speeds: Callable[[float], Speeds]
    cycling_loss: float = CYCLING_LOSS
    cut_out_f: float | None = None
    kit_kw: float | None = None
    fan_w: float = 0.0
    cooling_eer: tuple[tuple[float, float], ...] = ()


def load_btuh(
    outdoor_f: float, ua_btuh_f: float, balance_f: float, delivery: float = 1.0
) -> float:
    """Heat the equipment must hand over.

    Args:
        outdoor_f: Outdoor temperature. [°F]
        ua_btuh_f: Heat loss of the home per degree. [Btu/(h °F)]
        balance_f: Outdoor temperature at which the home needs no heat. [°F]
        delivery: Share of the equipment's heat that reaches the rooms, 0 to 1.

    Returns:
        Load on the equipment, 0 at and above the balance temperature. [Btu/h]

    Raises:
        ValueError: A delivery efficiency outside 0 to 1, or a negative heat loss.

    Holds for: steady days; sun and stored heat shift load from hour to hour.
    Source: 2021 Fundamentals handbook, chapter 19, bin method.
    """
    if not 0 < delivery <= 1:
        raise ValueError(f"delivery efficiency {delivery}: must be above 0 and at most 1")
    if ua_btuh_f < 0:
        raise ValueError(f"heat loss {ua_btuh_f} Btu/(h °F): must be at least 0")
    return heat_pump.load_btuh(ua_btuh_f, balance_f, outdoor_f) / delivery


def part_load_factor(load_share: float, cycling_loss: float = CYCLING_LOSS) -> float:
    """Efficiency kept while cycling.

    Args:
        load_share: Load over the least capacity, 0 to 1.
        cycling_loss: Degradation coefficient, 0.25 where not tested.

    Returns:
        Share of the steady efficiency.

    Raises:
        ValueError: A share outside 0 to 1.

    Holds for: loads below the least capacity.
    Source: 2021 Fundamentals handbook, chapter 19, table 2; 10 CFR 430 appendix M1.
    """
    if not 0 <= load_share <= 1:
        raise ValueError(f"load share {load_share}: must lie within 0 and 1")
    return 1 - cycling_loss * (1 - load_share)


def heat_pump_hour(
    load_btuh: float,
    least_btuh: float,
    least_w: float,
    full_btuh: float,
    full_w: float,
    cycling_loss: float = CYCLING_LOSS,
    kit_btuh: float = math.inf,
) -> Hour:
    """One hour of a heat pump with backup.

    Above its full capacity it runs all out and backup gives the rest, as far as the kit
    goes. Between least and full capacity it follows the load, heat per electricity
    straight in the load. Below its least capacity it cycles. Locked out (capacity 0),
    backup gives all.

    Args:
        load_btuh: Heat the equipment must hand over. [Btu/h]
        least_btuh: Capacity at the lowest speed; 0 while it is locked out. [Btu/h]
        least_w: Power there. [W]
        full_btuh: Capacity at full speed; 0 while it is locked out. [Btu/h]
        full_w: Power there. [W]
        cycling_loss: Degradation coefficient.
        kit_btuh: Backup installed. [Btu/h]

    Returns:
        Heat, power, backup, heat missing, and the share of the hour it runs.

    Raises:
        ValueError: Capacities or powers that make no sense.

    Holds for: a single-speed unit too, with both speeds the same.
    Source: 10 CFR 430 subpart B appendix M1; 2021 Fundamentals handbook, chapter 19.
    """
    if load_btuh <= 0:
        return Hour(0.0, 0.0, 0.0, 0.0, 0.0)
    if full_btuh == 0:
        backup = min(load_btuh, kit_btuh)
        return Hour(0.0, 0.0, backup, load_btuh - backup, 1.0)
    if not 0 < least_btuh <= full_btuh:
        raise ValueError(f"capacities {least_btuh} to {full_btuh} Btu/h: must be above 0 and rise")
    if least_w <= 0 or full_w <= 0:
        raise ValueError(f"power {least_w} W, {full_w} W: both must be above 0")
    if load_btuh >= full_btuh:
        backup = min(load_btuh - full_btuh, kit_btuh)
        return Hour(full_btuh, full_w, backup, load_btuh - full_btuh - backup, 1.0)
    if load_btuh < least_btuh:
        share = load_btuh / least_btuh
        power = least_w * share / part_load_factor(share, cycling_loss)
        return Hour(load_btuh, power, 0.0, 0.0, share)
    at_least, at_full = heat_pump.cop(least_btuh, least_w), heat_pump.cop(full_btuh, full_w)
    along = (load_btuh - least_btuh) / (full_btuh - least_btuh)
    here = at_least + along * (at_full - at_least)
    return Hour(load_btuh, load_btuh / (air.BTU_PER_WH * here), 0.0, 0.0, 1.0)


def eer_at(outdoor_f: float, points: Sequence[tuple[float, float]]) -> float:
    """Cooling per electricity at an outdoor temperature.

    Args:
        outdoor_f: Outdoor temperature. [°F]
        points: Outdoor temperature and cooling per electricity, coldest first; a single
            point is a seasonal figure used everywhere. [°F, Btu/Wh]

    Returns:
        Straight between the points, flat beyond their ends. [Btu/Wh]

    Raises:
        ValueError: No point, points out of order, or a figure that is not above 0.

    Source: interpolation of the data sheet.
    """
    if not points:
        raise ValueError("no cooling efficiency: at least one point is needed")
    for (cold_f, _), (warm_f, _) in pairwise(points):
        if warm_f <= cold_f:
            raise ValueError(f"cooling points at {cold_f} and {warm_f} °F: must rise")
    if min(eer for _, eer in points) <= 0:
        raise ValueError("cooling efficiency: must be above 0")
    if outdoor_f <= points[0][0]:
        return points[0][1]
    for (cold_f, cold), (warm_f, warm) in pairwise(points):
        if outdoor_f <= warm_f:
            return cold + (warm - cold) * (outdoor_f - cold_f) / (warm_f - cold_f)
    return points[-1][1]


NOTHING = Month(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)


def hour_at(outdoor_f: float, house: House, system: System) -> Month:
    """One hour at an outdoor temperature, as energies of that hour.

    Args:
        outdoor_f: Outdoor temperature. [°F]
        house: What the home asks for.
        system: The heat pump with its backup.

    Returns:
        Energies and hours of one hour.

    Source: 2021 Fundamentals handbook, chapter 19, bin method.
    """
    load = load_btuh(outdoor_f, house.ua_btuh_f, house.balance_f, house.delivery)
    if load > 0:
        runs = heat_pump.runs(outdoor_f, system.cut_out_f)
        at = system.speeds(outdoor_f) if runs else LOCKED_OUT
        kit = math.inf if system.kit_kw is None else system.kit_kw * cost.BTU_PER_KWH
        hour = heat_pump_hour(load, *at, system.cycling_loss, kit)
        return Month(
            house_btu=load * house.delivery,
            load_btu=load,
            heat_pump_btu=hour.heat_pump_btuh,
            heat_pump_kwh=hour.heat_pump_w / WH_PER_KWH,
            backup_kwh=hour.backup_btuh / cost.BTU_PER_KWH,
            fan_kwh=hour.run_share * system.fan_w / WH_PER_KWH,
            short_btu=hour.short_btuh,
            run_hours=hour.run_share,
            backup_hours=1.0 if hour.backup_btuh > 0 else 0.0,
            cooling_btu=0.0,
            cooling_kwh=0.0,
        )
    above = outdoor_f - house.cooling_balance_f
    if house.cooling_btuh_f <= 0 or above <= 0 or not system.cooling_eer:
        return NOTHING
    cooling = house.cooling_btuh_f * above / house.delivery
    kwh = cooling / eer_at(outdoor_f, system.cooling_eer) / WH_PER_KWH
    return NOTHING._replace(cooling_btu=cooling, cooling_kwh=kwh)


def total(parts: Sequence[Month]) -> Month:
    """Sum of months, or of hours.

    Args:
        parts: What to add.

    Returns:
        Their sum, field by field.
    """
    return Month(*(math.fsum(column) for column in zip(*parts, strict=True))) if parts else NOTHING


def year(
    months: Sequence[Sequence[tuple[float, float]]], house: House, system: System
) -> tuple[Month, ...]:
    """A year from hours at a temperature, month by month.

    Args:
        months: For each month pairs of outdoor temperature and hours. [°F, h]
        house: What the home asks for.
        system: The heat pump with its backup.

    Returns:
        One row for each month.

    Holds for: a steady load line; within 0.3 % of 8,760 h when the bins are 5 °F wide.
    Source: 2021 Fundamentals handbook, chapter 19, bin method.
    """
    known: dict[float, Month] = {}
    rows = []
    for month in months:
        parts = []
        for outdoor_f, hours in month:
            one = known.get(outdoor_f)
            if one is None:
                one = known[outdoor_f] = hour_at(outdoor_f, house, system)
            if one is not NOTHING:
                parts.append(Month(*(hours * value for value in one)))
        rows.append(total(parts))
    return tuple(rows)


def hour_year(
    months_f: Sequence[Sequence[float]], house: House, system: System
) -> tuple[Month, ...]:
    """A year from every hour's temperature, month by month.

    Hours at the same temperature have the same outcome, so each is worked once.

    Args:
        months_f: For each month the outdoor temperature of each of its hours. [°F]
        house: What the home asks for.
        system: The heat pump with its backup.

    Returns:
        One row for each month.

    Holds for: a steady load line, hour by hour.
    Source: hourly form of the bin method.
    """
    counted = [[(t, float(n)) for t, n in Counter(month).items()] for month in months_f]
    return year(counted, house, system)


class TableYear(NamedTuple):
    """A year from a table that already holds capacity and power for each bin."""

    load_kwh: float
    heat_pump_kwh: float
    backup_kwh: float
    total_kwh: float


def table_year(
    hours: Sequence[float],
    load_btuh: Sequence[float],
    capacity_btuh: Sequence[float],
    power_w: Sequence[float],
    cycling_loss: float = CYCLING_LOSS,
) -> TableYear:
    """A year of a single-speed heat pump from integrated values bin by bin.

    Args:
        hours: Hours in each bin. [h]
        load_btuh: Load in each bin. [Btu/h]
        capacity_btuh: Capacity in each bin, frost taken off. [Btu/h]
        power_w: Power in each bin. [W]
        cycling_loss: Degradation coefficient.

    Returns:
        Load, heat pump, backup and their electricity together. [kWh]

    Raises:
        ValueError: Columns of different length, or heat without power.

    Holds for: integrated capacities, frost and defrost inside.
    Source: 2021 Fundamentals handbook, chapter 19, table 2.
    """
    load = heat_pump = backup = 0.0
    for h, need, capacity, power in zip(hours, load_btuh, capacity_btuh, power_w, strict=True):
        one = heat_pump_hour(need, capacity, power, capacity, power, cycling_loss)
        load += h * need / cost.BTU_PER_KWH
        heat_pump += h * one.heat_pump_w / WH_PER_KWH
        backup += h * one.backup_btuh / cost.BTU_PER_KWH
    return TableYear(load, heat_pump, backup, heat_pump + backup)


def run_share_with_loss(
    load_share: float, cycling_loss: float = CYCLING_LOSS
) -> float:
    """Share of the time a cycling compressor runs, its start-up losses included.

    Args:
        load_share: Load over the least capacity, 0 to 1.
        cycling_loss: Degradation coefficient.

    Returns:
        Share of the time, 0 to 1.

    Source: 2021 Fundamentals handbook, chapter 19, table 2.
    """
    return min(1.0, load_share / part_load_factor(load_share, cycling_loss))


def seasonal_cop(season: Month) -> float | None:
    """Heat handed over per electricity over the heating season, backup and fans included.

    Args:
        season: The year, or any part of it.

    Returns:
        Heat per electricity; None where nothing was heated.

    Source: definition.
    """
    electricity = season.heat_pump_kwh + season.backup_kwh + season.fan_kwh
    heat = season.heat_pump_btu + season.backup_kwh * cost.BTU_PER_KWH
    return heat / (electricity * cost.BTU_PER_KWH) if electricity > 0 else None


def backup_share(season: Month) -> float:
    """Share of the heat that comes from the backup.

    Args:
        season: The year, or any part of it.

    Returns:
        Share, 0 to 1.

    Source: definition.
    """
    backup = season.backup_kwh * cost.BTU_PER_KWH
    heat = season.heat_pump_btu + backup
    return backup / heat if heat > 0 else 0.0


class Before(NamedTuple):
    """One month of the old furnace."""

    load_btu: float
    fuel_units: float
    fan_kwh: float
    run_hours: float


def furnace_month(
    house_btu: float,
    delivery: float,
    output_btuh: float,
    efficiency: float,
    btu_per_unit: float,
    blower_w: float,
) -> Before:
    """Fuel and blower electricity of the old furnace for a month's heat.

    Args:
        house_btu: Heat the rooms took. [Btu]
        delivery: Share of the furnace's heat that reached the rooms, ducts as they were.
        output_btuh: Heat it hands over while it fires. [Btu/h]
        efficiency: Seasonal efficiency, 0 to 1; 1 for electric resistance.
        btu_per_unit: Heat content of one unit of sale; 3,412.142 for electricity. [Btu]
        blower_w: Blower power while it fires. [W]

    Returns:
        Load on the furnace, units of sale, blower electricity, hours of firing.

    Raises:
        ValueError: An output, efficiency or delivery outside its range.

    Holds for: a single-stage furnace that keeps up; the blower's after-run is left out.
    Source: 2021 Fundamentals handbook, chapter 19.
    """
    if output_btuh <= 0:
        raise ValueError(f"furnace output {output_btuh} Btu/h: must be above 0")
    if not 0 < delivery <= 1:
        raise ValueError(f"delivery efficiency {delivery}: must be above 0 and at most 1")
    load = house_btu / delivery
    hours = load / output_btuh
    return Before(
        load,
        cost.fuel_units(load, btu_per_unit, efficiency),
        hours * blower_w / WH_PER_KWH,
        hours,
    )


# ---- frost ------------------------------------------------------------------------------
# Humidity-aware frost model: coil surface from outdoor temperature, then loss by the
# humidity that can settle on it.
COIL_PER_OUTDOOR = 0.82
COIL_OFFSET_C = 8.589
LEAST_HUMIDITY_DROP = 1e-6
DEMAND_TIME = 0.01446
DEMAND_CAPACITY = 0.875
DEMAND_POWER = 0.954
TIMED_CAPACITY = 0.909
TIMED_CAPACITY_PER_DROP = 107.33
TIMED_POWER = 0.90
TIMED_POWER_PER_DROP = 36.45
FROST_BELOW_F = 41.0


class Frost(NamedTuple):
    """What frost and defrost leave: factors on capacity and power."""

    capacity: float
    power: float
    defrost_share: float


NO_FROST = Frost(1.0, 1.0, 0.0)


def coil_surface_f(outdoor_f: float) -> float:
    """Temperature of the outdoor coil's surface in the frost model.

    Args:
        outdoor_f: Outdoor temperature. [°F]

    Returns:
        Coil surface. [°F]

    Source: EnergyPlus Engineering Reference, defrost of air-to-air DX heating coils.
    """
    outdoor_c = (outdoor_f - 32) / 1.8
    return 1.8 * (COIL_PER_OUTDOOR * outdoor_c - COIL_OFFSET_C) + 32


def demand_frost(outdoor_f: float, humidity_drop: float) -> Frost:
    """Loss to frost and to defrost on demand.

    Args:
        outdoor_f: Outdoor temperature. [°F]
        humidity_drop: Humidity ratio of the air less that of saturated air at the coil
            surface. [lb/lb]

    Returns:
        Factors on capacity and power, and the share of the time spent in defrost.

    Holds for: below 41 °F; above it nothing is taken off.
    Source: EnergyPlus Engineering Reference, defrost of air-to-air DX heating coils.
    """
    if outdoor_f >= FROST_BELOW_F:
        return NO_FROST
    share = 1 / (1 + DEMAND_TIME / max(LEAST_HUMIDITY_DROP, humidity_drop))
    return Frost(DEMAND_CAPACITY * (1 - share), DEMAND_POWER * (1 - share), share)


def timed_frost(outdoor_f: float, humidity_drop: float, defrost_share: float) -> Frost:
    """Loss to frost and to defrost by the clock.

    Args:
        outdoor_f: Outdoor temperature. [°F]
        humidity_drop: Humidity ratio of the air less that of saturated air at the coil
            surface. [lb/lb]
        defrost_share: Share of the time spent in defrost, from the control's setting.

    Returns:
        Factors on capacity and power, and the share of the time spent in defrost.

    Holds for: below 41 °F; above it nothing is taken off.
    Source: EnergyPlus Engineering Reference, defrost of air-to-air DX heating coils.
    """
    if outdoor_f >= FROST_BELOW_F:
        return NO_FROST
    drop = max(LEAST_HUMIDITY_DROP, humidity_drop)
    return Frost(
        TIMED_CAPACITY - TIMED_CAPACITY_PER_DROP * drop,
        TIMED_POWER - TIMED_POWER_PER_DROP * drop,
        defrost_share,
    )


def frosted(speeds: Speeds, frost: Frost) -> Speeds:
    """Speeds with the loss to frost taken off.

    Args:
        speeds: What the unit does with a dry coil.
        frost: Factors on capacity and power.

    Returns:
        What it does with frost and defrost.
    """
    return Speeds(
        speeds.least_btuh * frost.capacity,
        speeds.least_w * frost.power,
        speeds.full_btuh * frost.capacity,
        speeds.full_w * frost.power,
    )


def data_sheet_speeds(
    points_f: Sequence[float],
    full_btuh: Sequence[float],
    full_w: Sequence[float],
    least_btuh: Sequence[float],
    least_w: Sequence[float],
    capacity_factor: float = 1.0,
    rating_frost: bool = False,
    frost_at: Callable[[float], Frost] | None = None,
) -> Callable[[float], Speeds]:
    """What a heat pump can do at any outdoor temperature, from its data sheet.

    Args:
        points_f: Outdoor temperatures of the points, rising. [°F]
        full_btuh: Capacity at full speed at each. [Btu/h]
        full_w: Power at full speed at each. [W]
        least_btuh: Capacity at the lowest speed at each. [Btu/h]
        least_w: Power at the lowest speed at each. [W]
        capacity_factor: Altitude and other factors on capacity.
        rating_frost: The points carry no frost: between 17 and 45 °F take full speed down
            by the rating's default for an untested 35 °F point.
        frost_at: Factors of the humidity-aware frost model at an outdoor temperature;
            None leaves it out. Not together with `rating_frost`: frost counts once.

    Returns:
        The look-up. Beyond the points the last segment goes on; where the lowest speed
        would make more than full speed, full speed stands for both.

    Raises:
        ValueError: Both frost roads, or points that make no sense.

    Holds for: the data sheet's indoor temperature.
    Source: 10 CFR 430 subpart B appendix M1, linear in outdoor temperature.
    """
    if rating_frost and frost_at is not None:
        raise ValueError("2 frost roads: frost must be counted once")

    def at(values: Sequence[float], outdoor_f: float) -> float:
        return heat_pump.interpolate(points_f, values, outdoor_f).value

    frost_btuh = heat_pump.frost_capacity_btuh(at(full_btuh, 17), at(full_btuh, 47))
    frost_w = heat_pump.frost_power_w(at(full_w, 17), at(full_w, 47))

    def speeds(outdoor_f: float) -> Speeds:
        if rating_frost:
            full = heat_pump.with_frost(points_f, full_btuh, outdoor_f, frost_btuh).value
            power = heat_pump.with_frost(points_f, full_w, outdoor_f, frost_w).value
        else:
            full, power = at(full_btuh, outdoor_f), at(full_w, outdoor_f)
        least, low_power = at(least_btuh, outdoor_f), at(least_w, outdoor_f)
        if full <= 0 or power <= 0:
            return LOCKED_OUT
        if least >= full or least <= 0 or low_power <= 0:
            least, low_power = full, power
        here = Speeds(least * capacity_factor, low_power, full * capacity_factor, power)
        return here if frost_at is None else frosted(here, frost_at(outdoor_f))

    return speeds


def points_year(
    bins: Sequence[tuple[float, float]],
    ua_btuh_f: float,
    balance_f: float,
    points_f: Sequence[float],
    full_btuh: Sequence[float],
    full_w: Sequence[float],
    least_btuh: Sequence[float],
    least_w: Sequence[float],
    cycling_loss: float = CYCLING_LOSS,
    cut_out_f: float | None = None,
    rating_frost: bool = False,
    delivery: float = 1.0,
    kit_kw: float | None = None,
    fan_w: float = 0.0,
) -> Month:
    """A whole year in one call, from bins and data-sheet points.

    Args:
        bins: Outdoor temperature and hours. [°F, h]
        ua_btuh_f: Heat loss of the home per degree. [Btu/(h °F)]
        balance_f: Outdoor temperature at which the home needs no heat. [°F]
        points_f: Outdoor temperatures of the data sheet, rising. [°F]
        full_btuh: Capacity at full speed at each. [Btu/h]
        full_w: Power at full speed at each. [W]
        least_btuh: Capacity at the lowest speed at each. [Btu/h]
        least_w: Power at the lowest speed at each. [W]
        cycling_loss: Degradation coefficient.
        cut_out_f: Below this the compressor stays off; None: never. [°F]
        rating_frost: Take frost off by the rating's default between 17 and 45 °F.
        delivery: Share of the equipment's heat that reaches the rooms.
        kit_kw: Backup installed; None: as much as it takes. [kW]
        fan_w: Blower power that the data sheet's power leaves out. [W]

    Returns:
        The year's sums.

    Source: 2021 Fundamentals handbook, chapter 19, bin method.
    """
    speeds = data_sheet_speeds(
        points_f, full_btuh, full_w, least_btuh, least_w, rating_frost=rating_frost
    )
    house = House(ua_btuh_f, balance_f, delivery)
    system = System(speeds, cycling_loss, cut_out_f, kit_kw, fan_w)
    return year([bins], house, system)[0]
