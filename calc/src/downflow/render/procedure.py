"""A procedure, and a symptom, as pages: from the data in a page's front matter.

`PROCEDURES` lists every procedure in the order of a job. The format is described in
DEVELOPERS.md, "Add a procedure"; `check_procedure` refuses what does not keep to it,
naming the key. Texts may hold shortcodes such as `{{ q 0.5 in }}`; the site's builder
puts them in afterwards.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from downflow.calculators import all_calculators
from downflow.markup import Markup, tag, together
from downflow.phases import phase, phase_number
from downflow.render import pages
from downflow.render.drawings import drawing_html
from downflow.render.hazards import LEVELS, Hazard, hazard, in_order
from downflow.render.marks import caution, verdict_mark

DEPTH = 2
"""A procedure's page lies two folders down."""

PROCEDURES: tuple[str, ...] = (
    "first-visit", "load-and-equipment", "permits-and-papers", "day-before",
    "tell-the-fuel-supplier", "keep-the-home-warm", "recover-refrigerant", "furnace-out",
    "close-the-openings", "prepare-the-closet", "turn-the-air-handler", "plenum-box",
    "outdoor-unit", "before-you-cut", "find-the-crossovers", "crossover-and-trunk",
    "seal-the-ducts", "repair-the-belly", "return-path", "filter-cabinet", "fresh-air-duct",
    "condensate-trap",
    "freeze-protection", "electrical", "install-the-kit", "control-wires", "line-set-and-brazing",
    "pressure-and-vacuum", "thermostat-set-up", "start-up", "labels-and-shut-offs",
    "hand-over-talk", "first-month-call", "yearly-visit",
)
"""Every procedure, in the order of a job."""


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


VERBS = _words("""
add adjust agree aim air align anchor answer apply ask assemble attach bag balance bend block blow
bolt book box braze break bring brush build bury cable call cap carry catch caulk cement center
chain change charge check choose circle clamp clean clear climb close coil collect compare
complete confirm connect copy count cover crimp cross cut deburr decide deliver demonstrate dig
disconnect drain draw dress drill drive dry empty enter evacuate expect explain explore fasten
feel file fill find finish fit flash flip flush fold follow force form frame gather get give glue
grade guard hand hang heat hoist hold hook identify insert inspect install insulate isolate jack
join keep know label lay leave let level lift list listen load lock log look loop loosen lower
make mark mask match measure mix mount move nail name notch note offer open order pack paint patch
peel perform phone photograph pick pin pitch place plan plug plumb point poke position pour
prepare press pressurize prime print proof protect prove pull pump purge push put raise reach read
ream rebuild recheck record recover release remove renew rent repair repeat replace report reseal
reserve reset reshape restart restore return rinse roll rope rotate route rub run sample sand save
saw scan scatter schedule scrape screw scribe seal secure see select send separate set settle
shade shake sheet shield shim shorten shovel show shut sign silence sit size sketch slide slope
smoke smooth snap sniff soap sort space splice spray spread spring sprinkle square stack stake
stand start step stitch stop store straighten strap stretch strip stuff support survey swap sweep
swing switch tack tag take talk tape teach tell tent test thread tidy tie tighten tilt time tip
top torque total touch trace transfer trim trip try tuck tug turn twist uncap uncover undo unhook
unload unpack unplug unroll unscrew update use vacuum vent verify visit wait walk warm warn wash
watch weigh wet wind wipe wire work wrap write zero zip
""")
"""Verbs with which a step may begin."""

MEASURING = _words("""
clamp count measure pressurize prove read size test time total weigh
""")
"""Verbs of steps that measure: such a step has a number to hit and says how it is read."""

STEP_KEYS = frozenset(("do", "more", "hit", "hazards", "caution", "calculator", "see", "record",
                       "drawing", "licensed"))
HOLD_KEYS = frozenset(("hold", "must", "hit", "if_not", "button", "hazards", "caution", "choice",
                       "calculator", "see", "record", "drawing", "licensed"))
