"""The built site, its pages read once."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urldefrag

import pytest
from make.common import SITE

ADDRESSES = {"href", "src", "srcset", "action", "formaction", "poster", "data", "xlink:href",
             "manifest"}


@dataclass
class Page:
    """What the checks need to know of one page."""

    path: str
    text: str
    ids: set[str] = field(default_factory=set)
    addresses: list[tuple[str, str, str]] = field(default_factory=list)
    tags: list[tuple[str, dict[str, str]]] = field(default_factory=list)

    def targets(self) -> list[tuple[str, str, str]]:
        """Each address as (as written, path in the site, fragment)."""
        return [(raw, *resolve(self.path, raw)) for _, _, raw in self.addresses
                if not raw.startswith(("data:", "blob:", "mailto:"))]


class _Reader(HTMLParser):
    def __init__(self, page: Page) -> None:
        super().__init__()
        self.page = page

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        self.page.tags.append((tag, given))
        if "id" in given:
            self.page.ids.add(given["id"])
        for name, value in given.items():
            if name in ADDRESSES and value:
                self.page.addresses.append((tag, name, value))

    handle_startendtag = handle_starttag


def resolve(page: str, address: str) -> tuple[str, str]:
    """The file in the site that an address on a page means, and its fragment."""
    bare, fragment = urldefrag(address)
    bare = unquote(bare.split("?", 1)[0])
    if not bare:
        return page, fragment
    parts = page.split("/")[:-1]
    for step in bare.split("/"):
        if step == "..":
            if not parts:
                return "/outside/" + address, fragment
            parts.pop()
        elif step not in ("", "."):
            parts.append(step)
    target = "/".join(parts)
    if bare.endswith(("/", "..", ".")) or bare in (".", ".."):
        target = f"{target}/index.html".lstrip("/")
    return target, fragment


@pytest.fixture(scope="session")
def site() -> Path:
    assert (SITE / "release.json").exists(), "build the site first: scripts/build"
    return SITE


@pytest.fixture(scope="session")
def pages(site: Path) -> dict[str, Page]:
    found = {}
    for path in sorted(site.rglob("*.html")):
        name = path.relative_to(site).as_posix()
        page = Page(name, path.read_text(encoding="utf-8"))
        _Reader(page).feed(page.text)
        found[name] = page
    return found
