"""The job sheet: all the facts of one job, and where each value came from.

The sheet is JSON. What this version does not know is kept under `extra`, so that a
sheet written by a later version survives a visit to an older one.
"""

from __future__ import annotations

import dataclasses
import datetime
import json
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from downflow.facts import FROMS, all_facts, nearest_name
from downflow.facts.checks import BadInput, check, problem

VERSION = 1
VISIT_KINDS = ("survey", "commission", "yearly", "call")

MIGRATIONS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""For each older version: what makes its sheet into one of the next version."""


@dataclass(frozen=True)
class Entry:
    """One value on the sheet.

    Attributes:
        value: In the fact's own unit. For a table: a list of rows.
        origin: `measured`, `data sheet`, `estimated`, or `assumed`.
        at: When it was entered, ISO date and time, or empty.
        note: Whatever the crew wrote beside it.
    """

    value: Any
    origin: str = "estimated"
    at: str = ""
    note: str = ""


@dataclass(frozen=True)
class Visit:
    """One visit: its readings, and the hold points confirmed at it."""

    id: str
    date: str
    kind: str
    facts: dict[str, Entry] = field(default_factory=dict)
    confirmed: dict[str, dict[str, str]] = field(default_factory=dict)


@dataclass(frozen=True)
class Release:
    """A hold that a named person took upon themselves."""

    calculator: str
    verdict: str
    by: str
    trade: str
    reason: str
    date: str


@dataclass(frozen=True)
class Job:
    """One job. Values are looked up by fact name, whether of the home or of a visit."""

    id: str
    name: str
    facts: dict[str, Entry] = field(default_factory=dict)
    visits: tuple[Visit, ...] = ()
    released: tuple[Release, ...] = ()
    photos: tuple[dict[str, Any], ...] = ()
    extra: dict[str, Any] = field(default_factory=dict)

    def entry(self, name: str) -> Entry | None:
        """The value of a fact: of the home, or of the latest visit that has it."""
        found = self.facts.get(name)
        if found is not None:
            return found
        for visit in sorted(self.visits, key=lambda v: v.date, reverse=True):
            if name in visit.facts:
                return visit.facts[name]
        return None

    def before(self, name: str) -> tuple[Entry, str] | None:
        """A reading of the newest visit before the latest one, and that visit's date."""
        for visit in sorted(self.visits, key=lambda v: v.date, reverse=True)[1:]:
            if name in visit.facts:
                return visit.facts[name], visit.date
        return None

    def read_now(self, name: str) -> bool:
        """Whether a reading was taken at the latest visit, or waits with the home."""
        if name in self.facts:
            return True
        return bool(self.visits) and name in max(self.visits, key=lambda v: v.date).facts

    def visit_kind(self) -> str:
        """Kind of the latest visit; empty where there is none."""
        return max(self.visits, key=lambda v: v.date).kind if self.visits else ""

    def names(self) -> set[str]:
        """Every fact that has a value."""
        return set(self.facts).union(*(v.facts for v in self.visits))

    def with_entry(self, name: str, entry: Entry | None, visit: str | None = None) -> Job:
        """The job with one value entered, or taken away.

        A reading goes to the visit called `visit`, or to the latest one; where there is
        none yet, it stays with the home until there is.
        """
        fact = all_facts()[name]
        visits = list(self.visits)
        if fact.visit and visits:
            index = next((i for i, v in enumerate(visits) if v.id == visit), None)
            if index is None:
                # What is taken away is taken from the visit whose reading counts.
                holders = [i for i in range(len(visits)) if entry is None
                           and name in visits[i].facts]
                index = max(holders or range(len(visits)), key=lambda i: visits[i].date)
            changed = _changed(visits[index].facts, name, entry)
            visits[index] = dataclasses.replace(visits[index], facts=changed)
            # A value that waited with the home would hide nothing, but say two things.
            return dataclasses.replace(self, visits=tuple(visits),
                                       facts=_changed(self.facts, name, None))
        return dataclasses.replace(self, facts=_changed(self.facts, name, entry))


def _changed(facts: dict[str, Entry], name: str, entry: Entry | None) -> dict[str, Entry]:
    out = dict(facts)
    if entry is None:
        out.pop(name, None)
    else:
        out[name] = entry
    return out


