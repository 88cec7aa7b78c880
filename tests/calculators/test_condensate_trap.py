"""The condensate trap and its drain."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("condensate-trap", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_the_demo_trap_is_right():
    assert {v.level for v in solved().verdicts} == {"fine"}


def test_a_weak_pull_still_gets_the_floor_of_the_trade():
    answer = solved(pan_suction_inwc=(0.3, "data sheet"), pan_suction_read_inwc=0.3)
    assert answer.values["trap_head_in"].value == 2.0


def test_the_formula_rules_above_one_inch_of_suction():
    answer = solved(pan_suction_inwc=(1.6, "data sheet"))
    assert answer.values["trap_head_in"].value == pytest.approx(2.6)


def test_fittings_that_one_can_buy_make_the_seal_deeper():
    bought = solved(fitting_face_in=1.28)
    assert bought.values["trap_seal_in"].value == pytest.approx(2 * 1.28 - 1.05 / 2)
    bent = solved(fitting_face_in=0.6)
    assert bent.values["trap_seal_in"].value == pytest.approx(1.0)


def test_cuts_and_fittings_add_up_to_the_drawing():
    answer = solved(fitting_face_in=1.28, fitting_socket_in=0.72)
    v = {n: a.value for n, a in answer.values.items()}
    up = v["trap_up_cut_in"] + 2 * (1.28 - 0.72)
    down = v["trap_down_cut_in"] + 2 * (1.28 - 0.72)
    assert down - up == pytest.approx(v["trap_head_in"])
    assert up == pytest.approx(v["trap_seal_in"] + 1.05 / 2)


def test_no_trap_and_an_empty_trap_are_holds():
    assert level("trap-place", trap_place="none") == "hold"
    assert level("trap-full", trap_state="dry") == "hold"
    assert level("trap-place", trap_place="crawl") == "look"
    assert level("trap-full", trap_state="planned") == "look"


def test_without_suction_nobody_is_told_to_build_this_trap():
    answer = solved(pan_suction_inwc=0, pan_suction_read_inwc=None)
    assert verdict_of(answer, "trap-place").level == "look"
    assert "own drawing" in verdict_of(answer, "trap-place").do or "unit's drawing" in \
        verdict_of(answer, "trap-place").do


def test_a_shallow_trap_is_a_hold_just_below_the_suction():
    strong = {"pan_suction_inwc": (1.0, "data sheet"), "pan_suction_read_inwc": None}
    assert level("trap-holds", trap_built_seal_in=0.7, **strong) == "fine"
    assert level("trap-holds", trap_built_seal_in=0.45, **strong) == "hold"
    assert level("trap-holds", trap_built_seal_in=0.55, **strong) == "hold"  # within a tape's error


def test_a_stronger_pull_at_start_up_asks_for_a_rebuild():
    answer = solved(pan_suction_read_inwc=1.4)
    assert verdict_of(answer, "suction-read").level == "look"
    assert "Rebuild" in verdict_of(answer, "suction-read").do
    assert answer.values["trap_head_in"].value == pytest.approx(2.4)


def test_a_reading_that_was_not_taken_is_asked_for():
    assert level("suction-read", pan_suction_read_inwc=None) == "look"


def test_an_eighth_of_an_inch_for_each_foot():
    need = solved().values["drain_need_in"].value
    assert need == pytest.approx(22 / 8)
    assert level("drain-falls", drain_drop_in=3.1) == "fine"
    assert level("drain-falls", drain_drop_in=2.7) == "hold"


@pytest.mark.parametrize(("end", "expected"), [
    ("beyond", "fine"), ("under", "hold"), ("walk", "hold"), ("sewer", "look"), ("pump", "look")])
def test_where_the_drain_ends(end, expected):
    assert level("drain-end", drain_end=end) == expected


def test_a_pipe_below_the_outlet_is_a_hold():
    assert level("drain-size", pan_outlet_size="1") == "hold"
    assert level("drain-size", pan_outlet_size="1", drain_pipe="1") == "fine"


def test_it_says_when_the_trap_does_not_fit_above_the_floor():
    assert level("trap-fits", pan_outlet_in=4.0) == "look"


@pytest.mark.parametrize(("changed", "expected"), [
    ({"float_place": "none"}, "hold"), ({"float_test": "failed"}, "hold"),
    ({"float_stops": "nothing"}, "hold"), ({"float_test": "due"}, "look"),
    ({"float_stops": "unknown"}, "look"), ({"float_stops": "cooling"}, "look"), ({}, "fine")])
def test_the_float_switch(changed, expected):
    assert level("float", **changed) == expected


def test_nothing_against_frost_is_a_look():
    assert level("drain-winter", drain_winter="nothing") == "look"
    assert level("drain-winter", drain_winter="nothing", drain_cold=False) == "fine"


def test_a_reading_in_pascals_is_refused_and_named():
    answer = solved(pan_suction_read_inwc=130)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "pan_suction_read_inwc"
    assert "pascals" in answer.errors[0]["message"]
