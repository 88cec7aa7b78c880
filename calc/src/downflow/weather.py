"""Hourly weather files: text in, typed rows out.

Two open formats: EPW (eight header lines, 35 columns) and TMY3 (two header lines).
A file is taken whole or refused with the line that is wrong. Nothing is filled in:
an hour without a temperature is a reason to refuse, since a year's energy would
silently miss it. Humidity, pressure and wind may be missing.

The months of a typical year come from different years, so dates are never compared;
only the order of months, days and hours is.
"""

import functools
import re
from collections.abc import Iterator
from typing import NamedTuple

FEET_PER_METRE = 1 / 0.3048
PSI_PER_PASCAL = 1 / 6894.757293168361
MPH_PER_M_S = 3600 / 1609.344
HOURS_OF_A_YEAR = (8760, 8784)
DAYS_OF_MONTH = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
COLDEST_C = -75.0
WARMEST_C = 60.0
LEAST_PA = 31_000.0
MOST_PA = 120_000.0
LONGEST_TEXT = 6_000_000

_NUMBER = re.compile(r"[+-]?\d{1,7}(?:\.\d{0,6})?\Z")


class WeatherFileError(ValueError):
    """The file is not a year of hourly weather; `line` names the place, 0 for the whole."""

    def __init__(self, line: int, message: str) -> None:
        super().__init__(f"line {line}: {message}" if line else message)
        self.line = line
        self.message = message


class Hour(NamedTuple):
    """One hour. What the file does not say is None."""

    month: int
    day: int
    hour: int
    dry_bulb_f: float
    dew_point_f: float | None
    humidity: float | None
    pressure_psia: float | None
    wind_mph: float | None


class Weather(NamedTuple):
    """A year of hours and where it was."""

    format: str
    place: str
    region: str
    station: str
    latitude_deg: float
    longitude_deg: float
    elevation_ft: float
    hours: tuple[Hour, ...]

    def outdoor_f(self) -> tuple[float, ...]:
        """Dry-bulb temperature of each hour. [°F]"""
        return tuple(hour.dry_bulb_f for hour in self.hours)

    def months_f(self) -> tuple[tuple[float, ...], ...]:
        """Dry-bulb temperature of each hour, by month. [°F]"""
        months: list[list[float]] = [[] for _ in range(12)]
        for hour in self.hours:
            months[hour.month - 1].append(hour.dry_bulb_f)
        return tuple(tuple(month) for month in months)


def fahrenheit(celsius: float) -> float:
    """Temperature in °F; a reading to 0.1 °C comes out exact to 0.01 °F."""
    return round(celsius * 1.8 + 32, 6)


def _read(text: str) -> float | None:
    """The number in a cell, or nothing."""
    text = text.strip()
    return float(text) if _NUMBER.match(text) else None


def _number(text: str, line: int, what: str) -> float:
    value = _read(text)
    if value is None:
        raise WeatherFileError(line, f"{what}: {_short(text.strip())} is not a number")
    return value


def _whole(text: str, line: int, what: str, low: int, high: int) -> int:
    value = _number(text, line, what)
    if value != int(value) or not low <= value <= high:
        raise WeatherFileError(
            line, f"{what}: {_short(text.strip())} is not a whole number from {low} to {high}"
        )
    return int(value)


def _short(text: str) -> str:
    shown = "".join(c if c.isprintable() else "?" for c in text[:24])
    return f"“{shown}…”" if len(text) > 24 else f"“{shown}”"


def _dry_bulb_f(text: str, line: int, missing: float) -> float:
    value = _number(text, line, "dry bulb")
    if value == missing or value <= -9900:
        raise WeatherFileError(line, "dry bulb is marked as missing; this hour has no temperature")
    if not COLDEST_C <= value <= WARMEST_C:
        raise WeatherFileError(
            line, f"dry bulb {value:g} °C: must lie within {COLDEST_C:g} and {WARMEST_C:g} °C"
        )
    return fahrenheit(value)


def _optional(text: str, line: int, what: str, low: float, high: float) -> float | None:
    """A number, or None where it is blank or outside what can be (the missing marks are)."""
    value = _read(text)
    if value is not None:
        return value if low <= value <= high else None
    return None if not text.strip() else _number(text, line, what)


