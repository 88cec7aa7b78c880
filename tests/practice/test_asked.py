"""Practice as the page asks for it: state as text, typed answers, one language for all errors."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from downflow.bridge import handle
from downflow.bridge_practice import OPS
from downflow.facts.job import read_job
from downflow.markup import escape
from downflow.practice import bench, desk, drills, grade, measures
from downflow.practice.homes import home
from downflow.practice.lessons import LESSONS
from downflow.practice.skills import SKILLS
from downflow.render import practice_html
from downflow.render.drawings import drawings
from downflow.units import convert, shown_unit

AT = "2026-03-31T10:00:00Z"
INLINE = re.compile(r"<[^>]*\s(style|on[a-z]+)=|<script", re.IGNORECASE)


def ask(op: str, **given: Any) -> dict[str, Any]:
    reply = json.loads(handle(json.dumps({"op": op, **given})))
    assert isinstance(reply, dict)
    assert "fault" not in reply, reply
    return reply


def begun(seed: int) -> str:
    return str(ask("practice_home", seed=seed, units="ip")["state"])


def played(seed: int, units: str = "ip", **changed: Any) -> dict[str, Any]:
    """A home played well to its end."""
    one, state = home(seed), begun(seed)
    for id_ in grade.all_measures(one):
        state = ask("practice_measure", state=state, id=id_, units=units)["state"]
    found = grade.solution(seed)
    numbers = {}
    for asked in grade.numbers_of(one.visit):
        shown = convert(found.numbers[asked.name], asked.unit, shown_unit(asked.unit, units))
        numbers[asked.name] = f"{shown:.3f}"
    given = {"faults": {f: str(n) for n, f in enumerate(one.faults, 1)}, "numbers": numbers,
             "go_on": "yes" if found.go_on else "no", **changed}
    return ask("practice_answer", state=state, units=units, **given)


@pytest.mark.parametrize("units", ["ip", "si"])
@pytest.mark.parametrize("seed", range(6))
def test_a_home_played_well_is_without_mistake_but_for_its_time(seed: int, units: str):
    reply = played(seed, units)
    assert reply["level"] in ("shown", "not all")
    assert re.findall(r'data-kind="([^"]+)"', reply["regions"]["result"]) in ([], ["time"])
    assert "data-working" in reply["regions"]["result"]
    assert set(reply["skills"]) <= {s.id for s in SKILLS}


def test_every_region_is_markup_without_style_or_handler():
    reply = played(3)
    other = ask("practice_home", seed=4, units="si")
    shown = [*reply["regions"].values(), *other["regions"].values()]
    for name in ("home", "drills", "bench", "progress"):
        shown.append(str(practice_html(name)))
    for one in LESSONS:
        shown.append(str(practice_html("lesson", one.id)))
    for html in shown:
        assert not INLINE.search(html)
        assert "{" not in re.sub(r"<[^>]*>", "", html)


def test_the_state_holds_no_answer():
    for seed in range(40):
        text = begun(seed)
        assert set(json.loads(text)) == {"practice", "seed", "done", "faults", "numbers", "go_on",
                                         "decided"}
        shown = "".join(ask("practice_home", seed=seed, units="ip")["regions"].values())
        for finding in grade.solution(seed).findings:
            assert finding.text not in shown


def test_what_is_typed_as_text_is_shown_as_text():
    record = ask("progress_name", record="", learner="<b>&\"")
    assert "<b>&" not in record["html"]
    assert "&lt;b&gt;&amp;" in record["html"]


@pytest.mark.parametrize(("given", "field"), [
    ({"faults": {"wrong-charge": "x"}}, "fault.wrong-charge"),
    ({"faults": {"rust": "1"}}, "fault.rust"),
    ({"faults": {"wrong-charge": "1", "open-vent": "1"}}, "fault.wrong-charge"),
    ({"numbers": {"subcooling_f": "cold"}}, "number.subcooling_f"),
    ({"go_on": ""}, "go_on"),
])
def test_a_decision_that_cannot_be_read_is_refused_beside_its_field(given: dict[str, Any],
                                                                    field: str):
    seed = next(s for s in range(20) if home(s).visit == "call")
    reply = ask("practice_answer", state=begun(seed), units="ip", **{
        "faults": {}, "numbers": {}, "go_on": "yes", **given})
    assert reply["ok"] is False
    assert field in {e["field"] for e in reply["errors"]}


@pytest.mark.parametrize("state", [
    "", "{", "[]", '{"practice": 2}', '{"practice": 1, "seed": -1}',
    '{"practice": 1, "seed": 3, "done": ["tea"]}', '{"practice": 1, "seed": 3, "done": "static"}',
    '{"practice": 1, "seed": 3, "faults": ["rust"]}',
    '{"practice": 1, "seed": 3, "numbers": {"subcooling_f": "9"}}',
    '{"practice": 1, "seed": 3, "go_on": "maybe"}',
    '{"practice": 1, "seed": 3, "done": ["alarms", "alarms"]}'])
def test_a_state_that_is_none_is_refused(state: str):
    reply = ask("practice_measure", state=state, id="alarms", units="ip")
    assert reply["ok"] is False
    assert reply["errors"]


@pytest.mark.parametrize("seed", ["", "x", "-4", "1000000000", "1.5", None, True, 2.5])
def test_a_number_that_is_none_is_refused(seed: object):
    for op in ("practice_home", "drill"):
        reply = ask(op, seed=seed)
        assert reply["ok"] is False
        assert reply["errors"][0]["field"] == "seed"


def test_a_typed_number_is_the_same_home():
    assert ask("practice_home", seed=" 17 ", units="ip")["regions"] == ask(
        "practice_home", seed=17, units="ip")["regions"]


def test_a_home_handed_in_is_closed():
    reply = played(2)
    after = ask("practice_measure", state=reply["state"], id="alarms", units="ip")
    assert after["ok"] is False
    again = ask("practice_home", state=reply["state"], units="ip")
    assert again["regions"]["result"] == reply["regions"]["result"]
    assert again["regions"]["decide"] == ""


def test_measuring_twice_costs_once():
    state = begun(5)
    once = ask("practice_measure", state=state, id="alarms", units="ip")
    twice = ask("practice_measure", state=once["state"], id="alarms", units="ip")
    assert twice["state"] == once["state"]


def test_what_is_known_becomes_a_job_for_the_calculators():
    seed = next(s for s in range(20) if home(s).visit == "call")
    state = begun(seed)
    early = read_job(ask("practice_job", state=state, at=AT)["job"])
    assert early.entry("static_supply_inwc") is None
    assert early.entry("monthly_means") is not None
    state = ask("practice_measure", state=state, id="static", units="ip")["state"]
    job = read_job(ask("practice_job", state=state, at=AT)["job"])
    entry = job.entry("static_supply_inwc")
    assert entry is not None
    assert entry.value == home(seed).facts["static_supply_inwc"]
    assert entry.at == AT


@pytest.mark.parametrize("kind", drills.KINDS)
@pytest.mark.parametrize("units", ["ip", "si"])
def test_a_question_is_asked_answered_and_explained(kind: str, units: str):
    for seed in range(12):
        one = drills.question(seed, kind)
        shown = ask("drill", seed=seed, kind=kind, units=units)
        assert shown["ok"] is True
        if one.options:
            right = one.right
            wrong = next(o.id for o in one.options if o.id != one.right)
        else:
            to = shown_unit(one.unit, units)
            right = f"{convert(one.truth, one.unit, to):.6f}"
            wrong = f"{convert(one.truth + 3 * one.tolerance, one.unit, to):.6f}"
        for typed, counts in ((right, True), (wrong, False)):
            reply = ask("drill_answer", seed=seed, kind=kind, units=units, answer=typed)
            assert reply["right"] is counts, (seed, one.text)
            assert f'procedures/{one.procedure}/' in reply["html"]
            assert ("df-line__what" in reply["html"]) == (one.answer is not None)


@pytest.mark.parametrize("typed", ["", "  ", "many"])
def test_an_answer_that_is_none_is_refused(typed: str):
    for kind in drills.KINDS:
        reply = ask("drill_answer", seed=1, kind=kind, answer=typed, units="ip")
        assert [e["field"] for e in reply["errors"]] == ["answer"]


@pytest.mark.parametrize("one", LESSONS, ids=lambda x: x.id)
def test_a_lesson_has_its_number_and_its_check(one):
    html = str(practice_html("lesson", one.id))
    assert f"calculators/{one.calculator}/" in html
    assert "df-line__what" in html
    for id_, _ in one.options:
        reply = ask("lesson_answer", lesson=one.id, answer=id_, units="ip")
        assert reply["right"] is (id_ == one.options[0][0])
        assert escape(one.why) in reply["html"]
        assert f"../../../procedures/{one.procedure}/" in reply["html"]
    page = (measures_root() / "docs" / "practice" / "lessons" / f"{one.id}.md").read_text("utf-8")
    drawing = re.search(r"\{\{ drawing ([a-z-]+) \}\}", page)
    assert drawing is not None
    assert drawing[1] in drawings()
    assert f"{{{{ practice lesson {one.id} }}}}" in page
    words = len(re.sub(r"\{\{.*?\}\}|[#*\[\]()]", " ", page).split())
    assert 150 <= words <= 700, "five to ten minutes with number and check"


def measures_root() -> Any:
    from pathlib import Path

    return Path(__file__).parents[2]


def test_the_lessons_come_in_the_order_of_understanding():
    assert [one.id for one in LESSONS] == ["air", "heat", "cold", "electricity", "water",
                                           "refrigerant", "homeowner"]
    index = (measures_root() / "docs" / "practice" / "index.md").read_text("utf-8")
    places = [index.index(f"lessons/{one.id}.md") for one in LESSONS]
    assert places == sorted(places)
    assert not ask("lesson_answer", lesson="luck", answer="x")["ok"]


def test_the_bench_answers_every_choice_that_it_offers():
    html = str(practice_html("bench"))
    offered = re.findall(r'<option[^>]* value="([a-z-]+)/([a-z0-9-]+)"', html)
    assert len(offered) == sum(len(c.severities) for c in bench.CAUSES)
    for cause, severity in offered:
        for units in ("ip", "si"):
            reply = ask("bench", cause=cause, severity=severity, units=units)
            assert 'data-moved="yes"' in reply["html"]
    assert not ask("bench", cause="", severity="")["ok"]
    assert "input type=\"range\"" not in html


def test_the_record_keeps_screen_and_hand_apart():
    record = ask("progress_add", record="", what="home", which="7", skills={"air": "shown"},
                 at=AT)["record"]
    seen = ask("progress_seen", record=record, skill="air", what="reads static", by="B. Field",
               trade="contractor", at=AT)
    row = re.search(r'<tr data-skill="air">(.*?)</tr>', seen["html"], re.DOTALL)
    assert row is not None
    cells = re.findall(r"<td>(.*?)</td>", row[1], re.DOTALL)
    assert "Shown 1 of 1" in cells[0]
    assert "B. Field" not in cells[0]
    assert "B. Field" in cells[1]
    assert "neither is a licence or a certificate" in seen["html"]
    both = ask("progress_merge", record="", theirs=seen["record"])
    assert json.loads(both["record"]) == json.loads(seen["record"])
    assert not ask("progress_add", record="", what="home", which="7", skills={"luck": "shown"},
                   at=AT)["ok"]
    assert not ask("progress_seen", record="", skill="luck", what="a", by="b", trade="c",
                   at=AT)["ok"]


def test_each_request_of_practice_is_known_to_the_bridge():
    for op in OPS:
        assert "No such request." not in json.dumps(ask(op, seed=1, state=begun(1)))


def test_a_plan_of_the_home_says_in_words_what_it_draws():
    one = desk.Desk(3, ("registers",))
    from downflow.render.practice import plan_figure

    figure = str(plan_figure(one, "ip"))
    for row in home(3).facts["registers"]:
        assert f"{row['id']} {row['room']}" in figure
    assert measures.minutes(["registers"]) == 30
