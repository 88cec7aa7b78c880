"""Promises about the built site that hold for every page of it."""

from __future__ import annotations

import base64
import hashlib
import html
import json
import re
import subprocess
from pathlib import Path

import pytest
from make.common import MODULES, node
from make.release import HOMEOWNER

NOWHERE = "404.html"
FOREIGN = re.compile(r"^([a-z][a-z0-9+.-]*:)?//|^(?!data:|blob:|mailto:)[a-z][a-z0-9+.-]*:", re.I)
POLICY = {
    "default-src": ["'none'"], "worker-src": ["'self'"], "connect-src": ["'self'"],
    "style-src": ["'self'"], "font-src": ["'self'"], "base-uri": ["'none'"],
    "form-action": ["'none'"],
}


def policy_of(text: str) -> dict[str, list[str]]:
    found = re.search(r'<head\b[^>]*><meta http-equiv="Content-Security-Policy" content="([^"]*)">',
                      text)
    assert found, "the policy is the first thing in the head"
    words = [part.split() for part in html.unescape(found.group(1)).split(";")]
    return {name: values for name, *values in words}


def test_there_are_pages(pages):
    assert len(pages) > 10


def test_every_link_leads_to_a_file_that_is_there(pages, site: Path):
    broken = [f"{page.path}: {raw}" for page in pages.values() if page.path != NOWHERE
              for raw, target, _ in page.targets() if not (site / target).is_file()]
    assert broken == []


def test_every_fragment_leads_to_an_id_on_its_page(pages):
    broken = [f"{page.path}: {raw}" for page in pages.values()
              for raw, target, fragment in page.targets()
              if fragment and target in pages and target != "h/index.html"
              and not (fragment in pages[target].ids or fragment == "__search")]
    assert broken == []


def test_an_id_stands_once_on_a_page(pages):
    twice = [f"{page.path}: {name}" for page in pages.values() for name in page.ids
             if sum(given.get("id") == name for _, given in page.tags) > 1]
    assert twice == []


def test_every_page_can_be_reached_from_the_start(pages):
    reached, left = set(), ["index.html"]
    while left:
        name = left.pop()
        if name in reached or name not in pages:
            continue
        reached.add(name)
        left += [target for _, target, _ in pages[name].targets()]
    homeowner = {name for name in pages if name.startswith(HOMEOWNER)}
    assert set(pages) - reached - homeowner == {NOWHERE}


def test_no_page_names_a_foreign_address(pages):
    named = [f"{page.path}: <{tag} {name}> {value}" for page in pages.values()
             for tag, name, value in page.addresses if FOREIGN.match(value)]
    assert named == []


def test_no_style_sheet_names_a_foreign_address(site: Path):
    for path in site.rglob("*.css"):
        found = re.findall(r"url\(\s*['\"]?(?!data:)([^'\")]+)", path.read_text())
        assert [one for one in found if FOREIGN.match(one)] == [], path.name


def test_our_scripts_name_no_foreign_address(site: Path):
    ours = [path for path in [*site.glob("assets/*.js"), site / "sw.js", *site.rglob("h/*.js")]
            if path.exists()]
    assert len(ours) > 3
    for path in ours:
        found = re.findall(r"https?://[^\s'\"`)]+", path.read_text())
        assert [one for one in found if "www.w3.org" not in one] == [], path.name


def test_links_stay_under_the_sites_own_path(pages):
    """A site in a folder of a host: an address from the host's root would leave it."""
    rooted = [f"{page.path}: {value}" for page in pages.values() if page.path != NOWHERE
              for _, _, value in page.addresses if value.startswith("/")]
    assert rooted == []


def test_the_policy_is_strict_on_every_page(pages):
    for page in pages.values():
        policy = policy_of(page.text)
        assert {name: policy[name] for name in POLICY} == POLICY, page.path
        script = [word for word in policy["script-src"] if not word.startswith("'sha256-")]
        assert script == ["'self'", "'wasm-unsafe-eval'"], page.path


def test_the_policy_names_each_inline_script_and_no_other(pages):
    for page in pages.values():
        scripts = re.findall(r"<script(?![^>]*\bsrc=)(?![^>]*application/json)[^>]*>(.*?)</script>",
                             page.text, re.S)
        wanted = {f"'sha256-{base64.b64encode(hashlib.sha256(s.encode()).digest()).decode()}'"
                  for s in scripts}
        named = {w for w in policy_of(page.text)["script-src"] if w.startswith("'sha256-")}
        assert named == wanted, page.path


