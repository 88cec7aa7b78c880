"""Air: pressure and density by altitude, heat carried by a flow, moisture in it.

Airflow here is *actual* (at the density where it is counted) unless a name says
`standard`: standard air has 0.075 lb/ft³ whatever the altitude. The heat that a flow
carries goes with its mass, so density enters every formula.
"""

SEA_LEVEL_PSIA = 14.696
LAPSE_PER_FT = 6.8754e-6
PRESSURE_EXPONENT = 5.2559
DRY_AIR_GAS_CONSTANT = 53.350  # ft lbf/(lb °R)
RANKINE_OF_ZERO_F = 459.67
VAPOR_VOLUME_RATIO = 1.607858  # gas constant of water vapour over that of dry air
STANDARD_DENSITY_LB_FT3 = 0.075
SPECIFIC_HEAT_BTU_LB_F = 0.240
VAPOR_HEAT_BTU_LB = 1076.0  # vapour brought from 75 °F and 50 % to liquid at 50 °F
BTU_PER_WH = 3.412142
LOWEST_FT = -1_000.0
HIGHEST_FT = 36_000.0


def pressure_psia(elevation_ft: float) -> float:
    """Pressure of the standard atmosphere.

    Args:
        elevation_ft: Height above sea level. [ft]

    Returns:
        Absolute pressure. [psia]

    Holds for: -1,000 to 36,000 ft; weather moves the real value by some 2 %.
    Source: 2021 Fundamentals handbook, chapter 1, eq. 3 (US standard atmosphere).
    """
    if not LOWEST_FT <= elevation_ft <= HIGHEST_FT:
        raise ValueError(f"elevation {elevation_ft} ft is outside {LOWEST_FT} to {HIGHEST_FT} ft")
    ratio: float = (1 - LAPSE_PER_FT * elevation_ft) ** PRESSURE_EXPONENT
    return SEA_LEVEL_PSIA * ratio


def pressure_ratio(elevation_ft: float) -> float:
    """Pressure at `elevation_ft` over that at sea level, at equal temperature also of densities."""
    return pressure_psia(elevation_ft) / SEA_LEVEL_PSIA


def density_lb_ft3(elevation_ft: float, air_f: float = 70.0, humidity_ratio: float = 0.0) -> float:
    """Density of air by altitude, temperature and moisture.

    Args:
        elevation_ft: Height above sea level. [ft]
        air_f: Dry-bulb temperature. [°F]
        humidity_ratio: Water vapour per dry air; 0 is dry air. [lb/lb]

    Returns:
        Mass of the mixture per volume. [lb/ft³]

    Holds for: ideal gas, within 0.1 % at these pressures.
    Source: 2021 Fundamentals handbook, chapter 1, eqs. 3, 26 and 28.
    """
    if air_f <= -RANKINE_OF_ZERO_F:
        raise ValueError(f"air at {air_f} °F is below absolute zero")
    if humidity_ratio < 0:
        raise ValueError(f"humidity ratio {humidity_ratio} is below 0")
    volume = (
        DRY_AIR_GAS_CONSTANT
        * (air_f + RANKINE_OF_ZERO_F)
        * (1 + VAPOR_VOLUME_RATIO * humidity_ratio)
        / (144 * pressure_psia(elevation_ft))
    )
    return (1 + humidity_ratio) / volume


def sensible_factor_btuh_cfm_f(density_lb_ft3: float = STANDARD_DENSITY_LB_FT3) -> float:
    """Heat carried per airflow and temperature difference.

    Args:
        density_lb_ft3: Density of the air where its volume is counted. [lb/ft³]

    Returns:
        The 1.08 of the trade, for this density. [Btu/(h cfm °F)]

    Source: 60 min/h x 0.240 Btu/(lb °F) x density; 2021 Fundamentals handbook, chapter 18.
    """
    if density_lb_ft3 <= 0:
        raise ValueError(f"density {density_lb_ft3} lb/ft³ is not above 0")
    return 60 * SPECIFIC_HEAT_BTU_LB_F * density_lb_ft3


def heat_btuh(airflow_cfm: float, rise_f: float, density_lb_ft3: float) -> float:
    """Sensible heat that `airflow_cfm` takes up over a rise of `rise_f`. [Btu/h]"""
    return sensible_factor_btuh_cfm_f(density_lb_ft3) * airflow_cfm * rise_f


def airflow_cfm(heat_btuh: float, rise_f: float, density_lb_ft3: float) -> float:
    """Airflow that carries off `heat_btuh` at a temperature rise of `rise_f`.

    Args:
        heat_btuh: Sensible heat added to the air. [Btu/h]
        rise_f: Supply minus return temperature, above zero. [°F]
        density_lb_ft3: Density of the air where its volume is counted. [lb/ft³]

    Returns:
        Volume flow at that density. [ft³/min]

    Holds for: heating without condensation.
    Source: as `sensible_factor_btuh_cfm_f`.
    """
    if rise_f <= 0:
        raise ValueError(f"temperature rise {rise_f} °F is not above 0")
    return heat_btuh / (sensible_factor_btuh_cfm_f(density_lb_ft3) * rise_f)


def rise_f(heat_btuh: float, airflow_cfm: float, density_lb_ft3: float) -> float:
    """Temperature rise of `airflow_cfm` that takes up `heat_btuh`. [°F]"""
    if airflow_cfm <= 0:
        raise ValueError(f"airflow {airflow_cfm} cfm is not above 0")
    return heat_btuh / (sensible_factor_btuh_cfm_f(density_lb_ft3) * airflow_cfm)


def standard_cfm(actual_cfm: float, density_lb_ft3: float) -> float:
    """Flow of standard air with the mass of `actual_cfm` at `density_lb_ft3`. [scfm]"""
    return actual_cfm * density_lb_ft3 / STANDARD_DENSITY_LB_FT3


def actual_cfm(standard_cfm: float, density_lb_ft3: float) -> float:
    """Volume flow at `density_lb_ft3` with the mass of `standard_cfm`. [cfm]"""
    if density_lb_ft3 <= 0:
        raise ValueError(f"density {density_lb_ft3} lb/ft³ is not above 0")
    return standard_cfm * STANDARD_DENSITY_LB_FT3 / density_lb_ft3


def latent_btuh(airflow_cfm: float, humidity_difference: float, density_lb_ft3: float) -> float:
    """Latent heat of a flow whose humidity ratio changes.

    Args:
        airflow_cfm: Volume flow. [cfm]
        humidity_difference: Change of humidity ratio. [lb/lb]
        density_lb_ft3: Density of the air where its volume is counted. [lb/ft³]

    Returns:
        Latent heat. [Btu/h]

    Source: 2021 Fundamentals handbook, chapter 18: 4,840 cfm dW in standard air
    (60 x 0.075 x 1,076).
    """
    return 60 * density_lb_ft3 * VAPOR_HEAT_BTU_LB * airflow_cfm * humidity_difference


def watts_of_btuh(heat_btuh: float) -> float:
    """Electric power that makes `heat_btuh`. [W]"""
    return heat_btuh / BTU_PER_WH


def btuh_of_watts(power_w: float) -> float:
    """Heat from electric power. [Btu/h]"""
    return power_w * BTU_PER_WH
