"""Job sheet, plan, first answer, blank sheet, tables, and numbers in prose."""

from __future__ import annotations

import dataclasses

import pytest
from render.pages import HOSTILE, read, seeded_job, whole

from downflow import render
from downflow.demo import demo_job
from downflow.facts import WHERE, all_facts
from downflow.facts.job import Entry, Job
from downflow.plan import plan
from downflow.render.first import MOST_FACTS, first_facts
from downflow.render.sheet import survey_facts


def test_the_sheet_shows_every_fact_where_one_stands_to_read_it() -> None:
    tree = whole(render.sheet_html(demo_job()))
    shown = [str(n.attributes["data-edit"]) for n in tree.with_attribute("data-edit")]
    wanted = [f.name for where in WHERE for f in survey_facts(where)]
    assert shown == wanted
    assert set(shown) == {f.name for f in all_facts().values()
                          if (not f.given or f.enterable) and f.by_hand}


def test_the_sheet_says_where_each_value_comes_from() -> None:
    job = Job("a", "Mine", {"hp_cutout_f": Entry(-10.0, "data sheet", "", "page 3")})
    line = next(n for n in read(render.sheet_html(job)).all()
                if n.attributes.get("id") == "fact-hp_cutout_f")
    assert line.find("df-from-sheet")
    assert "data sheet · page 3" in line.text()


def test_a_fact_that_nobody_knows_reads_add_and_an_assumed_one_is_dotted() -> None:
    tree = read(render.sheet_html(Job("a", "Mine")))
    lines = {str(n.attributes["id"])[5:]: n for n in tree.all()
             if str(n.attributes.get("id", "")).startswith("fact-")}
    assert "add" in lines["hp_cutout_f"].text()
    assert lines["indoor_design_f"].find("df-from-assumed")


@pytest.mark.parametrize("system", ["ip", "si"])
def test_every_fact_opens_in_its_place(system: str) -> None:
    for fact in all_facts().values():
        if not fact.given or fact.enterable:
            for job in (None, demo_job(), Job("a", "Mine")):
                tree = whole(render.fact_html(fact.name, job, system))
                assert tree.with_attribute("data-close")


def test_measure_first_names_what_most_answers_wait_for() -> None:
    made = plan(Job("a", "Mine"), ranged=False)
    waiting = made.missing()
    tree = read(render.measure_first_html(made, "ip"))
    first = str(tree.with_attribute("data-open")[0].attributes["data-open"])
    assert len(waiting[first]) == max(len(ids) for name, ids in waiting.items()
                                      if not all_facts()[name].given or all_facts()[name].enterable)


def test_the_plan_shows_every_verdict_worst_first_and_every_answer() -> None:
    for job in (demo_job(), seeded_job(5)):
        made = plan(job)
        tree = whole(render.plan_html(made, "ip"))
        shown = [str(n.attributes["data-verdict"]) for n in tree.with_attribute("data-verdict")]
        assert len(shown) == len(made.verdicts())
        levels = [str(n.attributes["data-level"]) for n in tree.with_attribute("data-level")]
        assert levels == sorted(levels, key=["hold", "look", "sign", "fine"].index)
        text = tree.text()
        for answer in made.answers.values():
            if answer.ok:
                assert answer.calculator.title in text


def test_a_plan_without_ranges_calls_nothing_with_a_limit_fine() -> None:
    made = plan(demo_job(), ranged=False)
    reply = render.summary_reply(demo_job(), ranged=False)
    limited = sum(v.value is not None and (v.level == "fine" or v.to_sign)
                  for _, v in made.verdicts())
    assert reply["counts"]["pending"] == limited


def test_each_licensed_person_signs_the_plan_once() -> None:
    made = plan(demo_job())
    tree = whole(render.plan_html(made, "ip"))
    trades = {v.signs for _, v in made.verdicts() if v.to_sign}
    assert len(trades) >= 3
    assert len(tree.find("df-blank")) == len(trades)
    assert len(tree.find("df-sign")) == len(trades)
    for who in trades:
        assert who[:1].upper() + who[1:] in tree.text()


