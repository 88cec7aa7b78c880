#!/usr/bin/env python3
"""Make the place files of the site from the open data in `scripts/data/`.

    python scripts/make_places.py            write docs/places/
    python scripts/make_places.py --check    say whether docs/places/ is what the data give

One small file for each state holds all that the handbook knows of it: its climate
stations, postal code areas, county zones and energy prices. `index.json` holds what a
search needs before it knows the state: names and positions of all stations, and which
state a postal code lies in. `towns-a.json` to `towns-z.json` hold the towns by first
letter. The same data give the same bytes. Needs nothing but Python and this project.
"""

from __future__ import annotations

import csv
import gzip
import json
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "calc" / "src"))

from downflow.facts.place import STATES  # noqa: E402
from downflow.places import letter_of  # noqa: E402

DATA = ROOT / "scripts" / "data"
SITE = ROOT / "docs" / "places"
FORMAT = 1
PRICE_YEAR = 2023
LARGEST_FILE_BYTES = 60_000
LARGEST_TOTAL_BYTES = 1_500_000

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
INDEX_COLUMNS = ("station_id", "name", "lat_deg", "lon_deg", "elevation_ft")
STATION_COLUMNS = (
    "station_id", "name", "lat_deg", "lon_deg", "elevation_ft", "iecc_zone", "ba_zone",
    "tmy3_class", *(f"mean_{month}_f" for month in MONTHS), "mean_year_f", "hdd65", "cdd65",
    "tmy_p0_4_f", "tmy_p1_f", "tmy_min_f", "tmy_p99_f", "mcwb_at_p99_f", "dewpoint_p99_f",
    "mcdb_at_dewpoint_p99_f", "daily_range_hottest_month_f", "hours_below_35f",
    "hours_below_17f", "hours_below_5f", "mean_pressure_psia", "hours_repaired",
)  # fmt: skip
TEXT_COLUMNS = {"station_id", "name", "iecc_zone", "ba_zone", "tmy3_class"}
DECIMALS = {"lat_deg": 2, "lon_deg": 2}
PRICE_KEYS = {
    "electricity": "electricity_usd_kwh",
    "natural_gas": "gas_usd_therm",
    "propane": "propane_usd_gal",
    "heating_oil": "oil_usd_gal",
}

ZONE_ONE_TERRITORIES = ("GU", "PR", "VI")  # 10 CFR 460.101, Table 1; no counties in the table

SOURCES = {
    "climate": "National Renewable Energy Laboratory, TMY3, Users Manual for TMY3 Data Sets "
    "(NREL/TP-581-43156): one typical year from the records of 1976 to 2005",
    "postal_codes": "US Census Bureau, ZIP code tabulation areas; climate zones of the IECC "
    "editions 2004 to 2012; EPA eGRID assignment of ZIP codes to grid subregions",
    "counties": "ASHRAE 169-2006 zones as in the IECC editions 2006 to 2018; DOE Building "
    "America, Guide to Determining Climate Regions by County (2015)",
    "towns": "GeoNames (geonames.org), CC BY 4.0",
    "doe_zone": "10 CFR 460.101, Table 1",
    "prices": "US Energy Information Administration, State Energy Data System, residential "
    f"prices, release 2024P, average of {PRICE_YEAR}",
    "emissions": "US EPA, eGRID, total output rate at the power plants, rates in force for "
    "reporting year 2025",
}

Row = dict[str, str]


def read(name: str) -> list[Row]:
    """The rows of one table in `scripts/data/`, comment lines left out."""
    path = DATA / name
    if path.suffix == ".gz":
        text = gzip.decompress(path.read_bytes()).decode("utf-8")
    else:
        text = path.read_text(encoding="utf-8")
    return list(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))


def value(row: Row, column: str) -> str | int | float | None:
    """One cell as it stands in the site file: text, whole number or decimal; blank is null."""
    cell = row[column]
    if column == "elevation_ft" and row.get("note"):
        return None  # the source's own air pressure says that this elevation is wrong
    if cell == "":
        return None
    if column in TEXT_COLUMNS:
        return cell
    number = float(cell)
    if column in DECIMALS:
        number = round(number, DECIMALS[column])
    return int(number) if number == int(number) else number


