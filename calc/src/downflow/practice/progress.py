"""What a learner has shown: on screen, and by hand before somebody who signs for it.

The two are kept apart, and neither replaces a licence or a certificate. The record is JSON that
stays on the device and can be taken elsewhere as a file.
"""

from __future__ import annotations

import dataclasses
import datetime
import json
from dataclasses import dataclass
from typing import Any

from downflow.facts.checks import BadInput, problem
from downflow.practice.skills import SKILLS, skill

VERSION = 1
MOST_ENTRIES = 2000
RESULTS = ("shown", "not all", "not yet")
SOURCES = ("home", "drill", "lesson")


@dataclass(frozen=True)
class OnScreen:
    """One thing answered on screen.

    Attributes:
        skill: The skill.
        what: `home`, `drill` or `lesson`.
        which: Its number or id.
        result: `shown`, `not all` or `not yet`.
        at: ISO time.
    """

    skill: str
    what: str
    which: str
    result: str
    at: str


@dataclass(frozen=True)
class ByHand:
    """One thing seen done by hand: what, by whom it was seen, their trade or licence, when."""

    skill: str
    what: str
    by: str
    trade: str
    at: str


@dataclass(frozen=True)
class Progress:
    """A learner's record."""

    learner: str = ""
    screen: tuple[OnScreen, ...] = ()
    hand: tuple[ByHand, ...] = ()

    def shown(self, skill_id: str) -> int:
        """How often a skill was shown on screen."""
        return sum(e.skill == skill_id and e.result == "shown" for e in self.screen)

    def tried(self, skill_id: str) -> int:
        """How often it was tried on screen."""
        return sum(e.skill == skill_id for e in self.screen)

    def last(self, skill_id: str) -> OnScreen | None:
        """The newest entry of a skill."""
        mine = [e for e in self.screen if e.skill == skill_id]
        return max(mine, key=lambda e: e.at) if mine else None

    def seen(self, skill_id: str) -> list[ByHand]:
        """What was seen done by hand, oldest first."""
        return sorted((e for e in self.hand if e.skill == skill_id), key=lambda e: e.at)


def read_progress(text: str) -> Progress:
    """The record that a file holds; an empty text is an empty record.

    Raises:
        BadInput: Not such a record, of a newer version, or with entries that cannot stand.
    """
    if not text.strip():
        return Progress()
    try:
        data = json.loads(text)
    except (ValueError, RecursionError):
        raise BadInput([problem("file", "Not a record of practice: it is not JSON. Yours is "
                                        "untouched.")]) from None
    if not isinstance(data, dict) or not isinstance(data.get("downflow_practice"), int):
        raise BadInput([problem("file", "Not a record of practice of this handbook. Yours is "
                                        "untouched.")])
    if data["downflow_practice"] > VERSION:
        raise BadInput([problem("file", "This record was written by a newer handbook. Update the "
                                        "handbook. Yours is untouched.")])
    problems: list[dict[str, str]] = []
    learner = data.get("learner", "")
    if not isinstance(learner, str) or len(learner) > 120:
        problems.append(problem("learner", "A name of at most 120 characters."))
        learner = ""
    screen = [OnScreen(**_entry(raw, f"screen[{n}]", ("skill", "what", "which", "result", "at"),
                                problems)) for n, raw in enumerate(_list(data, "screen", problems))]
    hand = [ByHand(**_entry(raw, f"hand[{n}]", ("skill", "what", "by", "trade", "at"), problems))
            for n, raw in enumerate(_list(data, "hand", problems))]
    for n, one in enumerate(screen):
        if one.result not in RESULTS or one.what not in SOURCES:
            problems.append(problem(f"screen[{n}]", "No such result."))
    if problems:
        raise BadInput(problems)
    return Progress(learner, tuple(screen), tuple(hand))


def _list(data: dict[str, Any], key: str, problems: list[dict[str, str]]) -> list[Any]:
    found = data.get(key, [])
    if isinstance(found, list) and len(found) <= MOST_ENTRIES:
        return found
    problems.append(problem(key, f"A list of at most {MOST_ENTRIES:,} entries."))
    return []


def _entry(raw: Any, where: str, names: tuple[str, ...],
           problems: list[dict[str, str]]) -> dict[str, str]:
    out = dict.fromkeys(names, "")
    if not isinstance(raw, dict):
        problems.append(problem(where, "An entry is an object."))
        return out
    for name in names:
        value = raw.get(name, "")
        if not isinstance(value, str) or len(value) > 300:
            problems.append(problem(f"{where}.{name}", "Text of at most 300 characters."))
            continue
        out[name] = value
    if out["skill"] not in {s.id for s in SKILLS}:
        problems.append(problem(f"{where}.skill", "No such skill."))
    if not _is_time(out["at"]):
        problems.append(problem(f"{where}.at", "A date, such as 2026-03-31."))
    return out


def _is_time(text: str) -> bool:
    try:
        datetime.date.fromisoformat(text[:10])
    except ValueError:
        return False
    return True


def write_progress(one: Progress) -> str:
    """The record as the text of a file."""
    return json.dumps({
        "downflow_practice": VERSION, "learner": one.learner,
        "screen": [dataclasses.asdict(e) for e in one.screen],
        "hand": [dataclasses.asdict(e) for e in one.hand]}, ensure_ascii=False, indent=1)


def answered(one: Progress, what: str, which: str, skills: dict[str, str], at: str) -> Progress:
    """The record with something answered on screen.

    Answered again, a home or a question counts once: the first answer is the one that tells.
    """
    known = {(e.skill, e.what, e.which) for e in one.screen}
    new = [OnScreen(skill(s).id, what, which, result, at) for s, result in sorted(skills.items())
           if (s, what, which) not in known]
    kept = (*one.screen, *new)[-MOST_ENTRIES:]
    return dataclasses.replace(one, screen=kept)


def seen_done(one: Progress, skill_id: str, what: str, by: str, trade: str, at: str) -> Progress:
    """The record with something seen done by hand.

    Raises:
        BadInput: A name, a trade and what was seen belong to it.
    """
    problems = [problem(name, words) for name, value, words in (
        ("what", what, "What was done?"), ("by", by, "Who saw it? A name."),
        ("trade", trade, "Their trade or licence."), ("at", at[:10] if _is_time(at) else "",
                                                      "A date, such as 2026-03-31."))
        if not value.strip()]
    if problems:
        raise BadInput(problems)
    entry = ByHand(skill(skill_id).id, what.strip(), by.strip(), trade.strip(), at)
    return dataclasses.replace(one, hand=(*one.hand, entry))


def merged(mine: Progress, theirs: Progress) -> Progress:
    """Both records in one, each entry once."""
    screen = dict.fromkeys((*mine.screen, *theirs.screen))
    hand = dict.fromkeys((*mine.hand, *theirs.hand))
    return Progress(mine.learner or theirs.learner,
                    tuple(sorted(screen, key=lambda e: e.at)),
                    tuple(sorted(hand, key=lambda e: e.at)))
