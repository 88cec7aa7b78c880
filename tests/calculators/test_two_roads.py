"""The roads together: what a technician could argue with."""

import pytest

from downflow.demo import demo_job
from downflow.testing import solve_demo, verdict_of

NO_BILLS = {"fuel_periods": None}
NO_NIGHT = {"burner_minutes": None}
PERIODS = demo_job().entry("fuel_periods").value


def roads(ranged=False, **facts):
    return solve_demo("two-roads", ranged=ranged, **facts)


def bills_times(factor):
    return [{**row, "units": row["units"] * factor} for row in PERIODS]


def test_the_survey_alone_is_designed_on_and_asks_for_a_second_road():
    answer = roads(**NO_BILLS, **NO_NIGHT)
    survey = solve_demo("heat-loss", ranged=False).values["survey_ua_btuh_f"].value
    assert answer.values["home_ua_btuh_f"].value == survey
    assert verdict_of(answer, "second-road").level == "look"


def test_roads_that_agree_are_taken_together():
    answer = roads(**NO_NIGHT)
    survey = solve_demo("heat-loss", ranged=False).values["survey_ua_btuh_f"].value
    bills = solve_demo("fuel-bills", ranged=False).values["bills_ua_btuh_f"].value
    ua = answer.values["home_ua_btuh_f"].value
    assert min(survey, bills) < ua < max(survey, bills)
    assert verdict_of(answer, "roads-agree").level == "fine"


def test_roads_that_do_not_agree_design_on_the_larger():
    low = roads(fuel_periods=bills_times(0.5), **NO_NIGHT)
    survey = solve_demo("heat-loss", ranged=False).values["survey_ua_btuh_f"].value
    assert verdict_of(low, "roads-agree").level == "look"
    assert low.values["home_ua_btuh_f"].value == survey
    high = roads(fuel_periods=bills_times(2.0), **NO_NIGHT)
    assert verdict_of(high, "roads-agree").level == "look"
    assert high.values["home_ua_btuh_f"].value > 1.5 * survey


@pytest.mark.parametrize("near", [0.99, 1.01])
def test_the_line_between_agreeing_and_not_is_twice_the_doubt(near):
    from downflow.physics import two_roads

    survey = solve_demo("heat-loss", ranged=False).values
    one = solve_demo("fuel-bills", ranged=False).values
    s1, x = survey["survey_sigma_btuh_f"].value, survey["survey_ua_btuh_f"].value
    rel = one["bills_sigma_btuh_f"].value / one["bills_ua_btuh_f"].value
    low, high = 0.2, 1.0     # factor on the bills at which they are just two sigmas apart
    for _ in range(60):
        mid = (low + high) / 2
        y = mid * one["bills_ua_btuh_f"].value
        apart = two_roads.agreement(x, s1, y, rel * y).sigmas
        low, high = (low, mid) if apart < 2 else (mid, high)
    factor = high * (1 + (near - 1) * 0.5)
    level = verdict_of(roads(fuel_periods=bills_times(factor), **NO_NIGHT), "roads-agree").level
    assert level == ("fine" if near > 1 else "look")


def test_the_load_is_the_loss_times_the_difference():
    answer = roads()
    assert answer.values["design_load_btuh"].value == pytest.approx(
        72 * answer.values["home_ua_btuh_f"].value)


def test_a_load_report_typed_in_wins_downstream():
    share = solve_demo("heat-pump-match", ranged=False,
                       home_ua_btuh_f=(300.0, "data sheet")).values["hp_load_btuh"].value
    assert share == pytest.approx(300 * 72 / 0.83, rel=1e-3)


def test_three_roads_leave_less_doubt_than_one():
    three = roads().values["roads_sigma_btuh_f"].value
    one = roads(**NO_BILLS, **NO_NIGHT).values["roads_sigma_btuh_f"].value
    assert three < one


def test_where_they_are_apart_the_range_reaches_to_the_other_road():
    answer = roads(ranged=True, fuel_periods=bills_times(0.5), **NO_NIGHT)
    ua = answer.values["home_ua_btuh_f"]
    assert ua.low < 0.65 * ua.value
