"""Trap, drain and amounts of water."""

import fluids
import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow import tables
from downflow.physics import condensate, moist_air


def test_trap_of_the_worked_cabinet():
    head = condensate.head_in(0.62)
    seal = condensate.seal_in(head)
    assert (head, seal) == (pytest.approx(1.62), pytest.approx(0.81))
    assert condensate.total_drop_in(head, seal, 1.05) == pytest.approx(3.48)


def test_blow_through_is_not_for_this_trap():
    with pytest.raises(ValueError, match="blow-through"):
        condensate.head_in(-0.1)


@given(st.floats(0, 4))
def test_a_trap_by_the_formula_holds_more_than_it_was_made_for(suction):
    head = condensate.head_in(suction)
    assert condensate.suction_held_inwc(head, condensate.seal_in(head)) >= suction + 1 - 1e-9


def test_a_shallow_seal_fails_before_the_column_does():
    assert condensate.suction_held_inwc(2.0, 0.3) == pytest.approx(0.6)
    assert condensate.suction_held_inwc(0.5, 2.0) == pytest.approx(0.5)


def test_fall_and_run_are_one_rule():
    assert condensate.fall_in(22, 0.125) == pytest.approx(2.75)
    assert condensate.longest_run_ft(2.75, 0.125) == pytest.approx(22)


def test_a_run_has_a_hanger_at_each_end_and_none_too_far():
    assert condensate.hangers(8, 4) == 3
    assert condensate.hangers(8.1, 4) == 4
    for run in range(1, 40):
        assert run / (condensate.hangers(run, 4) - 1) <= 4


@pytest.mark.parametrize(("size", "nominal"), [("3/4", 0.75), ("1", 1.0), ("1-1/4", 1.25)])
def test_pipe_table_is_the_series_of_the_pipe_library(size, nominal):
    row = next(r for r in tables.rows("drain_pipe") if r.size == size)
    _, bore, outside, _ = fluids.nearest_pipe(NPS=nominal, schedule="40")
    assert row.outside_in == pytest.approx(outside / 0.0254, abs=0.002)
    assert row.bore_in == pytest.approx(bore / 0.0254, abs=0.002)


def test_a_dry_coil_makes_no_water():
    assert condensate.coil_water_lb_h(4000, 0.0060, 0.0075) == 0


def test_three_tons_at_a_quarter_latent_make_a_gallon_an_hour():
    water = condensate.latent_water_lb_h(36_000 * 0.25)
    assert condensate.gallons(water) == pytest.approx(1.02, abs=0.02)


def test_frost_comes_with_wet_cold_and_not_with_dry_cold():
    air = 14.696
    wet = condensate.frost_share(33, moist_air.ratio_from_humidity(33, 95, air), 21,
                                 moist_air.saturated_ratio(21, air))
    dry = condensate.frost_share(33, moist_air.ratio_from_humidity(33, 40, air), 21,
                                 moist_air.saturated_ratio(21, air))
    assert 0.25 < wet < 0.5
    assert dry == 0
    with pytest.raises(ValueError, match="not below"):
        condensate.frost_share(20, 0.002, 25, 0.002)


def test_a_wet_day_sheds_several_gallons():
    share = condensate.frost_share(33, moist_air.ratio_from_humidity(33, 95, 14.696), 21,
                                   moist_air.saturated_ratio(21, 14.696))
    day = 24 * condensate.frost_lb_h(18_000, share)
    assert 5 < condensate.gallons(day) < 25


def test_melting_takes_an_eighth_of_what_frosting_gave():
    assert condensate.melting_btu(1) / condensate.FROSTING_BTU_LB == pytest.approx(0.118, abs=0.003)
