"""Service and feeder load of a dwelling, by the sums of the electrical code.

Three roads: an existing dwelling that gets heating or cooling added, the optional sum for a
dwelling, and a manufactured home's feeder leg by leg. Compressor and electric backup are counted
together: they run together.
"""

from __future__ import annotations

from collections.abc import Sequence

from downflow.tables import RangeDemand

LIGHTING_VA_FT2 = 3.0
CIRCUIT_VA = 1500.0
EXISTING_FIRST_VA = 8000.0
OPTIONAL_FIRST_VA = 10_000.0
REMAINDER_SHARE = 0.40
BACKUP_SHARE = 0.65
MANY_HEATERS_SHARE = 0.40
FEEDER_FIRST_VA = 3000.0
FEEDER_REMAINDER_SHARE = 0.35
LARGEST_MOTOR_SHARE = 0.25
FULL_APPLIANCES = 3
MANY_APPLIANCES_SHARE = 0.75
SMALL_RANGE_VA = 10_000.0
SMALL_RANGE_SHARE = 0.80
RECORD_FACTOR = 1.25


def general_va(floor_area_ft2: float, kitchen_circuits: float, laundry_circuits: float,
               appliances_va: float) -> float:
    """General load: lighting by area, kitchen and laundry circuits, appliances by nameplate.

    Args:
        floor_area_ft2: Floor area by outside dimensions. [ft²]
        kitchen_circuits: Small-appliance circuits; the code counts two at least.
        laundry_circuits: Laundry circuits.
        appliances_va: Sum of the fixed appliances, range, dryer and water heater. [VA]

    Returns:
        Before any demand step. [VA]

    Holds for: dwellings; heating and cooling are not in it.
    Source: EXISTING_DWELLING.
    """
    return (LIGHTING_VA_FT2 * floor_area_ft2
            + CIRCUIT_VA * (kitchen_circuits + laundry_circuits) + appliances_va)


def _stepped(load_va: float, first_va: float, share: float) -> float:
    return min(load_va, first_va) + share * max(load_va - first_va, 0.0)


def existing_general_va(load_va: float) -> float:
    """General load of an existing dwelling after the demand step.

    Args:
        load_va: General load. [VA]

    Returns:
        First 8,000 VA whole, the rest at 40 %. [VA]

    Holds for: 120/240 V or 208Y/120 V three-wire supply, heating or cooling being added.
    Source: EXISTING_DWELLING.
    """
    return _stepped(load_va, EXISTING_FIRST_VA, REMAINDER_SHARE)


def optional_general_va(load_va: float) -> float:
    """General load of a dwelling after the demand step of the optional sum.

    Args:
        load_va: General load. [VA]

    Returns:
        First 10,000 VA whole, the rest at 40 %. [VA]

    Holds for: 120/240 V three-wire supply of 100 A or more.
    Source: OPTIONAL_DWELLING.
    """
    return _stepped(load_va, OPTIONAL_FIRST_VA, REMAINDER_SHARE)


def feeder_lighting_va(load_va: float) -> float:
    """Lighting and circuits of a manufactured home's feeder after the demand step.

    Args:
        load_va: Lighting by area, kitchen and laundry circuits. [VA]

    Returns:
        First 3,000 VA whole, the rest at 35 %. [VA]

    Holds for: manufactured homes, area by outside dimensions without the coupler.
    Source: HOME_FEEDER.
    """
    return _stepped(load_va, FEEDER_FIRST_VA, FEEDER_REMAINDER_SHARE)


def existing_heat_va(compressor_va: float, kit_va: float, blower_va: float, *,
                     together: bool) -> float:
    """Heating load of a heat pump with electric backup in an existing dwelling.

    Args:
        compressor_va: Outdoor unit while heating. [VA]
        kit_va: Electric backup. [VA]
        blower_va: Indoor blower. [VA]
        together: Whether compressor and backup can run at once.

    Returns:
        Load at 100 %. [VA]

    Holds for: `together` false only where the controls make it impossible.
    Source: EXISTING_DWELLING.
    """
    heat_va = compressor_va + kit_va if together else max(compressor_va, kit_va)
    return heat_va + blower_va


