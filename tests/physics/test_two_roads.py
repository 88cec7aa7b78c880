"""Two roads to one number."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from downflow.physics import two_roads as tr

VALUE, SIGMA = st.floats(50, 1000), st.floats(1, 200)


@given(VALUE, SIGMA, VALUE, SIGMA)
def test_which_road_is_named_first_does_not_matter(a, sa, b, sb):
    assert tr.combine(a, sa, b, sb).value == approx(tr.combine(b, sb, a, sa).value)
    assert tr.agreement(a, sa, b, sb).agree == tr.agreement(b, sb, a, sa).agree


@given(VALUE, SIGMA, VALUE, SIGMA)
def test_the_result_lies_between_the_two_and_nearer_to_the_surer(a, sa, b, sb):
    both = tr.combine(a, sa, b, sb)
    assert min(a, b) - 1e-9 <= both.value <= max(a, b) + 1e-9
    if sa < sb:
        assert abs(both.value - a) <= abs(both.value - b) + 1e-9


@given(VALUE, SIGMA, SIGMA)
def test_two_roads_that_say_the_same_are_surer_than_either(a, sa, sb):
    both = tr.combine(a, sa, a, sb)
    assert both.value == approx(a)
    assert both.sigma <= min(sa, sb) + 1e-12


def test_two_equal_roads_halve_the_square_of_the_doubt():
    assert tr.combine(300, 20, 300, 20).sigma == approx(20 / 2**0.5)


def test_roads_far_apart_leave_more_doubt_than_either_claimed():
    assert tr.combine(300, 10, 420, 10).sigma > 10


def test_the_limit_is_two_standard_deviations_of_the_difference():
    edge = 2 * (30**2 + 40**2) ** 0.5
    assert tr.agreement(400, 30, 400 - edge + 1e-9, 40).agree
    assert not tr.agreement(400, 30, 400 - edge - 1e-6, 40).agree


def test_nine_in_ten_is_1_64_standard_deviations():
    assert tr.sigma_of_range(300, 400) == approx(30.4, abs=0.01)
    assert tr.sigma_of_range(5, 5) == 0


@given(st.lists(st.floats(0, 100), min_size=1, max_size=6))
def test_independent_deviations_add_as_squares(parts):
    assert tr.quadrature(*parts) ** 2 == approx(sum(p * p for p in parts), abs=1e-9)


@pytest.mark.parametrize("call", [
    lambda: tr.combine(1, 0, 1, 1),
    lambda: tr.agreement(1, 1, 1, -1),
    lambda: tr.sigma_of_range(2, 1),
])
def test_a_road_without_doubt_is_not_believed(call):
    with pytest.raises(ValueError, match="."):
        call()
