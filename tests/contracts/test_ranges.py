"""A range holds about nine times in ten, and doubt only makes a verdict stricter."""

import random

import pytest

from downflow.calculators import all_calculators
from downflow.demo import demo_job
from downflow.engine.chain import Run, Study, _clamped
from downflow.engine.paper import LEVELS
from downflow.facts import all_facts
from downflow.facts.job import Entry
from downflow.plan import the_chain
from downflow.testing import changed, solve_demo, verdict_of

NINETY = 1.6449  # standard deviations that hold the middle nine tenths of a normal error
DRAWS = 500


def draw(rng, value, spread, fact):
    low, high = spread.ends(value)
    z = rng.gauss(0, 1)
    moved = value + z / NINETY * ((high - value) if z > 0 else (value - low))
    return _clamped(fact, moved, moved)[0]


def uncertain(out, job):
    """Each entered or assumed thing with a spread: fact, column or nothing, value, spread."""
    for name, origin in out.used.items():
        fact = all_facts()[name]
        entry = job.entry(name)
        value = entry.value if entry else fact.assumption.value if fact.assumption else None
        if fact.kind == "number":
            low, high = fact.spread_of(origin).ends(value)
            if low != high:
                yield fact, None, value, fact.spread_of(origin)
        elif fact.kind == "table" and isinstance(value, list):
            for column in fact.columns:
                if column.kind == "number" and origin in column.spread:
                    yield fact, column, value, column.spread_of(origin)


@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_the_range_agrees_with_a_thousand_throws(id_):
    """Range width within 20 % of the middle 90 % of seeded Monte Carlo runs."""
    job = demo_job()
    study = Study(the_chain(), job)
    answer = study.answer(id_)
    out = study.base.outcome(id_)
    name = answer.shown()[0]
    wanted = [n for n in answer.shown() if answer.values[n].high > answer.values[n].low]
    if not wanted:
        return
    rng = random.Random(20260914)
    things = list(uncertain(out, job))
    models = [(n, s) for g in sorted(out.through)
              for n, s in study.base.outcome(g).paper.models.items()
              if g == id_ or job.entry(n) is None]
    samples = {n: [] for n in wanted}
    for _ in range(DRAWS):
        moved, tables = {}, {}
        for fact, column, value, spread in things:
            if column is None:
                moved[fact.name] = draw(rng, value, spread, fact)
                continue
            rows = tables.setdefault(fact.name, [dict(r) for r in value])
            z = rng.gauss(0, 1)
            for row, before in zip(rows, value, strict=True):
                cell = before.get(column.name)
                if cell is not None:
                    low, high = spread.ends(cell)
                    row[column.name] = cell + z / NINETY * ((high - cell) if z > 0
                                                           else (cell - low))
        shift = {}
        for n, spread in models:
            value = study.base.outcome(the_chain().giver[n]).paper.values[n]
            low, high = spread.ends(value)
            z = rng.gauss(0, 1)
            shift[n] = z / NINETY * ((high - value) if z > 0 else (value - low))
        run = Run(the_chain(), job, base=study.base, moved={**moved, **tables}, shift=shift)
        paper = run.outcome(id_).paper
        if paper is None:
            continue
        for n in wanted:
            if n in paper.values:
                samples[n].append(paper.values[n])
    rows = sorted(samples[name]) if name in samples else sorted(samples[wanted[0]])
    shown = answer.values[name if name in samples else wanted[0]]
    low, high = rows[int(0.05 * len(rows))], rows[int(0.95 * len(rows))]
    width = shown.high - shown.low
    assert width == pytest.approx(high - low, rel=0.20), (
        f"{name}: {shown.low} to {shown.high}, thrown {low} to {high}")


def test_a_reading_taken_instead_of_guessed_narrows_the_range():
    guessed = solve_demo("backup-kit", supply_v=(240.0, "estimated")).values["kit_real_kw"]
    read = solve_demo("backup-kit", supply_v=(240.0, "measured")).values["kit_real_kw"]
    assert read.high - read.low < guessed.high - guessed.low
    assert read.value == guessed.value


