"""The shell: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def value(name, **facts):
    return solve_demo("shell", ranged=False, **facts).values[name].value


def test_what_has_not_been_looked_at_stands_in_by_date_and_says_so():
    answer = solve_demo("shell", wall_insulation_r=None, uo_zone=None)
    assert verdict_of(answer, "insulation-seen").level == "look"
    assert "walls" in verdict_of(answer, "insulation-seen").text
    wall = answer.values["wall_u_btuh_ft2_f"]
    assert (wall.low, wall.high) == pytest.approx((0.09, 0.13))


def test_looking_narrows_the_range():
    seen = solve_demo("shell").values["ceiling_u_btuh_ft2_f"]
    unseen = solve_demo("shell", ceiling_insulation_r=None).values["ceiling_u_btuh_ft2_f"]
    assert seen.high - seen.low < unseen.high - unseen.low


def test_an_older_home_is_taken_to_be_poorer():
    old = value("wall_u_btuh_ft2_f", wall_insulation_r=None, year_built=1970.0)
    new = value("wall_u_btuh_ft2_f", wall_insulation_r=None, year_built=2005.0)
    assert old > new


@pytest.mark.parametrize(("year", "u"), [(1975.0, 0.165), (1976.0, 0.11), (1994.0, 0.11),
                                         (1995.0, 0.075)])
def test_the_eras_change_with_the_federal_rules(year, u):
    assert value("wall_u_btuh_ft2_f", wall_insulation_r=None, year_built=year,
                 uo_zone=None) == pytest.approx(u)


def test_a_home_for_a_cold_zone_is_taken_to_hold_heat_better():
    u = [value("wall_u_btuh_ft2_f", wall_insulation_r=None, uo_zone=(z, "data sheet"))
         for z in ("1", "2", "3")]
    assert u == sorted(u, reverse=True)
    assert u[1] == pytest.approx(0.11)
    assert u[0] - u[2] == pytest.approx(0.02)


def test_a_squeezed_batt_keeps_less_than_it_says():
    whole = value("wall_u_btuh_ft2_f", wall_insulation_r=19.0, wall_stud_in=6.25,
                  wall_batt_in=6.25)
    squeezed = value("wall_u_btuh_ft2_f", wall_insulation_r=19.0, wall_stud_in=3.5,
                     wall_batt_in=6.25)
    assert squeezed > 1.2 * whole


def test_low_eaves_cost_and_an_even_ceiling_does_not():
    even = value("ceiling_u_btuh_ft2_f", ceiling_eave_in=8.0)
    low = value("ceiling_u_btuh_ft2_f", ceiling_eave_in=1.0)
    assert low > even


def test_more_insulation_at_the_eave_than_in_the_field_is_refused():
    answer = solve_demo("shell", ceiling_eave_in=12.0)
    assert answer.errors[0]["field"] == "ceiling_eave_in"


@pytest.mark.parametrize(("open_pct", "level"), [(1.0, "fine"), (1.1, "look"), (10.0, "look")])
def test_a_belly_open_by_more_than_one_percent_is_looked_at(open_pct, level):
    assert verdict_of(solve_demo("shell", belly_open_pct=(open_pct, "data sheet")),
                      "belly-closed").level == level


def test_a_torn_belly_is_a_hole_in_the_floor():
    assert value("floor_u_btuh_ft2_f", belly_open_pct=20.0) > 1.5 * value(
        "floor_u_btuh_ft2_f", belly_open_pct=0.0)


def test_a_home_of_27_by_56_feet_has_166_feet_around_it():
    assert value("home_perimeter_ft") == pytest.approx(166.0)


def test_an_unknown_width_goes_by_the_sections_with_doubt():
    answer = solve_demo("shell", home_width_ft=None)
    perimeter = answer.values["home_perimeter_ft"]
    assert perimeter.value == pytest.approx(166.0)
    assert perimeter.high - perimeter.low > 10
    assert value("home_perimeter_ft", home_width_ft=None, sections=("single", "measured")) > 200


def test_a_home_wider_than_long_is_refused():
    answer = solve_demo("shell", home_width_ft=50.0)
    assert answer.errors[0]["field"] == "home_width_ft"


def test_a_u_from_a_report_wins_and_the_shell_still_shows_its_own():
    answer = solve_demo("shell", wall_u_btuh_ft2_f=(0.07, "data sheet"))
    assert answer.entered["wall_u_btuh_ft2_f"] == 0.07
    assert answer.values["wall_u_btuh_ft2_f"].value != 0.07
    loss = solve_demo("heat-loss", ranged=False, wall_u_btuh_ft2_f=(0.07, "data sheet"))
    assert loss.values["survey_ua_btuh_f"].value < solve_demo(
        "heat-loss", ranged=False).values["survey_ua_btuh_f"].value


def test_a_second_pane_halves_a_metal_window_about():
    one = value("window_u_btuh_ft2_f", window_kind=("single clear, metal", "measured"))
    two = value("window_u_btuh_ft2_f", window_kind=("double clear, metal", "measured"))
    assert two == pytest.approx(0.64 * one, rel=0.02)
