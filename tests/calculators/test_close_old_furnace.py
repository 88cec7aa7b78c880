"""Closing the old furnace."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("close-old-furnace", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def value(name, **changed):
    return solved(**changed).values[name].value


@pytest.mark.parametrize(("state", "expected"), [
    ("open", "hold"), ("stuffed", "hold"), ("capped", "look"), ("gone", "fine")])
def test_only_a_vent_that_is_gone_is_fine(state, expected):
    assert level("vent", vent_state=state) == expected


@pytest.mark.parametrize(("openings", "expected"), [
    ("closed", "fine"), ("none", "fine"), ("floor", "hold"), ("roof", "hold")])
def test_the_closet_is_not_open_to_crawl_or_roof(openings, expected):
    assert level("air-openings", furnace_air_openings=openings) == expected


def test_a_vent_shared_with_what_stays_is_resized_first():
    assert level("shared-vent", vent_shared="yes") == "hold"
    assert level("shared-vent", vent_shared="resized") == "look"
    assert level("shared-vent") == "fine"


def test_a_fuel_line_that_is_not_capped_is_a_hold_and_a_capped_one_is_signed():
    assert level("fuel-line", fuel_line_capped=False) == "hold"
    capped = verdict_of(solved(fuel_capped_by="J. Doe, licence 17"), "fuel-line")
    assert capped.to_sign
    assert capped.signs == "licensed gas fitter"
    assert not verdict_of(solved(fuel_capped_by=None), "fuel-line").to_sign     # by whom?


def test_a_burner_that_takes_the_closets_air_is_a_hold():
    assert level("burner", closet_burner="closet") == "hold"
    assert level("burner", closet_burner="home") == "look"
    assert verdict_of(solved(closet_burner="sealed"), "burner").to_sign
    assert not verdict_of(solved(closet_burner="none"), "burner").to_sign


def test_nothing_burning_leaves_only_smoke_alarms():
    changed = {"closet_burner": "none", "water_heater_fuel": "electric"}
    answer = solved(**changed)
    assert verdict_of(answer, "burner").level == "fine"
    assert verdict_of(answer, "alarm").level == "fine"


def test_fuel_that_burns_needs_an_alarm_that_works():
    assert level("alarm", co_alarm=False) == "hold"
    assert level("alarm", co_alarm=None) == "hold"
    assert level("alarm", co_alarm=True) == "look"


def test_a_home_of_the_seventies_is_sampled_first():
    assert level("asbestos", year_built=1976) == "look"
    assert level("asbestos", year_built=1980) == "fine"


def test_colder_and_taller_take_more():
    assert value("open_vent_cfm", design_heating_f=-20) > value("open_vent_cfm")
    assert value("open_vent_cfm", vent_rise_ft=20) > value("open_vent_cfm")


def test_a_tight_home_feeds_its_vent_less():
    tight = solved(blower_door_cfm50=500).values["open_vent_cfm"].value
    leaky = solved(blower_door_cfm50=3000).values["open_vent_cfm"].value
    assert tight < 0.95 * leaky


def test_a_season_costs_money_where_the_price_is_known():
    answer = solved()
    assert answer.values["open_vent_usd"].value > 20
    assert "open_vent_usd" not in solved(electricity_usd_kwh=None).values


def test_water_goes_with_the_warm_air():
    moist = value("open_vent_gal_day", indoor_winter_rh_pct=50)
    dry = value("open_vent_gal_day", indoor_winter_rh_pct=20)
    assert moist > 2 * dry


def test_a_design_night_warmer_than_the_rooms_is_refused():
    answer = solved(design_heating_f=75)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "design_heating_f"
