"""Build the whole site: the runtime, the pages, then the release around both."""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from make.common import BUILD, MODULES, PYTHON, ROOT, SITE, alone, main, run, say, step
from make.release import finish
from make.runtime import build_runtime

VENDOR = {
    "fflate/esm/browser.js": "fflate.js", "fflate/LICENSE": "fflate-license.txt",
    "minisearch/dist/es/index.js": "minisearch.js",
    "minisearch/LICENSE.txt": "minisearch-license.txt",
}
"""Libraries that pages bring in as they are: place among the Node packages, name in the site."""


def bring_libraries(site: Path) -> None:
    """Copies them beside the pages' own scripts, with their licences."""
    place = site / "assets" / "vendor"
    place.mkdir(parents=True, exist_ok=True)
    for source, name in VENDOR.items():
        shutil.copyfile(MODULES / source, place / name)


def work() -> None:
    """The site in .build/site, put in place only when it is whole."""
    with alone("build"):
        runtime = build_runtime()
        fresh = BUILD / "site-new"
        shutil.rmtree(fresh, ignore_errors=True)
        with step("Making the pages"):
            run([PYTHON, "-m", "mkdocs", "build", "--strict", "--quiet", "--site-dir", fresh],
                env={"NO_MKDOCS_2_WARNING": "1", "PYTHONHASHSEED": "0",
                     "PYTHONPATH": os.fspath(ROOT / "calc" / "src")})
        bring_libraries(fresh)
        with step("Writing the policy and the release"):
            release = finish(fresh, runtime)
        shutil.rmtree(SITE, ignore_errors=True)
        fresh.rename(SITE)
    files = [path for path in SITE.rglob("*") if path.is_file()]
    size = sum(path.stat().st_size for path in files) / 1e6
    say(f"Release {release}: {len(files)} files, {size:.1f} MB, in {SITE.relative_to(ROOT)}")


if __name__ == "__main__":
    main(work)
