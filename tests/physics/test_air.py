"""Air by altitude: what a technician could argue with."""

from __future__ import annotations

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from downflow.physics import air, moist_air

FEET = st.floats(-1000, 14000)


def test_standard_air_gives_the_rule_of_thumb():  # 60 × 0.240 × 0.075 = 1.08
    assert air.sensible_factor_btuh_cfm_f() == approx(1.08)
    assert air.airflow_cfm(1.08 * 10 * 1000, 10, 0.075) == approx(1000)


def test_less_dense_air_needs_more_volume_for_the_same_heat():
    assert air.airflow_cfm(10_800, 10, 0.0625) > air.airflow_cfm(10_800, 10, 0.075)


def test_at_6200_ft_the_1_08_is_about_0_86():  # psychrolib: 0.8577
    assert air.sensible_factor_btuh_cfm_f(air.density_lb_ft3(6200)) == approx(0.8577, abs=2e-4)


@given(FEET)
def test_pressure_is_that_of_the_library_at_every_height(feet):
    psychrolib.SetUnitSystem(psychrolib.IP)
    assert air.pressure_psia(feet) == approx(psychrolib.GetStandardAtmPressure(feet), rel=1e-9)
    assert air.pressure_psia(feet) == approx(moist_air.atmosphere_psia(feet), rel=1e-9)


@given(FEET, st.floats(-40, 140), st.floats(0, 0.03))
def test_density_is_that_of_the_library_wet_or_dry(feet, temp, ratio):
    psychrolib.SetUnitSystem(psychrolib.IP)
    theirs = psychrolib.GetMoistAirDensity(temp, max(ratio, 1e-7), air.pressure_psia(feet))
    assert air.density_lb_ft3(feet, temp, ratio) == approx(theirs, rel=2e-6)


@given(st.floats(50, 3000), st.floats(1, 100), st.floats(0.03, 0.09))
def test_heat_airflow_and_rise_go_round_in_a_circle(cfm, rise, rho):
    heat = air.heat_btuh(cfm, rise, rho)
    assert air.airflow_cfm(heat, rise, rho) == approx(cfm)
    assert air.rise_f(heat, cfm, rho) == approx(rise)


@given(st.floats(50, 3000), st.floats(0.03, 0.09))
def test_standard_and_actual_flow_carry_the_same_mass(cfm, rho):
    standard = air.standard_cfm(cfm, rho)
    assert standard * 0.075 == approx(cfm * rho)
    assert air.actual_cfm(standard, rho) == approx(cfm)


def test_moist_air_is_lighter_than_dry_air():
    assert air.density_lb_ft3(0, 80, 0.02) < air.density_lb_ft3(0, 80)


def test_higher_up_the_air_is_thinner_all_the_way():
    heights = [air.density_lb_ft3(z) for z in range(0, 15000, 500)]
    assert heights == sorted(heights, reverse=True)


def test_watts_make_heat_and_back():
    assert air.watts_of_btuh(air.btuh_of_watts(5000)) == approx(5000)


@pytest.mark.parametrize(("call", "words"), [
    (lambda: air.pressure_psia(40_000), "outside"),
    (lambda: air.density_lb_ft3(0, -500), "absolute zero"),
    (lambda: air.density_lb_ft3(0, 70, -0.1), "below 0"),
    (lambda: air.airflow_cfm(1000, 0, 0.075), "not above 0"),
    (lambda: air.rise_f(1000, 0, 0.075), "not above 0"),
    (lambda: air.sensible_factor_btuh_cfm_f(0), "not above 0"),
    (lambda: air.actual_cfm(100, 0), "not above 0"),
])
def test_a_call_that_makes_no_sense_says_why(call, words):
    with pytest.raises(ValueError, match=words):
        call()
