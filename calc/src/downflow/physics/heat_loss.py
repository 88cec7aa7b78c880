"""Heat loss of a home: its surfaces, the air that leaks, the ducts, room by room.

Transmission goes with area and U alone; the heat in leaking air goes with its mass, so
density by altitude enters there and only there.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from downflow.physics import air

if TYPE_CHECKING:
    from downflow.tables import InsulationCompression

WALL_FRAMING_SHARE = 0.15
FLOOR_CEILING_FRAMING_SHARE = 0.10
FEDERAL_INFILTRATION_BTUH_FT_F = 0.7
FEDERAL_INDOOR_F = 70.0
THERMAL_SHORT_R_SHARE = 0.5
THERMAL_SHORT_AREA_SHARE = 0.01
ECONOMY_LEAST_F = 20.0
ECONOMY_SHARE = 0.30
LEAK_EXPONENT = 0.65
TEST_PA = 50.0
LEAKAGE_AREA_PA = 4.0
REFERENCE_DENSITY_KG_M3 = 1.2
M3_S_PER_CFM = 0.3048**3 / 60
L_S_PER_CFM = 1000 * 0.3048**3 / 60
IN2_PER_M2 = 1 / 0.0254**2
CM2_PER_IN2 = 2.54**2
FT2_PER_M2 = 1 / 0.3048**2
M_PER_FT = 0.3048
M_S_PER_MPH = 0.44704
F_PER_K = 1.8
IDF_HEATING_WIND = 51.0  # wind 6.7 m/s (15 mph)
IDF_HEATING_STACK = 0.35
IDF_HEATING_FLUE = 0.23
IDF_COOLING_WIND = 25.0  # wind 3.4 m/s (7.5 mph)
IDF_COOLING_STACK = 0.38
IDF_COOLING_FLUE = 0.12
UNBALANCED_SHARE = 0.5


def _share(value: float, name: str) -> None:
    if not 0 <= value <= 1:
        raise ValueError(f"{name} {value} is outside 0 to 1")


def _positive(value: float, name: str) -> None:
    if not value > 0:
        raise ValueError(f"{name} {value} is not above 0")


def parallel_path_u_btuh_ft2_f(
    cavity_r: Sequence[float], frame_r: Sequence[float], framing_share: float
) -> float:
    """U of a framed component by two parallel paths.

    Args:
        cavity_r: Resistances of the layers between frame members, films included.
            [h ft² °F/Btu]
        frame_r: Resistances of the layers along a frame member, films included.
            [h ft² °F/Btu]
        framing_share: Area of frame members over the whole area, 0 to 1.

    Returns:
        U of the whole component. [Btu/(h ft² °F)]

    Holds for: wood frames; not for steel.
    Source: 2021 Fundamentals handbook, chapter 27, example 3; framing shares where not
    known: 24 CFR 3280.509(b).
    """
    _share(framing_share, "framing share")
    cavity, frame = sum(cavity_r), sum(frame_r)
    _positive(cavity, "resistance between the frame members")
    _positive(frame, "resistance along the frame members")
    return (1 - framing_share) / cavity + framing_share / frame


def kept_share(
    restricted_in: float, full_in: float, kind: str, rows: Sequence[InsulationCompression]
) -> float:
    """Share of its nominal R that squeezed or restricted insulation keeps.

    Args:
        restricted_in: Thickness in the place. [in]
        full_in: Thickness at which the R is stated. [in]
        kind: `nonuniform_batt`, `nonuniform_blown` (eaves) or `uniform_batt`.
        rows: Table of 24 CFR 3280.509(c), by whole percent.

    Returns:
        Kept share, 0 to 1, straight between table rows.

    Source: 24 CFR 3280.509(c).
    """
    _positive(full_in, "full thickness")
    if not 0 <= restricted_in <= full_in:
        raise ValueError(f"restricted thickness {restricted_in} in is outside 0 to {full_in} in")
    percent = 100 * restricted_in / full_in
    below = max((r for r in rows if r.thickness_pct <= percent), key=lambda r: r.thickness_pct)
    above = min((r for r in rows if r.thickness_pct >= percent), key=lambda r: r.thickness_pct)
    low = float(getattr(below, f"{kind}_r_pct"))
    high = float(getattr(above, f"{kind}_r_pct"))
    if above.thickness_pct == below.thickness_pct:
        return low / 100
    part = (percent - below.thickness_pct) / (above.thickness_pct - below.thickness_pct)
    return (low + part * (high - low)) / 100


def compressed_r(
    nominal_r: float,
    restricted_in: float,
    full_in: float,
    kind: str,
    rows: Sequence[InsulationCompression],
) -> float:
    """R that squeezed insulation keeps. [h ft² °F/Btu]

    Source: 24 CFR 3280.509(c); see `kept_share`.
    """
    return nominal_r * kept_share(restricted_in, full_in, kind, rows)


def net_wall_ft2(
    perimeter_ft: float, height_ft: float, window_ft2: float, door_ft2: float
) -> float:
    """Wall area without its windows and doors. [ft²]"""
    net = perimeter_ft * height_ft - window_ft2 - door_ft2
    if net < 0:
        raise ValueError(f"windows and doors are {-net} ft² larger than the wall")
    return net


def ua_btuh_f(areas_ft2: Sequence[float], u_btuh_ft2_f: Sequence[float]) -> float:
    """Transmission of a set of surfaces, the sum of area times U. [Btu/(h °F)]"""
    return math.fsum(a * u for a, u in zip(areas_ft2, u_btuh_ft2_f, strict=True))


def overall_u_btuh_ft2_f(areas_ft2: Sequence[float], u_btuh_ft2_f: Sequence[float]) -> float:
    """Area-weighted mean U of an envelope. [Btu/(h ft² °F)]

    Source: 24 CFR 3280.506: without infiltration and ventilation.
    """
    total = math.fsum(areas_ft2)
    _positive(total, "envelope area")
    return ua_btuh_f(areas_ft2, u_btuh_ft2_f) / total


def shorts_count(short_ft2: float, envelope_ft2: float) -> bool:
    """Whether poorly insulated places are large enough to be counted on their own.

    A thermal short is insulated to less than half of the level around it.

    Source: 24 CFR 3280.508(c): once they exceed 1 % of the envelope area.
    """
    _positive(envelope_ft2, "envelope area")
    return short_ft2 > THERMAL_SHORT_AREA_SHARE * envelope_ft2


def is_thermal_short(path_r: float, nominal_r: float) -> bool:
    """Whether a path has less than half the nominal insulation. Source: 24 CFR 3280.508(c)."""
    return path_r < THERMAL_SHORT_R_SHARE * nominal_r


def federal_infiltration_ua_btuh_f(perimeter_ft: float) -> float:
    """Infiltration of a manufactured home where it has not been measured.

    Args:
        perimeter_ft: Perimeter of the pressure envelope. [ft]

    Returns:
        Heat loss per degree, fans that run now and then included. [Btu/(h °F)]

    Holds for: homes built to the federal standard, in ordinary repair.
    Source: 24 CFR 3280.509(a): 0.7 times temperature difference times perimeter.
    """
    if perimeter_ft < 0:
        raise ValueError(f"perimeter {perimeter_ft} ft is below 0")
    return FEDERAL_INFILTRATION_BTUH_FT_F * perimeter_ft


def infiltration_ua_btuh_f(infiltration_cfm: float, density_lb_ft3: float) -> float:
    """Heat loss per degree of the air that leaks through. [Btu/(h °F)]"""
    return air.sensible_factor_btuh_cfm_f(density_lb_ft3) * infiltration_cfm


def air_change_cfm(air_changes_h: float, volume_ft3: float) -> float:
    """Airflow of a number of air changes per hour. [cfm]"""
    _positive(volume_ft3, "volume")
    return air_changes_h * volume_ft3 / 60


def air_changes_h(airflow_cfm: float, volume_ft3: float) -> float:
    """Air changes per hour of an airflow. [1/h]"""
    _positive(volume_ft3, "volume")
    return 60 * airflow_cfm / volume_ft3


def leak_flow_cfm(
    flow_cfm: float, measured_pa: float, wanted_pa: float, exponent: float = LEAK_EXPONENT
) -> float:
    """Leakage flow at another pressure by the power law.

    Args:
        flow_cfm: Flow measured at `measured_pa`. [cfm]
        measured_pa: Pressure difference of the measurement. [Pa]
        wanted_pa: Pressure difference asked for. [Pa]
        exponent: Of the power law, 0.5 to 1; 0.65 when not measured.

    Returns:
        Flow at `wanted_pa`. [cfm]

    Source: EnergyPlus Engineering Reference, airflow network, crack flow: exponents
    0.6 to 0.7 for buildings; 0.65 as in open building simulation libraries.
    """
    _positive(measured_pa, "pressure")
    if wanted_pa < 0 or not 0.5 <= exponent <= 1:
        raise ValueError(f"pressure {wanted_pa} Pa or exponent {exponent} makes no sense")
    ratio: float = (wanted_pa / measured_pa) ** exponent
    return flow_cfm * ratio


def leakage_area_in2(
    flow_cfm: float,
    at_pa: float = LEAKAGE_AREA_PA,
    density_kg_m3: float = REFERENCE_DENSITY_KG_M3,
) -> float:
    """Effective leakage area of a flow, discharge coefficient 1.

    Args:
        flow_cfm: Leakage flow at `at_pa`. [cfm]
        at_pa: Pressure difference, by custom 4. [Pa]
        density_kg_m3: Density of the air, by custom 1.2. [kg/m³]

    Returns:
        Area of a sharp-edged hole of the same flow. [in²]

    Source: 2021 Fundamentals handbook, chapter 16, effective leakage area.
    """
    _positive(at_pa, "pressure")
    return flow_cfm * M3_S_PER_CFM * math.sqrt(density_kg_m3 / (2 * at_pa)) * IN2_PER_M2


def leakage_area_of_surface_in2(surface_ft2: float, leakage_cm2_m2: float) -> float:
    """Effective leakage area from exposed surface and quality of construction. [in²]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 9 and table 3.
    """
    return surface_ft2 / FT2_PER_M2 * leakage_cm2_m2 / CM2_PER_IN2


def basic_infiltration_cfm(
    leakage_area_in2: float,
    difference_f: float,
    wind_mph: float,
    stack_si: float,
    wind_si: float,
) -> float:
    """Infiltration by the basic (leakage area) model.

    Args:
        leakage_area_in2: Effective leakage area at 4 Pa. [in²]
        difference_f: Indoor minus outdoor temperature, its size. [°F]
        wind_mph: Wind at the weather station. [mph]
        stack_si: Stack coefficient by storeys. [(L/s)²/(cm⁴ K)]
        wind_si: Wind coefficient by shelter and storeys. [(L/s)²/(cm⁴ (m/s)²)]

    Returns:
        Infiltration. [cfm]

    Holds for: up to three storeys, leaks spread over the envelope.
    Source: EnergyPlus Input Output Reference, ZoneInfiltration:EffectiveLeakageArea
    (Sherman and Grimsrud 1980; Fundamentals handbooks 2001 and 2005).
    """
    driving = stack_si * abs(difference_f) / F_PER_K + wind_si * (wind_mph * M_S_PER_MPH) ** 2
    return leakage_area_in2 * CM2_PER_IN2 * math.sqrt(driving) / L_S_PER_CFM


def design_infiltration_cfm(
    leakage_area_in2: float,
    height_ft: float,
    difference_f: float,
    cooling: bool = False,
    flue_area_in2: float = 0.0,
) -> float:
    """Infiltration at design conditions from leakage area and height.

    Args:
        leakage_area_in2: Effective leakage area at 4 Pa, flue included. [in²]
        height_ft: Ceiling above the floor (one storey). [ft]
        difference_f: Indoor minus outdoor temperature, its size. [°F]
        cooling: Summer (7.5 mph wind) instead of winter (15 mph).
        flue_area_in2: Leakage area of flues within the envelope. [in²]

    Returns:
        Infiltration. [cfm]

    Holds for: suburban shelter; flue below half the leakage area; any elevation.
    Source: 2021 Fundamentals handbook, chapter 17, eqs. 8 and 10.
    """
    _positive(leakage_area_in2, "leakage area")
    if cooling:
        wind, stack, flue = IDF_COOLING_WIND, IDF_COOLING_STACK, IDF_COOLING_FLUE
    else:
        wind, stack, flue = IDF_HEATING_WIND, IDF_HEATING_STACK, IDF_HEATING_FLUE
    stack += flue * flue_area_in2 / leakage_area_in2
    driving = (wind + height_ft * M_PER_FT * abs(difference_f) / F_PER_K * stack) / 1000
    return leakage_area_in2 * CM2_PER_IN2 * driving / L_S_PER_CFM


def outdoor_air_cfm(infiltration_cfm: float, supply_cfm: float, exhaust_cfm: float) -> float:
    """Outdoor air when fans work together with leaks.

    Args:
        infiltration_cfm: Leakage without any fan. [cfm]
        supply_cfm: Ventilation air blown in. [cfm]
        exhaust_cfm: Air drawn out, combustion air included. [cfm]

    Returns:
        All outdoor air. [cfm]

    Source: 2021 Fundamentals handbook, chapter 17, eqs. 12 to 14.
    """
    balanced = min(supply_cfm, exhaust_cfm)
    unbalanced = max(supply_cfm, exhaust_cfm) - balanced
    return balanced + max(unbalanced, infiltration_cfm + UNBALANCED_SHARE * unbalanced)


def floor_over_crawl_u_btuh_ft2_f(
    floor_u_btuh_ft2_f: float,
    floor_ft2: float,
    skirt_ua_btuh_f: float,
    crawl_cfm: float,
    density_lb_ft3: float,
) -> float:
    """U of the floor to outdoors with the crawl space in series.

    Args:
        floor_u_btuh_ft2_f: U of floor and belly to the crawl space. [Btu/(h ft² °F)]
        floor_ft2: Area of the floor. [ft²]
        skirt_ua_btuh_f: UA of skirting and ground to outdoors. [Btu/(h °F)]
        crawl_cfm: Outdoor air through the crawl space. [cfm]
        density_lb_ft3: Density of that air. [lb/ft³]

    Returns:
        U to use against outdoors. [Btu/(h ft² °F)]

    Holds for: steady state. With open vents the result is the floor's own U.
    Source: 2021 Fundamentals handbook, chapter 17, eq. 5 (buffer space), solved for
    one floor.
    """
    if floor_u_btuh_ft2_f == 0:
        return 0.0
    _positive(floor_u_btuh_ft2_f, "floor U")
    _positive(floor_ft2, "floor area")
    out = skirt_ua_btuh_f + infiltration_ua_btuh_f(crawl_cfm, density_lb_ft3)
    if out <= 0:
        return 0.0
    return 1 / (1 / floor_u_btuh_ft2_f + floor_ft2 / out)


def crawl_space_f(
    indoor_f: float, outdoor_f: float, floor_ua_btuh_f: float, out_ua_btuh_f: float
) -> float:
    """Temperature of a crawl space between floor and outdoors, steady state. [°F]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 5.
    """
    _positive(floor_ua_btuh_f + out_ua_btuh_f, "UA around the crawl space")
    return (floor_ua_btuh_f * indoor_f + out_ua_btuh_f * outdoor_f) / (
        floor_ua_btuh_f + out_ua_btuh_f
    )


def load_btuh(ua_btuh_f: float, indoor_f: float, outdoor_f: float) -> float:
    """Heat that a home loses; no credit for sun or people. [Btu/h]

    Source: 2021 Fundamentals handbook, chapter 17, heating load.
    """
    return ua_btuh_f * max(0.0, indoor_f - outdoor_f)


def equipment_load_btuh(load_btuh: float, delivery_efficiency: float) -> float:
    """Heat that equipment must make for `load_btuh` to arrive through the ducts. [Btu/h]"""
    if not 0 < delivery_efficiency <= 1:
        raise ValueError(f"delivery efficiency {delivery_efficiency} is outside 0 to 1")
    return load_btuh / delivery_efficiency


def delivery_efficiency(loss_factor: float) -> float:
    """Delivery efficiency from a duct loss given as a share of the building load.

    Source: 2021 Fundamentals handbook, chapter 17, eq. 19: duct loss = factor x load.
    """
    if loss_factor < 0:
        raise ValueError(f"duct loss factor {loss_factor} is below 0")
    return 1 / (1 + loss_factor)


def certificate_ua_bound_btuh_f(output_btuh: float, certificate_f: float) -> float:
    """Largest UA that the home's heating certificate allows.

    Args:
        output_btuh: Output of the factory furnace. [Btu/h]
        certificate_f: Outdoor temperature at which it holds 70 °F. [°F]

    Returns:
        Upper bound of the home's UA when new. [Btu/(h °F)]

    Holds for: a bound, not a load: furnaces come in steps.
    Source: 24 CFR 3280.510.
    """
    if certificate_f >= FEDERAL_INDOOR_F:
        raise ValueError(f"certificate temperature {certificate_f} °F is not below 70 °F")
    return output_btuh / (FEDERAL_INDOOR_F - certificate_f)


def certificate_economy_f(certificate_f: float) -> float:
    """Economy temperature printed on the heating certificate. [°F]

    Source: 24 CFR 3280.510(c): the larger of 20 °F and 30 % of the difference warmer.
    """
    return certificate_f + max(ECONOMY_LEAST_F, ECONOMY_SHARE * (FEDERAL_INDOOR_F - certificate_f))


class RoomLoss(NamedTuple):
    """Loss of one room per degree [Btu/(h °F)] and its share of the home's."""

    ua_btuh_f: float
    share: float


