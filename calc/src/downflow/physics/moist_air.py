"""Moist air: what psychrolib gives, with the units in the names.

Everything here is a thin cover over psychrolib in inch-pound units. Absolute pressure comes in
as an argument, so that no place forgets the altitude.
"""

from __future__ import annotations

import psychrolib

psychrolib.SetUnitSystem(psychrolib.IP)


def atmosphere_psia(elevation_ft: float) -> float:
    """Pressure of the standard atmosphere.

    Args:
        elevation_ft: Height above sea level. [ft]

    Returns:
        Absolute pressure. [psia]

    Holds for: up to 36,000 ft. Weather moves it by about 2 %.
    Source: STANDARD_ATMOSPHERE.
    """
    return float(psychrolib.GetStandardAtmPressure(elevation_ft))


def ratio_from_wet_bulb(dry_bulb_f: float, wet_bulb_f: float, pressure_psia: float) -> float:
    """Humidity ratio from dry bulb and wet bulb.

    Args:
        dry_bulb_f: Air temperature. [°F]
        wet_bulb_f: Thermodynamic wet bulb, at most the dry bulb. [°F]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Water per dry air. [lb/lb]

    Raises:
        ValueError: The wet bulb is above the dry bulb, or so low that no water is left.

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    if wet_bulb_f > dry_bulb_f:
        raise ValueError(f"wet bulb {wet_bulb_f} °F is above the dry bulb, {dry_bulb_f} °F")
    ratio = float(psychrolib.GetHumRatioFromTWetBulb(dry_bulb_f, wet_bulb_f, pressure_psia))
    if ratio <= float(psychrolib.MIN_HUM_RATIO):
        raise ValueError(f"wet bulb {wet_bulb_f} °F is too low for {dry_bulb_f} °F: "
                         "drier than dry air")
    return ratio


def ratio_from_humidity(dry_bulb_f: float, humidity_percent: float,
                        pressure_psia: float) -> float:
    """Humidity ratio from relative humidity.

    Args:
        dry_bulb_f: Air temperature. [°F]
        humidity_percent: Relative humidity, 0 to 100. [%]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Water per dry air. [lb/lb]

    Raises:
        ValueError: The humidity is outside 0 to 100 %.

    Holds for: -148 to 392 °F; below freezing over ice.
    Source: MOIST_AIR.
    """
    if not 0 <= humidity_percent <= 100:
        raise ValueError(f"relative humidity {humidity_percent} % is outside 0 to 100 %")
    return float(psychrolib.GetHumRatioFromRelHum(dry_bulb_f, humidity_percent / 100,
                                                  pressure_psia))


def saturated_ratio(temp_f: float, pressure_psia: float) -> float:
    """Humidity ratio of saturated air, over ice below freezing.

    Args:
        temp_f: Air temperature. [°F]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Water per dry air. [lb/lb]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return float(psychrolib.GetSatHumRatio(temp_f, pressure_psia))


def vapor_pressure_psia(temp_f: float) -> float:
    """Pressure of water vapor over water, or over ice below freezing.

    Args:
        temp_f: Temperature of the water or ice. [°F]

    Returns:
        Absolute pressure. [psia]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return float(psychrolib.GetSatVapPres(temp_f))


def humidity_percent(dry_bulb_f: float, ratio: float, pressure_psia: float) -> float:
    """Relative humidity from the humidity ratio.

    Args:
        dry_bulb_f: Air temperature. [°F]
        ratio: Water per dry air. [lb/lb]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Relative humidity. [%]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return 100 * float(psychrolib.GetRelHumFromHumRatio(dry_bulb_f, ratio, pressure_psia))


def wet_bulb_f(dry_bulb_f: float, ratio: float, pressure_psia: float) -> float:
    """Wet bulb from the humidity ratio.

    Args:
        dry_bulb_f: Air temperature. [°F]
        ratio: Water per dry air. [lb/lb]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Thermodynamic wet bulb. [°F]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return float(psychrolib.GetTWetBulbFromHumRatio(dry_bulb_f, ratio, pressure_psia))


def driest_wet_bulb_f(dry_bulb_f: float, pressure_psia: float) -> float:
    """Wet bulb of air as good as dry: no reading at this dry bulb can be lower. [°F]

    Source: as `wet_bulb_f`, at a millionth of water by mass.
    """
    return wet_bulb_f(dry_bulb_f, 1e-6, pressure_psia)


def dew_point_f(dry_bulb_f: float, ratio: float, pressure_psia: float) -> float:
    """Dew point, or frost point below freezing.

    Args:
        dry_bulb_f: Air temperature. [°F]
        ratio: Water per dry air. [lb/lb]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Temperature of saturation. [°F]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return float(psychrolib.GetTDewPointFromHumRatio(dry_bulb_f, ratio, pressure_psia))


def enthalpy_btu_lb(dry_bulb_f: float, ratio: float) -> float:
    """Enthalpy of moist air for each pound of its dry air; 0 at 0 °F dry air.

    Args:
        dry_bulb_f: Air temperature. [°F]
        ratio: Water per dry air. [lb/lb]

    Returns:
        Enthalpy. [Btu/lb]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return float(psychrolib.GetMoistAirEnthalpy(dry_bulb_f, ratio))


def volume_ft3_lb(dry_bulb_f: float, ratio: float, pressure_psia: float) -> float:
    """Volume of moist air for each pound of its dry air.

    Args:
        dry_bulb_f: Air temperature. [°F]
        ratio: Water per dry air. [lb/lb]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Volume. [ft³/lb]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return float(psychrolib.GetMoistAirVolume(dry_bulb_f, ratio, pressure_psia))


def density_lb_ft3(dry_bulb_f: float, ratio: float, pressure_psia: float) -> float:
    """Density of moist air, water and dry air together.

    Args:
        dry_bulb_f: Air temperature. [°F]
        ratio: Water per dry air. [lb/lb]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Density. [lb/ft³]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return float(psychrolib.GetMoistAirDensity(dry_bulb_f, ratio, pressure_psia))


def dry_air_lb_h(airflow_cfm: float, dry_bulb_f: float, ratio: float,
                 pressure_psia: float) -> float:
    """Dry air carried by a stream of moist air.

    Args:
        airflow_cfm: Volume flow, counted at the state given. [ft³/min]
        dry_bulb_f: Air temperature there. [°F]
        ratio: Water per dry air there. [lb/lb]
        pressure_psia: Absolute pressure of the air. [psia]

    Returns:
        Dry air. [lb/h]

    Holds for: -148 to 392 °F.
    Source: MOIST_AIR.
    """
    return 60 * airflow_cfm / volume_ft3_lb(dry_bulb_f, ratio, pressure_psia)
