"""Ducts: friction against an independent solution, tables at their points, what is refused."""

import math
from typing import Any

import fluids
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from downflow import tables
from downflow.physics import ducts


@given(st.floats(math.log10(2300.0), 8.0), st.floats(-7.0, math.log10(0.05)))
@settings(max_examples=400)
def test_friction_is_colebrook_over_the_whole_range(log_re: float, log_rough: float) -> None:
    reynolds, rough = max(2300.0, 10.0**log_re), 10.0**log_rough
    exact = fluids.friction.Colebrook(reynolds, rough)
    assert ducts.friction_factor(reynolds, rough) == pytest.approx(exact, rel=1e-6)


@given(st.floats(1.0, 2000.0), st.floats(0.0, 0.05))
def test_slow_air_is_laminar(reynolds: float, rough: float) -> None:
    assert ducts.friction_factor(reynolds, rough) == pytest.approx(64.0 / reynolds)


@given(st.floats(10.0, 1e6), st.floats(0.0, 0.05))
@settings(max_examples=300)
def test_pressure_rises_with_flow_through_the_change_and_the_slope_is_true(
    reynolds: float, rough: float
) -> None:
    factor, slope = ducts.friction_factor_and_slope(reynolds, rough)
    more = ducts.friction_factor_and_slope(reynolds * 1.001, rough)[0]
    assert more * (reynolds * 1.001) ** 2 > factor * reynolds**2
    step = 1e-4 * reynolds
    up = ducts.friction_factor_and_slope(reynolds + step, rough)[0]
    down = ducts.friction_factor_and_slope(reynolds - step, rough)[0]
    assert slope == pytest.approx((up - down) / (2 * step), rel=0.02, abs=1e-8)


def test_between_laminar_and_turbulent_friction_joins_without_a_jump() -> None:
    for edge in (2000.0, 2300.0):
        below = ducts.friction_factor(edge - 1e-6, 0.001)
        above = ducts.friction_factor(edge + 1e-6, 0.001)
        assert below == pytest.approx(above, rel=1e-6)


def test_two_roads_to_a_shallow_trunk_agree_within_two_percent() -> None:
    # Equivalent diameter at equal flow, against hydraulic diameter at the real velocity.
    for width, height in ((12, 5), (14, 5), (10, 6), (16, 6), (18, 5)):
        flow, length, rough = 420.0, 24.0, 0.0003
        one = ducts.friction_inwc(
            flow, ducts.rectangular_equivalent_in(width, height), length, rough)
        hydraulic = ducts.hydraulic_diameter_in(width * height, 2 * (width + height))
        velocity = ducts.velocity_fpm(flow, width * height)
        re = ducts.reynolds(velocity, hydraulic, 0.075, 1.2169e-5)
        other = (ducts.friction_factor(re, 12 * rough / hydraulic) * 12 * length / hydraulic
                 * ducts.velocity_pressure_inwc(velocity, 0.075))
        assert one == pytest.approx(other, rel=0.02)


def test_a_square_duct_needs_a_rounder_one_by_a_tenth() -> None:
    assert ducts.rectangular_equivalent_in(10, 10) == pytest.approx(10.93, abs=0.01)


def test_flex_up_to_ten_inches_follows_the_formula_and_larger_keeps_the_larger_loss() -> None:
    small = ducts.flex_factor(8, 15)
    assert small.low < small.likely < small.high
    assert not small.beyond_tests
    large = ducts.flex_factor(12, 15)
    assert large.beyond_tests
    assert large.low == pytest.approx(ducts.flex_formula(12, 15))
    assert large.likely == pytest.approx(ducts.flex_formula(10, 15))
    assert large.high == pytest.approx(4.0)          # tests of 12 to 16 in: more than four times
    assert ducts.flex_factor(12, 3).high == pytest.approx(ducts.flex_formula(10, 3))
    assert ducts.flex_factor(14, 30).high == pytest.approx(ducts.flex_formula(10, 30))


@given(st.floats(4, 16), st.floats(0, 49), st.floats(0.1, 1))
def test_more_compression_never_loses_less(diameter: float, percent: float, more: float) -> None:
    a, b = ducts.flex_factor(diameter, percent), ducts.flex_factor(diameter, percent + more)
    assert b.low >= a.low
    assert b.likely >= a.likely
    assert b.high >= a.high


def test_a_stretched_piece_has_no_compression_and_a_slack_one_a_third() -> None:
    assert ducts.compression_pct(20, 20) == 0
    assert ducts.compression_pct(14, 21) == pytest.approx(100 / 3)


@pytest.mark.parametrize(("reader", "first", "second", "value"), [
    ("elbow_smooth", 0.5, 0.25, 1.53), ("elbow_smooth", 1, 1, 0.21), ("elbow_smooth", 1.5, 4, 0.15),
    ("elbow_smooth", 0.75, 3, 0.39), ("elbow_mitered", 90, 4, 0.92), ("elbow_mitered", 45, 1, 0.34),
    ("elbow_mitered", 30, 0.5, 0.17), ("duct_entry", 0, 0.5, 1.0), ("duct_entry", 0.02, 0.2, 0.66),
    ("duct_entry", 0.05, 1, 0.5),
])
def test_fitting_tables_give_their_printed_values(
    reader: str, first: float, second: float, value: float
) -> None:
    assert ducts.table_loss_c(tables.rows(reader), first, second) == pytest.approx(value)


