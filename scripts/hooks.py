"""What the site builder is told: the list of pages, the shortcodes, the contents of a page.

A thin adapter over plain functions of the package `downflow`. Nothing is computed,
converted or worded here.

Shortcodes, alone in a paragraph or inside a sentence:

    {{ calculator heat-loss }}     a calculator, painted with its worked example
    {{ sheet }} {{ plan }} {{ first }} {{ blank }}   job sheet, plan, first answer, blank sheet
    {{ practice NAME [LESSON] }}   a part of the practice pages, or a lesson's number and check
    {{ places }}                   the search for a place and its climate
    {{ q 6200 ft }}                a number with its unit, in both unit systems
    {{ table NAME }}               a published table
    {{ drawing NAME }}             a drawing
    {{ evidence }}                 every check value against its source
    {{ procedures [PHASE] }}       list of procedures, of one phase or of all
    {{ calculators [PHASE] }}      list of calculators, of one phase or of all
    {{ phases }} {{ board }}       everything by phase: laid open, or to open in place
    {{ symptoms [COUNT] }}         list of symptoms, the first COUNT or all
    {{ also }}                     pages that ask for a place on the start page

Inside code they are left as they are.
"""

from __future__ import annotations

import importlib
import json
import re
import sys
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from mkdocs.exceptions import PluginError
from mkdocs.structure.toc import get_toc
from mkdocs.utils import get_relative_url
from mkdocs.utils.meta import get_data

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.files import File, Files
    from mkdocs.structure.pages import Page

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT / "calc" / "src"), str(ROOT / "scripts")]

import find_index  # noqa: E402

from downflow.phases import PHASES, phase, phase_number  # noqa: E402
from downflow.render import links  # noqa: E402
from downflow.render.procedure import PROCEDURES  # noqa: E402

# Top of the list of pages, in this order; a line is there when its page is.
TOP = (
    ("Start", "index"),
    ("Job sheet", "job-sheet"),
    ("Plan", "plan"),
    ("Homeowner link", "hand-over"),
    ("By phase", "by-phase"),
    ("By symptom", "symptoms"),
    ("Procedures", "procedures"),
    ("Calculators", "calculators"),
    ("Tables", "tables"),
    ("Practice", "practice"),
    ("For the homeowner", "homeowner"),
    ("Evidence", "evidence"),
    ("Open data", "data"),
    ("For programmers", "programmers"),
    ("Words", "glossary"),
    ("Changes", "changes"),
)
KIND_OF_FOLDER = {
    "procedures": "procedure", "calculators": "calculator", "symptoms": "symptom",
}
# Files of the theme that no page asks for: another project's mark, its own search, maps for
# its developers.
NOT_SHIPPED = re.compile(
    r"assets/images/favicon\.png$|assets/javascripts/(lunr|workers)/|\.map$")

SHORTCODE = re.compile(r"\{\{\s*([a-z]+)((?:\s+[^{}]*?)?)\s*\}\}")
CODE = re.compile(
    r"^(?P<fence>```+|~~~+).*?^(?P=fence)[ ]*$"      # a fenced block
    r"|(?P<tick>`+)(?!`).+?(?<!`)(?P=tick)(?!`)",     # code in a line
    re.MULTILINE | re.DOTALL)
OPEN, CLOSE = "\ue000", "\ue001"
PLACEHOLDER = re.compile(f"<p>{OPEN}([0-9]+){CLOSE}</p>|{OPEN}([0-9]+){CLOSE}")
HEADING = re.compile(r"<h([1-3])\b([^>]*)>(.*?)</h\1>", re.DOTALL)
HOLD = re.compile(
    r'<section class="df-hold"(?P<id>[^>]*)>\s*<header>(?P<text>.*?)</header>', re.DOTALL)
ID = re.compile(r'\bid="([^"]+)"')
NUMBER_OF_PHASE = re.compile(r'<span class="st-n".*?</span>')
TAG = re.compile(r"<[^>]+>")
TABLE = re.compile(r"<table>(.*?)</table>", re.DOTALL)
ALIGNED_CELL = re.compile(r'<(t[hd]) style="text-align: (left|center|right);">')
SCROLLING_TABLE = (
    r'<div class="df-scroll" tabindex="0" role="group" aria-label="Table">'
    r'<table class="df-table">\1</table></div>')


@dataclass(frozen=True)
class Record:
    """What the lists need to know about a page."""

    file: File
    title: str
    meta: dict[str, Any]
    kind: str
    phase: str
    order: float


