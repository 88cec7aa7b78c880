"""Find a Chromium for the tests; where there is none, bring one and say so."""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path

from make.common import PYTHON, StepFailed, run, say, step

NAMES = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome")
PLACES = (
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
)
# Without its own sandbox where it would refuse to start (as root), and nothing on its own behalf.
ARGUMENTS = ("--no-sandbox", "--disable-gpu", "--disable-background-networking",
             "--disable-component-update", "--no-first-run")


def _named() -> str | None:
    named = os.environ.get("DOWNFLOW_CHROMIUM")
    if named and not os.access(named, os.X_OK):
        raise StepFailed(f"DOWNFLOW_CHROMIUM names {named}, which cannot be run")
    return named


def _on_path() -> str | None:
    return next((found for name in NAMES if (found := shutil.which(name))), None)


def _in_place() -> str | None:
    return next((place for place in PLACES if os.access(place, os.X_OK)), None)


def _of_playwright() -> str | None:
    asked = ("from playwright.sync_api import sync_playwright\n"
             "with sync_playwright() as p: print(p.chromium.executable_path)")
    path = run([PYTHON, "-c", asked]).strip().splitlines()[-1]
    return path if Path(path).exists() else None


def chromium() -> str:
    """Path of a Chromium that can be run."""
    found = _named() or _on_path() or _in_place() or _of_playwright()
    if found:
        return found
    if os.geteuid() == 0 and shutil.which("apt-get"):
        try:
            with step("No browser on this machine: installing chromium with apt-get"):
                run(["apt-get", "update", "-qq"])
                run(["apt-get", "install", "-y", "-qq", "chromium"],
                    env={"DEBIAN_FRONTEND": "noninteractive"})
        except StepFailed as failed:
            say(f"  that did not work: {str(failed).splitlines()[-1]}")
        found = _on_path() or _in_place()
        if found:
            return found
    with step("No browser on this machine: downloading the test driver's own Chromium"):
        run([PYTHON, "-m", "playwright", "install", "chromium"])
    found = _of_playwright()
    if not found:
        raise StepFailed("no browser could be brought; name one: DOWNFLOW_CHROMIUM=/path/to/it")
    return found


if __name__ == "__main__":
    print(chromium(), file=sys.stdout)
