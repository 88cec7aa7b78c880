"""How far two places are apart."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import earth

LAT = st.floats(-90, 90)
LON = st.floats(-180, 180)


def test_a_place_is_no_distance_from_itself() -> None:
    assert earth.great_circle_miles(38.5, -107, 38.5, -107) == 0


def test_a_degree_of_latitude_is_sixty_nautical_miles() -> None:
    mile = 1609.344
    assert earth.great_circle_miles(39, -105, 40, -105) == pytest.approx(
        60 * 1852 / mile, rel=0.002)


def test_a_degree_of_longitude_shrinks_towards_the_pole() -> None:
    at_equator = earth.great_circle_miles(0, 0, 0, 1)
    assert earth.great_circle_miles(60, 0, 60, 1) == pytest.approx(at_equator / 2, rel=0.001)


@given(LAT, LON, LAT, LON)
def test_the_way_back_is_as_long_and_none_is_longer_than_half_round(
    a: float, b: float, c: float, d: float
) -> None:
    there = earth.great_circle_miles(a, b, c, d)
    assert there == pytest.approx(earth.great_circle_miles(c, d, a, b), abs=1e-6)
    assert 0 <= there <= math.pi * earth.EARTH_RADIUS_MILES * (1 + 1e-12)


@pytest.mark.parametrize(("lat", "lon"), [(90.1, 0), (-91, 0), (0, 180.5), (0, -181)])
def test_a_point_off_the_globe_is_refused(lat: float, lon: float) -> None:
    with pytest.raises(ValueError, match="must lie within"):
        earth.great_circle_miles(lat, lon, 0, 0)
