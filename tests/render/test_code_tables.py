"""Tables of the handbook that are worked out by the calculators' own code."""

import pytest

from downflow.render import code_tables, reference_tables
from downflow.testing import solve_demo

NAMES = ("pressure-temperature", "pressure-temperature-5000-ft", "trap-depths",
         "breaker-and-wire", "outdoor-breaker-and-wire", "friction-per-100-ft",
         "transfer-areas", "nitrogen-by-temperature", "water-in-vacuum", "sound-by-distance",
         "ventilation-rates", "control-cable")


@pytest.mark.parametrize("name", NAMES)
def test_each_table_is_whole_and_names_its_source(name):
    assert name in reference_tables.table_names()
    html = str(reference_tables.table_html(name))
    assert "<caption" in html
    made = reference_tables._MAKERS[name]()
    assert made.source
    assert made.rows
    assert {len(row) for row in made.rows} == {len(made.heads)}


def test_pressure_table_and_calculator_agree():
    for elevation, table in ((0, code_tables._pressure(0)), (5000, code_tables._pressure(5000))):
        row = next(r for r in table.rows if r[0] == 40)
        for column, (name, value) in enumerate((("R-454B", "pt_bubble_psig"),
                                                ("R-454B", "pt_dew_psig"),
                                                ("R-32", "pt_dew_psig"),
                                                ("R-410A", "pt_dew_psig"),
                                                ("R-22", "pt_dew_psig")), 1):
            answer = solve_demo("refrigerant-pt", ranged=False, refrigerant=name, pt_f=40,
                                elevation_ft=elevation)
            assert row[column] == round(answer.values[value].value)


@pytest.mark.parametrize("suction", [0.5, 1.2, 2.0])
def test_trap_table_and_calculator_agree(suction):
    row = next(r for r in code_tables._traps().rows if float(r[0]) == suction)
    answer = solve_demo("condensate-trap", ranged=False, pan_suction_inwc=suction,
                        pan_suction_read_inwc=None, fitting_face_in=0.6)
    assert float(row[1]) == pytest.approx(answer.values["trap_head_in"].value, abs=0.005)
    assert float(row[2]) == pytest.approx(answer.values["trap_seal_in"].value, abs=0.005)
    assert float(row[3]) == pytest.approx(answer.values["trap_total_in"].value, abs=0.005)


def test_outdoor_table_and_calculator_agree():
    row = next(r for r in code_tables._outdoor().rows if r[0] == "16")
    answer = solve_demo("outdoor-circuit", ranged=False, compressor_rla_a=16.0, outdoor_fan_a=1.0)
    assert float(row[1]) == pytest.approx(answer.values["outdoor_mca_worked_a"].value)
    assert float(row[3]) == answer.values["outdoor_mocp_worked_a"].value


def test_an_eight_kilowatt_kit_lands_where_the_arithmetic_puts_it():
    row = next(r for r in code_tables._kits().rows if r[0] == "8")
    assert row[1:] == ["33.3", "47.9", "50", "6", "10"]


def test_a_table_that_is_none_stops():
    with pytest.raises(ValueError, match="no table is called"):
        reference_tables.table_html("no-such-table")
