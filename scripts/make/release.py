"""After the pages are made: the strict policy, the runtime's name, and the release itself.

Everything here works on the built folder and knows nothing of the pages' meaning.
"""

from __future__ import annotations

import base64
import hashlib
import html
import json
import re
import shutil
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path

from make.common import SCRIPTS, StepFailed, digest, digest_of

POLICY = {
    "default-src": ["'none'"],
    "script-src": ["'self'", "'wasm-unsafe-eval'"],
    "worker-src": ["'self'"],
    "connect-src": ["'self'"],
    "style-src": ["'self'"],
    "img-src": ["'self'", "data:", "blob:"],
    "font-src": ["'self'"],
    "manifest-src": ["'self'"],
    "form-action": ["'none'"],
    "base-uri": ["'none'"],
}
HOMEOWNER = "h/"
RUNTIME = "runtime/"
NOT_KEPT = {"sw.js", "release.json"}
# What Material brings and an English site never loads, and what would differ from day to day.
LEFT_OUT = ("assets/javascripts/lunr", "sitemap.xml", "sitemap.xml.gz")

ADDRESS = {"href", "src", "srcset", "action", "formaction", "poster", "data", "xlink:href",
           "manifest", "ping", "cite", "background"}
FOREIGN = re.compile(r"^\s*([a-z][a-z0-9+.-]*:)?//", re.I)
# The build itself names the manifest and the icon, at each page's own depth.
THEIR_LINKS = re.compile(r'\s*<link rel="(?:manifest|apple-touch-icon)"[^>]*>')
IN_STYLE = re.compile(r"url\(\s*['\"]?([^'\")]*)|@import\s+['\"]([^'\"]*)", re.I)

MANIFEST = {
    "name": "Downflow",
    "short_name": "Downflow",
    "description": "Field handbook and calculators for replacing a manufactured home's fuel "
    "furnace by a heat pump with electric backup heat",
    "start_url": "./",
    "scope": "./",
    "display": "standalone",
    "background_color": "#ffffff",
    "theme_color": "#ffffff",
    "icons": [
        {"src": "assets/icons/mark-192.png", "sizes": "192x192", "type": "image/png"},
        {"src": "assets/icons/mark-512.png", "sizes": "512x512", "type": "image/png"},
        {"src": "assets/icons/mark-512.png", "sizes": "512x512", "type": "image/png",
         "purpose": "maskable"},
    ],
}

# The only page that cannot know how deep it lies: it looks for the site's root by walking up.
NOWHERE_SCRIPT = """
(async () => {
  const link = document.querySelector("a");
  for (let at = new URL(".", location.href); ; at = new URL("..", at)) {
    const found = await fetch(new URL("release.json", at)).catch(() => null);
    if (found && found.ok) { link.href = at.href; return; }
    if (at.pathname === "/") return;
  }
})();
"""
NOWHERE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>No such page - Downflow</title></head>
<body><main><h1>No such page</h1>
<p>Nothing lies at this address. Your job sheet is untouched.</p>
<p><a href="/">Go to the start page</a></p></main>
<script>{script}</script></body></html>
"""


@dataclass(frozen=True)
class Seen:
    """What one page holds that the policy is about."""

    scripts: tuple[str, ...]
    faults: tuple[str, ...]


class _Page(HTMLParser):
    """Collects a page's inline scripts and whatever may not be in it."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.scripts: list[str] = []
        self.faults: list[str] = []
        self._inline = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "script":
            kind = given.get("type") or "module"
            self._inline = "src" not in given and kind in ("module", "text/javascript")
            if self._inline:
                self.scripts.append("")
        if tag in ("style", "base", "iframe", "object", "embed"):
            self._fault(f"<{tag}>")
        for name, value in attrs:
            if name == "style" or name.startswith("on"):
                self._fault(f"<{tag} {name}>: inline")
            elif name in ADDRESS and value and _foreign(value):
                self._fault(f"<{tag} {name}>: {value}")

    handle_startendtag = handle_starttag

    def handle_endtag(self, tag: str) -> None:
        if tag == "script":
            self._inline = False

    def handle_data(self, data: str) -> None:
        if self._inline:
            self.scripts[-1] += data

    def _fault(self, text: str) -> None:
        self.faults.append(f"line {self.getpos()[0]}: {text}")


def _foreign(address: str) -> bool:
    return bool(FOREIGN.match(address)) or address.lower().lstrip().startswith("javascript:")