@dataclass
class Site:
    """The pages of this build and the pieces of HTML waiting for their place."""

    records: tuple[Record, ...] = ()
    pieces: dict[str, list[str]] = field(default_factory=dict)
    contents: dict[str, str] = field(default_factory=dict)


SITE = Site()


# ---------------------------------------------------------------- the list of pages

def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Start each build anew."""
    SITE.records, SITE.pieces, SITE.contents = (), {}, {}
    return config


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Read the front matter of every page and make the list of pages from it."""
    SITE.records = tuple(sorted(
        (_record(file) for file in files.documentation_pages()),
        key=lambda r: (r.order, r.title.casefold())))
    config["nav"] = _nav()
    for file in [f for f in files if NOT_SHIPPED.search(f.src_uri)]:
        files.remove(file)
    config["extra"]["df"] = {
        "start": ".", **{stem.replace("-", "_"): _page_address(stem)
                         for stem in ("job-sheet", "plan", "changes", "glossary")}}
    return files


def _record(file: File) -> Record:
    text, meta = get_data(file.content_string)
    folder, _, name = file.src_uri.rpartition("/")
    index = name == "index.md"
    heading = re.search(r"^#\s+(.+?)\s*(?:\{.*\})?$", text, re.MULTILINE)
    title = meta.get("title") or (heading and heading[1])
    if not title:
        raise PluginError(f"docs/{file.src_uri}:1: the page has no title")
    kind = "page" if index else KIND_OF_FOLDER.get(folder, "page")
    phase_id = str(meta.get("phase", ""))
    if kind in ("procedure", "calculator") and not phase_id:
        raise PluginError(f"docs/{file.src_uri}:1: a {kind} names its phase in the front matter")
    if phase_id:
        try:
            phase(phase_id)
        except ValueError as error:
            raise PluginError(f"docs/{file.src_uri}:1: {error}") from error
    order = PROCEDURES.index(Path(name).stem) if kind == "procedure" and Path(
        name).stem in PROCEDURES else meta.get("order", 1000)
    return Record(file, str(title), meta, kind, phase_id, float(order))


def _nav() -> list[dict[str, Any]]:
    placed: set[str] = set()
    nav: list[dict[str, Any]] = []
    for title, stem in TOP:
        index = _page(stem)
        children = [r for r in SITE.records
                    if r.file.src_uri.startswith(f"{stem}/") and r is not index]
        if index is None and not children:
            continue
        own = [{title: index.file.src_uri}] if index else []
        if not children:
            nav += own
        else:
            nav.append({title: [*own, *_branches(children)]})
        placed |= {r.file.src_uri for r in (index, *children) if r}
    nav += [{r.title: r.file.src_uri} for r in SITE.records if r.file.src_uri not in placed]
    return nav


def _branches(children: list[Record]) -> list[dict[str, Any]]:
    """Pages of a folder, under their phases if they have one."""
    loose = [{r.title: r.file.src_uri} for r in children if not r.phase]
    phased = [(f"{phase_number(p.id)} {p.title}",
               [{r.title: r.file.src_uri} for r in children if r.phase == p.id]) for p in PHASES]
    return loose + [{title: pages} for title, pages in phased if pages]


def _page(stem: str) -> Record | None:
    return next((r for r in SITE.records
                 if r.file.src_uri in (f"{stem}.md", f"{stem}/index.md")), None)


def _page_address(stem: str) -> str | None:
    record = _page(stem)
    return record.file.url if record else None


# ---------------------------------------------------------------------- shortcodes

def on_page_markdown(markdown: str, page: Page, **_: Any) -> str:
    """Put a placeholder where each shortcode stands and keep its HTML for later."""
    pieces: list[str] = []
    SITE.pieces[page.file.src_uri] = pieces
    if page.meta.get("phase"):
        page.meta["phase_title"] = phase(page.meta["phase"]).title
    if page.meta.get("calculator"):
        page.meta["wide"] = True
    painted = {"steps": "procedure_html", "tests": "symptom_html"}
    for function in [name for key, name in painted.items() if page.meta.get(key)]:
        titles = {Path(r.file.src_uri).stem: r.title for r in SITE.records
                  if r.kind == "procedure"}
        data = {"id": Path(page.file.src_uri).stem, **page.meta, "titles": titles}
        html = _call(function, page, "title:", data)
        pieces.append(_expand(html, page))
        markdown = f"{OPEN}0{CLOSE}\n\n{markdown}"

    def keep(match: re.Match[str]) -> str:
        pieces.append(_shortcode(match, page))
        return f"{OPEN}{len(pieces) - 1}{CLOSE}"

    return _outside_code(markdown, lambda text: SHORTCODE.sub(keep, text))


