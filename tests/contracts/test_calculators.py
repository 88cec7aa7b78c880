"""What every calculator keeps to."""

import json
import math
from pathlib import Path

import jsonschema
import pytest

from downflow.calculators import all_calculators
from downflow.demo import PARTS, demo_data, demo_job
from downflow.describe import describe
from downflow.engine import formula
from downflow.engine.answer import answer_data, shown_step
from downflow.engine.chain import Chain
from downflow.facts import WHERE, all_facts
from downflow.phases import PHASES
from downflow.plan import plan, plan_data, the_chain
from downflow.schema import answer_schema, job_schema
from downflow.sources import KINDS
from downflow.units import UNITS

ROOT = Path(__file__).parents[2]
IDS = sorted(all_calculators())
ANSWERS = jsonschema.Draft202012Validator(answer_schema())


@pytest.fixture(scope="module")
def demo_plan():
    return plan(demo_job())


@pytest.mark.parametrize("id_", IDS)
def test_page_test_and_module_rhyme(id_):
    page = ROOT / "docs" / "calculators" / f"{id_}.md"
    assert page.exists(), f"{page} is missing"
    text = page.read_text(encoding="utf-8")
    assert f"{{{{ calculator {id_} }}}}" in text
    for heading in ("## What it tells you", "## How to measure", "## How far it holds",
                    "## Sources"):
        assert heading in text, f"{page.name} has no {heading}"
    own = ROOT / "tests" / "calculators" / f"test_{id_.replace('-', '_')}.py"
    assert own.exists(), f"{own} is missing"


@pytest.mark.parametrize("id_", IDS)
def test_the_demo_has_every_fact_it_needs(id_, demo_plan):
    answer = demo_plan.answers[id_]
    assert answer.ok, (answer.missing, answer.errors)


@pytest.mark.parametrize("id_", IDS)
def test_the_answer_follows_the_schema(id_, demo_plan):
    data = answer_data(demo_plan.answers[id_])
    ANSWERS.validate(data)
    json.dumps(data, allow_nan=False)
    for name, value in data["answer"].items():
        assert value["low"] <= value["value"] <= value["high"], name
        assert value["unit"] == all_facts()[name].unit


@pytest.mark.parametrize("id_", IDS)
def test_every_shown_step_can_be_worked_again_by_hand(id_, demo_plan):
    steps = demo_plan.answers[id_].working
    assert steps, "an answer without working"
    for step in steps:
        assert step.what, step.formula
        shown = shown_step(step)
        assert shown.digits <= 15, f"{step.formula}: no number of digits re-works it"
        if step.kind == "formula":
            again = formula.work_out(step.formula, shown.values)
            assert formula.round_digits(again, 4) == shown.result
            assert step.formula.partition("=")[2].strip() not in step.values, (
                f"{step.formula} merely restates a value")


@pytest.mark.parametrize("id_", IDS)
def test_it_is_described_in_full(id_):
    calculator = all_calculators()[id_].calculator
    assert calculator.question.endswith("?")
    assert calculator.phase in {p.id for p in PHASES}
    assert len(all_calculators()[id_].doc.strip().splitlines()) >= 3
    data = describe(id_)
    assert data["inputs"] and data["outputs"]
    for one in data["inputs"]:
        assert one["label"], one["name"]
        if not one["given"]:
            assert one["help"], f"{one['name']} does not say how to measure it"


@pytest.mark.parametrize("id_", IDS)
def test_every_verdict_names_its_source_and_what_to_do(id_, demo_plan):
    for verdict in demo_plan.answers[id_].verdicts:
        assert verdict.text, verdict.id
        assert verdict.source.kind in KINDS
        if verdict.level != "fine":
            assert verdict.do or verdict.signs, f"{verdict.id} does not say what to do"
        assert "{" not in answer_text(verdict), f"{verdict.id}: a quantity was not put in"


def answer_text(verdict):
    from downflow.engine.answer import verdict_data

    data = verdict_data(verdict)
    return data["text"] + data["do"] + data["doubt"]


