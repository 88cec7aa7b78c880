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
RUN = """async (only) => {
    const tags = {type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa',
        'best-practice']};
    const found = await axe.run(document, {resultTypes: ['violations'],
        runOnly: only ? {type: 'rule', values: only} : tags});
    return found.violations.map((v) => `${v.id} (${v.impact}): ` +
        v.nodes.slice(0, 3).map((n) => n.target.join(' ')).join(' | '));
}"""


# A list of a thousand like things is audited by its first ones: the rest is the same markup.
# The bar that is fixed to the window's foot goes to the page's own, so that it hides no field.
PREPARE = """() => {
    for (const list of document.querySelectorAll('table, tbody, main ul, article ul, article ol')) {
        [...list.children].slice(12).forEach((each) => each.remove());
    }
    for (const each of document.querySelectorAll('body *')) {
        if (getComputedStyle(each).position === 'fixed') each.style.position = 'static';
    }
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


@pytest.fixture(scope="module", params=["phone", "desk"])
def reader(request: pytest.FixtureRequest, browser: Browser) -> Iterator[BrowserContext]:
    made = browser.new_context(viewport=PHONE if request.param == "phone" else DESK,
                               color_scheme="light", service_workers="block",
                               reduced_motion="reduce")
    yield made
    made.close()


@pytest.mark.parametrize("path", one_of_each_kind(SITE), ids=lambda path: path or "start")
def test_a_page_of_each_kind_has_no_fault(reader: BrowserContext, running: Server, path: str):
    page = reader.new_page()
    try:
        page.goto(running.address + path, wait_until="load")
        # Rows of one table are made by one function: the first two stand for all.
        page.evaluate("""() => {
            for (const body of document.querySelectorAll('tbody'))
                [...body.rows].slice(2).forEach((row) => row.remove());
        }""")
        page.evaluate(PREPARE)
        page.evaluate(AXE)
        found = page.evaluate(RUN)
        assert not found, "\n".join(found)
        # At night the same page in other colours: only these can be at fault anew.
        page.emulate_media(color_scheme="dark")
        ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
        assert ground != "rgb(255, 255, 255)"
        found = page.evaluate(RUN, ["color-contrast", "link-in-text-block"])
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


def test_the_audit_finds_letters_too_pale(reader: BrowserContext, running: Server):
    page = reader.new_page()
    page.goto(running.address)
    page.evaluate("""() => {
        const pale = document.createElement('p');
        pale.textContent = 'Too pale to read in the sun';
        document.querySelector('article').prepend(pale);
        pale.style.color = '#cccccc';
        pale.style.background = '#ffffff';
    }""")
    page.evaluate(AXE)
    found = " ".join(page.evaluate(RUN, ["color-contrast"]))
    page.close()
    assert "color-contrast" in found
