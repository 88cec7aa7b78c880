"""How it feels: hours of running, and what a setback saves and costs.

A furnace of one size runs in bursts whose share is load over output. A variable-speed
heat pump runs all the time until its least output is more than the house needs. The
temperature of the air at the register is in `backup`.
"""

import math
from typing import NamedTuple

HOURS_A_DAY = 24.0


def run_share(load_btuh: float, least_output_btuh: float) -> float:
    """Share of the time that equipment runs.

    Args:
        load_btuh: Heat the equipment must hand over. [Btu/h]
        least_output_btuh: Its output at the lowest speed; its only output for a furnace. [Btu/h]

    Returns:
        Share of the time, 0 to 1: 1 where even the lowest speed is needed all the time.

    Raises:
        ValueError: The output is not above 0.

    Holds for: a thermostat that holds its setting; start-up losses make a cycling
        compressor run up to a tenth longer.
    Source: heat balance over a cycle.
    """
    if least_output_btuh <= 0:
        raise ValueError(f"output {least_output_btuh} Btu/h: must be above 0")
    return min(1.0, max(0.0, load_btuh) / least_output_btuh)


def run_hours_a_day(load_btuh: float, least_output_btuh: float) -> float:
    """Hours that equipment runs on a day with this load.

    Args:
        load_btuh: Heat the equipment must hand over, mean of the day. [Btu/h]
        least_output_btuh: Its output at the lowest speed; its only output for a furnace. [Btu/h]

    Returns:
        Hours of the day. [h]

    Holds for: a steady day.
    Source: heat balance over a cycle.
    """
    return HOURS_A_DAY * run_share(load_btuh, least_output_btuh)


def time_constant_h(heat_capacity_btu_f: float, ua_btuh_f: float) -> float:
    """Time constant of a home: heat stored over heat lost, each per degree.

    Args:
        heat_capacity_btu_f: Heat stored in air, furniture and inner surfaces. [Btu/°F]
        ua_btuh_f: Heat loss of the home per degree. [Btu/(h °F)]

    Returns:
        Time constant. [h]

    Raises:
        ValueError: Either is not above 0.

    Holds for: the home as one node.
    Source: one-node thermal model, C dT/dt = q - UA (T - T_out).
    """
    if heat_capacity_btu_f <= 0 or ua_btuh_f <= 0:
        raise ValueError(
            f"heat capacity {heat_capacity_btu_f}, heat loss {ua_btuh_f}: both must be above 0"
        )
    return heat_capacity_btu_f / ua_btuh_f


def settled_f(outdoor_f: float, heat_btuh: float, ua_btuh_f: float) -> float:
    """Indoor temperature where a steady heat ends up.

    Args:
        outdoor_f: Outdoor temperature. [°F]
        heat_btuh: Heat into the rooms, people and lights included. [Btu/h]
        ua_btuh_f: Heat loss of the home per degree. [Btu/(h °F)]

    Returns:
        Indoor temperature after a long time. [°F]

    Raises:
        ValueError: The heat loss is not above 0.

    Source: one-node thermal model.
    """
    if ua_btuh_f <= 0:
        raise ValueError(f"heat loss {ua_btuh_f} Btu/(h °F): must be above 0")
    return outdoor_f + heat_btuh / ua_btuh_f


def change_h(from_f: float, to_f: float, settled_f: float, time_constant_h: float) -> float | None:
    """Time for the rooms to go from one temperature to another.

    Args:
        from_f: Indoor temperature at the start. [°F]
        to_f: Indoor temperature wanted. [°F]
        settled_f: Where the present heat ends up after a long time. [°F]
        time_constant_h: Time constant of the home. [h]

    Returns:
        Hours; 0 where nothing changes; None where this heat never gets there. [h]

    Raises:
        ValueError: The time constant is not above 0.

    Holds for: the home as one node; furniture and walls warm later than the thermostat.
    Source: one-node thermal model, t = tau ln((Ts - T1) / (Ts - T2)).
    """
    if time_constant_h <= 0:
        raise ValueError(f"time constant {time_constant_h} h: must be above 0")
    if from_f == to_f:
        return 0.0
    gap = settled_f - to_f
    ratio = (settled_f - from_f) / gap if gap else math.inf
    if not 1 < ratio < math.inf:
        return None
    return time_constant_h * math.log(ratio)


