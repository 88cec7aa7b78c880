"""The backup heat kit."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from downflow.physics import air, backup

KITS = (5, 7.5, 8, 10, 15, 20)


def test_the_shortfall_of_the_example_home_is_two_kilowatts():
    short = backup.shortfall_btuh(31_500, 24_389)
    assert backup.kw_of_btuh(short) == approx(2.084, abs=1e-3)
    assert backup.smallest_kit_kw(KITS, backup.kw_of_btuh(short)) == 5


def test_a_strong_heat_pump_leaves_nothing_short():
    assert backup.shortfall_btuh(20_000, 25_000) == 0


def test_a_kit_that_covers_exactly_is_enough_and_a_hair_less_is_not():
    assert backup.smallest_kit_kw(KITS, 7.5) == 7.5
    assert backup.smallest_kit_kw(KITS, 7.5001) == 8
    assert backup.smallest_kit_kw(KITS, 20.1) is None


def test_at_208_volts_a_240_volt_element_gives_three_quarters():
    assert backup.kw_at_voltage(10, 240, 208) == approx(7.511, abs=1e-3)
    assert backup.kw_at_voltage(10, 240, 0) == 0


@given(st.floats(1, 25), st.floats(100, 900))
def test_at_the_temperature_it_holds_to_the_kit_meets_the_loss(kw, ua):
    heat = backup.kit_heat_btuh(kw)
    outdoor = backup.holds_down_to_f(heat, ua, 70)
    assert ua * (70 - outdoor) == approx(heat)


def test_ten_kilowatts_hold_the_example_home_to_eleven_below():
    assert backup.holds_down_to_f(backup.kit_heat_btuh(10), 420, 70) == approx(-11.24, abs=0.01)


def test_the_blower_heats_too():
    assert backup.kit_heat_btuh(10, 400) - backup.kit_heat_btuh(10) == approx(1364.9, abs=0.1)


def test_stages_come_on_one_by_one():
    assert backup.stages_needed(0, [4, 4]) == 0
    assert backup.stages_needed(air.btuh_of_watts(4000), [4, 4]) == 1
    assert backup.stages_needed(air.btuh_of_watts(4001), [4, 4]) == 2
    assert backup.stages_needed(air.btuh_of_watts(8001), [4, 4]) is None


def test_supply_air_of_the_example_furnace_and_heat_pump():
    rho = air.density_lb_ft3(6200)
    assert backup.supply_air_f(68, 61_600, 1050, rho) == approx(136.4, abs=0.1)
    assert backup.supply_air_f(68, 26_000, 1100, rho) == approx(95.6, abs=0.1)


@given(st.floats(5_000, 80_000), st.floats(20, 70))
def test_at_the_least_airflow_the_supply_is_at_its_limit(heat, rise):
    cfm = backup.least_standard_cfm(heat, 68, 68 + rise)
    assert backup.supply_air_f(68, heat, cfm, air.STANDARD_DENSITY_LB_FT3) == approx(68 + rise)


def test_recovery_of_the_example_home():
    assert backup.recovery_hours(4200, 420, 10, 38_000, 62, 69) == approx(2.008, abs=1e-3)
    assert backup.recovery_hours(4200, 420, 10, 0, 69, 62) == approx(1.263, abs=1e-3)
    assert backup.recovery_hours(4200, 420, 10, 20_000, 62, 69) is None
    assert backup.recovery_hours(4200, 420, 10, 38_000, 69, 69) == 0


@given(st.floats(0, 20))
def test_a_deeper_setback_takes_longer(setback):
    short = backup.recovery_hours(4200, 420, 10, 38_000, 70 - setback, 70)
    long = backup.recovery_hours(4200, 420, 10, 38_000, 69 - setback, 70)
    assert long > short >= 0


@pytest.mark.parametrize("call", [
    lambda: backup.kw_at_voltage(10, 0, 240),
    lambda: backup.holds_down_to_f(1000, 0, 70),
    lambda: backup.heat_capacity_btu_f(0, 3),
    lambda: backup.recovery_hours(0, 420, 10, 1, 60, 70),
])
def test_a_call_that_makes_no_sense_is_refused(call):
    with pytest.raises(ValueError, match="."):
        call()
