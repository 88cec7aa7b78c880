"""Charge for the line set, rise of liquid, recovery tank."""

import pytest

from downflow import tables
from downflow.physics import line_set, refrigerant


def test_the_worked_charge():
    change = line_set.charge_change_oz(43, 25, 0.6)
    assert change == pytest.approx(10.8)
    assert line_set.total_charge_oz(8 + 6 / 16, change) == pytest.approx(144.8)


def test_a_short_line_gives_charge_back():
    assert line_set.charge_change_oz(15, 25, 0.6) == pytest.approx(-6.0)


def test_a_line_of_the_counted_size_and_length_changes_nothing():
    assert line_set.charge_change_other_size_oz(25, 0.54, 13.5) == pytest.approx(0)


def test_a_maker_rate_is_the_liquid_line_and_little_more():
    density = refrigerant.liquid_lb_ft3(95, tables.rows("refrigerant_r410a"))
    full = line_set.line_content_oz_ft(0.311, density)
    assert full == pytest.approx(0.530, abs=0.003)
    assert full < 0.60 < 1.2 * full


def test_twice_the_bore_holds_four_times_as_much():
    assert (line_set.line_content_oz_ft(0.4, 64)
            == pytest.approx(4 * line_set.line_content_oz_ft(0.2, 64)))


def test_a_rise_of_twenty_feet_costs_some_nine_psi():
    density = refrigerant.liquid_lb_ft3(95, tables.rows("refrigerant_r410a"))
    assert 8 < line_set.rise_psi(20, density) < 10
    assert line_set.rise_psi(-20, density) == pytest.approx(-line_set.rise_psi(20, density))


def test_a_warm_tank_holds_less():
    rows = tables.rows("refrigerant_r410a")
    cold = line_set.tank_limit_lb(0.8, refrigerant.liquid_lb_ft3(70, rows))
    warm = line_set.tank_limit_lb(0.8, refrigerant.liquid_lb_ft3(120, rows))
    assert warm < cold
