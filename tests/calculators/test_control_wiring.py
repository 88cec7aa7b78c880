"""Control wiring."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("control-wiring", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_a_heat_pump_with_a_two_stage_kit_needs_seven():
    # R, C, G, Y, O/B, W1, W2
    assert solved().values["control_needed"].value == 7


def test_an_old_five_conductor_cable_is_short():
    assert level("thermostat-cable", cable_conductors=7) == "fine"
    assert level("thermostat-cable", cable_conductors=6) == "hold"


def test_it_says_what_to_do_when_no_cable_can_be_pulled():
    verdict = verdict_of(solved(cable_conductors=5, cable_new=False), "thermostat-cable")
    assert "data link" in verdict.do
    assert "bare ground" in verdict.do


def test_a_data_link_needs_only_its_own():
    answer = solved(control_kind="link", data_link_conductors=4)
    assert answer.values["control_needed"].value == 4
    assert len(answer.tables["control_table"]) == 4


def test_a_link_without_its_count_is_refused():
    answer = solved(control_kind="link")
    assert answer.ok is False
    assert answer.errors[0]["field"] == "data_link_conductors"


def test_every_stage_and_sensor_takes_its_own():
    more = solved(compressor_stages=2, sensor_outdoor_wired=True, sensor_leak_wired=True)
    assert more.values["control_needed"].value == 7 + 1 + 2 + 1


def test_the_wiring_table_lands_each_conductor():
    rows = solved().tables["control_table"]
    assert [r["terminal"] for r in rows] == ["R", "C", "G", "Y", "O/B", "W1", "W2", "D"]
    assert all(r["air_handler"] == r["terminal"] for r in rows)


def loads(total):
    return [{"id": "all", "va": total, "outdoors": False}]


@pytest.mark.parametrize(("total", "expected"), [(40, "look"), (50, "look"), (61, "hold")])
def test_the_transformer_carries_its_loads(total, expected):
    assert level("transformer", control_loads=(loads(total), "measured")) == expected


def test_four_fifths_of_the_transformer_is_where_it_asks_for_more():
    inside = verdict_of(solved(control_loads=(loads(47.9), "measured")), "transformer")
    beyond = verdict_of(solved(control_loads=(loads(48.5), "measured")), "transformer")
    assert "carries its loads" in inside.text
    assert "{limit}" in beyond.text


def test_more_than_class_two_is_a_hold():
    assert level("class-2", transformer_va=100, control_fuse_a=4) == "look"
    assert level("class-2", transformer_va=120, control_fuse_a=4) == "hold"


def test_a_large_fuse_lets_the_transformer_burn():
    assert level("fuse", control_fuse_a=3) == "look"
    assert level("fuse", control_fuse_a=5) == "hold"


def test_thin_and_long_starves_the_outdoor_board():
    assert level("far-end", cable_awg="22", cable_ft=300, control_volts=23) == "look"
    assert level("far-end") == "fine"


@pytest.mark.parametrize(("place", "expected"), [
    ("power", "fine"), ("board", "fine"), ("cooling", "look"), ("none", "hold")])
def test_the_float_switch_is_wired(place, expected):
    assert level("float-wire", float_wired=place) == expected
