"""The frame around every page: units, night, find, contents, ticks, by touch and by key."""

from __future__ import annotations

import re

import pytest
from browser.conftest import DESK, PHONE, Watch
from playwright.sync_api import Browser, Page, expect
from server import Server

STEPS = """
const article = document.querySelector('article');
article.dataset.procedure = 'a-procedure';
article.insertAdjacentHTML('beforeend', `<ol class="df-steps"><li id="step-1">
<label class="df-tick"><input type="checkbox" aria-label="Step 1 done"><span>1</span></label>
<p>Do it.</p></li></ol><section class="df-hold" id="hold-1"><header><span>Hold point</span></header>
<p>Look.</p><button class="df-button" type="button">It stopped. Go on</button></section>
<p>At <span class="df-q" data-ip="6,200 ft" data-si="1,890 m">6,200 ft (1,890 m)</span></p>`);
document.dispatchEvent(new CustomEvent('downflow:job', {detail: DETAIL}));
"""


def with_steps(page: Page, detail: str = "{id: 'home', name: 'Lot 14'}") -> None:
    # The page's own store first says which job is open; what it says later would win.
    page.evaluate("""async () => {
        const store = await import(document.querySelector('script[src*="offline.js"]')
            .src.replace('offline.js', 'store.js'));
        await store.jobs.ready;
    }""")
    page.evaluate(f"() => {{ {STEPS.replace('DETAIL', detail)} }}")


def test_units_say_what_is_in_use_and_are_kept(page: Page, server: Server, watch: Watch) -> None:
    page.goto(server.address + "changes/")
    units = page.locator("[data-df=units]")
    expect(units).to_have_text("ft, °F")
    page.evaluate("document.addEventListener('downflow:units', (e) => { window.told = e.detail; })")
    units.click()
    expect(units).to_have_text("m, °C")
    expect(units).to_have_attribute("aria-label", "Units: m, °C. Tap for ft, °F")
    assert page.evaluate("window.told") == {"units": "si"}
    page.goto(server.address + "by-phase/")
    expect(page.locator("[data-df=units]")).to_have_text("m, °C")
    with_steps(page)
    page.locator("[data-df=units]").click()
    expect(page.locator(".df-q")).to_have_text("6,200 ft (1,890 m)")
    page.locator("[data-df=units]").click()
    expect(page.locator(".df-q")).to_have_text("1,890 m (6,200 ft)")
    assert watch.complaints == []


def test_night_follows_the_system_until_the_reader_chooses(page: Page, server: Server) -> None:
    ground = "getComputedStyle(document.body).backgroundColor"
    page.emulate_media(color_scheme="dark")
    page.goto(server.address)
    assert page.evaluate(ground) == "rgb(15, 21, 19)"
    page.emulate_media(color_scheme="light")
    assert page.evaluate(ground) == "rgb(255, 255, 255)"
    page.locator("[data-df=scheme]").click()
    assert page.evaluate(ground) == "rgb(15, 21, 19)"
    page.goto(server.address + "changes/")
    assert page.evaluate(ground) == "rgb(15, 21, 19)"
    expect(page.locator("[data-df=scheme]")).to_have_attribute("aria-label", "Night. Tap for paper")


def test_find_from_the_bar_brings_pages(page: Page, server: Server) -> None:
    page.goto(server.address)
    page.locator(".df-bar [data-df=find]").click()
    expect(page.locator("#df-search")).to_be_focused()
    page.keyboard.type("changes")
    page.locator(".md-search-result__link", has_text="Changes").first.click()
    expect(page).to_have_url(re.compile(r"/handbook/changes/"))


def test_find_on_the_start_page_opens_what_was_typed(page: Page, server: Server) -> None:
    page.goto(server.address)
    page.get_by_label("Find a task, a number or a symptom").fill("changes")
    page.keyboard.press("Enter")
    expect(page.locator(".md-search-result__link", has_text="Changes").first).to_be_visible()
    page.get_by_role("button", name="Close").click()
    expect(page.locator(".md-search__output")).to_be_hidden()


def test_contents_open_and_close_by_key_and_give_the_focus_back(page: Page, server: Server) -> None:
    page.goto(server.address)
    contents = page.locator("[data-df=contents]")
    contents.focus()
    page.keyboard.press("Enter")
    expect(contents).to_have_attribute("aria-expanded", "true")
    expect(page.locator("#contents .df-nav")).to_be_visible()
    expect(page.locator("[data-df=contents-close]")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator("#contents .df-nav")).to_be_hidden()
    expect(contents).to_be_focused()


