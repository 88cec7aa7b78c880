"""The record: on screen and by hand kept apart, nothing lost, nothing taken that cannot stand."""

from __future__ import annotations

import json

import pytest

from downflow.facts.checks import BadInput
from downflow.practice import progress
from downflow.practice.progress import Progress, read_progress, write_progress
from downflow.practice.skills import SKILLS, skill

AT = "2026-03-31T10:00:00Z"


def test_an_empty_text_is_an_empty_record():
    assert read_progress("") == Progress()
    assert read_progress(write_progress(Progress())) == Progress()


def test_a_record_comes_back_as_it_was_written():
    one = progress.answered(Progress("A. Learner"), "home", "17",
                            {"air": "shown", "water": "not all"}, AT)
    one = progress.seen_done(one, "air", "reads static", "B. Field", "mechanical contractor", AT)
    assert read_progress(write_progress(one)) == one


def test_screen_and_hand_never_count_for_each_other():
    one = progress.answered(Progress(), "home", "17", {"air": "shown"}, AT)
    assert one.shown("air") == 1
    assert one.seen("air") == []
    two = progress.seen_done(Progress(), "air", "reads static", "B. Field", "contractor", AT)
    assert two.shown("air") == 0
    assert two.tried("air") == 0
    assert len(two.seen("air")) == 1


def test_only_the_first_answer_to_a_home_counts():
    one = progress.answered(Progress(), "home", "17", {"air": "not yet"}, AT)
    again = progress.answered(one, "home", "17", {"air": "shown"}, "2026-04-01T00:00:00Z")
    assert again == one
    assert progress.answered(one, "home", "18", {"air": "shown"}, AT).shown("air") == 1


@pytest.mark.parametrize("missing", ["what", "by", "trade", "at"])
def test_seen_by_hand_needs_a_name_a_trade_and_a_date(missing: str):
    given = {"what": "reads static", "by": "B. Field", "trade": "contractor", "at": AT}
    given[missing] = " "
    with pytest.raises(BadInput) as refused:
        progress.seen_done(Progress(), "air", **given)
    assert [e["field"] for e in refused.value.errors] == [missing]


@pytest.mark.parametrize("text", [
    "{", "[]", "{}", '{"downflow_practice": 99}', '{"downflow_practice": 1, "screen": 4}',
    '{"downflow_practice": 1, "screen": [3]}', '{"downflow_practice": 1, "learner": 5}',
    json.dumps({"downflow_practice": 1, "screen": [{
        "skill": "juggling", "what": "home", "which": "1", "result": "shown", "at": AT}]}),
    json.dumps({"downflow_practice": 1, "screen": [{
        "skill": "air", "what": "home", "which": "1", "result": "passed", "at": AT}]}),
    json.dumps({"downflow_practice": 1, "screen": [{
        "skill": "air", "what": "home", "which": "1", "result": "shown", "at": "soon"}]}),
    json.dumps({"downflow_practice": 1, "hand": [{"skill": "air", "by": 7, "at": AT}]}),
])
def test_what_is_no_record_is_refused(text: str):
    with pytest.raises(BadInput):
        read_progress(text)


def test_two_devices_come_together_without_loss():
    mine = progress.answered(Progress("A. Learner"), "home", "1", {"air": "shown"}, AT)
    theirs = progress.answered(Progress(), "home", "2", {"heat": "not all"}, AT)
    theirs = progress.seen_done(theirs, "heat", "surveys", "B. Field", "contractor", AT)
    both = progress.merged(mine, theirs)
    assert both.learner == "A. Learner"
    assert both.tried("air") == both.tried("heat") == 1
    assert progress.merged(both, theirs) == both


def test_every_skill_says_what_is_seen_by_hand():
    assert [s.id for s in SKILLS] == ["air", "heat", "cold", "electricity", "water",
                                      "refrigerant", "safety", "homeowner"]
    for one in SKILLS:
        assert one.by_hand
        assert skill(one.id) == one
    with pytest.raises(ValueError, match="no skill"):
        skill("luck")
