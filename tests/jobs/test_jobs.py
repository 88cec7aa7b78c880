"""Eleven jobs against verdicts written by hand, and Juniper Flat without its crossover."""

from __future__ import annotations

import functools
import json
from pathlib import Path
from typing import Any

import pytest

from downflow.calculators import all_calculators
from downflow.engine.answer import verdict_data
from downflow.facts.job import job_from
from downflow.plan import Plan, plan
from downflow.testing import changed

HERE = Path(__file__).parent
NAMES = sorted(p.parent.name for p in HERE.glob("*/job.json"))


@functools.cache
def planned(name: str) -> Plan:
    return plan(job_from(json.loads((HERE / name / "job.json").read_text(encoding="utf-8"))))


@functools.cache
def expected(name: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((HERE / name / "expected.json").read_text(encoding="utf-8"))
    return found


def found_levels(made: Plan) -> dict[tuple[str, str], str]:
    return {(id_, v.id): "sign" if v.to_sign else v.level for id_, v in made.verdicts()}


def said(made: Plan, id_: str, verdict: str) -> str:
    one = next(v for v in made.answers[id_].verdicts if v.id == verdict)
    data = verdict_data(one)
    return f"{data['text']} {data['doubt']}"


def test_there_are_eleven_of_every_kind():
    assert len(NAMES) == 11
    jobs = [json.loads((HERE / n / "job.json").read_text(encoding="utf-8")) for n in NAMES]
    values = [{n: e.get("value") for n, e in j["facts"].items()} for j in jobs]
    assert {v["sections"] for v in values} == {"single", "double", "triple"}
    assert {v.get("heating_fuel") for v in values} >= {"gas", "oil", "electric", "propane"}
    heights = [v["elevation_ft"] for v in values]
    nights = [v["design_heating_f"] for v in values]
    assert min(heights) < 500 and max(heights) > 8000
    assert min(nights) < -20 and max(nights) > 25
    assert min(v["year_built"] for v in values) < 1976


@pytest.mark.parametrize("name", NAMES)
def test_it_answers_what_its_facts_allow_and_refuses_nothing(name):
    made = planned(name)
    assert not [e for a in made.answers.values() for e in a.errors]
    answered = {id_ for id_, a in made.answers.items() if a.ok}
    wanted = expected(name)["answers"]
    assert answered == (set(all_calculators()) if wanted == "all" else set(wanted))


@pytest.mark.parametrize("name", NAMES)
def test_no_hold_is_false(name):
    made, wanted = planned(name), expected(name)["verdicts"]
    false = {k: said(made, *k) for k, level in found_levels(made).items() if level == "hold"
             and wanted.get(k[0], {}).get(k[1], {}).get("level") != "hold"}
    assert not false


@pytest.mark.parametrize("name", NAMES)
def test_every_verdict_is_as_the_rules_say(name):
    made, wanted = planned(name), expected(name)["verdicts"]
    found = found_levels(made)
    differ = {}
    for key, level in found.items():
        want = wanted.get(key[0], {}).get(key[1], {}).get("level")
        if level != want and not (want is None and level in ("fine", "sign")):
            differ[key] = f"found {level}, expected {want or 'fine'}: {said(made, *key)}"
    for id_, rows in wanted.items():
        for verdict in rows:
            if (id_, verdict) not in found:
                differ[id_, verdict] = "expected, and not there"
    assert not differ, "\n".join(f"{k}: {v}" for k, v in differ.items())


@pytest.mark.parametrize("name", NAMES)
def test_every_expectation_says_why_and_whose_rule(name):
    for rows in expected(name)["verdicts"].values():
        for one in rows.values():
            assert one["level"] in ("fine", "look", "hold", "sign")
            assert len(one["why"]) > 8
            assert len(one["source"]) > 8


def test_juniper_flat_without_a_crossover_holds_for_its_far_rooms():
    made = plan(changed(crossover_planned_count=0.0))
    levels = found_levels(made)
    assert levels["supply-side", "rooms-in-share"] == "hold"
    assert levels["crossover-choice", "both-halves"] == "hold"
    assert "master" in said(made, "supply-side", "rooms-in-share")


def test_juniper_flat_with_the_chosen_crossover_names_size_why_and_dampers():
    made = plan(changed())
    assert all(r["within"] for r in made.answers["supply-side"].tables["room_flows"])
    assert found_levels(made)["supply-side", "rooms-in-share"] != "hold"
    assert "Dampers to set" in said(made, "supply-side", "rooms-in-share")
    assert made.answers["crossover-choice"].values["crossover_size_in"].value == 14
    assert "14 in the far half gets" in said(made, "crossover-choice", "both-halves").replace(
        "\u00a0", " ")
