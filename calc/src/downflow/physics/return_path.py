"""The way back: openings for closed rooms, the closet's louvers, the federal rules on return air.

A closed room must let its supply air out again. What matters is the pressure that builds up, and
for that the free area; the federal rule for new homes counts area alone.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from downflow.physics import ducts

ROOM_LIMIT_PA = 3.0
# Rooms that get more air may stand a little more.
LARGE_ROOM_CFM = 150.0
LARGE_ROOM_LIMIT_PA = 5.0

# Share of the face that louvers leave free where the maker does not say.
WOOD_LOUVER_SHARE = 0.25
METAL_LOUVER_SHARE = 0.75

# 24 CFR 3280.715(b): ducted return, closed rooms, undercut.
HUD_RETURN_IN2_PER_KBTUH = 2.0
HUD_ROOM_FT2_PER_IN2 = 5.0
HUD_UNDERCUT_SHARE = 0.5
HUD_UNDERCUT_LOW_IN = 2.0
HUD_UNDERCUT_HIGH_IN = 2.5


def room_limit_pa(supply_cfm: float) -> float:
    """Pressure that a closed room may have against the main body of the home.

    Args:
        supply_cfm: Air that the room gets, not below zero. [ft³/min]

    Returns:
        3 Pa; 5 Pa where the room gets 150 cfm or more. [Pa]

    Holds for: doors closed, the highest speed that the fan is set to.
    Source: building science guide of the national laboratory PNNL on transfer grilles.
    """
    if supply_cfm < 0.0:
        raise ValueError(f"supply must not be below zero, not {supply_cfm:g} cfm")
    return ROOM_LIMIT_PA if supply_cfm < LARGE_ROOM_CFM else LARGE_ROOM_LIMIT_PA


def undercut_area_in2(door_width_in: float, gap_in: float) -> float:
    """Free area under a door. [in²]

    Args:
        door_width_in: Width of the leaf. [in]
        gap_in: Gap from the floor as it lies. [in]
    """
    if door_width_in < 0.0 or gap_in < 0.0:
        raise ValueError(f"door {door_width_in:g} in and gap {gap_in:g} in: not below zero")
    return door_width_in * gap_in


def room_pressure_pa(
    supply_cfm: float,
    free_area_in2: float,
    density_lb_ft3: float = ducts.STANDARD_DENSITY_LB_FT3,
) -> float:
    """Pressure in a closed room whose air leaves through openings of this free area.

    Args:
        supply_cfm: Air that the room gets. [ft³/min]
        free_area_in2: Free area of all openings, above zero. [in²]
        density_lb_ft3: Density of the air. [lb/ft³]

    Returns:
        Pressure against the main body. [Pa]

    Holds for: thin openings (discharge coefficient 0.6). Leaks around jambs help a little and
    are left out: the careful side.
    Source: orifice.
    """
    at_one = ducts.orifice_flow_cfm(free_area_in2, 1.0, density_lb_ft3)
    if at_one <= 0.0:
        raise ValueError(f"free area must be above zero, not {free_area_in2:g} in²")
    return (supply_cfm / at_one) ** 2


def transfer_area_in2(
    supply_cfm: float,
    limit_pa: float,
    density_lb_ft3: float = ducts.STANDARD_DENSITY_LB_FT3,
) -> float:
    """Free area that keeps a closed room at a pressure. [in²]

    Args:
        supply_cfm: Air that the room gets. [ft³/min]
        limit_pa: Pressure allowed, above zero. [Pa]
        density_lb_ft3: Density of the air. [lb/ft³]

    Source: orifice.
    """
    return ducts.orifice_area_in2(supply_cfm, limit_pa, density_lb_ft3)


def in_series_in2(free_areas_in2: Sequence[float]) -> float:
    """One opening that passes as much as several one behind the other. [in²]

    Source: orifices in series: pressures add, 1/A² adds.
    """
    if not free_areas_in2 or any(not a > 0.0 for a in free_areas_in2):
        raise ValueError(f"areas must be above zero: {list(free_areas_in2)}")
    return 1.0 / math.sqrt(math.fsum(1.0 / a**2 for a in free_areas_in2))


def louver_free_in2(face_in2: float, free_share: float) -> float:
    """Free area of a louvered door or grille. [in²]

    Args:
        face_in2: Face area of the louvered part. [in²]
        free_share: Share that is free; 0.25 for wood and 0.75 for metal where the maker does
            not say. [-]

    Source: national fuel gas code, louvers and grilles, as quoted by a gas utility's guide.
    """
    if face_in2 < 0.0:
        raise ValueError(f"face must not be below zero, not {face_in2:g} in²")
    if not 0.0 < free_share <= 1.0:
        raise ValueError(f"free share must be above 0 and at most 1, not {free_share:g}")
    return face_in2 * free_share


# ------------------------------------------------------------- the federal rule, new homes


def hud_return_duct_in2(input_btuh: float) -> float:
    """Least section of a ducted return. [in²]

    Args:
        input_btuh: Input rating of the furnace, or of an electric unit its plate input. [Btu/h]

    Source: 24 CFR 3280.715(b)(3).
    """
    if input_btuh < 0.0:
        raise ValueError(f"input must not be below zero, not {input_btuh:g} Btu/h")
    return HUD_RETURN_IN2_PER_KBTUH * input_btuh / 1000.0


def hud_room_opening_in2(floor_area_ft2: float) -> float:
    """Least net free area for a closed room without a return duct. [in²]

    Args:
        floor_area_ft2: Floor area that the door closes off. [ft²]

    Source: 24 CFR 3280.715(b)(4).
    """
    if floor_area_ft2 < 0.0:
        raise ValueError(f"floor area must not be below zero, not {floor_area_ft2:g} ft²")
    return floor_area_ft2 / HUD_ROOM_FT2_PER_IN2


def hud_undercut_credit_in2(door_width_in: float, undercut_from_deck_in: float) -> float:
    """What an undercut counts towards that area. [in²]

    Args:
        door_width_in: Width of the leaf. [in]
        undercut_from_deck_in: From the floor decking, not from the carpet. [in]

    Returns:
        Half of its free area, from 2 in on; nothing below; beyond 2-1/2 in as at 2-1/2.

    Source: 24 CFR 3280.715(b)(4).
    """
    if undercut_from_deck_in < HUD_UNDERCUT_LOW_IN:
        return 0.0
    height = min(undercut_from_deck_in, HUD_UNDERCUT_HIGH_IN)
    return HUD_UNDERCUT_SHARE * undercut_area_in2(door_width_in, height)


class ClosedRoom(NamedTuple):
    """A closed room: its pressure now, the area that it needs and what is still to cut."""

    pressure_pa: float | None
    limit_pa: float
    needed_in2: float
    there_in2: float
    to_cut_in2: float


def closed_room(
    supply_cfm: float,
    undercut_in2: float,
    transfer_in2: float,
    density_lb_ft3: float = ducts.STANDARD_DENSITY_LB_FT3,
) -> ClosedRoom:
    """What a closed room needs, what is there and what to cut.

    Args:
        supply_cfm: Air that it gets. [ft³/min]
        undercut_in2: Free area under the door. [in²]
        transfer_in2: Free area of transfer openings. [in²]
        density_lb_ft3: Density of the air. [lb/ft³]

    Returns:
        Pressure is None where nothing lets the air out.
    """
    limit = room_limit_pa(supply_cfm)
    there = undercut_in2 + transfer_in2
    needed = transfer_area_in2(supply_cfm, limit, density_lb_ft3)
    pressure = None
    if supply_cfm == 0.0:
        pressure = 0.0
    elif there > 0.0:
        pressure = room_pressure_pa(supply_cfm, there, density_lb_ft3)
    return ClosedRoom(pressure, limit, needed, there, max(0.0, needed - there))
