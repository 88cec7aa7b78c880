"""The backup kit: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

PLAIN = {"home_ua_btuh_f": 420.0, "delivery_efficiency_pct": 100.0, "supply_v": 240.0,
         "kit_rated_v": (240.0, "data sheet"), "indoor_design_f": (70.0, "data sheet"),
         "design_heating_f": (-5.0, "data sheet"), "kit_planned_kw": None,
         "hp_altitude_factor_pct": (100.0, "data sheet")}


def kit(**facts):
    return solve_demo("backup-kit", **{**PLAIN, **facts})


def test_the_shortfall_is_what_the_heat_pump_leaves():
    answer = kit()
    assert answer.values["kit_shortfall_btuh"].value == pytest.approx(7111, rel=0.005)
    assert answer.values["kit_shortfall_kw"].value == pytest.approx(2.084, rel=0.005)


def test_the_smallest_kit_that_covers_it_is_taken():
    assert kit().values["kit_chosen_kw"].value == 5
    assert kit(home_ua_btuh_f=560.0).values["kit_chosen_kw"].value == 8


def test_a_planned_kit_is_kept_though_a_smaller_would_do():
    assert kit(kit_planned_kw=10.0).values["kit_chosen_kw"].value == 10


def test_a_kit_that_is_not_on_the_plate_is_refused():
    answer = kit(kit_planned_kw=15.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "kit_planned_kw"


def test_low_voltage_takes_the_square_off_the_power():
    assert kit(supply_v=208.0, kit_planned_kw=10.0).values["kit_real_kw"].value == pytest.approx(
        10 * (208 / 240) ** 2)


def test_ten_kilowatts_alone_hold_to_minus_eleven():
    answer = kit(kit_planned_kw=10.0)
    assert answer.values["kit_alone_holds_to_f"].value == pytest.approx(-11.24, abs=0.05)


def test_leaky_ducts_take_from_the_kit_too():
    tight = kit(kit_planned_kw=10.0).values["kit_alone_holds_to_f"].value
    leaky = kit(kit_planned_kw=10.0, delivery_efficiency_pct=75.0)
    assert leaky.values["kit_alone_holds_to_f"].value > tight


@pytest.mark.parametrize(("ua", "level"), [(380.0, "fine"), (1200.0, "hold")])
def test_a_kit_that_falls_short_is_a_hold(ua, level):
    answer = kit(home_ua_btuh_f=(ua, "data sheet"), kit_planned_kw=10.0)
    assert verdict_of(answer, "kit-covers").level == level


def test_the_kit_is_judged_just_inside_and_just_outside_the_shortfall():
    need = kit(kit_planned_kw=5.0).values["kit_shortfall_kw"].value
    for size, level in ((need - 0.01, "hold"), (need + 3.5, "fine")):
        row = [{"kit_kw": size, "stages": 1, "least_scfm": 600}]
        answer = kit(kit_sizes=(row, "data sheet"))
        assert verdict_of(answer, "kit-covers").level == level
    barely = kit(kit_sizes=([{"kit_kw": need + 0.01, "stages": 1}], "data sheet"))
    assert verdict_of(barely, "kit-covers").level == "look"


def test_elements_without_enough_air_are_a_hold():
    assert verdict_of(kit(heating_airflow_cfm=600.0), "elements-air").level == "hold"
    assert verdict_of(kit(heating_airflow_cfm=1100.0), "elements-air").level == "fine"


def test_thin_air_carries_less_over_the_elements():
    low = kit(elevation_ft=0.0).values["kit_least_airflow_scfm"].value
    high = kit(elevation_ft=6200.0).values["kit_least_airflow_scfm"].value
    assert high == pytest.approx(0.7954 * low, rel=0.001)


def test_a_label_that_says_nothing_of_air_is_a_look():
    answer = kit(kit_sizes=([{"kit_kw": 10, "stages": 2}], "data sheet"))
    assert verdict_of(answer, "elements-air").level == "look"


def test_a_deeper_setback_takes_longer_to_come_back():
    hours = [kit(setback_f=s).values["kit_recovery_h"].value for s in (0.0, 3.0, 6.0)]
    assert hours == sorted(hours)
    assert hours[0] == 0


def test_only_the_first_stage_runs_where_it_is_enough():
    answer = kit(kit_planned_kw=10.0)
    assert answer.values["kit_stages_at_design"].value == 1
