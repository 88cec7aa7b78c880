"""Airflow of a running system by two roads, and how to weigh them."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from downflow.physics import ducts

BTU_PER_WH = 3.412142
# Two good thermometers side by side differ by up to this much. [°F]
THERMOMETER_F = 1.0
# Volts and amps together.
POWER_SHARE = 0.02
# A fan table against the same fan in a home.
FAN_TABLE_SHARE = 0.10
LITRES_SHARE = 1e-3
M3_PER_FT3 = 0.0283168466


def element_heat_btuh(
    volts: float, amps: float, blower_w: float, clamp_holds_blower: bool
) -> float:
    """Heat that elements and blower put into the air.

    Args:
        volts: At the kit's terminals. [V]
        amps: Of the clamp. [A]
        blower_w: Power of the blower, which ends up in the air too. [W]
        clamp_holds_blower: Whether the clamp reads the blower as well: then it is not added.

    Returns:
        Heat. [Btu/h]

    Holds for: resistance elements (power factor 1), both probes with the blower between them.
    Source: Ohm's law; 3.412142 Btu/h for each watt.
    """
    for name, value in (("volts", volts), ("amps", amps)):
        if not value > 0.0:
            raise ValueError(f"{name} must be above zero, not {value:g}")
    if blower_w < 0.0:
        raise ValueError(f"blower power must not be below zero, not {blower_w:g}")
    return BTU_PER_WH * (volts * amps + (0.0 if clamp_holds_blower else blower_w))


class TableReading(NamedTuple):
    """Airflow read from a fan table, and whether the static lies beyond its rows."""

    airflow_cfm: float
    outside: bool


def table_airflow(
    static_inwc: Sequence[float], airflow_cfm: Sequence[float], read_inwc: float
) -> TableReading:
    """Airflow at a static pressure, on straight lines between the rows of a fan table.

    Args:
        static_inwc: Rising column, in the table's own air. [in. w.c.]
        airflow_cfm: Airflow of each row. [ft³/min]
        read_inwc: Static read, brought to the table's air. [in. w.c.]

    Returns:
        Airflow; beyond the rows the nearest row's.

    Source: the fan table.
    """
    inside = min(max(read_inwc, static_inwc[0]), static_inwc[-1])
    return TableReading(ducts.interpolate(static_inwc, airflow_cfm, inside), inside != read_inwc)


def to_table_air_inwc(
    static_inwc: float, density_lb_ft3: float, table_density_lb_ft3: float
) -> float:
    """A static pressure as it would be in the table's air at the same airflow. [in. w.c.]

    Source: fan laws: pressure in proportion to density.
    """
    if not density_lb_ft3 > 0.0:
        raise ValueError(f"density must be above zero, not {density_lb_ft3:g}")
    return static_inwc * table_density_lb_ft3 / density_lb_ft3


def heat_rise_doubt(rise_f: float) -> float:
    """Share by which airflow from heat rise may be off. [-]

    Args:
        rise_f: Temperature rise, above zero. [°F]

    Source: two thermometers within 1 °F, power within 2 %, as root of the sum of squares.
    """
    if not rise_f > 0.0:
        raise ValueError(f"rise must be above zero, not {rise_f:g}")
    return math.hypot(THERMOMETER_F / rise_f, POWER_SHARE)


class Together(NamedTuple):
    """Two readings weighed: the value, and how far the first reads above the second, as a share."""

    airflow_cfm: float
    apart: float
    weight_of_first: float


def together(
    first_cfm: float, first_doubt: float, second_cfm: float, second_doubt: float
) -> Together:
    """Two readings of one airflow, weighed by the inverse square of their doubts.

    Args:
        first_cfm: First reading, above zero. [ft³/min]
        first_doubt: Share by which it may be off, above zero. [-]
        second_cfm: Second reading, above zero. [ft³/min]
        second_doubt: Likewise. [-]

    Source: weighted mean.
    """
    for value in (first_cfm, first_doubt, second_cfm, second_doubt):
        if not value > 0.0:
            raise ValueError(f"readings and doubts must be above zero, not {value:g}")
    a = 1.0 / (first_doubt * first_cfm) ** 2
    b = 1.0 / (second_doubt * second_cfm) ** 2
    value = (a * first_cfm + b * second_cfm) / (a + b)
    return Together(value, (first_cfm - second_cfm) / value, a / (a + b))


def filter_days(
    holds_g: float,
    dust_mg_m3: float,
    catches_share: float,
    airflow_cfm: float,
    hours_per_day: float,
    usable_share: float = 1.0,
) -> float:
    """Days until a filter is loaded.

    Args:
        holds_g: Dust that it holds until its final loss, above zero. [g]
        dust_mg_m3: Dust in the air, above zero. [mg/m³]
        catches_share: Share that it catches, above zero. [-]
        airflow_cfm: Air through it, above zero. [ft³/min]
        hours_per_day: Hours the fan runs, above zero. [h]
        usable_share: Share of its dust that the fan's reserve allows. [-]

    Holds for: an estimate; dust varies many times over between homes.
    Source: mass balance.
    """
    for value in (holds_g, dust_mg_m3, catches_share, airflow_cfm, hours_per_day):
        if not value > 0.0:
            raise ValueError(f"dust, filter, airflow and hours must be above zero, not {value:g}")
    if not 0.0 <= usable_share <= 1.0:
        raise ValueError(f"usable share must be 0 to 1, not {usable_share:g}")
    grams = dust_mg_m3 * LITRES_SHARE * airflow_cfm * M3_PER_FT3 * 60.0 * hours_per_day
    return usable_share * holds_g / (grams * catches_share)


def usable_dust_share(clean_inwc: float, loaded_inwc: float, allowed_inwc: float) -> float:
    """Share of a filter's dust that may settle before its loss reaches what the fan allows. [-]

    Args:
        clean_inwc: Loss clean. [in. w.c.]
        loaded_inwc: Loss loaded, above clean. [in. w.c.]
        allowed_inwc: Loss that the fan's reserve allows. [in. w.c.]

    Holds for: loss taken to grow in proportion to the dust; real filters grow faster at the end.
    Source: straight line between the two printed losses.
    """
    if not loaded_inwc > clean_inwc:
        raise ValueError(f"loaded loss {loaded_inwc:g} must be above the clean one, {clean_inwc:g}")
    return min(1.0, max(0.0, (allowed_inwc - clean_inwc) / (loaded_inwc - clean_inwc)))