def optional_heat_va(compressor_va: float, backup_va: float) -> float:
    """Heating load of a heat pump with electric backup by the optional sum.

    Args:
        compressor_va: Outdoor unit. [VA]
        backup_va: Central electric backup. [VA]

    Returns:
        Compressor whole, backup at 65 %. [VA]

    Holds for: compressor and backup that can run at once.
    Source: OPTIONAL_DWELLING.
    """
    return compressor_va + BACKUP_SHARE * backup_va


def room_heaters_va(connected_va: float) -> float:
    """Electric room heaters by the optional sum, four or more with their own controls.

    Args:
        connected_va: Sum of the heaters. [VA]

    Returns:
        At 40 %. [VA]

    Holds for: four or more separately controlled heaters.
    Source: OPTIONAL_DWELLING.
    """
    return MANY_HEATERS_SHARE * connected_va


def amps(load_va: float, volts: float) -> float:
    """Current of a load between the two hot legs.

    Args:
        load_va: Load. [VA]
        volts: Voltage between the legs. [V]

    Returns:
        Current. [A]

    Holds for: single phase, loads spread over both legs.
    Source: ARITHMETIC.
    """
    return load_va / volts


def room_left_va(service_amps: float, volts: float, general_demand_va: float,
                 other_va: float) -> float:
    """What a service has left for one more load at 100 %.

    Args:
        service_amps: Rating of the service or feeder. [A]
        volts: Voltage between the legs. [V]
        general_demand_va: General load after the demand step. [VA]
        other_va: Everything else counted whole. [VA]

    Returns:
        Left over; below zero it is overloaded already. [VA]

    Holds for: the existing-dwelling sum.
    Source: ARITHMETIC.
    """
    return service_amps * volts - general_demand_va - other_va


def recorded_amps(peak_amps: float, added_amps: float) -> float:
    """Load from a year of demand data, with a new load on top.

    Args:
        peak_amps: Highest quarter-hour demand on record. [A]
        added_amps: New load at 100 %. [A]

    Returns:
        125 % of the record and the new load. [A]

    Holds for: a year of utility data, or 30 days recorded in the heating season.
    Source: RECORDED_DEMAND.
    """
    return RECORD_FACTOR * peak_amps + added_amps


def range_va(rating_va: float, rows: Sequence[RangeDemand]) -> float:
    """Demand of a free-standing range in a manufactured home.

    Args:
        rating_va: Nameplate. [VA]
        rows: Demand by rating, for ranges above 10,000 VA.

    Returns:
        Demand. [VA]

    Raises:
        ValueError: The rating is beyond the table.

    Holds for: free-standing ranges, not ovens and cooktops apart.
    Source: HOME_FEEDER.
    """
    if rating_va <= SMALL_RANGE_VA:
        return SMALL_RANGE_SHARE * rating_va
    for row in rows:
        if rating_va <= row.rating_max_va:
            return row.demand_va
    raise ValueError(f"a range of {rating_va} VA is beyond the table, "
                     f"{rows[-1].rating_max_va} VA")


def appliance_share(count: int) -> float:
    """Share of the fixed appliances that is counted on a manufactured home's feeder.

    Args:
        count: How many there are: disposer, dishwasher, water heater, dryer, oven, cooktop.

    Returns:
        1 for three or fewer, 0.75 for more. [0..1]

    Holds for: manufactured homes.
    Source: HOME_FEEDER.
    """
    return 1.0 if count <= FULL_APPLIANCES else MANY_APPLIANCES_SHARE


def leg_amps(lighting_amps: float, motors_heaters_amps: float, largest_motor_amps: float,
             appliances_amps: float, appliance_count: int, range_amps: float,
             other_amps: float) -> float:
    """Current on one leg of a manufactured home's feeder.

    Args:
        lighting_amps: Lighting and circuits after the demand step. [A]
        motors_heaters_amps: Nameplate of motors and heaters on this leg. [A]
        largest_motor_amps: Largest motor among them; a quarter of it comes on top. [A]
        appliances_amps: Nameplate of the fixed appliances on this leg. [A]
        appliance_count: How many fixed appliances the home has.
        range_amps: Range after its demand step. [A]
        other_amps: Anything else that the feeder carries. [A]

    Returns:
        Current on the leg; the larger leg sizes the feeder. [A]

    Holds for: manufactured homes.
    Source: HOME_FEEDER.
    """
    return (lighting_amps + motors_heaters_amps + LARGEST_MOTOR_SHARE * largest_motor_amps
            + appliance_share(appliance_count) * appliances_amps + range_amps + other_amps)
