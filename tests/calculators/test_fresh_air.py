"""Fresh air: need, what the duct brings, what it costs."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("fresh-air", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def value(name, **changed):
    return solved(**changed).values[name].value


def test_a_small_home_still_needs_fifty():
    assert value("fresh_home_cfm", floor_area_ft2=(900, "data sheet")) == 50
    assert value("fresh_home_cfm", floor_area_ft2=(2000, "data sheet")) == pytest.approx(70)


def test_the_rule_at_its_limit():
    fan = {"fresh_path": "fan", "fresh_minutes_h": 60, "floor_area_ft2": (1512.0, "data sheet")}
    need = 0.035 * 1512
    assert level("rule", fresh_fan_cfm=(need + 0.1, "data sheet"), **fan) == "look"  # label ± 25 %
    assert level("rule", fresh_fan_cfm=(1.35 * need, "data sheet"), **fan) == "fine"
    assert level("rule", fresh_fan_cfm=(need - 0.1, "data sheet"), **fan) == "look"


def test_half_the_time_is_half_the_air():
    half = value("fresh_average_cfm", fresh_minutes_h=30)
    whole = value("fresh_average_cfm", fresh_minutes_h=60)
    assert half == pytest.approx(whole / 2)


def test_losing_the_furnaces_duct_is_a_hold():
    assert level("kept") == "fine"
    assert level("kept", fresh_path="none") == "hold"
    assert level("kept", fresh_path="none", exhaust_fan_cfm=60) == "fine"
    assert level("kept", fresh_path="none", fresh_before="none") == "fine"


def test_air_from_the_crawl_space_is_a_hold():
    assert level("from", intake_from="crawl") == "hold"
    assert level("from", intake_from="cavity") == "hold"
    assert level("from", intake_from=None) == "look"


def test_a_duct_without_a_damper_is_looked_at():
    assert level("damper", intake_damper="none") == "look"
    assert level("damper", intake_damper="motor") == "fine"


def test_more_suction_draws_more_and_a_narrow_duct_less():
    base = value("fresh_running_cfm")
    assert value("fresh_running_cfm", intake_suction_inwc=0.4) > 1.2 * base
    assert value("fresh_running_cfm", intake_diameter_in=4) < 0.7 * base


def test_too_much_air_is_heat_thrown_away():
    assert level("not-too-much", fresh_minutes_h=60, intake_suction_inwc=0.5) == "look"


def test_blown_in_alone_presses_the_wrong_way_in_the_cold_zones():
    assert level("pressure", uo_zone="3") == "look"
    assert level("pressure", uo_zone="1") == "fine"
    assert level("pressure", uo_zone="1", fresh_path="none", exhaust_fan_cfm=60) == "look"
    assert level("pressure", uo_zone="3", exhaust_fan_cfm=60) == "fine"


def test_the_switch_must_run_it_alone_and_be_labelled():
    assert level("control", fresh_alone=False) == "look"
    assert level("control", fresh_label=None) == "look"


def test_a_duct_without_its_size_is_no_answer():
    answer = solved(intake_diameter_in=None)
    assert answer.ok is None
    assert answer.missing == ["intake_diameter_in"]


def test_cold_air_costs_by_the_degree():
    mild = value("fresh_heat_btuh", design_heating_f=(35, "data sheet"))
    cold = value("fresh_heat_btuh", design_heating_f=(0, "data sheet"))
    assert cold > 1.9 * mild
