"""Find in a real browser: misspelt on a phone, by key, last used, and with the server gone."""

from __future__ import annotations

import re

from browser.conftest import DESK, Watch
from browser.test_offline import wait_for
from playwright.sync_api import Page, expect
from server import Server

FOUND = "[data-df=find-list] a"


def type_on_phone(page: Page, text: str) -> None:
    page.locator(".df-bar [data-df=find]").click()
    expect(page.locator("#df-search")).to_be_focused()
    page.keyboard.type(text)


def test_a_misspelt_query_opens_the_page_it_means(page: Page, server: Server, watch: Watch) -> None:
    page.goto(server.address + "calculators/backup-kit/")
    type_on_phone(page, "condansate trep")
    first = page.locator(FOUND).first
    expect(first).to_contain_text("Condensate trap")
    first.click()
    expect(page).to_have_url(re.compile(r"/handbook/(procedures|calculators)/condensate-trap/"))
    expect(page.locator("h1")).to_contain_text("Condensate trap")
    assert watch.foreign(server) == []
    assert watch.complaints == []


def test_it_finds_with_the_server_gone_from_any_depth(
        page: Page, server: Server, watch: Watch) -> None:
    page.goto(server.address)
    assert wait_for(page, "ready")[0] == "ready"
    server.stop()
    page.goto(server.address + "symptoms/loud/")
    type_on_phone(page, "gotea agua")
    first = page.locator(FOUND).first
    expect(first).to_contain_text("Para el dueño de la casa")
    first.click()
    expect(page).to_have_url(re.compile(r"/handbook/homeowner/espanol/"))
    page.locator(".df-bar a", has_text="Start").click()
    box = page.get_by_label("Find a task, a number or a symptom")
    box.fill("belley torn")
    box.press("Enter")
    expect(page.locator(FOUND).first).to_contain_text("Repair the belly")
    assert watch.foreign(server) == []
    assert watch.policy_complaints() == []


def test_by_key_alone(page: Page, server: Server) -> None:
    page.set_viewport_size(DESK)
    page.goto(server.address + "changes/")
    box = page.locator("#df-search")
    page.keyboard.press("/")
    expect(box).to_be_focused()
    expect(box).to_have_value("")
    page.keyboard.type("mastic")
    expect(page.locator(FOUND).first).to_contain_text("Seal boots")
    expect(page.locator("[data-df=find-said]")).to_contain_text("pages")
    page.keyboard.press("ArrowDown")
    expect(page.locator(FOUND).first).to_be_focused()
    page.keyboard.press("ArrowDown")
    expect(page.locator(FOUND).nth(1)).to_be_focused()
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    expect(box).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator(".md-search__output")).to_be_hidden()
    page.keyboard.press("/")
    expect(box).to_have_value("mastic")
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile(r"/procedures/seal-the-ducts/"))


def test_a_slash_in_a_field_is_a_slash(page: Page, server: Server) -> None:
    page.goto(server.address)
    box = page.get_by_label("Find a task, a number or a symptom")
    box.click()
    page.keyboard.type("1/2")
    expect(box).to_have_value("1/2")
    expect(page.locator(".md-search__output")).to_be_hidden()


def test_the_slash_opens_find_on_a_small_screen_too(page: Page, server: Server) -> None:
    page.goto(server.address + "changes/")
    page.keyboard.press("/")
    expect(page.locator("#df-search")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator("#df-search")).to_be_hidden()


def test_an_empty_box_shows_the_pages_last_used(page: Page, server: Server) -> None:
    page.goto(server.address)
    page.locator(".df-bar [data-df=find]").click()
    expect(page.locator("[data-df=find-said]")).to_contain_text("in any words")
    expect(page.locator(FOUND)).to_have_count(0)
    page.goto(server.address + "procedures/condensate-trap/")
    page.goto(server.address + "changes/")
    page.locator(".df-bar [data-df=find]").click()
    expect(page.locator("[data-df=find-said]")).to_have_text("Last used on this device")
    page.locator(FOUND, has_text="Condensate trap").click()
    expect(page).to_have_url(re.compile(r"/procedures/condensate-trap/"))


def test_nothing_found_says_where_else_to_look(page: Page, server: Server) -> None:
    page.goto(server.address)
    type_on_phone(page, "zzqqxxv")
    expect(page.locator("[data-df=find-said]")).to_contain_text("Nothing found")
    page.locator(FOUND, has_text="By symptom").click()
    expect(page).to_have_url(re.compile(r"/handbook/symptoms/"))


def test_a_step_on_the_open_page_is_reached_and_find_closes(page: Page, server: Server) -> None:
    page.goto(server.address + "procedures/condensate-trap/")
    type_on_phone(page, "fill the trap cleanout water")
    step = page.locator(f"{FOUND}[href*='condensate-trap/#step-']").first
    step.click()
    expect(page).to_have_url(re.compile(r"/procedures/condensate-trap/#step-\d+$"))
    expect(page.locator(".md-search__output")).to_be_hidden()
