"""What the browser's worker asks of Python: JSON text in, JSON text out, never an exception.

A request is `{"op": name, …}`; a reply `{"ok": true, …}` or `{"ok": false, "errors": […]}`.
A job travels as the text of its file: the page stores it and never looks inside. `units`
is `ip` or `si`; `at` is the page's clock, an ISO time.

op            request                                        reply
hello                                                        version, calculators
open          text                                           job, id, name, facts, at, confirmed
new           id, name                                       job, id, name
rename        job, name                                      job, name
copy          job, id, name                                  job, id, name
enter         job, name, typed, units, from, at, [visit]     job, changed
table         job, name, rows [{column: typed}], units, from, at job, changed
put           job, facts {name: entry}                       job, changed
visit         job, id, date, kind                            job
confirm       job, visit ("": the latest; date for a first one), step, at, by ("" takes back)  job
photo         job, id, of, at                                job
photo_gone    job, id                                        job
release       job, calculator, verdict, by, trade, reason, date   job
take_back     job, calculator, verdict                       job
calculator    id, job|null, units, ranged, [example, form]   regions, pin, level, say, state
change        enter's or table's, with id, ranged, [example, new {id, name}]   both replies
plan          job|null, units, ranged                        html, counts
sheet         job|null, units                                html
fact          name, job|null, units                          html
measure       job|null, units                                html
first         job|null, units, ranged                        regions
summary       job|null, units                                html, counts
hand_over     job|null, units, site                          html, link
weather       text, job|null, units, at                      say, facts (for put), kwh
answer        id, job|null                                   answer (by the shell's contract)
record        job|null, units, [ranged]                      html
papers        job|null, units, [ranged]                      html, csv, name
merge         mine, theirs, units                            job, differences
take          job, theirs, names                             job
places        query, index, texts, units, [job], [town]      need, or stations, towns, notes
station       station, query, index, texts, [town], job, at  need, or job, kept
practice_home, practice_measure, practice_answer, practice_job, drill, drill_answer,
lesson_answer, bench, progress, progress_…      see bridge_practice.py

The two about places take the texts of the site's place files: `index` is that of
`index.json`, `texts` those asked for so far by name. A reply with `need` names files that are
still wanted. `town` is the number of a town in the last reply.

A table is entered whole, as it stands in the form, once each of its rows is full; what
is wrong or missing is named cell by cell, `hp_points[2].capacity_max_btuh`. The rows of
the worked example are never typed over: a table of one's own starts empty.
"""

from __future__ import annotations

import dataclasses
import functools
import json
from collections.abc import Callable, Sequence
from typing import Any

from downflow import __version__, places
from downflow.calculators import all_calculators
from downflow.demo import demo_job, with_example
from downflow.engine.answer import answer_data
from downflow.facts import Fact, all_facts
from downflow.facts.checks import BadInput, check, problem, range_text
from downflow.facts.job import (
    Entry,
    Job,
    Release,
    Visit,
    entry_from,
    job_from,
    merge,
    read_job,
    write_job,
)
from downflow.plan import plan, the_chain
from downflow.units import (
    Quantity,
    convert,
    parse_number,
    shown_decimals,
    shown_unit,
    typed_text,
    unit,
)

Request = dict[str, Any]
Reply = dict[str, Any]


def handle(text: str) -> str:
    """Answers one request."""
    try:
        request = json.loads(text)
        op = request.get("op") if isinstance(request, dict) else None
        if not isinstance(op, str) or op not in _OPS:
            raise BadInput([problem("op", "No such request.")])
        reply = {"ok": True, **_OPS[op](request)}
    except BadInput as bad:
        reply = {"ok": False, "errors": bad.errors}
    except (ValueError, KeyError, TypeError, RecursionError, ArithmeticError) as error:
        # A fault of ours: the page says so and keeps what was typed.
        reply = {"ok": False, "fault": f"{type(error).__name__}: {error}",
                 "errors": [problem("page", "This went wrong here, not by you. What you typed is "
                                            "kept.")]}
    return json.dumps(reply, ensure_ascii=False, allow_nan=False)


def _job(request: Request, key: str = "job") -> Job:
    text = request.get(key)
    if text is None:
        return demo_job()
    if not isinstance(text, str):
        raise BadInput([problem(key, "A job travels as the text of its file.")])
    return _read(text)


