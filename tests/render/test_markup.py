"""One place escapes every text, and what the site's policy forbids cannot be written."""

from __future__ import annotations

import pytest

from downflow.markup import Markup, escape, tag, together

HOSTILE = '"><script>alert(1)</script>\'&<b onclick="x">'


def test_a_text_is_never_markup() -> None:
    html = tag("p", HOSTILE, title=HOSTILE)
    assert "<script" not in html
    assert html.count("<") == 2


def test_escaping_can_be_read_back() -> None:
    from html import unescape
    assert unescape(escape(HOSTILE)) == HOSTILE


def test_markup_is_not_escaped_twice() -> None:
    assert tag("p", tag("b", "5 < 6")) == "<p><b>5 &lt; 6</b></p>"
    assert together(tag("b", "a"), "<", None, [["x"]]) == "<b>a</b>&lt;x"


def test_attributes_are_written_as_html_has_them() -> None:
    assert tag("input", type="text", hidden=True, checked=False, aria_label="a b", for_="c") == \
        '<input type="text" hidden aria-label="a b" for="c">'


@pytest.mark.parametrize("bad", [{"style": "color:red"}, {"onclick": "x()"}, {"onload": "x"}])
def test_inline_style_and_handlers_are_refused(bad: dict[str, str]) -> None:
    with pytest.raises(ValueError, match="may not stand in a page"):
        tag("p", "x", **bad)


def test_an_empty_element_takes_no_children() -> None:
    with pytest.raises(ValueError, match="no children"):
        tag("input", "x")


def test_only_what_tag_made_counts_as_markup() -> None:
    assert isinstance(tag("p"), Markup)
    assert not isinstance("<p></p>", Markup)