PROCEDURE_KEYS = {
    "id": str, "title": str, "phase": str, "summary": str, "who": str,
    "licensed": list, "protects": str, "tools": list, "materials": list, "minutes": int,
    "forks": list, "hazards": list, "steps": list, "mistakes": list, "drawing": (str, list),
    "record": list, "sources": list,
}
OPTIONAL = frozenset(("forks", "hazards", "record", "licensed", "materials"))
OUTSIDE = frozenset(("search", "description", "also", "hide", "words", "titles", "phase_title"))
"""Keys that the site's builder reads, not this page."""

HIT_KEYS = frozenset(("what", "number", "how", "see"))
SYMPTOM_KEYS = {
    "id": str, "title": str, "summary": str, "who": str, "ask": list, "hazards": list,
    "tests": list, "drawing": (str, list), "sources": list, "order": (int, float),
}
SYMPTOM_OPTIONAL = frozenset(("ask", "hazards", "drawing", "order"))

COMES_FIRST = "Local code, licences and the makers’ instructions come before this page."
"""Said on every page of a procedure or a symptom."""


class Caution(NamedTuple):
    """A caution that belongs to one step alone."""

    level: str
    text: str


# ---- checks -----------------------------------------------------------------------------

def check_procedure(data: Mapping[str, Any]) -> None:
    """Refuses data that is no complete procedure.

    Raises:
        ValueError: One line for each problem: the key, and what is wrong with it.
    """
    problems = _wrong_keys(data, PROCEDURE_KEYS, OPTIONAL)
    if not problems:
        if data["id"] not in PROCEDURES:
            problems.append(f"id: {data['id']} is not in PROCEDURES of render/procedure.py")
        problems += _listed(data, "tools", "sources",
                            *(k for k in ("licensed", "materials", "record") if k in data))
        problems += _tags(data.get("hazards", []), "hazards")
        for i, fork in enumerate(data.get("forks", []), 1):
            problems += _texts(fork, ("if", "then"), (), f"forks[{i}]")
        for i, mistake in enumerate(data["mistakes"], 1):
            problems += _texts(mistake, ("looks", "is", "do"), (), f"mistakes[{i}]")
        if len(data["mistakes"]) < 2:
            problems.append("mistakes: at least two")
        problems += _sequence(data["steps"])
        if not any("hold" in s for s in data["steps"] if isinstance(s, dict)):
            problems.append("steps: no hold point")
        if not records(data):
            problems.append("record: nothing is recorded, neither at a step nor for the whole")
    if problems:
        raise ValueError("; ".join(problems))


def check_symptom(data: Mapping[str, Any]) -> None:
    """Refuses data that is no complete symptom page.

    Raises:
        ValueError: One line for each problem: the key, and what is wrong with it.
    """
    problems = _wrong_keys(data, SYMPTOM_KEYS, SYMPTOM_OPTIONAL)
    if not problems:
        problems += _listed(data, "sources", *(("ask",) if "ask" in data else ()))
        problems += _tags(data.get("hazards", []), "hazards")
        for i, test in enumerate(data["tests"], 1):
            where = f"tests[{i}]"
            if not isinstance(test, dict):
                problems.append(f"{where}: must be a mapping")
                continue
            problems += _step({k: v for k, v in test.items() if k != "then"}, where)
            outcomes = test.get("then")
            if not isinstance(outcomes, list) or not outcomes:
                problems.append(f"{where}.then: at least one of {{seen, cause, do}}")
                continue
            for j, outcome in enumerate(outcomes, 1):
                problems += _texts(outcome, ("seen", "cause", "do"), ("see", "calculator"),
                                   f"{where}.then[{j}]")
                if isinstance(outcome, dict):
                    problems += _calculator_known(outcome, f"{where}.then[{j}]")
    if problems:
        raise ValueError("; ".join(problems))


def _wrong_keys(data: Mapping[str, Any], keys: Mapping[str, Any],
                optional: frozenset[str]) -> list[str]:
    problems = [f"{k}: no such key; there are {', '.join(keys)}"
                for k in data if k not in keys and k not in OUTSIDE]
    for key, kind in keys.items():
        if key not in data:
            if key not in optional:
                problems.append(f"{key}: missing")
        elif not isinstance(data[key], kind) or (data[key] in ("", []) and key not in optional):
            problems.append(f"{key}: empty or of the wrong kind")
    return problems


