"""From a climate station's typical year to the temperatures a home is designed on.

A home higher than its station is colder in summer, and in winter as a rule. A home
lower than its station is warmer in summer; in winter cold air settles in valleys, and
nothing may be credited.
"""

# Fall of temperature with height in the standard atmosphere, 6.5 K/km. [°F/ft]
LAPSE_F_PER_FT = 0.00356616

# How far off the carried-over value lay, nine times in ten, at full distance: 506 pairs of
# stations up to 100 miles apart in nine mountain states. [°F]
HEATING_BELOW_F = 12.0
HEATING_ABOVE_F = 15.0
COOLING_F = 5.0
# Full distance is so many miles away, or so many feet above or below, or part of each.
FULL_MILES = 40.0
FULL_FT = 1000.0


def heating_design_f(cold_point_f: float, home_ft: float, station_ft: float) -> float:
    """Heating design temperature at the home from its station's cold point.

    Args:
        cold_point_f: Dry bulb that 99.6 % of the station's hours are above. [°F]
        home_ft: Elevation of the home. [ft]
        station_ft: Elevation of the station. [ft]

    Returns:
        Colder by the standard lapse where the home is higher, unchanged where lower. [°F]

    Holds for: a first estimate, with the spread of `carried_share`.
    Source: US Standard Atmosphere, 1976; TMY3 station pairs.
    """
    return cold_point_f - LAPSE_F_PER_FT * max(0.0, home_ft - station_ft)


def cooling_design_f(hot_point_f: float, home_ft: float, station_ft: float) -> float:
    """Cooling design temperature at the home from its station's hot point.

    Args:
        hot_point_f: Dry bulb exceeded in 1 % of the station's hours. [°F]
        home_ft: Elevation of the home. [ft]
        station_ft: Elevation of the station. [ft]

    Returns:
        Cooler by the standard lapse where the home is higher, warmer where lower. [°F]

    Holds for: hot afternoons, when the air is mixed; spread of `carried_share`.
    Source: US Standard Atmosphere, 1976; TMY3 station pairs.
    """
    return hot_point_f - LAPSE_F_PER_FT * (home_ft - station_ft)


def carried_share(miles: float, home_ft: float, station_ft: float) -> float:
    """How much of the full spread a value carried from station to home has.

    Args:
        miles: Distance between the two. [statute miles]
        home_ft: Elevation of the home. [ft]
        station_ft: Elevation of the station. [ft]

    Returns:
        None of it at the station, all of it at 40 miles or 1,000 ft. 0 to 1.

    Raises:
        ValueError: A distance below zero.

    Holds for: stations up to 100 miles off; in the mountains nine in ten of the pairs.
    Source: TMY3 station pairs.
    """
    if miles < 0:
        raise ValueError(f"distance {miles:g} miles: must be 0 or more")
    return min(1.0, miles / FULL_MILES + abs(home_ft - station_ft) / FULL_FT)
