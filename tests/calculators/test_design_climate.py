"""Design temperatures: the code's value, and what stands in for it."""

from __future__ import annotations

import pytest

from downflow.calculators.design_climate import figure
from downflow.testing import solve_demo, verdict_of

ID = "design-climate"


def solve(**facts: object):  # type: ignore[no-untyped-def]
    return solve_demo(ID, **facts)


def test_the_codes_value_counts_and_the_estimate_is_still_shown() -> None:
    answer = solve(design_heating_f=(-2.0, "data sheet"))
    assert verdict_of(answer, "code-value").level == "fine"
    assert answer.entered["design_heating_f"] == -2
    assert answer.values["design_heating_f"].value == pytest.approx(-1 - 0.00356616 * 300)


@pytest.mark.parametrize("entry", [None, (-2.0, "estimated"), (-2.0, "measured")])
def test_until_the_code_official_was_asked_it_stays_a_look(entry: object) -> None:
    verdict = verdict_of(solve(design_heating_f=entry), "code-value")
    assert verdict.level == "look"
    assert "code official" in verdict.do


def test_the_estimate_may_be_four_colder_to_nine_warmer_even_at_the_station() -> None:
    at_station = solve(design_heating_f=None, elevation_ft=(6200.0, "data sheet"),
                       station_elevation_ft=(6200.0, "estimated"), station_miles=0.0)
    found = at_station.values["design_heating_f"]
    assert found.value - found.low == pytest.approx(4, abs=0.1)
    assert found.high - found.value == pytest.approx(9, abs=0.1)


def test_a_station_far_off_widens_the_range() -> None:
    near = solve(station_miles=2.0).values["design_heating_f"]
    far = solve(station_miles=60.0).values["design_heating_f"]
    assert far.high - far.low > near.high - near.low + 5


def test_a_distance_that_nobody_gave_is_assumed_and_listed() -> None:
    assert "station_miles" in solve(station_miles=None).assumed


def test_a_home_below_its_station_gets_no_credit_in_winter_but_is_hotter_in_summer() -> None:
    low = solve(elevation_ft=(5000.0, "data sheet"), station_elevation_ft=(5900.0, "estimated"))
    assert low.values["design_heating_f"].value == -1
    assert low.values["design_cooling_f"].value > 88


@pytest.mark.parametrize(("home_ft", "level"), [(6899.0, "fine"), (6901.0, "look")])
def test_a_thousand_feet_between_home_and_station_is_the_limit(home_ft: float,
                                                              level: str) -> None:
    answer = solve(elevation_ft=(home_ft, ""), station_elevation_ft=(5900.0, "estimated"))
    assert verdict_of(answer, "station-height").level == level


@pytest.mark.parametrize(("code_f", "level"), [(-17.0, "fine"), (-17.2, "look"), (12.8, "fine"),
                                               (13.0, "look")])
def test_a_code_value_fifteen_degrees_off_the_station_is_looked_at(code_f: float,
                                                                 level: str) -> None:
    answer = solve_demo(ID, ranged=False, design_heating_f=(code_f, "data sheet"))
    assert verdict_of(answer, "code-near-station").level == level


@pytest.mark.parametrize(("days", "level"), [(6000.0, "fine"), (5800.0, "look"),
                                             (8800.0, "fine"), (8900.0, "look")])
def test_months_and_degree_days_of_two_places_do_not_belong_together(days: float,
                                                                     level: str) -> None:
    answer = solve_demo(ID, ranged=False, degree_days_65=days)
    assert verdict_of(answer, "months-belong").level == level


def test_a_hot_point_below_the_cold_point_and_a_wet_bulb_above_the_dry_are_refused() -> None:
    answer = solve(tmy_p99_f=50.0, tmy_p0_4_f=60.0, tmy_mcwb_f=70.0)
    assert not answer.ok
    assert {e["field"] for e in answer.errors} == {"tmy_p99_f", "tmy_mcwb_f"}


def test_without_the_cold_point_there_is_no_estimate() -> None:
    answer = solve(tmy_p0_4_f=None)
    assert answer.ok is None
    assert answer.missing == ["tmy_p0_4_f"]


def test_the_heating_answer_does_not_need_the_cooling_facts() -> None:
    bare = solve(tmy_p99_f=None, tmy_mcwb_f=None, monthly_means=None, degree_days_65=None,
                 station_elevation_ft=None)
    assert set(bare.values) == {"design_heating_f"}
    assert bare.values["design_heating_f"].value == -1
    assert bare.sheet is not None
    assert "Heating design temperature" in str(figure(bare.sheet))


def test_a_home_far_above_its_station_never_has_a_wet_bulb_above_its_dry_bulb() -> None:
    high = solve(elevation_ft=(13000.0, "data sheet"), station_elevation_ft=(1000.0, "estimated"))
    assert high.values["design_cooling_wb_f"].value <= high.values["design_cooling_f"].value


def test_the_figure_says_in_words_what_it_draws() -> None:
    answer = solve()
    assert answer.sheet is not None
    drawn = str(figure(answer.sheet))
    assert "January" in drawn
    assert "−2" in drawn