def _listed(data: Mapping[str, Any], *keys: str) -> list[str]:
    return [f"{key}[{i}]: must be a text" for key in keys for i, one in enumerate(data[key], 1)
            if not isinstance(one, str) or not one.strip()]


def _texts(item: Any, needed: tuple[str, ...], optional: tuple[str, ...], where: str) -> list[str]:
    if not isinstance(item, dict):
        return [f"{where}: must be a mapping with {', '.join(needed)}"]
    problems = [f"{where}.{k}: missing or no text" for k in needed
                if not isinstance(item.get(k), str) or not item[k].strip()]
    problems += [f"{where}.{k}: no such key" for k in item if k not in needed + optional]
    return problems


def _tags(tags: Any, where: str) -> list[str]:
    if not isinstance(tags, list):
        return [f"{where}: must be a list of tags"]
    problems = []
    for name in tags:
        try:
            hazard(name)
        except ValueError as error:
            problems.append(f"{where}: {error}")
    return problems


def _sequence(steps: Sequence[Any]) -> list[str]:
    problems: list[str] = []
    for i, step in enumerate(steps, 1):
        where = f"steps[{i}]"
        if not isinstance(step, dict):
            problems.append(f"{where}: must be a mapping with do or hold")
        elif "hold" in step:
            problems += _hold(step, where)
        else:
            problems += _step(step, where)
    return problems


def _step(step: Mapping[str, Any], where: str) -> list[str]:
    problems = [f"{where}.{k}: no such key" for k in step if k not in STEP_KEYS]
    do = step.get("do")
    if not isinstance(do, str):
        return [*problems, f"{where}.do: missing or no text"]
    problems += [f"{where}.do: {p}" for p in one_verb(do)]
    problems += _common(step, where)
    if _first_word(do) in MEASURING and not any("number" in h for h in hits(step)):
        problems.append(f"{where}.hit: {do!r} measures, so it needs a number and how it is read")
    return problems


def _hold(step: Mapping[str, Any], where: str) -> list[str]:
    problems = [f"{where}.{k}: no such key" for k in step if k not in HOLD_KEYS]
    problems += [f"{where}.{k}: missing or no text" for k in ("hold", "must", "if_not", "button")
                 if not isinstance(step.get(k), str) or not step[k].strip()]
    if "choice" in step:
        choice = step["choice"]
        if not isinstance(choice, dict) or set(choice) != {"of", "options"} or not isinstance(
                choice["options"], list):
            problems.append(f"{where}.choice: must be {{of: text, options: [text, …]}}")
    return problems + _common(step, where)


def _common(step: Mapping[str, Any], where: str) -> list[str]:
    problems = _tags(step.get("hazards", []), f"{where}.hazards")
    for i, one in enumerate(hits(step), 1):
        at = f"{where}.hit[{i}]"
        if not isinstance(one, dict):
            problems.append(f"{at}: must be {{what, number, how}} or {{see}}")
        elif "see" in one:
            problems += _texts(one, ("see",), (), at)
        else:
            problems += _texts(one, ("what", "number", "how"), (), at)
            if not any(c.isnumeric() for c in str(one.get("number", ""))):
                problems.append(f"{at}.number: no digit in it; use see for what is seen, not read")
    if "caution" in step:
        own = step["caution"]
        if not isinstance(own, dict) or own.get("level") not in LEVELS or not own.get("text"):
            problems.append(f"{where}.caution: must be {{level: {' | '.join(LEVELS)}, text}}")
    problems += _calculator_known(step, where)
    problems += [f"{where}.{k}: must be a text" for k in ("more", "record", "licensed", "drawing")
                 if k in step and not isinstance(step[k], str)]
    for name in _list(step.get("see")):
        if name not in PROCEDURES:
            problems.append(f"{where}.see: no procedure is called {name}")
    return problems


def _calculator_known(step: Mapping[str, Any], where: str) -> list[str]:
    return [f"{where}.calculator: no calculator is called {name}"
            for name in _list(step.get("calculator")) if name not in all_calculators()]


