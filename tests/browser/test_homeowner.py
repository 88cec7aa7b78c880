"""The homeowner page and the making of its link, in a real browser."""

from __future__ import annotations

import json
import random

import pytest
from browser.pages import open_page, until
from playwright.sync_api import BrowserContext, Page
from server import Server

from downflow import homeowner
from downflow.demo import demo_job
from downflow.facts.job import write_job

SITE = "https://handbook.example.org/downflow/"
ALERT = "window.struck = 0; window.alert = () => { window.struck += 1; };"


def _open(page: Page, server: Server, fragment: str) -> None:
    # A new fragment alone would be a jump, not a visit.
    page.goto("about:blank")
    page.goto(f"{server.address}h/{fragment}")
    until(page, "document.documentElement.classList.contains('js')")


@pytest.fixture
def fragment() -> str:
    return homeowner.encode(homeowner.slots_of(demo_job()))


def test_the_page_shows_this_homes_figures_and_installs_nothing(page, watch, server, fragment):
    _open(page, server, fragment)
    text = page.inner_text("main")
    for words in ("Juniper Flat", "20\u00a0×\u00a025\u00a0×\u00a04\u00a0in", "5–7", "10–12",
                  "April 2028", "water heater still burns", "plugged in", "get everyone out"):
        assert words in text, words
    assert "Humo" not in text
    assert not watch.foreign(server)
    assert not watch.complaints
    asked = {url.rsplit("/", 1)[1].split("#")[0] for url in watch.requests if "/h/" in url}
    assert asked == {"", "page.css", "page.js", "link.js"}
    assert not page.evaluate("navigator.serviceWorker.getRegistrations().then((r) => r.length)")
    assert page.evaluate("Object.keys(localStorage).length") == 0


def test_the_figures_are_sent_to_no_server(page, watch, server, fragment):
    _open(page, server, fragment)
    assert not any(fragment[1:40] in url for url in server_paths(server))


def server_paths(server: Server) -> list[str]:
    """What the server was asked for."""
    return list(server.asked)


def test_spanish_is_one_tap_away_and_the_address_keeps_its_figures(page, server, fragment):
    _open(page, server, fragment)
    page.locator("label:has(#les)").click()
    text = page.inner_text("main")
    assert "saque a todos y llame al 911" in text
    assert "abril de 2028" in text
    assert "everyone out" not in text
    assert page.evaluate("document.documentElement.lang") == "es"
    page.locator("a[data-go=call]:visible").first.click()
    assert page.evaluate("location.hash") == fragment


def test_a_link_can_open_in_spanish(page, server):
    slots = {**homeowner.slots_of(demo_job()), "language": "s"}
    _open(page, server, homeowner.encode(slots))
    assert page.evaluate("document.documentElement.lang") == "es"


def test_without_a_link_it_speaks_of_every_home(page, server):
    _open(page, server, "")
    text = page.inner_text("main")
    assert "homes like yours" in text
    assert "Long runs are normal" in text
    assert "nothing in your home burned" not in text
    assert page.locator("[data-fault]:visible").count() == 0


def test_a_cut_link_says_so_and_still_helps(page, server, fragment):
    _open(page, server, fragment[: len(fragment) // 2])
    assert page.locator("[data-fault=broken]").is_visible()
    assert "get everyone out" in page.inner_text("main")
    _open(page, server, "#9.AAAA")
    assert page.locator("[data-fault=newer]").is_visible()


def test_hostile_fragments_run_nothing(context: BrowserContext, server: Server):
    """A sample of the hundred thousand, in a real browser: no script runs, nothing is injected."""
    from homeowner.test_fuzz import fragments

    context.add_init_script(ALERT)
    page = context.new_page()
    rng = random.Random(3)
    made = rng.sample(fragments(homeowner.slots_of(demo_job())), 150)
    _open(page, server, "")
    elements = page.evaluate("document.querySelectorAll('*').length")
    for one in made:
        page.evaluate("(f) => { location.hash = f; }", one)
        page.evaluate("() => new Promise((done) => setTimeout(done, 0))")
    assert page.evaluate("window.struck") == 0
    assert page.evaluate("document.querySelectorAll('*').length") == elements


def test_free_text_is_shown_as_text(page, server):
    slots = {**homeowner.slots_of(demo_job()), "home": "<img src=x onerror=alert(1)>"}
    _open(page, server, homeowner.encode(slots))
    assert "<img src=x onerror=alert(1)>" in page.inner_text("main")
    assert page.locator("main img").count() == 0


@pytest.mark.parametrize("width", [320, 390])
def test_nothing_runs_out_of_the_side_of_a_phone(page, server, fragment, width):
    page.set_viewport_size({"width": width, "height": 700})
    for tongue in ("len", "les"):
        _open(page, server, fragment)
        page.locator(f"label:has(#{tongue})").click()
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_targets_are_large_enough_for_a_thumb(page, server, fragment):
    _open(page, server, fragment)
    for target in page.locator("label:visible, .button:visible").all():
        box = target.bounding_box()
        assert box and box["height"] >= 48, target.inner_text()


def test_the_dates_come_as_a_calendar_file(page, server, fragment):
    _open(page, server, fragment)
    with page.expect_download() as waiting:
        page.locator("[data-do=calendar]").click()
    assert waiting.value.suggested_filename == "heat-pump.ics"
    text = waiting.value.path().read_text(encoding="utf-8")
    assert "DTSTART;VALUE=DATE:20280401" in text


def test_the_page_works_in_english_without_its_script(browser, server, fragment):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{server.address}h/{fragment}")
    text = page.inner_text("main")
    assert "get everyone out and call 911" in text
    assert "saque a todos" not in text
    page.locator("label:has(#les)").click()
    assert "saque a todos" in page.inner_text("main")
    context.close()


def test_browser_and_shell_make_one_link(page, server):
    """The demo's own file, opened as a job: the same address to the byte."""
    open_page(page, server, "hand-over/")
    page.evaluate("""async (text) => {
        const { jobs } = await import(new URL('../assets/store.js', location.href).href);
        await jobs.add(text);
    }""", write_job(demo_job()))
    page.locator("[data-site]").fill(SITE)
    made = until(page, "document.querySelector('df-hand-over[data-whose=job] [data-link]')"
                       "?.dataset.link", 60)
    assert made == homeowner.link(demo_job(), SITE)
    assert page.locator("df-hand-over svg[aria-label^='QR']").count() == 3
    page.locator("[data-site]").fill("nonsense")
    until(page, "!document.querySelector('df-hand-over [data-link]')")
    assert "no code is made" in page.inner_text("df-hand-over")


def test_a_weather_file_is_counted_on_the_device(page, watch, server):
    import gzip
    from pathlib import Path

    data = Path(__file__).parents[1] / "data" / "727720_helena_mt_tmy3.epw.gz"
    open_page(page, server, "calculators/year-of-this-home/")
    page.evaluate("""async (text) => {
        const { jobs } = await import(new URL('../../assets/store.js', location.href).href);
        await jobs.add(text);
    }""", json.dumps(json.loads(write_job(demo_job()))))
    page.set_input_files("[data-file]", files=[{
        "name": "helena.epw", "mimeType": "text/plain", "buffer": gzip.decompress(
            data.read_bytes())}])
    until(page, "document.querySelector('df-weather [data-said]').textContent"
                ".includes('8,760')", 60)
    until(page, "document.querySelector('df-calculator').textContent"
                ".includes('from the weather file')", 60)
    assert not watch.foreign(server)
