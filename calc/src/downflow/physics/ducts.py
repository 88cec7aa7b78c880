"""Pressure, velocity, temperature and sound in ducts, fittings, openings and fans.

Pressures are total pressures in inches of water column, flows are actual cubic feet a minute,
diameters are inches and lengths feet. Density and viscosity come in as arguments: the same duct
loses less pressure at altitude.
"""

import itertools
import math
from bisect import bisect_left
from collections.abc import Sequence
from typing import NamedTuple

PA_PER_INWC = 249.08891
STANDARD_DENSITY_LB_FT3 = 0.075
# Velocity pressure = rho (V / 1097)² in. w.c.: 60 sqrt(2 · 32.174 · 5.2022) as handbooks round it.
VELOCITY_FPM = 1097.0
SPECIFIC_HEAT_BTU_LB_F = 0.240

# Sutherland's formula, US Standard Atmosphere 1976: mu = 1.458e-6 T^1.5 / (T + 110.4) Pa s.
SUTHERLAND_PA_S = 1.458e-6
SUTHERLAND_K = 110.4
LB_FT_S_PER_PA_S = 0.671969

# Colebrook: 1/sqrt f = -2 log10(e / (3.7 D) + 2.51 / (Re sqrt f)).
COLEBROOK_SLOPE = 2.0
COLEBROOK_ROUGH = 3.7
COLEBROOK_SMOOTH = 2.51
LAMINAR = 64.0
# Laminar up to the first, Colebrook from the second, a smooth curve between.
LAMINAR_TO_REYNOLDS = 2000.0
TURBULENT_FROM_REYNOLDS = 2300.0

# Huebscher's round equivalents.
RECTANGLE = 1.30
RECTANGLE_AREA_POWER = 0.625
RECTANGLE_SIDES_POWER = 0.25
OVAL = 1.55
OVAL_AREA_POWER = 0.625
OVAL_PERIMETER_POWER = 0.25

# Flexible duct: loss against fully stretched = 1 + 0.58 · percent · exp(-0.126 D).
FLEX_PER_PERCENT = 0.58
FLEX_DECAY_PER_IN = 0.126
# The tests behind the formula that could be read cover 6, 8 and 10 in.
FLEX_TESTED_TO_IN = 10.0
# Tests of 12, 14 and 16 in found more than this above 4 % compression.
FLEX_LARGE_FACTOR = 4.0
FLEX_LARGE_ABOVE_PCT = 4.0
# The formula against the tests printed beside it.
FLEX_MODEL_ERROR = 0.04
SAG = 8.0 / 3.0

ORIFICE_DISCHARGE = 0.6
LEAK_EXPONENT = 0.65
LEAK_REFERENCE_PA = 25.0

# Sound power of moving air rises with the 5th to the 6th power of its velocity.
SOUND_LOW_DB = 50.0
SOUND_HIGH_DB = 60.0

# Loss formulas (coefficients of the handbook of hydraulic resistance).
MITER_A = 0.95
MITER_B = 33.5
MITER_SECOND = 0.95
MITER_FOURTH = 2.05
TEE_EQUAL = 0.3
TEE_RUN = 0.4


def _above_zero(name: str, value: float) -> None:
    if not value > 0.0:
        raise ValueError(f"{name} must be above zero, not {value:g}")


# ------------------------------------------------------------------------ air in a duct


def viscosity_lb_ft_s(air_f: float) -> float:
    """Dynamic viscosity of air.

    Args:
        air_f: Temperature. [°F]

    Returns:
        Dynamic viscosity. [lb/(ft s)]

    Holds for: any pressure in a building, −40 to 200 °F.
    Source: US Standard Atmosphere 1976 (Sutherland's formula).
    """
    kelvin = (air_f + 459.67) / 1.8
    if kelvin <= 0.0:
        raise ValueError(f"{air_f:g} °F is below absolute zero")
    pascal_seconds = SUTHERLAND_PA_S * math.pow(kelvin, 1.5) / (kelvin + SUTHERLAND_K)
    return pascal_seconds * LB_FT_S_PER_PA_S


def round_area_in2(diameter_in: float) -> float:
    """Area of a circle. [in²]"""
    _above_zero("diameter_in", diameter_in)
    return math.pi * diameter_in * diameter_in / 4.0


