"""Formulas set in type: ρ, Δ, ×, fractions, roots and powers, from the formula as data."""

from __future__ import annotations

import ast
import functools
import math
import re
from collections.abc import Callable

from downflow.markup import Markup, escape, tag, together

GREEK = {
    "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "epsilon": "ε", "eps": "ε",
    "eta": "η", "theta": "θ", "lam": "λ", "mu": "μ", "nu": "ν", "pi": "π", "rho": "ρ",
    "sigma": "σ", "tau": "τ", "phi": "φ", "omega": "ω", "Delta": "Δ", "Sigma": "Σ",
}
_ORDER = {ast.Add: 1, ast.Sub: 1, ast.Mult: 2, ast.Div: 2, ast.Pow: 4}
_SIGN = {ast.Add: " + ", ast.Sub: " − ", ast.Mult: " × "}
_ATOM = 5


@functools.lru_cache(maxsize=512)
def symbol(name: str) -> Markup:
    """A symbol of a formula in type: `rho` ρ, `ts` t with s below, `dT` ΔT, `q_wall` with a word
    below. Capitals and longer words stay as they are."""
    head, _, below = name.partition("_")
    if not below:
        found = re.fullmatch(r"([A-Za-z]+?)(\d+)", head)
        if found:
            head, below = found.groups()
        elif head not in GREEK and re.fullmatch(r"[A-Za-z][a-z]", head):
            head, below = head[0], head[1]
    elif re.fullmatch(r"[A-Za-z][a-z]", head) and head not in GREEK:
        head, below = head[0], f"{head[1]}, {below}"
    if re.fullmatch(r"d[A-Z]\w?", head):
        shown = "Δ" + head[1:]
    elif head in GREEK:
        shown = GREEK[head]
    else:
        shown = head
    return together(shown, tag("sub", below.replace("_", " ")) if below else None)


def plain_number(value: float) -> str:
    """A number with every digit it has, thousands apart, in plain text with true signs.

    A number too small or too large to read so is written `6.8754×10^−6`.
    """
    if value == 0:
        return "0"
    size = abs(value)
    if not math.isfinite(value):
        return str(value)
    if size < 1e-4 or size >= 1e12:
        mantissa, _, power = next(
            text for digits in range(17) if float(text := f"{value:.{digits}e}") == value
        ).partition("e")
        return f"{mantissa}×10^{int(power)}".replace("-", "−")
    text = repr(float(value))
    if "e" in text:
        text = f"{value:.18f}".rstrip("0")
    whole, _, rest = text.partition(".")
    sign = "−" if whole.startswith("-") else ""
    whole = f"{int(whole.lstrip('-') or '0'):,}"
    return sign + whole + ("" if rest in ("", "0") else f".{rest}")


def number(text: str) -> Markup:
    """A written number in type: `6.8754e-6` and `6.8754×10^−6` with a raised power."""
    text = text.replace("-", "−")
    for mark in ("×10^", "e", "E"):
        if mark in text:
            mantissa, _, power = text.partition(mark)
            return tag("span", f"{mantissa} × 10", tag("sup", power.lstrip("+")), class_="df-num")
    return Markup(escape(text))


class _Setter:
    """Sets one expression; what stands for a symbol is decided by `put`."""

    def __init__(self, expression: str, put: Callable[[str], tuple[Markup, bool]]) -> None:
        self.expression = expression
        self.put = put

    def set(self, node: ast.AST, fractions: int = 2) -> tuple[Markup, int]:
        """Markup and binding strength of a node."""
        if isinstance(node, ast.Expression):
            return self.set(node.body, fractions)
        if isinstance(node, ast.Constant):
            said = ast.get_source_segment(self.expression, node) or repr(node.value)
            return number(said), _ATOM
        if isinstance(node, ast.Name):
            if node.id in ("pi",):
                return Markup("π"), _ATOM
            shown, negative = self.put(node.id)
            return shown, (1 if negative else _ATOM)
        if isinstance(node, ast.UnaryOp):
            inner, strength = self.set(node.operand, fractions)
            sign = "−" if isinstance(node.op, ast.USub) else "+"
            return together(sign, self._held(inner, strength, 3)), 3
        if isinstance(node, ast.Call):
            return self._call(node, fractions), _ATOM
        if isinstance(node, ast.BinOp):
            return self._pair(node, fractions)
        raise ValueError(f"{type(node).__name__} has no type")

    def _held(self, shown: Markup, strength: int, needed: int) -> Markup:
        return shown if strength >= needed else together("(", shown, ")")

    def _pair(self, node: ast.BinOp, fractions: int) -> tuple[Markup, int]:
        kind = type(node.op)
        own = _ORDER[kind]
        if kind is ast.Div:
            if fractions > 0:
                top, _ = self.set(node.left, fractions - 1)
                bottom, _ = self.set(node.right, fractions - 1)
                return tag("span", tag("span", top), tag("span", bottom), class_="df-frac"), _ATOM
            left = self._held(*self.set(node.left, 0), 2)
            right = self._held(*self.set(node.right, 0), 3)
            return together(left, " / ", right), 2
        if kind is ast.Pow:
            base = self._held(*self.set(node.left, 0), _ATOM)
            raised, _ = self.set(node.right, 0)
            return together(base, tag("sup", raised)), 4
        left = self._held(*self.set(node.left, fractions), own)
        # What is subtracted is held together; so is a negative number behind any sign.
        needed = 4 if isinstance(node.right, ast.UnaryOp) else 2
        right = self._held(*self.set(node.right, fractions), needed)
        return together(left, _SIGN[kind], right), own

    def _call(self, node: ast.Call, fractions: int) -> Markup:
        name = node.func.id if isinstance(node.func, ast.Name) else ""
        parts = [self.set(a, 1 if fractions else 0)[0] for a in node.args]
        if name == "sqrt":
            return together("√(", parts[0], ")")
        if name == "exp":
            return together("e", tag("sup", self.set(node.args[0], 0)[0]))
        if name == "abs":
            return together("|", parts[0], "|")
        inside: list[Markup] = []
        for index, part in enumerate(parts):
            inside += ([Markup(", ")] if index else []) + [part]
        word = {"ceil": "round up", "floor": "round down", "max": "larger of",
                "min": "smaller of"}.get(name, name)
        return together(word, " (", inside, ")")


@functools.lru_cache(maxsize=512)
def _tree(expression: str) -> ast.Expression:
    return ast.parse(expression, mode="eval")


def _set(expression: str, put: Callable[[str], tuple[Markup, bool]]) -> Markup:
    return _Setter(expression, put).set(_tree(expression))[0]


@functools.lru_cache(maxsize=512)
def formula(expression: str) -> Markup:
    """The right-hand side of a formula in its symbols."""
    return _set(expression, lambda name: (symbol(name), False))


def filled_in(expression: str, values: dict[str, float]) -> Markup:
    """The same with the values put in."""
    def put(name: str) -> tuple[Markup, bool]:
        return number(plain_number(values[name])), values[name] < 0

    return _set(expression, put)
