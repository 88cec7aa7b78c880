"""Capacity at altitude: bounds while the maker has not said."""

import pytest

from downflow.testing import solve_demo, verdict_of


def factor(elevation):
    return solve_demo("capacity-at-altitude", elevation_ft=(elevation, "data sheet"),
                      hp_altitude_factor_pct=None)


def test_at_sea_level_nothing_is_lost():
    value = factor(0.0).values["hp_altitude_factor_pct"]
    assert value.value == pytest.approx(100)
    assert value.high - value.low < 0.2


def test_the_range_runs_from_the_loss_of_density_to_no_loss():
    value = factor(6200.0).values["hp_altitude_factor_pct"]
    assert value.low == pytest.approx(79.54, abs=0.1)
    assert value.high == pytest.approx(100, abs=0.01)


def test_higher_is_never_better():
    values = [factor(z).values["hp_altitude_factor_pct"].value for z in (0.0, 3000.0, 9000.0)]
    assert values == sorted(values, reverse=True)


@pytest.mark.parametrize(("elevation", "level"), [(700.0, "fine"), (900.0, "look")])
def test_the_maker_is_asked_as_soon_as_it_matters(elevation, level):
    assert verdict_of(factor(elevation), "maker-asked").level == level


def test_the_makers_factor_settles_it():
    assert verdict_of(solve_demo("capacity-at-altitude"), "maker-asked").level == "fine"