def _outside_code(markdown: str, change: Callable[[str], str]) -> str:
    parts, end = [], 0
    for code in CODE.finditer(markdown):
        parts += [change(markdown[end:code.start()]), code[0]]
        end = code.end()
    return "".join([*parts, change(markdown[end:])])


def _expand(html: str, page: Page) -> str:
    return SHORTCODE.sub(lambda match: _shortcode(match, page), html)


def _shortcode(match: re.Match[str], page: Page) -> str:
    name, arguments = match[1], match[2].split()
    entry = SHORTCODES.get(name)
    if entry is None:
        raise _error(page, match[0], f"no shortcode {name!r}; there are {', '.join(SHORTCODES)}")
    make, least, most = entry
    if not least <= len(arguments) <= most:
        raise _error(page, match[0], f"{name} takes {least} to {most} words, not {len(arguments)}")
    return make(page, match[0], arguments)


def _error(page: Page, text: str, message: str) -> PluginError:
    raw = page.file.content_string
    place = raw.find(text)
    line = raw.count("\n", 0, place) + 1 if place >= 0 else 1
    return PluginError(f"docs/{page.file.src_uri}:{line}: {text}: {message}")


def _call(function: str, page: Page, text: str, *arguments: Any) -> str:
    """Call one function of `downflow.render`; whatever it refuses stops the build."""
    try:
        render = getattr(importlib.import_module("downflow.render"), function)
    except (ImportError, AttributeError) as error:
        raise _error(page, text, f"downflow.render has no {function} ({error})") from error
    try:
        html = render(*arguments)
    except (LookupError, ValueError) as error:
        raise _error(page, text, str(error)) from error
    return str(html)


def _calculator(page: Page, text: str, arguments: list[str]) -> str:
    return _call("calculator_html", page, text, arguments[0])


def _quantity(page: Page, text: str, arguments: list[str]) -> str:
    return _call("quantity_html", page, text, arguments[0], " ".join(arguments[1:]))


def _table(page: Page, text: str, arguments: list[str]) -> str:
    return _call("table_html", page, text, arguments[0])


def _drawing(page: Page, text: str, arguments: list[str]) -> str:
    return _call("drawing_html", page, text, arguments[0])


def _evidence(page: Page, text: str, arguments: list[str]) -> str:
    rows = [row for path in sorted((ROOT / "tests" / "evidence").glob("*.json"))
            for row in json.loads(path.read_text("utf-8"))]
    return _call("evidence_html", page, text, rows)


def _painted(function: str) -> Callable[[Page, str, list[str]], str]:
    """A part of a page that needs no words after its name."""
    return lambda page, text, arguments: _call(function, page, text)


def _practice(page: Page, text: str, arguments: list[str]) -> str:
    return _call("practice_html", page, text, *arguments)


def _procedures(page: Page, text: str, arguments: list[str]) -> str:
    return _kind(page, text, "procedure", arguments)


def _calculators(page: Page, text: str, arguments: list[str]) -> str:
    return _kind(page, text, "calculator", arguments)


def _kind(page: Page, text: str, kind: str, arguments: list[str]) -> str:
    entries = _entries(page)
    if not arguments:
        return links.grouped_html(kind, entries)
    try:
        wanted = phase(arguments[0]).id
    except ValueError as error:
        raise _error(page, text, str(error)) from error
    return links.list_html(e for e in entries if e.kind == kind and e.phase == wanted)


def _phases(page: Page, text: str, arguments: list[str]) -> str:
    return links.phases_html(_entries(page))


def _board(page: Page, text: str, arguments: list[str]) -> str:
    return links.board_html(_entries(page))


def _symptoms(page: Page, text: str, arguments: list[str]) -> str:
    symptoms = [e for e in _entries(page) if e.kind == "symptom"]
    shown = symptoms[:int(arguments[0])] if arguments else symptoms
    index = _page("symptoms")
    if len(shown) < len(symptoms) and index:
        url = get_relative_url(index.file.url, page.url)
        shown = [*shown, links.Entry("page", f"All {len(symptoms)} symptoms", url)]
    return links.list_html(shown)


