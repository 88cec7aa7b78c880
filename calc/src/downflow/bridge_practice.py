"""What the browser asks of practice; the bridge passes it on. JSON in, JSON out, no state kept.

op               request                                            reply
practice_home    seed | state, units                                state, regions, seed
practice_measure state, id, units                                   state, regions
practice_answer  state, faults {id: place}, numbers {name: typed},  state, regions, level,
                 go_on, units                                       skills {skill: result}
practice_job     state, at                                          job, id, name
drill            seed, [kind], [skill], units                       html, seed
drill_answer     seed, [kind], [skill], answer, units               html, right, skill
lesson_answer    lesson, answer, units                              html, right, skill
bench            cause, severity, units                             html
progress         record, units                                      record, html
progress_add     record, what, which, skills {skill: result}, at    record
progress_seen    record, skill, what, by, trade, at                 record, html
progress_name    record, learner                                    record, html
progress_merge   record, theirs                                     record, html
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from typing import Any

from downflow.facts.checks import BadInput, problem
from downflow.facts.job import write_job
from downflow.practice import bench, desk, drills, lessons, progress
from downflow.practice.skills import SKILLS
from downflow.render import practice as render
from downflow.units import convert, parse_number, shown_unit

Request = dict[str, Any]
Reply = dict[str, Any]


def _system(request: Request) -> str:
    return "si" if request.get("units") == "si" else "ip"


def _text(request: Request, key: str, most: int = 300) -> str:
    value = request.get(key, "")
    if not isinstance(value, str) or len(value) > most:
        raise BadInput([problem(key, f"Text of at most {most} characters.")])
    return value


def _texts(request: Request, key: str) -> dict[str, str]:
    value = request.get(key, {})
    if not isinstance(value, dict) or not all(
            isinstance(k, str) and isinstance(v, str) and len(v) <= 60 for k, v in value.items()):
        raise BadInput([problem(key, "Texts by name.")])
    return value


def _desk(request: Request) -> desk.Desk:
    return desk.read_desk(_text(request, "state", 20_000))


def _shown(one: desk.Desk, request: Request) -> Reply:
    return {"state": desk.write_desk(one), "seed": one.seed,
            "regions": render.home_regions(one, _system(request))}


def _home(request: Request) -> Reply:
    if request.get("state"):
        return _shown(_desk(request), request)
    return _shown(desk.Desk(desk.seed_of(request.get("seed"))), request)


def _measure(request: Request) -> Reply:
    return _shown(desk.taken(_desk(request), _text(request, "id")), request)


def _answer(request: Request) -> Reply:
    one = desk.decided(_desk(request), _texts(request, "faults"), _texts(request, "numbers"),
                       _text(request, "go_on", 10), _system(request))
    graded = one.grade()
    results = {skill: "shown" if well else "not yet" if graded.level == "not yet" else "not all"
               for skill, well in graded.skills.items()}
    return {**_shown(one, request), "level": graded.level, "skills": results}


def _job(request: Request) -> Reply:
    made = desk.as_job(_desk(request))
    at = _text(request, "at", 40)
    facts = {n: dataclasses.replace(e, at=at) for n, e in made.facts.items()}
    made = dataclasses.replace(made, facts=facts)
    return {"job": write_job(made), "id": made.id, "name": made.name}


def _question(request: Request) -> drills.Question:
    try:
        return drills.question(desk.seed_of(request.get("seed")), _text(request, "kind"),
                               _text(request, "skill"))
    except ValueError as error:
        raise BadInput([problem("kind", str(error)[0].upper() + str(error)[1:] + ".")]) from None


def _drill(request: Request) -> Reply:
    one = _question(request)
    return {"html": str(render.question_html(one, _system(request))), "seed": one.seed}


def said(one: drills.Question, typed: str, system: str) -> float | str:
    """An answer as typed or chosen.

    Raises:
        BadInput: No answer, or no number where one is asked for.
    """
    if not typed.strip():
        raise BadInput([problem("answer", "Choose one." if one.options else "Type a number.")])
    if one.options:
        if typed not in {o.id for o in one.options}:
            raise BadInput([problem("answer", "Choose one of those above.")])
        return typed
    try:
        number = parse_number(typed)
    except ValueError:
        raise BadInput([problem("answer", f"A number. You typed {typed.strip()[:40]}.")]) from None
    return convert(number, shown_unit(one.unit, system), one.unit)


def _judged(one: drills.Question, request: Request, depth: int = render.DEPTH) -> Reply:
    system = _system(request)
    answer = said(one, _text(request, "answer"), system)
    right = one.is_right(answer)
    return {"html": str(render.explanation_html(one, answer, system, depth)), "right": right,
            "skill": one.skill}


def _drill_answer(request: Request) -> Reply:
    return _judged(_question(request), request)


def _lesson_answer(request: Request) -> Reply:
    try:
        one = lessons.question_of(_text(request, "lesson"))
    except ValueError as error:
        raise BadInput([problem("lesson", str(error))]) from None
    return _judged(one, request, render.LESSON_DEPTH)


def _bench(request: Request) -> Reply:
    try:
        found = bench.bench(_text(request, "cause"), _text(request, "severity"))
    except ValueError:
        raise BadInput([problem("cause", "Choose a cause, and how bad it is.")]) from None
    return {"html": str(render.bench_rows_html(found, _system(request)))}


# ---- the record -------------------------------------------------------------------------

def _record(request: Request, key: str = "record") -> progress.Progress:
    return progress.read_progress(_text(request, key, 2_000_000))


def _kept(one: progress.Progress) -> Reply:
    return {"record": progress.write_progress(one), "html": str(render.progress_rows_html(one))}


def _progress(request: Request) -> Reply:
    return _kept(_record(request))


def _add(request: Request) -> Reply:
    skills = _texts(request, "skills")
    known = {s.id for s in SKILLS}
    what = _text(request, "what")
    if not set(skills) <= known or not set(skills.values()) <= set(
            progress.RESULTS) or what not in progress.SOURCES:
        raise BadInput([problem("skills", "No such skill or result.")])
    one = progress.answered(_record(request), what, _text(request, "which"), skills,
                            _text(request, "at", 40))
    return {"record": progress.write_progress(one)}


def _seen(request: Request) -> Reply:
    if _text(request, "skill") not in {s.id for s in SKILLS}:
        raise BadInput([problem("skill", "Choose a skill.")])
    return _kept(progress.seen_done(
        _record(request), _text(request, "skill"), _text(request, "what"), _text(request, "by"),
        _text(request, "trade"), _text(request, "at", 40)))


def _name(request: Request) -> Reply:
    return _kept(dataclasses.replace(_record(request), learner=_text(request, "learner", 120)))


def _merge(request: Request) -> Reply:
    return _kept(progress.merged(_record(request), _record(request, "theirs")))


OPS: dict[str, Callable[[Request], Reply]] = {
    "practice_home": _home, "practice_measure": _measure, "practice_answer": _answer,
    "practice_job": _job, "drill": _drill, "drill_answer": _drill_answer,
    "lesson_answer": _lesson_answer, "bench": _bench, "progress": _progress,
    "progress_add": _add, "progress_seen": _seen, "progress_name": _name,
    "progress_merge": _merge,
}
"""What may be asked."""
