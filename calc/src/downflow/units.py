"""Units: what each one is called, what it measures, and what it is in SI.

A unit's kind says what may be compared with what. A temperature and a temperature
difference are two kinds, and so are absolute and gauge pressure, actual and standard
airflow: mixing them is the error this module exists to refuse.
"""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Unit:
    """One unit.

    Attributes:
        name: How it is written in the code, in JSON and in a job sheet.
        label: How it is written for a reader.
        kind: What it measures. Only units of one kind convert into each other.
        si: Name of the unit a reader of SI sees instead.
        factor: Size in the kind's base unit.
        offset: Added before `factor`, for scales whose zero differs.
    """

    name: str
    label: str
    kind: str
    si: str
    factor: float = 1.0
    offset: float = 0.0


_INCH_M = 0.0254
_FOOT_M = 0.3048
_POUND_KG = 0.45359237
_BTU_J = 1055.05585262
_GALLON_L = 3.785411784
_PSI_PA = 6894.757293168
_INWC_PA = 249.08891
_BTUH_W = _BTU_J / 3600
_CFM_LS = _FOOT_M**3 * 1000 / 60

_ROWS: tuple[tuple[str, str, str, str, float, float], ...] = (
    # name, label, kind, si, factor, offset
    ("", "", "plain", "", 1.0, 0.0),
    ("%", "%", "share", "%", 1.0, 0.0),
    ("°F", "°F", "temperature", "°C", 5 / 9, -32.0),
    ("°C", "°C", "temperature", "°C", 1.0, 0.0),
    ("°F diff", "°F", "temperature difference", "°C diff", 5 / 9, 0.0),
    ("°C diff", "°C", "temperature difference", "°C diff", 1.0, 0.0),
    ("ft", "ft", "length", "m", _FOOT_M, 0.0),
    ("in", "in", "length", "mm", _INCH_M, 0.0),
    ("m", "m", "length", "m", 1.0, 0.0),
    ("cm", "cm", "length", "cm", 0.01, 0.0),
    ("mm", "mm", "length", "mm", 0.001, 0.0),
    ("mile", "miles", "length", "km", 1609.344, 0.0),
    ("km", "km", "length", "km", 1000.0, 0.0),
    ("ft²", "ft²", "area", "m²", _FOOT_M**2, 0.0),
    ("in²", "in²", "area", "cm²", _INCH_M**2, 0.0),
    ("m²", "m²", "area", "m²", 1.0, 0.0),
    ("cm²", "cm²", "area", "cm²", 1e-4, 0.0),
    ("ft³", "ft³", "volume", "m³", _FOOT_M**3, 0.0),
    ("m³", "m³", "volume", "m³", 1.0, 0.0),
    ("gal", "gal", "volume", "L", _GALLON_L / 1000, 0.0),
    ("L", "L", "volume", "L", 0.001, 0.0),
    ("lb", "lb", "mass", "kg", _POUND_KG, 0.0),
    ("oz", "oz", "mass", "g", _POUND_KG / 16, 0.0),
    ("kg", "kg", "mass", "kg", 1.0, 0.0),
    ("g", "g", "mass", "g", 0.001, 0.0),
    ("lb/h", "lb/h", "mass flow", "kg/h", _POUND_KG, 0.0),
    ("kg/h", "kg/h", "mass flow", "kg/h", 1.0, 0.0),
    ("lb/day", "lb per day", "mass flow by day", "kg/day", _POUND_KG, 0.0),
    ("kg/day", "kg per day", "mass flow by day", "kg/day", 1.0, 0.0),
    ("lb/min", "lb/min", "mass flow", "kg/h", _POUND_KG * 60, 0.0),
    ("oz/ft", "oz/ft", "mass per length", "g/m", _POUND_KG / 16 / _FOOT_M, 0.0),
    ("g/m", "g/m", "mass per length", "g/m", 0.001, 0.0),
    ("ft²/lb", "ft² per lb", "area per mass", "m²/kg", _FOOT_M**2 / _POUND_KG, 0.0),
    ("m²/kg", "m² per kg", "area per mass", "m²/kg", 1.0, 0.0),
    ("cfm/lb", "cfm per lb", "airflow per mass", "L/s per kg", _CFM_LS / _POUND_KG, 0.0),
    ("L/s per kg", "L/s per kg", "airflow per mass", "L/s per kg", 1.0, 0.0),
    ("gal/h", "gal/h", "liquid flow", "L/h", _GALLON_L, 0.0),
    ("gal/day", "gal/day", "liquid flow", "L/day", _GALLON_L / 24, 0.0),
    ("L/h", "L/h", "liquid flow", "L/h", 1.0, 0.0),
    ("L/day", "L/day", "liquid flow", "L/day", 1 / 24, 0.0),
    ("lb/ft³", "lb/ft³", "density", "kg/m³", _POUND_KG / _FOOT_M**3, 0.0),
    ("kg/m³", "kg/m³", "density", "kg/m³", 1.0, 0.0),
    ("lb/lb", "lb/lb", "humidity ratio", "kg/kg", 1.0, 0.0),
    ("kg/kg", "kg/kg", "humidity ratio", "kg/kg", 1.0, 0.0),
    ("psia", "psia", "absolute pressure", "kPa abs", _PSI_PA, 0.0),
    ("kPa abs", "kPa absolute", "absolute pressure", "kPa abs", 1000.0, 0.0),
    ("psig", "psig", "gauge pressure", "kPa gauge", _PSI_PA, 0.0),
    ("kPa gauge", "kPa gauge", "gauge pressure", "kPa gauge", 1000.0, 0.0),
    ("psi", "psi", "pressure difference", "kPa", _PSI_PA, 0.0),
    ("kPa", "kPa", "pressure difference", "kPa", 1000.0, 0.0),
    ("in w.c.", "in w.c.", "air pressure", "Pa", _INWC_PA, 0.0),
    ("Pa", "Pa", "air pressure", "Pa", 1.0, 0.0),
    ("in w.c./100 ft", "in w.c. per 100 ft", "friction", "Pa/m", _INWC_PA / (100 * _FOOT_M), 0.0),
    ("Pa/m", "Pa/m", "friction", "Pa/m", 1.0, 0.0),
    ("micron", "microns", "vacuum", "Pa vacuum", 0.133322368, 0.0),
    ("micron/min", "microns per minute", "vacuum rise", "Pa/min", 0.133322368, 0.0),
    ("Pa/min", "Pa per minute", "vacuum rise", "Pa/min", 1.0, 0.0),
    ("Pa vacuum", "Pa absolute", "vacuum", "Pa vacuum", 1.0, 0.0),
    ("Btu/h", "Btu/h", "power", "W", _BTUH_W, 0.0),
    ("W", "W", "power", "W", 1.0, 0.0),
    ("kW", "kW", "power", "kW", 1000.0, 0.0),
    ("Btu", "Btu", "energy", "kWh", _BTU_J, 0.0),
    ("MMBtu", "million Btu", "energy", "kWh", _BTU_J * 1e6, 0.0),
    ("kWh", "kWh", "energy", "kWh", 3.6e6, 0.0),
    ("MJ", "MJ", "energy", "MJ", 1e6, 0.0),
    ("therm", "therms", "energy", "kWh", _BTU_J * 1e5, 0.0),
    ("Btu/(h °F)", "Btu/h per °F", "loss", "W/K", _BTUH_W * 9 / 5, 0.0),
    ("W/K", "W/K", "loss", "W/K", 1.0, 0.0),
    ("Btu/(h ft² °F)", "Btu/h per ft² °F", "U-value", "W/(m² K)",
     _BTUH_W * 9 / 5 / _FOOT_M**2, 0.0),
    ("W/(m² K)", "W/m² K", "U-value", "W/(m² K)", 1.0, 0.0),
    ("h ft² °F/Btu", "h ft² °F/Btu", "R-value", "m² K/W", _FOOT_M**2 * 5 / 9 / _BTUH_W, 0.0),
    ("m² K/W", "m² K/W", "R-value", "m² K/W", 1.0, 0.0),
    ("Btu/°F", "Btu per °F", "heat capacity", "Wh/K", _BTU_J / 3600 * 9 / 5, 0.0),
    ("Wh/K", "Wh/K", "heat capacity", "Wh/K", 1.0, 0.0),
    ("Btu/(°F ft²)", "Btu per °F and ft²", "heat capacity by area", "Wh/(m² K)",
     _BTU_J / 3600 * 9 / 5 / _FOOT_M**2, 0.0),
    ("Wh/(m² K)", "Wh/m² K", "heat capacity by area", "Wh/(m² K)", 1.0, 0.0),
    ("Btu/lb", "Btu/lb", "specific energy", "kJ/kg", _BTU_J / _POUND_KG / 1000, 0.0),
    ("kJ/kg", "kJ/kg", "specific energy", "kJ/kg", 1.0, 0.0),
    ("Btu/gal", "Btu/gal", "heat content", "MJ/L", _BTU_J / 1e6 / _GALLON_L, 0.0),
    ("MJ/L", "MJ/L", "heat content", "MJ/L", 1.0, 0.0),
    ("cfm", "cfm", "airflow", "L/s", _CFM_LS, 0.0),
    ("L/s", "L/s", "airflow", "L/s", 1.0, 0.0),
    ("m³/h", "m³/h", "airflow", "m³/h", 1 / 3.6, 0.0),
    ("scfm", "standard cfm", "standard airflow", "standard L/s", _CFM_LS, 0.0),
    ("standard L/s", "standard L/s", "standard airflow", "standard L/s", 1.0, 0.0),
    ("W/cfm", "W per cfm", "fan power", "W/(L/s)", 1 / _CFM_LS, 0.0),
    ("W/(L/s)", "W per L/s", "fan power", "W/(L/s)", 1.0, 0.0),
    ("ft/min", "ft/min", "speed", "m/s", _FOOT_M / 60, 0.0),
    ("mph", "mph", "speed", "km/h", 1609.344 / 3600, 0.0),
    ("m/s", "m/s", "speed", "m/s", 1.0, 0.0),
    ("km/h", "km/h", "speed", "km/h", 1 / 3.6, 0.0),
    ("°F day", "°F days", "degree days", "°C day", 5 / 9, 0.0),
    ("°C day", "°C days", "degree days", "°C day", 1.0, 0.0),
    ("gal/°F day", "gal per °F day", "use per degree day", "L/°C day", _GALLON_L * 9 / 5, 0.0),
    ("L/°C day", "L per °C day", "use per degree day", "L/°C day", 1.0, 0.0),
    ("1/h", "air changes per hour", "air changes", "1/h", 1.0, 0.0),
    ("lbf in", "lbf in", "torque", "N m", 0.112984829, 0.0),
    ("N m", "N m", "torque", "N m", 1.0, 0.0),
    ("A", "A", "current", "A", 1.0, 0.0),
    ("V", "V", "voltage", "V", 1.0, 0.0),
    ("VA", "VA", "apparent power", "VA", 1.0, 0.0),
    ("kVA", "kVA", "apparent power", "kVA", 1000.0, 0.0),
    ("ohm/kft", "ohm per 1,000 ft", "resistance per length", "ohm/km", 1 / _FOOT_M, 0.0),
    ("ohm/km", "ohm per km", "resistance per length", "ohm/km", 1.0, 0.0),
    ("cmil", "circular mils", "wire area", "cmil", 1.0, 0.0),
    ("Ah", "Ah", "charge", "Ah", 1.0, 0.0),
    ("dB(A)", "dB(A)", "sound level", "dB(A)", 1.0, 0.0),
    ("Btu/Wh", "Btu/Wh", "seasonal rating", "Btu/Wh", 1.0, 0.0),
    ("kg", "kg", "mass", "kg", 1.0, 0.0),
    ("lb CO2", "lb of CO2", "emission", "kg CO2", _POUND_KG, 0.0),
    ("kg CO2", "kg of CO2", "emission", "kg CO2", 1.0, 0.0),
    ("lb CO2/MWh", "lb of CO2 per MWh", "emission rate", "kg CO2/MWh", _POUND_KG, 0.0),
    ("kg CO2/MWh", "kg of CO2 per MWh", "emission rate", "kg CO2/MWh", 1.0, 0.0),
    ("$", "$", "money", "$", 1.0, 0.0),
    ("$/year", "$ per year", "money per year", "$/year", 1.0, 0.0),
    ("$/kWh", "$ per kWh", "price of electricity", "$/kWh", 1.0, 0.0),
    ("$/gal", "$ per gal", "price by volume", "$/L", 1 / _GALLON_L, 0.0),
    ("$/L", "$ per L", "price by volume", "$/L", 1.0, 0.0),
    ("$/therm", "$ per therm", "price by heat", "$/kWh heat", 3.6e6 / (_BTU_J * 1e5), 0.0),
    ("$/MMBtu", "$ per million Btu", "price by heat", "$/kWh heat", 3.6e6 / (_BTU_J * 1e6), 0.0),
    ("$/kWh heat", "$ per kWh of heat", "price by heat", "$/kWh heat", 1.0, 0.0),
    ("s", "s", "time", "s", 1.0, 0.0),
    ("min", "min", "time", "min", 60.0, 0.0),
    ("h", "h", "time", "h", 3600.0, 0.0),
    ("h/day", "h per day", "share of a day", "h/day", 1.0, 0.0),
    ("min/h", "min per hour", "share of an hour", "min/h", 1.0, 0.0),
    ("day", "days", "days", "day", 1.0, 0.0),
    ("month", "months", "months", "month", 1.0, 0.0),
    ("year", "years", "years", "year", 1.0, 0.0),
    ("people", "people", "people", "people", 1.0, 0.0),
    ("AWG", "AWG", "wire size", "AWG", 1.0, 0.0),
)

