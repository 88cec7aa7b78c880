"""Climate, zones and prices of a place, from the site's own place files.

Nothing is read here: the caller reads a file and hands in its text. A search takes
three steps, so that a phone reads only what it needs:

1. `read_index` the text of `INDEX_FILE`, once.
2. `files_for` a query names the files that the search needs: one or two of a few kB.
3. `search` gives the stations to choose from, and towns. For a town chosen, `near_town`
   gives the stations nearest to it.
4. `file_of` names the file of the station chosen; `facts_for` makes job-sheet facts of it.

A climate station is not the home. Distance and elevation stand beside each one, and
the reader chooses. Every fact from here is `estimated`, and can be overwritten.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from downflow.physics.earth import great_circle_miles
from downflow.units import Quantity

INDEX_FILE = "index.json"
FORMAT = 1
FARTHEST_MILES = 100.0
NEAREST_COUNT = 4
MOST_NAMES = 12
LONGEST_QUERY = 80
STATION_HEIGHT = "that of the station"
"""How the note of an elevation begins that is only the station's."""
FARTHEST_CLIMB_FT = 1000.0  # a station this much higher or lower is pointed out

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
PRICES: dict[str, str] = {
    "electricity_usd_kwh": "$/kWh",
    "gas_usd_therm": "$/therm",
    "propane_usd_gal": "$/gal",
    "oil_usd_gal": "$/gal",
}
"""Fact name of each price in the place files, and its unit."""

STATION_FACTS: dict[str, tuple[str, str]] = {
    "hdd65": ("degree_days_65", "°F day"),
    "cdd65": ("cooling_degree_days_65", "°F day"),
    "tmy_p0_4_f": ("tmy_p0_4_f", "°F"),
    "tmy_p1_f": ("tmy_p1_f", "°F"),
    "tmy_min_f": ("tmy_min_f", "°F"),
    "tmy_p99_f": ("tmy_p99_f", "°F"),
    "mcwb_at_p99_f": ("tmy_mcwb_f", "°F"),
    "dewpoint_p99_f": ("tmy_dewpoint_f", "°F"),
    "mcdb_at_dewpoint_p99_f": ("tmy_mcdb_f", "°F"),
    "daily_range_hottest_month_f": ("daily_range_f", "°F diff"),
    "hours_below_35f": ("hours_below_35_h", "h"),
    "hours_below_17f": ("hours_below_17_h", "h"),
    "hours_below_5f": ("hours_below_5_h", "h"),
}
"""Column of a state file, and the fact it becomes."""

FactValue = dict[str, object]


class PlaceError(ValueError):
    """Nothing was found, or what was asked cannot be answered; the text says what to do."""


class PlaceFileError(ValueError):
    """A place file is not what it should be."""


@dataclass(frozen=True)
class Station:
    """A climate station, as a search shows it. Elevation None: the source's is wrong."""

    station_id: str
    name: str
    state: str
    lat_deg: float
    lon_deg: float
    elevation_ft: float | None


@dataclass(frozen=True)
class Index:
    """What a search needs before it knows the state."""

    states: dict[str, str]
    prefixes: dict[str, tuple[str, ...]]
    stations: tuple[Station, ...]
    grid: dict[str, tuple[str, float]]
    national_prices: dict[str, float]
    price_year: int
    sources: dict[str, str]

    def station(self, station_id: str) -> Station:
        """The station of that number; `PlaceError` where there is none."""
        for station in self.stations:
            if station.station_id == station_id:
                return station
        raise PlaceError(f"No climate station has the number {_quote(station_id)}.")


@dataclass(frozen=True)
class Area:
    """Where the home is: a postal code or a town, its centre, zones and grid. None: not known.

    Attributes:
        name: The postal code, or the town.
        code: The postal code; for a town the nearest one's, from which its grid is taken.
    """

    name: str
    code: str
    state: str
    lat_deg: float
    lon_deg: float
    iecc_zone: str | None
    ba_zone: str | None
    grid_subregion: str | None


