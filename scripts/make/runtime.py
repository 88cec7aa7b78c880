"""The browser's Python: its standard library trimmed and byte-compiled, the calculators inside.

One stored zip holds the standard library's used modules and the calculators, all as byte code
made by the runtime that ships. A memory snapshot of the started runtime goes beside it; a
browser that cannot use the snapshot starts from the zip.
"""

from __future__ import annotations

import ast
import gzip
import io
import json
import shutil
import zipfile
from collections.abc import Iterator
from pathlib import Path

from make.common import (
    CACHE,
    MODULES,
    PYTHON,
    ROOT,
    SCRIPTS,
    StepFailed,
    digest_of,
    node,
    run,
    step,
)

PYODIDE = MODULES / "pyodide"
SCRIPT = SCRIPTS / "make" / "runtime.mjs"
COPIED = ("pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm")
ZIP_NAME = "python.zip"
SNAPSHOT_NAME = "memory.pack"
LOCK_NAME = "lock.json"
LICENSES_NAME = "LICENSES.txt"
EARLIEST = (1980, 1, 1, 0, 0, 0)

# Only for the shell: they need modules that the browser's copy leaves out.
SHELL_ONLY = ("downflow/cli.py", "downflow/__main__.py", "segno/cli.py", "segno/__main__.py")
# What an error message or a package's data file needs, and no ordinary run touches.
ALSO_NEEDED = (
    "traceback", "linecache", "tokenize", "inspect", "zipfile", "shutil", "unicodedata",
    "importlib.resources", "importlib.resources.readers", "importlib.readers", "random",
    "_strptime", "calendar", "locale",
)
CODECS = ("__init__", "aliases", "utf_8", "latin_1", "ascii", "cp437", "idna", "utf_8_sig")

# 4 bytes of magic, then: never look for a source file (PEP 552, unchecked hash), no hash.
UNCHECKED = (1).to_bytes(4, "little") + bytes(8)


def _node(*args: str | Path) -> None:
    run([node(), SCRIPT, *args], env={"DOWNFLOW_MODULES": str(MODULES)})


def _settled(name: str, data: bytes) -> bytes:
    """Byte code without the time of its compilation."""
    return data[:4] + UNCHECKED + data[16:] if name.endswith(".pyc") else data


def write_zip(path: Path, files: dict[str, bytes]) -> None:
    """Write a stored zip that has the same bytes for the same contents."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_STORED) as archive:
        for name in sorted(files):
            archive.writestr(zipfile.ZipInfo(name, EARLIEST), files[name])


def read_zip(path: Path) -> dict[str, bytes]:
    """All files of a zip, folders left out."""
    with zipfile.ZipFile(path) as archive:
        return {n: archive.read(n) for n in archive.namelist() if not n.endswith("/")}


def _compiled(key: str, what: str, files: dict[str, bytes]) -> dict[str, bytes]:
    """The same files with byte code for source; kept in the cache by what went in."""
    kept = CACHE / f"{what}-{key}.zip"
    if not kept.exists():
        place = CACHE / f"compile-{what}"
        shutil.rmtree(place, ignore_errors=True)
        place.mkdir(parents=True)
        write_zip(place / "in.zip", files)
        _node("compile", CACHE / "tools", place)
        for old in CACHE.glob(f"{what}-*.zip"):
            old.unlink()
        write_zip(kept, {n: _settled(n, d) for n, d in read_zip(place / "in.zip").items()})
        shutil.rmtree(place)
    return read_zip(kept)


def app_files() -> dict[str, bytes]:
    """Source of the calculators, from their wheel, and of the two libraries they use."""
    wheels = CACHE / "wheel"
    shutil.rmtree(wheels, ignore_errors=True)
    run([PYTHON, "-m", "pip", "wheel", "-q", "--no-deps", "--no-build-isolation",
         "--disable-pip-version-check", "-w", wheels, ROOT / "calc"],
        env={"SOURCE_DATE_EPOCH": "1600000000"})
    files: dict[str, bytes] = {}
    for wheel in [*wheels.glob("*.whl"), *(CACHE / "vendored").glob("*.whl")]:
        for name, data in read_zip(wheel).items():
            if ".dist-info/" not in name and name not in SHELL_ONLY and not name.endswith(".pyi"):
                files[name] = data
    if "downflow/bridge.py" not in files:
        raise StepFailed("calc has no downflow/bridge.py, so there is nothing to put in a worker")
    return files


def imports_of(files: dict[str, bytes]) -> set[str]:
    """Every module that any import statement names, also those inside functions."""
    found: set[str] = set()
    for name, data in files.items():
        if not name.endswith(".py"):
            continue
        package = name.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        if name.endswith("/__init__.py"):
            package += "."
        for item in ast.walk(ast.parse(data)):
            found.update(_named(item, package))
    return found


def _named(item: ast.AST, package: str) -> Iterator[str]:
    if isinstance(item, ast.Import):
        yield from (alias.name for alias in item.names)
    elif isinstance(item, ast.ImportFrom):
        base = ".".join(package.split(".")[: -item.level]) if item.level else ""
        start = ".".join(part for part in (base, item.module) if part)
        yield start
        yield from (f"{start}.{alias.name}" for alias in item.names)


def own_modules(files: dict[str, bytes]) -> set[str]:
    """Every module of the calculators, so that each is imported once."""
    return {
        name.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        for name in files
        if name.startswith("downflow/") and name.endswith(".py")
    }


def stdlib_files() -> tuple[str, dict[str, bytes]]:
    """The runtime's standard library as byte code, with the key of what it was made from."""
    source = PYODIDE / "python_stdlib.zip"
    key = digest_of(source, PYODIDE / "pyodide.asm.wasm", SCRIPTS / "requirements-runtime.txt",
                    SCRIPT)
    kept = CACHE / f"stdlib-{key}.zip"
    if not kept.exists():
        with step("Byte-compiling the standard library in the browser's Python"):
            _compiled(key, "stdlib", read_zip(source))
    return key, read_zip(kept)


