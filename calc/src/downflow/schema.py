"""JSON Schema of the job sheet and of an answer, made from the facts."""

from __future__ import annotations

from typing import Any

from downflow.facts import FROMS, Fact, all_facts
from downflow.facts.job import VERSION, VISIT_KINDS

DRAFT = "https://json-schema.org/draft/2020-12/schema"


def _value(fact: Fact) -> dict[str, Any]:
    if fact.kind == "number":
        out: dict[str, Any] = {"type": "number"}
        if fact.low is not None:
            out["minimum"] = fact.low
        if fact.high is not None:
            out["maximum"] = fact.high
        return out
    if fact.kind == "choice":
        return {"enum": [c.value for c in fact.choices]}
    if fact.kind == "yesno":
        return {"type": "boolean"}
    if fact.kind == "date":
        return {"type": "string", "pattern": r"^\d{4}-\d\d-\d\d$"}
    return {"type": "string", "minLength": 1, "maxLength": 400}


def _entry(fact: Fact) -> dict[str, Any]:
    shared = {"from": {"enum": list(FROMS)}, "at": {"type": "string"}, "note": {"type": "string"}}
    if fact.kind != "table":
        return {"type": "object", "required": ["value", "from"], "additionalProperties": False,
                "properties": {"value": _value(fact), "unit": {"const": fact.unit}, **shared}}
    row = {"type": "object", "additionalProperties": False,
           "required": [c.name for c in fact.columns if not c.optional],
           "properties": {c.name: _value(c) for c in fact.columns}}
    return {"type": "object", "required": ["rows", "from"], "additionalProperties": False,
            "properties": {"rows": {"type": "array", "items": row, "minItems": fact.rows.least,
                                    "maxItems": fact.rows.most}, **shared}}


def job_schema() -> dict[str, Any]:
    """JSON Schema of a job sheet as this version writes it."""
    enterable = {n: f for n, f in all_facts().items() if not f.given or f.enterable}
    home = {n: _entry(f) for n, f in enterable.items()}
    text = {"type": "string", "minLength": 1}
    visit = {"type": "object", "required": ["id", "date", "kind"],
             "properties": {"id": text, "date": {"type": "string"}, "kind": {"enum": VISIT_KINDS},
                            "facts": {"type": "object", "additionalProperties": False,
                                      "properties": home},
                            "confirmed": {"type": "object"}}}
    release = {"type": "object", "additionalProperties": False,
               "required": ["calculator", "verdict", "by", "trade", "reason", "date"],
               "properties": dict.fromkeys(
                   ("calculator", "verdict", "by", "trade", "reason", "date"), text)}
    return {"$schema": DRAFT, "title": "Job sheet", "type": "object",
            "required": ["downflow", "id", "name"], "additionalProperties": False,
            "properties": {"downflow": {"const": VERSION}, "id": text, "name": text,
                           "facts": {"type": "object", "additionalProperties": False,
                                     "properties": home},
                           "visits": {"type": "array", "items": visit},
                           "released": {"type": "array", "items": release},
                           "photos": {"type": "array", "items": {"type": "object"}},
                           "extra": {"type": "object"}}}


def answer_schema() -> dict[str, Any]:
    """JSON Schema of an answer: worked out, missing facts, or refused."""
    number, text = {"type": "number"}, {"type": "string"}
    source = {"type": "object", "required": ["document", "section", "kind"]}
    value = {"type": "object", "required": ["value", "unit", "low", "high"],
             "properties": {"value": number, "unit": text, "low": number, "high": number}}
    step = {"type": "object",
            "required": ["kind", "what", "formula", "values", "result", "source"],
            "properties": {"kind": {"enum": ["formula", "table", "sum", "solved"]}, "what": text,
                           "formula": text,
                           "values": {"type": "object", "additionalProperties": number},
                           "result": {"type": "object", "required": ["value", "unit"],
                                      "properties": {"value": number, "unit": text}},
                           "source": source}}
    limit = {"anyOf": [{"type": "null"},
                       {"type": "object", "required": ["value", "unit", "side"],
                        "properties": {"value": number, "unit": text,
                                       "side": {"enum": ["least", "most"]}}}]}
    verdict = {"type": "object",
               "required": ["id", "level", "answer", "limit", "safety", "text", "do", "source"],
               "properties": {"id": text, "level": {"enum": ["fine", "look", "hold"]},
                              "answer": {"type": ["number", "null"]}, "limit": limit,
                              "safety": {"type": "boolean"},
                              "text": {"type": "string", "minLength": 1}, "do": text,
                              "doubt": text, "signs": text, "source": source}}
    pair = {"type": "array", "items": number, "minItems": 2, "maxItems": 2}
    following = {"anyOf": [{"type": "null"},
                           {"type": "object", "required": ["field", "how", "answer", "now", "then"],
                            "properties": {"field": text, "how": text, "answer": text,
                                           "now": pair, "then": pair}}]}
    table = {"type": "object", "required": ["columns", "rows"],
             "properties": {"columns": {"type": "array"}, "rows": {"type": "array"}}}
    worked = {"type": "object",
              "required": ["ok", "answer", "tables", "working", "verdicts", "assumed",
                           "measure_next"],
              "properties": {"ok": {"const": True},
                             "answer": {"type": "object", "additionalProperties": value},
                             "tables": {"type": "object", "additionalProperties": table},
                             "working": {"type": "array", "items": step},
                             "verdicts": {"type": "array", "items": verdict},
                             "assumed": {"type": "array"}, "measure_next": following}}
    missing = {"type": "object", "required": ["ok", "missing"],
               "properties": {"ok": {"type": "null"}, "missing": {"type": "array", "items": text}}}
    refused = {"type": "object", "required": ["ok", "errors"],
               "properties": {"ok": {"const": False},
                              "errors": {"type": "array", "minItems": 1, "items": {
                                  "type": "object", "required": ["field", "message"],
                                  "properties": {"field": text, "message": text}}}}}
    return {"$schema": DRAFT, "title": "Answer", "anyOf": [worked, missing, refused]}