class _Cells:
    """Reads the rows of one file. A cell that was read before is only looked up."""

    def __init__(self, missing_c: float, pascal: float) -> None:
        self._missing_c = missing_c
        self._pascal = pascal
        self._wholes: dict[str, int] = {}
        self._dry: dict[str, float] = {}
        self._dew: dict[str, float | None] = {}
        self._humidity: dict[str, float | None] = {}
        self._pressure: dict[str, float | None] = {}
        self._wind: dict[str, float | None] = {}

    def whole(self, text: str, line: int, what: str, high: int) -> int:
        """A whole number from 1 to `high`."""
        value = self._wholes.get(text)
        if value is None or value > high:
            value = self._wholes[text] = _whole(text, line, what, 1, high)
        return value

    def row(self, line: int, when: tuple[int, int, int], dry: str, dew: str, humidity: str,
            pressure: str, wind: str) -> Hour:
        """One hour from the text of its cells."""
        if dry not in self._dry:
            self._dry[dry] = _dry_bulb_f(dry, line, self._missing_c)
        if dew not in self._dew:
            value = _optional(dew, line, "dew point", -90, 60)
            self._dew[dew] = None if value is None else fahrenheit(value)
        if humidity not in self._humidity:
            value = _optional(humidity, line, "relative humidity", 0, 110)
            self._humidity[humidity] = None if value is None else min(value, 100.0) / 100
        if pressure not in self._pressure:
            value = _optional(pressure, line, "pressure", LEAST_PA / self._pascal,
                              MOST_PA / self._pascal)
            self._pressure[pressure] = (
                None if value is None else value * self._pascal * PSI_PER_PASCAL)
        if wind not in self._wind:
            value = _optional(wind, line, "wind speed", 0, 90)
            self._wind[wind] = None if value is None else value * MPH_PER_M_S
        return Hour(*when, self._dry[dry], self._dew[dew], self._humidity[humidity],
                    self._pressure[pressure], self._wind[wind])


def _expected() -> Iterator[tuple[int, int, int]]:
    for month, days in enumerate(DAYS_OF_MONTH, 1):
        for day in range(1, days + 1):
            for hour in range(1, 25):
                yield month, day, hour


@functools.cache
def _calendar(hours: int) -> tuple[tuple[int, int, int], ...]:
    """Month, day and hour of every hour of a year of so many hours."""
    leap = hours == HOURS_OF_A_YEAR[1]
    return tuple(when for when in _expected() if leap or when[:2] != (2, 29))


def _check_order(line: int, when: tuple[int, int, int], should: tuple[int, int, int]) -> None:
    if when != should:
        raise WeatherFileError(
            line, f"month {when[0]}, day {when[1]}, hour {when[2]} is out of order: "
                  f"month {should[0]}, day {should[1]}, hour {should[2]} should come here")


def _lines(text: str) -> list[str]:
    if len(text) > LONGEST_TEXT:
        raise WeatherFileError(0, f"{len(text):,} characters: at most {LONGEST_TEXT:,} are taken")
    lines = text.removeprefix("\ufeff").splitlines()
    while lines and not lines[-1].strip():
        lines.pop()
    return lines


def _count(rows: int, header: int) -> None:
    if rows not in HOURS_OF_A_YEAR:
        raise WeatherFileError(
            header + rows, f"{rows:,} hours after {header} header lines: a year has 8,760"
        )


def parse_epw(text: str) -> Weather:
    """A year from the text of an EPW file.

    Args:
        text: The whole file.

    Returns:
        Place and 8,760 (or 8,784) hours, hour ending.

    Raises:
        WeatherFileError: Naming the line and what is wrong there.

    Source: EPW data dictionary, EnergyPlus Auxiliary Programs.
    """
    lines = _lines(text)
    if not lines or not lines[0].upper().startswith("LOCATION,"):
        raise WeatherFileError(1, "an EPW file starts with LOCATION")
    if len(lines) < 8:
        raise WeatherFileError(len(lines), "an EPW file has eight header lines")
    place = lines[0].split(",")
    if len(place) < 10:
        raise WeatherFileError(1, f"LOCATION has {len(place)} parts: 10 needed")
    period = lines[7].split(",")
    if period[0].strip().upper() != "DATA PERIODS" or len(period) < 3:
        raise WeatherFileError(8, "the eighth line of an EPW file is DATA PERIODS")
    if _number(period[2], 8, "records per hour") != 1:
        raise WeatherFileError(8, f"{period[2].strip()} records per hour: only 1 is read")
    _count(len(lines) - 8, 8)
    hours = []
    read = _Cells(99.9, 1.0)
    calendar = _calendar(len(lines) - 8)
    for line, (raw, should) in enumerate(zip(lines[8:], calendar, strict=True), 9):
        cells = raw.split(",", 22)
        if len(cells) < 22:
            raise WeatherFileError(line, f"{len(cells)} columns: at least 22 needed")
        when = (read.whole(cells[1], line, "month", 12), read.whole(cells[2], line, "day", 31),
                read.whole(cells[3], line, "hour", 24))
        if when != should:
            _check_order(line, when, should)
        hours.append(read.row(line, when, cells[6], cells[7], cells[8], cells[9], cells[21]))
    return Weather(
        "EPW",
        place[1].strip(),
        place[2].strip(),
        place[5].strip(),
        _number(place[6], 1, "latitude"),
        _number(place[7], 1, "longitude"),
        _number(place[9], 1, "elevation") * FEET_PER_METRE,
        tuple(hours),
    )


