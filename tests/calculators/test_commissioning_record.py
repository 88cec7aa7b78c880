"""The commissioning record: taken, due, does not apply; each in its range."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(*, ranged=False, **changed):
    """The record; without its ranges where only the readings themselves are asked about."""
    return solve_demo("commissioning-record", ranged=ranged, **changed)


def level(id_, *, ranged=False, **changed):
    return verdict_of(solved(ranged=ranged, **changed), id_).level


def states(answer):
    return {r["id"]: r["state"] for r in answer.tables["record_table"]}


def test_what_is_due_stands_on_top_of_the_record():
    answer = solved()
    rows = answer.tables["record_table"]
    due = [r["state"] for r in rows].count("due")
    assert due == answer.values["record_due"].value == 2
    assert all(r["state"] == "due" for r in rows[:due])


def test_every_reading_is_taken_due_or_does_not_apply():
    answer = solved(leak_detector="none", leak_airflow_cfm=None, kit_amps=None)
    found = states(answer)
    assert set(found.values()) == {"taken", "due", "does not apply"}
    assert found["detector"] == "does not apply"
    assert found["kit-amps"] == "due"
    counted = sum(answer.values[n].value for n in ("record_due", "record_taken", "record_off"))
    assert counted == len(found)


def test_what_must_be_known_before_it_runs_is_a_hold_while_due():
    assert level("kit-amps", kit_amps=None) == "hold"
    assert level("float", float_test="due") == "hold"
    assert level("defrost", defrost_test="due", commission_outdoor_f=35) == "look"


def test_a_due_reading_says_in_which_weather_it_can_be_taken():
    from downflow.engine.answer import verdict_data

    said = verdict_data(verdict_of(solved(), "return"))["text"].replace("\u00a0", " ")
    assert "Heating split" in said
    assert "Forced defrost (−15 °F to 50 °F outdoors)" in said
    assert "than today's 63" in said


def test_what_waits_for_weather_is_said_once():
    assert not {"heating-split", "defrost"} & {v.id for v in solved().verdicts}
    cold = solved(commission_outdoor_f=35)
    assert verdict_of(cold, "heating-split").do == "Take it before you leave."


def test_a_return_visit_needs_its_date():
    assert "2026-12-08" in str(verdict_of(solved(), "return").values["day"])
    assert "no date" in verdict_of(solved(return_on=None), "return").text
    done = solved(defrost_test="passed", heat_split_return_f=68, heat_split_supply_f=94,
                  heat_split_outdoor_f=30)
    assert verdict_of(done, "return").level == "fine"


def test_the_charge_rests_on_the_scale_until_it_is_warm():
    assert level("charge-rests") == "fine"
    cold = {"suction_psig": None}
    assert "weighed" in verdict_of(solved(**cold), "charge-rests").text
    assert level("charge-rests", **cold) == "look"
    assert level("charge-rests", charge_weighed_oz=None, **cold) == "hold"


def test_a_charge_reading_from_a_cold_day_does_not_count():
    verdict = verdict_of(solved(charge_outdoor_f=45), "subcooling")
    assert verdict.level == "look"
    assert "counts between" in verdict.text


def test_the_kits_current_follows_the_voltage():
    at_239 = solved().values["expect_kit_a"].value
    assert at_239 == pytest.approx(8000 * 239 / 240**2)
    assert solved(kit_volts=225).values["expect_kit_a"].value < at_239


def test_a_stage_that_is_off_shows_in_the_current():
    assert level("kit-amps") == "look"          # electrical: somebody signs
    assert level("kit-amps", kit_amps=16.6) == "hold"
    assert level("kit-amps", kit_amps=41.0) == "hold"


def test_a_clamp_on_the_whole_cabinet_counts_the_blower():
    both = solved(clamp_holds_blower=True).values["expect_kit_a"].value
    assert both == pytest.approx(solved().values["expect_kit_a"].value + 1.9)


def test_the_meters_own_doubt_can_turn_fine_to_look():
    near = {"static_supply_inwc": 0.38, "static_return_inwc": 0.115}
    assert level("static", ranged=True, **near) == "look"
    assert level("static", **near) == "fine"
    assert level("static", ranged=True, static_supply_inwc=0.36,
                 static_return_inwc=0.10) == "fine"
    assert level("static", static_supply_inwc=0.45, static_return_inwc=0.15) == "hold"


def test_the_record_shows_the_meters_doubt():
    row = next(r for r in solved().tables["record_table"] if r["id"] == "kit-amps")
    assert row["doubt"] == pytest.approx(0.02 * 33.0)


def test_less_air_than_wanted_makes_a_higher_rise():
    values = solved().values
    assert level("rise", rise_supply_f=67 + values["expect_rise_f"].value) == "fine"
    assert level("rise", rise_supply_f=67 + 1.35 * values["expect_rise_f"].value) == "hold"


def test_the_heating_split_falls_with_the_cold():
    common = {"heat_split_return_f": 68.0, "heat_split_supply_f": 95.0}
    cold = solved(heat_split_outdoor_f=0, **common).values["expect_split_f"].value
    mild = solved(heat_split_outdoor_f=45, **common).values["expect_split_f"].value
    assert cold < mild


def test_backup_is_locked_out_between_balance_point_and_forty():
    assert level("aux-lockout", aux_lockout_set_f=40) == "fine"
    assert level("aux-lockout", aux_lockout_set_f=41) == "look"
    assert level("aux-lockout", aux_lockout_set_f=2) == "look"


def test_torque_within_a_tenth_of_the_label():
    assert level("torque", torque_set_lbfin=45) == "look"
    assert level("torque", torque_set_lbfin=30) == "hold"
    answer = solved(torque_set_lbfin=5.1, torque_label_lbfin=45)
    assert answer.ok is False
    assert "N m" in answer.errors[0]["message"]


def test_nothing_electric_and_no_fuel_line_reads_better_than_look():
    answer = solved()
    for id_ in ("kit-volts", "kit-drop", "kit-amps", "outdoor-amps", "blower-amps", "torque",
                "limits", "detector", "fuel-capped"):
        verdict = verdict_of(answer, id_)
        assert verdict.level == "look"
        assert verdict.signs


def test_a_failed_test_is_a_hold():
    assert level("modes", mode_test="failed") == "hold"
    assert level("fuel-capped", fuel_line_capped=False) == "hold"


def test_an_all_electric_home_needs_no_carbon_monoxide_alarm_here():
    answer = solved(water_heater_fuel="electric")
    assert states(answer)["co-alarm"] == "does not apply"


def test_swapped_probes_are_refused_and_named():
    answer = solved(rise_return_f=85.0, rise_supply_f=67.0)
    assert answer.ok is False
    assert any("swapped" in e["message"] for e in answer.errors)


def test_a_reading_without_a_range_is_looked_at_not_passed():
    verdict = verdict_of(solved(torque_label_lbfin=None), "torque")
    assert verdict.level == "look"
    assert "cannot be said" in verdict.text


def test_an_empty_visit_says_all_that_is_due():
    from downflow.demo import demo_job
    from downflow.facts.job import Entry, Job
    from downflow.plan import the_chain

    job = Job("x", "X", facts={"commission_outdoor_f": Entry(40.0, "measured"),
                               "elevation_ft": Entry(100.0, "measured")})
    answer = the_chain().solve("commissioning-record", job)
    assert answer.ok
    assert answer.values["record_taken"].value == 0
    assert answer.values["record_due"].value >= 25
    assert demo_job().entry("commission_outdoor_f")
