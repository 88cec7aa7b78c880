"""Mildly flammable refrigerant in a closet."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("flammable-charge", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_no_formula_ever_passes_a_home():
    for charge in (1.0, 3.0, 8.25, 30.0):
        assert all(v.level in ("look", "hold") for v in solved(charge_total_lb=charge).verdicts)


def test_published_room_areas_come_out_in_square_metres():
    """A printed table for R-32 and floor outlets: 2.5 kg need 53.19 m² at 0.307 kg/m³."""
    room = solved(refrigerant="R-32", charge_total_lb=2.5 / 0.45359237).values["leak_room_ft2"]
    assert room.value * 0.09290304 == pytest.approx(53.19 * (0.307 / 0.306) ** 2.5, rel=1e-3)


def test_a_charge_at_the_threshold_needs_no_room():
    free = 6 * 0.296 / 0.45359237
    assert "asks for no room size" in verdict_of(solved(charge_total_lb=free - 0.01), "room").text
    bare = solved(charge_total_lb=free + 0.05, leak_detector="none", leak_airflow_cfm=None)
    assert verdict_of(bare, "room").limit is not None


def test_without_a_detector_the_closet_holds_it_up():
    assert verdict_of(solved(), "room").to_sign
    assert level("room", leak_detector="none", leak_airflow_cfm=None) == "hold"
    assert level("detector", leak_detector="unknown") == "hold"


def test_a_label_that_nobody_read_is_a_hold():
    assert level("label-read") == "look"
    assert level("label-read", label_room_ft2_lb=None) == "hold"
    assert level("label-read", label_room_ft2_lb=None, charge_total_lb=3.0) == "look"


def test_the_labels_airflow_at_its_limit():
    need = solved().values["leak_label_cfm"].value
    assert level("label-air", leak_airflow_cfm=need + 7) == "look"
    assert level("label-air", leak_airflow_cfm=need - 1) == "hold"
    assert level("label-air", leak_airflow_cfm=None) == "hold"


def test_openings_count_only_where_the_manual_says_how_large():
    alone = solved()
    assert alone.values["leak_counted_ft2"].value == 4.6
    assert verdict_of(alone, "openings").to_sign        # alone is what is sure
    unread = verdict_of(solved(closet_floor_ft2=8.5), "openings")
    assert unread.level == "look"
    assert not unread.to_sign
    joined = solved(louver_need_in2=110, closet_floor_ft2=8.5)
    assert joined.values["leak_counted_ft2"].value == 104.5
    for short in ({"louver_edge_in": 5}, {"louver_foot_in2": 50}, {"louver_high_in2": 50},
                  {"closet_floor_ft2": 6.5}, {"closet_openings": "middle"}):
        answer = solved(**{"louver_need_in2": 110, "closet_floor_ft2": 8.5, **short})
        assert answer.values["leak_counted_ft2"].value < 100, short


def test_a_small_home_cannot_spread_a_large_charge():
    need = solved().values["leak_served_ft2"].value
    assert level("home", floor_area_ft2=(need * 1.05, "data sheet")) == "look"
    assert level("home", floor_area_ft2=(max(need * 0.9, 200), "data sheet"),
                 charge_total_lb=20) == "hold"


def test_half_of_the_flammable_limit_is_where_the_blower_rule_ends():
    served = solved().values["leak_served_ft2"].value
    mixed = solved(floor_area_ft2=(1000.0, "data sheet")).values["leak_mixed_pct"].value
    assert mixed == pytest.approx(50 * served / 1000)


def test_a_flame_in_the_same_space_is_a_hold():
    assert level("flame", flame_near=True) == "hold"


def test_an_old_refrigerant_is_named_as_not_flammable():
    answer = solved(refrigerant="R-410A")
    assert answer.ok
    assert "not flammable" in verdict_of(answer, "not-flammable").text
    assert "leak_room_ft2" not in answer.values


def test_swapped_louver_areas_are_refused_and_named():
    answer = solved(louver_foot_in2=140, louver_low_in2=120)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "louver_low_in2"
    assert "swapped" in answer.errors[0]["message"]


def test_the_range_follows_the_charge():
    rough = solved(charge_total_lb=(8.25, "estimated")).values["leak_room_ft2"]
    read = solved(charge_total_lb=(8.25, "data sheet")).values["leak_room_ft2"]
    assert rough.high - rough.low > 3 * (read.high - read.low)
