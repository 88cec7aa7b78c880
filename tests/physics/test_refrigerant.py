"""Refrigerant tables against the library they were made from, and readings taken from them."""

import importlib.util
from itertools import pairwise
from pathlib import Path

import pytest
from CoolProp import CoolProp

from downflow import tables
from downflow.physics import refrigerant

PURE = {"refrigerant_r22": "R22", "refrigerant_r32": "R32", "refrigerant_r410a": "R410A"}
NAMES = (*PURE, "refrigerant_r454b")
PSI_PA = 6894.757293


def kelvin(temp_f):
    return (temp_f + 459.67) / 1.8


@pytest.mark.parametrize("name", PURE)
def test_every_row_and_between_is_within_half_a_percent_of_the_library(name):
    rows = tables.rows(name)
    for tenth in range(-400, 1500, 7):
        temp_f = tenth / 10
        for dew in (False, True):
            library = CoolProp.PropsSI("P", "T", kelvin(temp_f), "Q", int(dew), PURE[name])
            ours = refrigerant.saturation_psia(temp_f, rows, dew=dew)
            assert ours == pytest.approx(library / PSI_PA, rel=0.0005)


def test_the_blend_is_within_one_percent_of_the_library_wherever_it_converges():
    state = CoolProp.AbstractState("HEOS", "R32&R1234yf")
    state.set_mass_fractions([0.689, 0.311])
    rows, tried = tables.rows("refrigerant_r454b"), 0
    for temp_f in range(-40, 131, 5):
        for dew in (False, True):
            state.update(CoolProp.QT_INPUTS, float(dew), kelvin(temp_f))
            ours = refrigerant.saturation_psia(temp_f, rows, dew=dew)
            assert ours == pytest.approx(state.p() / PSI_PA, rel=0.001)
            tried += 1
    assert tried == 70


@pytest.mark.parametrize("name", NAMES)
def test_tables_cover_the_range_in_whole_degrees_and_rise(name):
    rows = tables.rows(name)
    assert [r.temp_f for r in rows] == list(range(-40, 151))
    for low, high in pairwise(rows):
        assert high.bubble_psia > low.bubble_psia
        assert high.dew_psia > low.dew_psia
        assert high.liquid_lb_ft3 < low.liquid_lb_ft3
    assert all(r.dew_psia <= r.bubble_psia + 1e-9 for r in rows)


@pytest.mark.parametrize("name", NAMES)
def test_steps_between_rows_are_smooth(name):
    rows = tables.rows(name)
    for before, here, after in zip(rows, rows[1:], rows[2:], strict=False):
        middle = (before.bubble_psia * after.bubble_psia) ** 0.5
        assert here.bubble_psia == pytest.approx(middle, rel=3e-4)


def test_the_table_file_is_what_the_script_makes():
    path = Path(__file__).parents[1] / "reference" / "make_refrigerant_tables.py"
    spec = importlib.util.spec_from_file_location("make_refrigerant_tables", path)
    script = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(script)
    for name, (file, _, _) in script.FLUIDS.items():
        shipped = (script.DATA / file).read_text(encoding="utf-8").splitlines()
        made = script.text(name).splitlines()
        assert len(shipped) == len(made)
        for ours, theirs in zip(shipped[5:], made[5:], strict=True):
            assert ([float(v) for v in ours.split(",")]
                    == pytest.approx([float(v) for v in theirs.split(",")], rel=1e-4))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("dew", [False, True])
def test_pressure_and_temperature_go_there_and_back(name, dew):
    rows = tables.rows(name)
    for temp_f in (-40, -12.3, 0, 44.5, 97.6, 150):
        pressure = refrigerant.saturation_psia(temp_f, rows, dew=dew)
        assert refrigerant.saturation_f(pressure, rows, dew=dew) == pytest.approx(temp_f, abs=1e-6)


def test_the_worked_readings():
    rows = tables.rows("refrigerant_r410a")
    dew = refrigerant.saturation_f(refrigerant.absolute_psia(130, 14.6959), rows, dew=True)
    assert refrigerant.superheat_f(55, dew) == pytest.approx(10.0, abs=0.1)
    bubble = refrigerant.saturation_f(refrigerant.absolute_psia(365, 14.6959), rows)
    assert refrigerant.subcooling_f(bubble, 100) == pytest.approx(9.7, abs=0.1)


def test_the_wrong_curve_of_a_blend_costs_nearly_three_degrees():
    rows = tables.rows("refrigerant_r454b")
    pressure = refrigerant.absolute_psia(118, 14.6959)
    dew = refrigerant.saturation_f(pressure, rows, dew=True)
    bubble = refrigerant.saturation_f(pressure, rows)
    assert dew - bubble == pytest.approx(2.7, abs=0.2)


def test_a_gauge_reads_more_on_a_mountain():
    rows = tables.rows("refrigerant_r410a")
    sat = refrigerant.saturation_psia(40, rows)
    assert refrigerant.gauge_psig(sat, 12.228) == pytest.approx(121.3, abs=0.1)
    assert refrigerant.gauge_psig(sat, 14.6959) == pytest.approx(118.8, abs=0.1)


def test_beyond_the_table_is_refused_with_its_limits():
    rows = tables.rows("refrigerant_r22")
    with pytest.raises(ValueError, match="-40"):
        refrigerant.saturation_psia(-41, rows)
    with pytest.raises(ValueError, match="outside the table"):
        refrigerant.saturation_f(2000, rows)
    with pytest.raises(ValueError, match="outside the table"):
        refrigerant.liquid_lb_ft3(151, rows)


def test_no_gauge_reads_below_a_vacuum():
    with pytest.raises(ValueError, match="below a vacuum"):
        refrigerant.absolute_psia(-15, 14.6959)
    assert refrigerant.vacuum_inhg(-14.6959) == pytest.approx(29.92, abs=0.01)
