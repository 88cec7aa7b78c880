"""Several jobs on one device: kept, read back, undone, taken out and in, and never overwritten."""

from __future__ import annotations

import json
from pathlib import Path

from browser.pages import MATCH, change, eventually, open_page, stored, until
from playwright.sync_api import Browser, BrowserContext, Page
from server import Server


def jobs_page(page: Page, server: Server) -> None:
    open_page(page, server, "job-sheet/")
    page.locator("df-jobs summary").click()


def piece(page: Page, name: str) -> str:
    return page.locator(f'df-jobs [data-piece="{name}"]').inner_text()


def start_job(page: Page, name: str) -> None:
    page.locator("#job-start").fill(name)
    page.get_by_role("button", name="Start a job").click()
    eventually(lambda: page.locator("[data-df=job-name]").first.inner_text() == name)
    until(page, "document.querySelector('df-sheet[data-mine]')")


def names(page: Page) -> list[str]:
    return page.locator("df-jobs [data-job] b").all_inner_texts()


def do(page: Page, what: str) -> None:
    page.locator(f'df-jobs [data-do="{what}"]').click()


def test_start_copy_rename_delete_can_each_be_undone(server: Server, page: Page):
    jobs_page(page, server)
    start_job(page, "Lot 14")
    do(page, "undo")
    eventually(lambda: names(page) == [])
    start_job(page, "Lot 15")
    do(page, "copy")
    eventually(lambda: sorted(names(page)) == ["Lot 15", "Lot 15, copy"])
    do(page, "undo")
    eventually(lambda: names(page) == ["Lot 15"])
    page.locator("#job-rename").fill("Lot 16")
    page.get_by_role("button", name="Rename").click()
    eventually(lambda: names(page) == ["Lot 16"])
    do(page, "undo")
    eventually(lambda: names(page) == ["Lot 15"])
    do(page, "delete")
    eventually(lambda: names(page) == [])
    assert page.locator("[data-df=job-name]").first.inner_text() == "No job is open"
    page.reload()
    page.locator("df-jobs summary").click()
    eventually(lambda: page.locator("[data-do=undo]").is_visible())
    do(page, "undo")
    eventually(lambda: names(page) == ["Lot 15"])
    assert page.locator("[data-df=job-name]").first.inner_text() == "Lot 15"


def test_a_fact_opens_in_its_place_and_closing_comes_back_to_it(server: Server, page: Page):
    jobs_page(page, server)
    start_job(page, "Lot 14")
    page.goto(server.address + "job-sheet/#fact-elevation_ft")
    form = page.locator("[data-fact-form=elevation_ft]")
    form.wait_for()
    form.locator("[name=elevation_ft]").fill("5,280")
    eventually(lambda: stored(page)["facts"].get("elevation_ft", {}).get("value") == 5280)
    form.get_by_role("button", name="Close").click()
    line = page.locator("#fact-elevation_ft")
    eventually(lambda: "5280" in line.inner_text() and "measured" in line.inner_text())
    assert page.evaluate("document.activeElement.dataset.edit") == "elevation_ft"
    line.locator("button").first.click()
    form = page.locator("[data-fact-form=elevation_ft]")
    form.wait_for()
    form.locator("[name='elevation_ft.note']").fill("by altimeter")
    form.locator("[name='elevation_ft.note']").press("Tab")
    eventually(lambda: stored(page)["facts"]["elevation_ft"]["note"] == "by altimeter")
    form.locator("[name=elevation_ft]").fill("90000")
    eventually(lambda: "You typed 90000" in form.inner_text())
    assert stored(page)["facts"]["elevation_ft"]["value"] == 5280


def test_an_exported_file_comes_back_on_another_device_without_loss(
        server: Server, page: Page, browser: Browser, tmp_path: Path):
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12.5")
    jobs_page(page, server)
    eventually(lambda: "Not yet exported" in piece(page, "state"))
    with page.expect_download() as download:
        do(page, "export")
    file = tmp_path / "job.json"
    download.value.save_as(file)
    eventually(lambda: "Last export" in piece(page, "state"))
    assert json.loads(file.read_text()) == stored(page)
    other = browser.new_context()
    there = other.new_page()
    jobs_page(there, server)
    there.locator("df-jobs input[type=file]").set_input_files(file)
    eventually(lambda: "is here and open" in piece(there, "say"))
    assert stored(there) == stored(page)
    other.close()


