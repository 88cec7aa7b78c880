"""The page as built, taken apart: its elements in order, and the data it carries."""

import json
from html.parser import HTMLParser
from pathlib import Path

FOLDER = Path(__file__).parents[2] / "docs" / "h"
HTML = (FOLDER / "index.html").read_text(encoding="utf-8")


class _Reader(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.tags = []
        self.stack = []
        self.told = ""

    def handle_starttag(self, name, attributes):
        given = dict(attributes)
        lang = next((g["lang"] for n, g in reversed([*self.stack, (name, given)])
                     if n != "html" and "lang" in g), None)
        self.tags.append((name, given, lang))
        if name not in ("meta", "link", "input", "br"):
            self.stack.append((name, given))

    def handle_startendtag(self, name, attributes):
        self.handle_starttag(name, attributes)
        if self.stack and self.stack[-1][0] == name:
            self.stack.pop()

    def handle_endtag(self, name):
        assert self.stack, f"</{name}> closes nothing"
        assert self.stack[-1][0] == name, f"</{name}> closes another"
        self.stack.pop()

    def handle_data(self, data):
        if self.stack and self.stack[-1][1].get("id") == "told":
            self.told += data


def _read():
    reader = _Reader()
    reader.feed(HTML)
    reader.close()
    assert not reader.stack
    return reader


PAGE = _read()


def told():
    """The table and names that stand in the page."""
    return json.loads(PAGE.told)


def spots():
    """Every element that the page's script touches."""
    found = []
    for _, given, lang in PAGE.tags:
        data = {k[5:]: v or "" for k, v in given.items() if k.startswith("data-")}
        if data or "id" in given or "class" in given:
            found.append({"dataset": data, "lang": lang, "id": given.get("id"),
                          "classes": (given.get("class") or "").split()})
    return found
