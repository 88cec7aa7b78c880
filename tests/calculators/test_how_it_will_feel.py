"""How it will feel: run time, air, setback, sound."""

import pytest

from downflow.testing import solve_demo, verdict_of

ID = "how-it-will-feel"


def test_the_heat_pump_runs_longer_than_the_furnace_did():
    values = solve_demo(ID, ranged=False).values
    assert values["run_after_h_day"].value == 24
    assert 3 < values["run_before_h_day"].value < 14


def test_the_air_is_less_hot_than_before_and_warmer_than_the_room():
    values = solve_demo(ID, ranged=False).values
    assert 85 < values["register_after_f"].value < values["register_before_f"].value
    assert values["register_backup_f"].value > values["register_after_f"].value


def test_a_larger_furnace_ran_less():
    home = {"ranged": False, "home_ua_btuh_f": 410.0}
    small = solve_demo(ID, furnace_input_btuh=50000.0, **home).values["run_before_h_day"]
    large = solve_demo(ID, furnace_input_btuh=100000.0, **home).values["run_before_h_day"]
    assert large.value == pytest.approx(small.value / 2)


def test_in_a_mild_month_it_rests_part_of_the_day():
    mild = [{"month": n, "mean_f": 52.0} for n in range(1, 13)]
    assert solve_demo(ID, ranged=False, monthly_means=mild).values["run_after_h_day"].value < 20


@pytest.mark.parametrize(("capacity", "level"), [(3.0, "fine"), (15.0, "look")])
def test_a_long_recovery_is_looked_at(capacity, level):
    answer = solve_demo(ID, ranged=False, heat_capacity_btu_f_ft2=capacity)
    assert verdict_of(answer, "setback").level == level


def test_without_a_setback_nothing_is_said_about_one():
    answer = solve_demo(ID, ranged=False, setback_f=0.0)
    assert "setback_back_h" not in answer.values
    assert verdict_of(answer, "setback").level == "fine"


def test_where_backup_joins_it_can_use_more_than_the_night_saves():
    values = solve_demo(ID, ranged=False).values
    assert values["setback_backup_kwh"].value > values["setback_saved_kwh"].value


@pytest.mark.parametrize(("airflow", "level"), [(650.0, "fine"), (1050.0, "look")])
def test_cool_air_is_looked_at(airflow, level):
    answer = solve_demo(ID, ranged=False, hp_low_airflow_cfm=airflow,
                        heating_airflow_cfm=1700.0 if airflow > 700 else 1050.0)
    assert verdict_of(answer, "air-warm").level == level


def test_a_lowest_airflow_above_the_heating_airflow_is_refused():
    answer = solve_demo(ID, ranged=False, hp_low_airflow_cfm=1400.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "hp_low_airflow_cfm"


def test_half_the_speed_is_fifteen_decibels_quieter():
    values = solve_demo(ID, ranged=False, old_airflow_cfm=1000.0, hp_low_airflow_cfm=500.0).values
    assert values["quieter_db"].value == pytest.approx(15.05, abs=0.01)


def test_without_the_old_furnace_the_new_system_still_answers():
    answer = solve_demo(ID, ranged=False, furnace_input_btuh=None)
    assert "run_before_h_day" not in answer.values
    assert answer.values["run_after_h_day"].value == 24


def test_where_it_is_locked_out_there_is_no_register_air_from_it():
    answer = solve_demo(ID, ranged=False, hp_cutout_f=35.0)
    assert verdict_of(answer, "air-warm").level == "look"


def test_an_assumed_heat_store_widens_the_recovery():
    sure = solve_demo(ID, heat_capacity_btu_f_ft2=(3.0, "measured")).values["setback_back_h"]
    guessed = solve_demo(ID).values["setback_back_h"]
    assert guessed.high - guessed.low > sure.high - sure.low
