"""Where an hourly weather file is dropped, and what is said of it."""

from __future__ import annotations

from downflow.markup import Markup, tag
from downflow.units import Quantity


def weather_html() -> Markup:
    """The place for a weather file. Without JavaScript it says what it would do."""
    return tag(
        "df-weather",
        tag("p", "An hourly file (EPW or TMY3) of a place nearer to the home is counted here, on "
                 "this device; it is sent nowhere. The monthly road and the file’s own hours then "
                 "stand side by side."),
        tag("div",
            tag("label", "Weather file, EPW or TMY3", for_="df-weather-file"),
            tag("input", type="file", id="df-weather-file", accept=".epw,.csv,.txt",
                data_file=True),
            class_="df-drop df-live"),
        tag("p", data_said=True, role="status"))


def weather_said(place: str, hours: int, elevation_ft: float, kwh: float | None,
                 system: str = "ip") -> str:
    """One sentence about a file that was read."""
    said = (f"{place}: {hours:,} hours read, station at "
            f"{Quantity(elevation_ft, 'ft', 0).text(system)}.")
    if kwh is not None:
        said += (f" Hour by hour the heating takes {Quantity(kwh, 'kWh', 0).text(system)}; the "
                 "answer above shows the monthly road and the file in steps of temperature.")
    return said
