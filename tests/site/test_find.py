"""Find: what people type brings the page they mean, and no page is far from the start.

The queries were written by someone who had seen the list of topics alone; one half of them was
never used to choose a word or a weight. `find_slugs.json` says which address a topic has.
"""

from __future__ import annotations

import json
import subprocess
from pathlib import Path
from typing import Any

import find_index
import pytest
from make.common import node

HERE = Path(__file__).parent
QUERIES = json.loads((HERE / "find_queries.json").read_text("utf-8"))
SLUGS = json.loads((HERE / "find_slugs.json").read_text("utf-8"))
HALVES = sorted({entry["half"] for entry in QUERIES})
ENOUGH = 0.95


def ranked(site: Path, queries: list[str]) -> list[list[dict[str, Any]]]:
    """What the site's own scripts find, likeliest first."""
    done = subprocess.run([node(), HERE / "find_rank.mjs", site], input=json.dumps(queries),
                          capture_output=True, text=True, check=True)
    return json.loads(done.stdout)


def first_three(site: Path, query: str) -> list[str]:
    return [found["url"] for found in ranked(site, [query])[0][:3]]


@pytest.fixture(scope="session")
def index(site: Path) -> dict[str, Any]:
    return json.loads((site / "assets" / "find.json").read_text("utf-8"))


def test_there_are_eighty_queries_and_half_of_them_were_kept_out_of_tuning():
    assert len(QUERIES) >= 80
    sizes = [sum(entry["half"] == half for entry in QUERIES) for half in HALVES]
    assert len(sizes) == 2
    assert max(sizes) - min(sizes) <= 1


@pytest.mark.parametrize("half", HALVES)
def test_what_people_type_brings_the_page_among_the_first_three(site: Path, half: str):
    asked = [entry for entry in QUERIES if entry["half"] == half]
    found = ranked(site, [entry["query"] for entry in asked])
    good = sum(bool({SLUGS[page] for page in entry["pages"]} & {hit["url"] for hit in hits[:3]})
               for entry, hits in zip(asked, found, strict=True))
    assert good >= ENOUGH * len(asked), f"{good} of {len(asked)}"


def test_every_topic_of_the_queries_has_an_address():
    assert {page for entry in QUERIES for page in entry["pages"]} == set(SLUGS)


def test_every_title_brings_its_own_page_first(site: Path, index):
    pages = [entry for entry in index["entries"] if "of" not in entry]
    found = ranked(site, [page["title"] for page in pages])
    lost = [page["title"] for page, hits in zip(pages, found, strict=True)
            if page["title"] not in _titles(index, hits[:1 if page["kind"] != "page" else 3])]
    assert lost == []


def _titles(index: dict[str, Any], hits: list[dict[str, Any]]) -> set[str]:
    title = {entry["url"]: entry["title"] for entry in index["entries"]}
    return {title[hit["url"]] for hit in hits}


@pytest.mark.parametrize(("typed", "meant"), [
    ("CONDENSATE TRAP", "procedures/condensate-trap/"),
    ("condansate trep", "procedures/condensate-trap/"),
    ("condens", "procedures/condensate-trap/"),
    ("lineset", "procedures/line-set-and-brazing/"),
    ("line-set", "procedures/line-set-and-brazing/"),
    ("calefaccion no enfria", "homeowner/espanol/"),
    ("calefacción no enfría", "homeowner/espanol/"),
])
def test_capitals_letters_spaces_and_accents_are_forgiven(site: Path, typed: str, meant: str):
    assert meant in first_three(site, typed)


def test_words_that_mean_nothing_find_nothing(site: Path):
    assert ranked(site, ["", "the of and", "zzqqxxv", "   "]) == [[], [], [], []]


def test_the_words_of_a_step_bring_that_step(site: Path, index):
    """Some sentences stand close to another's; nineteen in twenty must be linked to."""
    steps = [entry for entry in index["entries"] if entry["kind"] in ("step", "hold point")]
    assert len(steps) > 300
    found = ranked(site, [step["title"] for step in steps])
    good = sum(step["url"] in {url for hit in hits[:3] for url in hit["parts"]}
               for step, hits in zip(steps, found, strict=True))
    assert good >= ENOUGH * len(steps), f"{good} of {len(steps)}"


def test_every_entry_leads_to_a_place_that_is_there(index, pages):
    lost = []
    for entry in index["entries"]:
        path, _, fragment = entry["url"].partition("#")
        page = pages.get(f"{path}index.html")
        if page is None or (fragment and fragment not in page.ids):
            lost.append(entry["url"])
    assert lost == []


def test_every_page_every_step_and_every_hold_point_is_in_the_index(index, pages):
    listed = {entry["url"] for entry in index["entries"]}
    missing = []
    for name, page in pages.items():
        url = name.removesuffix("index.html")
        if name == "404.html" or name.startswith("h/"):
            continue
        wanted = [url]
        if url.startswith(("procedures/", "symptoms/")):
            wanted += [f"{url}#{id_}" for tag, given in page.tags for id_ in [given.get("id", "")]
                       if (tag == "li" and id_.startswith("step-"))
                       or (tag == "section" and id_.startswith("hold-"))]
        missing += [one for one in wanted if one not in listed]
    assert missing == []


def test_there_is_one_search_and_no_other(site: Path):
    assert not (site / "search").exists()
    assert [path.name for path in site.rglob("assets/javascripts/*/*")] == []


def test_the_library_comes_with_its_licence(site: Path):
    licence = (site / "assets" / "vendor" / "minisearch-license.txt").read_text("utf-8")
    assert "Permission is hereby granted, free of charge" in licence
    library = (site / "assets" / "vendor" / "minisearch.js").read_text("utf-8")
    assert "export { MiniSearch as default }" in library


def test_a_word_for_a_page_that_is_not_there_stops_the_build():
    page = find_index.Source("a-page", "page", "A page", "a-page/", "", {"words": ["own word"]},
                             "Prose.", '<h2 id="one">One</h2>')
    good = find_index.index([page], {"same": {}, "pages": {"a-page": {"trade": ["slang"]}}})
    assert good["entries"][0]["words"] == ["own word", "slang"]
    assert good["entries"][1] == {"kind": "heading", "title": "One", "url": "a-page/#one", "of": 0}
    with pytest.raises(ValueError, match="b-page"):
        find_index.index([page], {"same": {}, "pages": {"b-page": {"trade": ["slang"]}}})


# ------------------------------------------------------------------ how far from the start

def taps(pages: dict[str, Any]) -> dict[str, int]:
    """Least number of links from the start page to each page."""
    far, edge = {"index.html": 0}, ["index.html"]
    while edge:
        following = []
        for name in edge:
            for _, target, _ in pages[name].targets():
                if target in pages and target not in far:
                    far[target] = far[name] + 1
                    following.append(target)
        edge = following
    return far


def test_procedures_calculators_and_symptoms_are_two_taps_from_the_start(pages):
    far = taps(pages)
    kinds = ("procedures/", "calculators/", "symptoms/")
    wanted = [name for name in pages if name.startswith(kinds)]
    assert len(wanted) > 80
    assert [name for name in wanted if far.get(name, 99) > 2] == []


def test_every_other_page_is_three_taps_from_the_start(pages):
    far = taps(pages)
    wanted = [name for name in pages if name != "404.html" and not name.startswith("h/")]
    assert [name for name in wanted if far.get(name, 99) > 3] == []
