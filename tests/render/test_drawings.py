"""Every drawing of the handbook: readable on a phone, and the same in words."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from downflow.drawing import WIDTH, text_width
from downflow.render.drawings import drawings

NAMES = sorted(drawings())
CLASSES = frozenset(("a", "af", "ao", "b", "c", "d", "e", "fur", "g", "h", "halo", "i", "if", "m",
                     "n", "o", "of", "pl", "plo", "ret", "t", "w", "x"))
"""Classes of the drawing language."""
SVG = re.compile(r"<svg .*?</svg>", re.S)
LEGEND = re.compile(r'<ol class="df-legend">(.*?)</ol>', re.S)


def svg(name: str) -> ET.Element:
    found = SVG.search(str(drawings()[name]()))
    assert found, name
    return ET.fromstring(found[0])


def test_there_are_enough_for_every_procedure() -> None:
    assert len(NAMES) >= 30


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_is_portrait_or_square_and_one_phone_wide(name: str) -> None:
    _, _, width, height = (float(n) for n in svg(name).attrib["viewBox"].split())
    assert width == WIDTH
    assert height <= 600


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_says_in_words_what_it_shows(name: str) -> None:
    drawing = svg(name)
    title, desc = drawing.findtext("title"), drawing.findtext("desc")
    assert title and 10 <= len(title) <= 90
    assert desc and len(desc.split()) >= 10
    assert drawing.attrib["role"] == "img"
    ids = drawing.attrib["aria-labelledby"].split()
    assert ids == [e.attrib["id"] for e in drawing if e.tag in ("title", "desc")]


@pytest.mark.parametrize("name", NAMES)
def test_each_balloon_has_its_words_below_and_there_are_at_most_nine(name: str) -> None:
    balloons = [int(t.text or 0) for t in svg(name).iter("text") if t.attrib.get("class") == "n"]
    legend = LEGEND.search(str(drawings()[name]()))
    words = len(re.findall("<li>", legend[1])) if legend else 0
    assert sorted(set(balloons)) == list(range(1, words + 1))
    assert words <= 9


@pytest.mark.parametrize("name", NAMES)
def test_lettering_stays_within_the_drawing(name: str) -> None:
    for text in svg(name).iter("text"):
        if "transform" in text.attrib:
            continue
        x, wide = float(text.attrib["x"]), text_width("".join(text.itertext()))
        css = text.attrib.get("class", "").split()
        left = x - wide if "e" in css else x - wide / 2 if "m" in css else x
        if "n" in css:
            continue
        assert left >= -6, "".join(text.itertext())
        assert left + wide <= WIDTH + 6, "".join(text.itertext())


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_has_classes_only(name: str) -> None:
    known = CLASSES
    for element in svg(name).iter():
        assert "style" not in element.attrib
        assert set(element.attrib.get("class", "").split()) <= known, element.attrib
