"""The floor box: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

PLAIN = {"outlet_width_in": 18.0, "outlet_depth_in": 15.0, "opening_width_in": 14.0,
         "opening_depth_in": 12.0, "opening_right_in": 0.0, "opening_behind_in": 0.0,
         "elements_above_floor_in": 12.0, "outlet_to_elements_in": 5.0}


def box(*, ranged=False, **facts):
    return solve_demo("floor-box", ranged=ranged, **{**PLAIN, **facts})


def test_an_opening_under_the_outlet_needs_only_the_height_of_the_kit():
    answer = box()
    assert answer.values["box_height_need_in"].value == pytest.approx(7)
    assert answer.values["box_overlap_pct"].value == pytest.approx(100)


def test_an_opening_beside_the_outlet_needs_a_wider_and_taller_box():
    answer = box(opening_right_in=14.0)
    assert answer.values["box_width_in"].value == pytest.approx(9 + 14 + 7)
    assert answer.values["box_height_need_in"].value > 7
    assert verdict_of(answer, "opening-under-outlet").level == "look"


def test_left_and_right_make_the_same_box():
    left, right = box(opening_right_in=-6.0), box(opening_right_in=6.0)
    assert left.values["box_width_in"].value == right.values["box_width_in"].value


@pytest.mark.parametrize(("height", "level"), [(7.0, "fine"), (6.9, "hold")])
def test_the_kit_above_the_floor_just_inside_and_just_outside(height, level):
    assert verdict_of(box(box_height_in=height), "kit-above-floor").level == level


def test_what_it_costs_is_a_range_and_says_so():
    answer = box(ranged=True)
    value = answer.values["floor_box_loss_c"]
    assert value.high == pytest.approx(1.3, abs=0.02)
    assert value.low == pytest.approx(0.5, abs=0.1)
    assert any("Nobody has published tests" in s.note for s in answer.working)


def test_the_wrap_goes_around_once_with_its_seam():
    rows = {r["piece"]: r for r in box(box_height_in=8.0).tables["box_cut_list"]}
    assert rows["wrap"]["length_in"] == pytest.approx(2 * (18 + 15) + 1)
    assert rows["wrap"]["width_in"] == pytest.approx(8 + 2)
    assert rows["bottom plate"]["hole_length_in"] == pytest.approx(14)


def test_a_short_sheet_gives_two_pieces():
    rows = {r["piece"]: r for r in box(sheet_length_in=48.0).tables["box_cut_list"]}
    assert rows["wrap"]["count"] == 2


def test_a_sheet_too_short_for_half_of_it_is_refused():
    answer = box(sheet_length_in=36.0, opening_right_in=14.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "sheet_length_in"
