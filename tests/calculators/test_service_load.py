"""Service and panel."""

import pytest

from downflow.testing import solve_demo, verdict_of

APPLIANCES = [
    {"id": "range", "appliance": "range", "va": 10500, "leg": "both"},
    {"id": "dryer", "appliance": "dryer", "va": 5000, "leg": "both"},
    {"id": "dishwasher", "appliance": "dishwasher", "va": 1200, "leg": "A"},
]


def solved(**changed):
    return solve_demo("service-load", **changed)


def test_the_demo_panel_is_short_of_spaces_and_its_service_is_not():
    answer = solved()
    assert verdict_of(answer, "spaces").level == "hold"
    assert verdict_of(answer, "service-fits").level == "look"
    assert "of {limit} are taken" in verdict_of(answer, "service-fits").text


def test_nothing_here_ever_reads_fine():
    for changed in ({}, {"panel_spaces_free": 12}, {"main_breaker_a": 200}):
        assert all(v.level != "fine" for v in solved(**changed).verdicts)


def test_four_spaces_are_enough_and_three_are_not():
    # one kit circuit and the outdoor unit take four; the furnace gives one back
    assert verdict_of(solved(panel_spaces_free=3), "spaces").level == "look"
    assert verdict_of(solved(panel_spaces_free=2), "spaces").level == "hold"


def test_a_cord_is_a_hold_whatever_the_sum_says():
    for cord in ("cord 40", "cord 50"):
        assert verdict_of(solved(supply_kind=cord, main_breaker_a=400), "supply").level == "hold"
    assert verdict_of(solved(), "supply").level == "look"


@pytest.mark.parametrize("line", ["failures", "fuses"])
def test_a_panel_with_a_history_goes_to_the_electrician_before_the_quote(line):
    verdict = verdict_of(solved(panel_line=line), "panel-line")
    assert verdict.level == "hold"
    assert "before you quote" in verdict.do


def test_the_service_just_inside_and_just_outside():
    exact = {"appliances": (APPLIANCES, "data sheet"), "floor_area_ft2": (1512, "data sheet")}
    load = solved(**exact).values["service_load_a"].value
    inside = solved(main_breaker_a=load + 1.0, **exact)
    outside = solved(main_breaker_a=load - 0.1, **exact)
    assert verdict_of(inside, "service-fits").level == "look"
    assert verdict_of(outside, "service-fits").level == "hold"


def test_doubt_at_a_safety_limit_is_a_hold():
    load = solved().values["service_load_a"].value
    guessed = solved(appliances=(APPLIANCES, "estimated"), main_breaker_a=load + 1.0)
    assert verdict_of(guessed, "service-fits").level == "hold"


def test_a_hundred_ampere_service_says_which_kit_fits():
    verdict = verdict_of(solved(main_breaker_a=100), "service-fits")
    assert verdict.level == "hold"
    assert "{kit}" in verdict.do or "No kit" in verdict.do


def test_compressor_and_kit_count_together_unless_controls_part_them():
    both = solved().values["service_load_a"].value
    apart = solved(controls_part_them=True).values["service_load_a"].value
    assert both - apart == pytest.approx(20, abs=0.01)
    assert solved().values["service_apart_a"].value == pytest.approx(apart)


def test_the_old_blower_and_cooling_come_out():
    before = solved(old_cooling_a=18).values["service_before_a"].value
    after = solved(old_cooling_a=18).values["service_load_a"].value
    assert before == pytest.approx(solved().values["service_before_a"].value + 18)
    assert after == pytest.approx(solved().values["service_load_a"].value)


def test_a_range_beyond_the_table_is_refused_by_name():
    giant = [{"id": "range", "appliance": "range", "va": 18000, "leg": "both"}]
    answer = solved(appliances=giant)
    assert answer.ok is False
    assert [e["field"] for e in answer.errors] == ["appliances"]


def test_the_record_of_a_year_is_one_more_road():
    answer = solved(demand_record_a=60)
    assert answer.values["record_load_a"].value == pytest.approx(
        75 + (4800 + 8000 + 1080) / 240)
    assert verdict_of(solved(demand_record_a=80), "recorded").level == "look"


def test_a_generator_runs_the_blower_long_before_the_heat_pump():
    small = verdict_of(solved(generator_kva=3), "generator")
    assert small.level == "look"
    assert "not the heat pump" in small.text
    started = solved(generator_kva=12, compressor_lra_a=90)
    assert started.values["generator_start_kva"].value == pytest.approx(21.6)


def test_legs_differ_by_what_hangs_on_one_of_them():
    answer = solved()
    a, b = answer.values["feeder_leg_a"].value, answer.values["feeder_leg_b"].value
    assert a - b == pytest.approx(1200 / 120)
