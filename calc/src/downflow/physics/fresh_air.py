"""Fresh air: how much a home needs, what a duct into the blower cabinet brings, what it costs."""

from __future__ import annotations

import math

HOME_CFM_FT2 = 0.035
HOME_LEAST_CFM = 50.0
NATIONAL_CFM_FT2 = 0.03
NATIONAL_CFM_PERSON = 7.5
PRESSURE_FPM = 1096.7
"""Velocity of air of 1 lb/ft³ at a velocity pressure of 1 in. w.c. [ft/min]"""
AIR_VISCOSITY_LB_FT_S = 1.22e-5
AIR_BTU_LB_F = 0.240
KWH_BTU = 3412.142


def home_cfm(floor_area_ft2: float) -> float:
    """Whole-house ventilation of a manufactured home by the federal rule.

    Args:
        floor_area_ft2: Floor area. [ft²]

    Returns:
        0.035 cfm for each square foot, 50 cfm at least. [cfm]

    Holds for: the home as built new; state and local rules decide for an existing one.
    Source: HOME_VENTILATION.
    """
    return max(HOME_LEAST_CFM, HOME_CFM_FT2 * floor_area_ft2)


def national_cfm(floor_area_ft2: float, bedrooms: int) -> float:
    """Whole-house ventilation by the national ventilation standard, before credits.

    Args:
        floor_area_ft2: Floor area. [ft²]
        bedrooms: Bedrooms; one at least is counted.

    Returns:
        Airflow. [cfm]

    Holds for: dwellings; credit for measured leakage is not taken.
    Source: NATIONAL_VENTILATION.
    """
    return NATIONAL_CFM_FT2 * floor_area_ft2 + NATIONAL_CFM_PERSON * (max(bedrooms, 1) + 1)


def running_cfm(average_cfm: float, minutes_per_hour: float) -> float:
    """Airflow that a fan must give when it runs only part of each hour.

    Args:
        average_cfm: Airflow wanted on the average. [cfm]
        minutes_per_hour: Minutes of running, above 0 and up to 60. [min/h]

    Returns:
        Airflow while running. [cfm]

    Raises:
        ValueError: The minutes are not above 0 or more than 60.

    Holds for: running within each hour.
    Source: HOME_VENTILATION.
    """
    if not 0 < minutes_per_hour <= 60:
        raise ValueError(f"{minutes_per_hour} minutes an hour is outside 0 to 60")
    return average_cfm * 60 / minutes_per_hour


def friction_factor(reynolds: float, roughness_ratio: float) -> float:
    """Friction factor of a round duct.

    Args:
        reynolds: Reynolds number, above 4000 for turbulent flow.
        roughness_ratio: Roughness over diameter.

    Returns:
        Darcy friction factor; the laminar one below 2300.

    Holds for: within 3 % of the implicit law for turbulent flow.
    Source: FRICTION.
    """
    if reynolds < 2300:
        return 64 / reynolds
    log = math.log10(roughness_ratio / 3.7 + 5.74 / reynolds**0.9)
    return 0.25 / log**2


def duct_cfm(suction_inwc: float, diameter_in: float, length_ft: float, loss: float,
             roughness_ft: float, density_lb_ft3: float) -> float:
    """Air that a pressure draws through a round duct with its hood, bends and damper.

    Args:
        suction_inwc: Pressure across the whole duct. [in w.c.]
        diameter_in: Inside diameter. [in]
        length_ft: Length. [ft]
        loss: Loss coefficients of hood, screen, bends, damper and exit, added.
        roughness_ft: Roughness of the wall. [ft]
        density_lb_ft3: Density of the air in the duct. [lb/ft³]

    Returns:
        Airflow. [cfm]

    Raises:
        ValueError: The pressure or the size is not above zero.

    Holds for: steady flow; within about 10 % where the hood's loss is known.
    Source: DUCT_PRESSURE.
    """
    if suction_inwc <= 0 or diameter_in <= 0:
        raise ValueError(f"{suction_inwc} in w.c. and {diameter_in} in must be above 0")
    diameter_ft = diameter_in / 12
    area_ft2 = math.pi / 4 * diameter_ft**2
    factor = 0.02
    speed_fpm = 0.0
    for _ in range(60):
        total = loss + factor * length_ft / diameter_ft
        speed = PRESSURE_FPM * math.sqrt(suction_inwc / (density_lb_ft3 * total))
        if abs(speed - speed_fpm) < 1e-10 * speed:
            break
        speed_fpm = speed
        reynolds = density_lb_ft3 * speed / 60 * diameter_ft / AIR_VISCOSITY_LB_FT_S
        factor = friction_factor(reynolds, roughness_ft / diameter_ft)
    return area_ft2 * speed_fpm


def heating_btuh(airflow_cfm: float, indoor_f: float, outdoor_f: float,
                 density_lb_ft3: float) -> float:
    """Heat that warms outdoor air to room temperature.

    Args:
        airflow_cfm: Outdoor air, counted at the density given. [cfm]
        indoor_f: Indoor temperature. [°F]
        outdoor_f: Outdoor temperature. [°F]
        density_lb_ft3: Density where the airflow is counted. [lb/ft³]

    Returns:
        Sensible heat. [Btu/h]

    Holds for: no humidifier.
    Source: SENSIBLE_HEAT.
    """
    return 60 * AIR_BTU_LB_F * density_lb_ft3 * airflow_cfm * (indoor_f - outdoor_f)


def season_btu(airflow_cfm: float, degree_days_f: float, density_lb_ft3: float) -> float:
    """Heat that warms outdoor air over a heating season.

    Args:
        airflow_cfm: Outdoor air on the average. [cfm]
        degree_days_f: Heating degree days. [°F day]
        density_lb_ft3: Density where the airflow is counted. [lb/ft³]

    Returns:
        Sensible heat. [Btu]

    Holds for: degree days to the home's own balance temperature.
    Source: SENSIBLE_HEAT.
    """
    return 24 * 60 * AIR_BTU_LB_F * density_lb_ft3 * airflow_cfm * degree_days_f


def electricity_kwh(heat_btu: float, performance: float) -> float:
    """Electricity for an amount of heat.

    Args:
        heat_btu: Heat. [Btu]
        performance: Heat out over electricity in; 1 for electric elements.

    Returns:
        Electricity. [kWh]

    Holds for: a seasonal average.
    Source: UNITS.
    """
    return heat_btu / (KWH_BTU * performance)
