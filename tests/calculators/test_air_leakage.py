"""Air leaks: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

RULE = {"blower_door_cfm50": None, "natural_ach": None}


def value(name, **facts):
    return solve_demo("air-leakage", ranged=False, **facts).values[name].value


def test_a_tested_home_has_half_the_doubt_of_one_by_rule():
    tested = solve_demo("air-leakage").values["infiltration_ua_btuh_f"]
    ruled = solve_demo("air-leakage", **RULE).values["infiltration_ua_btuh_f"]
    assert (tested.high - tested.low) / tested.value < (ruled.high - ruled.low) / ruled.value
    assert verdict_of(solve_demo("air-leakage", **RULE), "leaks-measured").level == "look"


def test_by_the_federal_rule_leaks_go_with_the_perimeter_and_thin_air_takes_less():
    low = value("infiltration_ua_btuh_f", elevation_ft=0.0, **RULE)
    high = value("infiltration_ua_btuh_f", elevation_ft=6200.0, **RULE)
    assert low == pytest.approx(0.7 * 166 * 1.0784 / 1.08, rel=1e-3)
    assert high / low == pytest.approx(0.7954, rel=1e-3)


def test_a_blower_door_reading_wins_over_air_changes():
    both = value("infiltration_cfm", natural_ach=2.0)
    assert both == value("infiltration_cfm")


def test_air_changes_entered_give_their_own_airflow():
    cfm = value("infiltration_cfm", blower_door_cfm50=None, natural_ach=0.45)
    assert cfm == pytest.approx(0.45 * 1512 * 7.5 / 60)


def test_twice_the_reading_is_twice_the_air():
    assert value("infiltration_cfm", blower_door_cfm50=2760.0) == pytest.approx(
        2 * value("infiltration_cfm", blower_door_cfm50=1380.0))


def test_a_colder_design_night_drives_more_air():
    cold = value("infiltration_cfm", design_heating_f=(-20.0, "data sheet"))
    mild = value("infiltration_cfm", design_heating_f=(30.0, "data sheet"))
    assert cold > mild


def test_summer_leaks_less_than_winter():
    assert value("infiltration_cooling_cfm") < value("infiltration_cfm")


@pytest.mark.parametrize(("cfm50", "level"), [(1880.0, "fine"), (1900.0, "look"),
                                              (4000.0, "look")])
def test_a_leaky_home_is_looked_at_from_ten_changes_on(cfm50, level):
    answer = solve_demo("air-leakage", blower_door_cfm50=(cfm50, "measured"), ranged=False)
    assert verdict_of(answer, "leaks").level == level


def test_a_fan_that_always_blows_out_adds_half_its_flow():
    without = value("infiltration_cfm")
    assert value("infiltration_cfm", exhaust_fan_cfm=50.0) == pytest.approx(without + 25)
    assert value("infiltration_cfm", exhaust_fan_cfm=300.0) == pytest.approx(300)


def test_a_design_night_warmer_than_the_room_is_refused():
    answer = solve_demo("air-leakage", design_heating_f=(64.0, "data sheet"),
                        indoor_design_f=60.0)
    assert answer.errors[0]["field"] == "design_heating_f"


def test_the_hole_of_a_reading_is_the_published_arithmetic():  # 1,450 cfm50, n 0.65: 79.55 in²
    assert value("leakage_area_in2", blower_door_cfm50=1450.0) == pytest.approx(79.55, abs=0.01)
