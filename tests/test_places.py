"""Places: the files of the site, the search, the facts that come of it."""

from __future__ import annotations

import contextlib
import csv
import gzip
import json
from pathlib import Path
from typing import Any

import make_places
import place_values
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from place_values import index, state, text

import downflow
from downflow import places
from downflow.facts import all_facts
from downflow.facts.job import Entry, entry_from
from downflow.facts.place import GRID_SUBREGIONS, STATES
from downflow.physics import climate_year

TESTS = Path(__file__).parent


def table(path: Path) -> list[dict[str, str]]:
    raw = gzip.decompress(path.read_bytes()).decode() if path.suffix == ".gz" else path.read_text()
    return list(csv.DictReader(line for line in raw.splitlines() if not line.startswith("#")))


def found(query: str, home_elevation_ft: float | None = None) -> places.Found:
    texts = {name: text(name) for name in places.files_for(query, index())}
    return places.search(query, index(), texts, home_elevation_ft)


def names(query: str) -> list[str]:
    return [f"{m.station.name}, {m.station.state}" for m in found(query).matches]


def towns(query: str) -> list[str]:
    return [f"{t.name}, {t.state}" for t in found(query).towns]


# ---- the files --------------------------------------------------------------------------


def test_the_place_files_are_what_the_data_give() -> None:
    made = make_places.build()
    assert {p.name for p in place_values.FOLDER.glob("*.json")} == set(made)
    for name, content in made.items():
        assert text(name) == content, f"{name} is stale: run scripts/make_places.py"


def test_no_file_is_large_and_together_they_stay_small() -> None:
    sizes = [p.stat().st_size for p in place_values.FOLDER.iterdir()]
    assert max(sizes) < 60_000
    assert sum(sizes) < 1_500_000


def test_no_place_data_ride_in_the_wheel() -> None:
    package = Path(downflow.__file__).parent
    big = [p for p in package.rglob("*") if p.is_file() and p.suffix in (".json", ".csv", ".gz")
           and b"725640" in p.read_bytes()]
    assert big == []


def test_every_state_has_its_file_and_its_zone() -> None:
    for code, name in STATES.items():
        one = state(code)
        assert (one.state, one.name) == (code, name)
        assert one.doe_zone in (1, 2, 3)
        assert one.prices or code in ("GU", "PR", "VI")


def test_the_place_files_hold_every_row_of_the_data() -> None:
    data = make_places.DATA
    stations = {row["station_id"] for row in table(data / "climate_stations.csv.gz")}
    assert {s.station_id for s in index().stations} == stations
    assert sum(len(state(c).stations) for c in STATES) == len(stations) == 1019
    codes = {row["zip"] for row in table(data / "zip_areas.csv.gz")}
    assert {code for c in STATES for code in state(c).zips} == codes
    counties = table(data / "county_zones.csv.gz")
    assert sum(len(state(c).counties) for c in STATES) == len(counties)
    listed = [t for letter in "abcdefghijklmnopqrstuvwxyz" if (place_values.FOLDER / (
        places.town_file(letter))).exists() for t in places.read_towns(
            text(places.town_file(letter)))]
    assert len(listed) == len(table(data / "towns.csv.gz"))
    for town in listed:
        assert town.county_number is None or state(town.state).county_of(town)


def test_facts_and_index_name_the_same_grid_subregions() -> None:
    assert set(index().grid) - {"US"} == set(GRID_SUBREGIONS)