def one_verb(sentence: str) -> list[str]:
    """What keeps a step's sentence from being one sentence with one verb; empty if nothing."""
    problems = []
    plain = re.sub(r"\{\{.*?\}\}", "0", sentence).strip()
    if not plain.endswith(".") or re.search(r"[.!?;]\s", plain):
        problems.append(f"{sentence!r} must be one sentence, with a full stop")
    if _first_word(plain) not in VERBS:
        problems.append(f"{sentence!r} must begin with a verb of VERBS")
    for second in _SECOND.finditer(plain):
        if second[2] in VERBS:
            problems.append(f"{sentence!r} has a second verb, {second[2]!r}: make it two steps")
            break
    return problems


_SECOND = re.compile(
    r"(\band|\bor|\bthen|,)\s+([a-z]+)(?=\s+(?:the|an?|it|them|each|every|all|both|its|their|this|"
    r"that|one|two|off|out|up|down|in|on|over|back|away)\b)")
"""What joins a second verb to the first: it has an object or an adverb of its own."""


def _first_word(sentence: str) -> str:
    return re.split(r"[^A-Za-z]", sentence.strip(), maxsplit=1)[0].lower()


# ---- reading ----------------------------------------------------------------------------

def _list(value: Any) -> list[Any]:
    if value is None:
        return []
    return list(value) if isinstance(value, list) else [value]


def hits(step: Mapping[str, Any]) -> list[Any]:
    """The numbers to hit and the things to see of a step."""
    return _list(step.get("hit"))


def records(data: Mapping[str, Any]) -> list[str]:
    """Everything that a procedure records, in its order."""
    said = [str(s["record"]) for s in data.get("steps", [])
            if isinstance(s, dict) and s.get("record")]
    return [*said, *[str(r) for r in data.get("record", [])]]


# ---- pages ------------------------------------------------------------------------------

def procedure_html(data: Mapping[str, Any]) -> Markup:
    """The page of a procedure, on screen and as a field card in print.

    Args:
        data: The page's front matter, with `id`. `titles` may hold the titles of the procedures
            that have a page, by id: links to others are left out.

    Raises:
        ValueError: The data is not complete; the message names each key.
    """
    check_procedure(data)
    seen: set[str] = set()
    titles = data.get("titles")
    return together(
        _head(data),
        tag("h2", "Before you start", id="before"),
        _before(data),
        [_caution(h, seen) for h in in_order(data.get("hazards", []))],
        _forks(data.get("forks", [])),
        tag("h2", "Steps", id="steps"),
        [drawing_html(name) for name in _list(data["drawing"])],
        _steps(data["steps"], seen, titles),
        tag("h2", "What goes wrong", id="wrong"),
        _mistakes(data["mistakes"]),
        _record(data),
        _sources(data["sources"]),
    )


def symptom_html(data: Mapping[str, Any]) -> Markup:
    """The page of a symptom: from what is seen, by tests, to the cause.

    Raises:
        ValueError: The data is not complete; the message names each key.
    """
    check_symptom(data)
    seen: set[str] = set()
    titles = data.get("titles")
    asks = data.get("ask", [])
    parts: list[Any] = [
        tag("p", f"Symptom · {data['who']}", class_="df-small df-where"),
        tag("h1", data["title"]),
        tag("p", data["summary"], class_="df-lead"),
    ]
    if asks:
        parts += [tag("h2", "Ask first", id="ask"), tag("ul", [tag("li", a) for a in asks])]
    parts += [_caution(h, seen) for h in in_order(data.get("hazards", []))]
    parts.append(tag("h2", "Test by test", id="steps"))
    parts += [drawing_html(name) for name in _list(data.get("drawing"))]
    for number, test in enumerate(data["tests"], 1):
        parts += _cautions(test, seen)
        outcomes = tag("dl", [_outcome(o, titles) for o in test["then"]], class_="df-then")
        parts.append(tag("ol", tag("li", _tick("Test", number), _body(test, titles), outcomes,
                                   id=f"step-{number}"),
                         class_="df-steps", start=None if number == 1 else str(number)))
    parts.append(_sources(data["sources"]))
    return together(parts)


