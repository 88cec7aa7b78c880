"""Makes the homeowner page and the general pages from the words, the slots and two drawings.

    python scripts/homeowner_page/page.py        writes docs/h/index.html, docs/homeowner/*.md
    python scripts/homeowner_page/page.py check  says whether they are as they should be

The page stands outside the theme: one file, two languages, no address of its own data.
"""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Iterable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "scripts"))
sys.path.insert(0, str(ROOT / "calc" / "src"))

from downflow import homeowner as link  # noqa: E402
from downflow.homeowner import TONGUES, holds, say, split  # noqa: E402
from downflow.markup import Markup, escape, tag, together  # noqa: E402
from homeowner_page import words  # noqa: E402
from homeowner_page.words import Block, Both, Item, Section  # noqa: E402

PAGE = ROOT / "docs" / "h" / "index.html"
SHARED = ROOT / "calc" / "src" / "downflow" / "data" / "homeowner_statements.json"
GENERAL = {"en": ROOT / "docs" / "homeowner" / "index.md",
           "es": ROOT / "docs" / "homeowner" / "espanol.md"}
POLICY = ("default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
          "base-uri 'none'; form-action 'none'")

_BRACKET = re.compile(r"\[([^\[\]]*)\]")
_SLOT = re.compile(r"\{([a-z_]+)\}")
_BOLD = re.compile(r"\*\*([^*]+)\*\*")


# ---- as text: the general pages, and what the tests read ----------------------------------

def sentences(tongue: str, slots: dict[str, str] | None = None) -> list[tuple[str, str]]:
    """Every statement of the page in one language, by its name: what applies, filled in."""
    have = slots or {}
    out: list[tuple[str, str]] = []

    def add(name: str, text: Both, when: str) -> None:
        if not when or holds(when, have):
            said = say(text._asdict()[tongue], have, tongue)
            if said:
                out.append((name, said))

    for section in words.SECTIONS:
        if section.when and not holds(section.when, have):
            continue
        for block in section.blocks:
            if block.when and not holds(block.when, have):
                continue
            if block.text.en:
                add(block.id, block.text, "")
            for one in block.items:
                add(one.id, one.text, one.when)
    return out


# ---- as markup ------------------------------------------------------------------------------

def _bold(text: str) -> Markup:
    parts: list[Markup] = []
    at = 0
    for match in _BOLD.finditer(text):
        parts += [_filled(text[at:match.start()]), tag("b", _filled(match.group(1)))]
        at = match.end()
    return together(*parts, _filled(text[at:]))


def _filled(text: str) -> Markup:
    parts: list[Markup | str] = []
    at = 0
    for match in _SLOT.finditer(text):
        if match.group(1) not in link.NAMES:
            raise ValueError(f"{match.group()} is no slot")
        parts += [text[at:match.start()], tag("span", data_slot=match.group(1))]
        at = match.end()
    return together(*parts, text[at:])


def inline(text: str) -> Markup:
    """A text as markup; what needs a slot is hidden until the link brings it."""
    # Bold may hold a bracket, and a bracket may hold bold: brackets are cut out first.
    parts: list[Markup] = []
    at = 0
    for match in _BRACKET.finditer(text):
        parts.append(_bold(text[at:match.start()]))
        condition, yes, no = split(match.group(1))
        first = holds(condition, {})
        parts.append(tag("span", _bold(yes), data_if=condition, hidden=not first))
        if no:
            parts.append(tag("span", _bold(no), data_else=condition, hidden=first))
        at = match.end()
    return together(*parts, _bold(text[at:]))


def _both(element: str, text: Both, **attributes: str | bool | None) -> Markup:
    return together(*(tag(element, inline(text._asdict()[t]), lang=t, **attributes)
                      for t in TONGUES))


def _shut(when: str) -> dict[str, str | bool | None]:
    return {"data_if": when or None, "hidden": bool(when) and not holds(when, {})}


_MARK = {
    "hold": "M7.3 .8h9.4L23.2 7.3v9.4l-6.5 6.5H7.3L.8 16.7V7.3ZM5 9.8v4.4h14V9.8Z",
    "look": "M12 .5 23.5 12 12 23.5.5 12ZM12 3.9 3.9 12h16.2Z",
    "fine": "M12 1.5A10.5 10.5 0 1 0 12 22.5A10.5 10.5 0 1 0 12 1.5ZM12 4.1A7.9 7.9 0 1 1 12 "
            "19.9A7.9 7.9 0 1 1 12 4.1Z",
}


def _mark(level: str) -> Markup:
    return tag("svg", tag("use", href=f"#m-{level}"), viewBox="0 0 24 24", aria_hidden="true")


def _marks() -> Markup:
    """The three marks, drawn once."""
    return tag("svg", [tag("path", id=f"m-{level}", d=d, fill="currentColor", fill_rule="evenodd")
                       for level, d in _MARK.items()], width="0", height="0", aria_hidden="true",
               class_="alt")


