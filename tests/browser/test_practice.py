"""Practice in a real browser: one home to the end, offline, with the keyboard alone."""

from __future__ import annotations

import json
from statistics import median

import pytest
from browser.conftest import Watch
from browser.pages import until
from playwright.sync_api import Page, expect
from server import Server

from downflow.practice import grade, measures
from downflow.practice.faults import fault
from downflow.practice.homes import home

MEDIAN_MS = 300


def a_home(visit: str, faults: int) -> int:
    """The first practice home of a visit with so many faults."""
    return next(s for s in range(200) if home(s).visit == visit and len(home(s).faults) == faults)


def path_for(seed: int) -> list[str]:
    """Safety steps and readings that show every fault and every number, within the time."""
    one = home(seed)
    need = [m for n in grade.numbers_of(one.visit) for m in n.needs]
    need += [next(m for m in fault(f).shown_by if one.visit in measures.measure(m).visits)
             for f in one.faults]
    if "oversized-furnace" in one.faults:
        need.append("bills")
    need = list(dict.fromkeys(need))
    steps = list(dict.fromkeys(s for m in need for s in measures.measure(m).needs))
    return [*steps, *need]


def tab_to(page: Page, script: str, most: int = 160) -> None:
    """Moves the focus with the Tab key until it stands where `script` says."""
    for _ in range(most):
        if page.evaluate(f"(() => {{ const e = document.activeElement; return {script}; }})()"):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"the keyboard never gets to: {script}")


def alive(page: Page) -> None:
    """Waits until the runtime answers and the elements of practice are there."""
    until(page, """async () => {
        const r = await import(document.querySelector('script[src*="practice.js"]')
            .src.replace('practice.js', 'runtime.js'));
        r.start();
        return r.state.value === 'ready' && customElements.get('df-practice-home') !== undefined;
    }""", 60)


def ready_offline(page: Page) -> None:
    """Waits until pages and runtime lie on the device."""
    until(page, """async () => {
        const o = await import(document.querySelector('script[src*="offline.js"]').src);
        return o.offline.value === 'ready';
    }""", 60)


def opened(page: Page, server: Server, seed: int) -> None:
    """Opens a practice home by its link."""
    page.goto(f"{server.address}practice/homes/#seed={seed}")
    alive(page)
    expect(page.locator("#home")).to_contain_text(f"Practice home {seed}:")


def test_a_home_to_the_end_offline_and_with_the_keyboard_alone(
        page: Page, server: Server, watch: Watch) -> None:
    seed = a_home("call", 2)
    page.goto(server.address)
    ready_offline(page)
    server.stop()
    opened(page, server, seed)
    for id_ in path_for(seed):
        tab_to(page, f"e?.dataset?.measure === '{id_}'")
        page.keyboard.press("Enter")
        expect(page.locator(f'button[data-measure="{id_}"]')).to_be_disabled()
    found = grade.solution(seed)
    for n, name in enumerate(home(seed).faults, 1):
        tab_to(page, f"e?.name === 'fault.{name}'")
        page.keyboard.press(str(n))
        expect(page.locator(f'[name="fault.{name}"]')).to_have_value(str(n))
    for asked in grade.numbers_of("call"):
        tab_to(page, f"e?.name === 'number.{asked.name}'")
        page.keyboard.type(f"{found.numbers[asked.name]:.{asked.decimals}f}")
    tab_to(page, "e?.name === 'go_on'")
    page.keyboard.press("Space" if found.go_on else "ArrowRight")
    said = "yes" if found.go_on else "no"
    expect(page.locator(f"[name=go_on][value={said}]")).to_be_checked()
    tab_to(page, "e?.type === 'submit' && e.closest('[data-decide]')")
    page.keyboard.press("Enter")
    result = page.locator("[data-region=result]")
    expect(result.locator("[data-level]")).to_have_attribute("data-level", "shown")
    until(page, "document.activeElement.id === 'result'")
    expect(result.locator("[data-working]")).to_have_count(len(found.numbers))
    page.goto(server.address + "practice/progress/")
    alive(page)
    expect(page.locator('[data-skill="safety"]')).to_contain_text("Shown 1 of 1")
    assert watch.foreign(server) == []
    assert watch.policy_complaints() == []


def test_a_missed_hold_is_not_yet_and_says_where_to_learn_it(page: Page, server: Server) -> None:
    opened(page, server, a_home("survey", 1))
    page.locator('button[data-measure="belly"]').click()
    expect(page.locator('[data-read="belly"]')).to_be_visible()
    page.locator("[name=go_on][value=no]").check(force=True)
    page.get_by_role("button", name="Hand it in").click()
    result = page.locator("[data-region=result]")
    expect(result.locator("[data-level]")).to_have_attribute("data-level", "not yet")
    skipped = result.locator('[data-kind="hold-skipped"]')
    expect(skipped).to_contain_text("Nobody goes under a home")
    skipped.get_by_role("link").click()
    expect(page.locator("h1")).to_contain_text("crossover")


