"""Line set and charge."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("line-set", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_a_longer_run_gets_the_makers_rate():
    answer = solved(charge_factory_lb=8.375, lineset_ft=43, lineset_included_ft=25,
                    charge_rate_oz_ft=0.6)
    assert answer.values["charge_change_oz"].value == pytest.approx(10.8)
    assert answer.values["charge_total_lb"].value == pytest.approx(9.05)


def test_a_shorter_run_gives_charge_back():
    assert solved(lineset_ft=15).values["charge_change_oz"].value < 0


def test_what_is_written_on_the_unit_wins():
    answer = solve_demo("flammable-charge", charge_total_lb=9.0)
    assert answer.ok


@pytest.mark.parametrize(("feet", "expected"), [(99, "fine"), (101, "hold")])
def test_the_manuals_length_is_the_limit(feet, expected):
    assert level("length", lineset_ft=feet) == expected


def test_a_line_may_be_too_short():
    assert level("not-too-short", lineset_ft=6) == "look"
    assert all(v.id != "not-too-short" for v in solved(lineset_least_ft=None).verdicts)


def test_height_counts_either_way():
    assert level("height", lineset_rise_ft=-51) == "hold"
    assert level("height", lineset_rise_ft=-45) == "fine"


@pytest.mark.parametrize(("drier", "expected"), [
    ("both", "fine"), ("one", "hold"), ("none", "look"), ("missing", "look")])
def test_the_drier_works_both_ways(drier, expected):
    assert level("drier", drier=drier) == expected


@pytest.mark.parametrize(("lines", "expected"), [
    ("new", "fine"), ("allowed", "look"), ("old", "hold")])
def test_old_lines_need_the_makers_word(lines, expected):
    assert level("lines", lineset_used=lines) == expected


def test_ports_get_locking_caps():
    assert level("caps", caps_locked=False) == "look"


def test_no_line_is_cut_before_the_old_refrigerant_is_weighed():
    old = {"old_refrigerant": "R-22"}
    assert level("recovered", old_recovered="in", **old) == "hold"
    assert level("recovered", old_recovered="gone", **old) == "hold"
    assert level("recovered", old_recovered="none", **old) == "hold"
    assert level("recovered", old_recovered="weighed", **old) == "look"


def test_a_recovery_tank_is_not_filled_to_the_top():
    answer = solved(old_refrigerant="R-22", old_recovered="weighed", tank_water_lb=47.7)
    assert 30 < answer.values["tank_limit_lb"].value < 47.7


def test_a_flammable_refrigerant_goes_only_into_equipment_made_for_it():
    assert level("made-for-it") == "look"
    assert all(v.id != "made-for-it" for v in solved(refrigerant="R-410A").verdicts)


def test_a_missing_plate_is_named():
    answer = solved(charge_factory_lb=None)
    assert answer.ok is None
    assert "charge_factory_lb" in answer.missing