def test_without_javascript_every_list_and_the_contents_are_there(
        browser: Browser, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False, viewport=PHONE)
    page = context.new_page()
    page.goto(server.address)
    expect(page.locator(".df-units")).to_be_hidden()
    expect(page.locator(".st-find")).to_be_hidden()
    page.locator("summary").first.click()
    expect(page.locator("details[open] a").first).to_be_visible()
    page.locator("[data-df=contents]").click()
    expect(page.locator("#contents .df-nav")).to_be_visible()
    page.locator("[data-df=contents-close]").click()
    expect(page.locator("#contents .df-nav")).to_be_hidden()
    context.close()


def test_ticks_and_hold_points_are_kept_for_each_job_and_can_be_undone(
        page: Page, server: Server) -> None:
    page.goto(server.address + "changes/")
    with_steps(page)
    expect(page.locator("[data-df=job-name]")).to_have_text("Lot 14")
    page.locator(".df-tick").click()
    page.get_by_role("button", name="It stopped. Go on").click()
    hold = page.locator("#hold-1")
    expect(hold).to_have_attribute("data-released", "")
    expect(hold.locator(".df-done")).to_contain_text("It stopped. Go on")
    page.reload()
    with_steps(page)
    expect(page.locator(".df-tick input")).to_be_checked()
    expect(hold).to_have_attribute("data-released", "")
    hold.get_by_role("button", name="undo").click()
    expect(hold).not_to_have_attribute("data-released", "")
    expect(page.get_by_role("button", name="It stopped. Go on")).to_be_visible()
    page.reload()
    with_steps(page, "{id: 'other', name: ''}")
    expect(page.locator(".df-tick input")).not_to_be_checked()
    expect(page.locator("[data-df=job-name]")).to_have_text("Job without a name")


def test_whoever_keeps_a_confirmation_with_the_job_is_the_only_one_to_keep_it(
        page: Page, server: Server) -> None:
    page.goto(server.address + "changes/")
    with_steps(page)
    page.evaluate("""document.addEventListener('downflow:confirm', (e) => {
        e.preventDefault(); window.confirmed = [e.detail.procedure, e.detail.step, !!e.detail.at];
    })""")
    page.locator(".df-tick").click()
    assert page.evaluate("window.confirmed") == ["a-procedure", "step-1", True]
    assert page.evaluate("localStorage.getItem('downflow.ticks.home')") is None


@pytest.mark.parametrize("size", [PHONE, {"width": 320, "height": 640}, DESK], ids=str)
@pytest.mark.parametrize("path", ["", "by-phase/", "calculators/heat-pump-match/", "job-sheet/"])
def test_no_page_scrolls_sideways(page: Page, server: Server, size: dict[str, int],
                                  path: str) -> None:
    page.set_viewport_size(size)  # type: ignore[arg-type]
    page.goto(server.address + path)
    wide = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    assert page.evaluate(wide) <= 0
    if size is not DESK:  # text twice as large
        page.evaluate("document.documentElement.style.fontSize = '250%'")
        assert page.evaluate(wide) <= 0


def test_targets_on_a_phone_are_large_enough_for_a_glove(page: Page, server: Server) -> None:
    page.goto(server.address)
    small = page.evaluate("""() => [...document.querySelectorAll('a, button, input, summary')]
      .map((e) => [e.outerHTML.slice(0, 80), e.getBoundingClientRect(), e])
      .filter(([, r, e]) => r.width && r.right > 0 && getComputedStyle(e).visibility === 'visible'
        && !e.matches('.md-skip, .md-toggle') && !e.closest('.md-search'))
      .filter(([, r]) => r.width < 47.5 || r.height < 47.5).map(([html]) => html)""")
    assert small == []


def test_print_leaves_the_page_and_takes_the_frame_away(page: Page, server: Server) -> None:
    page.goto(server.address + "by-phase/")
    page.emulate_media(media="print", color_scheme="dark")
    for gone in (".md-header", ".df-bar", ".df-job", ".md-footer", "#contents"):
        expect(page.locator(gone)).to_be_hidden()
    expect(page.locator("h1")).to_be_visible()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
