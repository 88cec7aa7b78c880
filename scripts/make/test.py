"""Run every test in order, cheapest first, and end with one summary.

A part that fails does not keep the others from running, so that one run shows everything;
what needs the built site is left out only when the site could not be built.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from make.browser import chromium
from make.common import MODULES, PYTHON, ROOT, SCRIPTS, StepFailed, node, node_env, say

TESTS = ROOT / "tests"
BUILT = ("runtime", "site", "browser")
WIDTH = 78

Outcome = tuple[str, bool, float]


def _call(command: Sequence[str | Path], **env: str) -> bool:
    done = subprocess.run(
        [str(part) for part in command], cwd=ROOT,
        env={**os.environ, **node_env(), "DOWNFLOW_NODE": node(), "PYTHONHASHSEED": "0", **env},
    )
    return done.returncode == 0


def _pytest(*args: str | Path, **env: str) -> bool:
    return _call([PYTHON, "-m", "pytest", "-q", "-c", TESTS / "pytest.ini",
                  "--durations=5", "--durations-min=5", *args], **env)


def lint() -> bool:
    """Style and likely mistakes, in everything that is Python."""
    return _call([PYTHON, "-m", "ruff", "check", "--quiet",
                  "--config", ROOT / "calc" / "pyproject.toml", "calc", "scripts", "tests"])


def types() -> bool:
    """Strict types in the calculators."""
    return _call([PYTHON, "-m", "mypy", "--config-file", ROOT / "calc" / "pyproject.toml",
                  "--cache-dir", ROOT / ".build" / "mypy", "calc/src/downflow"],
                 MYPYPATH=str(ROOT / "calc" / "src"))


def script_types() -> bool:
    """Types in what runs in the browser: pages, then workers."""
    compiler = MODULES / "typescript" / "bin" / "tsc"
    pages, workers = (_call([node(), compiler, "-p", SCRIPTS / "make" / f"tsconfig.{kind}.json"])
                      for kind in ("page", "worker"))
    return pages and workers


def units() -> bool:
    """Units, contracts, evidence, properties: all that needs no built site."""
    return _pytest("-n", "2", TESTS, *(f"--ignore={TESTS / name}" for name in BUILT))


def build() -> bool:
    """The site, strictly."""
    return _call([PYTHON, SCRIPTS / "make" / "build.py"])


def runtime() -> bool:
    """The calculators inside the browser's own Python, against this machine's."""
    return _pytest(TESTS / "runtime")


def site() -> bool:
    """The built pages: links, validity, nothing from elsewhere."""
    return _pytest(TESTS / "site")


def browser() -> bool:
    """A real browser: the job, accessibility, and the job again with the server gone."""
    try:
        found = chromium()
    except StepFailed as failed:
        say(f"Stopped: {failed}")
        return False
    say(f"Browser: {found}")
    return _pytest(TESTS / "browser", DOWNFLOW_CHROMIUM=found)


def _part(title: str, work: Callable[[], bool]) -> Outcome:
    say(f"\n{f' {title} ':=^{WIDTH}}")
    start = time.monotonic()
    good = work()
    return title, good, time.monotonic() - start


def main() -> int:
    """All parts; the status is 0 only when each of them passed."""
    quick = "--quick" in sys.argv[1:]
    outcomes = [
        _part("lint", lint),
        _part("types: calculators", types),
        _part("types: browser scripts", script_types),
        _part("units, contracts, evidence", units),
        _part("build", build),
    ]
    built: list[tuple[str, Callable[[], bool]]] = [
        ("calculators in the shipping runtime", runtime), ("built site", site)]
    if not quick:
        built.append(("browser", browser))
    if outcomes[-1][1]:
        outcomes += [_part(title, work) for title, work in built]
    else:
        outcomes += [(f"{title} (no site)", False, 0.0) for title, _ in built]
    say(f"\n{' summary ':=^{WIDTH}}")
    for title, good, seconds in outcomes:
        say(f"{'passed' if good else 'FAILED':8}{title:50}{seconds:8.1f} s")
    failed = sum(not good for _, good, _ in outcomes)
    total = sum(seconds for *_, seconds in outcomes)
    if quick:
        say("        the tests that need a browser were left out (--quick)")
    verdict = f"{failed} of {len(outcomes)} parts failed" if failed else "everything passed"
    say(f"{f' {verdict} in {total:.0f} s ':=^{WIDTH}}")
    return 1 if failed else 0


if __name__ == "__main__":
    try:
        sys.exit(main())
    except StepFailed as problem:
        sys.exit(f"Stopped: {problem}")
