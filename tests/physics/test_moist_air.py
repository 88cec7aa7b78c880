"""Moist air against a second library."""

import pytest
from CoolProp.HumidAirProp import HAPropsSI

from downflow.physics import moist_air

PSI_PA = 6894.757293


def kelvin(temp_f):
    return (temp_f + 459.67) / 1.8


STATES = [(t, rh, p) for t in (-10, 17, 35, 50, 70, 80, 95) for rh in (15, 50, 90)
          for p in (14.696, 13.17, 12.23)]


@pytest.mark.parametrize(("temp_f", "humidity", "pressure"), STATES)
def test_humidity_ratio_and_volume_are_those_of_a_second_library(temp_f, humidity, pressure):
    ours = moist_air.ratio_from_humidity(temp_f, humidity, pressure)
    theirs = HAPropsSI("W", "T", kelvin(temp_f), "R", humidity / 100, "P", pressure * PSI_PA)
    assert ours == pytest.approx(theirs, rel=0.008)
    volume = HAPropsSI("V", "T", kelvin(temp_f), "W", ours, "P", pressure * PSI_PA)
    assert moist_air.volume_ft3_lb(temp_f, ours, pressure) == pytest.approx(
        volume * 16.01846, rel=0.002)


@pytest.mark.parametrize(("temp_f", "humidity", "pressure"),
                         [s for s in STATES if s[0] >= 35])
def test_wet_bulb_goes_there_and_back(temp_f, humidity, pressure):
    ratio = moist_air.ratio_from_humidity(temp_f, humidity, pressure)
    wet = moist_air.wet_bulb_f(temp_f, ratio, pressure)
    assert wet <= temp_f
    assert moist_air.ratio_from_wet_bulb(temp_f, wet, pressure) == pytest.approx(ratio, rel=2e-3)


def test_saturated_air_has_its_dew_point_at_its_temperature():
    for temp_f in (0, 20, 45, 75):
        ratio = moist_air.saturated_ratio(temp_f, 14.696)
        assert moist_air.dew_point_f(temp_f, ratio, 14.696) == pytest.approx(temp_f, abs=0.05)
        assert moist_air.humidity_percent(temp_f, ratio, 14.696) == pytest.approx(100, abs=0.05)


def test_thinner_air_holds_more_water_for_each_pound():
    assert moist_air.saturated_ratio(70, 12.2) > moist_air.saturated_ratio(70, 14.696)


def test_water_vapor_is_lighter_than_air():
    assert (moist_air.density_lb_ft3(80, 0.02, 14.696)
            < moist_air.density_lb_ft3(80, 0.0, 14.696))


def test_dry_air_of_a_stream_goes_with_its_volume():
    one = moist_air.dry_air_lb_h(1000, 75, 0.009, 14.696)
    assert moist_air.dry_air_lb_h(2000, 75, 0.009, 14.696) == pytest.approx(2 * one)
    assert one == pytest.approx(60 * 1000 / moist_air.volume_ft3_lb(75, 0.009, 14.696))


def test_standard_atmosphere_at_the_heights_of_the_trade():
    for elevation, psia in ((0, 14.696), (2500, 13.416), (4500, 12.458), (7000, 11.34)):
        assert moist_air.atmosphere_psia(elevation) == pytest.approx(psia, abs=0.01)


def test_a_swapped_wet_bulb_is_refused():
    with pytest.raises(ValueError, match="above the dry bulb"):
        moist_air.ratio_from_wet_bulb(67, 80, 14.696)


def test_a_wet_bulb_drier_than_dry_air_is_refused():
    with pytest.raises(ValueError, match="drier than dry air"):
        moist_air.ratio_from_wet_bulb(95, 40, 14.696)


def test_a_humidity_beyond_all_is_refused():
    with pytest.raises(ValueError, match="outside 0 to 100"):
        moist_air.ratio_from_humidity(70, 101, 14.696)
