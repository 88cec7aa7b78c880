"""An old vent left open."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import air, open_vent


def test_no_air_rises_when_it_is_warmer_outside():
    assert open_vent.stack_cfm(0.2, 14, 70, 75, 0.65) == 0


@given(st.floats(0.05, 2), st.floats(5, 20), st.floats(-30, 60))
def test_flow_is_the_pressure_through_an_orifice(area, height, outdoor):
    inside = air.density_lb_ft3(0, 70)
    outside = air.density_lb_ft3(0, outdoor)
    pressure = open_vent.stack_inwc(height, inside, outside)
    # pressure in lb/ft² over density gives the square of a speed
    speed = (2 * 32.174 * pressure / open_vent.POUND_FT2_INWC / outside) ** 0.5
    flow = open_vent.stack_cfm(area, height, 70, outdoor, 0.65)
    assert flow == pytest.approx(60 * 0.65 * area * speed, rel=1e-6)


def test_the_smaller_opening_decides():
    assert open_vent.series_area_ft2(0.1, 10) == pytest.approx(0.1, rel=1e-3)
    assert open_vent.series_area_ft2(0.2, 0.3) < 0.2


def test_an_open_six_inch_vent_takes_some_fifty_cfm_in_a_cold_night():
    flow = open_vent.stack_cfm(0.196, 12, 70, 10, 0.65)
    assert 60 < flow < 80


def test_moist_rooms_lose_water_to_dry_air():
    assert open_vent.water_lb_day(200, 0.006, 0.001) == pytest.approx(24)
    assert open_vent.water_lb_day(200, 0.006, 0.006) == 0
