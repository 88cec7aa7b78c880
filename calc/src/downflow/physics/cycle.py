"""A simple refrigerant cycle in cooling: what is read, and which way a fault moves it.

Two heat exchangers, one compressor, an expansion valve that holds its superheat as long as
liquid reaches it. For practice and for the bench of faults: the directions are those of any such
system, the sizes are of the usual order. It is no maker's data and sizes nothing.
"""

from __future__ import annotations

import math
from typing import NamedTuple

AIR_BTU_LB_F = 0.240
ABSOLUTE_ZERO_F = -459.67
BTU_PER_WH = 3.412142

RATED_EVAPORATING_F = 45.0
RATED_CONDENSING_F = 115.0
CAPACITY_PER_EVAPORATING_F = 0.017
"""Share of capacity for each degree that the refrigerant boils warmer."""
CAPACITY_PER_CONDENSING_F = 0.006
"""Share of capacity lost for each degree that it condenses warmer."""
WET_COIL = 1.45
"""Total heat over sensible heat at the indoor coil."""
COIL_UNITS = 1.7
"""Number of transfer units of the indoor coil at its rated air."""
COIL_UNITS_EXPONENT = -0.4
"""Transfer units against the share of the rated air: less air, more of them."""
CONDENSER_RATED_F = 22.0
"""Condensing above outdoors at rated capacity with a clean coil. [°F diff]"""
REJECTED_SHARE = 1.25
"""Heat rejected outdoors over capacity, at the rating."""
COMPRESSOR_EFFICIENCY = 0.55
"""Of the ideal machine between the two temperatures, motor and drive counted."""
OUTDOOR_FAN_W = 120.0
SUBCOOLING_PER_CHARGE_F = 0.55
"""Subcooling for each hundredth of charge. [°F diff]"""
VALVE_SUPERHEAT_F = 8.0
"""Superheat that the expansion valve holds. [°F diff]"""
STARVED_SUPERHEAT = 1.2
"""Superheat for each degree of subcooling that is missing below zero."""
STARVED_COIL = 0.04
"""Share of the indoor coil that stands dry for each such degree."""
FLOODED_CONDENSER = 0.008
"""Share of the condenser taken by each degree of subcooling above the plate's."""
VALVE_LEAST_AIR = 0.70
"""Share of the rated air below which the valve cannot close far enough."""
VALVE_FLOOD_F = 30.0
"""Superheat lost for each whole share of air below that. [°F diff]"""
LEAST_AIR_SHARE, MOST_AIR_SHARE = 0.2, 2.0
LEAST_CHARGE, MOST_CHARGE = 0.5, 1.5
ROUNDS = 200
CLOSE_F = 1e-10


class CoolingState(NamedTuple):
    """Where a cooling system settles.

    Attributes:
        evaporating_f: Dew temperature at the suction. [°F]
        condensing_f: Bubble temperature at the liquid line. [°F]
        superheat_f: At the suction line. [°F diff]
        subcooling_f: At the liquid line. [°F diff]
        capacity_btuh: Heat taken from the air, water in it counted. [Btu/h]
        power_w: Compressor and outdoor fan. [W]
        supply_f: Air that leaves the coil. [°F]
    """

    evaporating_f: float
    condensing_f: float
    superheat_f: float
    subcooling_f: float
    capacity_btuh: float
    power_w: float
    supply_f: float


def coil_share(air_share: float) -> float:
    """Share of the way from the air's temperature to the coil's that the air goes.

    Args:
        air_share: Airflow as a share of the rated one. [-]

    Returns:
        Effectiveness of a coil whose refrigerant boils at one temperature. [-]

    Raises:
        ValueError: The share lies outside what the model holds for.

    Holds for: a fifth to twice the rated air.
    Source: TRAINING_CYCLE.
    """
    if not LEAST_AIR_SHARE <= air_share <= MOST_AIR_SHARE:
        raise ValueError(f"{air_share:g} of the rated air is outside {LEAST_AIR_SHARE:g} to "
                         f"{MOST_AIR_SHARE:g}")
    return 1.0 - math.exp(-COIL_UNITS * air_share**COIL_UNITS_EXPONENT)