def test_two_copies_of_a_job_are_laid_side_by_side(server: Server, page: Page, tmp_path: Path):
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12")
    change(page, "indoor_design_f", "68")
    theirs = stored(page)
    theirs["facts"]["hp_cutout_f"].update(value=-20.0, at="2026-02-02T10:00:00Z")
    theirs["facts"]["setback_f"] = {"value": 2.0, "unit": "°F diff", "from": "measured",
                                    "at": "", "note": ""}
    file = tmp_path / "theirs.json"
    file.write_text(json.dumps(theirs))
    jobs_page(page, server)
    page.locator("df-jobs input[type=file]").set_input_files(file)
    differ = page.locator("df-jobs [data-piece=differences]")
    differ.wait_for()
    assert "−12" in differ.inner_text()
    assert "−20" in differ.inner_text()
    assert "Indoor temperature" not in differ.inner_text()
    assert stored(page)["facts"]["hp_cutout_f"]["value"] == -12
    assert stored(page)["facts"]["setback_f"]["value"] == 2
    differ.get_by_role("button", name="Take the file's value").click()
    eventually(lambda: stored(page)["facts"]["hp_cutout_f"]["value"] == -20)


def test_a_foreign_or_newer_file_leaves_everything_as_it_was(server: Server, page: Page,
                                                            tmp_path: Path):
    jobs_page(page, server)
    start_job(page, "Lot 14")
    before = stored(page)
    for text, said in (("{nope", "not JSON"), ("[]", "Not a job sheet"),
                       ('{"downflow": 99, "id": "x", "name": "y"}', "newer handbook")):
        file = tmp_path / "bad.json"
        file.write_text(text)
        page.locator("df-jobs input[type=file]").set_input_files(file)
        eventually(lambda said=said: said in piece(page, "say"))
    assert stored(page) == before
    assert names(page) == ["Lot 14"]


def test_two_tabs_never_overwrite_each_other(server: Server, context: BrowserContext, page: Page):
    open_page(page, server, MATCH)
    change(page, "home_ua_btuh_f", "400")
    other = context.new_page()
    open_page(other, server, MATCH)
    until(other, "document.querySelector('df-calculator[data-mine]')")
    for typed in ("1", "2", "3"):
        page.locator("[name=hp_cutout_f]").fill(f"-{typed}")
        other.locator("[name=indoor_design_f]").fill(f"6{typed}")
    eventually(lambda: stored(page)["facts"].get("hp_cutout_f", {}).get("value") == -3
               and stored(page)["facts"].get("indoor_design_f", {}).get("value") == 63)
    eventually(lambda: other.locator("[name=hp_cutout_f]").input_value() == "−3"
               and page.locator("[name=indoor_design_f]").input_value() == "63")
    assert stored(page)["facts"]["home_ua_btuh_f"]["value"] == 400


def test_where_the_device_keeps_nothing_work_goes_on_and_it_is_said(server: Server,
                                                                   browser: Browser):
    context = browser.new_context()
    context.add_init_script("indexedDB.open = () => { throw new Error('blocked'); };")
    page = context.new_page()
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12")
    assert "not yours" in page.locator("[data-region=messages]").inner_text()
    change(page, "home_ua_btuh_f", "444")
    jobs = context.new_page()
    open_page(jobs, server, "job-sheet/")
    eventually(lambda: "keeps nothing for this site" in piece(jobs, "kept"))
    context.close()


def test_a_save_that_reads_back_differently_is_no_save(server: Server, browser: Browser):
    context = browser.new_context()
    context.add_init_script("""
        const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (value, ...rest) {
            const kept = value?.text ? {...value, text: value.text + ' '} : value;
            return put.call(this, kept, ...rest);
        };""")
    page = context.new_page()
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12")
    kept = until(page, """async () => (await import(
        document.querySelector('script[src*="offline.js"]').src.replace('offline.js', 'store.js')
    )).jobs.kept""")
    assert kept == "memory"
    change(page, "home_ua_btuh_f", "444")
    context.close()


def test_a_place_puts_its_climate_on_the_sheet_as_an_estimate(server: Server, page: Page):
    jobs_page(page, server)
    start_job(page, "Lot 14")
    page.locator("df-places summary").click()
    page.locator("#place-query").fill("Leadville, CO")
    page.locator("#place-query").press("Enter")
    page.locator("df-places [data-station]").first.wait_for()
    page.locator("df-places [data-station]").first.click()
    eventually(lambda: "station_id" in stored(page)["facts"])
    facts = stored(page)["facts"]
    assert facts["station_id"]["from"] == "estimated"
    assert len(facts["monthly_means"]["rows"]) == 12


def test_a_visit_takes_the_readings_that_follow(server: Server, page: Page):
    jobs_page(page, server)
    start_job(page, "Lot 14")
    page.locator("#visit-date").fill("2026-03-31")
    page.get_by_role("button", name="Start a visit").click()
    eventually(lambda: len(stored(page)["visits"]) == 1)
    assert stored(page)["visits"][0]["date"] == "2026-03-31"
    eventually(lambda: "2026-03-31, survey: 0 readings" in
               page.locator("[data-region=visits]").inner_text())


def test_the_plan_of_the_open_job_is_painted_numbers_first_then_ranges(server: Server, page: Page):
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12")
    page.goto(server.address + "plan/")
    until(page, "document.querySelector('df-plan[data-mine]')", 60)
    text = page.locator("df-plan").inner_text()
    assert "Juniper Flat" not in text
    assert "Missing" in text
