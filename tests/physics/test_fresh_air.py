"""Fresh air: amounts, duct, heat."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import fresh_air


def test_a_small_home_gets_the_least_rate():
    assert fresh_air.home_cfm(900) == 50
    assert fresh_air.home_cfm(1680) == pytest.approx(58.8)


def test_the_national_standard_counts_one_bedroom_at_least():
    assert fresh_air.national_cfm(600, 0) == fresh_air.national_cfm(600, 1)
    assert fresh_air.national_cfm(1568, 3) == pytest.approx(77.0, abs=0.05)


def test_a_quarter_of_the_time_needs_four_times_the_air():
    assert fresh_air.running_cfm(58.8, 15) == pytest.approx(235.2)
    with pytest.raises(ValueError, match="outside 0 to 60"):
        fresh_air.running_cfm(50, 61)


@given(st.floats(0.01, 0.8), st.floats(3, 10), st.floats(1, 60), st.floats(1, 12))
def test_more_pressure_more_air_more_length_less(suction, size, length, loss):
    def flow(pressure, feet):
        return fresh_air.duct_cfm(pressure, size, feet, loss, 0.0003, 0.075)

    assert flow(1.1 * suction, length) > flow(suction, length)
    assert flow(suction, 1.5 * length) < flow(suction, length)


def test_a_duct_without_length_is_its_losses():
    flow = fresh_air.duct_cfm(0.1, 6, 0, 4.0, 0.0003, 0.075)
    assert flow == pytest.approx(0.19635 * 1096.7 * (0.1 / (0.075 * 4.0)) ** 0.5, rel=1e-4)


def test_a_closed_duct_is_refused():
    with pytest.raises(ValueError, match="must be above 0"):
        fresh_air.duct_cfm(0, 6, 10, 4, 0.0003, 0.075)


def test_slow_flow_is_laminar():
    assert fresh_air.friction_factor(1000, 0.001) == pytest.approx(0.064)


def test_fifty_cfm_on_a_zero_degree_day():
    assert fresh_air.heating_btuh(50, 70, 0, 0.075) == pytest.approx(3780)


def test_season_is_the_degree_days():
    one_day = 24 * fresh_air.heating_btuh(50, 65, 45, 0.075)
    assert fresh_air.season_btu(50, 20, 0.075) == pytest.approx(one_day)


def test_a_heat_pump_halves_the_bill_at_two():
    assert (fresh_air.electricity_kwh(1e6, 2.0)
            == pytest.approx(fresh_air.electricity_kwh(1e6, 1.0) / 2))