UNITS: dict[str, Unit] = {row[0]: Unit(*row) for row in _ROWS}


def unit(name: str) -> Unit:
    """The unit called `name`; `ValueError` for a name that is none."""
    found = UNITS.get(name)
    if found is None:
        raise ValueError(f"no unit is called {name!r}")
    return found


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """`value` of one unit in another of the same kind.

    Args:
        value: The number. [from_unit]
        from_unit: Name of the unit it has.
        to_unit: Name of the unit wanted.

    Returns:
        The number in `to_unit`. Exactly `value` where both are the same.

    Raises:
        ValueError: Unknown unit, or the two measure different things.
    """
    if from_unit == to_unit:
        return value
    source, target = unit(from_unit), unit(to_unit)
    if source.kind != target.kind:
        raise ValueError(f"{from_unit} is a {source.kind}, {to_unit} a {target.kind}")
    if source.offset == 0 and target.offset == 0:
        return value * source.factor / target.factor
    return (value + source.offset) * source.factor / target.factor - target.offset


def shown_unit(name: str, system: str) -> str:
    """Name of the unit in which a reader of `system` (`ip` or `si`) sees `name`."""
    return unit(name).si if system == "si" else name


def units_of_kind(name: str) -> tuple[str, ...]:
    """Every unit that `name` converts to, itself first."""
    kind = unit(name).kind
    return (name, *(u.name for u in UNITS.values() if u.kind == kind and u.name != name))


