"""Airflow read two ways, and the filter's time."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import airflow_reading as read


def test_the_clamp_decides_whether_the_blower_is_added():
    assert read.element_heat_btuh(240, 40, 300, False) == pytest.approx(3.412142 * 9900)
    assert read.element_heat_btuh(240, 40, 300, True) == pytest.approx(3.412142 * 9600)


def test_beyond_a_fan_table_the_nearest_row_is_read_and_said_to_be_outside():
    assert read.table_airflow([0.1, 0.5], [1000, 800], 0.3) == (900, False)
    assert read.table_airflow([0.1, 0.5], [1000, 800], 0.7) == (800, True)
    assert read.table_airflow([0.1, 0.5], [1000, 800], 0.0) == (1000, True)


def test_a_gauge_reads_less_in_thin_air_than_the_table_means():
    assert read.to_table_air_inwc(0.4, 0.06, 0.075) == pytest.approx(0.5)


@given(st.floats(200, 2000), st.floats(0.01, 0.3), st.floats(200, 2000), st.floats(0.01, 0.3))
def test_both_together_lie_between_and_lean_to_the_surer(a, u, b, v):
    both = read.together(a, u, b, v)
    assert min(a, b) - 1e-9 <= both.airflow_cfm <= max(a, b) + 1e-9
    assert (both.weight_of_first > 0.5) == (a * u < b * v) or a * u == pytest.approx(b * v)


def test_a_small_rise_is_a_poor_reading():
    assert read.heat_rise_doubt(10) > 2 * read.heat_rise_doubt(30)


def test_a_filter_lasts_as_long_as_its_share():
    whole = read.filter_days(145, 0.04, 0.7, 1000, 14)
    assert read.filter_days(145, 0.04, 0.7, 1000, 14, 0.5) == pytest.approx(whole / 2)
    assert read.usable_dust_share(0.1, 0.3, 0.05) == 0
    assert read.usable_dust_share(0.1, 0.3, 0.9) == 1


@pytest.mark.parametrize("call", [
    lambda: read.element_heat_btuh(0, 40, 0, False),
    lambda: read.element_heat_btuh(240, 40, -1, True),
    lambda: read.to_table_air_inwc(0.4, 0, 0.075), lambda: read.heat_rise_doubt(0),
    lambda: read.together(0, 1, 1, 1), lambda: read.filter_days(0, 1, 1, 1, 1),
    lambda: read.filter_days(1, 1, 1, 1, 1, 2), lambda: read.usable_dust_share(0.3, 0.3, 0.5),
])
def test_numbers_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r"\d"):
        call()
