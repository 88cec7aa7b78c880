"""The supply side: what a technician could argue with."""

import pytest

from downflow.demo import demo_job
from downflow.testing import solve_demo, verdict_of


def supply(*, ranged=False, **facts):
    return solve_demo("supply-side", ranged=ranged, **facts)


def rows(name):
    return [dict(r) for r in demo_job().entry(name).value]


def test_without_a_crossover_the_far_rooms_are_a_hold():
    answer = supply(crossover_planned_count=0.0)
    assert verdict_of(answer, "rooms-in-share").level == "hold"
    flows = {r["register"]: r["set_cfm"] for r in answer.tables["register_flows"]}
    assert flows["7"] == 0


def test_with_the_chosen_one_every_room_is_within_tolerance_or_the_damper_is_named():
    answer = supply()
    assert all(r["within"] for r in answer.tables["room_flows"])
    assert verdict_of(answer, "rooms-in-share").level != "hold"
    set_ = [r for r in answer.tables["register_flows"] if r["damper"] != "open"]
    assert set_, "the demo needs dampers"


def test_what_goes_in_comes_out_or_leaks():
    values = supply().values
    assert values["supply_airflow_cfm"].value == pytest.approx(
        values["supply_delivered_cfm"].value + values["supply_leak_cfm"].value, rel=1e-6)


def test_the_fan_makes_what_the_parts_lose():
    values = supply().values
    parts = sum(values[f"drop_{n}_inwc"].value
                for n in ("closet", "filter", "coil", "kit", "box", "supply"))
    assert values["supply_external_inwc"].value == pytest.approx(parts, rel=1e-6)


def test_shares_add_up_to_the_delivered_air():
    answer = supply()
    targets = sum(r["target_cfm"] for r in answer.tables["room_flows"])
    assert targets == pytest.approx(answer.values["supply_delivered_cfm"].value, rel=1e-9)


def test_a_smaller_crossover_starves_far_rooms():
    answer = supply(crossover_planned_in=8.0, crossover_planned_count=1.0)
    assert verdict_of(answer, "rooms-in-share").level == "hold"


def test_a_weak_fan_does_not_reach_the_target():
    answer = supply(fan_static_limit_inwc=0.1)
    assert verdict_of(answer, "total-in-share").level == "hold"
    assert verdict_of(answer, "fan-in-its-table").level == "hold"


@pytest.mark.parametrize(("rated", "level"), [(0.25, "fine"), (0.23, "hold")])
def test_static_is_judged_in_the_air_of_the_plate(rated, level):
    answer = supply(static_rated_inwc=(rated, "data sheet"))
    assert verdict_of(answer, "within-rated-static").level == level


def test_far_registers_are_cooler_than_near_ones():
    air = {r["register"]: r["air_f"] for r in supply().tables["register_flows"]}
    assert air["3"] > air["1"]
    assert air["9"] > air["7"]


def test_more_leaks_less_delivered():
    tight, leaky = supply(leakage_cfm25=0.0), supply(leakage_cfm25=200.0)
    assert leaky.values["supply_delivered_cfm"].value < \
        tight.values["supply_delivered_cfm"].value - 100


def test_a_flat_trunk_is_a_look():
    trunks = rows("trunks")
    trunks[0] = {**trunks[0], "width_in": 22.0}
    assert verdict_of(supply(trunks=trunks), "trunk-shape").level == "look"


def test_a_fixed_speed_fan_moves_less_against_more():
    table = [{"static_inwc": 0.1, "airflow_cfm": 1200.0},
             {"static_inwc": 0.3, "airflow_cfm": 1000.0},
             {"static_inwc": 0.5, "airflow_cfm": 750.0}]
    open_ = supply(fan_kind="speed", fan_table=table)
    choked = supply(fan_kind="speed", fan_table=table, filter_planned="thin")
    assert choked.values["supply_airflow_cfm"].value < open_.values["supply_airflow_cfm"].value


@pytest.mark.parametrize(("table", "index", "change", "field"), [
    ("registers", 0, {"trunk": "Z"}, "registers[0].trunk"),
    ("registers", 2, {"at_ft": 80.0}, "registers[2].at_ft"),
    ("registers", 3, {"room": "attic"}, "registers[3].room"),
    ("trunks", 1, {"feed_ft": 60.0}, "trunks[1].feed_ft"),
    ("trunks", 1, {"under_box": True}, "trunks[0].under_box"),
])
def test_parts_that_do_not_belong_together_are_named_by_their_cell(table, index, change, field):
    changed = rows(table)
    changed[index] = {**changed[index], **change}
    answer = supply(**{table: changed})
    assert answer.ok is False
    assert field in [e["field"] for e in answer.errors]


def test_the_range_is_felt_out_without_setting_dampers_anew():
    value = supply(ranged=True).values["supply_worst_room_pct"]
    assert value.low < value.value < value.high


def test_a_closet_that_lets_no_air_in_is_refused():
    answer = supply(louver_face_in2=0.0)
    assert answer.ok is False
    assert "louver_face_in2" in [e["field"] for e in answer.errors]