@functools.lru_cache(maxsize=8)
def _read(text: str) -> Job:
    """The job in a text; one text is asked about many times."""
    return read_job(text)


def _system(request: Request) -> str:
    return "si" if request.get("units") == "si" else "ip"


def _text(request: Request, key: str, most: int = 200) -> str:
    value = request.get(key, "")
    if not isinstance(value, str) or len(value) > most:
        raise BadInput([problem(key, f"Text of at most {most} characters.")])
    return value


def _kept(job: Job) -> Reply:
    """The reply of every request that changes a job: checked as if it came from a file."""
    text = write_job(job)
    _read(text)
    return {"job": text, "id": job.id, "name": job.name}


def _hello(request: Request) -> Reply:
    return {"version": __version__, "calculators": len(all_calculators())}


def _open(request: Request) -> Reply:
    job = read_job(_text(request, "text", 5_000_000))
    times = [e.at for e in job.facts.values()] + [e.at for v in job.visits
                                                  for e in v.facts.values()]
    confirmed = {step: said.get("at", "") for v in job.visits for step, said in v.confirmed.items()}
    return {**_kept(job), "facts": len(job.names()), "at": max(times, default=""),
            "confirmed": confirmed}


def _new(request: Request) -> Reply:
    return _kept(job_from({"downflow": 1, "id": _text(request, "id"),
                           "name": _text(request, "name")}))


def _rename(request: Request) -> Reply:
    return _kept(dataclasses.replace(_job(request), name=_text(request, "name")))


def _copy(request: Request) -> Reply:
    return _kept(dataclasses.replace(_job(request), id=_text(request, "id"),
                                     name=_text(request, "name")))


# ---- entering ---------------------------------------------------------------------------

def _fact(name: str) -> Fact:
    fact = all_facts().get(name)
    if fact is None:
        raise BadInput([problem(name, "No such fact.")])
    return fact


def typed_value(fact: Fact, typed: str, field: str, system: str) -> Any:
    """What a person typed for a fact, in the fact's own unit and at full precision.

    Raises:
        BadInput: With the allowed range in the reader's units.
    """
    if fact.kind == "number":
        try:
            number = parse_number(typed)
        except ValueError:
            shown = typed.strip()[:40]
            raise BadInput([problem(field, f"{fact.label}: a number, {range_text(fact, system)}. "
                                           f"You typed {shown}.")]) from None
        to = shown_unit(fact.unit, system)
        value, bad = check(fact, number, field, to, system)
        if bad:
            label = unit(to).label
            raise BadInput([problem(field, f"{fact.label}: {range_text(fact, system)}. You typed "
                                           f"{typed.strip()[:40]}{' ' + label if label else ''}.")])
        return value
    given: Any = typed
    if fact.kind == "yesno":
        given = {"yes": True, "no": False}.get(typed, typed)
    value, bad = check(fact, given, field, None, system)
    if bad:
        raise BadInput(bad)
    return value


def _enter(request: Request) -> Reply:
    job, path = _job(request), _text(request, "name")
    typed, system = _text(request, "typed", 2000), _system(request)
    fact = _fact(path)
    visit = request.get("visit")
    before = job.entry(path)
    origin = request.get("from") or (before.origin if before else "measured")
    noted = _text(request, "note", 2000) if "note" in request else None
    at = _text(request, "at", 40)
    entry: Entry | None = None
    if fact.kind == "table":
        # Of a table only where it comes from, or its note, changes by itself.
        if before is None:
            raise BadInput([problem(path, f"{fact.label}: enter a row first.")])
        entry = Entry(before.value, origin, at, before.note if noted is None else noted)
    elif typed.strip():
        value = _kept_digits(fact, before.value if before else None,
                             typed_value(fact, typed, path, system), system)
        # A note belongs to its value: with another value it goes, unless it came along.
        kept = before.note if before is not None and before.value == value else ""
        entry = Entry(value, origin, at, kept if noted is None else noted)
    changed = (before is None) != (entry is None) or (
        before is not None and entry is not None
        and (before.value, before.origin, before.note) != (entry.value, entry.origin, entry.note))
    if not changed:
        return {**_kept(job), "changed": False}
    return {**_kept(job.with_entry(path, entry, visit)), "changed": True}


