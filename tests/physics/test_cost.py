"""Costs, ties and emissions."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from downflow.physics import cost

approx = pytest.approx

price = st.floats(0.02, 10)
cop = st.floats(0.8, 6)
efficiency = st.floats(0.4, 1)


@settings(deadline=None)
@given(price, efficiency, cop)
def test_on_the_tie_line_both_cost_the_same(electric, afue, seasonal):
    fuel = cost.tie_fuel_price(electric, 91_429, afue, seasonal)
    assert cost.fuel_heat_cost_mmbtu(fuel, 91_429, afue) == approx(
        cost.electric_heat_cost_mmbtu(electric, seasonal)
    )
    assert cost.tie_electric_price(fuel, 91_429, afue, seasonal) == approx(electric)
    assert cost.break_even_cop(electric, fuel, 91_429, afue) == approx(seasonal)


@settings(deadline=None)
@given(st.floats(40, 80), efficiency, cop)
def test_at_the_tied_grid_both_emit_the_same(kg, afue, seasonal):
    grid = cost.tie_grid_kg_mwh(kg, afue, seasonal)
    fuel = cost.fuel_co2_kg(cost.fuel_units(1e6, 1e5, afue), 1e5, kg)
    assert cost.grid_co2_kg(1e6 / cost.BTU_PER_KWH / seasonal, grid) == approx(fuel)


def test_a_rebate_above_the_price_pays_back_at_once():
    assert cost.payback_years(4000, 5000, 100) == 0


def test_nothing_saved_never_pays_back():
    assert cost.payback_years(4000, 0, 0) is None
    assert cost.payback_years(4000, 0, -50) is None


def test_quadrature_of_three_four_is_five():
    assert cost.in_quadrature([3, -4]) == approx(5)
    assert cost.in_quadrature([]) == 0


@pytest.mark.parametrize(
    "call",
    [
        lambda: cost.fuel_heat_cost_mmbtu(2, 0, 0.8),
        lambda: cost.fuel_heat_cost_mmbtu(2, 9e4, 0),
        lambda: cost.fuel_heat_cost_mmbtu(2, 9e4, 1.2),
        lambda: cost.electric_heat_cost_mmbtu(0.1, 0),
        lambda: cost.break_even_cop(0.1, 0, 9e4, 0.8),
        lambda: cost.tie_electric_price(2, 9e4, 0.8, 0),
        lambda: cost.fuel_units(1e6, 9e4, 2),
        lambda: cost.fuel_units(1e6, 0, 1),
        lambda: cost.tie_grid_kg_mwh(60, 0, 2),
        lambda: cost.kg_per_mmbtu("peat of 1994"),
    ],
)
def test_calls_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r"\d"):
        call()