def oval_area_in2(major_in: float, minor_in: float) -> float:
    """Area of a flat oval: a rectangle with a half circle at each end. [in²]"""
    _above_zero("minor_in", minor_in)
    if major_in < minor_in:
        raise ValueError(f"the wide side, {major_in:g} in, is less than the other, {minor_in:g}")
    return math.pi * minor_in * minor_in / 4.0 + minor_in * (major_in - minor_in)


def velocity_fpm(airflow_cfm: float, area_in2: float) -> float:
    """Mean velocity through an area.

    Args:
        airflow_cfm: Flow. [ft³/min]
        area_in2: Area across it, above zero. [in²]

    Returns:
        Velocity. [ft/min]

    Source: arithmetic.
    """
    _above_zero("area_in2", area_in2)
    return 144.0 * airflow_cfm / area_in2


def velocity_pressure_inwc(velocity_fpm: float, density_lb_ft3: float) -> float:
    """Dynamic pressure of moving air.

    Args:
        velocity_fpm: Velocity. [ft/min]
        density_lb_ft3: Density. [lb/ft³]

    Returns:
        Velocity pressure. [in. w.c.]

    Source: F21 chapter 21, Duct Design, velocity pressure.
    """
    _above_zero("density_lb_ft3", density_lb_ft3)
    return density_lb_ft3 * (velocity_fpm / VELOCITY_FPM) ** 2


def reynolds(
    velocity_fpm: float, diameter_in: float, density_lb_ft3: float, viscosity_lb_ft_s: float
) -> float:
    """Reynolds number of the flow in a duct.

    Args:
        velocity_fpm: Mean velocity. [ft/min]
        diameter_in: Inside or equivalent diameter, above zero. [in]
        density_lb_ft3: Density. [lb/ft³]
        viscosity_lb_ft_s: Dynamic viscosity, above zero. [lb/(ft s)]

    Returns:
        Reynolds number. [-]

    Source: F21 chapter 21, eq. 20.
    """
    _above_zero("diameter_in", diameter_in)
    _above_zero("viscosity_lb_ft_s", viscosity_lb_ft_s)
    return density_lb_ft3 * velocity_fpm * diameter_in / (720.0 * viscosity_lb_ft_s)


# ----------------------------------------------------------------------------- friction


def _colebrook(reynolds: float, relative_roughness: float) -> tuple[float, float]:
    """Friction factor and its slope by Reynolds number, to 1e-8."""
    rough = relative_roughness / COLEBROOK_ROUGH
    smooth = COLEBROOK_SMOOTH / reynolds
    # Unknown x = 1/sqrt f in x + 2 log10(rough + smooth x) = 0: concave, so Newton's steps
    # close in from one side; from this start the second is right to 1e-8.
    log = math.log
    scale = COLEBROOK_SLOPE / 2.302585092994046
    x = -scale * log(rough + 7.0 * smooth)
    inside = rough + smooth * x
    x -= (x + scale * log(inside)) / (1.0 + scale * smooth / inside)
    inside = rough + smooth * x
    steep = 1.0 + scale * smooth / inside
    x -= (x + scale * log(inside)) / steep
    factor = 1.0 / (x * x)
    return factor, -2.0 * factor * scale * smooth / (reynolds * inside * steep)


def friction_factor_and_slope(
    reynolds: float, relative_roughness: float
) -> tuple[float, float]:
    """Darcy friction factor [-] and its slope by Reynolds number [-]; see `friction_factor`."""
    if reynolds >= TURBULENT_FROM_REYNOLDS:
        return _colebrook(reynolds, relative_roughness)
    if reynolds <= LAMINAR_TO_REYNOLDS:
        factor = LAMINAR / reynolds
        return factor, -factor / reynolds
    # Cubic with the values and slopes of both sides.
    span = TURBULENT_FROM_REYNOLDS - LAMINAR_TO_REYNOLDS
    left = LAMINAR / LAMINAR_TO_REYNOLDS
    slope_left = -left / LAMINAR_TO_REYNOLDS * span
    right, slope = _colebrook(TURBULENT_FROM_REYNOLDS, relative_roughness)
    slope_right = slope * span
    t = (reynolds - LAMINAR_TO_REYNOLDS) / span
    a = 2.0 * (left - right) + slope_left + slope_right
    b = 3.0 * (right - left) - 2.0 * slope_left - slope_right
    factor = ((a * t + b) * t + slope_left) * t + left
    return factor, ((3.0 * a * t + 2.0 * b) * t + slope_left) / span


