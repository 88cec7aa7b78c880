"""Circuit of the heat kit, by the tables of the electrical code."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from downflow import tables
from downflow.physics import circuit

WIRES = tables.rows("wire_ampacity")
BREAKERS = tables.rows("standard_breakers")
AMBIENT = tables.rows("ambient_correction")
COUNT = tables.rows("conductor_count")
GROUND = tables.rows("equipment_ground")


def conductor(need: float, breaker: float, terminal: int = 60, insulation: int = 90,
              ambient: float | None = 1.0, count: float = 1.0) -> circuit.Conductor | None:
    return circuit.smallest_conductor(need, breaker, WIRES, BREAKERS, terminal, insulation,
                                      ambient, count)


def test_an_8_kw_kit_takes_a_50_with_a_small_blower_and_a_60_with_a_large_one():
    heater = circuit.amps(8, 240)
    for blower, breaker in ((0, 45), (3, 50), (6.6, 50), (6.7, 60), (7.5, 60)):
        need = circuit.least_ampacity_a(heater, blower)
        assert circuit.next_standard_a(need, BREAKERS) == breaker


def test_a_standard_size_that_is_just_met_is_enough():
    assert circuit.next_standard_a(50, BREAKERS) == 50
    assert circuit.next_standard_a(50.01, BREAKERS) == 60


def test_the_single_appliance_rule_starts_at_13_3_amps():
    assert circuit.single_appliance_limit_a(13.2) is None
    assert circuit.single_appliance_limit_a(38.33) == approx(57.5, abs=0.01)
    assert circuit.single_appliance_limit_a(40) == approx(60)


def test_elements_are_divided_above_48_amps():
    assert circuit.element_banks(41.67) == 1
    assert circuit.element_banks(48) == 1
    assert circuit.element_banks(62.5) == 2
    assert circuit.element_banks(0) == 1


def test_8_kw_and_5_amps_through_a_hot_roof_cavity_still_fit_6_awg_nm_cable():
    factor = circuit.ambient_factor(48, 90, AMBIENT)
    found = conductor(47.92, 50, ambient=factor)
    assert found is not None
    assert found.size == "6"
    assert found.ampacity_a == approx(55)
    eight = circuit.wire_of("8", WIRES)
    assert circuit.usable_ampacity_a(eight, 60, 90, factor, 1) == approx(40)
    assert circuit.usable_ampacity_a(eight, 75, 90, factor, 1) == approx(45.1)


def test_no_wire_is_chosen_where_its_insulation_is_not_allowed():
    assert circuit.ambient_factor(58, 60, AMBIENT) is None
    assert conductor(20, 20, 60, 60, None) is None


def test_a_factor_covers_its_whole_step_and_no_more():
    assert circuit.ambient_factor(30, 90, AMBIENT) == 1.0
    assert circuit.ambient_factor(30.5, 90, AMBIENT) == 0.96
    assert circuit.ambient_factor(60, 90, AMBIENT) == 0.71
    assert circuit.ambient_factor(61, 90, AMBIENT) is None


def test_more_wires_together_carry_less():
    factors = [circuit.count_factor(n, COUNT) for n in range(1, 60)]
    assert factors == sorted(factors, reverse=True)
    assert factors[2] == 1.0
    assert factors[3] == 0.8


@given(st.floats(5, 200), st.sampled_from([60, 75]), st.floats(0.5, 1))
def test_the_chosen_wire_carries_the_load_and_its_breaker(need, terminal, ambient):
    breaker = circuit.next_standard_a(need, BREAKERS)
    found = conductor(need, breaker, terminal, ambient=ambient)
    if found is not None:
        assert found.ampacity_a >= need
        assert found.largest_breaker_a >= breaker
        assert found.ampacity_a <= circuit.column_a(circuit.wire_of(found.size, WIRES), terminal)


@given(st.floats(5, 150))
def test_a_larger_load_never_gets_a_thinner_wire(need):
    thin = conductor(need, circuit.next_standard_a(need, BREAKERS))
    thick = conductor(need * 1.2, circuit.next_standard_a(need * 1.2, BREAKERS))
    assert thin is not None
    assert thick is not None
    assert thick.circular_mils >= thin.circular_mils


def test_only_copper_is_chosen_inside_the_home():
    for need in (14, 30, 55, 95, 150):
        found = conductor(need, circuit.next_standard_a(need, BREAKERS))
        assert found is not None
        assert found.size in {w.size for w in WIRES if w.material == "cu"}


def test_small_conductors_keep_their_small_breakers():
    ten = circuit.wire_of("10", WIRES)
    assert circuit.largest_breaker_a(ten, 35, BREAKERS) == 30
    six = circuit.wire_of("6", WIRES)
    assert circuit.largest_breaker_a(six, 55, BREAKERS) == 60


def test_the_ground_goes_by_the_breaker_and_grows_with_the_hots():
    assert circuit.ground_size(60, GROUND) == "10"
    assert circuit.ground_size(61, GROUND) == "8"
    same = circuit.upsized_ground_mils(10_380, 26_240, 26_240)
    assert same == 10_380
    larger = circuit.upsized_ground_mils(10_380, 41_740, 26_240)
    assert larger == approx(16_511, abs=1)       # the table's 8 AWG has 16,510: 6 AWG it is
    assert circuit.ground_of_mils(larger, WIRES) == "6"
    assert circuit.upsized_ground_mils(10_380, 10_000, 26_240) == 10_380


@given(st.floats(5, 100), st.floats(5, 200), st.sampled_from([w for w in WIRES
                                                               if w.material == "cu"]))
def test_the_two_roads_to_voltage_drop_agree_within_two_percent(amps, feet, wire):
    by_area = circuit.drop_by_area_v(amps, feet, wire.circular_mils, circuit.K_COPPER)
    by_table = circuit.drop_by_resistance_v(amps, feet, wire.dc_ohm_per_kft_75c)
    assert by_area == approx(by_table, rel=0.02)


def test_aluminum_drops_more_than_copper():
    assert circuit.drop_by_area_v(40, 50, 26_240, circuit.K_ALUMINUM) > circuit.drop_by_area_v(
        40, 50, 26_240, circuit.K_COPPER)


def test_every_area_in_the_table_is_that_of_its_gauge():
    for wire in WIRES:
        if wire.size == "250":
            continue
        gauge = 1 - int(wire.size[0]) if "/0" in wire.size else int(wire.size)
        assert circuit.awg_circular_mils(gauge) == approx(wire.circular_mils, rel=1e-3)


def test_terminals_are_60_degrees_until_marked_or_above_100_amps():
    assert circuit.terminal_column_c(60, False) == 60
    assert circuit.terminal_column_c(60, True) == 75
    assert circuit.terminal_column_c(101, False) == 75


def test_voltage_moves_current_with_it():
    assert circuit.amps_at_voltage(10, 240, 240) == approx(41.67, abs=0.01)
    assert circuit.amps_at_voltage(10, 240, 252) == approx(43.75)


@pytest.mark.parametrize("call", [
    lambda: circuit.amps(5, 0),
    lambda: circuit.least_ampacity_a(-1, 0),
    lambda: circuit.next_standard_a(700, BREAKERS),
    lambda: circuit.column_a(WIRES[0], 80),
    lambda: circuit.count_factor(0, COUNT),
    lambda: circuit.wire_of("7", WIRES),
    lambda: circuit.ground_size(700, GROUND),
    lambda: circuit.upsized_ground_mils(1, 1, 0),
    lambda: circuit.ground_of_mils(1e9, WIRES),
    lambda: circuit.drop_by_area_v(1, 1, 0, 12.9),
])
def test_a_call_that_makes_no_sense_is_refused(call):
    with pytest.raises(ValueError, match="."):
        call()
