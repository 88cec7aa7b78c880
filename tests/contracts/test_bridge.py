"""The worker's side: text in, text out, whatever comes."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.bridge import handle
from downflow.demo import demo_job
from downflow.facts.job import read_job, write_job

PLACES = Path(__file__).parents[2] / "docs" / "places"
AT = "2026-11-01T09:00"


def ask(op, **request):
    return json.loads(handle(json.dumps({"op": op, **request})))


@pytest.fixture
def job():
    return ask("new", id="lot-14", name="Lot 14")["job"]


def enter(job, name, typed, units="ip", origin="measured"):
    return ask("enter", job=job, name=name, typed=typed, units=units, **{"from": origin, "at": AT})


def test_a_job_starts_empty_and_takes_what_is_typed(job):
    reply = enter(job, "elevation_ft", "6,200")
    assert reply["changed"] is True
    entry = read_job(reply["job"]).entry("elevation_ft")
    assert (entry.value, entry.origin, entry.at) == (6200, "measured", AT)


def test_a_value_typed_in_si_is_kept_in_full_and_shows_again_as_typed(job):
    reply = enter(job, "elevation_ft", "1890.3", "si")
    value = read_job(reply["job"]).entry("elevation_ft").value
    assert value == pytest.approx(1890.3 / 0.3048, rel=1e-12)
    again = enter(reply["job"], "elevation_ft", "1890.3", "si")
    assert again["changed"] is False
    assert again["job"] == reply["job"]


def test_clearing_a_field_takes_the_value_away(job):
    full = enter(job, "elevation_ft", "6200")["job"]
    assert read_job(enter(full, "elevation_ft", " ")["job"]).entry("elevation_ft") is None


@pytest.mark.parametrize(("typed", "units", "said"), [
    ("99999", "ip", "−300 to 14,000 ft. You typed 99999 ft."),
    ("9999", "si", "m. You typed 9999 m."),
    ("high", "ip", "a number"),
])
def test_what_cannot_be_is_said_in_the_readers_units(job, typed, units, said):
    reply = enter(job, "elevation_ft", typed, units)
    assert reply["ok"] is False
    message = reply["errors"][0]["message"].replace("\u00a0", " ")
    assert said.replace(",", "") in message.replace(",", "")


def table(job, rows, origin="data sheet"):
    return ask("table", job=job, name="kit_sizes", rows=rows, units="ip",
               **{"from": origin, "at": AT})


def test_a_table_enters_whole(job):
    reply = table(job, [{"kit_kw": "5", "stages": "1"}, {"kit_kw": "10", "stages": "2"}])
    assert read_job(reply["job"]).entry("kit_sizes").value == [
        {"kit_kw": 5, "stages": 1}, {"kit_kw": 10, "stages": 2}]


def test_a_half_filled_table_is_named_cell_by_cell(job):
    reply = table(job, [{"kit_kw": "5", "stages": "1"}, {"kit_kw": "x", "stages": ""}])
    assert [e["field"] for e in reply["errors"]] == ["kit_sizes[1].kit_kw"]
    reply = table(job, [{"kit_kw": "5", "stages": "1"}, {"kit_kw": "10", "stages": ""}])
    assert [e["field"] for e in reply["errors"]] == ["kit_sizes[1].stages"]


def test_a_released_hold_needs_all_four(job):
    good = {"calculator": "backup-kit", "verdict": "elements-air", "by": "R. Field",
            "trade": "licence 12", "reason": "letter", "date": "2026-10-02"}
    assert read_job(ask("release", job=job, **good)["job"]).released[0].by == "R. Field"
    for name in ("by", "trade", "reason", "date"):
        assert ask("release", job=job, **{**good, name: ""})["ok"] is False


def test_two_devices_see_both_values_and_times(job):
    mine = enter(job, "elevation_ft", "6200")["job"]
    theirs = enter(job, "elevation_ft", "6100", origin="estimated")["job"]
    reply = ask("merge", mine=mine, theirs=theirs, units="ip")
    (one,) = reply["differences"]
    assert "6200" in one["mine"].replace(",", "")
    assert "6100" in one["theirs"].replace(",", "")
    assert one["mine_at"] == AT
    taken = ask("take", job=reply["job"], theirs=theirs, names=["elevation_ft"])
    assert read_job(taken["job"]).entry("elevation_ft").value == 6100


def test_another_job_is_not_merged(job):
    other = ask("new", id="lot-15", name="Lot 15")["job"]
    assert ask("merge", mine=job, theirs=other)["ok"] is False


def look_up(op, **request):
    texts = {}
    index = (PLACES / "index.json").read_text(encoding="utf-8")
    for _ in range(5):
        reply = ask(op, index=index, texts=texts, units="ip", **request)
        if not reply.get("need"):
            return reply
        for name in reply["need"]:
            texts[name] = (PLACES / name).read_text(encoding="utf-8")
    raise AssertionError("still asking for files")


def test_a_place_is_found_by_postal_code_and_put_on_the_sheet(job):
    found = look_up("places", query="81230")
    assert found["stations"][0]["name"].startswith("Gunnison")
    better = enter(job, "elevation_ft", "7700")["job"]
    reply = look_up("station", query="81230", station=found["stations"][0]["id"], job=better,
                    at=AT)
    kept = read_job(reply["job"])
    assert kept.entry("elevation_ft").value == 7700
    assert kept.entry("tmy_p0_4_f").origin == "estimated"
    assert reply["kept"] == ["Elevation of the home"]


def test_a_place_that_is_none_is_said(job):
    reply = look_up("places", query="qqqqqqq")
    assert reply["ok"] is False


def test_every_calculator_paints_and_recomputes_the_same(job):
    from downflow.calculators import all_calculators

    text = write_job(demo_job())
    for id_ in all_calculators():
        reply = ask("calculator", id=id_, job=text, units="ip", ranged=True)
        assert reply["ok"], (id_, reply)
        assert reply["regions"]["answer"]


values = st.recursive(st.none() | st.booleans() | st.integers() | st.text(max_size=8),
                      lambda v: st.lists(v, max_size=3) | st.dictionaries(
                          st.text(max_size=6), v, max_size=3), max_leaves=8)
OPS = ["hello", "open", "new", "rename", "copy", "enter", "table", "put", "visit", "confirm",
       "release", "take_back", "answer", "merge", "take", "places", "station", "nothing"]


@given(st.sampled_from(OPS), st.dictionaries(
    st.sampled_from(["job", "name", "typed", "rows", "id", "text", "facts", "from", "at", "mine",
                     "theirs", "names", "query", "index", "texts", "step", "by"]),
    values, max_size=6))
def test_no_request_raises(op, request):
    reply = json.loads(handle(json.dumps({"op": op, **request})))
    assert reply["ok"] in (True, False)
    if not reply["ok"]:
        assert reply["errors"][0]["message"]


@given(st.text(max_size=40))
def test_no_text_raises(text):
    assert json.loads(handle(text))["ok"] is False
