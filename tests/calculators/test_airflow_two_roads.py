"""Both roads together: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def both(*, ranged=False, **facts):
    return solve_demo("airflow-two-roads", ranged=ranged, **facts)


def test_the_two_lie_on_both_sides_of_the_answer():
    answer = both()
    heat = solve_demo("airflow-by-heat-rise", ranged=False).values["heat_rise_cfm"].value
    static = solve_demo("airflow-by-static", ranged=False).values["static_road_cfm"].value
    assert min(heat, static) <= answer.values["airflow_read_cfm"].value <= max(heat, static)


def test_the_better_reading_weighs_more():
    answer = both()
    heat = solve_demo("airflow-by-heat-rise", ranged=False).values["heat_rise_cfm"].value
    static = solve_demo("airflow-by-static", ranged=False).values["static_road_cfm"].value
    value = answer.values["airflow_read_cfm"].value
    assert abs(value - heat) < abs(value - static)


@pytest.mark.parametrize(("supply", "level"), [(97.0, "fine"), (105.0, "look")])
def test_roads_that_part_are_a_look(supply, level):
    assert verdict_of(both(rise_supply_f=supply), "roads-agree").level == level


def test_a_high_heat_rise_reading_counts_with_its_sign():
    low = both(rise_supply_f=105.0).values["airflow_roads_apart_pct"].value
    high = both(rise_supply_f=93.0).values["airflow_roads_apart_pct"].value
    assert low < 0 < high


def test_too_little_for_the_elements_is_a_hold():
    answer = both(kit_sizes=([{"kit_kw": 8.0, "stages": 2, "least_scfm": 900.0}], "data sheet"))
    assert verdict_of(answer, "elements-have-air").level == "hold"


def test_off_the_target_is_a_look():
    answer = both(air_target_cfm=(1300.0, "data sheet"))
    assert verdict_of(answer, "on-target").level == "look"


def test_swapped_probes_are_refused_by_the_road_that_reads_them():
    answer = both(rise_supply_f=60.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "rise_supply_f"