def friction_factor(reynolds: float, relative_roughness: float) -> float:
    """Darcy friction factor.

    Args:
        reynolds: Reynolds number, above zero. [-]
        relative_roughness: Absolute roughness over diameter, 0 to 0.1. [-]

    Returns:
        Friction factor. [-]

    Holds for: any flow. Laminar below 2,000; from 2,300 on the turbulent value, which is the
    larger one where real ducts change between the two.
    Source: F21 chapter 21, eq. 19 (Colebrook), solved to 1e-8.
    """
    _above_zero("reynolds", reynolds)
    if not 0.0 <= relative_roughness <= 0.1:
        raise ValueError(f"relative roughness must be 0 to 0.1, not {relative_roughness:g}")
    return friction_factor_and_slope(reynolds, relative_roughness)[0]


def friction_inwc(
    airflow_cfm: float,
    diameter_in: float,
    length_ft: float,
    roughness_ft: float,
    density_lb_ft3: float = STANDARD_DENSITY_LB_FT3,
    viscosity_lb_ft_s: float = 1.2169e-5,
) -> float:
    """Friction loss of a straight round duct.

    Args:
        airflow_cfm: Flow, not below zero. [ft³/min]
        diameter_in: Inside diameter, or the round equivalent of another section. [in]
        length_ft: Length. [ft]
        roughness_ft: Absolute roughness. [ft]
        density_lb_ft3: Density. [lb/ft³]
        viscosity_lb_ft_s: Dynamic viscosity. [lb/(ft s)]

    Returns:
        Loss of total pressure. [in. w.c.]

    Holds for: fully developed flow in a straight duct of one section.
    Source: F21 chapter 21, eq. 18 (Darcy) and 19 (Colebrook).
    """
    if airflow_cfm < 0.0 or length_ft < 0.0:
        raise ValueError(f"flow {airflow_cfm:g} and length {length_ft:g} must not be below zero")
    if airflow_cfm == 0.0:
        return 0.0
    velocity = velocity_fpm(airflow_cfm, round_area_in2(diameter_in))
    factor = friction_factor(
        reynolds(velocity, diameter_in, density_lb_ft3, viscosity_lb_ft_s),
        12.0 * roughness_ft / diameter_in,
    )
    pressure = velocity_pressure_inwc(velocity, density_lb_ft3)
    return factor * 12.0 * length_ft / diameter_in * pressure


def equal_friction_length_ft(loss_c: float, diameter_in: float, friction_factor: float) -> float:
    """Length of straight duct that loses as much as a fitting.

    Args:
        loss_c: Loss coefficient of the fitting. [-]
        diameter_in: Diameter of the duct. [in]
        friction_factor: Darcy friction factor of the duct. [-]

    Returns:
        Equivalent length. [ft]

    Source: arithmetic (Darcy against C times velocity pressure).
    """
    _above_zero("friction_factor", friction_factor)
    return loss_c * diameter_in / (12.0 * friction_factor)


def rectangular_equivalent_in(width_in: float, height_in: float) -> float:
    """Round duct with the friction of a rectangular one at the same flow.

    Args:
        width_in: One inside width, above zero. [in]
        height_in: The other, above zero. [in]

    Returns:
        Equivalent diameter. Take its velocity from the circle; for velocity pressure, fittings
        and sound use the real area. [in]

    Holds for: aspect ratios to about 8.
    Source: F21 chapter 21, eq. 25 (Huebscher).
    """
    _above_zero("width_in", width_in)
    _above_zero("height_in", height_in)
    return (
        RECTANGLE
        * math.pow(width_in * height_in, RECTANGLE_AREA_POWER)
        / math.pow(width_in + height_in, RECTANGLE_SIDES_POWER)
    )


