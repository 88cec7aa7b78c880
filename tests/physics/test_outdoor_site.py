"""Snow, sound and ice."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import outdoor_site


def test_the_base_stands_above_the_snow():
    assert outdoor_site.base_height_in(14) == pytest.approx(17)


@given(st.floats(1, 60), st.sampled_from([2, 4, 8]))
def test_doubling_the_distance_takes_six_decibels(distance, factor):
    near = outdoor_site.pressure_from_power_db(70, distance, factor)
    far = outdoor_site.pressure_from_power_db(70, 2 * distance, factor)
    assert near - far == pytest.approx(6.02, abs=0.01)
    assert outdoor_site.pressure_at_db(near, distance, 2 * distance) == pytest.approx(far)


def test_a_wall_adds_three_decibels_and_a_corner_six():
    open_ground = outdoor_site.pressure_from_power_db(70, 5, 2)
    wall = outdoor_site.pressure_from_power_db(70, 5, 4)
    corner = outdoor_site.pressure_from_power_db(70, 5, 8)
    assert wall - open_ground == pytest.approx(3.01, abs=0.01)
    assert corner - open_ground == pytest.approx(6.02, abs=0.01)


def test_distance_and_level_are_one_rule():
    meters = outdoor_site.quiet_distance_m(72, 45, 4)
    assert outdoor_site.pressure_from_power_db(72, meters, 4) == pytest.approx(45)


def test_two_equal_sources_are_three_decibels_louder():
    assert outdoor_site.sum_db((50, 50)) == pytest.approx(53.01, abs=0.01)
    assert outdoor_site.sum_db((50, 20)) == pytest.approx(50, abs=0.01)


def test_ice_is_thicker_than_the_water_was():
    water_in = 12 * 50 / 62.4 / 20
    assert outdoor_site.ice_depth_in(50, 20) == pytest.approx(1.09 * water_in, rel=0.005)


def test_no_distance_and_no_area_are_refused():
    with pytest.raises(ValueError, match="not above 0"):
        outdoor_site.pressure_from_power_db(70, 0, 2)
    with pytest.raises(ValueError, match="must be above 0"):
        outdoor_site.pressure_at_db(70, 1, 0)
    with pytest.raises(ValueError, match="not above 0"):
        outdoor_site.ice_depth_in(10, 0)
