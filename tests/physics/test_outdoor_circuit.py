"""Circuit of the outdoor unit."""

import pytest

from downflow import tables
from downflow.physics import outdoor_circuit as circuit

RATINGS = tuple(row.rating_a for row in tables.rows("standard_breakers"))


def test_a_sixteen_ampere_compressor_with_a_small_fan():
    assert circuit.least_ampacity_amps(16.0, 1.2) == pytest.approx(21.2)
    assert circuit.standard_at_most(circuit.breaker_limit_amps(16.0, 1.2), RATINGS) == 25
    hard = circuit.breaker_limit_amps(16.0, 1.2, hard_start=True)
    assert circuit.standard_at_most(hard, RATINGS) == 35


def test_the_breaker_ceiling_is_always_above_the_wire_floor():
    for largest in range(5, 60, 5):
        for other in (0, 1, 4):
            assert (circuit.breaker_limit_amps(largest, other)
                    > circuit.least_ampacity_amps(largest, other))


def test_a_ceiling_below_the_smallest_breaker_is_refused():
    with pytest.raises(ValueError, match="smallest"):
        circuit.standard_at_most(9, RATINGS)


def test_both_roads_to_the_voltage_drop_agree():
    for row in tables.rows("wire_ampacity"):
        if row.material == "cu":
            by_ohm = circuit.drop_volts(30, 60, row.dc_ohm_per_kft_75c)
            by_area = circuit.drop_by_area_volts(30, 60, row.circular_mils)
            assert by_ohm == pytest.approx(by_area, rel=0.025)


def test_aluminum_of_one_size_drops_more_than_copper():
    assert (circuit.drop_by_area_volts(30, 60, 26_240, aluminum=True)
            > 1.6 * circuit.drop_by_area_volts(30, 60, 26_240))


def test_wire_table_follows_the_gauge_rule():
    sizes = {"1/0": 0, "2/0": -1, "3/0": -2, "4/0": -3}
    for row in tables.rows("wire_ampacity"):
        gauge = sizes.get(row.size) if row.size in sizes else int(row.size)
        if gauge is not None and gauge <= 18:
            assert circuit.conductor_area_cmil(gauge) == pytest.approx(row.circular_mils, rel=0.005)


def test_a_start_drops_more_on_a_weak_supply():
    strong = circuit.start_drop_volts(80, 40, 1.24, 0.02)
    weak = circuit.start_drop_volts(80, 40, 1.24, 0.10)
    assert weak - strong == pytest.approx(80 * 0.08)
    assert circuit.start_drop_volts(80, 40, 1.24, 0) == pytest.approx(
        circuit.drop_volts(80, 40, 1.24))


def test_supply_resistance_from_two_readings():
    ohm = circuit.source_ohm(243.0, 239.0, 40.0)
    assert ohm == pytest.approx(0.1)
    assert 243.0 - ohm * 40 == pytest.approx(239.0)
    with pytest.raises(ValueError, match="above"):
        circuit.source_ohm(240, 241, 30)
    with pytest.raises(ValueError, match="not above 0"):
        circuit.source_ohm(240, 238, 0)


def test_disconnect_and_generator():
    assert circuit.disconnect_amps(100) == pytest.approx(115)
    assert circuit.start_kva(90, 240) == pytest.approx(21.6)
