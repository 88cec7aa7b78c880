"""What a unit of heat costs, where two fuels tie, what comes back, and what it emits.

Heat is counted where the equipment hands it to the ducts, unless a function says
otherwise. Electricity by the kilowatt-hour, fuel by its own unit of sale.
"""

import math
from collections.abc import Sequence

from downflow.physics import air

# Heat in one kilowatt-hour. [Btu/kWh]
BTU_PER_KWH = 1000 * air.BTU_PER_WH
BTU_PER_MMBTU = 1e6

# Carbon dioxide of a fuel burned at home. 40 CFR 98 Table C-1. [kg/MMBtu]
PROPANE_KG_MMBTU = 62.87
OIL_KG_MMBTU = 73.96
KEROSENE_KG_MMBTU = 75.20
GAS_KG_MMBTU = 53.06

POUNDS_PER_KG = 2.204623


def _above_zero(value: float, what: str) -> None:
    if not value > 0:
        raise ValueError(f"{what} {value}: must be above 0")


def fuel_heat_cost_mmbtu(price_per_unit: float, btu_per_unit: float, efficiency: float) -> float:
    """Cost of a million Btu of heat from a fuel.

    Args:
        price_per_unit: Price of one unit of sale. [$]
        btu_per_unit: Heat content of one unit of sale, higher heating value. [Btu]
        efficiency: Heat handed over per heat content, 0 to 1.

    Returns:
        Cost. [$/MMBtu]

    Raises:
        ValueError: A content or an efficiency that is not above 0, an efficiency above 1.

    Holds for: an efficiency on the same heating value as the content (AFUE is on the higher).
    Source: arithmetic; heat contents of 40 CFR 98 Tables C-1 and NN-1.
    """
    _above_zero(btu_per_unit, "heat content")
    if not 0 < efficiency <= 1:
        raise ValueError(f"efficiency {efficiency}: must be above 0 and at most 1")
    return price_per_unit / (btu_per_unit * efficiency) * BTU_PER_MMBTU


def electric_heat_cost_mmbtu(price_per_kwh: float, cop: float) -> float:
    """Cost of a million Btu of heat from electricity.

    Args:
        price_per_kwh: Price of electricity. [$/kWh]
        cop: Heat handed over per electricity used; 1 for plain resistance.

    Returns:
        Cost. [$/MMBtu]

    Source: arithmetic; 3,412.142 Btu in a kilowatt-hour.
    """
    _above_zero(cop, "heat per electricity")
    return price_per_kwh / (BTU_PER_KWH * cop) * BTU_PER_MMBTU


def break_even_cop(
    price_per_kwh: float, price_per_unit: float, btu_per_unit: float, efficiency: float
) -> float:
    """Heat per electricity at which the heat pump's heat costs as much as the fuel's.

    Args:
        price_per_kwh: Price of electricity. [$/kWh]
        price_per_unit: Price of one unit of the fuel. [$]
        btu_per_unit: Heat content of that unit. [Btu]
        efficiency: Efficiency of the fuel furnace, 0 to 1.

    Returns:
        Break-even heat per electricity; above it the heat pump is cheaper.

    Source: equal cost per heat delivered.
    """
    fuel = fuel_heat_cost_mmbtu(price_per_unit, btu_per_unit, efficiency)
    _above_zero(fuel, "fuel price")
    return electric_heat_cost_mmbtu(price_per_kwh, 1.0) / fuel


def tie_fuel_price(
    price_per_kwh: float, btu_per_unit: float, efficiency: float, cop: float
) -> float:
    """Fuel price at which both ways of heating cost the same: one point of the tie line.

    Args:
        price_per_kwh: Price of electricity. [$/kWh]
        btu_per_unit: Heat content of one unit of the fuel. [Btu]
        efficiency: Efficiency of the fuel furnace, 0 to 1.
        cop: Heat per electricity of the new system over the season.

    Returns:
        Price of one unit of the fuel; above it the heat pump is cheaper. [$]

    Source: equal cost per heat delivered.
    """
    cost = electric_heat_cost_mmbtu(price_per_kwh, cop)
    return cost * btu_per_unit * efficiency / BTU_PER_MMBTU


def tie_electric_price(
    price_per_unit: float, btu_per_unit: float, efficiency: float, cop: float
) -> float:
    """Electricity price at which both ways of heating cost the same.

    Args:
        price_per_unit: Price of one unit of the fuel. [$]
        btu_per_unit: Heat content of that unit. [Btu]
        efficiency: Efficiency of the fuel furnace, 0 to 1.
        cop: Heat per electricity of the new system over the season.

    Returns:
        Price of electricity; below it the heat pump is cheaper. [$/kWh]

    Source: equal cost per heat delivered.
    """
    _above_zero(cop, "heat per electricity")
    fuel = fuel_heat_cost_mmbtu(price_per_unit, btu_per_unit, efficiency)
    return fuel * BTU_PER_KWH * cop / BTU_PER_MMBTU


