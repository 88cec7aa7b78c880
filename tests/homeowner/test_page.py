"""The homeowner page: whole in both languages, small, and nothing in it but its own files."""

import gzip
import re

import pytest
from homeowner.parsed import FOLDER, PAGE, told
from homeowner_page import page, words

from downflow import homeowner as link
from downflow.testing import changed


def test_the_files_are_as_the_words_and_the_slots_make_them():
    for path, text in page.files().items():
        assert path.read_text(encoding="utf-8") == text, (
            f"{path.name}: run scripts/homeowner_page/page.py")


def test_the_table_in_the_page_is_the_links_own():
    data = told()
    assert [[n, k, data["patterns"][p], most] for n, k, p, most in data["slots"]] == link.table()


@pytest.mark.parametrize("tongue", ["en", "es"])
@pytest.mark.parametrize("name", words.REQUIRED)
def test_each_required_statement_stands_in_the_page(name, tongue, demo_slots):
    electric = link.slots_of(changed(water_heater_fuel="electric"))
    said = {n: t for slots in ({}, demo_slots, electric)
            for n, t in page.sentences(tongue, slots)}
    assert len(said.get(name, "")) > 12, f"{name} is not said in {tongue}"


@pytest.mark.parametrize(("tongue", "name", "says"), [
    ("en", "fire", ("everyone out", "911", "Stop for nothing")),
    ("es", "fire", ("saque a todos", "911", "No se detenga")),
    ("en", "alarm", ("everyone out", "911 from outside")),
    ("es", "alarm", ("todos afuera", "911 desde afuera")),
    ("en", "gas", ("touch no switch", "light nothing", "no phone inside", "from far away")),
    ("es", "gas", ("no toque ningún interruptor", "no prenda nada", "no use el teléfono adentro",
                   "desde lejos")),
    ("en", "generator", ("outside", "20 feet", "Never plug it into a wall outlet",
                         "licensed electrician")),
    ("es", "generator", ("afuera", "20 pies", "Nunca lo enchufe", "electricista con licencia")),
    ("en", "no-grill", ("Never heat with a grill", "oven", "kills")),
    ("es", "no-grill", ("Nunca caliente con parrilla", "horno", "mata")),
    ("en", "cable", ("plugged in",)), ("es", "cable", ("enchufado",)),
    ("en", "walk-ice", ("keep off", "Never chip")),
    ("es", "walk-ice", ("no lo pise", "Nunca pique")),
    ("en", "breaker-once", ("switch it on once", "leave it off", "can kill")),
    ("es", "breaker-once", ("préndalo una vez", "déjelo apagado", "puede matar")),
    ("en", "run-normal", ("Long runs are normal while the room holds its setting",)),
    ("es", "run-normal", ("es normal mientras el cuarto mantiene su temperatura",)),
])
def test_what_can_hurt_is_said_in_the_right_words(tongue, name, says, demo_slots):
    for slots in ({}, demo_slots):
        text = dict(page.sentences(tongue, slots))[name]
        assert all(part in text for part in says), text


def test_gas_smell_is_left_out_only_where_no_gas_is_left(demo_slots):
    assert "gas" in dict(page.sentences("en", {}))
    assert "water heater still burns" in dict(page.sentences("en", demo_slots))["gas"]
    electric = link.slots_of(changed(water_heater_fuel="electric"))
    assert "gas" not in dict(page.sentences("en", electric))


def test_no_flame_is_promised_where_one_is_left_or_nothing_is_recorded(demo_slots):
    for slots in ({}, demo_slots):
        assert "nothing-burns" not in dict(page.sentences("en", slots))
    assert "water heater" in dict(page.sentences("en", demo_slots))["still-burns"]
    assert "capped" not in dict(page.sentences("en", {}))


def test_a_home_without_a_heat_cable_is_not_told_to_plug_it_in():
    without = link.slots_of(changed(heat_cable=False))
    assert "cable" not in dict(page.sentences("en", without))