def _table(request: Request) -> Reply:
    """Enters a whole table as it stands in the form: rows of typed texts."""
    job, name, system = _job(request), _text(request, "name"), _system(request)
    fact = _fact(name)
    typed_rows = request.get("rows")
    if not isinstance(typed_rows, list) or not all(isinstance(r, dict) for r in typed_rows):
        raise BadInput([problem(name, f"{fact.label}: rows, as a list.")])
    before = job.entry(name)
    if not typed_rows:
        return {**_kept(job.with_entry(name, None)), "changed": before is not None}
    problems: list[dict[str, str]] = []
    rows: list[dict[str, Any]] = []
    for index, typed_row in enumerate(typed_rows):
        row: dict[str, Any] = {}
        for column in fact.columns:
            typed = typed_row.get(column.name, "")
            if not isinstance(typed, str) or not typed.strip():
                continue
            old = None
            if before is not None and index < len(before.value):
                old = before.value[index].get(column.name)
            try:
                row[column.name] = _kept_digits(column, old, typed_value(
                    column, typed, f"{name}[{index}].{column.name}", system), system)
            except BadInput as bad:
                problems += bad.errors
        rows.append(row)
    if problems:
        raise BadInput(problems)
    value, bad_rows = check(fact, rows, name, None, system)
    if bad_rows:
        raise BadInput(bad_rows)
    origin = request.get("from") or (before.origin if before else "measured")
    entry = Entry(value, origin, _text(request, "at", 40), before.note if before else "")
    if before is not None and (before.value, before.origin) == (entry.value, entry.origin):
        return {**_kept(job), "changed": False}
    return {**_kept(job.with_entry(name, entry, request.get("visit"))), "changed": True}


def _kept_digits(column: Fact, old: Any, new: Any, system: str) -> Any:
    """The old number where the field still shows it: a shown number has fewer digits."""
    if column.kind != "number" or not isinstance(old, (int, float)):
        return new
    to = shown_unit(column.unit, system)
    shown = typed_text(convert(float(old), column.unit, to),
                       shown_decimals(column.decimals, column.unit, to))
    typed = typed_text(convert(float(new), column.unit, to),
                       shown_decimals(column.decimals, column.unit, to))
    return old if shown == typed else new


def _put(request: Request) -> Reply:
    job = _job(request)
    facts = request.get("facts")
    if not isinstance(facts, dict):
        raise BadInput([problem("facts", "An object of names and values.")])
    problems: list[dict[str, str]] = []
    changed: list[str] = []
    for name, raw in facts.items():
        _fact(name)
        entry = entry_from(name, raw, name, problems)
        if entry is not None:
            job = job.with_entry(name, entry)
            changed.append(name)
    if problems:
        raise BadInput(problems)
    return {**_kept(job), "changed": changed}


def _visit(request: Request) -> Reply:
    job = _job(request)
    one = Visit(_text(request, "id"), _text(request, "date"), _text(request, "kind"))
    return _kept(dataclasses.replace(job, visits=(*job.visits, one)))


def _confirm(request: Request) -> Reply:
    job = _job(request)
    identity, step = _text(request, "visit"), _text(request, "step")
    visits = list(job.visits)
    if not identity:
        # Whatever visit is under way; the first tick of a job begins one.
        if not visits:
            visits.append(Visit("first visit", _text(request, "date"), "survey"))
        identity = max(visits, key=lambda v: v.date).id
    index = next((i for i, v in enumerate(visits) if v.id == identity), None)
    if index is None:
        raise BadInput([problem("visit", "No such visit.")])
    confirmed = dict(visits[index].confirmed)
    by = _text(request, "by")
    if by:
        confirmed[step] = {"at": _text(request, "at", 40), "by": by}
    else:
        confirmed.pop(step, None)
    visits[index] = dataclasses.replace(visits[index], confirmed=confirmed)
    return _kept(dataclasses.replace(job, visits=tuple(visits)))


