"""The printed record, and the sheet for permits and rebates."""

import csv
import io
import json
import re

import pytest

from downflow import papers
from downflow.bridge import handle
from downflow.demo import demo_job
from downflow.facts.job import write_job
from downflow.plan import plan
from downflow.render.record import OTHER_PHOTOS, papers_html, record_html


def asked(**request):
    return json.loads(handle(json.dumps(request)))


def words(html):
    return " ".join(re.sub(r"<[^>]+>", " ", str(html)).replace("\u00a0", " ").split())


@pytest.fixture(scope="module")
def made():
    return plan(demo_job(), ranged=False)


def test_due_readings_print_on_top():
    text = words(record_html(None, ranged=False))
    assert text.index(" Due ") < text.index("Heating split, heat pump alone") < text.index("Taken")
    assert "At −15 °F to 50 °F outdoors" in text


def test_each_reading_stands_with_its_range_its_doubt_and_its_verdict():
    text = words(record_html(None))
    assert "33.0 A ± 0.66" in text
    assert "31.5 A to 34.9 A" in text
    assert "licensed electrician signs" in text


def test_the_record_switches_units():
    text = words(record_html(None, "si", ranged=False))
    assert "−26 °C to 10 °C outdoors" in text and "63 °F" not in text


def test_there_is_a_line_to_sign_for_each_trade():
    text = words(record_html(None, ranged=False))
    for role in ("Readings", "Electrical", "Fuel gas", "Refrigerant", "Homeowner"):
        assert f"{role} " in text
    assert "R. Field, mechanical contractor, licence 12" in text


def test_the_painted_record_is_what_the_worker_makes():
    assert asked(op="record", job=None, units="ip")["html"] == str(record_html(None))


def test_a_photo_is_noted_on_the_sheet_and_taken_off_again():
    job = write_job(demo_job())
    photo = {"op": "photo", "id": "p1", "of": "commissioning-record#kit-amps",
             "at": "2026-10-20T12:00:00Z"}
    noted = asked(**photo, job=job)
    assert noted["ok"]
    again = asked(**photo, job=noted["job"])
    assert [p["id"] for p in json.loads(again["job"])["photos"]] == ["p1"]
    text = asked(op="record", job=again["job"], units="ip", ranged=False)["html"]
    assert 'data-photo="p1"' in text
    assert "Current of the kit, 2026-10-20" in words(text)
    gone = asked(op="photo_gone", job=again["job"], id="p1")
    assert json.loads(gone["job"])["photos"] == []


def test_a_job_without_readings_yet_already_takes_photos():
    text = asked(op="photo", job=asked(op="new", id="x", name="X")["job"], id="p1",
                 of="set-the-box#dead", at="2026-10-20T12:00:00Z")
    html = asked(op="record", job=text["job"], units="ip", ranged=False)["html"]
    assert 'data-photo="p1"' in html
    assert "Set the box, hold point dead" in words(html)


def test_a_photo_without_a_name_is_refused():
    reply = asked(op="photo", job=write_job(demo_job()), id="", of="x y", at="")
    assert [e["field"] for e in reply["errors"]] == ["id"]


def test_plates_crossover_and_gauge_have_their_photos():
    said = " ".join(w for _, w in OTHER_PHOTOS).lower()
    for word in ("plate", "crossover", "gauge", "room-area", "fuel line capped"):
        assert word in said


def test_the_csv_reads_back_and_says_what_the_sheet_says(made):
    rows = list(csv.reader(io.StringIO(papers.csv_text(made))))
    assert rows[0] == ["section", "item", "value", "unit", "from"]
    assert all(len(r) == 5 for r in rows)
    shown = words(papers_html(made))
    for section in ("What was there", "What goes in", "Load and size", "Power", "Readings"):
        assert section in shown
        assert any(r[0] == section for r in rows)
    sizes = {r[1]: r for r in rows}
    assert sizes["Heat loss of the home at design"][3] == "Btu/h"
    assert float(sizes["Main breaker, or rating of the feeder"][2]) == 150


def test_what_nobody_has_said_stands_there_as_not_known(made):
    rows = {line.item: line for line in papers.lines(made)}
    assert rows["Postal code"].value == papers.UNKNOWN
    assert "not known yet" in words(papers_html(made))


def test_a_name_that_looks_like_a_formula_stays_a_text():
    import dataclasses

    job = dataclasses.replace(demo_job(), name='=HYPERLINK("x")')
    text = papers.csv_text(plan(job, ranged=False))
    assert "'=HYPERLINK" in text


def test_numbers_below_zero_stay_numbers(made):
    rows = {line.item: line for line in papers.lines(made)}
    assert float(rows["Outdoor design temperature, heating"].value) == -2
    assert "\n" in papers.csv_text(made)