def compact(thing: object) -> str:
    return json.dumps(thing, ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def lines(thing: dict[str, object], spread: tuple[str, ...]) -> str:
    """JSON with one line for each key, and for each row of the keys in `spread`."""
    parts = []
    for key, content in thing.items():
        if key in spread and isinstance(content, list) and content:
            rows = ",\n".join(compact(row) for row in content)
            parts.append(f"{compact(key)}:[\n{rows}\n]")
        else:
            parts.append(f"{compact(key)}:{compact(content)}")
    return "{\n" + ",\n".join(parts) + "\n}\n"


def ranges(prefixes: list[str]) -> list[str]:
    """`["800", "801", "802", "810"]` as `["800-802", "810"]`."""
    found: list[list[int]] = []
    for prefix in sorted({int(p) for p in prefixes}):
        if found and found[-1][1] == prefix - 1:
            found[-1][1] = prefix
        else:
            found.append([prefix, prefix])
    return [f"{a:03d}" if a == b else f"{a:03d}-{b:03d}" for a, b in found]


def zip_groups(areas: list[Row]) -> list[list[object]]:
    """Areas of one zone and subregion together: [iecc, ba, subregion, {prefix: numbers}].

    Under each three-digit prefix stand three numbers for each code, one after the other:
    its last two digits, latitude, longitude.
    """
    groups: dict[tuple[str, str, str], dict[str, list[object]]] = {}
    for area in areas:
        key = (area["iecc_zone"], area["ba_zone"], area["egrid_subregion"])
        code = area["zip"]
        groups.setdefault(key, {}).setdefault(code[:3], []).extend(
            (int(code[3:]), value(area, "lat_deg"), value(area, "lon_deg"))
        )
    return [[*(part or None for part in key), codes] for key, codes in sorted(groups.items())]


def county_groups(counties: list[Row]) -> list[list[object]]:
    groups: dict[tuple[str, str], list[str]] = {}
    for county in counties:
        key = (county["iecc2012_zone"], county["ba_zone"])
        groups.setdefault(key, []).append(county["county"])
    return [[*key, sorted(names)] for key, names in sorted(groups.items())]


def town_files(towns: list[Row], counties: list[Row]) -> dict[str, str]:
    """Towns by first letter, then state: [name, latitude, longitude, county or null].

    The county is its place in the alphabetical list of the state's counties.
    """
    places: dict[str, list[str]] = {}
    for county in counties:
        places.setdefault(county["state"], []).append(county["county"])
    letters: dict[str, dict[str, list[list[object]]]] = {}
    for town in sorted(towns, key=lambda t: (t["state"], t["name"], t["lat_deg"], t["lon_deg"])):
        here = sorted(places.get(town["state"], []))
        number = here.index(town["county"]) if town["county"] else None
        letters.setdefault(letter_of(town["name"]), {}).setdefault(town["state"], []).append(
            [town["name"], value(town, "lat_deg"), value(town, "lon_deg"), number]
        )
    return {
        f"towns-{letter}.json": lines({"format": FORMAT, "towns": sorted(states.items())},
                                      spread=("towns",))
        for letter, states in sorted(letters.items())
    }


def doe_zone(state: str, counties: list[Row]) -> int:
    zones = {int(c["doe460_zone"]) for c in counties}
    if state in ZONE_ONE_TERRITORIES:
        return 1
    if len(zones) != 1:
        raise ValueError(f"{state}: expected one zone of 10 CFR 460.101, found {sorted(zones)}")
    return zones.pop()


def build() -> dict[str, str]:
    """Every place file: its name and its text."""
    stations = read("climate_stations.csv.gz")
    areas = read("zip_areas.csv.gz")
    counties = read("county_zones.csv.gz")
    prices = read("energy_prices.csv")
    grid = read("grid_emissions.csv")

    files = town_files(read("towns.csv.gz"), counties)
    states = []
    index_stations = []
    for state, name in sorted(STATES.items()):
        here = sorted((s for s in stations if s["state"] == state), key=lambda s: s["station_id"])
        codes = sorted((a for a in areas if a["state"] == state), key=lambda a: a["zip"])
        county_rows = [c for c in counties if c["state"] == state]
        paid = {
            PRICE_KEYS[p["fuel"]]: float(p["price_2023_usd_per_unit"])
            for p in prices
            if p["state"] == state
        }
        states.append([state, name, ranges([a["zip"][:3] for a in codes])])
        index_stations.append([state, [[value(s, c) for c in INDEX_COLUMNS] for s in here]])
        files[f"{state.lower()}.json"] = lines(
            {
                "format": FORMAT,
                "state": state,
                "name": name,
                "doe_zone": doe_zone(state, county_rows),
                "price_year": PRICE_YEAR if paid else None,
                "prices": paid,
                "station_columns": list(STATION_COLUMNS),
                "stations": [[value(s, c) for c in STATION_COLUMNS] for s in here],
                "zips": zip_groups(codes),
                "counties": county_groups(county_rows),
            },
            spread=("stations", "zips", "counties"),
        )
    known = {row["state"] for row in [*stations, *areas, *counties]}
    if known != set(STATES):
        raise ValueError(f"states without a name: {sorted(known ^ set(STATES))}")

    files["index.json"] = lines(
        {
            "format": FORMAT,
            "sources": SOURCES,
            "states": states,
            "grid": [[g["key"], g["name"], float(g["co2_lb_mwh"])] for g in grid],
            "national_prices": {
                PRICE_KEYS[p["fuel"]]: float(p["price_2023_usd_per_unit"])
                for p in prices
                if p["state"] == "US"
            },
            "price_year": PRICE_YEAR,
            "station_columns": list(INDEX_COLUMNS),
            "stations": index_stations,
        },
        spread=("states", "grid", "stations"),
    )
    return files


def main(arguments: list[str]) -> int:
    if arguments not in ([], ["--check"]):
        print(__doc__)
        return 2
    files = build()
    sizes = {name: len(text.encode("utf-8")) for name, text in files.items()}
    largest = max(sizes, key=lambda name: sizes[name])
    total = sum(sizes.values())
    print(f"{len(files)} files, {total:,} bytes, largest {largest} {sizes[largest]:,}")
    if sizes[largest] > LARGEST_FILE_BYTES or total > LARGEST_TOTAL_BYTES:
        print(f"too large: {LARGEST_FILE_BYTES:,} a file, {LARGEST_TOTAL_BYTES:,} together")
        return 1
    old = {path.name for path in SITE.glob("*.json")}
    if arguments:
        stale = sorted(old ^ set(files)) + sorted(
            name
            for name in old & set(files)
            if (SITE / name).read_bytes() != files[name].encode("utf-8")
        )
        print("up to date" if not stale else "not up to date: " + ", ".join(stale))
        return 1 if stale else 0
    SITE.mkdir(parents=True, exist_ok=True)
    for name, text in files.items():
        (SITE / name).write_bytes(text.encode("utf-8"))
    for name in old - set(files):
        (SITE / name).unlink()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