def shown_decimals(decimals: int, from_unit: str, to_unit: str) -> int:
    """Decimals in `to_unit` that keep about the resolution of `decimals` in `from_unit`."""
    if from_unit == to_unit:
        return decimals
    step = 10.0**-decimals * unit(from_unit).factor / unit(to_unit).factor
    # A step of 0.3048 m stands for one foot: one decimal would promise more, none less;
    # rounding the exponent splits the difference in the middle of a decade.
    return max(0, min(6, round(-math.log10(step) - 0.1)))


def number_text(value: float, decimals: int) -> str:
    """`value` as a reader sees it: thousands apart, a true minus, no minus zero.

    The last bits are dropped first: they differ from machine to machine, and a value that
    lies just between two shown ones must fall to the same side on all of them.

    >>> number_text(-1234.56, 1)
    '−1,234.6'
    """
    text = f"{float(f'{value:.12g}'):,.{decimals}f}"
    if text.startswith("-"):
        text = text[1:]
        if any(c in "123456789" for c in text):
            text = "−" + text
    return text


def digits_text(value: float, digits: int = 4) -> str:
    """`value` to `digits` significant digits, plainly written."""
    if value == 0 or not math.isfinite(value):
        return number_text(value, 0) if value == 0 else str(value)
    magnitude = math.floor(math.log10(abs(value)))
    if magnitude < -300:
        return number_text(0.0, 0)
    if magnitude < -5:
        mantissa = f"{value / 10.0**magnitude:.{max(0, digits - 1)}f}".replace("-", "−")
        return f"{mantissa} × 10^{magnitude}".replace("^-", "^−")
    return number_text(value, max(0, digits - 1 - magnitude))


