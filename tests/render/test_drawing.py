"""The drawing kit: classes only, tenths of a unit, every fact of the picture in words."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from render.pages import Node, read

from downflow.drawing import (
    Drawing,
    Limit,
    Line,
    Mark,
    at,
    bars,
    chart,
    nice_step,
    now_then,
    rule,
    strip,
)

NUMBER = re.compile(r"-?\d+\.\d+")


def drawn(html: str) -> Node:
    """A drawing's tree, with what every drawing promises checked."""
    tree = read(html)
    svg = next(n for n in tree.all() if n.name == "svg")
    assert svg.attributes["role"] == "img"
    ids = {n.attributes["id"] for n in tree.all() if "id" in n.attributes}
    assert set(str(svg.attributes["aria-labelledby"]).split()) <= ids
    for node in tree.all():
        assert "style" not in node.attributes
        for name in ("d", "x", "y", "cx", "cy", "r", "width", "height", "points", "viewbox"):
            for found in NUMBER.findall(node.attributes.get(name) or ""):
                if node.name not in ("pattern",) and "pl" not in str(node.attributes.get("class")):
                    assert len(found.partition(".")[2]) == 1, (node.name, found)
        fill = node.attributes.get("fill") or ""
        if fill.startswith("url(#"):
            assert fill[5:-1] in ids
    return tree


@pytest.mark.parametrize(("value", "text"),
                         [(1.0, "1"), (-0.04, "0"), (12.34, "12.3"), (-2.5, "-2.5")])
def test_a_coordinate_has_a_tenth_at_most(value: float, text: str) -> None:
    assert at(value) == text


@given(st.floats(1e-6, 1e9), st.integers(2, 8))
def test_a_step_is_one_two_or_five_and_cuts_no_finer_than_asked(span: float, most: int) -> None:
    step = nice_step(span, most)
    assert span / step <= most + 1e-6
    mantissa = step / 10.0 ** __import__("math").floor(__import__("math").log10(step) + 1e-9)
    assert min(abs(mantissa - m) for m in (1, 2, 5, 10)) < 1e-6


def test_the_rule_hatches_what_lies_beyond_the_limit_and_only_that() -> None:
    svg = drawn(rule("a", "Airflow", 826, "scfm", low=774, high=879,
                     limits=[Limit(790, "least")], decimals=0).figure())
    hatched = [n for n in svg.all() if str(n.attributes.get("fill", "")).startswith("url")]
    bar = next(n for n in svg.all() if n.name == "rect" and n.attributes.get("class") == "if")
    assert len(hatched) == 1
    assert hatched[0].attributes["x"] == bar.attributes["x"]
    assert float(str(hatched[0].attributes["width"])) < float(str(bar.attributes["width"])) / 2
    clear = drawn(rule("b", "Airflow", 826, "scfm", low=800, high=850,
                       limits=[Limit(790, "least")]).figure())
    assert not [n for n in clear.all() if str(n.attributes.get("fill", "")).startswith("url")]


@pytest.mark.parametrize("system", ["ip", "si"])
def test_the_words_of_a_rule_carry_its_numbers(system: str) -> None:
    svg = drawn(rule("a", "Airflow", 826, "scfm", low=774, high=879, limits=[Limit(790, "least")],
                     decimals=0, system=system).svg())
    desc = next(n for n in svg.all() if n.name == "desc").text()
    for number in ({"ip": ("826", "774", "879", "790"),
                    "si": ("390", "365", "415", "373")})[system]:
        assert number in desc


@given(value=st.floats(-1e6, 1e6), wide=st.floats(0, 1e5), limit=st.floats(-1e6, 1e6))
def test_a_rule_can_be_drawn_for_any_number(value: float, wide: float, limit: float) -> None:
    svg = drawn(rule("a", "X", value, "Btu/h", low=value - wide, high=value + wide,
                     limits=[Limit(limit, "most"), Limit(limit - 1, "least")]).svg())
    for node in svg.all():
        if node.name == "rect" and node.attributes.get("class") in ("if", "i", "x"):
            x, w = float(str(node.attributes["x"])), float(str(node.attributes["width"]))
            assert x >= -1
            assert x + w <= 341


def test_shares_stand_largest_first_with_their_numbers() -> None:
    svg = drawn(bars("a", "Heat loss", [("walls", 3900), ("windows", 6500), ("doors", 1300)],
                     "Btu/h").figure())
    texts = [n.text() for n in svg.all() if n.name == "text"]
    assert texts.index("windows") < texts.index("walls") < texts.index("doors")
    desc = next(n for n in svg.all() if n.name == "desc").text()
    assert "windows 6,500, walls 3,900, doors 1,300" in desc


def test_a_share_below_zero_is_a_fault_of_the_caller() -> None:
    with pytest.raises(ValueError, match="zero or more"):
        bars("a", "b", [("x", -1.0)], "Btu/h")


@pytest.mark.parametrize("system", ["ip", "si"])
def test_the_lines_of_a_chart_are_labelled_apart(system: str) -> None:
    svg = drawn(chart(
        "a", "Load and capacity", "Words.", x=("outside", "°F"), y=("heat", "Btu/h"),
        lines=[Line("home", [(-20, 33000), (60, 0)]),
               Line("heat pump", [(-13, 19800), (5, 27900), (47, 36000)], "air"),
               Line("kit", [(-20, 32800), (60, 32800)], "old")],
        mark=Mark(5, [(25100, "25,100"), (27900, "27,900")]), system=system).figure())
    labels = {n.text(): (float(str(n.attributes["x"])), float(str(n.attributes["y"])))
              for n in svg.all() if n.name == "text" and n.text() in ("home", "heat pump", "kit")}
    assert len(labels) == 3
    places = list(labels.values())
    for i, a in enumerate(places):
        for b in places[i + 1:]:
            assert abs(a[0] - b[0]) > 30 or abs(a[1] - b[1]) > 15


def test_hostile_labels_are_text() -> None:
    bad = '"><script>x</script>'
    html = chart(bad, bad, bad, x=(bad, "°F"), y=(bad, "Btu/h"),
                 lines=[Line(bad, [(0, 1), (1, 2)])], mark=Mark(0.5, [(1.5, bad)])).figure(bad)
    assert "<script" not in html
    drawn(html)


def test_two_ranges_share_one_scale() -> None:
    svg = drawn(now_then("a", "t", "d", "scfm", now=(774, 879), then=(802, 850), now_text="now",
                         then_text="then", limits=[Limit(790, "least")]).figure())
    wide, narrow = [n for n in svg.all() if n.name == "rect" and n.attributes.get("class") == "if"]
    ratio = float(str(narrow.attributes["width"])) / float(str(wide.attributes["width"]))
    assert ratio == pytest.approx(48 / 105, rel=0.02)


def test_a_strip_has_one_piece_for_each_fact_and_counts_them_in_words() -> None:
    node = read(strip(["measured", "measured", "", "assumed"])).children[0]
    assert isinstance(node, Node)
    assert node.attributes["aria-label"] == "2 measured, 1 assumed, 1 missing"
    assert len(node.children) == 4


def test_two_drawings_on_a_page_share_no_id() -> None:
    pages = [d.hatch(0, 0, 10, 10).svg() for d in (Drawing("one", "t", "d", 20),
                                                   Drawing("two", "t", "d", 20))]
    ids = [n.attributes["id"] for html in pages for n in read(html).all() if "id" in n.attributes]
    assert len(ids) == len(set(ids)) == 6
