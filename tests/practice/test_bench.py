"""The bench of faults: each cause moves what it moves in the trade, and leaves the rest."""

from __future__ import annotations

import pytest

from downflow.practice import bench
from downflow.practice.bench import CAUSES
from downflow.render.procedure import PROCEDURES

EVERY = [(c.id, s.id) for c in CAUSES for s in c.severities]


def rows(cause: str, severity: str) -> dict[str, bench.Row]:
    return {r.id: r for r in bench.bench(cause, severity).rows}


@pytest.mark.parametrize(("cause", "severity"), EVERY)
def test_a_bench_is_whole(cause: str, severity: str):
    found = bench.bench(cause, severity)
    assert found.cause.procedure in PROCEDURES
    assert any(r.moved for r in found.rows)
    assert found.because.endswith(".")
    assert len({r.id for r in found.rows}) == len(found.rows) >= 12


def test_the_sound_system_lies_within_every_limit():
    for row in bench.bench("charge", "under").rows:
        assert row.before is not None
        assert row.low is None or row.before >= row.low, row.id
        assert row.high is None or row.before <= row.high, row.id


# What moves which way: common practice of the trade, as in training for technicians.
MOVES = [
    ("filter", "loaded", {"external": 1, "return": 1, "filter": 1, "blower": 1}),
    ("crossover", "tenth", {"far": -1, "supply": 1}),
    ("registers", "six", {"supply": 1, "external": 1}),
    ("return", "tenth", {"closet": 1, "return": 1, "external": 1, "blower": 1}),
    ("charge", "under", {"subcooling": -1}),
    ("charge", "far-under", {"subcooling": -1, "superheat": 1, "suction": -1, "boils": -1}),
    ("charge", "far-over", {"subcooling": 1, "condensing": 1}),
    ("airflow", "very", {"airflow": -1, "suction": -1, "boils": -1, "superheat": -1, "air": -1,
                         "external": -1}),
    ("coil", "much", {"liquid": 1, "condensing": 1, "outdoor": 1}),
    ("leaks", "fifth", {"delivered": -1}),
    ("backup", "always", {"kit": 1, "air": 1}),
    ("outdoors", "95", {"liquid": 1, "outdoor": 1}),
]


@pytest.mark.parametrize(("cause", "severity", "moves"), MOVES)
def test_readings_move_as_technicians_know_them_to(cause: str, severity: str,
                                                   moves: dict[str, int]):
    found = rows(cause, severity)
    for name, way in moves.items():
        row = found[name]
        assert row.moved, name
        assert row.before is not None
        assert row.after is not None
        assert (row.after - row.before) * way > 0, name


@pytest.mark.parametrize("cause", ["filter", "crossover", "registers", "return", "leaks"])
def test_an_air_fault_leaves_a_constant_airflow_and_the_charge(cause: str):
    found = rows(cause, bench.cause(cause).severities[0].id)
    assert not found["airflow"].moved
    assert not found["subcooling"].moved


def test_a_charge_fault_leaves_the_air_alone():
    for severity in ("under", "far-under", "over", "far-over"):
        found = rows("charge", severity)
        for name in ("external", "return", "filter", "supply", "airflow", "closet", "far"):
            assert not found[name].moved, name


def test_worse_is_worse():
    for id_, name in (("filter", "filter"), ("crossover", "far"), ("return", "closet"),
                      ("airflow", "boils"), ("coil", "condensing"), ("leaks", "delivered")):
        values = []
        for severity in bench.cause(id_).severities:
            row = rows(id_, severity.id)[name]
            assert row.before is not None
            assert row.after is not None
            values.append(abs(row.after - row.before))
        assert values == sorted(values)


def test_in_winter_the_charge_is_not_judged_by_gauges():
    for severity in ("47", "17", "5"):
        found = rows("outdoors", severity)
        assert found["subcooling"].after is None
        assert found["subcooling"].before is not None
        assert found["air"].after is not None


def test_what_is_not_on_the_bench_is_refused():
    with pytest.raises(ValueError, match="no cause"):
        bench.bench("gremlins", "some")
    with pytest.raises(ValueError, match="no severity"):
        bench.bench("filter", "a little")


def test_before_and_after_stand_on_one_rule_with_their_words():
    from downflow.drawing import Limit, rule_of_two

    figure = str(rule_of_two("t", "Superheat", 8.0, 13.7, "°F diff",
                             limits=[Limit(5.0, "least"), Limit(15.0, "most")],
                             decimals=1).figure())
    assert "before 8.0" in figure
    assert "after 13.7" in figure
    assert "At least 5.0" in figure
    same = str(rule_of_two("s", "Static", 0.2, 0.2, "in w.c.", decimals=2).figure())
    assert "before 0.20" in same