def typed_text(value: float, decimals: int) -> str:
    """`value` as it stands in a field: the shortest number that is the same value.

    A value typed in one system and shown in the other has a tail of digits that nobody
    typed; it is cut two places behind the fact's own decimals. A value shown in the
    system in which it was typed comes back as typed.
    """
    for digits in range(1, 10):
        text = f"{value:.{digits}g}"
        if abs(float(text) - value) <= 1e-11 * max(1e-9, abs(value)):
            return _plain(float(text))
    return _plain(round(value, decimals + 2))


def _plain(value: float) -> str:
    text = f"{value:.12f}".rstrip("0").rstrip(".")
    if text in ("-0", ""):
        return "0"
    return text.replace("-", "−")


def parse_number(text: str) -> float:
    """The number that a person typed.

    Accepts thousands commas, a true minus, surrounding blanks and a fraction such as
    `5 1/2`, as a tape is read.

    Raises:
        ValueError: Empty, or no number.
    """
    cleaned = text.strip().replace("−", "-").replace("\u00a0", " ").replace(" ", " ")
    sign = 1.0
    if cleaned[:1] in "+-" and cleaned:
        sign = -1.0 if cleaned[0] == "-" else 1.0
        cleaned = cleaned[1:].strip()
    parts = cleaned.split()
    total = 0.0
    if not parts or len(parts) > 2:
        raise ValueError("not a number")
    if len(parts) == 2 and "/" not in parts[1]:
        raise ValueError("not a number")
    for part in parts:
        total += _part(part)
    if not math.isfinite(total):
        raise ValueError("not a number")
    return sign * total


