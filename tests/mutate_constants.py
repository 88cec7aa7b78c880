"""Moves each number in the constants of physics by 2 % and looks whether the evidence fails.

    PYTHONPATH=calc/src python tests/mutate_constants.py [module ...]     such as heat_loss air

A constant is a module-level name in capitals; each number in its expression is moved alone, up
and then down. A number is *guarded* when a counted check value then disagrees (a threshold can be
seen from one side only). Those that are
not, and stand in the list below with the reason, are named; any other ends the run with status 1.
"""

from __future__ import annotations

import ast
import importlib
import json
import pkgutil
import sys
from pathlib import Path
from types import ModuleType

sys.path.insert(0, str(Path(__file__).parent))
import evidence_run as evidence

from downflow import physics

ALLOWED = Path(__file__).with_name("mutate_allowed.json")
MOVES = (1.02, 0.98)


def constants(tree: ast.Module) -> list[tuple[str, ast.Constant, int]]:
    """Name, number and its place, for each number in a module-level constant."""
    found: list[tuple[str, ast.Constant, int]] = []
    for node in tree.body:
        if isinstance(node, ast.AnnAssign) and node.value is not None:
            targets, value = [node.target], node.value
        elif isinstance(node, ast.Assign):
            targets, value = node.targets, node.value
        else:
            continue
        names = [t.id for t in targets if isinstance(t, ast.Name) and t.id.isupper()]
        if not names:
            continue
        numbers = [n for n in ast.walk(value) if isinstance(n, ast.Constant)
                   and isinstance(n.value, int | float) and not isinstance(n.value, bool)
                   and n.value != 0]
        found += [(names[0], n, k) for k, n in enumerate(numbers)]
    return found


def key(module: str, name: str, place: int, how_many: int) -> str:
    """How a number is named in the list: with its place where a constant has several."""
    return f"{module}.{name}" if how_many == 1 else f"{module}.{name}[{place}]"


def run_again(module: ModuleType, tree: ast.Module) -> None:
    """Executes the module's source once more in its own namespace."""
    exec(compile(tree, module.__file__ or "", "exec"), module.__dict__)


def disagree(rows: list[dict[str, object]]) -> bool:
    for row in rows:
        try:
            if not evidence.agrees(row, evidence.ours(row)):
                return True
        except Exception:  # a moved number may break a lookup anywhere: that is noticed
            return True
    return False


def main(names: list[str]) -> int:
    rows = [r for r in evidence.rows() if evidence.counted(r) and r["call"] != "solve"]
    rows = [r for r in rows if not disagree([r])]   # what fails unmoved proves nothing
    allowed: dict[str, str] = json.loads(ALLOWED.read_text(encoding="utf-8"))
    every = sorted(m.name for m in pkgutil.iter_modules(physics.__path__))
    bad, named, guarded = [], [], 0
    for name in names or every:
        module = importlib.import_module(f"downflow.physics.{name}")
        source = Path(module.__file__ or "").read_text(encoding="utf-8")
        tree = ast.parse(source)
        before = dict(module.__dict__)
        # the module's own rows first: they are the likeliest to notice
        mine = sorted(rows, key=lambda r, n=name: f"physics.{n}:" not in r["call"])
        found = constants(tree)
        for constant, node, place in found:
            whole = node.value
            how_many = sum(1 for c, _, _ in found if c == constant)
            seen = False
            for move in MOVES:
                node.value = whole * move
                try:
                    run_again(module, tree)
                    seen = seen or disagree(mine)
                except (ValueError, ArithmeticError):
                    seen = True
                node.value = whole
            module.__dict__.clear()
            module.__dict__.update(before)
            if seen:
                guarded += 1
                continue
            label = key(name, constant, place, how_many)
            (named if label in allowed else bad).append(label)
    print(f"{guarded} numbers guarded by counted evidence")
    for label in named:
        print(f"not guarded: {label}: {allowed[label]}")
    for label in bad:
        print(f"NOT GUARDED and no reason given: {label}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
