"""The same practice home, question and grade inside the runtime that ships."""

from __future__ import annotations

import json
import time
from statistics import median
from typing import Any

import pytest
from test_parity import ask_here, differences, text_differences

from downflow.practice import grade
from downflow.practice.bench import CAUSES
from downflow.practice.homes import home

SEEDS = range(0, 1000, 25)
HALF_SECOND = 0.5


def truth_here(seed: int) -> Any:
    one = home(seed)
    return {"facts": one.facts, "faults": list(one.faults), "visit": one.visit,
            "numbers": grade.solution(seed).numbers}


def test_a_number_is_the_same_home_here_and_in_the_browsers_python(shipped):
    shipped.run("exec('import json; from downflow.practice import grade, homes')")
    for seed in SEEDS:
        there = json.loads(shipped.run(
            f"(lambda h: json.dumps({{'facts': h.facts, 'faults': list(h.faults), "
            f"'visit': h.visit, 'numbers': grade.solution({seed}).numbers}}))"
            f"(homes.home({seed}))"))
        assert differences(json.loads(json.dumps(truth_here(seed))), there) == [], seed


@pytest.mark.parametrize("units", ["ip", "si"])
def test_a_home_is_painted_measured_and_graded_the_same(shipped, units: str):
    for seed in range(3, 11):
        request = {"op": "practice_home", "seed": seed, "units": units}
        here, there = ask_here(request), shipped.ask(request)
        assert text_differences(here, there) == []
        for id_ in grade.all_measures(home(seed)):
            request = {"op": "practice_measure", "state": here["state"], "id": id_,
                       "units": units}
            here = ask_here(request)
        assert text_differences(here, shipped.ask(request)) == []
        request = {"op": "practice_answer", "state": here["state"], "units": units,
                   "faults": {}, "numbers": {}, "go_on": "yes"}
        assert text_differences(ask_here(request), shipped.ask(request)) == []


def test_questions_and_the_bench_are_the_same(shipped):
    for seed in range(30):
        for op, more in (("drill", {}), ("drill_answer", {"answer": "1"})):
            request = {"op": op, "seed": seed, "kind": ("number", "which-is-wrong", "what-next")[
                seed % 3], "units": ("ip", "si")[seed % 2], **more}
            assert text_differences(ask_here(request), shipped.ask(request)) == []
    for cause in CAUSES:
        request = {"op": "bench", "cause": cause.id, "severity": cause.severities[-1].id,
                   "units": "ip"}
        assert text_differences(ask_here(request), shipped.ask(request)) == []


def test_making_and_grading_a_home_take_a_moment(shipped):
    """In the browser's own test the medians are held to 300 ms; here, on a machine that runs
    other tests beside, to half a second."""
    made, graded = [], []
    for seed in range(500, 515):
        start = time.perf_counter()
        reply = shipped.ask({"op": "practice_home", "seed": seed, "units": "ip"})
        made.append(time.perf_counter() - start)
        start = time.perf_counter()
        reply = shipped.ask({"op": "practice_answer", "state": reply["state"], "faults": {},
                             "numbers": {}, "go_on": "no", "units": "ip"})
        graded.append(time.perf_counter() - start)
        assert reply["ok"] is True
    assert median(made) < HALF_SECOND
    assert median(graded) < HALF_SECOND
