"""What a calculator reads and gives, as data: for the shell, the schema and other programs."""

from __future__ import annotations

from typing import Any

from downflow.demo import demo_job
from downflow.facts import Fact, all_facts
from downflow.facts.job import entry_data
from downflow.plan import the_chain


def fact_data(fact: Fact) -> dict[str, Any]:
    """A fact's definition as JSON data."""
    out: dict[str, Any] = {"name": fact.name, "label": fact.label, "kind": fact.kind,
                           "unit": fact.unit, "range": [fact.low, fact.high],
                           "decimals": fact.decimals, "help": fact.how, "where": fact.where,
                           "given": fact.given, "enterable": fact.enterable}
    if fact.choices:
        out["choices"] = [{"value": c.value, "label": c.label} for c in fact.choices]
    if fact.columns:
        out["columns"] = [{**fact_data(c), "optional": c.optional} for c in fact.columns]
        out["rows"] = {"least": fact.rows.least, "most": fact.rows.most,
                       "rising": fact.rows.rising, "unique": fact.rows.unique}
    if fact.assumption is not None:
        out["assumption"] = {"value": fact.assumption.value, "why": fact.assumption.why,
                             "source": fact.assumption.source.text()}
    if fact.hazard is not None:
        out["hazard"] = {"level": fact.hazard.level, "text": fact.hazard.text,
                         "who": fact.hazard.who}
    return out


def describe(id_: str) -> dict[str, Any]:
    """A calculator's inputs and outputs, with the demo's value as example of each input."""
    chain = the_chain()
    calculator = chain.modules[id_].calculator
    job = demo_job()
    inputs: list[dict[str, Any]] = []
    own = chain.asks(id_)
    for name in chain.inputs(id_):
        entry = job.entry(name)
        inputs.append({**fact_data(all_facts()[name]), "direct": name in own,
                       "needed": name in calculator.reads,
                       "example": None if entry is None else entry_data(name, entry)})
    return {"id": calculator.id, "title": calculator.title, "phase": calculator.phase,
            "question": calculator.question, "inputs": inputs,
            "outputs": [fact_data(all_facts()[n]) for n in calculator.gives]}
