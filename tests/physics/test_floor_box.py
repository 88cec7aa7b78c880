"""The floor box: geometry, bounds of its loss, pieces."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import floor_box as box

SIZE = st.floats(4, 30)


@given(SIZE, SIZE, SIZE, SIZE, st.floats(-20, 20), st.floats(-20, 20))
def test_the_box_covers_outlet_and_opening(ow, od, fw, fd, dx, dy):
    plan = box.plan(ow, od, fw, fd, dx, dy)
    assert plan.width_in >= max(ow, fw) - 1e-9
    assert plan.depth_in >= max(od, fd) - 1e-9
    for left, size, whole in ((plan.outlet_left_in, ow, plan.width_in),
                              (plan.opening_left_in, fw, plan.width_in),
                              (plan.outlet_front_in, od, plan.depth_in),
                              (plan.opening_front_in, fd, plan.depth_in)):
        assert left >= -1e-9
        assert left + size <= whole + 1e-9
    assert 0 <= plan.overlap_share <= 1 + 1e-9


def test_an_opening_under_the_outlet_needs_no_turning_height():
    assert box.turning_height_in(200, 1.0, 18) == 0
    assert box.turning_height_in(200, 0.0, 20) == 10


def test_two_turns_where_most_lies_beside():
    near, far = box.loss_c(270, 400, 168, 0.6), box.loss_c(270, 400, 168, 0.4)
    assert near.high == 1.3
    assert far.high == 2.4
    assert near.low < near.middle < near.high


def test_the_wrap_is_one_or_two_pieces():
    one, two = box.flat_pattern(20, 18, 8, 96), box.flat_pattern(20, 18, 8, 48)
    assert (one.pieces, one.length_in, one.height_in) == (1, 77, 10)
    assert (two.pieces, two.length_in) == (2, 39)
    with pytest.raises(ValueError, match="39"):
        box.flat_pattern(20, 18, 8, 36)


def test_the_cut_list_has_every_piece():
    plan = box.plan(18, 15, 14, 12, 2, 0)
    pieces = {p.name: p for p in box.cut_list(plan, box.flat_pattern(18, 15, 8, 96), (18, 15),
                                              (14, 12), 7)}
    assert set(pieces) == {"wrap", "top plate", "bottom plate", "collar"}
    assert pieces["collar"].length_in == 2 * (14 + 12) + 1
    assert pieces["top plate"].hole_width_in == 15


def test_metal_grows_with_the_side():
    rows = (("exposed rectangular", 0.016, 0.019),)
    assert box.metal_thickness_in(14, rows, "exposed rectangular") == 0.016
    assert box.metal_thickness_in(14.01, rows, "exposed rectangular") == 0.019
    with pytest.raises(ValueError, match="no row"):
        box.metal_thickness_in(10, rows, "oval")


@pytest.mark.parametrize("call", [
    lambda: box.plan(0, 1, 1, 1, 0, 0), lambda: box.turning_height_in(100, 1.1, 10),
    lambda: box.turning_height_in(100, 0.5, 0), lambda: box.kit_height_in(-1, 0),
])
def test_numbers_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r"\d"):
        call()


def test_a_cabinet_needs_its_diagonal_to_stand_up():
    assert box.tilt_height_in(40, 30) == pytest.approx(50)
    assert box.spare_in(24, 21, 2.5) == pytest.approx(0.5)
    assert box.kit_height_in(12, 5) == 7
    assert box.kit_height_in(4, 5) == 0
