"""The main job in a real browser: a better reading of the walls reaches the breaker.

A crew's job is open, with the kit not yet chosen. The wall insulation is read again; the load,
the balance point, the kit and its breaker follow. The page is loaded again; then the server
goes away for good, and the same is done once more. Last, a new release comes in between.
"""

from __future__ import annotations

import json
from pathlib import Path

from browser.conftest import Watch
from browser.pages import change, open_page, stored, until
from playwright.sync_api import BrowserContext, Page, expect
from server import Server

from downflow.demo import demo_job
from downflow.facts.job import write_job

SHELL = "calculators/shell/"
FOLLOWS = {
    "load": "calculators/heat-loss/",
    "balance point": "calculators/heat-pump-match/",
    "kit": "calculators/backup-kit/",
    "breaker": "calculators/kit-circuit/",
}
# What the worked example has chosen for the crew; without them the calculators choose.
CHOSEN = ("kit_planned_kw", "kit_label_mca_a", "kit_label_breaker_a", "kit_breaker_planned_a",
          "kit_wire_planned")
OPEN = """async (text) => {
    const { jobs } = await import(new URL('assets/store.js', location.href).href);
    return (await jobs.add(text)).ok;
}"""


def crews_job() -> str:
    """The worked example's home as a job of one's own, the kit still to be chosen."""
    job = demo_job()
    for name in CHOSEN:
        job = job.with_entry(name, None)
    data = json.loads(write_job(job))
    return json.dumps({**data, "id": "lot-7", "name": "Lot 7"})


def start_job(page: Page, server: Server) -> None:
    page.goto(server.address)
    assert page.evaluate(OPEN, crews_job()) is True


def answers(page: Page, server: Server) -> dict[str, str]:
    """What each page says of the open job, headline and all."""
    found = {}
    for what, path in FOLLOWS.items():
        open_page(page, server, path)
        until(page, "document.querySelector('df-calculator[data-mine] .df-answer__value')")
        until(page, "!document.querySelector('df-calculator .df-pending')", 60)
        found[what] = page.locator('df-calculator [data-region="answer"]').inner_text()
    return found


def read_walls(page: Page, server: Server, typed: str) -> None:
    open_page(page, server, SHELL)
    until(page, "document.querySelector('df-calculator[data-mine]')")
    change(page, "wall_insulation_r", typed)


def ready_offline(page: Page) -> None:
    until(page, "document.querySelector('df-offline')?.textContent.includes('ready offline')", 90)


def test_from_the_walls_to_the_breaker_and_again_with_the_server_gone(
        server: Server, page: Page, watch: Watch):
    start_job(page, server)
    read_walls(page, server, "11")
    before = answers(page, server)
    read_walls(page, server, "2")
    after = answers(page, server)
    assert [what for what in FOLLOWS if after[what] == before[what]] == []

    page.reload()
    ready_offline(page)
    assert stored(page)["facts"]["wall_insulation_r"]["value"] == 2

    server.stop()
    assert answers(page, server) == after
    read_walls(page, server, "11")
    assert answers(page, server) == before
    assert stored(page)["facts"]["wall_insulation_r"]["value"] == 11
    assert watch.foreign(server) == []
    assert watch.policy_complaints() == []


def test_a_new_release_in_two_tabs_leaves_the_open_job_as_it_was(
        server: Server, page: Page, context: BrowserContext, later: Path):
    start_job(page, server)
    ready_offline(page)
    read_walls(page, server, "7")
    kept = stored(page)
    second = context.new_page()
    second.goto(server.address + SHELL)
    server.stop()
    server.folder = later
    server.start()
    page.goto(server.address)
    page.evaluate("async () => (await navigator.serviceWorker.getRegistration()).update()")
    expect(page.locator("#later")).to_have_count(0)
    button = page.locator("df-update button")
    expect(button).to_be_visible(timeout=60_000)
    with page.expect_navigation(), second.expect_navigation():
        button.click()
    expect(page.locator("#later")).to_be_attached()
    assert stored(page) == kept
    until(second, "document.querySelector('df-calculator[data-mine]')", 60)
    assert second.locator("[name=wall_insulation_r]").input_value() == "7"
