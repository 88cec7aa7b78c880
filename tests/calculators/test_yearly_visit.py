"""The yearly visit."""

import dataclasses

import pytest

from downflow.demo import demo_job
from downflow.facts.job import Entry, Job, Visit
from downflow.plan import the_chain
from downflow.testing import verdict_of


def two_visits(then, now, **facts):
    """The demo home with two visits only: readings then and now."""
    demo = demo_job()
    def read(values):
        return {n: Entry(v, "measured") for n, v in values.items()}

    visits = (Visit("a", "2026-10-20", "commission", read(then)),
              Visit("b", "2027-10-05", "yearly", read(now)))
    job = dataclasses.replace(demo, visits=visits)
    for name, value in facts.items():
        job = job.with_entry(name, Entry(value, "measured"))
    return the_chain().solve("yearly-visit", job)


STATIC = {"static_supply_inwc": 0.10, "static_return_inwc": 0.20}
KIT = {"kit_volts": 240.0, "kit_amps": 33.0}
RISE = {**KIT, "rise_return_f": 68.0, "rise_supply_f": 98.0}
CHARGE = {"suction_psig": 116.0, "suction_line_f": 51.0, "liquid_psig": 252.0,
          "liquid_line_f": 77.0}


def test_the_demo_has_a_year_behind_it():
    answer = the_chain().solve("yearly-visit", demo_job())
    assert answer.values["yearly_static_pct"].value > 0
    assert "kit" in verdict_of(answer, "not-read").values["what"]


def test_the_same_readings_have_not_drifted():
    every = {**STATIC, **RISE, **CHARGE, "pan_suction_read_inwc": 0.45, "control_volts": 25.5}
    answer = two_visits(every, every)
    for name in ("yearly_static_pct", "yearly_kit_pct", "yearly_airflow_pct",
                 "yearly_suction_pct", "yearly_subcooling_f", "yearly_superheat_f",
                 "yearly_control_v"):
        assert answer.values[name].value == pytest.approx(0, abs=1e-9)


def test_a_fifth_more_static_is_looked_at():
    now = {"static_supply_inwc": 0.10, "static_return_inwc": 0.33}
    verdict = verdict_of(two_visits(STATIC, now), "static")
    assert verdict.level == "look"
    assert "filter" in verdict.do
    assert verdict.values["date"] == "2026-10-20"


def test_a_little_more_static_is_not():
    steady = {"static_supply_inwc": 0.30, "static_return_inwc": 0.40}
    now = {"static_supply_inwc": 0.30, "static_return_inwc": 0.44}
    assert verdict_of(two_visits(steady, now), "static").level == "fine"


def test_voltage_alone_is_no_drift_of_the_kit():
    lower = {"kit_volts": 230.0, "kit_amps": 33.0 * 230 / 240}
    assert two_visits(KIT, lower).values["yearly_kit_pct"].value == pytest.approx(0)


def test_an_element_that_is_out_shows():
    verdict = verdict_of(two_visits(KIT, {"kit_volts": 240.0, "kit_amps": 16.5}), "kit")
    assert verdict.level == "look"
    assert verdict.value > 50
    assert "out" in verdict.text


def test_more_heat_rise_at_the_same_power_is_less_air():
    now = {**RISE, "rise_supply_f": 106.0}
    answer = two_visits(RISE, now)
    assert answer.values["yearly_airflow_pct"].value == pytest.approx(100 * 30 / 38 - 100)
    assert verdict_of(answer, "airflow").level == "look"


def test_subcooling_is_worked_for_both_visits():
    answer = two_visits(CHARGE, {**CHARGE, "liquid_line_f": 83.0})
    assert answer.values["yearly_subcooling_f"].value == pytest.approx(-6.0)
    assert verdict_of(answer, "subcooling").level == "look"
    assert "leak" in verdict_of(answer, "subcooling").text


def test_a_first_year_has_nothing_to_compare_and_says_so():
    answer = two_visits({}, STATIC)
    assert verdict_of(answer, "static").level == "fine"
    assert "Next year" in verdict_of(answer, "static").text
    assert "yearly_static_pct" not in answer.values


def test_a_reading_left_out_this_year_is_named():
    left = verdict_of(two_visits(STATIC, {}), "not-read")
    assert left.level == "look"
    assert "static pressure" in left.values["what"]


def test_before_the_first_yearly_visit_nothing_is_left_out():
    demo = demo_job()
    job = dataclasses.replace(demo, visits=tuple(v for v in demo.visits if v.kind != "yearly"))
    verdict = verdict_of(the_chain().solve("yearly-visit", job), "not-read")
    assert verdict.level == "fine"
    assert "first readings are taken at start-up" in verdict.text


def test_gauges_left_in_the_box_are_no_reading_left_out():
    every = {**STATIC, **RISE, "pan_suction_read_inwc": 0.45, "control_volts": 25.5}
    answer = two_visits({**every, **CHARGE}, every)
    assert verdict_of(answer, "not-read").level == "fine"


def test_the_checklist_knows_the_home():
    plain = two_visits({}, {}, trap_place="closet", water_heater_fuel="electric",
                       range_fuel="electric", dryer_fuel="electric", stove_fuel="none",
                       leak_detector="none")
    more = two_visits({}, {}, trap_place="crawl", water_heater_fuel="propane",
                      leak_detector="factory")
    added = (more.values["yearly_minutes"].value - plain.values["yearly_minutes"].value)
    assert added == 8 + 15 + 6
    rows = more.tables["yearly_tasks"]
    assert sum(r["minutes"] for r in rows) == more.values["yearly_minutes"].value


def test_swapped_probes_are_refused():
    answer = two_visits(RISE, {**RISE, "rise_return_f": 98.0, "rise_supply_f": 68.0})
    assert answer.ok is False
    assert answer.errors[0]["field"] == "rise_supply_f"


def test_a_visit_from_a_file_counts_and_not_the_order_in_it():
    """The newest visit is the one with the newest date."""
    newest = Visit("b", "2027-10-05", "yearly", {"control_volts": Entry(24.0, "measured")})
    older = Visit("a", "2026-10-20", "commission", {"control_volts": Entry(26.0, "measured")})
    job = Job("x", "x", {}, (newest, older))
    assert job.read_now("control_volts")
    assert job.before("control_volts") == (Entry(26.0, "measured"), "2026-10-20")
    assert job.entry("control_volts").value == 24.0
