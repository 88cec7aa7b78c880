"""Questions without end: sound, answered by the engine, explained by its working."""

from __future__ import annotations

import json

import pytest

from downflow.engine.answer import shown_step
from downflow.engine.formula import work_out
from downflow.practice import drills
from downflow.practice.drills import KINDS, NEXT, NUMERIC, TEMPLATES, WRONG, WRONGS, question
from downflow.practice.skills import SKILLS
from downflow.render.procedure import PROCEDURES
from downflow.units import fill, unit

SEEDS = range(240)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_question_is_whole(seed: int):
    one = question(seed)
    assert one.text.endswith(("?", "counts it?", "handbook."))
    assert one.kind in KINDS
    assert one.skill in {s.id for s in SKILLS}
    assert one.procedure in PROCEDURES
    for text in (one.text, one.why, *(o.text for o in one.options)):
        values = {**one.values, **(one.options[0].values if one.options else {})}
        assert "{" not in fill(text, values)
    if one.options:
        ids = [o.id for o in one.options]
        assert len(ids) == len(set(ids)) >= 2
        assert one.right in ids
        assert one.is_right(one.right)
        assert not any(one.is_right(i) for i in ids if i != one.right)
    else:
        assert unit(one.unit)
        assert one.is_right(one.truth)
        assert one.is_right(one.truth + 0.98 * one.tolerance)
        assert not one.is_right(one.truth + 1.02 * one.tolerance)
        assert not one.is_right(one.truth - 1.02 * one.tolerance)


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda t: t.id)
def test_the_working_explains_the_number(template):
    """The calculator's own steps give the number that counts as right."""
    for seed in range(400):
        one = question(seed, NUMERIC, template.skill)
        if one.text == template.text:
            break
    else:
        raise AssertionError(f"{template.id} never comes up")
    assert one.answer is not None
    assert one.answer.ok
    results = [s.result for s in one.answer.working]
    assert any(abs(r - one.truth) <= 1e-6 * max(1.0, abs(one.truth)) for r in results)
    for step in one.answer.working:
        if step.kind == "formula":
            shown = shown_step(step)
            assert work_out(step.formula, shown.values) == pytest.approx(step.result, rel=5e-4,
                                                                         abs=1e-9)
    told = {g.label for g in one.given}
    assert len(told) == len(one.given), "nothing is told twice"


def test_a_rounded_answer_counts():
    """What the page shows as right is right when it is typed."""
    for seed in range(120):
        one = question(seed, NUMERIC)
        assert one.is_right(round(one.truth, one.decimals)), (seed, one.text)


@pytest.mark.parametrize("kind", KINDS)
def test_one_number_is_one_question_and_numbers_differ(kind: str):
    drills._question.cache_clear()
    first = [question(s, kind) for s in range(40)]
    drills._question.cache_clear()
    again = [question(s, kind) for s in range(40)]
    key = [json.dumps([q.text, [str(g) for g in q.given], [o.id for o in q.options]])
           for q in first]
    assert key == [json.dumps([q.text, [str(g) for g in q.given], [o.id for o in q.options]])
                   for q in again]
    assert len(set(key)) >= (30 if kind != NEXT else 20)


@pytest.mark.parametrize("wrong", WRONGS, ids=lambda w: w.id)
def test_the_wrong_reading_is_far_from_what_it_should_be(wrong):
    for seed in range(300):
        one = question(seed, WRONG, wrong.skill)
        if one.right == wrong.id:
            said, should = one.values["said"], one.values["should"]
            assert not isinstance(said, str)
            assert not isinstance(should, str)
            assert abs(said.value - should.value) > {"°F": 3.9, "A": 4, "in w.c.": 0.02}[
                wrong.unit]
            return
    raise AssertionError(f"{wrong.id} never comes up")


@pytest.mark.parametrize("skill", ["air", "heat", "cold", "electricity", "water", "refrigerant",
                                   "safety"])
def test_each_skill_has_questions_of_its_own(skill: str):
    for seed in range(12):
        assert question(seed, "", skill).skill == skill


def test_what_comes_first_is_the_rule_of_the_order_of_work():
    met = set()
    for seed in range(200):
        one = question(seed, NEXT)
        if one.text.startswith("You found all of this"):
            ranks = {o.id: drills.FAULTS[[f.id for f in drills.FAULTS].index(o.id)].rank
                     for o in one.options}
            assert ranks[one.right] == min(ranks.values())
            assert list(ranks.values()).count(min(ranks.values())) == 1
            met.add("first")
        elif "narrow the answer" in one.text:
            assert one.answer is None
            met.add("narrows")
        else:
            met.add("reading")
    assert met == {"first", "narrows", "reading"}


def test_what_is_no_kind_or_skill_is_refused():
    with pytest.raises(ValueError, match="no kind"):
        question(1, "riddle")
    with pytest.raises(ValueError, match="no skill"):
        question(1, "", "patience")
    with pytest.raises(ValueError, match="no question"):
        question(1, WRONG, "homeowner")
    with pytest.raises(ValueError, match="practice home"):
        question(-3)
