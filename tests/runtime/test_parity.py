"""The same answers inside the runtime that ships as on the machine that builds it.

Two Pythons, two mathematical libraries and two builds of the standard library answer the
same questions: the worked example and seeded jobs, through every calculator.
"""

from __future__ import annotations

import json
import math
from typing import Any

import pytest
from make.common import SITE
from runtime.conftest import Shipped
from seeded_jobs import seeded_text

from downflow.bridge import handle
from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.facts.job import write_job

RELATIVE = 1e-9
SEEDS = range(1, 3)
JOBS = {"worked example": write_job(demo_job()), **{f"seed {n}": seeded_text(n) for n in SEEDS}}


def differences(here: Any, there: Any, at: str = "") -> list[str]:
    """Where two answers differ: numbers by more than a billionth, anything else at all."""
    number = (int, float)
    if isinstance(here, bool) or isinstance(there, bool):
        return [] if here is there else [f"{at}: {here} and {there}"]
    if isinstance(here, number) and isinstance(there, number):
        close = math.isclose(here, there, rel_tol=RELATIVE, abs_tol=1e-12)
        return [] if close else [f"{at}: {here} and {there}"]
    if isinstance(here, dict) and isinstance(there, dict) and here.keys() == there.keys():
        return [d for key in here for d in differences(here[key], there[key], f"{at}.{key}")]
    if isinstance(here, list) and isinstance(there, list) and len(here) == len(there):
        return [d for n, both in enumerate(zip(here, there, strict=True))
                for d in differences(*both, f"{at}[{n}]")]
    return [] if here == there else [f"{at}: {here!r} and {there!r}"]


def ask_here(request: dict[str, Any]) -> Any:
    return json.loads(handle(json.dumps(request)))


def both(shipped: Shipped, request: dict[str, Any]) -> tuple[Any, Any]:
    """The answers of this machine's Python and of the one that ships."""
    shipped.send(json.dumps(request))
    here = ask_here(request)
    return here, shipped.receive()


def test_the_comparison_sees_a_difference_of_a_millionth():
    assert differences({"a": [1.0]}, {"a": [1.000001]}) == [".a[0]: 1.0 and 1.000001"]
    assert differences({"a": [1.0]}, {"a": [1.0 + 1e-12]}) == []
    assert differences({"a": True}, {"a": 1}) != []
    assert differences({"a": 1}, {"b": 1}) != []


def text_differences(here: Any, there: Any) -> list[str]:
    """The same for what is painted: the first place in each text where two answers part."""
    parted = []
    for told in differences(here, there):
        one, other = here, there
        for key in told.split(":", 1)[0].removeprefix(".").split("."):
            one, other = one[key], other[key]
        if not (isinstance(one, str) and isinstance(other, str)):
            parted.append(told)
            continue
        start = next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), 0)
        parted.append(f"at {start}: {one[start - 60:start + 60]!r} "
                      f"and {other[start - 60:start + 60]!r}")
    return parted


@pytest.mark.parametrize("job", JOBS)
@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_a_calculator_answers_the_same(shipped: Shipped, id_: str, job: str):
    here, there = both(shipped, {"op": "answer", "id": id_, "job": JOBS[job]})
    assert differences(here, there) == []
    if job == "worked example":
        assert here["ok"] is True
        assert here["answer"]["ok"] is True


@pytest.mark.parametrize("seed", [None, *range(1, 21)])
def test_what_is_painted_is_the_same_to_the_byte(shipped: Shipped, seed: int | None):
    job, units = (None, "ip") if seed is None else (seeded_text(seed), ("ip", "si")[seed % 2])
    for id_ in all_calculators():
        request = {"op": "calculator", "id": id_, "job": job, "units": units, "ranged": False}
        assert text_differences(*both(shipped, request)) == [], id_


@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_a_page_holds_what_the_worker_paints_of_the_worked_example(shipped: Shipped, id_: str):
    request = {"op": "calculator", "id": id_, "job": None, "units": "ip", "ranged": True}
    page = (SITE / "calculators" / id_ / "index.html").read_text(encoding="utf-8")
    regions = shipped.ask(request)["regions"]
    assert "answer" in regions
    assert [name for name, painted in regions.items() if painted not in page] == []


@pytest.mark.parametrize("op", ["plan", "sheet", "measure", "first", "summary"])
def test_the_whole_job_is_painted_the_same(shipped: Shipped, op: str):
    request = {"op": op, "job": JOBS["worked example"], "units": "si", "ranged": True}
    assert text_differences(*both(shipped, request)) == []


def test_bad_input_is_refused_the_same_way(shipped: Shipped):
    for request in ({"op": "nothing"}, {"op": "open", "text": "{"},
                    {"op": "answer", "id": "no-such", "job": None}):
        here, there = both(shipped, request)
        assert there["ok"] is False
        assert here == there
