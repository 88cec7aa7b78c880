"""A year of temperature: the monthly road, the counted road, and both against libraries."""

import gzip
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.stats import logistic

from downflow import weather
from downflow.physics import climate_year as climate

approx = pytest.approx

DATA = Path(__file__).parents[1] / "data"
MEANS_F = (26.18, 26.99, 34.41, 42.95, 49.23, 61.55, 69.0, 65.75, 58.44, 45.77, 33.3, 31.55)


@pytest.fixture(scope="module", params=["724666_golden_co_tmy3.csv.gz",
                                        "727720_helena_mt_tmy3.epw.gz"])
def hours(request):
    with gzip.open(DATA / request.param, "rt", encoding="utf-8") as file:
        return weather.parse(file.read())


def test_colder_base_means_fewer_degree_days():
    assert climate.year_heating_degree_days(MEANS_F, 60) < climate.year_heating_degree_days(
        MEANS_F, 65
    )


def test_far_below_the_base_every_degree_counts():
    assert climate.heating_degree_days(65, 5, 4, 31) == approx(31 * 60, rel=1e-4)


def test_far_above_the_base_there_are_no_degree_days():
    assert climate.heating_degree_days(65, 125, 4, 31) == approx(0, abs=0.05)


def test_heating_less_cooling_degree_days_is_the_means_deficit():
    heating = climate.heating_degree_days(65, 60, 4, 30)
    assert heating - climate.cooling_degree_days(65, 60, 4, 30) == approx(30 * 5)


@settings(deadline=None)
@given(st.floats(-40, 90), st.floats(1, 12), st.sampled_from([28, 30, 31]), st.floats(-20, 100))
def test_degree_days_are_the_area_under_the_share_below(mean, spread, days, base):
    """scipy integrates the logistic share; the closed form must be its area."""
    scale = spread * days**0.5 / climate.STEEPNESS
    shape = logistic(loc=mean, scale=scale)
    low = min(base, mean) - 60 * scale
    area = quad(shape.cdf, low, base, epsabs=1e-10, limit=400, points=[min(mean, base)])[0]
    assert climate.heating_degree_days(base, mean, spread, days) == approx(
        days * area, rel=1e-6, abs=1e-6
    )
    assert climate.share_below(base, mean, spread, days) == approx(
        float(shape.cdf(base)), abs=1e-12
    )


@settings(deadline=None)
@given(
    st.lists(st.floats(-25, 95), min_size=12, max_size=12),
    st.lists(st.floats(0, 40), min_size=12, max_size=12),
)
def test_bins_hold_every_hour_of_the_year(means, swings):
    months = climate.months_of_bins(means, swings)
    assert sum(b.hours for month in months for b in month) == approx(8760, abs=1e-4)
    assert all(b.hours > 0 for month in months for b in month)


def test_bins_of_a_month_agree_with_the_single_bin():
    spread = climate.monthly_spread_f(MEANS_F[0], climate.yearly_spread_f(MEANS_F))
    january = dict(climate.months_of_bins(MEANS_F, [22] * 12)[0])
    assert january[20.0] == approx(
        climate.bin_hours(17.5, 22.5, MEANS_F[0], spread, 31, 22), rel=1e-9
    )


def test_the_mean_days_shape_has_no_mean_and_a_swing_near_one():
    shape = [climate.day_shape(hour) for hour in range(1, 25)]
    assert sum(shape) == approx(0, abs=1e-12)
    assert max(shape) - min(shape) == approx(0.976, abs=0.002)
    assert shape.index(max(shape)) == 14
    assert shape.index(min(shape)) == 5


def test_counted_bins_equal_a_histogram(hours):
    outdoor = np.array(hours.outdoor_f())
    counted = climate.bins_from_hours(hours.outdoor_f())
    edges = np.arange(-62.5, 130, 5)
    # readings are whole hundredths: a thousandth tips an edge to the right side
    expected, _ = np.histogram(np.round(outdoor, 2) + 1e-3, bins=edges)
    by_centre = {float(e + 2.5): int(n) for e, n in zip(edges, expected, strict=False) if n}
    assert {b.outdoor_f: b.hours for b in counted} == by_centre
    assert sum(b.hours for b in counted) == 8760


def test_a_reading_on_an_edge_belongs_to_the_warmer_bin():
    assert climate.bins_from_hours([22.5, 22.49, 22.500001]) == ((20.0, 1.0), (25.0, 2.0))


def test_degree_days_and_percentiles_equal_numpy(hours):
    outdoor = np.array(hours.outdoor_f())
    days = outdoor.reshape(365, 24).mean(axis=1)
    series = hours.outdoor_f()
    assert climate.daily_degree_days(series, 65) == approx(np.maximum(0, 65 - days).sum())
    assert climate.daily_cooling_degree_days(series, 65) == approx(np.maximum(0, days - 65).sum())
    assert climate.hourly_degree_days(series, 65) == approx(np.maximum(0, 65 - outdoor).sum() / 24)
    for percent in (0, 0.4, 1, 50, 99, 100):
        assert climate.percentile_f(series, percent) == approx(np.percentile(outdoor, percent))
    assert climate.mean_day_swing_f(series) == approx(
        np.ptp(outdoor.reshape(365, 24).mean(axis=0))
    )


def test_the_monthly_road_comes_within_its_published_error_of_the_hours(hours):
    months = hours.months_f()
    means = [float(np.mean(month)) for month in months]
    estimate = climate.year_heating_degree_days(means, 65)
    assert estimate == approx(climate.daily_degree_days(hours.outdoor_f(), 65), rel=0.06)


@pytest.mark.parametrize(
    "call",
    [
        lambda: climate.yearly_spread_f([1, 2, 3]),
        lambda: climate.monthly_spread_f(300, 10),
        lambda: climate.share_below(50, 50, 0, 30),
        lambda: climate.share_below(50, 50, 4, 0),
        lambda: climate.swing_from_range_f(-1),
        lambda: climate.months_of_bins(MEANS_F, [10]),
        lambda: climate.daily_means_f([1.0] * 23),
        lambda: climate.percentile_f([], 5),
        lambda: climate.percentile_f([1.0], 101),
        lambda: climate.mean_day_f([]),
    ],
)
def test_calls_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r"\d|no hours"):
        call()
