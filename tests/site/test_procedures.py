"""Every procedure, in its source and on the built site: complete, guarded, and said once."""

from __future__ import annotations

import re
from collections import defaultdict
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
import yaml

from downflow.phases import PHASES
from downflow.render.drawings import drawings
from downflow.render.hazards import HAZARDS, LEVELS, hazard
from downflow.render.procedure import (
    MEASURING,
    PROCEDURES,
    check_procedure,
    check_symptom,
    hits,
    one_verb,
    records,
)

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / "docs" / "procedures"
SYMPTOMS = ROOT / "docs" / "symptoms"

# What the handbook must have a way of doing, and where it is done.
REQUIRED = {
    "first visit and data plate": "first-visit",
    "load and equipment choice": "load-and-equipment",
    "permit, rebate and utility paperwork": "permits-and-papers",
    "the day before": "day-before",
    "telling the fuel supplier": "tell-the-fuel-supplier",
    "keeping the home warm and the pipes safe": "keep-the-home-warm",
    "recovering and weighing old refrigerant": "recover-refrigerant",
    "making safe and removing the fuel furnace": "furnace-out",
    "closing vent, roof jack and combustion openings": "close-the-openings",
    "preparing the closet": "prepare-the-closet",
    "turning air handler and coil to downflow": "turn-the-air-handler",
    "plenum box": "plenum-box",
    "finding every crossover and trunk": "find-the-crossovers",
    "crossover and trunk work": "crossover-and-trunk",
    "sealing and measuring leakage before and after": "seal-the-ducts",
    "repairing the belly": "repair-the-belly",
    "no cut without permit": "before-you-cut",
    "return path and doors": "return-path",
    "filter cabinet": "filter-cabinet",
    "backup kit": "install-the-kit",
    "electrical": "electrical",
    "thermostat cable and control wiring": "control-wires",
    "condensate trap, drain, float switch": "condensate-trap",
    "freeze protection": "freeze-protection",
    "outdoor unit": "outdoor-unit",
    "line set, brazing, drier, caps": "line-set-and-brazing",
    "pressure test, evacuation, release, charge": "pressure-and-vacuum",
    "fresh-air duct": "fresh-air-duct",
    "thermostat set-up": "thermostat-set-up",
    "start-up and commissioning": "start-up",
    "labels and shut-offs": "labels-and-shut-offs",
    "hand-over talk": "hand-over-talk",
    "first-month call": "first-month-call",
    "yearly visit": "yearly-visit",
}
REQUIRED_SYMPTOMS = 11


def front_matter(path: Path) -> dict[str, Any]:
    found = re.match(r"---\n(.*?)\n---\n(.*)", path.read_text("utf-8"), re.S)
    assert found, f"{path.name} has no front matter"
    data = yaml.safe_load(found[1])
    return {"id": path.stem, **data, "body": found[2].strip()}


def all_of(folder: Path) -> dict[str, dict[str, Any]]:
    return {p.stem: front_matter(p) for p in sorted(folder.glob("*.md")) if p.stem != "index"}


SOURCES = all_of(FOLDER)
SIGNS = all_of(SYMPTOMS)
STEPS = [(name, number, step) for name, data in SOURCES.items()
         for number, step in enumerate((s for s in data["steps"] if "do" in s), 1)]


def without(data: dict[str, Any], *keys: str) -> dict[str, Any]:
    return {k: v for k, v in data.items() if k not in keys}


# ---- the source -------------------------------------------------------------------------

@pytest.mark.parametrize(("task", "id_"), REQUIRED.items())
def test_the_task_has_a_procedure(task: str, id_: str) -> None:
    assert id_ in SOURCES, task


def test_each_procedure_stands_in_the_order_of_the_job_and_no_other() -> None:
    assert set(SOURCES) == set(PROCEDURES)
    order = [p.id for p in PHASES]
    assert {SOURCES[id_]["phase"] for id_ in PROCEDURES} <= set(order)


@pytest.mark.parametrize("id_", SOURCES)
def test_the_source_is_complete(id_: str) -> None:
    data = SOURCES[id_]
    assert data["body"] == "", "a procedure is its front matter"
    check_procedure(without(data, "body"))


@pytest.mark.parametrize("id_", SIGNS)
def test_the_symptom_is_complete(id_: str) -> None:
    check_symptom(without(SIGNS[id_], "body"))


def test_the_symptoms_are_there() -> None:
    assert len(SIGNS) >= REQUIRED_SYMPTOMS


@pytest.mark.parametrize(("id_", "number", "step"), STEPS,
                         ids=[f"{name}-{number}" for name, number, _ in STEPS])
def test_a_step_has_one_verb_and_what_it_measures_has_a_number_and_a_way(
        id_: str, number: int, step: dict[str, Any]) -> None:
    assert one_verb(step["do"]) == []
    if step["do"].split()[0].lower() in MEASURING:
        measured = [h for h in hits(step) if "number" in h]
        assert measured
        assert all(h["what"].strip() and h["how"].strip() for h in measured)


