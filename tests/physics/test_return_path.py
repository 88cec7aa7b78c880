"""The way back: areas, pressures and the federal rule."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import return_path as back


@given(st.floats(5, 400), st.floats(0.5, 20), st.floats(0.05, 0.08))
def test_the_area_for_a_pressure_gives_that_pressure(flow, limit, density):
    area = back.transfer_area_in2(flow, limit, density)
    assert back.room_pressure_pa(flow, area, density) == pytest.approx(limit)


def test_thin_air_needs_less_area():
    assert back.transfer_area_in2(100, 3, 0.06) < back.transfer_area_in2(100, 3, 0.075)


def test_two_grilles_in_series_count_less_than_either():
    assert back.in_series_in2([50, 50]) == pytest.approx(50 / 2**0.5)
    assert back.in_series_in2([50, 1000]) < 50


def test_a_closed_room_says_what_is_missing():
    room = back.closed_room(110, 21, 24, 0.06)
    assert room.limit_pa == 3
    assert room.there_in2 == 45
    assert room.to_cut_in2 == pytest.approx(room.needed_in2 - 45)
    assert room.pressure_pa > 3


def test_a_sealed_room_has_no_pressure_that_could_be_told():
    assert back.closed_room(110, 0, 0).pressure_pa is None
    assert back.closed_room(0, 0, 0).pressure_pa == 0
    assert back.closed_room(0, 0, 0).to_cut_in2 == 0


def test_an_undercut_counts_from_two_inches_and_no_further_than_two_and_a_half():
    assert back.hud_undercut_credit_in2(28, 1.99) == 0
    assert back.hud_undercut_credit_in2(28, 2.0) == 28
    assert back.hud_undercut_credit_in2(28, 2.5) == back.hud_undercut_credit_in2(28, 4.0) == 35


def test_louvers_leave_a_share_free():
    assert back.louver_free_in2(400, back.WOOD_LOUVER_SHARE) == 100
    assert back.louver_free_in2(400, back.METAL_LOUVER_SHARE) == 300


@pytest.mark.parametrize("call", [
    lambda: back.room_limit_pa(-1), lambda: back.undercut_area_in2(-1, 1),
    lambda: back.room_pressure_pa(10, 0), lambda: back.in_series_in2([]),
    lambda: back.in_series_in2([10, 0]), lambda: back.louver_free_in2(-1, 0.5),
    lambda: back.louver_free_in2(10, 0), lambda: back.hud_return_duct_in2(-1),
    lambda: back.hud_room_opening_in2(-1), lambda: back.transfer_area_in2(10, 0),
])
def test_numbers_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r"zero|above"):
        call()