def _photo(request: Request) -> Reply:
    """Notes a photo of a reading or hold point; the picture itself stays beside the sheet."""
    job = _job(request)
    one = {name: _text(request, name, 120) for name in ("id", "of", "at")}
    for name in ("id", "of"):
        if not one[name] or any(c.isspace() for c in one[name]):
            raise BadInput([problem(name, "A short name without blanks.")])
    kept = tuple(p for p in job.photos if p.get("id") != one["id"])
    return _kept(dataclasses.replace(job, photos=(*kept, one)))


def _photo_gone(request: Request) -> Reply:
    job, gone = _job(request), _text(request, "id")
    return _kept(dataclasses.replace(
        job, photos=tuple(p for p in job.photos if p.get("id") != gone)))


def _release(request: Request) -> Reply:
    job = _job(request)
    names = [f.name for f in dataclasses.fields(Release)]
    one = Release(**{n: _text(request, n, 400) for n in names})
    kept = tuple(r for r in job.released
                 if (r.calculator, r.verdict) != (one.calculator, one.verdict))
    return _kept(dataclasses.replace(job, released=(*kept, one)))


def _take_back(request: Request) -> Reply:
    job = _job(request)
    which = (_text(request, "calculator"), _text(request, "verdict"))
    return _kept(dataclasses.replace(job, released=tuple(
        r for r in job.released if (r.calculator, r.verdict) != which)))


# ---- painting ---------------------------------------------------------------------------

def _calculator(request: Request) -> Reply:
    from downflow import render

    id_ = _text(request, "id")
    if id_ not in all_calculators():
        raise BadInput([problem("id", "No such calculator.")])
    job: Job | None = None if request.get("job") is None else _job(request)
    example: frozenset[str] = frozenset()
    if job is not None and request.get("example"):
        job, example = with_example(job)
    reply: Reply = render.calculator_reply(
        id_, job, _system(request), ranged=bool(request.get("ranged", True)), example=example,
        form=bool(request.get("form", True)))
    return reply


def _change(request: Request) -> Reply:
    """Enters one fact and works the calculator out anew, in one request.

    With no job open, `new` names the one that begins with this fact.
    """
    asked = dict(request)
    if asked.get("job") is None:
        begun = asked.get("new")
        if not isinstance(begun, dict):
            raise BadInput([problem("new", "An id and a name for the job that begins.")])
        asked["job"] = _new(begun)["job"]
    entered = _table(asked) if "rows" in asked else _enter(asked)
    return {**entered, **_calculator({**asked, "job": entered["job"], "form": False})}


def _plan(request: Request) -> Reply:
    from downflow import render

    job = None if request.get("job") is None else _job(request)
    made = plan(job or demo_job(), ranged=bool(request.get("ranged", True)))
    return {"html": render.plan_html(made, _system(request), example=job is None),
            "counts": made.counts()}


def _sheet(request: Request) -> Reply:
    from downflow import render

    job = None if request.get("job") is None else _job(request)
    return {"html": render.sheet_html(job, _system(request))}


def _fact_form(request: Request) -> Reply:
    from downflow import render

    job = None if request.get("job") is None else _job(request)
    return {"html": render.fact_html(_fact(_text(request, "name")).name, job, _system(request))}


def _measure(request: Request) -> Reply:
    from downflow import render

    made = plan(_job(request))
    return {"html": render.measure_first_html(made, _system(request))}


def _first(request: Request) -> Reply:
    from downflow import render

    job = None if request.get("job") is None else _job(request)
    reply: Reply = render.first_answer_reply(job, _system(request),
                                             ranged=bool(request.get("ranged", True)))
    return reply


def _summary(request: Request) -> Reply:
    from downflow import render

    job = None if request.get("job") is None else _job(request)
    reply: Reply = render.summary_reply(job, _system(request),
                                        ranged=bool(request.get("ranged", True)))
    return reply


def _hand_over(request: Request) -> Reply:
    from downflow import homeowner, render

    job = None if request.get("job") is None else _job(request)
    site, system = _text(request, "site", 300), _system(request)
    return {"html": render.hand_over_inner_html(job, system, site),
            "link": homeowner.link(job or demo_job(), site, system)}


