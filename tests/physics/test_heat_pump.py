"""A heat pump against a home."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from downflow.physics import heat_pump as hp

F = [-13.0, 5.0, 17.0, 47.0]
Q = [21500.0, 28000.0, 31500.0, 36000.0]
LOW = [13000.0, 12500.0, 11500.0, 9500.0]


@given(st.floats(-13, 47))
def test_between_the_points_the_data_sheet_runs_straight(at):
    reading = hp.interpolate(F, Q, at)
    assert reading.value == approx(float(np.interp(at, F, Q)))
    assert not reading.beyond


@pytest.mark.parametrize("k", range(4))
def test_at_a_point_it_is_the_points_own_value(k):
    assert hp.interpolate(F, Q, F[k]).value == approx(Q[k])


def test_beyond_the_points_the_last_line_goes_on_and_says_so():
    colder = hp.interpolate(F, Q, -31)
    assert colder.beyond
    assert colder.value == approx(15_000)
    assert hp.interpolate(F, Q, 48).beyond


def test_the_frost_point_takes_a_tenth_and_leaves_a_jump_at_45():
    assert hp.frost_capacity_btuh(31_500, 36_000) == approx(30_780)
    assert hp.frost_power_w(4014, 2931) == approx(3313.7, abs=0.1)
    just_below = hp.with_frost(F, Q, 44.999, 30_780).value
    just_at = hp.with_frost(F, Q, 45, 30_780).value
    assert just_at - just_below > 3000
    assert hp.with_frost(F, Q, 35, 30_780).value == approx(30_780)


def test_deep_cold_carries_no_frost():
    assert hp.with_frost(F, Q, 5, 30_780).value == approx(28_000)
    assert hp.with_frost(F, Q, 17, 30_780).value == approx(31_500)


def test_the_example_home_balances_a_little_below_zero_and_cycles_above_35():
    assert hp.thermal_balance_f(F, Q, 400, 61) == approx(-2.36, abs=0.01)
    assert hp.cycling_starts_f(F, LOW, 400, 61) == approx(35.30, abs=0.01)


@given(st.floats(150, 900), st.floats(55, 70), st.floats(0.7, 1))
def test_at_the_balance_point_load_and_capacity_are_one_number(ua, base, factor):
    found = hp.thermal_balance_f(F, Q, ua, base, factor)
    if found is not None and found < base:
        assert factor * hp.interpolate(F, Q, found).value == approx(
            hp.load_btuh(ua, base, found), rel=1e-9)


@given(st.floats(200, 700))
def test_a_leakier_home_balances_warmer(ua):
    tight, leaky = (hp.thermal_balance_f(F, Q, u, 65) for u in (ua, ua * 1.1))
    if tight is not None and leaky is not None:
        assert leaky > tight


def test_a_home_that_hardly_loses_has_no_balance_point():
    assert hp.thermal_balance_f(F, Q, 20, 65) is None


def test_a_cut_out_makes_the_balance_point_jump_to_it():
    def gap(t):
        capacity = hp.interpolate(F, Q, t).value if hp.runs(t, 10) else 0.0
        return capacity - hp.load_btuh(200, 65, t)
    assert hp.crossing_f(gap, -60, 65) == approx(10)


def test_a_unit_that_is_short_from_the_start_says_so():
    assert hp.crossing_f(lambda t: -1.0, -60, 65) == 65


def test_at_the_cut_out_it_still_runs_and_below_it_does_not():
    assert hp.runs(-15, -15)
    assert not hp.runs(-15.1, -15)
    assert hp.runs(-40, None)


def test_high_up_the_factor_lies_between_thin_air_and_one():
    bounds = hp.altitude_factor_bounds(6200)
    assert bounds.low == approx(0.7954, abs=1e-4)
    assert bounds.high == 1
    assert hp.altitude_factor_bounds(-200) == (1, 1)


def test_share_covered_never_leaves_zero_to_one():
    assert hp.share_covered(30_000, 24_000) == approx(0.8)
    assert hp.share_covered(30_000, 40_000) == 1
    assert hp.share_covered(0, 0) == 1
    assert hp.share_covered(30_000, -5) == 0


@pytest.mark.parametrize("call", [
    lambda: hp.interpolate([5], [1], 5),
    lambda: hp.interpolate([5, 5], [1, 2], 5),
    lambda: hp.interpolate([5, 17], [1, 2, 3], 5),
    lambda: hp.cop(1000, 0),
])
def test_a_call_that_makes_no_sense_is_refused(call):
    with pytest.raises(ValueError, match="."):
        call()