# ---- reading ----------------------------------------------------------------------------

def read_job(text: str) -> Job:
    """The job that a file holds.

    Raises:
        BadInput: Not a job sheet, of a newer version, or with values that cannot stand.
    """
    try:
        data = json.loads(text)
    except (ValueError, RecursionError):
        raise BadInput([problem("file", "Not a job sheet of this handbook: it is not JSON. "
                                        "Your job is untouched.")]) from None
    return job_from(data)


def job_from(data: Any) -> Job:
    """The job in decoded JSON; raises `BadInput` with every problem at once."""
    if not isinstance(data, dict) or "downflow" not in data:
        raise BadInput([problem("file", "Not a job sheet of this handbook. "
                                        "Your job is untouched.")])
    version = data["downflow"]
    if not isinstance(version, int) or isinstance(version, bool) or version < 0:
        raise BadInput([problem("downflow", "The version of a job sheet is a whole number.")])
    if version > VERSION:
        raise BadInput([problem("downflow", f"This job sheet was written by a newer handbook "
                                            f"(version {version}; this one reads {VERSION}). "
                                            "Update the handbook. Your job is untouched.")])
    while version < VERSION:
        if version not in MIGRATIONS:
            raise BadInput([problem("downflow",
                                    f"No way to read a job sheet of version {version}.")])
        data = MIGRATIONS[version](data)
        version += 1
    problems: list[dict[str, str]] = []
    known = {"downflow", "id", "name", "facts", "visits", "released", "photos", "extra"}
    extra = data.get("extra", {})
    if not isinstance(extra, dict):
        problems.append(problem("extra", "What is kept for later versions is an object."))
        extra = {}
    extra = dict(extra)
    for key in data:
        if key not in known:
            extra[key] = data[key]
    identity = _text(data, "id", problems, 80)
    name = _text(data, "name", problems, 120)
    set_aside = dict(extra.pop("facts", {})) if isinstance(extra.get("facts"), dict) else {}
    home = dict(set_aside)
    given = data.get("facts", {})
    if isinstance(given, dict):
        home.update(given)
    else:
        problems.append(problem("facts", "The facts are an object."))
    facts, unknown = _entries(home, "facts", problems)
    if unknown:
        extra["facts"] = unknown
    visits = _visits(data.get("visits", []), problems, extra)
    released = _released(data.get("released", []), problems)
    photos = data.get("photos", [])
    if not isinstance(photos, list) or not all(isinstance(p, dict) for p in photos):
        problems.append(problem("photos", "The photos are a list of objects."))
        photos = []
    if problems:
        raise BadInput(problems)
    return Job(identity, name, facts, visits, released, tuple(photos), extra)


def _text(data: dict[str, Any], key: str, problems: list[dict[str, str]], most: int) -> str:
    value = data.get(key)
    if isinstance(value, str) and value.strip() and len(value) <= most:
        return value
    problems.append(problem(key, f"A job needs {'an id' if key == 'id' else 'a name'} "
                                 f"of 1 to {most} characters."))
    return ""


def entry_from(name: str, raw: Any, field_name: str,
               problems: list[dict[str, str]]) -> Entry | None:
    """The entry in decoded JSON: a bare value, or an object with `value` or `rows`."""
    fact = all_facts()[name]
    if fact.given and not fact.enterable:
        problems.append(problem(field_name, f"{fact.label}: it is worked out, never entered."))
        return None
    unit: Any = None
    origin: Any = "estimated"
    at: Any = ""
    note: Any = ""
    value = raw
    if isinstance(raw, dict):
        allowed = {"value", "rows", "unit", "from", "at", "note"}
        for key in raw:
            if key not in allowed:
                problems.append(problem(f"{field_name}.{key}", "A value has value (or rows), unit, "
                                                               "from, at and note; nothing else."))
        value = raw.get("rows") if "rows" in raw else raw.get("value")
        unit, origin = raw.get("unit"), raw.get("from", "estimated")
        at, note = raw.get("at", ""), raw.get("note", "")
    before = len(problems)
    if origin not in FROMS:
        problems.append(problem(f"{field_name}.from" if isinstance(raw, dict) else field_name,
                                f"Where it comes from: {', '.join(FROMS)}."))
    if unit is not None and not isinstance(unit, str):
        problems.append(problem(f"{field_name}.unit", "A unit is text."))
        unit = None
    for key, said in (("at", at), ("note", note)):
        if not isinstance(said, str) or len(said) > 2000:
            problems.append(problem(f"{field_name}.{key}", "Text of at most 2,000 characters."))
    if value is None:
        problems.append(problem(field_name, f"{fact.label}: a value is missing."))
        return None
    good, bad = check(fact, value, field_name, unit)
    problems += bad
    if len(problems) > before:
        return None
    return Entry(good, origin, at, note)


