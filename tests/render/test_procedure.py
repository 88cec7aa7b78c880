"""What the renderer refuses, and how it lays out a procedure and a symptom."""

from __future__ import annotations

import copy
import re
from typing import Any

import pytest

from downflow.render.drawings import drawings
from downflow.render.hazards import HAZARDS, LEVELS, hazard, in_order
from downflow.render.procedure import (
    MEASURING,
    PROCEDURES,
    VERBS,
    one_verb,
    procedure_html,
    symptom_html,
)

WHOLE: dict[str, Any] = {
    "id": "condensate-trap", "title": "A trap", "phase": "water", "summary": "Build a trap.",
    "who": "mechanical contractor", "licensed": ["The wires, by an electrician."],
    "protects": "Water on the floor.", "tools": ["tape"], "materials": ["pipe"], "minutes": 40,
    "forks": [{"if": "No height", "then": "Go through the floor."}],
    "drawing": "condensate-trap",
    "steps": [
        {"do": "Look at it."},
        {"do": "Measure the height.", "record": "height", "hazards": ["sharp", "electricity"],
         "hit": {"what": "height", "number": "{{ q 2 in }} or more", "how": "tape"}},
        {"hold": "it is level", "must": "The bubble stands.", "if_not": "Shim it.",
         "button": "Level. Go on", "hazards": ["electricity"]},
        {"do": "Glue it.", "hit": {"see": "no gap"}},
    ],
    "mistakes": [{"looks": "It drips", "is": "A gap.", "do": "Glue it again."},
                 {"looks": "It hums", "is": "Air.", "do": "Fill it."}],
    "sources": ["Common practice."],
}
SYMPTOM: dict[str, Any] = {
    "id": "drips", "title": "It drips", "summary": "A dry trap.", "who": "technician",
    "tests": [{"do": "Look into the vent.", "hazards": ["electricity"],
               "then": [{"seen": "Dry", "cause": "No seal.", "do": "Fill it."}]}],
    "sources": ["Common practice."],
}


def changed(**keys: Any) -> dict[str, Any]:
    return {**copy.deepcopy(WHOLE), **keys}


def refusal(data: dict[str, Any]) -> str:
    with pytest.raises(ValueError, match=r"\S") as refused:
        procedure_html(data)
    return str(refused.value)


def test_a_whole_procedure_is_painted() -> None:
    page = procedure_html(WHOLE)
    assert "<h1>A trap</h1>" in page
    assert "Phase 7, water · 40 minutes · mechanical contractor" in page


@pytest.mark.parametrize("key", [
    "title", "phase", "summary", "who", "protects", "tools", "minutes", "steps", "mistakes",
    "drawing", "sources"])
def test_a_missing_key_is_named(key: str) -> None:
    data = changed()
    del data[key]
    assert f"{key}: missing" in refusal(data)


def test_a_key_that_is_none_is_named() -> None:
    assert "tols: no such key" in refusal(changed(tols=["tape"]))


def test_a_page_that_is_not_in_the_order_of_the_job_is_refused() -> None:
    assert "id: nowhere is not in PROCEDURES" in refusal(changed(id="nowhere"))


@pytest.mark.parametrize(("step", "said"), [
    ({"do": "Glue it and cut the pipe."}, "second verb, 'cut'"),
    ({"do": "Glue it. Cut it."}, "must be one sentence"),
    ({"do": "Glue it"}, "must be one sentence"),
    ({"do": "The pipe is glued."}, "must begin with a verb"),
    ({"do": "Measure the pipe."}, "measures, so it needs a number"),
    ({"do": "Measure the pipe.", "hit": {"what": "a", "number": "little", "how": "b"}},
     "no digit in it"),
    ({"do": "Measure the pipe.", "hit": {"what": "a", "number": "2"}}, "how: missing"),
    ({"do": "Look.", "hazards": ["dragons"]}, "no hazard is tagged 'dragons'"),
    ({"do": "Look.", "caution": {"level": "loud", "text": "Ow."}}, "caution: must be"),
    ({"do": "Look.", "calculator": "no-such"}, "no calculator is called no-such"),
    ({"do": "Look.", "see": "no-such"}, "no procedure is called no-such"),
    ({"do": "Look.", "say": "more"}, "steps[1].say: no such key"),
    ({"hold": "level", "must": "It stands.", "button": "Go on"}, "if_not: missing"),
    ("Look.", "must be a mapping"),
])
def test_a_step_that_is_not_one_is_refused(step: Any, said: str) -> None:
    data = changed()
    data["steps"].insert(0, step)
    assert said in refusal(data)