def oval_equivalent_in(major_in: float, minor_in: float) -> float:
    """Round duct with the friction of a flat oval one at the same flow.

    Args:
        major_in: Wide inside size. [in]
        minor_in: Narrow inside size, above zero. [in]

    Returns:
        Equivalent diameter. [in]

    Source: F21 chapter 21, eq. 26 to 28.
    """
    area = oval_area_in2(major_in, minor_in)
    perimeter = math.pi * minor_in + 2.0 * (major_in - minor_in)
    return OVAL * math.pow(area, OVAL_AREA_POWER) / math.pow(perimeter, OVAL_PERIMETER_POWER)


def hydraulic_diameter_in(area_in2: float, perimeter_in: float) -> float:
    """Four times the area over the wetted perimeter. [in]

    Source: F21 chapter 21, eq. 24. Use it with the real velocity.
    """
    _above_zero("area_in2", area_in2)
    _above_zero("perimeter_in", perimeter_in)
    return 4.0 * area_in2 / perimeter_in


def aspect_ratio(width_in: float, height_in: float) -> float:
    """Long side over short side. [-]"""
    _above_zero("width_in", width_in)
    _above_zero("height_in", height_in)
    return max(width_in, height_in) / min(width_in, height_in)


def takeoff_friction_share(takeoffs: int, exponent: float = 2.0) -> float:
    """Friction of a trunk that gives off its air evenly, over that at full flow.

    Args:
        takeoffs: Equal takeoffs at equal spacing, the first after the first section. [-]
        exponent: How friction grows with flow. [-]

    Returns:
        Share of the friction at full flow along the whole trunk. [-]

    Source: arithmetic: the mean of (i/N)ⁿ.
    """
    if takeoffs < 1:
        raise ValueError(f"a trunk needs at least one takeoff, not {takeoffs}")
    return sum(math.pow(i / takeoffs, exponent) for i in range(1, takeoffs + 1)) / takeoffs


# ------------------------------------------------------------------------ flexible duct


class FlexFactor(NamedTuple):
    """Loss of compressed flexible duct over that of the same duct stretched. [-]"""

    low: float
    likely: float
    high: float
    beyond_tests: bool


def compression_pct(installed_ft: float, stretched_ft: float) -> float:
    """How far a piece of flexible duct is short of its full stretch.

    Args:
        installed_ft: Length along its centre line as it hangs. [ft]
        stretched_ft: Length of the same piece pulled out fully. [ft]

    Returns:
        Compression. [%]

    Raises:
        ValueError: installed longer than stretched, or a length not above zero.

    Source: F21 chapter 21, eq. 23.
    """
    _above_zero("installed_ft", installed_ft)
    _above_zero("stretched_ft", stretched_ft)
    if installed_ft > stretched_ft:
        raise ValueError(
            f"a piece of {stretched_ft:g} ft cannot hang {installed_ft:g} ft long"
        )
    return 100.0 * (1.0 - installed_ft / stretched_ft)


def flex_formula(diameter_in: float, compression_pct: float) -> float:
    """Loss of compressed flexible duct over that of the stretched one, by the formula alone.

    Args:
        diameter_in: Nominal diameter. [in]
        compression_pct: Compression, 0 to 50. [%]

    Returns:
        Factor on the stretched loss of the installed length. [-]

    Holds for: 6, 8 and 10 in up to 30 % (the tests that could be read). See `flex_factor`.
    Source: F21 chapter 21, eq. 22.
    """
    _above_zero("diameter_in", diameter_in)
    if not 0.0 <= compression_pct <= 50.0:
        raise ValueError(f"compression must be 0 to 50 %, not {compression_pct:g}")
    return 1.0 + FLEX_PER_PERCENT * compression_pct * math.exp(-FLEX_DECAY_PER_IN * diameter_in)


