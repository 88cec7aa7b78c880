"""A calculator in a real browser: it comes alive, keeps what is typed, and says whose numbers."""

from __future__ import annotations

import pytest
from browser.pages import MATCH, change, eventually, open_page, stored, until
from playwright.sync_api import BrowserContext, Page
from server import Server

from downflow.calculators import all_calculators


def region(page: Page, name: str) -> str:
    return page.locator(f'df-calculator [data-region="{name}"]').inner_text()


def test_the_painted_calculators_are_what_the_device_makes_to_the_byte(server: Server, page: Page):
    open_page(page, server, MATCH)
    with_page = [i for i in all_calculators()
                 if (server.folder / "calculators" / i / "index.html").exists()]
    assert with_page
    for id_ in with_page:
        differ = page.evaluate("""async (id) => {
            const {ask} = await import(document.querySelector('script[src*="offline.js"]').src
                .replace('offline.js', 'runtime.js'));
            const reply = await ask('calculator', {id, job: null, units: 'ip'});
            const page = await (await fetch(new URL(`../${id}/`, location.href))).text();
            return Object.entries(reply.regions).filter(([, html]) => !page.includes(html))
                .map(([name]) => name).concat(page.includes(reply.pin) ? [] : ['pin']);
        }""", id_)
        assert differ == [], id_


def test_the_first_number_begins_a_job_of_ones_own_with_nothing_of_the_example(
        server: Server, page: Page, watch):
    open_page(page, server, MATCH)
    assert "worked example, not your job" in region(page, "messages")
    before = region(page, "answer")
    change(page, "hp_cutout_f", "10")
    assert set(stored(page)["facts"]) == {"hp_cutout_f"}
    assert stored(page)["facts"]["hp_cutout_f"]["from"] == "measured"
    assert "not yours" in region(page, "messages")
    assert region(page, "answer") != before
    eventually(lambda: page.locator(".df-fact--example").count() > 3)
    assert page.locator('[data-fact="hp_cutout_f"].df-fact--example').count() == 0
    assert page.locator("[name=hp_cutout_f]").input_value() == "10"
    assert "Job of" in page.locator("[data-df=job-name]").first.inner_text()
    assert watch.foreign(server) == []
    assert watch.policy_complaints() == []


def test_the_examples_where_from_says_nothing_about_the_reader(server: Server, page: Page):
    open_page(page, server, MATCH)
    page.locator('[name="hp_cutout_f.from"]').select_option("estimated")
    page.wait_for_timeout(400)
    assert page.evaluate("localStorage.getItem('downflow.open')") is None
    change(page, "hp_cutout_f", "-12")
    assert stored(page)["facts"]["hp_cutout_f"]["from"] == "estimated"


def test_what_cannot_stand_is_said_beside_the_field_and_the_last_good_answer_stays(
        server: Server, page: Page):
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12")
    good = page.locator(".df-answer__value").inner_text()
    page.locator("[name=hp_cutout_f]").fill("1060")
    field = page.locator('[data-fact="hp_cutout_f"]')
    eventually(lambda: "You typed 1060" in field.locator(".df-error").inner_text())
    eventually(lambda: "is-stale" in (page.locator("[data-region=answer]").get_attribute("class")
                                      or ""))
    assert page.locator("[data-region=answer]").inner_text().startswith("Last good answer")
    assert page.locator(".df-answer__value").inner_text() == good
    assert not page.locator("[data-region=verdicts]").is_visible(), "nothing is judged meanwhile"
    assert "last good · 1 to check" in page.locator("[data-pin]").inner_text()
    assert "1 reading to check" in region(page, "messages")
    assert page.locator("[name=hp_cutout_f]").input_value() == "1060"
    assert page.locator("[name=hp_cutout_f]").get_attribute("aria-invalid") == "true"
    assert stored(page)["facts"]["hp_cutout_f"]["value"] == -12
    page.locator("[name=hp_cutout_f]").fill("-13")
    eventually(lambda: "is-stale" not in (
        page.locator("[data-region=answer]").get_attribute("class") or ""))
    assert "to check" not in region(page, "messages")