def _items(block: Block, element: str, css: str) -> Markup:
    return tag(element, [_both("li", one.text, **_shut(one.when)) for one in block.items],
               class_=css)


def _words(block: Block) -> Markup:
    rows: list[Markup] = []
    for one in block.items:
        rows.append(tag("div", _both("dt", one.term), _both("dd", one.text),
                        **_shut(one.when)))
    return tag("dl", rows)


def _calls(block: Block) -> Markup:
    return tag("ul", [tag("li", _mark(one.level), _both("span", one.text), class_=one.level,
                          **_shut(one.when)) for one in block.items],
               class_="calls")


def _figure(block: Block) -> Markup:
    drawing = SYSTEM_DRAWING if block.id == "system" else chart_drawing()
    below = [_both("p", block.text, class_="alt")]
    if block.items:
        below.append(tag("ol", [tag("li", tag("b", str(n)), _both("span", one.text))
                                for n, one in enumerate(block.items, 1)], class_="legend"))
    if block.id == "chart":
        below.append(_key())
    return tag("figure", drawing, tag("figcaption", below), **_shut(block.when))


def _key() -> Markup:
    """Which line is which, in words beside a piece of each."""
    def row(name: str, sample: Markup, css: str) -> Markup:
        piece = tag("svg", sample, viewBox="0 0 44 16", aria_hidden="true")
        return tag("li", piece, _both("span", words.CHART_WORDS[name]), class_=css or None)

    return tag("ul",
               row("pump", tag("path", class_="a", d="M0 8H44"), ""),
               row("furnace", tag("path", class_="old", d="M0 8H44"), "c-furnace"),
               row("backup", tag("rect", x="0", y="0", width="44", height="16", fill="url(#ho)"),
                   "c-backup"),
               class_="key")


def _block(block: Block) -> Markup:
    if block.kind == "p":
        said = _both("p", block.text)
        return tag("div", said, **_shut(block.when)) if block.when else said
    if block.kind == "big":
        return tag("div", _both("p", block.text, class_="big"), **_shut(block.when))
    if block.kind == "list":
        return _items(block, "ul", "plain")
    if block.kind == "steps":
        return _items(block, "ol", "steps")
    if block.kind == "words":
        return _words(block)
    if block.kind == "calls":
        return _calls(block)
    if block.kind == "figure":
        return _figure(block)
    if block.kind == "buttons":
        return tag("div", tag("button", _both("span", words.CALENDAR), type="button",
                              class_="button", data_do="calendar"), **_shut(block.when))
    raise ValueError(f"{block.kind} is no kind of block")


def _section(section: Section) -> Markup:
    # Only where the page itself leads to is there an anchor.
    led_to = section.id == "call"
    return tag("section", tag("h2", _both("span", section.title),
                              id=section.id if led_to else None,
                              tabindex="-1" if led_to else None),
               [_block(b) for b in section.blocks], **_shut(section.when))


SYSTEM_DRAWING = Markup(
    '<svg viewBox="0 50 340 270" aria-hidden="true"><defs>'
    '<pattern id="hx" width="8" height="8" patternUnits="userSpaceOnUse">'
    '<path class="pl" d="M-2 2 2-2M0 8 8 0M6 10 10 6"></path></pattern>'
    '<pattern id="hd" width="7" height="7" patternUnits="userSpaceOnUse">'
    '<circle class="x" cx="3.5" cy="3.5" r="1.1"></circle></pattern></defs>'
    '<path class="o" d="M84 128 200 60 328 128M96 121V250M316 121V250M90 250H322M90 259H322'
    'M6 312H334"></path><rect x="90" y="250" width="232" height="9" fill="url(#hx)"></rect>'
    '<path class="i" d="M100 259V312M312 259V312"></path>'
    '<rect class="of" x="176" y="140" width="52" height="110"></rect>'
    '<rect x="184" y="148" width="36" height="12" fill="url(#hd)"></rect>'
    '<path class="i" d="M184 148h36v12h-36ZM186 222l5-7 6 12 6-12 6 12 6-12 4 7'
    'M194 259V268H112V288H304V268H210V259M124 268V250M138 268V250M276 268V250M290 268V250"></path>'
    '<circle class="i" cx="202" cy="186" r="13"></circle>'
    '<path class="a" d="M131 246V218M283 246V218"></path>'
    '<path class="af" d="M131 206l7 12h-14ZM283 206l7 12h-14Z"></path>'
    '<path class="ret" d="M128 168 160 159M278 168 244 159"></path>'
    '<path class="ao" d="M172 156l-9.6 9.9-3.7-13.5ZM232 156l13.3-3.8-3.6 13.6Z"></path>'
    '<rect class="of" x="14" y="206" width="58" height="66"></rect>'
    '<circle class="o" cx="43" cy="239" r="23"></circle>'
    '<circle class="x" cx="43" cy="239" r="4"></circle>'
    '<path class="pl" d="M43 216V262M20 239H66"></path>'
    '<path class="o" d="M20 272V312M66 272V312M20 292H66"></path>'
    '<path class="i" d="M72 226H96M72 234H96M246 106 212 152"></path>'
    '<path class="h" d="M96 230H176"></path>'
    '<rect class="if" x="240" y="196" width="16" height="22"></rect>'
    '<circle class="x" cx="212" cy="152" r="3"></circle>'
    + "".join(
        f'<circle class="if" cx="{x}" cy="{y}" r="12.5"></circle>'
        f'<text class="n" x="{x}" y="{y + 6}">{n}</text>'
        for n, x, y in ((1, 43, 188), (2, 202, 121), (3, 254, 98), (4, 248, 180), (5, 160, 278),
                        (6, 131, 192)))
    + "</svg>")


