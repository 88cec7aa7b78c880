"""The runtime in the page: it starts, says where it is, fails plainly, and can be tried again."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page
from server import Server

RUNTIME = "const r = await import(new URL('assets/runtime.js', location.href).href);"
HEARD = "const heard = []; r.state.addEventListener('change', () => heard.push(r.state.value));"


def in_page(page: Page, body: str, given: object = None) -> object:
    return page.evaluate(f"async (given) => {{ {RUNTIME} {body} }}", given)


def short_limits(site: Path, limits: str) -> None:
    """Let the start page of a copy wait a moment only."""
    start = site / "index.html"
    text = start.read_text()
    new = text.replace('"runtime": "', f'"limits": {limits}, "runtime": "', 1)
    assert new != text
    start.write_text(new)


def runtime_folder(site: Path) -> Path:
    return next((site / "runtime").iterdir())


def test_the_states_come_in_order_and_an_answer_follows(server: Server, page: Page, watch):
    page.goto(server.address)
    heard, answer, marks = in_page(page, HEARD + """
        const answer = await r.ask('hello');
        const marks = ['downflow:runtime-ready', 'downflow:first-answer']
            .map((name) => performance.getEntriesByName(name).length);
        return [heard, answer, marks];
    """)
    assert heard == ["getting", "starting", "ready"]
    assert answer["ok"] is True
    assert marks == [1, 1]
    assert watch.foreign(server) == []
    assert watch.policy_complaints() == []


def test_it_starts_from_the_kept_memory_and_from_the_files_alike(server: Server, page: Page):
    page.goto(server.address)
    ways = in_page(page, """
        const all = [];
        for (const snapshot of [true, false]) {
            const worker = new Worker(new URL('assets/worker.js', location.href), {type: 'module'});
            const heard = new Promise((resolve) => worker.addEventListener('message', ({data}) => {
                if (data.state === 'ready') worker.postMessage({n: 1, text: '{"op": "hello"}'});
                else if (data.state === 'failed' || data.n) resolve(data);
            }));
            const base = new URL(r.release.runtime, r.release.root).href;
            worker.postMessage({boot: {base, snapshot}});
            all.push(await heard);
            worker.terminate();
        }
        return all;
    """)
    assert ways[0] == ways[1]
    assert '"ok": true' in ways[0]["text"] or '"ok":true' in ways[0]["text"]


def test_a_damaged_memory_is_passed_over_for_the_files(copied: Path, page: Page):
    pack = runtime_folder(copied) / "memory.pack"
    pack.write_bytes(pack.read_bytes()[:100_000])
    with Server(copied) as server:
        page.goto(server.address)
        assert in_page(page, "return (await r.ask('hello')).ok")


@pytest.mark.parametrize("gone", ["python.zip", "pyodide.asm.wasm", "pyodide.mjs"])
def test_a_missing_file_is_a_failure_that_can_be_tried_again(copied: Path, page: Page, gone: str):
    file = runtime_folder(copied) / gone
    kept = copied.parent / gone
    shutil.move(file, kept)
    with Server(copied) as server:
        page.goto(server.address)
        failed = in_page(page, """
            const why = await r.ask('hello').catch((error) => error.constructor.name);
            return [why, r.state.value, r.state.words];
        """)
        assert failed == ["RuntimeFailed", "failed", "the calculator did not start"]
        shutil.move(kept, file)
        again = in_page(page, "r.tryAgain(); return (await r.ask('hello')).ok;")
    assert again is True


def test_a_start_that_hangs_becomes_a_failure(copied: Path, page: Page):
    """Nothing is wrong with any file; the loader just never comes to an end."""
    (runtime_folder(copied) / "pyodide.mjs").write_text(
        "export const loadPyodide = () => new Promise(() => {});")
    short_limits(copied, '{"getting": 1, "starting": 1}')
    with Server(copied) as server:
        page.goto(server.address)
        why = in_page(page, "return r.ask('hello').catch((error) => error.message)")
    assert "not done in 1 s" in why


def test_the_newest_question_of_a_key_replaces_the_one_that_waits(server: Server, page: Page):
    page.goto(server.address)
    answers = in_page(page, """
        const all = [1, 2, 3, 4].map((n) => r.ask('hello', {n}, {key: 'same'}));
        const other = r.ask('hello', {}, {key: 'other'});
        return [(await Promise.all(all)).map((a) => a && a.ok), (await other).ok];
    """)
    assert answers == [[None, None, None, True], True]


def test_what_can_wait_goes_last(server: Server, page: Page):
    page.goto(server.address)
    order = in_page(page, """
        const order = [];
        await Promise.all([
            r.ask('hello', {}, {later: true}).then(() => order.push('later')),
            r.ask('hello').then(() => order.push('first')),
            r.ask('hello').then(() => order.push('second')),
        ]);
        return order;
    """)
    assert order == ["first", "second", "later"]


def test_the_worker_refuses_another_origin_before_python_is_there(
        server: Server, page: Page, watch):
    page.goto(server.address)
    with Server(server.folder) as elsewhere:
        other = elsewhere.address
        refused = page.evaluate("""async (other) => {
            const worker = new Worker(new URL('assets/worker.js', location.href), {type: 'module'});
            const heard = new Promise((resolve) => worker.addEventListener('message', ({data}) => {
                if (data.state === 'failed') resolve(data.why);
            }));
            worker.postMessage({boot: {base: other + 'runtime/', snapshot: false}});
            return heard;
        }""", other)
    assert "Refused" in refused
    assert [url for url in watch.requests if url.startswith(other)] == []
