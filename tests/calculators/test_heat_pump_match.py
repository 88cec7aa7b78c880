"""The heat pump against the home: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

SHEET = [
    {"outdoor_f": -13, "capacity_max_btuh": 21500, "power_max_w": 4065,
     "capacity_min_btuh": 13000, "power_min_w": 2380},
    {"outdoor_f": 5, "capacity_max_btuh": 28000, "power_max_w": 4208,
     "capacity_min_btuh": 12500, "power_min_w": 1730},
    {"outdoor_f": 17, "capacity_max_btuh": 31500, "power_max_w": 4014,
     "capacity_min_btuh": 11500, "power_min_w": 1290},
    {"outdoor_f": 47, "capacity_max_btuh": 36000, "power_max_w": 2931,
     "capacity_min_btuh": 9500, "power_min_w": 630},
]
PLAIN = {"hp_points": (SHEET, "data sheet"), "home_ua_btuh_f": 400.0,
         "delivery_efficiency_pct": 100.0, "hp_altitude_factor_pct": (100.0, "data sheet"),
         "indoor_design_f": (70.0, "data sheet"), "hp_points_with_frost": True}


def match(**facts):
    return solve_demo("heat-pump-match", **{**PLAIN, **facts})


def test_the_load_is_what_the_home_loses_over_what_the_ducts_deliver():
    tight = match(design_heating_f=(0.0, "data sheet")).values["hp_load_btuh"].value
    leaky = match(design_heating_f=(0.0, "data sheet"), delivery_efficiency_pct=80.0)
    assert tight == pytest.approx(400 * 70)
    assert leaky.values["hp_load_btuh"].value == pytest.approx(400 * 70 / 0.8)


def test_capacity_at_a_point_of_the_sheet_is_the_sheets():
    for row in SHEET:
        answer = match(design_heating_f=(float(row["outdoor_f"]), "data sheet"))
        assert answer.values["hp_capacity_design_btuh"].value == pytest.approx(
            row["capacity_max_btuh"])


def test_at_the_balance_point_load_and_capacity_meet():
    answer = match(internal_gains_btuh=3600.0)
    step = next(s for s in answer.working if s.what == "Thermal balance point")
    left, right = step.rows[0][1], step.rows[1][1]
    assert left == pytest.approx(right)
    assert answer.values["hp_balance_f"].value == pytest.approx(-2.36, abs=0.1)


def test_frost_takes_a_tenth_off_at_35_and_nothing_at_17():
    for outdoor, share in ((35.0, 0.90), (17.0, 1.0)):
        with_frost = match(design_heating_f=(outdoor, "data sheet"), hp_points_with_frost=False)
        without = match(design_heating_f=(outdoor, "data sheet"))
        assert with_frost.values["hp_capacity_design_btuh"].value == pytest.approx(
            share * without.values["hp_capacity_design_btuh"].value)


def test_two_units_that_are_no_pair_are_a_hold():
    assert verdict_of(match(hp_rated_together=False), "one-combination").level == "hold"
    assert verdict_of(match(), "one-combination").level == "fine"


def test_the_design_night_beyond_the_sheet_is_a_look():
    answer = match(design_heating_f=(-20.0, "data sheet"), hp_cutout_f=(-30.0, "data sheet"))
    assert verdict_of(answer, "within-sheet").level == "look"
    inside = match(design_heating_f=(-12.0, "data sheet"))
    assert verdict_of(inside, "within-sheet").level == "fine"


@pytest.mark.parametrize(("cutout", "level"), [(-2.1, "fine"), (-2.0, "fine"), (-1.9, "look")])
def test_the_cut_out_is_judged_just_inside_and_just_outside(cutout, level):
    answer = match(design_heating_f=(-2.0, "data sheet"), hp_cutout_f=(cutout, "data sheet"))
    assert verdict_of(answer, "above-cutout").level == level


def test_below_its_cut_out_it_makes_nothing():
    answer = match(design_heating_f=(-20.0, "data sheet"))
    assert answer.values["hp_capacity_design_btuh"].value == 0
    assert answer.values["hp_share_pct"].value == 0
    assert "hp_cop_design" not in answer.values


def test_an_unknown_altitude_factor_is_a_look_and_widens_the_range():
    asked = match()
    unknown = match(hp_altitude_factor_pct=None)
    assert verdict_of(unknown, "altitude-asked").level == "look"
    assert verdict_of(asked, "altitude-asked").level == "fine"

    def width(answer):
        value = answer.values["hp_capacity_design_btuh"]
        return value.high - value.low

    assert width(unknown) > 2 * width(asked)


def test_a_unit_too_large_for_the_home_is_a_look():
    assert verdict_of(match(home_ua_btuh_f=150.0), "modulates").level == "look"


def test_without_a_lowest_speed_there_is_no_cycling_point():
    rows = [{k: v for k, v in r.items() if "min" not in k} for r in SHEET]
    answer = match(hp_points=(rows, "data sheet"))
    assert answer.ok
    assert "hp_cycles_above_f" not in answer.values


def test_lowest_speed_above_top_speed_is_refused_at_its_cell():
    rows = [dict(r) for r in SHEET]
    rows[2]["capacity_min_btuh"] = 40000
    answer = match(hp_points=(rows, "data sheet"))
    assert answer.ok is False
    assert answer.errors[0]["field"] == "hp_points[2].capacity_min_btuh"


def test_a_design_night_warmer_than_the_room_is_refused():
    answer = match(design_heating_f=(62.0, "data sheet"), indoor_design_f=60.0)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "design_heating_f"
