"""Start-up: what a reading should be in this home, on this day."""

from __future__ import annotations

BTUH_PER_W = 3.412142
AIR_BTU_LB_F = 0.240


def element_amps(rated_kw: float, rated_volts: float, volts: float) -> float:
    """Current of heating elements at the voltage that is there.

    Args:
        rated_kw: Power on the label. [kW]
        rated_volts: Voltage for which the label states it. [V]
        volts: Voltage at the elements, under load. [V]

    Returns:
        Current. [A]

    Raises:
        ValueError: The rated voltage is not above zero.

    Holds for: a resistance on one phase; the current goes with the voltage.
    Source: OHMS_LAW.
    """
    if rated_volts <= 0:
        raise ValueError(f"a rated voltage of {rated_volts} V is not above 0")
    return 1000 * rated_kw * volts / rated_volts**2


def element_kw(rated_kw: float, rated_volts: float, volts: float) -> float:
    """Power of heating elements at the voltage that is there.

    Args:
        rated_kw: Power on the label. [kW]
        rated_volts: Voltage for which the label states it. [V]
        volts: Voltage at the elements, under load. [V]

    Returns:
        Power. [kW]

    Holds for: a resistance on one phase; the power goes with the square of the voltage.
    Source: OHMS_LAW.
    """
    return element_amps(rated_kw, rated_volts, volts) * volts / 1000


def drop_pct(far_volts: float, near_volts: float) -> float:
    """Voltage lost between two places under one load.

    Args:
        far_volts: Voltage at the load. [V]
        near_volts: Voltage at the supply. [V]

    Returns:
        Share of the supply's voltage. [%]

    Raises:
        ValueError: The supply's voltage is not above zero.

    Holds for: both read under the same load.
    Source: VOLTAGE_DROP.
    """
    if near_volts <= 0:
        raise ValueError(f"a supply of {near_volts} V is not above 0")
    return 100 * (near_volts - far_volts) / near_volts


def rise_f(power_kw: float, airflow_cfm: float, density_lb_ft3: float) -> float:
    """How much warmer the air gets over elements and blower.

    Args:
        power_kw: Electric power that ends up in the air. [kW]
        airflow_cfm: Airflow, counted at the density given. [cfm]
        density_lb_ft3: Density where the airflow is counted. [lb/ft³]

    Returns:
        Rise. [°F diff]

    Raises:
        ValueError: The airflow or the density is not above zero.

    Holds for: mixed air; compressor off.
    Source: SENSIBLE_HEAT.
    """
    if airflow_cfm <= 0 or density_lb_ft3 <= 0:
        raise ValueError(f"{airflow_cfm} cfm and {density_lb_ft3} lb/ft³ must be above 0")
    return 1000 * power_kw * BTUH_PER_W / (60 * AIR_BTU_LB_F * density_lb_ft3 * airflow_cfm)


def split_f(capacity_btuh: float, airflow_cfm: float, density_lb_ft3: float) -> float:
    """How much warmer the air gets over the coil of a heat pump.

    Args:
        capacity_btuh: Heat that it gives at this outdoor temperature. [Btu/h]
        airflow_cfm: Airflow, counted at the density given. [cfm]
        density_lb_ft3: Density where the airflow is counted. [lb/ft³]

    Returns:
        Split. [°F diff]

    Raises:
        ValueError: The airflow or the density is not above zero.

    Holds for: top speed or the maker's test mode, kit off, no defrost under way.
    Source: SENSIBLE_HEAT.
    """
    if airflow_cfm <= 0 or density_lb_ft3 <= 0:
        raise ValueError(f"{airflow_cfm} cfm and {density_lb_ft3} lb/ft³ must be above 0")
    return capacity_btuh / (60 * AIR_BTU_LB_F * density_lb_ft3 * airflow_cfm)