def test_between_rows_a_fitting_table_is_read_on_a_straight_line() -> None:
    rows = tables.rows("elbow_mitered")
    middle = ducts.table_loss_c(rows, 82.5, 1)
    assert middle == pytest.approx((0.81 + 1.2) / 2)


def test_outside_a_table_is_refused() -> None:
    with pytest.raises(ValueError, match="outside the table"):
        ducts.table_loss_c(tables.rows("elbow_mitered"), 95, 1)


def test_every_table_of_this_subject_names_its_source_and_reads() -> None:
    for name in ("elbow_smooth", "elbow_mitered", "elbow_mitered_reynolds", "elbow_smooth_angle",
                 "duct_entry", "bellmouth", "elbow_round", "noise_velocity", "duct_roughness",
                 "velocity_limits", "metal_thickness"):
        assert tables.source(name).startswith("source: ")
        assert len(tables.rows(name)) >= 3


def test_an_opening_and_its_area_are_each_others_inverse() -> None:
    area = ducts.orifice_area_in2(120.0, 3.0, 0.0623)
    assert ducts.orifice_flow_cfm(area, 3.0, 0.0623) == pytest.approx(120.0)


def test_a_leak_at_its_own_test_pressure_is_the_tested_leak() -> None:
    assert ducts.leakage_cfm(75.0, 25.0) == pytest.approx(75.0)
    assert ducts.leakage_cfm(75.0, 29.89) == pytest.approx(84.2, abs=0.1)


def test_a_long_bare_duct_in_the_cold_loses_its_heat() -> None:
    near = ducts.duct_exit_f(100, 20, 50, 6, 900, 0.075)
    far = ducts.duct_exit_f(100, 20, 500, 2, 900, 0.075)
    assert 20 < far < near < 100


def test_noise_bands_rise_with_velocity_and_end_open() -> None:
    rows = tables.rows("noise_velocity")
    assert ducts.noise_band(rows, 100) == (0.0, 15.0)
    assert ducts.noise_band(rows, 425) == (25.0, 30.0)
    assert ducts.noise_band(rows, 426) == (30.0, 35.0)
    assert ducts.noise_band(rows, 900) == (45.0, None)
    assert ducts.noise_band(rows, 360, returning=True) == (15.0, 20.0)


def test_a_calm_box_loses_the_jet_and_the_entry() -> None:
    # Outlet 180 in², box 360 in², trunk 70 in²: (1 − 0.5)² (70/180)² + 0.5
    assert ducts.box_to_trunk_c(180, 360, 70, 0.5) == pytest.approx(0.25 * 0.15123 + 0.5, rel=1e-4)


def test_a_system_curve_returns_to_itself() -> None:
    flow = ducts.system_flow_cfm(900, 0.5, 0.7, 1.9)
    assert ducts.system_flow_cfm(flow, 0.7, 0.5, 1.9) == pytest.approx(900)


@pytest.mark.parametrize("call", [
    lambda: ducts.round_area_in2(0), lambda: ducts.oval_area_in2(5, 6),
    lambda: ducts.velocity_fpm(100, 0), lambda: ducts.friction_factor(0, 0.001),
    lambda: ducts.friction_factor(1e4, 0.2), lambda: ducts.friction_inwc(-1, 8, 10, 0.0003),
    lambda: ducts.rectangular_equivalent_in(0, 5), lambda: ducts.aspect_ratio(5, -1),
    lambda: ducts.compression_pct(21, 20), lambda: ducts.flex_formula(8, 51),
    lambda: ducts.flex_formula(0, 10), lambda: ducts.sag_length_factor(-1, 4),
    lambda: ducts.expansion_c(50, 40), lambda: ducts.mitered_bend_c(0),
    lambda: ducts.takeoff_c(0, 100, 5, 9),
    lambda: ducts.straight_run_c(101, 100), lambda: ducts.interpolate([1, 1], [2, 3], 1),
    lambda: ducts.interpolate([1], [2, 3], 1), lambda: ducts.scaled_drop_inwc(-0.1, 900, 800, 2),
    lambda: ducts.orifice_flow_cfm(10, -1), lambda: ducts.leakage_cfm(-1, 25),
    lambda: ducts.system_flow_cfm(900, 0.5, -0.1),
    lambda: ducts.conduction_share(-1, 6, 900, 0.075), lambda: ducts.takeoff_friction_share(0),
    lambda: ducts.noise_band(tables.rows("noise_velocity"), -1),
    lambda: ducts.equal_friction_length_ft(1, 8, 0), lambda: ducts.viscosity_lb_ft_s(-500),
])
def test_numbers_that_make_no_sense_are_refused(call: Any) -> None:
    with pytest.raises(ValueError, match=r"\d"):
        call()
