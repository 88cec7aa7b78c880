"""Heat loss of a home: limits, round trips, second roads."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from downflow import tables
from downflow.physics import heat_loss as hl

COMPRESSION = tables.rows("insulation_compression")
KINDS = ("nonuniform_batt", "nonuniform_blown", "uniform_batt")
R = st.lists(st.floats(0.1, 40), min_size=1, max_size=6)


def test_a_studded_wall_loses_more_than_its_insulation_promises():
    cavity, frame = [0.68, 0.28, 11, 0.67, 0.17], [0.68, 0.28, 4.375, 0.67, 0.17]
    u = hl.parallel_path_u_btuh_ft2_f(cavity, frame, hl.WALL_FRAMING_SHARE)
    assert u == approx(0.0907, abs=5e-5)            # 0.85/12.800 + 0.15/6.175
    assert u > 1 / sum(cavity)


@given(R, R, st.floats(0, 1))
def test_a_wall_lies_between_its_two_paths(cavity, frame, share):
    u = hl.parallel_path_u_btuh_ft2_f(cavity, frame, share)
    ends = sorted((1 / sum(cavity), 1 / sum(frame)))
    assert ends[0] * (1 - 1e-12) <= u <= ends[1] * (1 + 1e-12)


def test_without_framing_the_cavity_decides_and_with_nothing_else_the_frame():
    assert hl.parallel_path_u_btuh_ft2_f([10], [4], 0) == approx(0.1)
    assert hl.parallel_path_u_btuh_ft2_f([10], [4], 1) == approx(0.25)


@given(st.floats(0, 12), st.sampled_from(KINDS))
def test_the_harder_the_squeeze_the_less_r_is_left(restricted, kind):
    kept = hl.kept_share(restricted, 12, kind, COMPRESSION)
    assert 0 <= kept <= 1
    assert kept <= hl.kept_share(min(12, restricted + 0.5), 12, kind, COMPRESSION)


def test_the_federal_table_is_read_row_by_row():
    for row in COMPRESSION:
        for kind in KINDS:
            assert hl.kept_share(row.thickness_pct, 100, kind, COMPRESSION) == approx(
                getattr(row, f"{kind}_r_pct") / 100)


def test_between_rows_the_kept_share_goes_straight():
    low, high = (hl.kept_share(p, 100, "uniform_batt", COMPRESSION) for p in (57, 58))
    assert hl.kept_share(57.5, 100, "uniform_batt", COMPRESSION) == approx((low + high) / 2)


def test_an_r19_batt_in_a_5_and_a_half_inch_wall_is_about_r17():  # 88 % thick, 92 % kept
    assert hl.compressed_r(19, 5.5, 6.25, "uniform_batt", COMPRESSION) == approx(17.5, abs=0.05)


def test_uo_is_the_area_weighted_mean():
    areas, u = [1025, 180, 40, 1512, 1512], [0.0905, 0.5, 0.25, 0.045, 0.056]
    assert hl.overall_u_btuh_ft2_f(areas, u) == approx(float(np.average(u, weights=areas)))
    assert hl.ua_btuh_f(areas, u) == approx(345.47, abs=0.005)


def test_a_thermal_short_has_less_than_half_and_counts_above_one_percent():
    assert hl.is_thermal_short(5.4, 11)
    assert not hl.is_thermal_short(5.5, 11)
    assert hl.shorts_count(10.01, 1000)
    assert not hl.shorts_count(10, 1000)


def test_the_federal_infiltration_goes_by_perimeter_not_by_floor():
    assert hl.federal_infiltration_ua_btuh_f(166) == approx(116.2)


def test_a_whole_home_by_the_federal_rule():  # 345.47 + 116.2 over 75 °F
    ua = 345.47 + hl.federal_infiltration_ua_btuh_f(166)
    assert hl.load_btuh(ua, 70, -5) == approx(34_625, abs=2)


def test_when_it_is_warm_out_nothing_is_lost():
    assert hl.load_btuh(400, 70, 75) == 0


@given(st.floats(0.05, 3), st.floats(1000, 20000))
def test_air_changes_and_airflow_go_round(ach, volume):
    assert hl.air_changes_h(hl.air_change_cfm(ach, volume), volume) == approx(ach)


@given(st.floats(100, 4000), st.floats(0.5, 1))
def test_leakage_flow_goes_down_with_pressure_and_back_again(cfm50, n):
    at4 = hl.leak_flow_cfm(cfm50, 50, 4, n)
    assert at4 < cfm50
    assert hl.leak_flow_cfm(at4, 4, 50, n) == approx(cfm50)


def test_a_blower_door_reading_becomes_a_hole():  # 0.2833 in² for each cfm at 4 Pa
    assert hl.leakage_area_in2(hl.leak_flow_cfm(1450, 50, 4)) == approx(79.55, abs=0.02)


def test_wind_and_cold_both_drive_infiltration_and_neither_alone_is_more_than_both():
    both = hl.basic_infiltration_cfm(80, 50, 9, 0.000145, 0.000174)
    stack = hl.basic_infiltration_cfm(80, 50, 0, 0.000145, 0.000174)
    wind = hl.basic_infiltration_cfm(80, 0, 9, 0.000145, 0.000174)
    assert both == approx((stack**2 + wind**2) ** 0.5)
    assert max(stack, wind) < both < stack + wind


def test_a_flue_inside_the_envelope_draws_air():
    without = hl.design_infiltration_cfm(80, 8, 60)
    assert hl.design_infiltration_cfm(80, 8, 60, flue_area_in2=20) > without


def test_winter_infiltration_exceeds_summer_infiltration_for_the_same_difference():
    assert hl.design_infiltration_cfm(80, 8, 20) > hl.design_infiltration_cfm(80, 8, 20, True)


def test_a_fan_that_only_blows_out_adds_half_its_flow_until_it_rules_alone():
    assert hl.outdoor_air_cfm(60, 0, 40) == approx(80)
    assert hl.outdoor_air_cfm(60, 0, 200) == approx(200)
    assert hl.outdoor_air_cfm(60, 50, 50) == approx(110)


@given(st.floats(0.02, 0.3), st.floats(300, 3000), st.floats(0, 400), st.floats(0, 5000))
def test_a_crawl_space_only_ever_helps_the_floor(u, area, skirt, cfm):
    series = hl.floor_over_crawl_u_btuh_ft2_f(u, area, skirt, cfm, 0.06)
    assert 0 <= series <= u


def test_with_open_vents_the_floor_looks_at_outdoors():
    assert hl.floor_over_crawl_u_btuh_ft2_f(0.08, 1500, 50, 1e9, 0.06) == approx(0.08, rel=1e-4)


def test_a_sealed_and_insulated_crawl_space_passes_nothing():
    assert hl.floor_over_crawl_u_btuh_ft2_f(0.08, 1500, 0, 0, 0.06) == 0


def test_the_crawl_space_lies_between_room_and_outdoors():
    assert 0 < hl.crawl_space_f(70, 0, 120, 200) < 70
    assert hl.crawl_space_f(70, 0, 0, 10) == 0


def test_equipment_makes_up_for_what_the_ducts_lose():
    assert hl.equipment_load_btuh(28_000, 0.8) == approx(35_000)
    assert hl.delivery_efficiency(0.25) == approx(0.8)


def test_the_certificate_bounds_the_loss_and_prints_an_economy_temperature():
    assert hl.certificate_ua_bound_btuh_f(45_000, -20) == approx(500)
    assert hl.certificate_economy_f(-20) == approx(7)   # 30 % of 90 is 27
    assert hl.certificate_economy_f(20) == approx(40)   # 30 % of 50 is below 20


@given(st.lists(st.tuples(st.floats(0, 200), st.floats(100, 3000)), min_size=1, max_size=12),
       st.floats(1, 300))
def test_rooms_add_up_to_the_home(rooms, infiltration):
    losses = hl.room_losses([r[0] for r in rooms], [r[1] for r in rooms], infiltration)
    assert sum(r.share for r in losses) == approx(1)
    assert sum(r.ua_btuh_f for r in losses) == approx(sum(r[0] for r in rooms) + infiltration)


def test_a_room_without_outside_wall_still_gets_its_floor_and_ceiling():
    shares = hl.quick_room_shares([150, 50], [200, 0], 140, 140)
    assert sum(shares) == approx(1)
    assert shares[1] == approx(0.125)


def test_windows_cannot_be_larger_than_their_wall():
    assert hl.net_wall_ft2(166, 7.5, 180, 40) == approx(1025)
    with pytest.raises(ValueError, match="larger than the wall"):
        hl.net_wall_ft2(10, 8, 100, 0)


@pytest.mark.parametrize("call", [
    lambda: hl.parallel_path_u_btuh_ft2_f([0], [1], 0.1),
    lambda: hl.parallel_path_u_btuh_ft2_f([1], [0], 0.1),
    lambda: hl.parallel_path_u_btuh_ft2_f([1], [1], 1.1),
    lambda: hl.kept_share(4, 3, "uniform_batt", COMPRESSION),
    lambda: hl.kept_share(1, 0, "uniform_batt", COMPRESSION),
    lambda: hl.overall_u_btuh_ft2_f([], []),
    lambda: hl.federal_infiltration_ua_btuh_f(-1),
    lambda: hl.air_change_cfm(1, 0),
    lambda: hl.air_changes_h(1, 0),
    lambda: hl.leak_flow_cfm(100, 0, 4),
    lambda: hl.leak_flow_cfm(100, 50, 4, 1.2),
    lambda: hl.leakage_area_in2(100, 0),
    lambda: hl.design_infiltration_cfm(0, 8, 60),
    lambda: hl.equipment_load_btuh(1000, 0),
    lambda: hl.equipment_load_btuh(1000, 1.2),
    lambda: hl.delivery_efficiency(-0.1),
    lambda: hl.certificate_ua_bound_btuh_f(40_000, 70),
    lambda: hl.room_losses([1], [0], 1),
    lambda: hl.quick_room_shares([0], [1], 1, 1),
    lambda: hl.quick_room_shares([1], [0], 1, 1),
    lambda: hl.crawl_space_f(70, 0, 0, 0),
    lambda: hl.floor_over_crawl_u_btuh_ft2_f(-1, 100, 1, 1, 0.07),
])
def test_a_call_that_makes_no_sense_is_refused(call):
    with pytest.raises(ValueError, match="."):
        call()
