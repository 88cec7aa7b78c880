"""The filter: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def change(*, ranged=False, **facts):
    return solve_demo("filter-change", ranged=ranged, **facts)


def test_it_is_always_said_to_be_an_estimate():
    assert "an estimate" in verdict_of(change(), "once-a-year").text


def test_twice_the_dust_half_the_days():
    one = change(dust_mg_m3=(0.04, "estimated")).values["filter_days"].value
    two = change(dust_mg_m3=(0.08, "estimated")).values["filter_days"].value
    assert two == pytest.approx(one / 2)


def test_the_range_is_wide():
    value = change(ranged=True).values["filter_days"]
    assert value.high > 1.8 * value.value
    assert value.low < 0.6 * value.value


def test_a_weak_fan_wants_it_earlier():
    strong = change()
    weak = change(fan_static_limit_inwc=(0.33, "data sheet"))
    assert weak.values["filter_days"].value < strong.values["filter_days"].value
    assert verdict_of(weak, "reserve-for-dirt").level == "look"
    assert verdict_of(strong, "reserve-for-dirt").level == "fine"


def test_a_filter_that_fills_in_a_month_is_a_look():
    answer = change(filter_holds_g=(15.0, "data sheet"))
    assert verdict_of(answer, "not-too-soon").level == "look"


def test_a_filter_that_lasts_years_is_changed_once_a_year():
    answer = change(filter_holds_g=(450.0, "data sheet"))
    assert answer.values["filter_days"].value > 365
    assert "once a year all the same" in verdict_of(answer, "once-a-year").text


def test_a_loaded_loss_below_the_clean_one_is_refused():
    answer = change(filters=[{"kind": "deep", "width_in": 20.0, "height_in": 25.0,
                              "clean_inwc": 0.3, "at_cfm": 1200.0, "loaded_inwc": 0.2}])
    assert answer.ok is False
    assert answer.errors[0]["field"] == "filters[0].loaded_inwc"


def test_a_fan_that_never_runs_is_refused():
    answer = change(fan_hours_per_day=0.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "fan_hours_per_day"
