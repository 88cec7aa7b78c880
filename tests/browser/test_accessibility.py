"""The accessibility audit: one page of each kind, on paper and at night, on a phone and a desk."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser.conftest import DESK, PHONE
from make.common import MODULES, SITE
from playwright.sync_api import Browser, BrowserContext
from server import Server

AXE = (MODULES / "axe-core" / "axe.min.js").read_text()
RUN = """async () => {
    const found = await axe.run(document, {resultTypes: ['violations'], runOnly: {type: 'tag',
        values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}});
    return found.violations.map((v) => `${v.id} (${v.impact}): ` +
        v.nodes.slice(0, 3).map((n) => n.target.join(' ')).join(' | '));
}"""


def one_of_each_kind(site: Path) -> list[str]:
    """Each page at the top, and of every folder its own page and the first one inside."""
    kinds: dict[tuple[str, int], str] = {}
    for path in sorted(site.rglob("index.html")):
        parts = path.relative_to(site).parent.parts
        kind = parts if len(parts) < 2 else (parts[0], str(len(parts)))
        kinds.setdefault(kind, "/".join(parts) + "/" if parts else "")  # type: ignore[arg-type]
    return sorted(kinds.values())


@pytest.fixture(scope="module")
def running() -> Iterator[Server]:
    with Server(SITE) as server:
        yield server


@pytest.fixture(scope="module", params=["paper, phone", "paper, desk", "night, phone",
                                        "night, desk"])
def reader(request: pytest.FixtureRequest, browser: Browser) -> Iterator[BrowserContext]:
    scheme, place = request.param.split(", ")
    made = browser.new_context(viewport=PHONE if place == "phone" else DESK,
                               color_scheme="dark" if scheme == "night" else "light",
                               service_workers="block", reduced_motion="reduce")
    yield made
    made.close()


@pytest.mark.parametrize("path", one_of_each_kind(SITE), ids=lambda path: path or "start")
def test_a_page_of_each_kind_has_no_fault(reader: BrowserContext, running: Server, path: str):
    page = reader.new_page()
    try:
        page.goto(running.address + path, wait_until="load")
        # The whole page in sight: nothing lies under the bar that is fixed to the window's foot.
        height = page.evaluate("document.documentElement.scrollHeight")
        page.set_viewport_size({"width": page.viewport_size["width"], "height": height + 200})
        page.evaluate(AXE)
        found = page.evaluate(RUN)
        assert not found, "\n".join(found)
    finally:
        page.close()


def test_the_audit_finds_a_planted_fault(reader: BrowserContext, running: Server):
    page = reader.new_page()
    page.goto(running.address)
    page.evaluate("document.querySelector('main, article').insertAdjacentHTML("
                  "'beforeend', '<input type=text><img src=\"assets/mark.svg\">')")
    page.evaluate(AXE)
    found = " ".join(page.evaluate(RUN))
    page.close()
    assert "image-alt" in found
    assert "label" in found