def after_f(from_f: float, settled_f: float, time_constant_h: float, hours: float) -> float:
    """Indoor temperature after some hours of steady heat.

    Args:
        from_f: Indoor temperature at the start. [°F]
        settled_f: Where the present heat ends up after a long time. [°F]
        time_constant_h: Time constant of the home. [h]
        hours: Time gone by. [h]

    Returns:
        Indoor temperature. [°F]

    Raises:
        ValueError: The time constant is not above 0.

    Holds for: the home as one node.
    Source: one-node thermal model.
    """
    if time_constant_h <= 0:
        raise ValueError(f"time constant {time_constant_h} h: must be above 0")
    return settled_f + (from_f - settled_f) * math.exp(-hours / time_constant_h)


class Setback(NamedTuple):
    """One night with the setting lowered. None: it never gets there.

    Attributes:
        lowest_f: Room temperature at the end of the night. [°F]
        drift_h: Time until the lower setting is reached, or the whole night. [h]
        alone_h: Recovery by the heat pump alone, all out. [h]
        with_backup_h: Recovery with the backup helping all the way. [h]
        heat_saved_btu: Heat not lost, night and recovery by the heat pump alone. [Btu]
        backup_btu: What the backup gives when it helps all the way. [Btu]
    """

    lowest_f: float
    drift_h: float
    alone_h: float | None
    with_backup_h: float | None
    heat_saved_btu: float | None
    backup_btu: float | None


def setback(
    heat_capacity_btu_f: float,
    ua_btuh_f: float,
    outdoor_f: float,
    setting_f: float,
    lowered_f: float,
    night_h: float,
    heat_pump_btuh: float,
    backup_btuh: float,
    gain_btuh: float = 0.0,
) -> Setback:
    """One night with the setting lowered, and the way back in the morning.

    Args:
        heat_capacity_btu_f: Heat stored per degree of room temperature. [Btu/°F]
        ua_btuh_f: Heat loss of the home per degree. [Btu/(h °F)]
        outdoor_f: Outdoor temperature, steady. [°F]
        setting_f: Setting of the day. [°F]
        lowered_f: Setting of the night. [°F]
        night_h: How long it is lowered. [h]
        heat_pump_btuh: Heat into the rooms by the heat pump, all out. [Btu/h]
        backup_btuh: Heat into the rooms by the backup. [Btu/h]
        gain_btuh: Heat from people and appliances. [Btu/h]

    Returns:
        How cold it gets, how long the way back takes, what is saved and what the backup
        would give.

    Raises:
        ValueError: A night setting above the day's, or a night without hours.

    Holds for: one temperature for air, furniture and surfaces; a steady night.
    Source: one-node thermal model, C dT/dt = q - UA (T - T_out), solved piece by piece.
    """
    if lowered_f > setting_f or night_h <= 0:
        raise ValueError(
            f"night at {lowered_f} °F for {night_h} h: not above the day's {setting_f} °F, "
            "and above 0 h"
        )
    tau = time_constant_h(heat_capacity_btu_f, ua_btuh_f)
    off_f = settled_f(outdoor_f, gain_btuh, ua_btuh_f)
    reach_h = change_h(setting_f, lowered_f, off_f, tau)
    if off_f >= setting_f:
        return Setback(setting_f, 0.0, 0.0, 0.0, 0.0, 0.0)
    drift_h = night_h if reach_h is None else min(reach_h, night_h)
    lowest_f = after_f(setting_f, off_f, tau, drift_h)

    def back(heat_btuh: float) -> float | None:
        rest_f = settled_f(outdoor_f, gain_btuh + heat_btuh, ua_btuh_f)
        return change_h(lowest_f, setting_f, rest_f, tau)

    alone_h, helped_h = back(heat_pump_btuh), back(heat_pump_btuh + backup_btuh)
    saved = None
    if alone_h is not None:
        # Heat lost is UA times the mean difference: what is saved is UA times the missing
        # degree hours of drift, hold and recovery.
        warm_f = settled_f(outdoor_f, gain_btuh + heat_pump_btuh, ua_btuh_f)
        missing = (
            _missing_degree_hours(setting_f, setting_f, off_f, tau, drift_h)
            + (setting_f - lowest_f) * (night_h - drift_h)
            + _missing_degree_hours(setting_f, lowest_f, warm_f, tau, alone_h)
        )
        saved = ua_btuh_f * missing
    return Setback(
        lowest_f,
        drift_h,
        alone_h,
        helped_h,
        saved,
        None if helped_h is None else backup_btuh * helped_h,
    )


def _missing_degree_hours(
    setting_f: float, from_f: float, settled_f: float, tau_h: float, hours: float
) -> float:
    """Integral of setting less room temperature while it goes from `from_f` to `settled_f`."""
    moved = tau_h * (1 - math.exp(-hours / tau_h))
    return (setting_f - settled_f) * hours + (settled_f - from_f) * moved