def test_readings_that_cannot_be_true_together_stand_beside_a_field(server: Server, page: Page):
    open_page(page, server, MATCH)
    change(page, "design_heating_f", "5")
    page.locator("[name=design_heating_f]").fill("65")
    page.locator("[name=indoor_design_f]").fill("60")
    field = page.locator('[data-fact="design_heating_f"] .df-error')
    eventually(lambda: "colder than the indoor temperature" in field.inner_text())
    assert page.locator(".df-answer__value").count() == 1, "the last good answer stays in sight"


def test_nothing_reads_fine_before_its_range_is_in(server: Server, page: Page):
    open_page(page, server, MATCH)
    page.evaluate("""() => {
        window.words = [];
        new MutationObserver(() => {
            const pending = document.querySelector('[data-region=answer]').textContent
                .includes('working it out');
            const fine = document.querySelectorAll('[data-level=fine] .df-pending').length;
            window.words.push([pending, fine]);
        }).observe(document.querySelector('df-calculator'), {subtree: true, childList: true});
    }""")
    change(page, "home_ua_btuh_f", "200")
    assert until(page, "window.words.some(([pending]) => pending)")
    assert page.evaluate("window.words.every(([, fine]) => fine === 0)")


def test_a_change_reaches_what_reads_it_and_survives_a_reload_and_the_server(
        server: Server, page: Page, context: BrowserContext):
    open_page(page, server, "calculators/backup-kit/")
    before = region(page, "answer")
    open_page(page, server, MATCH)
    change(page, "home_ua_btuh_f", "600")
    share = page.locator(".df-answer__value").inner_text()
    open_page(page, server, "calculators/backup-kit/")
    until(page, "document.querySelector('df-calculator[data-mine]')")
    page.get_by_role("button", name="Fill the gaps with the example").click()
    eventually(lambda: "No answer yet" not in region(page, "answer"))
    assert region(page, "answer") != before
    until(page, "document.querySelector('df-offline')?.textContent.includes('ready offline')", 90)
    server.stop()
    open_page(page, server, MATCH)
    until(page, "document.querySelector('df-calculator[data-mine]')")
    assert page.locator(".df-answer__value").inner_text() == share
    assert page.locator("[name=home_ua_btuh_f]").input_value() == "600"
    change(page, "home_ua_btuh_f", "300")
    assert page.locator(".df-answer__value").inner_text() != share


def test_with_a_job_open_nothing_of_the_example_is_seen_until_asked_for(
        server: Server, page: Page, context: BrowserContext):
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12")
    said = page.locator("[data-pin]").inner_text().split()[0]
    context.route("**/runtime/**", lambda route: route.abort())
    context.route("**/worker.js", lambda route: route.abort())
    page.goto(server.address + "calculators/backup-kit/")
    cover = page.locator("df-calculator > .df-cover")
    eventually(lambda: "did not start" in cover.inner_text(), 30)
    assert not page.locator(".df-spread").is_visible()
    cover.get_by_role("button", name="Show the example").click()
    assert page.locator(".df-spread").is_visible()
    assert "not your job" in region(page, "messages")
    page.goto(server.address + MATCH)
    eventually(lambda: "Last answer on this device: " + said in
               page.locator("[data-last]").inner_text().replace("\u00a0", " "))


def test_without_javascript_the_worked_example_stands(server: Server, browser):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(server.address + MATCH)
    assert page.locator(".df-answer__value").inner_text()
    assert page.locator("df-calculator > .df-cover").is_hidden()
    assert page.locator("[data-region=working]").count() == 1
    context.close()


def test_units_go_there_and_back_and_leave_the_stored_file_equal_to_the_byte(
        server: Server, page: Page):
    open_page(page, server, MATCH)
    change(page, "hp_cutout_f", "-12.5")
    change(page, "home_ua_btuh_f", "345.6")
    before = stored(page)
    answer = region(page, "answer")
    page.locator("[data-df=units]").first.click()
    eventually(lambda: page.locator("[name=hp_cutout_f]").input_value() == "−24.7222"[:6]
               or page.locator("[name=hp_cutout_f]").input_value().startswith("−24.7"))
    eventually(lambda: "°C" in region(page, "answer"))
    page.locator("[data-df=units]").first.click()
    eventually(lambda: page.locator("[name=hp_cutout_f]").input_value() == "−12.5")
    eventually(lambda: region(page, "answer") == answer)
    assert stored(page) == before


