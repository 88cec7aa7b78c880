"""Pressure and temperature of refrigerants."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("refrigerant-pt", **changed)


def value(name, **changed):
    return solved(**changed).values[name].value


def test_r410a_at_forty_degrees_is_the_number_everybody_knows():
    assert value("pt_bubble_psig", refrigerant="R-410A", elevation_ft=0, pt_f=40) == pytest.approx(
        118.8, abs=0.2)


def test_a_gauge_reads_more_up_high():
    low = value("pt_dew_psig", elevation_ft=0)
    high = value("pt_dew_psig", elevation_ft=5000)
    assert high - low == pytest.approx(2.47, abs=0.02)


def test_both_fields_are_one_table():
    answer = solved(refrigerant="R-32", pt_f=100)
    back = value("pt_dew_f", refrigerant="R-32",
                 pt_psig=answer.values["pt_dew_psig"].value)
    assert back == pytest.approx(100, abs=0.01)


def test_a_blend_has_two_numbers_and_a_pure_one_has_one():
    blend = solved(refrigerant="R-454B")
    assert blend.values["pt_dew_f"].value - blend.values["pt_bubble_f"].value > 2
    assert "two numbers" in verdict_of(blend, "two-curves").text
    assert "One number" in verdict_of(solved(refrigerant="R-22"), "two-curves").text


def test_the_printed_table_covers_the_range_in_tens():
    rows = solved().tables["pt_table"]
    assert [r["temp_f"] for r in rows] == list(range(-40, 151, 10))
    assert all(r["dew_psig"] <= r["bubble_psig"] for r in rows)


def test_the_blends_range_is_wider_than_a_pure_fluids():
    def width(name):
        v = solved(refrigerant=name).values["pt_dew_f"]
        return v.high - v.low

    assert width("R-454B") > 1.5 * width("R-410A")


def test_kilopascals_are_caught_and_named():
    answer = solved(refrigerant="R-22", pt_psig=1200)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "pt_psig"
    assert "kPa" in answer.errors[0]["message"]


@pytest.mark.parametrize("temp_f", [-40, 150])
def test_the_ends_of_the_table_answer(temp_f):
    assert solved(pt_f=temp_f).ok