def test_the_demos_own_figures_stand_in_both_languages(demo_slots):
    for tongue in ("en", "es"):
        text = " ".join(t for _, t in page.sentences(tongue, demo_slots)).replace("\u00a0", " ")
        for figure in ("25 °F", "94 °F", "20 × 25 × 4 in", "5–7", "10–12", "$1,1", "2.6"):
            assert figure in text, (tongue, figure)


def test_both_languages_use_the_same_slots_and_conditions():
    for section in words.SECTIONS:
        for block in section.blocks:
            for text in (block.text, *(t for i in block.items for t in (i.text, i.term))):
                cut = [[(link.split(b)[0], bool(link.split(b)[2])) for b in
                        re.findall(r"\[([^\[\]]*)\]", side)] for side in text]
                assert cut[0] == cut[1], text.en
                assert sorted(link.slots_in(text.en)) == sorted(link.slots_in(text.es)), text.en


def test_every_condition_and_slot_names_a_slot():
    for _, given, _ in PAGE.tags:
        for key in ("data-if", "data-else"):
            if given.get(key):
                link.holds(given[key], {})
        if "data-slot" in given:
            assert given["data-slot"] in link.NAMES


def test_every_slot_is_used_by_the_page():
    used = {g["data-slot"] for _, g, _ in PAGE.tags if "data-slot" in g}
    for _, given, _ in PAGE.tags:
        for key in ("data-if", "data-else"):
            used |= set(re.findall(r"[a-z_]{3,}", given.get(key) or ""))
    kept_for_print = {"language", "alarms", "kit_kw"}
    assert set(link.NAMES) - used == kept_for_print | {"chart"} - used


def test_nothing_is_asked_of_another_place_and_nothing_is_inline():
    for name, given, _ in PAGE.tags:
        assert not any(k == "style" or k.startswith("on") for k in given), (name, given)
        for key in ("href", "src"):
            # An empty icon of its own: the browser asks the server for none.
            assert given.get(key) == "data:," or not re.match(r"[a-z]+:|//", given.get(key) or "")
    assert [g.get("src") for n, g, _ in PAGE.tags if n == "script"] == ["page.js", None]
    policy = next(g["content"] for n, g, _ in PAGE.tags
                  if g.get("http-equiv") == "Content-Security-Policy")
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert "connect-src" not in policy


def test_the_scripts_make_no_markup_and_ask_for_nothing():
    for name in ("page.js", "link.js"):
        code = re.sub(r"/\*.*?\*/|//[^\n]*", "", (FOLDER / name).read_text(encoding="utf-8"),
                      flags=re.S)
        for bad in ("innerHTML", "outerHTML", "insertAdjacent", "document.write", "eval(",
                    "Function(", "fetch(", "XMLHttp", "serviceWorker", "localStorage",
                    "indexedDB", "import(", "toFixed", "Math.round", "parseFloat"):
            assert bad not in code, (name, bad)


def test_the_page_is_under_60_kilobytes_even_unpacked():
    files = ("index.html", "page.js", "link.js", "page.css")
    raw = sum((FOLDER / f).stat().st_size for f in files)
    assert raw < 60_000
    assert sum(len(gzip.compress((FOLDER / f).read_bytes())) for f in files) < 25_000


def test_there_is_one_main_heading_and_headings_do_not_skip():
    heads = [n for n, _, _ in PAGE.tags if re.fullmatch("h[1-6]", n)]
    assert heads.count("h1") == 1
    assert set(heads) == {"h1", "h2"}
    assert heads.count("h2") == len(words.SECTIONS)


def test_ids_are_unique_and_targets_exist():
    ids = [g["id"] for _, g, _ in PAGE.tags if g.get("id")]
    assert len(ids) == len(set(ids))
    for _, given, _ in PAGE.tags:
        if "data-go" in given:
            assert given["data-go"] in ids


@pytest.mark.parametrize("tongue", ["en", "es"])
def test_the_general_page_says_the_same_without_a_link(tongue):
    text = page.GENERAL[tongue].read_text(encoding="utf-8")
    plain = text.replace("**", "")
    for name, said in page.sentences(tongue, {}):
        if name not in ("system", "chart"):
            assert said in plain, name
    assert "{" not in text.split("---", 2)[2]
