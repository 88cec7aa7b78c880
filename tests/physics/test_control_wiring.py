"""Control wiring."""

import pytest

from downflow import tables
from downflow.physics import control_wiring, outdoor_circuit


def test_a_forty_va_transformer_carries_one_and_two_thirds_amperes():
    assert control_wiring.secondary_amps(40, 24) == pytest.approx(1.667, abs=0.001)


def test_loads_add():
    assert control_wiring.load_va((6, 9, 3.5)) == pytest.approx(18.5)


def test_a_long_thin_cable_starves_its_load():
    near = control_wiring.end_volts(24, 0.5, 20, 7.77)
    far = control_wiring.end_volts(24, 0.5, 200, 7.77)
    thin = control_wiring.end_volts(24, 0.5, 200, 19.7)
    assert near > far > thin


def test_length_and_voltage_are_one_rule():
    feet = control_wiring.longest_ft(24, 20, 0.8, 7.77)
    assert control_wiring.end_volts(24, 0.8, feet, 7.77) == pytest.approx(20)


def test_thin_wire_resistance_goes_with_one_over_area():
    rows = {row.gauge_awg: row.ohm_per_kft for row in tables.rows("control_wire")}
    for gauge, ohm in rows.items():
        areas = (outdoor_circuit.conductor_area_cmil(18)
                 / outdoor_circuit.conductor_area_cmil(gauge))
        assert ohm == pytest.approx(rows[18] * areas, rel=0.01)
