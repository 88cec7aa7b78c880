"""Heat loss from bills and from one night."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy import stats

from downflow.physics import climate_year
from downflow.physics import fuel_bills as fb

DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
MEANS = [26.18, 26.99, 34.41, 42.95, 49.23, 61.55, 69.0, 65.75, 58.44, 45.77, 33.3, 31.55]
YEAR = climate_year.yearly_spread_f(MEANS)


def degree_days(base: float) -> list[float]:
    return [climate_year.heating_degree_days(base, m, climate_year.monthly_spread_f(m, YEAR), d)
            for m, d in zip(MEANS, DAYS, strict=True)]


def use_of(base: float, start: float, slope: float) -> list[float]:
    return [start * d + slope * h for d, h in zip(DAYS, degree_days(base), strict=True)]


@pytest.mark.parametrize("base", [55, 58, 60, 63, 66])
def test_a_home_that_was_made_up_is_found_again(base):
    bases = list(range(50, 71))
    fit = fb.fit_bills(use_of(base, 0.35, 0.107), DAYS, [degree_days(b) for b in bases], bases)
    assert fit.base_f == base
    assert fit.base_use_per_day == approx(0.35, rel=1e-6)
    assert fit.slope_per_degree_day == approx(0.107, rel=1e-6)
    assert fit.r2 == approx(1)


def test_too_warm_a_base_reads_the_loss_too_low():
    use = use_of(60, 0.35, 0.107)
    at65 = fb.fit_line([h / d for h, d in zip(degree_days(65), DAYS, strict=True)],
                       [u / d for u, d in zip(use, DAYS, strict=True)])
    assert at65.slope < 0.107 * 0.95


def test_with_noise_on_the_bills_the_truth_lies_in_the_range_about_nine_times_in_ten():
    bases = [54 + k / 2 for k in range(29)]
    days_by_base = [degree_days(b) for b in bases]
    inside, slopes = 0, []
    for seed in range(300):
        noise = np.random.default_rng(seed).standard_normal(12)
        use = [max(0.0, u + 0.15 * d * x)
               for u, d, x in zip(use_of(60, 0.7, 0.107), DAYS, noise, strict=True)]
        fit = fb.fit_bills(use, DAYS, days_by_base, bases)
        half = fb.student_t(0.9, fit.periods - 3) * fit.slope_error
        inside += abs(fit.slope_per_degree_day - 0.107) <= half
        slopes.append(fit.slope_per_degree_day)
    assert 0.82 <= inside / 300 <= 0.97
    assert abs(float(np.mean(slopes)) - 0.107) < 0.004


def test_a_base_that_could_be_anything_has_a_wide_error():
    bases = list(range(50, 71))
    few = slice(0, 5)                       # five winter months alone: no summer to tell
    use = [u + w for u, w in zip(use_of(60, 0.35, 0.107)[few], (3, -4, 2, 3, -3), strict=True)]
    fit = fb.fit_bills(use, DAYS[few], [degree_days(b)[few] for b in bases], bases)
    assert fit.base_error_f > 2


@given(st.lists(st.tuples(st.floats(-50, 50), st.floats(-50, 50)), min_size=4, max_size=20,
                unique_by=lambda p: round(p[0], 3)))
def test_the_line_is_the_librarys_line(points):
    x, y = [p[0] for p in points], [p[1] for p in points]
    ours, theirs = fb.fit_line(x, y), stats.linregress(x, y)
    assert ours.slope == approx(theirs.slope, rel=1e-7, abs=1e-9)
    assert ours.intercept == approx(theirs.intercept, rel=1e-7, abs=1e-7)
    assert ours.slope_error == approx(theirs.stderr, rel=1e-5, abs=1e-7)


@given(st.integers(1, 60), st.floats(0.5, 0.99))
def test_students_t_is_the_librarys(freedom, share):
    assert fb.student_t(share, freedom) == approx(stats.t.ppf((1 + share) / 2, freedom), rel=1e-9)


@given(st.floats(10, 62), st.integers(20, 35), st.floats(55, 68))
def test_degree_days_tell_their_mean_temperature_back(mean, days, base):
    spread = climate_year.monthly_spread_f(mean, YEAR)
    dd = climate_year.heating_degree_days(base, mean, spread, days)
    if dd > 0.5:
        assert fb.mean_of_degree_days_f(dd, base, days, YEAR) == approx(mean, abs=1e-5)


def test_one_gallon_a_degree_day_is_a_great_loss():  # 91,333 × 0.8 / 24
    assert fb.ua_of_slope_btuh_f(0.1067, 91_333, 0.8) == approx(324.8, abs=0.1)


def test_gains_and_balance_point_are_two_ways_to_say_one_thing():
    assert fb.balance_point_f(70, 3600, 400) == approx(61)
    assert fb.gain_of_balance_btuh(70, 61, 400) == approx(3600)


def test_one_night_tells_the_loss():
    mean = fb.mean_output_btuh(77_000, 0.8, 205, 480)
    assert mean == approx(26_308, abs=1)
    assert fb.ua_of_run_time_btuh_f(mean, 1500, 70, 8) == approx(448.5, abs=0.1)
    assert fb.ua_of_run_time_btuh_f(mean, 0, 70, 8) == approx(424.3, abs=0.1)


def test_a_furnace_is_derated_above_2000_ft_and_then_from_sea_level():
    assert fb.furnace_input_btuh(77_000, 2000) == 77_000
    assert fb.furnace_input_btuh(100_000, 2001) == approx(91_996)
    assert fb.furnace_input_btuh(100_000, 6200) == approx(75_200)


def test_six_winter_bills_on_a_good_line_are_enough():
    assert fb.bills_are_enough(0.80, 6)
    assert not fb.bills_are_enough(0.79, 6)
    assert not fb.bills_are_enough(0.99, 5)


@pytest.mark.parametrize("call", [
    lambda: fb.balance_point_f(70, 1, 0),
    lambda: fb.fit_line([1, 2], [1, 2]),
    lambda: fb.fit_line([1, 2, 3], [1, 2]),
    lambda: fb.fit_line([1, 1, 1], [1, 2, 3]),
    lambda: fb.fit_bills([1, 2, 3], [30, 30, 30], [[1, 2, 3]], [60]),
    lambda: fb.fit_bills([1] * 4, [30, 30, 30, 0], [[1, 2, 3, 4]], [60]),
    lambda: fb.fit_bills([1] * 4, [30] * 4, [[0] * 4], [60]),
    lambda: fb.student_share(1, 0),
    lambda: fb.student_t(1, 5),
    lambda: fb.ua_of_slope_btuh_f(0.1, 91_000, 0),
    lambda: fb.furnace_input_btuh(1000, 25_000),
    lambda: fb.mean_output_btuh(1000, 0.8, 70, 60),
    lambda: fb.ua_of_run_time_btuh_f(1000, 0, 60, 60),
    lambda: fb.mean_of_degree_days_f(0, 65, 30, 14),
])
def test_a_call_that_makes_no_sense_is_refused(call):
    with pytest.raises(ValueError, match="."):
        call()
