"""A wrong answer of each kind gets the right explanation; a missed hold ends the home."""

from __future__ import annotations

import functools

import pytest

from downflow.practice import diagnose, grade, measures
from downflow.practice.faults import FAULTS, RANKS, fault, of_visit
from downflow.practice.grade import Answers, Mistake
from downflow.practice.homes import PracticeHome, home
from downflow.render.procedure import PROCEDURES
from downflow.units import fill


@functools.cache
def _homes() -> dict[str, list[int]]:
    found: dict[str, list[int]] = {"sound": [], **{f.id: [] for f in FAULTS}}
    for seed in range(300):
        for name in home(seed).faults or ("sound",):
            found[name].append(seed)
    return found


def a_home(with_fault: str) -> PracticeHome:
    return home(_homes()[with_fault][0])


def right(one: PracticeHome, **changed: object) -> Answers:
    """The engine's own answers, with some changed."""
    found = grade.solution(one.seed)
    numbers = {n.name: round(found.numbers[n.name], n.decimals)
               for n in grade.numbers_of(one.visit)}
    said = {"faults": one.faults, "numbers": numbers, "go_on": found.go_on, **changed}
    return Answers(**said)  # type: ignore[arg-type]


def graded(one: PracticeHome, answers: Answers, done: list[str] | None = None) -> grade.Grade:
    return grade.grade(one, grade.all_measures(one) if done is None else done, answers)


def mistakes(one: PracticeHome, answers: Answers,
             done: list[str] | None = None) -> list[Mistake]:
    found = graded(one, answers, done).mistakes
    for each in found:
        assert each.procedure in PROCEDURES
        assert each.kind in grade.KINDS
        text = fill(each.text, each.values)
        assert "{" not in text
        assert text[0].isupper() or text[0] == "“"
        assert text.endswith(".")
    return [m for m in found if m.kind != "time"]


@pytest.mark.parametrize("name", ["sound", *(f.id for f in FAULTS)])
def test_the_engines_own_answers_are_without_mistake(name: str):
    for seed in _homes()[name][:3]:
        assert mistakes(home(seed), right(home(seed))) == []


@pytest.mark.parametrize("one", FAULTS, ids=lambda f: f.id)
def test_a_fault_not_found_is_shown_with_its_reading_and_its_procedure(one):
    there = a_home(one.id)
    left = tuple(f for f in there.faults if f != one.id)
    found = [m for m in mistakes(there, right(there, faults=left)) if m.kind == "missed-fault"]
    assert [m.about for m in found] == [one.id]
    assert found[0].procedure == one.procedure
    finding = next(f for f in grade.solution(there.seed).findings if f.fault == one.id)
    text = fill(found[0].text, found[0].values)
    assert fill(finding.text, finding.values) in text
    assert one.do in text
    assert "You had the reading." in text


@pytest.mark.parametrize("one", FAULTS, ids=lambda f: f.id)
def test_a_fault_that_is_not_there_is_told_where_it_would_show(one):
    sound = next(home(s) for s in _homes()["sound"] if home(s).visit in one.visits)
    found = mistakes(sound, right(sound, faults=(one.id,)))
    assert [(m.kind, m.about, m.procedure) for m in found] == [
        ("no-fault", one.id, one.procedure)]
    assert measures.measure(next(m for m in one.shown_by if sound.visit in measures.measure(
        m).visits)).label in found[0].text


@pytest.mark.parametrize("one", FAULTS, ids=lambda f: f.id)
def test_a_fault_guessed_without_a_reading_does_not_count(one):
    there = a_home(one.id)
    done = [m for m in grade.all_measures(there) if m not in (
        *one.shown_by, "vent", "outside", "registers", "belly", "plate", "inside")]
    found = mistakes(there, right(there, faults=(one.id,)), done)
    assert ("not-read", one.id) in {(m.kind, m.about) for m in found}


@pytest.mark.parametrize("one", [f for f in FAULTS if f.holds], ids=lambda f: f.id)
def test_going_on_where_the_engine_holds_ends_the_home(one):
    there = a_home(one.id)
    result = graded(there, right(there, go_on=True))
    assert result.level == "not yet"
    assert result.mistakes[0].kind == "hold-missed"
    assert one.id in {m.about for m in result.mistakes if m.kind == "hold-missed"}
    assert not any(result.skills.values())


@pytest.mark.parametrize("step", measures.STEPS, ids=lambda s: s.id)
def test_a_reading_before_its_safety_step_ends_the_home_whatever_else_was_right(step):
    taken = next(m for m in measures.MEASURES if step.id in m.needs)
    sound = next(home(s) for s in _homes()["sound"] if home(s).visit in taken.visits)
    done = [d for d in grade.all_measures(sound) if d != step.id]
    result = graded(sound, right(sound), done)
    assert result.level == "not yet"
    skipped = [m for m in result.mistakes if m.kind == "hold-skipped"]
    assert {m.about for m in skipped} == {step.id}
    assert all(m.procedure == step.procedure and step.why in m.text for m in skipped)
    late = [*done, step.id]
    assert graded(sound, right(sound), late).level == "not yet"


