"""The sheet-metal box between a downflow cabinet and a floor opening, and the closet around it.

The box is straight-sided. Seen from above it covers both the cabinet's outlet and the floor
opening, whose centre may lie to one side of the outlet's. All lengths are inches.
"""

import math
from typing import NamedTuple

from downflow.physics import ducts

# Entry from a calm box into a flush opening; a box no wider than the outlet is a sharp turn.
CALM_ENTRY_C = 0.5
SHARP_TURN_C = 1.3
# Two sharp turns, where the opening lies mostly beside the outlet.
TWO_TURNS_C = 2.4
MOSTLY = 0.5
# Metal added for a lap seam, and turned out as a flange at top and bottom.
SEAM_IN = 1.0
FLANGE_IN = 1.0
METAL_FROM_ELEMENTS_FT = 3.0


class Plan(NamedTuple):
    """The box seen from above; offsets of outlet and opening from its left and front edge. [in]"""

    width_in: float
    depth_in: float
    outlet_left_in: float
    outlet_front_in: float
    opening_left_in: float
    opening_front_in: float
    overlap_share: float


def plan(
    outlet_width_in: float,
    outlet_depth_in: float,
    opening_width_in: float,
    opening_depth_in: float,
    offset_width_in: float,
    offset_depth_in: float,
) -> Plan:
    """The smallest straight-sided box over outlet and opening.

    Args:
        outlet_width_in: Of the cabinet's outlet, across the closet. [in]
        outlet_depth_in: Of the outlet, front to back. [in]
        opening_width_in: Of the floor opening, across the closet. [in]
        opening_depth_in: Of the opening, front to back. [in]
        offset_width_in: Centre of the opening right of the outlet's; negative to the left. [in]
        offset_depth_in: Centre of the opening behind the outlet's; negative in front. [in]

    Returns:
        Sizes, places, and the share of the opening that lies under the outlet. [-]

    Source: geometry.
    """
    for name, value in (("outlet_width_in", outlet_width_in), ("outlet_depth_in", outlet_depth_in),
                        ("opening_width_in", opening_width_in),
                        ("opening_depth_in", opening_depth_in)):
        if not value > 0.0:
            raise ValueError(f"{name} must be above zero, not {value:g}")
    width, left, hole_left, across = _along(outlet_width_in, opening_width_in, offset_width_in)
    depth, front, hole_front, deep = _along(outlet_depth_in, opening_depth_in, offset_depth_in)
    share = across * deep / (opening_width_in * opening_depth_in)
    return Plan(width, depth, left, front, hole_left, hole_front, share)


def _along(outlet: float, opening: float, offset: float) -> tuple[float, float, float, float]:
    """Box size, place of the outlet, place of the opening, and how far they overlap."""
    low = min(-outlet / 2.0, offset - opening / 2.0)
    high = max(outlet / 2.0, offset + opening / 2.0)
    both = min(outlet / 2.0, offset + opening / 2.0) - max(-outlet / 2.0, offset - opening / 2.0)
    return high - low, -outlet / 2.0 - low, offset - opening / 2.0 - low, max(0.0, both)


def turning_height_in(
    opening_area_in2: float, overlap_share: float, side_width_in: float
) -> float:
    """Height of the box at which the air that must move sideways goes no faster than below.

    Args:
        opening_area_in2: Floor opening. [in²]
        overlap_share: Share of it under the outlet. [-]
        side_width_in: Width of the box across the sideways path. [in]

    Returns:
        Height. 0 where nothing has to move sideways. [in]

    Source: continuity: equal area for the air that moves sideways.
    """
    if not 0.0 <= overlap_share <= 1.0:
        raise ValueError(f"overlap must be 0 to 1, not {overlap_share:g}")
    if not side_width_in > 0.0:
        raise ValueError(f"side width must be above zero, not {side_width_in:g}")
    return opening_area_in2 * (1.0 - overlap_share) / side_width_in


def kit_height_in(required_in: float, outlet_to_elements_in: float) -> float:
    """Height of the box that keeps the elements far enough above the floor. [in]

    Args:
        required_in: Least distance from the elements to a combustible floor. [in]
        outlet_to_elements_in: From the cabinet's outlet up to the lowest element. [in]

    Source: the kit's manual; geometry.
    """
    if required_in < 0.0 or outlet_to_elements_in < 0.0:
        raise ValueError(f"{required_in:g} and {outlet_to_elements_in:g} must not be below zero")
    return max(0.0, required_in - outlet_to_elements_in)


class Loss(NamedTuple):
    """Bounds of a loss coefficient on the velocity pressure of the floor opening. [-]"""

    low: float
    high: float

    @property
    def middle(self) -> float:
        """Half way between them."""
        return (self.low + self.high) / 2.0


def loss_c(
    outlet_area_in2: float, box_area_in2: float, opening_area_in2: float, overlap_share: float
) -> Loss:
    """What the box's shape costs, as the two bounds that published fittings give.

    Args:
        outlet_area_in2: Cabinet's outlet. [in²]
        box_area_in2: Box seen from above. [in²]
        opening_area_in2: Floor opening. [in²]
        overlap_share: Share of the opening under the outlet. [-]

    Returns:
        Low: a calm box, the outlet's jet lost, then a flush entry. High: one sharp turn, two
        where less than half of the opening lies under the outlet.

    Holds for: no box was tested; both are bounds by neighbouring fittings.
    Source: handbook of hydraulic resistance, diagrams 4-1 and 6-7; entry tables of the
    Fundamentals handbook.
    """
    low = ducts.box_to_trunk_c(outlet_area_in2, box_area_in2, opening_area_in2, CALM_ENTRY_C)
    high = SHARP_TURN_C if overlap_share >= MOSTLY else TWO_TURNS_C
    return Loss(min(low, high), max(low, high))


