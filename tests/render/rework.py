"""Works a shown formula out from the page alone: the markup is read as a person reads it."""

from __future__ import annotations

import math
import re

from render.pages import Node, read

FUNCTIONS = {"sqrt": math.sqrt, "ln": math.log, "exp": math.exp, "max": max, "min": min,
             "ceil": math.ceil, "floor": math.floor, "cos": math.cos, "sin": math.sin,
             "tan": math.tan, "cosh": math.cosh, "log10": math.log10, "abs": abs, "pi": math.pi}
WORDS = (("√(", "sqrt("), ("larger of (", "max("), ("smaller of (", "min("),
         ("round up (", "ceil("), ("round down (", "floor("), ("ln (", "ln("), ("cos (", "cos("),
         ("sin (", "sin("), ("tan (", "tan("), ("cosh (", "cosh("), ("log10 (", "log10("),
         ("π", "pi"))


def _said(node: Node | str) -> str:
    if isinstance(node, str):
        return node
    inner = "".join(_said(c) for c in node.children)
    if node.name == "sup":
        return f"**({inner})"
    if "df-frac" in (node.attributes.get("class") or "").split():
        top, bottom = (c for c in node.children if isinstance(c, Node))
        return f"(({_said(top)})/({_said(bottom)}))"
    if "df-num" in (node.attributes.get("class") or "").split():
        return f"({inner})"
    return inner


def rework(html: str) -> float:
    """The number that a shown expression comes to."""
    said = _said(read(html)).replace("×", "*").replace("−", "-").replace("\u00a0", " ")
    said = re.sub(r"(?<![\w.)])e\*\*", "2.718281828459045**", said)
    for shown, word in WORDS:
        said = said.replace(shown, word)
    said = re.sub(r"(\d),(?=\d{3})", r"\1", said)
    while "|" in said:
        said = re.sub(r"\|([^|]*)\|", r"abs(\1)", said, count=1)
    return float(eval(said, {"__builtins__": {}}, FUNCTIONS))


def number_in(text: str) -> float:
    """The first number of a shown result."""
    text = text.replace("−", "-").replace("\u00a0", " ")
    found = re.match(r"\s*(-?[\d,]*\.?\d+)(?: × 10\*\*\((-?\d+)\))?", text)
    assert found, text
    return float(found[1].replace(",", "")) * 10.0 ** int(found[2] or 0)


def result_in(html: Node) -> float:
    """The number of a result as it is shown, raised power and all."""
    said = "".join(_said(c) for c in html.children if not (
        isinstance(c, Node) and "df-si" in (c.attributes.get("class") or "")))
    return number_in(said.lstrip("("))
