"""The outdoor unit's circuit."""

import pytest

from downflow.testing import solve_demo, verdict_of


def solved(**changed):
    return solve_demo("outdoor-circuit", **changed)


def level(id_, **changed):
    return verdict_of(solved(**changed), id_).level


def test_the_demo_circuit_fits_and_still_needs_a_signature():
    answer = solved()
    assert {v.level for v in answer.verdicts} == {"look"}
    assert all(v.signs == "licensed electrician" for v in answer.verdicts)


def test_a_breaker_at_the_plate_is_the_last_that_passes():
    assert level("breaker", outdoor_breaker_a=35) == "look"
    assert level("breaker", outdoor_breaker_a=40) == "hold"


def test_a_small_breaker_trips_but_hurts_nobody():
    verdict = verdict_of(solved(outdoor_breaker_a=20), "breaker-carries")
    assert verdict.level == "look"
    assert "will trip" in verdict.text


def test_the_conductor_at_its_limit():
    assert level("wire", outdoor_mca_a=30) == "look"       # 10 AWG at 60 °C carries 30 A
    assert level("wire", outdoor_mca_a=30.5) == "hold"
    assert level("wire", outdoor_mca_a=30.5, outdoor_terminals="75") == "look"


def test_a_twelve_gauge_wire_may_stand_on_a_thirty_ampere_breaker_here():
    """Motor circuits are outside the small-conductor rule: the plate decides."""
    answer = solved(outdoor_wire="12", outdoor_mca_a=19.5)
    assert verdict_of(answer, "wire").level == "look"
    assert verdict_of(answer, "breaker").level == "look"


def test_fifty_feet_is_in_sight_and_fifty_one_is_not():
    assert level("disconnect-place", disconnect_ft=50) == "look"
    assert level("disconnect-place", disconnect_ft=51) == "hold"
    assert level("disconnect-place", disconnect_seen=False) == "hold"


def test_disconnect_needs_115_percent():
    assert solved().values["outdoor_disconnect_need_a"].value == pytest.approx(23)
    assert level("disconnect-rating", disconnect_a=20) == "hold"


@pytest.mark.parametrize(("edition", "expected"), [
    ("2017", "look"), ("2020", "look"), ("2023", "look"), ("2026", "hold"), ("unknown", "look")])
def test_ground_fault_goes_by_the_edition(edition, expected):
    assert level("ground-fault", code_edition=edition) == expected
    assert level("ground-fault", code_edition=edition, outdoor_gfci=True) == "look"


def test_where_the_plates_numbers_come_from():
    answer = solved(compressor_rla_a=16.0, outdoor_fan_a=1.2, outdoor_mca_a=21.2)
    assert answer.values["outdoor_mca_worked_a"].value == pytest.approx(21.2)
    assert answer.values["outdoor_mocp_worked_a"].value == 35
    misread = solved(compressor_rla_a=16.0, outdoor_fan_a=1.2, outdoor_mca_a=12.1)
    assert "misread" in verdict_of(misread, "plate-agrees").text


def test_a_long_thin_run_drops_too_much():
    verdict = verdict_of(solved(outdoor_wire="14", outdoor_wire_ft=150, outdoor_mca_a=14),
                         "run-drop")
    assert verdict.value > 3
    assert "recommends" in verdict.text


def test_the_dip_at_start_counts_the_supply():
    answer = solved(compressor_lra_a=90)
    dip = answer.values["outdoor_start_drop_pct"].value
    supply = 90 * (243.5 - 241) / 32
    assert dip > 100 * supply / 243.5
    assert "not been read" in verdict_of(solved(compressor_lra_a=90, load_on_a=None),
                                         "start-dip").text


def test_swapped_numbers_are_refused_and_named():
    answer = solved(outdoor_mca_a=35, outdoor_mocp_a=24)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "outdoor_mocp_a"
    assert "swapped" in answer.errors[0]["message"]
    volts = solved(volts_load_off=238, volts_load_on=243)
    assert volts.errors[0]["field"] == "volts_load_on"