def test_rows_of_ones_own_start_empty_and_count_when_they_are_full(server: Server, page: Page):
    open_page(page, server, MATCH)
    field = page.locator('[data-fact="hp_points"]')
    field.get_by_role("button", name="Enter rows of your own").click()
    rows = [("-13", "12000", "3000"), ("17", "20000", "3000"), ("47", "26000", "2500")]
    for index, row in enumerate(rows):
        if index >= field.locator("tbody tr").count():
            field.get_by_role("button", name="Add a row").click()
        for column, typed in enumerate(row):
            field.locator("tbody tr").nth(index).locator("td[data-column] input").nth(column).fill(
                typed)
    eventually(lambda: len(stored(page)["facts"]["hp_points"]["rows"]) == 3)
    assert stored(page)["facts"]["hp_points"]["rows"][2]["capacity_max_btuh"] == 26000
    field.locator("tbody tr").nth(1).get_by_role("button", name="remove").click()
    eventually(lambda: len(stored(page)["facts"]["hp_points"]["rows"]) == 2)
    field.locator("tbody tr").nth(1).locator("td[data-column] input").nth(0).fill("-20")
    eventually(lambda: "must rise" in field.locator("> .df-error").inner_text())
    assert len(stored(page)["facts"]["hp_points"]["rows"]) == 2


def test_a_hold_is_released_only_by_name_and_stays_so(server: Server, page: Page):
    open_page(page, server, MATCH)
    page.locator('[data-fact="hp_rated_together"] input[value=no]').check(force=True)
    hold = page.locator('[data-verdict="heat-pump-match#one-combination"]')
    eventually(lambda: hold.get_attribute("data-level") == "hold")
    page.get_by_role("button", name="Show only mine").click()
    for name in ("Fill the gaps with the example",):
        page.get_by_role("button", name=name).click()
    eventually(lambda: hold.count() == 1)
    assert hold.locator("form").count() == 0, "with the example's numbers nothing is released"


def test_the_keyboard_alone_goes_from_field_to_field(server: Server, page: Page):
    open_page(page, server, MATCH)
    page.locator("[name=home_ua_btuh_f]").focus()
    page.keyboard.press("Enter")
    focused = page.evaluate("document.activeElement.name")
    assert focused == "delivery_efficiency_pct"
    page.keyboard.press("Control+A")
    page.keyboard.type("75")
    eventually(lambda: page.evaluate("window.answers.length") > 0)
    assert page.evaluate("document.activeElement.name") == "delivery_efficiency_pct"
    assert page.locator("[name=delivery_efficiency_pct]").input_value() == "75"


def test_what_is_being_typed_keeps_its_letters_and_its_place(server: Server, page: Page):
    open_page(page, server, MATCH)
    field = page.locator("[name=home_ua_btuh_f]")
    field.focus()
    page.keyboard.press("Control+A")
    for letter in "35.50":
        page.keyboard.type(letter)
        page.wait_for_timeout(120)
    page.wait_for_timeout(600)
    assert field.input_value() == "35.50"
    assert page.evaluate("document.activeElement.selectionStart") == 5


@pytest.mark.parametrize("sign", ["−", "-"])
def test_the_sign_button_writes_a_minus_and_takes_it_away(server: Server, page: Page, sign: str):
    open_page(page, server, MATCH)
    field = page.locator('[data-fact="design_heating_f"]')
    box = page.locator("[name=design_heating_f]")
    box.fill(f"{sign}7")
    button = field.get_by_role("button", name="change the sign")
    button.click()
    assert box.input_value() == "7"
    button.click()
    assert box.input_value() == "−7"
    eventually(lambda: stored(page)["facts"]["design_heating_f"]["value"] == -7)
