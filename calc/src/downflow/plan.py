"""A whole job: every answer that follows from its facts, in the order of the chain."""

from __future__ import annotations

import functools
from dataclasses import dataclass
from typing import Any

from downflow.calculators import all_calculators
from downflow.engine.answer import Answer, answer_data, urgency, verdict_data
from downflow.engine.chain import Chain, Study
from downflow.engine.paper import Verdict
from downflow.facts.job import Job, job_data
from downflow.phases import phase_number


@functools.cache
def the_chain() -> Chain:
    """The chain of all calculators."""
    return Chain(all_calculators())


def in_order() -> list[str]:
    """Ids of the calculators in the order of the work, feeders before what they feed."""
    chain = the_chain()
    place = {id_: i for i, id_ in enumerate(chain.order)}
    return sorted(chain.modules,
                  key=lambda i: (phase_number(chain.modules[i].calculator.phase), place[i]))


@dataclass(frozen=True)
class Plan:
    """Every answer for one job, and every verdict, worst first."""

    job: Job
    answers: dict[str, Answer]

    def verdicts(self) -> list[tuple[str, Verdict]]:
        """Calculator id and verdict, worst first, a released hold behind those that stand."""
        every = [(id_, v) for id_, a in self.answers.items() for v in a.verdicts]
        return sorted(every, key=lambda e: urgency(e[1]))

    def counts(self) -> dict[str, int]:
        """How many verdicts: `hold`, `look`, `sign` (sound, waits for a signature), `fine`."""
        out = {"hold": 0, "look": 0, "sign": 0, "fine": 0}
        for answer in self.answers.values():
            for verdict in answer.verdicts:
                out["sign" if verdict.to_sign else verdict.level] += 1
        return out

    def missing(self) -> dict[str, list[str]]:
        """For each fact that is missing: the calculators that wait for it."""
        out: dict[str, list[str]] = {}
        for id_, answer in self.answers.items():
            for name in answer.missing:
                out.setdefault(name, []).append(id_)
        return out

    def unsettled(self) -> dict[str, list[str]]:
        """For each fact whose better reading would narrow an open answer: which ones."""
        out: dict[str, list[str]] = {}
        for id_, answer in self.answers.items():
            if answer.measure_next is not None and answer.level() != "fine":
                out.setdefault(answer.measure_next.field, []).append(id_)
        return out


def plan(job: Job, *, ranged: bool = True) -> Plan:
    """Works the whole job through."""
    study = Study(the_chain(), job)
    return Plan(job, {id_: study.answer(id_, ranged=ranged) for id_ in in_order()})


def plan_data(made: Plan, system: str = "ip") -> dict[str, Any]:
    """A plan as JSON data, by the contract of the command line."""
    return {
        "ok": True,
        "job": job_data(made.job),
        "answers": {id_: answer_data(a, system) for id_, a in made.answers.items()},
        "verdicts": [{"calculator": id_, **verdict_data(v, system)}
                     for id_, v in made.verdicts()],
    }