def test_a_procedure_without_a_hold_point_is_refused() -> None:
    assert "no hold point" in refusal(changed(steps=[{"do": "Look.", "record": "it"}]))


def test_a_procedure_that_records_nothing_is_refused() -> None:
    data = changed()
    del data["steps"][1]["record"]
    assert "nothing is recorded" in refusal(data)
    assert procedure_html({**data, "record": ["height"]})


def test_every_problem_is_said_at_once() -> None:
    said = refusal(changed(tools=[], phase=7, extra=1))
    assert all(word in said for word in ("tools", "phase", "extra"))


def test_one_verb_lets_nouns_stand() -> None:
    assert one_verb("Test skirting, frame and belly staples for voltage.") == []
    assert one_verb("Set {{ q 0.5 in }} of seal and tape.") == []


def test_cautions_stand_before_their_step_in_falling_order() -> None:
    page = procedure_html(WHOLE)
    step = page.index('id="step-2"')
    found = re.findall(r'data-hazard="([a-z-]+)"', page[:step])
    assert found == ["electricity", "sharp"]
    assert "Find every supply" in page[:step]


def test_a_hazard_that_returns_is_said_in_one_sentence() -> None:
    page = procedure_html(WHOLE)
    assert page.count(hazard("electricity").text.split(":")[0] + ":") == 1
    assert "Still locked out?" in page[page.index('id="step-2"'):page.index('id="hold-1"')]


def test_steps_count_on_past_a_hold_point() -> None:
    page = procedure_html(WHOLE)
    assert re.findall(r'id="(step-\d|hold-\d)"', page) == ["step-1", "step-2", "hold-1", "step-3"]
    assert '<ol class="df-steps" start="3">' in page
    assert "Level. Go on</button>" in page


def test_a_link_to_a_procedure_without_a_page_is_left_out() -> None:
    data = changed()
    data["steps"][0]["see"] = ["return-path"]
    assert "procedures/return-path/" not in procedure_html({**data, "titles": {}})
    page = procedure_html({**data, "titles": {"return-path": "Way back"}})
    assert 'href="../../procedures/return-path/">Way back</a>' in page


def test_a_calculator_stands_at_its_step() -> None:
    data = changed()
    data["steps"][0]["calculator"] = "backup-kit"
    page = procedure_html(data)
    step = page[page.index('id="step-1"'):page.index('id="step-2"')]
    assert 'data-calculator="backup-kit"' in step
    assert 'href="../../calculators/backup-kit/"' in step


def test_a_text_cannot_smuggle_markup_in() -> None:
    assert "<script" not in procedure_html(changed(title="<script>x</script>"))


def test_a_symptom_goes_from_test_to_cause() -> None:
    page = symptom_html(SYMPTOM)
    assert page.index("data-hazard") < page.index('id="step-1"') < page.index("No seal.")
    with pytest.raises(ValueError, match=r"tests\[1\]\.then"):
        symptom_html({**SYMPTOM, "tests": [{"do": "Look into the vent."}]})


def test_the_list_of_hazards_keeps_its_order_and_its_words() -> None:
    assert len({h.tag for h in HAZARDS}) == len(HAZARDS)
    assert [LEVELS.index(h.level) for h in HAZARDS] == sorted(
        LEVELS.index(h.level) for h in HAZARDS)
    for one in HAZARDS:
        assert one.text.endswith(".") and one.again.endswith((".", "?")), one.tag
        assert len(one.again) < len(one.text), one.tag
    assert [h.tag for h in in_order(["sharp", "fuel-gas", "fall"])] == ["fuel-gas", "fall", "sharp"]
    with pytest.raises(ValueError, match="dragons"):
        hazard("dragons")


def test_measuring_verbs_are_verbs_and_ids_are_plain() -> None:
    assert MEASURING <= VERBS
    assert len(set(PROCEDURES)) == len(PROCEDURES)
    assert all(re.fullmatch(r"[a-z][a-z-]+", id_) for id_ in PROCEDURES)


def test_a_drawing_that_is_none_is_refused_with_the_names() -> None:
    assert "no drawing is called 'nothing'" in refusal(changed(drawing="nothing"))
    assert "condensate-trap" in drawings()
