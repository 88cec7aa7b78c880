"""The command line: `python -m downflow list | describe | facts | solve | plan | link | schema`.

Exit status 0; 2 for bad input, with the reasons on standard output.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence
from typing import Any

from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.describe import describe, fact_data
from downflow.engine.answer import Answer, answer_data, by_worst, verdict_data
from downflow.facts import all_facts, nearest_name
from downflow.facts.checks import BadInput, problem
from downflow.facts.job import Job, inputs_to_job, job_from
from downflow.plan import Plan, in_order, plan, plan_data, the_chain
from downflow.schema import answer_schema, job_schema
from downflow.units import Quantity

USAGE = """\
usage: python -m downflow COMMAND

  list [--json]                  every calculator: id, title, phase
  facts [--json]                 every fact: name, label, kind, unit, range
  describe ID [--json]           inputs and outputs of a calculator
  solve ID [--json] [FILE|-]     inputs as JSON -> answer; no file: the demo
  plan [--json] [JOB.json|-]     a job sheet -> every answer; no file: the demo job
  link JOB.json [--site URL]     the homeowner link
  schema [job|answer]            JSON Schema
"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and returns its exit status."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    as_json = "--json" in words
    words = [w for w in words if w != "--json"]
    if not words or words[0] in ("-h", "--help", "help"):
        print(USAGE, end="")
        return 0 if words else 2
    command, rest = words[0], words[1:]
    commands = {"list": _list, "facts": _facts, "describe": _describe, "solve": _solve,
                "plan": _plan, "link": _link, "schema": _schema}
    try:
        if command not in commands:
            near = nearest_name(command, list(commands))
            raise BadInput([problem("command", f"No command is called {command[:40]}."
                                    + (f" Did you mean {near}?" if near else ""))])
        return commands[command](rest, as_json)
    except BadInput as bad:
        return _refused(bad.errors, as_json)
    except BrokenPipeError:
        return 0


def _refused(errors: list[dict[str, str]], as_json: bool) -> int:
    if as_json:
        _print({"ok": False, "errors": errors})
    else:
        for error in errors:
            print(f"{error['field']}: {error['message']}")
    return 2


def _print(data: Any) -> None:
    print(json.dumps(data, ensure_ascii=False, indent=1, allow_nan=False))


def _known(words: list[str], at_most: int) -> str:
    if not words:
        raise BadInput([problem("id", "Which calculator? `list` names them.")])
    if len(words) > at_most:
        raise BadInput([problem("arguments", f"One word too many: {words[at_most][:60]}.")])
    id_ = words[0]
    if id_ not in all_calculators():
        near = nearest_name(id_, list(all_calculators()))
        raise BadInput([problem("id", f"No calculator is called {id_[:60]}."
                                + (f" Did you mean {near}?" if near else ""))])
    return id_


def _read(name: str) -> Any:
    try:
        if name == "-":
            raw = sys.stdin.buffer.read()
        else:
            with open(name, "rb") as file:
                raw = file.read()
    except OSError as error:
        why = error.strerror or "cannot be read"
        raise BadInput([problem("file", f"{name}: {why}.")]) from None
    try:
        return json.loads(raw.decode("utf-8-sig"), parse_constant=_no_constant)
    except (ValueError, RecursionError):
        raise BadInput([problem("file", f"{name}: not JSON.")]) from None


def _no_constant(name: str) -> float:
    raise ValueError(f"{name} is no number")


def _list(words: list[str], as_json: bool) -> int:
    if words:
        raise BadInput([problem("arguments", f"One word too many: {words[0][:60]}.")])
    rows = [all_calculators()[i].calculator for i in in_order()]
    if as_json:
        _print([{"id": c.id, "title": c.title, "phase": c.phase} for c in rows])
        return 0
    for c in rows:
        print(f"{c.id:28} {c.title:44} {c.phase}")
    return 0


def _facts(words: list[str], as_json: bool) -> int:
    names = sorted(all_facts())
    if as_json:
        _print([fact_data(all_facts()[n]) for n in names])
        return 0
    for name in names:
        fact = all_facts()[name]
        if not words or any(w in name or w in fact.label.lower() for w in words):
            mark = "given" if fact.given else fact.kind
            print(f"{name:34} {mark:8} {fact.unit:16} {fact.label}")
    return 0


def _describe(words: list[str], as_json: bool) -> int:
    data = describe(_known(words, 1))
    if as_json:
        _print(data)
        return 0
    print(f"{data['title']}: {data['question']}\n\nreads")
    for one in data["inputs"]:
        ends = one.get("range") or [None, None]
        span = f"{ends[0]} to {ends[1]}" if None not in ends else ""
        print(f"  {one['name']:32} {one['kind']:8} {one['unit']:12} {span:18} {one['label']}")
    print("\ngives")
    for one in data["outputs"]:
        print(f"  {one['name']:32} {'':8} {one['unit']:12} {'':18} {one['label']}")
    return 0