def _weather(request: Request) -> Reply:
    """A weather file: its bins as facts for the job, and its year hour by hour."""
    from downflow import render
    from downflow.physics import climate_year
    from downflow.weather import LONGEST_TEXT, WeatherFileError, parse

    text = request.get("text")
    if not isinstance(text, str) or len(text) > LONGEST_TEXT:
        raise BadInput([problem("weather_bins", "That is no weather file: it is far too long.")])
    try:
        year = parse(text)
    except WeatherFileError as bad:
        raise BadInput([problem("weather_bins", f"{bad}.")]) from bad
    months = year.months_f()
    rows = [{"month": number, "outdoor_f": b.outdoor_f, "hours": b.hours}
            for number, month in enumerate(months, 1)
            for b in climate_year.bins_from_hours(month)]
    job = None if request.get("job") is None else _job(request)
    kwh = hourly_kwh(job or demo_job(), months)
    at = _text(request, "at")
    place = ", ".join(part for part in (year.place, year.region, year.station) if part)
    facts: Reply = {
        "weather_bins": {"rows": rows, "from": "data sheet", "at": at,
                         "note": f"{year.format}, {len(year.hours):,} hours"},
        "weather_place": {"value": place[:120], "from": "data sheet", "at": at}}
    return {"facts": facts, "kwh": kwh,
            "say": render.weather_said(place, len(year.hours), year.elevation_ft, kwh,
                                       _system(request))}


def hourly_kwh(job: Job, months_f: Sequence[Sequence[float]]) -> float | None:
    """Electricity for heating, each hour of a file by itself; nothing where facts are missing."""
    answer = the_chain().solve("year-of-this-home", job, ranged=False)
    if not answer.ok or answer.sheet is None:
        return None
    from downflow.calculators.year_of_this_home import hour_by_hour

    return hour_by_hour(answer.sheet.job, answer.sheet.values["season_balance_f"], months_f)


def _answer(request: Request) -> Reply:
    id_ = _text(request, "id")
    if id_ not in all_calculators():
        raise BadInput([problem("id", "No such calculator.")])
    return {"answer": answer_data(the_chain().solve(id_, _job(request)), _system(request))}


# ---- two devices ------------------------------------------------------------------------

def _merge(request: Request) -> Reply:
    from downflow import render

    mine, theirs = _job(request, "mine"), _job(request, "theirs")
    if mine.id != theirs.id:
        raise BadInput([problem("file", f"That file is another job, {theirs.name}. Open it beside "
                                        "this one instead.")])
    job, differences = merge(mine, theirs)
    system = _system(request)
    return {**_kept(job), "differences": [
        {"name": d.name, "visit": d.visit, "label": _fact(d.name).label,
         "mine": render.entry_text(d.name, d.mine, system), "mine_at": d.mine.at,
         "theirs": render.entry_text(d.name, d.theirs, system), "theirs_at": d.theirs.at}
        for d in differences]}


def _take(request: Request) -> Reply:
    """Takes the other device's value for the named facts."""
    job, theirs = _job(request), _job(request, "theirs")
    names = request.get("names")
    if not isinstance(names, list):
        raise BadInput([problem("names", "A list of facts.")])
    for name in names:
        entry = theirs.entry(_fact(str(name)).name)
        if entry is not None:
            job = job.with_entry(str(name), entry)
    return _kept(job)


# ---- places -----------------------------------------------------------------------------

@functools.lru_cache(maxsize=2)
def _index(text: str) -> places.Index:
    return places.read_index(text)


def _looked_up(request: Request) -> tuple[list[str], places.Found | None, places.Index]:
    """Files still wanted, or what was found."""
    index = _index(_text(request, "index", 400_000))
    query = _text(request, "query", places.LONGEST_QUERY)
    texts = _texts(request)
    need = [n for n in places.files_for(query, index) if n not in texts]
    if need:
        return need, None, index
    entry = None if request.get("job") is None else _job(request).entry("elevation_ft")
    of_home = entry is not None and not entry.note.startswith(places.STATION_HEIGHT)
    elevation = float(entry.value) if entry is not None and of_home else None
    found = places.search(query, index, texts, elevation)
    number = request.get("town")
    if isinstance(number, int) and 0 <= number < len(found.towns):
        town = found.towns[number]
        name = places.file_name(town.state)
        if name not in texts:
            return [name], None, index
        found = places.near_town(town, places.read_state(texts[name]), index, elevation)
    return [], found, index


