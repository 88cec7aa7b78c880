"""What find looks through: one entry for each page, step, hold point and heading.

Pure functions over what the builder knows of the pages; `hooks.py` writes the result to
`assets/find.json`. What people call a page stands in `data/find_words.json` and, for a new
page, in its own front matter as `words: [...]`.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from html import unescape
from pathlib import Path
from typing import Any, NamedTuple

WORDS = Path(__file__).parent / "data" / "find_words.json"
COMMON_HEADING = 8
"""A heading that stands on this many pages says nothing about any of them."""
NOT_PROSE = frozenset({"title", "summary", "phase", "order", "hide", "wide", "drawing", "hazards",
                       "calculator", "see", "sources", "words", "licensed", "level"})
"""Keys of the front matter, at any depth, whose texts are names or are indexed elsewhere."""

SHORTCODE = re.compile(r"\{\{.*?\}\}|\{:.*?\}", re.DOTALL)
LINK = re.compile(r"\]\([^)]*\)|<[^>]+>")
WORD = re.compile(r"[^\W\d_]{3,}")
TAG = re.compile(r"<[^>]+>")
ANCHOR = re.compile(
    r"<(?P<tag>h[23]|dt)\b[^>]*?\bid=\"(?P<id>[^\"]+)\"[^>]*>(?P<text>.*?)</(?P=tag)>"
    r"|<section class=\"df-hold\"[^>]*?\bid=\"(?P<hold>[^\"]+)\"[^>]*>\s*"
    r"<header>(?P<must>.*?)</header>"
    r"|<li id=\"(?P<step>step-\d+)\">.*?</label>\s*<p>(?P<do>.*?)</p>",
    re.DOTALL)


class Source(NamedTuple):
    """One page as the builder has it."""

    slug: str
    kind: str
    title: str
    url: str
    phase: str
    meta: Mapping[str, Any]
    markdown: str
    html: str


def index(pages: Sequence[Source], table: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """The whole index.

    Args:
        pages: Every page that a reader may look for.
        table: What people call the pages; the committed one if it is not given.

    Raises:
        ValueError: The table names a page that is not there.
    """
    table = json.loads(WORDS.read_text("utf-8")) if table is None else table
    called: Mapping[str, Mapping[str, list[str]]] = table["pages"]
    missing = sorted(set(called) - {page.slug for page in pages})
    if missing:
        raise ValueError(f"{WORDS.name} names pages that are not there: {', '.join(missing)}")
    anchors = [list(_anchors(page.html)) for page in pages]
    seen = Counter(title for found in anchors for title in {t for _, t, _ in found})
    entries = [_page(page, called.get(page.slug, {})) for page in pages]
    for number, (page, found) in enumerate(zip(pages, anchors, strict=True)):
        entries += [
            {"kind": kind, "title": title, "url": f"{page.url}#{anchor}", "of": number}
            for kind, title, anchor in found
            if title != page.title and (kind != "heading" or seen[title] < COMMON_HEADING)]
    return {"same": table["same"], "entries": entries}


def written(pages: Sequence[Source]) -> str:
    """The index as the file that pages fetch."""
    return json.dumps(index(pages), ensure_ascii=False, separators=(",", ":"))


def _page(page: Source, called: Mapping[str, list[str]]) -> dict[str, Any]:
    words = [*page.meta.get("words", []), *(word for kind in called.values() for word in kind)]
    entry = {"kind": page.kind, "title": page.title, "url": page.url, "phase": page.phase,
             "summary": _plain(str(page.meta.get("summary") or page.meta.get("description") or "")),
             "words": words, "text": _prose(page)}
    return {key: value for key, value in entry.items() if value or key == "url"}


def _anchors(html: str) -> Iterator[tuple[str, str, str]]:
    """Kind, text and id of each place on a page that can be linked to."""
    for match in ANCHOR.finditer(html):
        if match["step"]:
            yield "step", _plain(match["do"]), match["step"]
        elif match["hold"]:
            yield "hold point", _plain(match["must"]).removeprefix("Hold point: "), match["hold"]
        else:
            kind = "word" if match["tag"] == "dt" else "heading"
            yield kind, _plain(match["text"]), match["id"]


def _prose(page: Source) -> str:
    """Each word of the page's own prose once."""
    text = " ".join([*_texts(page.meta), LINK.sub(" ", SHORTCODE.sub(" ", page.markdown))])
    return " ".join(dict.fromkeys(word.casefold() for word in WORD.findall(text)))


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield SHORTCODE.sub(" ", value)
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            if key not in NOT_PROSE:
                yield from _texts(inner)
    elif isinstance(value, Sequence):
        for inner in value:
            yield from _texts(inner)


def _plain(html: str) -> str:
    return " ".join(unescape(TAG.sub(" ", html)).split())
