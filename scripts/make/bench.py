"""Measure the built site in a real browser and print ratios; with --check, hold them to limits.

Each module in `bench_cases` has a function `measure(bench)` that yields rows. Bare
milliseconds vary by a third from run to run, so whatever can be is a ratio of two things
measured in the same run, one after the other.
"""

from __future__ import annotations

import argparse
import importlib
import pkgutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "calc" / "src"))

from playwright.sync_api import BrowserContext, Playwright, sync_playwright
from server import Server

from make import bench_cases
from make.browser import ARGUMENTS, chromium
from make.common import SITE, StepFailed, say


@dataclass(frozen=True)
class Row:
    """One measured number: smaller is better; `limit` is None where none is promised."""

    name: str
    value: float
    unit: str
    limit: float | None = None

    @property
    def good(self) -> bool:
        """Whether it keeps its promise, if there is one."""
        return self.limit is None or self.value <= self.limit


class Bench:
    """What a case needs: the site on a port, and browsers that have seen nothing yet."""

    def __init__(self, playwright: Playwright, server: Server, runs: int) -> None:
        self.server, self.runs = server, runs
        self._playwright, self._path = playwright, chromium()

    @contextmanager
    def fresh_browser(self, init: str = "", workers: bool = False) -> Iterator[BrowserContext]:
        """A browser started anew with an empty profile; `init` runs first in every page."""
        with tempfile.TemporaryDirectory() as profile:
            context = self._playwright.chromium.launch_persistent_context(
                profile, executable_path=self._path, args=list(ARGUMENTS),
                service_workers="allow" if workers else "block")
            context.set_default_timeout(60_000)
            if init:
                context.add_init_script(init)
            try:
                yield context
            finally:
                context.close()


def cases(wanted: list[str]) -> Iterator[tuple[str, object]]:
    """The cases by name, in order; all of them when none is named."""
    for found in sorted(pkgutil.iter_modules(bench_cases.__path__), key=lambda m: m.name):
        if not wanted or found.name in wanted:
            yield found.name, importlib.import_module(f"make.bench_cases.{found.name}")


def main() -> int:
    """Run the cases and print a table; with --check the status tells whether all limits hold."""
    parser = argparse.ArgumentParser(description="Measure the built site.")
    parser.add_argument("--check", action="store_true")
    parser.add_argument("--runs", type=int, default=5, help="fresh browsers for each start")
    parser.add_argument("names", nargs="*")
    given = parser.parse_args()
    rows: list[Row] = []
    with Server(SITE) as server, sync_playwright() as playwright:
        bench = Bench(playwright, server, given.runs)
        for name, module in cases(given.names):
            say(f"\n{name.replace('_', ' ')}")
            for row in module.measure(bench):  # type: ignore[attr-defined]
                rows.append(row)
                promised = "" if row.limit is None else f"   at most {row.limit:g}"
                wrong = "" if row.good else "   TOO SLOW"
                say(f"  {row.name:52}{row.value:10.2f} {row.unit:8}{promised}{wrong}")
    slow = [row.name for row in rows if not row.good]
    if slow:
        say(f"\nBeyond the limit: {', '.join(slow)}")
    return 1 if given.check and slow else 0


if __name__ == "__main__":
    try:
        sys.exit(main())
    except StepFailed as problem:
        sys.exit(f"Stopped: {problem}")
