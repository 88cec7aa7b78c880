"""Data flows one way: a lower layer never imports a higher one."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "calc" / "src" / "downflow"

GROUND = {"units", "sources", "tables", "markup", "drawing", "phases"}
LAYERS: list[tuple[str, set[str]]] = [
    ("ground", GROUND),
    ("facts", {"facts"}),
    ("physics", {"physics"}),
    ("engine", {"engine"}),
    ("calculators", {"calculators"}),
    ("plan", {"plan", "demo", "homeowner", "papers", "places", "weather", "describe", "schema",
              "testing"}),
    ("practice", {"practice"}),
    ("render", {"render"}),
    ("edges", {"bridge", "bridge_practice", "cli", "__main__"}),
]
RANK = {name: rank for rank, (_, names) in enumerate(LAYERS) for name in names}


def modules() -> list[Path]:
    return sorted(p for p in PACKAGE.rglob("*.py") if p.name != "__init__.py"
                  or p.parent != PACKAGE)


def imported(path: Path) -> set[str]:
    """Names of the package's own first-level modules that a file imports, lazily or not."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names: list[str] = []
        if isinstance(node, ast.Import):
            names = [a.name for a in node.names]
        elif isinstance(node, ast.ImportFrom) and node.level == 0 and node.module:
            names = [f"{node.module}.{a.name}" if node.module == "downflow" else node.module
                     for a in node.names]
        for name in names:
            parts = name.split(".")
            if parts[0] == "downflow" and len(parts) > 1:
                found.add(parts[1])
    return found


def place(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(PACKAGE)))
def test_no_layer_imports_a_higher_one(path: Path) -> None:
    own = place(path)
    assert own in RANK, f"{own} stands in no layer: add it to LAYERS and to DEVELOPERS.md"
    for other in imported(path) - {"__version__"}:
        assert RANK[other] <= RANK[own], f"{path.name} imports {other}"


@pytest.mark.parametrize("path", sorted((PACKAGE / "physics").glob("*.py")), ids=lambda p: p.stem)
def test_physics_knows_neither_facts_nor_tables_nor_files(path: Path) -> None:
    source = path.read_text(encoding="utf-8")
    assert not imported(path) & {"facts", "units", "engine", "drawing"}
    # The classes of table rows may be named; rows come in as arguments.
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ImportFrom) and node.module == "downflow.tables":
            assert all(a.name[0].isupper() for a in node.names)
        if isinstance(node, ast.ImportFrom) and node.module == "downflow":
            assert "tables" not in {a.name for a in node.names}
    names = {n.func.id for n in ast.walk(ast.parse(source))
             if isinstance(n, ast.Call) and isinstance(n.func, ast.Name)}
    assert not names & {"open", "print", "input"}


@pytest.mark.parametrize("path", sorted((PACKAGE / "calculators").glob("[a-z]*.py")),
                         ids=lambda p: p.stem)
def test_a_calculator_imports_no_other_calculator(path: Path) -> None:
    siblings = {p.stem for p in (PACKAGE / "calculators").glob("[a-z]*.py")}
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            assert not node.module.startswith("downflow.calculators.")
            if node.module == "downflow.calculators":
                assert not {a.name for a in node.names} & siblings


def test_the_ground_and_the_physics_need_only_light_libraries() -> None:
    allowed = {"psychrolib", "segno", "downflow"}
    standard = {"__future__", "ast", "base64", "bisect", "collections", "csv", "dataclasses",
                "datetime", "enum", "functools", "html", "importlib", "io", "itertools", "json",
                "math", "pkgutil", "re", "string", "struct", "sys", "types", "typing",
                "unicodedata", "zlib", "operator", "heapq"}
    for path in modules():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [a.name for a in node.names] if isinstance(node, ast.Import) else (
                [node.module] if isinstance(node, ast.ImportFrom) and node.module else [])
            for name in names:
                head = name.split(".")[0]
                assert head in allowed | standard, f"{path.name} imports {name}"


def test_the_package_page_lists_only_the_agreed_top_level() -> None:
    import subprocess

    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True,
                            check=True).stdout.splitlines()
    top = {line.split("/")[0] for line in listed if not line.startswith(".")}
    assert top <= {"README.md", "DEVELOPERS.md", "mkdocs.yml", "docs", "calc", "tests", "scripts",
                   "LICENSE"}
