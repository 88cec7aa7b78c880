"""Markup from plain values: the one place where a text is escaped.

Every element of every page, form and drawing is made by `tag`. A `str` child or
attribute is text and is escaped; only what `tag` itself returned is markup. Styles and
handlers inside the markup are refused, because the site's policy would not run them.

>>> tag("p", "5 < 6", class_="df-small")
'<p class="df-small">5 &lt; 6</p>'
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeAlias

VOID = frozenset(("br", "hr", "img", "input", "wbr"))
CLOSED = frozenset(("path", "rect", "circle", "line", "ellipse", "polygon", "polyline", "use"))


class Markup(str):
    """A text that is markup already."""

    __slots__ = ()


Child: TypeAlias = "str | Iterable[Child] | None"
Attribute: TypeAlias = "str | int | bool | None"


def escape(text: str) -> str:
    """`text` as it must stand between tags or within quotes."""
    if "&" in text:
        text = text.replace("&", "&amp;")
    if "<" in text:
        text = text.replace("<", "&lt;")
    if ">" in text:
        text = text.replace(">", "&gt;")
    if '"' in text:
        text = text.replace('"', "&quot;")
    if "'" in text:
        text = text.replace("'", "&#39;")
    return text


def _write(child: Child, out: list[str]) -> None:
    if child is None:
        return
    if isinstance(child, Markup):
        out.append(child)
    elif isinstance(child, str):
        out.append(escape(child))
    else:
        for one in child:
            _write(one, out)


def together(*children: Child) -> Markup:
    """Several pieces of markup and text, one after the other."""
    out: list[str] = []
    _write(children, out)
    return Markup("".join(out))


def attribute(name: str, value: Attribute) -> str:
    """One attribute with a blank before it; nothing for `None` and `False`."""
    if value is None or value is False:
        return ""
    name = name.rstrip("_").replace("_", "-")
    if name == "style" or name.startswith("on"):
        raise ValueError(f"the attribute {name} may not stand in a page")
    if value is True:
        return f" {name}"
    return f' {name}="{escape(str(value))}"'


def tag(element: str, *children: Child, **attributes: Attribute) -> Markup:
    """An element.

    Args:
        element: Its name.
        children: Texts (escaped), markup, `None`, or iterables of these.
        attributes: `class_="a"` gives `class="a"`, `aria_label="b"` gives `aria-label="b"`,
            `True` a bare attribute, `None` and `False` none.

    Raises:
        ValueError: An inline style or handler, or children of an element that has none.
    """
    said = "".join([attribute(n, v) for n, v in attributes.items()]) if attributes else ""
    if element in VOID or element in CLOSED:
        if children:
            raise ValueError(f"{element} has no children")
        return Markup(f"<{element}{said}>" if element in VOID else f"<{element}{said}/>")
    out: list[str] = [f"<{element}{said}>"]
    for child in children:
        _write(child, out)
    out.append(f"</{element}>")
    return Markup("".join(out))