@pytest.mark.parametrize("spoil", [
    lambda t: t[: len(t) // 2], lambda t: "", lambda t: "[]", lambda t: "null", lambda t: "{}",
    lambda t: t.replace('"format":1', '"format":2'),
    lambda t: t.replace('"stations":', '"stetions":'),
    lambda t: t.replace('"stations":[', '"stations":[7,'),
    lambda t: t.replace("-105.87", '"west"'),
])
def test_a_damaged_file_is_said_to_be_damaged(spoil: Any) -> None:
    for read, name in ((places.read_index, "index.json"), (places.read_state, "co.json")):
        with pytest.raises(places.PlaceFileError):
            read(spoil(text(name)))


@given(st.integers(0, 3000), st.characters(min_codepoint=32, max_codepoint=126))
@settings(max_examples=60, deadline=None)
def test_one_wrong_letter_in_a_file_is_never_a_crash(where: int, letter: str) -> None:
    whole = text("wy.json")
    with contextlib.suppress(places.PlaceFileError):
        assert places.read_state(whole[:where] + letter + whole[where + 1 :]).stations


# ---- search by name ---------------------------------------------------------------------


@pytest.mark.parametrize(("query", "first"), [
    ("Gunnison", "Gunnison Co. (AWOS), CO"),
    ("GUNNISON", "Gunnison Co. (AWOS), CO"),
    ("gunison", "Gunnison Co. (AWOS), CO"),
    ("gunnsion, co", "Gunnison Co. (AWOS), CO"),
    ("Grand Junction", "Grand Junction Walker Field, CO"),
    ("grandjunction colorado", "Grand Junction Walker Field, CO"),
    ("Helena, Montana", "Helena Regional Airport, MT"),
    ("helena montanna", "Helena Regional Airport, MT"),
    ("Butte MT", "Butte Bert Mooney Arpt, MT"),
    ("Ft. Collins", "Fort Collins (AWOS), CO"),
    ("St George, Utah", "Saint George (AWOS), UT"),
    ("Mc Grath", "McGrath Arpt, AK"),
    ("O'Hare", "Chicago Ohare Intl AP, IL"),
    ("portland, maine", "Portland Intl Jetport, ME"),
    ("  cheyenne   wyoming ", "Cheyenne Municipal Arpt, WY"),
])
def test_a_station_is_found_however_it_is_typed(query: str, first: str) -> None:
    assert names(query)[0] == first


@pytest.mark.parametrize(("query", "first"), [
    ("Pagosa Springs", "Pagosa Springs, CO"),
    ("pagossa springs", "Pagosa Springs, CO"),
    ("Cañon City", "Canon City, CO"),
    ("Mt Shasta", "Mount Shasta, CA"),
    ("Silverton, Colorado", "Silverton, CO"),
    ("washington dc", "Washington, DC"),
])
def test_a_town_without_a_station_is_found(query: str, first: str) -> None:
    assert towns(query)[0] == first


def test_the_state_narrows_the_search() -> None:
    assert set(names("Portland")) > set(names("Portland, OR"))
    assert all(name.endswith("OR") for name in names("Portland, OR"))


def test_a_state_alone_lists_all_its_stations() -> None:
    assert len(names("CO")) == len(state("CO").stations)
    assert len(found("Wyoming").matches) >= len(state("WY").stations)
    assert places.files_for("CO", index()) == ()


def test_a_name_that_is_elsewhere_says_so() -> None:
    elsewhere = found("Gunnison, Florida")
    assert "other states" in elsewhere.notes[0]
    assert elsewhere.matches[0].station.state == "CO"


def test_more_than_a_dozen_are_not_listed_but_counted() -> None:
    many = found("city")
    assert len(many.matches) == places.MOST_NAMES
    assert any("more fit" in note for note in many.notes)


@pytest.mark.parametrize(("query", "says"), [
    ("", "Type a place"),
    ("   ", "Type a place"),
    ("8123", "five digits"),
    ("123456", "five digits"),
    ("Nowhere at all", "postal code"),
    ("Zzyzzx, Montana", "postal code"),
    ("x" * 81, "81 characters"),
    ("00000", "begins with 000"),
])
def test_what_cannot_be_found_says_what_to_try(query: str, says: str) -> None:
    with pytest.raises(places.PlaceError, match=says):
        found(query)


@given(st.text(max_size=60))
@settings(max_examples=80, deadline=None)
def test_any_text_finds_something_or_says_why_not(query: str) -> None:
    with contextlib.suppress(places.PlaceError):
        one = found(query)
        assert one.matches or one.towns


@given(st.sampled_from([s for s in index().stations if len(s.name.split()[0]) >= 6]),
       st.data())
@settings(max_examples=40, deadline=None)
def test_one_misspelt_letter_still_finds_the_station(station: places.Station, data: Any) -> None:
    word = places._tokens(station.name)[0]
    if len(word) < 5:
        return
    at = data.draw(st.integers(1, len(word) - 2))
    query = word[:at] + word[at + 1] + word[at] + word[at + 2 :]
    mates = found(f"{query}, {station.state}")
    assert station in [m.station for m in mates.matches] or mates.towns


@pytest.mark.parametrize(("a", "b", "near"), [
    ("denver", "denver", False), ("denvr", "denver", True), ("denverr", "denver", True),
    ("denbver", "denver", True), ("dnever", "denver", True), ("danver", "denver", True),
    ("dnevr", "denver", False), ("", "a", True), ("ab", "ba", True), ("abc", "cba", False),
])
def test_one_edit_is_one_letter_or_two_swapped(a: str, b: str, near: bool) -> None:
    assert places.one_edit_apart(a, b) is near
    assert places.one_edit_apart(b, a) is near


# ---- search by postal code --------------------------------------------------------------


def test_a_postal_code_offers_four_stations_with_distance_and_height() -> None:
    here = found("81230", home_elevation_ft=7700)
    assert [m.station.name for m in here.matches] == [
        "Gunnison Co. (AWOS)", "Montrose Co. Arpt", "Aspen Pitkin Co Sar", "Leadville/Lake Co."]
    miles = [m.miles for m in here.matches]
    assert miles == sorted(miles)
    assert here.matches[0].above_home_ft == pytest.approx(7674 - 7700)
    assert here.matches[3].above_home_ft == pytest.approx(9928 - 7700)
    assert "Far higher than the home" in here.matches[3].caution
    assert here.matches[0].caution == ""
    assert (here.area.state, here.area.grid_subregion, here.doe_zone) == ("CO", "RMPA", 3)


def test_a_thousand_feet_apart_is_pointed_out_and_a_little_less_is_not() -> None:
    just_inside = found("81230", home_elevation_ft=7674 - 999)
    just_outside = found("81230", home_elevation_ft=7674 - 1000)
    assert just_inside.matches[0].caution == ""
    assert "Far higher" in just_outside.matches[0].caution


def test_without_the_homes_height_the_stations_are_compared_with_each_other() -> None:
    here = found("81230")
    assert [m.above_home_ft for m in here.matches] == [None] * 4
    assert here.matches[3].above_nearest_ft == pytest.approx(9928 - 7674)
    assert any("elevation" in note for note in here.notes)


def test_height_is_told_against_the_home_or_else_the_nearest_station_in_the_readers_units() -> None:
    at_home = found("81230", home_elevation_ft=7700).matches[0]
    assert places.height_text(at_home, "ip") == "At 7,674\u00a0ft, 26\u00a0ft lower than the home."
    assert places.height_text(at_home, "si") == "At 2,339\u00a0m, 8\u00a0m lower than the home."
    second = found("81230").matches[1]
    assert "1,916\u00a0ft lower than the nearest one" in places.height_text(second, "ip")
    assert places.height_text(found("Gunnison").matches[0], "ip") == "At 7,674\u00a0ft."
    assert places.height_text(found("Moab").matches[0], "ip") == ""


def test_the_last_four_digits_of_a_postal_code_are_no_matter() -> None:
    assert found("81230-4321").area == found("81230").area


def test_every_area_has_the_nearest_station_that_was_found_before() -> None:
    ours = {s.station_id: s for s in index().stations}
    for row in table(make_places.DATA / "zip_areas.csv.gz")[::37]:
        area = state(row["state"]).zips[row["zip"]]
        miles = min(places.great_circle_miles(area.lat_deg, area.lon_deg, s.lat_deg, s.lon_deg)
                    for s in ours.values())
        assert miles == pytest.approx(float(row["station_miles"]), abs=1.6)


def test_a_place_a_hundred_miles_from_any_station_is_refused() -> None:
    with pytest.raises(places.PlaceError, match="2,540 miles away"):
        found("96799")
    far = [r for r in table(make_places.DATA / "zip_areas.csv.gz")
           if float(r["station_miles"]) > 101]
    assert len(far) == 14
    for row in far:
        with pytest.raises(places.PlaceError, match="enter the climate by hand"):
            found(row["zip"])


def test_stations_beyond_a_hundred_miles_are_left_out_of_the_list() -> None:
    assert all(m.miles <= places.FARTHEST_MILES for m in found("59201").matches)
    assert len(found("96910").matches) == 2


def test_a_post_office_box_code_offers_a_neighbour() -> None:
    with pytest.raises(places.PlaceError, match="such as 80002"):
        found("80000")


def test_a_file_that_is_not_on_the_device_is_named() -> None:
    with pytest.raises(places.PlaceError, match=r"co\.json"):
        places.search("81230", index(), {})


def test_a_town_gets_the_stations_and_zones_around_it() -> None:
    town = found("Pagosa Springs, CO").towns[0]
    near = places.near_town(town, state("CO"), index(), home_elevation_ft=7126)
    assert near.area.iecc_zone == "6B"
    assert near.notes[0] == "Archuleta County, Colorado."
    assert near.matches[0].station.name == "Durango/La Plata Co"
    with pytest.raises(places.PlaceError, match="lies in CO"):
        places.near_town(town, state("NM"), index())


def test_a_station_with_a_false_height_has_none() -> None:
    for station_id in ("725970", "724776", "725744"):
        station = index().station(station_id)
        assert station.elevation_ft is None
        facts = places.facts_for(station_id, state(station.state), index())
        assert "elevation_ft" not in facts
        assert "station_elevation_ft" not in facts
    assert "wrong in the source" in found("Moab").matches[0].caution


# ---- counties ---------------------------------------------------------------------------


def test_the_counties_of_colorado_are_in_the_zones_that_the_code_lists() -> None:
    listed = {
        "4": "Baca, Las Animas, Otero",
        "6": "Alamosa, Archuleta, Chaffee, Conejos, Costilla, Custer, Dolores, Eagle, Moffat, "
             "Ouray, Rio Blanco, Saguache, San Miguel",
        "7": "Clear Creek, Grand, Gunnison, Hinsdale, Jackson, Lake, Mineral, Park, Pitkin, "
             "Rio Grande, Routt, San Juan, Summit",
    }  # IECC 2006 to 2018, Table 301.1; the remaining counties are in zone 5
    said = {f"{name} County": zone for zone, names in listed.items() for name in names.split(", ")}
    for county, (zone, _) in state("CO").counties.items():
        assert zone.rstrip("ABC") == said.get(county, "5"), county


def test_a_county_is_found_misspelt_or_refused() -> None:
    assert places.county_zones(state("CO"), "gunison")[0] == "Gunnison County"
    assert places.county_zones(state("CO"), "San Juan county")[:2] == ("San Juan County", "7")
    with pytest.raises(places.PlaceError, match="no county"):
        places.county_zones(state("CO"), "Lewis and Clark")
    with pytest.raises(places.PlaceError, match="Type a county"):
        places.county_zones(state("CO"), " ")


# ---- facts ------------------------------------------------------------------------------


def test_every_station_gives_facts_that_the_job_sheet_takes() -> None:
    for station in index().stations:
        facts = places.facts_for(station.station_id, state(station.state), index())
        problems: list[dict[str, str]] = []
        for name, raw in facts.items():
            entry = entry_from(name, raw, name, problems)
            assert isinstance(entry, Entry), (station, name, problems)
            assert entry.origin == "estimated"
        assert problems == []


def test_every_postal_code_zone_and_subregion_is_one_that_the_job_sheet_knows() -> None:
    known = {name: {c.value for c in all_facts()[name].choices}
             for name in ("iecc_zone", "ba_zone", "grid_subregion")}
    for code in STATES:
        for area in state(code).zips.values():
            assert area.iecc_zone is None or area.iecc_zone in known["iecc_zone"]
            assert area.ba_zone is None or area.ba_zone in known["ba_zone"]
            assert area.grid_subregion is None or area.grid_subregion in known["grid_subregion"]
        for iecc, ba in state(code).counties.values():
            assert iecc in known["iecc_zone"]
            assert ba in known["ba_zone"]


def test_prices_are_those_of_the_homes_state_not_of_the_stations() -> None:
    facts = places.facts_for("723658", state("NM"), index(), found("81147").area, state("CO"))
    assert facts["electricity_usd_kwh"]["value"] == 0.143
    assert facts["state"]["value"] == "CO"
    assert facts["price_year"]["value"] == 2023
    assert "2023" in facts["propane_usd_gal"]["note"]


def test_the_elevation_is_marked_as_the_stations() -> None:
    facts = places.facts_for("724677", state("CO"), index())
    assert facts["elevation_ft"]["from"] == "estimated"
    assert "not of the home" in facts["elevation_ft"]["note"]


def test_a_station_of_another_state_is_refused() -> None:
    with pytest.raises(places.PlaceError, match="Wyoming"):
        places.facts_for("724677", state("WY"), index())


def test_facts_are_plain_json() -> None:
    facts = places.facts_for("724677", state("CO"), index(), found("81230").area)
    assert json.loads(json.dumps(facts, allow_nan=False)) == facts
    assert facts["grid_subregion"]["value"] == "RMPA"
    assert facts["grid_co2_lb_mwh"]["value"] == 1036.0
    assert facts["postal_code"]["value"] == "81230"
    assert [row["month"] for row in facts["monthly_means"]["rows"]] == list(range(1, 13))


# ---- against published numbers ----------------------------------------------------------


def test_the_price_of_electricity_is_the_one_that_another_survey_prints() -> None:
    for row in table(TESTS / "data" / "residential_price_2023.csv"):
        ours = 100 * state(row["state"]).prices["electricity_usd_kwh"]
        assert ours == pytest.approx(float(row["cents_kwh"]), abs=0.015), row["state"]


def test_published_design_temperatures_lie_where_the_pages_say() -> None:
    rows = table(TESTS / "data" / "design_conditions_31.csv")
    assert len(rows) == 31
    for row in rows:
        here = state(index().station(row["station_id"]).state).stations[row["station_id"]]
        cold = float(row["heat_99_f"]) - here["tmy_p0_4_f"]
        assert -4.5 <= cold <= 9.5, row["name"]  # the place files hold whole degrees
        assert abs(float(row["cool_1_f"]) - here["tmy_p99_f"]) <= 2.5, row["name"]
        assert abs(float(row["cool_1_wb_f"]) - here["mcwb_at_p99_f"]) <= 2.6, row["name"]
        assert here["elevation_ft"] == pytest.approx(float(row["elevation_ft"]), abs=1)


def test_months_and_degree_days_of_each_station_tell_of_one_climate() -> None:
    for code in STATES:
        for row in state(code).stations.values():
            means = [row[f"mean_{month}_f"] for month in places.MONTHS]
            year = climate_year.year_heating_degree_days(means, 65)
            assert abs(year - row["hdd65"]) <= max(0.1 * row["hdd65"], 650), row["name"]
            days = climate_year.DAYS_OF_MONTH
            mean = sum(m * d for m, d in zip(means, days, strict=True)) / 365
            assert mean == pytest.approx(row["mean_year_f"], abs=0.15)


def test_the_points_of_each_station_are_in_order() -> None:
    for code in STATES:
        for row in state(code).stations.values():
            assert row["tmy_min_f"] <= row["tmy_p0_4_f"] <= row["tmy_p1_f"] < row["tmy_p99_f"]
            assert row["mcwb_at_p99_f"] <= row["tmy_p99_f"]
            assert row["hours_below_5f"] <= row["hours_below_17f"] <= row["hours_below_35f"]