def _trimmed(stdlib: dict[str, bytes], app: dict[str, bytes], source: dict[str, bytes],
             work: Path) -> dict[str, bytes]:
    both = work / "full.zip"
    write_zip(both, {**stdlib, **app})
    wanted = sorted({*imports_of(source), *own_modules(source), *ALSO_NEEDED})
    exercise = (SCRIPTS / "make" / "exercise.py").read_text()
    (work / "imports.json").write_text(json.dumps({"modules": wanted, "exercise": exercise}))
    _node("trace", both, work / "imports.json", work / "used.json")
    told = json.loads((work / "used.json").read_text())
    broken = [text for text in told["missing"] if text.split(":")[0] in own_modules(source)]
    if broken:
        raise StepFailed("modules that cannot be imported in the browser:\n" + "\n".join(broken))
    used = set(told["files"])
    used |= {f"encodings/{name}.pyc" for name in CODECS}
    return {**{n: d for n, d in stdlib.items() if n in used}, **app}


def _lock() -> str:
    """The lock file's head with no package in it: nothing can be loaded by name."""
    info = json.loads((PYODIDE / "pyodide-lock.json").read_text())["info"]
    return json.dumps({"info": info, "packages": {}}, sort_keys=True)


def _licenses() -> str:
    parts = [
        "Pyodide (pyodide.mjs, pyodide.asm.js, pyodide.asm.wasm): Mozilla Public License 2.0.",
        "Python and its standard library: Python Software Foundation License 2.",
    ]
    for wheel in sorted((CACHE / "vendored").glob("*.whl")):
        for name, data in sorted(read_zip(wheel).items()):
            if ".dist-info/" in name and "LICENSE" in name.upper().rsplit("/", 1)[-1]:
                parts.append(f"{wheel.name.split('-')[0]}:\n\n{data.decode()}")
    return "\n\n".join(parts) + "\n"


def build_runtime() -> Path:
    """Make the runtime's folder in the cache and return it; its name is its content's hash."""
    with step("Building the wheel"):
        source = app_files()
    stdlib_key, stdlib = stdlib_files()
    key = digest_of(
        stdlib_key, *(part for name in sorted(source) for part in (name, source[name])),
        *(SCRIPTS / "make" / name for name in ("exercise.py", "runtime.py", "warm.py")), SCRIPT,
    )
    kept = CACHE / "runtime" / key
    if (kept / "name").exists():
        return kept / (kept / "name").read_text()
    shutil.rmtree(CACHE / "runtime", ignore_errors=True)
    work = kept / "work"
    work.mkdir(parents=True)
    with step("Byte-compiling the calculators in the browser's Python"):
        app = _compiled(key, "app", source)
    with step("Trimming the standard library to what the calculators use"):
        write_zip(work / ZIP_NAME, _trimmed(stdlib, app, source, work))
    (work / LOCK_NAME).write_text(_lock())
    with step("Keeping the memory of the started runtime"):
        _node("snapshot", work / ZIP_NAME, work / LOCK_NAME, work / "memory.bin")
        packed = io.BytesIO()
        with gzip.GzipFile(fileobj=packed, mode="wb", compresslevel=9, mtime=0) as out:
            out.write((work / "memory.bin").read_bytes())
        (work / SNAPSHOT_NAME).write_bytes(packed.getvalue())
    (work / LICENSES_NAME).write_text(_licenses())
    for name in COPIED:
        shutil.copy(PYODIDE / name, work / name)
    for name in ("full.zip", "imports.json", "memory.bin"):
        (work / name).unlink()
    (work / "used.json").rename(kept / "used.json")
    name = digest_of(*(part for f in sorted(work.iterdir()) for part in (f.name, f)))
    work.rename(kept / name)
    (kept / "name").write_text(name)
    return kept / name
