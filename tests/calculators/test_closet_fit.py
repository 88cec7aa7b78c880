"""The closet: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def fit(*, ranged=False, **facts):
    return solve_demo("closet-fit", ranged=ranged, **facts)


@pytest.mark.parametrize(("fact", "verdict"), [
    ("downflow_allowed", "downflow-allowed"), ("downflow_parts", "downflow-parts"),
    ("home_use_allowed", "home-use-allowed")])
@pytest.mark.parametrize(("answer", "level"), [("yes", "fine"), ("no", "hold"),
                                               ("not read", "hold")])
def test_what_nobody_has_read_is_a_hold(fact, verdict, answer, level):
    assert verdict_of(fit(**{fact: answer}), verdict).level == level


@pytest.mark.parametrize(("answer", "level"), [
    ("not asked", "fine"), ("fitted", "fine"), ("missing", "hold"), ("not read", "hold")])
def test_the_base_on_a_wooden_floor(answer, level):
    assert verdict_of(fit(floor_base=answer), "floor-base").level == level


@pytest.mark.parametrize(("width", "level"), [(23.5, "fine"), (23.49, "hold")])
def test_across_just_inside_and_just_outside(width, level):
    # 21 in cabinet and 2.5 in for lines
    assert verdict_of(fit(closet_width_in=width), "fits-across").level == level


def test_a_low_ceiling_does_not_take_the_stack():
    assert verdict_of(fit(closet_height_in=66.0), "fits-tall").level == "hold"


def test_a_tight_closet_estimated_by_eye_is_a_look():
    answer = fit(ranged=True, closet_width_in=(24.0, "estimated"))
    assert verdict_of(answer, "fits-across").level == "look"


@pytest.mark.parametrize(("collar", "level"), [(2.0, "fine"), (1.9, "hold")])
def test_three_feet_of_metal_just_inside_and_just_outside(collar, level):
    # 5 in to the outlet, a box of 7 in: one foot
    answer = fit(metal_to_collar_ft=collar, box_height_in=7.0)
    assert verdict_of(answer, "metal-below-elements").level == level


def test_a_listing_may_allow_it_nearer():
    answer = fit(metal_to_collar_ft=0.5, collar_listed_nearer=True)
    assert verdict_of(answer, "metal-below-elements").level == "look"


def test_a_kit_that_is_not_on_the_plate_stops_before_this_page():
    answer = fit(kit_planned_kw=15.0)
    assert verdict_of(answer, "kit-on-plate").level == "fine"
    assert solve_demo("backup-kit", kit_planned_kw=15.0).ok is False


def test_a_door_narrower_than_the_cabinet_is_a_hold():
    assert verdict_of(fit(closet_door_in=20.5), "fits-door").level == "hold"


def test_a_cabinet_that_cannot_be_stood_up_is_a_look():
    answer = fit(cabinet_height_in=(86.5, "data sheet"), closet_height_in=88.0)
    assert verdict_of(answer, "stands-up").level == "look"