@pytest.mark.parametrize("id_", IDS)
def test_a_figure_is_drawn_by_classes_alone_with_words_beside_it(id_, demo_plan):
    module = all_calculators()[id_]
    if module.figure is None:
        return
    sheet = demo_plan.answers[id_].sheet
    for system in ("ip", "si"):
        import dataclasses

        text = str(module.figure(dataclasses.replace(sheet, system=system)))
        assert "<svg" in text and "<title" in text and "<desc" in text
        assert "style=" not in text and "onload" not in text and "nan" not in text.lower()


def test_the_chain_has_no_cycle_and_no_fact_is_given_twice():
    chain = Chain(all_calculators())
    seen = set()
    for id_ in chain.order:
        assert set(chain.before(id_)) <= seen
        seen.add(id_)
    given = [n for m in all_calculators().values() for n in m.calculator.gives]
    assert len(given) == len(set(given))


def test_a_circle_is_refused():
    from downflow.engine.calculator import Calculator, Module

    a = Calculator("a", "A", "prove", ("hp_load_btuh",), ("hp_share_pct",))
    b = Calculator("b", "B", "prove", ("hp_share_pct",), ("hp_load_btuh",))
    with pytest.raises(ValueError, match="circle"):
        Chain({c.id: Module(c, lambda j, p: None, None, "") for c in (a, b)})


def test_every_given_fact_has_its_calculator():
    given = {n for n, f in all_facts().items() if f.given}
    assert given == set(the_chain().giver)


def test_every_fact_is_read_or_given_by_somebody():
    chain = the_chain()
    used = {n for id_ in chain.modules for n in chain.asks(id_)} | set(chain.giver)
    # A name, a date or a choice may stand for the record alone; a number is there to be used.
    unused = {n for n in set(all_facts()) - used
              if all_facts()[n].kind == "number" and not all_facts()[n].record}
    assert not unused, f"no calculator uses {sorted(unused)}"


@pytest.mark.parametrize("name", sorted(all_facts()))
def test_a_fact_is_well_defined(name):
    fact = all_facts()[name]
    assert fact.unit in UNITS
    assert fact.where in WHERE
    assert fact.label[:1].isupper() or fact.label[:1].isdigit()
    if fact.kind == "number" and not fact.given:
        assert fact.low is not None and fact.high is not None, "a number needs its allowed range"
        assert fact.low < fact.high
    if fact.kind == "choice":
        assert len(fact.choices) >= 2
    if fact.kind == "table" and not fact.given:
        assert fact.columns
    for column in fact.columns:
        assert column.unit in UNITS and column.label
    if fact.assumption is not None and fact.kind == "number":
        assert fact.low is None or fact.low <= fact.assumption.value <= fact.high
    for spread in fact.spread.values():
        assert spread.below >= 0 and spread.above >= 0


def test_the_demo_job_follows_the_schema_and_says_why_it_is_plausible():
    from downflow.demo import part
    from downflow.facts.job import job_data

    jsonschema.Draft202012Validator(job_schema()).validate(job_data(demo_job()))
    assert demo_data()["name"] == "Juniper Flat"
    for name in PARTS:
        assert len(part(name)["about"]) > 80, f"{name}: why are its numbers plausible?"
    listed = {p.stem for p in (ROOT / "calc/src/downflow/data/juniper_flat").glob("*.json")}
    assert listed == {"job", *PARTS}


def test_the_demo_enters_nothing_that_is_worked_out():
    """Each given fact in the demo job is one that a maker, an official or a tape must say."""
    from_outside = {"hp_altitude_factor_pct", "design_heating_f", "design_cooling_f",
                    "window_area_ft2", "door_area_ft2"}
    entered = {n for n in demo_job().names() if all_facts()[n].given}
    assert entered <= from_outside


def test_no_number_of_the_plan_is_infinite(demo_plan):
    text = json.dumps(plan_data(demo_plan), allow_nan=False)
    assert "Infinity" not in text
    assert all(math.isfinite(v.value) for a in demo_plan.answers.values()
               for v in a.values.values())