def flex_factor(diameter_in: float, compression_pct: float) -> FlexFactor:
    """Loss of compressed flexible duct over that of the stretched one, with published bounds.

    Up to 10 in the formula holds within 4 % of the tests printed with it. Above 10 in the
    sources part: the formula goes on falling with diameter, while tests of 12 to 16 in found
    more than four times the stretched loss above 4 % compression. The likely value keeps the
    formula's value at 10 in; low is the formula, high the larger of the two others.

    Args:
        diameter_in: Nominal diameter. [in]
        compression_pct: Compression, 0 to 50. [%]

    Returns:
        Factors on the stretched loss of the installed length. [-]

    Source: F21 chapter 21, eq. 22 and table 2; thesis on 12, 14 and 16 in flexible duct, Texas
    A&M University.
    """
    formula = flex_formula(diameter_in, compression_pct)
    if diameter_in <= FLEX_TESTED_TO_IN:
        spread = FLEX_MODEL_ERROR * formula if compression_pct > 0.0 else 0.0
        return FlexFactor(max(1.0, formula - spread), formula, formula + spread, False)
    capped = flex_formula(FLEX_TESTED_TO_IN, compression_pct)
    high = capped
    if compression_pct > FLEX_LARGE_ABOVE_PCT:
        high = max(capped, FLEX_LARGE_FACTOR)
    return FlexFactor(formula, capped, high, True)


def sag_length_factor(sag_in: float, spacing_ft: float) -> float:
    """Length of a sagging duct over the straight distance.

    Args:
        sag_in: Depth of the sag between two supports. [in]
        spacing_ft: Distance between supports, above zero. [ft]

    Returns:
        Length factor. [-]

    Holds for: sag to a quarter of the spacing (parabola).
    Source: geometry.
    """
    _above_zero("spacing_ft", spacing_ft)
    if sag_in < 0.0:
        raise ValueError(f"sag must not be below zero, not {sag_in:g}")
    return 1.0 + SAG * (sag_in / (12.0 * spacing_ft)) ** 2


# ----------------------------------------------------------------------------- fittings


def expansion_c(small_area_in2: float, large_area_in2: float) -> float:
    """Loss coefficient of an abrupt widening, on the velocity pressure of the small side. [-]

    Source: handbook of hydraulic resistance, diagram 4-1 (Borda-Carnot).
    """
    return (1.0 - _area_ratio(small_area_in2, large_area_in2)) ** 2


def _area_ratio(small_area_in2: float, large_area_in2: float) -> float:
    _above_zero("small_area_in2", small_area_in2)
    if small_area_in2 > large_area_in2:
        raise ValueError(
            f"the small area, {small_area_in2:g} in², is larger than the large, "
            f"{large_area_in2:g}"
        )
    return small_area_in2 / large_area_in2


def mitered_bend_c(angle_deg: float) -> float:
    """Loss coefficient of a sharp bend without vanes, round or square section.

    Args:
        angle_deg: Turn, above 0 and at most 180. [°]

    Returns:
        Coefficient on the velocity pressure of the duct. [-]

    Holds for: Re above 140,000; below see `reynolds_factor`.
    Source: handbook of hydraulic resistance, diagram 6-7.
    """
    if not 0.0 < angle_deg <= 180.0:
        raise ValueError(f"angle must be above 0 and at most 180°, not {angle_deg:g}")
    half = math.sin(math.radians(angle_deg) / 2.0)
    return (MITER_A + MITER_B / angle_deg) * (MITER_SECOND * half**2 + MITER_FOURTH * half**4)


def takeoff_c(
    branch_cfm: float, main_cfm: float, branch_area_in2: float, main_area_in2: float
) -> float:
    """Loss coefficient from a main into a plain right-angled takeoff.

    Args:
        branch_cfm: Flow into the takeoff, above zero. [ft³/min]
        main_cfm: Flow of the main before it. [ft³/min]
        branch_area_in2: Area of the takeoff. [in²]
        main_area_in2: Area of the main. [in²]

    Returns:
        Coefficient on the velocity pressure of the *main*, before the takeoff. [-]

    Holds for: takeoffs up to two thirds of the main by the first formula, larger ones by the
    second. Handbook tables of round tees give some 30 % less.
    Source: flow of fluids, technical paper 410 (2009), diverging tee.
    """
    _above_zero("main_cfm", main_cfm)
    if not 0.0 < branch_cfm <= main_cfm:
        raise ValueError(f"takeoff flow {branch_cfm:g} must be above 0 and at most {main_cfm:g}")
    areas = _area_ratio(branch_area_in2, main_area_in2)
    share = branch_cfm / main_cfm
    velocities = share / areas
    if areas <= 2.0 / 3.0:
        return 1.0 + velocities**2
    return (1.0 + TEE_EQUAL * share**2) * (1.0 + TEE_EQUAL * velocities**2)