def test_a_link_gives_a_crew_the_same_home_and_a_reload_goes_on(
        page: Page, server: Server) -> None:
    opened(page, server, 23)
    page.locator('button[data-measure="alarms"]').click()
    expect(page.locator('[data-read="alarms"]')).to_be_visible()
    page.reload()
    expect(page.locator('[data-read="alarms"]')).to_be_visible()
    page.locator("#practice-seed").fill("24")
    page.get_by_role("button", name="Take this home").click()
    expect(page.locator("#home")).to_contain_text("Practice home 24:")
    expect(page.locator('[data-read="alarms"]')).to_have_count(0)
    until(page, "location.hash === '#seed=24'")
    page.locator("#practice-seed").fill("a lot")
    page.get_by_role("button", name="Take this home").click()
    expect(page.locator("[data-pick] .df-error")).to_be_visible()


def test_bad_answers_are_named_beside_their_fields(page: Page, server: Server) -> None:
    opened(page, server, a_home("call", 1))
    page.locator('[name="number.subcooling_f"]').fill("cold")
    page.get_by_role("button", name="Hand it in").click()
    error = page.locator('[data-field="number.subcooling_f"]')
    expect(error).to_be_visible()
    expect(error).to_contain_text("You typed cold")
    expect(page.locator('[data-field="go_on"]')).to_be_visible()
    expect(page.locator('[name="number.subcooling_f"]')).to_have_value("cold")


def test_what_is_known_opens_as_a_job(page: Page, server: Server) -> None:
    opened(page, server, a_home("call", 1))
    page.locator('button[data-measure="static"]').click()
    expect(page.locator('[data-read="static"]')).to_be_visible()
    page.get_by_role("button", name="Open what is known as a job").click()
    until(page, "document.querySelector('[data-df=job-name]').textContent.startsWith('Practice')")


def test_questions_answers_and_their_working(page: Page, server: Server) -> None:
    page.goto(server.address + "practice/drills/")
    alive(page)
    page.locator("#drill-kind").select_option("number")
    page.locator("#drill-skill").select_option("water")
    page.get_by_role("button", name="Next question").click()
    until(page, "document.querySelector('df-practice-drills').dataset.seed !== '1'")
    page.locator("[data-region=question] input[name=answer]").fill("1")
    page.get_by_role("button", name="Answer", exact=True).click()
    expect(page.locator("[data-region=explanation] [data-right]")).to_be_visible()
    expect(page.locator("[data-region=explanation] .df-line").first).to_be_visible()


def test_a_lesson_checks_and_keeps_it(page: Page, server: Server) -> None:
    page.goto(server.address + "practice/lessons/refrigerant/")
    alive(page)
    page.locator("[name=answer][value=airflow]").check(force=True)
    page.get_by_role("button", name="Answer", exact=True).click()
    expect(page.locator("[data-right=yes]")).to_be_visible()
    until(page, "(localStorage.getItem('downflow.practice.record') ?? '').includes('lesson')")
    record = json.loads(page.evaluate("localStorage.getItem('downflow.practice.record')"))
    assert [(e["skill"], e["what"]) for e in record["screen"]] == [("refrigerant", "lesson")]


def test_the_bench_shows_before_and_after(page: Page, server: Server) -> None:
    page.goto(server.address + "practice/bench/")
    alive(page)
    page.locator("#bench-cause").select_option("charge/far-under")
    page.get_by_role("button", name="Show what one would read").click()
    row = page.locator('[data-reading="superheat"]')
    expect(row).to_have_attribute("data-moved", "yes")
    expect(row.locator("svg").last).to_be_visible()
    expect(page.locator('[data-reading="filter"]')).to_have_attribute("data-moved", "no")


def test_the_sheet_is_exported_and_brought_in(page: Page, server: Server) -> None:
    page.goto(server.address + "practice/progress/")
    alive(page)
    page.locator("#seen-what").fill("reads static")
    page.locator("#seen-by").fill("B. Field")
    page.get_by_role("button", name="I saw it done").click()
    expect(page.locator("[data-seen] .df-error").first).to_be_visible()
    page.locator("#seen-trade").fill("mechanical contractor")
    page.get_by_role("button", name="I saw it done").click()
    expect(page.locator('[data-skill="air"]')).to_contain_text("B. Field")
    with page.expect_download() as told:
        page.get_by_role("button", name="Export").click()
    file = told.value.path()
    page.evaluate("localStorage.clear()")
    page.reload()
    alive(page)
    expect(page.locator('[data-skill="air"]')).not_to_contain_text("B. Field")
    page.locator("[data-import]").set_input_files(str(file))
    expect(page.locator('[data-skill="air"]')).to_contain_text("B. Field")


@pytest.mark.parametrize("op", ["practice_home", "practice_answer"])
def test_making_and_grading_a_home_take_less_than_a_third_of_a_second(
        op: str, page: Page, server: Server) -> None:
    page.goto(server.address + "practice/homes/")
    alive(page)
    times = page.evaluate("""async (op) => {
        const r = await import(document.querySelector('script[src*="practice.js"]')
            .src.replace('practice.js', 'runtime.js'));
        const all = [];
        for (let seed = 700; seed < 716; seed += 1) {
            const start = performance.now();
            const made = await r.ask('practice_home', {seed, units: 'ip'});
            const middle = performance.now();
            await r.ask('practice_answer', {state: made.state, faults: {}, numbers: {},
                                            go_on: 'no', units: 'ip'});
            all.push(op === 'practice_home' ? middle - start : performance.now() - middle);
        }
        return all;
    }""", op)
    assert median(times) < MEDIAN_MS, times
