"""Circuit of the kit: what an electrician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

BARE = {"kit_label_mca_a": None, "kit_label_breaker_a": None, "kit_breaker_planned_a": None,
        "kit_wire_planned": None, "kit_rated_v": (240.0, "data sheet"),
        "indoor_blower_a": (5.0, "data sheet"), "kit_route_f": (80.0, "data sheet")}


def kit(ranged=False, **facts):
    return solve_demo("kit-circuit", ranged=ranged, **{**BARE, **facts})


def value(name, **facts):
    return kit(**facts).values[name].value


@pytest.mark.parametrize(("blower", "breaker"), [(0.5, 45), (3.0, 50), (6.6, 50), (6.7, 60)])
def test_an_8_kw_kit_lands_on_50_or_60_by_its_blower(blower, breaker):
    assert value("kit_breaker_a", indoor_blower_a=(blower, "data sheet")) == breaker


def test_the_label_counts_where_it_asks_for_more():
    assert value("kit_least_ampacity_a", kit_label_mca_a=(52.0, "data sheet")) == 52.0
    assert value("kit_breaker_a", kit_label_mca_a=(52.0, "data sheet")) == 60
    assert value("kit_least_ampacity_a", kit_label_mca_a=(30.0, "data sheet")) == pytest.approx(
        47.92, abs=0.01)


def test_nothing_electrical_is_ever_better_than_look():
    for verdict in kit(ranged=True).verdicts:
        assert verdict.level in ("look", "hold")
        assert verdict.signs == "licensed electrician"


@pytest.mark.parametrize(("planned", "level"), [(50.0, "look"), (45.0, "hold")])
def test_a_breaker_smaller_than_the_continuous_load_is_a_hold(planned, level):
    answer = kit(kit_breaker_planned_a=(planned, "data sheet"))
    assert verdict_of(answer, "breaker-carries").level == level


@pytest.mark.parametrize(("label", "level"), [(60.0, "look"), (50.0, "hold")])
def test_a_breaker_above_the_labels_largest_is_a_hold(label, level):
    answer = kit(kit_label_mca_a=(48.0, "data sheet"), kit_label_breaker_a=(label, "data sheet"),
                 kit_breaker_planned_a=(60.0, "data sheet"))
    assert verdict_of(answer, "label-first").level == level


def test_an_unread_label_is_asked_for():
    assert verdict_of(kit(), "label-first").level == "look"
    assert "not been read" in verdict_of(kit(), "label-first").text


def test_a_60_on_an_8_kw_kit_asks_whether_the_label_says_so():
    answer = kit(kit_breaker_planned_a=(60.0, "data sheet"))    # 150 % of 38.33 A is 57.5 A
    verdict = verdict_of(answer, "single-appliance")
    assert verdict.level == "look"
    assert "on the label" in verdict.text
    printed = kit(kit_breaker_planned_a=(60.0, "data sheet"),
                  kit_label_mca_a=(48.0, "data sheet"), kit_label_breaker_a=(60.0, "data sheet"))
    assert "single-appliance" not in [v.id for v in printed.verdicts]


def test_through_a_hot_roof_8_awg_is_too_thin_and_6_awg_is_enough():
    hot = {"kit_route_f": (118.0, "data sheet"), "kit_breaker_planned_a": (50.0, "data sheet")}
    assert verdict_of(kit(kit_wire_planned=("8", "data sheet"), **hot), "wire-carries").level == \
        "hold"
    assert verdict_of(kit(kit_wire_planned=("6", "data sheet"), **hot), "wire-carries").level == \
        "look"


def test_sheathed_cable_is_held_to_60_degrees_and_single_wires_may_use_75():
    sheathed = value("kit_wire_awg", kit_terminals=("75", "measured"))
    single = value("kit_wire_awg", kit_terminals=("75", "measured"),
                   kit_cable=("thhn", "measured"))
    assert sheathed == 6
    assert single == 8


def test_many_cables_together_need_thicker_wire():
    together = value("kit_wire_ampacity_a", kit_wires_together=(8.0, "measured"),
                     kit_wire_planned=("6", "data sheet"))
    alone = value("kit_wire_ampacity_a", kit_wires_together=(2.0, "measured"),
                  kit_wire_planned=("6", "data sheet"))
    assert together < alone


def test_a_20_kw_kit_on_one_circuit_is_a_hold_and_on_two_it_is_not():
    sizes = [{"kit_kw": 20.0, "stages": 2.0, "least_scfm": 700.0}]
    big = {"kit_sizes": (sizes, "data sheet"), "kit_planned_kw": (20.0, "data sheet")}
    assert verdict_of(kit(**big), "one-bank").level == "hold"
    assert verdict_of(kit(kit_circuits=(2.0, "data sheet"), **big), "one-bank").level == "look"


@pytest.mark.parametrize(("feet", "text"), [(190.0, "below"), (210.0, "above")])
def test_three_percent_drop_is_the_advice(feet, text):
    answer = kit(kit_wire_ft=(feet, "data sheet"), kit_wire_planned=("6", "data sheet"),
                 supply_v=(240.0, "data sheet"))
    assert text in verdict_of(answer, "drop").text


def test_without_a_length_there_is_no_drop():
    assert "kit_drop_pct" not in kit(kit_wire_ft=None).values


def test_the_ground_goes_by_the_breaker_and_grows_with_larger_hots():
    assert value("kit_ground_awg", kit_breaker_planned_a=(50.0, "data sheet")) == 10
    assert value("kit_ground_awg", kit_breaker_planned_a=(50.0, "data sheet"),
                 kit_wire_planned=("2", "data sheet")) < 10


def test_a_route_hotter_than_any_table_is_refused():
    answer = kit(kit_route_f=(140.0, "data sheet"))
    assert answer.ok
    hotter = solve_demo("kit-circuit", kit_route_f=(139.9, "measured"))
    assert hotter.ok is not None


def test_a_clamp_reads_less_at_low_voltage():
    assert value("kit_amps_here_a", supply_v=(208.0, "data sheet")) == pytest.approx(
        8000 / 240 * 208 / 240)
