"""The nitrogen test."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("pressure-test", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_a_cold_night_is_no_leak():
    answer = solved()
    assert verdict_of(answer, "tight").level == "fine"
    assert answer.values["nitrogen_expected_psig"].value < 450 - 25


def test_cold_nitrogen_stands_lower_than_the_plain_law_says():
    values = solved().values
    assert 1 < values["nitrogen_gas_law_psig"].value - values["nitrogen_expected_psig"].value < 3


def test_without_a_change_of_temperature_both_laws_agree_with_the_start():
    values = solved(nitrogen_end_f=61, nitrogen_end_psig=450).values
    assert values["nitrogen_expected_psig"].value == pytest.approx(450, abs=1e-6)
    assert values["nitrogen_missing_psi"].value == pytest.approx(0, abs=1e-6)


def test_what_gauge_and_thermometer_explain_is_the_limit():
    values = solved().values
    edge = values["nitrogen_expected_psig"].value - values["nitrogen_allowed_psi"].value
    assert level("tight", nitrogen_end_psig=edge + 1.5) == "fine"
    assert level("tight", nitrogen_end_psig=edge + 0.2) == "look"
    assert level("tight", nitrogen_end_psig=edge - 0.2) == "hold"


def test_standing_too_high_is_looked_at():
    assert level("not-risen", nitrogen_end_psig=435) == "look"


def test_a_short_or_low_test_proves_little():
    assert level("long-enough", nitrogen_hours=0.9) == "look"
    assert level("long-enough", nitrogen_hours=1.0) == "fine"
    assert level("high-enough", nitrogen_start_psig=100, nitrogen_end_psig=95) == "look"


def test_above_the_plate_is_a_hold():
    assert level("test-pressure", test_limit_psig=450) == "fine"
    assert level("test-pressure", test_limit_psig=449) == "hold"
    assert level("test-pressure", test_limit_psig=None) == "look"


def test_anything_but_nitrogen_is_a_hold():
    assert level("gas", test_gas="other") == "hold"


def test_a_gauge_in_kilopascal_is_caught_and_named():
    answer = solved(nitrogen_start_psig=3100)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "nitrogen_start_psig"
    assert "kPa" in answer.errors[0]["message"]


def test_a_thermometer_far_from_the_gas_allows_more():
    near = solved(line_doubt_f=1).values["nitrogen_allowed_psi"].value
    far = solved(line_doubt_f=5).values["nitrogen_allowed_psi"].value
    assert far > near + 3
