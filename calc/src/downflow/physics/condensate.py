"""Condensate: the trap, the pipe, and how much water there is, inside and outside.

A draw-through cabinet holds its drain pan below room pressure. Without a column of water deep
enough, air is drawn in through the drain and the water stays in the pan.
"""

from __future__ import annotations

import math

TRAP_EXTRA_IN = 1.0
SEAL_SHARE = 0.5
CONDENSING_BTU_LB = 1065.0
"""Heat given up by a pound of vapor that turns into condensate at coil temperature."""
FROSTING_BTU_LB = 1219.0
"""Heat given up by a pound of vapor that turns into frost near 32 °F."""
MELTING_BTU_LB = 143.4
WATER_LB_GAL = 8.337
"""A gallon of water at 60 °F. [lb/gal]"""
AIR_BTU_LB_F = 0.240
VAPOR_BTU_LB_F = 0.444
ORIFICE_FPM = 4005.0
"""Velocity of standard air at a velocity pressure of 1 in. w.c. [ft/min]"""
ORIFICE_SHARE = 0.6


def head_in(suction_inwc: float) -> float:
    """Drop from the pan's outlet to the trap's outlet, the formula.

    Args:
        suction_inwc: How far the pan is below room pressure, as a positive number. [in w.c.]

    Returns:
        Suction and 1 in. [in]

    Raises:
        ValueError: The suction is below zero.

    Holds for: draw-through cabinets; dirty filter, wet coil, top airflow.
    Source: TRAP.
    """
    if suction_inwc < 0:
        raise ValueError(f"a suction of {suction_inwc} in w.c. is below 0: blow-through")
    return suction_inwc + TRAP_EXTRA_IN


def seal_in(trap_head_in: float) -> float:
    """Depth of the water below the trap's outlet, the formula.

    Args:
        trap_head_in: Drop from the pan's outlet to the trap's outlet. [in]

    Returns:
        Half of it. [in]

    Holds for: draw-through cabinets.
    Source: TRAP.
    """
    return SEAL_SHARE * trap_head_in


def total_drop_in(trap_head_in: float, trap_seal_in: float, pipe_od_in: float) -> float:
    """Height that the trap needs below the pan's outlet.

    Args:
        trap_head_in: Drop from the pan's outlet to the trap's outlet. [in]
        trap_seal_in: Depth of the water below the trap's outlet. [in]
        pipe_od_in: Outside diameter of the pipe. [in]

    Returns:
        From the centre of the pan's outlet to the bottom of the trap. [in]

    Holds for: a trap of one pipe size.
    Source: TRAP.
    """
    return trap_head_in + trap_seal_in + pipe_od_in


def suction_held_inwc(trap_head_in: float, trap_seal_in: float) -> float:
    """Most suction at which a trap as built still drains.

    Args:
        trap_head_in: Drop from the pan's outlet to the trap's outlet, as built. [in]
        trap_seal_in: Depth of the water below the trap's outlet, as built. [in]

    Returns:
        Suction; beyond it water stands in the pan or the seal breaks. [in w.c.]

    Holds for: draw-through; while draining the column stands `head` high, and when the blower
        starts on a full trap the seal lends its water to both legs, so twice the seal holds.
    Source: TRAP.
    """
    return min(trap_head_in, 2 * trap_seal_in)


def fall_in(run_ft: float, slope_in_ft: float) -> float:
    """Fall of a drain over its run.

    Args:
        run_ft: Length of the run. [ft]
        slope_in_ft: Slope. [in/ft]

    Returns:
        Fall. [in]

    Holds for: an even slope.
    Source: DRAIN_SLOPE.
    """
    return run_ft * slope_in_ft


def longest_run_ft(fall_at_hand_in: float, slope_in_ft: float) -> float:
    """Longest run that a fall allows.

    Args:
        fall_at_hand_in: Height between start and end of the drain. [in]
        slope_in_ft: Slope. [in/ft]

    Returns:
        Length. [ft]

    Holds for: an even slope.
    Source: DRAIN_SLOPE.
    """
    return fall_at_hand_in / slope_in_ft


