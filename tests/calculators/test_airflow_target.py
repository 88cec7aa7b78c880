"""The airflow target: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

PLAIN = {"rating_cooling_95f_btuh": (36000.0, "data sheet"),
         "airflow_per_12000_scfm": (400.0, "data sheet"),
         "hp_altitude_factor_pct": (100.0, "data sheet"), "elevation_ft": 0.0,
         "return_air_f": 70.0, "kit_planned_kw": 8.0}


def target(**facts):
    return solve_demo("airflow-target", **{**PLAIN, **facts})


def test_three_tons_at_four_hundred_are_twelve_hundred():
    answer = target()
    assert answer.values["air_cooling_scfm"].value == pytest.approx(1200)
    assert answer.values["air_target_cfm"].value == pytest.approx(1200, rel=0.005)


def test_thin_air_needs_more_of_it_for_the_same_mass():
    low, high = target(), target(elevation_ft=6200.0)
    assert high.values["air_target_scfm"].value == pytest.approx(
        low.values["air_target_scfm"].value)
    assert high.values["air_target_cfm"].value > 1.24 * low.values["air_target_cfm"].value


def test_a_label_of_actual_air_asks_for_less_mass_up_here():
    standard = target(elevation_ft=6200.0)
    actual = target(elevation_ft=6200.0, kit_air_is=("actual", "data sheet"))
    assert actual.values["air_kit_scfm"].value < 0.82 * standard.values["air_kit_scfm"].value


@pytest.mark.parametrize(("least", "level"), [(1199.0, "fine"), (1201.0, "look")])
def test_the_kit_is_judged_just_inside_and_just_outside(least, level):
    answer = target(kit_sizes=([{"kit_kw": 8.0, "stages": 2, "least_scfm": least}], "data sheet"),
                    hp_points=([{"outdoor_f": 17.0, "capacity_max_btuh": 26000.0,
                                 "power_max_w": 3000.0},
                                {"outdoor_f": 47.0, "capacity_max_btuh": 36000.0,
                                 "power_max_w": 3000.0}], "measured"),
                    rating_cooling_95f_btuh=36000.0, airflow_per_12000_scfm=400.0,
                    hp_altitude_factor_pct=100.0)
    assert verdict_of(answer, "kit-has-air").level == level


def test_a_kit_without_a_label_is_a_look():
    answer = target(kit_sizes=([{"kit_kw": 8.0, "stages": 2}], "data sheet"))
    assert verdict_of(answer, "kit-has-air").level == "look"


def test_a_planned_airflow_far_from_the_target_is_a_look():
    assert verdict_of(target(heating_airflow_cfm=700.0), "planned-air").level == "look"


def test_an_assumed_rule_widens_the_answer():
    known = target()
    guessed = target(airflow_per_12000_scfm=None)
    wide = guessed.values["air_target_cfm"]
    assert wide.high - wide.low > known.values["air_target_cfm"].high - \
        known.values["air_target_cfm"].low