@pytest.mark.parametrize("id_", SOURCES)
def test_who_tools_hold_point_record_mistakes_drawing_and_sources(id_: str) -> None:
    data = SOURCES[id_]
    assert data["who"] and data["tools"] and data["protects"]
    assert any("hold" in step for step in data["steps"])
    assert records(data)
    assert len(data["mistakes"]) >= 2
    assert len(data["sources"]) >= 2
    named = data["drawing"] if isinstance(data["drawing"], list) else [data["drawing"]]
    assert set(named) <= set(drawings())


def test_every_drawing_is_used() -> None:
    used: set[str] = set()
    for data in [*SOURCES.values(), *SIGNS.values()]:
        for one in [data, *data.get("steps", []), *data.get("tests", [])]:
            value = one.get("drawing", [])
            used |= {value} if isinstance(value, str) else set(value)
    for path in (ROOT / "docs").rglob("*.md"):
        used |= set(re.findall(r"\{\{\s*drawing\s+([a-z-]+)\s*\}\}", path.read_text("utf-8")))
    assert set(drawings()) - used == set()


def test_every_hazard_is_met_somewhere() -> None:
    met = {tag for data in [*SOURCES.values(), *SIGNS.values()]
           for one in [data, *data.get("steps", []), *data.get("tests", [])]
           for tag in one.get("hazards", [])}
    assert {h.tag for h in HAZARDS} - met == set()


# Work that plainly can hurt, by its words, and the hazard that must have been named by then.
PLAINLY = {
    r"\bbraze\b": "hot-work", r"\bladder\b|\bonto the roof\b": "fall",
    r"^(crawl|enter)\b|\bunder the home\b": "crawl-space",
    r"^(lift|carry) the (furnace|air handler|cabinet|unit|outdoor unit)\b": "lifting",
    r"\b(cap|disconnect) the (fuel|gas) line\b": "fuel-gas", r"^recover\b": "no-venting",
    r"^(lock out)\b": "electricity", r"\bnitrogen\b": "nitrogen",
}


@pytest.mark.parametrize("id_", SOURCES)
def test_work_that_plainly_can_hurt_carries_its_tag(id_: str) -> None:
    data = SOURCES[id_]
    named = set(data.get("hazards", []))
    for step in data["steps"]:
        named |= set(step.get("hazards", []))
        for words, tag in PLAINLY.items():
            if re.search(words, step.get("do", ""), re.IGNORECASE):
                assert tag in named, f"{step['do']} without {tag}"


# ---- said once --------------------------------------------------------------------------

def sentences(text: str) -> set[str]:
    plain = re.sub(r"\s+", " ", re.sub(r"[(){}\[\]“”\"]", " ", text)).strip().casefold()
    parts = re.split(r"(?<=[.!?;:])\s", plain)
    return {p.strip(" .") for p in parts if len(p.split()) >= 5}


def prose(data: dict[str, Any]) -> list[str]:
    """The texts of a procedure, but for cautions, lists of things, names of people, sources."""
    said = [data["summary"], data["protects"], *data.get("licensed", [])]
    said += [t for f in data.get("forks", []) for t in (f["if"], f["then"])]
    said += [m[k] for m in data["mistakes"] for k in ("looks", "is", "do")]
    for step in data["steps"]:
        said += [step[k] for k in ("do", "more", "must", "if_not", "record") if k in step]
        said += [h[k] for h in hits(step) for k in ("see", "what", "how") if k in h]
    return [str(s) for s in said]


def shared(owners: dict[str, set[str]]) -> dict[str, list[str]]:
    by_sentence: dict[str, list[str]] = defaultdict(list)
    for name, said in owners.items():
        for sentence in said:
            by_sentence[sentence].append(name)
    return {s: names for s, names in by_sentence.items() if len(names) > 1}


def test_no_sentence_stands_in_two_procedures() -> None:
    owners = {name: set().union(*(sentences(t) for t in prose(data)))
              for name, data in SOURCES.items()}
    assert shared(owners) == {}


# ---- the built site ---------------------------------------------------------------------

SHARED_ON_PURPOSE = frozenset((
    "df-caution", "df-comes-first", "df-sources", "df-licensed", "df-at", "df-example"))
"""Cautions, what comes first on every page, citations, who may, links."""
VOID = frozenset(("br", "hr", "img", "input", "link", "meta", "wbr"))


