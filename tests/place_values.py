"""Values of the place files, as check values name them."""

from __future__ import annotations

import functools
from pathlib import Path

from downflow import places

FOLDER = Path(__file__).parent.parent / "docs" / "places"


def text(name: str) -> str:
    """The text of a place file."""
    return (FOLDER / name).read_text(encoding="utf-8")


@functools.cache
def index() -> places.Index:
    return places.read_index(text(places.INDEX_FILE))


@functools.cache
def state(code: str) -> places.State:
    return places.read_state(text(places.file_name(code)))


def station(station_id: str, column: str) -> object:
    """One value of a climate station."""
    return state(index().station(station_id).state).stations[station_id][column]


def price(state_code: str, fact: str) -> float:
    """A state's price, or the nation's."""
    if state_code == "US":
        return index().national_prices[fact]
    return state(state_code).prices[fact]


def county_zone(state_code: str, county: str) -> str:
    """The energy code's zone of a county."""
    return places.county_zones(state(state_code), county)[1]


def doe_zone(state_code: str) -> int:
    return state(state_code).doe_zone


def miles_between(station_a: str, station_b: str) -> float:
    """Distance of two stations."""
    a, b = index().station(station_a), index().station(station_b)
    return places.great_circle_miles(a.lat_deg, a.lon_deg, b.lat_deg, b.lon_deg)