def _word(name: str, *more: Markup, **attributes: str) -> Markup:
    both = words.CHART_WORDS[name]
    return together(*(tag("text", both._asdict()[t], more, lang=t, **attributes)
                      for t in TONGUES))


def _ticks(temperatures_f: Iterable[tuple[float, str]], when: str) -> Markup:
    c = link.CHART
    parts = []
    for outdoor, label in temperatures_f:
        share = (outdoor - c["cold_f"]) / (c["warm_f"] - c["cold_f"])
        x = f"{c['left'] + share * (c['right'] - c['left']):.1f}".removesuffix(".0")
        parts += [tag("path", class_="i", d=f"M{x} 250v7"),
                  tag("text", label, class_="m", x=x, y="276")]
    return tag("g", parts, data_if=when, hidden=when != "units=i")


def chart_drawing() -> Markup:
    """Run time against outdoor temperature; the link's eight places move its lines."""
    return tag(
        "svg",
        tag("defs", tag("pattern", tag("path", class_="plo", d="M0 0 9 9M9 0 0 9"), id="ho",
                        width="9", height="9", patternUnits="userSpaceOnUse")),
        tag("path", class_="g", d="M44 200H328M44 150H328M44 100H328M44 50H328"),
        [tag("text", h, class_="e", x="36", y=str(y))
         for h, y in (("0", 256), ("6", 206), ("12", 156), ("18", 106), ("24", 56))],
        _ticks([(-10, "−10"), (10, "10"), (30, "30"), (50, "50")], "units=i"),
        _ticks([(-4, "−20"), (14, "−10"), (32, "0"), (50, "10")], "units=s"),
        tag("path", class_="o", d="M44 50V250H328"),
        tag("path", class_="c-backup", id="c-backup", fill="url(#ho)", d="M44 250Z"),
        tag("path", class_="old c-furnace", id="c-furnace", d="M44 250"),
        tag("path", class_="a", id="c-pump", d="M44 50"),
        tag("path", class_="d", id="c-mark", d="M44 50"),
        tag("circle", class_="if", id="c-pump-dot", cx="44", cy="50", r="5"),
        tag("circle", class_="if c-furnace", id="c-furnace-dot", cx="44", cy="250", r="5"),
        _word("hours", class_="b", x="44", y="22"),
        _word("outside", tag("tspan", ", °F", data_if="units=i", hidden=True),
              tag("tspan", ", °C", data_if="units=s", hidden=True), class_="e b", x="328",
              y="299"),
        tag("text", tag("tspan", data_slot="run_after"), " h", class_="b halo", id="c-pump-day",
            x="44", y="50", dx="9", dy="-9"),
        tag("text", tag("tspan", data_slot="run_before"), " h", class_="b halo c-furnace",
            id="c-furnace-day", x="44", y="250", dx="9", dy="-10"),
        viewBox="0 0 340 304", aria_hidden="true")