def fuel_units(load_btu: float, btu_per_unit: float, efficiency: float) -> float:
    """Fuel burned for a load.

    Args:
        load_btu: Heat the furnace hands to the ducts. [Btu]
        btu_per_unit: Heat content of one unit of sale. [Btu]
        efficiency: Seasonal efficiency of the furnace, 0 to 1.

    Returns:
        Units of sale burned (gallons, therms).

    Source: definition of the efficiency.
    """
    _above_zero(btu_per_unit, "heat content")
    if not 0 < efficiency <= 1:
        raise ValueError(f"efficiency {efficiency}: must be above 0 and at most 1")
    return load_btu / (btu_per_unit * efficiency)


def payback_years(installed: float, rebate: float, saved_per_year: float) -> float | None:
    """Simple payback: what is paid, divided by what is saved a year.

    Args:
        installed: Price of the work. [$]
        rebate: Rebates and credits that will come back. [$]
        saved_per_year: Yearly saving at today's prices. [$]

    Returns:
        Years, 0 where the rebate covers the price; None where nothing is saved.

    Holds for: prices that stay; it leaves out what replacing the old furnace would have cost.
    Source: common practice.
    """
    paid = installed - rebate
    if paid <= 0:
        return 0.0
    return paid / saved_per_year if saved_per_year > 0 else None


def kg_per_mmbtu(fuel: str) -> float:
    """Carbon dioxide of a fuel by its heat content.

    Args:
        fuel: `propane`, `gas`, `oil`, `kerosene` or `electric`, which has no flame.

    Returns:
        Carbon dioxide per heat content, higher heating value. [kg/MMBtu]

    Raises:
        ValueError: No such fuel.

    Source: 40 CFR 98 Table C-1.
    """
    if fuel == "electric":
        return 0.0
    if fuel == "propane":
        return PROPANE_KG_MMBTU
    if fuel == "gas":
        return GAS_KG_MMBTU
    if fuel == "oil":
        return OIL_KG_MMBTU
    if fuel == "kerosene":
        return KEROSENE_KG_MMBTU
    raise ValueError(f"no fuel is called {fuel!r}")


def pounds(kg: float) -> float:
    """Kilograms in pounds. Source: 0.45359237 kg in a pound, by definition. [lb]"""
    return kg * POUNDS_PER_KG


def fuel_co2_kg(units: float, btu_per_unit: float, kg_per_mmbtu: float) -> float:
    """Carbon dioxide from burning fuel.

    Args:
        units: Units of sale burned.
        btu_per_unit: Heat content of one unit of sale. [Btu]
        kg_per_mmbtu: Carbon dioxide per heat content. [kg/MMBtu]

    Returns:
        Carbon dioxide. [kg]

    Holds for: the flame alone; leaks, refining and delivery are left out.
    Source: 40 CFR 98 equation C-1, Tables C-1 and NN-1.
    """
    return units * btu_per_unit / BTU_PER_MMBTU * kg_per_mmbtu


def grid_co2_kg(kwh: float, kg_per_mwh: float) -> float:
    """Carbon dioxide from making electricity.

    Args:
        kwh: Electricity used. [kWh]
        kg_per_mwh: Emission rate of the grid region, total output. [kg/MWh]

    Returns:
        Carbon dioxide. [kg]

    Holds for: the region's yearly average at the power plants; line losses are left out.
    Source: EPA eGRID subregion total output emission rates.
    """
    return kwh * kg_per_mwh / 1000


def tie_grid_kg_mwh(kg_per_mmbtu: float, efficiency: float, cop: float) -> float:
    """Emission rate of the grid at which both ways of heating emit the same.

    Args:
        kg_per_mmbtu: Carbon dioxide per heat content of the fuel. [kg/MMBtu]
        efficiency: Efficiency of the fuel furnace, 0 to 1.
        cop: Heat per electricity of the new system over the season.

    Returns:
        Emission rate; below it the heat pump emits less. [kg/MWh]

    Source: equal emission per heat delivered.
    """
    if not 0 < efficiency <= 1:
        raise ValueError(f"efficiency {efficiency}: must be above 0 and at most 1")
    return kg_per_mmbtu / efficiency * cop * BTU_PER_KWH / 1000


def in_quadrature(deviations: Sequence[float]) -> float:
    """Independent deviations combined: the root of the sum of their squares.

    Args:
        deviations: Deviations of one answer, all in the answer's unit or all relative.

    Returns:
        The combined deviation, in the same unit.

    Source: propagation of independent errors, JCGM 100:2008 section 5.1.
    """
    return math.sqrt(math.fsum(d * d for d in deviations))