def room_losses(
    transmission_ua_btuh_f: Sequence[float],
    volume_ft3: Sequence[float],
    infiltration_ua_btuh_f: float,
) -> tuple[RoomLoss, ...]:
    """Loss of each room from its own surfaces, infiltration shared by volume.

    Args:
        transmission_ua_btuh_f: UA of each room's own outside surfaces. [Btu/(h °F)]
        volume_ft3: Volume of each room. [ft³]
        infiltration_ua_btuh_f: Of the whole home. [Btu/(h °F)]

    Returns:
        One loss for each room; the shares add up to 1.

    Source: 2021 Fundamentals handbook, chapter 17: infiltration is evaluated for the whole
    home and allotted to rooms by volume.
    """
    volume = math.fsum(volume_ft3)
    _positive(volume, "volume of the rooms")
    losses = [
        ua + infiltration_ua_btuh_f * part / volume
        for ua, part in zip(transmission_ua_btuh_f, volume_ft3, strict=True)
    ]
    total = math.fsum(losses)
    _positive(total, "loss of the rooms")
    return tuple(RoomLoss(loss, loss / total) for loss in losses)


def quick_room_shares(
    floor_ft2: Sequence[float],
    outside_wall_ft2: Sequence[float],
    by_floor_ua_btuh_f: float,
    by_wall_ua_btuh_f: float,
) -> tuple[float, ...]:
    """Share of each room by floor area and outside wall alone: an estimate.

    Args:
        floor_ft2: Floor area of each room. [ft²]
        outside_wall_ft2: Gross outside wall of each room. [ft²]
        by_floor_ua_btuh_f: Of the home: ceiling, floor and infiltration. [Btu/(h °F)]
        by_wall_ua_btuh_f: Of the home: walls, windows and doors. [Btu/(h °F)]

    Returns:
        Shares that add up to 1.

    Holds for: rooms of like height whose windows are spread over their outside walls.
    Source: own split: what lies over and under a room goes by its floor, the rest by its
    outside wall.
    """
    floor, wall = math.fsum(floor_ft2), math.fsum(outside_wall_ft2)
    _positive(floor, "floor area of the rooms")
    _positive(wall, "outside wall of the rooms")
    total = by_floor_ua_btuh_f + by_wall_ua_btuh_f
    _positive(total, "loss of the home")
    return tuple(
        (by_floor_ua_btuh_f * f / floor + by_wall_ua_btuh_f * w / wall) / total
        for f, w in zip(floor_ft2, outside_wall_ft2, strict=True)
    )
