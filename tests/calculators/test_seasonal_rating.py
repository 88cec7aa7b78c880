"""The seasonal rating, worked again."""

import pytest

from downflow.testing import solve_demo, verdict_of

ID = "seasonal-rating"
TWO = [{"test": t, "capacity_btuh": c, "power_w": p} for t, c, p in (
    ("low-62", 22000, 1450), ("low-47", 18000, 1350), ("low-35", 14500, 1450),
    ("low-17", 10500, 1600), ("full-47", 25000, 1800), ("full-35", 21500, 1900),
    ("full-17", 19500, 2100))]
SINGLE = [{"test": t, "capacity_btuh": c, "power_w": p} for t, c, p in (
    ("full-47", 25000, 2050), ("full-35", 22000, 1980), ("full-17", 15800, 1800))]


def test_the_published_two_stage_example_comes_out():
    """8.5695 with a credit of 1.03: the rating body's own run."""
    answer = solve_demo(ID, ranged=False, rating_kind="two", rating_points=TWO,
                        rating_cooling_95f_btuh=30000.0, hp_cycling_loss=0.18,
                        defrost_demand=True, hspf2_printed=8.57)
    assert answer.values["hspf2_worked"].value == pytest.approx(8.5695257081792, rel=1e-9)
    assert verdict_of(answer, "printed").level == "fine"


def test_the_single_speed_example_comes_out():
    answer = solve_demo(ID, ranged=False, rating_kind="single", rating_points=SINGLE,
                        rating_cooling_95f_btuh=24000.0, hp_cycling_loss=0.25,
                        defrost_demand=False, rating_off_f=-5.0, rating_on_f=0.0)
    assert answer.values["hspf2_worked"].value == pytest.approx(7.97, abs=0.005)


def test_a_clock_defrost_rates_lower():
    clock = solve_demo(ID, ranged=False, defrost_demand=False).values["hspf2_worked"].value
    assert solve_demo(ID, ranged=False).values["hspf2_worked"].value == pytest.approx(1.03 * clock)


@pytest.mark.parametrize(("printed", "level"), [(9.60, "fine"), (9.50, "look"), (10.60, "look")])
def test_five_percent_apart_is_looked_at(printed, level):
    assert verdict_of(solve_demo(ID, ranged=False, hspf2_printed=printed), "printed").level == level


def test_an_untested_35_degree_point_gets_the_default():
    points = [r for r in solve_demo(ID, ranged=False).sheet.job.rating_points
              if r["test"] != "full-35"]
    answer = solve_demo(ID, ranged=False, rating_points=points)
    assert any("c35" in step.formula for step in answer.working)


def test_a_missing_test_is_named():
    answer = solve_demo(ID, ranged=False, rating_points=SINGLE)
    assert answer.ok is False
    assert "middle-35" in answer.errors[0]["message"]


def test_an_intermediate_speed_above_full_speed_is_refused():
    points = [{**r, "capacity_btuh": 33000} if r["test"] == "middle-35" else r
              for r in solve_demo(ID, ranged=False).sheet.job.rating_points]
    answer = solve_demo(ID, ranged=False, rating_points=points)
    assert answer.ok is False
    assert answer.errors[0]["field"] == "rating_points"


def test_turning_on_below_turning_off_is_refused():
    answer = solve_demo(ID, ranged=False, rating_off_f=10.0, rating_on_f=5.0)
    assert answer.errors[0]["field"] == "rating_on_f"


def test_an_early_cut_out_rates_lower():
    early = solve_demo(ID, ranged=False, rating_off_f=25.0, rating_on_f=30.0)
    assert early.values["hspf2_worked"].value < solve_demo(
        ID, ranged=False).values["hspf2_worked"].value
    assert early.values["rating_resistance_pct"].value > 20