def _also(page: Page, text: str, arguments: list[str]) -> str:
    return links.list_html(
        _entry(r, page)._replace(sub=str(r.meta["also"])) for r in SITE.records if "also" in r.meta)


def _entries(page: Page) -> list[links.Entry]:
    return [_entry(record, page) for record in SITE.records]


def _entry(record: Record, page: Page) -> links.Entry:
    return links.Entry(record.kind, record.title, get_relative_url(record.file.url, page.url),
                       record.phase, str(record.meta.get("summary", "")))


SHORTCODES: dict[str, tuple[Callable[[Page, str, list[str]], str], int, int]] = {
    "calculator": (_calculator, 1, 1),
    "sheet": (_painted("painted_sheet_html"), 0, 0),
    "plan": (_painted("painted_plan_html"), 0, 0),
    "record": (_painted("painted_record_html"), 0, 0),
    "papers": (_painted("painted_papers_html"), 0, 0),
    "first": (_painted("first_answer_html"), 0, 0),
    "blank": (_painted("blank_sheet_html"), 0, 0),
    "places": (_painted("places_html"), 0, 0),
    "handover": (_painted("painted_hand_over_html"), 0, 0),
    "weather": (_painted("weather_html"), 0, 0),
    "practice": (_practice, 1, 2),
    "q": (_quantity, 2, 9),
    "table": (_table, 1, 1),
    "drawing": (_drawing, 1, 1),
    "evidence": (_evidence, 0, 0),
    "procedures": (_procedures, 0, 1),
    "calculators": (_calculators, 0, 1),
    "phases": (_phases, 0, 0),
    "board": (_board, 0, 0),
    "symptoms": (_symptoms, 0, 1),
    "also": (_also, 0, 0),
}


# ------------------------------------------------------------------- the finished page

def on_page_content(html: str, page: Page, **_: Any) -> str:
    """Fill the placeholders, take inline style off, list the headings of the whole page."""
    pieces = SITE.pieces.get(page.file.src_uri, [])
    html = PLACEHOLDER.sub(lambda m: pieces[int(m[1] or m[2])], html)
    html = ALIGNED_CELL.sub(lambda m: f'<{m[1]} class="{m[2][0].replace("r", "n")}">', html)
    html = TABLE.sub(SCROLLING_TABLE, html).replace("<pre>", '<pre tabindex="0">')
    html = HEADING.sub(_with_id, html)
    SITE.contents[page.file.src_uri] = html
    page.toc = get_toc(_headings(html))
    page.present_anchor_ids = {*(page.present_anchor_ids or ()), *ID.findall(html)}
    return html


def _with_id(match: re.Match[str]) -> str:
    if match[1] != "1" or ID.search(match[2]):
        return match[0]
    return f'<h1 id="top"{match[2]}>{match[3]}</h1>'


def _headings(html: str) -> list[Any]:
    """Headings 1 and 2 and hold points that can be linked to, in the order of the page."""
    found = [(m.start(), int(m[1]), m[2], m[3]) for m in HEADING.finditer(html) if m[1] != "3"]
    found += [(m.start(), 2, m["id"], m["text"]) for m in HOLD.finditer(html)]
    tokens: list[dict[str, Any]] = []
    for _, level, attributes, inner in sorted(found):
        name = " ".join(TAG.sub(" ", NUMBER_OF_PHASE.sub("", inner)).split())
        anchor = ID.search(attributes)
        if not anchor:
            continue
        token = {"level": level, "id": anchor[1], "name": name, "children": []}
        if level == 2 and tokens and tokens[0]["level"] == 1:
            tokens[0]["children"].append(token)
        else:
            tokens.append(token)
    return tokens


# ------------------------------------------------------------------------ what find knows

def on_post_build(config: MkDocsConfig, **_: Any) -> None:
    """Write the index that find looks through."""
    try:
        text = find_index.written([_source(record) for record in SITE.records])
    except ValueError as error:
        raise PluginError(f"scripts/data/{error}") from error
    place = Path(config["site_dir"]) / "assets" / "find.json"
    place.write_text(text, encoding="utf-8")


def _source(record: Record) -> find_index.Source:
    uri = record.file.src_uri
    markdown, _ = get_data(record.file.content_string)
    slug = uri.removesuffix(".md").removesuffix("/index")
    return find_index.Source(
        slug, record.kind, record.title, "" if record.file.url == "./" else record.file.url,
        phase(record.phase).title if record.phase else "", record.meta, markdown,
        SITE.contents.get(uri, ""))