class FlatPattern(NamedTuple):
    """The wrap of the box laid flat. [in]"""

    length_in: float
    height_in: float
    panels_in: tuple[float, float, float, float]
    seam_in: float
    flange_in: float
    pieces: int


def flat_pattern(
    width_in: float, depth_in: float, height_in: float, sheet_length_in: float
) -> FlatPattern:
    """The four sides of the box as one strip, or as two L-shaped ones if the sheet is short.

    Args:
        width_in: Of the box. [in]
        depth_in: Of the box. [in]
        height_in: Of the box between its flanges. [in]
        sheet_length_in: Longest sheet at hand. [in]

    Returns:
        Length along the sheet of each piece, seam included; height with a flange at both ends.

    Raises:
        ValueError: the sheet is too short even for two pieces.

    Source: geometry.
    """
    whole = 2.0 * (width_in + depth_in) + SEAM_IN
    height = height_in + 2.0 * FLANGE_IN
    panels = (width_in, depth_in, width_in, depth_in)
    if whole <= sheet_length_in:
        return FlatPattern(whole, height, panels, SEAM_IN, FLANGE_IN, 1)
    half = width_in + depth_in + SEAM_IN
    if half > sheet_length_in:
        raise ValueError(f"half of the wrap, {half:g} in, is longer than the sheet, "
                         f"{sheet_length_in:g} in")
    return FlatPattern(half, height, panels, SEAM_IN, FLANGE_IN, 2)


class Piece(NamedTuple):
    """One piece of the cut list. [in]"""

    name: str
    number: int
    length_in: float
    width_in: float
    hole_length_in: float
    hole_width_in: float


def cut_list(
    box: Plan,
    pattern: FlatPattern,
    outlet: tuple[float, float],
    opening: tuple[float, float],
    collar_in: float,
) -> tuple[Piece, ...]:
    """Wrap, top and bottom plate, and the collar that goes down through the floor.

    Args:
        box: The box from above.
        pattern: Its wrap.
        outlet: Width and depth of the outlet. [in]
        opening: Width and depth of the opening. [in]
        collar_in: How far the collar reaches down into the trunk. [in]

    Source: geometry; plates reach over the flanges.
    """
    over = 2.0 * pattern.flange_in
    plate = (box.width_in + over, box.depth_in + over)
    around = 2.0 * (opening[0] + opening[1]) + pattern.seam_in
    return (
        Piece("wrap", pattern.pieces, pattern.length_in, pattern.height_in, 0.0, 0.0),
        Piece("top plate", 1, *plate, *outlet),
        Piece("bottom plate", 1, *plate, *opening),
        Piece("collar", 1, around, collar_in + pattern.flange_in, 0.0, 0.0),
    )


def metal_thickness_in(
    largest_side_in: float, rows: tuple[tuple[str, float, float], ...], kind: str
) -> float:
    """Least thickness of sheet metal for a duct. [in]

    Args:
        largest_side_in: Its widest side. [in]
        rows: Kind, thickness up to 14 in, thickness above. [in]
        kind: `enclosed rectangular` or `exposed rectangular`.

    Source: 24 CFR 3280.715(a)(1).
    """
    for name, small, large in rows:
        if name == kind:
            return small if largest_side_in <= 14.0 else large
    raise ValueError(f"no row for {kind}: 0 rows fit")


# ------------------------------------------------------------------------------- closet


def spare_in(room_in: float, thing_in: float, clear_in: float) -> float:
    """What is left over of a space beside a thing and its clearances. [in]

    Args:
        room_in: The space. [in]
        thing_in: The thing in it. [in]
        clear_in: Clearances on both sides together. [in]

    Source: geometry.
    """
    return room_in - thing_in - clear_in


def tilt_height_in(height_in: float, depth_in: float) -> float:
    """Height that a cabinet takes while it is stood up from lying flat. [in]

    Source: geometry: the diagonal.
    """
    return math.hypot(height_in, depth_in)


def metal_run_ft(
    outlet_to_elements_in: float, box_height_in: float, trunk_to_collar_ft: float
) -> float:
    """Metal along the air path from the elements to the first duct that is not metal. [ft]

    Args:
        outlet_to_elements_in: From the elements down to the outlet. [in]
        box_height_in: Through the box. [in]
        trunk_to_collar_ft: Along box and trunk to that collar. [ft]

    Source: 24 CFR 3280.715(a)(1): at least 3 ft, along the centre line of the air.
    """
    return (outlet_to_elements_in + box_height_in) / 12.0 + trunk_to_collar_ft


def metal_short_ft(run_ft: float) -> float:
    """How much metal is still missing between the elements and duct that is not metal. [ft]

    Args:
        run_ft: Metal along the centre line of the air. [ft]

    Source: 24 CFR 3280.715(a)(1): at least 3 ft.
    """
    if run_ft < 0.0:
        raise ValueError(f"run must not be below zero, not {run_ft:g}")
    return max(0.0, METAL_FROM_ELEMENTS_FT - run_ft)