def compressor_btuh(capacity_btuh: float, evaporating_f: float, condensing_f: float) -> float:
    """Work of the compressor, as heat.

    Args:
        capacity_btuh: Heat taken in. [Btu/h]
        evaporating_f: Temperature at which it is taken in. [°F]
        condensing_f: Temperature at which it is given off. [°F]

    Returns:
        Work. [Btu/h]

    Holds for: condensing warmer than evaporating.
    Source: TRAINING_CYCLE.
    """
    lift = max(5.0, condensing_f - evaporating_f)
    return capacity_btuh * lift / ((evaporating_f - ABSOLUTE_ZERO_F) * COMPRESSOR_EFFICIENCY)


def cooling(
    capacity_btuh: float,
    air_lb_h: float,
    rated_air_lb_h: float,
    return_f: float,
    outdoor_f: float,
    subcooling_target_f: float,
    charge_share: float = 1.0,
    outdoor_air_share: float = 1.0,
) -> CoolingState:
    """What a system in cooling settles at.

    Args:
        capacity_btuh: Rated capacity. [Btu/h]
        air_lb_h: Air over the indoor coil. [lb/h]
        rated_air_lb_h: Air that it is made for. [lb/h]
        return_f: Air into the coil. [°F]
        outdoor_f: Air into the outdoor coil. [°F]
        subcooling_target_f: With the right charge. [°F diff]
        charge_share: Charge over the right charge. [-]
        outdoor_air_share: Air over the outdoor coil as a share of that when clean. [-]

    Returns:
        The state.

    Raises:
        ValueError: Values beyond what the model holds for.

    Holds for: practice; 55 to 115 °F outdoors, half to one and a half of the charge.
    Source: TRAINING_CYCLE.
    """
    if not LEAST_CHARGE <= charge_share <= MOST_CHARGE:
        raise ValueError(f"{charge_share:g} of the charge is outside {LEAST_CHARGE:g} to "
                         f"{MOST_CHARGE:g}")
    if not 0.0 < outdoor_air_share <= 1.0:
        raise ValueError(f"{outdoor_air_share:g} of the outdoor air is outside 0 to 1")
    share = air_lb_h / rated_air_lb_h
    reach = coil_share(share)
    raw = subcooling_target_f + SUBCOOLING_PER_CHARGE_F * 100.0 * (charge_share - 1.0)
    starved = max(0.0, -raw)
    subcooling = max(0.0, raw)
    superheat = VALVE_SUPERHEAT_F + STARVED_SUPERHEAT * starved
    superheat -= VALVE_FLOOD_F * max(0.0, VALVE_LEAST_AIR - share)
    flooded = 1.0 - FLOODED_CONDENSER * max(0.0, subcooling - subcooling_target_f)
    condenser = (REJECTED_SHARE * capacity_btuh / CONDENSER_RATED_F * outdoor_air_share
                 * max(0.3, flooded))
    wetted = max(0.2, 1.0 - STARVED_COIL * starved)
    takes = reach * air_lb_h * AIR_BTU_LB_F * WET_COIL * wetted
    cold, hot = RATED_EVAPORATING_F, outdoor_f + CONDENSER_RATED_F
    heat = capacity_btuh
    for _ in range(ROUNDS):
        heat = capacity_btuh * max(
            0.1, 1.0 + CAPACITY_PER_EVAPORATING_F * (cold - RATED_EVAPORATING_F)
            - CAPACITY_PER_CONDENSING_F * (hot - RATED_CONDENSING_F))
        next_cold = return_f - heat / takes
        next_hot = outdoor_f + (heat + compressor_btuh(heat, cold, hot)) / condenser
        moved = abs(next_cold - cold) + abs(next_hot - hot)
        cold, hot = (cold + next_cold) / 2.0, (hot + next_hot) / 2.0
        if moved < CLOSE_F:
            break
    power = compressor_btuh(heat, cold, hot) / BTU_PER_WH + OUTDOOR_FAN_W
    supply = return_f - heat / WET_COIL / (air_lb_h * AIR_BTU_LB_F)
    return CoolingState(cold, hot, superheat, subcooling, heat, power, supply)