def hangers(run_ft: float, spacing_ft: float) -> int:
    """Hangers for a level run, one at each end.

    Args:
        run_ft: Length of the run. [ft]
        spacing_ft: Largest distance between two. [ft]

    Returns:
        Count.

    Holds for: PVC pipe.
    Source: DRAIN_HANGERS.
    """
    return math.ceil(run_ft / spacing_ft - 1e-9) + 1


def open_drain_cfm(suction_inwc: float, bore_in: float) -> float:
    """Air drawn in through an open drain: a trap that is missing or dry.

    Args:
        suction_inwc: How far the pan is below room pressure. [in w.c.]
        bore_in: Inside diameter of the drain. [in]

    Returns:
        Airflow. [cfm]

    Holds for: a short sharp-edged opening, standard air.
    Source: ORIFICE.
    """
    area_ft2 = math.pi / 4 * (bore_in / 12) ** 2
    return ORIFICE_SHARE * ORIFICE_FPM * area_ft2 * math.sqrt(suction_inwc)


def coil_water_lb_h(dry_air_lb_h: float, entering_ratio: float, leaving_ratio: float) -> float:
    """Water that a cooling coil takes out of an air stream.

    Args:
        dry_air_lb_h: Dry air through the coil. [lb/h]
        entering_ratio: Water per dry air before the coil. [lb/lb]
        leaving_ratio: Water per dry air after the coil. [lb/lb]

    Returns:
        Condensate; zero for a dry coil. [lb/h]

    Holds for: steady running; water held by the coil at the start is left out.
    Source: MOIST_AIR.
    """
    return dry_air_lb_h * max(entering_ratio - leaving_ratio, 0.0)


def latent_water_lb_h(latent_btuh: float) -> float:
    """Water from the latent part of a cooling capacity.

    Args:
        latent_btuh: Latent capacity. [Btu/h]

    Returns:
        Condensate. [lb/h]

    Holds for: coils near 50 °F.
    Source: MOIST_AIR.
    """
    return latent_btuh / CONDENSING_BTU_LB


def gallons(water_lb: float) -> float:
    """Volume of an amount of water.

    Args:
        water_lb: Mass. [lb]

    Returns:
        Volume. [gal]

    Holds for: water near 60 °F.
    Source: WATER.
    """
    return water_lb / WATER_LB_GAL


def frost_share(outdoor_f: float, outdoor_ratio: float, coil_f: float,
                coil_ratio: float) -> float:
    """Share of the heat taken from outdoor air that comes from frost forming.

    Args:
        outdoor_f: Outdoor air. [°F]
        outdoor_ratio: Water per dry air outdoors. [lb/lb]
        coil_f: Surface of the outdoor coil, below the outdoor air. [°F]
        coil_ratio: Water per dry air saturated at the coil. [lb/lb]

    Returns:
        Zero for a dry coil. [0..1]

    Raises:
        ValueError: The coil is not colder than the air.

    Holds for: air moving on a straight line toward saturation at the coil's surface.
    Source: FROST.
    """
    if coil_f >= outdoor_f:
        raise ValueError(f"a coil at {coil_f} °F is not below outdoor air at {outdoor_f} °F")
    latent = FROSTING_BTU_LB * max(outdoor_ratio - coil_ratio, 0.0)
    sensible = (AIR_BTU_LB_F + VAPOR_BTU_LB_F * outdoor_ratio) * (outdoor_f - coil_f)
    return latent / (latent + sensible)


def frost_lb_h(taken_btuh: float, latent_share: float) -> float:
    """Frost that forms on the outdoor coil.

    Args:
        taken_btuh: Heat taken from the outdoor air: capacity less compressor power. [Btu/h]
        latent_share: Share of it that comes from frost. [0..1]

    Returns:
        Frost. [lb/h]

    Holds for: a coil surface at or below 32 °F.
    Source: FROST.
    """
    return taken_btuh * latent_share / FROSTING_BTU_LB


def melting_btu(frost_lb: float) -> float:
    """Heat that melts an amount of frost.

    Args:
        frost_lb: Frost at 32 °F. [lb]

    Returns:
        Heat. [Btu]

    Holds for: frost at 32 °F; warming the coil comes on top.
    Source: WATER.
    """
    return frost_lb * MELTING_BTU_LB