def _entries(raw: dict[str, Any], where: str,
             problems: list[dict[str, str]]) -> tuple[dict[str, Entry], dict[str, Any]]:
    known: dict[str, Entry] = {}
    unknown: dict[str, Any] = {}
    for name, value in raw.items():
        if name not in all_facts():
            unknown[name] = value
            continue
        entry = entry_from(name, value, f"{where}.{name}", problems)
        if entry is not None:
            known[name] = entry
    return known, unknown


def _visits(raw: Any, problems: list[dict[str, str]], extra: dict[str, Any]) -> tuple[Visit, ...]:
    if not isinstance(raw, list):
        problems.append(problem("visits", "The visits are a list."))
        return ()
    out: list[Visit] = []
    aside = extra.pop("visits", {})
    aside = dict(aside) if isinstance(aside, dict) else {}
    for index, one in enumerate(raw):
        at = f"visits[{index}]"
        if not isinstance(one, dict):
            problems.append(problem(at, "A visit is an object."))
            continue
        identity = one.get("id")
        date = str(one.get("date", ""))
        kind = str(one.get("kind", ""))
        if not isinstance(identity, str) or not identity or identity in [v.id for v in out]:
            problems.append(problem(f"{at}.id", "Each visit has an id of its own."))
            identity = f"visit {index}"
        if not _is_date(date):
            problems.append(problem(f"{at}.date", "A date such as 2026-03-31."))
            date = ""
        if kind not in VISIT_KINDS:
            problems.append(problem(f"{at}.kind", f"One of {', '.join(VISIT_KINDS)}."))
            kind = "call"
        raw_facts = one.get("facts", {})
        if not isinstance(raw_facts, dict):
            problems.append(problem(f"{at}.facts", "The facts are an object."))
            raw_facts = {}
        kept = aside.pop(identity, {})
        together = {**(kept.get("facts", {}) if isinstance(kept, dict) else {}), **raw_facts}
        facts, unknown = _entries(together, f"{at}.facts", problems)
        confirmed = one.get("confirmed", {})
        if not isinstance(confirmed, dict) or not all(
                isinstance(c, dict) and all(isinstance(t, str) for t in c.values())
                for c in confirmed.values()):
            problems.append(problem(f"{at}.confirmed", "What was confirmed: at and by, as text."))
            confirmed = {}
        rest = {k: v for k, v in one.items()
                if k not in ("id", "date", "kind", "facts", "confirmed")}
        if isinstance(kept, dict):
            rest = {**{k: v for k, v in kept.items() if k != "facts"}, **rest}
        if unknown:
            rest["facts"] = unknown
        if rest:
            aside[identity] = rest
        out.append(Visit(identity, date, kind, facts, confirmed))
    if aside:
        extra["visits"] = aside
    return tuple(out)


def _is_date(value: Any) -> bool:
    if not isinstance(value, str) or len(value) != 10:
        return False
    try:
        datetime.date.fromisoformat(value)
    except ValueError:
        return False
    return True


def _released(raw: Any, problems: list[dict[str, str]]) -> tuple[Release, ...]:
    if not isinstance(raw, list):
        problems.append(problem("released", "The released holds are a list."))
        return ()
    names = [f.name for f in dataclasses.fields(Release)]
    out: list[Release] = []
    for index, one in enumerate(raw):
        at = f"released[{index}]"
        if not isinstance(one, dict) or set(one) != set(names):
            problems.append(problem(at, f"A released hold has {', '.join(names)}."))
            continue
        blank = [n for n in names if not isinstance(one[n], str) or not one[n].strip()]
        for name in blank:
            problems.append(problem(f"{at}.{name}", "A hold is released only with a name, a trade "
                                                    "or licence, a reason and a date."))
        if "date" not in blank and not _is_date(one["date"]):
            problems.append(problem(f"{at}.date", "A date such as 2026-03-31."))
            continue
        if not blank:
            out.append(Release(**one))
    return tuple(out)