def straight_run_c(branch_cfm: float, main_cfm: float) -> float:
    """Loss coefficient along a main past a takeoff, the main keeping its size.

    Args:
        branch_cfm: Flow into the takeoff. [ft³/min]
        main_cfm: Flow of the main before it, above zero. [ft³/min]

    Returns:
        Coefficient on the velocity pressure of the main before the takeoff. [-]

    Holds for: takeoffs up to 0.4 of the main's area.
    Source: flow of fluids, technical paper 410 (2009), diverging tee.
    """
    _above_zero("main_cfm", main_cfm)
    if not 0.0 <= branch_cfm <= main_cfm:
        raise ValueError(f"takeoff flow {branch_cfm:g} must be 0 to {main_cfm:g}")
    return TEE_RUN * (branch_cfm / main_cfm) ** 2


class BoxLoss(NamedTuple):
    """Loss coefficients of a floor box on the velocity pressure of the trunk. [-]"""

    low: float
    high: float


def box_to_trunk_c(
    outlet_area_in2: float, box_area_in2: float, trunk_area_in2: float, entry_c: float
) -> float:
    """Loss from an air handler's outlet through a large calm box into a trunk.

    The jet from the outlet is lost in the box and the air starts afresh into the trunk.

    Args:
        outlet_area_in2: Outlet of the air handler. [in²]
        box_area_in2: Level section of the box, at least the outlet. [in²]
        trunk_area_in2: Section of the trunk or collar. [in²]
        entry_c: Loss coefficient of the entry: 0.5 flush and sharp, 1.0 where the collar
            projects by half its diameter, 0.03 to 0.2 with a bellmouth. [-]

    Returns:
        Coefficient on the velocity pressure of the trunk, all of the air going into it. [-]

    Source: abrupt widening and entry, handbook of hydraulic resistance and the entry tables of
    the Fundamentals handbook.
    """
    jet = expansion_c(outlet_area_in2, box_area_in2)
    _above_zero("trunk_area_in2", trunk_area_in2)
    return jet * (trunk_area_in2 / outlet_area_in2) ** 2 + entry_c


def fitting_resistance(loss_c: float, area_in2: float, density_lb_ft3: float) -> float:
    """Resistance of a fitting: loss = resistance times flow squared.

    Args:
        loss_c: Loss coefficient. [-]
        area_in2: Area of the section that it refers to. [in²]
        density_lb_ft3: Density. [lb/ft³]

    Returns:
        Resistance. [in. w.c. per (ft³/min)²]

    Source: arithmetic: C rho / (1097 A)².
    """
    return loss_c * velocity_pressure_inwc(velocity_fpm(1.0, area_in2), density_lb_ft3)


def interpolate(xs: Sequence[float], ys: Sequence[float], x: float) -> float:
    """Straight-line reading between the rows of a table; refuses what lies outside it.

    Args:
        xs: Rising column.
        ys: Column read.
        x: Where to read.

    Raises:
        ValueError: x outside the table, columns of unlike length, or a column not rising.
    """
    if len(xs) != len(ys) or len(xs) < 1:
        raise ValueError(f"columns of {len(xs)} and {len(ys)} rows do not belong together")
    if any(b <= a for a, b in itertools.pairwise(xs)):
        raise ValueError(f"the first column of a table must rise: {list(xs)}")
    if not xs[0] <= x <= xs[-1]:
        raise ValueError(f"{x:g} is outside the table, {xs[0]:g} to {xs[-1]:g}")
    k = bisect_left(xs, x)
    if xs[k] == x:
        return ys[k]
    share = (x - xs[k - 1]) / (xs[k] - xs[k - 1])
    return ys[k - 1] + share * (ys[k] - ys[k - 1])


def table_loss_c(rows: Sequence[tuple[float, float, float]], first: float, second: float) -> float:
    """Loss coefficient read from a table by two ratios, on straight lines between.

    Args:
        rows: (first ratio, second ratio, coefficient), a full grid in any order.
        first: First ratio (r/W, turn). [-]
        second: Second ratio (H/W). [-]

    Raises:
        ValueError: a ratio outside the table.

    Source: that of the table.
    """
    lines: dict[float, list[tuple[float, float]]] = {}
    for one, two, value in rows:
        lines.setdefault(one, []).append((two, value))
    firsts = sorted(lines)
    column = []
    for one in firsts:
        line = sorted(lines[one])
        column.append(interpolate([two for two, _ in line], [c for _, c in line], second))
    return interpolate(firsts, column, first)


