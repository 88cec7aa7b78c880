"""Cooling load of a home by the residential load factor method, sensible and latent.

The method's coefficients are kept in the SI units in which they are published and
converted where they are used. It holds for summer peaks, 20 to 60° north, below
2,000 m (6,562 ft); heat in air still goes with its density.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from downflow.physics import air

if TYPE_CHECKING:
    from downflow.tables import OpaqueFactor, WindowExposure

F_PER_K = 1.8
M2_PER_FT2 = 0.3048**2
HIGHEST_FT = 2000 / 0.3048
LOWEST_LATITUDE = 20.0
HIGHEST_LATITUDE = 60.0

WINDOW_DAILY_RANGE = 0.46
INSECT_SCREEN = 0.64

HORIZONTAL_TOTAL = 816.2
HORIZONTAL_TOTAL_L = 10.20
HORIZONTAL_TOTAL_L2 = -0.1806
HORIZONTAL_DIFFUSE = 170.0

TOTAL = 423.5
TOTAL_PHI = 1240.0
TOTAL_PHI3 = -5143.0
TOTAL_PHI4 = 3191.0
TOTAL_PHI_L = 35.25
TOTAL_PHI_L2 = 0.1427
TOTAL_L = -12.89
TOTAL_L2 = -0.6172
TOTAL_L2_OVER = 0.7802

DIFFUSE = 356.3
DIFFUSE_PHI2 = -37.73
DIFFUSE_PHI_L = 0.3022
DIFFUSE_ROOT = -115.9
DIFFUSE_ROOT_EXPONENT = 0.25

GAIN_SENSIBLE_W = 136.0
GAIN_SENSIBLE_W_M2 = 2.2
GAIN_SENSIBLE_W_PERSON = 22.0
GAIN_LATENT_W = 20.0
GAIN_LATENT_W_M2 = 0.22
GAIN_LATENT_W_PERSON = 12.0


def _latitude(latitude_deg: float) -> None:
    if not LOWEST_LATITUDE <= latitude_deg <= HIGHEST_LATITUDE:
        raise ValueError(f"latitude {latitude_deg}° is outside 20 to 60°")


def opaque_factor_btuh_ft2(
    u_btuh_ft2_f: float,
    difference_f: float,
    daily_range_f: float,
    factor: OpaqueFactor,
    roof_absorptance: float = 0.0,
) -> float:
    """Cooling load of an opaque surface per area.

    Args:
        u_btuh_ft2_f: U of the surface. [Btu/(h ft² °F)]
        difference_f: Outdoor design minus indoor temperature. [°F]
        daily_range_f: Daily range of the outdoor temperature. [°F]
        factor: Row of the table for this kind of surface.
        roof_absorptance: For ceilings and roofs, 0 to 1.

    Returns:
        Load per area, below zero where the night's cool helps. [Btu/(h ft²)]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 21 and table 7.
    """
    base_f = F_PER_K * (factor.of_b_alpha_k * roof_absorptance + factor.of_b_k)
    return u_btuh_ft2_f * (factor.of_t * difference_f + base_f + factor.of_r * daily_range_f)


def total_irradiance_w_m2(latitude_deg: float, azimuth_from_south_deg: float) -> float:
    """Peak total irradiance on a vertical surface in July. [W/m²]

    Args:
        latitude_deg: North latitude. [deg]
        azimuth_from_south_deg: 0 south, 90 east or west, 180 north. [deg]

    Source: 2021 Fundamentals handbook, chapter 17, table 9, read so that it gives the
    entries of table 10; there phi is 0 for north and 1 for south.
    """
    _latitude(latitude_deg)
    lat, phi = latitude_deg, 1 - abs(azimuth_from_south_deg) / 180
    return (
        TOTAL
        + TOTAL_PHI * phi
        + TOTAL_PHI3 * phi**3
        + TOTAL_PHI4 * phi**4
        + TOTAL_PHI_L * phi * lat
        + TOTAL_PHI_L2 * phi * lat**2
        + TOTAL_L * lat
        + TOTAL_L2 * lat**2
        + TOTAL_L2_OVER * lat**2 / (phi + 1)
    )


def diffuse_irradiance_w_m2(latitude_deg: float, azimuth_from_south_deg: float) -> float:
    """Diffuse part of the peak irradiance on a vertical surface in July. [W/m²]

    Source: 2021 Fundamentals handbook, chapter 17, table 9; see `total_irradiance_w_m2`.
    """
    _latitude(latitude_deg)
    lat, phi = latitude_deg, 1 - abs(azimuth_from_south_deg) / 180
    root: float = lat**DIFFUSE_ROOT_EXPONENT
    diffuse = (
        DIFFUSE
        + DIFFUSE_PHI2 * phi**2
        + DIFFUSE_PHI_L * phi * lat
        + DIFFUSE_ROOT * root / (phi + 1)
    )
    return min(total_irradiance_w_m2(latitude_deg, azimuth_from_south_deg), diffuse)


def horizontal_irradiance_w_m2(latitude_deg: float) -> float:
    """Peak total irradiance on a horizontal surface (skylight) in July. [W/m²]

    Source: 2021 Fundamentals handbook, chapter 17, table 9.
    """
    _latitude(latitude_deg)
    return (
        HORIZONTAL_TOTAL + HORIZONTAL_TOTAL_L * latitude_deg + HORIZONTAL_TOTAL_L2 * latitude_deg**2
    )


def horizontal_diffuse_w_m2(latitude_deg: float) -> float:
    """Diffuse part of the peak irradiance on a horizontal surface. [W/m²]

    Source: 2021 Fundamentals handbook, chapter 17, table 9.
    """
    return min(horizontal_irradiance_w_m2(latitude_deg), HORIZONTAL_DIFFUSE)


def shade_line_factor(exposure: WindowExposure, latitude_deg: float) -> float:
    """Shadow below an overhang's edge over its depth, straight between latitudes.

    Source: 2021 Fundamentals handbook, chapter 17, table 12.
    """
    _latitude(latitude_deg)
    below = min(int(latitude_deg // 5) * 5, int(HIGHEST_LATITUDE) - 5)
    low = float(getattr(exposure, f"slf_{below}"))
    high = float(getattr(exposure, f"slf_{below + 5}"))
    return low + (latitude_deg - below) / 5 * (high - low)


def shaded_share(
    line_factor: float, overhang_ft: float, above_window_ft: float, window_height_ft: float
) -> float:
    """Share of a window that an overhang shades, 0 to 1.

    Args:
        line_factor: Shade line factor for exposure and latitude.
        overhang_ft: Depth of the overhang from the glass. [ft]
        above_window_ft: From the top of the window up to the overhang. [ft]
        window_height_ft: Height of the window. [ft]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 28.
    """
    if window_height_ft <= 0:
        raise ValueError(f"window height {window_height_ft} ft is not above 0")
    return min(1.0, max(0.0, (line_factor * overhang_ft - above_window_ft) / window_height_ft))


def exterior_irradiance_w_m2(
    total_w_m2: float, diffuse_w_m2: float, shaded: float = 0.0, screen: float = 1.0
) -> float:
    """Irradiance that reaches the glass past shade and insect screen. [W/m²]

    Source: 2021 Fundamentals handbook, chapter 17, eqs. 26 and 27; screen 0.64, table 11.
    """
    return screen * (diffuse_w_m2 + (1 - shaded) * (total_w_m2 - diffuse_w_m2))


def interior_attenuation(closed_attenuation: float, closed_share: float) -> float:
    """Attenuation by a shade that is partly closed.

    Source: 2021 Fundamentals handbook, chapter 17, eq. 29.
    """
    return 1 + closed_share * (closed_attenuation - 1)


def window_factor_btuh_ft2(
    u_btuh_ft2_f: float,
    difference_f: float,
    daily_range_f: float,
    irradiance_w_m2: float,
    shgc: float,
    attenuation: float,
    solar_load_factor: float,
) -> float:
    """Cooling load of a window per area.

    Args:
        u_btuh_ft2_f: U of the whole window, winter rating. [Btu/(h ft² °F)]
        difference_f: Outdoor design minus indoor temperature. [°F]
        daily_range_f: Daily range of the outdoor temperature. [°F]
        irradiance_w_m2: Peak irradiance past shade and screen. [W/m²]
        shgc: Solar heat gain coefficient of the whole window.
        attenuation: Of interior shades, 1 without.
        solar_load_factor: By exposure.

    Returns:
        Load per area. [Btu/(h ft²)]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 25.
    """
    solar = air.btuh_of_watts(irradiance_w_m2 * M2_PER_FT2) * shgc * attenuation * solar_load_factor
    return u_btuh_ft2_f * (difference_f - WINDOW_DAILY_RANGE * daily_range_f) + solar


def internal_sensible_btuh(floor_ft2: float, people: float) -> float:
    """Sensible gain from people, lights and appliances at the peak. [Btu/h]

    Args:
        floor_ft2: Conditioned floor area. [ft²]
        people: Number; if not known, bedrooms plus one.

    Source: 2021 Fundamentals handbook, chapter 17, eq. 30.
    """
    return air.btuh_of_watts(
        GAIN_SENSIBLE_W
        + GAIN_SENSIBLE_W_M2 * floor_ft2 * M2_PER_FT2
        + GAIN_SENSIBLE_W_PERSON * people
    )


def internal_latent_btuh(floor_ft2: float, people: float) -> float:
    """Latent gain from people, cooking and bathing at the peak. [Btu/h]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 31.
    """
    return air.btuh_of_watts(
        GAIN_LATENT_W + GAIN_LATENT_W_M2 * floor_ft2 * M2_PER_FT2 + GAIN_LATENT_W_PERSON * people
    )


def air_sensible_btuh(airflow_cfm: float, difference_f: float, density_lb_ft3: float) -> float:
    """Sensible load of outdoor air. [Btu/h]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 15.
    """
    return air.heat_btuh(airflow_cfm, difference_f, density_lb_ft3)


def air_latent_btuh(
    airflow_cfm: float, outdoor_ratio: float, indoor_ratio: float, density_lb_ft3: float
) -> float:
    """Latent load of outdoor air; none where outdoors is drier. [Btu/h]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 16.
    """
    return air.latent_btuh(airflow_cfm, max(0.0, outdoor_ratio - indoor_ratio), density_lb_ft3)


def with_ducts_btuh(load_btuh: float, loss_factor: float) -> float:
    """Load with the ducts' gain on top. [Btu/h]

    Source: 2021 Fundamentals handbook, chapter 17, eq. 19 and table 6.
    """
    return load_btuh * (1 + loss_factor)


def sensible_heat_ratio(sensible_btuh: float, latent_btuh: float) -> float:
    """Sensible over total load, 0 to 1."""
    total = sensible_btuh + latent_btuh
    if total <= 0:
        raise ValueError(f"total load {total} Btu/h is not above 0")
    return sensible_btuh / total
