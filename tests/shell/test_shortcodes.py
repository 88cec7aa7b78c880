"""Pages as the site's builder makes them: lists, shortcodes, and what stops a build."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import find_index
import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

from downflow.phases import PHASES

ROOT = Path(__file__).resolve().parents[2]
Make = Callable[[dict[str, str]], Path]


def page(title: str, body: str = "", **meta: str) -> str:
    front = "".join(f"{key}: {value}\n" for key, value in {"title": title, **meta}.items())
    return f"---\n{front}---\n\n# {title}\n\n{body}\n"


@pytest.fixture
def make(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Make:
    """Build a small handbook with the real theme, look and hook.

    What people call the pages speaks of the whole handbook: a small one has no use for it.
    """
    words = tmp_path / "words.json"
    words.write_text('{"same": {}, "pages": {}}', "utf-8")
    monkeypatch.setattr(find_index, "WORDS", words)
    def work(pages: dict[str, str]) -> Path:
        docs = tmp_path / "docs"
        for name, text in {"index.md": page("Start"), **pages}.items():
            (docs / name).parent.mkdir(parents=True, exist_ok=True)
            (docs / name).write_text(text, "utf-8")
        out = tmp_path / "site"
        build(load_config(config_file=str(ROOT / "mkdocs.yml"), docs_dir=str(docs),
                          site_dir=str(out), strict=False))
        return out
    return work


def refusal(make: Make, pages: dict[str, str], caplog: pytest.LogCaptureFixture) -> str:
    """What the builder says when it stops."""
    with pytest.raises((Abort, SystemExit, Exception)) as stopped:
        make(pages)
    return caplog.text + str(stopped.value)


@pytest.mark.parametrize(("shortcode", "said"), [
    ("{{ calculatr heat-loss }}", "no shortcode 'calculatr'"),
    ("{{ calculator no-such-thing }}", "no-such-thing"),
    ("{{ calculator }}", "calculator takes 1 to 1 words"),
    ("{{ q 6200 furlongs }}", "furlongs"),
    ("{{ procedures lunch }}", "no phase 'lunch'"),
])
def test_a_shortcode_that_names_nothing_stops_the_build_with_file_and_line(
        make: Make, caplog: pytest.LogCaptureFixture, shortcode: str, said: str) -> None:
    text = refusal(make, {"odd.md": page("Odd", f"One.\n\nTwo {shortcode} three.")}, caplog)
    assert "docs/odd.md:9: " in text
    assert said in text


def test_a_shortcode_in_code_is_left_alone(make: Make) -> None:
    site = make({"how.md": page("How", "`{{ nothing }}`\n\n```\n{{ nothing at all }}\n```")})
    text = (site / "how" / "index.html").read_text("utf-8")
    assert "{{ nothing }}" in text
    assert "{{ nothing at all }}" in text


def test_a_calculator_is_not_wrapped_in_a_paragraph(make: Make) -> None:
    site = make({"calculators/backup-kit.md": page(
        "Kit", "Before.\n\n{{ calculator backup-kit }}\n\nAfter.",
        phase="prove", calculator="backup-kit")})
    text = (site / "calculators" / "backup-kit" / "index.html").read_text("utf-8")
    assert re.search(r"<p>Before\.</p>\s*<df-calculator\b", text)
    assert re.search(r"</df-calculator>\s*<p>After\.</p>", text)


def test_a_number_in_a_sentence_stands_in_both_systems(make: Make) -> None:
    site = make({"high.md": page("High", "At {{ q 6200 ft }} the air is thin.")})
    text = (site / "high" / "index.html").read_text("utf-8")
    assert re.search(r'<p>At <span class="df-q"[^>]*>6,200\s*ft \(1,890\s*m\)</span> the air', text)


def test_pages_come_under_their_phases_in_the_order_of_the_job(make: Make) -> None:
    pages = {f"procedures/{p.id}-{n}.md": page(f"{p.title} {n}", phase=p.id)
             for p in reversed(PHASES) for n in (2, 1)}
    site = make({**pages, "by-phase.md": page("By phase", "{{ phases }}")})
    text = (site / "by-phase" / "index.html").read_text("utf-8")
    shown = re.findall(r'<a class="df-item" href="([^"]+)"', text)
    assert shown == [f"../procedures/{p.id}-{n}/" for p in PHASES for n in (1, 2)]
    assert re.findall(r'<h2 id="([^"]+)" class="st-h"', text) == [p.id for p in PHASES]


def test_a_title_with_signs_of_markup_is_text(make: Make) -> None:
    site = make({"calculators/odd.md": page("Odd", phase="air").replace(
        "title: Odd", 'title: "<b>5 & 6"'), "all.md": page("All", "{{ calculators air }}")})
    text = (site / "all" / "index.html").read_text("utf-8")
    assert "<b>&lt;b&gt;5 &amp; 6</b>" in text


@pytest.mark.parametrize(("front", "said"), [
    ({"phase": "lunch"}, "no phase 'lunch'"),
    ({}, "names its phase"),
])
def test_a_procedure_without_a_known_phase_stops_the_build(
        make: Make, caplog: pytest.LogCaptureFixture, front: dict[str, str], said: str) -> None:
    text = refusal(make, {"procedures/lost.md": page("Lost", **front)}, caplog)
    assert "docs/procedures/lost.md:1: " in text
    assert said in text


def test_a_column_set_right_needs_no_inline_style(make: Make) -> None:
    site = make({"t.md": page("T", "| size | cfm |\n| --- | ---: |\n| 6 in | 85 |")})
    text = (site / "t" / "index.html").read_text("utf-8")
    assert '<td class="n">85</td>' in text
    assert 'class="df-scroll" tabindex="0"' in text
    assert "style=" not in text


def test_every_page_carries_frame_mark_and_name_for_find(make: Make) -> None:
    site = make({"job-sheet.md": page("Job sheet"), "plan.md": page("Plan")})
    for path in site.rglob("*.html"):
        text = path.read_text("utf-8")
        assert 'role="dialog" aria-label="Find"' in text
        assert re.search(r'<section class="df-job" aria-label="Job">', text)
        assert text.count('data-df="find"') == 2
        bar = text[text.index('class="df-bar"'):]
        assert [w for w in ("Start", "Job sheet", "Plan", "Find") if f">{w}</a>" in bar] == [
            "Start", "Job sheet", "Plan", "Find"]


def test_a_bar_names_only_pages_that_are_there(make: Make) -> None:
    site = make({})
    text = (site / "index.html").read_text("utf-8")
    bar = text[text.index('class="df-bar"'):]
    assert ">Start</a>" in bar
    assert ">Plan</a>" not in bar


def test_what_the_theme_brings_for_others_is_not_shipped(make: Make) -> None:
    names = [path.as_posix() for path in make({}).rglob("*")]
    assert any("/assets/javascripts/bundle." in name for name in names)
    assert not [n for n in names if n.endswith((".map", "favicon.png")) or "/lunr/" in n]