def _texts(request: Request) -> dict[str, str]:
    texts = request.get("texts", {})
    if not isinstance(texts, dict) or not all(isinstance(t, str) for t in texts.values()):
        raise BadInput([problem("texts", "The place files, by name.")])
    return texts


def _places(request: Request) -> Reply:
    try:
        need, found, _ = _looked_up(request)
    except (places.PlaceError, places.PlaceFileError) as error:
        raise BadInput([problem("query", str(error))]) from None
    if found is None:
        return {"need": need}
    system = _system(request)

    def said(value: float | None, name: str) -> str:
        return "" if value is None else Quantity(value, name, 0).text(system)

    return {
        "stations": [{"id": m.station.station_id, "name": m.station.name,
                      "state": m.station.state, "distance": said(m.miles, "mile"),
                      "elevation": said(m.station.elevation_ft, "ft"), "caution": m.caution,
                      "height": places.height_text(m, system)}
                     for m in found.matches],
        "towns": [{"name": t.name, "state": t.state} for t in found.towns],
        "notes": list(found.notes)}


def _station(request: Request) -> Reply:
    """Puts a station's climate on the sheet; what is better known there stays."""
    try:
        need, found, index = _looked_up(request)
        if found is None:
            return {"need": need}
        texts, station = _texts(request), _text(request, "station")
        wanted = [places.file_of(index, station)]
        if found.area is not None:
            wanted.append(places.file_name(found.area.state))
        missing = [n for n in wanted if n not in texts]
        if missing:
            return {"need": missing}
        home = places.read_state(texts[wanted[1]]) if len(wanted) > 1 else None
        facts = places.facts_for(station, places.read_state(texts[wanted[0]]), index, found.area,
                                 home)
    except (places.PlaceError, places.PlaceFileError) as error:
        raise BadInput([problem("query", str(error))]) from None
    job, kept = _job(request), []
    problems: list[dict[str, str]] = []
    for name, raw in facts.items():
        before = job.entry(name)
        if before is not None and before.origin in ("measured", "data sheet"):
            kept.append(_fact(name).label)
            continue
        entry = entry_from(name, {**raw, "at": _text(request, "at", 40)}, name, problems)
        if entry is not None:
            job = job.with_entry(name, entry)
    if problems:
        raise BadInput(problems)
    return {**_kept(job), "kept": kept}


def _record(request: Request) -> Reply:
    from downflow.render.record import record_html

    job = None if request.get("job") is None else _job(request)
    return {"html": str(record_html(job, _system(request),
                                    ranged=bool(request.get("ranged", True))))}


def _papers(request: Request) -> Reply:
    from downflow import papers
    from downflow.render.record import papers_html

    example = request.get("job") is None
    made = plan(_job(request), ranged=bool(request.get("ranged", True)))
    return {"html": str(papers_html(made, _system(request), example=example)),
            "csv": papers.csv_text(made, _system(request)), "name": made.job.name}


def _practice(request: Request) -> Reply:
    """Practice has its own requests, brought in when the first of them is asked."""
    from downflow.bridge_practice import OPS

    return OPS[str(request["op"])](request)


_PRACTICE = ("practice_home", "practice_measure", "practice_answer", "practice_job", "drill",
             "drill_answer", "lesson_answer", "bench", "progress", "progress_add",
             "progress_seen", "progress_name", "progress_merge")

_OPS: dict[str, Callable[[Request], Reply]] = {
    **dict.fromkeys(_PRACTICE, _practice),
    "photo": _photo, "photo_gone": _photo_gone, "record": _record, "papers": _papers,
    "hello": _hello, "open": _open, "new": _new, "rename": _rename, "copy": _copy,
    "enter": _enter, "table": _table, "put": _put, "visit": _visit, "confirm": _confirm,
    "release": _release, "take_back": _take_back, "calculator": _calculator, "plan": _plan,
    "change": _change, "fact": _fact_form, "measure": _measure, "first": _first,
    "sheet": _sheet, "summary": _summary, "answer": _answer, "merge": _merge, "take": _take,
    "places": _places, "station": _station,
    "hand_over": _hand_over, "weather": _weather,
}
