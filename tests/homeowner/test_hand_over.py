"""Making the link: address, code, label, letter, and what the worker answers."""

import gzip
import json
import re
from pathlib import Path

import pytest

from downflow import bridge, homeowner
from downflow.demo import demo_job
from downflow.facts.job import read_job, write_job
from downflow.render.hand_over import address_problem, hand_over_inner_html, label_html, letter_html
from downflow.testing import changed

SITE = "https://handbook.example.org/downflow/"
DATA = Path(__file__).parents[1] / "data"


def _ask(**request):
    return json.loads(bridge.handle(json.dumps(request)))


def _plain(html):
    import html as escapes

    return re.sub(r"\s+", " ", escapes.unescape(re.sub(r"<[^>]*>", " ", html)))


def test_the_worker_and_the_shell_make_one_link():
    reply = _ask(op="hand_over", job=write_job(demo_job()), units="ip", site=SITE)
    assert reply["ok"]
    assert reply["link"] == homeowner.link(demo_job(), SITE)
    assert f'data-link="{reply["link"]}"' in reply["html"]


@pytest.mark.parametrize("site", ["", "   ", "handbook", "https://a b/", "javascript:alert(1)",
                                  "http://localhost:8000/", "http://192.168.1.4/", "https://"])
def test_without_an_address_for_others_no_code_is_made_and_it_says_so(site):
    html = str(hand_over_inner_html(demo_job(), "ip", site))
    assert address_problem(site)
    assert "No code is made" in html
    assert "data-link" not in html
    assert "QR code" not in html


def test_with_an_address_there_is_a_code_on_the_page_the_label_and_the_letter():
    html = str(hand_over_inner_html(demo_job(), "ip", SITE))
    assert html.count("QR code of the homeowner page") == 3


def test_a_code_too_fine_for_the_label_stays_off_it():
    long = "https://handbook.example.org/" + "a-long-folder/" * 24
    html = str(hand_over_inner_html(demo_job(), "ip", long))
    assert "more than the label holds" in html
    assert html.count("QR code of the homeowner page") == 2


def test_the_preview_opens_the_page_with_the_same_fragment():
    html = str(hand_over_inner_html(demo_job(), "ip", SITE))
    fragment = homeowner.encode(homeowner.slots_of(demo_job()))
    assert f'href="../h/{fragment}"' in html


def test_the_example_says_that_it_is_one():
    assert "not your job" in str(hand_over_inner_html(None, "ip", SITE))
    assert "not your job" not in str(hand_over_inner_html(demo_job(), "ip", SITE))


def test_the_label_says_in_words_what_a_family_needs_without_the_address():
    text = _plain(label_html(demo_job(), homeowner.slots_of(demo_job()), None))
    for words in ("20 × 25 × 4", "Every 6 months", "April 2028", "marked 5–7", "marked 10–12",
                  "Backup kit 8 kW", "water heater", "October 19, 2026", "everyone out, call 911",
                  "todos afuera", "October 2028", "Juniper Flat", "Model A"):
        assert words in text, words


def test_the_label_promises_nothing_about_flames_and_leaves_blanks_for_what_is_unknown():
    bare = label_html(demo_job(), {"units": "i"}, None)
    assert str(bare).count("ho-blank") >= 9
    assert "nothing, when we left" not in str(bare)
    electric = changed(water_heater_fuel="electric")
    text = _plain(label_html(electric, homeowner.slots_of(electric), None))
    assert "nothing, when we left" in text
    assert "flame" not in text.lower().replace("smoke or flames", "")


@pytest.mark.parametrize(("language", "says"), [
    ("en", ("get everyone out and call 911", "Gas smell", "Never heat with a grill",
            "marked 5–7", "April 2028", "still burns", "plugged in")),
    ("es", ("saque a todos y llame al 911", "Olor a gas", "Nunca caliente con parrilla",
            "marcado 5–7", "abril de 2028", "todavía quema", "enchufado"))])
def test_the_letter_speaks_the_homeowners_language(language, says):
    job = changed(owner_language=language)
    html = str(letter_html(job, homeowner.slots_of(job), None))
    assert f'lang="{language}"' in html
    for words in says:
        assert words in _plain(html), words


def test_what_is_typed_is_never_markup():
    job = changed(crew_contact="<script>alert(1)</script>", fuel_capped_by="<b>x</b>",
                  equipment_model="<i>m</i>")
    html = str(hand_over_inner_html(job, "ip", SITE))
    assert "<script" not in html
    assert "<b>x</b>" not in html
    assert "&lt;b&gt;x&lt;/b&gt;" in html


def test_missing_records_are_listed_with_their_place_on_the_job_sheet():
    html = str(hand_over_inner_html(changed(heat_cable=None, filter_size=None), "ip", SITE))
    assert 'href="../job-sheet/#fact-heat_cable"' in html
    assert 'href="../job-sheet/#fact-filter_size"' in html


def test_a_weather_file_becomes_facts_and_a_year_hour_by_hour():
    with gzip.open(DATA / "727720_helena_mt_tmy3.epw.gz", "rt", encoding="utf-8") as file:
        text = file.read()
    job = write_job(demo_job())
    reply = _ask(op="weather", text=text, job=job, units="ip", at="2026-11-25T08:00:00Z")
    assert reply["ok"]
    assert "8,760 hours read" in reply["say"]
    put = _ask(op="put", job=job, facts=reply["facts"])
    assert put["ok"]
    answer = _ask(op="answer", id="year-of-this-home", job=put["job"])["answer"]
    assert answer["answer"]["year_file_kwh"]["value"] == pytest.approx(reply["kwh"], rel=0.016)
    assert read_job(put["job"]).entry("weather_place").value.startswith("Helena")


@pytest.mark.parametrize("text", ["", "hello", 5, None, "x" * 6_000_001])
def test_a_file_that_is_no_weather_is_refused_in_a_sentence(text):
    reply = _ask(op="weather", text=text, job=None, units="ip", at="")
    assert not reply["ok"]
    assert reply["errors"][0]["field"] == "weather_bins"


def test_the_hours_of_a_file_have_no_form():
    from downflow.render.calculator import calculator_html

    assert "weather_bins" not in str(calculator_html("year-of-this-home"))