def test_a_stop_without_a_reason_is_a_mistake_and_no_danger():
    sound = a_home("sound")
    result = graded(sound, right(sound, go_on=False))
    assert result.level == "not all"
    assert [m.kind for m in result.mistakes if m.kind != "time"] == ["stopped"]


@pytest.mark.parametrize("asked", grade.NUMBERS, ids=lambda n: n.name)
def test_a_number_just_inside_counts_and_just_outside_does_not(asked):
    one = next(home(s) for s in _homes()["sound"] if home(s).visit in asked.visits)
    truth = grade.solution(one.seed).numbers[asked.name]
    slack = asked.tolerance(truth)
    for share, kinds in ((0.98, []), (-0.98, []), (1.02, ["number"]), (-1.02, ["number"])):
        numbers = {**right(one).numbers, asked.name: truth + share * slack}
        found = mistakes(one, right(one, numbers=numbers))
        assert [m.kind for m in found] == kinds, share
        if found:
            assert found[0].about == asked.name
            assert found[0].procedure == asked.procedure
            answer = grade.solution(one.seed).answers[asked.calculator]
            assert answer.working, "the working that explains it is open"


@pytest.mark.parametrize("asked", grade.NUMBERS, ids=lambda n: n.name)
def test_a_number_left_out_is_given(asked):
    one = next(home(s) for s in _homes()["sound"] if home(s).visit in asked.visits)
    numbers = {k: v for k, v in right(one).numbers.items() if k != asked.name}
    found = mistakes(one, right(one, numbers=numbers))
    assert [(m.kind, m.about) for m in found] == [("no-number", asked.name)]


@pytest.mark.parametrize("asked", [n for n in grade.NUMBERS if n.needs], ids=lambda n: n.name)
def test_a_right_number_without_its_readings_is_a_guess(asked):
    one = next(home(s) for s in _homes()["sound"] if home(s).visit in asked.visits)
    done = [d for d in grade.all_measures(one) if d != asked.needs[0]]
    found = [m for m in mistakes(one, right(one), done) if m.about == asked.name]
    assert [m.kind for m in found] == ["guess"]
    assert measures.measure(asked.needs[0]).label in found[0].text


def test_the_order_of_work_is_explained_by_its_rule():
    pair = next(seed for seed in range(300) if len(home(seed).faults) > 1 and fault(
        home(seed).faults[0]).rank < fault(home(seed).faults[-1]).rank)
    one = home(pair)
    found = mistakes(one, right(one, faults=tuple(reversed(one.faults))))
    assert [m.kind for m in found] == ["order"]
    assert any(why in found[0].text for why in RANKS.values())


def test_more_time_than_there_was_is_a_mistake():
    one = a_home("sound")
    found = [m for m in graded(one, right(one)).mistakes if m.kind == "time"]
    assert len(found) == 1
    few = [d for d in grade.all_measures(one) if d in ("sniff", "alarms")]
    assert not [m for m in graded(one, right(one), few).mistakes if m.kind == "time"]


def test_every_kind_of_mistake_is_met_above():
    met = {"hold-skipped", "hold-missed", "missed-fault", "no-fault", "not-read", "number",
           "no-number", "guess", "order", "stopped", "time"}
    assert met == set(grade.KINDS)


def test_what_does_not_belong_to_the_visit_is_refused():
    survey = next(home(s) for s in range(20) if home(s).visit == "survey")
    with pytest.raises(ValueError, match="cannot be met"):
        graded(survey, right(survey, faults=("wrong-charge",)))
    with pytest.raises(ValueError, match="not asked for"):
        graded(survey, right(survey, numbers={"subcooling_f": 9.0}))
    with pytest.raises(ValueError, match="cannot be taken"):
        measures.observe(survey, "gauges")
    with pytest.raises(ValueError, match="no measurement"):
        measures.measure("tea")
    with pytest.raises(ValueError, match="no safety step"):
        measures.step("tea")


def test_the_skills_of_a_home_are_those_it_asked_for():
    one = a_home("crushed-crossover")
    good = graded(one, right(one), list(grade.all_measures(one)))
    assert good.skills["air"] is True
    assert good.skills["safety"] is True
    bad = graded(one, right(one, faults=()))
    assert bad.skills["air"] is False


def test_each_fault_of_a_visit_can_be_named():
    for visit in ("survey", "call"):
        assert {f.id for f in of_visit(visit)} >= {"no-crossover", "choked-return"}
    assert diagnose.diagnose({}) == []
