"""The vacuum after closing off."""

import math

import pytest

from downflow.testing import solve_demo, verdict_of


def readings(pressure, minutes=(0, 2, 4, 6, 8, 10)):
    return [{"minutes": m, "pressure_micron": pressure(m)} for m in minutes]


def solved(**changed):
    return solve_demo("evacuation-decay", **changed)


def shape(pressure, **changed):
    return verdict_of(solved(vacuum_readings=readings(pressure), **changed), "shape")


def test_a_dry_tight_system_stays():
    assert shape(lambda m: 250 + 3 * m).level == "fine"


def test_a_straight_climb_is_a_leak():
    verdict = shape(lambda m: 250 + 40 * m)
    assert verdict.level == "hold"
    assert "leak" in verdict.text


def test_moisture_levels_off_and_its_level_is_found():
    answer = solved(vacuum_readings=readings(lambda m: 900 - 650 * math.exp(-m / 2.5)))
    assert verdict_of(answer, "shape").level == "look"
    assert "moisture" in verdict_of(answer, "shape").text
    assert answer.values["vacuum_level_micron"].value == pytest.approx(900, rel=0.01)


def test_in_between_asks_for_more_readings():
    verdict = shape(lambda m: 250 + 60 * m - 2.1 * m * m)
    assert verdict.level == "look"
    assert "go on reading" in verdict.do


def test_the_end_at_its_limit():
    rows = readings(lambda m: 240 + 25.9 * m)
    assert verdict_of(solved(vacuum_readings=rows), "end").level == "look"     # ±10 % of 499
    rows = readings(lambda m: 240 + 26.1 * m)
    assert verdict_of(solved(vacuum_readings=rows), "end").level == "hold"
    rows = readings(lambda m: 240 + 20 * m)
    assert verdict_of(solved(vacuum_readings=rows), "end").level == "fine"


def test_too_short_a_watch_is_a_hold():
    rows = readings(lambda m: 250, minutes=(0, 3, 6, 9))
    assert verdict_of(solved(vacuum_readings=rows), "waited").level == "hold"
    assert verdict_of(solved(), "waited").level == "fine"


def test_closing_off_too_early_is_looked_at():
    rows = readings(lambda m: 360 + m)
    assert verdict_of(solved(vacuum_readings=rows), "pulled").level == "look"


def test_ice_hides_from_the_gauge():
    assert verdict_of(solved(vacuum_coldest_f=46), "cold").level == "fine"
    assert verdict_of(solved(vacuum_coldest_f=10), "cold").level == "look"
    assert verdict_of(solved(vacuum_coldest_f=None), "cold").level == "look"


def test_readings_in_another_unit_are_caught_and_named():
    answer = solved(vacuum_readings=readings(lambda m: 1.2))
    assert answer.ok is False
    assert "torr" in answer.errors[0]["message"]
    open_ = solved(vacuum_readings=readings(lambda m: 765_000))
    assert "open" in open_.errors[0]["message"]


def test_the_manuals_figures_win():
    rows = readings(lambda m: 480 + 5 * m)
    answer = solved(vacuum_readings=rows, vacuum_pull_micron=500, vacuum_limit_micron=1000)
    assert verdict_of(answer, "pulled").level == "look"     # within the gauge's doubt
    assert verdict_of(answer, "end").level == "fine"