def _outcome(outcome: Mapping[str, Any], titles: Mapping[str, str] | None) -> Markup:
    return together(
        tag("dt", outcome["seen"]),
        tag("dd", tag("b", outcome["cause"]), " ", outcome["do"], _links(outcome, titles)))


def _head(data: Mapping[str, Any]) -> Markup:
    station = phase(data["phase"])
    minutes = data["minutes"]
    time = f"{minutes} minutes" if minutes < 120 else f"{minutes // 60} hours" + (
        f" {minutes % 60} minutes" if minutes % 60 else "")
    line = f"Phase {phase_number(station.id)}, {station.title.lower()} · {time} · {data['who']}"
    blank = tag("i", class_="fc-blank")
    return together(
        tag("p", line, class_="df-small df-where"),
        tag("h1", data["title"]),
        tag("dl", tag("dt", "home"), tag("dd", tag("span", "", data_df="job-name"), blank),
            tag("dt", "date"), tag("dd", blank), tag("dt", "by"), tag("dd", blank),
            class_="fc-head", aria_hidden="true"),
        tag("p", data["summary"], class_="df-lead"))


def _before(data: Mapping[str, Any]) -> Markup:
    licensed = data.get("licensed", [])
    rows: list[tuple[str, Any]] = [
        ("Who may", data["who"]),
        ("Licensed work", tag("ul", [tag("li", one) for one in licensed]) if licensed
         else "none here, unless your state says so"),
        ("Protects against", data["protects"]),
        ("Tools", " · ".join(data["tools"])),
    ]
    if data.get("materials"):
        rows.append(("Materials", " · ".join(data["materials"])))
    return tag("dl", [together(tag("dt", name), tag("dd", what)) for name, what in rows],
               class_="df-before")


def _forks(forks: Sequence[Mapping[str, str]]) -> Markup | None:
    if not forks:
        return None
    return together(tag("h3", "Where the way forks", id="forks"),
                    tag("dl", [together(tag("dt", f["if"]), tag("dd", f["then"])) for f in forks],
                        class_="df-forks"))


def _caution(one: Hazard, seen: set[str]) -> Markup:
    text = one.again if one.tag in seen else one.text
    seen.add(one.tag)
    made = caution(one.level, text)
    return Markup(made.replace("<aside ", f'<aside data-hazard="{one.tag}" ', 1))


def _cautions(step: Mapping[str, Any], seen: set[str]) -> list[Markup]:
    """Before the step, the worst first; its own caution within its level."""
    ranked = [(LEVELS.index(h.level), 0, h) for h in in_order(step.get("hazards", []))]
    own = step.get("caution")
    entries: list[tuple[int, int, Any]] = [*ranked]
    if own:
        entries.append((LEVELS.index(own["level"]), 1, Caution(own["level"], own["text"])))
    entries.sort(key=lambda e: e[:2])
    return [_caution(e, seen) if isinstance(e, Hazard) else caution(e.level, e.text)
            for *_, e in entries]


def _steps(steps: Sequence[Mapping[str, Any]], seen: set[str],
           titles: Mapping[str, str] | None) -> list[Markup]:
    """Steps in lists that are cut where a caution, a drawing or a hold point stands between."""
    parts: list[Markup] = []
    run: list[Markup] = []
    first = number = holds = 0

    def close() -> None:
        if run:
            parts.append(tag("ol", list(run), class_="df-steps",
                             start=str(first) if first > 1 else None))
            run.clear()

    for step in steps:
        guards = _cautions(step, seen)
        if guards or "hold" in step or step.get("drawing"):
            close()
        if step.get("drawing"):
            parts.append(Markup(drawing_html(step["drawing"])))
        parts += guards
        if "hold" in step:
            holds += 1
            parts.append(_hold_html(step, holds, titles))
            continue
        number += 1
        if not run:
            first = number
        run.append(tag("li", _tick("Step", number), _body(step, titles), id=f"step-{number}"))
    close()
    return parts


def _tick(word: str, number: int) -> Markup:
    return tag("label", tag("input", type="checkbox", aria_label=f"{word} {number} done"),
               tag("span", str(number)), class_="df-tick")


