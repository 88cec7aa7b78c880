"""Published tables: CSV files in `data/`, read once into typed rows.

Each file starts with `#` lines that name the document and section. A row class is a
`NamedTuple` whose field names are column names; `typed` turns text into what the fields
say (`float`, `int`, `str`, or one of these or nothing). Rows go into physics as arguments.
"""

import csv
from functools import cache
from importlib.resources import files
from typing import Any, NamedTuple, TypeVar

Row = TypeVar("Row", bound=tuple[Any, ...])


@cache
def _lines(name: str) -> tuple[str, ...]:
    text = files("downflow").joinpath("data", f"{name}.csv").read_text(encoding="utf-8")
    return tuple(text.splitlines())


def read(name: str) -> list[dict[str, str]]:
    """Every row of `data/<name>.csv` as column name to text, `#` lines skipped."""
    return list(csv.DictReader(line for line in _lines(name) if not line.startswith("#")))


def source(name: str) -> str:
    """The `#` lines at the head of `data/<name>.csv` in one string: what it is, and from where."""
    return " ".join(line[1:].strip() for line in _lines(name) if line.startswith("#"))


def _value(text: str, kind: Any) -> Any:
    if kind is str:
        return text
    if kind is int or kind is float:
        return kind(text)
    if text == "":  # a kind that allows nothing, written `float | None`
        return None
    return next(part for part in kind.__args__ if part is not type(None))(text)


_typed: dict[tuple[str, type[Any]], tuple[Any, ...]] = {}


def typed(name: str, row: type[Row]) -> tuple[Row, ...]:
    """Rows of `data/<name>.csv` as instances of the `NamedTuple` class `row`, read once.

    Columns that the class does not name are left out.
    """
    if (name, row) not in _typed:
        kinds: dict[str, Any] = row.__annotations__
        _typed[name, row] = tuple(
            row(**{field: _value(line[field], kind) for field, kind in kinds.items()})
            for line in read(name)
        )
    return _typed[name, row]


class SeasonBin(NamedTuple):
    """Outdoor temperature [°F] and share of the heating season's hours, rating region IV."""

    outdoor_f: float
    share: float


class InsulationCompression(NamedTuple):
    """Share of nominal R kept [%] at a restricted thickness [% of full]."""

    thickness_pct: float
    nonuniform_batt_r_pct: float
    nonuniform_blown_r_pct: float
    uniform_batt_r_pct: float


class UoLimit(NamedTuple):
    """Largest overall U of the envelope [Btu/(h ft² °F)] in a thermal zone."""

    uo_zone: int
    max_uo_btuh_ft2_f: float


class UnitLeakage(NamedTuple):
    """Leakage area [cm²] per exposed surface [m²] by quality of construction."""

    construction: str
    leakage_cm2_m2: float


class StackCoefficient(NamedTuple):
    """Stack coefficient [(L/s)²/(cm⁴ K)] by number of storeys."""

    storeys: int
    stack_si: float


class WindCoefficient(NamedTuple):
    """Wind coefficient [(L/s)²/(cm⁴ (m/s)²)] by shelter class and storeys."""

    shelter_class: int
    shelter: str
    storeys: int
    wind_si: float


class Layer(NamedTuple):
    """Thermal resistance of a layer or film [h ft² °F/Btu]; wood per inch."""

    layer: str
    r_ip: float


class DuctLoss(NamedTuple):
    """Duct loss as a share of the building load, crawl space at outdoor temperature."""

    leakage_pct_per_side: float
    duct_r_ip: float
    season: str
    loss_factor: float


class EnvelopeByDate(NamedTuple):
    """Typical level of one component by date of construction."""

    era: str
    from_year: int
    component: str
    low: float
    high: float


class Fuel(NamedTuple):
    """Heat content of one unit of a fuel [Btu], and how far published values spread."""

    fuel: str
    unit: str
    heat_content_btu: float
    spread_btu: float


class FurnaceEfficiency(NamedTuple):
    """Seasonal efficiency of a kind of furnace, lowest and highest usual value."""

    kind: str
    low: float
    high: float


class OpaqueFactor(NamedTuple):
    """Opaque surface cooling factors; the base temperature term in kelvin."""

    surface: str
    of_t: float
    of_b_alpha_k: float
    of_b_k: float
    of_r: float


class RoofAbsorptance(NamedTuple):
    """Solar absorptance of a roof."""

    material: str
    colour: str
    absorptance: float


class WindowExposure(NamedTuple):
    """Exposure of a window: azimuth, solar load factor, shade line factors by latitude."""

    exposure: str
    azimuth_from_south_deg: float
    solar_load_factor: float
    slf_20: float
    slf_25: float
    slf_30: float
    slf_35: float
    slf_40: float
    slf_45: float
    slf_50: float
    slf_55: float
    slf_60: float


class InteriorShading(NamedTuple):
    """Attenuation of solar gain by a closed interior shade."""

    panes: int
    glazing: str
    shade: str
    attenuation: float


class Glazing(NamedTuple):
    """U [W/(m² K)] and solar heat gain coefficient of a whole window."""

    glazing: str
    frame: str
    u_w_m2k: float
    shgc: float


class Wire(NamedTuple):
    """One conductor size: ampacity by temperature column, area, resistance."""

    material: str
    size: str
    ampacity_60c_a: float
    ampacity_75c_a: float
    ampacity_90c_a: float
    small_conductor_ocpd_max_a: float | None
    circular_mils: float
    dc_ohm_per_kft_75c: float


class AmbientCorrection(NamedTuple):
    """Ampacity factor up to an ambient temperature, by insulation temperature."""

    ambient_c_max: float
    factor_60c: float | None
    factor_75c: float | None
    factor_90c: float | None


