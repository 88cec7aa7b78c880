"""Duct leakage: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def leaks(*, ranged=False, **facts):
    return solve_demo("duct-leakage", ranged=ranged, **facts)


def test_sealing_never_delivers_less():
    values = leaks().values
    assert values["delivery_sealed_pct"].value > values["delivery_found_pct"].value
    assert values["sealing_btuh"].value > 0


def test_nothing_sealed_is_worth_nothing():
    answer = leaks(leakage_before_cfm25=66.0, static_found_inwc=None)
    assert answer.values["sealing_btuh"].value == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize(("after", "level"), [(90.0, "fine"), (92.0, "look")])
def test_six_in_a_hundred_just_inside_and_just_outside(after, level):
    # 6 % of 1512 ft²: 90.7 cfm
    assert verdict_of(leaks(leakage_cfm25=after), "tight-for-the-floor").level == level


def test_more_after_than_before_is_refused():
    answer = leaks(leakage_cfm25=300.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "leakage_cfm25"


def test_better_wool_around_the_trunks_delivers_more():
    bare, wool = leaks(trunk_r=0.0), leaks(trunk_r=19.0)
    assert wool.values["delivery_sealed_pct"].value > bare.values["delivery_sealed_pct"].value + 5


def test_the_range_holds_both_ends_of_what_comes_back_through_the_floor():
    value = leaks(ranged=True).values["delivery_sealed_pct"]
    assert value.high - value.low > 3


def test_without_a_year_only_the_design_night_is_answered():
    answer = leaks(electricity_usd_kwh=None)
    assert "sealing_dollars" not in answer.values
    assert "sealing_btuh" in answer.values


def test_a_leak_larger_than_the_fan_is_refused():
    answer = leaks(leakage_before_cfm25=1500.0, static_found_inwc=2.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "leakage_before_cfm25"
