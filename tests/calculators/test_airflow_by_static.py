"""Airflow by static: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

TABLE = [{"static_inwc": 0.1, "airflow_cfm": 1240.0}, {"static_inwc": 0.3, "airflow_cfm": 1150.0},
         {"static_inwc": 0.5, "airflow_cfm": 1030.0}, {"static_inwc": 0.7, "airflow_cfm": 860.0}]
PLAIN = {"fan_kind": "speed", "fan_table": (TABLE, "data sheet"), "elevation_ft": 0.0,
         "rise_return_f": 70.0, "static_supply_inwc": 0.2, "static_return_inwc": 0.2,
         "fan_table_density_lb_ft3": (0.07489, "data sheet")}


def static(*, ranged=False, **facts):
    return solve_demo("airflow-by-static", ranged=ranged, **{**PLAIN, **facts})


def test_between_two_rows_it_reads_between():
    assert static().values["static_road_cfm"].value == pytest.approx(1090, abs=2)


def test_up_high_the_same_gauge_means_more_static_in_the_table():
    low, high = static(), static(elevation_ft=6200.0)
    assert high.values["static_read_inwc"].value > 1.2 * low.values["static_read_inwc"].value
    assert high.values["static_road_cfm"].value < low.values["static_road_cfm"].value


@pytest.mark.parametrize(("supply", "level"), [(0.298, "fine"), (0.302, "hold")])
def test_rated_static_just_inside_and_just_outside(supply, level):
    answer = static(static_supply_inwc=supply, static_rated_inwc=(0.5, "data sheet"))
    assert verdict_of(answer, "static-within-rating").level == level


def test_beyond_the_last_row_nothing_is_known():
    assert verdict_of(static(static_supply_inwc=0.6), "within-the-table").level == "hold"


def test_below_the_first_row_is_a_look():
    answer = static(static_supply_inwc=0.01, static_return_inwc=0.02)
    assert verdict_of(answer, "within-the-table").level == "look"


def test_a_constant_airflow_fan_is_a_weak_road():
    assert "Trust the heat rise more" in verdict_of(static(fan_kind="constant"), "weak-road").text
    assert "answers to static" in verdict_of(static(), "weak-road").text


def test_a_table_that_does_not_fall_is_refused_at_its_cell():
    answer = static(fan_table=([*TABLE[:2], {"static_inwc": 0.5, "airflow_cfm": 1160.0}],
                               "data sheet"))
    assert answer.ok is False
    assert answer.errors[0]["field"] == "fan_table[2].airflow_cfm"


def test_the_fan_table_brings_its_own_doubt():
    value = static(ranged=True).values["static_road_cfm"]
    assert value.high - value.low > 60
