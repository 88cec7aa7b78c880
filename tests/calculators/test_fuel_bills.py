"""Heat loss from fuel bills: what a technician could argue with."""

import pytest

from downflow.demo import demo_job
from downflow.testing import solve_demo, verdict_of

PERIODS = demo_job().entry("fuel_periods").value


def bills(ranged=False, **facts):
    return solve_demo("fuel-bills", ranged=ranged, **facts)


def scaled(factor):
    return [{**row, "units": row["units"] * factor} for row in PERIODS]


def test_twice_the_fuel_is_twice_the_loss():
    once = bills().values["bills_ua_btuh_f"].value
    assert bills(fuel_periods=scaled(2.0)).values["bills_ua_btuh_f"].value == pytest.approx(
        2 * once)


def test_a_poorer_furnace_burnt_more_for_the_same_home():
    good = bills(furnace_efficiency_pct=90.0).values["bills_ua_btuh_f"].value
    poor = bills(furnace_efficiency_pct=60.0).values["bills_ua_btuh_f"].value
    assert good / poor == pytest.approx(90 / 60)


def test_the_ducts_lie_between_furnace_and_rooms():
    answer = bills(delivery_before_pct=69.0)
    assert answer.values["bills_ua_btuh_f"].value == pytest.approx(
        0.69 * answer.values["bills_ua_furnace_btuh_f"].value)


def test_daily_use_does_not_count_as_heating():
    more = [{**row, "units": row["units"] + 2 * row["days"]} for row in PERIODS]
    assert bills(fuel_periods=more).values["bills_ua_btuh_f"].value == pytest.approx(
        bills().values["bills_ua_btuh_f"].value, rel=1e-6)
    assert bills(fuel_periods=more).values["bills_base_use"].value == pytest.approx(
        bills().values["bills_base_use"].value + 2, rel=1e-6)


def test_bills_all_over_the_place_are_not_leaned_on():
    wild = [{**row, "units": 100.0 if k % 2 else 250.0} for k, row in enumerate(PERIODS)]
    answer = bills(fuel_periods=wild)
    assert not answer.ok or verdict_of(answer, "straight-line").level == "look"


@pytest.mark.parametrize(("count", "level"), [(12, "fine"), (8, "look")])
def test_six_cold_periods_are_the_least(count, level):
    order = [5, 6, 7, 8, 0, 1, 2, 3, 4, 9, 10, 11][:count]
    rows = [PERIODS[k] for k in order]
    assert verdict_of(bills(fuel_periods=rows), "enough-winter").level == level


def test_own_degree_days_win_over_the_month():
    own = [{**row, "degree_days_65": 31.0 if row["month"] in (6, 7, 8) else 900.0 + 9 * k}
           for k, row in enumerate(PERIODS)]
    assert bills(fuel_periods=own).values["bills_ua_btuh_f"].value != pytest.approx(
        bills().values["bills_ua_btuh_f"].value, rel=0.01)


def test_a_period_without_month_or_degree_days_is_refused_by_row():
    rows = [{k: v for k, v in PERIODS[0].items() if k != "month"}, *PERIODS[1:]]
    answer = bills(fuel_periods=rows)
    assert answer.errors[0]["field"] == "fuel_periods[0].month"


def test_too_many_degree_days_for_the_days_are_refused():
    rows = [{**PERIODS[0], "days": 10.0, "degree_days_65": 2500.0}, *PERIODS[1:]]
    answer = bills(fuel_periods=rows)
    assert answer.errors[0]["field"] == "fuel_periods[0].degree_days_65"


def test_use_that_falls_with_the_cold_is_refused():
    upside_down = [{**row, "units": 300.0 - row["units"]} for row in PERIODS]
    answer = bills(fuel_periods=upside_down)
    assert answer.errors[0]["field"] == "fuel_periods"


def test_equally_cold_periods_are_refused():
    rows = [{"days": 31.0, "units": 200.0 + k, "month": 1.0} for k in range(5)]
    answer = bills(fuel_periods=rows)
    assert answer.errors[0]["field"] == "fuel_periods"


@pytest.mark.parametrize(("other", "level"), [("none", "fine"), ("some", "look"),
                                              ("much", "look")])
def test_other_heat_is_asked_for(other, level):
    assert verdict_of(bills(other_heat=(other, "measured")), "other-heat").level == level


def test_nobody_asked_is_a_look_too():
    assert verdict_of(bills(other_heat=None), "other-heat").level == "look"


def test_gas_by_the_therm_and_current_by_the_kilowatt_hour():
    therms = bills(heating_fuel=("gas", "measured")).values["bills_ua_btuh_f"].value
    kwh = bills(heating_fuel=("electric", "measured"),
                furnace_efficiency_pct=100.0).values["bills_ua_btuh_f"].value
    assert therms / kwh == pytest.approx(100_000 * 0.8 / 3412.142)


def test_the_range_is_wider_than_the_line_alone():
    ua = bills(ranged=True).values["bills_ua_btuh_f"]
    assert 0.15 < (ua.high - ua.low) / ua.value < 0.6