_TMY3_COLUMNS = (
    "Date (MM/DD/YYYY)", "Time (HH:MM)", "Dry-bulb (C)", "Dew-point (C)", "RHum (%)",
    "Pressure (mbar)", "Wspd (m/s)",
)


def parse_tmy3(text: str) -> Weather:
    """A year from the text of a TMY3 file.

    Args:
        text: The whole file.

    Returns:
        Place and 8,760 hours, hour ending.

    Raises:
        WeatherFileError: Naming the line and what is wrong there.

    Source: Users Manual for TMY3 Data Sets, NREL/TP-581-43156.
    """
    lines = _lines(text)
    if len(lines) < 2:
        raise WeatherFileError(1, "a TMY3 file has two header lines")
    place = [cell.strip().strip('"') for cell in lines[0].split(",")]
    if len(place) < 7:
        raise WeatherFileError(1, f"{len(place)} parts: station, name, state, UTC offset, "
                                  "latitude, longitude and elevation needed")
    names = [name.strip() for name in lines[1].split(",")]
    columns = []
    for name in _TMY3_COLUMNS:
        if name not in names:
            raise WeatherFileError(2, f"no column named {name}")
        columns.append(names.index(name))
    date, time, dry, dew, humidity, pressure, wind = columns
    _count(len(lines) - 2, 2)
    hours = []
    read = _Cells(-9900, 100.0)
    calendar = _calendar(len(lines) - 2)
    for line, (raw, should) in enumerate(zip(lines[2:], calendar, strict=True), 3):
        cells = raw.split(",")
        if len(cells) <= max(columns):
            raise WeatherFileError(
                line, f"{len(cells)} columns: at least {max(columns) + 1} needed"
            )
        day = cells[date].strip().split("/")
        clock = cells[time].strip().split(":")
        if len(day) != 3:
            raise WeatherFileError(line, f"date {_short(cells[date])}: MM/DD/YYYY needed")
        if len(clock) != 2 or clock[1] != "00":
            raise WeatherFileError(
                line, f"time {_short(cells[time])}: a whole hour, HH:00, needed"
            )
        when = (read.whole(day[0], line, "month", 12), read.whole(day[1], line, "day", 31),
                read.whole(clock[0], line, "hour", 24))
        if when != should:
            _check_order(line, when, should)
        hours.append(read.row(line, when, cells[dry], cells[dew], cells[humidity],
                              cells[pressure], cells[wind]))
    return Weather(
        "TMY3",
        place[1],
        place[2],
        place[0],
        _number(place[4], 1, "latitude"),
        _number(place[5], 1, "longitude"),
        _number(place[6], 1, "elevation") * FEET_PER_METRE,
        tuple(hours),
    )


def parse(text: str) -> Weather:
    """A year from the text of an EPW or a TMY3 file, told apart by its first lines.

    Args:
        text: The whole file.

    Returns:
        Place and hours.

    Raises:
        WeatherFileError: Neither format, or the line that is wrong.
    """
    lines = _lines(text[:20_000])
    if lines and lines[0].upper().startswith("LOCATION,"):
        return parse_epw(text)
    if len(lines) > 1 and "Dry-bulb (C)" in lines[1]:
        return parse_tmy3(text)
    raise WeatherFileError(
        1, "not an hourly weather file: EPW starts with LOCATION, "
           "TMY3 has its column names on the second line"
    )