def _part(part: str) -> float:
    if "/" in part:
        top, _, bottom = part.partition("/")
        if not all(t.isascii() and t.isdigit() for t in (top, bottom)) or int(bottom) == 0:
            raise ValueError("not a number")
        return int(top) / int(bottom)
    whole, dot, rest = part.partition(".")
    groups = whole.split(",")
    if len(groups) > 1 and (not 1 <= len(groups[0]) <= 3 or any(len(g) != 3 for g in groups[1:])):
        raise ValueError("not a number")
    digits = "".join(groups)
    if not (digits + rest) or not (digits + rest).isascii() or not (digits + rest).isdigit():
        raise ValueError("not a number")
    return float(digits + dot + rest) if rest else float(digits or "0")


@dataclass(frozen=True)
class Quantity:
    """A number with its unit and the decimals a reader should see (None: four digits)."""

    value: float
    unit: str = ""
    decimals: int | None = None

    def text(self, system: str = "ip") -> str:
        """The quantity as a reader of `system` sees it, number and unit kept together."""
        to = shown_unit(self.unit, system)
        value = convert(self.value, self.unit, to)
        if self.decimals is None:
            number = digits_text(value)
        else:
            number = number_text(value, shown_decimals(self.decimals, self.unit, to))
        if self.unit.startswith("$"):
            rest = unit(to).label[1:].strip()
            return f"${number}" + (f"\u00a0{rest}" if rest else "")
        label = unit(to).label
        return f"{number}\u00a0{label}" if label else number


def fill(template: str, values: dict[str, Quantity | str], system: str = "ip") -> str:
    """`template` with each `{name}` replaced by its quantity in the reader's units."""
    out = template
    for name, value in values.items():
        shown = value.text(system) if isinstance(value, Quantity) else value
        out = out.replace("{" + name + "}", shown)
    return out
