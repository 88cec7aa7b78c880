"""Formulas as data: text that is read, worked out and checked.

A formula is `name = expression`. Only arithmetic and a handful of functions are
understood, so that a formula on paper is never a program.
"""

from __future__ import annotations

import ast
import functools
import math
from types import CodeType
from typing import Any

FUNCTIONS: dict[str, Any] = {
    "sqrt": math.sqrt, "ln": math.log, "exp": math.exp, "cosh": math.cosh, "cos": math.cos,
    "sin": math.sin, "tan": math.tan, "log10": math.log10, "abs": abs, "max": max, "min": min,
    "ceil": math.ceil, "floor": math.floor,
}
CONSTANTS = {"pi": math.pi}

_ALLOWED = (ast.Expression, ast.BinOp, ast.UnaryOp, ast.Call, ast.Name, ast.Load, ast.Constant,
            ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.USub, ast.UAdd)


@functools.lru_cache(maxsize=1024)
def parsed(formula: str) -> tuple[str, str, CodeType, frozenset[str]]:
    """Result name, expression, its code, and the symbols it needs.

    Raises:
        ValueError: Not a formula that this module understands.
    """
    name, equals, expression = formula.partition("=")
    name, expression = name.strip(), expression.strip()
    if not equals or not name.isidentifier():
        raise ValueError(f"not a formula: {formula!r}")
    try:
        tree = ast.parse(expression, mode="eval")
    except SyntaxError:
        raise ValueError(f"not a formula: {formula!r}") from None
    symbols: set[str] = set()
    called = {id(n.func) for n in ast.walk(tree) if isinstance(n, ast.Call)}
    for node in ast.walk(tree):
        if not isinstance(node, _ALLOWED):
            raise ValueError(f"{type(node).__name__} may not stand in a formula: {formula!r}")
        if isinstance(node, ast.Call):
            name_of = node.func.id if isinstance(node.func, ast.Name) else ""
            if name_of not in FUNCTIONS or node.keywords:
                raise ValueError(f"unknown function in {formula!r}")
        elif isinstance(node, ast.Constant):
            if isinstance(node.value, bool) or not isinstance(node.value, (int, float)):
                raise ValueError(f"only numbers may stand in a formula: {formula!r}")
        elif isinstance(node, ast.Name) and id(node) not in called and node.id not in CONSTANTS:
            symbols.add(node.id)
    return name, expression, compile(tree, "<formula>", "eval"), frozenset(symbols)


def work_out(formula: str, symbols: dict[str, float]) -> float:
    """The right-hand side of `formula` with `symbols` put in.

    Raises:
        ValueError: A symbol is missing or one too many is given.
    """
    _, _, code, needed = parsed(formula)
    if needed != symbols.keys():
        raise ValueError(f"{formula!r} needs {sorted(needed)}, was given {sorted(symbols)}")
    return float(eval(code, {"__builtins__": {}, **FUNCTIONS, **CONSTANTS}, dict(symbols)))


def same(a: float, b: float, relative: float = 1e-9) -> bool:
    """Whether two roads came to one number."""
    return abs(a - b) <= relative * max(abs(a), abs(b), 1e-12)


def round_digits(value: float, digits: int) -> float:
    """`value` to `digits` significant digits."""
    if value == 0:
        return 0.0
    return round(value, digits - 1 - math.floor(math.log10(abs(value))))
