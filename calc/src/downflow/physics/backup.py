"""Backup heat kit: what is short, which kit covers it, what the kit holds alone, the air.

Elements are resistors: their power goes with the square of the voltage. They are cooled
by the mass of the air, so the least airflow is counted in standard air.
"""

from __future__ import annotations

from collections.abc import Sequence

from downflow.physics import air, comfort


def shortfall_btuh(load_btuh: float, heat_pump_btuh: float) -> float:
    """Heat that the heat pump leaves short. [Btu/h]"""
    return max(0.0, load_btuh - heat_pump_btuh)


def kw_of_btuh(heat_btuh: float) -> float:
    """Electric power that makes `heat_btuh`. [kW]"""
    return air.watts_of_btuh(heat_btuh) / 1000


def kw_at_voltage(rated_kw: float, rated_volts: float, volts: float) -> float:
    """Power of an element at another voltage than its rating.

    Args:
        rated_kw: Power on the label. [kW]
        rated_volts: Voltage for which the label states it. [V]
        volts: Voltage at the kit under load. [V]

    Returns:
        Power drawn. [kW]

    Source: a resistance: power goes with the square of voltage.
    """
    if rated_volts <= 0 or volts < 0:
        raise ValueError(f"voltages {rated_volts} and {volts} V make no sense")
    return rated_kw * (volts / rated_volts) ** 2


def kit_heat_btuh(kit_kw: float, blower_w: float = 0.0) -> float:
    """Heat that a kit and the blower's own power put into the air. [Btu/h]"""
    return air.btuh_of_watts(1000 * kit_kw + blower_w)


def smallest_kit_kw(kits_kw: Sequence[float], need_kw: float) -> float | None:
    """The smallest kit that covers `need_kw`, or nothing when none does. [kW]"""
    return min((kw for kw in kits_kw if kw >= need_kw), default=None)


def holds_down_to_f(heat_btuh: float, ua_btuh_f: float, indoor_f: float) -> float:
    """Outdoor temperature down to which a fixed heat holds the home.

    Args:
        heat_btuh: Heat into the air, as by the kit alone. [Btu/h]
        ua_btuh_f: Heat asked of the equipment per degree, duct loss in it. [Btu/(h °F)]
        indoor_f: Indoor temperature to hold. [°F]

    Returns:
        That outdoor temperature. [°F]

    Source: steady-state energy balance.
    """
    if ua_btuh_f <= 0:
        raise ValueError(f"UA {ua_btuh_f} Btu/(h °F) is not above 0")
    return indoor_f - heat_btuh / ua_btuh_f


def stages_needed(short_btuh: float, stage_kw: Sequence[float]) -> int | None:
    """How many stages, in their order, cover a shortfall; nothing when all do not."""
    total = 0.0
    if short_btuh <= 0:
        return 0
    for count, kw in enumerate(stage_kw, start=1):
        total += air.btuh_of_watts(1000 * kw)
        if total >= short_btuh:
            return count
    return None


def supply_air_f(
    return_f: float, heat_btuh: float, airflow_cfm: float, density_lb_ft3: float
) -> float:
    """Temperature of the air that leaves the air handler.

    Args:
        return_f: Temperature of the return air. [°F]
        heat_btuh: Heat put into it, heat pump and kit and blower. [Btu/h]
        airflow_cfm: Actual airflow. [cfm]
        density_lb_ft3: Density where that flow is counted. [lb/ft³]

    Source: sensible heat balance, as `air.rise_f`.
    """
    return return_f + air.rise_f(heat_btuh, airflow_cfm, density_lb_ft3)


def least_standard_cfm(heat_btuh: float, return_f: float, hottest_supply_f: float) -> float:
    """Least flow of standard air that keeps the supply below a limit. [scfm]"""
    return air.airflow_cfm(heat_btuh, hottest_supply_f - return_f, air.STANDARD_DENSITY_LB_FT3)


def heat_capacity_btu_f(floor_ft2: float, per_ft2: float) -> float:
    """Heat stored in a light home per degree of room temperature. [Btu/°F]

    Source: 2 to 4 Btu/(°F ft²) of floor, from memory; a recovery that was timed replaces it.
    """
    if floor_ft2 <= 0 or per_ft2 <= 0:
        raise ValueError(f"floor {floor_ft2} ft² and {per_ft2} Btu/(°F ft²) must be above 0")
    return floor_ft2 * per_ft2


def recovery_hours(
    heat_capacity_btu_f: float,
    ua_btuh_f: float,
    outdoor_f: float,
    heat_btuh: float,
    from_f: float,
    to_f: float,
) -> float | None:
    """Time that a home takes from one room temperature to another.

    Args:
        heat_capacity_btu_f: Heat stored per degree of room temperature. [Btu/°F]
        ua_btuh_f: Heat asked of the equipment per degree. [Btu/(h °F)]
        outdoor_f: Outdoor temperature, steady. [°F]
        heat_btuh: Heat into the air, steady; 0 for drifting down. [Btu/h]
        from_f: Room temperature at the start. [°F]
        to_f: Room temperature at the end. [°F]

    Returns:
        Hours, or nothing when this heat never gets there. [h]

    Holds for: one temperature for air, furniture and surfaces.
    Source: C dT/dt = q - UA (T - T_out), solved.
    """
    return comfort.change_h(
        from_f,
        to_f,
        comfort.settled_f(outdoor_f, heat_btuh, ua_btuh_f),
        comfort.time_constant_h(heat_capacity_btu_f, ua_btuh_f),
    )