# ---------------------------------------------------------------- filters, coils, openings


def scaled_drop_inwc(
    drop_inwc: float, airflow_cfm: float, at_cfm: float, exponent: float
) -> float:
    """Loss of a filter, a coil or a grille at another flow than the printed one.

    Args:
        drop_inwc: Printed or measured loss. [in. w.c.]
        airflow_cfm: Its flow, above zero. [ft³/min]
        at_cfm: The flow asked for. [ft³/min]
        exponent: 1.176 for filter media, 1.75 to 1.9 for a wet coil, 2 for a grille. [-]

    Returns:
        Loss. [in. w.c.]

    Source: mean of published filter tests (1 / 0.85); square law for grilles.
    """
    _above_zero("airflow_cfm", airflow_cfm)
    if at_cfm < 0.0 or drop_inwc < 0.0:
        raise ValueError(f"loss {drop_inwc:g} and flow {at_cfm:g} must not be below zero")
    return drop_inwc * math.pow(at_cfm / airflow_cfm, exponent)


FILTER_MEDIA_EXPONENT = 1.0 / 0.85


def orifice_flow_cfm(
    free_area_in2: float,
    drop_pa: float,
    density_lb_ft3: float = STANDARD_DENSITY_LB_FT3,
    discharge: float = ORIFICE_DISCHARGE,
) -> float:
    """Flow through a sharp opening.

    Args:
        free_area_in2: Free area. [in²]
        drop_pa: Pressure across it, not below zero. [Pa]
        density_lb_ft3: Density. [lb/ft³]
        discharge: Discharge coefficient, 0.6 for a thin plate. [-]

    Returns:
        Flow. [ft³/min]

    Source: Bernoulli with a discharge coefficient.
    """
    if drop_pa < 0.0:
        raise ValueError(f"pressure must not be below zero, not {drop_pa:g} Pa")
    velocity = VELOCITY_FPM * math.sqrt(drop_pa / PA_PER_INWC / density_lb_ft3)
    return discharge * free_area_in2 / 144.0 * velocity


def orifice_area_in2(
    airflow_cfm: float,
    drop_pa: float,
    density_lb_ft3: float = STANDARD_DENSITY_LB_FT3,
    discharge: float = ORIFICE_DISCHARGE,
) -> float:
    """Free area that passes a flow at a pressure; the inverse of `orifice_flow_cfm`. [in²]"""
    _above_zero("drop_pa", drop_pa)
    return airflow_cfm / orifice_flow_cfm(1.0, drop_pa, density_lb_ft3, discharge)


def leakage_cfm(
    leakage_cfm25: float, pressure_pa: float, exponent: float = LEAK_EXPONENT
) -> float:
    """Flow of leaks at a pressure, from the flow that held 25 Pa.

    Args:
        leakage_cfm25: Flow at 25 Pa. [ft³/min]
        pressure_pa: Pressure across the leaks, not below zero. [Pa]
        exponent: 0.65 for ducts. [-]

    Returns:
        Flow. [ft³/min]

    Source: F21 chapter 21, eq. 38.
    """
    if pressure_pa < 0.0 or leakage_cfm25 < 0.0:
        raise ValueError(
            f"leakage {leakage_cfm25:g} and pressure {pressure_pa:g} must not be below zero")
    return leakage_cfm25 * math.pow(pressure_pa / LEAK_REFERENCE_PA, exponent)


# ------------------------------------------------------------------------------- fans


def system_flow_cfm(
    airflow_cfm: float, static_inwc: float, new_static_inwc: float, exponent: float = 2.0
) -> float:
    """Flow of an unchanged system at another static pressure. [ft³/min]

    Source: system curve, pressure in proportion to the flow's power (1.8 to 2).
    """
    _above_zero("static_inwc", static_inwc)
    if new_static_inwc < 0.0:
        raise ValueError(f"static pressure must not be below zero, not {new_static_inwc:g}")
    return airflow_cfm * math.pow(new_static_inwc / static_inwc, 1.0 / exponent)


