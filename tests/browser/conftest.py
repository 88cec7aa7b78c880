"""A real browser, the real server, and pages that watch what they ask for and complain about."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from make.browser import ARGUMENTS, chromium
from make.common import SITE
from make.release import seal
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, sync_playwright
from server import Server

# Any name but this machine's own leads nowhere, so that a foreign request cannot even succeed.
NOWHERE_ELSE = "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"
PATIENCE_MS = 60_000
PHONE = {"width": 390, "height": 844}
DESK = {"width": 1366, "height": 900}


class Watch:
    """What a context asked for and what its pages complained about."""

    def __init__(self, context: BrowserContext) -> None:
        self.requests: list[str] = []
        self.complaints: list[str] = []
        context.on("request", lambda request: self.requests.append(request.url))
        context.on("weberror", lambda error: self.complaints.append(str(error.error)))
        context.on("console", self._heard)

    def _heard(self, message: object) -> None:
        if message.type == "error":  # type: ignore[attr-defined]
            self.complaints.append(message.text)  # type: ignore[attr-defined]

    def foreign(self, server: Server) -> list[str]:
        """Requests that left the site."""
        own = (server.address, "data:", "blob:")
        return [url for url in self.requests if not url.startswith(own)]

    def policy_complaints(self) -> list[str]:
        """Complaints that a page or a worker broke the site's policy."""
        return [text for text in self.complaints if "Content Security Policy" in text]


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as found:
        yield found


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    path = os.environ.get("DOWNFLOW_CHROMIUM") or chromium()
    found = playwright.chromium.launch(executable_path=path, args=[*ARGUMENTS, NOWHERE_ELSE])
    yield found
    found.close()


@pytest.fixture(scope="session")
def site() -> Path:
    assert (SITE / "release.json").exists(), "build the site first: scripts/build"
    return SITE


@pytest.fixture
def server(site: Path) -> Iterator[Server]:
    """The site under a path of its own, as on a host with several sites."""
    with Server(site, base="/handbook/") as running:
        yield running


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    made = browser.new_context(viewport=PHONE)
    made.set_default_timeout(PATIENCE_MS)
    yield made
    made.close()


@pytest.fixture
def watch(context: BrowserContext) -> Watch:
    return Watch(context)


@pytest.fixture
def page(context: BrowserContext, watch: Watch) -> Page:
    return context.new_page()


@pytest.fixture
def copied(site: Path, tmp_path: Path) -> Path:
    """A copy of the site that a test may damage or change."""
    place = tmp_path / "site"
    shutil.copytree(site, place)
    return place


def next_release(site: Path, place: Path, new_id: str = "0123456789abcdef") -> Path:
    """A later release: every page names the new id, and the start page says so."""
    shutil.copytree(site, place)
    old_id = release_of(site)
    for page in place.rglob("*.html"):
        page.write_text(page.read_text().replace(old_id, new_id))
    start = place / "index.html"
    start.write_text(start.read_text().replace("</main>", "<p id='later'>later</p></main>", 1))
    assert "id='later'" in start.read_text()
    seal(place, new_id)
    return place


def release_of(site: Path) -> str:
    import json

    return str(json.loads((site / "release.json").read_text())["release"])


@pytest.fixture
def later(site: Path, tmp_path: Path) -> Path:
    return next_release(site, tmp_path / "later")
