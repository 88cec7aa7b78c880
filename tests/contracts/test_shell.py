"""The command line keeps its contract: one answer, one exit status, no traceback."""

import io
import json
import subprocess
import sys

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from downflow.calculators import all_calculators
from downflow.cli import main
from downflow.demo import demo_job
from downflow.facts.job import job_data
from downflow.schema import answer_schema


def run(capsys, *words, stdin=None, monkeypatch=None):
    if stdin is not None:
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(stdin.encode())))
    status = main(words)
    return status, capsys.readouterr().out


def test_list_names_every_calculator(capsys):
    status, out = run(capsys, "list", "--json")
    assert status == 0
    assert {c["id"] for c in json.loads(out)} == set(all_calculators())


@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_solve_and_describe_without_a_file_are_the_demo(id_, capsys):
    status, out = run(capsys, "solve", id_, "--json")
    assert status == 0
    data = json.loads(out)
    jsonschema.validate(data, answer_schema())
    assert data["ok"]
    status, out = run(capsys, "describe", id_, "--json")
    examples = {i["name"]: i["example"] for i in json.loads(out)["inputs"]
                if i["example"] is not None}
    assert status == 0
    assert examples
    status, text = run(capsys, "solve", id_)
    assert status == 0
    assert text.strip()


@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_the_examples_of_describe_give_the_demo_answer(id_, capsys, tmp_path):
    _, described = run(capsys, "describe", id_, "--json")
    inputs = {i["name"]: {k: v for k, v in i["example"].items() if k != "at"}
              for i in json.loads(described)["inputs"] if i["example"] is not None}
    file = tmp_path / "inputs.json"
    file.write_text(json.dumps({"inputs": inputs}), encoding="utf-8")
    status, out = run(capsys, "solve", id_, "--json", str(file))
    assert status == 0, out
    _, demo = run(capsys, "solve", id_, "--json")
    wanted = json.loads(demo)["answer"]
    if id_ == "yearly-visit":  # a list of inputs is one visit, and a drift takes two
        wanted = {n: v for n, v in wanted.items() if n in json.loads(out)["answer"]}
        assert "yearly_minutes" in wanted
    assert json.loads(out)["answer"] == wanted


def test_plan_without_a_file_is_juniper_flat(capsys):
    status, out = run(capsys, "plan")
    assert status == 0
    assert out.startswith("Plan: Juniper Flat")


def test_plan_of_an_empty_job_says_what_is_missing_with_status_zero(capsys, tmp_path):
    file = tmp_path / "job.json"
    file.write_text(json.dumps({"downflow": 1, "id": "a", "name": "Empty"}), encoding="utf-8")
    status, out = run(capsys, "plan", str(file), "--json")
    assert status == 0
    answers = json.loads(out)["answers"]
    assert answers["backup-kit"]["ok"] is None
    assert "kit_sizes" in answers["backup-kit"]["missing"]


def test_plan_lists_the_worst_verdict_first(capsys):
    _, out = run(capsys, "plan", "--json")
    levels = [v["level"] for v in json.loads(out)["verdicts"]]
    assert levels == sorted(levels, key=["hold", "look", "fine"].index)


@pytest.mark.parametrize(("words", "said"), [
    (("solv",), "Did you mean solve?"),
    (("solve",), "Which calculator?"),
    (("solve", "backup-kitt"), "Did you mean backup-kit?"),
    (("solve", "backup-kit", "/no/such/file"), "No such file"),
    (("plan", "a", "b"), "too many"),
    (("schema", "house"), "schema job"),
    (("describe", "nothing-at-all-like-it"), "No calculator"),
    (("link",), "made from a job sheet"),
])
def test_a_wrong_call_says_what_is_wrong(words, said, capsys):
    status, out = run(capsys, *words)
    assert status == 2
    assert said in out


def test_schemas_are_schemas(capsys):
    for which in ("job", "answer"):
        _, out = run(capsys, "schema", which)
        jsonschema.Draft202012Validator.check_schema(json.loads(out))


def test_bad_input_is_listed_in_json(capsys, monkeypatch):
    status, out = run(capsys, "solve", "backup-kit", "-", "--json",
                      stdin='{"inputs": {"supply_v": 12, "kit_sizes": 3}}',
                      monkeypatch=monkeypatch)
    assert status == 2
    data = json.loads(out)
    assert data["ok"] is False
    assert {e["field"] for e in data["errors"]} == {"supply_v", "kit_sizes"}


values = st.recursive(st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=8),
                      lambda v: st.lists(v, max_size=3)
                      | st.dictionaries(st.text(max_size=6), v, max_size=3), max_leaves=10)
examples = dict(job_data(demo_job())["facts"])


@settings(max_examples=120, deadline=None)
@given(id_=st.sampled_from(sorted(all_calculators())), data=st.data())
def test_any_json_into_solve_gives_an_answer_or_reasons(id_, data):
    """Some of the demo's values in place, some replaced by anything at all."""
    import contextlib

    keep = data.draw(st.lists(st.sampled_from(sorted(examples)), max_size=40, unique=True))
    odd = data.draw(st.dictionaries(st.sampled_from(sorted(examples)) | st.text(max_size=5),
                                    values, max_size=3))
    whole = data.draw(st.booleans())
    body = {"inputs": {**{k: examples[k] for k in keep}, **odd}} if whole else data.draw(values)
    stdin, sys.stdin = sys.stdin, io.TextIOWrapper(io.BytesIO(json.dumps(body).encode()))
    out = io.StringIO()
    try:
        with contextlib.redirect_stdout(out):
            status = main(["solve", id_, "--json", "-"])
    finally:
        sys.stdin = stdin
    said = json.loads(out.getvalue())
    assert status in (0, 2)
    assert said["ok"] is (status == 0)
    if status == 2:
        assert said["errors"]
        assert all(e["message"] for e in said["errors"])


def test_the_module_runs_as_a_program():
    done = subprocess.run([sys.executable, "-m", "downflow", "list"], capture_output=True,
                          text=True, check=False)
    assert done.returncode == 0
    assert "backup-kit" in done.stdout
