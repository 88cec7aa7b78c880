"""The site with its server gone, half a release, a new release, two tabs."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect
from server import Server

OFFLINE = "const o = await import(new URL('assets/offline.js', r.release.root).href);"
RUNTIME = """
const base = document.querySelector('link[rel=manifest]').href;
const r = await import(new URL('assets/runtime.js', base).href);
"""
SETTLED = """
for (let tried = 0; tried < 300 && !WANTED; tried++) await new Promise((f) => setTimeout(f, 100));
return [o.offline.value, o.offline.words, o.offline.update];
"""

INSTALLED = """async () => {
    for (let tried = 0; tried < 150; tried++) {
        const found = await navigator.serviceWorker.getRegistration();
        if (found?.active) return 'active';
        if (tried > 20 && !found?.installing) return 'refused';
        await new Promise((f) => setTimeout(f, 200));
    }
    return 'still installing';
}"""


def in_page(page: Page, body: str) -> object:
    return page.evaluate(f"async () => {{ {RUNTIME} {OFFLINE} {body} }}")


def wait_for(page: Page, value: str) -> list[object]:
    return in_page(page, SETTLED.replace("WANTED", f"(o.offline.value === '{value}')"))


def wait_for_update(page: Page) -> list[object]:
    return in_page(page, SETTLED.replace("WANTED", "o.offline.update"))


def every_page(site: Path) -> list[str]:
    found = []
    for path in sorted(site.rglob("*.html")):
        name = path.relative_to(site).as_posix()
        if not name.startswith("h/") and name != "404.html":
            found.append(name.removesuffix("index.html"))
    return found


def test_every_page_opens_and_python_answers_with_the_server_gone(
        server: Server, page: Page, site: Path, watch):
    page.goto(server.address)
    assert wait_for(page, "ready")[:2] == ["ready", "ready offline"]
    server.stop()
    for name in every_page(site):
        answer = page.goto(server.address + name, wait_until="domcontentloaded")
        assert answer is not None, name
        assert answer.status == 200, name
        assert answer.from_service_worker, name
        expect(page.locator("h1").first).to_be_attached()
    assert in_page(page, "return (await r.ask('hello')).ok") is True
    assert watch.foreign(server) == []


def test_an_address_with_nothing_at_it_says_so_offline_and_leads_back(server: Server, page: Page):
    page.goto(server.address)
    wait_for(page, "ready")
    server.stop()
    answer = page.goto(f"{server.address}no/such/page")
    assert answer is not None
    assert answer.status == 404
    assert "No such page" in page.inner_text("h1")


def test_the_release_lists_every_file_and_only_what_is_there(site: Path):
    listed = {item["path"] for item in json.loads((site / "release.json").read_text())["files"]}
    there = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    assert there - listed == {"sw.js", "release.json"}
    assert listed <= there


def test_pages_come_whole_or_not_at_all(copied: Path, page: Page):
    """One page is missing on the host: the worker must not install at all."""
    (copied / "404.html").unlink()
    with Server(copied) as server:
        page.goto(server.address)
        assert page.evaluate(INSTALLED) == "refused"


def test_a_half_installed_runtime_is_not_called_ready_and_is_completed_later(
        copied: Path, page: Page):
    file = next((copied / "runtime").iterdir()) / "python.zip"
    kept = copied.parent / "python.zip"
    shutil.move(file, kept)
    with Server(copied) as server:
        page.goto(server.address)
        half = wait_for(page, "runtime")
        assert half[0] == "runtime"
        assert "ready" not in half[1]
        shutil.move(kept, file)
        page.reload()
        assert wait_for(page, "ready")[0] == "ready"


def test_pages_without_the_runtime_stay_readable_and_say_it(copied: Path, page: Page):
    runtime = next((copied / "runtime").iterdir())
    shutil.move(runtime, copied.parent / "away")
    with Server(copied) as server:
        page.goto(server.address)
        assert wait_for(page, "runtime")[0] == "runtime"
        server.stop()
        page.reload()
        expect(page.locator("h1").first).to_be_visible()
        assert in_page(page, "return r.ask('hello').catch(() => r.state.value)") == "failed"


def test_a_file_of_another_release_is_not_taken(copied: Path, page: Page):
    """A host that is half way through an upload hands out files that do not fit the list."""
    start = copied / "404.html"
    start.write_text(start.read_text() + "<!-- changed -->")
    with Server(copied) as server:
        page.goto(server.address)
        assert page.evaluate(INSTALLED) == "refused"


def test_a_new_release_waits_until_the_reader_says_so(
        server: Server, page: Page, context: BrowserContext, later: Path):
    page.goto(server.address)
    wait_for(page, "ready")
    second = context.new_page()
    second.goto(server.address)
    assert second.locator("#later").count() == 0

    server.stop()
    server.folder = later
    server.start()
    page.evaluate("async () => (await navigator.serviceWorker.getRegistration()).update()")
    assert wait_for_update(page)[2] is True
    page.reload()
    assert page.locator("#later").count() == 0, "the old release goes on until the reader says so"

    wait_for_update(page)
    with page.expect_navigation(), second.expect_navigation():
        in_page(page, "o.useNewRelease();")
    expect(page.locator("#later")).to_be_attached()
    expect(second.locator("#later")).to_be_attached()
    server.stop()
    page.reload()
    expect(page.locator("#later")).to_be_attached()
    assert in_page(page, "return (await r.ask('hello')).ok") is True


def test_typing_that_is_not_saved_yet_holds_a_tab_back(
        server: Server, page: Page, context: BrowserContext, later: Path):
    page.goto(server.address)
    wait_for(page, "ready")
    busy = context.new_page()
    busy.goto(server.address)
    busy.evaluate("""() => addEventListener('downflow:reload', (event) => {
        event.preventDefault();
        document.body.dataset.held = 'back';
    })""")
    server.stop()
    server.folder = later
    server.start()
    page.evaluate("async () => (await navigator.serviceWorker.getRegistration()).update()")
    wait_for_update(page)
    with page.expect_navigation():
        in_page(page, "o.useNewRelease();")
    expect(busy.locator("body[data-held=back]")).to_be_attached()
    assert busy.locator("#later").count() == 0


def test_a_new_release_carries_over_what_did_not_change(
        server: Server, page: Page, later: Path, site: Path):
    page.goto(server.address)
    wait_for(page, "ready")
    server.stop()
    server.folder = later
    asked: list[str] = []
    server.asked = asked
    server.start()
    page.evaluate("async () => (await navigator.serviceWorker.getRegistration()).update()")
    wait_for_update(page)
    assert [path for path in asked if "/runtime/" in path or path.endswith(".woff2")] == []


def test_the_homeowners_page_is_never_kept(server: Server, page: Page):
    page.goto(server.address)
    wait_for(page, "ready")
    kept = page.evaluate("""async () => {
        const cache = await caches.open('downflow-files');
        await fetch(new URL('h/', location.href)).catch(() => null);
        return (await cache.keys()).map((request) => request.url);
    }""")
    assert kept
    assert [url for url in kept if "/h/" in url] == []
    listed = page.evaluate("async () => (await (await fetch('sw.js')).text())")
    assert '"path":"h/' not in listed