@dataclass(frozen=True)
class Town:
    """A town. `county_number` counts the counties of its state in alphabetical order."""

    name: str
    state: str
    lat_deg: float
    lon_deg: float
    county_number: int | None


@dataclass(frozen=True)
class State:
    """All that the handbook knows of one state."""

    state: str
    name: str
    doe_zone: int
    price_year: int | None
    prices: dict[str, float]
    stations: dict[str, dict[str, object]]
    zips: dict[str, Area]
    counties: dict[str, tuple[str, str]]

    def county_of(self, town: Town) -> str | None:
        """Name of a town's county, where it is known."""
        number = town.county_number
        if number is None or not 0 <= number < len(self.counties):
            return None
        return sorted(self.counties)[number]


@dataclass(frozen=True)
class Match:
    """One station to choose.

    Attributes:
        station: The station.
        miles: Distance from the postal code's centre; None for a search by name.
        above_home_ft: Its elevation less the home's; None unless both are known.
        above_nearest_ft: Its elevation less that of the first station listed.
        caution: What to think of before choosing it; empty where nothing.
    """

    station: Station
    miles: float | None
    above_home_ft: float | None
    above_nearest_ft: float | None
    caution: str


@dataclass(frozen=True)
class Found:
    """What a search found, best first: stations and towns to choose from, and notes to show.

    `kind` is `name`, `postal` or `town`. A search by name can find towns alone.
    """

    kind: str
    matches: tuple[Match, ...]
    towns: tuple[Town, ...]
    area: Area | None
    doe_zone: int | None
    notes: tuple[str, ...]


# ---- reading ----------------------------------------------------------------------------


def _load(text: str, what: str, keys: Iterable[str]) -> dict[str, object]:
    try:
        data = json.loads(text)
    except ValueError:
        raise PlaceFileError(f"{what} is not readable: it is damaged or not there") from None
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        raise PlaceFileError(f"{what} is not of this release; load the page again")
    missing = [key for key in keys if key not in data]
    if missing:
        raise PlaceFileError(f"{what} lacks {', '.join(missing)}")
    return data


