"""Procedures in a real browser: the field card on paper, the calculator at its step, ticks."""

from __future__ import annotations

import re

import pytest
from browser.conftest import Watch
from browser.pages import until
from playwright.sync_api import Page, expect
from server import Server

from downflow.render.procedure import PROCEDURES

TRAP = "procedures/condensate-trap/"
PAPER = {"Letter": 2, "A4": 2}


def sheets(pdf: bytes) -> int:
    """How many pages a PDF has."""
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf))


@pytest.mark.parametrize("id_", PROCEDURES)
def test_a_field_card_takes_at_most_two_sheets(id_: str, page: Page, server: Server) -> None:
    page.goto(f"{server.address}procedures/{id_}/")
    for paper, most in PAPER.items():
        count = sheets(page.pdf(format=paper, prefer_css_page_size=False))
        assert 1 <= count <= most, f"{count} sheets of {paper}"


def test_a_field_card_keeps_steps_boxes_blanks_and_drops_what_paper_cannot_use(
        page: Page, server: Server) -> None:
    page.goto(server.address + TRAP)
    page.emulate_media(media="print")
    expect(page.locator("#step-1 > p").first).to_be_visible()
    expect(page.locator(".fc-head")).to_be_visible()
    expect(page.locator(".df-hold .fc-blank, .df-hit .fc-blank").first).to_be_visible()
    expect(page.locator(".df-fig").first).to_be_visible()
    for gone in (".df-bar", ".md-header", ".df-hold button", ".df-ats", ".md-sidebar"):
        for one in page.locator(gone).all():
            expect(one).to_be_hidden()
    dark = page.evaluate("""() => [...document.querySelectorAll('article *')].filter((e) => {
        const c = getComputedStyle(e).backgroundColor;
        const [r, g, b, a] = c.match(/[\\d.]+/g).map(Number);
        return a !== 0 && r + g + b < 300 && e.getBoundingClientRect().width > 0;
    }).map((e) => e.className)""")
    assert dark == []


def test_the_calculator_of_a_step_opens_below_it_and_closes(
        page: Page, server: Server, watch: Watch) -> None:
    page.goto(server.address + TRAP)
    link = page.locator('#step-2 a[data-calculator="condensate-trap"]')
    link.click()
    box = page.locator("#step-2 .df-here df-calculator")
    expect(box).to_be_visible()
    expect(box.locator(".df-answer__value").first).to_contain_text(re.compile(r"\d"))
    assert page.url.endswith(TRAP)
    other = page.locator("#step-6 a[data-calculator]").first
    other.click()
    expect(page.locator(".df-here")).to_have_count(1)
    expect(page.locator("#step-6 .df-here")).to_be_visible()
    page.get_by_role("button", name="Close the calculator").click()
    expect(page.locator(".df-here")).to_have_count(0)
    expect(other).to_be_focused()
    assert watch.foreign(server) == []
    assert watch.policy_complaints() == []


def test_a_number_changed_at_the_step_is_the_jobs(page: Page, server: Server) -> None:
    page.goto(server.address + TRAP)
    page.locator('#step-2 a[data-calculator="condensate-trap"]').click()
    field = page.locator("#step-2 .df-here input[inputmode=decimal]:not([type=hidden])").first
    expect(field).to_be_visible()
    name = field.get_attribute("name")
    field.fill("1")
    until(page, "document.querySelector('[data-df=job-name]').textContent !== 'No job is open'")
    page.goto(server.address + "calculators/condensate-trap/")
    until(page, f"document.querySelector('[name=\"{name}\"]')?.value === '1'")


def test_a_tick_and_a_hold_point_are_kept(page: Page, server: Server) -> None:
    page.goto(server.address + TRAP)
    page.locator("#step-1 .df-tick").click()
    page.locator("#hold-1 button.df-button").click()
    expect(page.locator("#hold-1")).to_have_attribute("data-released", "")
    page.reload()
    expect(page.locator("#step-1 input")).to_be_checked()
    expect(page.locator("#hold-1")).to_have_attribute("data-released", "")
    expect(page.locator("#hold-1 .df-done")).to_contain_text("It stopped")


def test_a_step_can_be_linked_to(page: Page, server: Server) -> None:
    page.goto(f"{server.address}{TRAP}#step-5")
    expect(page.locator("#step-5")).to_be_in_viewport()


def test_a_procedure_works_without_scripts(browser: object, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False)  # type: ignore[attr-defined]
    page = context.new_page()
    page.goto(server.address + TRAP)
    page.locator('#step-2 a[data-calculator="condensate-trap"]').click()
    assert page.url.endswith("calculators/condensate-trap/")
    context.close()