class ConductorCount(NamedTuple):
    """Ampacity factor up to a number of current-carrying conductors together."""

    count_max: int
    factor: float


class StandardBreaker(NamedTuple):
    """A standard rating of an overcurrent device."""

    rating_a: float


class EquipmentGround(NamedTuple):
    """Smallest equipment ground up to a rating of the overcurrent device."""

    ocpd_max_a: float
    copper_size: str
    aluminum_size: str


class HeatPumpMinCop(NamedTuple):
    """Least COP of a factory heat pump at an outdoor temperature."""

    outdoor_f: float
    min_cop: float


class RefrigerantRow(NamedTuple):
    """Saturation of a refrigerant at a temperature: pressures [psia], densities [lb/ft³]."""

    temp_f: float
    bubble_psia: float
    dew_psia: float
    liquid_lb_ft3: float
    vapor_lb_ft3: float


class RangeDemand(NamedTuple):
    """Demand of a free-standing range [VA] up to a rating [VA]."""

    rating_max_va: float
    demand_va: float


class DrainPipe(NamedTuple):
    """Plastic drain pipe: outside diameter and bore of schedule 40 [in]."""

    size: str
    outside_in: float
    bore_in: float


class ControlWire(NamedTuple):
    """Copper control wire: gauge and resistance of one conductor at 75 °C [ohm/1000 ft]."""

    gauge_awg: int
    ohm_per_kft: float


class FlammabilityLimit(NamedTuple):
    """Lower flammability limit [kg/m³] and safety class of a refrigerant."""

    refrigerant: str
    safety_class: str
    limit_kg_m3: float | None


class ClearingVacuum(NamedTuple):
    """Vacuum to reach before a system is opened or scrapped [inHg]."""

    appliance: str
    charge: str
    vacuum_inhg: float


class LossByTwo(NamedTuple):
    """Loss coefficient by two ratios; the file says which."""

    first: float
    second: float
    loss_c: float


class ReynoldsFactor(NamedTuple):
    """Factor on a loss coefficient at a Reynolds number."""

    reynolds: float
    factor: float


class AngleFactor(NamedTuple):
    """Factor on the loss coefficient of a 90° bend at another angle."""

    angle_deg: float
    factor: float


class Bellmouth(NamedTuple):
    """Loss coefficient of a rounded entry by its radius over the diameter."""

    radius_over_diameter: float
    loss_c: float


class RoundElbow(NamedTuple):
    """Loss coefficient of a round 90° elbow, r/D 1.5, by make and diameter [in]."""

    kind: str
    diameter_in: float
    loss_c: float


class NoiseVelocity(NamedTuple):
    """Noise criterion band and the velocities [ft/min] at a free opening that make it."""

    nc_low: float
    nc_high: float
    supply_fpm_low: float
    supply_fpm_high: float
    return_fpm_low: float
    return_fpm_high: float


class DuctRoughness(NamedTuple):
    """Absolute roughness of a duct material [ft]: measured range and the value to use."""

    material: str
    low_ft: float
    high_ft: float
    roughness_ft: float


class VelocityLimit(NamedTuple):
    """Recommended and greatest velocity [ft/min] in a part of a home's air path."""

    place: str
    recommended_fpm: float
    maximum_fpm: float
    kind: str


class MetalThickness(NamedTuple):
    """Least sheet-metal thickness [in] of a duct up to and over 14 in."""

    duct: str
    to_14_in: float
    over_14_in: float


#: Table name to row class, for whoever needs a table by its name.
ROWS: dict[str, type[Any]] = {
    "ambient_correction": AmbientCorrection,
    "bellmouth": Bellmouth,
    "clearing_vacuum": ClearingVacuum,
    "conductor_count": ConductorCount,
    "control_wire": ControlWire,
    "drain_pipe": DrainPipe,
    "duct_entry": LossByTwo,
    "duct_loss": DuctLoss,
    "duct_roughness": DuctRoughness,
    "elbow_mitered": LossByTwo,
    "elbow_mitered_reynolds": ReynoldsFactor,
    "elbow_round": RoundElbow,
    "elbow_smooth": LossByTwo,
    "elbow_smooth_angle": AngleFactor,
    "envelope_by_date": EnvelopeByDate,
    "equipment_ground": EquipmentGround,
    "flammability": FlammabilityLimit,
    "fuels": Fuel,
    "hspf2_bins": SeasonBin,
    "furnace_efficiency": FurnaceEfficiency,
    "glazing": Glazing,
    "heat_pump_min_cop": HeatPumpMinCop,
    "infiltration_stack": StackCoefficient,
    "infiltration_wind": WindCoefficient,
    "insulation_compression": InsulationCompression,
    "interior_shading": InteriorShading,
    "layers": Layer,
    "metal_thickness": MetalThickness,
    "noise_velocity": NoiseVelocity,
    "range_demand": RangeDemand,
    "refrigerant_r22": RefrigerantRow,
    "refrigerant_r32": RefrigerantRow,
    "refrigerant_r410a": RefrigerantRow,
    "refrigerant_r454b": RefrigerantRow,
    "rlf_opaque": OpaqueFactor,
    "rlf_window": WindowExposure,
    "roof_absorptance": RoofAbsorptance,
    "standard_breakers": StandardBreaker,
    "unit_leakage": UnitLeakage,
    "uo_limits": UoLimit,
    "velocity_limits": VelocityLimit,
    "wire_ampacity": Wire,
}


def rows(name: str) -> tuple[Any, ...]:
    """The typed rows of a table in `ROWS`."""
    return typed(name, ROWS[name])