# ---- writing ----------------------------------------------------------------------------

def entry_data(name: str, entry: Entry) -> dict[str, Any]:
    """An entry as it stands in the file."""
    fact = all_facts()[name]
    if fact.kind == "table":
        return {"rows": entry.value, "from": entry.origin, "at": entry.at, "note": entry.note}
    return {"value": entry.value, "unit": fact.unit, "from": entry.origin, "at": entry.at,
            "note": entry.note}


def job_data(job: Job) -> dict[str, Any]:
    """The job as JSON data."""
    return {
        "downflow": VERSION,
        "id": job.id,
        "name": job.name,
        "facts": {n: entry_data(n, e) for n, e in sorted(job.facts.items())},
        "visits": [{"id": v.id, "date": v.date, "kind": v.kind,
                    "facts": {n: entry_data(n, e) for n, e in sorted(v.facts.items())},
                    "confirmed": v.confirmed} for v in job.visits],
        "released": [dataclasses.asdict(r) for r in job.released],
        "photos": list(job.photos),
        "extra": job.extra,
    }


def write_job(job: Job) -> str:
    """The job as the text of its file. Reading it back gives the same job."""
    return json.dumps(job_data(job), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


# ---- two devices ------------------------------------------------------------------------

@dataclass(frozen=True)
class Difference:
    """A fact that two copies of one job do not agree on."""

    name: str
    visit: str
    mine: Entry
    theirs: Entry


def merge(mine: Job, theirs: Job) -> tuple[Job, list[Difference]]:
    """Brings a copy from a second device into a job, fact by fact.

    What only one has is kept. Where both have a value and the values differ, mine
    stays and the difference is listed, with both values and times.
    """
    differences: list[Difference] = []

    def together(a: dict[str, Entry], b: dict[str, Entry], visit: str) -> dict[str, Entry]:
        out = dict(a)
        for name, entry in b.items():
            if name not in out:
                out[name] = entry
            elif (out[name].value, out[name].origin) != (entry.value, entry.origin):
                differences.append(Difference(name, visit, out[name], entry))
        return out

    facts = together(mine.facts, theirs.facts, "")
    visits = {v.id: v for v in mine.visits}
    for visit in theirs.visits:
        own = visits.get(visit.id)
        if own is None:
            visits[visit.id] = visit
        else:
            visits[visit.id] = dataclasses.replace(
                own, facts=together(own.facts, visit.facts, visit.id),
                confirmed={**visit.confirmed, **own.confirmed})
    released = list(mine.released) + [r for r in theirs.released if r not in mine.released]
    known = {p.get("id") for p in mine.photos}
    photos = mine.photos + tuple(p for p in theirs.photos if p.get("id") not in known)
    ordered = tuple(sorted(visits.values(), key=lambda v: (v.date, v.id)))
    return (dataclasses.replace(mine, facts=facts, visits=ordered, released=tuple(released),
                                photos=photos, extra={**theirs.extra, **mine.extra}), differences)


def inputs_to_job(inputs: Any, allowed: list[str]) -> Job:
    """A job made of the inputs to one calculation.

    Args:
        inputs: Decoded JSON: a value, or an object, by fact name.
        allowed: The names that the calculation can use.

    Raises:
        BadInput: Every bad field at once. An unknown name offers the nearest one.
    """
    if not isinstance(inputs, dict):
        raise BadInput([problem("inputs", "The inputs are an object of names and values.")])
    problems: list[dict[str, str]] = []
    facts: dict[str, Entry] = {}
    for name, raw in inputs.items():
        if name not in allowed:
            near = nearest_name(name, allowed)
            known = " It is a fact, but this calculation has no use for it." \
                if name in all_facts() else ""
            offer = f" Did you mean {near}?" if near else ""
            problems.append(problem(str(name), f"No input is called {str(name)[:60]}."
                                    f"{known}{offer}"))
            continue
        entry = entry_from(name, raw, name, problems)
        if entry is not None:
            facts[name] = entry
    if problems:
        raise BadInput(problems)
    return Job("inputs", "Inputs", facts)
