"""Invented places with plausible climates, from cold valleys to a mild coast.

Each is put together from round numbers; none is a station. Monthly means follow one shape.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from downflow.physics import climate_year

SHAPE_PCT = (-100, -82, -46, -8, 34, 74, 100, 91, 54, 2, -57, -95)
"""Monthly mean less the year's, as a share of half the swing."""
DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


class Place(NamedTuple):
    """A place.

    Attributes:
        name, state: Invented name, and the state in whose climate it lies.
        elevation_ft, latitude_deg: Where.
        mean_f, swing_f: Mean of the year, and half the swing of the monthly means. [°F]
        design_heating_f: Winter design temperature. [°F]
        hot_f, hot_wb_f: Summer design, dry and wet bulb. [°F]
        range_f: Daily range in summer. [°F diff]
        snow_in: Snow that lies in a usual winter. [in]
        iecc, ba, doe, grid, co2: Zones, power region and its carbon dioxide. [lb/MWh]
    """

    name: str
    state: str
    elevation_ft: int
    latitude_deg: float
    mean_f: float
    swing_f: float
    design_heating_f: int
    hot_f: int
    hot_wb_f: int
    range_f: int
    snow_in: int
    iecc: str
    ba: str
    doe: str
    grid: str
    co2: int


PLACES: tuple[Place, ...] = (
    Place("Cold Creek", "CO", 6400, 38.6, 46.0, 23.0, -4, 87, 59, 30, 14, "6B", "Cold", "3",
          "RMPA", 1036),
    Place("Windmill Flat", "WY", 5200, 42.8, 45.0, 24.0, -9, 89, 59, 31, 12, "6B", "Cold", "3",
          "RMPA", 1036),
    Place("Elk Bottom", "MT", 3500, 46.2, 44.5, 23.5, -11, 88, 61, 30, 14, "6B", "Cold", "3",
          "NWPP", 602),
    Place("Harrow Lake", "MN", 1300, 45.6, 43.0, 30.0, -12, 87, 71, 21, 18, "6A", "Cold", "3",
          "MROW", 936),
    Place("Maple Hollow", "NY", 900, 42.6, 46.5, 24.0, 0, 85, 70, 21, 16, "6A", "Cold", "3",
          "NYUP", 275),
    Place("Mill Run", "PA", 1100, 40.6, 50.0, 23.5, 7, 87, 71, 21, 10, "5A", "Cold", "3",
          "RFCE", 657),
    Place("Dry Fork", "UT", 4700, 39.4, 50.5, 24.0, 4, 94, 62, 29, 6, "5B", "Cold", "3",
          "NWPP", 602),
    Place("Prairie Bend", "KS", 1500, 38.4, 54.5, 25.0, 5, 96, 74, 22, 4, "4A", "Mixed-Humid",
          "2", "SPNO", 952),
    Place("Laurel Gap", "TN", 1900, 36.2, 54.5, 20.0, 14, 88, 72, 20, 3, "4A", "Mixed-Humid",
          "2", "SRTV", 933),
    Place("Fir Landing", "OR", 500, 44.9, 52.5, 14.0, 23, 88, 66, 25, 1, "4C", "Marine", "3",
          "NWPP", 602),
)


def facts_of(place: Place, above_station_ft: int) -> dict[str, Any]:
    """The climate facts of a home there, as they would come from a station and the county."""
    means = [round(place.mean_f + place.swing_f * share / 100, 1) for share in SHAPE_PCT]
    spread = climate_year.yearly_spread_f(means)

    def hours_below(limit_f: float) -> float:
        return float(round(24 * sum(
            days * climate_year.share_below(limit_f, mean,
                                            climate_year.monthly_spread_f(mean, spread), days)
            for mean, days in zip(means, DAYS, strict=True))))

    cooling = sum(climate_year.cooling_degree_days(65.0, mean, climate_year.monthly_spread_f(
        mean, spread), days) for mean, days in zip(means, DAYS, strict=True))
    heating = climate_year.year_heating_degree_days(means, 65.0)
    return {
        "place_name": place.name, "state": place.state,
        "elevation_ft": float(place.elevation_ft),
        "station_elevation_ft": float(place.elevation_ft - above_station_ft),
        "latitude_deg": place.latitude_deg,
        "design_heating_f": float(place.design_heating_f),
        "monthly_means": [{"month": float(n), "mean_f": m} for n, m in enumerate(means, 1)],
        "degree_days_65": float(round(heating)), "cooling_degree_days_65": float(round(cooling)),
        "tmy_p0_4_f": float(place.design_heating_f), "tmy_p1_f": float(place.design_heating_f + 5),
        "tmy_min_f": float(place.design_heating_f - 11), "tmy_p99_f": float(place.hot_f),
        "tmy_mcwb_f": float(place.hot_wb_f), "tmy_dewpoint_f": float(place.hot_wb_f - 4),
        "tmy_mcdb_f": float(place.hot_wb_f + 8), "daily_range_f": float(place.range_f),
        "hours_below_35_h": hours_below(35.0), "hours_below_17_h": hours_below(17.0),
        "hours_below_5_h": hours_below(5.0),
        "iecc_zone": place.iecc, "ba_zone": place.ba, "doe_zone": place.doe,
        "uo_zone": place.doe, "grid_subregion": place.grid, "grid_co2_lb_mwh": float(place.co2),
        "snow_in": float(place.snow_in),
    }