def _solve(words: list[str], as_json: bool) -> int:
    id_ = _known(words, 2)
    chain = the_chain()
    if len(words) == 1:
        job = demo_job()
    else:
        data = _read(words[1])
        if not isinstance(data, dict) or set(data) - {"inputs"} or "inputs" not in data:
            raise BadInput([problem("inputs", 'Give {"inputs": {name: value, …}}.')])
        job = inputs_to_job(data["inputs"], chain.inputs(id_))
    answer = chain.solve(id_, job)
    if answer.ok is None:
        raise BadInput([problem(n, f"{all_facts()[n].label} is missing. "
                                   f"{all_facts()[n].how}".strip()) for n in answer.missing])
    if answer.ok is False:
        raise BadInput(answer.errors)
    if as_json:
        _print(answer_data(answer))
    else:
        print("\n".join(_answer_lines(answer)))
    return 0


def _answer_lines(answer: Answer) -> list[str]:
    lines = [answer.calculator.title]
    for name in answer.shown():
        value = answer.values[name]
        low, high = (Quantity(v, value.unit, value.decimals).text()
                     for v in (value.low, value.high))
        span = "" if value.low == value.high else f"   between {low} and {high}"
        shown = Quantity(value.value, value.unit, value.decimals).text()
        lines.append(f"  {all_facts()[name].label:48} {shown:>18}{span}")
    for name, rows in answer.tables.items():
        lines.append(f"  {all_facts()[name].label}: {len(rows)} rows")
    for verdict in by_worst(answer.verdicts):
        lines += _verdict_lines(answer.calculator.id, verdict_data(verdict))
    following = answer.measure_next
    if following is not None:
        lines.append(f"  measure next: {all_facts()[following.field].label}")
    for name in answer.assumed:
        assumption = all_facts()[name].assumption
        if assumption is not None:
            lines.append(f"  assumed: {all_facts()[name].label} = {assumption.value} "
                         f"({assumption.why})")
    return lines


def _verdict_lines(id_: str, data: dict[str, Any], *, alone: bool = True) -> list[str]:
    words = " ".join(t for t in (data["text"], data["doubt"], data["do"]) if t)
    signs = f" For the {data['signs']}." if data["signs"] and alone else ""
    released = data.get("released")
    tail = f" Released by {released['by']}, {released['trade']}." if released else ""
    level = "sign" if data["to_sign"] else data["level"]
    return [f"  {level:5} {id_}/{data['id']}: {words}{signs}{tail}"]


def _plan_lines(made: Plan) -> list[str]:
    counts = made.counts()
    lines = [f"Plan: {made.job.name}",
             f"{counts['hold']} hold, {counts['look']} look, {counts['sign']} to be signed, "
             f"{counts['fine']} fine.", ""]
    trades = dict.fromkeys(v.signs for _, v in made.verdicts() if v.to_sign)
    for level in ("hold", "look", "sign", "fine"):
        for who in trades if level == "sign" else ("",):
            for id_, verdict in made.verdicts():
                stands = "sign" if verdict.to_sign else verdict.level
                if stands == level and (not who or verdict.signs == who):
                    lines += _verdict_lines(id_, verdict_data(verdict), alone=level != "sign")
            if who:
                lines.append(f"        {who}: name, licence, date ________")
    lines.append("")
    for answer in made.answers.values():
        if answer.ok:
            lines += [one for one in _answer_lines(answer) if not one.startswith(
                ("  hold ", "  look ", "  sign ", "  fine "))]
        elif answer.errors:
            lines.append(f"{answer.calculator.title}: "
                         + "; ".join(e["message"] for e in answer.errors))
        else:
            lines.append(f"{answer.calculator.title}: missing "
                         + ", ".join(all_facts()[n].label for n in answer.missing))
    return lines


def _job(words: list[str]) -> Job:
    if len(words) > 1:
        raise BadInput([problem("arguments", f"One word too many: {words[1][:60]}.")])
    return job_from(_read(words[0])) if words else demo_job()


def _plan(words: list[str], as_json: bool) -> int:
    made = plan(_job(words))
    if as_json:
        _print(plan_data(made))
    else:
        print("\n".join(_plan_lines(made)))
    return 0


def _link(words: list[str], as_json: bool) -> int:
    site = ""
    if "--site" in words:
        at = words.index("--site")
        if at + 1 >= len(words):
            raise BadInput([problem("site", "--site takes the address of the handbook.")])
        site = words[at + 1]
        words = words[:at] + words[at + 2:]
    if not words:
        raise BadInput([problem("file", "A link is made from a job sheet: link JOB.json.")])
    from downflow.homeowner import link

    made = link(_job(words), site)
    if as_json:
        _print({"ok": True, "link": made})
    else:
        print(made)
    return 0


def _schema(words: list[str], as_json: bool) -> int:
    which = words[0] if words else "answer"
    if which not in ("job", "answer") or len(words) > 1:
        raise BadInput([problem("schema", "schema job, or schema answer.")])
    _print(job_schema() if which == "job" else answer_schema())
    return 0