def test_fine_turns_to_look_when_an_input_is_assumed_instead_of_measured():
    sure = solve_demo("backup-kit", home_ua_btuh_f=(400.0, "measured"),
                      delivery_efficiency_pct=(83.0, "measured"), kit_planned_kw=5.0)
    unsure = solve_demo("backup-kit", home_ua_btuh_f=(400.0, "estimated"),
                        delivery_efficiency_pct=(83.0, "estimated"), kit_planned_kw=5.0)
    assert verdict_of(sure, "kit-covers").value == verdict_of(unsure, "kit-covers").value
    assert verdict_of(unsure, "kit-covers").level == "look"
    assert "inside the range" in verdict_of(unsure, "kit-covers").doubt


def test_a_hold_stays_a_hold_however_poor_the_reading():
    for origin in ("measured", "estimated"):
        answer = solve_demo("backup-kit", heating_airflow_cfm=(500.0, origin))
        assert verdict_of(answer, "elements-air").level == "hold"


def test_a_safety_limit_holds_when_any_part_of_the_range_is_beyond():
    answer = solve_demo("backup-kit", heating_airflow_cfm=(960.0, "estimated"))
    verdict = verdict_of(answer, "elements-air")
    assert verdict.value > verdict.limit
    assert verdict.level == "hold"


@pytest.mark.parametrize("id_", sorted(all_calculators()))
def test_doubt_only_makes_a_verdict_stricter(id_):
    rng = random.Random(id_)
    chain = the_chain()
    for _ in range(4):
        job = demo_job()
        for name in chain.inputs(id_):
            fact, entry = all_facts()[name], job.entry(name)
            if entry is None or fact.kind != "number" or rng.random() < 0.5:
                continue
            value = entry.value * rng.uniform(0.9, 1.1)
            value = _clamped(fact, value, value)[0]
            job = job.with_entry(name, Entry(value, rng.choice(["measured", "estimated"])))
        quick, full = chain.solve(id_, job, ranged=False), chain.solve(id_, job)
        assert quick.ok == full.ok
        for a, b in zip(quick.verdicts, full.verdicts, strict=True):
            assert a.id == b.id
            assert LEVELS.index(b.level) >= LEVELS.index(a.level)


def test_a_sound_verdict_that_an_end_of_the_range_breaks_waits_for_no_signature():
    """Both ends read `look`, because somebody must sign; only one of them is sound."""
    from downflow.engine.calculator import Calculator, Module
    from downflow.engine.chain import Chain
    from downflow.sources import PRACTICE

    def solve(job, paper):
        paper.verdict("stated", "fine" if job.supply_v > 239.5 else "look", "As it stands.",
                      source=PRACTICE, best="look", signs="licensed electrician")

    one = Calculator("one", "One", "power", ("supply_v",), ())
    chain = Chain({"one": Module(one, solve, None, "")})
    sure = verdict_of(chain.solve("one", changed(supply_v=(250.0, "measured"))), "stated")
    near = verdict_of(chain.solve("one", changed(supply_v=(240.0, "estimated"))), "stated")
    assert sure.level == near.level == "look"
    assert sure.to_sign
    assert not near.to_sign
    assert near.doubt


def test_a_released_hold_stays_a_hold_and_says_who_released_it():
    import dataclasses

    from downflow.facts.job import Release

    job = changed(heating_airflow_cfm=500.0)
    job = dataclasses.replace(job, released=(Release(
        "backup-kit", "elements-air", "R. Field", "licence 12", "maker's letter", "2026-10-01"),))
    verdict = verdict_of(the_chain().solve("backup-kit", job), "elements-air")
    assert verdict.level == "hold"
    assert verdict.released["by"] == "R. Field"


def test_the_next_reading_is_the_one_that_narrows_most():
    answer = solve_demo("heat-pump-match")
    following = answer.measure_next
    now, then = following.now, following.then
    assert then[1] - then[0] < now[1] - now[0]
    assert now[0] <= then[0] <= answer.values[following.answer].value <= then[1] <= now[1]