def look_at(text: str) -> Seen:
    """Inline scripts of a page, exactly as they stand, and its faults."""
    page = _Page()
    page.feed(text)
    page.close()
    return Seen(tuple(page.scripts), tuple(page.faults))


def script_hash(script: str) -> str:
    """The policy's word for one inline script."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"


def policy(scripts: tuple[str, ...] = ()) -> str:
    """The policy in one line, with these inline scripts allowed."""
    allowed = {**POLICY, "script-src": [*POLICY["script-src"], *sorted(map(script_hash, scripts))]}
    return "; ".join(f"{name} {' '.join(words)}" for name, words in allowed.items())


def _write_policies(site: Path, runtime: str, release_of_pages: str) -> None:
    faults: list[str] = []
    pages = {path: path.read_text() for path in sorted(site.rglob("*.html"))}
    seen = {path: look_at(text) for path, text in pages.items()}
    for path, text in pages.items():
        inner = path.relative_to(site).as_posix()
        faults += [f"{inner}, {fault}" for fault in seen[path].faults]
        meta = html.escape(policy(tuple(set(seen[path].scripts))), quote=False)
        head = f'<meta http-equiv="Content-Security-Policy" content="{meta}">'
        if not inner.startswith(HOMEOWNER) and inner != "404.html":
            up = "../" * inner.count("/") or "./"
            named = json.dumps({"release": release_of_pages, "runtime": runtime})
            head += (
                f'<link rel="manifest" href="{up}manifest.webmanifest">'
                f'<link rel="apple-touch-icon" href="{up}assets/icons/mark-180.png">'
                f'<script type="application/json" id="df-release">{named}</script>'
            )
            text = THEIR_LINKS.sub("", text)
        new, count = re.subn(r"<head\b[^>]*>", lambda tag: tag.group() + head, text, count=1)  # noqa: B023
        if not count:
            faults.append(f"{inner}: no <head> to put the policy in")
        path.write_text(new)
    for path in sorted(site.rglob("*.css")):
        for match in IN_STYLE.finditer(path.read_text()):
            address = match.group(1) or match.group(2) or ""
            if _foreign(address):
                faults.append(f"{path.relative_to(site)}: {address}")
    if faults:
        raise StepFailed("pages that break the policy:\n  " + "\n  ".join(faults))


def _drop(site: Path) -> None:
    for name in LEFT_OUT:
        path = site / name
        if path.is_dir():
            shutil.rmtree(path)
        else:
            path.unlink(missing_ok=True)
    for path in site.rglob("*.map"):
        path.unlink()


def part_of(path: str) -> str:
    """Which half of a release a file belongs to."""
    return "runtime" if path.startswith(RUNTIME) else "pages"


def _files(site: Path) -> list[dict[str, object]]:
    found = []
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if path.is_file() and name not in NOT_KEPT:
            data = path.read_bytes()
            found.append({"path": name, "sha256": digest(data), "bytes": len(data),
                          "part": part_of(name)})
    return found


def finish(site: Path, runtime: Path) -> str:
    """Turn built pages and a runtime into a release; return its id."""
    _drop(site)
    where = f"{RUNTIME}{runtime.name}/"
    shutil.copytree(runtime, site / where)
    (site / "manifest.webmanifest").write_text(json.dumps(MANIFEST, indent=1))
    (site / "404.html").write_text(NOWHERE.format(script=NOWHERE_SCRIPT))
    # The id stands in the pages, so it is made from everything as it is before that.
    release = digest_of(*(f"{f['path']} {f['sha256']}" for f in _files(site)),
                        SCRIPTS / "make" / "sw.js", Path(__file__))
    _write_policies(site, where, release)
    seal(site, release)
    return release


def seal(site: Path, release: str) -> None:
    """List every file of a finished site, and write the worker that keeps them."""
    files = _files(site)
    (site / "release.json").write_text(json.dumps({"release": release, "files": files}, indent=1))
    kept = [{k: f[k] for k in ("path", "sha256", "part")} for f in files
            if not str(f["path"]).startswith(HOMEOWNER)]
    worker = (SCRIPTS / "make" / "sw.js").read_text()
    told = json.dumps({"release": release, "files": kept}, separators=(",", ":"))
    (site / "sw.js").write_text(f"self.DF_RELEASE={told};\n{worker}")
