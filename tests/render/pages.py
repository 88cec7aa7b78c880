"""What the tests of the renderer share: a strict reader of markup, and seeded jobs."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

from downflow.demo import demo_job
from downflow.facts import FROMS, all_facts
from downflow.facts.job import Entry, Job

HOSTILE = '"><script>alert(1)</script>\'&{value}'
VOID = {"br", "hr", "img", "input", "wbr"}


@dataclass
class Node:
    """An element: its name, attributes, and what is in it."""

    name: str
    attributes: dict[str, str | None]
    children: list[Node | str] = field(default_factory=list)

    def text(self) -> str:
        return "".join(c if isinstance(c, str) else c.text() for c in self.children)

    def all(self) -> Iterator[Node]:
        yield self
        for child in self.children:
            if isinstance(child, Node):
                yield from child.all()

    def find(self, css: str) -> list[Node]:
        """Elements with a class."""
        return [n for n in self.all() if css in (n.attributes.get("class") or "").split()]

    def with_attribute(self, name: str) -> list[Node]:
        return [n for n in self.all() if name in n.attributes]


class Strict(HTMLParser):
    """Reads markup and refuses what a browser would have to guess at."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.root = Node("", {})
        self.open = [self.root]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [n for n, _ in attrs]
        assert len(names) == len(set(names)), f"{tag} has an attribute twice: {names}"
        node = Node(tag, dict(attrs))
        self.open[-1].children.append(node)
        if tag not in VOID:
            self.open.append(node)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].children.append(Node(tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open[-1].name == tag, f"</{tag}> inside <{self.open[-1].name}>"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        self.open[-1].children.append(data)


def read(html: str) -> Node:
    """The tree of a piece of markup; fails where it is not well-formed."""
    reader = Strict()
    reader.feed(html)
    reader.close()
    assert len(reader.open) == 1, f"not closed: {[n.name for n in reader.open[1:]]}"
    return reader.root


def whole(html: str) -> Node:
    """A painted page's tree, with what every page promises checked."""
    tree = read(html)
    nodes = list(tree.all())
    ids = [n.attributes["id"] for n in nodes if "id" in n.attributes]
    assert len(ids) == len(set(ids)), [i for i in ids if ids.count(i) > 1]
    for node in nodes:
        assert "style" not in node.attributes
        assert not [a for a in node.attributes if a.startswith("on")]
        assert node.name not in ("script", "style")
        for name in ("for", "aria-labelledby", "aria-describedby"):
            for target in (node.attributes.get(name) or "").split():
                assert target in ids or target in ("answer", "readings"), f"{name}={target}"
    return tree


def seeded_job(seed: int) -> Job:
    """The demo job with some facts gone, some moved within their range, some from elsewhere."""
    dice = random.Random(seed)
    facts: dict[str, Entry] = {}
    demo = demo_job()
    for name in sorted(demo.names()):
        entry, fact = demo.entry(name), all_facts()[name]
        assert entry is not None
        roll = dice.random()
        if roll < 0.12:
            continue
        value = entry.value
        if roll < 0.6 and fact.kind == "number":
            value = float(value) * dice.uniform(0.9, 1.1)
            value = max(value, fact.low) if fact.low is not None else value
            value = min(value, fact.high) if fact.high is not None else value
        elif roll < 0.25 and fact.kind == "yesno":
            value = not value
        elif roll < 0.25 and fact.kind == "choice":
            value = dice.choice(fact.choices).value
        origin = dice.choice([f for f in FROMS if f != "assumed"])
        facts[name] = Entry(value, origin, "2026-03-01T08:00:00Z")
    return Job(f"seeded-{seed}", f"Seeded {seed}", facts)