def _number(value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise TypeError("not a number")
    return float(value)


def read_index(text: str) -> Index:
    """The index, from the text of `INDEX_FILE`.

    Args:
        text: The whole file.

    Returns:
        States, postal code prefixes, stations, grid and prices of the nation.

    Raises:
        PlaceFileError: The file is damaged or of another release.
    """
    keys = ("states", "stations", "station_columns", "grid", "national_prices", "price_year",
            "sources")
    data = _load(text, "The index of places", keys)
    try:
        return _index(data)
    except (TypeError, ValueError, KeyError, AttributeError, IndexError):
        raise PlaceFileError("The index of places is damaged") from None


def _index(data: dict[str, object]) -> Index:
    states: dict[str, str] = {}
    prefixes: dict[str, list[str]] = {}
    for state, name, spans in _rows(data["states"]):
        states[str(state)] = str(name)
        for span in _rows(spans, str):
            low, _, high = str(span).partition("-")
            for prefix in range(int(low), int(high or low) + 1):
                prefixes.setdefault(f"{prefix:03d}", []).append(str(state))
    columns = [str(c) for c in _rows(data["station_columns"], str)]
    stations = []
    for state, rows in _rows(data["stations"]):
        for row in _rows(rows):
            cells = dict(zip(columns, row, strict=True))
            stations.append(_station(cells, str(state)))
    prices = data["national_prices"]
    sources = data["sources"]
    if not isinstance(prices, dict) or not isinstance(sources, dict):
        raise TypeError("not a table")
    return Index(
        states=states,
        prefixes={prefix: tuple(found) for prefix, found in prefixes.items()},
        stations=tuple(stations),
        grid={str(key): (str(name), _number(rate)) for key, name, rate in _rows(data["grid"])},
        national_prices={str(k): _number(v) for k, v in prices.items()},
        price_year=int(_number(data["price_year"])),
        sources={str(k): str(v) for k, v in sources.items()},
    )


def _rows(value: object, of: type = list) -> list[list[object]]:
    if not isinstance(value, list) or any(not isinstance(row, of) for row in value):
        raise TypeError("not a list of rows")
    return value


def _station(cells: Mapping[str, object], state: str) -> Station:
    elevation = cells["elevation_ft"]
    return Station(
        station_id=str(cells["station_id"]),
        name=str(cells["name"]),
        state=state,
        lat_deg=_number(cells["lat_deg"]),
        lon_deg=_number(cells["lon_deg"]),
        elevation_ft=None if elevation is None else _number(elevation),
    )


def read_state(text: str) -> State:
    """One state, from the text of its file.

    Args:
        text: The whole file, such as `co.json`.

    Returns:
        Its stations, postal codes, county zones and prices.

    Raises:
        PlaceFileError: The file is damaged or of another release.
    """
    keys = ("state", "name", "doe_zone", "price_year", "prices", "station_columns", "stations",
            "zips", "counties")
    data = _load(text, "A state's place file", keys)
    try:
        return _state(data)
    except (TypeError, ValueError, KeyError, AttributeError, IndexError):
        raise PlaceFileError("A state's place file is damaged") from None


def _state(data: dict[str, object]) -> State:
    state = str(data["state"])
    columns = [str(c) for c in _rows(data["station_columns"], str)]
    stations: dict[str, dict[str, object]] = {}
    for row in _rows(data["stations"]):
        cells = dict(zip(columns, row, strict=True))
        for month in MONTHS:
            _number(cells[f"mean_{month}_f"])
        for column in STATION_FACTS:
            _number(cells[column])
        _station(cells, state)
        stations[str(cells["station_id"])] = cells
    zips: dict[str, Area] = {}
    for iecc, ba, subregion, prefixes in _rows(data["zips"]):
        if not isinstance(prefixes, dict):
            raise TypeError("not a table")
        for prefix, numbers in prefixes.items():
            for place in range(0, len(numbers), 3):
                last, lat, lon = (_number(n) for n in numbers[place : place + 3])
                code = f"{prefix}{int(last):02d}"
                zips[code] = Area(code, code, state, lat, lon, _text(iecc), _text(ba),
                                  _text(subregion))
    counties = {
        str(name): (str(iecc), str(ba))
        for iecc, ba, names in _rows(data["counties"])
        for name in _rows(names, str)
    }
    prices = data["prices"]
    if not isinstance(prices, dict):
        raise TypeError("not a table")
    year = data["price_year"]
    return State(
        state=state,
        name=str(data["name"]),
        doe_zone=int(_number(data["doe_zone"])),
        price_year=None if year is None else int(_number(year)),
        prices={str(k): _number(v) for k, v in prices.items()},
        stations=stations,
        zips=zips,
        counties=counties,
    )


def _text(value: object) -> str | None:
    return None if value is None else str(value)


def read_towns(text: str) -> tuple[Town, ...]:
    """The towns of one letter, from the text of a file such as `towns-p.json`.

    Raises:
        PlaceFileError: The file is damaged or of another release.
    """
    data = _load(text, "A list of towns", ("towns",))
    try:
        return tuple(
            Town(str(name), str(state), _number(lat), _number(lon),
                 None if county is None else int(_number(county)))
            for state, rows in _rows(data["towns"])
            for name, lat, lon, county in _rows(rows)
        )
    except (TypeError, ValueError):
        raise PlaceFileError("A list of towns is damaged") from None


def letter_of(name: str) -> str:
    """The letter under which a town is listed."""
    words = _tokens(name)
    first = words[0][0] if words else ""
    return first if "a" <= first <= "z" else "a"


def town_file(letter: str) -> str:
    """Name of the file that lists the towns of a letter."""
    return f"towns-{letter}.json"


def file_name(state: str) -> str:
    """Name of a state's place file."""
    return f"{state.lower()}.json"


def file_of(index: Index, station_id: str) -> str:
    """Name of the file that holds a station's climate."""
    return file_name(index.station(station_id).state)


# ---- searching --------------------------------------------------------------------------

_POSTAL = re.compile(r"(\d{5})(?:[- ]?\d{4})?\Z")
_DIGITS = re.compile(r"[\d\s-]+\Z")
_WORDS = re.compile(r"[a-z0-9]+")

_ALIKE: dict[str, str] = {
    "st": "saint", "ste": "sainte", "mt": "mount", "ft": "fort", "pt": "point",
    "ap": "airport", "arpt": "airport", "apt": "airport", "arp": "airport", "ar": "airport",
    "intl": "international", "rgnl": "regional", "reg": "regional", "muni": "municipal",
    "fld": "field", "co": "county", "cnty": "county", "is": "island", "mem": "memorial",
}  # fmt: skip
"""Short forms in station names and in what people type, and the word that they stand for."""

_GENERAL = frozenset((
    "airport", "international", "regional", "municipal", "field", "airfield", "county",
    "memorial", "metropolitan", "amos", "awos", "afb", "aaf", "nas", "uo", "isis", "arm", "nsa",
    "the", "of", "at",
))  # fmt: skip
"""Words of a station's name that do not say where it is."""


def _plain(text: str) -> str:
    """Lower case, no accents, no apostrophes."""
    decomposed = unicodedata.normalize("NFKD", text)
    kept = "".join(c for c in decomposed if not unicodedata.combining(c))
    return kept.lower().replace("'", "").replace("’", "").replace(".", "")


def _tokens(text: str) -> tuple[str, ...]:
    return tuple(_ALIKE.get(word, word) for word in _WORDS.findall(_plain(text)))


def _quote(text: str) -> str:
    shown = "".join(c if c.isprintable() else "?" for c in text[:30].strip())
    return f"“{shown}…”" if len(text) > 30 else f"“{shown}”"


def one_edit_apart(a: str, b: str) -> bool:
    """Whether one letter more, less or other, or two swapped neighbours, make a into b."""
    if a == b:
        return False
    if len(a) > len(b):
        a, b = b, a
    if len(b) - len(a) > 1:
        return False
    i = 0
    while i < len(a) and a[i] == b[i]:
        i += 1
    if len(a) < len(b):
        return a[i:] == b[i + 1 :]
    if a[i + 1 :] == b[i + 1 :]:
        return True
    return a[i : i + 2] == b[i : i + 2][::-1] and a[i + 2 :] == b[i + 2 :]


def _word_cost(wanted: str, word: str) -> int | None:
    """0 the same, 1 begins so, 2 misspelt by one letter; None: another word."""
    if wanted == word:
        return 0
    if len(wanted) >= 2 and word.startswith(wanted):
        return 1
    if len(wanted) >= 4 and len(word) >= 4 and one_edit_apart(wanted, word):
        return 2
    return None


def _name_cost(wanted: tuple[str, ...], name: tuple[str, ...]) -> int | None:
    """How badly a station's name fits the words wanted; None where one of them is missing."""
    cost, left = 0, list(name)
    for word in wanted:
        best: tuple[int, int] | None = None
        for place, candidate in enumerate(left):
            found = _word_cost(word, candidate)
            if found is not None and (best is None or found < best[0]):
                best = (found, place)
        if best is None:
            return _joined_cost(wanted, name)
        cost += 4 * best[0] + (1 if best[1] > 0 else 0)
        del left[best[1]]
    return cost + sum(1 for word in left if word not in _GENERAL)


def _joined_cost(wanted: tuple[str, ...], name: tuple[str, ...]) -> int | None:
    """The same where words were run together or apart: `grandjunction`, `mc grath`."""
    a, b = "".join(wanted), "".join(word for word in name if word not in _GENERAL)
    if len(a) < 5:
        return None
    if b.startswith(a):
        return 6
    start = b[: len(a) + 1], b[: len(a)], b[: len(a) - 1]
    return 10 if any(one_edit_apart(a, part) for part in start) else None


def _state_of(words: tuple[str, ...], index: Index) -> str | None:
    """The state that the words name, by abbreviation, in full or misspelt by one letter."""
    text = " ".join(words)
    if len(words) == 1 and text.upper() in index.states:
        return text.upper()
    close = None
    for state, name in index.states.items():
        plain = " ".join(_WORDS.findall(_plain(name)))
        if text == plain or (state == "VI" and text == "virgin islands"):
            return state
        if len(text) >= 4 and one_edit_apart(text, plain):
            close = state
    return close


def _readings(query: str, index: Index) -> list[tuple[tuple[str, ...], str | None]]:
    """The ways to read a query: words of a name, and a state or none."""
    head, comma, tail = query.rpartition(",")
    if comma:
        state = _state_of(tuple(_WORDS.findall(_plain(tail))), index)
        if state is not None:
            return [(_tokens(head), state)]
    raw = tuple(_WORDS.findall(_plain(query)))
    if len(raw) == 1 and raw[0].upper() in index.states:
        return [((), raw[0].upper())]
    found: list[tuple[tuple[str, ...], str | None]] = []
    for count in (3, 2, 1):
        if len(raw) >= count:
            state = _state_of(raw[-count:], index)
            if state is not None:
                found.append((_tokens(" ".join(raw[:-count])), state))
                break
    found.append((_tokens(query), None))
    return found


def files_for(query: str, index: Index) -> tuple[str, ...]:
    """Names of the files that a search for `query` needs.

    State files for a postal code, a list of towns for a name; none for a whole state.

    Raises:
        PlaceError: The query is empty, too long, or a postal code that cannot be.
    """
    code = _postal_code(query)
    if code is None:
        letters = {letter_of(" ".join(words)) for words, _ in _readings(query, index) if words}
        return tuple(town_file(letter) for letter in sorted(letters))
    states = index.prefixes.get(code[:3])
    if not states:
        raise PlaceError(
            f"No postal code of the United States that is listed here begins with {code[:3]}."
        )
    return tuple(file_name(state) for state in states)


def _postal_code(query: str) -> str | None:
    text = query.strip()
    if not text:
        raise PlaceError("Type a place or a postal code.")
    if len(text) > LONGEST_QUERY:
        raise PlaceError(f"That is {len(text)} characters long; a place needs at most "
                         f"{LONGEST_QUERY}.")
    found = _POSTAL.match(text)
    if found:
        return found.group(1)
    if _DIGITS.match(text):
        raise PlaceError("A postal code has five digits.")
    return None


def search(
    query: str,
    index: Index,
    texts: Mapping[str, str],
    home_elevation_ft: float | None = None,
) -> Found:
    """The climate stations and towns to choose from, best first.

    Args:
        query: A place, with or without its state, or a postal code.
        index: From `read_index`.
        texts: The texts of the files that `files_for` named, by file name.
        home_elevation_ft: The home's own elevation, where it is known. [ft]

    Returns:
        Stations with distance and difference of elevation, the postal code's area, notes.

    Raises:
        PlaceError: Nothing fits; the message says what to try.
    """
    needed = files_for(query, index)
    missing = [name for name in needed if name not in texts]
    if missing:
        raise PlaceError("The place data are not on this device yet: " + ", ".join(missing) + ".")
    code = _postal_code(query)
    if code is not None:
        return _by_code(code, index, [read_state(texts[n]) for n in needed], home_elevation_ft)
    towns = [town for name in needed for town in read_towns(texts[name])]
    return _by_name(query, index, towns, home_elevation_ft)


def _by_code(
    code: str, index: Index, here: list[State], home_elevation_ft: float | None
) -> Found:
    found = [(state, state.zips[code]) for state in here if code in state.zips]
    if not found:
        known = sorted(c for state in here for c in state.zips if c[:3] == code[:3])
        near = min(known, key=lambda c: (abs(int(c) - int(code)), c)) if known else ""
        raise PlaceError(
            f"The postal code {code} is not listed: codes that serve only post office boxes "
            f"are missing. Try a neighbouring one" + (f", such as {near}." if near else ".")
        )
    state, area = found[0]
    notes = []
    if len(found) > 1:
        others = " and ".join(s.name for s, _ in found[1:])
        notes.append(f"This postal code also reaches into {others}.")
    return _near("postal", area, state, index, home_elevation_ft, notes)


def near_town(
    town: Town, state: State, index: Index, home_elevation_ft: float | None = None
) -> Found:
    """The stations nearest to a town, with the zones of its county.

    Args:
        town: One of `Found.towns`.
        state: From the file `file_name(town.state)`.
        index: From `read_index`.
        home_elevation_ft: The home's own elevation, where it is known. [ft]

    Raises:
        PlaceError: The wrong state, or no station within reach.
    """
    if town.state != state.state:
        raise PlaceError(f"{town.name} lies in {town.state}, not in {state.name}.")
    county = state.county_of(town)
    iecc, ba = state.counties[county] if county else (None, None)
    nearest = min(
        state.zips.values(),
        key=lambda a: (great_circle_miles(town.lat_deg, town.lon_deg, a.lat_deg, a.lon_deg),
                       a.code),
        default=None,
    )
    area = Area(
        name=town.name, code=nearest.code if nearest else "", state=town.state,
        lat_deg=town.lat_deg, lon_deg=town.lon_deg, iecc_zone=iecc, ba_zone=ba,
        grid_subregion=nearest.grid_subregion if nearest else None,
    )
    notes = [f"{county}, {state.name}."] if county else []
    return _near("town", area, state, index, home_elevation_ft, notes)


def _near(
    kind: str, area: Area, state: State, index: Index, home_elevation_ft: float | None,
    notes: list[str],
) -> Found:
    ranked = sorted(
        (great_circle_miles(area.lat_deg, area.lon_deg, s.lat_deg, s.lon_deg), s.station_id, s)
        for s in index.stations
    )
    near_enough = [(miles, s) for miles, _, s in ranked[:NEAREST_COUNT] if miles <= FARTHEST_MILES]
    if not near_enough:
        miles, _, nearest = ranked[0]
        raise PlaceError(
            f"The nearest climate station to {area.name}, {nearest.name} ({nearest.state}), is "
            f"{miles:,.0f} miles away. One more than {FARTHEST_MILES:.0f} miles off is not "
            "used: enter the climate by hand."
        )
    if home_elevation_ft is None:
        notes.append("The place data do not know the home's elevation. Enter it, then compare "
                     "it with each station's.")
    if area.grid_subregion is None:
        notes.append("The power grid's subregion is not known here.")
    matches = _matches(near_enough, home_elevation_ft)
    return Found(kind, matches, (), area, state.doe_zone, tuple(notes))


_Ranked = list[tuple[int, str, str, Station]]


def _stations_called(
    readings: list[tuple[tuple[str, ...], str | None]], index: Index
) -> _Ranked:
    ranked: _Ranked = []
    for words, state in readings:
        for station in index.stations:
            if state is not None and station.state != state:
                continue
            cost = _name_cost(words, _tokens(station.name)) if words else 50
            if cost is not None:
                ranked.append((cost, station.name, station.station_id, station))
    return sorted(ranked)


def _towns_called(
    readings: list[tuple[tuple[str, ...], str | None]], towns: list[Town]
) -> list[Town]:
    ranked: list[tuple[int, str, str, float, Town]] = []
    for words, state in readings:
        for town in towns:
            if not words or (state is not None and town.state != state):
                continue
            cost = _name_cost(words, _tokens(town.name))
            if cost is not None:
                ranked.append((cost, town.name, town.state, town.lat_deg, town))
    best: list[Town] = []
    for _, _, _, _, town in sorted(ranked, key=lambda r: r[:4]):
        if town not in best:
            best.append(town)
    return best


def _by_name(
    query: str, index: Index, towns: list[Town], home_elevation_ft: float | None
) -> Found:
    readings = _readings(query, index)
    words, wanted = readings[0]
    notes: list[str] = []
    ranked = _stations_called(readings, index)
    places = _towns_called(readings, towns)
    if not ranked and not places and wanted is not None and words:
        ranked = _stations_called([(words, None)], index)
        places = _towns_called([(words, None)], towns)
        if ranked or places:
            notes.append(f"Nothing of that name in {index.states[wanted]}; "
                         "these lie in other states.")
    best: list[Station] = []
    for _, _, _, station in ranked:
        if station not in best:
            best.append(station)
    if not best and not places:
        if wanted is not None and not words:
            raise PlaceError(f"{index.states[wanted]} has no climate station here. Type a "
                             "town or a postal code: the nearest stations are in the next state.")
        raise PlaceError(
            f"No town or climate station is called {_quote(query)}. Towns of fewer than about "
            "a thousand people are not listed: type the postal code, or a larger town nearby."
        )
    most = len(best) if wanted is not None and not words else MOST_NAMES
    left = max(0, len(best) - most) + max(0, len(places) - MOST_NAMES)
    if left:
        notes.append(f"{left} more fit. Add the state.")
    matches = _matches([(None, s) for s in best[:most]], home_elevation_ft)
    return Found("name", matches, tuple(places[:MOST_NAMES]), None, None, tuple(notes))


def _matches(
    found: Sequence[tuple[float | None, Station]],
    home_elevation_ft: float | None,
) -> tuple[Match, ...]:
    first = found[0][1].elevation_ft if found else None
    matches = []
    for miles, station in found:
        height = station.elevation_ft
        above_home = None if height is None or home_elevation_ft is None else (
            height - home_elevation_ft)
        above_nearest = None if height is None or first is None or miles is None else (
            height - first)
        matches.append(Match(station, miles, above_home, above_nearest,
                             _caution(station, above_home)))
    return tuple(matches)


def height_text(match: Match, system: str) -> str:
    """How high a station stands, and against what, in the units of a reader of `system`."""
    if match.station.elevation_ft is None:
        return ""
    said = f"At {Quantity(match.station.elevation_ft, 'ft', 0).text(system)}"
    if match.above_home_ft is not None:
        return f"{said}, {_apart_text(match.above_home_ft, 'the home', system)}."
    if match.above_nearest_ft:
        return f"{said}, {_apart_text(match.above_nearest_ft, 'the nearest one', system)}."
    return f"{said}."


def _apart_text(feet: float, what: str, system: str) -> str:
    if abs(feet) < 0.5:
        return f"as high as {what}"
    way = "higher" if feet > 0 else "lower"
    return f"{Quantity(abs(feet), 'ft', 0).text(system)} {way} than {what}"


def _caution(station: Station, above_home_ft: float | None) -> str:
    if station.elevation_ft is None:
        return "Its elevation is wrong in the source and is left out."
    if above_home_ft is not None and abs(above_home_ft) >= FARTHEST_CLIMB_FT:
        way = "higher" if above_home_ft > 0 else "lower"
        return (f"Far {way} than the home: its winter may be another. In still cold a valley "
                "floor can be colder than the slope above it.")
    return ""


def county_zones(state: State, county: str) -> tuple[str, str, str]:
    """Full name, IECC zone (editions 2006 to 2018) and Building America zone of a county.

    Raises:
        PlaceError: No county of that name in the state, or several that fit equally well.
    """
    wanted = _tokens(county)
    if not wanted:
        raise PlaceError("Type a county.")
    ranked = sorted(
        (cost, name)
        for name in state.counties
        if (cost := _name_cost(wanted, _tokens(name))) is not None
    )
    if not ranked:
        raise PlaceError(f"{state.name} has no county called {_quote(county)}.")
    fitting = [name for cost, name in ranked if cost == ranked[0][0]]
    if len(fitting) > 1:
        raise PlaceError(f"{len(fitting)} counties of {state.name} fit: "
                         + ", ".join(fitting[:4]) + ".")
    return (fitting[0], *state.counties[fitting[0]])


# ---- facts ------------------------------------------------------------------------------


def facts_for(
    station_id: str,
    station_state: State,
    index: Index,
    area: Area | None = None,
    home_state: State | None = None,
) -> dict[str, FactValue]:
    """What choosing a station puts on the job sheet, each value `estimated`.

    Args:
        station_id: The station chosen.
        station_state: The state whose file holds it.
        index: From `read_index`.
        area: `Found.area`, where the search was by postal code or town.
        home_state: The home's own state, where it is not the station's; its prices count.

    Returns:
        Facts by name, each with value (or rows), unit, from and note. What is not known is
        left out.

    Raises:
        PlaceError: The station is not in that state.
    """
    row = station_state.stations.get(station_id)
    if row is None:
        raise PlaceError(f"No climate station of {station_state.name} has the number "
                         f"{_quote(station_id)}.")
    home = home_state or station_state
    station = _station(row, station_state.state)
    climate = f"{station.name}, {station.state}: one typical year of the TMY3 data set"
    facts: dict[str, FactValue] = {}

    def put(name: str, value: object, unit: str, note: str) -> None:
        facts[name] = {"value": value, "unit": unit, "from": "estimated", "note": note}

    put("station_id", station.station_id, "", climate)
    put("place_name", f"{area.name if area else station.name}, {home.state}", "",
        "" if area else "the climate station chosen")
    put("state", home.state, "", home.name)
    if area is not None and area.name == area.code:
        put("postal_code", area.code, "", "")
    put("latitude_deg", area.lat_deg if area else station.lat_deg, "",
        f"centre of {area.name}" if area else station.name)
    if area is not None:
        put("station_miles",
            round(great_circle_miles(area.lat_deg, area.lon_deg, station.lat_deg,
                                     station.lon_deg), 1), "mile", f"from {area.name}")
    if station.elevation_ft is not None:
        put("station_elevation_ft", station.elevation_ft, "ft", station.name)
        put("elevation_ft", station.elevation_ft, "ft",
            f"{STATION_HEIGHT} {station.name}, not of the home: enter the home's own")
    facts["monthly_means"] = {
        "rows": [
            {"month": number, "mean_f": _number(row[f"mean_{month}_f"])}
            for number, month in enumerate(MONTHS, 1)
        ],
        "from": "estimated",
        "note": climate,
    }
    for column, (name, unit) in STATION_FACTS.items():
        put(name, _number(row[column]), unit, climate)

    iecc = area.iecc_zone if area else _text(row["iecc_zone"])
    ba = area.ba_zone if area else _text(row["ba_zone"])
    if iecc:
        put("iecc_zone", iecc, "",
            "of the energy code before 2021; the code official knows the one in force")
    if ba:
        put("ba_zone", ba, "", "DOE Building America")
    put("doe_zone", str(home.doe_zone), "", index.sources.get("doe_zone", ""))

    subregion = area.grid_subregion if area else _only_subregion(home)
    if subregion and subregion in index.grid:
        name, rate = index.grid[subregion]
        put("grid_subregion", subregion, "", name)
        put("grid_co2_lb_mwh", rate, "lb CO2/MWh", index.sources.get("emissions", ""))
    if home.price_year is not None:
        for price, unit in PRICES.items():
            if price in home.prices:
                put(price, home.prices[price], unit,
                    f"average of {home.name} in {home.price_year}; the bill's own price is better")
        put("price_year", home.price_year, "year", "of the average prices")
    return facts


def _only_subregion(state: State) -> str | None:
    """The grid subregion of a state that lies in one alone."""
    found = {area.grid_subregion for area in state.zips.values() if area.grid_subregion}
    return found.pop() if len(found) == 1 else None
