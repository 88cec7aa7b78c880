"""Airflow by heat rise: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

PLAIN = {"kit_volts": 240.0, "kit_amps": 41.0, "clamp_holds_blower": False, "blower_watts": 250.0,
         "rise_return_f": 70.0, "rise_supply_f": 100.0, "elevation_ft": 3000.0}


def rise(*, ranged=False, **facts):
    return solve_demo("airflow-by-heat-rise", ranged=ranged, **{**PLAIN, **facts})


def test_the_worked_example_at_three_thousand_feet():
    answer = rise()
    assert answer.values["heat_rise_cfm"].value == pytest.approx(1187.4, rel=0.002)
    assert answer.values["heat_rise_scfm"].value == pytest.approx(1062.6, rel=0.002)


def test_a_clamp_that_holds_the_blower_adds_nothing():
    apart, together = rise(), rise(clamp_holds_blower=True)
    assert together.values["heat_rise_cfm"].value < apart.values["heat_rise_cfm"].value
    assert together.values["heat_rise_cfm"].value == pytest.approx(
        apart.values["heat_rise_cfm"].value * 240 * 41 / (240 * 41 + 250))


def test_half_the_rise_is_twice_the_air():
    assert rise(rise_supply_f=85.0).values["heat_rise_cfm"].value == pytest.approx(
        2 * rise().values["heat_rise_cfm"].value)


def test_supply_cooler_than_return_is_refused():
    answer = rise(rise_supply_f=69.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "rise_supply_f"


@pytest.mark.parametrize(("least", "level"), [(1062.0, "fine"), (1064.0, "hold")])
def test_the_label_is_judged_just_inside_and_just_outside(least, level):
    answer = rise(kit_sizes=([{"kit_kw": 8.0, "stages": 2, "least_scfm": least}], "data sheet"))
    assert verdict_of(answer, "enough-for-the-kit").level == level


def test_doubt_about_the_elements_is_enough_for_a_hold():
    answer = rise(ranged=True, kit_sizes=(
        [{"kit_kw": 8.0, "stages": 2, "least_scfm": 1050.0}], "data sheet"))
    assert verdict_of(answer, "enough-for-the-kit").level == "hold"


def test_the_range_is_about_the_thermometers():
    value = rise(ranged=True).values["heat_rise_cfm"]
    assert 0.03 < (value.high - value.value) / value.value < 0.08