def _body(step: Mapping[str, Any], titles: Mapping[str, str] | None) -> Markup:
    return together(
        tag("p", step["do"]),
        tag("p", "Licensed: ", step["licensed"], ".", class_="df-licensed")
        if step.get("licensed") else None,
        tag("p", step["more"]) if step.get("more") else None,
        [_hit(h, bool(step.get("record"))) for h in hits(step)],
        _links(step, titles),
        _record_line(step))


def _hit(one: Mapping[str, str], blank: bool) -> Markup:
    if "see" in one:
        return tag("p", one["see"], class_="df-hit df-hit--see")
    return tag("p", tag("b", one["number"]),
               tag("i", class_="fc-blank") if blank else None,
               tag("span", f"{one['what']}: {one['how']}"), class_="df-hit")


def _links(step: Mapping[str, Any], titles: Mapping[str, str] | None) -> Markup | None:
    rows = []
    for name in _list(step.get("calculator")):
        rows.append(tag("a", all_calculators()[name].calculator.title,
                        class_="df-at df-at--calc", data_calculator=name,
                        href=pages.calculator_page(name, DEPTH)))
    for name in _list(step.get("see")):
        if titles is None or name in titles:
            rows.append(tag("a", (titles or {}).get(name, name), class_="df-at",
                            href=f"../../procedures/{name}/"))
    return tag("p", rows, class_="df-ats") if rows else None


def _record_line(step: Mapping[str, Any]) -> Markup | None:
    """What to write down; on paper the blank stands behind the number, where there is one."""
    if not step.get("record"):
        return None
    numbered = any("number" in h for h in hits(step))
    return tag("p", tag("b", "Record"), " ", step["record"], " ",
               None if numbered else tag("i", class_="fc-blank"),
               class_="df-rec no-print" if numbered else "df-rec")


def _hold_html(step: Mapping[str, Any], number: int, titles: Mapping[str, str] | None) -> Markup:
    choice = step.get("choice")
    name = f"hold-{number}-choice"
    return tag(
        "section",
        tag("header", verdict_mark("hold"), tag("span", f"Hold point: {step['hold']}")),
        tag("p", "Licensed: ", step["licensed"], ".", class_="df-licensed")
        if step.get("licensed") else None,
        tag("p", step["must"]),
        [_hit(h, bool(step.get("record"))) for h in hits(step)],
        _links(step, titles),
        tag("fieldset", tag("legend", choice["of"]),
            [tag("label", tag("input", type="radio", name=name), tag("span", o))
             for o in choice["options"]], class_="df-choice") if choice else None,
        tag("p", tag("b", "If not: "), step["if_not"]),
        _record_line(step),
        tag("button", step["button"], type="button",
            class_="df-button df-button--main df-button--big"),
        class_="df-hold", id=f"hold-{number}")


def _mistakes(mistakes: Sequence[Mapping[str, str]]) -> Markup:
    return tag(
        "ul", [tag("li", tag("b", m["looks"]), tag("span", m["is"]),
                   tag("span", tag("b", "Do: "), m["do"])) for m in mistakes],
        class_="df-mistakes")


def _record(data: Mapping[str, Any]) -> Markup:
    """Everything to write down; on paper only what has no blank at its step."""
    extra = [str(r) for r in data.get("record", [])]
    at_steps = records(data)[:len(records(data)) - len(extra)]
    rows = [tag("li", one, class_="no-print") for one in at_steps]
    rows += [tag("li", one, " ", tag("i", class_="fc-blank")) for one in extra]
    return together(
        tag("h2", "Record", id="record", class_=None if extra else "no-print"),
        tag("ul", rows, class_="df-records"),
        tag("p", tag("a", "Job sheet", href=pages.job_sheet_page(DEPTH)), class_="no-print"))


def _sources(sources: Sequence[str]) -> Markup:
    return together(
        tag("h2", "Sources", id="sources"),
        tag("p", COMES_FIRST, class_="df-comes-first"),
        tag("ul", [tag("li", one) for one in sources], class_="df-sources"))
