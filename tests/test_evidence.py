"""The evidence: published and independently computed values, row by row."""

from __future__ import annotations

from typing import Any

import evidence_run as evidence
import pytest

from downflow.calculators import all_calculators

ROWS = evidence.rows()


@pytest.mark.parametrize("row", ROWS, ids=[r["id"] for r in ROWS])
def test_our_value_is_the_printed_one(row: dict[str, Any]) -> None:
    value = evidence.ours(row)
    assert evidence.agrees(row, value), (
        f"{row['document']}, {row['section']}: printed {row['printed']} {row['unit']}, "
        f"ours {value!r}")


def test_no_two_rows_share_an_id() -> None:
    ids = [r["id"] for r in ROWS]
    assert sorted(ids) == sorted(set(ids))


@pytest.mark.parametrize("row", ROWS, ids=[r["id"] for r in ROWS])
def test_a_row_says_what_where_and_how(row: dict[str, Any]) -> None:
    assert row.keys() >= evidence.NEEDED, f"missing {evidence.NEEDED - row.keys()}"
    assert row.keys() <= evidence.FIELDS | {"file"}, row.keys() - evidence.FIELDS
    assert row["how"] in evidence.HOW
    assert row["document"]
    if row["how"] == "computed":
        assert any(c.isdigit() for c in row["note"]), "a library is named with its version"


@pytest.mark.parametrize("row", [r for r in ROWS if evidence.counted(r)],
                         ids=[r["id"] for r in ROWS if evidence.counted(r)])
def test_a_counted_value_would_notice_an_error_of_a_quarter(row: dict[str, Any]) -> None:
    if row["unit"] == "°F" or row.get("absolute") is row.get("relative") is None:
        return  # a temperature's zero is no zero; a printed digit is its own measure
    if float(row["printed"]):
        assert evidence.tolerance(row) <= 0.25 * abs(float(row["printed"]))


@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_a_calculator_has_four_counted_values_and_one_at_an_edge(id_: str) -> None:
    mine = [r for r in ROWS if r["calculator"] == id_ and evidence.counted(r)]
    assert len(mine) >= 4, f"{id_} has {len(mine)} counted check values"
    assert any(r["edge"] for r in mine), f"{id_} has none at an edge of its range"
