"""Works the evidence: check values as data, one judge for all of them.

A row names a function (or a constant, or `solve` for a whole calculator), its inputs and the
value as printed in the document. Inputs are JSON; a list becomes a tuple, and two objects reach the
published tables: `{"table": "wire_ampacity"}` is all of its typed rows, and
`{"table": "wire_ampacity", "row": {"material": "cu", "size": "6"}}` the one that matches.
A `column` besides takes that one value out of the row. A document in SI is entered as
printed: `{"value": 9.1, "unit": "°C diff", "to": "°F diff"}` is converted on its way in, and
`"convert": [["Btu/h", "W"], ["ft²", "m²", -1]]` turns our value into the printed unit.
"""

from __future__ import annotations

import importlib
import json
from decimal import Decimal
from pathlib import Path
from typing import Any

from downflow import tables, units

FOLDER = Path(__file__).parent / "evidence"
HOW = ("read", "computed", "derived", "common practice", "from memory")
COUNTED = ("read", "computed")
FIELDS = {"id", "calculator", "call", "inputs", "output", "printed", "unit", "relative",
          "absolute", "convert", "document", "section", "how", "edge", "note"}
NEEDED = {"id", "calculator", "call", "inputs", "printed", "unit", "document", "section", "how",
          "edge"}


def rows() -> list[dict[str, Any]]:
    """Every row of every file, with the file's name under `file`."""
    found: list[dict[str, Any]] = []
    for path in sorted(FOLDER.glob("*.json")):
        for row in json.loads(path.read_text(encoding="utf-8")):
            found.append({**row, "file": path.name})
    return found


def counted(row: dict[str, Any]) -> bool:
    """Whether a row was read in a document or computed by an independent library."""
    return row["how"] in COUNTED


def argument(value: Any) -> Any:
    """A JSON value as an argument of a physics function."""
    if isinstance(value, list):
        return tuple(argument(v) for v in value)
    if isinstance(value, dict) and "table" in value:
        all_rows = tables.rows(value["table"])
        if "row" not in value:
            return all_rows
        fits = [r for r in all_rows
                if all(getattr(r, k) == v for k, v in value["row"].items())]
        if len(fits) != 1:
            raise ValueError(f"{len(fits)} rows of {value['table']} fit {value['row']}")
        return getattr(fits[0], value["column"]) if "column" in value else fits[0]
    if isinstance(value, dict) and value.keys() == {"value", "unit", "to"}:
        return units.convert(value["value"], value["unit"], value["to"])
    if isinstance(value, dict):
        return {k: argument(v) for k, v in value.items()}
    return value


def _solve(row: dict[str, Any]) -> Any:
    from downflow.engine.answer import answer_data
    from downflow.facts.job import inputs_to_job
    from downflow.plan import the_chain

    chain, id_ = the_chain(), row["calculator"]
    answer = answer_data(chain.solve(id_, inputs_to_job(row["inputs"], chain.inputs(id_)),
                                     ranged=False))
    if not answer.get("ok"):
        raise ValueError(f"{row['id']}: {answer}")
    name = row["output"]
    if name.startswith("tables."):  # tables.NAME[ROW].COLUMN
        table, _, rest = name.removeprefix("tables.").partition("[")
        index, _, column = rest.partition("].")
        return answer["tables"][table]["rows"][int(index)][column]
    return answer["answer"][name]["value"]


def ours(row: dict[str, Any]) -> Any:
    """What this project's code says for a row."""
    if row["call"] == "solve":
        result = _solve(row)
    else:
        module, _, name = row["call"].partition(":")
        result = getattr(importlib.import_module(module), name)
        if callable(result):
            result = result(**{k: argument(v) for k, v in row["inputs"].items()})
    if row["call"] != "solve" and row.get("output") is not None:
        for part in str(row["output"]).split("."):  # a place or a name, or one in the other
            result = result[int(part)] if part.isdigit() else getattr(result, part)
    for old, new, *power in row.get("convert", ()):
        result *= units.convert(1.0, old, new) ** (power[0] if power else 1)
    return result


def tolerance(row: dict[str, Any]) -> float:
    """How far ours may be from the printed value: stated, or half its last printed digit."""
    if row.get("absolute") is not None:
        return float(row["absolute"])
    if row.get("relative") is not None:
        return abs(float(row["printed"])) * float(row["relative"])
    exponent = Decimal(row["printed"]).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5 * float(Decimal(1).scaleb(exponent)) * (1 + 1e-9)


def agrees(row: dict[str, Any], value: Any) -> bool:
    """Whether our value is the printed one within its tolerance; words must be the same."""
    if isinstance(value, bool) or value is None or isinstance(value, str):
        return str(value).lower() == row["printed"].lower()
    return abs(float(value) - float(row["printed"])) <= tolerance(row)
