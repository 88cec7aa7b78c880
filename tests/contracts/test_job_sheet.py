"""The job sheet loses nothing, refuses what it cannot read, and merges fact by fact."""

import copy
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.demo import demo_job
from downflow.facts import all_facts
from downflow.facts.checks import BadInput
from downflow.facts.job import (
    MIGRATIONS,
    Entry,
    Job,
    inputs_to_job,
    job_data,
    job_from,
    merge,
    read_job,
    write_job,
)


def test_the_demo_job_round_trips_to_the_byte():
    text = write_job(demo_job())
    assert write_job(read_job(text)) == text


def test_what_a_later_version_wrote_survives():
    data = job_data(demo_job())
    data["facts"]["a_fact_of_next_year"] = {"value": 3, "from": "measured"}
    data["weather_notes"] = ["frost"]
    data["visits"][0]["mood"] = "cold"
    data["visits"][0].setdefault("facts", {})["another"] = {"value": 1}
    once = job_from(copy.deepcopy(data))
    twice = read_job(write_job(once))
    assert write_job(once) == write_job(twice)
    assert twice.extra["facts"]["a_fact_of_next_year"]["value"] == 3
    assert twice.extra["weather_notes"] == ["frost"]
    assert twice.extra["visits"]["survey"]["mood"] == "cold"
    assert twice.extra["visits"]["survey"]["facts"]["another"] == {"value": 1}


def test_a_fact_that_was_set_aside_comes_back_once_it_is_known():
    data = job_data(demo_job())
    data["extra"] = {"facts": {"year_built": {"value": 1990, "from": "measured"}}}
    del data["facts"]["year_built"]
    assert job_from(data).entry("year_built").value == 1990


@pytest.mark.parametrize("text", ["", "{", "[]", "3", '{"name": "x"}', '{"downflow": "1"}',
                                  '{"downflow": true}', '{"downflow": -1}'])
def test_a_foreign_file_is_refused_in_words(text):
    with pytest.raises(BadInput) as caught:
        read_job(text)
    assert caught.value.errors[0]["message"]


def test_a_newer_sheet_is_refused():
    with pytest.raises(BadInput, match="newer handbook"):
        job_from({**job_data(demo_job()), "downflow": 2})


def test_an_older_sheet_is_migrated(monkeypatch):
    monkeypatch.setitem(MIGRATIONS, 0, lambda old: {**old, "downflow": 1, "name": old["title"]})
    data = job_data(demo_job())
    data["downflow"] = 0
    data["title"] = data.pop("name")
    del data["facts"]
    del data["visits"]
    data.pop("released")
    old = copy.deepcopy(data)
    got = {k: v for k, v in data.items() if k != "title"} | {"title": data["title"]}
    assert job_from(got | {"extra": {}}).name == "Juniper Flat"
    assert data == old


def test_every_bad_field_is_named_at_once():
    with pytest.raises(BadInput) as caught:
        inputs_to_job({"elevation": 5, "supply_v": 400, "kit_sizes": {"rows": [{"kit_kw": 5}]},
                       "hp_rated_together": "yes"},
                      ["elevation_ft", "supply_v", "kit_sizes", "hp_rated_together"])
    fields = {e["field"]: e["message"] for e in caught.value.errors}
    assert "Did you mean elevation_ft?" in fields["elevation"]
    assert "200 to 255" in fields["supply_v"]
    assert "kit_sizes[0].stages" in fields
    assert "hp_rated_together" in fields


def test_a_value_in_another_unit_is_stored_in_the_facts_own():
    job = inputs_to_job({"elevation_ft": {"value": 1889.76, "unit": "m", "from": "measured"}},
                        ["elevation_ft"])
    assert job.entry("elevation_ft").value == pytest.approx(6200)


def test_a_unit_of_another_kind_is_refused():
    with pytest.raises(BadInput, match="length"):
        inputs_to_job({"elevation_ft": {"value": 5, "unit": "psia"}}, ["elevation_ft"])


def test_a_worked_out_fact_cannot_be_entered():
    with pytest.raises(BadInput, match="worked out"):
        inputs_to_job({"hp_share_pct": 50}, ["hp_share_pct"])


def test_readings_of_two_years_do_not_overwrite_each_other():
    data = job_data(demo_job())
    data["facts"] = {}
    data["visits"] = [
        {"id": "a", "date": "2026-10-20", "kind": "commission",
         "facts": {"supply_v": {"value": 240, "from": "measured"}}},
        {"id": "b", "date": "2027-10-20", "kind": "yearly",
         "facts": {"supply_v": {"value": 236, "from": "measured"}}}]
    job = job_from(data)
    assert job.entry("supply_v").value == 236
    assert [v.facts["supply_v"].value for v in job.visits] == [240, 236]


def test_two_devices_merge_fact_by_fact():
    mine = Job("j", "Lot 14", {"year_built": Entry(1990.0, "measured", "2026-01-01"),
                               "elevation_ft": Entry(5000.0, "measured", "2026-01-02")})
    theirs = Job("j", "Lot 14", {"year_built": Entry(1991.0, "data sheet", "2026-01-03"),
                                 "supply_v": Entry(240.0, "measured")})
    merged, differences = merge(mine, theirs)
    assert merged.entry("supply_v").value == 240
    assert merged.entry("year_built").value == 1990
    assert [(d.name, d.mine.value, d.theirs.value, d.theirs.at) for d in differences] == [
        ("year_built", 1990.0, 1991.0, "2026-01-03")]


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12),
    lambda inner: st.lists(inner, max_size=4)
    | st.dictionaries(st.sampled_from(
        ["value", "rows", "unit", "from", "at", "note", "facts", "visits", "id", "downflow",
         "name", "released", "photos", "extra", "date", "kind", "supply_v", "hp_points",
         "outdoor_f", "confirmed"]) | st.text(max_size=6), inner, max_size=5),
    max_leaves=25)


@given(json_values)
def test_any_json_gives_a_job_or_reasons(data):
    try:
        job = job_from(data)
    except BadInput as bad:
        assert bad.errors
        assert all(e["field"] is not None and e["message"] for e in bad.errors)
    else:
        assert write_job(read_job(write_job(job))) == write_job(job)


@given(st.dictionaries(st.sampled_from(sorted(all_facts())), json_values, max_size=4))
def test_any_inputs_give_a_job_or_reasons(inputs):
    try:
        inputs_to_job(inputs, sorted(all_facts()))
    except BadInput as bad:
        assert bad.errors


def test_a_sheet_shown_in_si_and_back_is_the_same_file():
    from downflow.bridge import handle

    text = write_job(demo_job())
    for units in ("si", "ip"):
        reply = json.loads(handle(json.dumps({"op": "sheet", "job": text, "units": units})))
        assert reply["ok"], reply
    for name, entry in demo_job().facts.items():
        fact = all_facts()[name]
        if fact.kind != "number":
            continue
        from downflow.units import convert, shown_decimals, shown_unit, typed_text

        to = shown_unit(fact.unit, "si")
        shown = typed_text(convert(entry.value, fact.unit, to),
                           shown_decimals(fact.decimals, fact.unit, to))
        reply = json.loads(handle(json.dumps({
            "op": "enter", "job": text, "name": name, "typed": shown, "units": "si",
            "from": entry.origin, "at": "2030-01-01"})))
        assert reply["ok"], (name, shown, reply)
        assert reply["changed"] is False, name
        assert reply["job"] == text
