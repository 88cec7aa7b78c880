"""Where the two ways of heating tie."""

import pytest

from downflow.testing import solve_demo, verdict_of

ID = "price-tie"


def test_at_the_tie_price_both_cost_the_same():
    tie = solve_demo(ID, ranged=False).values["tie_fuel_usd"].value
    answer = solve_demo(ID, ranged=False, propane_usd_gal=tie)
    assert answer.values["fuel_mmbtu_usd"].value == pytest.approx(
        answer.values["hp_mmbtu_usd"].value)
    assert answer.values["tie_electric_usd_kwh"].value == pytest.approx(0.135)


@pytest.mark.parametrize(("factor", "level"), [(1.01, "fine"), (0.99, "look")])
def test_just_above_the_tie_is_fine_and_just_below_is_looked_at(factor, level):
    tie = solve_demo(ID, ranged=False).values["tie_fuel_usd"].value
    answer = solve_demo(ID, ranged=False, propane_usd_gal=tie * factor)
    assert verdict_of(answer, "above-the-tie").level == level


def test_break_even_is_what_plain_backup_costs_over_fuel():
    values = solve_demo(ID, ranged=False).values
    assert values["break_even_cop"].value == pytest.approx(
        values["kit_mmbtu_usd"].value / values["fuel_mmbtu_usd"].value)


def test_where_nothing_is_saved_it_says_so():
    answer = solve_demo(ID, ranged=False, electricity_usd_kwh=0.60)
    assert "payback_years" not in answer.values
    assert verdict_of(answer, "payback").level == "look"


def test_the_payback_counts_only_confirmed_rebates():
    without = solve_demo(ID, ranged=False, rebate_usd=None).values["payback_years"].value
    assert without > solve_demo(ID, ranged=False).values["payback_years"].value


@pytest.mark.parametrize(("rate", "level"), [(1000.0, "fine"), (2900.0, "look")])
def test_a_dirty_grid_is_not_sold_as_clean(rate, level):
    answer = solve_demo(ID, ranged=False, grid_co2_lb_mwh=rate)
    assert verdict_of(answer, "cleaner").level == level


def test_electric_heat_with_a_furnaces_efficiency_is_refused():
    answer = solve_demo(ID, ranged=False, heating_fuel="electric")
    assert answer.ok is False
    assert answer.errors[0]["field"] == "furnace_efficiency_pct"


def test_without_a_fuel_price_the_tie_still_stands():
    answer = solve_demo(ID, ranged=False, propane_usd_gal=None)
    assert answer.values["tie_fuel_usd"].value > 0
    assert "break_even_cop" not in answer.values


def test_an_estimated_price_widens_the_range():
    sure = solve_demo(ID).values["break_even_cop"]
    unsure = solve_demo(ID, propane_usd_gal=(2.85, "estimated")).values["break_even_cop"]
    assert unsure.high - unsure.low > 2 * (sure.high - sure.low)
