"""Refrigerant pressure and temperature, superheat and subcooling.

A published table has a row for each degree with two absolute pressures: at the bubble point
(liquid, for subcooling) and at the dew point (vapor, for superheat). A pure fluid has one curve,
a blend has two.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence

from downflow.tables import RefrigerantRow

Rows = Sequence[RefrigerantRow]

ABSOLUTE_ZERO_F = -459.67
INHG_PSI = 0.4911541
"""One inch of mercury at 32 °F. [psi]"""
EDGE = 1e-9
"""Share by which rounding may carry a pressure beyond the table's end."""


def _pressure(row: RefrigerantRow, dew: bool) -> float:
    return row.dew_psia if dew else row.bubble_psia


def _inverse(temp_f: float) -> float:
    return 1 / (temp_f - ABSOLUTE_ZERO_F)


def saturation_psia(temp_f: float, rows: Rows, *, dew: bool = False) -> float:
    """Pressure on a saturation curve.

    Args:
        temp_f: Saturation temperature. [°F]
        rows: Table of the refrigerant, rising.
        dew: The dew curve (vapor) instead of the bubble curve (liquid).

    Returns:
        Absolute pressure. [psia]

    Raises:
        ValueError: The temperature is beyond the table.

    Holds for: the rows given; between two rows the logarithm of pressure is taken as straight in
        1/T, which is within 0.01 % for rows 1 °F apart.
    Source: PROPERTY_LIBRARY.
    """
    if not rows[0].temp_f <= temp_f <= rows[-1].temp_f:
        raise ValueError(f"{temp_f} °F is outside the table, {rows[0].temp_f} to "
                         f"{rows[-1].temp_f} °F")
    i = max(1, min(bisect_right(rows, temp_f, key=lambda row: row.temp_f), len(rows) - 1))
    low, high = rows[i - 1], rows[i]
    share = ((_inverse(temp_f) - _inverse(low.temp_f))
             / (_inverse(high.temp_f) - _inverse(low.temp_f)))
    low_log, high_log = math.log(_pressure(low, dew)), math.log(_pressure(high, dew))
    return math.exp(low_log + share * (high_log - low_log))


def saturation_f(pressure_psia: float, rows: Rows, *, dew: bool = False) -> float:
    """Temperature on a saturation curve.

    Args:
        pressure_psia: Absolute pressure. [psia]
        rows: Table of the refrigerant, rising.
        dew: The dew curve (vapor) instead of the bubble curve (liquid).

    Returns:
        Saturation temperature. [°F]

    Raises:
        ValueError: The pressure is beyond the table.

    Holds for: as `saturation_psia`, of which it is the inverse.
    Source: PROPERTY_LIBRARY.
    """
    first, last = _pressure(rows[0], dew), _pressure(rows[-1], dew)
    if not first * (1 - EDGE) <= pressure_psia <= last * (1 + EDGE):
        raise ValueError(f"{pressure_psia} psia is outside the table, {first} to {last} psia")
    i = max(1, min(bisect_right(rows, pressure_psia, key=lambda row: _pressure(row, dew)),
                   len(rows) - 1))
    low, high = rows[i - 1], rows[i]
    low_log, high_log = math.log(_pressure(low, dew)), math.log(_pressure(high, dew))
    share = (math.log(pressure_psia) - low_log) / (high_log - low_log)
    low_inverse, high_inverse = _inverse(low.temp_f), _inverse(high.temp_f)
    return 1 / (low_inverse + share * (high_inverse - low_inverse)) + ABSOLUTE_ZERO_F


def liquid_lb_ft3(temp_f: float, rows: Rows) -> float:
    """Density of saturated liquid.

    Args:
        temp_f: Temperature. [°F]
        rows: Table of the refrigerant, rising.

    Returns:
        Density. [lb/ft³]

    Raises:
        ValueError: The temperature is beyond the table.

    Holds for: the rows given, straight between two.
    Source: PROPERTY_LIBRARY.
    """
    if not rows[0].temp_f <= temp_f <= rows[-1].temp_f:
        raise ValueError(f"{temp_f} °F is outside the table, {rows[0].temp_f} to "
                         f"{rows[-1].temp_f} °F")
    i = max(1, min(bisect_right(rows, temp_f, key=lambda row: row.temp_f), len(rows) - 1))
    low, high = rows[i - 1], rows[i]
    share = (temp_f - low.temp_f) / (high.temp_f - low.temp_f)
    return low.liquid_lb_ft3 + share * (high.liquid_lb_ft3 - low.liquid_lb_ft3)


def absolute_psia(gauge_psig: float, atmosphere_psia: float) -> float:
    """Absolute pressure from a gauge that reads zero in the open air.

    Args:
        gauge_psig: Reading. [psig]
        atmosphere_psia: Pressure of the air where the gauge is. [psia]

    Returns:
        Absolute pressure. [psia]

    Raises:
        ValueError: The reading is below a perfect vacuum.

    Holds for: vented gauges, and digital ones zeroed in the open air there.
    Source: ARITHMETIC.
    """
    pressure_psia = gauge_psig + atmosphere_psia
    if pressure_psia < 0:
        raise ValueError(f"{gauge_psig} psig is below a vacuum: at most {-atmosphere_psia} psig")
    return pressure_psia


def gauge_psig(pressure_psia: float, atmosphere_psia: float) -> float:
    """Reading of a gauge that reads zero in the open air.

    Args:
        pressure_psia: Absolute pressure. [psia]
        atmosphere_psia: Pressure of the air where the gauge is. [psia]

    Returns:
        Reading; below zero in a vacuum. [psig]

    Holds for: vented gauges.
    Source: ARITHMETIC.
    """
    return pressure_psia - atmosphere_psia


def vacuum_inhg(gauge_psig: float) -> float:
    """A reading below zero as inches of mercury of vacuum.

    Args:
        gauge_psig: Reading, zero or below. [psig]

    Returns:
        Vacuum, positive. [inHg]

    Holds for: readings of zero and below.
    Source: UNITS.
    """
    return -gauge_psig / INHG_PSI


def superheat_f(suction_line_f: float, dew_f: float) -> float:
    """Superheat: how far the suction vapor is above its dew point.

    Args:
        suction_line_f: Temperature of the suction line where the pressure is read. [°F]
        dew_f: Dew temperature at that pressure. [°F]

    Returns:
        Superheat; below zero is liquid in the suction line. [°F diff]

    Holds for: pressure and temperature read at one place.
    Source: CHARGE_CHECK.
    """
    return suction_line_f - dew_f


def subcooling_f(bubble_f: float, liquid_line_f: float) -> float:
    """Subcooling: how far the liquid is below its bubble point.

    Args:
        bubble_f: Bubble temperature at the liquid pressure. [°F]
        liquid_line_f: Temperature of the liquid line where the pressure is read. [°F]

    Returns:
        Subcooling; below zero is vapor in the liquid line. [°F diff]

    Holds for: pressure and temperature read at one place.
    Source: CHARGE_CHECK.
    """
    return bubble_f - liquid_line_f


def rows_around_f(temp_f: float, rows: Rows) -> tuple[RefrigerantRow, RefrigerantRow]:
    """The two rows between which a temperature lies, the lower one first.

    Args:
        temp_f: Temperature within the table. [°F]
        rows: Table of the refrigerant, rising.

    Returns:
        The rows.

    Holds for: temperatures of the table.
    Source: PROPERTY_LIBRARY.
    """
    i = max(1, min(bisect_right(rows, temp_f, key=lambda row: row.temp_f), len(rows) - 1))
    return rows[i - 1], rows[i]
