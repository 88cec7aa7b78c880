"""What the ducts deliver, by both roads: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def roads(*, ranged=False, **facts):
    return solve_demo("delivery-two-roads", ranged=ranged, **facts)


def test_the_two_together_lie_between_them():
    answer = roads()
    test = solve_demo("duct-leakage", ranged=False).values["delivery_sealed_pct"].value
    assert 83 < answer.values["delivery_roads_pct"].value < test
    assert answer.values["delivery_roads_apart_pct"].value == pytest.approx(83 - test)


def test_a_measured_share_weighs_more_than_the_studys():
    study = roads().values["delivery_roads_pct"].value
    read = roads(delivery_efficiency_pct=(83.0, "measured")).values["delivery_roads_pct"].value
    assert read < study


@pytest.mark.parametrize(("share", "level"), [(82.0, "fine"), (81.0, "look")])
def test_roads_that_part_are_a_look(share, level):
    # Twice the doubt of a measured share and of the test is 7.8 parts of a hundred.
    answer = roads(delivery_efficiency_pct=(share, "measured"))
    assert verdict_of(answer, "roads-agree").level == level


@pytest.mark.parametrize(("share", "level"), [(72.0, "fine"), (70.0, "look")])
def test_ducts_as_found_are_compared_too(share, level):
    answer = roads(delivery_before_pct=(share, "estimated"))
    assert verdict_of(answer, "found-agree").level == level


def test_what_to_enter_stands_in_the_advice():
    verdict = verdict_of(roads(), "found-agree")
    assert 69 < verdict.values["both"].value < 85


def test_ducts_that_are_not_sealed_are_compared_as_found():
    answer = roads(duct_state="as found")
    found = solve_demo("duct-leakage", ranged=False,
                       duct_state="as found").values["delivery_found_pct"].value
    assert answer.values["delivery_roads_apart_pct"].value == pytest.approx(69 - found)
    assert all(v.id != "found-agree" for v in answer.verdicts)


def test_without_a_duct_test_there_is_no_second_road():
    answer = roads(leakage_cfm25=None)
    assert answer.ok is None
    assert "leakage_cfm25" in answer.missing


def test_leakages_that_are_swapped_are_refused_by_the_road_that_reads_them():
    answer = roads(leakage_cfm25=300.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "leakage_cfm25"


def test_its_range_comes_from_both_roads():
    value = roads(ranged=True).values["delivery_roads_pct"]
    assert 2 < value.high - value.low < 12