def page() -> str:
    """The whole file."""
    patterns = list(dict.fromkeys(slot.pattern for slot in link.SLOTS))
    told = {
        # A pattern that many slots share stands once.
        "patterns": patterns,
        "slots": [[name, kind, patterns.index(pattern), longest]
                  for name, kind, pattern, longest in link.table()],
        "months": {t: [m._asdict()[t] for m in words.MONTHS] for t in TONGUES},
        "words": {t: {"filter": words.FILTER_EVENT._asdict()[t],
                      "visit": words.VISIT_EVENT._asdict()[t]} for t in TONGUES},
    }
    data = json.dumps(told, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    head = [
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{escape(POLICY)}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="referrer" content="no-referrer">',
        '<meta name="robots" content="noindex">',
        f"<title>{words.TITLE.en} · {words.TITLE.es}</title>",
        '<link rel="icon" href="data:,">',
        '<link rel="stylesheet" href="page.css">',
        '<script type="module" src="page.js"></script>',
    ]
    switch = tag(
        "fieldset", tag("legend", "Language / Idioma"),
        tag("label", tag("input", type="radio", name="lang", id="len", checked=True),
            tag("span", "English", lang="en")),
        tag("label", tag("input", type="radio", name="lang", id="les"),
            tag("span", "Español", lang="es")), class_="switch")
    body = tag(
        "main", _marks(), switch,
        _both("p", words.YOUR_HOME, class_="small"),
        tag("h1", _both("span", words.TITLE)),
        tag("div", _both("p", words.BROKEN, class_="note"), data_fault="broken", hidden=True,
            role="alert"),
        tag("div", _both("p", words.NEWER, class_="note"), data_fault="newer", hidden=True,
            role="alert"),
        tag("div", _both("p", words.GENERAL, class_="small"), data_else="made"),
        tag("a", _both("span", words.WRONG), class_="button", href="#call", data_go="call"),
        [_section(s) for s in words.SECTIONS],
        tag("button", _both("span", words.PRINT), type="button", class_="button",
            data_do="print"),
        _both("p", words.MADE, class_="small"))
    return "\n".join(["<!doctype html>", '<html lang="en">', "<head>", *head, "</head>", "<body>",
                      body,
                      f'<script type="application/json" id="told">{data}</script>',
                      "</body>", "</html>", ""])


# ---- the general pages ----------------------------------------------------------------------

def general(tongue: str) -> str:
    """The same content as a page of the handbook, without a link: true for every home."""
    title = {"en": "For the homeowner", "es": "Para el dueño de la casa"}[tongue]
    summary = {"en": "A heat pump in plain words: what is normal, what to do, when to call.",
               "es": "La bomba de calor en palabras sencillas: lo normal, qué hacer, cuándo "
                     "llamar."}[tongue]
    other = {"en": "[En español](espanol.md)", "es": "[In English](index.md)"}[tongue]
    out = ["---", f"title: {title}", f'summary: "{summary}"', "---", "",
           f'<div lang="{tongue}" markdown>', "", f"# {words.TITLE._asdict()[tongue]}", "",
           other, ""]
    for section in words.SECTIONS:
        if section.when and not holds(section.when, {}):
            continue
        body = [text for block in section.blocks for text in _general_block(block, tongue)]
        if body:
            out += [f"## {section.title._asdict()[tongue]}", "", *body]
    out += ["</div>", ""]
    return "\n".join(out)


def _general_block(block: Block, tongue: str) -> list[str]:
    if block.when and not holds(block.when, {}):
        return []
    said: list[tuple[Item, str]] = [
        (one, say(one.text._asdict()[tongue], {}, tongue, bold=True)) for one in block.items
        if not one.when or holds(one.when, {})]
    if block.kind == "p":
        text = say(block.text._asdict()[tongue], {}, tongue, bold=True)
        return [text, ""] if text else []
    if block.kind in ("list", "calls"):
        return [*(f"- {text}" for _, text in said), ""]
    if block.kind in ("steps", "figure"):
        return [*(f"{n}. {text}" for n, (_, text) in enumerate(said, 1)), ""]
    if block.kind == "words":
        return [line for one, text in said
                for line in (f"**{one.term._asdict()[tongue]}**", f":   {text}", "")]
    return []


def shared() -> str:
    """The statements that the printed label and letter take from the page, as data."""
    found: dict[str, dict[str, str]] = {}
    for section in words.SECTIONS:
        for block in section.blocks:
            whens = [w for w in (section.when, block.when) if w]
            for name, text, when in ((block.id, block.text, ""),
                                     *((i.id, i.text, i.when) for i in block.items)):
                if name in words.SHARED and text.en:
                    found[name] = {"when": "&".join([*whens, *([when] if when else [])]),
                                   "en": text.en, "es": text.es}
    if set(found) != set(words.SHARED):
        raise ValueError(f"no such statement: {sorted(set(words.SHARED) - set(found))}")
    data = {"about": "Made by scripts/homeowner_page/page.py from its words. Do not edit.",
            "months": {t: [m._asdict()[t] for m in words.MONTHS] for t in TONGUES},
            "statements": {name: found[name] for name in words.SHARED}}
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


def files() -> dict[Path, str]:
    """Every file that is made here, with its text."""
    return {SHARED: shared(), PAGE: page(), **{path: general(t) for t, path in GENERAL.items()}}


def main(arguments: list[str]) -> int:
    """Writes the files, or with `check` says which are not as they should be."""
    stale = [path for path, text in files().items()
             if not path.exists() or path.read_text(encoding="utf-8") != text]
    if arguments == ["check"]:
        for path in stale:
            print(f"{path.relative_to(ROOT)} is not as the words and slots make it")
        return 1 if stale else 0
    for path, text in files().items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
