"""Where the outdoor unit stands."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("outdoor-site", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_the_demo_site_lets_water_run_to_the_entry_walk():
    verdict = verdict_of(solved(), "melt-path")
    assert verdict.level == "hold"
    assert "{ice}" in verdict.text


@pytest.mark.parametrize(("way", "walk", "expected"), [
    ("gravel", 3, "fine"), ("yard", 40, "fine"), ("yard", 6, "look"), ("home", 40, "hold"),
    ("walk", 40, "hold")])
def test_where_the_water_runs(way, walk, expected):
    assert level("melt-path", melt_way=way, walk_ft=walk) == expected


def test_three_inches_above_ground_is_the_least():
    assert level("above-ground", unit_base_in=3.6, snow_in=(0, "data sheet")) == "fine"
    assert level("above-ground", unit_base_in=2.9, snow_in=(0, "data sheet")) == "hold"


def test_the_stand_goes_with_the_snow():
    assert solved(snow_in=(20, "data sheet")).values["base_height_in"].value == 23
    assert level("above-snow", snow_in=(20, "data sheet"), unit_base_in=30) == "fine"
    assert level("above-snow", snow_in=(20, "data sheet"), unit_base_in=22) == "look"


def test_one_tight_side_is_a_hold_and_is_named():
    sides = [{"id": "back", "need_in": 12, "have_in": 8},
             {"id": "above", "need_in": 60, "have_in": 120}]
    verdict = verdict_of(solved(site_clearances=sides), "clearances")
    assert verdict.level == "hold"
    assert verdict.values["sides"] == "back"


def test_doubling_the_distance_takes_six_decibels():
    near = solved(neighbor_ft=50).values["neighbor_dba"].value
    far = solved(neighbor_ft=100).values["neighbor_dba"].value
    assert near - far == pytest.approx(6.02, abs=0.01)


def test_a_corner_is_louder_than_open_ground():
    corner = solved(sound_walls="corner").values["window_dba"].value
    assert corner - solved(sound_walls="open").values["window_dba"].value == pytest.approx(
        6.02, abs=0.01)


def test_the_quiet_distance_is_where_the_neighbour_is_left_in_peace():
    feet = solved().values["quiet_distance_ft"].value
    assert solved(neighbor_ft=feet).values["neighbor_dba"].value == pytest.approx(45, abs=0.01)
    assert level("neighbour", neighbor_ft=2 * feet) == "fine"
    assert level("neighbour", neighbor_ft=0.9 * feet) == "look"


def test_more_water_more_ice():
    assert (solved(frost_run_pct=100).values["melt_ice_in"].value
            > solved(frost_run_pct=40).values["melt_ice_in"].value)


def test_a_roof_edge_is_looked_at():
    assert level("roof", roof_drip=True) == "look"


def test_a_missing_reading_is_named():
    answer = solved(sound_power_dba=None)
    assert answer.ok is None
    assert answer.missing == ["sound_power_dba"]