def test_start_page_plan_and_shell_count_alike() -> None:
    made = plan(demo_job())
    number = render.summary_reply(demo_job())["counts"]
    assert {k: number[k] for k in ("hold", "look", "sign", "fine")} == made.counts()
    said = (f"{number['hold']} hold, {number['look']} look, {number['sign']} to be signed, "
            f"{number['fine']} fine.")
    assert said in whole(render.plan_html(made, "ip")).text()


def test_what_is_fine_lies_folded() -> None:
    html = str(render.plan_html(plan(demo_job()), "ip"))
    before, _, after = html.partition("<details")
    assert 'data-level="fine"' not in before
    assert 'data-level="fine"' in after.partition("</details>")[0]


def test_the_plan_names_what_is_missing_and_for_which_answers() -> None:
    made = plan(Job("a", "Mine"), ranged=False)
    text = read(render.plan_html(made, "ip")).text()
    for name in made.missing():
        assert all_facts()[name].label in text


def test_hostile_text_stays_text_on_sheet_and_plan() -> None:
    job = dataclasses.replace(demo_job().with_entry(
        "place_name", Entry(HOSTILE, "measured", "", HOSTILE)), name=HOSTILE)
    for html in (render.sheet_html(job), render.plan_html(plan(job, ranged=False))):
        assert "<script" not in html
        whole(html)


def test_a_first_answer_asks_for_a_dozen_facts_at_most() -> None:
    assert 4 <= len(first_facts()) <= MOST_FACTS
    tree = whole(render.first_answer_html())
    asked = {n.attributes["data-fact"] for n in tree.with_attribute("data-fact")}
    assert asked == {f.name for f in first_facts()}
    assert tree.find("df-value"), "the example's first facts bring an answer"


def test_the_blank_sheet_has_a_blank_for_every_fact_of_a_survey() -> None:
    tree = whole(render.blank_sheet_html())
    text = tree.text()
    for fact in all_facts().values():
        if not fact.given and fact.by_hand:
            assert fact.label in text, fact.name
    hazards = {f.hazard.text for f in all_facts().values() if f.hazard and not f.given}
    assert all(h in text for h in hazards)


def test_every_table_is_painted_with_its_source() -> None:
    for name in render.table_names():
        tree = whole(render.table_html(name))
        assert tree.find("df-small")[0].text().strip(), name
    with pytest.raises(ValueError, match="no table is called"):
        render.table_html("no-such-table")


@pytest.mark.parametrize(("value", "unit", "ip", "si"), [
    ("6200", "ft", "6,200 ft", "1,890 m"), ("25..35", "°F", "25 to 35 °F", "−4 to 2 °C"),
    ("20", "°F diff", "20 °F", "11 °C"), ("4", "in", "4 in", "102 mm")])
def test_a_number_in_prose_stands_in_both_systems(value: str, unit: str, ip: str,
                                                  si: str) -> None:
    node = read(render.quantity_html(value, unit)).find("df-q")[0]
    assert node.attributes["data-ip"] == ip.replace(" " + ip.split()[-1], "\u00a0" + ip.split()[-1])
    assert str(node.attributes["data-si"]).replace("\u00a0", " ") == si


@pytest.mark.parametrize(("value", "unit"), [("x", "ft"), ("1", "furlong"), ("1..2..3", "ft")])
def test_a_number_that_is_none_stops_the_build(value: str, unit: str) -> None:
    with pytest.raises(ValueError, match=r"number|unit"):
        render.quantity_html(value, unit)


def test_the_evidence_says_which_values_count() -> None:
    rows = [{"id": "a", "calculator": "heat-pump-match", "printed": "0.0907", "unit": "Btu",
             "relative": 0.005, "document": HOSTILE, "section": "1", "how": "read", "edge": True,
             "note": "as printed"},
            {"id": "b", "calculator": "physics", "printed": "1.08", "unit": "", "absolute": 0.01,
             "document": "The trade", "section": "", "how": "common practice", "note": ""}]
    html = render.evidence_html(rows)
    assert "<script" not in html
    text = whole(html).text()
    assert "1 values from 1 documents" in text
    assert "0.5 %" in text
    assert "at an edge" in text
    assert "common practice" in text
