"""The way back: what a technician could argue with."""

import pytest

from downflow.demo import demo_job
from downflow.testing import solve_demo, verdict_of


def back(*, ranged=False, **facts):
    return solve_demo("way-back", ranged=ranged, **facts)


def rooms(**change):
    """The demo's rooms with every closed one changed."""
    return [{**r, **change} if r["closes"] and not r["toilet"] else dict(r)
            for r in demo_job().entry("rooms").value]


def test_a_room_without_any_opening_is_a_hold():
    answer = back(rooms=rooms(undercut_in=0.0, transfer_in2=0.0))
    assert verdict_of(answer, "rooms-can-breathe").level == "hold"


def test_large_transfers_are_fine():
    answer = back(rooms=rooms(transfer_in2=150.0))
    assert verdict_of(answer, "rooms-pressure").level == "fine"
    assert answer.values["way_back_cut_in2"].value == 0


def test_what_is_cut_brings_the_room_to_its_limit():
    answer = back()
    cut = {r["id"]: r["cut_in2"] for r in answer.tables["way_back"]}
    there = {r["id"]: r["transfer_in2"] for r in demo_job().entry("rooms").value
             if r["closes"] and not r["toilet"]}
    area = {name: there[name] + 1.001 * cut[name] for name in cut}
    again = back(rooms=[{**r, "transfer_in2": area[r["id"]]} if r["id"] in area else dict(r)
                        for r in demo_job().entry("rooms").value])
    assert verdict_of(again, "rooms-pressure").level == "fine"
    assert again.values["way_back_cut_in2"].value == pytest.approx(0, abs=1e-6)


def test_toilet_rooms_need_none():
    assert not {"master bath", "hall bath"} & {r["id"] for r in back().tables["way_back"]}


def test_twice_the_air_is_four_times_the_pressure():
    answer = back()
    row = next(r for r in answer.tables["way_back"] if r["id"] == "bed 3")
    assert row["pressure_pa"] == pytest.approx(3.0 * (row["needed_in2"] / row["there_in2"]) ** 2)


@pytest.mark.parametrize(("burner", "level"), [
    ("none", "fine"), ("sealed", "look"), ("home", "hold"), ("closet", "hold")])
def test_what_still_burns_decides(burner, level):
    answer = back(closet_burner=burner, water_heater_fuel="electric" if burner == "none" else
                  "propane")
    assert verdict_of(answer, "burners").level == level


def test_a_burner_that_the_sheet_denies_and_names_is_looked_at():
    verdict = verdict_of(back(closet_burner="none", water_heater_fuel="propane"), "burners")
    assert verdict.level == "look"
    assert not verdict.to_sign
    assert verdict.values["what"] == "water heater"


def test_unknown_wood_louvers_count_a_quarter():
    answer = back(louver_kind="wood", louver_free_pct=None)
    assert answer.values["closet_free_in2"].value == pytest.approx(0.25 * 1380)


@pytest.mark.parametrize(("face", "level"), [(303.0, "fine"), (302.0, "look")])
def test_louver_speed_just_inside_and_just_outside(face, level):
    # 1050 cfm at 500 ft/min: 302.4 in²
    answer = back(louver_face_in2=face, louver_free_pct=90.0)
    assert verdict_of(answer, "louver-speed").level == level


def test_small_louvers_pull_on_the_closet():
    answer = back(louver_face_in2=300.0, louver_kind="wood", louver_free_pct=None)
    assert verdict_of(answer, "closet-pressure").level == "look"


def test_a_deep_undercut_counts_half_for_the_federal_rule():
    answer = back(rooms=rooms(undercut_deck_in=2.5, transfer_in2=20.0))
    assert verdict_of(answer, "federal-room-area").level == "fine"
    wide = back(rooms=rooms(undercut_in=8.0, undercut_deck_in=1.0, transfer_in2=0.0))
    assert verdict_of(wide, "federal-room-area").level == "look"
    assert "Enough for the airflow" in verdict_of(wide, "federal-room-area").text


def test_a_room_that_is_cut_for_its_airflow_is_said_once():
    assert verdict_of(back(), "rooms-pressure").level == "hold"
    assert verdict_of(back(), "federal-room-area").level == "fine"


def test_the_range_widens_with_estimated_tape():
    measured, guessed = back(ranged=True), back(ranged=True, rooms=(rooms(), "estimated"))
    narrow, wide = (a.values["way_back_worst_pa"] for a in (measured, guessed))
    assert wide.high - wide.low > narrow.high - narrow.low
