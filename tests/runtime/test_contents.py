"""What the shipped runtime holds: byte code of its own version, all it needs, and no more."""

from __future__ import annotations

import gzip
import json
import zipfile
from pathlib import Path

import pytest
from make.common import MODULES
from make.runtime import SHELL_ONLY


@pytest.fixture(scope="session")
def inside(runtime_folder: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(runtime_folder / "python.zip") as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_every_file_of_code_is_byte_code_of_the_runtimes_own_version(shipped, inside):
    shipped.run("exec('import importlib.util')")
    magic = bytes(json.loads(shipped.run("str(list(importlib.util.MAGIC_NUMBER))")))
    code = {name: data for name, data in inside.items() if name.endswith(".pyc")}
    assert len(code) > 100
    assert {name for name, data in code.items() if data[:4] != magic} == set()
    assert [name for name in inside if name.endswith(".py")] == []


def test_every_module_of_the_calculators_can_be_imported(shipped, inside):
    ours = sorted(name.removesuffix(".pyc").removesuffix("/__init__").replace("/", ".")
                  for name in inside if name.startswith("downflow/") and name.endswith(".pyc"))
    assert len(ours) > 20
    for name in ours:
        assert shipped.run(f"__import__({name!r}, fromlist=['x']).__name__") == name


def test_what_only_the_shell_needs_stays_behind(inside):
    assert [name for name in SHELL_ONLY if f"{name}c" in inside] == []
    assert "argparse.pyc" not in inside


def test_a_code_for_a_link_can_be_drawn(shipped):
    """The library for it loads only then, so no other test would miss a module of it."""
    assert shipped.run("__import__('segno').make('HTTPS://EXAMPLE.ORG/', micro=False)"
                       ".svg_inline().startswith('<svg')") is True


def test_an_error_has_its_traceback(shipped):
    shipped.run("exec('import traceback')")
    shipped.run("exec('try: 1/0\\nexcept ArithmeticError: told = traceback.format_exc()')")
    assert "ZeroDivisionError: division by zero" in shipped.run("told")


def test_the_runtime_itself_is_untouched(runtime_folder: Path):
    for name in ("pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm"):
        assert (runtime_folder / name).read_bytes() == (MODULES / "pyodide" / name).read_bytes()


def test_nothing_can_be_loaded_by_name(runtime_folder: Path):
    lock = json.loads((runtime_folder / "lock.json").read_text())
    assert lock["packages"] == {}
    theirs = json.loads((MODULES / "pyodide" / "pyodide-lock.json").read_text())
    assert lock["info"] == theirs["info"]


def test_the_kept_memory_unpacks(runtime_folder: Path):
    assert len(gzip.decompress((runtime_folder / "memory.pack").read_bytes())) > 10_000_000
