"""The design tokens: enough contrast for the sun, and one night, however it is chosen."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
ASSETS = ROOT / "docs" / "assets"
TOKENS = re.sub(r"/\*.*?\*/", "", (ASSETS / "tokens.css").read_text("utf-8"), flags=re.DOTALL)
NIGHT = '[data-md-color-scheme="night"] {'
NIGHT_BY_SYSTEM = ":root:not([data-md-color-scheme]) {"
PAPER = ':root, [data-md-color-scheme="paper"] {'


def block(start: str) -> dict[str, str]:
    """Declarations of the first rule that begins so."""
    at = TOKENS.index(start) + len(start)
    inside = TOKENS[at:TOKENS.index("}", at)]
    return dict(re.findall(r"(--[\w-]+|color-scheme):\s*(.+?);\s*(?=--|color-scheme|$)",
                           inside, re.DOTALL))


def luminance(colour: str) -> float:
    """Relative luminance of a #rrggbb colour. Source: WCAG 2.2, "relative luminance"."""
    parts = [int(colour[i:i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio. Source: WCAG 2.2, "contrast ratio"."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_contrast_of_black_on_white_is_the_published_21() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


@pytest.mark.parametrize("scheme", [PAPER, NIGHT])
@pytest.mark.parametrize(("text", "ground"), [
    ("--ink", "--paper"), ("--ink", "--sheet"), ("--ink-2", "--paper"), ("--ink-2", "--sheet"),
    ("--spruce", "--paper"), ("--spruce", "--sheet"), ("--oxide", "--paper"),
    ("--on-spruce", "--spruce"), ("--on-oxide", "--oxide"), ("--stale", "--paper"),
])
def test_text_reads_at_seven_to_one(scheme: str, text: str, ground: str) -> None:
    tokens = block(scheme)
    assert contrast(tokens[text], tokens[ground]) >= 7


@pytest.mark.parametrize("scheme", [PAPER, NIGHT])
def test_the_border_of_a_field_stands_out_three_to_one(scheme: str) -> None:
    tokens = block(scheme)
    assert contrast(tokens["--edge"], tokens["--paper"]) >= 3


def test_night_is_the_same_by_switch_and_by_system() -> None:
    assert block(NIGHT) == block(NIGHT_BY_SYSTEM)
    assert set(block(NIGHT)) == set(block(PAPER))


@pytest.mark.parametrize("name", ["look.css", "shell.css"])
def test_no_colour_stands_outside_the_tokens_but_black_in_print(name: str) -> None:
    text = (ASSETS / name).read_text("utf-8")
    screen = text[:text.index("@media print")]
    assert re.findall(r"#[0-9a-fA-F]{3,8}\b(?=[;\s,)])", screen) == []


@pytest.mark.parametrize("name", ["tokens.css", "look.css", "shell.css"])
def test_the_look_asks_nothing_from_elsewhere(name: str) -> None:
    text = (ASSETS / name).read_text("utf-8")
    asked = re.findall(r"url\(\s*[\"']?([^\"')]{0,40})", text)
    assert all(a.startswith(("fonts/", "data:image/svg+xml")) for a in asked), asked
    assert "@import" not in text


def test_the_font_travels_with_its_licence() -> None:
    assert "SIL OPEN FONT LICENSE" in (ASSETS / "fonts" / "OFL.txt").read_text("utf-8").upper()


def test_the_templates_hold_no_inline_script_style_or_handler() -> None:
    for path in (ROOT / "scripts" / "theme").rglob("*.html"):
        text = path.read_text("utf-8")
        assert not re.search(r"<style|\sstyle=|\son[a-z]+=|<script(?![^>]*\ssrc=)", text), path
