"""Superheat and subcooling from readings."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("superheat-subcooling", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_the_demo_charge_is_right():
    assert {v.level for v in solved().verdicts} == {"fine"}


def test_the_published_reading():
    answer = solved(refrigerant="R-410A", elevation_ft=0, liquid_psig=355, liquid_line_f=95)
    assert answer.values["subcooling_f"].value == pytest.approx(13.0, abs=0.5)


def test_ten_degrees_of_superheat():
    answer = solved(refrigerant="R-410A", elevation_ft=0, suction_psig=130, suction_line_f=55,
                    liquid_psig=365, liquid_line_f=100)
    assert answer.values["superheat_f"].value == pytest.approx(10.0, abs=0.1)
    assert answer.values["subcooling_f"].value == pytest.approx(9.7, abs=0.1)


def test_superheat_goes_by_dew_and_subcooling_by_bubble():
    answer = solved(suction_psig=116, liquid_psig=252)
    from downflow import tables
    from downflow.physics import moist_air, refrigerant

    air = moist_air.atmosphere_psia(6200)
    rows = tables.rows("refrigerant_r454b")
    assert answer.values["suction_dew_f"].value == pytest.approx(
        refrigerant.saturation_f(116 + air, rows, dew=True))
    assert answer.values["liquid_bubble_f"].value == pytest.approx(
        refrigerant.saturation_f(252 + air, rows))


def test_liquid_coming_back_is_a_hold():
    assert level("dry-suction", suction_line_f=40) == "hold"
    assert level("dry-suction", suction_line_f=43.2) == "hold"  # within what a clamp errs
    assert level("dry-suction") == "fine"


def test_too_cold_outside_rests_on_the_weighed_amount():
    assert level("warm-enough", charge_outdoor_f=58) == "fine"
    cold = verdict_of(solved(charge_outdoor_f=50), "warm-enough")
    assert cold.level == "look"
    assert "weighed" in cold.text


def test_fifteen_minutes_come_before_a_reading():
    assert level("settled", charge_minutes=15) == "fine"
    assert level("settled", charge_minutes=14) == "look"


def test_low_subcooling_and_high_superheat_is_too_little_charge():
    answer = solved(liquid_line_f=84.5, suction_line_f=66)
    assert "Too little charge" in verdict_of(answer, "subcooling").do


def test_high_subcooling_and_high_superheat_is_a_restriction():
    answer = solved(liquid_line_f=68, suction_line_f=66)
    assert "restriction" in verdict_of(answer, "subcooling").do


def test_without_a_plate_it_asks_for_the_plate():
    verdict = verdict_of(solved(target_subcooling_f=None), "subcooling")
    assert verdict.level == "look"
    assert "plate" in verdict.do


def test_the_plates_own_superheat_wins():
    assert level("superheat", target_superheat_f=8) == "fine"
    assert level("superheat", target_superheat_f=20) == "look"


def test_kilopascals_are_caught_and_named():
    answer = solved(suction_psig=880, liquid_psig=1740)
    assert answer.ok is False
    assert {e["field"] for e in answer.errors} == {"suction_psig", "liquid_psig"}
    assert "kPa" in answer.errors[0]["message"]


def test_swapped_hoses_and_swapped_clamps_are_named():
    hoses = solved(suction_psig=252, liquid_psig=116)
    assert "hoses" in hoses.errors[0]["message"]
    clamps = solved(suction_line_f=8)
    assert clamps.errors[0]["field"] == "suction_line_f"


@pytest.mark.parametrize(("line", "level_"), [(49.0, "fine"), (45.0, "look"), (59.5, "look")])
def test_usual_superheat_has_two_ends(line, level_):
    # 116 psig is 42.6 °F dew at 6,200 ft: superheat of 6.4, 2.4 and 16.9 °F.
    assert level("superheat", ranged=False, suction_line_f=line) == level_