class Flow(HTMLParser):
    """An article as a flat row: (kind, id or hazard, text) in the order of the page."""

    def __init__(self) -> None:
        super().__init__()
        self.row: list[tuple[str, str, str]] = []
        self.stack: list[tuple[str, dict[str, str]]] = []
        self.text: list[str] = []
        self.kept: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {k: v or "" for k, v in attrs}
        if tag == "aside" and "df-caution" in given.get("class", ""):
            level = re.search(r"df-caution--(\w+)", given["class"])
            self.row.append(("caution", given.get("data-hazard", ""), level[1] if level else ""))
        elif given.get("id", "").startswith(("step-", "hold-")):
            self.row.append(("step", given["id"], ""))
        if tag not in VOID:
            self.stack.append((tag, given))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A shape in a drawing: nothing to read."""

    def handle_endtag(self, tag: str) -> None:
        while self.stack and self.stack.pop()[0] != tag:
            pass
        if tag in ("p", "li", "dd", "dt", "span", "td"):
            self.kept.append("".join(self.text))
            self.text = []

    def handle_data(self, data: str) -> None:
        tags = [tag for tag, _ in self.stack]
        if "article" not in tags or set(tags) & {"svg", "script", "nav", "figure"}:
            return
        inside = self.stack[tags.index("article") + 1:]
        named = {c for _, given in inside for c in given.get("class", "").split()}
        if not named & SHARED_ON_PURPOSE:
            self.text.append(data)


def flow_of(text: str) -> Flow:
    flow = Flow()
    flow.feed(text)
    return flow


@pytest.fixture(scope="module")
def built(pages: Any) -> dict[str, str]:
    return {id_: pages[f"procedures/{id_}/index.html"].text for id_ in PROCEDURES}


def test_every_procedure_is_built(built: dict[str, str]) -> None:
    assert set(built) == set(SOURCES)


def test_a_built_page_has_every_part(built: dict[str, str]) -> None:
    for id_, text in built.items():
        data = SOURCES[id_]
        assert f'data-procedure="{id_}"' in text
        for part in ("before", "steps", "wrong", "record", "sources"):
            assert f'id="{part}"' in text, (id_, part)
        assert "<dt>Who may</dt>" in text and "<dt>Tools</dt>" in text, id_
        assert "df-fig" in text, id_
        steps = len([s for s in data["steps"] if "do" in s])
        holds = len(data["steps"]) - steps
        assert re.findall(r'id="step-(\d+)"', text) == [str(n + 1) for n in range(steps)], id_
        assert re.findall(r'id="hold-(\d+)"', text) == [str(n + 1) for n in range(holds)], id_
        assert text.count("df-hold") >= holds >= 1
        assert "{{" not in text, id_


def test_each_tagged_step_has_its_cautions_right_before_it(built: dict[str, str]) -> None:
    for id_, text in built.items():
        row = flow_of(text).row
        holds = steps = 0
        for step in SOURCES[id_]["steps"]:
            if "hold" in step:
                holds += 1
                anchor = f"hold-{holds}"
            else:
                steps += 1
                anchor = f"step-{steps}"
            at = row.index(("step", anchor, ""))
            before = []
            for kind, tag, level in reversed(row[:at]):
                if kind != "caution":
                    break
                before.insert(0, (tag, level))
            tags = set(step.get("hazards", []))
            assert {tag for tag, _ in before if tag} >= tags, (id_, anchor)
            if "caution" in step:
                assert ("", step["caution"]["level"]) in before, (id_, anchor)
            if steps + holds > 1 or not SOURCES[id_].get("hazards"):
                levels = [LEVELS.index(level) for _, level in before]
                assert levels == sorted(levels), (id_, anchor)


def test_each_hazard_stands_in_full_where_it_first_comes_up(built: dict[str, str]) -> None:
    for id_, text in built.items():
        first = {}
        for tag, inner in re.findall(r'<aside data-hazard="([a-z-]+)"(.*?)</aside>', text, re.S):
            first.setdefault(tag, re.sub(r"<[^>]+>", "", inner))
        for tag, words in first.items():
            start = hazard(tag).text.split("’")[0].split("'")[0]
            assert start in words, (id_, tag)


def test_a_number_to_hit_stands_with_its_method(built: dict[str, str]) -> None:
    for id_, text in built.items():
        count = sum(1 for step in SOURCES[id_]["steps"] for h in hits(step) if "number" in h)
        found = re.findall(
            r'<p class="df-hit"><b>(.*?)</b>(?:<i [^>]*></i>)?<span>([^<].*?)</span></p>', text)
        assert len(found) == count, id_
        assert all(any(c.isnumeric() for c in number) for number, _ in found), id_


def test_no_sentence_is_built_into_two_procedures(built: dict[str, str]) -> None:
    owners = {}
    for id_, text in built.items():
        said: set[str] = set()
        for piece in flow_of(text).kept:
            said |= {s for s in sentences(piece) if piece.strip().endswith((".", "?"))}
        owners[id_] = said
    assert all(owners.values())
    assert shared(owners) == {}


def test_every_page_says_what_comes_first(built: dict[str, str]) -> None:
    for id_, text in built.items():
        assert "Local code, licences and the makers" in text, id_


def test_a_calculator_named_at_a_step_is_linked_there(built: dict[str, str]) -> None:
    for id_, text in built.items():
        for step in SOURCES[id_]["steps"]:
            named = step.get("calculator", [])
            for one in [named] if isinstance(named, str) else named:
                assert f'data-calculator="{one}"' in text, (id_, one)
