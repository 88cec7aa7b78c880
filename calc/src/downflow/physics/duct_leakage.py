"""Duct leakage and what the ducts deliver.

The heat that a duct system delivers is what leaves at the registers over what the equipment
makes: leaks take air away, walls take heat away.
"""

from typing import NamedTuple

from downflow.physics import ducts

BTU_PER_KWH = 3412.142
# Regain from the place around the ducts: vented crawl space under an insulated floor, and under
# an uninsulated one; the belly lies between.
REGAIN_LOW = 0.30
REGAIN_HIGH = 0.60
# R-value to use for insulated supply duct, from its nominal one.
EFFECTIVE_R_BASE = 2.2438
EFFECTIVE_R_SLOPE = 0.5619
BARE_R = 1.7
# Air in a vented crawl space under an insulated floor: (8 To + 68) / 9.
CRAWL_OUTDOOR_PARTS = 8.0
CRAWL_INDOOR_F = 68.0
CRAWL_PARTS = 9.0


def leakage_per_floor(leakage_cfm25: float, floor_area_ft2: float) -> float:
    """Leakage at 25 Pa over the floor area. [ft³/min per ft²]

    Source: field study of ducts in 190 manufactured home floors, Florida Solar Energy Center
    (the quantity Qn).
    """
    if not floor_area_ft2 > 0.0:
        raise ValueError(f"floor area must be above zero, not {floor_area_ft2:g}")
    if leakage_cfm25 < 0.0:
        raise ValueError(f"leakage must not be below zero, not {leakage_cfm25:g}")
    return leakage_cfm25 / floor_area_ft2


def effective_r(nominal_r: float) -> float:
    """R-value at which insulated supply duct acts, films and all. [h ft² °F/Btu]

    Source: residential duct standard (ASHRAE 152) as coded in open research software; bare metal
    1.7, nominal 8 acts as 6.7.
    """
    if nominal_r < 0.0:
        raise ValueError(f"R-value must not be below zero, not {nominal_r:g}")
    if nominal_r == 0.0:
        return BARE_R
    return EFFECTIVE_R_BASE + EFFECTIVE_R_SLOPE * nominal_r


def crawl_space_f(outdoor_f: float) -> float:
    """Air in a vented crawl space under an insulated floor. [°F]

    Source: as `effective_r`.
    """
    return (CRAWL_OUTDOOR_PARTS * outdoor_f + CRAWL_INDOOR_F) / CRAWL_PARTS


class Delivery(NamedTuple):
    """Share of the equipment's heat that reaches the rooms, without and with regain. [-]"""

    plain: float
    low: float
    high: float
    leaked_share: float
    lost_share: float


def delivery(
    airflow_cfm: float,
    leak_cfm: float,
    heat_btuh: float,
    surface_ft2: float,
    insulation_r: float,
    around_f: float,
    room_f: float,
    density_lb_ft3: float,
) -> Delivery:
    """Share of the heat that supply ducts deliver, return side indoors.

    Args:
        airflow_cfm: Through the fan, above zero. [ft³/min]
        leak_cfm: Lost from the supply side. [ft³/min]
        heat_btuh: That the equipment makes, above zero. [Btu/h]
        surface_ft2: Of the supply ducts. [ft²]
        insulation_r: At which they act, above zero. [h ft² °F/Btu]
        around_f: Air around them. [°F]
        room_f: Air in the rooms. [°F]
        density_lb_ft3: Where the flow is counted. [lb/ft³]

    Returns:
        Plain: nothing comes back. Low and high: part of what is lost comes back through the
        floor, 0.3 to 0.6 of it.

    Holds for: heating, steady state; no defrost, no start-up.
    Source: energy balance of the residential duct standard (ASHRAE 152), as coded in open
    research software.
    """
    if not airflow_cfm > 0.0 or not heat_btuh > 0.0:
        raise ValueError(f"airflow {airflow_cfm:g} and heat {heat_btuh:g} must be above zero")
    if not 0.0 <= leak_cfm <= airflow_cfm:
        raise ValueError(f"leak {leak_cfm:g} must be 0 to the airflow, {airflow_cfm:g}")
    keep_air = 1.0 - leak_cfm / airflow_cfm
    keep_heat = ducts.conduction_share(surface_ft2, insulation_r, airflow_cfm, density_lb_ft3)
    rise = heat_btuh / (
        60.0 * airflow_cfm * density_lb_ft3 * ducts.SPECIFIC_HEAT_BTU_LB_F
    )
    conducted = keep_air * (1.0 - keep_heat) * (room_f - around_f) / rise
    plain = keep_air * keep_heat - conducted
    return Delivery(
        plain,
        plain + REGAIN_LOW * (1.0 - plain),
        plain + REGAIN_HIGH * (1.0 - plain),
        leak_cfm / airflow_cfm,
        1.0 - plain - leak_cfm / airflow_cfm,
    )


def mean_static_inwc(box_inwc: float, end_inwc: float) -> float:
    """Pressure that leaks see on average, between the box and the ends of the trunks. [in. w.c.]"""
    return (box_inwc + end_inwc) / 2.0


class Worth(NamedTuple):
    """What better delivery is worth."""

    heat_at_design_btuh: float
    yearly_heat_btu: float
    yearly_kwh: float


def sealing_worth(
    load_btuh: float,
    yearly_load_btu: float,
    delivery_before: float,
    delivery_after: float,
    seasonal_cop: float,
) -> Worth:
    """Heat that need not be made after sealing: on the design night and over a year.

    Args:
        load_btuh: Heat loss of the rooms at design. [Btu/h]
        yearly_load_btu: Heat that the rooms take in a year. [Btu]
        delivery_before: Share delivered as found, above zero. [-]
        delivery_after: Share delivered after sealing, above zero. [-]
        seasonal_cop: Heat over electricity through the year, above zero. [-]

    Source: arithmetic: load over delivery, before less after.
    """
    for value in (delivery_before, delivery_after, seasonal_cop):
        if not value > 0.0:
            raise ValueError(f"delivery and COP must be above zero, not {value:g}")
    factor = 1.0 / delivery_before - 1.0 / delivery_after
    heat = yearly_load_btu * factor
    return Worth(load_btuh * factor, heat, heat / BTU_PER_KWH / seasonal_cop)