# ------------------------------------------------------------------------- temperature


def duct_exit_f(
    entering_f: float,
    around_f: float,
    surface_ft2: float,
    insulation_r: float,
    airflow_cfm: float,
    density_lb_ft3: float,
) -> float:
    """Temperature of the air where it leaves a duct.

    Args:
        entering_f: Air into the duct. [°F]
        around_f: Air around the duct. [°F]
        surface_ft2: Surface of the duct. [ft²]
        insulation_r: R-value from air to air, above zero. [h ft² °F/Btu]
        airflow_cfm: Flow, above zero. [ft³/min]
        density_lb_ft3: Density where the flow is counted. [lb/ft³]

    Returns:
        Temperature at the end. [°F]

    Holds for: a tight duct, steady state, no condensation.
    Source: heat balance along the duct.
    """
    return around_f + (entering_f - around_f) * conduction_share(
        surface_ft2, insulation_r, airflow_cfm, density_lb_ft3
    )


def conduction_share(
    surface_ft2: float, insulation_r: float, airflow_cfm: float, density_lb_ft3: float
) -> float:
    """Share of its temperature difference to the surroundings that air keeps along a duct. [-]

    Source: heat balance along the duct: exp(−A / (60 Q rho cp R)).
    """
    _above_zero("insulation_r", insulation_r)
    _above_zero("airflow_cfm", airflow_cfm)
    _above_zero("density_lb_ft3", density_lb_ft3)
    if surface_ft2 < 0.0:
        raise ValueError(f"surface must not be below zero, not {surface_ft2:g}")
    capacity = 60.0 * airflow_cfm * density_lb_ft3 * SPECIFIC_HEAT_BTU_LB_F
    return math.exp(-surface_ft2 / (capacity * insulation_r))


# ------------------------------------------------------------------------------- sound


class SoundChange(NamedTuple):
    """Change of sound power level. [dB]"""

    low: float
    high: float


def sound_change_db(old_fpm: float, new_fpm: float) -> SoundChange:
    """Change of the sound that moving air makes at a fitting or a register.

    Args:
        old_fpm: Velocity before, above zero. [ft/min]
        new_fpm: Velocity after, above zero. [ft/min]

    Returns:
        Change by the 5th and by the 6th power of velocity, smaller size first. [dB]

    Source: aeroacoustics: sound power of turbulence at a solid, 5th to 6th power of velocity.
    """
    _above_zero("old_fpm", old_fpm)
    _above_zero("new_fpm", new_fpm)
    decades = math.log10(new_fpm / old_fpm)
    return SoundChange(SOUND_LOW_DB * decades, SOUND_HIGH_DB * decades)


class NoiseRow(NamedTuple):
    """Velocity at a free opening and the noise criterion that it makes."""

    nc_low: float
    nc_high: float
    supply_fpm_low: float
    supply_fpm_high: float
    return_fpm_low: float
    return_fpm_high: float


class NoiseBand(NamedTuple):
    """Noise criterion band; `high` is None beyond the table."""

    low: float
    high: float | None


def noise_band(
    rows: Sequence[tuple[float, float, float, float, float, float]],
    velocity_fpm: float,
    returning: bool = False,
) -> NoiseBand:
    """Noise criterion of a free opening by its velocity, where the maker gives no table.

    Args:
        rows: Rows of `NoiseRow`, rising.
        velocity_fpm: Velocity in the free opening, not below zero. [ft/min]
        returning: Whether it is a return.

    Returns:
        Band of the noise criterion; from 0 below the table, without upper end beyond it. [-]

    Source: architectural acoustics table of air velocity at free openings.
    """
    if velocity_fpm < 0.0:
        raise ValueError(f"velocity must not be below zero, not {velocity_fpm:g}")
    table = [NoiseRow(*row) for row in rows]
    lows = [row.return_fpm_low if returning else row.supply_fpm_low for row in table]
    highs = [row.return_fpm_high if returning else row.supply_fpm_high for row in table]
    if velocity_fpm < lows[0]:
        return NoiseBand(0.0, table[0].nc_low)
    for row, high in zip(table, highs, strict=True):
        if velocity_fpm <= high:
            return NoiseBand(row.nc_low, row.nc_high)
    return NoiseBand(table[-1].nc_high, None)
