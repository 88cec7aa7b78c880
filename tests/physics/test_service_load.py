"""Service and feeder sums."""

import pytest

from downflow import tables
from downflow.physics import service_load as load


def test_the_worked_home_adds_up_by_the_existing_dwelling_sum():
    general = load.general_va(1568, 2, 1, 12_000 + 4_500 + 5_000 + 1_200)
    assert general == pytest.approx(31_904)
    heat = load.existing_heat_va(4_800, 10_000, 1_200, together=True)
    total = load.existing_general_va(general) + heat
    assert load.amps(total, 240) == pytest.approx(139.8, abs=0.05)


def test_leaving_out_the_compressor_is_only_for_controls_that_do_it():
    apart = load.existing_heat_va(4_800, 10_000, 1_200, together=False)
    both = load.existing_heat_va(4_800, 10_000, 1_200, together=True)
    assert both - apart == pytest.approx(4_800)


def test_below_the_first_step_everything_counts_whole():
    for step, first in ((load.existing_general_va, 8_000), (load.optional_general_va, 10_000),
                        (load.feeder_lighting_va, 3_000)):
        assert step(first - 1) == pytest.approx(first - 1)
        assert step(first + 100) < first + 100


def test_the_existing_sum_is_never_above_the_optional_one():
    for general in range(0, 60_000, 500):
        assert load.existing_general_va(general) <= load.optional_general_va(general)


def test_legs_of_the_worked_home():
    lighting = load.amps(load.feeder_lighting_va(load.general_va(1568, 2, 1, 0)), 240)
    cooking = load.amps(load.range_va(12_000, tables.rows("range_demand")), 240)
    motors = 16 + 1.2 + 5 + 10_000 / 240
    leg_a = load.leg_amps(lighting, motors, 16, 18.75 + 20.83 + 10, 3, cooking, 0)
    leg_b = load.leg_amps(lighting, motors, 16, 18.75 + 20.83, 3, cooking, 0)
    assert leg_a == pytest.approx(172.3, abs=0.1)
    assert leg_b == pytest.approx(162.3, abs=0.1)


def test_a_fourth_appliance_brings_all_of_them_down_to_three_quarters():
    three = load.leg_amps(0, 0, 0, 40, 3, 0, 0)
    four = load.leg_amps(0, 0, 0, 40, 4, 0, 0)
    assert four == pytest.approx(0.75 * three)


def test_range_demand_never_falls_when_the_range_grows():
    rows = tables.rows("range_demand")
    demand = [load.range_va(rating, rows) for rating in range(1_000, 17_501, 100)]
    assert demand == sorted(demand)


def test_a_range_beyond_the_table_is_refused_with_its_limit():
    with pytest.raises(ValueError, match="17500"):
        load.range_va(17_600, tables.rows("range_demand"))


def test_what_is_left_is_what_fits():
    left = load.room_left_va(150, 240, 17_561.6, 6_000)
    assert load.amps(17_561.6 + 6_000 + left, 240) == pytest.approx(150)