def test_no_inline_style_and_no_inline_handler(pages):
    found = [f"{page.path}: <{tag} {name}>" for page in pages.values()
             for tag, given in page.tags for name in given
             if name == "style" or name.startswith("on")]
    found += [page.path for page in pages.values() if any(tag == "style" for tag, _ in page.tags)]
    assert found == []


def test_the_pages_are_valid_html(site: Path):
    validator = MODULES / "html-validate" / "bin" / "html-validate.mjs"
    done = subprocess.run(
        [node(), str(validator), "-c", str(Path(__file__).with_name("html-validate.json")),
         "-f", "text", str(site)], capture_output=True, text=True)
    assert done.returncode == 0, (done.stdout + done.stderr)[:6000]


def test_every_page_has_one_heading_of_the_first_rank_and_a_title(pages):
    for page in pages.values():
        assert sum(tag == "h1" for tag, _ in page.tags) == 1, page.path
        assert re.search(r"<title>\s*\S", page.text), page.path


def test_every_calculators_page_shows_its_answer_as_it_was_built(pages):
    """Without a script: the number stands in the page's own text."""
    from downflow.calculators import all_calculators

    for id_ in all_calculators():
        page = pages.get(f"calculators/{id_}/index.html")
        assert page, f"{id_} has no page"
        assert re.search(r'class="df-answer__value[^"]*"[^>]*>[^<]*\d', page.text), id_


@pytest.fixture(scope="session")
def release(site: Path) -> dict[str, object]:
    return json.loads((site / "release.json").read_text())


def test_the_release_names_each_file_by_its_content(release, site: Path):
    assert len(release["files"]) > 50
    for item in release["files"]:
        data = (site / item["path"]).read_bytes()
        assert hashlib.sha256(data).hexdigest() == item["sha256"], item["path"]
        assert len(data) == item["bytes"]
        assert item["part"] == ("runtime" if item["path"].startswith("runtime/") else "pages")


def test_pages_name_the_release_and_the_runtime_by_its_content(release, pages, site: Path):
    from make.common import digest_of

    (folder,) = (site / "runtime").iterdir()
    content = digest_of(*(part for f in sorted(folder.iterdir()) for part in (f.name, f)))
    assert folder.name == content
    for page in pages.values():
        named = re.findall(r'<script type="application/json" id="df-release">(.*?)</script>',
                           page.text)
        if page.path == NOWHERE or page.path.startswith(HOMEOWNER):
            assert named == [], page.path
        else:
            assert [json.loads(one) for one in named] == [
                {"release": release["release"], "runtime": f"runtime/{content}/"}], page.path


def test_the_worker_that_keeps_files_leaves_the_homeowners_page_alone(release, site: Path):
    first = (site / "sw.js").read_text().split("\n", 1)[0]
    told = json.loads(first.removeprefix("self.DF_RELEASE=").removesuffix(";"))
    assert told["release"] == release["release"]
    kept = {item["path"] for item in told["files"]}
    assert {item["path"] for item in release["files"]
            if not item["path"].startswith(HOMEOWNER)} == kept


def test_the_homeowners_page_asks_for_no_worker_and_no_python(pages, site: Path):
    ours = [page for page in pages.values() if page.path.startswith(HOMEOWNER)]
    for page in ours:
        loaded = [target for raw, target, _ in page.targets() if target.endswith(".js")]
        scripts = "".join((site / target).read_text() for target in loaded) + page.text
        assert "serviceWorker" not in scripts, page.path
        assert "new Worker" not in scripts, page.path
        assert "runtime/" not in scripts, page.path


def test_the_manifest_and_its_icons(pages, site: Path):
    manifest = json.loads((site / "manifest.webmanifest").read_text())
    assert manifest["start_url"] == "./"
    for icon in manifest["icons"]:
        data = (site / icon["src"]).read_bytes()
        size = int.from_bytes(data[16:20], "big"), int.from_bytes(data[20:24], "big")
        assert f"{size[0]}x{size[1]}" == icon["sizes"]
    start = pages["index.html"]
    assert ("link", "manifest") in {(tag, given.get("rel")) for tag, given in start.tags}


def test_nothing_of_the_build_machine_is_in_the_site(site: Path):
    machine = {str(Path.home()), str(site.parents[1])} - {"/"}
    for path in site.rglob("*"):
        if path.is_file():
            data = path.read_bytes()
            assert [m for m in machine if len(m) > 6 and m.encode() in data] == [], path.name
