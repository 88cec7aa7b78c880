"""How much water."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("water-amount", **changed)


def value(name, **changed):
    return solved(**changed).values[name].value


def test_humid_air_makes_more_water():
    assert value("coil_water_gal_h", cool_return_wb_f=65) > 2 * value("coil_water_gal_h")


def test_dry_air_makes_none_and_says_so():
    answer = solved(cool_return_wb_f=52)
    assert answer.values["coil_water_gal_h"].value == 0
    assert "stays dry" in verdict_of(answer, "coil").text


def test_three_tons_in_a_humid_place_make_a_gallon_or_two_an_hour():
    wet = value("coil_water_gal_h", elevation_ft=100, cool_return_f=78, cool_return_wb_f=67,
                cool_supply_f=56, cooling_airflow_cfm=1200)
    assert 1.0 < wet < 3.0


def test_a_wet_cold_day_sheds_several_gallons_and_the_site_judges_where_they_run():
    answer = solved()
    assert 5 < answer.values["melt_gal_day"].value < 25
    assert "freeze where they run" in verdict_of(answer, "melt").text


def test_dry_cold_makes_no_frost():
    answer = solved(frost_day_f=10, frost_day_rh_pct=35)
    assert answer.values["melt_gal_day"].value == 0


def test_above_freezing_at_the_coil_nothing_frosts():
    assert value("frost_lb_h", frost_day_f=45, coil_below_air_f=6) == 0


def test_one_defrost_is_the_frost_since_the_last():
    answer = solved(defrost_every_min=30)
    assert answer.values["melt_lb"].value == pytest.approx(
        answer.values["frost_lb_h"].value / 2)


def test_frost_is_a_rough_number_and_its_range_says_so():
    melt = solved().values["melt_gal_day"]
    assert melt.high - melt.low > 0.4 * melt.value


def test_a_swapped_wet_bulb_is_refused_and_named():
    answer = solved(cool_return_f=61, cool_return_wb_f=75)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "cool_return_wb_f"
    assert "swapped" in answer.errors[0]["message"]


def test_supply_air_warmer_than_return_is_refused():
    answer = solved(cool_supply_f=78)
    assert answer.errors[0]["field"] == "cool_supply_f"
