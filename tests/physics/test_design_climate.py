"""From a station's typical year to design temperatures, against real pairs of stations."""

from __future__ import annotations

import place_values
import pytest

from downflow import places
from downflow.physics import design_climate as climate
from downflow.physics.earth import great_circle_miles

MOUNTAIN = ("CO", "MT", "WY", "ID", "UT", "NM", "NV", "AZ", "SD")


def pairs() -> list[tuple[float, dict[str, float], dict[str, float]]]:
    """Miles, station and home for each pair of mountain stations up to 100 miles apart."""
    rows = [row for code in MOUNTAIN for row in place_values.state(code).stations.values()
            if row["elevation_ft"] is not None]
    found = []
    for station in rows:
        for home in rows:
            miles = great_circle_miles(station["lat_deg"], station["lon_deg"], home["lat_deg"],
                                       home["lon_deg"])
            if home is not station and miles < 100:
                found.append((miles, station, home))
    return found


def test_a_home_at_its_stations_height_has_its_stations_points() -> None:
    assert climate.heating_design_f(-3, 6125, 6125) == -3
    assert climate.cooling_design_f(85, 6125, 6125) == 85
    assert climate.carried_share(0, 6125, 6125) == 0


def test_a_home_above_its_station_is_colder_by_the_standard_lapse() -> None:
    assert climate.heating_design_f(0, 7000, 6000) == pytest.approx(-3.566, abs=0.001)
    assert climate.cooling_design_f(90, 7000, 6000) == pytest.approx(86.434, abs=0.001)


def test_a_home_in_the_valley_below_its_station_gets_no_credit_in_winter() -> None:
    assert climate.heating_design_f(0, 5000, 6000) == 0
    assert climate.cooling_design_f(90, 5000, 6000) > 90


def test_five_hundred_pairs_of_mountain_stations_are_compared() -> None:
    assert len(pairs()) == 506


def test_nine_in_ten_pairs_lie_within_the_spread_stated_for_winter() -> None:
    inside = 0
    for miles, station, home in pairs():
        heights = home["elevation_ft"], station["elevation_ft"]
        said = climate.heating_design_f(station["tmy_p0_4_f"], *heights)
        share = climate.carried_share(miles, *heights)
        inside += (said - share * climate.HEATING_BELOW_F <= home["tmy_p0_4_f"]
                   <= said + share * climate.HEATING_ABOVE_F)
    assert 0.88 <= inside / len(pairs()) <= 0.93


def test_nine_in_ten_pairs_lie_within_the_spread_stated_for_summer() -> None:
    inside = 0
    for miles, station, home in pairs():
        heights = home["elevation_ft"], station["elevation_ft"]
        said = climate.cooling_design_f(station["tmy_p99_f"], *heights)
        share = climate.carried_share(miles, *heights)
        inside += abs(said - home["tmy_p99_f"]) <= share * climate.COOLING_F
    assert 0.88 <= inside / len(pairs()) <= 0.93


def test_the_share_grows_with_distance_and_height_and_stops_at_one() -> None:
    assert climate.carried_share(10, 6000, 6000) == pytest.approx(0.25)
    assert climate.carried_share(10, 6500, 6000) == pytest.approx(0.75)
    assert climate.carried_share(10, 5500, 6000) == pytest.approx(0.75)
    assert climate.carried_share(40, 6000, 6000) == 1
    assert climate.carried_share(95, 9000, 6000) == 1
    with pytest.raises(ValueError, match="must be 0 or more"):
        climate.carried_share(-1, 0, 0)


def test_the_pairs_speak_of_stations_that_the_place_files_hold() -> None:
    names = {s.station_id for s in place_values.index().stations}
    assert all(a["station_id"] in names and b["station_id"] in names for _, a, b in pairs())
    assert isinstance(place_values.index(), places.Index)
